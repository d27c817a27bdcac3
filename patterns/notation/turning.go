package notation

// missedChain reads "missed 5 ch", "5 skipped chs" behind "4th ch of the": the chains that
// the row below begins with, passed over at its beginning.
func (p *parser) missedChain() (Target, bool) {
	start := p.i
	p.eat("beg", "beginning", "first")
	n, counted := p.plainNumber()
	if p.eat("skipped", "missed") {
		p.eat("beg", "beginning", "starting", "foundation", "base")
		if !counted {
			n, _ = p.plainNumber()
		}
		if p.eat("ch", "chs", "chain", "chains") && !p.spaceWord() && p.tok().kind != tHyphen {
			return Target{Sort: StartChain, Chains: n, Text: p.words(start)}, true
		}
	}
	p.i = start
	return Target{}, false
}

// topOfMissed reads "missed ch", "3 skipped chs" behind "top of": the stitch that the chains passed over at the
// beginning of the row below count as.
func (p *parser) topOfMissed(pl *Place) bool {
	t, ok := p.missedChain()
	if ok {
		pl.Pick, pl.Target = First, t
	}
	return ok
}

// turningChain reads "and turning ch", "and the tch", "and 1 turning ch" behind the
// stitches that are left before it.
func (p *parser) turningChain() (Target, bool) {
	start := p.i
	if p.eat("and") || p.eatKind(tPlus) {
		p.eat("the")
		if p.tok().kind == tNumber && p.tok().value == 1 {
			p.i++
		}
		if p.tok().is("turning", "tch", "t", "beg", "beginning") {
			if t, ok := p.startChain(); ok {
				return t, true
			}
		}
	}
	p.i = start
	return Target{}, false
}

// turningAhead reports whether a place on the turning chain comes next: "turning ch", "top
// of tch", "3rd ch of turning ch", "4th of 5 skipped ch".
func (p *parser) turningAhead() bool {
	start := p.i
	defer func() { p.i = start }()
	p.eat("the", "in", "into")
	p.eat("the")
	if p.tok().is("turning", "tch") {
		return true
	}
	pl, ok := p.place()
	return ok && (pl.Target.Sort == StartChain || pl.Of != nil && pl.Of.Target.Sort == StartChain || pl.Pick == Skipped && pl.Nth > 0 && pl.Target.Sort == ChainStitch)
}

// bareChain reports whether "chain 2", "2 ch" comes next, with no word or hyphen that makes a thing
// of it: "1 tr into next tr and chain 2" makes the chains.
func (p *parser) bareChain() bool {
	a, b := p.tok(), p.at(1)
	if a.kind != tNumber && numberWords[a.text] == 0 {
		a, b = b, a
	}
	return (a.kind == tNumber || numberWords[a.text] > 0) && b.is("ch", "chain", "chs", "chains") && !p.at(1).tight(tHyphen)
}
