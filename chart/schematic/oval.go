package schematic

import (
	"math"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// oval tells whether a part is worked around both sides of a chain.
func oval(p *fabric.Part) bool {
	return len(p.Rounds) > 1 && slices.ContainsFunc(p.Rounds[1].Stitches, func(s fabric.Stitch) bool {
		return slices.ContainsFunc(s.On, func(on fabric.Place) bool { return on.Into == stitch.Underside })
	})
}

// liesFlat is the least flatness of a round that lies flat about the one below.
const liesFlat = 0.5

// base is the flat base of an oval: its width, that of its rounds to either side
// of the chain, its length, which makes it as long around as its last round is,
// and the depth of what stands up around it.
func base(m *measured, i int) (length, width, sides float64) {
	rounds := m.form.Parts[i].Rounds
	last := 1
	for last+1 < len(rounds) && rounds[last+1].Flatness >= liesFlat {
		last++
	}
	r := rounds[last].Level
	straight := math.Max(0, rounds[last].Circumference/2-math.Pi*r)
	return straight + 2*r, 2 * r, math.Max(0, m.done.Pieces[i].Depth-r)
}

// oval is a piece worked around both sides of a chain: its base from above, and
// what stands up around it laid flat.
func (s *sheet) oval(i int, name string) {
	m := s.drawn()
	lengths := s.each(func(m *measured) float64 { l, _, _ := base(m, i); return l })
	widths := s.each(func(m *measured) float64 { _, w, _ := base(m, i); return w })
	sides := s.each(func(m *measured) float64 { _, _, d := base(m, i); return d })
	around := s.each(func(m *measured) float64 { return m.done.Pieces[i].Widest })
	length, width, deep := base(m, i)
	stands := deep > 0.02*width
	title := name + ", laid flat"
	if stands {
		title = name + ", base from above"
	}
	v := &view{id: "oval", title: title, width: length, height: width, rests: atCentre}
	r := width / 2
	const steps = 36
	for k := range steps + 1 {
		a := math.Pi * (float64(k)/steps - 0.5)
		v.outline = append(v.outline, point{X: length - r + r*math.Cos(a), Y: r + r*math.Sin(a)})
	}
	for k := range steps + 1 {
		a := math.Pi * (float64(k)/steps + 0.5)
		v.outline = append(v.outline, point{X: r + r*math.Cos(a), Y: r + r*math.Sin(a)})
	}
	// The chain that it is begun on.
	v.edges = []edge{{plain, closed(v.outline)}, {start, []point{{X: r, Y: r}, {X: length - r, Y: r}}}}
	d := newDim(above, 0, length, lengths)
	d.off = [2]float64{r, r}
	v.dims = append(v.dims, d)
	d = newDim(left, 0, width, widths)
	d.off = [2]float64{r, r}
	v.dims = append(v.dims, d)
	s.show(v)
	facts := []Fact{{"Length", lengths}, {"Width", widths}, {"Around", around}}
	if stands {
		facts[0].Name, facts[1].Name = "Base, length", "Base, width"
		facts = append(facts, Fact{"Sides, depth", sides})
		l := plumb(cutAway(laidFlat(m, i), m.done.Pieces[i].Depth-deep))
		brim := s.each(func(m *measured) float64 { return m.done.Pieces[i].Brim })
		u := s.tube("sides", name+", sides laid flat", l, halves(around), halves(brim), sides, false)
		u.flat = true
		u.way = upOrDown(u.width/2, deep, true)
		s.show(u)
	}
	facts = append(facts, Fact{"Depth along the fabric", s.each(func(m *measured) float64 { return m.done.Pieces[i].Depth })})
	s.addFacts(name, facts...)
}

// cutAway is the levels below a depth, from there on.
func cutAway(l []level, depth float64) []level {
	out := []level{{0, widthAt(l, depth)}}
	for _, n := range l {
		if n.depth > depth+1e-6 {
			out = append(out, level{n.depth - depth, n.width})
		}
	}
	return out
}
