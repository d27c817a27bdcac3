package ring

import "math"

// Polygon lays rounds on regular polygons about one centre, and the innermost
// ones on circles that pass over into them. An angle is a share of the way round:
// equal angles are equal lengths of a side. A radius is the distance of the sides
// from the centre; corners are farther out. Round is the radius up to which rounds are
// circles, Full that from which their sides are straight.
type Polygon struct {
	Circle
	Sides  int
	Corner float64 // the angle, from the start, of one of the corners
}

// cornerShare is the part of half a side, next to its corner, over which what
// stands on it turns towards the corner's bisector.
const cornerShare = 0.45

// At is the frame at an angle from the start and a distance of the sides from the
// centre.
func (p Polygon) At(angle, radius float64) Frame {
	each := Turn / float64(p.Sides)
	rel := math.Mod(angle-p.Corner, Turn)
	if rel < 0 {
		rel += Turn
	}
	k := math.Min(math.Floor(rel/each), float64(p.Sides-1))
	along := 2*(rel/each-k) - 1 // from corner to corner, -1 to 1
	normal := p.Start + p.Corner + (k+0.5)*each

	straight := 0.0
	if radius > p.Round {
		straight = math.Min((radius-p.Round)/math.Max(p.Full-p.Round, 1e-9), 1)
	}
	ns, nc := math.Sincos(normal)
	side := along * math.Tan(each/2) * radius
	x, y := radius*nc-side*ns, radius*ns+side*nc
	cs, cc := math.Sincos(normal + along*each/2)
	x, y = x*straight+radius*cc*(1-straight), y*straight+radius*cs*(1-straight)

	lean := math.Max(math.Abs(along)-1+cornerShare, 0) / cornerShare
	out := normal + each/2*(straight*math.Copysign(lean, along)+(1-straight)*along)
	s, c := math.Sincos(out)
	f := Frame{X: x, Y: -y, AlongX: -s, AlongY: -c, OutX: c, OutY: -s}
	if p.Mirrored {
		f.X, f.AlongX, f.OutX = -f.X, -f.AlongX, -f.OutX
	}
	return f
}

// Extent is half of how far a polygon whose sides are one from the centre reaches from
// side to side or up and down, whichever is more; and how far up its middle lies.
func (p Polygon) Extent() (half, up float64) {
	var low, high [2]float64
	for k := range p.Sides {
		s, c := math.Sincos(p.Start + p.Corner + float64(k)*Turn/float64(p.Sides))
		for i, x := range [...]float64{c, s} {
			x /= math.Cos(Turn / float64(2*p.Sides))
			low[i], high[i] = math.Min(low[i], x), math.Max(high[i], x)
		}
	}
	return math.Max(1, math.Max(high[0]-low[0], high[1]-low[1])/2), (high[1] + low[1]) / 2
}
