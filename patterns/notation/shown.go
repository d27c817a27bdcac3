package notation

// shown reads ", working (3 dc, ch 2, 3 dc) in each corner sp and 3 dc in each ch-1 sp, with ch 1
// between groups" behind rounds that go on as those before them: what these show already. It is
// nil for other words.
func (p *parser) shown() (l []Item) {
	start, faults := p.i, len(p.faults)
	no := func() []Item { p.i, p.faults = start, p.faults[:faults]; return nil }
	p.eatKind(tComma)
	p.eatKind(tDash)
	p.eat("but", "always")
	if !p.eat("working", "work", "making", "make", "with", "placing", "by", "having") {
		return no()
	}
	p.eat("working", "making")
	for {
		c, ok := p.chains()
		if !ok && len(l) > 0 && p.tok().is("between") {
			// "in each corner, and ch 1 between groups": the chain has been read with the corner
			_, ok = l[len(l)-1].(*Chain)
		}
		if ok && p.eat("between", "after", "separating") {
			p.eat("each", "every", "the", "all", "them")
			p.eat("3", "2")
			p.eatKind(tHyphen)
			if !p.eat(unitWords...) {
				p.what()
				p.eat(unitWords...)
			}
			p.eat("of")
			p.eat("them")
			if c != nil {
				l = append(l, c)
			}
		} else if in := p.inEachSpace(); !ok && in != nil {
			if l = append(l, in...); p.tok().is("between") {
				continue
			}
		} else {
			return no()
		}
		p.eachSide()
		if p.eat("around", "round", "across") {
			p.eat("as", "before")
		}
		k := p.tok().kind
		if k == tStop || k == tEnd || k == tSemi || k == tOpen || k == tClose || k == tDash || p.tok().first || p.tok().is("until", "till", "for") {
			break
		}
		at := p.i
		p.eatKind(tComma)
		p.eat("and")
		p.eat("with", "working", "making", "placing")
		if p.eat("a", "an", "one") {
			continue
		}
		if p.i == at {
			return no()
		}
	}
	return l
}

// inEachSpace reads "3 dc in each ch-1 sp along the sides", "(3 dc, ch 2, 3 dc) in each corner".
func (p *parser) inEachSpace() []Item {
	var l []Item
	var places []Place
	if p.tok().kind == tOpen {
		inner := &block{p: p}
		if f := inner.bracket(nil); f != nil || len(inner.items) == 0 {
			return nil
		}
		g, ok := inner.items[0].(*Group)
		if n := len(inner.items); n == 2 {
			_, chain := inner.items[1].(*Chain)
			ok = ok && chain && p.tok().is("between")
		} else {
			ok = ok && n == 1
		}
		if !ok {
			return nil
		}
		l, places = inner.items, g.Place
	} else {
		read, ok := p.stitches()
		s, is := read.(*Stitches)
		if !ok || !is || s.Times.Set() || len(s.But) > 0 {
			return nil
		}
		l, places = []Item{s}, s.Places
	}
	if len(places) != 1 || places[0].Pick != Each || places[0].Target.Sort != ChainSpace && places[0].Target.Sort != CornerStitch && places[0].Target.Sort != Gap {
		return nil
	}
	at := p.i
	p.eat("along", "on", "at", "of", "down")
	if p.eat("the", "all", "each"); p.at(-1).is("along", "the", "each", "all", "on", "at", "of", "down") {
		p.eat("straight", "four", "4")
		if p.eat(sideWords...) {
			return l
		}
	}
	p.i = at
	return l
}

// shown is ", working 3 dc in each ch-1 sp and (3 dc, ch 2, 3 dc) in each corner sp with ch 1
// between groups".
func (s Style) shown(l []Item) string {
	text := ""
	for i, it := range l {
		_, chain := it.(*Chain)
		switch {
		case i == 0:
			text = ", working "
		case chain:
			text += ", with "
		default:
			text += " and "
		}
		if text += s.item(it); chain {
			text += " between groups"
		}
	}
	return text
}
