package schematic

import (
	"fmt"
	"math"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Measures of the letters at edges, mm on paper.
const (
	tagRadius = 2.3
	tagOff    = 4.2 // from the edge to the middle of the letter
)

// tag is a letter beside an edge, at a place in millimetres of the piece; the
// edges of one letter meet.
type tag struct {
	letter string
	at     point
	side   tagSide
}

// tagSide is where a letter stands: to the right of the end of an edge, so much
// higher or lower that two of them keep apart, under the edge, or on it.
type tagSide uint8

const (
	tagHigher tagSide = iota
	tagLower
	tagUnder
	tagOn // on the edge itself
)

// name is what a piece is called, written within it: about a place, where there
// is so much room; in millimetres of the piece.
type name struct {
	text string
	at   point
	room float64
}

// assembly shows a part and the strip that it is picked up along, apart, and
// which edge meets which. l is the part laid flat.
func (s *sheet) assembly(i, strip int, l []level, closes bool) {
	m := s.drawn()
	band := m.done.Pieces[strip]
	part, stripName := m.fabric.Parts[i].Name, m.fabric.Parts[strip].Name
	long := band.Length / 2
	foot := l[len(l)-1]
	wide := math.Max(widest(l), long)
	gap := 0.22 * foot.depth
	top := foot.depth + gap
	v := &view{id: "assembly", title: "Assembly: like letters meet", width: wide, height: top + band.Width}
	var lefts, rights []point
	for _, n := range l {
		lefts = append(lefts, point{X: (wide - n.width) / 2, Y: n.depth})
		rights = append(rights, point{X: (wide + n.width) / 2, Y: n.depth})
	}
	v.outline = append(v.outline, rights...)
	for k := len(lefts) - 1; k >= 0; k-- {
		v.outline = append(v.outline, lefts[k])
	}
	last := len(l) - 1
	x0, x1 := (wide-long)/2, (wide+long)/2
	a, b, c, d := point{X: x0, Y: top}, point{X: x1, Y: top}, point{X: x1, Y: v.height}, point{X: x0, Y: v.height}
	v.also = [][]point{{a, b, c, d}}
	v.edges = []edge{{plain, lefts}, {plain, rights}, {pickUp, []point{lefts[last], rights[last]}},
		{pickUp, []point{a, b}}, {plain, []point{b, c, d, a}},
		{seam, []point{{X: wide / 2, Y: top}, {X: wide / 2, Y: v.height}}},
		{meets, []point{lefts[last], a}}, {meets, []point{rights[last], b}}}
	if l[0].width > 0 {
		v.edges = append(v.edges, edge{map[bool]kind{true: draws}[closes], []point{lefts[0], rights[0]}})
	}
	v.names = []name{{part, point{X: wide / 2, Y: 0.6 * foot.depth}, foot.width}, {stripName, point{X: x0 + long/4, Y: top + band.Width/2}, long / 2}}
	v.tags = []tag{{"A", point{X: wide, Y: foot.depth}, tagHigher}, {"A", point{X: wide, Y: top}, tagLower}, {"B", point{X: wide / 2, Y: v.height}, tagUnder}}
	v.notes = []string{fmt.Sprintf("A: the first round of the %s is worked along the row ends of the %s.", part, stripName),
		fmt.Sprintf("B: the two short ends of the %s are joined to a ring.", stripName)}
	s.show(v)
}

// draw draws the letter so that its edge is at a place on paper.
func (t *tag) draw(g *scene.Group, at point) {
	switch t.side {
	case tagUnder:
		at.Y += tagOff
	case tagHigher:
		at.X, at.Y = at.X+tagOff, at.Y-tagRadius-0.3
	case tagLower:
		at.X, at.Y = at.X+tagOff, at.Y+tagRadius+0.3
	}
	circle := ellipse(2*tagRadius, 2*tagRadius)
	for i, p := range circle {
		circle[i] = point{X: at.X - tagRadius + p.X, Y: at.Y - tagRadius + p.Y}
	}
	if t.side == tagOn {
		g.Add(&scene.Path{Style: scene.Filled(scene.RGB(0xffffff)), D: polygon(circle...)})
	}
	g.Add(&scene.Path{Style: scene.Stroked(ink, 0.25), D: polygon(circle...)})
	g.Add(&scene.Text{X: hundredth(at.X), Y: hundredth(at.Y + typeface.CapHeight(valueSize)/2), Size: valueSize, Bold: true, Align: scene.Centre, Colour: ink, String: t.letter})
}

// draw writes the name about a place on paper, where it has the room.
func (n *name) draw(g *scene.Group, at point, scale float64) {
	if typeface.Width(n.text, valueSize, false, false) > n.room/scale-2 {
		return
	}
	g.Add(&scene.Text{X: hundredth(at.X), Y: hundredth(at.Y + typeface.CapHeight(valueSize)/2), Size: valueSize, Align: scene.Centre, Colour: words, String: n.text})
}
