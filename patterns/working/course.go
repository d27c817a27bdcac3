package working

import (
	"slices"
	"sort"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// use is what has become of a place of the round below.
type use uint8

const (
	unused  use = iota
	worked      // a stitch stands in it
	skipped     // passed over by name
	passed      // passed over on the way to something named
)

// spot is one place of the round below, in the order of working.
type spot struct {
	ref fabric.Ref
	st  *fabric.Stitch
	// counts is set for what "next st" means: a stitch that counts, or a
	// chain of the starting chain.
	counts bool
	// run is 1 + the index of the chain run that the spot belongs to, 0 for
	// a stitch.
	run int
	use use
	// optional is set for the other side of the first chain of an oval, when
	// it holds the stitches of that end already.
	optional bool
	// seam is set for the place between two motifs that are joined, and corner for what stands
	// at their corners there.
	seam   bool
	corner seamCorner
	// free is set at a corner of joined motifs where no other motif meets it.
	free bool
}

// course is the round below laid out for working.
type course struct {
	below *fabric.Round
	index int // of below in its part
	spots []spot
	// runs are the chain runs in working order, as spans of spots, and chains
	// how many chains each counts as.
	runs    []fabric.Span
	chains  []int
	longest int // of the chains
	// groups are spans of spots, in working order; groupsAt are those that
	// begin at a spot.
	groups   []spotGroup
	groupsAt map[int][]int
	// cutGroups are those that the beginning of the round cuts in two: they run on
	// past the last spot to the first.
	cutGroups []spotGroup
	ring      bool
	// oval is the spot of the other side of the first chain, 0 for none.
	oval int
	// lead is how many of the spots come last though they are the first of the
	// round: the work begins after them.
	lead int
	// side is where the other side of a starting chain begins, once it does.
	side int
	// flat is set when the round to be worked is a row, which has no gap between
	// its last stitch and its first.
	flat bool
	// edge are the rows along whose ends the round is worked.
	edge     int
	edgePart int
	// lengthened is the first of the spots of older rows that lie beyond the end of this one, left
	// unworked by short rows; 0 for none.
	lengthened int
	// carried are the stitches of a round of another part, with what they were worked
	// into there; nil for a round of the part itself.
	carried []fabric.Stitch
	// anyKind is set when the name of a plain stitch stands for any.
	anyKind bool
	// allCorners is set where the corners of motifs that are joined there are called so as well.
	allCorners bool
	// cornerAt are the spots at corners, nil until they are asked for.
	cornerAt []bool
}

type spotGroup struct {
	fabric.Span
	name, like string
}

// is reports whether a group is of a name, or written out like what the name stands
// for.
func (g *spotGroup) is(name string) bool {
	return g.name == name || name != "" && g.like != "" && (g.like == name || strings.Contains(name, "(") && slices.Contains(bothNames(name), g.like))
}

// layCourse lays out a round for working, backwards when the work has been
// turned.
func layCourse(below *fabric.Round, index int, back bool) *course {
	c := &course{below: below, index: index, ring: below.Ring}
	runOf := make([]int, len(below.Stitches))
	for i, s := range below.Spaces {
		for j := s.From; j < s.To; j++ {
			runOf[j] = i + 1
		}
	}
	spotOf := make([]int, len(below.Stitches))
	foundation := below.Number == 0 && !below.Carried && below.Count() == 0
	for i := range below.Stitches {
		st := &below.Stitches[i]
		spotOf[i] = -1
		switch st.Role {
		case fabric.Join, fabric.Travel, fabric.LastHalf:
			continue
		case fabric.Start:
			if !st.Counts {
				continue
			}
		}
		spotOf[i] = len(c.spots)
		c.spots = append(c.spots, spot{
			ref: fabric.Ref{Round: index, Stitch: i}, st: st,
			counts: st.Counts || foundation && st.IsChain(),
			run:    runOf[i],
		})
	}
	if back {
		c.reverse(below.Closing == fabric.Joined && !below.Row, spotOf)
	}
	at := 0
	for at < len(c.spots) {
		if r := c.spots[at].run; r > 0 && !foundation {
			from := at
			for at < len(c.spots) && c.spots[at].run == r {
				c.spots[at].run = len(c.runs) + 1
				at++
			}
			c.chains = append(c.chains, below.SpaceChains(r-1))
			c.longest = max(c.longest, below.SpaceChains(r-1))
			c.runs = append(c.runs, fabric.Span{From: from, To: at})
			continue
		}
		c.spots[at].run = 0
		at++
	}
	for _, g := range below.Groups {
		lo, hi := -1, -1
		for j := g.From; j < g.To && j < len(spotOf); j++ {
			if k := spotOf[j]; k >= 0 {
				if lo < 0 || k < lo {
					lo = k
				}
				if k > hi {
					hi = k
				}
			}
		}
		if lo >= 0 {
			c.groups = append(c.groups, spotGroup{fabric.Span{From: lo, To: hi + 1}, g.Name, g.Like})
		}
	}
	if back {
		for i, j := 0, len(c.groups)-1; i < j; i, j = i+1, j-1 {
			c.groups[i], c.groups[j] = c.groups[j], c.groups[i]
		}
	}
	c.ownClusters(below, spotOf)
	c.findGroups()
	return c
}

// after is the next spot that counts, 0 when there is none.
func (c *course) after(i int) int {
	for i++; i < len(c.spots); i++ {
		if c.spots[i].counts {
			return i
		}
	}
	return 0
}

// begin turns the course so that a spot comes first: the round is begun there.
// A space is never cut in two: a hook in the middle of one begins with the whole
// of it. It gives the spot that is first.
func (c *course) begin(at int) int {
	if run := c.spots[at].run; run > 0 && c.runs[run-1].To <= len(c.spots) {
		at = c.runs[run-1].From
	}
	c.spots = append(append([]spot(nil), c.spots[at:]...), c.spots[:at]...)
	c.cornerAt = nil
	n := len(c.spots)
	turned := func(s fabric.Span) fabric.Span {
		from := (s.From - at + n) % n
		return fabric.Span{From: from, To: from + s.To - s.From}
	}
	for i := range c.runs {
		c.runs[i] = turned(c.runs[i])
	}
	// The runs are in order round the circle; the first is now another.
	first := 0
	for i := range c.runs {
		if c.runs[i].From < c.runs[first].From {
			first = i
		}
	}
	c.runs = append(append([]fabric.Span(nil), c.runs[first:]...), c.runs[:first]...)
	c.chains = append(append([]int(nil), c.chains[first:]...), c.chains[:first]...)
	for i, r := range c.runs {
		for j := r.From; j < r.To && j < n; j++ {
			c.spots[j].run = i + 1
		}
	}
	for i := range c.groups {
		c.groups[i].Span = turned(c.groups[i].Span)
	}
	// A group that the beginning cuts in two can no longer be named.
	whole := c.groups[:0]
	for _, g := range c.groups {
		if g.To <= n {
			whole = append(whole, g)
		} else {
			c.cutGroups = append(c.cutGroups, g)
		}
	}
	c.groups = whole
	sort.SliceStable(c.groups, func(i, j int) bool { return c.groups[i].From < c.groups[j].From })
	c.findGroups()
	return at
}

// cut leaves the spots from number n on out of the course.
func (c *course) cut(n int) {
	c.spots = c.spots[:n]
	for k := len(c.runs); k > 0 && c.runs[k-1].To > n; k-- {
		c.runs, c.chains = c.runs[:k-1], c.chains[:k-1]
	}
	whole := c.groups[:0]
	for _, g := range c.groups {
		if g.To <= n {
			whole = append(whole, g)
		}
	}
	c.groups = whole
	c.findGroups()
}

// runFrom is the first chain run that begins at pos or later.
func (c *course) runFrom(pos int) int {
	return sort.Search(len(c.runs), func(k int) bool { return c.runs[k].From >= pos })
}

// runIs reports whether a run is a space that a target names: of so many chains
// (0 is any number), or, where spaces of several lengths go round, at a corner,
// which has the longest.
func (c *course) runIs(k int, t *notation.Target) bool {
	switch corner := c.spots[c.runs[k].From].corner; {
	case t.Seam != notation.NoSeam && !t.Seam.Is(corner == beforeSeam, corner == afterSeam), t.IsCorner() && t.Seam == notation.NoSeam && corner != noSeam && !c.allCorners:
		return false
	case t.Name == notation.Middle:
		return k == c.middle(t.Chains)
	case t.Name == notation.Corner && t.Chains == 0:
		return c.chains[k] == c.longest
	case t.Name == notation.EdgeLoop && c.below.Row && c.edgeRun() >= 0:
		return k == c.edgeRun()
	case t.IsLoop() && c.halfLoop(k):
		return false
	}
	return t.Chains == 0 || c.chains[k] == t.Chains || c.besideStart(k) == t.Chains && !slices.Contains(c.chains, t.Chains)
}

// halfLoop reports whether a run is the single chain beside a stitch at the edge of a mesh in rows,
// half a space, which "next loop" does not mean where all others are of three chains or more.
func (c *course) halfLoop(k int) bool {
	if !c.below.Row || c.chains[k] != 1 || k != 0 && k != len(c.runs)-1 {
		return false
	}
	inner := c.chains[min(1, len(c.chains)):max(1, len(c.chains)-1)]
	return len(inner) > 0 && slices.Min(inner) > 2
}

// edgeRun is the run at the edge where the row below began: the last, when the work has
// been turned; -1 for none.
func (c *course) edgeRun() int {
	k := len(c.runs) - 1
	if k >= 0 && (c.runs[k].To == len(c.spots) || c.besideStart(k) > 0) {
		return k
	}
	return -1
}

// middle is the middle one of the runs of so many chains, 0 the longest ones; -1
// when there is none in the middle.
func (c *course) middle(chains int) int {
	if chains == 0 {
		chains = c.longest
	}
	var l []int
	for k, n := range c.chains {
		if n == chains {
			l = append(l, k)
		}
	}
	if len(l)%2 == 0 {
		return -1
	}
	return l[len(l)/2]
}

// reverse turns the course about. In a joined round the stitch that was joined
// to comes first either way.
func (c *course) reverse(joined bool, spotOf []int) {
	n := len(c.spots)
	lo := 0
	if joined && n > 0 {
		lo = 1
	}
	for i, j := lo, n-1; i < j; i, j = i+1, j-1 {
		c.spots[i], c.spots[j] = c.spots[j], c.spots[i]
	}
	for i, k := range spotOf {
		if k >= lo {
			spotOf[i] = n - 1 - k + lo
		}
	}
}

// count is the number of spots that "each st around" goes into.
func (c *course) count() int {
	n := 0
	for i := range c.spots {
		if c.spots[i].counts {
			n++
		}
	}
	return n
}

// place is the place of a spot.
func (c *course) place(i int, into stitch.Into) fabric.Place {
	if c.edge > 0 {
		return c.rowEnd(i)
	}
	return fabric.Place{Into: into, At: c.spots[i].ref, Last: c.spots[i].ref}
}

// space is the place under a run of chains.
func (c *course) space(run int) fabric.Place {
	r := c.runs[run]
	if c.edge > 0 {
		return c.rowEnd(r.From)
	}
	a, b := c.spots[r.From].ref, c.spots[r.To-1].ref
	if a.Stitch > b.Stitch {
		a, b = b, a
	}
	return fabric.Place{Into: stitch.Space, At: a, Last: b}
}

// followsSpace reports whether the spot before spot i is a chain of a space, round
// the circle for the first.
func (c *course) followsSpace(i int) bool {
	if i == 0 {
		i = len(c.spots)
	}
	return c.spots[i-1].run > 0
}

// sitsInSpace reports whether the stitch at spot i was worked into a chain space.
func (c *course) sitsInSpace(i int) bool {
	on := c.spots[i].st.On
	return len(on) > 0 && on[0].Into == stitch.Space
}

// matches reports whether the stitch at spot i is what the target names.
func (c *course) matches(i int, t *notation.Target) bool {
	s := &c.spots[i]
	if c.edge > 0 {
		return t.Sort == notation.RowEnds
	}
	if s.seam || t.Seam != notation.NoSeam {
		return c.atSeam(i, t)
	}
	if s.corner != noSeam && !s.counts && !s.st.IsChain() {
		return false // it is gone into with the seam
	}
	switch t.Sort {
	case notation.AnyStitch:
		return s.counts
	case notation.Gap:
		return c.gapIs(i, t)
	case notation.CornerStitch:
		return c.cornerStitch(i)
	case notation.ChainStitch, notation.FromHook:
		return s.st.IsChain()
	case notation.OfKind:
		if t.Name == notation.Foot && s.onPoint() || t.Lone && slices.ContainsFunc(c.groups, func(g spotGroup) bool { return g.From <= i && i < g.To && g.To-g.From > 1 }) {
			return false
		}
		return sameKind(t, s.st) || c.anyKind && s.counts && t.Name == "" && !t.Loop.Set
	case notation.StartChain:
		return s.st.Role == fabric.Start
	case notation.OfShape:
		k := s.st.Counted()
		return k.Shape == t.Kind.Shape || t.Kind.Shape == stitch.Cluster && k.Shape == stitch.Together || t.Kind.Shape == stitch.Bobble && s.st.InOnePlace()
	}
	return false
}

// sameKind reports whether a stitch is called what the target says. A plain
// name takes in the stitches of its height that were worked together, since
// those are tops of the same kind.
func sameKind(t *notation.Target, st *fabric.Stitch) bool {
	k := st.Counted()
	if t.Loop.Set {
		if len(st.On) == 0 || st.On[0].Into != t.Loop.Into {
			return false
		}
	}
	if t.Name == notation.Post {
		return t.Loop.Set || len(st.On) > 0 && (st.On[0].Into == stitch.FrontPost || st.On[0].Into == stitch.BackPost)
	}
	if k == t.Kind || t.Kind.Shape == stitch.Together && st.As.Shape == stitch.Together && st.Kind == t.Kind {
		return true // as it was made, where its beginning chain makes one leg more of it
	}
	if t.Kind.Shape == stitch.Plain && t.Kind.Manner == 0 {
		const alike = stitch.Invisible | stitch.Reverse | stitch.Spike | stitch.Foundation | stitch.Crossed
		return k.Base == t.Kind.Base && (k.Shape == stitch.Together || k.Shape == stitch.Plain) && k.Manner&^alike == 0
	}
	return false
}
