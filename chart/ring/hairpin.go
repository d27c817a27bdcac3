package ring

import "math"

// Hairpin lays rows about a straight line, along one side of it, half round its far end
// and back along the other: as a stadium that is open at one end. A stitch is placed by
// how far along its row it is, from the open end of the first side, and its distance
// from the line. Before its beginning and after its end the sides go straight on.
type Hairpin struct {
	Long     float64 // of the line, mm
	Side     float64 // of each side, along the rows
	End      float64 // of the half circle, along the rows
	Mirrored bool    // the first side runs to the right
}

// At is the frame at a distance along the row and from the line. The line's middle is
// the origin; the first side lies above it and runs to the left.
func (h Hairpin) At(along, radius float64) Frame {
	var f Frame
	switch over := along - h.Side; {
	case over <= 0:
		f = Frame{X: h.Long/2 - along*h.Long/h.Side, Y: -radius, AlongX: -1, OutY: -1}
	case over >= h.End:
		f = Frame{X: -h.Long/2 + (over-h.End)*h.Long/h.Side, Y: radius, AlongX: 1, OutY: 1}
	default:
		sin, cos := math.Sincos(math.Pi/2 + over/h.End*math.Pi)
		f = Frame{X: radius*cos - h.Long/2, Y: -radius * sin, AlongX: -sin, AlongY: -cos, OutX: cos, OutY: -sin}
	}
	if h.Mirrored {
		f.X, f.AlongX, f.OutX = -f.X, -f.AlongX, -f.OutX
	}
	return f
}

// Stretch is how many mm one along the row is at a distance from the line, on the whole.
func (h Hairpin) Stretch(radius float64) float64 {
	return (2*h.Long + math.Pi*radius) / (2*h.Side + h.End)
}
