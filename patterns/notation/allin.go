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
	for _, star := range b.stars {
		if !star.wrapped && star.start > from {
			return false
		}
	}
	b.gather(from, s)
	return true
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

// bothIn reads "and 1 tr" behind a stitch that goes into the place named before it: "in next
// st work 1 dc and 1 tr", "starting in 2nd ch from hook, 1 dc and 1 tr in same ch". It is nil
// where another stitch with a place of its own, or none, follows.
func (p *parser) bothIn(start int, s *Stitches, places []Place) *Group {
	at := p.i
	if pl := &places[0]; s.Places != nil || len(places) > 1 || pl.Pick == Each || pl.N.Set() {
		return nil
	}
	g := &Group{Items: []Item{s}, Place: places}
	for end := p.i; p.eat("and"); end = p.i {
		it, ok := p.stitches()
		if !ok {
			p.i = end
			break
		}
		more := it.(*Stitches)
		if more.Places != nil && (len(more.Places) > 1 || more.Places[0].Pick != Same) {
			p.i = end
			break
		}
		more.Places = nil
		g.Items = append(g.Items, more)
	}
	if len(g.Items) == 1 {
		p.i = at
		return nil
	}
	g.Span = p.from(start)
	return g
}
