package chart

import (
	"math"

	"whorl/chart/ring"
)

// How stiff the rounds of an oval are: those that fill its sides and ends, and those that
// are too irregular for that, whose stitches stand over their places.
const onOval, looseOnOval = 2, 0.5

// onStadium are the angles of a round's stitches: what stands on a side of the stadium
// fills that side, and what stands about an end that end, so that the ends go on evenly
// from the sides however many increases there are in one place. It is false from the
// first round on that is not so regular: with loops of chains, shells or decreases, which
// are laid as they stand.
func (w *work) onStadium(c *course, items []ring.Item) ([]float64, bool) {
	o := w.oval
	o.loose = o.loose || w.irregular(c)
	if o.loose {
		return nil, false
	}
	w.alongLoops(c, items)
	n, first := len(items), 0
	in, _ := regions{n: 4, of: o.region}.places(items)
	for k := range items {
		if in[k] != in[(k+n-1)%n] {
			first = k
			break
		}
	}
	theta := make([]float64, n)
	for from := 0; from < n; {
		region, to := in[(first+from)%n], from
		for to < n && in[(first+to)%n] == region {
			to++
		}
		for k, x := range o.fill(region, items, first+from, first+to) {
			theta[(first+from+k)%n] = x
		}
		from = to
	}
	theta[0] = above(theta[0], items[0].Base-math.Pi)
	for k := 1; k < n; k++ {
		theta[k] = above(theta[k], theta[k-1])
	}
	return theta, true
}

// leastShell is how many stitches in one place make a shell and no increase.
const leastShell = 4

// irregular reports whether a round has several stitches together, shells beyond the first
// round that are not along a handle, chains that pass from a side to an end, or nothing in one of the regions.
func (w *work) irregular(c *course) bool {
	var in []int
	uses := map[int]int{}
	free := false // chains were passed over
	filled := w.filled(c)
	for _, i := range c.order {
		on := c.round.Stitches[i].On
		if len(on) == 0 {
			free = true
			continue
		}
		key := w.key(on[0])
		uses[key]++
		a, ok := w.angle(on[0])
		if len(on) > 1 || !ok || c.index > 1 && uses[key] >= leastShell && !filled[key] {
			return true
		}
		r := w.oval.region(a)
		if n := len(in); n == 0 || in[n-1] != r {
			if free {
				return true
			}
			in = append(in, r)
		}
		free = false
	}
	return free && in[0] != in[len(in)-1] || len(in) < 4 || len(in) > 5
}

// fill are the angles of the items from one to another, counted on over the seam, at which
// they fill a region. Those on a side stand over the chains, the ends of which an end goes
// about.
func (o *oval) fill(region int, items []ring.Item, from, to int) []float64 {
	n := len(items)
	run := make([]ring.Item, to-from)
	sum := 0.0
	for k := range run {
		run[k] = items[(from+k)%n]
		sum += run[k].Before + run[k].Width
		if k > 0 && !run[k].Free {
			run[k].Base = above(run[k].Base, run[0].Base-ring.Turn/4)
		}
	}
	start, span := o.starts(region)
	start = above(start, run[0].Base-ring.Turn/2)
	first, last := run[0], run[len(run)-1]
	edge := 0.0 // half a chain that is left at each end of a side
	if region%2 == 0 || len(run) == 1 {
		edge = span / float64(o.across) / 2
	}
	scale := (span - 2*edge) / math.Max(sum, 1e-9)
	low, high := start+edge+scale*first.Before, start+span-edge
	if edge > 0 {
		low += scale * first.Width / 2
		high -= scale * last.Width / 2
	}
	x := ring.Along(run, scale, onOval)
	at, wide := x[0], x[len(x)-1]-x[0]
	for i := range x {
		x[i] = low + (x[i]-at)*(high-low)/math.Max(wide, 1e-9)
	}
	return x
}

// looseOnStadium gives the stitches of an irregular round the widths at which what stands
// on a side, over the chains, fills that side, and the others the ends.
func (w *work) looseOnStadium(items []ring.Item) {
	side := w.oval.side * (1 - 1/float64(w.oval.across))
	spans := [...]float64{side, ring.Turn/2 - side}
	regions{4, w.oval.region, func(r int) float64 { return spans[r%2] }}.fill(items)
}

// starts is the angle at which a region begins, and what it takes.
func (o *oval) starts(region int) (start, span float64) {
	end := ring.Turn/2 - o.side
	start = float64(region/2)*ring.Turn/2 + end/2
	if region%2 == 0 {
		return start, o.side
	}
	return start + o.side, end
}

// region is the side (0, 2) or the end (1, 3) of the stadium that an angle is on. What
// stands where they meet is on the end.
func (o *oval) region(angle float64) int {
	edge := o.side / float64(o.across) / 2
	for region := 0; region < 3; region += 2 {
		start, span := o.starts(region)
		if a := above(angle, start) - start; a > edge && a < span-edge {
			return region
		}
	}
	if start, span := o.starts(1); above(angle, start-edge) < start+span+edge {
		return 1
	}
	return 3
}
