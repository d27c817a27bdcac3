package symbols

import (
	"math/rand"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

const bead = "M4 20 V13 a3 3 0 1 1 0.01 0 M4 7 V1 M1 1 Q4 0 7 1"

func ownSymbol(t *testing.T) *Own {
	t.Helper()
	o, err := NewOwn(bead, 8, 20, canvas.Point{X: 4, Y: 20}, canvas.Point{X: 4, Y: 1})
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// A designer's own symbol begins where its stitch stands, whatever the anchors, keeps
// within its room, and bends to where they lead.
func TestOwn(t *testing.T) {
	o := ownSymbol(t)
	r := rand.New(rand.NewSource(2))
	k := stitch.Of(stitch.Double)
	for range 300 {
		a := random(r, k)
		pen := Pen{Line: 0.25}
		d := o.Draw(k, stitch.Top, a, pen)
		if d.Empty() || d.Solid != nil {
			t.Fatalf("%+v: %+v", a, d)
		}
		ls := lines(d.Strokes)
		if len(ls) != 3 || !startsAt(ls[0], a.Base[0]) {
			t.Fatalf("%+v: %d strokes, the first from %v", a, len(ls), ls[0][0])
		}
		end := ls[1][len(ls[1])-1]
		if off := end.Sub(a.Top).Length(); off > 0.3*a.Unit {
			t.Errorf("%+v: the line to the top ends %.2f mm off it", a, off)
		}
		// The bar, from end to end.
		if long := ls[2][0].Sub(ls[2][len(ls[2])-1]).Length(); long > 0.88*a.Width+0.01 || long < 0.2*pen.Line {
			t.Errorf("%+v: a bar of %.2f mm", a, long)
		}
	}
	post := o.Draw(k, stitch.FrontPost, level(50, 50, 4), Pen{Line: 0.3})
	if len(lines(post.Strokes)) != 4 {
		t.Errorf("a post stitch has %d strokes, with its hook", len(lines(post.Strokes)))
	}
}

func TestOwnRefuses(t *testing.T) {
	for _, c := range []struct {
		name, path, want string
		at               int // -1: no place in the path
	}{
		{"letter", "M4 20 X4 1", `"X" has no meaning`, 6},
		{"sign", "M4 20 L4 1 # bar", `"#" has no meaning`, 11},
		{"number missing", "M4 20 L4", "cannot be read", 8},
		{"no command", "4 20 4 1", "does not begin with M", 0},
		{"nothing", "M4 20", "draws nothing", -1},
		{"outside", "M4 20 V1 H60", "leaves its box at 60 1", -1},
		{"far outside", "M4 20 V1 H1e300", "leaves its box", -1},
		{"no foot", "M1 1 H7", "comes to its foot at 4 20", -1},
		{"too much", "M4 20 " + strings.Repeat("L1 1 L7 2 ", 210), "more than 400", -1},
	} {
		_, err := NewOwn(c.path, 8, 20, canvas.Point{X: 4, Y: 20}, canvas.Point{X: 4, Y: 1})
		bad, ok := err.(*PathError)
		if !ok || !strings.Contains(bad.Message, c.want) {
			t.Errorf("%s: %v, not %q", c.name, err, c.want)
			continue
		}
		if at := bad.At; bad.InPath != (c.at >= 0) || bad.InPath && at != c.at {
			t.Errorf("%s: at %d (%v), not %d", c.name, at, bad.InPath, c.at)
		}
	}
	if _, err := NewOwn(bead, 8, 20, canvas.Point{X: 4, Y: 20}, canvas.Point{X: 4, Y: 20}); err == nil {
		t.Error("a symbol without height is taken")
	}
}

// Whatever stands in a path, it is refused or drawn.
func FuzzOwn(f *testing.F) {
	for _, s := range []string{bead, "M4 20V1", "M4 20A1e9 2 0 1 1 4 1z", "m4,20 c1-2 3-4 0-19 s1 1 2 2 t1 1", "M4 20 L", "z", " ", "M4 20 a0 0 0 0 0 0-19"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, path string) {
		o, err := NewOwn(path, 8, 20, canvas.Point{X: 4, Y: 20}, canvas.Point{X: 4, Y: 1})
		if err == nil {
			o.Draw(stitch.Of(stitch.Double), stitch.Top, level(50, 50, 4), Pen{Line: 0.3})
		}
	})
}
