package symbols

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

const (
	// A leg that leans stands up by this share of its lean towards its top.
	uprighting = 0.5
	// Where the middle of a leg's slashes is, as a share of its height.
	slashHeight, crossedHeight = 0.68, 0.84
	slashHalf                  = 0.21
	slashSlant                 = 33 * math.Pi / 180 // to the perpendicular of the leg
)

// plain draws a stitch of one leg.
func (s *sketch) plain(k stitch.Kind, in stitch.Into) {
	if k.Base == stitch.Single {
		s.single(k, in)
		return
	}
	leg := s.leg(s.foot[0])
	s.raise(0, leg)
	free := func(t float64) float64 { return s.free(leg, t) }
	middle := slashHeight
	if s.crossed {
		middle = crossedHeight
	}
	s.slashes(slashes(k.Base), leg, middle, free)
	s.tick(k, leg, free)
	s.bar(s.crest, barHalf)
}

// leg is the curve from a foot to the middle of the bar. Its height grows evenly
// along it and its lean is the same at equal heights in proportion, so the legs
// of a fan part evenly and never cross. One that would bend by less than a fifth
// of the line's width is straight.
func (s *sketch) leg(foot canvas.Point) curve {
	top := canvas.Point{Y: s.crest}
	if math.Abs(foot.X)*uprighting/4 < max(s.line/5, 0.005*s.unit) {
		return curve{foot, top}
	}
	mid := canvas.Point{X: foot.X * (1 - uprighting) / 2, Y: (foot.Y + top.Y) / 2}
	return curve{foot, mid, top}
}

// free is how far a stroke across a leg may reach to each side at t so that it
// stays clear of the next leg of a fan, whose top is a width away.
func (s *sketch) free(leg curve, t float64) float64 {
	apart := s.width * t * (1 + uprighting*(1-t))
	return room*apart*math.Abs(leg.way(t).Y) - s.line/2
}

// slashes is the number of slashes across a leg: one for each time the yarn is
// drawn through between the foot and the last loops, beyond hdc's none.
func slashes(b stitch.Base) int { return max(int(b)-int(stitch.Half), 0) }

// slashes draws n slashes across a leg, evenly spaced about the share of its
// height that middle names; free is the room to each side of the leg at t.
func (s *sketch) slashes(n int, leg curve, middle float64, free func(t float64) float64) {
	if n == 0 {
		return
	}
	long := leg[0].Sub(leg[len(leg)-1]).Length()
	step := min(0.3*s.unit/long, 0.42/float64(n))
	for i := range n {
		t := middle + step*(float64(n-1)/2-float64(i))
		s.slash(leg, t, slashSlant, slashHalf*s.unit, free(t))
	}
}

// slash draws a stroke across a leg at t, falling to the right by the slant.
// It reaches half to each side, less where the room across the leg is less, but
// is never so short that it would be a blot.
func (s *sketch) slash(leg curve, t, slant, half, free float64) {
	half = max(min(half, free/math.Cos(slant)), 0.7*s.line)
	at, way := leg.at(t), leg.way(t)
	v := across(way).Mul(half * math.Cos(slant)).Sub(way.Mul(half * math.Sin(slant)))
	s.stroke(curve{at.Sub(v), at.Add(v)})
}

// tick draws the extra chain of an extended stitch: a short stroke square across
// the leg near its foot.
func (s *sketch) tick(k stitch.Kind, leg curve, free func(t float64) float64) {
	if k.Manner&stitch.Extended == 0 {
		return
	}
	s.slash(leg, 0.27, 0, 0.17*s.unit, free(0.27))
}

// bar draws a stroke along the round at height y, half units to each side and
// within the width; a half stitch has its own side of it only.
func (s *sketch) bar(y, half float64) {
	half = min(half*s.unit, s.halfRoom())
	from, to := -half, half
	switch {
	case s.side > 0:
		from = 0
	case s.side < 0:
		to = 0
	}
	if half > 0 {
		s.stroke(curve{{X: from, Y: y}, {X: to, Y: y}})
	}
}

// together draws legs from every base that meet under one bar.
func (s *sketch) together(k stitch.Kind) {
	top := canvas.Point{Y: s.crest}
	var legs []curve
	for i, foot := range s.foot {
		leg := curve{foot, top}
		if i > 0 && s.base[i] == s.base[i-1] || foot.Sub(top).Length() < s.line {
			continue
		}
		legs = append(legs, leg)
		s.raise(i, leg)
	}
	for i, leg := range legs {
		free := func(t float64) float64 { return s.between(legs, i, t) }
		s.slashes(slashes(k.Base), leg, 0.47, free)
		s.tick(k, leg, free)
	}
	if k.Base == stitch.Single {
		s.singleTogether(legs)
		return
	}
	s.bar(s.crest, barHalf)
}

// between is how far a stroke across leg i may reach to each side at t so that
// it stays clear of the other legs and of what lies beyond the spine.
func (s *sketch) between(legs []curve, i int, t float64) float64 {
	at, over := legs[i].at(t), across(legs[i].way(t))
	near := s.width
	for j, leg := range legs {
		if gap := math.Abs(leg.at(t).Sub(at).Dot(over)); j != i && gap > 1e-6 {
			near = min(near, gap)
		}
	}
	if spine := math.Abs(at.X); s.side != 0 && spine > s.line {
		near = min(near, 2*spine)
	}
	return 0.4*near - s.line/2
}
