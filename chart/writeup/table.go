package writeup

import (
	"math"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

const (
	cellAir   = 4.0 // between columns
	wideAir   = 14  // more of it where there is room
	rowAir    = 2.2 // between rows, a line in the middle of it
	tableSize = 3.4
	leastSize = 2.7
	termAir   = 7.0 // between columns of terms
	termRows  = 19  // of what is set in columns as one piece
)

// level is a thin level line.
func level(from, to, y, width float64) *scene.Path {
	d := &canvas.Path{}
	d.MoveTo(hundredth(from), hundredth(y))
	d.LineTo(hundredth(to), hundredth(y))
	return &scene.Path{D: d, Style: scene.Stroked(rule, width)}
}

// WithoutEmpty is the table without the columns that have nothing under their head.
func (t Table) WithoutEmpty() (u Table) {
	u.Rows = make([][]string, len(t.Rows))
	for i, head := range t.Head {
		if !slices.ContainsFunc(t.Rows, func(r []string) bool { return r[i] != "" }) {
			continue
		}
		u.Head = append(u.Head, head)
		for k, r := range t.Rows {
			u.Rows[k] = append(u.Rows[k], r[i])
		}
	}
	return u
}

// columns are the widths of a table's columns at a size of letters: as wide as
// their longest cells where the room allows, else narrower in proportion to what
// they have above their longest words; false where the words alone are too wide.
func (t *Table) columns(size, room float64) ([]float64, bool) {
	n := len(t.Head)
	least, most := make([]float64, n), make([]float64, n)
	measure := func(row []string, bold bool) {
		for i, cell := range row[:min(len(row), n)] {
			for _, l := range strings.Split(cell, "\n") {
				most[i] = math.Max(most[i], typeface.Width(l, size, bold || i == 0, false))
				for _, w := range strings.Split(l, " ") {
					least[i] = math.Max(least[i], typeface.Width(w, size, bold || i == 0, false))
				}
			}
		}
	}
	measure(t.Head, true)
	for _, r := range t.Rows {
		measure(r, false)
	}
	room -= cellAir * float64(n-1)
	low, high := 0.0, 0.0
	for i := range least {
		low, high = low+least[i], high+most[i]
	}
	switch {
	case high <= room:
		// What is left is shared out, as far as the eye can follow a row.
		for i := range most {
			if i > 0 {
				most[i] += math.Min(wideAir, (room-high)/float64(n-1))
			}
		}
		return most, true
	case low > room:
		for i := range least {
			least[i] *= room / low
		}
		return least, false
	}
	for i := range least {
		least[i] += (most[i] - least[i]) * (room - low) / (high - low)
	}
	return least, true
}

// table sets a table row by row. One that goes over to another page has its head
// there again.
func (s *setter) table(t Table) {
	if len(t.Head) == 0 {
		return
	}
	size := tableSize
	widths, ok := t.columns(size, s.room)
	for !ok && size > leastSize {
		size -= 0.1
		widths, ok = t.columns(size, s.room)
	}
	right := make([]float64, len(widths)) // edges of the columns
	x := side
	for i, w := range widths {
		x += w
		right[i] = x
		x += cellAir
	}
	end := right[len(right)-1]
	row := func(cells []string, bold bool, weight float64) *piece {
		lines := make([][]string, len(cells))
		high := 1
		for i, cell := range cells[:min(len(cells), len(widths))] {
			for _, l := range strings.Split(cell, "\n") {
				lines[i] = append(lines[i], typeface.Wrap(l, size, bold || i == 0, widths[i]+0.01)...)
			}
			high = max(high, len(lines[i]))
		}
		return &piece{height: float64(high)*size*1.3 + rowAir, draw: func(g *scene.Group, y float64) {
			for i, column := range lines {
				at := y + rowAir/2
				if bold { // heads stand on the line under them
					at += float64(high-len(column)) * size * 1.3
				}
				for _, l := range column {
					text := &scene.Text{X: hundredth(right[i]), Y: hundredth(at + size), Size: size, Align: scene.Right, Bold: bold || i == 0, Colour: ink, String: plain(l)}
					if i == 0 {
						text.X, text.Align = side, scene.Left
					}
					g.Add(text)
					at += size * 1.3
				}
			}
			g.Add(level(side, end, y+float64(high)*size*1.3+rowAir, weight))
		}}
	}
	head := row(t.Head, true, 0.4)
	head.above, head.with = paragraph+1, true
	s.add(head)
	for i, r := range t.Rows {
		p := row(r, false, 0.15)
		p.with = i == 0 && len(t.Rows) > 1 || i == len(t.Rows)-2
		if i > 0 {
			p.head = head
		}
		s.add(p)
	}
}

// terms sets names and meanings in as many columns as they have room in, read
// downwards; long ones as paragraphs. A meaning follows its name closely, so that
// who reads the text of the page reads them together.
func (s *setter) terms(l Terms) {
	after := func(t Term) float64 { return typeface.Width(t.Name, bodySize, true, false) + leadAir }
	column := 0.0
	for _, t := range l {
		column = math.Max(column, after(t)+typeface.Width(t.Meaning, bodySize, false, false))
	}
	n := min(3, int((s.room+termAir)/(column+termAir)))
	if n < 1 {
		for _, t := range l {
			s.paragraph(Paragraph{Lead: t.Name, Text: t.Meaning})
		}
		return
	}
	pitch := (s.room + termAir) / float64(n)
	for most := termRows * n; len(l) > 0; {
		part := l[:min(most, len(l))]
		l = l[len(part):]
		rows := (len(part) + n - 1) / n
		s.add(&piece{above: paragraph, height: float64(rows) * bodySize * lead, draw: func(g *scene.Group, y float64) {
			for i, t := range part {
				x, at := side+float64(i/rows)*pitch, y+float64(i%rows)*bodySize*lead
				write(g, t.Name, x, at, bodySize, true, ink)
				write(g, t.Meaning, x+after(t), at, bodySize, false, ink)
			}
		}})
	}
}
