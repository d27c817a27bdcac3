package symbols

import (
	"flag"
	"math"
	"testing"

	"github.com/fogleman/gg"
	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

var sheetFile = flag.String("sheet", "", "write a contact sheet of all symbols to this PNG file")

// TestSheet draws the contact sheet: every symbol, then rows, fans, decreases
// and rounds as a chart puts them together, at eight times the size of print.
// The picture is for the eye; the test fails when a symbol draws nothing.
func TestSheet(t *testing.T) {
	sh := &sheet{gg.NewContext(2000, 3300), 8}
	sh.SetRGB(1, 1, 1)
	sh.Clear()
	sh.SetRGB(0, 0, 0)
	pen := Pen{Line: 0.3}
	x, y := 8.0, 20.0
	for _, sym := range All() {
		if x > 240 {
			x, y = 8, y+25
		}
		d := Draw(sym.Kind, sym.Into, standing(sym.Kind, x, y, 4, 4.2), pen)
		if d.Empty() {
			t.Errorf("%s draws nothing", sym.Kind.NameInto(sym.Into, stitch.US))
		}
		sh.draw(d, pen)
		sh.SetRGB(0.2, 0.4, 0.8)
		sh.DrawStringAnchored(sym.Kind.NameInto(sym.Into, stitch.US), x*8, (y+5)*8, 0.5, 0.5)
		sh.SetRGB(0, 0, 0)
		x += 11
		if sym.Kind.Shape == stitch.Together {
			x += 4 * float64(sym.Kind.Legs-2)
		}
	}
	for _, k := range []stitch.Kind{
		{Base: stitch.Double, Shape: stitch.Cluster, Legs: 2}, {Base: stitch.Double, Shape: stitch.Cluster, Legs: 3},
		{Base: stitch.Double, Shape: stitch.Cluster, Legs: 5}, {Base: stitch.Half, Shape: stitch.Puff, Legs: 4},
		{Base: stitch.Double, Shape: stitch.Bobble, Legs: 5}, {Base: stitch.Double, Shape: stitch.Popcorn, Legs: 5}, {Base: stitch.Chain, Shape: stitch.Picot, Legs: 4},
	} {
		sh.draw(Draw(k, stitch.Top, standing(k, x, y, 4, 6), pen), pen)
		x += 9
	}
	a := standing(stitch.Tog(stitch.Double, 5), 20, y+20, 4, 4)
	first, last := a, a
	last.Base, first.Base = a.Base[:2], a.Base[2:]
	last.Top.X -= 10
	last.Base = []canvas.Point{{X: a.Base[0].X - 10, Y: a.Base[0].Y}, {X: a.Base[1].X - 10, Y: a.Base[1].Y}}
	sh.draw(Half(stitch.Tog(stitch.Double, 5), stitch.Top, first, true, pen), pen)
	sh.draw(Half(stitch.Tog(stitch.Double, 5), stitch.Top, last, false, pen), pen)
	cross := Pen{Line: 0.3, Cross: true}
	x, y = 45, y+22
	for _, sym := range All() {
		if sym.Kind.Base == stitch.Single && sym.Kind.Shape == stitch.Plain {
			sh.draw(Draw(sym.Kind, sym.Into, standing(sym.Kind, x, y, 4, 4.2), cross), cross)
			x += 9
		}
	}
	for _, d := range []Drawing{
		Ring(canvas.Point{X: x, Y: y}, 2.5, 0, 4, pen), Ring(canvas.Point{X: x + 12, Y: y}, 4, 6, 4, pen), Ring(canvas.Point{X: x + 25, Y: y}, 3, 4, 4, pen),
		Arrow(level(x+36, y, 4), pen), Turn(level(x+44, y, 4), pen), Attach(level(x+52, y, 4), pen), FastenOff(level(x+60, y, 4), pen), Join(level(x+68, y, 4), pen),
		Start(1, standing(stitch.Of(stitch.Single), x+76, y, 4, 4.2), pen), Start(2, standing(stitch.Of(stitch.Half), x+84, y, 4, 4.2), pen),
		Start(3, standing(stitch.Of(stitch.Double), x+92, y, 4, 4.2), pen), Start(4, standing(stitch.Of(stitch.Treble), x+100, y, 4, 4.2), pen),
		Start(3, leaning(stitch.Of(stitch.Double), x+108, y, 3), pen),
	} {
		sh.draw(d, pen)
	}
	sh.rows(8, y+14, 4, 4.2, 0.3, false)
	sh.rows(130, y+14, 4, 4.2, 0.3, true)
	sh.rows(190, y+14, 2.6, 2.7, 0.24, false)
	y += 62
	sh.fans(12, y, 4, 0.3, stitch.Of(stitch.Double))
	sh.fans(12, y+22, 4, 0.3, stitch.Of(stitch.Treble))
	sh.fans(12, y+38, 4, 0.3, stitch.Of(stitch.Single))
	sh.round(55, y+100, true, Pen{Line: 0.3})
	sh.round(170, y+100, false, Pen{Line: 0.3})
	if *sheetFile != "" {
		if err := sh.SavePNG(*sheetFile); err != nil {
			t.Fatal(err)
		}
	}
}

type sheet struct {
	*gg.Context
	scale float64
}

func (sh *sheet) draw(d Drawing, pen Pen) {
	sh.Push()
	defer sh.Pop()
	sh.SetLineCapRound()
	sh.SetLineJoinRound()
	sh.SetLineWidth(pen.Line * sh.scale)
	sh.Scale(sh.scale, sh.scale)
	if d.Strokes != nil {
		sh.trace(d.Strokes)
		sh.Stroke()
	}
	if d.Solid != nil {
		sh.trace(d.Solid)
		sh.Fill()
	}
	if m := d.Mark; m != nil {
		sh.Translate(m.At.X, m.At.Y)
		sh.Rotate(m.Angle * math.Pi / 180)
		sh.trace(m.Path)
		if m.Solid {
			sh.Fill()
		} else {
			sh.Stroke()
		}
	}
}

func (sh *sheet) trace(p *canvas.Path) {
	for s := p.Scanner(); s.Scan(); {
		e := s.End()
		switch s.Cmd() {
		case canvas.MoveToCmd:
			sh.MoveTo(e.X, e.Y)
		case canvas.LineToCmd:
			sh.LineTo(e.X, e.Y)
		case canvas.QuadToCmd:
			sh.QuadraticTo(s.CP1().X, s.CP1().Y, e.X, e.Y)
		case canvas.CubeToCmd:
			sh.CubicTo(s.CP1().X, s.CP1().Y, s.CP2().X, s.CP2().Y, e.X, e.Y)
		case canvas.CloseCmd:
			sh.ClosePath()
		}
	}
}

// level are anchors at a point, working to the right.
func level(x, y, unit float64) Anchors {
	return Anchors{Top: canvas.Point{X: x, Y: y}, Along: canvas.Point{X: 1}, Up: canvas.Point{Y: -1}, Unit: unit, Width: 1.05 * unit}
}

// standing are anchors for a kind at its own height on a level row at y, the
// legs of a Together a width apart.
func standing(k stitch.Kind, x, y, unit, width float64) Anchors {
	a := level(x, y-Height(k)*unit, unit)
	a.Width = width
	n := 1
	if k.Shape == stitch.Together {
		n = k.Legs
		a.Top.X += float64(n-2) * width / 2
		x = a.Top.X
	}
	if k.Base == stitch.Chain && k.Shape == stitch.Plain {
		return a
	}
	for i := range n {
		a.Base = append(a.Base, canvas.Point{X: x + (float64(i)-float64(n-1)/2)*width, Y: y})
	}
	return a
}

func leaning(k stitch.Kind, x, y, lean float64) Anchors {
	a := standing(k, x, y, 4, 4.2)
	a.Top.X += lean
	return a
}

// rows draws rows of stacked stitches on a chain.
func (sh *sheet) rows(x, y, unit, width, line float64, cross bool) {
	pen := Pen{Line: line, Cross: cross}
	kinds := []stitch.Kind{stitch.Of(stitch.Single), stitch.Of(stitch.Single), stitch.Of(stitch.Half), stitch.Of(stitch.Double), stitch.Of(stitch.Single), stitch.Of(stitch.Double)}
	y += 30
	n := 10
	for i := range n {
		sh.draw(Draw(stitch.Of(stitch.Chain), stitch.Top, Anchors{Top: canvas.Point{X: x + float64(i)*width, Y: y},
			Along: canvas.Point{X: 1}, Up: canvas.Point{Y: -1}, Unit: unit, Width: width}, pen), pen)
	}
	ins := []stitch.Into{stitch.Top, stitch.BackLoop, stitch.FrontLoop, stitch.FrontPost, stitch.BackPost}
	for r, k := range kinds {
		for i := range n {
			in := stitch.Top
			if i > 4 {
				in = ins[(i+r)%len(ins)]
			}
			a := standing(k, x+float64(i)*width, y, unit, width)
			sh.draw(Draw(k, in, a, pen), pen)
		}
		y -= Height(k) * unit
	}
}

// fans draws 2 to 9 of a kind in one place, and as many worked together above.
func (sh *sheet) fans(x, y, unit, line float64, k stitch.Kind) {
	pen := Pen{Line: line}
	for n := 2; n <= 9; n++ {
		width := 0.8 * unit
		if n > 4 {
			width = 0.62 * unit
		}
		x += float64(n) * width / 2
		for i := range n {
			a := standing(k, x, y, unit, width)
			a.Shared = true
			a.Top.X += (float64(i) - float64(n-1)/2) * width
			sh.draw(Draw(k, stitch.Top, a, pen), pen)
		}
		x += float64(n)*width/2 + 4
	}
}

// round draws rounds of stitches: increases outwards, or decreases to a crown.
func (sh *sheet) round(cx, cy float64, outwards bool, pen Pen) {
	const unit = 3.4
	at := func(r, turn float64) canvas.Point {
		sin, cos := math.Sincos(turn)
		return canvas.Point{X: cx + r*sin, Y: cy - r*cos}
	}
	anchors := func(r0, r1, turn float64, n int, feet ...float64) Anchors {
		sin, cos := math.Sincos(turn)
		a := Anchors{Top: at(r1, turn), Up: canvas.Point{X: sin, Y: -cos}, Along: canvas.Point{X: -cos, Y: -sin}, Unit: unit, Width: 2 * math.Pi * r1 / float64(n)}
		if r1 < r0 {
			a.Up = a.Up.Neg()
		}
		for _, f := range feet {
			a.Base = append(a.Base, at(r0, f))
		}
		return a
	}
	if outwards {
		sh.draw(Ring(canvas.Point{X: cx, Y: cy}, 2.4, 0, unit, pen), pen)
		r := 2.4
		n := 12
		for i := range n {
			turn := 2 * math.Pi * float64(i) / float64(n)
			if i == 0 {
				sh.draw(Start(3, anchors(r, r+2*unit, turn, n, turn), pen), pen)
				continue
			}
			sh.draw(Draw(stitch.Of(stitch.Double), stitch.Ring, anchors(r, r+2*unit, turn, n, turn), pen), pen)
		}
		r += 2 * unit
		for i := range 2 * n {
			turn := 2 * math.Pi * (float64(i) + 0.5) / float64(2*n)
			foot := 2 * math.Pi * float64(i/2) / float64(n)
			sh.draw(Draw(stitch.Of(stitch.Double), stitch.Top, anchors(r, r+2*unit, turn-math.Pi/float64(n), 2*n, foot), pen), pen)
		}
		r += 2 * unit
		for i := range n {
			foot := 2 * math.Pi * (float64(2*i) + 0.5) / float64(2*n)
			for j := range 5 {
				a := anchors(r, r+2.1*unit, foot+(float64(j)-2)*2*math.Pi/84-math.Pi/12, 84, foot-math.Pi/12)
				a.Shared = true
				sh.draw(Draw(stitch.Of(stitch.Double), stitch.Top, a, pen), pen)
			}
			sh.draw(Draw(stitch.Of(stitch.Single), stitch.Top, anchors(r, r+unit, foot, 64, foot), pen), pen)
		}
		return
	}
	r, n := 44.0, 72
	turn := func(i float64) float64 { return 2 * math.Pi * i / float64(n) }
	for i := range n {
		f := turn(float64(i))
		sh.draw(Draw(stitch.Of(stitch.Half), stitch.BackLoop, anchors(r, r-1.33*unit, f, n, f), pen), pen)
	}
	r -= 1.33 * unit
	for i := 0; i < n; i += 6 {
		var feet []float64
		for j := range 5 {
			feet = append(feet, turn(float64(i+j-2)))
		}
		sh.draw(Draw(stitch.Tog(stitch.Double, 5), stitch.Top, anchors(r, r-2*unit, turn(float64(i)), n/2, feet...), pen), pen)
		f := turn(float64(i + 3))
		sh.draw(Draw(stitch.Of(stitch.Double), stitch.FrontPost, anchors(r, r-2*unit, f, n/2, f), pen), pen)
	}
	r -= 2 * unit
	for i := range 24 {
		f := turn(float64(3 * i))
		k := stitch.Kind{Base: stitch.Double, Shape: []stitch.Shape{stitch.Puff, stitch.Popcorn, stitch.Bobble, stitch.Cluster}[i%4], Legs: 3}
		sh.draw(Draw(k, stitch.Top, anchors(r, r-2*unit, f, 24, f), pen), pen)
	}
	r -= 2 * unit
	for i := range 12 {
		f, g := turn(float64(6*i)), turn(float64(6*i+3))
		sh.draw(Draw(stitch.Tog(stitch.Single, 2), stitch.Top, anchors(r, r-unit, (f+g)/2, 12, f, g), pen), pen)
	}
	r -= unit
	for i := range 12 {
		f := turn(float64(6*i) + 1.5)
		sh.draw(Draw(stitch.Of(stitch.Single), stitch.Top, anchors(r, r-unit, f, 12, f), pen), pen)
	}
}
