package notation

// addStitches adds stitches; those that are "all in" one place take the ones
// before them along, and "working 3 sc in each corner" belongs to the each
// before it.
func (b *block) addStitches(s *Stitches) {
	b.inOrder(s)
	b.aroundBehind(s)
	if n := len(b.items); n > 0 && len(s.Places) > 0 && s.Places[len(s.Places)-1].Evenly && !s.N.Set() {
		if told, ok := b.items[n-1].(*Stitches); ok && len(told.Places) == 1 && told.Places[0].N.Set() && s.rate(told) {
			b.items = b.items[:n-1] // "working 3 sc for every 2 rows, sc evenly around the row ends"
		}
	}
	if (len(s.Places) == 1 || len(s.Places) == 2 && s.Places[0].Pick == Same && s.Places[1].Pick == Each) && s.Places[0].All {
		from := len(b.items)
		for i := len(b.items) - 1; i >= 0; i-- {
			if st, ok := b.items[i].(*Stitches); ok && len(st.Places) == 0 {
				from = i
			} else if _, ok := b.items[i].(*Chain); !ok {
				break
			}
		}
		if from < len(b.items) {
			places := s.Places
			s.Places = nil
			g := &Group{Span: s.Span, Items: append(append([]Item(nil), b.items[from:]...), s), Place: places}
			b.items = append(b.items[:from:from], g)
			return
		}
	}
	if b.chainAndAllIn(s) || b.listInSame(s) || b.listAllIn(s) || b.evenAllIn(s) || b.listFromHook(s) || b.eachAsItComes(s) || b.listAround(s) {
		return
	}
	// "sc in each dc around, 3 sc in each corner sp": the corners are among
	// what has been gone round already.
	if len(s.Places) == 1 && (s.Places[0].Target.Sort == ChainSpace || s.Places[0].Target.Sort == CornerStitch) && len(b.items) > 0 {
		in := &s.Places[0]
		bare := !b.last && in.Pick == Next && in.Bare && in.Target.Sort == ChainSpace && in.Target.Name == "" && !in.N.Set() && in.Of == nil // "3 sc in the ch-3 sp": the one there is
		if last, ok := b.items[len(b.items)-1].(*Stitches); ok && len(last.Places) > 0 && (bare || in.Pick == Each) {
			if pl := last.Places[len(last.Places)-1]; pl.Pick == Each && (pl.Extent.Sort == ToEnd || pl.Extent.Sort == NoExtent && !pl.N.Set() && pl.Target.Sort == AnyStitch && pl.Of == nil && in.Pick == Each && in.Extent.Sort == ToEnd) &&
				(in.Pick == Each || pl.Target.Sort != ChainSpace) {
				if in.Extent.Sort == ToEnd {
					last.Places[len(last.Places)-1].Extent = in.Extent // "sc in each st and 3 sc in each ch-2 sp around"
				}
				in.Pick = Each
				last.But = append(last.But, s)
				return
			}
		}
	}
	b.add(s)
}

// aroundBehind takes "around" behind the space there is, "hdc in each hdc and 3 hdc in ch-3 sp around":
// it is said of both.
func (b *block) aroundBehind(s *Stitches) {
	if b.last || len(b.items) == 0 || len(s.Places) != 1 || !b.p.tok().is("around", "across", "round") {
		return
	}
	in := &s.Places[0]
	last, ok := b.items[len(b.items)-1].(*Stitches)
	if !ok || !in.Bare || in.Pick != Next || in.Target.Sort != ChainSpace || in.N.Set() || in.Of != nil || in.Extent.Sort != NoExtent || len(last.Places) != 1 || last.Places[0].N.Set() ||
		last.Places[0].Pick != Each || last.Places[0].Extent.Sort != NoExtent || last.Places[0].Target.Sort == ChainSpace {
		return
	}
	if e, ok := b.p.extent(); ok && e.Sort == ToEnd {
		in.Pick, in.Bare, in.Extent = Each, false, e
	}
}

// eachAsItComes joins "dc in each dc" to the "FPdc around each FPdc" before it:
// what is made depends on what comes, stitch by stitch.
func (b *block) eachAsItComes(s *Stitches) bool {
	if len(b.items) == 0 || s.Times.Set() {
		return false
	}
	last, ok := b.items[len(b.items)-1].(*Stitches)
	if ok && !b.last && len(s.Places) == 1 && s.Places[0].Bare && s.Places[0].Pick == Next && s.Places[0].Target.Sort == ChainSpace && !s.Places[0].N.Set() &&
		eachKind(last) && last.Places[0].Target.Sort != RowEnds && last.Places[0].Extent.Sort == NoExtent && b.p.at(-1).is(spaceWords...) {
		s.Places[0].Pick = Each // "sc in each sc and 3 sc in ch-3 sp"
	}
	if !ok || last.Times.Set() || !eachKind(last) || !eachKind(s) || (last.Places[0].Target.Sort == RowEnds) != (s.Places[0].Target.Sort == RowEnds) {
		return false
	}
	targets := []Target{last.Places[0].Target}
	for _, but := range last.But {
		if o, ok := but.(*Stitches); ok {
			targets = append(targets, o.Places[0].Target)
		}
	}
	own := s.Places[0].Target
	for _, t := range targets {
		if t.Sort == own.Sort && t.Kind == own.Kind && t.Name == own.Name && t.Chains == own.Chains && t.Loop == own.Loop {
			return false
		}
	}
	if s.Places[0].Extent.Sort == ToEnd {
		last.Places[0].Extent = s.Places[0].Extent
	}
	last.But = append(last.But, s)
	return true
}

// groupAsItComes joins "(dc, ch 2, dc) in each ch-2 sp" to the "dc in each dc" before it, as
// eachAsItComes does.
func (b *block) groupAsItComes(g *Group) bool {
	if len(b.items) == 0 || g.Times.Set() || len(g.Place) != 1 {
		return false
	}
	in := &g.Place[0]
	last, ok := b.items[len(b.items)-1].(*Stitches)
	if !ok || last.Times.Set() || len(last.Places) != 1 || last.Places[0].Target.Sort == RowEnds || in.Pick != Each || in.N.Set() || in.Of != nil || in.Target.Sort != ChainSpace && in.Target.Sort != CornerStitch ||
		in.Extent.Sort != NoExtent && in.Extent.Sort != ToEnd {
		return false
	}
	pl := &last.Places[0]
	if pl.Target.Sort != AnyStitch || pl.Pick != Each || pl.N.Set() || pl.Of != nil || pl.Below != 0 || pl.Evenly || pl.Extent.Sort != NoExtent && pl.Extent.Sort != ToEnd {
		if !eachKind(last) || pl.Target.Sort == ChainSpace && pl.Target.Chains == in.Target.Chains && pl.Target.Name == in.Target.Name {
			return false
		}
	}
	if in.Extent.Sort == ToEnd {
		pl.Extent = in.Extent
	}
	last.But = append(last.But, g)
	return true
}

// eachKind reports whether stitches go into each of a kind that is named, as far
// as there are any.
func eachKind(s *Stitches) bool {
	if len(s.Places) != 1 {
		return false
	}
	pl := &s.Places[0]
	if pl.Pick != Each || pl.N.Set() || pl.Of != nil || pl.Below != 0 || pl.Extent.Sort != NoExtent && pl.Extent.Sort != ToEnd {
		return false
	}
	switch pl.Target.Sort {
	case OfKind, OfShape, ChainSpace, ChainStitch, CornerStitch:
		return true
	case OfName:
		return pl.Target.Name != ""
	case RowEnds:
		return pl.Target.Kind.Is() && pl.Target.Name == "" && !pl.Rows.Set() && !pl.Evenly // "in end of each tr row"
	}
	return false
}

// exception reads "working 3 sc in each corner", an exception to the each
// before it.
func (b *block) exception() bool {
	p := b.p
	start := p.i
	if len(b.items) == 0 || !p.eat("working", "making", "with", "placing", "but") {
		return false
	}
	last, ok := b.items[len(b.items)-1].(*Stitches)
	if !ok || len(last.Places) == 0 || last.Places[len(last.Places)-1].Pick != Each {
		p.i = start
		return false
	}
	var but Item
	if p.tok().kind == tOpen {
		inner := &block{p: p}
		if f := inner.bracket(nil); f == nil && len(inner.items) == 1 {
			if g, ok := inner.items[0].(*Group); ok && len(g.Place) == 1 {
				last.But = append(last.But, g)
				return true
			}
		}
		p.i = start
		return false
	}
	but, ok = p.stitches()
	s, _ := but.(*Stitches)
	if ok && last.rate(s) {
		return true
	}
	if !ok || len(s.Places) != 1 || s.Places[0].Pick != Each && !s.overChain() && (s.Places[0].Pick != Next || s.Places[0].Target.Sort != ChainSpace && s.Places[0].Target.Sort != CornerStitch) {
		p.i = start
		return false
	}
	last.But = append(last.But, s)
	return true
}

// overChain takes stitches "over the ch-6" for such as go into that space.
func (s *Stitches) overChain() bool {
	pl := &s.Places[0]
	if !pl.Target.ByNumber() || pl.N.Set() || pl.Of != nil || pl.Pick != Next {
		return false
	}
	pl.Target = Target{Sort: ChainSpace, Chains: pl.Target.Chains, Text: pl.Target.Text}
	return true
}

// stitchesLeftOut reads ", missing the dc between" behind what goes into each space,
// which passes over the stitches anyway.
func (b *block) stitchesLeftOut() bool {
	p := b.p
	start := p.i
	if len(b.items) == 0 {
		return false
	}
	var place *Place
	switch it := b.items[len(b.items)-1].(type) {
	case *Stitches:
		if len(it.Places) > 0 {
			place = &it.Places[len(it.Places)-1]
		}
	case *Group:
		if len(it.Place) > 0 {
			place = &it.Place[len(it.Place)-1]
		}
	}
	if place == nil || place.Pick != Each || place.Target.Sort != ChainSpace || len(place.Also) > 0 {
		return false
	}
	p.i++
	p.eat("out", "over")
	p.eat("all", "each", "every", "any")
	p.eat("of")
	p.eat("the")
	p.plainNumber()
	if t, ok := p.target(); ok && t.Sort != ChainSpace {
		p.eat("in")
		if p.eat("between") {
			p.eat("them", "the", "each", "these", "those")
			p.target()
		}
		if p.ended() {
			b.add(&Note{Span: p.from(start), Text: p.words(start)})
			return true
		}
	}
	p.i = start
	return false
}

// allRound reads ", all the way round" behind what goes into each.
func (b *block) allRound() bool {
	p := b.p
	start := p.i
	if len(b.items) == 0 || !p.eatAll("all", "the", "way") || !p.eat("around", "round", "across", "along") {
		p.i = start
		return false
	}
	s, ok := b.items[len(b.items)-1].(*Stitches)
	if !ok || len(s.Places) == 0 || s.Places[len(s.Places)-1].Pick != Each {
		p.i = start
		return false
	}
	s.Places[len(s.Places)-1].Extent = Extent{Sort: ToEnd, Text: "around"}
	return true
}
