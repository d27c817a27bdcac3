package notation

import (
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// makingUp reads work that closes or joins finished edges and makes nothing of
// the fabric, as a note: "sl st short ends together", "sl st the last row to the
// foundation chain", "sc through both layers", "turn right side out".
func (p *parser) makingUp() (Item, *fault.Fault) {
	start := p.i
	note := func() (Item, *fault.Fault) {
		p.i = p.sentenceEnd()
		return &Note{Span: p.from(start), Text: p.words(start)}, nil
	}
	if p.eat("turn") {
		p.eat("hat", "work", "piece", "it", "toy")
		if p.eat("right", "wrong") && p.eat("side", "sides") && p.eat("out", "in") || p.eatAll("inside", "out") {
			return note()
		}
		p.i = start
		return nil, nil
	}
	if p.eat("with") && p.eat("right", "wrong", "rs", "ws") {
		p.eat("side", "sides")
		facing := p.eat("held", "facing")
		if facing && p.eatKind(tComma) && p.tok().is("miss", "skip", "sk", "leave") {
			p.i--
			return &Note{Span: p.from(start), Text: p.words(start)}, nil
		}
		if facing {
			p.eatKind(tComma)
		}
		if p.eat("together") || p.eatAll("each", "other") {
			if p.tok().kind == tComma && !p.instructs(p.i+1) && p.at(1).kind == tWord && !p.ends(p.i+1) {
				return note() // "…, line up the edges and sew"
			}
			return &Note{Span: p.from(start), Text: p.words(start)}, nil
		}
	}
	p.i = start
	if p.eat("with", "using") {
		// "With tail, seam …", "Using the long end, …"
		p.eat("the", "a", "remaining")
		p.eat("long", "yarn", "tapestry", "darning", "matching")
		if p.eat("tail", "tails", "end", "ends", "needle", "thread") && p.tok().kind == tComma {
			if !p.instructs(p.i + 1) {
				return note()
			}
			return &Note{Span: p.from(start), Text: p.words(start)}, nil
		}
	}
	if p.i = start; p.eat("working", "work", "going", "inserting") || p.tok().is("through", "thru") {
		p.eatAll("the", "hook")
		p.eat("hook")
		if p.throughBoth() {
			if p.tok().is("to") {
				p.i = p.phraseEnd() // "to close the opening"
			}
			comma := p.i
			if p.eatKind(tComma); p.tok().kind == tStar || p.tok().kind == tOpen || p.allAround() {
				p.i = comma // a round that goes on as any other
				return &Note{Span: p.from(start), Text: p.words(start)}, nil
			}
			if p.instructs(p.i) {
				// "working through both layers, 4 sc"
				p.eat("work", "make")
				n, of := p.seamOf()
				p.i = p.phraseEnd()
				p.work = p.work || p.labelled
				return &Note{Span: p.from(start), Text: p.words(start), Closes: true, Seam: n, Of: of}, nil
			}
		}
	}
	if p.i = start; p.seams() && !(p.labelled && p.seamAt(start)) {
		p.i = p.sentenceEnd()
		return &Note{Span: p.from(start), Text: p.words(start), Closes: true}, nil
	}
	if p.i = start; p.throughBoth() && p.work && p.at(-1).kind == tWord && p.ended() {
		return &Note{Span: p.from(start), Text: p.words(start)}, nil // "sc in each st around through both layers"
	}
	p.i = start
	p.seamLead()
	if at := p.i; !p.tok().is("working", "going") && p.throughAhead() {
		if p.allAround() {
			p.i = start
			return nil, nil
		}
		if n, of := p.seamOf(); p.i > at && p.throughBoth() {
			if p.i = p.lineBreak(p.sentenceEnd()); p.labelled {
				p.i = p.beforeCount(start, p.i)
				p.work = true
			}
			return &Note{Span: p.from(start), Text: p.words(start), Closes: true, Seam: n, Of: of}, nil
		}
	}
	p.i = start
	p.eat("work")
	p.num()
	if w, ok := p.what(); !ok || !w.Kind.Is() {
		p.i = start
		return nil, nil
	}
	p.eat("the")
	for p.eat("first", "last", "and", "short", "long", "two", "both", "side", "back", "open", "top", "bottom", "crown", "final", "beginning", "other",
		"straight", "cast", "foundation") {
	}
	if p.eat("ends", "edges", "sides", "seam", "seams", "rows", "row", "pieces", "halves") && p.eat("together", "tog", "to", "onto", "closed") {
		return note()
	}
	p.i = start
	return nil, nil
}

// hangingLoop takes chains that are closed where the round was joined, before the yarn is
// cut, as a note: "Ch 14, sl st in same st to make a hanging loop".
func (b *block) hangingLoop() bool {
	p := b.p
	start := p.i
	no := func() bool { p.i = start; return false }
	p.eat("then", "work")
	if p.chain() == nil {
		return no()
	}
	p.eatKind(tComma)
	p.eat("and", "then")
	w, ok := p.what()
	if !ok || w.Kind != stitch.Of(stitch.Slip) || !p.eat("in", "into", "to") {
		return no()
	}
	pl, ok := p.place()
	if !ok || pl.Pick != Same && pl.Pick != First {
		return no()
	}
	for p.tok().kind == tWord && !p.tok().first && !p.ends(p.i) {
		if p.tok().is("rep", "repeat", "ch", "chain", "in") {
			return no()
		}
		p.i++
	}
	if p.eatKind(tComma) || p.eatKind(tStop) {
		if end := p.i; p.tok().kind != tEnd && !p.tok().first && !p.ends(end) {
			return no()
		}
		p.i--
	} else if p.tok().kind != tEnd && !p.tok().first {
		return no()
	}
	return p.note(b, start, p.i)
}

// seams reports whether the sentence from here on works slip stitches through both
// layers: "Working through both layers, sl st in each of 12 pairs", "Holding the last
// row against the foundation chain, slip stitch the two together".
func (p *parser) seams() bool {
	if !p.tok().is("working", "holding", "fold", "hold", "sl", "ss", "slip", "join", "crochet", "lay", "place", "bring") {
		return false
	}
	if p.tok().is("join") && p.at(1).is("yarn", "with") {
		return false // "Join yarn with sl st through both layers in any corner"
	}
	layers, slips, row := false, false, false
	for j := p.i; j < p.sentenceEnd(); j++ {
		t := &p.toks[j]
		layers = layers || t.is("layers", "thicknesses") || t.is("two", "edges", "ends") && p.toks[j+1].is("together")
		slips = slips || t.is("ss", "slip") || t.is("sl") && p.toks[j+1].is("st", "sts")
		_, round := roundWord(t)
		row = row || round && p.toks[j+1].kind == tNumber
	}
	return layers && slips && !row
}

// trimmed takes what is put on a finished piece, and is none of its stitches: "Work 15
// tassels evenly along each short end", "Make a fringe along both ends". Work that
// follows behind a comma is left to be read.
func (p *parser) trimmed(b *block, end int) bool {
	start := p.i
	if p.tok().is("fold", "cut", "take", "hold", "holding", "using", "for", "attach", "tie", "knot", "loop", "draw", "pull", "insert", "with", "add", "thread", "fasten") && p.trims(start, end) {
		return p.note(b, start, end)
	}
	if !p.eat("work", "make", "knot", "loop", "fix", "place", "space") {
		return false
	}
	if _, ok := p.num(); !ok {
		p.eat("a", "an", "the", "your", "all")
	}
	if p.tok().kind == tWord && p.at(1).is(trimmings...) {
		if _, ok := p.what(); ok || p.tok().is("in", "into", "of", "with") {
			p.i = start
			return false
		}
		p.i++ // "knotted fringe"
	}
	at := p.i
	_, stitch := p.what() // one that the designer has told
	if p.i = at; stitch || !p.eat(trimmings...) {
		p.i = start
		return false
	}
	for j := p.i; j < end; j++ {
		if k := p.toks[j].kind; (k == tComma || k == tSemi) && (p.ends(j+1) || p.instructs(j+1)) {
			return p.note(b, start, j)
		}
	}
	return p.note(b, start, end)
}

// trims reports whether the line is about trimmings, "Fringe: Cut 72 lengths of A. Fold two
// together and loop them through every other stitch", and the words from token i to end
// make no stitches.
func (p *parser) trims(i, end int) bool {
	if p.evident(i, end) {
		return false
	}
	j := i
	for j > 0 && !p.toks[j].first {
		j--
	}
	cut := false
	for ; j < end; j++ {
		cut = cut || p.toks[j].is("cut", "snip")
		if p.toks[j].is(trimmings...) || cut && p.toks[j].is("lengths", "strands", "pieces") {
			return true // "Cut 30 cm lengths of yarn and knot two together in every other stitch"
		}
	}
	return false
}

// trimmings are what is put on a piece that is finished.
var trimmings = []string{"tassel", "tassels", "fringe", "fringes", "fringing", "pompom", "pompoms", "tassle", "tassles"}

// loopedOn reports whether the sentence from here on closes a chain into a loop at the
// top of the finished thing, and works nothing else: "Join Snow to top of bauble, make
// 25 ch, ss in same place".
func (p *parser) loopedOn(end int) bool {
	start := p.i
	defer func() { p.i = start }()
	if start > 1 && p.toks[start-1].kind == tColon && p.toks[start-2].kind == tNumber {
		return false // a round with a number
	}
	for n := 0; n < 3 && p.tok().kind == tWord; n++ {
		p.i++
	}
	if !p.eatKind(tColon) {
		p.i = start // without "Hanging loop:" before it
	}
	if !p.eat("join", "rejoin", "attach") {
		return false
	}
	p.eat("the")
	if _, ok := p.yarn(); !ok {
		if _, ok = p.yarnName(); !ok {
			return false
		}
	}
	if p.eat("with") {
		p.eat("a")
		if w, ok := p.what(); !ok || w.Kind != stitch.Of(stitch.Slip) {
			return false
		}
	}
	if !p.eat("to", "at", "in", "into") {
		return false
	}
	p.eat("the")
	if !p.eat("top", "tip", "point") || !p.eat("of") {
		return false
	}
	p.eat("the", "your", "finished")
	if p.tok().kind != tWord || p.stitchy(p.i, p.i+1) || p.tok().is("turning", "beginning", "beg", "starting", "first", "last", "same", "any", "each") {
		return false
	}
	if _, ok := roundWord(p.tok()); ok {
		return false
	}
	if p.i++; !p.eatKind(tComma) && !p.eat("and", "then") {
		return false
	}
	p.eat("and", "then")
	p.eat("work", "make")
	if p.chain() == nil {
		return false
	}
	p.eatKind(tComma)
	p.eat("and", "then")
	p.eat("join", "work")
	p.eat("with")
	p.eat("a")
	w, ok := p.what()
	if !ok || w.Kind != stitch.Of(stitch.Slip) || !p.eat("in", "into", "to", "at") {
		return false
	}
	if p.eat("the"); !p.eat("same") || !p.eat("place", "st", "stitch", "spot") {
		return false
	}
	for j := p.i; j < end; j++ {
		if k := p.toks[j].kind; k == tStar || (k == tComma || k == tSemi) && !p.ends(j+1) && p.instructs(j+1) {
			return false
		}
	}
	return !p.evident(p.i, end)
}
