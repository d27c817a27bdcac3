package chart

import (
	"math"
	"slices"

	"whorl/chart/ring"
)

// roomOf is how many stitches have to stand beside one another in a round and how long
// that is in the fabric, mm. Long loops of chains arch, and many stitches worked into one
// lie along it, so that an edge of loops does not part the rounds that it is worked on.
func (w *work) roomOf(c *course) (n, long float64) {
	n, long = float64(len(c.order)), c.form.Circumference
	if w.rows || w.corners.sides > 0 || isFoundation(c.round) {
		return n, long
	}
	takes := func(i int, tight, share float64) {
		if c.rank[i] >= 0 {
			n -= 1 - tight
			long -= (1 - share) * c.form.Widths[i]
		}
	}
	share := w.hangs(c).share()
	tight := share
	if w.ringed() && w.hangs(c) != straight {
		tight = tightShare
	}
	for _, sp := range c.round.Spaces {
		var run []int
		c.run(sp, func(i int) { run = append(run, i) })
		if len(run) >= longLoop && !w.opens(c, sp.From) {
			for _, i := range run {
				takes(i, tight, share)
			}
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
		if arch := w.hangs(d).share() * float64(chains); chains >= longLoop && in >= manyIn && arch < in {
			takes(i, arch/in, arch/in)
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
// long the round is to a radian, and share what is left of their room at least.
func archAround(items []ring.Item, each, share float64) {
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
		for k := from + 1; k < to; k++ {
			items[k%n].Width *= math.Min(1, math.Max(share, room/loop))
		}
	}
}

// leastGap is the smallest angle that a round leaves between two neighbours, 0 for a lone
// stitch. The chains of an arch share what is left between its feet, and a picot stands
// over its neighbours.
func (w *work) leastGap(c *course) float64 {
	n := len(c.order)
	over := func(i int) bool { return isPicot(&c.round.Stitches[i]) }
	if w.ringed() && w.hangs(c) != straight {
		over = func(i int) bool { return c.isLoop(i) || isPicot(&c.round.Stitches[i]) }
	}
	first := slices.IndexFunc(c.order, func(i int) bool { return !over(i) })
	if n < 2 || first < 0 {
		return 0
	}
	least, chains := math.Inf(1), 0
	at := c.theta[c.order[first]]
	for k := first + 1; k <= first+n; k++ {
		i := c.order[k%n]
		switch {
		case k < first+n && over(i):
			if c.isLoop(i) {
				chains++
			}
			continue
		case c.open && k >= n:
			return least
		}
		next := c.theta[i] + ring.Turn*float64(k/n)
		least = math.Min(least, (next-at)/(1+float64(chains)/w.hangs(c).long()))
		at, chains = next, 0
	}
	return least
}
