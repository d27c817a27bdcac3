package ring

import "math"

// Frame is a place on a ring: a point in the chart's own millimetres (y down,
// the centre at the origin) with the unit vectors along the ring, in the
// direction of rising angles, and outwards.
type Frame struct {
	X, Y           float64
	AlongX, AlongY float64
	OutX, OutY     float64
}

// Shape is the outline that rounds are laid on. A stitch is placed by its share
// of the turn and its distance out.
type Shape interface {
	At(angle, radius float64) Frame
}

// Circle lays rounds on circles. Angles are counted from Start (radians,
// anticlockwise from the right), anticlockwise, or clockwise when Mirrored.
type Circle struct {
	Start    float64
	Mirrored bool
}

// At is the frame at an angle from the start and a distance from the centre.
func (c Circle) At(angle, radius float64) Frame {
	s, k := math.Sincos(c.Start + angle)
	f := Frame{X: radius * k, Y: -radius * s, AlongX: -s, AlongY: -k, OutX: k, OutY: -s}
	if c.Mirrored {
		f.X, f.AlongX, f.OutX = -f.X, -f.AlongX, -f.OutX
	}
	return f
}
