package notation

// including reads ", including the ch-1 sps", "(including chs)", ", counting each ch-1 as a st"
// behind each stitch: what is gone into as it comes, besides. Stitches by name, "including the top
// of each popcorn", are among them anyway.
func (p *parser) including(pl *Place) bool {
	start := p.i
	no := func() bool { p.i = start; return false }
	open := p.eatKind(tComma) && p.eatKind(tOpen) || p.eatKind(tOpen)
	if !p.eat("including", "incl", "counting", "includes") {
		return no()
	}
	counting := p.at(-1).is("counting")
	p.eatKind(tStop)
	p.eat("in", "into")
	p.eat("both", "also")
	for p.eat("the", "each", "every", "all", "any", "a", "one", "top", "tops", "of") {
	}
	among := Num{}
	if at := p.i; !p.groupAhead() {
		if n, ok := p.num(); ok && p.tok().is("ch", "chs", "chain", "chains") {
			among = n // "including the 6 chs"
		} else {
			p.i = at
		}
	}
	t, ok := p.target()
	if !ok || among.Set() && t.Sort != ChainStitch {
		return no()
	}
	if p.eat("as") {
		p.eat("a", "one", "1")
		if !p.eat("st", "sts", "stitch", "stitches") {
			if w, ok := p.what(); !ok || !w.Kind.Is() {
				return no()
			}
		}
	} else if counting {
		return no()
	}
	if open && !p.eatKind(tClose) {
		return no()
	}
	if !p.ended() && !p.tok().first && !p.tok().is("around", "across", "to") {
		return no()
	}
	switch {
	case t.Sort == StartChain && t.Chains == 0 && pl.Target.Sort == AnyStitch:
		return true // "including the top of the turning chain", which is one of them
	case t.ByNumber():
		t = Target{Sort: ChainSpace, Chains: t.Chains, Text: t.Text}
	case t.Sort == OfKind || t.Sort == OfShape || t.Sort == OfName:
		return pl.Target.Sort == AnyStitch || no()
	case t.Sort != ChainSpace && t.Sort != ChainStitch || t.Name != "":
		return no()
	}
	pl.Also, pl.Among = append(pl.Also, t), among
	return true
}

// besideEach reads "after each puff", "between the shells" behind a space: where they all are.
func (p *parser) besideEach(pl *Place) bool {
	start := p.i
	if p.eat("after", "before", "between", "following", "beside", "behind") {
		between, every := p.at(-1).is("between"), false
		for p.eat("each", "every", "all", "the", "two", "of") {
			every = every || p.at(-1).is("each", "every", "all")
		}
		t, ok := p.target()
		if ok && (t.Sort == OfKind || t.Sort == OfShape || t.Sort == OfName) && (p.ended() || p.tok().is("around", "across", "to")) &&
			(between || every && (pl.Pick == Each || pl.Bare)) {
			if every && pl.Pick == Next && pl.Bare {
				pl.Pick, pl.Bare = Each, false // "in the ch-1 space after each puff"
			}
			return true
		}
	}
	p.i = start
	return false
}

// horizontalBar reads "horizontal bar behind", "bar at the back of", which is the third loop of a
// half double crochet.
func (p *parser) horizontalBar() bool {
	start := p.i
	named := p.eat("horizontal")
	if p.eat("bar", "bars", "loop", "loops", "strand", "strands", "thread") {
		switch {
		case p.eat("behind", "below", "beneath", "underneath"):
			named = true
			if at := p.i; !p.eat("the") || !p.eat("back", "top") || !p.eat("loop", "loops") {
				p.i = at
			}
		case p.eat("at", "on", "in"):
			p.eat("the")
			if p.eat("back", "rear") {
				named = true
			} else {
				p.i--
			}
		}
		if named && !p.at(-1).is("in", "on", "at", "the") {
			return true
		}
	}
	p.i = start
	return false
}
