package working

import (
	"slices"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// next is the spot of the stitch after the one at spot i, round the end when the
// work goes round; -1 when there is none.
func (c *course) next(i int) int {
	n := len(c.spots)
	for k := 1; k < n; k++ {
		j := (i + k) % n
		if j < i && c.flat {
			return -1
		}
		if c.spots[j].counts {
			return j
		}
	}
	return -1
}

// gapIs reports whether the gap after the stitch at spot i is what the target
// names: between any two stitches, between two of a kind, or between groups.
func (c *course) gapIs(i int, t *notation.Target) bool {
	if !c.spots[i].counts {
		return false
	}
	j := c.next(i)
	if j < 0 {
		return false
	}
	switch {
	case t.Name == "" || t.Name == notation.Here:
		of := notation.Target{Sort: notation.OfKind, Kind: t.Kind, Loop: t.Loop}
		if t.Kind == (stitch.Kind{}) {
			return true
		}
		if t.Kind.Shape != stitch.Plain && t.Kind.Base == stitch.None {
			of.Sort = notation.OfShape
		}
		return c.matches(i, &of) && c.matches(j, &of)
	case t.Name == notation.Pair:
		of := notation.Target{Sort: notation.OfKind, Kind: t.Kind, Loop: t.Loop}
		return (t.Kind == stitch.Kind{} || c.matches(i, &of) && c.matches(j, &of)) && c.paired(i, j)
	case t.Name == notation.VStitch && c.together(i, j), t.Name == notation.Groups && c.together(i, j):
		return false
	}
	// What stands on its other side, at the edge of a row, need not be such a group.
	switch t.GroupSide() {
	case "before":
		return c.beginsGroup(j, t) || c.edgeGroup(j, 1, t.Name)
	case "after":
		return c.endsGroup(i, t) || c.edgeGroup(i, -1, t.Name)
	}
	// A chain at the edge of a row that nothing stands beside is no group; a round may
	// begin with one that is finished at its join.
	begun := func(k int) bool {
		return t.Name == notation.Groups && t.Chains == 0 && !c.flat && c.spots[k].st.Role == fabric.Start
	}
	return (c.endsGroup(i, t) || begun(i)) && (c.beginsGroup(j, t) || begun(j))
}

// groupEnds reports whether the last stitch of a group of a name is at spot i.
func (c *course) groupEnds(i int, name string) bool {
	for _, g := range c.groups {
		if !g.is(name) || i < g.From || i >= g.To {
			continue
		}
		for i++; i < g.To && !c.spots[i].counts; i++ {
		}
		return i == g.To
	}
	for _, g := range c.cutGroups {
		if end := g.To - len(c.spots); g.is(name) && i < end {
			for i++; i < end && !c.spots[i].counts; i++ {
			}
			return i == end
		}
	}
	return false
}

// groupBegins reports whether a group of a name begins at spot j, whole or cut in
// two by the beginning of the round.
func (c *course) groupBegins(j int, name string) bool {
	for _, g := range c.cutGroups {
		if g.is(name) && g.From == j {
			return true
		}
	}
	return c.groupAt(j, name) != nil
}

// beside is how many stitches stand in one place from spot i on, in one
// direction, without chains between them.
func (c *course) beside(i, step int) int {
	n, all := 1, len(c.spots)
	for ; n < all; n++ {
		j := i + n*step
		if c.flat && (j < 0 || j >= all) {
			break
		}
		if j = (j + all) % all; !c.spots[j].counts || !c.together(i, j) {
			break
		}
	}
	return n
}

// vAt reports whether the stitch at spot i is the outer one of a V-st that goes on from it in one
// direction: two stitches in one place, with nothing but chains between them.
func (c *course) vAt(i, step int) bool {
	all := len(c.spots)
	for n := 1; n < all; n++ {
		j := i + n*step
		if c.flat && (j < 0 || j >= all) {
			return false
		}
		if j = (j + all) % all; c.spots[j].counts {
			return n > 1 && c.together(i, j)
		}
	}
	return false
}

// together reports whether the stitches at two spots stand in one place.
func (c *course) together(i, j int) bool {
	a, b := c.spots[i].st, c.spots[j].st
	if len(a.On) == 0 || len(b.On) == 0 {
		return a.Group > 0 && a.Group == b.Group
	}
	return a.On[0] == b.On[0]
}

// leavesGroup reports whether the place worked into last is a group, whose end the work
// has come to.
func (w *roundWork) leavesGroup() bool {
	return w.lastGroup > 0 && w.pos > 0 && w.c.groups[w.lastGroup-1].To == w.pos && len(w.same) == 1 && w.spotOf(w.same[0]) >= w.c.groups[w.lastGroup-1].From && w.spotOf(w.same[0]) < w.pos-1
}

// besideGap reports whether a gap between groups is meant, and the stitch worked into last is the one
// before it: "sl st in next 2 dc, sl st in sp before next group".
func (w *roundWork) besideGap(targets []notation.Target) bool {
	if len(targets) == 1 && targets[0].Beside() && targets[0].Name != notation.Here && w.pos > 0 && w.pos < len(w.c.spots) && w.c.spots[w.pos-1].use == skipped {
		return w.c.gapIs(w.pos-1, &targets[0]) // "miss next group, 3 tr into sp before next group"
	}
	if len(targets) != 1 || targets[0].Sort != notation.Gap || w.pos == 0 || w.pos > len(w.c.spots) || len(w.same) != 1 || w.same[0].Into != stitch.Top || w.spotOf(w.same[0]) != w.pos-1 {
		return false
	}
	t := &targets[0]
	return t.Name != "" && t.Name != notation.Here && t.Name != notation.Pair && w.c.gapIs(w.pos-1, t)
}

// gapBeyond reports whether the gap after spot i lies beyond the space that an
// extent goes up to.
func (w *roundWork) gapBeyond(i int, e *notation.Extent) bool {
	for k := w.c.runFrom(w.pos); k < len(w.c.runs); k++ {
		if w.c.runIs(k, &e.Target) {
			return i < 0 || i >= w.c.runs[k].From
		}
	}
	return false
}

// lastGapAhead reports whether the gap after spot i is the last there is, and what follows goes into
// that by name: "…, dc in sp between last group and turning ch".
func (w *roundWork) lastGapAhead(i int) bool {
	if i < 0 || len(w.after) == 0 {
		return false
	}
	s, ok := w.after[0].(*notation.Stitches)
	if !ok || len(s.Places) != 1 || s.Places[0].Pick != notation.Last || s.Places[0].Target.Sort != notation.Gap {
		return false
	}
	j := w.c.next(i)
	return j < 0 || w.c.flat && w.c.next(j) < 0
}

// paired reports whether the stitches at two spots are two by themselves: in one place,
// or with chains or other stitches on either side.
func (c *course) paired(i, j int) bool {
	if c.together(i, j) {
		return c.beside(i, -1) == 1 && c.beside(j, 1) == 1
	}
	kind := c.spots[i].st.Counted()
	alone := func(k int) bool {
		if c.flat && (k < 0 || k >= len(c.spots)) {
			return true
		}
		s := &c.spots[(k+len(c.spots))%len(c.spots)]
		return !s.counts || s.st.Counted() != kind
	}
	return alone(i-1) && alone(j+1)
}

// begunGap is the gap that the round begins at, where its first stitch goes "between 2
// hdc" without a word that says which; nil where it goes elsewhere.
func (w *roundWork) begunGap(p *notation.Place) []fabric.Place {
	if w.begun || !p.Bare || p.Pick != notation.Next || p.Target.Sort != notation.Gap || p.Target.At > 0 || len(w.same) != 1 || w.same[0].Into != stitch.Between ||
		len(w.c.spots) == 0 || p.Target.Name != notation.Here && !w.c.gapIs(0, &p.Target) {
		return nil
	}
	return w.same
}

// gapsIn are the spots in a group that a gap of it comes after.
func (c *course) gapsIn(g spotGroup, t *notation.Target) (l []int) {
	for i := g.From; i < g.To; i++ {
		if j := c.next(i); j > i && j < g.To && c.gapIs(i, t) {
			l = append(l, i)
		}
	}
	return l
}

// nthGap is the spot before the nth gap of the round, -1 when there is none.
func (c *course) nthGap(t *notation.Target) int {
	left := t.At
	for k := range c.spots {
		if i := (k + len(c.spots) - c.lead) % len(c.spots); c.gapIs(i, t) {
			if left--; left == 0 {
				return i
			}
		}
	}
	return -1
}

// gapMeant is the gap that "next sp" takes in beside the chain spaces: one as the round has gone
// into before, where the words name no chains. It is nil for any other place.
func (w *roundWork) gapMeant(p *notation.Place) (gap *notation.Target) {
	if p.Pick != notation.Next || p.Target.Sort != notation.ChainSpace || p.Target.Chains > 0 || p.Target.Name != "" || strings.Contains(strings.ToLower(p.Target.Text), "ch") ||
		!slices.ContainsFunc(w.r.Stitches, func(st fabric.Stitch) bool { return into(&st) == stitch.Between }) {
		return nil
	}
	walkPlaces(w.items, func(pl *notation.Place) {
		if pl.Target.Sort == notation.Gap && gap == nil {
			t := pl.Target
			if t.At = 0; t.Name == notation.Here {
				t.Name = ""
			}
			gap = &t
		}
	})
	return gap
}

// beforeFirst is the spot before the gap "before first V-st" of a row, and "after last V-st" the one
// before that; -1 for any other. In a round the first is the gap at its join.
func (w *roundWork) beforeFirst(p *notation.Place) int {
	t := &p.Target
	if t.Sort != notation.Gap || !w.c.flat {
		return -1
	}
	side := t.OutermostSide()
	if side == "" {
		return -1
	}
	first := side == "before first"
	found := -1
	for i := range w.c.spots {
		j := w.c.next(i)
		if !w.c.spots[i].counts || j < 0 {
			continue
		}
		if first && w.c.beginsGroup(j, t) {
			return i
		}
		if !first && w.c.endsGroup(i, t) {
			found = i
		}
	}
	return found
}

// beginsGroup reports whether a group that a gap is named by begins at spot j.
func (c *course) beginsGroup(j int, t *notation.Target) bool {
	switch t.Name {
	case notation.Groups:
		return c.isGroup(j, 1, t)
	case notation.VStitch:
		return c.vAt(j, 1)
	}
	return c.groupBegins(j, t.Name)
}

// isGroup reports whether the stitches from spot i on in one direction are a group without a name, of as many
// stitches and of the kind that the words say. Beside a gap told by one group alone, the few that stand at the
// edge of a row of larger ones are none.
func (c *course) isGroup(i, step int, t *notation.Target) bool {
	n := c.beside(i, step)
	if t.Chains > 0 {
		return n == t.Chains && c.spots[i].st.Counted() == t.Kind
	}
	if end := i + (n-1)*step; c.flat && t.GroupSide() != "" && (end == 0 || end == len(c.spots)-1) {
		for k := range c.spots {
			if c.spots[k].counts && c.beside(k, 1) > n {
				return false
			}
		}
	}
	return n > 1
}

// edgeGroup reports whether the stitches from spot i to the edge of a row are more than half of a group of that
// name: the half shell of a row that grows at its edges, with the turning chain as the last of it.
func (c *course) edgeGroup(i, step int, name string) bool {
	k := slices.IndexFunc(c.groups, func(g spotGroup) bool { return g.is(name) })
	if !c.flat || k < 0 || name == "" {
		return false
	}
	g := c.groups[k]
	whole, made := g.From, 0
	if step < 0 {
		whole = g.To - 1
	}
	for j := i; j >= 0 && j < len(c.spots); j += step {
		if whole < g.From || whole >= g.To || c.spots[j].counts != c.spots[whole].counts || c.spots[j].counts && !c.together(i, j) || c.spots[j].st.Counted() != c.spots[whole].st.Counted() {
			return false
		}
		whole += step
		made++
	}
	return made > 1 && 2*made > g.To-g.From && made < g.To-g.From
}

// endsGroup is the same of the end of a group.
func (c *course) endsGroup(i int, t *notation.Target) bool {
	switch t.Name {
	case notation.Groups:
		return c.isGroup(i, -1, t)
	case notation.VStitch:
		return c.vAt(i, -1)
	}
	return c.groupEnds(i, t.Name)
}
