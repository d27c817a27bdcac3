package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// ownClusters takes the designer's own decreases as groups of one, which are gone into by
// their name: "9 dc in top of next CL".
func (c *course) ownClusters(below *fabric.Round, spotOf []int) {
	n := len(c.groups)
	for j := range below.Stitches {
		st := &below.Stitches[j]
		if st.Own != "" && st.Kind.Shape == stitch.Together && spotOf[j] >= 0 {
			c.groups = append(c.groups, spotGroup{fabric.Span{From: spotOf[j], To: spotOf[j] + 1}, st.Own, ""})
		}
	}
	if len(c.groups) > n {
		slices.SortStableFunc(c.groups, func(a, b spotGroup) int { return a.From - b.From })
	}
}

// findGroups notes where the groups begin.
func (c *course) findGroups() {
	c.groupsAt = make(map[int][]int, len(c.groups))
	for i, g := range c.groups {
		c.groupsAt[g.From] = append(c.groupsAt[g.From], i)
	}
}

// groupAt is the group of a name that begins at a spot, nil when there is
// none.
func (c *course) groupAt(i int, name string) *spotGroup {
	for _, k := range c.groupsAt[i] {
		if c.groups[k].is(name) {
			return &c.groups[k]
		}
	}
	return nil
}

// anotherAfter reports whether a group of the name comes after group k.
func (c *course) anotherAfter(k int, name string) bool {
	for j := k + 1; j < len(c.groups); j++ {
		if c.groups[j].is(name) && c.groups[j].From >= c.groups[k].To {
			return true
		}
	}
	return false
}

// groupOf reports whether a group is of so many stitches of a kind, or of any where k is
// the zero Kind.
func (c *course) groupOf(g spotGroup, k stitch.Kind, n int) bool {
	have := 0
	for i := g.From; i < g.To; i++ {
		if sp := &c.spots[i%len(c.spots)]; sp.counts {
			if k.Is() && sp.st.Counted() != k {
				return false
			}
			have++
		}
	}
	return have == n
}

// centre is the spot in the centre of a group, and 1 + its chain run if it is a
// space: the only space of the group, else what stands in the middle. With gap
// set it is the place between that spot and the next.
func (c *course) centre(g spotGroup) (at, run int, gap bool) {
	spaces := 0
	for i := g.From; i < g.To; i++ {
		if r := c.spots[i].run; r > 0 && c.runs[r-1].From == i {
			at, run = i, r
			spaces++
		}
	}
	if spaces == 1 {
		return at, run, false
	}
	at = (g.From + g.To - 1) / 2
	if r := c.spots[at].run; r > 0 {
		return c.runs[r-1].From, r, false
	}
	return at, 0, (g.To-g.From)%2 == 0
}
