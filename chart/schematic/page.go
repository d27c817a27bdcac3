package schematic

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Measures of the page, mm.
const (
	margin    = 14.0
	titleSize = 6.0
	lineSize  = 3.2
	smallSize = 2.7
	viewSize  = 3.3
	leading   = 1.3
	between   = 9.0  // views
	tallest   = 95.0 // of an outline
	outlined  = 0.5  // width of an outline
	// figureEdge is kept clear above and below a figure, figureSide beside what
	// stands under it: as wide as the margin of the text.
	figureEdge = 1.0
	figureSide = 25.0
)

// scales are how many millimetres of the piece one millimetre of paper may
// stand for.
var scales = []float64{1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000, 2000, 5000}

// block is a view with its room on paper, mm: what its dimensions and its title
// take around the outline.
type block struct {
	v                      *view
	left, right, top, foot float64
	w, h                   float64 // of the outline
	title, notes           []string
	labelAt, labelTall     float64 // from the outline's left side; and of all of them
}

func (b *block) width() float64  { return b.left + b.w + b.right }
func (b *block) height() float64 { return b.top + b.h + b.foot }

func newBlock(v *view, scale, room float64) block {
	b := block{v: v, w: v.width / scale, h: v.height / scale, left: 1, right: 1, foot: 1, top: 1}
	for i := range v.dims {
		d := &v.dims[i]
		switch d.side {
		case above:
			b.top = math.Max(b.top, d.deep())
			spread(&b.left, &b.right, d, scale, b.w)
		case below:
			b.foot = math.Max(b.foot, d.deep())
			spread(&b.left, &b.right, d, scale, b.w)
		case left:
			b.left = math.Max(b.left, d.deep())
			spread(&b.top, &b.foot, d, scale, b.h)
		}
	}
	if len(v.labels) > 0 {
		wide, tall := labelRoom(v.labels)
		b.labelAt, b.labelTall = b.w+b.right+leaderLong, tall
		b.right += leaderLong + wide + 1
		b.foot = math.Max(b.foot, tall-b.h+1)
	}
	for i := range v.tags {
		switch t := &v.tags[i]; t.side {
		case tagOn:
			b.left, b.right, b.foot, b.top = math.Max(b.left, tagRadius+1), math.Max(b.right, tagRadius+1), math.Max(b.foot, tagRadius+2.5), math.Max(b.top, tagRadius+1)
		case tagUnder:
			b.foot = math.Max(b.foot, tagOff+tagRadius+1)
		default:
			b.right = math.Max(b.right, t.at.X/scale-b.w+tagOff+tagRadius+1)
		}
	}
	wide := 0.0
	for _, n := range v.notes {
		b.notes = append(b.notes, typeface.Wrap(n, valueSize, false, math.Min(room, math.Max(b.width(), 62)))...)
	}
	for _, n := range b.notes {
		wide = math.Max(wide, typeface.Width(n, valueSize, false, false))
	}
	b.foot += float64(len(b.notes)) * pitch
	b.title = typeface.Wrap(v.title, viewSize, true, math.Min(room, math.Max(b.width(), 52)))
	for _, t := range b.title {
		wide = math.Max(wide, typeface.Width(t, viewSize, true, false))
	}
	if more := wide - b.width(); more > 0 {
		b.right += more
	}
	b.top += float64(len(b.title))*viewSize*leading + 1.5
	return b
}

// spread makes room at both ends of a dimension for values longer than the side
// and for arrows from outside.
func spread(before, after *float64, d *dim, scale, side float64) {
	mid := (d.from + d.to) / 2 / scale
	half := math.Max(d.long()/2, (d.to-d.from)/2/scale)
	if (d.to-d.from)/scale < 3*headLong {
		half = math.Max(half, (d.to-d.from)/2/scale+2.5*headLong)
	}
	*before = math.Max(*before, half-mid+1)
	*after = math.Max(*after, mid+half-side+1)
}

// row is blocks side by side.
type row struct {
	blocks []block
	height float64
}

// flow sets the views in rows; false when they need more room.
func (s *sheet) flow(scale, room, height float64) (rows []row, tall float64, ok bool) {
	x := math.Inf(1)
	for _, v := range s.views {
		b := newBlock(v, scale, room)
		if b.width() > room || b.h > tallest {
			return nil, 0, false
		}
		if x+b.width() > room {
			rows = append(rows, row{})
			x = 0
		}
		r := &rows[len(rows)-1]
		r.blocks = append(r.blocks, b)
		r.height = math.Max(r.height, b.height())
		x += b.width() + between
	}
	for _, r := range rows {
		tall += r.height
	}
	tall += float64(len(rows)-1) * between
	return rows, tall, tall <= height
}

// fit sets the views at the largest scale that they have room at, or at one not
// much smaller that saves a row.
func (s *sheet) fit(room, height float64) (rows []row, tall, scale float64, ok bool) {
	most := math.Inf(1)
	for _, k := range scales {
		if k > most {
			break
		}
		if r, h, fits := s.flow(k, room, height); fits && (!ok || len(r) < len(rows)) {
			if !ok {
				most = 1.5 * k
			}
			rows, tall, scale, ok = r, h, k, true
		}
	}
	return rows, tall, scale, ok
}

// page sets the title, the measurements, the views, the legend and the foot.
func (s *sheet) page() error {
	s.width, s.height = s.o.Paper.Size()
	room := s.width - 2*margin
	top, low, side := 0.0, margin, margin // the edges that are kept clear
	var foot []*scene.Text
	footHeight := 0.0
	if s.figure > 0 {
		s.height, top, low, side = s.figure, figureEdge, figureEdge, figureSide
	} else {
		top = s.heading(room)
		foot, footHeight = s.foot(room)
	}
	legend := s.legendEntries()
	bottom := footHeight + float64(max(3, len(legend)))*4.6 + 10
	rows, tall, scale, ok := s.fit(room, s.height-low-bottom-top)
	if !ok && s.gather() {
		s.root = scene.Group{}
		return s.page()
	}
	if !ok {
		return errors.New("the outlines do not fit on the page: draw one part, or fewer sizes")
	}
	if !s.o.Sheet || s.figure > 0 {
		s.height = math.Ceil(top + tall + bottom + low)
	}
	y := top
	for _, r := range rows {
		used := 0.0
		for _, b := range r.blocks {
			used += b.width()
		}
		apart := (room - used) / float64(len(r.blocks)+1)
		x := margin + apart
		for _, b := range r.blocks {
			s.view(b, x, y, scale)
			x += b.width() + apart
		}
		y += r.height + between
	}
	end := s.height - low - footHeight
	s.legend(legend, side, end-5)
	s.scaleBar(s.width-side, end-5, scale)
	for _, t := range foot {
		t.Y += end
		s.root.Add(t)
	}
	return nil
}

// heading sets the title and the finished measurements from the top down, and
// gives where the views may begin.
func (s *sheet) heading(room float64) float64 {
	g := &scene.Group{ID: "head"}
	y := margin
	if s.o.Title != "" {
		y = paragraph(g, s.o.Title, margin, y-2, titleSize, true, ink, room)
	}
	line := "Schematic"
	if s.o.Part != "" {
		line += " of the " + s.o.Part
	}
	if n := s.sizeNames(); n != "" {
		line += ", " + n
	}
	y = paragraph(g, line, margin, y+0.6, lineSize, false, words, room)
	if notes := strings.Join(s.notes(), " "); notes != "" {
		y = paragraph(g, notes, margin, y+0.4, lineSize, false, words, room)
	}
	y += 2.5
	widest, longest := 0.0, 0.0
	for _, f := range s.facts {
		cm, _ := figures(f.Values)
		widest = math.Max(widest, typeface.Width(f.Name, lineSize, false, false))
		longest = math.Max(longest, typeface.Width(cm, lineSize, false, false))
	}
	widest = math.Min(widest, 0.3*room)
	for _, f := range s.facts {
		cm, in := figures(f.Values)
		x := margin + widest + 5
		second := x + math.Min(longest+8, 0.54*(s.width-margin-x))
		a := paragraph(g, f.Name, margin, y, lineSize, false, words, widest+0.1)
		b := paragraph(g, cm, x, y, lineSize, false, ink, second-x-4)
		c := paragraph(g, in, second, y, lineSize, false, ink, s.width-margin-second)
		y = math.Max(a, math.Max(b, c)) + 0.3
	}
	s.root.Add(g)
	return y + 7
}

// foot is the credit, set from 0 down, and its height.
func (s *sheet) foot(room float64) (l []*scene.Text, height float64) {
	for _, t := range typeface.Wrap(s.o.Credit, smallSize, false, room) {
		height += smallSize * leading
		l = append(l, &scene.Text{X: margin, Y: hundredth(height - 0.35*smallSize), Size: smallSize, Colour: words, String: t})
	}
	return l, height
}

// view draws a view whose block's upper left corner is at x, y.
func (s *sheet) view(b block, x, y, scale float64) {
	v := b.v
	g := &scene.Group{ID: v.id, Title: v.title, Data: []scene.Attr{{Name: "scale", Value: strconv.FormatFloat(scale, 'f', -1, 64)}}}
	for i, t := range b.title {
		g.Add(&scene.Text{X: hundredth(x), Y: hundredth(y + viewSize*(0.72+leading*float64(i))), Size: viewSize, Bold: true, Colour: ink, String: t})
	}
	ox, oy := x+b.left, y+b.top
	place := func(l []point) []point {
		out := make([]point, len(l))
		for i, p := range l {
			out[i] = point{X: ox + p.X/scale, Y: oy + p.Y/scale}
		}
		return out
	}
	outline := &scene.Group{ID: v.id + "-outline"}
	for _, l := range append([][]point{v.outline}, v.also...) {
		outline.Add(&scene.Path{Style: scene.Filled(cloth), D: polygon(place(l)...)})
	}
	g.Add(outline)
	for _, e := range v.edges {
		g.Add(&scene.Path{Style: e.kind.style(), D: line(place(e.line)...)})
	}
	for i := range v.names {
		v.names[i].draw(g, place([]point{v.names[i].at})[0], scale)
	}
	for i, n := range b.notes {
		y := oy + b.h + b.foot - pitch*(float64(len(b.notes)-1-i)+0.24)
		g.Add(&scene.Text{X: hundredth(x), Y: hundredth(y), Size: valueSize, Colour: words, String: n})
	}
	b.drawInner(g, ox, oy, ox+b.labelAt, scale)
	if len(v.way) > 1 {
		arrow(g, place(v.way))
	}
	for i := range v.dims {
		d := &v.dims[i]
		at := map[side]func(along, out float64) point{
			above: func(along, out float64) point { return point{X: ox + along, Y: oy - out} },
			below: func(along, out float64) point { return point{X: ox + along, Y: oy + b.h + out} },
			left:  func(along, out float64) point { return point{X: ox - out, Y: oy + along} },
		}[d.side]
		d.draw(g, at, scale)
	}
	for i := range v.tags {
		v.tags[i].draw(g, place([]point{v.tags[i].at})[0])
	}
	s.root.Add(g)
}

// notes say which sizes are drawn, and how pieces are drawn that are not flat by
// themselves or whose rows may lie in more ways than one.
func (s *sheet) notes() (l []string) {
	switch z := s.drawn().fabric.Size; {
	case s.o.Nested && len(s.sizes) > 1:
		l = append(l, "Outlines to scale in all sizes, one in another.")
	case len(s.sizes) > 1 && z != "":
		l = append(l, "Outlines to scale in size "+z+".")
	}
	flat, shaped, ball, domed, cups := false, false, false, false, false
	for _, v := range s.views {
		flat, shaped, ball, domed, cups = flat || v.flat, shaped || v.shaped, ball || v.stuffed, domed || v.domed, cups || v.cups
	}
	if flat {
		text := "Laid flat, a round is drawn half as wide as it is around"
		if domed {
			text += ", and a closed end rounded"
		}
		l = append(l, text+".")
	}
	if cups {
		l = append(l, "A piece that cups by itself is drawn as it is seen from above, as wide as its edge.")
	}
	if ball {
		l = append(l, "A stuffed piece is drawn as round as its rounds let it be.")
	}
	if shaped {
		l = append(l, "Rows of different lengths are drawn about their middle.")
	}
	return append(l, s.gathered...)
}
