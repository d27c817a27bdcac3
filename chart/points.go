package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// A chain made in a round and worked back along is a point: a leaf, a tooth of a fringe, a
// point of a star. It stands outwards, its stitches square to it on the side where the
// round goes on; the next round lies along its other side, round its tip and down again.
type point struct {
	c        *course
	chains   []int // from the foot to the tip
	back     []int // the stitches worked back along it, from the tip to the foot
	from, to int   // the stitches of the round before and after it
}

const (
	leastPoint  = 3             // chains of the shortest point
	leastBack   = 2             // stitches along it
	pointPitch  = 1.05          // units, from chain to chain
	pointShare  = 0.7           // of their height, of the stitches along it
	pointFoot   = 0.7           // units, from what the round stands on to the first chain
	pointSide   = 0.36          // units, from the middle of a chain to the stitches on either side of it
	pointMiddle = 0.24          // units, from the top of a chain to the middle of its oval
	mostWide    = 0.9 * math.Pi // that a point is taken to have of the turn
	pointEdge   = 1.25          // units, of the next round along it
	pointEnd    = 0.42          // units, from the middle of the last chain to its end
)

// findPoints finds the points of whole rounds on circles.
func (w *work) findPoints() {
	w.points = nil
	if w.rows || w.oval != nil || w.border != nil || w.corners.sides > 0 || w.closesIn() {
		return
	}
	for _, c := range w.courses[max(w.first, 1) : w.last+1] {
		if !c.reversed && !c.open && !c.hub && !c.loose {
			w.points = append(w.points, c.findPoints()...)
		}
	}
}

func (c *course) findPoints() (points []point) {
	s := c.round.Stitches
	for i := 0; i < len(s); {
		p := point{c: c}
		for ; i < len(s) && c.isLoop(i) && c.rank[i] >= 0; i++ {
			p.chains = append(p.chains, i)
		}
		n := len(p.chains)
		if n == 0 {
			i++
			continue
		}
		for low := i; i < len(s) && len(s[i].On) == 1; i++ {
			at := s[i].On[0]
			if at.At.Round != c.index || at.Into == stitch.Space || at.At.Stitch >= low || at.At.Stitch < p.chains[0] || c.rank[i] < 0 {
				break
			}
			p.back, low = append(p.back, i), at.At.Stitch
		}
		if n < leastPoint || len(p.back) < leastBack {
			continue
		}
		m := len(c.order)
		p.from, p.to = c.order[(c.rank[p.chains[0]]+m-1)%m], c.order[(c.rank[p.back[len(p.back)-1]]+1)%m]
		if c.betweenPoints(p.from) && c.betweenPoints(p.to) {
			points = append(points, p)
		}
	}
	return points
}

// betweenPoints reports whether a stitch stands on the round below, and so between points.
func (c *course) betweenPoints(i int) bool {
	on := c.round.Stitches[i].On
	return len(on) > 0 && (on[0].At.Round != c.index || on[0].Into == stitch.Ring)
}

// pointed reports whether a course has points or lies along those of the round below.
func (w *work) pointed(c *course) bool {
	for _, p := range w.points {
		if p.c == c || p.c.index == c.index-1 {
			return true
		}
	}
	return false
}

// standOut sets the stitches of points, and those of the next round along them.
func (w *work) standOut(c *course) {
	c.tilt, c.tipped = nil, nil
	if !w.pointed(c) {
		return
	}
	c.tilt, c.tipped = map[int]float64{}, map[int]bool{}
	for _, i := range c.order { // what is between them is close on its place
		if s := &c.round.Stitches[i]; s.Kind.Base == stitch.Slip && len(s.On) == 1 {
			if a, ok := w.footAngle(c, i, s.On[0]); ok {
				c.theta[i] = above(a, c.theta[i]-math.Pi)
			}
		}
	}
	for _, p := range w.points {
		switch {
		case p.c == c:
			w.layPoint(p)
		case p.c.index == c.index-1:
			w.layAlong(p, c)
		}
	}
}

// axis is the angle at which a point stands, how much of the turn it has, and how far out
// its first chain is.
func (w *work) axis(p point) (at, wide, foot float64) {
	a, b := p.c.theta[p.from], p.c.theta[p.to]
	wide = above(b-a, 1e-9)
	floor := 0.0
	for _, i := range []int{p.from, p.to} {
		floor = math.Max(floor, p.c.radius[i])
	}
	// Its widest stitch, and a round along both its sides.
	reach := 0.0
	for _, i := range p.back {
		reach = math.Max(reach, w.pointTall(p.c, i))
	}
	need := (reach + (2*pointEdge+2*pointSide)*w.unit) / 2 / math.Tan(math.Min(wide, mostWide)/2)
	foot = math.Max(floor+pointFoot*w.unit, need)
	// The spine is aside of the middle, so that its two sides have room alike.
	return a + wide/2 - reach/2/foot*0.8, wide, foot
}

func (w *work) pointTall(c *course, i int) float64 {
	return (math.Max(symbols.Height(c.round.Stitches[i].Counted())*pointShare, 0.9) + pointSide) * w.unit
}

// setAt sets a stitch across and up from a place on the axis, turned by so much.
func (c *course) setAt(i int, axis, out, across, tilt float64) {
	angle := math.Atan2(across, out)
	c.theta[i], c.radius[i] = axis+angle, math.Hypot(across, out)
	c.tilt[i] = tilt - angle
}

func (w *work) layPoint(p point) {
	axis, _, foot := w.axis(p)
	spine := map[int]float64{}
	for k, i := range p.chains {
		spine[i] = foot + float64(k)*pointPitch*w.unit
		p.c.setAt(i, axis, spine[i], 0, -ring.Turn/4)
	}
	for _, i := range p.back {
		out := spine[p.c.round.Stitches[i].On[0].At.Stitch]
		p.c.setAt(i, axis, out, w.pointTall(p.c, i), ring.Turn/4)
	}
}

// layAlong sets the stitches of the next round that lie along a point.
func (w *work) layAlong(p point, c *course) {
	axis, _, foot := w.axis(p)
	side := map[int]float64{}
	for _, i := range p.chains {
		side[i] = -1
	}
	for _, i := range p.back {
		side[i] = 1
	}
	end := p.chains[len(p.chains)-1]
	first, last, inEnd := -1, -1, 0
	for k, i := range c.order {
		on := c.round.Stitches[i].On
		if len(on) != 1 || on[0].At.Round != p.c.index || side[on[0].At.Stitch] == 0 || on[0].Into == stitch.Space {
			continue
		}
		j, to := on[0].At.Stitch, side[on[0].At.Stitch]
		a := p.c.theta[j] - axis
		c.setAt(i, axis, p.c.radius[j]*math.Cos(a), p.c.radius[j]*math.Sin(a)+to*w.beyond(p.c, j), to*ring.Turn/4)
		switch {
		case j == end:
			inEnd++
		case to < 0:
			first = k
		case last < 0:
			last = k
		}
	}
	if first < 0 || last <= first+1 || last == first+2 && inEnd == 1 { // nothing goes round the tip
		return
	}
	w.layTip(p, c, axis, foot+float64(len(p.chains)-1)*pointPitch*w.unit, first, last)
}

// beyond is how far over a stitch of a point, or a chain of it, the next round's are.
func (w *work) beyond(c *course, i int) float64 {
	if c.isLoop(i) {
		return (pointEdge + pointSide) * w.unit
	}
	return pointEdge * w.unit
}

// pointSides are the places on both sides of a chain in a point: where the stitches worked
// back along it stand, and those of the next round; and the end of the last chain, for what
// goes round the tip. They are nil for any other stitch.
func (w *work) pointSides(c *course, i int) []onRing {
	t, ok := c.tilt[i]
	if !ok || w.blocks != nil || !c.isLoop(i) || math.Abs(t) < ring.Turn/8 || !w.inPoint(c, i) {
		return nil
	}
	// Square to the spine, which may lie aside of the centre.
	side := math.Atan(pointSide * w.unit / c.radius[i])
	out := math.Hypot(c.radius[i], pointSide*w.unit)
	return []onRing{{c.theta[i] + side, out}, {c.theta[i] - side, out}, {c.theta[i], c.radius[i] + pointEnd*w.unit}}
}

// inPoint reports whether a chain stands in a point of its round, or at a petal.
func (w *work) inPoint(c *course, i int) bool {
	for _, p := range w.points {
		if p.c == c && p.chains[0] <= i && i <= p.chains[len(p.chains)-1] {
			return true
		}
	}
	return len(c.petals) > 0
}

// onPoint is where a stitch of c in a chain of a point stands.
func (w *work) onPoint(c *course, i int, p fabric.Place) (onRing, bool) {
	d := w.at(p.At)
	if d == nil || p.Into == stitch.Space || p.Into == stitch.Ring || p.Into == stitch.RowEnd {
		return onRing{}, false
	}
	sides := w.pointSides(d, p.At.Stitch)
	switch {
	case sides == nil:
		return onRing{}, false
	case c.tipped[i]:
		return sides[2], true
	case p.Into == stitch.Underside || c != d:
		return sides[1], true
	}
	return sides[0], true
}

// tilted is a frame turned as a stitch is that stands on a point.
func (w *work) tilted(c *course, i int, along, up canvas.Point) (canvas.Point, canvas.Point) {
	t, ok := c.tilt[i]
	if !ok {
		return along, up
	}
	// Clockwise from up to along, whichever hand the chart is for.
	s, k := math.Sincos(t)
	return along.Mul(k).Sub(up.Mul(s)), up.Mul(k).Add(along.Mul(s))
}
