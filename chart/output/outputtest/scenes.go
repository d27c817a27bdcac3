package outputtest

import (
	"fmt"
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
)

var (
	ink   = scene.RGB(0x1a1a1a)
	blue  = scene.RGB(0x1f5fa8)
	red   = scene.RGB(0xaa3333)
	tint  = scene.RGB(0xf4e8c8)
	clear = scene.Colour{}
)

// Everything is a scene of 160 × 120 mm with something of all that a scene
// can hold: nested groups and styles, strokes, fills, dashes, every kind of
// curve, shapes used at angles, and text of every sort.
func Everything() *scene.Scene {
	s := &scene.Scene{
		Width: 160, Height: 120,
		Title:  `Test "card" <1> & more – ½ size`,
		Desc:   "Strokes, fills, dashes, shapes\nand text in every way they can be drawn.",
		Author: "Saltpan Studio",
		Paper:  scene.RGB(0xffffff),
	}
	s.Root = scene.Group{ID: "card", Style: scene.Style{Stroke: &ink, Line: new(0.3)}}
	s.Root.Add(lines(), curves(), fills(), wheel(), letters())
	return s
}

func path(d string, style scene.Style) *scene.Path {
	return &scene.Path{D: canvas.MustParseSVGPath(d), Style: style}
}

// lines is strokes of several widths and dashes, inherited and not.
func lines() *scene.Group {
	g := &scene.Group{ID: "lines", Title: "Lines", Data: []scene.Attr{{Name: "kind", Value: `a<b & "c"`}}}
	g.Add(path("M5 5H50M5 7L50 9", scene.Style{}))
	g.Add(path("M5 12H50", scene.Style{Line: new(1.2), Stroke: &blue}))
	dashed := &scene.Group{ID: "dashed", Style: scene.Style{Dash: []float64{2, 1.5}, Line: new(0.5)}}
	dashed.Add(path("M5 15H50", scene.Style{}))
	dashed.Add(path("M5 17.5H50", scene.Style{Dash: []float64{0, 1.2}}))
	dashed.Add(path("M5 20H50", scene.Style{Dash: []float64{3, 1, 1}}))
	dashed.Add(path("M5 22.5H50", scene.Style{Dash: []float64{}, Stroke: &red}))
	dashed.Add(path("M12 32a6 6 0 1 1 0.01 0z", scene.Style{}))
	g.Add(dashed)
	g.Add(path("M25 27L30 36L35 27L40 36L45 27", scene.Style{Line: new(1.5)}))
	return g
}

// curves is arcs of every extent, and the two kinds of Bézier curve.
func curves() *scene.Group {
	g := &scene.Group{ID: "curves", Title: "Curves"}
	for i := range 7 {
		turn := float64(i+1) * 50
		x, y := 62+10.037*float64(i), 12.413
		a := (&canvas.Path{})
		r := 3.487
		a.MoveTo(x+r, y)
		a.Arc(r, r, 0, 0, turn)
		g.Add(&scene.Path{D: a})
	}
	g.Add(&scene.Path{D: canvas.Ellipse(5, 2).Transform(canvas.Identity.Translate(65, 25).Rotate(25))})
	g.Add(path("M75 28C80 15 85 40 92 22", scene.Style{}))
	g.Add(path("M95 28Q102 12 108 28T120 24", scene.Style{Line: new(0.8)}))
	g.Add(path("M125 28a120 120 0 0 1 28 -6", scene.Style{}))
	return g
}

// fills is solid shapes, with and without strokes, and one with a hole.
func fills() *scene.Group {
	g := &scene.Group{ID: "fills", Title: "Fills", Style: scene.Style{Fill: &tint}}
	g.Add(path("M5 42H25V60H5z", scene.Style{}))
	g.Add(path("M28 42H48V60H28zM33 47V55H43V47z", scene.Style{Stroke: &clear, Fill: &blue}))
	g.Add(path("M38 62l3 8l-8 -5h10l-8 5z", scene.Style{Fill: &red, Line: new(0.2)}))
	return g
}

// wheel is shapes used all round a circle, as a round of stitches has them.
func wheel() *scene.Group {
	oval := &scene.Shape{ID: "oval", D: canvas.Ellipse(1.9, 0.9)}
	dot := &scene.Shape{ID: "dot", Solid: true, D: canvas.Circle(0.737)}
	g := &scene.Group{ID: "wheel", Title: "Wheel"}
	const n = 24
	for i := range n {
		a := 2 * math.Pi * float64(i) / n
		sin, cos := math.Sincos(a)
		one := &scene.Group{ID: fmt.Sprintf("w%d", i), Title: fmt.Sprintf("Shape %d", i+1)}
		if i%2 == 1 {
			one.Style.Stroke = &blue
		}
		one.Add(&scene.Use{Shape: oval, X: 110 + 18*cos, Y: 75 + 18*sin, Angle: a*180/math.Pi + 90})
		one.Add(&scene.Use{Shape: dot, X: 110 + 24*cos, Y: 75 + 24*sin})
		leg := &canvas.Path{}
		leg.MoveTo(110+6*cos, 75+6*sin)
		leg.LineTo(110+15*cos, 75+15*sin)
		one.Add(&scene.Path{D: leg})
		g.Add(one)
	}
	return g
}

// letters is text: alignments, turns, weights, sizes, and the characters of
// the trade's measurements.
func letters() *scene.Group {
	g := &scene.Group{ID: "letters", Title: "Letters"}
	text := func(x, y, size float64, s string, more func(*scene.Text)) {
		t := &scene.Text{X: x, Y: y, Size: size, Colour: ink, String: s}
		if more != nil {
			more(t)
		}
		g.Add(t)
	}
	text(5, 78, 4, `46 (51, 56) cm × 18½″ – 20¼″`, nil)
	text(70, 84, 3.2, "AV To Wave. Rounds 1–9: 72 hdc", func(t *scene.Text) { t.Align, t.Bold = scene.Right, true })
	text(37, 90, 3, "Estuary Cap & <scarf> “café” ß ñ ¾", func(t *scene.Text) { t.Align, t.Italic = scene.Centre, true })
	text(37, 96, 3, "bold italic", func(t *scene.Text) { t.Align, t.Italic, t.Bold, t.Colour = scene.Centre, true, true, red })
	for i := range 8 {
		sin, cos := math.Sincos((float64(i)*45 + 7.5) * math.Pi / 180)
		text(110+32*cos, 75+32*sin, 2.5, "R"+fmt.Sprint(i+1)+"·5", func(t *scene.Text) {
			t.Angle, t.Align = float64(i)*45+7.5, scene.Align(i%3)
		})
	}
	text(8, 116, 3, "upwards 12.5", func(t *scene.Text) { t.Angle = -90 })
	text(16, 112, 9, "72", func(t *scene.Text) { t.Colour = blue })
	text(150, 116, 2, "two  spaces\tand\x01 a \xffbyte", func(t *scene.Text) { t.Align = scene.Right })
	return g
}

// Chart is a scene with as many stitches as asked for, in rounds, written as
// a stitch chart writes them: to measure sizes and speed by.
func Chart(stitches int) *scene.Scene {
	s := &scene.Scene{Width: 210, Height: 297, Title: "Chart", Desc: "A chart in the round.", Paper: scene.RGB(0xffffff)}
	s.Root = scene.Group{ID: "chart", Style: scene.Style{Stroke: &ink, Line: new(0.25)}}
	s.Root.Add(&scene.Text{X: 14, Y: 18, Size: 6, Bold: true, Colour: ink, String: s.Title},
		&scene.Text{X: 14, Y: 24, Size: 3.3, Colour: ink, String: "Right side shown, read anticlockwise"})
	chain := &scene.Shape{ID: "ch", D: canvas.Ellipse(1.3, 0.6)}
	centre := canvas.Point{X: 105, Y: 148.5}
	made := 0
	for round := 1; made < stitches; round++ {
		g := &scene.Group{ID: fmt.Sprintf("r%d", round), Title: fmt.Sprintf("Round %d", round), Data: []scene.Attr{{Name: "round", Value: fmt.Sprint(round)}}}
		if round%2 == 0 {
			g.Style.Stroke = &blue
		}
		n := min(8*round, stitches-made)
		radius := 5 + 4*float64(round)
		for i := range n {
			a := 2 * math.Pi * float64(i) / float64(8*round)
			sin, cos := math.Sincos(a)
			at := func(out, along float64) (float64, float64) {
				return centre.X + (radius+out)*cos - along*sin, centre.Y + (radius+out)*sin + along*cos
			}
			bx, by := at(0, 0)
			tx, ty := at(3.4, 0)
			st := &scene.Group{
				ID:    fmt.Sprintf("r%ds%d", round, i+1),
				Title: fmt.Sprintf("Rnd %d, stitch %d: hdc", round, i+1),
				Data: []scene.Attr{
					{Name: "stitch", Value: fmt.Sprint(i + 1)}, {Name: "kind", Value: "hdc"},
					{Name: "top", Points: []canvas.Point{{X: tx, Y: ty}}}, {Name: "base", Points: []canvas.Point{{X: bx, Y: by}}},
				},
			}
			if i%8 == 7 {
				st.Data[1].Value = "ch"
				st.Add(&scene.Use{Shape: chain, X: tx, Y: ty, Angle: a*180/math.Pi + 90})
			} else {
				leg := &canvas.Path{}
				leg.MoveTo(bx, by)
				leg.LineTo(tx, ty)
				leg.MoveTo(at(3.4, -0.9))
				leg.LineTo(at(3.4, 0.9))
				st.Add(&scene.Path{D: leg})
			}
			g.Add(st)
		}
		made += n
		x, y := centre.X+2, centre.Y-radius
		g.Add(&scene.Text{X: x, Y: y, Size: 2.5, Bold: true, Colour: ink, String: fmt.Sprint(round)})
		s.Root.Add(g)
	}
	return s
}
