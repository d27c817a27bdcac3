package chart

import (
	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Definition is one of the designer's own stitches, in words.
type Definition struct{ Name, Words string }

// specialLead is from line to line of the definitions under a key, mm.
const specialLead = 4.4

// special is the designer's own stitches told in words, under the key.
type special struct {
	definitions []Definition
	lines       [][]string // of each
	indent      float64    // of the words
}

// laySpecial sets the definitions in the width of a page.
func (w *work) laySpecial(width float64) (s special) {
	s.definitions = w.o.Special
	for _, d := range s.definitions {
		s.indent = max(s.indent, typeface.Width(d.Name, keyText, true, false)+keySpace)
	}
	for _, d := range s.definitions {
		lines, _ := fitText(d.Words, keyText, keyText, false, width-keyBox-keyIndent-s.indent)
		s.lines = append(s.lines, lines)
	}
	return s
}

func (s special) height() float64 {
	n := 0
	for _, l := range s.lines {
		n += len(l)
	}
	if n == 0 {
		return 0
	}
	return float64(n)*specialLead + 2
}

// draw draws the definitions with their top left corner at x, y.
func (s special) draw(x, y float64) *scene.Group {
	g := &scene.Group{ID: "special", Title: "Special stitches"}
	x += keyBox + keyIndent
	y += 2
	for i, d := range s.definitions {
		for k, l := range s.lines[i] {
			y += specialLead
			if k == 0 {
				g.Add(&scene.Text{X: x, Y: hundredth(y), Size: keyText, Bold: true, Colour: ink, String: d.Name})
			}
			g.Add(&scene.Text{X: hundredth(x + s.indent), Y: hundredth(y), Size: keyText, Colour: ink, String: l})
		}
	}
	return g
}
