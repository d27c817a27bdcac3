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

// Line lays rows on straight lines, one above another. A stitch is placed by how
// far along its row it is, in the fabric, and its height on paper.
type Line struct {
	Scale float64 // millimetres on paper to one along the row
	Left  bool    // rows run to the left
	Wave  *Wave   // that all rows follow; nil for straight ones
}

// At is the frame at a distance along the row and a height.
func (l Line) At(along, height float64) Frame {
	f := Frame{X: l.Scale * along, Y: -height, AlongX: 1, OutY: -1}
	if l.Wave != nil {
		rise, slope := l.Wave.At(along)
		f.Y -= rise
		// Upright on the wave.
		t := slope / l.Scale
		n := math.Hypot(1, t)
		f.AlongX, f.AlongY, f.OutX, f.OutY = 1/n, -t/n, -t/n, -1/n
	}
	if l.Left {
		f.X, f.AlongX, f.OutX = -f.X, -f.AlongX, -f.OutX
	}
	return f
}

// Circle lays rounds on circles. Angles are counted from Start (radians,
// anticlockwise from the right), anticlockwise, or clockwise when Mirrored.
type Circle struct {
	Start    float64
	Mirrored bool
	// Wave is what all rounds follow, as the logarithm of how far out they are, over a
	// turn from the start; nil for true circles.
	Wave *Wave
	// Round is the radius up to which rounds are circles all the same, Full that from
	// which they follow the wave.
	Round, Full float64
}

// At is the frame at an angle from the start and a distance from the centre.
func (c Circle) At(angle, radius float64) Frame {
	s, k := math.Sincos(c.Start + angle)
	f := Frame{AlongX: -s, AlongY: -k, OutX: k, OutY: -s}
	if c.Wave != nil {
		turn := math.Mod(angle, Turn)
		if turn < 0 {
			turn += Turn
		}
		rise, slope := c.Wave.At(turn)
		part := 1.0
		if radius < c.Full {
			part = math.Max(radius-c.Round, 0) / (c.Full - c.Round)
		}
		rise, slope = rise*part, slope*part
		radius *= math.Exp(rise)
		// Upright on the wave.
		n := math.Hypot(1, slope)
		f.AlongX, f.AlongY = (f.AlongX+slope*k)/n, (f.AlongY-slope*s)/n
		f.OutX, f.OutY = (k+slope*s)/n, (-s+slope*k)/n
	}
	f.X, f.Y = radius*k, -radius*s
	if c.Mirrored {
		f.X, f.AlongX, f.OutX = -f.X, -f.AlongX, -f.OutX
	}
	return f
}
