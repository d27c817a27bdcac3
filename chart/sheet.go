package chart

import (
	"fmt"
	"math"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// Measures of the symbol sheet, mm.
const (
	sheetColumns = 4
	sheetShort   = 2.9 // em of an abbreviation
	sheetLong    = 2.2 // em of a full name
	sheetLine    = 0.26
	sheetMost    = 12.5 // height of a row
)

// cell is one symbol of the sheet with its names.
type cell struct {
	entry
	other string // what it is called in the other terms, "" where it is the same
	draw  func(at canvas.Point, tall float64) []symbols.Drawing
}

// Sheet is every symbol in reading order, with its abbreviation and its full
// name in the given terms and the abbreviation in the others where it differs.
// With cross single crochets are drawn as ×.
func Sheet(terms stitch.Terms, paper Paper, cross bool) *scene.Scene {
	w := &work{o: Options{Terms: terms}}
	w.unit = keyUnit
	a := &artist{work: w, pen: symbols.Pen{Line: sheetLine, Cross: cross}, chainW: keyUnit,
		shapes: map[string]*scene.Shape{}, ids: map[string]bool{}}
	cells := a.cells(terms)
	width, height := paper.Size()
	title := "Crochet symbols, " + terms.String() + " terms"
	s := &scene.Scene{Width: width, Height: height, Title: title, Paper: scene.RGB(0xffffff),
		Alt: "A sheet of crochet chart symbols with their names in US and UK terms."}
	s.Desc = s.Alt
	y := margin + typeface.CapHeight(titleSize)
	s.Root.Add(&scene.Text{X: margin, Y: y, Size: titleSize, Bold: true, Colour: ink, String: title})
	y += 8
	rows := (len(cells) + sheetColumns - 1) / sheetColumns
	tall := math.Min((height-margin-y)/float64(rows), sheetMost)
	column := (width - 2*margin) / sheetColumns
	line := sheetLine
	for i, c := range cells {
		left := margin + float64(i/rows)*column
		mid := y + (float64(i%rows)+0.5)*tall
		g := &scene.Group{Title: c.short + ": " + c.long, Data: []scene.Attr{{Name: "key", Value: c.short}},
			Style: scene.Style{Stroke: &ink, Line: &line}}
		at := canvas.Point{X: left + keyBox/2, Y: mid}
		if c.draw != nil {
			for _, d := range c.draw(at, tall-2.2) {
				a.paint(g, d, &ink)
			}
		} else {
			a.paint(g, a.sample(c.entry, tall-2.2, at), &ink)
		}
		c.names(g, left+keyBox+keyIndent, mid, column-keyBox-keyIndent-2)
		s.Root.Add(g)
	}
	return s
}

// names sets the names of a cell beside its symbol, about a height.
func (c cell) names(g *scene.Group, x, mid, room float64) {
	long, size := fitText(c.long, sheetLong, sheetLong*0.92, false, room)
	const lead = 1.32
	tall := sheetShort*lead + float64(len(long)-1)*size*lead
	y := mid - (tall-typeface.CapHeight(sheetShort))/2 + typeface.CapHeight(sheetShort)/2
	g.Add(&scene.Text{X: x, Y: y, Size: sheetShort, Bold: true, Colour: ink, String: c.short})
	if c.other != "" {
		from := typeface.Width(c.short, sheetShort, true, false) + keySpace
		_, fits := fitText(c.other, sheetLong, sheetLong*0.8, false, room-from)
		g.Add(&scene.Text{X: x + from, Y: y, Size: fits, Colour: words, String: c.other})
	}
	y += sheetShort * 1.15
	for _, l := range long {
		g.Add(&scene.Text{X: x, Y: y, Size: size, Colour: ink, String: l})
		y += size * lead
	}
}

// cells are all the symbols: the stitches, then what begins, joins and ends work.
func (a *artist) cells(terms stitch.Terms) []cell {
	others := stitch.UK
	if terms == stitch.UK {
		others = stitch.US
	}
	var all []cell
	for _, s := range symbols.All() {
		c := cell{entry: entry{kind: s.Kind, in: s.Into, short: s.Kind.NameInto(s.Into, terms), long: longName(s.Kind, s.Into, terms)}}
		if o := s.Kind.NameInto(s.Into, others); o != c.short {
			c.other = others.String() + " " + o
		}
		switch {
		case s.Into == stitch.FrontLoop || s.Into == stitch.BackLoop:
			// The stitch has been named in full.
			c.long = strings.Replace(c.long, s.Kind.LongName(terms), s.Kind.Name(terms), 1)
		case s.Kind.Shape == stitch.Puff:
			c.short += fmt.Sprintf(" of %d", s.Kind.Legs)
		}
		all = append(all, c)
	}
	all = append(all, a.composites(terms)...)
	ring := func(short, long string, chains int) {
		all = append(all, cell{entry: entry{short: short, long: long, sign: ofRing, chains: chains}})
	}
	ring("ring", "magic ring", 0)
	ring("ch ring", "ring of chains", 6)
	all = append(all,
		cell{entry: entry{short: "beg ch", long: "beginning or turning chain", sign: ofStart, chains: 3}},
		cell{entry: entry{short: "join", long: stitch.Slip.LongName(terms) + " to join", sign: ofJoin}})
	sign := func(short, long string, draw func(symbols.Anchors, symbols.Pen) symbols.Drawing) {
		all = append(all, cell{entry: entry{short: short, long: long}, draw: func(at canvas.Point, _ float64) []symbols.Drawing {
			return []symbols.Drawing{draw(symbols.Anchors{Top: at, Along: canvas.Point{X: 1}, Up: canvas.Point{Y: -1}, Unit: 1.4 * keyUnit, Width: 1.4 * keyUnit}, a.pen)}
		}})
	}
	sign("start", "start here, or join yarn", symbols.Attach)
	sign("end", "fasten off", symbols.FastenOff)
	sign("arrow", "direction of work", symbols.Arrow)
	sign("turn", "turn the work", symbols.Turn)
	sign(terms.Colour(), terms.Colour()+" change", symbols.ColourChange)
	sign("marker", "stitch marker", func(an symbols.Anchors, pen symbols.Pen) symbols.Drawing {
		an.Top.Y -= an.Unit / 3
		return symbols.Marker(an, pen)
	})
	small := func(draw func(symbols.Anchors, symbols.Pen) symbols.Drawing) func(symbols.Anchors, symbols.Pen) symbols.Drawing {
		return func(an symbols.Anchors, pen symbols.Pen) symbols.Drawing {
			an.Unit = changeSize
			return draw(an, a.fine())
		}
	}
	sign("inc", "increase", small(symbols.Increase))
	sign("dec", "decrease", small(symbols.Decrease))
	return all
}
