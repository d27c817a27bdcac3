package chart

import (
	"math"
	"slices"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// evenRows is how many rows before and after a row have a say in its length: so
// rows of unlike stitches come out as long as their neighbours, and a piece that
// grows still grows.
const evenRows = 2

// length is how long a row is drawn, in mm of the fabric.
func (w *work) length(c *course) float64 {
	if c.index == 0 && isFoundation(c.round) && len(w.courses) > 1 {
		c = w.courses[1] // that is worked into it
	}
	reach := min(evenRows, max(c.index-1, 0), len(w.courses)-1-c.index)
	sum, n := 0.0, 0.0
	for _, d := range w.courses[c.index-reach : c.index+reach+1] {
		sum += w.own(d)
		n++
	}
	return sum / n
}

// own is a row's length in the fabric; where loops of chains hang from stitches as close
// as those of the row below, that row's.
func (w *work) own(c *course) float64 {
	for c.index > 1 && c.fringed(w.courses[c.index-1]) {
		c = w.courses[c.index-1]
	}
	return c.form.Circumference
}

// fringed reports whether a row has more chains than other stitches, and about as many
// of those as the row below.
func (c *course) fringed(below *course) bool {
	stand, chains := 0, 0
	for i := range c.round.Stitches {
		switch s := &c.round.Stitches[i]; {
		case s.IsChain():
			chains++
		case c.takesRoom(i):
			stand++
		}
	}
	under := 0
	for i := range below.round.Stitches {
		if !below.round.Stitches[i].IsChain() && below.takesRoom(i) {
			under++
		}
	}
	return chains > stand && 10*stand >= 9*under
}

// A row is drawn at least leastStep times as long as the one it stands on and, but
// for what it has more of stitches, at most mostStep: loops of chains stand out from
// an edge and do not widen it. The first rows of a piece that grows from a few
// stitches, under fewStitches, are as long as they are.
const (
	leastStep, mostStep = 0.6, 1.2
	fewStitches         = 16
	// mostDrawnIn is how far a row's ends are drawn in from what they stand on, for its
	// height: what it has fewer of stitches stands farther apart.
	mostDrawnIn = 0.9
	// mostSpread is how far they stand out beyond it.
	mostSpread = 0.8
)

// lengthOver is how long a row is drawn over the one below it, or over the edge of another
// piece.
func (w *work) lengthOver(c *course) float64 {
	below := w.courses[c.index-1]
	if reach, ok := w.reachOver(c); ok && !c.overEach(below) {
		n := float64(len(c.order))
		return reach * n / (n - 1)
	}
	return c.near(below)
}

// near is how long a row is drawn over the one below it.
func (c *course) near(below *course) float64 {
	if below.long > 0 && c.overEach(below) {
		return below.long
	}
	if len(below.order) < fewStitches || below.long <= 0 {
		return c.long
	}
	if c.fringed(below) {
		return below.long
	}
	most := math.Max(mostStep, float64(c.standing())/math.Max(float64(below.standing()), 1))
	return math.Min(math.Max(c.long, leastStep*below.long), most*below.long)
}

// overEach reports whether a row has one stitch or chain for each of the row below; picots
// stand over their neighbours.
func (c *course) overEach(below *course) bool {
	over, under := c.edge(), below.edge()
	return len(over) == len(under) &&
		(c.index > 1 && c.standing() == below.standing() || len(over) >= fewStitches && c.meshes(over, below, under)) &&
		c.drift(over, below, under) <= mostDrift
}

// mostDrift is by how many stitches at most what stands over each of a row may drift along
// it: several increases side by side, and decreases as many, lead farther.
const mostDrift = 1.0

// drift is how far, at most, what a row has in one place is from that, counted in stitches
// along both rows; of stitches that cross, each stands over the place of another.
func (c *course) drift(over []int, below *course, under []int) (most float64) {
	rank := map[fabric.Ref]int{}
	for k, i := range under {
		rank[fabric.Ref{Round: below.index, Stitch: i}] = k
	}
	var stand, places []float64
	for k := 0; k < len(over); {
		on := c.round.Stitches[over[k]].On
		sum, n := 0.0, 0.0
		for _, p := range on {
			if r, ok := rank[p.At]; ok && p.Into != stitch.Space {
				sum += float64(r)
				n++
			}
		}
		from := k
		for k++; k < len(over) && len(on) == 1 && slices.Equal(c.round.Stitches[over[k]].On, on); k++ {
		}
		if n > 0 {
			stand, places = append(stand, float64(from+k-1)/2), append(places, sum/n)
		}
	}
	slices.Sort(places)
	for k := range stand {
		most = math.Max(most, math.Abs(stand[k]-places[k]))
	}
	return most
}

// reachOver is how far apart the ends of a row are that has one stitch or chain for each
// of the row below, or of some that lie side by side on the edge of another piece; false for
// others.
func (w *work) reachOver(c *course) (float64, bool) {
	if w.waves || c.index == 0 {
		return 0, false
	}
	below := w.courses[c.index-1]
	if c.overEach(below) {
		return below.reaches(), true
	}
	if c.index > 1 || !below.round.Carried || len(c.order) < 2 {
		return 0, false
	}
	var ranks []int
	for _, i := range c.order {
		on := c.round.Stitches[i].On
		if len(on) != 1 || on[0].At.Round != below.index || on[0].Into > stitch.BackLoop || below.rank[on[0].At.Stitch] < 0 {
			return 0, false
		}
		ranks = append(ranks, below.rank[on[0].At.Stitch])
		if k := len(ranks) - 1; k > 0 && ranks[k]-ranks[k-1] != ranks[1]-ranks[0] {
			return 0, false
		}
	}
	first, last := ranks[0], ranks[len(ranks)-1]
	if d := ranks[1] - ranks[0]; d != 1 && d != -1 {
		return 0, false
	}
	return math.Abs(below.theta[below.order[last]] - below.theta[below.order[first]]), true
}

// meshes reports whether the stitches of a row stand one over another on those of the row
// below, with a chain over each that they pass over, and one of them over each chain of a
// space.
func (c *course) meshes(over []int, below *course, under []int) bool {
	for k, i := range over {
		s := &c.round.Stitches[i]
		if s.IsChain() || s.Role == fabric.Start {
			continue
		}
		if len(s.On) != 1 || s.On[0].At.Round != below.index {
			return false
		}
		first, last := s.On[0].At.Stitch, s.On[0].At.Stitch
		if s.On[0].Into == stitch.Space {
			last = max(first, s.On[0].Last.Stitch)
		}
		if under[k] < first || under[k] > last {
			return false
		}
	}
	return true
}

// edge is the stitches of a row along its upper edge, picots left out.
func (c *course) edge() []int {
	return slices.DeleteFunc(slices.Clone(c.order), func(i int) bool { return isPicot(&c.round.Stitches[i]) })
}

// flattenPicots takes their room from the picots of a row, which stand over its edge.
func (c *course) flattenPicots(items []ring.Item) {
	for k, i := range c.order {
		if isPicot(&c.round.Stitches[i]) {
			items[k].Width = 0
		}
	}
}

// standing is how many stitches other than chains a row has.
func (c *course) standing() (n int) {
	for _, i := range c.order {
		if s := &c.round.Stitches[i]; !s.IsChain() && !isPicot(s) {
			n++
		}
	}
	return n
}

// leastArch is the part of their room that the chains of a loop keep at least.
const leastArch = 0.35

// archLoops takes from the chains of a row the room that their loops have more of than
// the stitches of the row below that they pass over: a loop arches over those and does
// not part what it hangs from. It returns how much that is.
func archLoops(items []ring.Item, below *course) (less float64) {
	each := below.form.Circumference / math.Max(below.long, 1e-9)
	for from := 0; from < len(items); {
		to := from + 1
		loop := 0.0
		for to < len(items) && items[to].Free {
			loop += items[to].Width + items[to].Before
			to++
		}
		if to == len(items) {
			break
		}
		a, b := &items[from], &items[to]
		if loop > 0 && !a.Free && a.Place != b.Place {
			room := (b.Base-a.Base)*each - (a.Width+b.Width)/2
			share := math.Min(1, math.Max(leastArch, room/loop))
			for k := from + 1; k < to; k++ {
				items[k].Width *= share
				items[k].Before *= share
			}
			less += loop * (1 - share)
		}
		from = to
	}
	return less
}
