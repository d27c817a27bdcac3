package chart

import (
	"math"
	"slices"

	"whorl/chart/ring"
	"whorl/patterns/stitch"
)

// Far out on a disc the few stitches of a tube, as of the arm of a toy, are many times
// farther from one another than they need. There they keep to the spoke that they stand
// in; spokes that end in one stitch come together on the way to it, in the half of a ball
// that closes in too.
const (
	sparseFrom   = 1.3 // heights of a stitch, from one to the next
	sparseOpen   = 4   // of so many stitches no more than one is a chain or stands in a space
	sparsePasses = 100
	sparseMeets  = 3    // times as strongly a stitch that stands on several pulls, and stays over them
	sparseMoves  = 1e-4 // radians, in a pass, at which a run has come to rest
)

// sparse is how many times sparseFrom the stitches of a round are from one another; 1
// where they are nearer.
func (w *work) sparse(c *course) float64 {
	if !w.onDisc() || c.slit || len(c.order) == 0 || c.index > w.last || w.o.closing && c.index < w.first {
		return 1
	}
	open := 0
	for _, i := range c.order {
		if on := c.round.Stitches[i].On; len(on) == 0 || on[0].Into == stitch.Space {
			open++
		}
	}
	if open > len(c.order)/sparseOpen {
		return 1 // loops are filled from side to side
	}
	// A round of slip stitches has hardly a height.
	tall := math.Max(c.form.Height, c.form.Level/float64(max(c.index, 1))/2)
	if tall <= 0 {
		return 1
	}
	pitch := c.form.Circumference * math.Max(w.stretch(c), 1) / float64(len(c.order))
	return math.Max(1, pitch/(sparseFrom*tall))
}

// onDisc reports whether rounds lie about one another as circles.
func (w *work) onDisc() bool {
	return !w.rows && !w.panel && w.oval == nil && w.border == nil && w.corners.sides == 0
}

// comeTogether draws the stitches of sparse rounds, where they are next to one another,
// towards those that stand on them.
func (w *work) comeTogether() {
	for to := w.last; to > 0; to-- {
		from := to + 1
		for from > 1 && w.sparse(w.courses[from-1]) > 1 {
			from--
		}
		if from < to {
			w.drawTogether(w.courses[from : to+1])
		}
		to = min(to, from)
	}
}

// drawTogether does so for a run of rounds: it lays them again and again until they rest.
func (w *work) drawTogether(run []*course) {
	last := len(run) - 1
	for pass, moved := 0, 1.0; pass < sparsePasses && moved > sparseMoves; pass++ {
		moved = 0
		for k, c := range run {
			c.above = map[int]pull{}
			if k < last {
				w.findAbove(c, run[k+1])
			}
			was := slices.Clone(c.theta)
			c.order = c.order[:0]
			w.lay(c)
			for _, i := range c.order {
				moved = math.Max(moved, math.Abs(c.theta[i]-was[i]))
			}
		}
	}
	for k := last - 1; k >= 0; k-- {
		run[k].fold = gcd(run[k].fold, run[k+1].fold)
	}
}

// pull is where on the turn what stands on a stitch is in the mean, and how strongly it
// draws the stitch there.
type pull struct{ to, by float64 }

// findAbove finds how the next round draws the stitches of one.
func (w *work) findAbove(c, next *course) {
	for _, i := range next.order {
		if next.plumb[i] {
			continue
		}
		for _, p := range next.round.Stitches[i].On {
			j := p.At.Stitch
			if p.At.Round != c.index || p.Into == stitch.Space || p.Into == stitch.Between || c.rank[j] < 0 {
				continue
			}
			off := math.Remainder(next.theta[i]-c.theta[j], ring.Turn)
			by := w.strain(next, i, off)
			f, ok := c.above[j]
			if !ok {
				f.to = c.theta[j]
			}
			f.to += (c.theta[j] + off - f.to) * by / (f.by + by)
			f.by += by
			c.above[j] = f
		}
	}
}

// strain is how strongly a leg of a stitch that goes so far along its round pulls: the more
// it leans the more, and those of several worked together more than others.
func (w *work) strain(c *course, i int, off float64) float64 {
	lean := off * c.form.Radius * math.Max(w.stretch(c), 1) / math.Max(c.form.Height, 1e-9)
	by := 1 + lean*lean
	if len(c.round.Stitches[i].On) > 1 {
		by *= sparseMeets
	}
	return by
}

// drawTo moves the stitches of a round between what they stand on and what stands on them.
// The last stitches of a half that closes in go about its middle with hardly a lean: they
// would turn the rounds before them, which are not turned on the whole.
func (w *work) drawTo(c *course, items []ring.Item) {
	if len(c.above) == 0 {
		return
	}
	turned, n := 0.0, 0.0
	for k, i := range c.order {
		if items[k].Free {
			continue
		}
		n++
		if f, ok := c.above[i]; ok {
			base := items[k].Base
			own := w.strain(c, i, math.Remainder(c.theta[i]-base, ring.Turn))
			by := math.Remainder(f.to-base, ring.Turn) * f.by / (f.by + own)
			items[k].Base += by
			turned += by
		}
	}
	for k := range items {
		if w.o.closing && !items[k].Free {
			items[k].Base -= turned / n
		}
	}
}
