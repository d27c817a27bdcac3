package ring

import (
	"math"
	"testing"
)

func TestHairpin(t *testing.T) {
	for _, mirrored := range []bool{false, true} {
		h := Hairpin{Long: 30, Side: 20, End: 9, Mirrored: mirrored}
		first := h.At(0, 12)
		if want := map[bool]float64{false: -1, true: 1}[mirrored]; first.AlongX != want || first.Y != -12 {
			t.Errorf("mirrored %v begins with %+v", mirrored, first)
		}
		for a := -4.0; a < 53; a += 0.01 {
			f, g := h.At(a, 12), h.At(a+1e-6, 12)
			if math.Hypot(f.X-g.X, f.Y-g.Y) > 1e-3 || math.Hypot(f.OutX-g.OutX, f.OutY-g.OutY) > 1e-3 {
				t.Fatalf("a jump at %.2f", a)
			}
			if along := (g.X-f.X)*f.AlongX + (g.Y-f.Y)*f.AlongY; along <= 0 {
				t.Fatalf("runs backwards at %.2f", a)
			}
			// Every point lies its radius from the line, or from where that goes on.
			x := math.Max(-15, f.X)
			if mirrored {
				x = math.Min(15, f.X)
			}
			if d := math.Hypot(f.X-x, f.Y); math.Abs(d-12) > 1e-9 || math.Abs(f.Y-12*f.OutY) > 1e-9 {
				t.Fatalf("%.2f lies %.4f from the line", a, d)
			}
		}
		// The two ends lie opposite one another.
		if last := h.At(49, 12); math.Abs(last.X-first.X) > 1e-9 || last.Y != 12 {
			t.Errorf("from %+v to %+v", first, last)
		}
	}
}
