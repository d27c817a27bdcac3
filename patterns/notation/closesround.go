package notation

import "whorl/patterns/stitch"

// closesRound reads "close the round", "finish this rnd" before the stitch that it is joined
// with: "close the round with a slip stitch into the first treble".
func (p *parser) closesRound() bool {
	start := p.i
	if !p.work || p.depth > 1 || !p.eat("close", "finish", "end", "complete", "closing", "finishing", "ending", "completing") || !p.eat("the", "this", "each", "every") || !p.eat("round", "rnd") {
		p.i = start
		return false
	}
	if p.eat("off"); p.tok().is("with", "by", "using") {
		at := p.i
		p.i++
		p.eat("working", "making", "joining", "a", "an", "one")
		p.eat("with")
		p.eat("a", "an", "one")
		if w, ok := p.what(); ok && w.Kind.Is() {
			p.i = at
			return true
		}
	}
	p.i = start
	return false
}

// slipStitch passes over "sl st", "ss", "slip stitch", or "st" alone, behind the word that says what it does.
func (p *parser) slipStitch() {
	at := p.i
	if w, ok := p.what(); !ok || w.Kind != stitch.Of(stitch.Slip) {
		p.i = at
		p.eat("sl")
	}
	p.eat("st", "stitch")
}

// closesAhead reports whether what closes the round, or goes into its last stitches, is told behind a
// comma: ", sl st to first puff", ", do not join", ", fasten off", ", hdc in last 2 sts".
func (p *parser) closesAhead() bool {
	start, faults, said := p.i, len(p.faults), p.said
	defer func() { p.i, p.faults, p.said = start, p.faults[:faults], said }()
	p.eatKind(tComma)
	p.eat("and", "then")
	at := p.i
	it, f := p.join()
	switch it.(type) {
	case *Join, *NoJoin:
		return f == nil
	}
	p.i = at
	if it, f := p.fasten(); it != nil && f == nil {
		return true
	}
	p.i = at
	it, _ = p.stitches()
	s, ok := it.(*Stitches)
	return ok && len(s.Places) == 1 && s.Places[0].Pick == Last
}
