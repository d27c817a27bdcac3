package chart

import (
	"math"

	"whorl/chart/ring"
)

// Two chains or more over an opening, as for a thumb, pass far more than they have room
// for. The round leaves it open, and those after it close it by and by, as far as a leg on
// each side leans by slitLean: slitFrom times the room of the chains makes an opening, and
// slitOn times that of what stands there is still one.
const (
	slitFrom  = 2.0
	slitOn    = 1.15
	slitMost  = ring.Turn / 3 // of all in a round
	slitLoops = 2             // in a round; more are lace
	slitLean  = 27 * math.Pi / 180
	slitChain = 2 // chains at least
)

// leaveSlits leaves openings open.
func (w *work) leaveSlits(c *course, items []ring.Item) {
	c.slit = false
	after := c.index > 0 && w.courses[c.index-1].slit
	loops := 0
	c.loops(func(int, []int, int) { loops++ })
	if !w.onDisc() || loops > slitLoops {
		return
	}
	total, n := 0.0, len(items)
	for i := range items {
		total += items[i].Width + items[i].Before
	}
	closes := 2 * math.Tan(slitLean) * c.form.Height / (c.form.Radius * math.Max(w.stretch(c), 1))
	left := make([]float64, n) // angles, before an item
	open := 0.0
	var gaps []int // that are wider than the room in them, side by side: their first items
	over := 0.0
	excess := func(from int) (wide float64, to int) {
		room := items[from].Width / 2
		for to = from + 1; items[to%n].Free && to < from+n; to++ {
			room += items[to%n].Before + items[to%n].Width
		}
		room = (room + items[to%n].Before + items[to%n].Width/2) * ring.Turn / total
		apart := above(items[to%n].Base-items[from].Base, -ring.Turn/4)
		if after && apart > slitOn*room || to-from > slitChain && apart > slitFrom*room {
			return apart - room, to
		}
		return 0, to
	}
	flush := func() {
		for _, from := range gaps {
			wide, to := excess(from)
			wide *= math.Max(0, 1-closes/over)
			open += wide
			for k := from + 1; k <= to; k++ {
				left[k%n] += wide / float64(to-from)
			}
		}
		gaps, over = nil, 0
	}
	for k := range items {
		if items[k].Free {
			continue
		}
		if wide, _ := excess(k); wide > 0 {
			gaps, over = append(gaps, k), over+wide
		} else {
			flush()
		}
	}
	flush()
	if open <= 0 || open > slitMost {
		return
	}
	c.slit = true
	for i := range items {
		items[i].Before += left[i] * total / (ring.Turn - open)
	}
}
