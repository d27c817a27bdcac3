// Package typeface is the one family of letters that pictures are set in:
// Liberation Sans, whose letters are as wide as Arial's and Helvetica's, so a
// text keeps its length where a reader's machine substitutes either of them.
// It measures text and gives its outlines, kerned as a viewer of SVG or PDF
// kerns it. Lengths are in millimetres, y down, sizes are the font's em.
//
// The letters are under the SIL Open Font License, version 1.1: see
// LICENSE-liberation.
package typeface

import (
	"image/color"
	"sync"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansbolditalic"
	"github.com/go-fonts/liberation/liberationsansitalic"
	"github.com/go-fonts/liberation/liberationsansregular"
	"github.com/tdewolff/canvas"
	"github.com/tdewolff/font"
)

// Families is the CSS font-family list for documents that name the typeface
// rather than carry it: the family, and those that have its widths.
const Families = "Liberation Sans, Arial, Helvetica, sans-serif"

// load reads one font of the family, the first time that it is asked for.
func load(ttf []byte, style canvas.FontStyle) func() *canvas.Font {
	return sync.OnceValue(func() *canvas.Font {
		f, err := canvas.LoadFont(ttf, 0, style)
		if err != nil {
			// The font is part of the program: this is no fault of any input.
			panic("typeface: " + err.Error())
		}
		return f
	})
}

var (
	regular    = load(liberationsansregular.TTF, canvas.FontRegular)
	bold       = load(liberationsansbold.TTF, canvas.FontBold)
	italic     = load(liberationsansitalic.TTF, canvas.FontItalic)
	boldItalic = load(liberationsansbolditalic.TTF, canvas.FontBold|canvas.FontItalic)
)

func pick(b, i bool) *canvas.Font {
	switch {
	case b && i:
		return boldItalic()
	case b:
		return bold()
	case i:
		return italic()
	}
	return regular()
}

// shaping is held while text is shaped: the shaper keeps notes in the font.
var shaping sync.Mutex

const ptPerMM = 72 / 25.4

// Line is the text as one line, its letters chosen and kerned, with the left
// end of its baseline at the origin. It is what the PDF output writes. The
// text is first put through Clean.
func Line(s string, size float64, bold, italic bool, ink color.Color) *canvas.Text {
	face := pick(bold, italic).Face(size*ptPerMM, ink)
	shaping.Lock()
	defer shaping.Unlock()
	return canvas.NewTextLine(face, Clean(s), canvas.Left)
}

// Width is the length of the text along its baseline.
func Width(s string, size float64, bold, italic bool) float64 {
	if size <= 0 {
		return 0
	}
	em := pick(bold, italic).Face(size*ptPerMM, color.Black).MmPerEm
	width := 0.0
	for _, r := range runsOf(s, bold, italic) {
		width += em * float64(r.advance)
	}
	return width
}

// Outline is the text as the outlines of its letters, to be filled by the
// nonzero rule, with the left end of its baseline at the origin.
func Outline(s string, size float64, bold, italic bool) *canvas.Path {
	p := &canvas.Path{}
	if size <= 0 {
		return p
	}
	face := pick(bold, italic).Face(size*ptPerMM, color.Black)
	em := face.MmPerEm
	for _, r := range runsOf(s, bold, italic) {
		x, y := em*r.x, 0.0
		for _, g := range r.glyphs {
			// The only error is of a glyph that the font lacks, and the
			// shaper names none.
			_ = face.Font.GlyphPath(p, g.ID, 0, x+em*float64(g.XOffset), y+em*float64(g.YOffset), em, font.NoHinting)
			x += em * float64(g.XAdvance)
			y += em * float64(g.YAdvance)
		}
	}
	return p.Scale(1, -1)
}

// metrics are those of the regular font at the given size; the family's other
// fonts differ from them by less than a hundredth of the size.
func metrics(size float64) canvas.FontMetrics {
	return regular().Face(size*ptPerMM, color.Black).Metrics()
}

// Ascent is how far the tallest letters of the family reach above the baseline.
func Ascent(size float64) float64 { return metrics(size).Ascent }

// Descent is how far the deepest letters of the family reach below the baseline.
func Descent(size float64) float64 { return metrics(size).Descent }

// XHeight is the height of a small x.
func XHeight(size float64) float64 { return metrics(size).XHeight }

// CapHeight is the height of a capital H; of the figures too, very nearly.
func CapHeight(size float64) float64 { return metrics(size).CapHeight }

// Missing is the characters of the text that the family has no letter for, in
// the order of their first appearance.
func Missing(s string) []rune {
	var missing []rune
	seen := map[rune]bool{}
	for _, r := range Clean(s) {
		if !seen[r] && regular().GlyphIndex(r) == 0 {
			missing = append(missing, r)
		}
		seen[r] = true
	}
	return missing
}
