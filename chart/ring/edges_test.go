package ring

import (
	"math"
	"testing"
)

// rectangle is 60 by 40 mm; its corners take a quarter of the turn.
func rectangle(mirrored bool) Edges {
	const corner = Turn / 16
	wide, high := (Turn-4*corner)*0.3, (Turn-4*corner)*0.2
	return Edges{Mirrored: mirrored, Corners: []Corner{
		{30, 20, 0, corner}, {-30, 20, wide + corner, corner},
		{-30, -20, wide + high + 2*corner, corner}, {30, -20, 2*wide + high + 3*corner, corner},
	}}
}

func TestEdges(t *testing.T) {
	for _, mirrored := range []bool{false, true} {
		e := rectangle(mirrored)
		for a := -1.0; a < 8; a += 0.01 {
			f, g := e.At(a, 12), e.At(a+1e-6, 12)
			if math.Hypot(f.X-g.X, f.Y-g.Y) > 1e-3 || math.Hypot(f.OutX-g.OutX, f.OutY-g.OutY) > 1e-3 {
				t.Fatalf("a jump at %.2f", a)
			}
			if along := (g.X-f.X)*f.AlongX + (g.Y-f.Y)*f.AlongY; along <= 0 {
				t.Fatalf("runs backwards at %.2f", a)
			}
			// Every point lies its radius outside one edge, and square to it but in
			// a corner.
			if d := math.Max(math.Abs(f.X)-30, math.Abs(f.Y)-20); math.Abs(d-12) > 1e-9 {
				t.Fatalf("%.2f lies %.4f from the edges", a, d)
			}
			foot := e.At(a, 0)
			if region, _ := e.Region(a); region%2 == 0 && math.Hypot(f.X-foot.X-12*f.OutX, f.Y-foot.Y-12*f.OutY) > 1e-9 {
				t.Fatalf("%.2f is not square to its edge", a)
			} else if region%2 == 1 && math.Hypot(math.Abs(foot.X)-30, math.Abs(foot.Y)-20) > 1e-9 {
				t.Fatalf("the corner at %.2f begins at %.2f, %.2f", a, foot.X, foot.Y)
			}
		}
		if s := e.Stretch(12) * Turn; math.Abs(s-2*(84+64)) > 1e-9 {
			t.Errorf("%.3f mm round", s)
		}
		if x, y := e.Tip(2, 12); math.Hypot(x+42, y+32) > 1e-9 {
			t.Errorf("a tip at %.3f, %.3f", x, y)
		}
	}
	sum := 0.0
	for r := range 8 {
		sum += rectangle(false).Span(r)
	}
	if math.Abs(sum-Turn) > 1e-9 {
		t.Errorf("the regions take %.4f", sum)
	}
}
