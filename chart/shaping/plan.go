package shaping

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// plan draws the piece from above as far as it is shaped: every round a circle
// as far out as it is from the crown along the fabric.
func (s *sheet) plan(b box) {
	p := s.piece
	g := heading("plan", "Where it is shaped, seen from above", b)
	marks := s.marks
	first, last := s.first, s.last
	radii := p.planRadii(first, last)
	note := s.planNote(first, last, marks)
	lines := typeface.Wrap(note, smallSize, false, b.x1-b.x0)
	bottom := b.y1
	for i := len(lines) - 1; i >= 0; i-- {
		g.Add(&scene.Text{X: b.x0, Y: hundredth(bottom - 0.8), Size: smallSize, Colour: words, String: lines[i]})
		bottom -= smallSize * 1.3
	}
	top := b.y0 + 7
	reach := math.Min(b.x1-b.x0, bottom-2-top)/2 - planMargin
	cx, cy := (b.x0+b.x1)/2, (top+bottom-2)/2
	most := 0.0
	for _, r := range radii {
		most = math.Max(most, r)
	}
	at := func(i int, turn float64) point {
		r := radii[i-first] / most * reach
		// Anticlockwise from the bottom of the page.
		return point{X: cx + r*math.Sin(turn), Y: cy + r*math.Cos(turn)}
	}
	for i := first; i <= last; i++ {
		c := p.rounds[i]
		r := &scene.Group{Title: s.planTitle(c, marks[i]), Data: []scene.Attr{{Name: "round", Value: strconv.Itoa(c.round.Number)},
			{Name: "increases", Value: strconv.Itoa(tally(marks[i], false))}, {Name: "decreases", Value: strconv.Itoa(tally(marks[i], true))}}}
		width, colour := 0.15, pale
		if len(marks[i]) > 0 {
			colour = grey
		}
		r.Add(&scene.Path{Style: scene.Stroked(colour, width), D: circle(cx, cy, radii[i-first]/most*reach)})
		g.Add(r)
	}
	s.joinLines(g, marks, first, last, at)
	s.planMarks(g, marks, first, last, at)
	s.planNumbers(g, first, last, at, marks)
	s.root.Add(g)
}

// planMargin is left free around the plan, for the numbers, mm.
const planMargin = 6

// choosePlan chooses the rounds that the plan shows in a box: those of the
// shaping and of the stitch pattern, or, where these would be too close to be
// read, of the shaping only.
func (s *sheet) choosePlan(b box) {
	p := s.piece
	s.first, s.last = p.shapedRange(s.marks, func(mark) bool { return true })
	reach := math.Min(b.x1-b.x0, b.y1-b.y0-14)/2 - planMargin
	if p.closest(p.planRadii(s.first, s.last), s.first, s.marks)*reach < leastPitch {
		s.first, s.last = p.shapedRange(s.marks, func(m mark) bool { return !m.even })
	}
}

// leastPitch is how close together shaped rounds may lie, mm: a sign is so long.
const leastPitch = 2.2

// closest is the least distance between a shaped round and its neighbours, as a
// share of the largest radius.
func (p *piece) closest(radii []float64, first int, marks [][]mark) float64 {
	least, most := 1.0, slices.Max(radii)
	for k := 1; k < len(radii); k++ {
		if shapes(marks[first+k]) || shapes(marks[first+k-1]) {
			least = math.Min(least, math.Abs(radii[k]-radii[k-1])/most)
		}
	}
	return least
}

// shapes reports whether any mark is of a round that changes its count.
func shapes(marks []mark) bool {
	return slices.ContainsFunc(marks, func(m mark) bool { return !m.even })
}

// shapedRange is from the crown's end to the last round that has marks of a sort
// and one more, or the other way round for a piece worked from the brim.
func (p *piece) shapedRange(marks [][]mark, sort func(mark) bool) (first, last int) {
	first, last = -1, -1
	for i, m := range marks {
		if slices.ContainsFunc(m, sort) {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	n := len(marks) - 1
	switch {
	case first < 0:
		return 0, n
	case p.brimFirst:
		return max(0, first-1), n
	}
	return 0, min(n, last+1)
}

// planRadii is how far each of the rounds is from the crown along the fabric.
func (p *piece) planRadii(first, last int) []float64 {
	radii := make([]float64, last-first+1)
	mean := 0.0
	for i := first; i <= last; i++ {
		mean += math.Max(0, p.rounds[i].form.Height) / float64(last-first+1)
	}
	step := func(i int) float64 { return math.Max(p.rounds[i].form.Height, math.Max(0.4*mean, 1e-3)) }
	if p.brimFirst {
		r := math.Max(p.rounds[last].form.R, 0.5*mean)
		for i := last; i >= first; i-- {
			radii[i-first] = r
			r += step(i)
		}
		return radii
	}
	r := p.start.r
	for i := first; i <= last; i++ {
		r += step(i)
		radii[i-first] = r
	}
	return radii
}

// joined are the lines that join every mark of a class to its neighbours of the
// next round that has any.
func joined(marks [][]mark, first, last int, k markClass, at func(int, float64) point) [][2]point {
	var l [][2]point
	below := -1
	for i := first; i <= last; i++ {
		above := of(marks[i], k)
		if len(above) == 0 {
			continue
		}
		if below >= 0 {
			under := of(marks[below], k)
			for _, j := range joins(under, above) {
				l = append(l, [2]point{at(below, under[j[0]].turn), at(i, above[j[1]].turn)})
			}
		}
		below = i
	}
	return l
}

// joinLines draws the lines between the marks.
func (s *sheet) joinLines(g *scene.Group, marks [][]mark, first, last int, at func(int, float64) point) {
	lines := &scene.Group{ID: "joins"}
	for _, k := range markClasses {
		path := &canvas.Path{}
		for _, l := range joined(marks, first, last, k, at) {
			path = path.Append(line(l[0], l[1]))
		}
		if !path.Empty() {
			lines.Add(&scene.Path{Style: signs[k].joint(), D: path})
		}
	}
	if len(lines.Nodes) > 0 {
		g.Add(lines)
	}
}

// of are the marks of one class.
func of(marks []mark, k markClass) []mark {
	var l []mark
	for _, m := range marks {
		if m.class() == k {
			l = append(l, m)
		}
	}
	return l
}

func tally(marks []mark, less bool) int {
	n := 0
	for _, m := range marks {
		if m.less == less {
			n += m.change
		}
	}
	return n
}

// planMarks draws the signs.
func (s *sheet) planMarks(g *scene.Group, marks [][]mark, first, last int, at func(int, float64) point) {
	for _, k := range markClasses {
		sign := signs[k]
		all := &scene.Group{ID: sign.id, Style: scene.Stroked(sign.ink, sign.line)}
		for i := first; i <= last; i++ {
			for _, m := range of(marks[i], k) {
				p := at(i, m.turn)
				// The sign points to the crown: down the radius.
				all.Add(&scene.Use{Shape: sign.shape, X: hundredth(p.X), Y: hundredth(p.Y), Angle: hundredth(180 - m.turn*180/math.Pi)})
			}
		}
		if len(all.Nodes) > 0 {
			g.Add(all)
		}
	}
}

// planNumbers puts numbers to the shaped rounds, each on its circle where it
// stands clear of the marks and as near as can be under the one before.
func (s *sheet) planNumbers(g *scene.Group, first, last int, at func(int, float64) point, marks [][]mark) {
	var busy []point // the marks, and points along what joins them
	for i := first; i <= last; i++ {
		for _, m := range marks[i] {
			busy = append(busy, at(i, m.turn))
		}
	}
	for _, k := range markClasses {
		for _, l := range joined(marks, first, last, k, at) {
			for k := 1; k < 8; k++ {
				busy = append(busy, between(l[0], l[1], float64(k)/8))
			}
		}
	}
	labels := &scene.Group{ID: "plan-numbers"}
	var taken []box
	turn := 0.0
	for i := last; i >= first; i-- {
		if len(marks[i]) == 0 && i != last && i != first {
			continue
		}
		text := strconv.Itoa(s.piece.rounds[i].round.Number)
		for k := range 73 { // by turns to either side, further and further off
			off := float64((k+1)/2) * math.Pi / 36
			if k%2 == 1 {
				off = -off
			}
			p := at(i, turn+off)
			t := &scene.Text{X: hundredth(p.X), Y: hundredth(p.Y + typeface.CapHeight(numberSize)/2), Size: numberSize, Align: scene.Centre, Colour: words, String: text}
			b := boxOf(t)
			b = box{b.x0 - 0.5, b.y0 - 0.5, b.x1 + 0.5, b.y1 + 0.5}
			if !roomFor(b, busy, taken) {
				continue
			}
			turn += off
			taken = append(taken, b)
			labels.Add(&scene.Path{Style: scene.Filled(scene.RGB(0xffffff)), D: polygon(point{X: b.x0, Y: b.y0}, point{X: b.x1, Y: b.y0}, point{X: b.x1, Y: b.y1}, point{X: b.x0, Y: b.y1})}, t)
			break
		}
	}
	if len(labels.Nodes) > 0 {
		g.Add(labels)
	}
}

// roomFor reports whether a box keeps off points, by the size of a mark, and other
// boxes.
func roomFor(b box, busy []point, taken []box) bool {
	const away = 0.9
	for _, p := range busy {
		if p.X > b.x0-away && p.X < b.x1+away && p.Y > b.y0-away && p.Y < b.y1+away {
			return false
		}
	}
	for _, o := range taken {
		if o.meets(b) {
			return false
		}
	}
	return true
}

func (s *sheet) planTitle(c course, marks []mark) string {
	t := c.round.Label
	if n := tally(marks, false); n > 0 {
		t += fmt.Sprintf(", %d increases", n)
	}
	if n := tally(marks, true); n > 0 {
		t += fmt.Sprintf(", %d decreases", n)
	}
	return t
}

// planNote says what the plan shows.
func (s *sheet) planNote(first, last int, marks [][]mark) string {
	p := s.piece
	shaped := 0
	for _, m := range marks {
		if len(m) > 0 {
			shaped++
		}
	}
	text := "Rounds by their distance from the centre along the fabric; first round worked against the clock."
	if shaped == 0 {
		gains := slices.ContainsFunc(p.rounds, func(c course) bool { return c.change != 0 && c.index > 1 })
		if gains {
			return text + " What is gained or lost is worked into spaces or skipped; no stitch is increased in or worked together."
		}
		return text + " No round is increased or decreased."
	}
	var left string
	switch {
	case first > 1:
		left = span(p.part, p.rounds[0].index, p.rounds[first-1].index)
	case first == 1:
		left = p.rounds[0].round.Label
	case last < len(p.rounds)-1:
		left = span(p.part, p.rounds[last+1].index, p.rounds[len(p.rounds)-1].index)
	}
	if left != "" {
		text += " Left out, as they keep their count: " + left + "."
	}
	return text
}
