package chart

import (
	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// Definition is one of the designer's own stitches, in words.
type Definition struct {
	Name, Words string
	// Own is the name that its stitches have in the fabric; "" where the key has them
	// under their name of the trade.
	Own string
	// Kind and Into are the stitch that its name is another for in the trade, and how
	// that goes into its place; the zero Kind for any other.
	Kind stitch.Kind
	Into stitch.Into
	// Told is set when its words are not told under the key: they say no more than
	// the key does, or stand elsewhere.
	Told bool
}

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

// definition is what the designer calls a stitch of her own; nil for any other.
func (o Options) definition(s *fabric.Stitch) *Definition {
	if s.Own == "" || s.Role != fabric.Worked {
		return nil
	}
	for i := range o.Special {
		if o.Special[i].Own == s.Own {
			return &o.Special[i]
		}
	}
	return nil
}

// renamed is what the designer calls a stitch that the trade knows by another name too.
func (o Options) renamed(k stitch.Kind, in stitch.Into) *Definition {
	for i := range o.Special {
		if d := &o.Special[i]; d.Kind.Is() && d.Kind == k && d.Into == in {
			return d
		}
	}
	return nil
}

// Measures of the definitions under a key, mm.
const (
	specialLead = 4.4 // from line to line
	specialAir  = 3.0 // above the line that sets them off
	specialHead = "Special stitches"
)

// special is the designer's own stitches told in words, under the key.
type special struct {
	definitions []Definition
	lines       [][]string // of each
	indent      float64    // of the words
	lead        float64    // from line to line
	width       float64    // of the room, 0 for none told
	keySizes
}

// laySpecial sets the definitions in the width of a page, but for those that the key
// tells.
func (w *work) laySpecial(width float64) (s special) {
	s.keySizes, s.lead = w.o.keySizes(), w.o.enlarged(specialLead)
	for _, d := range w.o.Special {
		if !d.Told {
			s.definitions = append(s.definitions, d)
			s.indent = max(s.indent, typeface.Width(d.Name, s.text, true, false)+2*s.space)
		}
	}
	for _, d := range s.definitions {
		s.width = width
		lines, _ := fitText(d.Words, s.text, s.text, false, width-s.indent)
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
	return float64(n+1)*s.lead + specialAir
}

// draw draws the definitions with their top left corner at x, y, below a line and a
// heading that set them off from the key.
func (s special) draw(x, y float64) *scene.Group {
	g := &scene.Group{ID: "special", Title: specialHead}
	y += specialAir
	rule := &canvas.Path{}
	rule.MoveTo(x, hundredth(y))
	rule.LineTo(hundredth(x+s.width), hundredth(y))
	line := &scene.Group{Style: scene.Style{Stroke: &pale, Line: new(0.15)}}
	line.Add(&scene.Path{D: rule})
	g.Add(line)
	y += s.lead
	g.Add(&scene.Text{X: x, Y: hundredth(y), Size: s.text, Bold: true, Colour: words, String: specialHead})
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
