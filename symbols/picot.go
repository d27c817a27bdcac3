package symbols

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

const picotRatio = 0.45 // as chainRatio, slimmer as the ovals meet at corners

// picot is a loop of n chains standing on its base, closed with a slip stitch's
// dot there: a polygon of ovals with a corner down.
func (s *sketch) picot(n int) Drawing {
	n = min(max(n, 1), mostLegs)
	base, up := s.base[0], s.base[0].Neg()
	if up.Length() < s.line {
		up = canvas.Point{Y: heights[stitch.Chain] * s.unit}
	}
	tall := up.Length() + s.crest
	up = up.Norm(1)
	dot := min(0.11*s.unit, 0.15*tall)
	corner := base.Add(up.Mul(dot))
	s.dot(corner, dot)
	tall -= dot
	white := dot + s.line/2 + air/2 // from the corner of the dot to a tip
	if n < 3 {
		// Too few for a polygon: ovals that stand up from the dot.
		if long := min(tall-white, chainLong*s.unit); long > s.line {
			for i := range n {
				way := up.Rot(float64(n-1-2*i)*0.42, canvas.Origin)
				s.oval(corner.Add(way.Mul(white+long/2)), way.Mul(long/2), long/2*chainRatio)
			}
		}
		return s.finish()
	}
	turn := 2 * math.Pi / float64(n)
	radius := polygon(n, tall, 2*s.halfRoom(), 0.85*s.unit)
	centre := corner.Add(up.Mul(radius))
	side := 2 * radius * math.Sin(turn/2)
	// Tips that meet at a corner stand apart, more so the sharper it is.
	apart := 0.8 * (s.line + air/2) / math.Cos(turn/2)
	white = max(white, apart)
	half := (side - white - apart) / 2
	if half < s.line/2 {
		return s.finish()
	}
	for i := range n {
		way := across(up).Rot(turn*(float64(i)+0.5), canvas.Origin)
		mid := centre.Add(across(way).Mul(radius * math.Cos(turn/2)))
		switch i { // make way for the dot
		case 0:
			mid = mid.Add(way.Mul((white - apart) / 2))
		case n - 1:
			mid = mid.Sub(way.Mul((white - apart) / 2))
		}
		s.oval(mid, way.Mul(half), half*picotRatio)
	}
	return s.finish()
}

// polygon is the radius of the largest regular polygon of n sides with a corner
// down that is no taller, wider or longer of side than given.
func polygon(n int, tall, wide, side float64) float64 {
	half := math.Pi / float64(n)
	high, broad := 2.0, 2.0 // of the polygon of radius 1
	switch {
	case n%2 == 1:
		high, broad = 1+math.Cos(half), 2*math.Cos(half/2)
	case n%4 == 2:
		broad = 2 * math.Cos(half)
	}
	return min(tall/high, wide/broad, side/2/math.Sin(half))
}
