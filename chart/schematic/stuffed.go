package schematic

import (
	"math"

	"whorl/geometry"
)

// A ball grows from its centre and closes in to less than mostOpen of its
// middle, with nothing but small dents on the way.
const (
	mostOpen = 0.35
	dented   = 0.05
)

// stuffed is how a part comes out when it is closed and stuffed, if it is a
// ball.
func stuffed(m *measured, i int) (across, tall float64, ok bool) {
	piece := m.done.Pieces[i]
	if !piece.CrownFirst || piece.Hole > 0 || piece.Brim > mostOpen*piece.Widest || geometry.Corners(m.fabric.Parts[i]) > 0 {
		return 0, 0, false
	}
	most, least := 0.0, math.Inf(1) // since it began to close
	for k, r := range m.fabric.Parts[i].Rounds {
		c := m.form.Parts[i].Rounds[k].Circumference
		if r.Row || r.Number == 0 || c <= 0 {
			continue
		}
		if c < (1-dented)*most {
			least = math.Min(least, c)
		}
		if c > least*(1+dented) {
			return 0, 0, false // it swells again
		}
		most = math.Max(most, c)
	}
	// The last round is drawn closed.
	return geometry.Stuffed(piece.Widest, piece.Depth+piece.Brim/(2*math.Pi))
}

// ball is a closed piece, seen from the side when it is stuffed.
func (s *sheet) ball(i int, name string, across, tall float64) {
	of := func(tall bool) []float64 {
		return s.each(func(m *measured) float64 {
			a, t, _ := stuffed(m, i)
			if tall {
				return t
			}
			return a
		})
	}
	v := &view{id: "ball", title: name + ", stuffed", width: across, height: tall, rests: atCentre, stuffed: true}
	v.outline = ellipse(across, tall)
	v.edges = []edge{{plain, closed(v.outline)}}
	d := newDim(above, 0, across, of(false))
	d.off = [2]float64{tall / 2, tall / 2}
	v.dims = append(v.dims, d)
	d = newDim(left, 0, tall, of(true))
	d.off = [2]float64{across / 2, across / 2}
	v.dims = append(v.dims, d)
	v.way = upOrDown(across/2, tall, true)
	s.show(v)
	s.addFacts(name, Fact{"Around", s.each(func(m *measured) float64 { return m.done.Pieces[i].Widest })},
		Fact{"Across, stuffed", of(false)}, Fact{"Tall, stuffed", of(true)},
		Fact{"Depth along the fabric", s.each(func(m *measured) float64 { return m.done.Pieces[i].Depth })},
		Fact{"Left to draw closed", s.each(func(m *measured) float64 { return m.done.Pieces[i].Brim })})
}

// ellipse is an ellipse in a box of that width and height.
func ellipse(width, height float64) (l []point) {
	const steps = 144
	for k := range steps {
		a := 2 * math.Pi * float64(k) / steps
		l = append(l, point{X: width / 2 * (1 + math.Cos(a)), Y: height / 2 * (1 + math.Sin(a))})
	}
	return l
}

// closed is an outline as a line that comes round to its beginning.
func closed(l []point) []point { return append(append([]point(nil), l...), l[0]) }
