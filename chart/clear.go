package chart

import (
	"math"
	"sort"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// In the fabric a stitch lies over whatever was worked below it at its place on the
// turn: over the tops of a fan that a loop of chains passes, of the petal that the
// next petal is worked behind. A chart that follows levels alone would set some of
// them among one another, so what lies beneath lifts what lies above it.

const (
	clearTop   = 0.15 // units, from a top to the tops beneath
	clearChain = 0.45 // units, from the middle of a chain to the tops beneath
	clearDot   = 0.4  // units, that the dot of a later slip stitch takes over a top
	clearLeg   = 0.1  // units, from a leg to the tops that it passes over
	clearWide  = 0.04 // units, likewise, where it is measured as it is drawn
	clearSide  = 0.36 // units, to each side of a top: half its bar and some white
	clearOval  = 1.7  // times as far to each side of a chain on a ring or in a row
	barDown    = 0.36 // units, from a top to the bar of a single crochet
	clearSlash = 0.18 // units, to each side of the middle of a leg's slash
	clearTilt  = 0.27 // units, up and down from there
	// Where a leg's slash is, as shares of its height and its way across.
	slashUp, slashAcross = 0.68, 0.79
	beneath              = 4    // rounds that are looked over
	evenSteps            = 4    // in which a round is evened out
	raiseStep            = 0.2  // units, by which a round is raised at a time
	mostRaised           = 0.75 // units
)

// sky is the tops of a round by angle: what later rounds lie over.
type sky []struct{ angle, radius float64 }

// skyOf is the tops of a round that take room, by angle, from 0 to a turn where the
// round closes.
func (w *work) skyOf(c *course) sky {
	s := make(sky, 0, len(c.order))
	for _, i := range c.order {
		a := c.theta[i]
		if !c.open {
			a = above(a, 0)
		}
		top := c.radius[c.petalTop(i)] * w.up()
		if w.slippedInto(fabric.Ref{Round: c.index, Stitch: i}) {
			top += clearDot * w.unit
		}
		s = append(s, struct{ angle, radius float64 }{a, top})
	}
	sort.SliceStable(s, func(i, j int) bool { return s[i].angle < s[j].angle })
	return s
}

// slippedInto reports whether a slip stitch of a round past the next is worked into a
// stitch, behind what lies over it by then.
func (w *work) slippedInto(at fabric.Ref) bool {
	if w.slipped == nil {
		w.slipped = map[fabric.Ref]bool{}
		for _, c := range w.courses[:w.last+1] {
			for i := range c.round.Stitches {
				if s := &c.round.Stitches[i]; s.Kind.Base == stitch.Slip && s.Role == fabric.Worked && len(s.On) == 1 && s.On[0].At.Round < c.index-1 {
					w.slipped[s.On[0].At] = true
				}
			}
		}
	}
	return w.slipped[at]
}

// highest is the farthest top up between two angles, less than a turn apart; false
// where there is none.
func (s sky) highest(from, to float64, closes bool) (float64, bool) {
	best := math.Inf(-1)
	look := func(from, to float64) {
		for k := sort.Search(len(s), func(k int) bool { return s[k].angle >= from }); k < len(s) && s[k].angle <= to; k++ {
			best = math.Max(best, s[k].radius)
		}
	}
	if !closes {
		look(from, to)
		return best, !math.IsInf(best, -1)
	}
	width := to - from
	from = above(from, 0)
	look(from, from+width)
	look(0, from+width-ring.Turn)
	return best, !math.IsInf(best, -1)
}

// stretchAt is how many millimetres on paper one unit of angle is at an angle and a radius.
func (w *work) stretchAt(angle, radius float64) float64 {
	switch s := w.shape.(type) {
	case ring.Line:
		return s.Scale
	case strip:
		return s.Scale
	case ring.Stadium:
		return s.Stretch(angle, radius)
	case ring.Edges:
		return s.Stretch(radius)
	case ring.Hairpin:
		return s.Stretch(radius)
	}
	return math.Max(radius, 0.5)
}

// lift raises the tops of a round that lie among those of the rounds below.
func (w *work) lift(c *course) {
	up := w.up()
	raised := map[int]bool{}
	for _, i := range c.order {
		s := &c.round.Stitches[i]
		room := clearTop
		switch {
		case s.IsChain() && len(s.On) == 0:
			room = clearChain
		case isPicot(s) || s.Kind.Base == stitch.Slip || s.Kind.Base == stitch.Chain || s.Role == fabric.Travel:
			continue
		}
		side := clearSide * w.unit / w.stretchAt(c.theta[i], c.radius[i])
		if s.IsChain() && (w.ringed() || w.flat) {
			side *= clearOval
		}
		for k := max(w.lo, c.index-beneath); k < c.index; k++ {
			d := w.courses[k]
			if d.hub || d.loose || d.sky == nil {
				continue
			}
			if top, ok := d.sky.highest(c.theta[i]-side, c.theta[i]+side, !c.open); ok && c.radius[i]*up < top+room*w.unit {
				c.radius[i] = (top + room*w.unit) * up
				if s.IsChain() {
					raised[i] = true
				}
			}
		}
	}
	w.overLegs(c, raised)
	w.overJoin(c, raised)
	if len(raised) == 0 {
		return
	}
	if w.ringed() {
		c.loops(func(_ int, run []int, _ int) { w.vault(c, run, raised) })
		return
	}
	for _, sp := range c.round.Spaces {
		var run []int
		c.run(sp, func(i int) {
			if c.rank[i] >= 0 {
				run = append(run, i)
			}
		})
		w.vault(c, run, raised)
	}
}

// overLegs raises the chains of a round that lie among the legs of a stitch worked over
// places far apart, as it spreads under them.
func (w *work) overLegs(c *course, raised map[int]bool) {
	up := w.up()
	n := len(c.order)
	for k, i := range c.order {
		s := &c.round.Stitches[i]
		if len(s.On) < 2 || s.IsChain() {
			continue
		}
		for _, p := range s.On {
			a, ok := w.footAngle(c, i, p)
			if !ok {
				continue
			}
			if !c.open {
				a = above(a, c.theta[i]-math.Pi)
			}
			step := 1
			if a < c.theta[i] {
				step = -1
			}
			foot := w.footRadius(c, i, p) * up
			for j := k + step; j != k; j += step {
				if c.open && (j < 0 || j >= n) || !c.isLoop(c.order[(j+n)%n]) {
					break
				}
				chain := c.order[(j+n)%n]
				at := c.theta[chain]
				if !c.open {
					at = above(at, c.theta[i]-math.Pi)
				}
				share := (at - c.theta[i]) / (a - c.theta[i])
				if share <= 0 || share >= 1 {
					break
				}
				leg := c.radius[i]*up + (foot-c.radius[i]*up)*share
				if least := leg + clearChain*w.unit; c.radius[chain]*up < least {
					c.radius[chain] = least * up
					raised[chain] = true
				}
			}
		}
	}
}

// vault makes a run of chains of which some were raised one arch again, from the
// stitch before it to the one after it.
func (w *work) vault(c *course, run []int, raised map[int]bool) {
	any := false
	for _, i := range run {
		any = any || raised[i]
	}
	if !any || len(run) < 2 {
		return
	}
	up := w.up()
	type spot struct{ x, y float64 }
	spots := make([]spot, len(run))
	for k, i := range run {
		spots[k] = spot{c.theta[i], c.radius[i] * up}
		if k > 0 && !c.open && !c.reversed {
			spots[k].x = above(spots[k].x, spots[k-1].x)
		}
	}
	if spots[len(spots)-1].x < spots[0].x {
		for a, b := 0, len(spots)-1; a < b; a, b = a+1, b-1 {
			spots[a], spots[b], run[a], run[b] = spots[b], spots[a], run[b], run[a]
		}
	}
	for k := range spots {
		y := spots[k].y
		for a := 0; a < k; a++ {
			for b := k + 1; b < len(spots); b++ {
				if wide := spots[b].x - spots[a].x; wide > 0 {
					y = math.Max(y, spots[a].y+(spots[b].y-spots[a].y)*(spots[k].x-spots[a].x)/wide)
				}
			}
		}
		c.radius[run[k]] = y * up
	}
}

// passes evens out, by a step, the rounds that legs of later ones cannot leave without
// crossing their tops, or without lying flat; where that is not enough it raises the later
// round. It is false when there are none.
func (w *work) passes() bool {
	crossed, low := map[*course]bool{}, map[*course]bool{}
	for _, c := range w.courses[w.lo : w.last+1] {
		for _, i := range c.order {
			if c.cutOf(i) == left || c.tilt != nil {
				continue
			}
			if d := w.unevenUnder(c, i); d != nil {
				crossed[d] = true
			}
			for _, p := range c.round.Stitches[i].On {
				d := w.at(p.At)
				if d == nil || crossed[d] && d.level < 1 || d.index < w.lo || d.index >= c.index || d.hub || d.loose ||
					p.Into == stitch.Ring || p.Into == stitch.RowEnd {
					continue
				}
				if a, ok := w.footAngle(c, i, p); ok && w.hits(c, i, p, a, d) {
					if d.level < 1 {
						crossed[d] = true
					} else if c.raised < mostRaised {
						low[c] = true
					}
				} else if c.raised < raiseStep && w.grazes(c, i, p, d) {
					low[c] = true
				}
			}
		}
	}
	for d := range crossed {
		d.level = math.Min(1, d.level+1.0/evenSteps)
	}
	for c := range low {
		c.raised += raiseStep
	}
	return len(crossed)+len(low) > 0
}

// hits reports whether the leg of stitch i of c from a place of d, at an angle, passes
// through a top of d on its way.
func (w *work) hits(c *course, i int, p fabric.Place, angle float64, d *course) bool {
	up := w.up()
	foot, top := w.footRadius(c, i, p)*up, c.radius[i]*up
	end := c.theta[i]
	if !c.open {
		end = above(end, angle-math.Pi)
	}
	across := end - angle
	from, to := math.Min(angle, end), math.Max(angle, end)
	unit := w.unit / w.stretchAt(c.theta[i], c.radius[i]) // of angle
	side := clearSide * unit
	marked := c.round.Stitches[i].Kind.Base >= stitch.Double && len(c.round.Stitches[i].On) == 1
	hit := false
	d.between(from-side-clearSlash*unit, to+side+clearSlash*unit, func(j int, at float64) {
		if hit || d.round.Stitches[j].IsChain() || c.standsOn(i, fabric.Ref{Round: d.index, Stitch: j}) {
			return
		}
		if marked && math.Abs(at-angle-slashAcross*across) < side+clearSlash*unit &&
			math.Abs(foot+(top-foot)*slashUp-d.radius[j]*up) < clearTilt*w.unit {
			hit = true
			return
		}
		// The end of its bar that is nearer the foot.
		share := (at - angle) / across
		share -= side / math.Abs(across)
		if share > 0.05 && share <= 1 && foot+(top-foot)*climb(share) < d.radius[j]*up+clearLeg*w.unit {
			hit = true
		}
		if !hit && (w.wideRing() || w.corners.sides > 0 && c.index > w.corners.laid+1) {
			near := at - math.Copysign(clearSide*w.unit/d.radius[j], across)
			bar, base := w.seenFrom(c, i, near, d.radius[j]), w.seenFrom(c, i, angle, w.footRadius(c, i, p))
			share := 1 - bar.X/base.X
			hit = share > 0.05 && share <= 1 && base.Y*(1-climb(share)) < bar.Y+clearWide*w.unit
		}
	})
	return hit
}

// wideRing reports whether rounds are worked outwards on a ring that is no centre, where
// fans stand far apart, and reach far round it.
func (w *work) wideRing() bool {
	circle, ok := w.shape.(ring.Circle)
	return ok && circle.Wave == nil && !w.inwards && w.lo == 1 && w.ground && !w.courses[0].hub
}

// seenFrom is where a point lies from the top of stitch i of c: along the round there, and
// up. On a ring a foot far to the side lies lower than its radius says.
func (w *work) seenFrom(c *course, i int, angle, radius float64) canvas.Point {
	from, to := w.shape.At(c.theta[i], c.radius[i]), w.shape.At(angle, radius)
	x, y := to.X-from.X, to.Y-from.Y
	return canvas.Point{X: x*from.AlongX + y*from.AlongY, Y: (x*from.OutX + y*from.OutY) * w.up()}
}

// grazes reports whether the leg of a stitch on several places runs into the bar of the
// one of d that it stands on there, where that leans.
func (w *work) grazes(c *course, i int, p fabric.Place, d *course) bool {
	j := p.At.Stitch
	if len(c.round.Stitches[i].On) < 2 || len(d.round.Stitches[j].On) != 1 || p.Into != stitch.Top || d.rank[j] < 0 {
		return false
	}
	top := w.top(d, j)
	foot, _ := w.foot(d, j, d.round.Stitches[j].On[0])
	along := top.Sub(foot).Norm(1)
	leg := segment{a: top, b: w.top(c, i)}
	bar := top.Sub(along.Mul(barDown * w.unit))
	for _, side := range [...]float64{-1, 1} {
		end := bar.Add(along.Rot90CW().Mul(side * clearSide * w.unit))
		if nearest(end, leg).Sub(end).Length() < clearLeg*w.unit {
			return true
		}
	}
	return false
}

// standsOn reports whether a stitch is one of the places of stitch i.
func (c *course) standsOn(i int, r fabric.Ref) bool {
	for _, p := range c.round.Stitches[i].On {
		if p.At == r {
			return true
		}
	}
	return false
}

// climb is how far up a leg of a fan has come at a share of its way across, from how
// the artwork bends it.
func climb(share float64) float64 {
	const u = 0.5
	return ((1 + u) - math.Sqrt((1+u)*(1+u)-4*u*share)) / (2 * u)
}

// between calls f for the stitches of a course whose angles lie between two, with the
// angle on that turn.
func (c *course) between(from, to float64, f func(i int, at float64)) {
	n := len(c.order)
	if n == 0 {
		return
	}
	turn := 0.0
	if !c.open {
		turn = ring.Turn * math.Ceil((from-c.theta[c.order[n-1]])/ring.Turn)
	}
	k := sort.Search(n, func(k int) bool { return c.theta[c.order[k]]+turn >= from })
	for steps := 0; steps < n; steps++ {
		if k == n {
			if c.open {
				return
			}
			k, turn = 0, turn+ring.Turn
		}
		at := c.theta[c.order[k]] + turn
		if at > to {
			return
		}
		f(c.order[k], at)
		k++
	}
}
