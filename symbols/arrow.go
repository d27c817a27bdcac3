package symbols

import "github.com/tdewolff/canvas"

// Arrow tells the direction of work at the start of a round or row: a short
// arrow along the round, its middle at the top.
func Arrow(a Anchors, pen Pen) Drawing {
	s, along, ok := newSign(a, pen)
	if !ok {
		return Drawing{}
	}
	half, head := 0.5*s.unit, 0.34*s.unit
	s.stroke(curve{{X: -half * along}, {X: (half - head/2) * along}})
	s.head(s.solid, canvas.Point{X: half * along}, canvas.Point{X: along}, head)
	return s.finish()
}

// Turn tells that the work is turned at the end of a row: an arrow that bends
// back from along the round, opening against the direction of work, its middle
// at the top.
func Turn(a Anchors, pen Pen) Drawing {
	s, along, ok := newSign(a, pen)
	if !ok {
		return Drawing{}
	}
	r, head := 0.3*s.unit, 0.3*s.unit
	from, to := canvas.Point{X: -r * along, Y: -r}, canvas.Point{X: -r * along, Y: r}
	out := canvas.Point{X: 1.2 * r * along}
	s.stroke(curve{from, from.Add(out), canvas.Point{X: 0.4 * r * along, Y: -r}.Add(out.Mul(0.5)), {X: r * along}},
		curve{{X: r * along}, canvas.Point{X: 0.4 * r * along, Y: r}.Add(out.Mul(0.5)), to.Add(out), to})
	s.head(s.solid, to.Sub(canvas.Point{X: head / 2 * along}), canvas.Point{X: -along}, head)
	return s.finish()
}

// Attach tells that yarn is joined: an open triangle pointing along the round.
// FastenOff is the same filled: the yarn is cut.
func Attach(a Anchors, pen Pen) Drawing { return triangle(a, pen, false) }

// FastenOff is the filled triangle; see [Attach].
func FastenOff(a Anchors, pen Pen) Drawing { return triangle(a, pen, true) }

func triangle(a Anchors, pen Pen, filled bool) Drawing {
	s, along, ok := newSign(a, pen)
	if !ok {
		return Drawing{}
	}
	size := 0.5 * s.unit
	d := s.solid
	if !filled {
		d, size = s.d, size-s.line
	}
	s.head(d, canvas.Point{X: size / 2 * along}, canvas.Point{X: along}, size)
	return s.finish()
}

// newSign is a sketch for a sign about the top, and which way of its frame the
// work runs: 1 or -1.
func newSign(a Anchors, pen Pen) (s *sketch, along float64, ok bool) {
	a.Base = nil
	s, ok = newSketch(a, pen, 0)
	if ok && s.right.Dot(a.Along) < 0 {
		return s, -1, true
	}
	return s, 1, ok
}

// head adds to d the triangle of an arrow's head that ends at tip.
func (s *sketch) head(d *canvas.Path, tip, way canvas.Point, long float64) {
	back, over := tip.Sub(way.Mul(long)), across(way).Mul(long*0.5)
	d.MoveTo(s.page(tip))
	d.LineTo(s.page(back.Add(over)))
	d.LineTo(s.page(back.Sub(over)))
	d.Close()
}
