package notation

// tellsPlaces reads "(4 dc, 1 sc, 4 dc)", "(4 dc and the sc)" behind "over next 9 sts": what
// the stitches are that have just been named. It makes nothing, and is no count of the round.
func (b *block) tellsPlaces(open, close int) bool {
	p := b.p
	if len(b.items) == 0 || open == 0 || p.toks[open].first {
		return false
	}
	switch p.toks[open-1].kind {
	case tWord, tHyphen:
	default:
		return false
	}
	n, over := Num{}, false
	switch it := b.items[len(b.items)-1].(type) {
	case *Stitches:
		if len(it.Places) == 0 || it.Times.Set() {
			return false
		}
		pl := &it.Places[len(it.Places)-1]
		if n, over = pl.N, pl.Over; pl.Pick != Next && pl.Pick != Last {
			return false
		}
	case *Skip:
		n, over = it.N, true
	default:
		return false
	}
	if n.For(0) < 2 {
		return false
	}
	switch next := &p.toks[close+1]; {
	case next.kind == tComma, next.kind == tSemi, next.kind == tClose, next.is("and", "then"):
	case next.kind == tStop, next.kind == tEnd:
		over = false
	default:
		return false
	}
	start := p.i
	defer func() { p.i = start }()
	p.i = open + 1
	sum, all := 0, true
	for p.i < close {
		for p.eat("the", "a", "an", "next", "last", "first", "final", "remaining", "both", "each", "one", "that", "this", "beginning") {
		}
		k := 1
		if m, ok := p.num(); ok {
			if all = all && len(m.Values) == 1; all {
				k = m.Values[0]
			}
		}
		t, ok := p.target()
		if !ok {
			w, is := p.what()
			if ok = is; is && w.Kind.Is() {
				t.Sort = OfKind
			}
		}
		if !ok {
			if t, ok = p.startChain(); !ok {
				return false
			}
		}
		sum += k
		if p.eat("of", "from", "in", "on") {
			p.eat("the", "each", "this", "that", "next", "last", "first", "previous")
			if _, round := roundWord(p.tok()); round {
				p.i++
			} else if _, ok := p.target(); !ok {
				return false
			}
		}
		for p.eatKind(tComma) || p.eatKind(tPlus) || p.eatKind(tSlash) || p.eat("and", "plus", "then") {
		}
	}
	if p.i != close {
		return false
	}
	return over || all && sum == n.For(0) && p.instructs(close+2)
}

// tellsRate reads "(3 sc to a block)", "(1 dc per row end)" behind stitches that are spread along
// an edge: how many come to a part of it.
func (b *block) tellsRate(open, close int) bool {
	p := b.p
	if len(b.items) == 0 {
		return false
	}
	s, ok := b.items[len(b.items)-1].(*Stitches)
	if !ok || len(s.Places) == 0 {
		return false
	}
	if pl := &s.Places[len(s.Places)-1]; !pl.Evenly && pl.Target.Sort != RowEnds {
		return false
	}
	start := p.i
	defer func() { p.i = start }()
	p.i = open + 1
	for p.eat("about", "that", "is", "that's", "approximately", "roughly", "i.e", "or", "work", "working") {
	}
	_, counted := p.num()
	w, made := p.what()
	if !counted || !made || !w.Kind.Is() {
		return false
	}
	switch {
	case p.eat("per"):
	case p.eat("to", "for", "in", "into", "along", "on", "at"):
		if !p.eat("a", "an", "each", "every") {
			return false
		}
	default:
		return false
	}
	if _, ok := p.num(); !ok && p.tok().kind != tWord {
		return false
	}
	for p.tok().kind == tWord && p.i < close {
		p.i++
	}
	return p.i == close
}

// hasSoMany reports whether a sentence says how many stitches the sides of a piece have: "Each side of
// the square has 8 sc to match one side of the octagon". What a corner has may be what is worked there.
func (p *parser) hasSoMany() bool {
	start := p.i
	defer func() { p.i = start }()
	if !p.eat("each", "every", "all", "both", "one", "either", "any") {
		return false
	}
	end := p.sentenceEnd()
	for p.eat("of", "the", "four", "six", "eight") || p.tok().kind == tNumber && p.eatKind(tNumber) {
	}
	if !p.eat("side", "sides", "edge", "edges", "piece", "pieces", "motif", "motifs", "square", "squares", "hexagon", "hexagons", "octagon", "octagons",
		"triangle", "triangles", "panel", "panels", "strip", "strips", "block", "blocks") {
		return false
	}
	for p.tok().is("of", "on", "the", "a", "this", "that", "each", "its") || p.tok().kind == tWord && p.at(-1).is("the", "a", "this", "each", "of", "its") && !p.stitchy(p.i, p.i+1) {
		p.i++
	}
	p.eat("now", "still")
	if !p.eat("has", "have") {
		return false
	}
	p.eat("now", "still")
	if _, ok := p.num(); !ok {
		return false
	}
	if w, ok := p.what(); !ok || !w.Kind.Is() {
		if _, ok := p.target(); !ok {
			return false
		}
	}
	return p.i == end || !p.evident(p.i, end)
}
