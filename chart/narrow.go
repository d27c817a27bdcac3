package chart

import (
	"math"

	"whorl/chart/ring"
)

// stretch is how many times longer a round comes out on paper than in the
// fabric, when the whole part is drawn from its centre: more than 1 for a tube.
func (w *work) stretch(c *course) float64 {
	last := w.courses[len(w.courses)-1]
	if w.o.closing {
		last = w.courses[w.last]
	}
	radius := c.form.Level
	if w.closesIn() {
		radius = last.form.Level - c.form.Level + last.form.Radius
	}
	if c.form.Radius <= 0 {
		return 1
	}
	return radius / c.form.Radius
}

// pairPart is the part of its room that an increase of two stitches has at least.
const pairPart = 0.6

// narrowFans keeps the fans of a round that is stretched on paper from being
// pulled flat: several stitches in one place take less room than their
// share, and what is between the fans takes more. Two in one row end are no increase
// but stitches picked up evenly, and two with a chain between them a V-stitch, which stays
// as open as it should be. What fills a place side by side is no fan.
func narrowFans(items []ring.Item, stretch, tall float64, filled map[int]bool) {
	part := math.Min(1, math.Max(0.5, 1.2/stretch))
	if part == 1 {
		return
	}
	eachFan(items, func(from, end, stitches int) {
		place := items[from%len(items)].Place
		narrow := part
		switch {
		case filled[place]:
			narrow = 1
		case stitches == 2 && place < 0:
			narrow = 1
		case stitches == 2 && end-from > 2:
			closeV(items, from, end, openV*tall/stretch)
			return
		case stitches == 2:
			narrow = math.Max(part, pairPart)
		}
		for k := from; k < end; k++ {
			items[k%len(items)].Width *= narrow
		}
	})
}

// openV is how far apart the legs of a V-stitch are at most at their tops, in its heights.
const openV = 2.25

// closeV narrows a V-stitch that is wider, from one top to the other, than most; what it is
// narrowed by it leaves at its sides.
func closeV(items []ring.Item, from, end int, most float64) {
	n := len(items)
	first, last := &items[from%n], &items[(end-1)%n]
	wide := -first.Width/2 - last.Width/2
	for k := from; k < end; k++ {
		wide += items[k%n].Width
	}
	if wide <= most || most <= 0 {
		return
	}
	left := 0.0
	for k := from; k < end; k++ {
		t := &items[k%n]
		left += t.Width * (1 - most/wide)
		t.Width *= most / wide
	}
	first.Before += left / 2
	items[end%n].Before += left / 2
}

// Up to mostFilled stitches for each chain stand side by side in a loop of handleChains or
// more, as on the handle of a basket; more spread as a fan.
const (
	mostFilled   = 1.25
	handleChains = 8
)

// filled are the long loops that the stitches of a round fill side by side, by place.
func (w *work) filled(c *course) map[int]bool {
	stitches, chains := map[int]int{}, map[int]int{}
	for _, i := range c.order {
		if p, ok := c.inLoop(i); ok && p.At.Round < c.index && p.At.Round >= 0 {
			key := w.key(p)
			if stitches[key]++; stitches[key] == 1 {
				w.chainsOf(w.courses[p.At.Round], p, func(int) { chains[key]++ })
			}
		}
	}
	filled := map[int]bool{}
	for key, n := range stitches {
		filled[key] = chains[key] >= handleChains && float64(n) <= mostFilled*float64(chains[key])
	}
	return filled
}

// alongLoops gives the stitches that fill long loops side by side the room of their chains.
func (w *work) alongLoops(c *course, items []ring.Item) {
	filled := w.filled(c)
	if len(filled) == 0 {
		return
	}
	eachFan(items, func(from, end, stitches int) {
		i := c.order[from%len(items)]
		p, ok := c.inLoop(i)
		if !ok || !filled[w.key(p)] || stitches != end-from {
			return
		}
		chains := 0
		w.chainsOf(w.courses[p.At.Round], p, func(int) { chains++ })
		for k := from; k < end; k++ {
			items[k%len(items)].Width *= math.Min(1, float64(chains)/float64(stitches))
		}
	})
}

// eachFan calls f for every two stitches or more in one place, with the chains between
// them, by the first item and that after the last, which may go on over the seam.
func eachFan(items []ring.Item, f func(from, end, stitches int)) {
	// From where no fan runs on over the seam.
	n, first := len(items), 0
	last := -1
	for i := n - 1; i >= 0 && last < 0; i-- {
		if !items[i].Free {
			last = items[i].Place
		}
	}
	for first < n && (items[first].Free || items[first].Place == last) {
		first++
	}
	for i := first; i < first+n; {
		place := items[i%n].Place
		if items[i%n].Free || place == 0 {
			i++
			continue
		}
		end, stitches := i+1, 1
		for k := i + 1; k < first+n && (items[k%n].Free || items[k%n].Place == place); k++ {
			if !items[k%n].Free {
				end, stitches = k+1, stitches+1
			}
		}
		if stitches > 1 {
			f(i, end, stitches)
		}
		i = end
	}
}
