package notation

import "whorl/patterns/fault"

// uncounted takes an edging that is only told in passing, "Join yarn at centre back and sc
// evenly all the way round the hat", as a note, with a warning: it has no number of its
// own, and how many stitches it has is not said.
func (p *parser) uncounted(b *block) bool {
	if p.labelled && p.tok().pos.Line == p.toks[0].pos.Line || p.depth > 1 {
		return false
	}
	start, end := p.i, p.sentenceEnd()
	at := -1
	for j := start; j < end; j++ {
		if p.toks[j].is("evenly") {
			at = j
		}
		if _, rounds := roundWord(&p.toks[j+1]); p.toks[j].kind == tStar || at < 0 && p.toks[j].kind == tNumber && !rounds {
			return false // but "1 round of dc evenly" does not say how many stitches
		}
	}
	if at <= start || !p.plainBefore(start, at) {
		return false
	}
	goes, whole := false, false
	for j := at + 1; j < end; j++ {
		goes = goes || p.toks[j].is("around", "round", "along")
		whole = whole || goes && p.toks[j].is("edge", "edges", "hat", "cap", "bonnet", "flaps", "piece", "blanket", "outside", "shawl", "scarf")
	}
	if !whole {
		return false
	}
	p.note(b, start, end)
	for ; at > start && !p.toks[at].first; at-- {
	}
	f := fail(p.from(at), "uncounted", "the words do not say how many stitches this edging has, so it is not worked",
		"Give it a label and a number to have it counted and drawn: Rnd 1: Work 60 sc evenly around.")
	f.Severity = fault.Warning
	p.report(f)
	return true
}

// plainBefore reports whether a plain stitch without a number stands just before token
// at: "sc evenly".
func (p *parser) plainBefore(start, at int) bool {
	back := p.i
	defer func() { p.i = back }()
	for j := max(start, at-3); j < at; j++ {
		p.i = j
		if w, ok := p.what(); ok && w.Kind.Is() && p.i == at {
			return j == 0 || p.toks[j-1].kind != tNumber
		}
	}
	return false
}

// edgingOn takes where an edging that is told in rounds of its own is worked for a note: "Work the edging once
// along each long edge", "Work this border twice, once along each side", "Do this on both long edges". It
// makes nothing by itself.
func (p *parser) edgingOn(b *block) bool {
	start, end := p.i, p.sentenceEnd()
	no := func() bool { p.i = start; return false }
	if p.depth > 1 || !p.eat("work", "make", "rep", "repeat", "crochet", "do") {
		return no()
	}
	p.eat("the", "this", "these", "an", "one", "same", "both")
	p.eat("following", "same", "two", "three", "next")
	named := p.eat("edging", "border", "trim", "edgings")
	if !named && (p.labelled && p.tok().pos.Line == p.toks[0].pos.Line || !p.eat("rounds", "rnds", "rows") && !p.at(-1).is("this", "these", "same", "rep", "repeat")) {
		return no() // on the line of a round "this" may be some of it
	}
	if p.eat("once", "twice"); p.at(-1).is("twice") {
		p.eatKind(tComma)
		p.eat("once")
	}
	if !p.eat("along", "on", "around", "round", "at", "across", "to") {
		return no()
	}
	p.eat("the")
	if !p.eat("each", "both", "other", "second", "opposite", "two", "every", "either") {
		return no()
	}
	for p.eat("of", "the", "remaining", "rem", "other", "long", "short", "straight", "side", "side's", "top", "bottom", "outer", "two", "and") {
	}
	if !p.eat("edge", "edges", "end", "ends", "armhole", "armholes", "opening", "openings", "cuff", "cuffs") && !(named && p.at(-1).is("side")) || p.evident(p.i, end) {
		return no()
	}
	for j := p.i; j < end && !named; j++ {
		if p.toks[j].kind == tNumber || p.toks[j].is("times", "twice", "once") {
			return no()
		}
	}
	return p.note(b, start, end)
}
