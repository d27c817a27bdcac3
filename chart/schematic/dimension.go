package schematic

import (
	"math"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Measures of dimension lines, mm on paper: thin lines, closed filled arrowheads
// of 20°, extension lines that begin off the outline and end beyond the
// dimension line, values along their line, read from below or from the right
// (ISO 129-1).
const (
	thin      = 0.18
	headLong  = 2.2
	headHalf  = 0.39 // half its width
	gap       = 1.2  // between outline and extension line
	beyond    = 1.2  // of the extension line
	firstLine = 6.5  // from outline to dimension line
	valueAir  = 2.3  // between dimension line and value
	valueSize = 2.7
	pitch     = valueSize * leading
	longest   = 64.0 // of a line of values
)

// side is where a dimension stands.
type side uint8

const (
	above side = iota
	left
	below
)

// dim is one dimension, from one end to another along a side of a view.
type dim struct {
	side     side
	from, to float64 // mm of the piece, along the side
	// off are how far in from the box's edge the two ends of the outline lie,
	// mm of the piece.
	off   [2]float64
	lines []string
}

// newDim sets the values of a dimension.
func newDim(at side, from, to float64, values []float64) dim {
	cm, in := figures(values)
	d := dim{side: at, from: from, to: to}
	d.lines = append(typeface.Wrap(cm, valueSize, false, longest), typeface.Wrap(in, valueSize, false, longest)...)
	return d
}

// deep is how much room the dimension takes off the outline, mm on paper.
func (d *dim) deep() float64 {
	return firstLine + valueAir + float64(len(d.lines)-1)*pitch + typeface.Ascent(valueSize)
}

// long is the length of its values, mm on paper.
func (d *dim) long() float64 {
	w := 0.0
	for _, l := range d.lines {
		w = math.Max(w, typeface.Width(l, valueSize, false, false))
	}
	return w
}

// draw draws the dimension so that its side's edge of the outline is at edge.
// at takes a place along the side and one out from the edge to the page.
func (d *dim) draw(g *scene.Group, at func(along, out float64) point, scale float64) {
	a, b := d.from/scale, d.to/scale
	for i, along := range []float64{a, b} {
		g.Add(&scene.Path{Style: scene.Stroked(words, thin), D: line(at(along, gap-d.off[i]/scale), at(along, firstLine+beyond))})
	}
	if b-a >= 3*headLong {
		g.Add(&scene.Path{Style: scene.Stroked(words, thin), D: line(at(a+headLong/2, firstLine), at(b-headLong/2, firstLine))})
		head(g, at, a, 1)
		head(g, at, b, -1)
	} else { // from outside, where there is no room within
		g.Add(&scene.Path{Style: scene.Stroked(words, thin), D: line(at(a-2.5*headLong, firstLine), at(b+2.5*headLong, firstLine))})
		head(g, at, a, -1)
		head(g, at, b, 1)
	}
	mid := (a + b) / 2
	for i, l := range d.lines {
		t := &scene.Text{Size: valueSize, Align: scene.Centre, Colour: ink, String: l}
		n := float64(i)
		last := float64(len(d.lines) - 1)
		p := at(mid, firstLine+valueAir+(last-n)*pitch)
		if d.side == below {
			p = at(mid, firstLine+valueAir+typeface.CapHeight(valueSize)+n*pitch)
		}
		if d.side == left {
			t.Angle = -90 // read from the right
		}
		t.X, t.Y = hundredth(p.X), hundredth(p.Y)
		g.Add(t)
	}
}

// head is an arrowhead with its point at a place, towards lower places when
// back is 1.
func head(g *scene.Group, at func(along, out float64) point, tip, back float64) {
	g.Add(&scene.Path{Style: scene.Filled(words), D: polygon(at(tip, firstLine), at(tip+back*headLong, firstLine-headHalf), at(tip+back*headLong, firstLine+headHalf))})
}
