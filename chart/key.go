package chart

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// entry is one line of the key.
type entry struct {
	short, long string
	kind        stitch.Kind
	in          stitch.Into
	sign        sign
	chains      int
	wrong       bool   // worked with the wrong side facing
	own         string // name of the designer's own symbol
	named       string // what the designer calls it
}

// sameSymbol reports whether two entries are of one symbol, whatever it is called.
func (e entry) sameSymbol(f entry) bool {
	for _, x := range []*entry{&e, &f} {
		x.short, x.long, x.named = "", "", ""
	}
	return e == f
}

// sign is what an entry shows when it is no plain stitch.
type sign uint8

const (
	ofStitch sign = iota
	ofRing
	ofStart
	ofJoin
	ofIncrease
	ofDecrease
	ofBeginning // where the chart begins
	ofDirection
	ofEdge   // what the first round stands on, where that is not drawn
	ofBeside // what lies beside a repeat
	ofMarker
	ofColour // change of it
	ofAttach
	ofCut
	ofYarn
)

// entries are exactly what is drawn, in reading order.
func (w *work) entries() []entry {
	list := w.readingEntries()
	add := func(e entry) {
		for i := range list {
			if e.sameSymbol(list[i]) && (e.named == "" || list[i].named == "" || e.named == list[i].named) {
				if list[i].named == "" {
					list[i] = e // what the designer calls it is what the words have
				}
				return
			}
		}
		list = append(list, e)
	}
	addYarn := func(s yarnSign) {
		if e, ok := w.yarnEntries(s); ok {
			add(e)
		}
	}
	t := w.o.Terms
	lo := w.first
	if c := w.courses[w.first]; c.hub || c.loose {
		lo++
	}
	if below := w.courses[max(lo-1, 0)]; lo > 0 && below.hub && lo <= 1 {
		n := 0
		for i := range below.round.Stitches {
			if below.round.Stitches[i].IsChain() {
				n++
			}
		}
		e := entry{short: "ring", long: "magic ring", sign: ofRing}
		switch {
		case n > 0 && below.round.Ring:
			e = entry{short: "ring", long: "ring of " + strconv.Itoa(n) + " chains", sign: ofRing, chains: n}
		case n > 0:
			e = entry{short: "ch " + strconv.Itoa(n), long: "chains to begin", sign: ofRing, chains: n}
		}
		add(e)
	} else if lo > w.first && below.loose {
		add(entry{short: stitch.Chain.Name(t), long: stitch.Chain.LongName(t), kind: stitch.Of(stitch.Chain)})
	} else if lo > 0 || !isFoundation(w.courses[0].round) {
		add(entry{short: "pale line", long: w.edgeName(lo), sign: ofEdge})
	}
	for _, c := range w.courses[min(lo, w.last) : w.last+1] {
		if c.hub {
			continue
		}
		yarn := w.yarnSigns(c)
		for i := range c.round.Stitches {
			s := &c.round.Stitches[i]
			for ; len(yarn) > 0 && yarn[0].stitch < i; yarn = yarn[1:] {
				addYarn(yarn[0])
			}
			if c.cutOf(i) != whole {
				continue
			}
			switch s.Role {
			case fabric.Start:
				if s.Chains < 1 {
					continue
				}
				e := entry{sign: ofStart, chains: s.Chains, kind: s.As}
				e.short = "beg ch " + strconv.Itoa(s.Chains)
				switch {
				case s.Counts && s.As.Is():
					e.long = "beginning chain, counts as " + s.As.Name(t)
				default:
					e.long = "beginning chain"
				}
				add(e)
			case fabric.Join:
				if s.Kind.Base > stitch.Slip {
					add(entry{short: s.Kind.Name(t), long: s.Kind.LongName(t), kind: s.Kind})
					continue
				}
				add(entry{short: "join", long: stitch.Slip.LongName(t) + " to join", sign: ofJoin})
			default:
				k := s.Kind
				if s.As.Is() {
					k = s.As
				} else if s.Role == fabric.LastHalf {
					continue
				}
				in := stitch.Top
				if len(s.On) > 0 {
					switch drawn := shown(s.On[0].Into, c.round); drawn {
					case stitch.FrontLoop, stitch.BackLoop, stitch.FrontPost, stitch.BackPost:
						in = drawn
					}
				}
				worked := in
				if in != stitch.Top {
					worked = s.On[0].Into
				}
				e := entry{kind: k, in: in, short: k.NameInto(worked, t), long: longName(k, worked, t)}
				if worked != in {
					e.wrong = true
					e.long += ", on the wrong side"
				}
				if own := w.o.own(s); own != nil {
					e.own, e.short = s.Own, own.Name
				}
				if d := w.o.definition(s); d != nil {
					e.short, e.named = d.Name, d.Name
				}
				add(e)
			}
		}
		for _, s := range yarn {
			addYarn(s)
		}
	}
	if w.window > 0 {
		add(entry{short: "paler", long: "beside the repeat", sign: ofBeside})
	}
	for i, name := range w.yarns {
		add(entry{short: cmp.Or(name, "first"), long: "yarn, drawn in this " + t.Colour(), sign: ofYarn, chains: i})
	}
	return append(list, w.changeEntries()...)
}

// readingEntries are the signs that tell where and which way a chart is read.
func (w *work) readingEntries() (l []entry) {
	if !w.flat {
		long := "where the chart begins"
		if w.attaches() {
			long += ", or yarn is joined"
		}
		l = append(l, entry{short: "start", long: long, sign: ofBeginning})
	} else if w.attaches() {
		l = append(l, entry{short: "start", long: "yarn is joined", sign: ofAttach})
	}
	return append(l, entry{short: "arrow", long: "direction of work", sign: ofDirection})
}

// edgeName names what the first round that is drawn, lo, stands on.
func (w *work) edgeName(lo int) string {
	c := w.courses[lo]
	if from := w.part.From; c.round.Edge > 0 && from >= 0 {
		return "row ends of " + w.fabric.Parts[from].Name
	}
	if lo == 0 {
		return "edge that is worked into"
	}
	return w.courses[lo-1].label() + ", not drawn"
}

// longName is the full name of a kind; that of a puff says how large it is.
func longName(k stitch.Kind, in stitch.Into, t stitch.Terms) string {
	n := k.LongNameInto(in, t)
	if k.Shape == stitch.Puff {
		n += " of " + strconv.Itoa(k.Legs) + " loops"
	}
	return n
}

// changeEntries are the marks of increases and decreases, where there are any.
func (w *work) changeEntries() (l []entry) {
	if !w.o.Changes {
		return nil
	}
	var up, down bool
	for _, c := range w.courses[w.first : w.last+1] {
		for _, ch := range c.shown() {
			up, down = up || ch.By > 0, down || ch.By < 0
		}
	}
	if up {
		l = append(l, entry{short: "inc", long: "increase", sign: ofIncrease})
	}
	if down {
		l = append(l, entry{short: "dec", long: "decrease", sign: ofDecrease})
	}
	return l
}

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
	k.entries = slices.DeleteFunc(k.entries, func(e entry) bool { return e.sign == s })
	k.columns()
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
		an.Unit, an.Width = a.unit, a.chainW
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
