package notation

// atSeam passes over "the back seam", "underarm", "centre back of the band": where a round
// begins as a matter of course.
func (p *parser) atSeam() bool {
	start := p.i
	if p.anyRowEnd() {
		at := p.i
		if p.eatKind(tComma); !p.eat("at", "near", "by", "closest", "nearest", "beside") || !p.atSeam() {
			p.i = at
		}
		return true
	}
	p.eat("the", "one", "either", "any")
	p.eat("start", "beginning", "end", "top", "bottom", "base")
	p.eat("of")
	p.eat("the")
	if p.eat("back", "side", "center", "centre", "brim", "band", "cuff", "ribbing", "rib", "underarm", "inside", "heel", "toe", "sole", "foot", "leg", "ankle",
		"shoulder", "left", "right", "neck", "crown", "thumb", "sleeve", "body", "front") {
		p.eat("back", "front", "side", "leg", "shoulder", "sleeve")
	}
	if !p.eat("seam", "seams", "join") && !p.at(-1).is("underarm", "back") || p.i == start || p.at(-1).is("back") && !p.at(-2).is("center", "centre") {
		p.i = start
		return false
	}
	if at := p.i; p.eat("of", "in") {
		p.eat("the", "your")
		if p.tok().kind == tWord && !p.tok().first && !p.stitchy(p.i, p.i+1) {
			p.i++
		} else {
			p.i = at
		}
	}
	return true
}

// atUnderarm reads "the underarm", "center of underarm", "base of the armhole": where the yarn of a
// sleeve is joined.
func (p *parser) atUnderarm() bool {
	start := p.i
	p.eat("the")
	if p.eat("center", "centre", "middle", "base", "bottom", "beginning", "start") {
		p.eat("of")
		p.eat("the", "one")
	}
	if p.eat("underarm", "underarms", "armpit") {
		p.eat("chain", "ch", "chs", "chains")
	} else if p.i == start || !p.at(-1).is("of", "the") || !p.toks[start+1].is("center", "centre", "middle", "base", "bottom", "of") || !p.eat("armhole") {
		p.i = start
		return false
	} else {
		p.opening = true
	}
	if !p.ended() && !p.tok().is("with", "ch", "chain") {
		p.i = start
		return false
	}
	return true
}

// cornerOfSide reads "the corner of one long side", "lower corner of either edge", "right-hand end of straight
// edge": where an edging along row ends begins.
func (p *parser) cornerOfSide() bool {
	start := p.i
	p.eat("the", "a", "one")
	p.whichCorner()
	end := p.i
	if p.eat("right", "left") {
		p.eatKind(tHyphen)
		p.eat("hand")
	}
	if !p.tok().is("end") {
		p.i = end
	}
	end = p.i - start
	if p.eat("corner", "end") && p.eat("of") && (p.eat("one", "either", "a", "any") || end > 0 && p.at(-2).is("end") && (p.eat("the", "this") || true)) {
		p.eat("long", "longer", "short", "shorter", "row", "side", "straight", "flat")
		if p.eat("side", "edge", "end") || p.at(-1).is("side") {
			return true
		}
	}
	p.i = start
	return false
}

// anyRowEnd reads "any row end", "the end of any row", "side of the first row": one of the edge that
// a round goes along.
func (p *parser) anyRowEnd() bool {
	start := p.i
	p.eat("the")
	if p.eat("any", "a", "one", "first") && p.eat("row") {
		p.eatKind(tHyphen)
		if p.eat("end", "edge", "side") {
			return true
		}
	} else if p.i = start; true {
		p.eat("the")
		if p.eat("end", "side", "edge") && p.eat("of") {
			p.eat("the")
			if p.eat("any", "a", "one", "first") && p.eat("row") {
				return true
			}
		}
	}
	p.i = start
	return false
}

// withSlip reads "with a sl st" behind where a yarn is joined.
func (p *parser) withSlip(j *Join) {
	start := p.i
	if p.eat("with", "using", "by") {
		p.eat("a", "an")
		if w, ok := p.what(); ok && w.Kind.Is() {
			if !j.With.Kind.Is() && w.Kind.Base > 0 {
				j.With = w
			}
			return
		}
	}
	p.i = start
}

// hereAndLater passes over "here and on all rnds", "now and at the end of every round"
// behind a join: the rounds to come say so themselves, or are joined as a matter of course.
func (p *parser) hereAndLater() {
	start := p.i
	p.eatKind(tComma)
	if p.eat("here", "now", "this") && p.eat("and") {
		p.eat("at", "on", "in", "to", "for")
		p.eat("the")
		p.eat("end", "ends")
		p.eat("of")
		all := p.eat("all", "every", "each", "the", "following", "throughout", "subsequent", "later")
		p.eat("following", "other", "subsequent", "later", "future", "of", "remaining")
		p.eat("the")
		_, round := roundWord(p.tok())
		if round {
			p.i++
		}
		if (round || all && p.at(-1).is("throughout")) && p.ended() {
			return
		}
	}
	p.i = start
}

// beforeSeam is the place of "4 sts before a side seam" at token i, counted back from
// where the round begins; nil for other words.
func (p *parser) beforeSeam(i int) *Place {
	at := p.i
	defer func() { p.i = at }()
	p.i = i
	n, ok := p.num()
	if !ok || !p.eat("st", "sts", "stitch", "stitches") || !p.eat("before") {
		return nil
	}
	for end := p.phraseEnd(); p.i < end; p.i++ {
		if p.tok().is("seam", "join", "joining", "beginning", "beg") {
			return &Place{Span: p.from(i), Pick: Last, N: n}
		}
	}
	return nil
}
