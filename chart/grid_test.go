package chart

import (
	"testing"

	"github.com/tdewolff/canvas"
)

// TestGridSpreads holds that no cell fills up however far from the corner of the page and
// however small strokes are drawn: all that is compared is compared within cells.
func TestGridSpreads(t *testing.T) {
	for _, size := range []float64{0.01, 0.1, 1, 10} {
		var all []segment
		for y := range 500 {
			for x := range 10 {
				at := canvas.Point{X: -1000 + float64(x)*size, Y: 2000 + float64(y)*size}
				all = append(all, segment{a: at, b: at.Add(canvas.Point{X: size / 2})})
			}
		}
		g := newGrid(all)
		most := 0
		for _, c := range g.cells {
			most = max(most, len(c))
		}
		if most > 8 {
			t.Errorf("strokes %v mm apart: %d in one cell", size, most)
		}
		if n := len(g.cells); n > 2*500*10*int(max(1, size*size)) {
			t.Errorf("strokes %v mm apart: %d cells", size, n)
		}
		if s := all[777]; g.clear(s.bounds().grown(size / 10)) {
			t.Errorf("strokes %v mm apart: one is not found", size)
		}
	}
}
