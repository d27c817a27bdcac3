package shaping

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
)

// class is how a round's edge is strained, for its colour and hatching.
type class struct {
	name string
	fill scene.Colour
	// across is the distance between the hatches across the ribbon, mm: the
	// folds of a slack edge; 0 for none. along is how many run along it: the
	// pull of a stretched one.
	across float64
	along  int
}

// fits is how far an edge may be stretched or slack and yet be said to fit.
const fits = 0.05

// The classes, from slack to stretched.
var classes = []class{
	{"slack by more than 20 %", scene.RGB(0xd9762b), 0.55, 0},
	{"slack by 5 to 20 %", scene.RGB(0xf2bb85), 1.2, 0},
	{"fits within 5 %", scene.RGB(0xe6e6e6), 0, 0},
	{"stretched by 5 to 15 %", scene.RGB(0xa9c8e8), 0, 1},
	{"stretched by more than 15 %", scene.RGB(0x5b93cc), 0, 3},
}

func classOf(strain float64) int {
	switch {
	case strain < -0.20:
		return 0
	case strain < -fits:
		return 1
	case strain <= fits:
		return 2
	case strain <= 0.15:
		return 3
	}
	return 4
}

// point is a point of the page.
type point = canvas.Point

// between is the point at t of the way from a to b.
func between(a, b point, t float64) point { return point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)} }

func polygon(p ...point) *canvas.Path {
	path := &canvas.Path{}
	for i, q := range p {
		if i == 0 {
			path.MoveTo(hundredth(q.X), hundredth(q.Y))
		} else {
			path.LineTo(hundredth(q.X), hundredth(q.Y))
		}
	}
	path.Close()
	return path
}

func line(p ...point) *canvas.Path {
	path := &canvas.Path{}
	for i, q := range p {
		if i == 0 {
			path.MoveTo(hundredth(q.X), hundredth(q.Y))
		} else {
			path.LineTo(hundredth(q.X), hundredth(q.Y))
		}
	}
	return path
}

func hundredth(x float64) float64 { return math.Round(100*x) / 100 }

func circle(x, y, r float64) *canvas.Path {
	p := &canvas.Path{}
	p.MoveTo(hundredth(x+r), hundredth(y))
	p.ArcTo(r, r, 0, false, true, hundredth(x-r), hundredth(y))
	p.ArcTo(r, r, 0, false, true, hundredth(x+r), hundredth(y))
	p.Close()
	return p
}

// ribbon paints the quadrilateral from inner edge a–b to outer edge c–d in the
// colour and hatching of a class. at is how far along its ribbon a is, so that
// the hatching runs on from round to round; it gives that of b.
func ribbon(g *scene.Group, k class, a, b, c, d point, at float64) float64 {
	g.Add(&scene.Path{Style: scene.Filled(k.fill), D: polygon(a, b, d, c)})
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	hatch := &canvas.Path{}
	if k.across > 0 && length > 0 {
		for n := math.Ceil(at/k.across - 1e-9); n*k.across < at+length-1e-9; n++ {
			t := (n*k.across - at) / length
			hatch = hatch.Append(line(between(a, b, t), between(c, d, t)))
		}
	}
	for i := range k.along {
		t := float64(i+1) / float64(k.along+1)
		hatch = hatch.Append(line(between(a, c, t), between(b, d, t)))
	}
	if !hatch.Empty() {
		g.Add(&scene.Path{Style: scene.Stroked(ink, 0.15), D: hatch})
	}
	return at + length
}
