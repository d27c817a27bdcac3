package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// cornerStitch reports whether spot i is the stitch at a corner of the round below:
// the middle one of three or more that were worked into one place, where that is the
// most there is in any, and most places hold fewer.
func (c *course) cornerStitch(i int) bool {
	if c.cornerAt == nil {
		c.findCorners()
	}
	return c.cornerAt[i]
}

// centreStitch reports whether spot i is the middle one of a row: the one corner that there
// is in it, or, where there is none, the one with as many stitches on either side. In a round
// it is a corner.
func (c *course) centreStitch(i int) bool {
	if c.below == nil || !c.below.Row {
		return c.cornerStitch(i)
	}
	corner := -1
	for k := range c.spots {
		switch {
		case c.cornerStitch(k) && corner >= 0:
			return false
		case c.cornerStitch(k):
			corner = k
		}
	}
	return corner == i || corner < 0 && 2*i+1 == len(c.spots)
}

func (c *course) findCorners() {
	n := len(c.spots)
	c.cornerAt = make([]bool, n+1)
	if n == 0 {
		return
	}
	// Stitches worked into one place at a time are apart from others that are there, as
	// "3 sc in corner" is from the end of the edge before it.
	together := make([]int, n)
	for k, g := range c.groups {
		for i := g.From; g.To-g.From >= 3 && i < g.To && i < n; i++ {
			together[i] = k + 1
		}
	}
	same := func(i, j int) bool {
		a, b := c.on(i), c.on(j)
		if len(a) != 1 || len(b) != 1 || a[0].At != b[0].At || a[0].Into == stitch.Ring || together[i] != together[j] {
			return false
		}
		return together[i] > 0 || a[0].Into != stitch.RowEnd && b[0].Into != stitch.RowEnd
	}
	// Runs are counted round the circle, from a place where one begins.
	first := 0
	for first < n-1 && same(first, (first+n-1)%n) {
		first++
	}
	var runs []fabric.Span
	most := 0
	for i := 0; i < n; {
		j := i + 1
		for j < n && same((first+i)%n, (first+j)%n) {
			j++
		}
		runs = append(runs, fabric.Span{From: i, To: j})
		most = max(most, j-i)
		i = j
	}
	corners := 0
	for _, r := range runs {
		if r.To-r.From == most {
			corners++
		}
	}
	if most < 3 || most%2 == 0 || 2*corners > len(runs) {
		return
	}
	for _, r := range runs {
		if r.To-r.From == most {
			c.cornerAt[(first+(r.From+r.To)/2)%n] = true
		}
	}
}

// on is what the stitch at spot i was worked into.
func (c *course) on(i int) []fabric.Place {
	if k := c.spots[i].ref.Stitch; c.spots[i].ref.Round == c.index && k >= 0 && k < len(c.carried) {
		return c.carried[k].On
	}
	return c.spots[i].st.On
}

// atCornerStitch reports whether a target means the stitch at spot i as a corner:
// "corner sc", or "corner" on a round without spaces.
func (c *course) atCornerStitch(i int, t *notation.Target) bool {
	switch t.Sort {
	case notation.CornerStitch:
		return t.Name == notation.Middle && c.centreStitch(i) || t.Name != notation.Middle && c.cornerStitch(i)
	case notation.ChainSpace:
		return t.Name == notation.Corner && t.Chains == 0 && len(c.runs) == 0 && c.cornerStitch(i)
	}
	return false
}

// hasRun reports whether the round below has a space that a target names.
func (w *roundWork) hasRun(t *notation.Target) bool {
	for k := range w.c.runs {
		if w.c.runIs(k, t) {
			return true
		}
	}
	return false
}

// noCorner is the fault of an exception for corners, or for the space in the middle,
// where there are none; nil when there are some or none are named.
func (w *roundWork) noCorner(s *notation.Stitches) *halt {
	for _, but := range s.But {
		p := placeOf(but)
		if p.Target.Sort == notation.ChainSpace && p.Target.Name == notation.Middle && w.c.middle(p.Target.Chains) < 0 {
			return stopAt(p.Span, "no-centre", w.c.belowName()+" has no such space in the middle", capital(w.c.belowName())+" has "+w.spacesBelow()+".")
		}
		if p.Target.Sort == notation.ChainSpace && p.Target.Name == "" && w.c.edge == 0 && !w.hasRun(&p.Target) {
			return w.outOf(p, 1) // "sc in each st across, 5 sc in ch-5 loop", "3 sc in each ch-2 sp": there is to be one
		}
		if p.Target.Sort != notation.CornerStitch && p.Target.Name != notation.Corner {
			continue
		}
		for i := range w.c.spots {
			if w.c.atCornerStitch(i, &p.Target) || w.c.spots[i].run > 0 && p.Target.Sort == notation.ChainSpace {
				return nil
			}
		}
		h := stopAt(p.Span, "no-corner", "the round below has no corners", "A corner is a chain space, or the middle one of three or more stitches in one place. Say into which stitches it goes.")
		h.message = w.c.belowName() + " has no corners"
		return h
	}
	return nil
}

// belowName is what the round below is called.
func (c *course) belowName() string {
	if c.below == nil || c.below.Label == "" {
		return "the round below"
	}
	return c.below.Label
}

// cornersBelow reports whether the round below has stitches at corners.
func (w *roundWork) cornersBelow() bool {
	for i := range w.c.spots {
		if w.c.cornerStitch(i) {
			return true
		}
	}
	return false
}
