package notation

import (
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// chainsBetween reads "with ch 1 after each", "ch 1 between each dc", "separated by ch-2"
// behind several stitches: chains that are made between them. Behind the last of a ring or of
// a whole round they stand as well, since the round closes; in one place, and at the end of a
// row, only between.
func (b *block) chainsBetween() (bool, *fault.Fault) {
	p := b.p
	start := p.i
	no := func() (bool, *fault.Fault) { p.i = start; return false, nil }
	if len(b.items) == 0 {
		return false, nil
	}
	s, ok := b.items[len(b.items)-1].(*Stitches)
	if !ok || len(s.Places) > 1 || len(s.But) > 0 || s.Times.Set() || len(s.Places) == 0 && !s.N.Set() {
		return false, nil
	}
	led := p.eat("with", "working", "making", "having", "placing")
	p.eat("each")
	apart := p.eat("separated") && p.eat("by", "with")
	p.eat("a", "an", "one")
	p.eatKind(tNumber) // "with 1 ch-1 sp between each"
	if p.at(-1).kind == tNumber && !p.spaceAhead() {
		p.i--
	}
	c, ok := p.chains()
	if !ok || !led && !apart && !p.tok().is("after", "between", "following") {
		return no()
	}
	after := p.eat("after", "following")
	switch {
	case after:
		if !p.eat("each", "every") {
			return no()
		}
	case p.eat("between"):
		p.eat("each", "every", "the", "them", "all")
		p.eat("of")
		p.eat("them")
	case p.eatAll("in", "between"):
	case !apart:
		return no()
	}
	if p.eat("one", "st", "stitch", "sts", "stitches", "group"); !p.ended() && !p.tok().is("in", "into") {
		if w, ok := p.what(); !ok || w.Kind != s.What.Kind || w.Name != s.What.Name {
			return no()
		}
		p.eat("st", "sts")
	}
	places := s.Places
	if len(places) == 0 && p.tok().is("in", "into") {
		places = p.places(false) // "5 dc with ch 1 between each in next dc"
	}
	if !p.ended() || len(places) > 1 || len(places) == 0 && p.depth < 2 {
		return no()
	}
	unsaid := fail(p.from(start), "ambiguous", "the words do not say between which stitches these chains are made",
		"Write, for example: *dc in next st, ch 1; rep from * around, or: (dc, ch 1, dc) in each st around.")
	pl := Place{}
	if len(places) > 0 {
		pl = places[0]
	}
	one := *s
	one.N, one.Places = Num{}, nil
	r := &Repeat{Span: p.from(start), Items: []Item{&one, c}, Times: s.N}
	switch {
	case pl.Pick == Each && pl.Extent.Sort == ToEnd && (!s.N.Set() || onlyOne(s.N)) && len(pl.Also) == 0:
		row := strings.HasPrefix(pl.Extent.Text, "across")
		if !row && !strings.HasPrefix(pl.Extent.Text, "around") && !strings.HasPrefix(pl.Extent.Text, "round") && !after {
			return false, unsaid // whether the last one closes a round
		}
		next := pl
		next.Pick, next.Extent, next.Every, next.Bare = Next, Extent{}, false, false
		one.Places, r.Times, r.Extent = []Place{next}, Num{}, pl.Extent
		if row && !after {
			r.Omit = 1
		}
		b.items[len(b.items)-1] = r
	case !s.N.Set() || pl.Pick == Each || pl.N.Set():
		return false, unsaid
	case after || pl.Target.Sort == Ring:
		b.items[len(b.items)-1] = &Group{Span: p.from(start), Items: []Item{r}, Place: places}
	default:
		r.Times = Num{Span: s.N.Span}
		for _, n := range s.N.Values {
			if n < 2 {
				return false, unsaid
			}
			r.Times.Values = append(r.Times.Values, n-1)
		}
		last := one
		b.items = b.items[:len(b.items)-1]
		if len(places) == 0 {
			b.items = append(b.items, r, &last) // "(2 dc with ch 1 between) in next st"
			break
		}
		b.items = append(b.items, &Group{Span: p.from(start), Items: []Item{r, &last}, Place: places})
	}
	return true, nil
}

// chains reads "ch 1", "ch-2", "2 ch", "ch-1 sp": chains between stitches.
func (p *parser) chains() (*Chain, bool) {
	start := p.i
	if c, ok := p.chain().(*Chain); ok && c.Counts == nil {
		return c, true
	}
	if t, ok := p.target(); ok && t.Sort == ChainSpace && t.Chains > 0 && t.Kind == (stitch.Kind{}) {
		return &Chain{Span: p.from(start), N: Num{Span: p.from(start), Values: []int{t.Chains}}}, true
	}
	p.i = start
	return nil, false
}

// spaceAhead reports whether a space of so many chains comes next: "ch-1 sp".
func (p *parser) spaceAhead() bool {
	start := p.i
	defer func() { p.i = start }()
	t, ok := p.target()
	return ok && t.Sort == ChainSpace
}
