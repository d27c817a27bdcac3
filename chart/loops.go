package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// Many stitches worked into one long loop of chains lie along it, as they do in the
// hand: single crochets each square to it, taller ones in a fan whose feet part as
// far as they must for the outermost not to lean too far.
const (
	longLoop  = 3   // chains of the shortest loop that stitches lie along
	shortLoop = 2   // of that which single crochets do
	manyIn    = 3   // stitches that are the fewest to do so
	mostLean  = 30  // degrees, of a fan's outermost leg
	partFeet  = 0.5 // mm on paper between feet that part, so that their strokes do
)

// onRing is a place on the ring.
type onRing struct{ angle, radius float64 }

// onLoop is where a stitch stands on a loop, and how far out that is of the mean of those
// in the loop, where what stands there follows it.
type onLoop struct {
	onRing
	out float64
}

// stringUp finds where the stitches of c that are worked into long loops stand.
func (w *work) stringUp(c *course) {
	c.strung = nil
	for k := 0; k < len(c.order); k++ {
		p, ok := c.inLoop(c.order[k])
		if !ok {
			continue
		}
		from := k
		run := []int{c.order[k]}
		for k+1 < len(c.order) {
			next := c.order[k+1]
			if q, also := c.inLoop(next); also && w.key(q) == w.key(p) {
				run = append(run, next)
			} else if !c.onItself(next) && !w.parted(c, k+1, p) {
				break
			}
			k++
		}
		if d := w.at(p.At); len(run) >= manyIn && d != nil && d.index >= w.lo && d.index < c.index && !w.returns(c, from, k+1) {
			w.stringOn(c, run, p, d)
		}
	}
}

// parted reports whether chains of a round from one of its stitches on part single crochets
// that are worked into one loop: a point of them, which stands over the loop as a picot does.
func (w *work) parted(c *course, k int, p fabric.Place) bool {
	if w.corners.sides > 0 {
		return false
	}
	for k < len(c.order) && c.round.Stitches[c.order[k]].IsChain() {
		k++
	}
	if k == len(c.order) {
		return false
	}
	q, ok := c.inLoop(c.order[k])
	return ok && w.key(q) == w.key(p) && c.round.Stitches[c.order[k]].Kind.Base == stitch.Single
}

// onItself reports whether a stitch stands on others of its own round, as a picot does.
func (c *course) onItself(i int) bool {
	on := c.round.Stitches[i].On
	return isPicot(&c.round.Stitches[i]) || len(on) > 0 && on[0].At.Round == c.index && on[0].Into != stitch.Ring && on[0].Into != stitch.RowEnd
}

// inLoop is the loop that a stitch is worked into; false when it is in none.
func (c *course) inLoop(i int) (fabric.Place, bool) {
	s := &c.round.Stitches[i]
	if len(s.On) != 1 || s.On[0].Into != stitch.Space || s.Role == fabric.FirstHalf {
		return fabric.Place{}, false
	}
	return s.On[0], true
}

// returns reports whether the stitch after or before those of a run in one loop, but
// for chains, is in the loop as well: a corner.
func (w *work) returns(c *course, from, to int) bool {
	n := len(c.order)
	p, _ := c.inLoop(c.order[from])
	for _, step := range [...]int{-1, 1} {
		k := from - 1
		if step > 0 {
			k = to
		}
		for tries := 0; tries < n; tries++ {
			i := c.order[(k+n)%n]
			if !c.round.Stitches[i].IsChain() {
				q, ok := c.inLoop(i)
				if ok && (k+n)%n != from && w.key(p) == w.key(q) {
					return true
				}
				break
			}
			k += step
		}
	}
	return false
}

// stringOn sets the feet of stitches in one loop along it.
func (w *work) stringOn(c *course, run []int, p fabric.Place, d *course) {
	var loop []onRing
	w.chainsOf(d, p, func(i int) {
		if d.rank[i] >= 0 {
			loop = append(loop, onRing{d.theta[i], d.radius[i]})
		}
	})
	if j := d.completer(p); j >= 0 && !d.reversed {
		// The leg of the join is the rest of the loop.
		foot := d.round.Stitches[j].On[0].At.Stitch
		loop = append(loop, onRing{d.theta[j], d.radius[j]}, onRing{d.theta[foot], d.radius[foot]})
	}
	tall := w.tallest(c, run)
	if len(loop) < longLoop && (tall > stitch.Single || len(loop) < shortLoop) {
		return
	}
	if d.reversed {
		for a, b := 0, len(loop)-1; a < b; a, b = a+1, b-1 {
			loop[a], loop[b] = loop[b], loop[a]
		}
	}
	for k := 1; k < len(loop) && !d.open; k++ {
		loop[k].angle = above(loop[k].angle, loop[k-1].angle)
	}
	mid, _ := w.angle(p)
	if !d.open {
		mid = above(mid, loop[0].angle-1e-9)
	}
	first, last := c.theta[run[0]], c.theta[run[len(run)-1]]
	centre, half := (first+last)/2, (last-first)/2
	room := math.Min(mid-loop[0].angle, loop[len(loop)-1].angle-mid)
	if half <= 0 || room <= 0 {
		return
	}
	share := math.Min(1, room/half)
	if tall > stitch.Single {
		foot := w.footRadius(c, run[0], p)
		rise := math.Abs(w.radii.At(w.layer(c), w.tops(c)[run[0]]) - foot)
		rise = math.Max(rise, 0.55*w.unit*symbols.Height(c.round.Stitches[run[0]].Counted()))
		lean := half * w.stretchAt(centre, foot) // of a foot in the middle, mm aside
		aside := 1 - rise*math.Tan(mostLean*math.Pi/180)/lean
		if aside < 0.05 {
			return
		}
		share = math.Min(share, math.Max(aside, partFeet*float64(len(run)-1)/(2*lean)))
	}
	if share < 0.05 {
		return
	}
	if c.strung == nil {
		c.strung = map[int]onLoop{}
	}
	mean := 0.0
	for _, i := range run {
		a := mid + share*(c.theta[i]-centre)
		s := onLoop{onRing: onRing{a, radiusAt(loop, a)}}
		mean += s.radius / float64(len(run))
		c.strung[i] = s
	}
	if tall > stitch.Single {
		return
	}
	for _, i := range run {
		s := c.strung[i]
		s.out = s.radius - mean
		c.strung[i] = s
	}
}

// tallest is the base of the tallest of some stitches.
func (w *work) tallest(c *course, run []int) stitch.Base {
	tall := stitch.None
	for _, i := range run {
		tall = max(tall, c.round.Stitches[i].Counted().Base)
	}
	return tall
}

// chainsOf calls f for the chains of a space.
func (w *work) chainsOf(d *course, p fabric.Place, f func(i int)) {
	n := len(d.round.Stitches)
	last := p.Last.Stitch
	if last < 0 || last >= n {
		last = p.At.Stitch
	}
	d.run(fabric.Span{From: p.At.Stitch, To: (last + 1) % n}, f)
}

// radiusAt is how far out a loop is at an angle, between its chains.
func radiusAt(loop []onRing, angle float64) float64 {
	for k := 1; k < len(loop); k++ {
		a, b := loop[k-1], loop[k]
		if angle <= b.angle || k == len(loop)-1 {
			t := math.Max(0, math.Min(1, (angle-a.angle)/math.Max(b.angle-a.angle, 1e-9)))
			return a.radius + (b.radius-a.radius)*t
		}
	}
	return loop[0].radius
}

// strungOn are the points of every loop that stitches stand on along it, by the key
// of the place.
func (w *work) strungOn() map[int][]canvas.Point {
	on := map[int][]canvas.Point{}
	for _, c := range w.courses[w.lo : w.last+1] {
		for i := range c.round.Stitches {
			if f, ok := c.strung[i]; ok && c.cutOf(i) != left {
				k := w.key(c.round.Stitches[i].On[0])
				on[k] = append(on[k], w.point(f.angle, f.radius))
			}
		}
	}
	return on
}
