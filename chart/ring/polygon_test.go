package ring

import (
	"math"
	"testing"
)

func TestPolygon(t *testing.T) {
	for sides := 3; sides <= 8; sides++ {
		for _, mirrored := range []bool{false, true} {
			p := Polygon{Circle: Circle{Start: 0.3, Mirrored: mirrored, Round: 5, Full: 20}, Sides: sides, Corner: 0.7}
			each := Turn / float64(sides)
			// A corner lies 1/cos(half a side's angle) out, the middle of a side 1.
			for k := range sides {
				for share, far := range map[float64]float64{0: 1 / math.Cos(each/2), 0.5: 1} {
					f := p.At(0.7+(float64(k)+share)*each, 30)
					if d := math.Hypot(f.X, f.Y); math.Abs(d-30*far) > 1e-9 {
						t.Errorf("%d sides: %g of side %d is %.3f from the centre, not %.3f", sides, share, k, d, 30*far)
					}
				}
			}
			for a := -1.0; a < 8; a += 0.01 {
				f, g := p.At(a, 30), p.At(a+1e-6, 30)
				if math.Hypot(f.X-g.X, f.Y-g.Y) > 1e-3 || math.Hypot(f.OutX-g.OutX, f.OutY-g.OutY) > 1e-3 {
					t.Fatalf("%d sides: a jump at %.2f", sides, a)
				}
				if n := math.Hypot(f.OutX, f.OutY); math.Abs(n-1) > 1e-9 || math.Abs(f.OutX*f.AlongX+f.OutY*f.AlongY) > 1e-9 {
					t.Fatalf("%d sides: the frame at %.2f is not square", sides, a)
				}
				if f := p.At(a, 4); math.Abs(math.Hypot(f.X, f.Y)-4) > 1e-9 {
					t.Fatalf("%d sides: the middle is not round at %.2f", sides, a)
				}
			}
		}
	}
}

func TestPolygonExtent(t *testing.T) {
	square := Polygon{Sides: 4, Corner: math.Pi / 4}
	hexagon := Polygon{Sides: 6}
	if e, up := square.Extent(); math.Abs(up) > 1e-9 || math.Abs(e-1) > 1e-9 {
		t.Errorf("a square on its side reaches %.3f", e)
	}
	triangle := Polygon{Circle: Circle{Start: math.Pi / 2}, Sides: 3}
	if e, up := triangle.Extent(); math.Abs(e-math.Sqrt(3)) > 1e-9 || math.Abs(up-0.5) > 1e-9 {
		t.Errorf("a triangle that stands on a side reaches %g and has its middle %g up", e, up)
	}
	if e, up := hexagon.Extent(); math.Abs(up) > 1e-9 || math.Abs(e-2/math.Sqrt(3)) > 1e-9 {
		t.Errorf("a hexagon with a corner to the right reaches %.3f", e)
	}
}
