package chart

import (
	"math"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// On a ring the legs of a round are about as long, one to another, as their symbols are
// tall, whatever each stands on.

const (
	shortLeg, longLeg = 0.85, 1.2 // of a leg to its height, at the mean stretch of its round
	leastLegs         = 0.95      // of the mean of a round's, in units
	// A fan as wide to each side as domeFrom times its height begins to fall off to its
	// ends, by no more than mostDome of that.
	domeFrom, mostDome = 0.8, 0.55
	domeLeast          = 5 // stitches
)

// plainLeg reports whether a stitch stands on one or more places of the round below as
// most do.
func (w *work) plainLeg(c *course, i int) bool {
	s := &c.round.Stitches[i]
	if len(s.On) == 0 || s.IsChain() || isPicot(s) || s.Kind.Base < stitch.Single || s.Kind.Manner&stitch.Spike != 0 {
		return false
	}
	for _, p := range s.On {
		switch p.Into {
		case stitch.FrontPost, stitch.BackPost, stitch.RowEnd, stitch.Between:
			return false
		}
		if p.Into != stitch.Ring && p.At.Round != c.index-1 {
			return false
		}
	}
	return true
}

// arched reports whether a round has loops of chains that arch.
func (c *course) arched() bool {
	found := false
	c.loops(func(_ int, run []int, _ int) { found = found || len(run) >= archChains })
	return found
}

// lacy reports whether a round or the one below it has loops of chains that arch.
func (w *work) lacy(c *course) bool {
	return c.arched() || c.index > w.lo && w.courses[c.index-1].arched()
}

// alike makes the legs of a round alike.
func (w *work) alike(c *course) {
	if !w.ringed() || !w.lacy(c) {
		return
	}
	up := w.up()
	legs, heights := 0.0, 0.0
	for _, i := range c.order {
		if w.plainLeg(c, i) {
			legs += (c.radius[i] - w.meanFoot(c, i)) * up
			heights += symbols.Height(c.round.Stitches[i].Counted())
		}
	}
	if heights == 0 {
		return
	}
	mean := math.Max(legs/heights, leastLegs*w.unit)
	for _, i := range c.order {
		if w.plainLeg(c, i) {
			foot, tall := w.meanFoot(c, i)*up, symbols.Height(c.round.Stitches[i].Counted())*mean
			c.radius[i] = math.Max((foot+math.Max(shortLeg*tall, math.Min(longLeg*tall, c.radius[i]*up-foot)))*up, 0.5)
		}
	}
	w.topFans(c)
}

// topFans lays the chains within what is worked in one place no lower than the tops on both
// sides of them, for the next round to stand there clear of those.
func (w *work) topFans(c *course) {
	up := w.up()
	c.loops(func(before int, run []int, after int) {
		if !w.opens(c, run[0]) {
			return
		}
		least := math.Min(c.radius[before]*up, c.radius[after]*up)
		for _, i := range run {
			c.radius[i] = math.Max(c.radius[i]*up, least) * up
		}
	})
}

// fans calls f for every fan of a round that has at least so many stitches of one kind
// in one place, with the chains between them left out.
func (w *work) fans(c *course, least int, f func(fan []int, place fabric.Place)) {
	var fan []int
	flush := func() {
		if len(fan) >= least {
			f(fan, c.round.Stitches[fan[0]].On[0])
		}
		fan = nil
	}
	for _, i := range c.fromFan(w) {
		s := &c.round.Stitches[i]
		switch {
		case c.isLoop(i):
			continue
		case len(s.On) != 1 || w.key(s.On[0]) == 0:
			flush()
			continue
		case len(fan) > 0 && (w.key(c.round.Stitches[fan[0]].On[0]) != w.key(s.On[0]) || c.round.Stitches[fan[0]].Counted() != s.Counted()):
			flush()
		}
		fan = append(fan, i)
	}
	flush()
}

// fromFan is the stitches of a round in their order from where no fan runs on over the seam.
func (c *course) fromFan(w *work) []int {
	n, last := len(c.order), -1
	for k := n - 1; k >= 0 && last < 0; k-- {
		if !c.isLoop(c.order[k]) {
			last = c.order[k]
		}
	}
	first := 0
	for first < n && !c.open && last >= 0 && (c.isLoop(c.order[first]) || w.together(c, c.order[first], last)) {
		first++
	}
	return append(slices.Clone(c.order[first:]), c.order[:first]...)
}

// dome lets the ends of wide fans of one kind fall off, as legs of one length do, but for
// those that stand along a loop.
func (w *work) dome(c *course) {
	c.domed = nil
	if !w.ringed() || w.inwards || !w.lacy(c) {
		return
	}
	w.fans(c, domeLeast, func(fan []int, place fabric.Place) {
		mid, ok := w.angle(place)
		if _, along := c.strung[fan[0]]; along || !ok {
			return
		}
		wide, tall := 0.0, 0.0
		for _, i := range fan {
			tall += (c.radius[i] - w.footRadius(c, i, place)) / float64(len(fan))
			wide = math.Max(wide, math.Abs(math.Remainder(c.theta[i]-mid, 2*math.Pi))*c.radius[i])
		}
		fall := math.Min(mostDome, (wide/tall-domeFrom)/2)
		if tall <= 0 || fall <= 0 {
			return
		}
		if c.domed == nil {
			c.domed = map[int]bool{}
		}
		for _, i := range fan {
			c.domed[i] = true
			x := math.Remainder(c.theta[i]-mid, 2*math.Pi) * c.radius[i] / wide
			foot := w.footRadius(c, i, place)
			c.radius[i] = foot + (c.radius[i]-foot)*(1-fall*x*x)
		}
	})
}

// overArches finds how far every round must rise to stand on the arches of the one below;
// false where that is as far as it was.
func (w *work) overArches() bool {
	if !w.ringed() || w.inwards {
		return false
	}
	any := false
	for _, c := range w.courses[w.lo+1 : w.last+1] {
		if !w.lacy(c) {
			continue
		}
		above, heights, n := 0.0, 0.0, 0.0
		for _, i := range c.order {
			if w.plainLeg(c, i) {
				above += w.meanFoot(c, i) - w.radii.Of(w.layer(c)-1)
				heights += symbols.Height(c.round.Stitches[i].Counted())
				n++
			}
		}
		if n == 0 || above <= 0 {
			continue
		}
		rise := (above + leastLegs*heights*w.unit) / n
		any = any || math.Abs(rise-c.rise) > 0.1
		c.rise = rise
	}
	return any
}
