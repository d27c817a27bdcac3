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
