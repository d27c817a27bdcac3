package typeface

import (
	"image/color"
	"sync"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/text"
)

// run is letters of one line that are set in one direction, in units of the font.
type run struct {
	x       float64 // where it begins, along the baseline
	advance int32   // how far it goes on
	glyphs  []text.Glyph
}

// setting is a text and how it is set; the runs of it are the same in every size.
type setting struct {
	text         string
	bold, italic bool
}

// Shaping a text takes long, and the same few are measured over and over while a
// place is looked for: numbers, counts, the words of the key.
var (
	shaped      = map[setting][]run{}
	shapedGuard sync.Mutex
)

// mostShaped is how many texts are kept. Then all are let go, so that a program
// that runs on does not grow.
const mostShaped = 20000

// runsOf shapes a text, put through Clean, or has it from before.
func runsOf(s string, bold, italic bool) []run {
	key := setting{s, bold, italic}
	shapedGuard.Lock()
	runs, known := shaped[key]
	shapedGuard.Unlock()
	if known {
		return runs
	}
	Line(s, 1, bold, italic, color.Black).WalkSpans(func(x, _ float64, span canvas.TextSpan) {
		r := run{x: x / span.Face.MmPerEm, glyphs: span.Glyphs}
		for _, g := range span.Glyphs {
			r.advance += g.XAdvance
		}
		runs = append(runs, r)
	})
	shapedGuard.Lock()
	defer shapedGuard.Unlock()
	if len(shaped) >= mostShaped {
		clear(shaped)
	}
	shaped[key] = runs
	return runs
}
