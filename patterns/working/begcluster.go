package working

import (
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// wholeOf is the cluster that a chain and the smaller cluster after it stand in
// for at the beginning of a round, all in one place, when the rest of the round
// works the whole one: "ch 3, dc2tog in same sp, [ch 2, dc3tog in next sp] …". Where they
// are in a group, its place is theirs. The zero Kind when it is not so.
func (w *roundWork) wholeOf(s *notation.Stitches, grouped bool, rest []notation.Item) stitch.Kind {
	k := s.What.Kind
	if k.Shape != stitch.Together && k.Shape != stitch.Cluster || s.N.Set() && s.N.For(w.size) != 1 || s.Times.Set() {
		return stitch.Kind{}
	}
	if grouped && len(s.Places) > 0 || !grouped && (len(s.Places) != 1 || s.Places[0].Over || s.Places[0].Pick != notation.Same && s.Places[0].Target.Sort != notation.Ring) {
		return stitch.Kind{}
	}
	k.Legs++
	for _, o := range w.bundles(rest) {
		if o.Base == k.Base && o.Legs == k.Legs && o.Manner == k.Manner && (o.Shape == stitch.Together || o.Shape == stitch.Cluster) {
			return o
		}
	}
	return stitch.Kind{}
}

// bundles are the kinds of several legs in the instructions, those of the designer's own among them.
func (w *roundWork) bundles(items []notation.Item) []stitch.Kind {
	l := bundlesIn(items)
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if d := w.definition(&it.What); d != nil && len(d.items) == 1 {
				if s, ok := d.items[0].(*notation.Stitches); ok && s.What.Kind.Legs > 1 {
					l = append(l, s.What.Kind)
				}
			}
		case *notation.Group:
			l = append(l, w.bundles(it.Items)...)
		case *notation.Repeat:
			l = append(l, w.bundles(it.Items)...)
		}
	}
	return l
}

// chainInGroup is the cluster that a chain and the first stitch of a group make, "(ch 3, dc2tog, ch 3,
// dc3tog) in same sp" or "ch 3, (dc2tog, …) in same sp": nil where they make none.
func (w *roundWork) chainInGroup(g *notation.Group, items, rest []notation.Item) *notation.Counts {
	if len(items) < 2 || len(g.Place) != 1 || g.Place[0].Pick == notation.Each {
		return nil
	}
	s, ok := items[0].(*notation.Stitches)
	if !ok {
		return nil
	}
	if whole := w.wholeOf(s, true, append(items[1:len(items):len(items)], rest...)); whole.Is() {
		return &notation.Counts{Span: s.Span, As: whole}
	}
	return nil
}

// wholeOver is the decrease that a chain and the smaller decrease after it stand in
// for at the beginning of a round, over one stitch each, when the rest of the round
// works the whole one and never the smaller: "ch 2, dc3tog over next 3 dc, *ch 5,
// dc4tog over next 4 dc; rep from * around". The zero Kind when it is not so.
func wholeOver(s *notation.Stitches, rest []notation.Item) stitch.Kind {
	k := s.What.Kind
	if k.Shape != stitch.Together || s.N.Set() || len(s.Places) > 1 || len(s.Places) == 1 && !s.Places[0].Over && !s.Places[0].N.Set() {
		return stitch.Kind{}
	}
	whole := k
	whole.Legs++
	found := false
	for _, o := range bundlesIn(rest) {
		if o == k {
			return stitch.Kind{}
		}
		found = found || o == whole
	}
	if !found {
		return stitch.Kind{}
	}
	return whole
}
