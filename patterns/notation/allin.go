package notation

import "whorl/patterns/stitch"

// allIn reads ", all into ring", "; all worked in next ch-3 sp" behind stitches that
// have not said where they go: there they all go.
func (b *block) allIn() bool {
	p := b.p
	start := p.i
	no := func() bool { p.i = start; return false }
	if !p.eat("all") || len(b.items) == 0 {
		return no()
	}
	p.eat("of", "being")
	p.eat("these", "this", "which")
	p.eat("worked", "working", "made", "going")
	if !p.tok().is("in", "into", "on") {
		return no()
	}
	pl, ok := p.placed(false)
	if !ok || !p.ended() && !p.tok().first {
		return no()
	}
	from := len(b.items)
	for from > 0 && placeless(b.items[from-1:from]) {
		from--
	}
	if from == len(b.items) {
		return no()
	}
	pl.All = true
	if pl.Target.Sort == Ring {
		b.insert(from, &In{Span: p.from(start), Place: pl})
		return true
	}
	for _, s := range b.stars {
		if !s.wrapped && s.start > from {
			return no()
		}
	}
	g := &Group{Span: p.from(start), Items: append([]Item(nil), b.items[from:]...), Place: []Place{pl}}
	b.items = append(b.items[:from:from], g)
	return true
}

// chainAndAllIn takes "2 tr, 2 ch and 2 tr into next loop", as older leaflets write a group
// without brackets: what stands on both sides of the chain goes into the loop.
func (b *block) chainAndAllIn(s *Stitches) bool {
	p := b.p
	if len(s.Places) != 1 || !s.N.Set() || s.Times.Set() || s.What.Name != "" || s.What.Kind.Base <= stitch.Single {
		return false
	}
	pl := &s.Places[0]
	if pl.Target.Sort != ChainSpace || pl.Pick != Next && pl.Pick != Same && pl.Pick != First && pl.Pick != Last || pl.N.Set() || pl.Of != nil {
		return false
	}
	at := p.i - 1
	for at > 0 && p.toks[at].pos != s.Pos {
		at--
	}
	if at == 0 || !p.toks[at-1].is("and") {
		return false
	}
	from := len(b.items)
	for from >= 2 {
		_, chain := b.items[from-1].(*Chain)
		before, ok := b.items[from-2].(*Stitches)
		if !chain || !ok || len(before.Places) > 0 || !before.N.Set() || before.Times.Set() || before.What != s.What {
			break
		}
		from -= 2
	}
	if from == len(b.items) {
		return false
	}
	return b.gathered(from, s)
}

// listInSame takes "3 ch, 2 tr, 2 ch, 3 tr in same loop": what is made on the way from the loop that
// the work stands in goes into that as well.
func (b *block) listInSame(s *Stitches) bool {
	if len(s.Places) == 0 || s.Times.Set() || s.What.Shaping != 0 {
		return false
	}
	pl := &s.Places[0]
	if pl.Pick != Same || pl.Target.Sort != ChainSpace || pl.N.Set() || pl.Of != nil {
		return false
	}
	from := len(b.items)
	for i := len(b.items) - 1; i >= 0; i-- {
		switch it := b.items[i].(type) {
		case *Chain:
			continue
		case *Stitches:
			if len(it.Places) == 0 && it.N.Set() && !it.Times.Set() && it.What.Shaping == 0 && it.What.Kind.Base != stitch.Slip {
				from = i
				continue
			}
		}
		break
	}
	return from < len(b.items) && b.gathered(from, s)
}

// listAllIn takes "1 dc, 1 htr, 1 tr, 1 htr and 1 dc into each space": what is told without brackets
// goes into the place at its end, where it ends as it begins, that is each space, or the sentence says
// "work".
func (b *block) listAllIn(s *Stitches) bool {
	p := b.p
	last := p.numberedAt(s)
	if len(s.Places) != 1 || last < 1 || !p.toks[last-1].is("and") || s.Times.Set() || s.What.Shaping != 0 {
		return false
	}
	pl := &s.Places[0]
	each := pl.Pick == Each && pl.Target.Sort == ChainSpace && !pl.N.Set()
	one := pl.Pick == Next && !pl.N.Set() && (pl.Target.Sort == ChainSpace || pl.Target.Sort == AnyStitch || pl.Target.Sort == OfKind)
	if !each && !one || pl.Of != nil || pl.Over || pl.Into != stitch.Top {
		return false
	}
	from, kinds, chains := len(b.items), 0, 0
	for ; from > 0; from-- {
		if _, ok := b.items[from-1].(*Chain); ok {
			chains++
			continue
		}
		before, ok := b.items[from-1].(*Stitches)
		if !ok || len(before.Places) > 0 || p.numberedAt(before) < 0 || before.Times.Set() || before.What.Shaping != 0 {
			break
		}
		kinds++
	}
	for from < len(b.items) {
		if _, chain := b.items[from].(*Chain); !chain {
			break
		}
		from++ // what the round begins with
		chains--
	}
	if kinds == 0 {
		return false
	}
	first := b.items[from].(*Stitches)
	switch {
	case each, p.toks[max(p.numberedAt(first)-1, 0)].is("work", "make"):
	case first.What != s.What || s.What.Kind == stitch.Of(stitch.Single) && chains > 0 && kinds == chains:
		return false
	case pl.Target.Sort != ChainSpace && chains == 0 && kinds < 2:
		return false
	}
	return b.gathered(from, s)
}

// gathered puts the items from one number on, and s, into one place; not where a repeat that is still
// open began among them.
func (b *block) gathered(from int, s *Stitches) bool {
	for _, star := range b.stars {
		if !star.wrapped && star.start > from {
			return false
		}
	}
	b.gather(from, s)
	return true
}

// numberedAt is the token that stitches with a number begin at, "1 dc", "a dc"; -1 for those without.
func (p *parser) numberedAt(s *Stitches) int {
	at := p.i - 1
	for at > 0 && p.toks[at].pos != s.Pos {
		at--
	}
	switch {
	case s.N.Set():
		return at
	case at > 0 && p.toks[at-1].is("a", "an"):
		return at - 1
	}
	return -1
}

// gather makes one group of what was read from item from on and stitches behind it, in the
// place of these.
func (b *block) gather(from int, s *Stitches) {
	g := &Group{Span: s.Span, Items: append([]Item(nil), b.items[from:]...), Place: s.Places}
	s.Places = nil
	g.Items = append(g.Items, s)
	b.items = b.items[:from:from]
	b.add(g)
}

// placeless reports whether all that is made has no place yet.
func placeless(items []Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *Stitches:
			if len(it.Places) > 0 {
				return false
			}
		case *Repeat:
			if it.Extent.Sort != NoExtent || !placeless(it.Items) || !placeless(it.Ending) {
				return false
			}
		case *Chain, *Counts:
		default:
			return false
		}
	}
	return true
}

// insert puts an item in front of item i.
func (b *block) insert(i int, it Item) {
	b.items = append(b.items[:i:i], append([]Item{it}, b.items[i:]...)...)
	for _, s := range b.stars {
		if s.start >= i {
			s.start++
		}
		if s.end >= i {
			s.end++
		}
	}
	if b.sentence > i {
		b.sentence++
	}
	if b.before > i {
		b.before++
	}
}

// bothIn reads "and 1 tr", ", 2 ch and 2 tr" behind a stitch that goes into the place named before
// it: "in next st work 1 dc and 1 tr", "into each space work 2 tr, 2 ch and 2 tr", "starting in 2nd
// ch from hook, 1 dc and 1 tr in same ch". It is nil where another stitch with a place of its own,
// or none, follows.
func (p *parser) bothIn(start int, s *Stitches, places []Place) *Group {
	at := p.i
	if len(places) > 1 || s.Places != nil {
		return nil
	}
	pl := &places[0]
	if pl.Target.Sort == FromHook && (pl.Pick == Each || pl.N.Set()) || pl.Target.Sort == RowEnds || pl.Evenly {
		return nil
	}
	g := &Group{Items: []Item{s}, Place: places}
	closed, chains := 0, false
	for end := p.i; p.eatKind(tComma) || p.tok().is("and"); end = p.i {
		p.eat("then")
		last := p.eat("and")
		it, chain := p.placelessNext()
		if it == nil {
			p.i = end
			break
		}
		chains = chains || chain
		g.Items = append(g.Items, it)
		if !chain && (last || closed == 0 && chains && pl.Target.Sort == ChainSpace && p.listEnds()) {
			closed, at = len(g.Items), p.i
		}
	}
	p.i = at
	if closed == 0 {
		return nil
	}
	g.Items = g.Items[:closed]
	g.Span = p.from(start)
	return g
}

// placelessNext reads stitches or chains that do not say where they go, or into the same place; nil
// where something else follows.
func (p *parser) placelessNext() (it Item, chain bool) {
	start := p.i
	if c := p.chain(); c != nil {
		if ch, ok := c.(*Chain); ok && ch.Counts == nil {
			return ch, true
		}
		p.i = start
		return nil, false
	}
	p.eat("a", "an")
	if made, ok := p.stitches(); ok {
		if s := made.(*Stitches); s.What.Shaping == 0 && !s.Times.Set() && (s.Places == nil || len(s.Places) == 1 && s.Places[0].Pick == Same && s.Places[0].Target.Sort != JoinPlace) {
			s.Places = nil
			return s, false
		}
	}
	p.i = start
	return nil, false
}

// listEnds reports whether a list ends here without a word "and" in it.
func (p *parser) listEnds() bool {
	k := p.tok().kind
	return k == tSemi || k == tStop || k == tEnd || k == tClose || k == tStar || p.tok().first
}

// listInEach reads ", 5 dc, sc" behind the first stitch that goes into each of the places named
// before it, up to the end of the sentence: "in each loop work sc, 5 dc, sc; join".
func (p *parser) listInEach(start int, s *Stitches, places []Place) *Group {
	at := p.i
	if s.Places != nil || len(places) > 1 || places[0].Pick != Each || places[0].Target.Sort != ChainSpace {
		return nil
	}
	g := &Group{Items: []Item{s}, Place: places}
	for {
		end := p.i
		if comma := p.eatKind(tComma); !p.eat("and") && !comma {
			break
		}
		if c := p.chain(); c != nil {
			g.Items = append(g.Items, c)
		} else if it, ok := p.stitches(); ok && it.(*Stitches).Places == nil {
			g.Items = append(g.Items, it)
		} else {
			p.i = end
			break
		}
	}
	closes := p.tok().kind == tComma && p.at(1).is("join", "turn") || p.tok().first
	if k := p.tok().kind; len(g.Items) == 1 || k != tStop && k != tSemi && k != tEnd && k != tClose && !closes {
		p.i = at
		return nil
	}
	if _, chain := g.Items[len(g.Items)-1].(*Chain); chain {
		p.i = at
		return nil
	}
	g.Span = p.from(start)
	return g
}
