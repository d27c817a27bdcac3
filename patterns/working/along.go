package working

import (
	"fmt"
	"slices"
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// sides finds the runs of groups or stitches along the sides of a round and makes them
// longer or shorter.
type sides struct {
	p     *partWork
	along *notation.Along
	// corners is set when the words of the round name its corners.
	corners bool
	// counts are how many each whole run has, in the order of the words.
	counts []int
	// onto is how many places each run has: different ones show that the runs are not
	// all of one sort.
	sorts []string
	by    int
	short bool // a run has come to nothing
}

// alongSides is a round with the runs along its sides as the words say, in the nth
// of the rounds that are like it; those that go as far as the side does are longer by
// themselves. It is nil where the round does not show them.
func (p *partWork) alongSides(r *notation.Round, a *notation.Along, nth int) *notation.Round {
	if p.blockChains() > 0 && a.More {
		return p.moreBlocks(r, a.N.For(p.size)*nth)
	}
	s := p.sidesOf(r, a)
	if len(s.counts) == 0 {
		if goesAsFar(r.Items) {
			return r
		}
		return nil
	}
	if !same(s.sorts) {
		return nil
	}
	if s.by = a.N.For(p.size) * nth; !a.More {
		if !same(s.counts) {
			return nil
		}
		s.by = a.N.For(p.size) - s.counts[0]
	}
	longer := *r
	longer.Items = s.grow(r.Items, true)
	if s.short {
		return nil
	}
	return &longer
}

// sidesOf finds the runs along the sides of a round.
func (p *partWork) sidesOf(r *notation.Round, a *notation.Along) *sides {
	s := &sides{p: p, along: a}
	walkPlaces(r.Items, func(pl *notation.Place) { s.corners = s.corners || atCorner(pl) })
	s.grow(r.Items, true) // only to see how long they are
	return s
}

// same reports whether all of a list are equal.
func same[T comparable](l []T) bool {
	for _, v := range l {
		if v != l[0] {
			return false
		}
	}
	return true
}

// alongOf is how the sides of rounds grow that go on as those before them: as the words
// say or, when they say nothing, as those of the last two rounds do. It is nil when
// they do not.
func (p *partWork) alongOf(ref *notation.Ref) *notation.Along {
	n := len(p.latest)
	if ref.Along == nil && len(ref.Shown) > 0 {
		// What goes into each space between the corners is one more along each side.
		return &notation.Along{Span: ref.Span, More: true, Groups: true, N: notation.One(ref.Span)}
	}
	if ref.Along != nil || ref.Step.Set() || !ref.Onward || ref.Even || n < 2 || p.patternRows(ref) != nil {
		return ref.Along
	}
	if of, _ := p.increasing(ref); of != nil {
		return nil
	}
	a := &notation.Along{Span: ref.Span, More: true, Groups: true}
	last, before := p.sidesOf(p.latest[n-1], a), p.sidesOf(p.latest[n-2], a)
	if len(last.counts) == 0 || len(before.counts) == 0 || !same(append(last.sorts, before.sorts...)) || !same(last.counts) || !same(before.counts) {
		return nil
	}
	by := last.counts[0] - before.counts[0]
	if by == 0 {
		return nil
	}
	a.N = notation.Num{Span: ref.Span, Values: []int{by}}
	return a
}

// alongRound works the nth round that is like another but for its sides.
func (p *partWork) alongRound(r, like *notation.Round, a *notation.Along, nth int, last bool) bool {
	text := p.alongSides(like, a, nth)
	if text == nil {
		p.add(p.vagueSides(a, like), true)
		return false
	}
	return p.oneRound(r, text, p.number+1, last)
}

// vagueSides is the fault of a round that does not show what is along its sides.
func (p *partWork) vagueSides(a *notation.Along, r *notation.Round) *fault.Fault {
	what := "stitches"
	if a.Groups {
		what = "groups"
	}
	return p.fault(a.Span, "vague", fmt.Sprintf("%s does not show which %s are along its sides", plainLabel(r.Label.Text), what),
		"Write the round out, or let the one that it is like say how many: (3 dc in next ch-1 sp, ch 1) 2 times.")
}

// walkPlaces calls do with every place that instructions name.
func walkPlaces(items []notation.Item, do func(*notation.Place)) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			for i := range it.Places {
				do(&it.Places[i])
			}
			walkPlaces(it.But, do)
		case *notation.Group:
			for i := range it.Place {
				do(&it.Place[i])
			}
		case *notation.Begin:
			do(&it.Place)
		case *notation.Repeat:
			walkPlaces(it.Items, do)
		}
	}
}

// atCorner reports whether a place is called a corner.
func atCorner(pl *notation.Place) bool {
	return pl.Target.Name == notation.Corner || pl.Target.Sort == notation.CornerStitch || strings.Contains(strings.ToLower(pl.Target.Text), "corner")
}

// goesAsFar reports whether instructions go as far as a side does: "in each ch-1 sp to
// next corner".
func goesAsFar(items []notation.Item) bool {
	far := false
	walkPlaces(items, func(pl *notation.Place) { far = far || pl.Pick == notation.Each })
	for _, it := range items {
		if r, ok := it.(*notation.Repeat); ok {
			far = far || r.Extent.Sort == notation.ToPlace || r.Extent.Sort == notation.ToLast || goesAsFar(r.Items)
		}
	}
	return far
}

// unit is how many places an instruction goes into that is part of a run along a side,
// 0 when it is none; and what it is.
func (s *sides) unit(it notation.Item) (n int, sort string) {
	a := s.along
	switch it := it.(type) {
	case *notation.Stitches:
		if a.Brackets || it.Times.Set() || len(it.But) > 0 || it.What.Shaping != 0 || len(it.Places) > 1 {
			return 0, ""
		}
		each := max(1, it.N.For(s.p.size))
		if len(it.Places) == 0 {
			if a.Groups || a.Kind.Is() && it.What.Kind != a.Kind {
				return 0, ""
			}
			return each, "plain" // "dc 5"
		}
		pl := &it.Places[0]
		if pl.Pick != notation.Next || pl.Of != nil || atCorner(pl) || pl.Target.Sort == notation.StartChain {
			return 0, ""
		}
		if a.Kind.Is() && it.What.Kind != a.Kind || a.Of > 0 && each != a.Of {
			return 0, ""
		}
		several := each > 1 || it.What.Name != "" || it.What.Kind.Shape != stitch.Plain
		if several != a.Groups {
			return 0, ""
		}
		return max(1, pl.N.For(s.p.size)), fmt.Sprint(each, it.What.Name, it.What.Kind, pl.Target.Chains)
	case *notation.Group:
		if a.Brackets || !a.Groups || a.Of > 0 || !s.corners || it.Times.Set() || len(it.Place) != 1 || it.Place[0].Pick != notation.Next || atCorner(&it.Place[0]) {
			return 0, ""
		}
		return max(1, it.Place[0].N.For(s.p.size)), "group"
	case *notation.Repeat:
		if !it.Times.Set() || it.Extent.Sort != notation.NoExtent || len(it.Ending) > 0 || it.Omit > 0 || it.AtStop {
			return 0, ""
		}
		inside := 0
		for _, in := range it.Items {
			if links(in) {
				continue
			}
			m, what := s.unit(in)
			if a.Brackets && !it.Star {
				if _, ok := in.(*notation.Repeat); ok {
					return 0, ""
				}
				m, what = 1, "brackets"
			}
			if inside += m; m != 1 || inside > 1 && !a.Brackets {
				return 0, ""
			}
			sort = what
		}
		if inside == 0 {
			return 0, ""
		}
		n = it.Times.For(s.p.size)
		if it.More {
			n++
		}
		return n, sort
	}
	return 0, ""
}

// links reports whether an instruction only stands between the groups of a run.
func links(it notation.Item) bool {
	switch it.(type) {
	case *notation.Chain, *notation.Skip, *notation.Note:
		return true
	}
	return false
}

// grow is instructions with their runs longer by so many. Outermost, a run before the
// first corner and one behind the last are of one side: only the latter is longer.
func (s *sides) grow(items []notation.Item, outermost bool) []notation.Item {
	type stretch struct{ from, to, n int } // the units from and to, and how many they are
	var runs []stretch
	turned := make([]bool, len(items)) // a corner, or a repeat with one in it
	open := false
	var sorts []string
	for i, it := range items {
		n, sort := s.unit(it)
		switch {
		case n > 0 && open:
			last := &runs[len(runs)-1]
			last.to, last.n = i, last.n+n
		case n > 0:
			runs, open = append(runs, stretch{i, i, n}), true
		case !links(it):
			open = false
			turned[i] = isCorner(it)
		}
		if n > 0 {
			sorts = append(sorts, sort)
		}
	}
	n := len(runs)
	shared := outermost && n > 1 && !slices.Contains(turned[:runs[0].from], true) && !slices.Contains(turned[runs[n-1].to:], true) && !endsCorner(items[runs[n-1].to:])
	if shared {
		runs = runs[1:]
	}
	s.sorts = append(s.sorts, sorts...)
	var l []notation.Item
	next := 0
	for i := 0; i < len(items); i++ {
		it := items[i]
		if next < len(runs) && runs[next].to == i {
			run := runs[next]
			next++
			if !shared || next < len(runs) {
				s.counts = append(s.counts, run.n)
			}
			linked := slices.ContainsFunc(items[run.from:run.to], links)
			var taken int
			first := 0
			if outermost {
				first = 1 // the chain that the round begins with is no link
			}
			l, taken = s.longer(l, items[i:], first, linked)
			i += taken
			continue
		}
		if r, ok := it.(*notation.Repeat); ok {
			if n, _ := s.unit(it); n == 0 && isCorner(r) {
				inner := *r
				inner.Items = s.grow(r.Items, false)
				it = &inner
			}
		}
		l = append(l, it)
	}
	return l
}

// isCorner reports whether an instruction turns a corner: a group in one place, or a
// repeat with one in it.
func isCorner(it notation.Item) bool {
	switch it := it.(type) {
	case *notation.Group:
		return true
	case *notation.Repeat:
		return slices.ContainsFunc(it.Items, isCorner)
	case *notation.Stitches:
		return len(it.Places) == 1 && atCorner(&it.Places[0])
	}
	return false
}

// endsCorner reports whether instructions go back into where the round began, which
// completes the corner there.
func endsCorner(items []notation.Item) bool {
	return slices.ContainsFunc(items, func(it notation.Item) bool {
		st, ok := it.(*notation.Stitches)
		return ok && len(st.Places) == 1 && (st.Places[0].Pick == notation.Same || st.Places[0].Pick == notation.First) && st.What.Kind.Base != stitch.Slip
	})
}

// longer appends the first of items, the last of a run, by so many more, and says how
// many of those behind it went with it. Those in l that link it to the ones before may
// go with it as well, but for so many at the beginning.
func (s *sides) longer(l, items []notation.Item, first int, linked bool) ([]notation.Item, int) {
	n, _ := s.unit(items[0])
	if n += s.by; n < 1 {
		s.short = true
		return l, 0
	}
	if s.by == 0 {
		return append(l, items[0]), 0
	}
	num := notation.Num{Span: items[0].Where(), Values: []int{n}}
	behind := 0
	for behind+1 < len(items) && links(items[behind+1]) {
		behind++
	}
	switch it := items[0].(type) {
	case *notation.Repeat:
		r := *it
		r.Times, r.More = num, false
		return append(l, &r), 0
	case *notation.Stitches:
		st := *it
		if len(st.Places) == 0 {
			st.N = num
			return append(l, &st), 0
		}
		chained := len(l) > first && links(l[len(l)-1]) || behind > 0
		if n-s.by > 1 || !chained && !linked {
			st.Places = append([]notation.Place(nil), st.Places...)
			st.Places[0].N, st.Places[0].Every = num, true
			return append(l, &st), 0
		}
	case *notation.Group:
		if it.Place[0].N.Set() {
			g := *it
			g.Place = append([]notation.Place(nil), g.Place...)
			g.Place[0].N = num
			return append(l, &g), 0
		}
	}
	// "3 dc in next ch-1 sp, ch 1", with what links it to the next.
	body := append([]notation.Item(nil), items[:behind+1]...)
	if behind == 0 {
		for len(l) > first && links(l[len(l)-1]) {
			body = append([]notation.Item{l[len(l)-1]}, body...)
			l = l[:len(l)-1]
		}
	}
	return append(l, &notation.Repeat{Span: num.Span, Items: body, Times: num}), behind
}
