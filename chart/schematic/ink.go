package schematic

import (
	"math"
	"strings"

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

func stroke(colour scene.Colour, width float64, dash ...float64) scene.Style {
	s := scene.Style{Stroke: &colour, Fill: &none, Line: &width}
	if len(dash) > 0 {
		s.Dash = dash
	}
	return s
}

func fill(colour scene.Colour) scene.Style { return scene.Style{Stroke: &none, Fill: &colour} }

// wrap breaks a text into lines that are no longer than room; a single word
// longer than that is cut.
func wrap(s string, size float64, bold bool, room float64) []string {
	fits := func(t string) bool { return typeface.Width(t, size, bold, false) <= room }
	var lines []string
	text := ""
	for _, word := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' }) {
		if text != "" && fits(text+" "+word) {
			text += " " + word
			continue
		}
		if text != "" {
			lines = append(lines, text)
		}
		for !fits(word) && len([]rune(word)) > 1 {
			u := []rune(word)
			n := len(u) - 1
			for n > 1 && !fits(string(u[:n])) {
				n--
			}
			lines = append(lines, string(u[:n]))
			word = string(u[n:])
		}
		text = word
	}
	if text != "" {
		lines = append(lines, text)
	}
	return lines
}

// paragraph sets a text in lines from y down and gives where the next begins.
func paragraph(g *scene.Group, s string, x, y, size float64, bold bool, colour scene.Colour, room float64) float64 {
	for _, l := range wrap(s, size, bold, room) {
		y += size * leading
		g.Add(&scene.Text{X: hundredth(x), Y: hundredth(y - size*0.35), Size: size, Bold: bold, Colour: colour, String: l})
	}
	return y
}
