package chart

import (
	"math"

	"whorl/chart/ring"
)

// Where a round turns a corner it is longer on paper than elsewhere, and a fan there
// would open unevenly.
const (
	unevenFan  = 1.25 // how many times the narrowest gap of a fan its widest may be
	evenPasses = 40
)

// evenFans spaces the fans of a round that are uneven on paper evenly between their first
// stitch and their last. It is false where none is.
func (w *work) evenFans(c *course) (moved bool) {
	n := len(c.order)
	for from := 0; from < n; {
		to := from + 1
		for to < n && w.together(c, c.order[from], c.order[to]) {
			to++
		}
		if fan := c.order[from:to]; len(fan) > 2 && w.uneven(c, fan) > unevenFan {
			w.spaceEvenly(c, fan)
			moved = true
		}
		from = to
	}
	return moved
}

// uneven is how many times the narrowest gap between the tops of some stitches the widest
// is.
func (w *work) uneven(c *course, fan []int) float64 {
	least, most := math.Inf(1), 0.0
	for k := 1; k < len(fan); k++ {
		gap := w.top(c, fan[k-1]).Sub(w.top(c, fan[k])).Length()
		least, most = math.Min(least, gap), math.Max(most, gap)
	}
	return most / math.Max(least, 0.01)
}

// spaceEvenly moves the stitches of a fan between its first and its last so that all are as
// far apart on paper: every one to between its neighbours, over and over.
func (w *work) spaceEvenly(c *course, fan []int) {
	for range evenPasses {
		for k := 1; k < len(fan)-1; k++ {
			before, after := w.top(c, fan[k-1]), w.top(c, fan[k+1])
			low, high := c.theta[fan[k-1]], c.theta[fan[k+1]]
			for range 20 {
				c.theta[fan[k]] = (low + high) / 2
				at := w.top(c, fan[k])
				if at.Sub(before).Length() < after.Sub(at).Length() {
					low = c.theta[fan[k]]
				} else {
					high = c.theta[fan[k]]
				}
			}
		}
	}
}

// openEvenly evens the fans of the drawn rounds out on a ring with corners.
func (w *work) openEvenly() {
	switch w.shape.(type) {
	case ring.Edges, ring.Polygon:
	default:
		return
	}
	moved := false
	for _, c := range w.courses[w.lo : w.last+1] {
		moved = w.evenFans(c) || moved
	}
	if moved {
		w.outer = 0
		w.radiateAll()
	}
}
