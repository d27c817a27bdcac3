package chart

import (
	"math"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
)

// handlePart is the part of its room by its chains that a handle has at least: they are
// as close there as on an arch.
const handlePart = chainPitch

// steepHandle is how steep a handle may rise for what stands on it to stand upright all the
// same, radians.
const steepHandle = math.Pi / 6

// overGap gives loops as long as the handles of a bag the angle of what they pass over, as
// far as their chains have room there, so that what they hang from stays square over the
// round below: a handle stands out over the gap, and does not part the sides of the bag. It is false
// where there is no such loop.
func overGap(items []ring.Item) bool {
	type handle struct {
		from, to           int // the stitches that it hangs between
		loop, sides, angle float64
	}
	var handles []handle
	total, n := 0.0, len(items)
	for from := range items {
		total += items[from].Width + items[from].Before
		if items[from].Free {
			continue
		}
		h := handle{from: from, to: from + 1}
		for h.to < from+n && items[h.to%n].Free {
			h.loop += items[h.to%n].Width + items[h.to%n].Before
			h.to++
		}
		a, b := &items[from], &items[h.to%n]
		if h.to-from > mostChains && (a.Place == 0 || a.Place != b.Place) {
			h.sides = (a.Width + b.Width) / 2
			h.angle = above(b.Base-a.Base, 0)
			handles = append(handles, h)
		}
	}
	rest, free := total, 1.0
	for i := range handles {
		h := &handles[i]
		whole := (h.loop + h.sides) / total
		h.angle = math.Max(handlePart*whole, math.Min(whole, h.angle/ring.Turn))
		rest -= h.loop + h.sides
		free -= h.angle
	}
	if len(handles) == 0 || rest <= 0 || free <= 0 {
		return false
	}
	for _, h := range handles {
		share := (rest/free*h.angle - h.sides) / h.loop
		for k := h.from + 1; k < h.to; k++ {
			items[k%n].Width *= share
			items[k%n].Before *= share
		}
	}
	return true
}

// onHandles gives the stitches of a round over one with handles the room that what they
// stand on has, one by one, so that they stand square to it: narrow on the handles, wide
// between them. Those worked into a handle stand along it. It is false for a round with
// other spaces or chains of its own.
func (w *work) onHandles(c *course, items []ring.Item) bool {
	if c.index == 0 || !w.courses[c.index-1].handled || len(items) < 3 {
		return false
	}
	base := make([]float64, len(items))
	for k := 0; k < len(items); {
		end := k + 1
		for end < len(items) && items[k].Place != 0 && items[end].Place == items[k].Place {
			end++
		}
		if items[k].Free {
			return false
		}
		low, high := items[k].Base, items[k].Base
		if p, in := c.inLoop(c.order[k]); in && end-k > mostChains {
			d := w.courses[c.index-1]
			before, after := d.besideLoop(p.At.Stitch)
			low = above(d.theta[before], items[k].Base-ring.Turn)
			high = above(d.theta[after], low)
		} else if end > k+1 {
			return false
		}
		for j := k; j < end; j++ {
			base[j] = low + (high-low)*(float64(j-k)+0.5)/float64(end-k)
		}
		k = end
	}
	w.squareTo(c, base)
	n := len(items)
	for k := range items {
		if k > 0 && base[k] <= base[k-1] || base[n-1] >= base[0]+ring.Turn {
			return false
		}
	}
	for k := range items {
		before, after := base[(k+n-1)%n], base[(k+1)%n]
		if k == 0 {
			before -= ring.Turn
		}
		if k == n-1 {
			after += ring.Turn
		}
		items[k].Base, items[k].Place, items[k].Width, items[k].Before = base[k], 0, (after-before)/2, 0
	}
	return true
}

// squareTo moves the angles of a round over one with handles to where its stitches stand
// square to them: outwards on both sides of an arch, as far as they keep their order.
func (w *work) squareTo(c *course, base []float64) {
	d := w.courses[c.index-1]
	n, m := len(base), len(d.order)
	aside := make([]float64, n)
	for k, i := range c.order {
		on := c.round.Stitches[i].On
		if len(on) != 1 || on[0].At.Round != d.index {
			continue
		}
		j := d.rank[on[0].At.Stitch]
		if p, in := c.inLoop(i); in {
			j = d.nearest(p, base[k])
		}
		if j < 0 {
			continue
		}
		before, after := d.order[(j+m-1)%m], d.order[(j+1)%m]
		along := (above(d.theta[after]-d.theta[before], 0)) * d.form.Level
		rise := d.form.Tops[after] - d.form.Tops[before]
		if d.reversed {
			rise = -rise
		}
		lean := math.Atan2(rise, along)
		over := math.Max(math.Abs(lean)-steepHandle, 0)
		aside[k] = -math.Copysign(c.form.Height*math.Sin(over)/c.form.Level, lean)
	}
	share := 1.0
	for k := range base {
		gap := base[(k+1)%n] - base[k]
		if k == n-1 {
			gap += ring.Turn
		}
		if closes := aside[k] - aside[(k+1)%n]; closes > 0 {
			share = math.Min(share, gap/2/closes)
		}
	}
	for k := range base {
		base[k] += math.Max(share, 0) * aside[k]
	}
}

// nearest is the place in the round's order of the chain of a space nearest to an angle.
func (c *course) nearest(p fabric.Place, angle float64) int {
	best, least := -1, math.Inf(1)
	c.run(fabric.Span{From: p.At.Stitch, To: (p.Last.Stitch + 1) % len(c.theta)}, func(i int) {
		if d := math.Abs(math.Remainder(c.theta[i]-angle, ring.Turn)); d < least && c.rank[i] >= 0 {
			best, least = c.rank[i], d
		}
	})
	return best
}
