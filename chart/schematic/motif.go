package schematic

import (
	"math"

	"whorl/geometry"
)

// lies tells whether a part is drawn flat: it lies so, or is meant to, which the crown
// of a hat is not.
func (s *sheet) lies(i int) bool {
	piece := s.drawn().done.Pieces[i]
	return piece.Flat || piece.Cups && !s.o.Hat
}

// motif is a piece that lies flat: a circle, or the regular polygon of its
// corners about it, whose sides are as far from the centre as the piece is deep.
func (s *sheet) motif(i int, name string) {
	m := s.drawn()
	depth := m.done.Pieces[i].Depth
	times := func(k float64) []float64 {
		return s.each(func(m *measured) float64 { return k * m.done.Pieces[i].Depth })
	}
	k := geometry.Corners(m.fabric.Parts[i])
	var v *view
	if k == 0 {
		across := s.each(func(m *measured) float64 { return m.done.Pieces[i].Across })
		how := ", laid flat"
		if m.done.Pieces[i].Cups {
			how = ", from above"
		}
		v = s.circle("motif", name+how, across, across[s.o.Drawn])
		v.cups = m.done.Pieces[i].Cups
		s.addFacts(name, Fact{"Across", across},
			Fact{"Around", s.each(func(m *measured) float64 { return m.done.Pieces[i].Widest })})
	} else {
		v = polygonal("motif", name+", laid flat", k, depth, times)
		s.addFacts(name, Fact{"Each side", times(geometry.PolygonSide(1, k))})
	}
	s.turn(v, i)
	s.show(v)
}

// polygonal is a regular polygon with a side at its foot.
func polygonal(id, title string, k int, inner float64, times func(float64) []float64) *view {
	n := float64(k)
	outer := 1 / math.Cos(math.Pi/n)
	var l []point
	low, high, least, most := 0.0, 0.0, 0.0, 0.0
	for j := range k {
		a := math.Pi/2 + math.Pi/n*float64(2*j+1)
		p := point{X: outer * math.Cos(a), Y: outer * math.Sin(a)}
		low, high = math.Min(low, p.X), math.Max(high, p.X)
		least, most = math.Min(least, p.Y), math.Max(most, p.Y)
		l = append(l, p)
	}
	v := &view{id: id, title: title, width: (high - low) * inner, height: (most - least) * inner, rests: atCentre}
	for _, p := range l {
		v.outline = append(v.outline, point{X: (p.X - low) * inner, Y: (p.Y - least) * inner})
	}
	v.edges = []edge{{plain, closed(v.outline)}}
	// Where the corners lie that the extension lines begin at.
	at := func(near func(point) float64) (off float64, along float64) {
		best := v.outline[0]
		for _, p := range v.outline {
			if near(p) < near(best)-1e-6 {
				best = p
			}
		}
		return best.X, best.Y
	}
	_, first := at(func(p point) float64 { return p.X*1e3 + p.Y })
	_, second := at(func(p point) float64 { return -p.X*1e3 + p.Y })
	d := newDim(above, 0, v.width, times(high-low))
	d.off = [2]float64{first, second}
	v.dims = append(v.dims, d)
	upper, _ := at(func(p point) float64 { return p.Y*1e3 + p.X })
	lower, _ := at(func(p point) float64 { return -p.Y*1e3 + p.X })
	d = newDim(left, 0, v.height, times(most-least))
	d.off = [2]float64{upper, lower}
	v.dims = append(v.dims, d)
	return v
}

// circle is a round view with its diameter.
func (s *sheet) circle(id, title string, across []float64, diameter float64) *view {
	v := &view{id: id, title: title, width: diameter, height: diameter, rests: atCentre}
	r := diameter / 2
	v.outline = ellipse(diameter, diameter)
	v.edges = []edge{{plain, closed(v.outline)}}
	d := newDim(above, 0, diameter, across)
	d.off = [2]float64{r, r}
	v.dims = append(v.dims, d)
	return v
}

// turn sets the direction of work of a circle that is seen from its right side:
// anticlockwise for the right-handed from the centre out.
func (s *sheet) turn(v *view, i int) {
	m := s.drawn()
	for _, r := range m.fabric.Parts[i].Rounds {
		if r.Reversed {
			return
		}
	}
	sign := 1.0
	if !m.done.Pieces[i].CrownFirst {
		sign = -1
	}
	if s.o.LeftHanded {
		sign = -sign
	}
	r := v.width / 2
	for k := range 37 {
		a := sign * math.Pi * (float64(k)/36 - 0.5) * 0.9
		v.way = append(v.way, point{X: r + 0.62*r*math.Sin(a), Y: r + 0.62*r*math.Cos(a)})
	}
}
