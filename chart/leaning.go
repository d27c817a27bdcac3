package chart

import (
	"math"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// farLean is the angle from square to its row over which a stitch leans far.
const farLean = 38 * math.Pi / 180

// leaning is the share of what stands in the rounds that leans far as they are laid now,
// and the mean square of the sine of all leans; what is in one place is taken together.
func (w *work) leaning(lay func(*page)) (far, square float64) {
	w.lies = true // no legs are stood up
	lay(newPage(w, false))
	w.lies = false
	return w.lean()
}

// lean is the same as the work is laid now.
func (w *work) lean() (far, square float64) {
	all := 0.0
	for _, c := range w.courses[w.lo : w.last+1] {
		stand := slices.DeleteFunc(slices.Clone(c.order), func(i int) bool { return !w.stands(c, i) || c.cutOf(i) == left })
		for k := 0; k < len(stand); {
			i := stand[k]
			feet, _ := w.feet(c, i)
			foot := feet[0].Add(feet[len(feet)-1]).Mul(0.5)
			top, n := w.top(c, i), 1.0
			for k++; k < len(stand) && w.together(c, i, stand[k]); k++ {
				top = top.Add(w.top(c, stand[k]))
				n++
			}
			_, up := w.frame(c, c.theta[i], c.radius[i])
			leg := top.Mul(1 / n).Sub(foot)
			upright := leg.Dot(up) / math.Max(leg.Length(), 1e-9)
			all++
			square += 1 - upright*upright
			if upright < math.Cos(farLean) {
				far++
			}
		}
	}
	all = math.Max(all, 1)
	return far / all, square / all
}

// stands reports whether a stitch stands on others with a leg.
func (w *work) stands(c *course, i int) bool {
	s := &c.round.Stitches[i]
	return len(s.On) > 0 && s.Kind.Base != stitch.Slip && s.Role != fabric.Join
}

// together reports whether two stitches of a row stand in one place.
func (w *work) together(c *course, i, j int) bool {
	a, b := c.round.Stitches[i].On, c.round.Stitches[j].On
	return len(a) == 1 && len(b) == 1 && w.key(a[0]) == w.key(b[0])
}
