package schematic

import (
	"fmt"
	"math"
	"strings"

	"whorl/patterns/fabric"
)

// kind is what an edge of a piece is.
type kind uint8

const (
	plain  kind = iota
	fold        // folded here
	seam        // sewn or joined here
	pickUp      // stitches are picked up here
	draws       // drawn closed
	start       // the chain that the piece is begun on
	meets       // no edge: between two that meet
)

// edge is a line of an outline, in millimetres of the piece.
type edge struct {
	kind kind
	line []point
}

// view is one outline on the sheet, in millimetres of the piece from the left
// and the top.
type view struct {
	id, title     string
	of            int // 1 + the part that it is of, 0 for none in particular
	width, height float64
	outline       []point
	edges         []edge
	dims          []dim
	// also are outlines of other pieces in the same view; tags are letters at
	// edges, names are those of the pieces, and notes lines under it all.
	also  [][]point
	tags  []tag
	names []name
	notes []string
	// way is the direction of work, from its first point to its last; none when
	// the rounds go to and fro.
	way []point
	// flat is set for what is worked in rounds and laid flat.
	flat bool
	// shaped is set for rows of different lengths, stuffed for a ball, and domed
	// for a crown that is drawn rounded.
	shaped, stuffed, domed bool
	// cups is set for what is drawn flat and does not lie so by itself.
	cups bool
	// inner are the outlines of all sizes where they are nested, and rests says
	// where these meet.
	inner  []nested
	labels []label
	rests  rest
}

// choose finds the views of the pieces and their measurements.
func (s *sheet) choose() error {
	m := s.drawn()
	only := -1
	for i, p := range m.fabric.Parts {
		if s.o.Part != "" && strings.EqualFold(p.Name, s.o.Part) {
			only = i
		}
	}
	if s.o.Part != "" && only < 0 {
		return fmt.Errorf("there is no part %s to draw", s.o.Part)
	}
	body := m.body()
	for i := range m.fabric.Parts {
		if only >= 0 && i != only {
			continue
		}
		piece, before := m.done.Pieces[i], len(s.views)
		switch {
		case piece.Rows && piece.Length > 0 && piece.Width > 0:
			s.flat(i)
		case !piece.Rows && piece.Widest > 0 && piece.Depth > 0:
			if err := s.rounds(i, i == body); err != nil {
				return err
			}
		}
		if len(s.views) > before {
			s.views[before].of = i + 1
		}
	}
	if s.o.Part == "" {
		s.letters()
	}
	ids := map[string]int{}
	for _, v := range s.views {
		if ids[v.id]++; ids[v.id] > 1 {
			v.id += fmt.Sprint("-", ids[v.id])
		}
	}
	if len(s.views) == 0 {
		return fmt.Errorf("there is nothing to draw: no piece has both a length and a width")
	}
	return nil
}

// rounds draws a part worked in rounds; whole is set when it stands for the
// piece with the strip at its edge.
func (s *sheet) rounds(i int, whole bool) error {
	m := s.drawn()
	p, piece := m.fabric.Parts[i], m.done.Pieces[i]
	name := p.Name
	if name == "" {
		name = "Piece"
	}
	l := laidFlat(m, i)
	if len(l) < 2 {
		return fmt.Errorf("%s has no rounds to draw", name)
	}
	across, tall, ball := stuffed(m, i)
	switch {
	case oval(p):
		s.oval(i, name)
		return nil
	case s.lies(i):
		s.motif(i, name)
		return nil
	case ball && !s.o.Hat:
		s.ball(i, name, across, tall)
		return nil
	}
	l, domed := rounded(l)
	of := func(get func(m *measured) float64) []float64 { return s.each(get) }
	strip := -1
	if whole {
		strip = m.strip(i)
	}
	suffix := ", laid flat"
	depth := of(func(m *measured) float64 { return m.done.Pieces[i].Depth })
	brim := of(func(m *measured) float64 { return m.done.Pieces[i].Brim })
	alone := l
	if strip >= 0 {
		l = withStrip(l, m.done.Pieces[strip].Length, m.done.Pieces[strip].Width)
		depth = of(func(m *measured) float64 { return m.done.Depth })
		brim = of(func(m *measured) float64 { return m.done.Brim })
	}
	around := of(func(m *measured) float64 { return m.done.Pieces[i].Widest })
	hole := of(func(m *measured) float64 { return m.done.Pieces[i].Hole })
	if strip >= 0 && s.o.Hat {
		suffix = ", laid flat, brim down"
	}
	title := name
	if whole && s.o.Hat {
		title = "Hat"
	}
	add := func(what string, values []float64) { s.addFacts(name, Fact{what, values}) }
	add("Around", around)
	add("Laid flat", halves(around))
	if unlike(brim, around) {
		add(map[bool]string{true: "Brim, relaxed", false: "Edge, relaxed"}[s.o.Hat], brim)
	}
	add("Depth", depth)
	// An opening of half the width or more is that of a tube.
	closes := s.o.Hat && hole[s.o.Drawn] > 0 && hole[s.o.Drawn] < around[s.o.Drawn]/2
	if closes {
		add("Left to draw closed", hole)
	}
	if whole {
		s.worked(depth, brim)
	}
	v := s.tube("flat", title+suffix, l, halves(around), halves(brim), depth, closes)
	bodyDepth := piece.Depth
	if strip >= 0 {
		y := bodyDepth
		w := widthAt(l, y)
		v.edges = append(v.edges, edge{pickUp, []point{{X: (v.width - w) / 2, Y: y}, {X: (v.width + w) / 2, Y: y}}})
	}
	v.flat, v.domed = true, domed
	v.way = upOrDown(v.width/2, bodyDepth, piece.CrownFirst)
	s.show(v)

	if strip >= 0 && s.o.Hat {
		s.turnedUp(l, strip, closes)
	}
	if whole && s.o.Hat {
		s.fromAbove(i)
	}
	if strip >= 0 && s.o.Part == "" && !s.o.Nested {
		s.assembly(i, strip, alone, closes)
	}
	return nil
}

// addFacts adds measurements of a part, by its name where there are several.
func (s *sheet) addFacts(name string, facts ...Fact) {
	name, _, _ = strings.Cut(name, " (") // how many are made
	for _, f := range facts {
		if s.several() {
			f.Name = name + ", " + strings.ToLower(f.Name[:1]) + f.Name[1:]
		}
		s.facts = append(s.facts, f)
	}
}

// several tells whether more than one part is worked in rounds.
func (s *sheet) several() bool {
	n := 0
	for _, p := range s.drawn().done.Pieces {
		if !p.Rows && p.Widest > 0 {
			n++
		}
	}
	return n > 1
}

// worked adds what a piece measures with the rounds that are worked on from it
// in other parts.
func (s *sheet) worked(depth, brim []float64) {
	if d := s.each(func(m *measured) float64 { return m.done.Depth }); unlike(d, depth) {
		s.facts = append(s.facts, Fact{"Depth in all", d})
	}
	if b := s.each(func(m *measured) float64 { return m.done.Brim }); unlike(b, brim) {
		s.facts = append(s.facts, Fact{"Edge in all, relaxed", b})
	}
}

// upOrDown is the direction of work of rounds on a piece drawn crown up.
func upOrDown(x, depth float64, down bool) []point {
	a, b := point{X: x, Y: 0.72 * depth}, point{X: x, Y: 0.42 * depth}
	if down {
		a, b = b, a
	}
	return []point{a, b}
}

// tube is the view of levels with their dimensions: the width above, the edge
// below where it is another, the depth at the left.
func (s *sheet) tube(id, title string, l []level, width, brim, depth []float64, closes bool) *view {
	wide := widest(l)
	last := l[len(l)-1]
	v := &view{id: id, title: title, width: wide, height: last.depth}
	var lefts, rights []point
	at := 0.0
	found := false
	for _, n := range l {
		lefts = append(lefts, point{X: (wide - n.width) / 2, Y: n.depth})
		rights = append(rights, point{X: (wide + n.width) / 2, Y: n.depth})
		if !found && n.width > wide-1e-6 {
			at, found = n.depth, true
		}
	}
	v.outline = append(v.outline, rights...)
	for k := len(lefts) - 1; k >= 0; k-- {
		v.outline = append(v.outline, lefts[k])
	}
	top := plain
	if closes {
		top = draws
	}
	n := len(l) - 1
	v.edges = []edge{{plain, lefts}, {plain, rights}, {plain, []point{lefts[n], rights[n]}}}
	if l[0].width > 0 {
		v.edges = append(v.edges, edge{top, []point{lefts[0], rights[0]}})
	}
	d := newDim(above, 0, wide, width)
	d.off = [2]float64{at, at}
	v.dims = append(v.dims, d)
	d = newDim(left, 0, last.depth, depth)
	d.off = [2]float64{lefts[0].X, lefts[n].X}
	v.dims = append(v.dims, d)
	// Where the edge is drawn stretched, its relaxed width is no dimension here.
	if unlike(width, brim) && math.Abs(last.width-brim[s.o.Drawn]) < 0.005*last.width {
		v.dims = append(v.dims, newDim(below, lefts[n].X, rights[n].X, brim))
	}
	return v
}

// turnedUp is a hat with half of its strip turned up.
func (s *sheet) turnedUp(l []level, strip int, closes bool) {
	m := s.drawn()
	up := func(m *measured) float64 { return m.done.Pieces[strip].Width / 2 }
	depth := m.done.TurnedUp(up(m))
	cut := cutOff(l, depth)
	width := s.each(func(m *measured) float64 { return m.done.Pieces[m.body()].FlatWidth })
	deep := s.each(func(m *measured) float64 { return m.done.TurnedUp(up(m)) })
	v := s.tube("turned-up", "Hat, half of the brim turned up", cut, width, width, deep, closes)
	foot := cut[len(cut)-1].width
	v.edges[2].kind = fold
	y := depth - up(m)
	x0, x1 := (v.width-foot)/2, (v.width+foot)/2
	v.edges = append(v.edges, edge{plain, []point{{X: x0, Y: depth}, {X: x0, Y: y}, {X: x1, Y: y}, {X: x1, Y: depth}}})
	s.show(v)
}

// fromAbove is a hat as it is worn, seen from above.
func (s *sheet) fromAbove(i int) {
	across := s.each(func(m *measured) float64 { return m.done.Pieces[i].Widest / math.Pi })
	v := s.circle("crown", "Crown from above", across, across[s.o.Drawn])
	s.turn(v, i)
	s.show(v)
}

// flat is a part worked to and fro: drawn upright, or on its side when it is
// longer than wide.
func (s *sheet) flat(i int) {
	m := s.drawn()
	p, piece := m.fabric.Parts[i], m.done.Pieces[i]
	name := p.Name
	if name == "" {
		name = "Piece"
	}
	length := s.each(func(m *measured) float64 { return m.done.Pieces[i].Length })
	width := s.each(func(m *measured) float64 { return m.done.Pieces[i].Width })
	picked := false
	for _, q := range m.fabric.Parts {
		picked = picked || q.Worked == fabric.InRounds && q.From == i
	}
	title := name
	if picked {
		title += ", before it is joined"
	} else {
		s.facts = append(s.facts, Fact{name + ", length", length}, Fact{name + ", width", width})
	}
	l, asides := flatPiece(m, i)
	v := s.tube("part-"+fmt.Sprint(i+1), title, l, width, width, length, false)
	v.move(asides)
	for _, n := range l {
		v.shaped = v.shaped || asides == nil && n.width < 0.99*v.width
	}
	middle, least := v.width/2, v.width
	for k, n := range l {
		if low := n.depth / v.height; asides != nil && n.width < least && low > 0.3 && low < 0.7 {
			middle, least = v.width/2+asides[k], n.width
		}
	}
	v.way = []point{{X: middle, Y: 0.7 * v.height}, {X: middle, Y: 0.3 * v.height}}
	if picked {
		v.edges[0].kind = pickUp
		v.edges[2].kind = seam
		v.edges[3].kind = seam
	}
	if piece.Length > piece.Width {
		v.onItsSide(length, width)
	}
	s.show(v)
}

// move moves the levels of a tube to the right, each by so much; nil for none.
func (v *view) move(asides []float64) {
	n := len(asides)
	for i, a := range asides {
		v.outline[i].X += a
		v.outline[2*n-1-i].X += a
		v.edges[0].line[i].X += a
		v.edges[1].line[i].X += a
	}
	if n == 0 {
		return
	}
	for _, e := range v.edges[2:] {
		a := asides[n-1]
		if e.line[0].Y < v.height/2 {
			a = asides[0]
		}
		for i := range e.line {
			e.line[i].X += a
		}
	}
	v.dims[1].off = [2]float64{v.edges[0].line[0].X, v.edges[0].line[n-1].X}
}

// onItsSide lays a view down, so that it is worked from the left to the right.
func (v *view) onItsSide(length, width []float64) {
	h := v.height
	turn := func(l []point) {
		for i, p := range l {
			l[i] = point{X: h - p.Y, Y: p.X}
		}
	}
	turn(v.outline)
	for i := range v.edges {
		turn(v.edges[i].line)
	}
	turn(v.way)
	v.rests = atStart
	v.width, v.height = v.height, v.width
	v.dims = []dim{newDim(above, 0, v.width, length), newDim(left, 0, v.height, width)}
}

func widthAt(l []level, depth float64) float64 {
	c := cutOff(l, depth)
	return c[len(c)-1].width
}

func halves(l []float64) []float64 {
	out := make([]float64, len(l))
	for i, v := range l {
		out[i] = v / 2
	}
	return out
}

// unlike tells whether two measurements differ by a millimetre in any size.
func unlike(a, b []float64) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) >= 1 {
			return true
		}
	}
	return false
}
