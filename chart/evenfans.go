package chart

import (
	"math"
	"slices"

	"whorl/chart/ring"
)

// Where a round turns a corner it is longer on paper than elsewhere, and a fan there
// would open unevenly.
const (
	unevenFan  = 1.25 // how many times the narrowest gap of a fan its widest may be
	unevenSide = 1.33 // likewise, on the sides of a motif
	evenPasses = 40
)

// evenFans spaces the fans of a round that are uneven on paper evenly between their first
// stitch and their last, where that is more than most. It is false where none is.
func (w *work) evenFans(c *course, most float64) (moved bool) {
	n := len(c.order)
	first := 0 // where no fan runs on over the seam
	for !c.open && first < n && w.together(c, c.order[first], c.order[(first+n-1)%n]) {
		first++
	}
	order := append(slices.Clone(c.order[first:]), c.order[:first]...)
	for from := 0; from < n; {
		to := from + 1
		for to < n && w.together(c, order[from], order[to]) {
			to++
		}
		if fan := order[from:to]; len(fan) > 2 && w.uneven(c, fan) > most {
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
			low, high := c.nearTo(fan[k-1], fan[k]), c.nearTo(fan[k+1], fan[k])
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

// nearTo is the angle of a stitch on the turn that that of another is on.
func (c *course) nearTo(i, j int) float64 {
	if c.open {
		return c.theta[i]
	}
	return c.theta[j] + math.Remainder(c.theta[i]-c.theta[j], ring.Turn)
}

// openEvenly evens the fans of the drawn rounds out on a ring with corners, and in rounds
// of lace that have room to spare.
func (w *work) openEvenly() {
	most, from, round := unevenFan, w.lo, false
	switch w.shape.(type) {
	case ring.Edges:
	case ring.Polygon: // what stands in the corners opens about them
		most, from = unevenSide, max(w.lo, w.corners.laid+1)
	default:
		round = true
	}
	moved := false
	for k := from; k <= w.last; k++ {
		if c := w.courses[k]; !round || c.spaced > 1 {
			moved = w.evenFans(c, most) || moved
		}
	}
	if moved {
		w.outer = 0
		w.radiateAll()
	}
}
