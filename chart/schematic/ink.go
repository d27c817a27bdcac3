package schematic

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Inks: the outlines stand out from the dimensions, and the work from both.
var (
	ink   = scene.RGB(0x1c1b22)
	words = scene.RGB(0x4a4a4a)
	cloth = scene.RGB(0xf4f1ea)
	work  = scene.RGB(0x9c3a2e)
	none  = scene.Colour{}
)

type point = canvas.Point

func hundredth(x float64) float64 { return math.Round(100*x) / 100 }

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

func polygon(p ...point) *canvas.Path {
	path := line(p...)
	path.Close()
	return path
}

// paragraph sets a text in lines from y down and gives where the next begins.
func paragraph(g *scene.Group, s string, x, y, size float64, bold bool, colour scene.Colour, room float64) float64 {
	for _, l := range typeface.Wrap(s, size, bold, room) {
		y += size * leading
		g.Add(&scene.Text{X: hundredth(x), Y: hundredth(y - size*0.35), Size: size, Bold: bold, Colour: colour, String: l})
	}
	return y
}
