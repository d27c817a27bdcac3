package notation

import "whorl/patterns/fault"

// wholeThings are pieces whose length from one end to the other is told by their name alone.
var wholeThings = []string{"hat", "beanie", "cap", "bonnet", "cowl", "sock", "mitten", "whole", "total"}

// lengthTail are words that say how and from where a length is measured.
var lengthTail = []string{"from", "beg", "beginning", "when", "slightly", "unstretched", "long", "tall", "deep", "high", "in", "length",
	"total", "wide", "or", "the", "edge", "start", "relaxed", "laid", "flat", "stretched", "of", "crown", "top", "center",
	"centre", "foundation", "magic", "ring", "circle", "brim", "to", "desired", "preferred", "lower", "upper", "bottom", "cast",
	"first", "rnd", "round", "row", "measured", "unstretched", "chain", "ch", "rounds", "along", "down", "side", "tip",
	"edging", "border", "ribbing", "last", "increase", "inc", "including", "with", "your", "hat", "very"}

// untilMeasures reads "until piece measures 38 (40, 42) cm from beg", "until your hat is about 20 cm tall
// (about 7 more rounds)", "until it reaches 15 cm": a length, and the rounds that it comes to at the
// designer's own gauge. It is nil for an until of anything else.
func (p *parser) untilMeasures() (*Until, *fault.Fault) {
	start := p.i
	p.eat("continue", "cont", "work", "rep", "repeat")
	p.eat("even")
	if !p.eat("until", "till") {
		return nil, nil
	}
	at, whole := p.i, false
	for p.tok().kind == tWord && !p.tok().is("measures", "measure", "is", "are", "reaches", "reach") && p.i-at < 5 {
		whole = whole || p.tok().is(wholeThings...)
		p.i++
	}
	measures := p.eat("measures", "measure")
	if !measures && !p.eat("is", "are", "reaches", "reach") {
		return nil, nil
	}
	p.eatAll("at", "least")
	p.eat("about", "approximately", "approx", "roughly", "around", "just")
	p.eatKind(tStop)
	faults := len(p.faults)
	length, f := p.lengths()
	if f != nil {
		if !measures {
			p.faults, f = p.faults[:faults], nil // "until all is done"
		}
		return nil, f
	}
	u := &Until{Span: p.from(start), Length: length, Whole: whole}
	// "from beg", "when slightly stretched", "(15 in)", "or desired length"
	if p.tok().kind == tOpen && p.lengthsIn(p.matching(p.i)) {
		p.i = p.matching(p.i) + 1
	}
	u.End = p.endingRow()
	p.orAsLiked()
	if p.tok().kind == tComma {
		p.comesTo(u)
	}
	at = p.i
	if p.eatKind(tComma) && !p.tok().is("slightly", "when", "unstretched", "relaxed", "laid", "measured", "or", "stretched", "from") {
		p.i = at
	}
	for p.tok().is(lengthTail...) {
		if p.tok().is("from") {
			u.Whole = false // from where is said behind it
		}
		u.Whole = u.Whole || p.tok().is("lower", "bottom", "including", "crown", "top", "center", "centre", "total")
		p.i++
	}
	fromRound := -1
	if _, round := roundWord(p.at(-1)); round && p.tok().kind == tNumber && p.at(-2).is("from") {
		fromRound = p.i
		p.i++
	}
	if !u.End.Set {
		u.End = p.endingRow()
	}
	if p.eatKind(tSlash) {
		if _, f := p.lengths(); f != nil {
			return nil, f
		}
	}
	p.comesTo(u)
	if fromRound >= 0 && !(u.Rows.Set() && u.More) {
		p.i = fromRound // how far it is from a round is not reckoned
		return u, nil
	}
	p.orAsLiked()
	if !u.End.Set {
		u.End = p.endingRow() // "…, or as long as you like, ending with a Row 6"
	}
	if !u.Rows.Set() {
		p.comesTo(u)
	}
	return u, nil
}
