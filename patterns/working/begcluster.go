package working

import (
	"slices"
	"strings"

	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// wholeOf is the cluster that a chain and the smaller cluster after it stand in
// for at the beginning of a round, all in one place, when the rest of the round
// works the whole one: "ch 3, dc2tog in same sp, [ch 2, dc3tog in next sp] …". Where they
// are in a group, its place is theirs. It has the name that the designer gives the whole one, under which
// it is counted with the others: "(12 cl)". Nil when it is not so.
func (w *roundWork) wholeOf(s *notation.Stitches, grouped bool, rest []notation.Item) *notation.Counts {
	k := s.What.Kind
	if k.Shape != stitch.Together && k.Shape != stitch.Cluster || s.N.Set() && s.N.For(w.size) != 1 || s.Times.Set() {
		return nil
	}
	if grouped && len(s.Places) > 0 || !grouped && (len(s.Places) != 1 || s.Places[0].Over || s.Places[0].Pick != notation.Same && s.Places[0].Target.Sort != notation.Ring) {
		return nil
	}
	k.Legs++
	for _, o := range w.bundles(rest) {
		if o.Kind.Base == k.Base && o.Kind.Legs == k.Legs && o.Kind.Manner == k.Manner && (o.Kind.Shape == stitch.Together || o.Kind.Shape == stitch.Cluster) {
			return &notation.Counts{Span: s.Span, As: o.Kind, Name: o.Name}
		}
	}
	return nil
}

// bundles are the kinds of several legs in the instructions, those of the designer's own among them by name.
func (w *roundWork) bundles(items []notation.Item) (l []notation.What) {
	for _, k := range bundlesIn(items) {
		l = append(l, notation.What{Kind: k})
	}
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if o := w.bundle(it.What); o.Name != "" {
				l = append(l, o)
			}
		case *notation.Group:
			l = append(l, w.bundles(it.Items)...)
		case *notation.Repeat:
			l = append(l, w.bundles(it.Items)...)
		}
	}
	return l
}

// bundle is the kind of several legs that one of the designer's own stitches makes, with her name; another
// stitch as it is.
func (w *roundWork) bundle(of notation.What) notation.What {
	if d := w.definition(&of); d != nil && len(d.items) == 1 {
		if s, ok := d.items[0].(*notation.Stitches); ok && s.What.Kind.Legs > 1 {
			return notation.What{Kind: s.What.Kind, Name: d.name}
		}
	}
	return of
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
	return w.wholeOf(s, true, append(items[1:len(items):len(items)], rest...))
}

// begToldApart reports whether a count tells the beginning cluster of a round apart from those that it
// stands among by name: "(1 beg cl, 11 cl)".
func (w *roundWork) begToldApart(c *notation.StatedCount, all *notation.Stated, have int) bool {
	if w.leads == nil || w.leads.Name == "" || c.Target.Name != w.leads.Name {
		return false
	}
	others := have - 1
	if !namedBeg(strings.ToLower(c.Target.Text)) {
		if c.N.For(w.size) != others {
			return false
		}
		others = 1
	} else if c.N.For(w.size) != 1 {
		return false
	}
	return slices.ContainsFunc(all.Counts, func(o notation.StatedCount) bool {
		return o.Target.Sort != notation.ChainSpace && o.Target.Text != c.Target.Text && o.N.For(w.size) == others
	})
}

// wholeOver is the decrease that a chain and the smaller decrease after it stand in
// for at the beginning of a round, over one stitch each, when the rest of the round
// works the whole one and never the smaller: "ch 2, dc3tog over next 3 dc, *ch 5,
// dc4tog over next 4 dc; rep from * around". Nil when it is not so.
func (w *roundWork) wholeOver(s *notation.Stitches, rest []notation.Item) *notation.Counts {
	k := w.bundle(s.What).Kind
	if k.Shape != stitch.Together || s.N.Set() || len(s.Places) > 1 || len(s.Places) == 1 && !s.Places[0].Over && !s.Places[0].N.Set() {
		return nil
	}
	whole := k
	whole.Legs++
	var found *notation.Counts
	for _, o := range w.bundles(rest) {
		if o.Kind == k {
			return nil
		}
		if found == nil && o.Kind == whole {
			found = &notation.Counts{Span: s.Span, As: whole, Name: o.Name}
		}
	}
	return found
}

// wholeSaid is what a chain and the smaller cluster after it are said to count as, "ch 3, dc3tog over next
// 3 dc (counts as first dc4tog)". Of a cluster without a number the legs are those of the ones that the
// round works, else those of the smaller one and the chain. Nil where it is of another stitch.
func (w *roundWork) wholeSaid(s *notation.Stitches, c *notation.Counts, rest []notation.Item) (said *notation.Counts, leg bool) {
	if c.Not {
		return nil, false
	}
	k := w.bundle(s.What).Kind
	whole := w.bundle(notation.What{Kind: c.As, Name: c.Name})
	if as := whole.Kind; as.Shape == stitch.Cluster && as.Legs == 0 && k.Legs > 1 {
		whole.Kind = k
		whole.Kind.Legs++
		for _, o := range w.bundles(rest) {
			if o.Kind.Base == k.Base && (o.Kind.Legs == k.Legs || o.Kind.Legs == k.Legs+1) {
				whole = o
				break
			}
		}
	}
	as := whole.Kind
	if as.Shape == stitch.Plain || k.Base != as.Base {
		return nil, false
	}
	over := k.Shape == stitch.Together && (len(s.Places) == 0 || s.Places[0].Over || s.Places[0].N.Set()) ||
		k.Shape == stitch.Plain && as.Shape == stitch.Together && len(s.Places) == 1 && s.Places[0].Pick == notation.Next
	own := *c
	own.As, own.Name = as, whole.Name
	return &own, over && as.Legs == max(k.Legs, 1)+1
}

// chainLeg is the cluster that the chain at the beginning of a row is a leg of, where the row behind
// ends in the top of that cluster: "3 ch, miss first st, 3tr-cl over next 3 sts, …", and then "…, 4 tr in
// top of last cl". Of a half wheel the chain is a tr that has no top of its own. The zero Kind when it is not so.
func (w *roundWork) chainLeg(c *notation.Chain, after []notation.Item) stitch.Kind {
	if len(after) > 1 {
		if sk, ok := after[0].(*notation.Skip); ok && sk.Place != nil && skipsFirst(sk) {
			after = after[1:]
		}
	}
	said := c.Counts
	if said == nil {
		said = w.throughout[c.N.For(w.size)]
	}
	if said == nil {
		said = w.throughout[0]
	}
	if was := w.counted[c]; was != nil {
		said = was // unsaid, the rows have told what it is
	}
	if !w.r.Row || len(after) < 2 || said == nil || said.Not || said.Space || saidBehind(after) {
		return stitch.Kind{}
	}
	s, ok := after[0].(*notation.Stitches)
	if !ok || s.N.Set() && s.N.For(w.size) != 1 || s.Times.Set() || len(s.Places) != 1 {
		return stitch.Kind{}
	}
	k, pl := s.What.Kind, &s.Places[0]
	if k.Shape != stitch.Together && k.Shape != stitch.Cluster || k.Legs < 2 || c.N.For(w.size) != k.Chains() || pl.Pick != notation.Next || !pl.Over && pl.N.For(w.size) != k.Legs {
		return stitch.Kind{}
	}
	next := w.nextText()
	if next == nil || slices.ContainsFunc(w.stated, func(st *notation.Stated) bool {
		return slices.ContainsFunc(st.Counts, func(c notation.StatedCount) bool { return c.Target.Sort == notation.OfKind && c.Target.Kind == k })
	}) {
		return stitch.Kind{} // "(1 sc, 1 dc3tog, 1 dc4tog)": it is counted as it is worked
	}
	var last *notation.Place
	for i := len(next.Items) - 1; i >= 0 && last == nil; i-- {
		if needsPlaces(next.Items[i : i+1]) {
			if last = firstPlace(next.Items[i]); last == nil {
				return stitch.Kind{}
			}
		}
	}
	if last == nil || last.Pick != notation.Last && !(last.Bare && last.Pick == notation.Next) || last.N.Set() && last.N.For(w.size) != 1 || last.Of != nil {
		return stitch.Kind{}
	}
	switch t := &last.Target; t.Sort {
	case notation.OfShape, notation.OfKind:
		if t.Kind.Shape != stitch.Together && t.Kind.Shape != stitch.Cluster || t.Kind.Legs != 0 && t.Kind.Legs != k.Legs && t.Kind.Legs != k.Legs+1 {
			return stitch.Kind{}
		}
	default:
		return stitch.Kind{}
	}
	k.Shape, k.Legs = stitch.Together, k.Legs+1
	return k
}

// legOf is the cluster of which a chain is said to be the first leg, "ch 3 (counts as first leg of CL),
// skip first st, CL over next 3 sts": the one behind it and that leg. It is nil where no cluster
// follows, or one that the words name another number of legs for.
func (w *roundWork) legOf(c *notation.Counts, rest []notation.Item) (*notation.Counts, bool) {
	for _, it := range rest {
		switch it := it.(type) {
		case *notation.Note, *notation.Turn, *notation.Counts, *notation.InLoops:
			continue
		case *notation.Skip:
			if it.Place != nil && skipsFirst(it) {
				continue
			}
		case *notation.Stitches:
			k := it.What.Kind
			if d := w.definition(&it.What); d != nil && d.alias != nil {
				k = d.alias.Kind
			}
			over := len(it.Places) == 1 && (it.Places[0].Over || it.Places[0].N.Set())
			if over && k.Legs == 0 {
				k.Legs = it.Places[0].N.For(w.size)
			}
			if k.Shape != stitch.Together && k.Shape != stitch.Cluster || k.Legs < 1 || it.N.For(w.size) > 1 || it.Times.Set() {
				return nil, false
			}
			if k.Legs++; c.As.Legs > 1 && c.As.Legs != k.Legs && c.As.Shape == stitch.Together {
				return nil, false
			}
			return &notation.Counts{Span: it.Span, As: k}, over || k.Shape == stitch.Together
		}
		return nil, false
	}
	return nil, false
}
