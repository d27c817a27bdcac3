package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// What is worked into the tip of a point fans out about its end, with chains in arches and
// picots between.
const (
	tipStep = 70 * math.Pi / 180 // from one stitch to the next, at most
	tipOpen = 2 * math.Pi / 3    // from the first to the last
	tipTall = 1.0                // units, of the lowest of them
	// Chains that go round it with nothing between them are so many units from the middle of
	// the last chain at least, and go round no more than tipMost of it.
	tipRound = 0.95
	tipMost  = 0.8 * math.Pi
)

// layTip sets what a round has between the stitches first and last in its order, which go
// up one side of a point and down the other; its last chain is so far out.
func (w *work) layTip(p point, c *course, axis, out float64, first, last int) {
	loops := func(k int) bool { return c.isLoop(c.order[k]) || isPicot(&c.round.Stitches[c.order[k]]) }
	n := 0.0
	for k := first + 1; k < last; k++ {
		if !loops(k) {
			n++
		}
	}
	step := math.Min(tipStep, tipOpen/math.Max(n-1, 1))
	end := canvas.Point{Y: out + pointEnd*w.unit} // across and out from the axis
	at := -(n - 1) / 2 * step
	for k := first + 1; k < last; k++ {
		if loops(k) {
			continue
		}
		i := c.order[k]
		s := &c.round.Stitches[i]
		tall := math.Max(tipTall, symbols.Height(s.Counted())*pointShare) * w.unit
		c.setAt(i, axis, end.Y+tall*math.Cos(at), tall*math.Sin(at), at)
		c.tipped[i] = len(s.On) == 1 && s.On[0].Into != stitch.Space
		at += step
	}
	for k := first + 1; k < last; k++ {
		from := k
		for k < last && loops(k) {
			k++
		}
		switch {
		case k > from && n == 0:
			w.layTipRound(c, axis, out, from, k)
		case k > from:
			w.layTipLoop(c, axis, from, k)
		}
	}
}

// layTipRound sets the chains from one in the order of a round to before another round the
// last chain of a point, which is so far out.
func (w *work) layTipRound(c *course, axis, out float64, from, to int) {
	n := float64(to - from)
	r := math.Max(tipRound, n*chainPitch/tipMost) * w.unit
	if c.pitch == nil {
		c.pitch = map[int]float64{}
	}
	for k := range to - from {
		at := (float64(k) - (n-1)/2) * chainPitch * w.unit / r
		i := c.order[from+k]
		c.setAt(i, axis, out+r*math.Cos(at), r*math.Sin(at), at)
		c.pitch[i] = chainPitch * w.unit
	}
}

// layTipLoop sets the chains or picots from one in the order of a round to before another
// in an arch between the tops of the stitches beside them.
func (w *work) layTipLoop(c *course, axis float64, from, to int) {
	top := func(k int) canvas.Point {
		s, co := math.Sincos(c.theta[c.order[k]] - axis)
		r := c.radius[c.order[k]]
		return canvas.Point{X: r * s, Y: r * co}
	}
	a, b := top(from-1), top(to)
	along := b.Sub(a)
	chord := along.Length()
	if chord == 0 {
		return
	}
	spots, long := ring.Arch(chord, 0, math.Max(chord, float64(to-from)*chainPitch*w.unit), mostArch*w.unit, w.unit/2, to-from)
	along = along.Norm(1)
	up := along.Rot90CCW()
	if up.Y < 0 {
		up = up.Neg()
	}
	if c.pitch == nil {
		c.pitch = map[int]float64{}
	}
	for k, spot := range spots {
		i := c.order[from+k]
		if s := &c.round.Stitches[i]; isPicot(s) {
			mid := a.Add(along.Mul(spot.X))
			c.setAt(i, axis, mid.Y+symbols.Height(s.Kind)*w.unit, mid.X, 0)
			continue
		}
		at := a.Add(along.Mul(spot.X)).Add(up.Mul(spot.Y))
		c.setAt(i, axis, at.Y, at.X, math.Atan2(-along.Y, along.X))
		c.pitch[i] = long / float64(len(spots))
	}
}
