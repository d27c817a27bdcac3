package chart

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/patterns/fabric"
	"whorl/symbols"
)

// yarnSign is what happens to the yarn before a stitch, or at the end of a round, or a
// marker in a stitch.
type yarnSign struct {
	sign   sign
	stitch int    // of the round
	yarn   string // the name of the yarn that is changed to, "" where that is not said
}

// anyYarn is the name that the words of a pattern give to yarn which they do not name:
// "join yarn in any st". It says nothing beside the sign that yarn is joined.
const anyYarn = "new"

// Measures of these signs, mm.
var yarnHeights = []float64{2.0, 1.7, 1.4}

const (
	yarnNear   = 2   // how many times as far as other aids they may be moved
	mostLetter = 6   // letters of a name that stands beside its sign
	yarnGap    = 0.5 // between the two
)

// yarnSigns are those of a round, in the order of working.
func (w *work) yarnSigns(c *course) (l []yarnSign) {
	stitches := c.round.Stitches
	if c.hub || len(stitches) == 0 || len(c.order) == 0 {
		return nil
	}
	yarn := stitches[0].Colour
	cut := false
	if c.index > 0 {
		below := w.courses[c.index-1].round
		yarn, cut = below.LastColour(), below.Cut
		if len(below.Stitches) == 0 || below.Number == 0 && yarn == "" || c.index == 1 && stitches[0].Colour == anyYarn {
			yarn = stitches[0].Colour // the same, though the beginning does not say
		}
	}
	n := 0 // of the stitch, as the designer counts
	for i := range stitches {
		s := &stitches[i]
		shown := c.cutOf(i) == whole
		switch {
		case i == 0 && cut && shown && c.index > w.first:
			sign := yarnSign{sign: ofAttach, stitch: i}
			if s.Colour != yarn && s.Colour != anyYarn {
				sign.yarn = s.Colour
			}
			l = append(l, sign)
		case s.Colour != yarn && shown && (i > 0 || !cut):
			l = append(l, yarnSign{ofColour, i, s.Colour})
		}
		yarn = s.Colour
		if s.Counts {
			n++
		}
		if s.Marked && shown && !(c.index > w.first && marked(w.courses[c.index-1].round, n)) {
			l = append(l, yarnSign{sign: ofMarker, stitch: i})
		}
	}
	last := len(stitches) - 1
	for last > 0 && stitches[last].Role == fabric.Join && c.rank[last] < 0 {
		last--
	}
	if c.round.Cut && c.cutOf(last) == whole {
		l = append(l, yarnSign{sign: ofCut, stitch: last})
	}
	return l
}

// marked reports whether a round has a marker in its nth stitch: one that is moved up
// from round to round is drawn once.
func marked(r *fabric.Round, n int) bool {
	for i := range r.Stitches {
		if r.Stitches[i].Counts {
			n--
		}
		if n == 0 {
			return r.Stitches[i].Marked
		}
	}
	return false
}

// yarnEntries are the key's entries of these signs.
func (w *work) yarnEntries(s yarnSign) (entry, bool) {
	switch s.sign {
	case ofMarker:
		return entry{short: "marker", long: "stitch marker", sign: ofMarker}, true
	case ofColour:
		name := w.o.Terms.Colour()
		long := name + " change"
		if names := w.unlettered(); len(names) > 0 {
			long += ": " + strings.Join(names, ", ")
		}
		return entry{short: name, long: long, sign: ofColour}, true
	case ofCut:
		return entry{short: "end", long: "fasten off", sign: ofCut}, true
	}
	return entry{}, false // shown as the beginning is
}

// attaches reports whether yarn is joined in the drawn rounds after it was cut.
func (w *work) attaches() bool {
	for _, c := range w.courses[w.first : w.last+1] {
		for _, s := range w.yarnSigns(c) {
			if s.sign == ofAttach {
				return true
			}
		}
	}
	return false
}

// unlettered are the names of yarns changed to in the drawn rounds, in order, where
// one of them is too long to stand beside its sign.
func (w *work) unlettered() (names []string) {
	long := false
	for _, c := range w.courses[w.first : w.last+1] {
		for _, s := range w.yarnSigns(c) {
			if s.yarn != "" && !slices.Contains(names, s.yarn) {
				names = append(names, s.yarn)
				long = long || !lettered(s.yarn)
			}
		}
	}
	if !long {
		return nil
	}
	return names
}

// lettered reports whether a yarn's name is short enough to stand beside its sign.
func lettered(yarn string) bool { return yarn != "" && utf8.RuneCountInString(yarn) <= mostLetter }

// yarn draws the signs of markers and of the yarn, each in the white by its stitch,
// and says which rounds have no room for theirs.
func (a *artist) yarn(f *finder, p *page) (groups []scene.Node, findings []string) {
	whole := &scene.Group{ID: "yarn", Title: "Yarn and markers", Style: scene.Style{Stroke: &ink, Line: new(a.fine().Line)}}
	var missing []*course
	lane := a.inLane(f)
	for k, c := range a.courses[a.lo : a.last+1] {
		for _, s := range a.yarnSigns(c) {
			g := lane[berthOf{c, s}]
			if g == nil {
				g = a.yarnSign(f, p, c, s, a.colourOf(k))
			}
			if g == nil {
				if len(missing) == 0 || missing[len(missing)-1] != c {
					missing = append(missing, c)
				}
				continue
			}
			a.found[s.sign] = true
			whole.Add(g)
		}
	}
	if len(whole.Nodes) > 0 {
		groups = append(groups, whole)
	}
	if len(missing) > 0 {
		findings = append(findings, "there is no room for "+ofRounds("yarn sign", missing))
	}
	return groups, findings
}

// yarnSign draws one sign as near its stitch as there is white, or farther off with a
// line to it; nil where there is none.
func (a *artist) yarnSign(f *finder, p *page, c *course, s yarnSign, colour *scene.Colour) *scene.Group {
	for i, height := range yarnHeights {
		height = a.o.enlarged(height)
		label, wide := s.label(height, colour)
		d := a.atYarn(c, s, wide, height)
		g := &scene.Group{Title: c.label() + ": " + s.words(), Style: scene.Style{Stroke: colour}}
		at, ok := f.near(d)
		if !ok && s.begins() {
			if at, ok = a.pastWedge(f, c, wide, height); ok {
				at = canvas.Point{X: hundredth(at.X), Y: hundredth(at.Y)}
				f.taken = append(f.taken, d.about(at).grown(aidAir))
			}
		}
		if !ok && i == len(yarnHeights)-1 {
			var lead []scene.Node
			at, lead, ok = f.leadTo(d, p.around(), colour)
			g.Add(lead...)
		}
		if !ok {
			continue
		}
		a.drawYarn(g, s, at, d, height, label)
		return g
	}
	return nil
}

// label is the name beside a sign so tall, and how wide they are together; the sign alone
// where the name is long.
func (s yarnSign) label(tall float64, colour *scene.Colour) (t scene.Text, wide float64) {
	t = scene.Text{Size: hundredth(tall * 0.85 / typeface.CapHeight(1)), Bold: true, Colour: *colour, String: s.yarn}
	if !lettered(s.yarn) {
		return t, tall
	}
	return t, tall + yarnGap + typeface.Width(t.String, t.Size, true, false)
}

// drawYarn draws a sign and its label about a point, turned as an aid there.
func (a *artist) drawYarn(g *scene.Group, s yarnSign, at canvas.Point, d aid, tall float64, label scene.Text) {
	mid := canvas.Point{X: hundredth(at.X - d.wide/2 + tall/2), Y: at.Y}
	a.paint(g, s.draw(mid, d.along, d.up, tall, a.fine()), g.Style.Stroke)
	if lettered(s.yarn) {
		label.X, label.Y = hundredth(mid.X+tall/2+yarnGap), hundredth(at.Y+typeface.CapHeight(label.Size)/2)
		g.Add(&label)
	}
}

// atYarn is where a sign would stand best: a change before its stitch, the end of the
// yarn behind it, a marker at its top.
func (a *artist) atYarn(c *course, s yarnSign, wide, tall float64) aid {
	i := s.stitch
	for c.rank[i] < 0 && i+1 < len(c.rank) {
		i++
	}
	if c.rank[i] < 0 {
		i = c.order[len(c.order)-1]
	}
	d := a.besides(c, i, wide, tall)
	pitch := min(a.width(c, i), 2*a.unit)
	middle := d.at
	if feet, _ := a.feet(c, i); len(feet) > 0 {
		middle = d.at.Interpolate(feet[len(feet)/2], 0.5)
	}
	switch s.sign {
	case ofColour, ofAttach:
		d.at = middle.Sub(d.along.Mul(pitch / 2))
	case ofCut:
		d.at = middle.Add(d.along.Mul(pitch / 2))
	}
	return d
}

// near is the nearest white that has room for an aid, which it takes.
func (f *finder) near(d aid) (canvas.Point, bool) {
	for _, far := range []float64{1, yarnNear} {
		for _, s := range moves {
			p, b := d.box(spot{along: far * s.along, up: far * s.up})
			if f.free(b.grown(aidAir)) {
				f.taken = append(f.taken, b.grown(aidAir))
				return canvas.Point{X: hundredth(p.X), Y: hundredth(p.Y)}, true
			}
		}
	}
	return canvas.Point{}, false
}

// leadTo is the white nearest to an aid that a line leads to from the gaps about its
// place.
func (f *finder) leadTo(d aid, room box, colour *scene.Colour) (canvas.Point, []scene.Node, bool) {
	best := leader{cost: leaderLong}
	for _, s := range moves {
		from := d.at.Add(d.along.Mul(s.along)).Add(d.up.Mul(s.up))
		if s.cost >= best.cost || !f.free(box{from.X, from.Y, from.X, from.Y}.grown(leaderDot+leaderAir)) {
			continue
		}
		f.rays(from, d.up, 3*s.cost, d.wide, d.tall, room, &best)
	}
	if best.cost == leaderLong {
		return canvas.Point{}, nil, false
	}
	best.from = canvas.Point{X: hundredth(best.from.X), Y: hundredth(best.from.Y)}
	at := canvas.Point{X: hundredth(best.at.X), Y: hundredth(best.at.Y)}
	f.taken = append(f.taken, d.about(at).grown(aidAir))
	return at, f.lead(best, colour), true
}

// begins reports whether the sign is one of the whole round.
func (s yarnSign) begins() bool {
	return s.stitch == 0 && (s.sign == ofColour || s.sign == ofAttach)
}

// words say what the sign means.
func (s yarnSign) words() string {
	to := ""
	if s.yarn != "" {
		to = " " + s.yarn
	}
	switch s.sign {
	case ofMarker:
		return "marker"
	case ofAttach:
		return "join" + cmp.Or(to, " yarn")
	case ofCut:
		return "fasten off"
	}
	return "change to" + cmp.Or(to, " the first yarn")
}

// draw is the sign about a point, so tall.
func (s yarnSign) draw(at, along, up canvas.Point, tall float64, pen symbols.Pen) symbols.Drawing {
	an := symbols.Anchors{Top: at, Along: along, Up: up, Unit: 2 * tall * 0.75, Width: 2 * tall}
	switch s.sign {
	case ofAttach:
		return symbols.Attach(an, pen)
	case ofCut:
		return symbols.FastenOff(an, pen)
	}
	an.Unit = tall * 1.6
	if s.sign == ofMarker {
		an.Top = at.Add(up.Mul(0.28 * an.Unit))
		return symbols.Marker(an, pen)
	}
	return symbols.ColourChange(an, pen)
}
