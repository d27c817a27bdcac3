package ring

import "math"

// Stadium lays rounds about a straight line: two straight sides, and half circles about
// the ends. Equal angles are equal lengths of a side, and equal turns about an end. A
// radius is the distance from the line. Angle 0 is the middle of the end on the right;
// angles grow anticlockwise, or clockwise when Mirrored.
type Stadium struct {
	Long     float64 // of the line, mm
	Side     float64 // the angle that each side takes, under half a turn
	Mirrored bool
}

// End is the angle that each end takes.
func (s Stadium) End() float64 { return Turn/2 - s.Side }

// through is how far an angle is past the beginning of the end at or before it, and whether
// that is the far end.
func (s Stadium) through(angle float64) (rel float64, far bool) {
	rel = math.Mod(angle+s.End()/2, Turn)
	if rel < 0 {
		rel += Turn
	}
	if rel >= Turn/2 {
		return rel - Turn/2, true
	}
	return rel, false
}

// At is the frame at an angle and a distance from the line.
func (s Stadium) At(angle, radius float64) Frame {
	rel, back := s.through(angle)
	x, out := s.Long/2, 0.0
	if rel < s.End() {
		out = (rel/s.End() - 0.5) * math.Pi
	} else {
		x -= (rel - s.End()) / s.Side * s.Long
		out = math.Pi / 2
	}
	sin, cos := math.Sincos(out)
	f := Frame{X: x + radius*cos, Y: -radius * sin, AlongX: -sin, AlongY: -cos, OutX: cos, OutY: -sin}
	if back {
		f = Frame{-f.X, -f.Y, -f.AlongX, -f.AlongY, -f.OutX, -f.OutY}
	}
	if s.Mirrored {
		f.X, f.AlongX, f.OutX = -f.X, -f.AlongX, -f.OutX
	}
	return f
}

// Stretch is how many mm one unit of angle is at an angle and a distance from the line.
func (s Stadium) Stretch(angle, radius float64) float64 {
	if rel, _ := s.through(angle); rel >= s.End() {
		return s.Long / s.Side
	}
	return math.Pi * radius / s.End()
}

// Length is how far along the round at a distance from the line an angle is past the
// beginning of the end on the right, mm; of a turn more, once around more.
func (s Stadium) Length(angle, radius float64) float64 {
	rel := angle + s.End()/2
	halves := math.Floor(rel / (Turn / 2))
	rel -= halves * Turn / 2
	end := math.Pi * radius
	long := end + (rel-s.End())/s.Side*s.Long
	if rel < s.End() {
		long = rel / s.End() * end
	}
	return long + halves*(end+s.Long)
}

// Angle is the angle that is so far along the round; the inverse of Length.
func (s Stadium) Angle(length, radius float64) float64 {
	end := math.Pi * radius
	halves := math.Floor(length / (end + s.Long))
	length -= halves * (end + s.Long)
	rel := s.End() + (length-end)/s.Long*s.Side
	if length < end {
		rel = length / end * s.End()
	}
	return rel + halves*Turn/2 - s.End()/2
}
