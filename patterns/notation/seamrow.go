package notation

import "whorl/patterns/stitch"

// openings are what is closed by stitches through both layers.
var openings = []string{"opening", "top", "bottom", "end", "ends", "edge", "edges", "side", "sides", "seam", "hole", "gap", "layers", "pieces", "halves", "piece", "it", "ear", "round", "rnd"}

// seamLead passes over what a seam through both layers may begin with: "work", "close the
// opening with".
func (p *parser) seamLead() {
	start := p.i
	if p.eat("work", "make") {
		return
	}
	if p.eat("close", "join", "seam", "crochet") {
		p.eat("up")
		p.eat("the")
		p.eat("open", "top", "bottom")
		p.eat(openings...)
		p.eat("closed", "together", "shut", "up")
		if p.eat("with", "by") || p.eatKind(tComma) {
			p.eat("working", "making")
			return
		}
	}
	p.i = start
}

// closed reads "the opening closed", "it closed", "both sides together".
func (p *parser) closed() bool {
	start := p.i
	p.eat("the", "both", "two")
	p.eat("open", "top", "bottom")
	p.eat(openings...)
	if p.eat("closed", "together", "tog", "shut") {
		return true
	}
	p.i = start
	return false
}

// throughAhead reports whether the sentence goes through anything.
func (p *parser) throughAhead() bool {
	for j := p.i; j < p.sentenceEnd(); j++ {
		if p.toks[j].is("through", "thru") {
			return true
		}
	}
	return false
}

// throughBoth reads "through both layers", "(through both thicknesses)", "through both
// loops of both sides".
func (p *parser) throughBoth() bool {
	start := p.i
	open := p.eatKind(tOpen)
	p.eatKind(tComma)
	p.eat("working", "worked", "going", "inserting")
	p.eat("hook")
	if p.eat("through", "thru") {
		p.eat("the")
		if at := p.i; !(p.eat("both", "all") && p.eat("loops", "lps") && p.eat("of", "on")) {
			p.i = at
		}
		if p.eat("both", "all", "two", "double") || p.eat("front") && p.eat("and") && p.eat("back") {
			p.eat("the")
			if p.eat("layers", "layer", "thicknesses", "thickness", "pieces", "sides", "edges") {
				return !open || p.eatKind(tClose)
			}
		}
	}
	p.i = start
	return false
}

// allAround reports whether a labelled round goes into each stitch around, "1 sc in each dc around":
// through two pieces held together it is a round as any other, and no seam across an opening.
func (p *parser) allAround() bool {
	if !p.labelled {
		return false
	}
	start, faults, work := p.i, len(p.faults), p.work
	defer func() { p.i, p.faults, p.work = start, p.faults[:faults], work }()
	p.eat("work", "make")
	it, ok := p.stitches()
	s, _ := it.(*Stitches)
	if !ok || s == nil || !s.What.Kind.Is() || len(s.Places) != 1 || s.Places[0].Pick != Each || s.Places[0].Extent.Sort != ToEnd {
		return false
	}
	for j := start; j < p.i; j++ {
		if p.toks[j].is("around", "round") {
			return true
		}
	}
	return false
}

// seamAt reports whether stitches through both layers begin at token i.
func (p *parser) seamAt(i int) bool {
	start := p.i
	defer func() { p.i = start }()
	p.i = i
	if p.eatKind(tComma); p.tok().is("working", "going", "inserting", "through", "thru") && p.throughBoth() {
		return true
	}
	p.seamLead()
	at := p.i
	p.seamOf()
	return p.i > at && p.throughBoth()
}

// lineBreak is where a line ends before token end whose next begins a sentence, though there is no full stop
// between them; or else end: "sc through both layers across [4] / Fasten off".
func (p *parser) lineBreak(end int) int {
	for j := p.i; j < end; j++ {
		if t := &p.toks[j]; t.first && capital(t.raw) && !goesOn(&p.toks[j-1]) {
			return j
		}
	}
	return end
}

// beforeCount is the token before the count in brackets that a sentence ends with, or its
// end.
func (p *parser) beforeCount(start, end int) int {
	at, faults := p.i, len(p.faults)
	defer func() { p.i, p.faults = at, p.faults[:faults] }()
	for p.i = start; p.i < end; p.i++ {
		if p.tok().kind == tOpen && p.matching(p.i) == end-1 && p.at(1).kind == tNumber {
			open := p.i
			if p.i++; p.statedUpTo(end-1) != nil {
				return open
			}
			return end
		}
	}
	return end
}

// seamOf reads the stitches of a seam, "sc 5", "5 sc", "sc in next 5 sts", "sc across", "sc the opening
// closed", and gives how many they are, unset where that is not said, and their kind.
func (p *parser) seamOf() (n Num, of stitch.Kind) {
	start := p.i
	if w, ok := p.what(); ok && w.Kind.Is() && p.closed() {
		return n, w.Kind
	}
	p.i = start
	work, faults := p.work, len(p.faults)
	it, ok := p.stitches()
	p.work, p.faults = work, p.faults[:faults]
	s, _ := it.(*Stitches)
	if !ok || !s.What.Kind.Is() {
		p.i = start
		return n, of
	}
	of = s.What.Kind
	switch n = s.N; {
	case s.Times.Set() || len(s.Places) > 1:
		return Num{}, of
	case len(s.Places) == 1 && (!n.Set() || onlyOne(n) && s.Places[0].N.Set()):
		n = s.Places[0].N
	case len(s.Places) == 1 && !(s.Places[0].Pick == Each && s.Places[0].Extent.Sort != NoExtent):
		return Num{}, of
	}
	return n, of
}
