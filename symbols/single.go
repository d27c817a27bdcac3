package symbols

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

const (
	armHalf = 0.38 // of a single crochet's cross
	wave    = 0.09 // height of the wave over a reverse stitch, to each side
)

// single draws a single crochet: a leg with arms across it, or a ×.
func (s *sketch) single(k stitch.Kind, in stitch.Into) {
	s.crest = min(s.crest, -min(0.13*s.unit, 0.2*s.reach()))
	leg := s.leg(s.foot[0])
	long := leg[0].Sub(leg[len(leg)-1]).Length()
	free := func(t float64) float64 { return s.free(leg, t) }
	half := min(armHalf*s.unit, 0.5*long)
	if s.cross {
		half = min(half, 0.36*s.unit)
		if in == stitch.FrontLoop || in == stitch.BackLoop {
			half = min(half, 0.42*(long-s.loopDepth()))
		}
	}
	t := 1 - half/long
	if s.shared || math.Abs(leg[0].X) > 0.12*s.unit {
		half = min(half, free(t))
	} else {
		half = min(half, s.halfRoom())
	}
	half = max(half, 0.5*s.line)
	s.tick(k, leg, free)
	if !s.cross {
		s.raise(0, leg)
		s.slash(leg, t, 0, half, half)
		return
	}
	// A × has no leg of its own; it is given one where it would not be seen
	// to stand: when it leans, is tall, or its foot bears a mark.
	at, way := leg.at(t), leg.way(t)
	if s.foot[0] != s.base[0] || k.Manner&(stitch.Extended|stitch.Spike) != 0 ||
		math.Abs(leg[0].X) > 0.2*s.unit || long > 1.4*s.unit {
		s.raise(0, curve{leg[0], at})
	}
	for _, turn := range [...]float64{-math.Pi / 4, math.Pi / 4} {
		v := way.Rot(turn, canvas.Origin).Mul(half)
		s.stroke(curve{at.Sub(v), at.Add(v)})
	}
}

// singleTogether draws the arms of single crochets worked together: one stroke
// across all the legs where they are near one another, longer than a slash, so
// that it reads as sc and not as an hdc's bar.
func (s *sketch) singleTogether(legs []curve) {
	spread := 0.0
	for _, leg := range legs {
		spread = max(spread, math.Abs(leg[0].X))
	}
	most := min(0.4*s.unit, s.halfRoom())
	t := 0.55
	if past := most - 0.16*s.unit; past < spread*(1-t) {
		t = max(t, min(1-past/spread, 0.75))
	}
	y := 0.0
	for _, leg := range legs {
		y += leg.at(t).Y / float64(len(legs))
	}
	s.bar(y, most/s.unit)
}

// manner lowers the crest for what a reverse stitch bears over its top.
func (s *sketch) manner(m stitch.Manner) {
	if m&stitch.Reverse == 0 {
		return
	}
	amp := min(wave*s.unit, 0.08*s.reach())
	half := min(barHalf*s.unit, s.halfRoom())
	y := s.crest - amp
	s.stroke(curve{{X: -half, Y: y}, {X: -half * 0.35, Y: y + 3.4*amp}, {X: half * 0.35, Y: y - 3.4*amp}, {X: half, Y: y}})
	s.crest = y - amp - s.line - air
}
