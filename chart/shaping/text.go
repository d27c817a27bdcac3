package shaping

import (
	"strings"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Inks. Grounds are light enough for text to stand on them.
var (
	ink   = scene.RGB(0x1c1b22)
	words = scene.RGB(0x4a4a4a)
	grey  = scene.RGB(0x8c8c8c)
	pale  = scene.RGB(0xd9d9d9)
	none  = scene.Colour{}
)

// wrap breaks a text into lines that are no longer than room; a single word
// longer than that is cut.
func wrap(s string, size float64, bold bool, room float64) []string {
	fits := func(t string) bool { return typeface.Width(t, size, bold, false) <= room }
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' }) {
		if line != "" && fits(line+" "+word) {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
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
		line = word
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// paragraph sets a text in lines from y down and gives where the next begins.
func paragraph(g *scene.Group, s string, x, y, size float64, bold bool, colour scene.Colour, room float64) float64 {
	for _, l := range wrap(s, size, bold, room) {
		y += size * 1.3
		g.Add(&scene.Text{X: x, Y: y - size*0.35, Size: size, Bold: bold, Colour: colour, String: l})
	}
	return y
}

// box is a rectangle that something stands in.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) meets(c box) bool { return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1 }

// boxOf is the rectangle that an upright text stands in.
func boxOf(t *scene.Text) box {
	w := typeface.Width(t.String, t.Size, t.Bold, t.Italic)
	x := t.X
	switch t.Align {
	case scene.Centre:
		x -= w / 2
	case scene.Right:
		x -= w
	}
	return box{x, t.Y - typeface.CapHeight(t.Size), x + w, t.Y + typeface.Descent(t.Size)/2}
}
