package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
)

// place sets the chart down on the page. From here on points can be asked for.
func (w *work) place(centre canvas.Point) { w.centre = centre }

// point is a point of the page, to a hundredth of a millimetre, so that what
// the picture's data say is exactly what is drawn.
func (w *work) point(angle, radius float64) canvas.Point {
	f := w.shape.At(angle, radius)
	return canvas.Point{X: hundredth(w.centre.X + f.X), Y: hundredth(w.centre.Y + f.Y)}
}

func hundredth(x float64) float64 { return math.Round(x*100) / 100 }

// frame is the directions at an angle: along the round as it is worked, and up,
// away from the round below.
func (w *work) frame(c *course, angle, radius float64) (along, up canvas.Point) {
	f := w.shape.At(angle, radius)
	along, up = canvas.Point{X: f.AlongX, Y: f.AlongY}, canvas.Point{X: f.OutX, Y: f.OutY}
	if c.reversed {
		along = along.Neg()
	}
	return along, up.Mul(w.up())
}

// top is the point where later stitches stand on a stitch.
func (w *work) top(c *course, i int) canvas.Point {
	return w.point(c.theta[i], w.topRadius(c, i))
}

// foot is the point and the angle where stitch i of c stands on a place.
func (w *work) foot(c *course, i int, p fabric.Place) (canvas.Point, float64) {
	if f, ok := w.onPoint(c, i, p); ok {
		return w.point(f.angle, f.radius), f.angle
	}
	r := w.footRadius(c, i, p)
	a, ok := w.footAngle(c, i, p)
	if !ok {
		a = c.theta[i]
		if p.At.Round == c.index {
			if d := w.at(p.At); d != nil {
				a = d.theta[p.At.Stitch]
			}
		}
		return w.point(a, r), a
	}
	return w.point(a, r), a
}

// footAngle is the angle of a place that stitch i of c stands on, false when that is
// free.
func (w *work) footAngle(c *course, i int, p fabric.Place) (float64, bool) {
	if f, ok := c.strung[i]; ok {
		return f.angle, true
	}
	return w.angle(p)
}

// feet are the points that a stitch stands on and the direction up at each. A
// stitch that stands on nothing gets a foot straight below it.
func (w *work) feet(c *course, i int) (feet, rise []canvas.Point) {
	on := c.round.Stitches[i].On
	for _, p := range on {
		pt, a := w.foot(c, i, p)
		along, up := w.frame(c, a, 1)
		_, up = w.tilted(c, i, along, up)
		feet, rise = append(feet, pt), append(rise, up)
	}
	if len(on) == 0 {
		r := w.floor(c)
		if isPicot(&c.round.Stitches[i]) && c.rank[i] >= 0 && c.index >= w.lo {
			r = c.picotFoot(i)
		}
		_, up := w.frame(c, c.theta[i], 1)
		feet, rise = []canvas.Point{w.point(c.theta[i], r)}, []canvas.Point{up}
	}
	return feet, rise
}

// floor is the radius of what a round stands on.
func (w *work) floor(c *course) float64 {
	if c.index > w.lo {
		return w.radii.Of(w.layer(w.courses[c.index-1]))
	}
	if w.ground {
		return w.groundRadius()
	}
	return w.radii.Of(w.layer(c)) - w.up()*w.unit/2
}

// width is the room on paper that a stitch has along its round: the smaller of
// the gaps to its neighbours.
func (w *work) width(c *course, i int) float64 {
	n := len(c.order)
	k := c.rank[i]
	if _, ok := c.tilt[i]; ok {
		if w.blocks != nil {
			return w.unit * blockBar
		}
		return w.unit
	}
	if k < 0 || n < 2 {
		return 2 * w.unit
	}
	back := c.theta[i] - c.theta[c.order[(k+n-1)%n]]
	if k == 0 {
		back += c.wrap()
	}
	next := c.theta[c.order[(k+1)%n]] - c.theta[i]
	if k == n-1 {
		next += c.wrap()
	}
	g := math.Min(back, next)
	_, oval := w.shape.(ring.Stadium)
	_, edges := w.shape.(ring.Edges)
	_, hairpin := w.shape.(ring.Hairpin)
	if oval || edges || hairpin || w.zigzag != nil {
		here := w.shape.At(c.theta[i], c.radius[i])
		least := math.Inf(1)
		for _, a := range [...]float64{c.theta[i] - back, c.theta[i] + next} {
			f := w.shape.At(a, c.radius[i])
			least = math.Min(least, math.Hypot(f.X-here.X, f.Y-here.Y))
		}
		return least
	}
	if w.flat {
		from := 0.0
		if s, ok := w.shape.(strip); ok {
			from = s.mid
		}
		return math.Abs(w.shape.At(from+g, 0).X - w.shape.At(from, 0).X)
	}
	return 2 * c.radius[i] * math.Sin(math.Min(g, math.Pi)/2)
}

// wrap is what lies between the two ends of a course: a turn, or no end where it
// is open.
func (c *course) wrap() float64 {
	if c.open {
		return math.Inf(1)
	}
	return ring.Turn
}
