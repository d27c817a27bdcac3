package schematic

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Joint is a place where two edges meet: of two parts, or of a part and itself.
type Joint struct {
	Part, To     int // indices of the parts
	Edge, ToEdge Edge
	// From and Last are the rounds of To that are met, 0 and 0 for none.
	From, Last int
	// How is how they are joined.
	How How
}

// Edge is an edge of a part.
type Edge uint8

const (
	SomeEdge  Edge = iota // not said: of a piece worked from its centre, its last round
	ShortEnds             // of a strip, or of a piece as it is worked: the first and the last row
	RowEnds               // the sides
	FirstEdge
	LastEdge
	EachSide // of a motif
	Opening
)

// How is how edges are joined.
type How uint8

const (
	Sewn How = iota
	GoesOn
	PickedUp
)

// letters mark the joints that the views show, from A on. Those of a strip and the
// part picked up along it are shown apart (see assembly), but where the sizes are
// nested, which leaves no room for it.
func (s *sheet) letters() {
	letter := 'A'
	for _, v := range s.views {
		if v.id == "assembly" {
			letter = 'C'
		}
	}
	for _, j := range s.o.Joints {
		a := s.viewOf(j.Part)
		if a == nil || s.apart(j) || letter > 'Z' {
			continue
		}
		text := s.says(j)
		if text == "" {
			continue
		}
		mark := func(v *view, part int, e Edge, from, last int) {
			if v == nil {
				return
			}
			for _, p := range s.places(v, part, e, from, last) {
				v.tags = append(v.tags, tag{letter: string(letter), at: v.free(p), side: tagOn})
			}
		}
		mark(a, j.Part, s.known(j.Part, j.Edge), 0, 0)
		if j.To != j.Part {
			mark(s.viewOf(j.To), j.To, j.ToEdge, j.From, j.Last)
		}
		a.notes = append(a.notes, string(letter)+": "+text)
		letter++
	}
}

// gather takes the sentences on joints from under the views, where they need more room
// than there is; false when there are none.
func (s *sheet) gather() bool {
	before := len(s.gathered)
	for _, v := range s.views {
		if v.id != "assembly" {
			s.gathered, v.notes = append(s.gathered, v.notes...), nil
		}
	}
	slices.Sort(s.gathered) // by their letters
	return len(s.gathered) > before
}

// apart tells whether the assembly view shows a joint.
func (s *sheet) apart(j Joint) bool {
	m := s.drawn()
	for i := range m.fabric.Parts {
		strip := m.strip(i)
		if shown := slices.ContainsFunc(s.views, func(v *view) bool { return v.id == "assembly" }); shown && strip >= 0 && i == m.body() {
			if j.Part == strip && j.To == strip || j.Part == i && j.To == strip {
				return true
			}
		}
	}
	return false
}

// viewOf is the view that the outline of a part is drawn in, nil for none.
func (s *sheet) viewOf(part int) *view {
	for _, v := range s.views {
		if v.of == part+1 {
			return v
		}
	}
	return nil
}

// known is an edge, with the only one that a piece worked from its centre has where
// the words do not say.
func (s *sheet) known(part int, e Edge) Edge {
	if piece := s.drawn().done.Pieces[part]; e == SomeEdge && !piece.Rows && piece.CrownFirst && piece.Hole == 0 {
		return LastEdge
	}
	return e
}

// called is a part as a sentence names it: without how many are made.
func (s *sheet) called(part int) string {
	name, _, _ := strings.Cut(s.drawn().fabric.Parts[part].Name, " (")
	if name == "" {
		return "piece"
	}
	return name
}

// says is a joint in a sentence.
func (s *sheet) says(j Joint) string {
	a, b := s.called(j.Part), s.called(j.To)
	unit := func(part int) string {
		if s.drawn().done.Pieces[part].Rows {
			return "row"
		}
		return "round"
	}
	edge := func(part int, name string, e Edge) string {
		switch e {
		case ShortEnds:
			return "the ends of the " + name
		case RowEnds:
			return "the sides of the " + name
		case FirstEdge:
			return "the first " + unit(part) + " of the " + name
		case LastEdge:
			return "the last " + unit(part) + " of the " + name
		case Opening:
			return "the opening of the " + name
		}
		return "the " + name
	}
	switch {
	case j.How == GoesOn:
		return fmt.Sprintf("%s is worked on %s.", edge(j.Part, a, FirstEdge), edge(j.To, b, LastEdge))
	case j.How == PickedUp && j.ToEdge == Opening:
		return fmt.Sprintf("%s is worked around %s, at its %s %d.", edge(j.Part, a, FirstEdge), edge(j.To, b, Opening), unit(j.To), j.From)
	case j.How == PickedUp:
		return fmt.Sprintf("%s is worked along the row ends of the %s.", edge(j.Part, a, FirstEdge), b)
	case j.Part == j.To && j.Edge == EachSide:
		return fmt.Sprintf("a side of one %s is joined to a side of the next.", a)
	case j.Part == j.To && j.Edge == ShortEnds:
		return fmt.Sprintf("the two short ends of the %s are joined.", a)
	case j.Part == j.To:
		return ""
	}
	text := fmt.Sprintf("%s is sewn to %s", edge(j.Part, a, s.known(j.Part, j.Edge)), edge(j.To, b, j.ToEdge))
	if j.Edge == ShortEnds || j.Edge == RowEnds {
		text = strings.Replace(text, " is sewn", " are sewn", 1)
	}
	switch {
	case j.From <= 0:
		return text + "."
	case j.Last > j.From:
		return fmt.Sprintf("%s, over its %ss %d to %d.", text, unit(j.To), j.From, j.Last)
	}
	return fmt.Sprintf("%s, at its %s %d.", text, unit(j.To), j.From)
}

// places are where the edge of a part, or those rounds of it, lies in its view.
func (s *sheet) places(v *view, part int, e Edge, from, last int) []point {
	if from > 0 {
		share, ok := s.depthOf(part, from, last)
		if !ok {
			return nil
		}
		return []point{v.along(share)}
	}
	first, end := v.ends()
	at := slices.IndexFunc(v.edges, func(e edge) bool { return e.kind == pickUp })
	if at >= 0 && (e == FirstEdge || e == RowEnds) {
		l := v.edges[at].line
		return []point{{X: (l[0].X + l[len(l)-1].X) / 2, Y: (l[0].Y + l[len(l)-1].Y) / 2}}
	}
	switch e {
	case FirstEdge:
		return []point{first}
	case LastEdge:
		return []point{end}
	case ShortEnds:
		return []point{first, end}
	case RowEnds:
		if first.Y == end.Y {
			return []point{{X: v.width / 2, Y: 0}, {X: v.width / 2, Y: v.height}}
		}
		return []point{{X: 0, Y: v.height / 2}, {X: v.width, Y: v.height / 2}}
	case EachSide:
		return []point{{X: v.width / 2, Y: v.height}}
	}
	return nil
}

// depthOf is how far along its depth, from its beginning as a share of it, the middle
// of some rounds of a part lies.
func (s *sheet) depthOf(part, from, last int) (share float64, ok bool) {
	m := s.drawn()
	rounds := m.form.Parts[part].Rounds
	low, high := math.NaN(), math.NaN()
	for i, r := range m.fabric.Parts[part].Rounds {
		if r.Number >= from && math.IsNaN(low) && r.Number > 0 && i > 0 {
			low = rounds[i-1].Level
		}
		if r.Number > 0 && r.Number <= last {
			high = rounds[i].Level
		}
	}
	end := rounds[len(rounds)-1].Level
	if share = (low + high) / 2 / end; math.IsNaN(share) || share < 0 || share > 1 {
		return 0, false
	}
	return share, true
}

// ends are the middles of the edges that a view begins and ends at, as its direction of
// work goes; a view from above ends at its foot.
func (v *view) ends() (first, last point) {
	mid := point{X: v.width / 2, Y: v.height / 2}
	if v.rests == atCentre && !v.stuffed || len(v.way) < 2 {
		return mid, point{X: mid.X, Y: v.height}
	}
	a, b := v.way[0], v.way[len(v.way)-1]
	switch {
	case math.Abs(b.X-a.X) > math.Abs(b.Y-a.Y) && b.X > a.X:
		return point{X: 0, Y: mid.Y}, point{X: v.width, Y: mid.Y}
	case math.Abs(b.X-a.X) > math.Abs(b.Y-a.Y):
		return point{X: v.width, Y: mid.Y}, point{X: 0, Y: mid.Y}
	case b.Y > a.Y:
		return point{X: mid.X, Y: 0}, point{X: mid.X, Y: v.height}
	}
	return point{X: mid.X, Y: v.height}, point{X: mid.X, Y: 0}
}

// along is a place on the right of the outline at a share of the way from the edge that
// the view begins at to the one that it ends at.
func (v *view) along(share float64) point {
	first, last := v.ends()
	p := point{X: first.X + share*(last.X-first.X), Y: first.Y + share*(last.Y-first.Y)}
	if v.rests == atCentre && !v.stuffed || first.Y == last.Y {
		return p
	}
	if v.stuffed { // the rounds lie along the curve
		p.Y = v.height / 2 * (1 - math.Cos(math.Pi*math.Abs(p.Y/v.height)))
	}
	right := p.X
	for i, a := range v.outline {
		b := v.outline[(i+1)%len(v.outline)]
		if (a.Y-p.Y)*(b.Y-p.Y) <= 0 && a.Y != b.Y {
			right = math.Max(right, a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y))
		}
	}
	return point{X: right, Y: p.Y}
}

// free is the place nearest to one on the same level of the view that no other letter
// has.
func (v *view) free(at point) point {
	taken := func(p point) bool {
		return slices.ContainsFunc(v.tags, func(t tag) bool {
			return math.Abs(t.at.X-p.X) < 0.16*v.width && math.Abs(t.at.Y-p.Y) < 0.12*v.height
		})
	}
	for _, by := range []float64{0, -0.2, 0.2, -0.4, 0.4, -0.6, -0.8} {
		if p := (point{X: at.X + by*v.width, Y: at.Y}); p.X >= 0 && p.X <= v.width && !taken(p) {
			return p
		}
	}
	return at
}
