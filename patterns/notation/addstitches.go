package notation

import (
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// addStitches adds stitches; those that are "all in" one place take the ones
// before them along, and "working 3 sc in each corner" belongs to the each
// before it.
func (b *block) addStitches(s *Stitches) {
	if len(s.Places) == 1 && s.Places[0].All {
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
	if b.eachAsItComes(s) || b.listAround(s) {
		return
	}
	// "sc in each dc around, 3 sc in each corner sp": the corners are among
	// what has been gone round already.
	if len(s.Places) == 1 && s.Places[0].Pick == Each && (s.Places[0].Target.Sort == ChainSpace || s.Places[0].Target.Sort == CornerStitch) && len(b.items) > 0 {
		if last, ok := b.items[len(b.items)-1].(*Stitches); ok && len(last.Places) > 0 {
			if pl := last.Places[len(last.Places)-1]; pl.Pick == Each && pl.Extent.Sort == ToEnd {
				last.But = append(last.But, s)
				return
			}
		}
	}
	b.add(s)
}

// eachAsItComes joins "dc in each dc" to the "FPdc around each FPdc" before it:
// what is made depends on what comes, stitch by stitch.
func (b *block) eachAsItComes(s *Stitches) bool {
	if len(b.items) == 0 || s.Times.Set() {
		return false
	}
	last, ok := b.items[len(b.items)-1].(*Stitches)
	if ok && len(s.Places) == 1 && s.Places[0].Bare && s.Places[0].Pick == Next && s.Places[0].Target.Sort == ChainSpace && !s.Places[0].N.Set() &&
		eachKind(last) && last.Places[0].Extent.Sort == NoExtent && b.p.at(-1).is(spaceWords...) {
		s.Places[0].Pick = Each // "sc in each sc and 3 sc in ch-3 sp"
	}
	if !ok || last.Times.Set() || !eachKind(last) || !eachKind(s) {
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
	}
	return false
}

// listAround makes "sc 2, inc around", with nothing between the stitches that says where
// they go, a list that is repeated round.
func (b *block) listAround(s *Stitches) bool {
	if s.What.Shaping == 0 && s.What.Kind.Shape != stitch.Together || len(s.Places) != 1 || s.Times.Set() || s.N.Set() || len(b.items) == 0 || b.p.depth > 1 {
		return false
	}
	pl := &s.Places[0]
	if pl.Pick != Each || pl.Extent.Sort != ToEnd || pl.Span.Length != b.p.at(-1).length {
		return false
	}
	for _, it := range b.items {
		if o, ok := it.(*Stitches); !ok || len(o.Places) > 0 || o.Times.Set() || len(o.But) > 0 || o.What.Kind.Base == stitch.Slip {
			return false
		}
	}
	r := &Repeat{Span: s.Span, Extent: pl.Extent}
	s.Places = nil
	r.Items = append(append(r.Items, b.items...), s)
	b.items = []Item{r}
	return true
}

// timesBefore reads "6 (sc, inc)", "6 x [sc, inc]": the number of times before what is
// repeated.
func (b *block) timesBefore() (bool, *fault.Fault) {
	p := b.p
	start := p.i
	n, ok := p.plainNumber()
	if !ok || n < 2 {
		p.i = start
		return false, nil
	}
	said := Num{Span: p.from(start), Values: []int{n}}
	p.eatKind(tTimes)
	open := p.i
	close := p.matching(open)
	if p.tok().kind != tOpen || close < 0 || !p.instructs(open+1) || p.multiplied(close+1) {
		p.i = start
		return false, nil
	}
	switch end := &p.toks[close+1]; {
	case end.first, end.kind == tComma, end.kind == tStop, end.kind == tEnd, end.kind == tOpen, end.kind == tSemi, end.kind == tClose, end.kind == tDash, end.kind == tEqual:
	default:
		p.i = start
		return false, nil
	}
	p.i = open + 1
	inner, f := p.items(true)
	if f != nil {
		return false, f
	}
	if p.i != close || len(inner) == 0 {
		return false, p.stuck()
	}
	p.i++
	p.work = true
	b.add(&Repeat{Span: said.Span, Items: inner, Times: said})
	return true, nil
}
