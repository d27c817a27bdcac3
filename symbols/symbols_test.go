package symbols

import (
	"flag"
	"fmt"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

var update = flag.Bool("update", false, "write the golden files anew")

// line is a stroke of a drawing: a subpath as points near enough to be joined
// by straight lines.
type line []canvas.Point

// lines are the strokes of a path.
func lines(p *canvas.Path) (ls []line) {
	if p == nil {
		return nil
	}
	for s := p.Scanner(); s.Scan(); {
		var c curve
		switch s.Cmd() {
		case canvas.MoveToCmd:
			ls = append(ls, line{s.End()})
			continue
		case canvas.LineToCmd, canvas.CloseCmd:
			c = curve{s.Start(), s.End()}
		case canvas.QuadToCmd:
			c = curve{s.Start(), s.CP1(), s.End()}
		case canvas.CubeToCmd:
			c = curve{s.Start(), s.CP1(), s.CP2(), s.End()}
		}
		last := &ls[len(ls)-1]
		for i := 1; i <= 24; i++ {
			*last = append(*last, c.at(float64(i)/24))
		}
	}
	return ls
}

// gap is the smallest distance between the middles of two strokes.
func gap(a, b line) float64 {
	least := math.Inf(1)
	for i := range a[1:] {
		for j := range b[1:] {
			least = min(least, apart(a[i], a[i+1], b[j], b[j+1]))
		}
	}
	return least
}

// apart is the distance between two segments.
func apart(a, b, c, d canvas.Point) float64 {
	if cross(a, b, c)*cross(a, b, d) < 0 && cross(c, d, a)*cross(c, d, b) < 0 {
		return 0
	}
	return min(from(a, c, d), from(b, c, d), from(c, a, b), from(d, a, b))
}

func cross(a, b, c canvas.Point) float64 { return b.Sub(a).PerpDot(c.Sub(a)) }

func from(p, a, b canvas.Point) float64 {
	ab := b.Sub(a)
	t := 0.0
	if l := ab.Dot(ab); l > 0 {
		t = min(max(p.Sub(a).Dot(ab)/l, 0), 1)
	}
	return p.Sub(a.Interpolate(b, t)).Length()
}

// startsAt reports whether a stroke begins at p.
func startsAt(l line, p canvas.Point) bool { return l[0].Sub(p).Length() <= 0.01 }

// legged reports whether a kind is drawn with a leg.
func legged(k stitch.Kind) bool { return k.Base >= stitch.Single && k.Shape != stitch.Picot }

// random are anchors as a chart may give them: any turn of the page, either
// direction of work, squeezed, stretched and leaning.
func random(r *rand.Rand, k stitch.Kind) Anchors {
	unit := 2.5 + 2.5*r.Float64()
	sin, cos := math.Sincos(2 * math.Pi * r.Float64())
	a := Anchors{
		Top: canvas.Point{X: 200 * r.Float64(), Y: 200 * r.Float64()},
		Up:  canvas.Point{X: sin, Y: -cos}, Along: canvas.Point{X: cos, Y: sin},
		Unit: unit, Width: unit * (0.6 + 0.9*r.Float64()), Shared: r.Intn(2) == 0,
	}
	if r.Intn(2) == 0 {
		a.Along = a.Along.Neg()
	}
	tall := Height(k) * unit * (0.6 + 0.9*r.Float64())
	n := 1
	if k.Shape == stitch.Together {
		n = k.Legs
	}
	lean := (r.Float64() - 0.5) * tall
	for i := range n {
		x := lean + (float64(i)-float64(n-1)/2)*a.Width*1.1
		a.Base = append(a.Base, a.Top.Sub(a.Up.Mul(tall)).Add(a.Along.Mul(x)))
	}
	return a
}

// TestAnywhere holds every symbol at random anchors to what the charts rely on.
func TestAnywhere(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for _, sym := range All() {
		name := sym.Kind.NameInto(sym.Into, stitch.US)
		for range 300 {
			a := random(r, sym.Kind)
			pen := Pen{Line: 0.2 + 0.15*r.Float64(), Cross: r.Intn(2) == 0}
			d := Draw(sym.Kind, sym.Into, a, pen)
			if d.Empty() {
				t.Fatalf("%s at %+v draws nothing", name, a)
			}
			strokes := lines(d.Strokes)
			all := append(lines(d.Solid), strokes...)
			for _, l := range all {
				for _, p := range l {
					if !onPaper(p) {
						t.Fatalf("%s at %+v reaches %v", name, a, p)
					}
				}
			}
			if !legged(sym.Kind) {
				continue
			}
			if !(pen.Cross && sym.Kind.Base == stitch.Single && sym.Kind.Shape == stitch.Plain) {
				standsOnBases(t, name, a, strokes)
			}
			// Where the next stitch stands there is white about its foot.
			foot := line{a.Top, a.Top}
			for _, l := range strokes {
				if g := gap(l, foot); g < pen.Line+0.15 && g < 0.2*a.Top.Sub(a.Base[0]).Length() {
					t.Errorf("%s at %+v: %.3f from its top with a pen of %.3f", name, a, g, pen.Line)
				}
			}
			if sym.Kind.Shape == stitch.Plain && !pen.Cross {
				withinWidth(t, name, a, pen, strokes)
			}
		}
	}
}

func standsOnBases(t *testing.T, name string, a Anchors, strokes []line) {
	t.Helper()
	for _, b := range a.Base {
		stands := false
		for _, l := range strokes {
			stands = stands || startsAt(l, b)
		}
		if !stands {
			t.Errorf("%s at %+v: no leg stands on %v", name, a, b)
		}
	}
}

// withinWidth checks the upper half of a plain stitch: it keeps within 0.46 of
// the width to each side of its leg, the pen's width included.
func withinWidth(t *testing.T, name string, a Anchors, pen Pen, strokes []line) {
	t.Helper()
	local := func(p canvas.Point) (x, y float64) {
		v := p.Sub(a.Top)
		return v.Dot(a.Along), v.Dot(a.Up)
	}
	var spine line
	for _, l := range strokes {
		if startsAt(l, a.Base[0]) {
			spine = l
		}
	}
	_, bottom := local(a.Base[0])
	at := func(y float64) float64 {
		x, _ := local(spine[len(spine)-1])
		for i := range spine[1:] {
			x0, y0 := local(spine[i])
			x1, y1 := local(spine[i+1])
			if y0 <= y && y < y1 {
				return x0 + (x1-x0)*(y-y0)/(y1-y0)
			}
		}
		return x
	}
	for _, l := range strokes {
		for _, p := range l {
			x, y := local(p)
			if y > bottom/2 && math.Abs(x-at(y))+pen.Line/2 > 0.46*a.Width+0.01 {
				t.Errorf("%s at %+v: %.2f from its spine in a width of %.2f", name, a, math.Abs(x-at(y)), a.Width)
				return
			}
		}
	}
}

// fan is n stitches in one place, their tops on an arc about the centre of a
// round (radius 0: on a level row).
func fan(k stitch.Kind, n int, unit, width, radius float64) (as []Anchors) {
	tall := Height(k) * unit
	for i := range n {
		x := (float64(i) - float64(n-1)/2) * width
		a := Anchors{Base: []canvas.Point{{Y: 0}}, Top: canvas.Point{X: x, Y: -tall}, Along: canvas.Point{X: 1}, Up: canvas.Point{Y: -1}, Unit: unit, Width: width, Shared: true}
		if radius > 0 {
			sin, cos := math.Sincos(x / (radius + tall))
			a.Up = canvas.Point{X: sin, Y: -cos}
			a.Along = canvas.Point{X: cos, Y: sin}
			a.Top = canvas.Point{X: (radius + tall) * sin, Y: radius - (radius+tall)*cos}
		}
		as = append(as, a)
	}
	return as
}

// TestFans checks that stitches sharing a place touch nowhere but at their feet.
func TestFans(t *testing.T) {
	pen := Pen{Line: 0.25}
	for _, k := range []stitch.Kind{stitch.Of(stitch.Single), stitch.Of(stitch.Half), stitch.Of(stitch.Double), stitch.Of(stitch.Treble), stitch.Of(stitch.DoubleTreble)} {
		for n := 2; n <= 9; n++ {
			if k.Base == stitch.Single && n > 5 {
				continue // flatter than anyone works them
			}
			for _, radius := range []float64{0, 60, 12} {
				as := fan(k, n, 4, 3, radius)
				var ds [][]line
				for _, a := range as {
					ds = append(ds, lines(Draw(k, stitch.Top, a, pen).Strokes))
				}
				for i := range ds[1:] {
					for _, l := range ds[i] {
						for _, m := range ds[i+1] {
							l, m := l, m
							if startsAt(l, as[0].Base[0]) {
								l = l[len(l)/2:]
							}
							if startsAt(m, as[0].Base[0]) {
								m = m[len(m)/2:]
							}
							if len(l) < 2 || len(m) < 2 {
								continue
							}
							if g := gap(l, m); g < pen.Line+0.05 {
								t.Errorf("%d %s on radius %g: stitches %d and %d are %.3f apart", n, k.Name(stitch.US), radius, i+1, i+2, g)
							}
						}
					}
				}
			}
		}
	}
}

// TestTogether checks that the slashes of legs worked together touch neither
// one another nor a leg that is not theirs.
func TestTogether(t *testing.T) {
	pen := Pen{Line: 0.25}
	for _, b := range []stitch.Base{stitch.Double, stitch.Treble, stitch.DoubleTreble} {
		for n := 2; n <= 9; n++ {
			k := stitch.Tog(b, n)
			a := standing(k, 0, 0, 4, 3.6)
			slashes := 0
			ls := lines(Draw(k, stitch.Top, a, pen).Strokes)
			for i, l := range ls {
				if onBase(l, a) || i == len(ls)-1 { // the bar is drawn last
					continue
				}
				slashes++
				own := 0
				for j, m := range ls[:len(ls)-1] {
					if i == j {
						continue
					}
					if g := gap(l, m); g < 1e-3 && onBase(m, a) {
						own++
					} else if g < pen.Line+0.02 {
						t.Errorf("%s: a slash is %.3f from another stroke", k.Name(stitch.US), g)
					}
				}
				if own != 1 {
					t.Errorf("%s: a slash crosses %d legs", k.Name(stitch.US), own)
				}
			}
			if want := n * (int(b) - int(stitch.Half)); slashes != want {
				t.Errorf("%s has %d slashes, want %d", k.Name(stitch.US), slashes, want)
			}
		}
	}
}

func onBase(l line, a Anchors) bool {
	for _, b := range a.Base {
		if startsAt(l, b) {
			return true
		}
	}
	return false
}

// TestParts counts the strokes of the plain stitches, as the trade's charts
// draw them: T for hdc, one slash for dc, two for tr, three for dtr (agreeing
// across teaching sources; JIS L 0201 and the Craft Yarn Council's list are the
// standards behind them).
func TestParts(t *testing.T) {
	for b, want := range map[stitch.Base]int{stitch.Single: 2, stitch.Half: 2, stitch.Double: 3, stitch.Treble: 4, stitch.DoubleTreble: 5, stitch.TripleTreble: 6} {
		k := stitch.Of(b)
		d := Draw(k, stitch.Top, standing(k, 0, 0, 4, 4.2), Pen{Line: 0.3})
		if got := len(lines(d.Strokes)); got != want {
			t.Errorf("%s has %d strokes, want %d", k.Name(stitch.US), got, want)
		}
	}
	two := func(k stitch.Kind, in1, in2 stitch.Into) {
		a := standing(k, 0, 0, 4, 4.2)
		x, y := Draw(k, in1, a, Pen{Line: 0.3}), Draw(k, in2, a, Pen{Line: 0.3})
		if x.Strokes.Equals(y.Strokes) {
			t.Errorf("%s is drawn as %s", k.NameInto(in1, stitch.US), k.NameInto(in2, stitch.US))
		}
	}
	for b := stitch.Single; b <= stitch.TripleTreble; b++ {
		two(stitch.Of(b), stitch.FrontLoop, stitch.BackLoop)
		two(stitch.Of(b), stitch.FrontPost, stitch.BackPost)
		two(stitch.Of(b), stitch.Top, stitch.BackLoop)
	}
}

// TestDistinct checks that no two kinds are drawn alike.
func TestDistinct(t *testing.T) {
	seen := map[string]string{}
	for _, sym := range All() {
		name := sym.Kind.NameInto(sym.Into, stitch.US)
		k := fmt.Sprint(describe(Draw(sym.Kind, sym.Into, standing(sym.Kind, 0, 0, 4, 6), Pen{Line: 0.3})))
		if other, ok := seen[k]; ok && other != name {
			t.Errorf("%s is drawn as %s", name, other)
		}
		seen[k] = name
	}
}

// TestMarks checks that marks of one size are one shape, and lie as the round
// does.
func TestMarks(t *testing.T) {
	pen := Pen{Line: 0.3}
	ch := stitch.Of(stitch.Chain)
	a := Draw(ch, stitch.Top, level(10, 20, 4), pen).Mark
	b := level(50, 60, 4)
	b.Width *= 1.3
	b.Up, b.Along = canvas.Point{X: 1}, canvas.Point{Y: 1}
	m := Draw(ch, stitch.Top, b, pen).Mark
	if a.Name != m.Name || a.Path != m.Path {
		t.Errorf("two chains of one size are %q and %q", a.Name, m.Name)
	}
	if a.Angle != 0 || m.Angle != 90 {
		t.Errorf("chains lie at %g and %g degrees, want 0 and 90", a.Angle, m.Angle)
	}
	box := a.Path.Bounds()
	if math.Abs(box.W()-0.62*4) > markStep || math.Abs(box.W()/box.H()-2) > 0.15 {
		t.Errorf("a chain is %.2f × %.2f", box.W(), box.H())
	}
	if top := a.At.Y - box.H()/2; top < 20+pen.Line+0.15 {
		t.Errorf("a chain reaches %.2f below its top, into the next foot", top-20)
	}
	if s := level(0, 0, 2); Draw(ch, stitch.Top, s, pen).Mark.Name == a.Name {
		t.Error("chains of two sizes have one name")
	}
	if d := Join(level(3, 4, 4), pen); d.Mark == nil || !d.Mark.Solid || d.Mark.At != (canvas.Point{X: 3, Y: 4}) {
		t.Errorf("a join is %+v", d.Mark)
	}
}

// TestRise checks that stitches sharing one loop share its arc.
func TestRise(t *testing.T) {
	var arcs []string
	for _, a := range fan(stitch.Of(stitch.Half), 2, 4, 4, 10) {
		a.Rise = []canvas.Point{{Y: -1}}
		first := lines(Draw(stitch.Of(stitch.Half), stitch.BackLoop, a, Pen{Line: 0.3}).Strokes)[0]
		text := ""
		for _, p := range first {
			text += fmt.Sprintf("%.2f %.2f ", p.X+0.001, p.Y+0.001)
		}
		arcs = append(arcs, text)
	}
	if arcs[0] != arcs[1] {
		t.Error(cmp.Diff(arcs[0], arcs[1]))
	}
}

// TestStart checks that a beginning chain stands on its base and that its ovals
// are apart.
func TestStart(t *testing.T) {
	pen := Pen{Line: 0.3}
	for n := 1; n <= 6; n++ {
		a := standing(stitch.Of(stitch.Double), 0, 0, 4, 4.2)
		a.Top = canvas.Point{X: 1.5, Y: -3 * float64(n)}
		ls := lines(Start(n, a, pen).Strokes)
		if len(ls) != n {
			t.Fatalf("ch %d has %d ovals", n, len(ls))
		}
		if !startsAt(ls[0], a.Base[0]) {
			t.Errorf("ch %d begins at %v", n, ls[0][0])
		}
		for i := range ls[1:] {
			if g := gap(ls[i], ls[i+1]); g < pen.Line+0.1 {
				t.Errorf("ch %d: ovals %d and %d are %.2f apart", n, i+1, i+2, g)
			}
		}
	}
	if !Start(0, level(0, 0, 4), pen).Empty() {
		t.Error("no chains draw something")
	}
}

// TestRing checks that rings reach their radius and no farther.
func TestRing(t *testing.T) {
	for _, chains := range []int{0, 4, 5, 6, 8, 12} {
		d := Ring(canvas.Point{X: 5, Y: 5}, 4, chains, 4, Pen{Line: 0.3})
		far := 0.0
		for _, l := range lines(d.Strokes) {
			for _, p := range l {
				far = max(far, p.Sub(canvas.Point{X: 5, Y: 5}).Length())
			}
		}
		if math.Abs(far-4) > 0.15 {
			t.Errorf("a ring of %d chains reaches %.3f, want 4", chains, far)
		}
	}
}

// TestHalves checks that the two halves of a Together draw its legs between
// them, and its bar once.
func TestHalves(t *testing.T) {
	k, pen := stitch.Tog(stitch.Double, 5), Pen{Line: 0.3}
	a := standing(k, 0, 0, 4, 4.2)
	last, first := a, a
	last.Base, first.Base = a.Base[:2], a.Base[2:]
	f := lines(Half(k, stitch.Top, first, true, pen).Strokes)
	l := lines(Half(k, stitch.Top, last, false, pen).Strokes)
	standsOnBases(t, "first half", first, f)
	standsOnBases(t, "last half", last, l)
	bar := append(f[len(f)-1], l[len(l)-1]...)
	left, right := math.Inf(1), math.Inf(-1)
	for _, p := range bar {
		left, right = min(left, p.X-a.Top.X), max(right, p.X-a.Top.X)
	}
	if math.Abs(left+right) > 1e-6 || right < 1 {
		t.Errorf("the halves' bars reach from %.2f to %.2f", left, right)
	}
	if f[len(f)-1][24].X-a.Top.X < 1 {
		t.Error("the first half's bar does not reach along the round")
	}
}

// TestImpossible gives anchors that cannot be drawn: nothing may panic, and
// what is drawn must be on paper.
func TestImpossible(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	some := []canvas.Point{{}, {X: 3, Y: 4}, {X: nan}, {Y: inf}, {X: 1e300, Y: -1e300}, {Y: -1}}
	sizes := []float64{0, 4, nan, inf, -1, 1e-300, 1e300}
	r := rand.New(rand.NewSource(2))
	pick := func() canvas.Point { return some[r.Intn(len(some))] }
	size := func() float64 { return sizes[r.Intn(len(sizes))] }
	for range 20000 {
		a := Anchors{Top: pick(), Along: pick(), Up: pick(), Width: size(), Unit: size()}
		for range r.Intn(4) {
			a.Base = append(a.Base, pick())
			a.Rise = append(a.Rise, pick())
		}
		pen := Pen{Line: size(), Cross: r.Intn(2) == 0}
		k := stitch.Kind{Base: stitch.Base(r.Intn(12)), Shape: stitch.Shape(r.Intn(8)), Manner: stitch.Manner(r.Intn(64)), Legs: r.Intn(7) - 1}
		in := stitch.Into(r.Intn(12))
		for _, d := range []Drawing{Draw(k, in, a, pen), Half(k, in, a, true, pen), Start(k.Legs, a, pen), Ring(a.Top, size(), k.Legs, size(), pen),
			Join(a, pen), Arrow(a, pen), Turn(a, pen), Attach(a, pen), FastenOff(a, pen)} {
			for _, l := range append(lines(d.Strokes), lines(d.Solid)...) {
				for _, p := range l {
					if math.IsNaN(p.X+p.Y) || math.Abs(p.X) > 20*farthest || math.Abs(p.Y) > 20*farthest {
						t.Fatalf("%+v %v at %+v reaches %v", k, in, a, p)
					}
				}
			}
		}
	}
	dc := stitch.Of(stitch.Double)
	if d := Draw(dc, stitch.Top, Anchors{Base: []canvas.Point{{}}, Up: canvas.Point{Y: -1}, Unit: 4, Width: 4}, Pen{Line: 0.3}); !d.Empty() {
		t.Error("a stitch of no height is drawn")
	}
	if d := Draw(dc, stitch.Top, standing(dc, 0, 0, 4, 0), Pen{Line: 0.3}); d.Empty() {
		t.Error("a stitch of no width is not drawn")
	}
}

// TestGolden compares the artwork with what was last approved by eye; see the
// sheet of TestSheet.
func TestGolden(t *testing.T) {
	var b strings.Builder
	pen := Pen{Line: 0.3}
	put := func(name string, d Drawing) { fmt.Fprintf(&b, "%-20s %s\n", name, describe(d)) }
	for _, sym := range All() {
		put(sym.Kind.NameInto(sym.Into, stitch.US)+legs(sym.Kind), Draw(sym.Kind, sym.Into, standing(sym.Kind, 0, 0, 4, 4.2), pen))
	}
	for _, k := range []stitch.Kind{stitch.Of(stitch.Single), stitch.Of(stitch.Half), stitch.Of(stitch.Double), stitch.Of(stitch.Treble)} {
		a := leaning(k, 0, 0, 2)
		put(k.Name(stitch.US)+" leaning", Draw(k, stitch.Top, a, pen))
		put(k.Name(stitch.US)+" leaning post", Draw(k, stitch.FrontPost, a, pen))
	}
	for _, k := range []stitch.Kind{stitch.Of(stitch.Single), {Base: stitch.Single, Manner: stitch.Extended}, {Base: stitch.Single, Manner: stitch.Reverse}} {
		put(k.Name(stitch.US)+" ×", Draw(k, stitch.Top, standing(k, 0, 0, 4, 4.2), Pen{Line: 0.3, Cross: true}))
	}
	put("start ch 3", Start(3, standing(stitch.Of(stitch.Double), 0, 0, 4, 4.2), pen))
	put("magic ring", Ring(canvas.Origin, 3, 0, 4, pen))
	put("ring of 5", Ring(canvas.Origin, 3, 5, 4, pen))
	put("join", Join(level(0, 0, 4), pen))
	put("arrow", Arrow(level(0, 0, 4), pen))
	put("turn", Turn(level(0, 0, 4), pen))
	put("attach", Attach(level(0, 0, 4), pen))
	put("fasten off", FastenOff(level(0, 0, 4), pen))

	file := filepath.Join("..", "testdata", "symbols", "strokes.txt")
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), b.String()); diff != "" {
		t.Errorf("the artwork changed (-want +got); look at the sheet, then go test -update:\n%s", diff)
	}
}

func legs(k stitch.Kind) string {
	if k.Shape == stitch.Puff {
		return fmt.Sprintf(" (%d)", k.Legs)
	}
	return ""
}

// describe is a drawing as text.
func describe(d Drawing) string {
	var parts []string
	if m := d.Mark; m != nil {
		parts = append(parts, fmt.Sprintf("%s at %g %g turned %g: %s", m.Name, m.At.X, m.At.Y, m.Angle, m.Path.ToSVG()))
	}
	if d.Strokes != nil {
		parts = append(parts, d.Strokes.ToSVG())
	}
	if d.Solid != nil {
		parts = append(parts, "solid "+d.Solid.ToSVG())
	}
	return strings.Join(parts, " | ")
}

func BenchmarkDraw(b *testing.B) {
	for _, k := range []stitch.Kind{stitch.Of(stitch.Double), stitch.Tog(stitch.Double, 5)} {
		a := standing(k, 0, 0, 4, 4.2)
		b.Run(k.Name(stitch.US), func(b *testing.B) {
			for b.Loop() {
				Draw(k, stitch.Top, a, Pen{Line: 0.3})
			}
		})
	}
}
