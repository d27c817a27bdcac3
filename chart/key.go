package chart

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// Sizes of the key, mm; larger in large print.
const (
	keyText   = 3.0 // em: 8.5 pt
	keyBox    = 11.0
	keyGap    = 6.0 // between columns
	keyUnit   = 3.0
	keyAir    = 1.9 // between one row's symbols and the next's
	keyIndent = 1.5
	keySpace  = 1.8 // between the abbreviation and the full name
	keyArrow  = 5.0 // length of an arrow and of a line
)

// key is the key laid out in columns, read downwards.
type key struct {
	entries []entry
	rows    int
	left    []float64 // of each column
	right   float64   // of the last
	room    float64   // width that they have
	row     float64   // height of one
	special special
	keySizes
}

// keySizes are the sizes of a key: that of its text, the room of a symbol, the
// indent of the words behind it, and the space between the short and the long name.
type keySizes struct{ text, box, indent, space float64 }

func (o Options) keySizes() keySizes {
	return keySizes{o.enlarged(keyText), o.enlarged(keyBox), keyIndent, keySpace}
}

// keyRows are the heights of row to choose from.
var keyRows = []float64{9, 7.5, 6.2}

// layKey finds how many columns fit a width, in rows of a height.
func (w *work) layKey(width, row float64) key {
	k := key{entries: w.entries(), room: width, row: row, special: w.laySpecial(width), keySizes: w.o.keySizes()}
	k.columns()
	return k
}

// columns sets the entries in as many columns as there is room for.
func (k *key) columns() {
	for columns := min(4, len(k.entries)); columns > 0; columns-- {
		k.rows = (len(k.entries) + columns - 1) / columns
		k.left = k.left[:0]
		x := 0.0
		for from := 0; from < len(k.entries); from += k.rows {
			k.left = append(k.left, x)
			widest := 0.0
			for _, e := range k.entries[from:min(from+k.rows, len(k.entries))] {
				widest = max(widest, e.width(k.keySizes))
			}
			x += k.box + k.indent + widest + keyGap
		}
		if k.right = x - keyGap; k.right <= k.room {
			break
		}
	}
}

// without takes an entry out whose sign found no place in the chart.
func (k *key) without(s sign) {
	is := func(e entry) bool { return e.sign == s }
	all, rows := slices.Clone(k.entries), k.rows
	k.entries = slices.DeleteFunc(k.entries, is)
	k.columns()
	if at := slices.IndexFunc(all, is); k.rows > rows && at >= 0 {
		// Moved up they need more room than there is: the last takes its place.
		last := len(all) - 1
		all[at] = all[last]
		k.entries = all[:last]
		k.columns()
	}
}

func (e entry) width(k keySizes) float64 {
	return typeface.Width(e.short, k.text, true, false) + k.space + typeface.Width(e.long, k.text, false, false)
}

// width is how wide the key is; told stitches take the whole of their room.
func (k key) width() float64 { return max(k.right, k.special.width) }

func (k key) height() float64 { return float64(k.rows)*k.row + k.special.height() }

// drawKey draws the key with its top left corner at x, y.
func (a *artist) drawKey(k key, x, y float64) *scene.Group {
	line := a.pen.Line
	g := &scene.Group{ID: "key", Title: "Key to the symbols", Style: scene.Style{Stroke: &ink, Line: &line}}
	for i, e := range k.entries {
		left := x + k.left[i/k.rows]
		mid := y + (float64(i%k.rows)+0.5)*k.row
		item := &scene.Group{Title: e.short + ": " + e.long, Data: []scene.Attr{{Name: "key", Value: e.short}}}
		if e.sign == ofEdge || e.sign == ofBeside {
			item.Style.Stroke = &pale
		}
		if e.sign == ofYarn {
			item.Style.Stroke = yarnInks[e.chains]
		}
		a.paint(item, a.sample(e, k.row-keyAir, canvas.Point{X: left + k.box/2, Y: mid}), &ink)
		base := mid + typeface.CapHeight(k.text)/2
		tx := left + k.box + k.indent
		item.Add(&scene.Text{X: tx, Y: base, Size: k.text, Bold: true, Colour: ink, String: e.short})
		tx += typeface.Width(e.short, k.text, true, false) + k.space
		item.Add(&scene.Text{X: tx, Y: base, Size: k.text, Colour: ink, String: e.long})
		g.Add(item)
	}
	return g
}

// edgeSample is a piece of an edge about a point: a line, and a tick at each place.
func edgeSample(at canvas.Point, long float64) symbols.Drawing {
	d := &canvas.Path{}
	d.MoveTo(at.X-long/2, at.Y)
	d.LineTo(at.X+long/2, at.Y)
	for _, x := range []float64{-long / 3, 0, long / 3} {
		d.MoveTo(at.X+x, at.Y)
		d.LineTo(at.X+x, at.Y-1)
	}
	return symbols.Drawing{Strokes: d}
}

// sample draws an entry's symbol about a point, no taller than most.
func (a *artist) sample(e entry, most float64, at canvas.Point) symbols.Drawing {
	unit := a.o.enlarged(keyUnit)
	an := symbols.Anchors{Along: canvas.Point{X: 1}, Up: canvas.Point{Y: -1}, Unit: unit, Width: unit}
	pen := a.pen
	switch e.sign {
	case ofBeginning:
		an.Top, an.Unit = at, 2*startSize
		return symbols.Attach(an, pen)
	case ofMarker, ofColour, ofAttach, ofCut:
		return yarnSign{sign: e.sign}.draw(at, an.Along, an.Up, a.o.enlarged(yarnHeights[0]), a.fine())
	case ofDirection:
		an.Top, an.Unit = at, a.o.enlarged(keyArrow)
		return symbols.Arrow(an, pen)
	case ofEdge:
		return edgeSample(at, a.o.enlarged(keyArrow))
	case ofBeside, ofYarn:
		e = entry{kind: stitch.Of(stitch.Double)}
	case ofRing:
		return symbols.Ring(at, min(a.o.enlarged(2.2), most/2), e.chains, unit, pen)
	case ofJoin:
		an.Top, an.Unit = at, a.unit
		return symbols.Join(an, pen)
	case ofIncrease, ofDecrease:
		an.Top, an.Unit = at, a.o.enlarged(changeSize)
		if e.sign == ofIncrease {
			return symbols.Increase(an, a.fine())
		}
		return symbols.Decrease(an, a.fine())
	case ofStart:
		tall := min(float64(max(e.chains, 1))*a.o.enlarged(2.1), most)
		an.Top = at.Sub(canvas.Point{Y: tall / 2})
		an.Base = []canvas.Point{at.Add(canvas.Point{Y: tall / 2})}
		return symbols.Start(e.chains, an, pen)
	}
	h := symbols.Height(e.kind)
	if h*an.Unit > most {
		an.Unit = most / h
	}
	tall := h * an.Unit
	an.Top = at.Sub(canvas.Point{Y: tall / 2})
	switch {
	case e.kind.Base == stitch.Chain && e.kind.Shape == stitch.Plain:
		an.Unit, an.Width = a.unit, math.Max(a.chainW, a.chainMost)
		an.Top = at
		art := symbols.Draw(e.kind, stitch.Top, an, pen)
		if art.Mark != nil {
			art.Mark.At = at
		}
		return art
	case e.kind.Base == stitch.Slip:
		an.Unit = a.unit
		an.Top = at.Sub(canvas.Point{Y: 0.5})
		an.Base = []canvas.Point{at.Add(canvas.Point{Y: 0.5})}
	case e.kind.Shape == stitch.Together && e.kind.Legs > 1:
		apart := math.Min(a.o.enlarged(2.2), (a.o.enlarged(keyBox)-2)/float64(e.kind.Legs-1))
		for i := 0; i < e.kind.Legs; i++ {
			x := (float64(i) - float64(e.kind.Legs-1)/2) * apart
			an.Base = append(an.Base, at.Add(canvas.Point{X: x, Y: tall / 2}))
		}
	default:
		an.Base = []canvas.Point{at.Add(canvas.Point{Y: tall / 2})}
	}
	if own, ok := a.o.Own[e.own]; ok {
		return own.Draw(e.kind, e.in, an, pen)
	}
	return symbols.Draw(e.kind, e.in, an, pen)
}
