package chart

import (
	"math"
	"slices"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
)

// A fan much wider than it is tall is drawn as half a wheel, and takes less room than its
// stitches side by side: down to gatherMost of it, where it is wider than gatherFrom times
// its height.
const gatherFrom, gatherMost = 4.0, 0.65

// gatherFans narrows the wide fans of a round of lace.
func (w *work) gatherFans(c *course, items []ring.Item) {
	if !w.mayGather(c) {
		return
	}
	eachFan(items, func(from, end, stitches int) {
		part := 1.0
		if stitches >= domeLeast {
			wide := 0.0
			for k := from; k < end; k++ {
				wide += items[k%len(items)].Width
			}
			part = math.Max(gatherMost, math.Min(1, gatherFrom*c.form.Height/wide))
		}
		if closed, ok := c.closed[items[from%len(items)].Place]; ok {
			part *= closed
		}
		for k := from; k < end; k++ {
			items[k%len(items)].Width *= part
		}
	})
}

// mayGather reports whether the wide fans of a round are narrowed: in rounds of lace.
func (w *work) mayGather(c *course) bool {
	return !w.rows && w.oval == nil && w.border == nil && c.arched()
}

// The outermost legs of a fan lie down no farther than mostOpen, degrees from its middle,
// unless its stitches would then be nearer one another than they may.
const (
	mostOpen   = 60.0
	openSlack  = 2.0
	closeTries = 4
	closeLeast = 3 // stitches
	partSteps  = 20
)

// closeFans narrows the fans of the drawn rounds that open too far on paper; lay sets the
// rounds on a page.
func (w *work) closeFans(lay func(*page)) {
	drawn := w.courses[w.first : w.last+1]
	if !slices.ContainsFunc(drawn, w.mayGather) {
		return
	}
	for try := range closeTries {
		lay(newPage(w, false))
		closed := false
		for _, c := range drawn {
			closed = w.space(c) && try == 0 || closed
		}
		for _, c := range drawn {
			closed = w.mayGather(c) && w.closeFansOf(c) || closed
		}
		if !closed {
			return
		}
		w.turn()
	}
}

// The stitches of a round of lace need spacedFrom units each along it; what they have
// besides, up to spacedMost times that, parts its fans from one another and does not open
// them.
const spacedFrom, spacedMost = 0.7, 2.0

// space finds how much farther from one another the stitches of a round of lace are on
// paper than they need; false where that is hardly more.
func (w *work) space(c *course) bool {
	if !w.mayGather(c) || c.index < w.lo {
		return false
	}
	pitch := ring.Turn * w.radii.Of(w.layer(c)) / float64(len(c.order))
	c.spaced = math.Max(1, math.Min(spacedMost, pitch/math.Max(leastPitch, spacedFrom*w.unit)))
	return c.spaced > 1.05
}

// closeFansOf finds how much narrower the fans of a round should be, alike in all repeats;
// false where none is too wide.
func (w *work) closeFansOf(c *course) bool {
	var keys []int
	var parts []float64
	w.fans(c, closeLeast, func(fan []int, place fabric.Place) {
		keys, parts = append(keys, w.key(place)), append(parts, w.closedTo(c, fan, place))
	})
	each := len(parts) // in a repeat
	if c.fold > 1 && each%c.fold == 0 {
		each /= c.fold
	}
	found := false
	for k, key := range keys {
		part := 1.0
		for j := k % each; j < len(parts); j += each {
			part = math.Min(part, parts[j])
		}
		if part > 0.97 {
			continue
		}
		if c.closed == nil {
			c.closed = map[int]float64{}
		}
		if c.closed[key] == 0 {
			c.closed[key] = 1
		}
		c.closed[key] *= part
		found = true
	}
	return found
}

// closedTo is the part of its width that a fan should have; 1 where it opens no farther
// than it may.
func (w *work) closedTo(c *course, fan []int, place fabric.Place) float64 {
	first, last := fan[0], fan[len(fan)-1]
	foot, _ := w.foot(c, first, place)
	far, _ := w.foot(c, last, place)
	a, b := w.top(c, first), w.top(c, last)
	up := a.Interpolate(b, 0.5).Sub(foot.Interpolate(far, 0.5))
	wide := b.Sub(a).Length()
	lean := (wide - far.Sub(foot).Length()) / 2
	open := math.Tan(mostOpen * math.Pi / 180)
	over := lean / math.Max(up.Length(), 0.1)
	if over <= math.Tan((mostOpen+openSlack)*math.Pi/180) {
		return 1
	}
	gaps := c.rank[last] - c.rank[first]
	if gaps < 0 {
		gaps += len(c.order)
	}
	part := math.Max(open/over, float64(gaps)*leastSplit/wide)
	if part = math.Round(part*partSteps) / partSteps; part <= 0 {
		return 1
	}
	return part
}

// Two fans of a round of lace next to one another, as over the tip of a pineapple, that stand
// farther apart than passedFrom times the room they have leave passedOpen of that open: they
// lean towards one another, and do not lie down over what they pass. So do single stitches
// of a round over it, from passedAlone times on.
const passedFrom, passedAlone, passedOpen = 1.3, 2.5, 0.8

// leaveOpen leaves that room between them.
func (w *work) leaveOpen(c *course, items []ring.Item) {
	c.gapped, c.atSeam = false, 0
	after := c.index > 0 && w.courses[c.index-1].gapped
	if !after && !w.mayGather(c) {
		return
	}
	type group struct {
		from, end  int
		base, wide float64
	}
	n := len(items)
	var groups []group
	next := -1
	alone := func(to int) {
		for k := next; next >= 0 && k < to; k++ {
			if t := items[k%n]; !t.Free {
				groups = append(groups, group{k, k + 1, t.Base, t.Width})
			}
		}
	}
	eachFan(items, func(from, end, _ int) {
		alone(from)
		g := group{from: from, end: end, base: items[from%n].Base, wide: items[from%n].Width}
		for k := from + 1; k < end; k++ {
			g.wide += items[k%n].Before + items[k%n].Width
		}
		groups, next = append(groups, g), end
	})
	if len(groups) == 0 {
		return
	}
	alone(groups[0].from + n)
	total, open := 0.0, 0.0
	for i := range items {
		total += items[i].Width + items[i].Before
	}
	left := make([]float64, n) // angles, before an item
	for k, g := range groups {
		h := groups[(k+1)%len(groups)]
		i := h.from % n
		if g.end%n != i || len(groups) < 2 {
			continue // chains lie between
		}
		most := passedFrom
		if g.end-g.from == 1 && h.end-h.from == 1 {
			if most = passedAlone; !after {
				continue
			}
		}
		apart := above(h.base-g.base, -ring.Turn/4)
		if room := ((g.wide+h.wide)/2 + items[i].Before) * ring.Turn / total; apart > most*room {
			left[i] = passedOpen * (apart - room)
			open += left[i]
		}
	}
	if open == 0 || open > ring.Turn/2 {
		return
	}
	c.gapped, c.atSeam = true, left[0]
	for i := range items {
		items[i].Before += left[i] * total / (ring.Turn - open)
	}
}
