package ring

import "math"

// Edges lays rounds about a convex piece with straight edges: along each edge equal
// angles are equal lengths, and a corner has an angle of its own, which is a point on
// the piece and opens outwards. A radius is the distance from the edge; corners are
// farther out. Angles grow anticlockwise, or clockwise when Mirrored.
type Edges struct {
	Corners  []Corner // at least three, anticlockwise
	Mirrored bool
}

// Corner is one of a piece.
type Corner struct {
	X, Y   float64 // where it is, mm from the centre, y up
	Angle  float64 // of its middle; it rises from corner to corner, by less than a turn in all
	Around float64 // the angle that it takes
}

// Region is the part of the ring that an angle is in: 2k for the edge after corner k,
// 2k+1 for the corner after that edge; and how far through it the angle is, 0 to 1.
func (e Edges) Region(angle float64) (region int, through float64) {
	n := len(e.Corners)
	first := e.Corners[0].Angle + e.Corners[0].Around/2
	rel := math.Mod(angle-first, Turn)
	if rel < 0 {
		rel += Turn
	}
	for k := range n {
		span := e.Span(2 * k)
		if rel <= span {
			return 2 * k, rel / math.Max(span, 1e-9)
		}
		rel -= span
		if span = e.Span(2*k + 1); rel < span || k == n-1 {
			return 2*k + 1, math.Min(rel/math.Max(span, 1e-9), 1)
		}
		rel -= span
	}
	return 0, 0
}

// Span is the angle of a region.
func (e Edges) Span(region int) float64 {
	n := len(e.Corners)
	k := region / 2
	next := e.Corners[(k+1)%n]
	if region%2 == 1 {
		return next.Around
	}
	to := next.Angle
	if k == n-1 {
		to += Turn
	}
	return to - next.Around/2 - e.Corners[k].Angle - e.Corners[k].Around/2
}

// normal is the direction straight out of the edge after corner k.
func (e Edges) normal(k int) float64 {
	n := len(e.Corners)
	a, b := e.Corners[(k+n)%n], e.Corners[(k+1+n)%n]
	return math.Atan2(b.Y-a.Y, b.X-a.X) - math.Pi/2
}

// half is half the angle by which the edges turn at corner k.
func (e Edges) half(k int) float64 {
	return math.Remainder(e.normal(k)-e.normal(k-1), Turn) / 2
}

// Tip is the point of corner k at a distance from the edges, y up.
func (e Edges) Tip(k int, radius float64) (x, y float64) {
	half := e.half(k)
	far := radius / math.Max(math.Cos(half), 0.2)
	s, c := math.Sincos(e.normal(k-1) + half)
	p := e.Corners[k]
	return p.X + far*c, p.Y + far*s
}

// At is the frame at an angle and a distance from the edges.
func (e Edges) At(angle, radius float64) Frame {
	n := len(e.Corners)
	region, t := e.Region(angle)
	k := region / 2
	next := (k + 1) % n
	out := e.normal(k)
	s, c := math.Sincos(out)
	var x, y float64
	if region%2 == 0 {
		p, q := e.Corners[k], e.Corners[next]
		x, y = p.X+t*(q.X-p.X)+radius*c, p.Y+t*(q.Y-p.Y)+radius*s
	} else { // from the end of the edge to the tip, and on to the next edge
		p := e.Corners[next]
		x, y = e.Tip(next, radius)
		if t > 0.5 {
			s, c = math.Sincos(e.normal(next))
		}
		share := 1 - math.Abs(2*t-1)
		x, y = share*x+(1-share)*(p.X+radius*c), share*y+(1-share)*(p.Y+radius*s)
		out += 2 * t * e.half(next)
		s, c = math.Sincos(out)
	}
	f := Frame{X: x, Y: -y, AlongX: -s, AlongY: -c, OutX: c, OutY: -s}
	if e.Mirrored {
		f.X, f.AlongX, f.OutX = -f.X, -f.AlongX, -f.OutX
	}
	return f
}

// Stretch is how many mm one unit of angle is at a distance from the edges, on the
// whole.
func (e Edges) Stretch(radius float64) float64 {
	sum := 0.0
	for k := range e.Corners {
		x0, y0 := e.Tip(k, radius)
		x1, y1 := e.Tip((k+1)%len(e.Corners), radius)
		sum += math.Hypot(x1-x0, y1-y0)
	}
	return sum / Turn
}
