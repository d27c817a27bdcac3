package chart

import (
	"fmt"
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/geometry"
	"whorl/patterns/fabric"
)

// Panel is the chart of one or more repeats of a part worked in the round as if it
// had been cut open and laid flat, its rounds one above another, with what lies
// beside them in grey and the repeat in a bracket. It suits rounds that are about
// as long as one another and repeat, and refuses others.
func Panel(f *fabric.Fabric, form *geometry.Form, o Options) (*Chart, error) {
	w, err := newWork(f, form, o, fabric.InRounds)
	if err != nil {
		return nil, err
	}
	w.panel = true
	w.turn()
	least, most := math.Inf(1), 0.0
	for _, c := range w.courses[w.first : w.last+1] {
		if c.hub {
			least = 0
			continue
		}
		least, most = math.Min(least, c.form.Circumference), math.Max(most, c.form.Circumference)
	}
	if least < evenPanel*most {
		return nil, fmt.Errorf("the rounds of %s are from %.0f to %.0f mm long, too unlike to be laid flat: choose fewer with rounds:, or write draw: wedge", w.part.Name, least, most)
	}
	w.flat = true
	if !w.cutRepeats(o.Repeats) {
		return nil, fmt.Errorf("the rounds of %s have no %s in common to lay flat: choose fewer with rounds:, or write draw: round", w.part.Name, many(o.Repeats))
	}
	w.findPanelWave()
	p := w.fit(w.reachPanel)
	c, _ := p.finish()
	return c, nil
}

// many is how many repeats were asked for.
func many(repeats int) string {
	if repeats > 1 {
		return fmt.Sprintf("%d repeats and more", repeats)
	}
	return "repeat"
}

const (
	evenPanel   = 0.7 // the shortest round of a panel to the longest
	bracketRoom = 8.0 // mm, under a panel
)

// strip lays rounds on straight lines: angles are within half a turn of its middle.
type strip struct {
	ring.Line
	mid float64
}

func (s strip) At(angle, height float64) ring.Frame {
	return s.Line.At(math.Remainder(angle-s.mid, ring.Turn), height)
}

// reachPanel finds the height of every stitch and sets the panel down at the top of
// the room it has.
func (w *work) reachPanel(p *page) {
	mid, half := w.middleAngle()
	w.upright = math.Pi/2 - mid
	w.lo = w.first
	if c := w.courses[w.first]; c.loose && w.last > w.first {
		w.lo++
	}
	w.ground = !(w.lo == 0 && isFoundation(w.courses[0].round))
	tall := w.singleHeight()
	radius, stitches := 0.0, 0
	for _, c := range w.courses[w.lo : w.last+1] {
		radius += c.form.Circumference / ring.Turn / float64(w.last+1-w.lo)
		stitches = max(stitches, len(c.order))
	}
	room := p.width - 2*margin - 2*besideRows
	longer := max(w.longer, 1)
	scale := math.Min(w.o.enlarged(largest)/tall, room/(2*half*radius)*longer)
	deep, crest := w.zigzag.Extent()
	layers := w.layers()
	for i := range layers {
		layers[i].Least, layers[i].Length = 0, 0 // flat rounds need no radius
	}
	const hole = 5
	w.radii = ring.Stack(layers, ring.Fit{Hole: hole, Outer: hole + p.bottom - p.top - 2*underRows - bracketRoom - (crest-deep)*scale*radius/longer, MaxScale: scale * longer})
	w.unit = math.Max(w.radii.Scale/longer*tall, 0.1)
	along := math.Min(scale*radius, math.Max(w.radii.Scale/longer*radius, leastPitch*float64(stitches)/ring.Turn*longer)) / longer
	deep, crest = deep*along, crest*along
	w.shape = strip{ring.Line{Scale: along, Left: !w.o.LeftHanded, Wave: w.waveAbout(mid, half, along)}, mid}
	w.radiateAll()
	bottom := math.Inf(1)
	if w.ground {
		bottom = w.groundRadius()
	}
	for _, c := range w.courses[w.lo : w.last+1] {
		for _, r := range c.radius {
			bottom = math.Min(bottom, r)
		}
	}
	w.place(canvas.Point{X: p.width / 2, Y: hundredth(p.top + underRows + w.outer + crest)})
	p.centre = w.centre
	p.bottom = hundredth(w.centre.Y - bottom - deep + underRows + w.unit/2 + bracketRoom)
}

// bracket marks the repeat under a panel.
func (a *artist) bracket(p *page) *scene.Group {
	c := a.courses[a.lo]
	n := len(c.order) / a.fold * a.window
	gap := (c.theta[c.order[n-1]] - c.theta[c.order[0]]) / float64(max(n-1, 1)) / 2
	from := a.point(c.theta[c.order[0]]-gap, 0)
	to := a.point(c.theta[c.order[n-1]]+gap, 0)
	y := p.bottom - bracketRoom + 2.2
	line := a.pen.Line
	d := &canvas.Path{}
	d.MoveTo(from.X, y-1.4)
	d.LineTo(from.X, y)
	d.LineTo(to.X, y)
	d.LineTo(to.X, y-1.4)
	g := &scene.Group{ID: "bracket", Title: "The repeat", Style: scene.Style{Stroke: &ink, Line: &line}}
	g.Add(&scene.Path{D: d})
	size := a.o.enlarged(keyText)
	words := "repeat"
	if a.window > 1 {
		words = fmt.Sprintf("%d repeats", a.window)
	}
	g.Add(&scene.Text{X: hundredth((from.X + to.X) / 2), Y: hundredth(y + 1.2 + typeface.CapHeight(size)), Size: size,
		Align: scene.Centre, Colour: ink, String: words})
	return g
}
