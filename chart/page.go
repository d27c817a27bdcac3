package chart

import (
	"fmt"
	"math"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Paper is the size of a page.
type Paper struct {
	width, height float64 // mm; 0: A4
	post          bool
}

var (
	A4     = Paper{}                            // 210 × 297 mm (ISO 216)
	Letter = Paper{width: 215.9, height: 279.4} // mm
)

// postSide is the shorter side of a post's page, mm: a symbol of 2.5 mm is 15 pixels
// tall where that side has 1080.
const postSide = 180

// Post is the page of a picture for a screen that has so many pixels: 180 mm on its
// shorter side, never turned and never trimmed.
func Post(width, height int) Paper {
	w, h := float64(width), float64(height)
	mm := postSide / math.Min(w, h)
	return Paper{w * mm, h * mm, true}
}

// leastChart is the radius that a chart on this page is to have, however long its
// key is, mm.
func (p Paper) leastChart() float64 {
	if p.post {
		return leastPost
	}
	return leastChart
}

// Size is the paper's width and height in millimetres, upright.
func (p Paper) Size() (width, height float64) {
	if p.width == 0 {
		return 210, 297
	}
	return p.width, p.height
}

// Measures of the page, mm.
const (
	margin      = 14.0
	titleSize   = 6.4 // em
	titleLeast  = 4.4
	lineSize    = 3.3 // of the subtitle
	footSize    = 2.9
	airAbove    = 7.0 // between the lines at the head and the chart
	airBelow    = 9.0 // between the chart and the key: room for the arrow
	leastChart  = 60  // radius
	leastPost   = 30  // radius in a post
	leastFigure = 40  // radius among text
)

// page is the sheet that a chart is set on.
type page struct {
	w             *work
	width, height float64
	paper         float64 // the height of the sheet it is to be printed on
	head          []*scene.Text
	foot          []*scene.Text
	key           key
	top, bottom   float64 // of the room for the chart
	below         float64 // the room under the key
	centre        canvas.Point
	radius        float64 // that the chart may have
}

// newPage sets the title, the key and the foot on a page, upright or on its side,
// which leaves the room for the chart.
func newPage(w *work, sideways bool) *page {
	p := &page{w: w}
	w.findYarns()
	p.width, p.height = w.o.Paper.Size()
	room := p.width - 2*margin
	if w.o.Figure > 0 {
		p.height = w.o.Figure
		p.top, p.bottom = airAbove, p.height-edgeLeast
	} else {
		if sideways {
			p.width, p.height = p.height, p.width
			room = p.width - 2*margin
		}
		p.setHead(room)
		p.setFoot(room)
	}
	p.paper = p.height
	foot := p.bottom
	p.below = p.height - foot
	for _, row := range keyRows {
		p.key = w.layKey(room, w.o.enlarged(row))
		p.bottom = foot - p.key.height() - airBelow
		p.radius = min(room, p.bottom-p.top) / 2
		if full := room / 2; p.radius >= 0.9*full && w.o.Figure == 0 || p.radius >= full {
			break
		}
	}
	least := w.o.Paper.leastChart()
	if w.o.Figure > 0 {
		least = leastFigure
	}
	if p.radius < least {
		// A key this long needs a longer page; the chart keeps its room.
		longer := 2 * (least - p.radius)
		p.height += longer
		p.bottom += longer
		for _, t := range p.foot {
			t.Y += longer
		}
		p.radius = least
	}
	p.centre = canvas.Point{X: p.width / 2, Y: hundredth((p.top + p.bottom) / 2)}
	return p
}

// around is where what stands about the chart may be.
func (p *page) around() box {
	return box{edgeLeast + 1, p.top - airAbove + 2, p.width - edgeLeast - 1, p.bottom + airBelow - 2}
}

// setHead sets the title and what the chart shows, which begins the room for it.
func (p *page) setHead(room float64) {
	y := margin
	set := func(s string, size, least float64, bold bool, colour scene.Colour, lead float64) {
		if s == "" {
			return
		}
		lines, size := fitText(s, size, least, bold, room)
		for _, l := range lines {
			y += typeface.CapHeight(size)
			p.head = append(p.head, &scene.Text{X: margin, Y: y, Size: size, Bold: bold, Colour: colour, String: l})
			y += lead
		}
	}
	set(p.w.o.Title, titleSize, titleLeast, true, ink, 2.8)
	set(p.w.subtitle(), p.w.o.enlarged(lineSize), p.w.o.enlarged(lineSize*0.85), false, words, 1.8)
	p.top = y + airAbove
}

// setFoot sets the credit, which ends the room.
func (p *page) setFoot(room float64) {
	p.bottom = p.height - margin
	if p.w.o.Credit == "" {
		return
	}
	lines, size := fitText(p.w.o.Credit, p.w.o.enlarged(footSize), p.w.o.enlarged(footSize*0.9), false, room)
	for i := len(lines) - 1; i >= 0; i-- {
		p.foot = append(p.foot, &scene.Text{X: margin, Y: p.bottom, Size: size, Colour: words, String: lines[i]})
		p.bottom -= size * 1.35
	}
	p.bottom -= 2
}

// tighten brings a figure's key up to a round chart that is smaller than its room.
func (p *page) tighten() {
	_, extent := p.w.outline()
	p.bottom = min(p.bottom, hundredth(p.top+2*min(p.radius, p.w.outer*extent)))
	p.centre.Y = hundredth((p.top + p.bottom) / 2)
	p.trim()
}

// fit sets what is no whole round on an upright page or, where its symbols come
// out clearly larger, on one on its side.
func (w *work) fit(lay func(*page)) *page {
	p := newPage(w, false)
	lay(p)
	if w.o.Figure > 0 {
		p.trim()
		if over := p.height - p.paper; over > 0 { // symbols reach beyond their rows
			p = newPage(w, false)
			p.bottom -= over
			lay(p)
			p.trim()
		}
		return p
	}
	if w.o.Paper.post {
		return p
	}
	p = p.within(lay, false)
	unit := w.unit
	if q := newPage(w, true); q.height <= q.paper {
		lay(q)
		q = q.within(lay, true)
		if w.unit >= 1.1*unit {
			p = q
		} else {
			p = newPage(w, false)
			lay(p)
			p = p.within(lay, false)
		}
	}
	if !w.o.Sheet {
		p.trim()
	}
	return p
}

// within is the page with its chart laid again where it reaches so deep that the key would lie
// over the foot.
func (p *page) within(lay func(*page), sideways bool) *page {
	over := p.end() - p.height
	if over <= 0 {
		return p
	}
	p = newPage(p.w, sideways)
	p.bottom -= over
	lay(p)
	return p
}

// end is how far down the key and the lines at the foot reach, with the margin.
func (p *page) end() float64 { return p.bottom + airBelow + p.key.height() + p.below }

// trim ends the page a margin below the key and the lines at the foot, where the
// chart has left room.
func (p *page) trim() {
	end := p.end()
	if end >= p.height && p.w.o.Figure == 0 {
		return // what lies too deep is drawn over the foot, and found
	}
	for _, t := range p.foot {
		t.Y -= p.height - end
	}
	p.height = end
}

// fitText sets a text in one line at size or smaller, and in several at the
// least size when that is not enough. Words longer than a line are cut.
func fitText(s string, size, least float64, bold bool, room float64) ([]string, float64) {
	s = strings.Join(strings.Fields(s), " ")
	if w := typeface.Width(s, size, bold, false); w > room {
		size = max(least, size*room/w)
	}
	fits := func(t string) bool { return typeface.Width(t, size, bold, false) <= room*1.0001 }
	if fits(s) {
		return []string{s}, size
	}
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && fits(line+" "+word) {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for !fits(word) {
			cut := []rune(word)
			n := len(cut) - 1
			for n > 1 && !fits(string(cut[:n])) {
				n--
			}
			lines = append(lines, string(cut[:n]))
			word = string(cut[n:])
		}
		line = word
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines, size
}

// finish draws everything and looks it over.
func (p *page) finish() (*Chart, []*course) {
	w := p.w
	a, rounds, touching := p.inked()
	s := &scene.Scene{Width: p.width, Height: p.height, Title: w.name(), Alt: w.alt(), Desc: w.describe(), Author: w.o.Credit,
		Paper: scene.RGB(0xffffff)}
	if w.o.Clear {
		s.Paper = none
	}
	head := &scene.Group{ID: "head"}
	for _, t := range p.head {
		head.Add(t)
	}
	s.Root.Add(head)
	drawing := &scene.Group{ID: "chart", Title: w.name(), Data: []scene.Attr{
		{Name: "centre", Points: []canvas.Point{p.centre}}, {Name: "unit", Value: fmt.Sprintf("%.2fmm", w.unit)}}}
	if w.o.Cross {
		drawing.Data = append(drawing.Data, scene.Attr{Name: "cross", Value: "sc"})
	}
	switch {
	case w.blocks != nil:
		drawing.Data = append(drawing.Data, scene.Attr{Name: "rows", Value: "blocks"})
	case w.flat:
		drawing.Data = append(drawing.Data, scene.Attr{Name: "rows", Value: "flat"})
	case w.rows:
		drawing.Data = append(drawing.Data, scene.Attr{Name: "rows", Value: "fanned"})
	}
	drawing.Add(rounds...)
	if w.o.Tint {
		if g := a.tint(); g != nil {
			s.Root.Add(g)
		}
	}
	s.Root.Add(drawing)
	c := &Chart{Scene: s, least: w.o.leastSymbol(), Caption: capital(strings.Join(w.caption(), ", ")), Reading: capital(strings.Join(w.reading(), ", "))}
	f := &finder{grid: newGrid(segments(drawing, scene.Plain, 0, nil))}
	signs, missing := a.signs(f, p)
	s.Root.Add(signs)
	if w.panel {
		s.Root.Add(a.bracket(p))
	}
	counts, countless := a.counts(f, p)
	s.Root.Add(counts...)
	aids, without := a.aids(f)
	s.Root.Add(aids...)
	yarn, yarnless := a.yarn(f, p)
	c.touching, c.crossings, c.ahead, c.cramped = touching, a.crossings, a.ahead, a.cramped
	s.Root.Add(yarn...)
	for _, sign := range []sign{ofBeginning, ofDirection, ofMarker, ofColour, ofAttach, ofCut} {
		if !a.found[sign] && !(sign == ofBeginning && a.found[ofAttach]) {
			p.key.without(sign)
		}
	}
	left := margin
	if w.o.Figure > 0 {
		left = hundredth((p.width - p.key.width()) / 2)
	}
	if len(p.key.entries) > 0 {
		s.Root.Add(a.drawKey(p.key, left, p.bottom+airBelow))
	}
	if sp := p.key.special; len(sp.lines) > 0 {
		s.Root.Add(sp.draw(left, p.bottom+airBelow+p.key.height()-sp.height()))
	}
	if len(p.foot) > 0 {
		foot := &scene.Group{ID: "foot"}
		for _, t := range p.foot {
			foot.Add(t)
		}
		s.Root.Add(foot)
	}
	c.Smallest, c.crowded = w.smallest(), w.radii.Crowded
	const instead = ": draw a range of rounds, a wedge, or use a larger page"
	switch {
	case c.Small():
		c.Findings = append(c.Findings, fmt.Sprintf("the smallest symbols print %.1f mm tall, under %.1f mm%s", c.Smallest, c.least, instead))
	case c.crowded:
		c.Findings = append(c.Findings, "the stitches stand too close to be told apart"+instead)
	}
	if p.height > p.paper {
		c.Findings = append(c.Findings, fmt.Sprintf("the key is too long for the page, which was made %.0f mm taller", p.height-p.paper))
	}
	if len(missing) > 0 {
		c.Findings = append(c.Findings, "there is no room for "+ofRounds("number", missing)+instead)
	}
	if len(countless) > 0 {
		c.Findings = append(c.Findings, "there is no room for "+ofRounds("stitch count", countless)+instead)
	}
	c.Findings = append(append(c.Findings, without...), yarnless...)
	return c, missing
}

// ofRounds names what rounds have: "the numbers of 3 rounds, Rnd 2 to Rnd 9".
func ofRounds(what string, l []*course) string {
	if len(l) == 1 {
		return "the " + what + " of " + l[0].label()
	}
	return fmt.Sprintf("the %ss of %d rounds, %s to %s", what, len(l), l[0].label(), l[len(l)-1].label())
}
