package chart

import (
	"math"
	"testing"

	"whorl/chart/ring"
	"whorl/geometry"
)

// A loop of five chains over three stitches gets the room of those; one that passes over
// none keeps a part of its own, and one over more than it is long all of it.
func TestArchLoops(t *testing.T) {
	below := &course{form: &geometry.RoundForm{Circumference: 50}, long: 25} // 2 mm of fabric each
	for _, tt := range []struct {
		name string
		over float64 // from foot to foot, as the row below is laid
		want float64 // mm of all the chains
	}{
		{"over three", 4, 4},
		{"over none", 0.5, 5 * leastArch},
		{"over many", 9, 5},
	} {
		items := []ring.Item{{Width: 4, Base: 1, Place: 1}}
		for range 5 {
			items = append(items, ring.Item{Width: 1, Free: true})
		}
		items = append(items, ring.Item{Width: 4, Base: 1 + tt.over, Place: 2})
		less := archLoops(items, below)
		sum := 0.0
		for _, chain := range items[1:6] {
			sum += chain.Width
		}
		if math.Abs(sum-tt.want) > 1e-9 || math.Abs(sum+less-5) > 1e-9 {
			t.Errorf("%s: %.3f mm of chains, %.3f less", tt.name, sum, less)
		}
	}
}

// Strokes are 0.2 to 0.34 mm wide, and narrower only where symbols are too small to print.
func TestLine(t *testing.T) {
	for _, tt := range []struct{ unit, want float64 }{{7, 0.34}, {3, 0.26}, {2, 0.2}, {1.5, 0.18}, {0.5, 0.13}} {
		if got := (Options{}).line(tt.unit); got != tt.want {
			t.Errorf("%.2f mm for a unit of %.1f mm, not %.2f", got, tt.unit, tt.want)
		}
	}
}
