package chart

import (
	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/patterns/fabric"
	"whorl/symbols"
)

// Definition is one of the designer's own stitches, in words.
type Definition struct{ Name, Words string }

// OwnSymbol is a stitch of the designer's that is drawn by a symbol of her own.
type OwnSymbol struct {
	Name string // as she writes it
	*symbols.Own
}

// own is the designer's own symbol of a stitch, nil for one without.
func (o Options) own(s *fabric.Stitch) *OwnSymbol {
	if s.Own == "" || s.Role != fabric.Worked {
		return nil
	}
	if own, ok := o.Own[s.Own]; ok {
		return &own
	}
	return nil
}

// specialLead is from line to line of the definitions under a key, mm.
const specialLead = 4.4

// special is the designer's own stitches told in words, under the key.
type special struct {
	definitions []Definition
	lines       [][]string // of each
	indent      float64    // of the words
	lead        float64    // from line to line
	width       float64    // of the room, 0 for none told
	keySizes
}

// laySpecial sets the definitions in the width of a page.
func (w *work) laySpecial(width float64) (s special) {
	s.definitions, s.keySizes, s.lead = w.o.Special, w.o.keySizes(), w.o.enlarged(specialLead)
	for _, d := range s.definitions {
		s.indent = max(s.indent, typeface.Width(d.Name, s.text, true, false)+s.space)
	}
	for _, d := range s.definitions {
		s.width = width
		lines, _ := fitText(d.Words, s.text, s.text, false, width-s.box-s.keySizes.indent-s.indent)
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
	return float64(n)*s.lead + 2
}

// draw draws the definitions with their top left corner at x, y.
func (s special) draw(x, y float64) *scene.Group {
	g := &scene.Group{ID: "special", Title: "Special stitches"}
	x += s.box + s.keySizes.indent
	y += 2
	for i, d := range s.definitions {
		for k, l := range s.lines[i] {
			y += s.lead
			if k == 0 {
				g.Add(&scene.Text{X: x, Y: hundredth(y), Size: s.text, Bold: true, Colour: ink, String: d.Name})
			}
			g.Add(&scene.Text{X: hundredth(x + s.indent), Y: hundredth(y), Size: s.text, Colour: ink, String: l})
		}
	}
	return g
}
