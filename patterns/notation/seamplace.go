package notation

// seamNoun reads what the place is called where two motifs are joined: "join", "seam between two
// hexagons on the outer edge". It must come where a place is named.
func (p *parser) seamNoun() bool {
	start := p.i
	p.eat("corner")
	if !p.eat("join", "joins", "seam", "seams", "joining", "joinings") {
		p.i = start
		return false
	}
	if at := p.i; p.eat("between", "of", "where", "joining") {
		if !p.twoMotifs() {
			p.i = at
			return p.atPlaceEnd()
		}
		p.outerEdge()
		return true
	}
	p.outerEdge()
	if p.atPlaceEnd() {
		return true
	}
	p.i = start
	return false
}

// atPlaceEnd reports whether a place may end here: before what tells how far, or a number of times.
func (p *parser) atPlaceEnd() bool {
	return p.ended() || p.tok().is("around", "across", "to", "along", "and", "as", "twice") || p.tok().kind == tClose
}

// twoMotifs reads "two hexagons", "the squares meet", "each motif".
func (p *parser) twoMotifs() bool {
	start := p.i
	for p.eat("the", "two", "2", "each", "every", "any", "adjacent", "adjoining", "next", "neighbouring", "neighboring", "joined", "both", "these") {
	}
	p.plainNumber()
	p.eat("adjacent", "adjoining", "joined", "granny")
	if !p.tok().joinable() {
		p.i = start
		return false
	}
	p.i++
	if p.eat("meet", "join", "touch") || p.eatAll("are", "joined") || p.eatAll("come", "together") {
		return true
	}
	return true
}

// outerEdge passes over "on the outer edge", "along the outside".
func (p *parser) outerEdge() {
	start := p.i
	if p.eat("on", "along", "at", "around") {
		p.eat("the")
		p.eat("outer", "outside", "long", "short")
		if p.eat("edge", "edges", "side") || p.at(-1).is("outside") {
			return
		}
	}
	p.i = start
}

// seamTarget reads a place that lies at the join between two motifs.
func (p *parser) seamTarget() (Target, bool) {
	start := p.i
	before := p.at(-1)
	if start == 0 {
		return Target{}, false
	}
	if p.tok().is("sp", "space", "gap", "place", "spot", "point") && p.at(1).is("between", "where") {
		p.i += 2
		if p.twoMotifs() && p.atPlaceEnd() {
			return Target{Sort: SeamPlace, Text: p.words(start)}, true
		}
		p.i = start
		return Target{}, false
	}
	if p.eat("joined", "joining", "adjoining", "seamed") {
		if t, ok := p.target(); ok && (t.Sort == ChainSpace || t.Sort == CornerStitch || t.Sort == OfKind && t.Name == "") && t.Seam == NoSeam {
			t.Seam, t.Text = EitherSide, p.words(start)
			if p.besideSeamNoun() == NoSeam {
				p.ofMotifs()
			}
			return t, true
		}
		p.i = start
	}
	if (before.is("the", "each", "every", "next", "a", "any", "in", "into", "over", "across", "first", "last", "skip", "sk", "miss", "skipping", "missing", "of", "this", "same", "to", "at") ||
		before.kind == tNumber || before.is("and") && p.tok().is("seam", "seams", "joins")) && p.seamNoun() {
		return Target{Sort: SeamPlace, Text: p.words(start)}, true
	}
	p.i = start
	return Target{}, false
}

// ofMotifs passes over "of the two squares".
func (p *parser) ofMotifs() {
	start := p.i
	if !p.eat("of", "between", "where") || !p.twoMotifs() {
		p.i = start
	}
}

// besideSeamNoun reads "before the join", "on either side of each seam", "at the join", "where the
// squares meet": on which side of the seam something lies.
func (p *parser) besideSeamNoun() SeamSide {
	start := p.i
	side := EitherSide
	p.eat("just", "right", "directly", "immediately")
	switch {
	case p.eat("before"):
		side = BeforeSeam
	case p.eat("after", "past", "following"):
		side = AfterSeam
	case p.eat("beside") || p.eatAll("next", "to") || p.eatAll("either", "side", "of"):
	case p.eat("where"):
		if p.twoMotifs() && p.at(-1).is("meet", "join", "touch", "joined", "together") {
			return side
		}
		p.i = start
		return NoSeam
	case p.eat("on", "at", "to"):
		if p.eat("either", "each", "both") {
			if !p.eat("side", "sides") || !p.eat("of") {
				p.i = start
				return NoSeam
			}
		} else if p.toks[start].is("on", "to") {
			p.i = start
			return NoSeam
		}
	default:
		p.i = start
		return NoSeam
	}
	p.eat("the", "each", "every", "a", "any", "next", "this")
	if p.seamNoun() {
		return side
	}
	p.i = start
	return NoSeam
}

// besideSeam reads on which side of a seam the stitch or the space of a place lies.
func (p *parser) besideSeam(pl *Place) bool {
	t := &pl.Target
	if pl.N.Set() && t.Sort != ChainSpace {
		return false // "10 sts after the join"
	}
	if t.Seam != NoSeam || pl.Of != nil || t.Sort != AnyStitch && t.Sort != OfKind && t.Sort != ChainSpace && t.Sort != CornerStitch {
		return false
	}
	side := p.besideSeamNoun()
	if side == NoSeam {
		return false
	}
	every := p.at(-2).is("each", "every")
	if pl.Pick == Each && side == EitherSide && !pl.N.Set() && !every && p.ended() {
		pl.Pick, pl.N = Next, Num{Span: pl.Span, Values: []int{2}} // "each corner sp either side of the join"
	}
	if t.Seam = side; pl.Pick == First || pl.Pick == Last || pl.Pick == Any {
		pl.Pick, pl.Nth, pl.Bare = Next, 0, false
	}
	return true
}

// toSeam reads "next seam", "the join" where work goes up to it; "to join" at the end of a sentence
// closes the round.
func (p *parser) toSeam() (Target, bool) {
	start := p.i
	p.eat("first")
	if p.tok().is("join") && p.i == start && p.at(-1).is("to") && (p.at(-1).first || p.depth < 2 && !p.starred() || p.at(1).kind != tComma) {
		return Target{}, false
	}
	if t, ok := p.seamTarget(); ok && t.Sort == SeamPlace {
		return t, true
	}
	p.i = start
	return Target{}, false
}
