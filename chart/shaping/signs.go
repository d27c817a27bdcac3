package shaping

import (
	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
)

// Increases and decreases are told apart by shape, by line and by colour.
var (
	increaseInk = scene.RGB(0x1f6f8b)
	decreaseInk = scene.RGB(0xb03a2e)

	// The marks point to the crown: two stitches open out of one, or close in
	// one. They are about the middle of the round's line.
	signs = map[markClass]sign{
		{}:                       {"increases", "increase, joined to the next ones", increaseInk, 0.4, nil, signShape("increase", "M-1.1 -1.5L0 0.6L1.1 -1.5", false)},
		{less: true}:             {"decreases", "decrease, joined to the next ones", decreaseInk, 0.4, []float64{0.8, 0.6}, signShape("decrease", "M-1.1 -1.3L0 0.9L1.1 -1.3Z", true)},
		{even: true}:             {"pattern-increases", "increase in a round that keeps its count", increaseInk, 0.2, nil, signShape("pattern-increase", "M-0.8 -1.1L0 0.5L0.8 -1.1", false)},
		{less: true, even: true}: {"pattern-decreases", "decrease in a round that keeps its count", decreaseInk, 0.2, []float64{0.8, 0.6}, signShape("pattern-decrease", "M-0.8 -0.9L0 0.7L0.8 -0.9Z", false)},
	}
)

// markClass is what marks have in common that are drawn and joined alike, and
// markClasses are all of them.
type markClass struct{ less, even bool }

var markClasses = []markClass{{}, {less: true}, {even: true}, {less: true, even: true}}

func (m mark) class() markClass { return markClass{m.less, m.even} }

// sign is how the marks of a class are drawn.
type sign struct {
	id, name string
	ink      scene.Colour
	line     float64 // mm
	dash     []float64
	shape    *scene.Shape
}

func signShape(id, path string, solid bool) *scene.Shape {
	return &scene.Shape{ID: id, Solid: solid, D: canvas.MustParseSVGPath(path)}
}

// joint is the style of the lines that join the signs.
func (s sign) joint() scene.Style { return scene.Stroked(s.ink, max(s.line*0.6, 0.15), s.dash...) }
