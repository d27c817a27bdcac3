package chart

import (
	"math"

	"whorl/chart/ring"
)

// archShare is how far a long loop reaches, for the length of its chains: it may arch in
// half a circle.
const archShare = 2 / math.Pi

// roomOf is how many stitches have to stand beside one another in a round and how long
// that is in the fabric, mm. Long loops of chains arch, and many stitches worked into one
// lie along it, so that an edge of loops does not part the rounds that it is worked on.
func (w *work) roomOf(c *course) (n, long float64) {
	n, long = float64(len(c.order)), c.form.Circumference
	if w.rows || w.corners.sides > 0 || isFoundation(c.round) {
		return n, long
	}
	takes := func(i int, share float64) {
		if c.rank[i] >= 0 {
			n -= 1 - share
			long -= (1 - share) * c.form.Widths[i]
		}
	}
	for _, sp := range c.round.Spaces {
		chains := 0
		c.run(sp, func(int) { chains++ })
		if chains >= longLoop && !w.opens(c, sp.From) {
			c.run(sp, func(i int) { takes(i, archShare) })
		}
	}
	inside := map[int][]int{} // stitches by the loop they are worked into
	for _, i := range c.order {
		if p, ok := c.inLoop(i); ok && p.At.Round < c.index {
			inside[w.key(p)] = append(inside[w.key(p)], i)
		}
	}
	for _, i := range c.order {
		p, ok := c.inLoop(i)
		d := w.at(p.At)
		if !ok || d == nil {
			continue
		}
		chains := 0
		w.chainsOf(d, p, func(int) { chains++ })
		in := float64(len(inside[w.key(p)]))
		if arch := archShare * float64(chains); chains >= longLoop && in >= manyIn && arch < in {
			takes(i, arch/in)
		}
	}
	return n, long
}

// opens reports whether the loop that begins at a chain is within what is worked in one
// place, as in the middle of a shell.
func (w *work) opens(c *course, chain int) bool {
	before, after := c.besideLoop(chain)
	a, b := c.round.Stitches[before].On, c.round.Stitches[after].On
	return len(a) == 1 && len(b) == 1 && w.key(a[0]) == w.key(b[0])
}

// besideLoop are the stitches before and after a run of chains, in the order of the round.
func (c *course) besideLoop(chain int) (before, after int) {
	n := len(c.order)
	at := max(c.rank[chain], 0)
	find := func(step int) int {
		for k := 1; k < n; k++ {
			if i := c.order[(at+k*step)%n]; !c.isLoop(i) {
				return i
			}
		}
		return c.order[at]
	}
	return find(n - 1), find(1)
}

// archAround takes from the chains of a round the room that their loops have more of than
// what they pass over, so that they arch and do not part what they hang from. each is how
// long the round is to a radian.
func archAround(items []ring.Item, each float64) {
	n := len(items)
	for from := range items {
		if items[from].Free {
			continue
		}
		to, loop := from+1, 0.0
		for to < from+n && items[to%n].Free {
			loop += items[to%n].Width + items[to%n].Before
			to++
		}
		a, b := &items[from], &items[to%n]
		if to-from <= longLoop || a.Place == b.Place && a.Place != 0 {
			continue
		}
		room := above(b.Base-a.Base, 0)*each - (a.Width+b.Width)/2
		share := math.Min(1, math.Max(archShare, room/loop))
		for k := from + 1; k < to; k++ {
			items[k%n].Width *= share
		}
	}
}
