package symbols

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

const (
	mostLegs  = 24   // more would be a blot
	ledgeMost = 0.15 // units, of a slash to each side of its leg
)

// bundle draws several legs from one place that swell and close again: under a
// bar for a cluster (slim) or a puff (full, no slashes), under an arched cap for
// a bobble (full), under an oval for a popcorn.
func (s *sketch) bundle(k stitch.Kind) {
	n := min(max(k.Legs, len(s.foot), 2), mostLegs)
	marks := slashes(k.Base)
	if k.Shape == stitch.Puff {
		marks = 0
	}
	fat := s.swell(n, marks)
	if k.Shape == stitch.Puff {
		n = min(n, 1+int(2*fat/(1.8*s.line)))
		n = max(n, 2)
	}
	ends := s.close(k.Shape, n, fat)
	legs := make([]curve, n)
	for i := range legs {
		at := i * len(s.foot) / n
		share := 2*float64(i)/float64(n-1) - 1
		legs[i] = s.swollen(s.foot[at], ends[i], share*fat, k.Shape)
		s.raise(at, legs[i])
	}
	// Slashes side by side are parallel, so they may overlap along the round
	// as long as each keeps off the next leg; where the legs are very near
	// each is a little higher than the last to leave white between them.
	step := 2 * fat / float64(n-1)
	white := s.line + air/2
	climb := max(white-step*math.Sin(slashSlant), 0) / math.Cos(slashSlant)
	for i, leg := range legs {
		long := leg[len(leg)-1].Sub(leg[0]).Length()
		middle := 0.5 + climb/long*(float64(i)-float64(n-1)/2)
		s.slashes(marks, leg, middle, func(float64) float64 { return s.ledge(step) })
	}
	if k.Base == stitch.Single {
		y := legs[0].at(0.5).Y
		s.bar(y, min(fat/s.unit+0.15, armHalf+0.05))
	}
}

// swell is how far the outer legs of n swell to each side of the spine: so that
// they and the slashes on them keep within the width.
func (s *sketch) swell(n, marks int) float64 {
	gaps := float64(n - 1)
	if marks == 0 {
		return min(max(0.2*gaps, 0.36)*s.unit, 0.42*s.unit, s.halfRoom())
	}
	fat := (s.halfRoom() + s.line + air/2) / (1 + 2/gaps) // fat + ledge = halfRoom
	fat = max(fat, s.halfRoom()-ledgeMost*s.unit)
	return max(min(fat, max(0.17*gaps, 0.23)*s.unit), 0)
}

// ledge is how far a slash may reach to each side of a leg of a bundle whose
// legs are a step apart, keeping off the next one.
func (s *sketch) ledge(step float64) float64 {
	return min(step-s.line-air/2, ledgeMost*s.unit)
}

// swollen is a leg of a bundle, out from the straight line at its middle.
func (s *sketch) swollen(foot, end canvas.Point, out float64, shape stitch.Shape) curve {
	way := end.Sub(foot)
	if way.Length() < s.line || math.Abs(out) < 1e-6 && foot.X == end.X {
		return curve{foot, end}
	}
	over := across(way.Norm(1))
	if shape == stitch.Puff || shape == stitch.Bobble {
		// A cubic whose handles are level swells by 3/4 of their length.
		v := over.Mul(out * 4 / 3)
		low := 0.2
		if s.shared && shape == stitch.Puff {
			low = 0.6 // slim where others stand beside it
		}
		return curve{foot, foot.Interpolate(end, low).Add(v), foot.Interpolate(end, max(low, 0.8)).Add(v), end}
	}
	return curve{foot, foot.Interpolate(end, 0.5).Add(over.Mul(2 * out)), end}
}

// close draws what a bundle is closed with and returns where its n legs end.
func (s *sketch) close(shape stitch.Shape, n int, fat float64) []canvas.Point {
	ends := make([]canvas.Point, n)
	for i := range ends {
		ends[i] = canvas.Point{Y: s.crest}
	}
	half := min(barHalf*s.unit, s.halfRoom())
	switch shape {
	case stitch.Bobble:
		sag := min(0.15*s.unit, 0.1*s.reach())
		s.stroke(curve{{X: -half, Y: s.crest - sag}, {Y: s.crest + sag}, {X: half, Y: s.crest - sag}})
	case stitch.Popcorn:
		thick := min(half/2, 0.12*s.reach())
		s.oval(canvas.Point{Y: s.crest - thick}, canvas.Point{X: half}, thick)
		for i := range ends {
			x := 0.6 * (2*float64(i)/float64(n-1) - 1)
			ends[i] = canvas.Point{X: x * half, Y: s.crest - thick*(1+math.Sqrt(1-x*x))}
		}
	default:
		s.bar(s.crest, barHalf)
	}
	return ends
}
