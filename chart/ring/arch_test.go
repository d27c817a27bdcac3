package ring

import (
	"math"
	"testing"
)

func TestArch(t *testing.T) {
	for _, x := range []struct {
		chord, length, most, least float64
		high                       float64 // of the middle
	}{
		{10, 5, 8, 0, 0},           // the feet are far apart
		{10, 5, 8, 1, 1},           // but a little
		{10, 5 * math.Pi, 8, 1, 5}, // half a circle
		{2, 8, 20, 1, 3.72},        // half an ellipse
		{2, 80, 3, 1, 3},           // no higher than that
		{10, 5 * math.Pi, 2, 1, 2}, // nor this
	} {
		spots, long := Arch(x.chord, 0, x.length, x.most, x.least, 5)
		if d := math.Abs(spots[2].Y - x.high); d > 0.05 || math.Abs(spots[2].X-x.chord/2) > 1e-6 {
			t.Errorf("%v: the middle is at %.3f, %.3f", x, spots[2].X, spots[2].Y)
		}
		for k, s := range spots {
			if m := spots[4-k]; math.Abs(s.Y-m.Y) > 1e-6 || math.Abs(s.X+m.X-x.chord) > 1e-6 {
				t.Errorf("%v: %v and %v do not mirror one another", x, s, m)
			}
		}
		if long < x.chord-1e-9 {
			t.Errorf("%v: it is %.2f long", x, long)
		}
	}
}
