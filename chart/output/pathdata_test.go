package output

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
)

func TestNumbers(t *testing.T) {
	for x, want := range map[float64][2]string{
		0: {"0", "0"}, -0.001: {"0", "0"}, 0.004: {"0", "0"}, 0.5: {"50", "0.5"}, -0.25: {"-25", "-0.25"},
		1: {"100", "1"}, 100.1: {"10010", "100.1"}, 12.345: {"1235", "12.35"}, -7.999: {"-800", "-8"},
	} {
		if got := [2]string{units(x), decimal(x)}; got != want {
			t.Errorf("%v is written %s, not %s", x, got, want)
		}
	}
}

func TestPathData(t *testing.T) {
	for _, c := range []struct{ path, want string }{
		{"M.01.02L.03.04.05.05", "M1 2 3 4 5 5"},
		{"M1 2L1.03 2.04", "M100 200l3 4"},
		{"M1 2L1.03 2 1.03 1.9z", "M100 200h3V190z"},
		{"M10.5 0.5L10.25 -0.5", "M1050 50 1025-50"},
		{"M1 1L1.001 1.001", "M100 100h0"},           // too short to show: a dot
		{"M1 1L1.001 1.001L5 5", "M100 100 500 500"}, // a line after it: no dot
		{"M1 1L2 2M5 5L6 6", "M100 100 200 200M500 500 600 600"},
		{"M1.01 1.01L1.02 1.02M1.03 1.03L1.04 1.04", "M101 101l1 1m1 1 1 1"},
		{"M.1 .1Q.15 .05 .2 .1", "M10 10q5-5 10 0"},
		{"M.1 .1C.11 .11 .12 .11 .13 .1", "M10 10c1 1 2 1 3 0"},
		{"M.1 0A.1 .1 0 0 1 0 .1", "M10 0A10 10 0 0 1 0 10"},
	} {
		if got := string(appendPathData(nil, canvas.MustParseSVGPath(c.path))); got != c.want {
			t.Errorf("%s is written %s, not %s", c.path, got, c.want)
		}
	}
}

// fromPathData reads a path back from what was written of it.
func fromPathData(t *testing.T, d string) *canvas.Path {
	t.Helper()
	p, err := canvas.ParseSVGPath(d)
	if err != nil {
		t.Fatal(err)
	}
	return p.Transform(canvas.Identity.Scale(0.01, 0.01))
}

// Roundings do not add up: after hundreds of steps every point is still within
// 0.005 mm in x and in y of where it was.
func TestPathDataStaysInPlace(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		p := &canvas.Path{}
		x, y := r.Float64()*200, r.Float64()*200
		p.MoveTo(x, y)
		for range 400 {
			step := func() float64 { return r.Float64() * math.Pow(10, float64(r.IntN(3)-1)) }
			switch r.IntN(4) {
			case 0:
				x += step() + 0.31
				p.LineTo(x, y)
			case 1:
				x, y = x+step()+0.31, y-step()-0.07
				p.LineTo(x, y)
			case 2:
				x, y = x+step()+0.31, y-step()-0.07
				p.CubeTo(x-1, y+step(), x+step(), y-1, x, y)
			case 3:
				x, y = x+step()+0.31, y-step()-0.07
				p.MoveTo(x, y)
				x += 1.1
				p.LineTo(x, y)
			}
		}
		d := string(appendPathData(nil, p))
		q := fromPathData(t, d)
		a, b := p.Coords(), q.Coords()
		if len(a) != len(b) {
			t.Fatalf("%d points became %d", len(a), len(b))
		}
		for i := range a {
			if math.Abs(a[i].X-b[i].X) > 0.005+1e-9 || math.Abs(a[i].Y-b[i].Y) > 0.005+1e-9 {
				t.Fatalf("point %d moved from %v to %v", i, a[i], b[i])
			}
		}
	}
}

// Arcs of any size and extent stay in place along their whole length: every
// point written is as far from the centre as it should be.
func TestArcsStayInPlace(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	extents := []float64{3, 20, 90, 170, 179.5, 179.99, 180, 180.01, 181, 200, 270, 355, 359.5}
	for _, extent := range extents {
		for range 40 {
			radius := 0.3 * math.Pow(500, r.Float64())
			cx, cy, from := r.Float64()*200, r.Float64()*200, r.Float64()*360
			to := from + extent
			if r.IntN(2) == 0 {
				from, to = to, from
			}
			p := &canvas.Path{}
			sin, cos := math.Sincos(from * math.Pi / 180)
			p.MoveTo(cx+radius*cos, cy+radius*sin)
			p.Arc(radius, radius, 0, from, to)
			d := string(appendPathData(nil, p))
			q := fromPathData(t, d)
			length := q.Length()
			if want := radius * extent * math.Pi / 180; math.Abs(length-want) > 0.03+0.001*want {
				t.Errorf("%g° of radius %.3f is %.3f mm long, not %.3f: %s", extent, radius, length, want, d)
			}
			for _, c := range q.Flatten(0.0005).Coords() {
				if off := math.Hypot(c.X-cx, c.Y-cy) - radius; math.Abs(off) > 0.015 {
					t.Fatalf("%g° of radius %.3f leaves its circle by %.3f mm: %s", extent, radius, off, d)
				}
			}
		}
	}
}

// A large circle, of arcs or of the curves that stand for them, is round.
func TestWithoutArcs(t *testing.T) {
	const radius = 90.
	p := withoutArcs(canvas.Circle(radius))
	for _, c := range p.Flatten(1e-4).Coords() {
		if off := math.Hypot(c.X, c.Y) - radius; math.Abs(off) > 0.001 {
			t.Fatalf("the circle is left by %.4f mm", off)
		}
	}
	for i, d := 0, p.Data(); i < len(d); i += commandLength(d[i]) {
		if d[i] == canvas.ArcToCmd {
			t.Fatal("an arc is left")
		}
	}
}

// A whole circle is two arcs, whatever its radius.
func TestCircleIsTwoArcs(t *testing.T) {
	for radius := 0.3; radius < 120; radius *= 1.37 {
		d := string(appendPathData(nil, canvas.Circle(radius).Translate(105.003, 148.502)))
		if n := len(strings.Fields(strings.NewReplacer("-", " -").Replace(d))); n > 16 || strings.Count(strings.ToLower(d), "c") > 0 {
			t.Errorf("a circle of radius %.3f is written %s", radius, d)
		}
	}
}
