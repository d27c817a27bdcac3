package notation

import "whorl/patterns/stitch"

// freeWords are said of loops that a round has been worked past.
var freeWords = []string{"free", "unused", "unworked", "remaining", "rem"}

// besideLoops passes over "behind Rnd 2,", "in front of the petals and", "behind sts of Rnd 2" before the loops
// that are worked into, where they are told behind it.
func (p *parser) besideLoops() bool {
	start := p.i
	if !p.eat("behind") && !p.eatAll("in", "front", "of") && !p.eatAll("in", "back", "of") && !p.eatAll("at", "back", "of") {
		return false
	}
	for n := 0; n < 12; n++ {
		at := p.i
		p.eatKind(tComma)
		p.eat("and")
		p.eat("work", "working")
		if p.inLoopsAhead(p.i) {
			return true
		}
		if p.eat("in", "into", "through") {
			in := p.i
			_, loops := p.anyLoops(p.freeAhead())
			if p.i = in; loops || p.sideOfRound() > 0 {
				p.i = in - 1
				return true
			}
		}
		p.i = at
		if k := p.tok().kind; k != tWord && k != tNumber && k != tHyphen || p.instructs(p.i) {
			break
		}
		p.i++
	}
	p.i = start
	return false
}

// freeAhead reports whether the loops that come next are said to have been left free: "the free back loops".
func (p *parser) freeAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	p.eat("the", "through")
	p.eat("the")
	return p.eat(freeWords...)
}

// leftOver reads "left free", "that were left unworked" behind loops.
func (p *parser) leftOver() bool {
	start := p.i
	if p.eat("that", "which") {
		p.eat("have")
		p.eat("been", "were", "are")
		p.eat("been")
	}
	left := p.eat("left")
	if p.eat("free", "unused", "unworked", "over") || left && p.tok().is("of", "from", "in", "on", "by") {
		return true
	}
	p.i = start
	return false
}

// ofRoundAhead reports whether "in Rnd 1", "on round 3" comes next.
func (p *parser) ofRoundAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	p.i++
	_, ok := p.roundByNumber()
	return ok
}

// sideOfRound reads "Rnd 1", "the sts of Rnd 1" to the end of a phrase: all that is worked into is of that
// round. It is 0 for other words.
func (p *parser) sideOfRound() int {
	start := p.i
	p.stitchesOf()
	n, ok := p.roundByNumber()
	p.eat("st", "sts", "stitches")
	if ok && p.ended() {
		return n
	}
	p.i = start
	return 0
}

// stitchesOf passes over "the sts of", "top of sts of".
func (p *parser) stitchesOf() {
	start := p.i
	p.eat("the")
	if p.eat("tops", "top", "heads") {
		p.eat("of")
		p.eat("the")
	}
	if p.eat("st", "sts", "stitches") && p.eat("of", "from", "in") {
		return
	}
	p.i = start
}

// roundByNumber reads "Rnd 1".
func (p *parser) roundByNumber() (int, bool) {
	start := p.i
	p.eat("the")
	if _, ok := roundWord(p.tok()); ok {
		p.i++
		if n, ok := p.plainNumber(); ok {
			return n, true
		}
	}
	p.i = start
	return 0, false
}

// anyLoops reads "free loops", of which the words do not say which they are.
func (p *parser) anyLoops(free bool) (stitch.Into, bool) {
	start := p.i
	if p.eat("the"); free && p.eat(freeWords...) && p.eat("loop", "loops", "lp", "lps") {
		return stitch.Underside, true
	}
	p.i = start
	return stitch.Top, false
}

// inEachLoop reads "front loop" of "in each front loop of Rnd 2". It gives what such a place is called where no
// stitch is named behind it, "" for other words.
func (p *parser) inEachLoop(pl *Place) string {
	free := p.freeAhead()
	into, ok := p.loopWords()
	if !ok || into == stitch.Underside {
		return ""
	}
	pl.Into, pl.Both, pl.Free = into, into == stitch.Top, free
	return "st"
}

// loopAhead reports whether "back loop", "FLO" comes next.
func (p *parser) loopAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	_, ok := p.loopWords()
	return ok
}
