package shaping

import (
	"fmt"
	"math"
	"strconv"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/geometry"
)

// row is one or more rounds that are alike.
type row struct {
	label  string
	count  string // "72", or "24 + 48" where there are chains
	change int
	class  int
	first  course
}

// rows gathers the rounds that are alike in a row.
func (p *piece) rows() []row {
	var l []row
	last := 0
	for i, c := range p.rounds {
		r := row{c.round.Label, strconv.Itoa(c.round.Count()), c.change, classOf(c.strain), c}
		if chains := geometry.Places(c.round) - c.round.Count(); chains > 0 {
			r.count += fmt.Sprintf(" + %d ch", chains)
		}
		if n := len(l); n > 0 && l[n-1].count == r.count && l[n-1].change == r.change && l[n-1].class == r.class && r.change == 0 {
			l[n-1].label = span(p.part, p.rounds[last].index, c.index)
			continue
		}
		last = i
		l = append(l, r)
	}
	return l
}

// list draws the stitches of every round and the change at each: a bar as long
// as the round, in the colour and hatching of its strain. It gives where the
// list ends.
func (s *sheet) list(b box) float64 {
	g := heading("rounds", "Stitches of every round", b)
	g.Add(&scene.Text{X: b.x1, Y: b.y0 + headSize*0.72, Size: smallSize, Align: scene.Right, Colour: words, String: "change"})
	y := b.y0 + 7.5
	rows := s.piece.rows()
	const closest, widest = 2.7, 4.2
	columns := 1
	if (b.y1-y)/float64(len(rows)) < closest {
		columns = 2
	}
	each := int(math.Ceil(float64(len(rows)) / float64(columns)))
	pitch := math.Min(widest, (b.y1-y)/float64(each))
	left := 0
	if pitch < closest {
		pitch = closest
		fit := max(1, int((b.y1-y)/pitch)-1) * columns
		left, rows = len(rows)-fit, rows[:fit]
		each = fit / columns
	}
	size := math.Min(lineSize*0.9, pitch*0.8)
	var t table
	for _, r := range rows {
		t.longest = math.Max(t.longest, r.first.form.Circumference)
		t.label = math.Max(t.label, typeface.Width(r.label, size, false, false)+2.5)
		t.count = math.Max(t.count, typeface.Width(r.count, size, false, false))
		t.change = math.Max(t.change, typeface.Width(signed(r.change), size, false, false)+1.5)
	}
	t.size, t.pitch = size, pitch
	t.wide = (b.x1 - b.x0 - 5*float64(columns-1)) / float64(columns)
	for i, r := range rows {
		x := b.x0 + float64(i/each)*(t.wide+5)
		s.row(g, r, t, x, y+float64(i%each)*pitch)
	}
	end := y + float64(min(each, len(rows)))*pitch
	if left > 0 {
		g.Add(&scene.Text{X: b.x0, Y: hundredth(y + float64(each)*pitch + size), Size: size, Colour: words,
			String: fmt.Sprintf("and %d more: whorl check lists them", left)})
		end += pitch
	}
	s.root.Add(g)
	return end
}

// table is the measures of the list, mm.
type table struct {
	size, pitch          float64 // of the text, and from line to line
	wide                 float64 // of a column
	label, count, change float64 // of what stands in it
	longest              float64 // circumference
}

// row draws one row of the list.
func (s *sheet) row(g *scene.Group, r row, t table, x, y float64) {
	base := hundredth(y + t.pitch/2 + t.size*0.36)
	line := &scene.Group{Title: s.roundTitle(r.first)}
	line.Add(&scene.Text{X: hundredth(x), Y: base, Size: t.size, Colour: words, String: r.label})
	line.Add(&scene.Text{X: hundredth(x + t.label + t.count), Y: base, Size: t.size, Align: scene.Right, Colour: ink, String: r.count})
	if room := t.wide - t.label - t.count - t.change - 1.5; room > 4 {
		x0, h := x+t.label+t.count+1.5, t.pitch*0.52
		x1 := x0 + room*r.first.form.Circumference/t.longest
		top := y + (t.pitch-h)/2
		k := classes[r.class]
		k.across *= 1.5
		ribbon(line, k, point{X: x0, Y: top + h}, point{X: x1, Y: top + h}, point{X: x0, Y: top}, point{X: x1, Y: top}, 0)
		line.Add(&scene.Path{Style: scene.Stroked(grey, 0.15), D: polygon(point{X: x0, Y: top}, point{X: x1, Y: top}, point{X: x1, Y: top + h}, point{X: x0, Y: top + h})})
	}
	if r.change != 0 {
		line.Add(&scene.Text{X: hundredth(x + t.wide), Y: base, Size: t.size, Align: scene.Right, Colour: ink, String: signed(r.change)})
	}
	g.Add(line)
}

// signed is a change with its sign.
func signed(n int) string {
	if n < 0 {
		return "−" + strconv.Itoa(-n)
	}
	return "+" + strconv.Itoa(n)
}
