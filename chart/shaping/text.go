package shaping

import (
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

// paragraph sets a text in lines from y down and gives where the next begins.
func paragraph(g *scene.Group, s string, x, y, size float64, bold bool, colour scene.Colour, room float64) float64 {
	for _, l := range typeface.Wrap(s, size, bold, room) {
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
