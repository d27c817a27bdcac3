package chart

import (
	"math"

	"github.com/tdewolff/canvas"
)

// A leg of two stitches worked together that leans farther than mostFlat from square to
// what they stand on lies flat. It is stood up by evening out the round that it stands on,
// where its places are not level, and by leaving its own more room, up to mostRoom times
// what the stitch is tall.
const (
	mostFlat   = 39 * math.Pi / 180
	levelFeet  = 0.1 // units, that one place is higher than the other
	mostRoom   = 2.4
	standTries = 10
)

// unevenUnder is the round that a stitch with a leg that lies flat stands on, where that is
// to be evened out; nil elsewhere.
func (w *work) unevenUnder(c *course, i int) *course {
	if w.flatBy(c, i) <= 0 {
		return nil
	}
	on := c.round.Stitches[i].On
	d := w.at(on[0].At)
	if d == nil || d.level >= 0.75 || d.index < w.lo || d.hub || d.loose ||
		math.Abs(w.footRadius(c, i, on[0])-w.footRadius(c, i, on[1])) < levelFeet*w.unit {
		return nil
	}
	return d
}

// overFlat finds how far every round must rise that no leg in it lies flat; false where that
// is as far as it was.
func (w *work) overFlat() bool {
	any := false
	for _, c := range w.courses[w.lo+1 : w.last+1] {
		if c.rests {
			continue
		}
		more := 0.0
		for _, i := range c.order {
			more = math.Max(more, w.flatBy(c, i))
		}
		from := math.Abs(w.radii.Of(w.layer(c)) - w.radii.Of(w.layerAt(c.index-1)))
		rise := math.Min(from+more, math.Max(from, mostRoom*w.radii.Scale*c.form.Height))
		if more > 0 && rise > c.legs+0.02 {
			c.legs, any = rise, true
		}
	}
	return any
}

// flatBy is how much taller a stitch that is worked over two would be if none of its legs
// lay flat; 0 where none does.
func (w *work) flatBy(c *course, i int) float64 {
	if w.lies || w.zigzag != nil || w.waves || len(c.round.Stitches[i].On) != 2 || !w.plainLeg(c, i) || c.half(i) >= 0 {
		return 0
	}
	along := w.middleFoot(c, w.beside(c, i, 1)).Sub(w.middleFoot(c, w.beside(c, i, -1))).Norm(1)
	top, more := w.top(c, i), 0.0
	feet, _ := w.feet(c, i)
	for _, foot := range feet {
		leg := top.Sub(foot)
		more = math.Max(more, math.Abs(leg.Dot(along))/math.Tan(mostFlat)-math.Abs(leg.Dot(along.Rot90CW())))
	}
	return more
}

// beside is the next stitch with a leg to one side of stitch i, which it is itself where
// there is none.
func (w *work) beside(c *course, i, side int) int {
	n := len(c.order)
	for k := c.rank[i] + side; !c.open || k >= 0 && k < n; k += side {
		if j := c.order[(k+n)%n]; j == i || w.stands(c, j) {
			return j
		}
	}
	return i
}

// middleFoot is the middle of the places that a stitch stands on.
func (w *work) middleFoot(c *course, i int) canvas.Point {
	feet, _ := w.feet(c, i)
	return feet[0].Interpolate(feet[len(feet)-1], 0.5)
}
