package symbols

import "github.com/tdewolff/canvas"

// Increase marks stitches worked into one place: an open wedge that widens the
// way the work grows, its middle at the top. Decrease is the same filled and the
// other way up, so that the two are told apart without colour.
func Increase(a Anchors, pen Pen) Drawing { return wedge(a, pen, -1) }

// Decrease marks stitches worked together; see [Increase].
func Decrease(a Anchors, pen Pen) Drawing { return wedge(a, pen, 1) }

// wedge is a triangle as tall as the unit that points up, or down for -1; pointing
// down it is open.
func wedge(a Anchors, pen Pen, way float64) Drawing {
	s, _, ok := newSign(a, pen)
	if !ok {
		return Drawing{}
	}
	size := s.unit
	d := s.solid
	if way < 0 {
		d, size = s.d, size-s.line
	}
	s.head(d, canvas.Point{Y: way * size / 2}, canvas.Point{Y: way}, size)
	return s.finish()
}
