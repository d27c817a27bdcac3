package symbols

import "github.com/tdewolff/canvas"

// Increase marks stitches worked into one place: an open wedge that widens the
// way the work grows, its middle at the top. Decrease is the same filled and the
// other way up, so that the two are told apart without colour.
func Increase(a Anchors, pen Pen) Drawing { return wedge(a, pen, -1) }

// Decrease marks stitches worked together; see [Increase].
func Decrease(a Anchors, pen Pen) Drawing { return wedge(a, pen, 1) }

// Marker is where a stitch marker is put: a pin that hangs from the top.
func Marker(a Anchors, pen Pen) Drawing {
	s, _, ok := newSign(a, pen)
	if !ok {
		return Drawing{}
	}
	half, tall := 0.13*s.unit, 0.5*s.unit
	s.stroke(curve{{X: -half, Y: -0.3 * tall}, {X: -half, Y: -tall}},
		curve{{X: -half, Y: -tall}, {X: -half, Y: -tall - 1.3*half}, {X: half, Y: -tall - 1.3*half}, {X: half, Y: -tall}},
		curve{{X: half, Y: -tall}, {X: half, Y: -half}},
		curve{{X: half, Y: -half}, {X: half, Y: 0.5 * half}, {X: -half, Y: 0.5 * half}, {X: -half, Y: -half}})
	return s.finish()
}

// ColourChange is where the yarn is changed for one of another colour: a lozenge
// about the top, half of it filled, on the side that the work goes on to.
func ColourChange(a Anchors, pen Pen) Drawing {
	s, along, ok := newSign(a, pen)
	if !ok {
		return Drawing{}
	}
	half := 0.24 * s.unit
	up, down, on := canvas.Point{Y: 1.3 * half}, canvas.Point{Y: -1.3 * half}, canvas.Point{X: half * along}
	s.stroke(curve{up, on.Neg()}, curve{on.Neg(), down}, curve{down, on}, curve{on, up})
	s.d.Close()
	s.solid.MoveTo(s.page(up))
	s.solid.LineTo(s.page(on))
	s.solid.LineTo(s.page(down))
	s.solid.Close()
	return s.finish()
}

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
