package ring

import (
	"math"
	"testing"
)

func TestStadium(t *testing.T) {
	for _, mirrored := range []bool{false, true} {
		s := Stadium{Long: 30, Side: 1.1, Mirrored: mirrored}
		for a := -1.0; a < 8; a += 0.01 {
			f, g := s.At(a, 12), s.At(a+1e-6, 12)
			if math.Hypot(f.X-g.X, f.Y-g.Y) > 1e-3 || math.Hypot(f.OutX-g.OutX, f.OutY-g.OutY) > 1e-3 {
				t.Fatalf("a jump at %.2f", a)
			}
			if along := (g.X-f.X)*f.AlongX + (g.Y-f.Y)*f.AlongY; along <= 0 {
				t.Fatalf("runs backwards at %.2f", a)
			}
			if got, want := s.Stretch(a, 12), math.Hypot(f.X-g.X, f.Y-g.Y)*1e6; math.Abs(got-want) > 1e-3*want {
				t.Fatalf("at %.2f a unit of angle is %.3f mm long, not %.3f", a, want, got)
			}
			// Every point lies its radius from the line, which Out points away from.
			x := math.Max(-15, math.Min(15, f.X))
			if d := math.Hypot(f.X-x, f.Y); math.Abs(d-12) > 1e-9 || math.Abs(f.X-x-12*f.OutX) > 1e-9 || math.Abs(f.Y-12*f.OutY) > 1e-9 {
				t.Fatalf("%.2f lies %.4f from the line", a, d)
			}
		}
		if l := s.Length(7.1, 12) - s.Length(7.1-Turn, 12); math.Abs(l-60-24*math.Pi) > 1e-9 {
			t.Errorf("%.3f mm around", l)
		}
		for a := -4.0; a < 8; a += 0.01 {
			if b := s.Angle(s.Length(a, 12), 12); math.Abs(a-b) > 1e-9 {
				t.Fatalf("%.2f comes back as %.4f", a, b)
			}
			if d := (s.Length(a+1e-6, 12) - s.Length(a, 12)) * 1e6; math.Abs(d-s.Stretch(a, 12)) > 1e-3*d {
				t.Fatalf("at %.2f the length grows by %.3f", a, d)
			}
		}
		// Half a turn on lies the point opposite.
		if f, g := s.At(0.7, 9), s.At(0.7+Turn/2, 9); math.Hypot(f.X+g.X, f.Y+g.Y) > 1e-9 {
			t.Error("not symmetric")
		}
	}
}
