package ring

import (
	"math"
	"math/rand"
	"strconv"
	"testing"
)

// dense solves the same least-squares problem by Gaussian elimination on the
// full normal equations, with nothing of the fast solution in it.
func dense(items []Item) []float64 {
	n := len(items)
	gaps := naturalGaps(items)
	base := fanOut(items, gaps, beginning(items), fanSpread)
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, n+1)
	}
	for i := 0; i < n; i++ {
		if !items[i].Free {
			a[i][i]++
			a[i][n] += base[i]
		}
		// κ (θ_j − θ_i − g)², with a turn added at the seam.
		j, g := (i+1)%n, gaps[i]
		if j == 0 {
			g -= Turn
		}
		a[i][i] += Stiffness
		a[j][j] += Stiffness
		a[i][j] -= Stiffness
		a[j][i] -= Stiffness
		a[i][n] -= Stiffness * g
		a[j][n] += Stiffness * g
	}
	for p := 0; p < n; p++ {
		q := p
		for r := p; r < n; r++ {
			if math.Abs(a[r][p]) > math.Abs(a[q][p]) {
				q = r
			}
		}
		a[p], a[q] = a[q], a[p]
		for r := p + 1; r < n; r++ {
			f := a[r][p] / a[p][p]
			for c := p; c <= n; c++ {
				a[r][c] -= f * a[p][c]
			}
		}
	}
	x := make([]float64, n)
	for p := n - 1; p >= 0; p-- {
		x[p] = a[p][n]
		for c := p + 1; c < n; c++ {
			x[p] -= a[p][c] * x[c]
		}
		x[p] /= a[p][p]
	}
	return x
}

func TestAnglesAgainstElimination(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for try := 0; try < 200; try++ {
		n := 2 + r.Intn(30)
		items := make([]Item, n)
		for i := range items {
			items[i] = Item{Width: 0.8 + 0.4*r.Float64(), Base: (float64(i) + 0.3*r.Float64()) * Turn / float64(n), Free: i > 0 && r.Intn(4) == 0}
		}
		got, want := Angles(items, Stiffness), dense(items)
		for i := range got {
			if math.Abs(got[i]-want[i]) > 1e-9 {
				t.Fatalf("n %d, item %d: %.12f, want %.12f", n, i, got[i], want[i])
			}
		}
	}
}

func TestAnglesKeepOrder(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	for try := 0; try < 500; try++ {
		n := 1 + r.Intn(40)
		items := make([]Item, n)
		for i := range items {
			items[i] = Item{Width: r.Float64() + 0.05, Base: r.Float64() * Turn, Free: r.Intn(3) == 0, Place: r.Intn(4), Before: float64(r.Intn(2))}
		}
		theta := Angles(items, Stiffness)
		for i := 1; i < n; i++ {
			if !(theta[i] > theta[i-1]) {
				t.Fatalf("try %d: item %d at %g after %g", try, i, theta[i], theta[i-1])
			}
		}
		if n > 1 && !(theta[0]+Turn > theta[n-1]) {
			t.Fatalf("try %d: the last item at %g laps the first at %g", try, theta[n-1], theta[0])
		}
	}
}

// Equal repeats on equal bases come out congruent.
func TestAnglesSymmetry(t *testing.T) {
	const k = 7
	var items []Item
	for i := 0; i < k; i++ {
		at := float64(i) * Turn / k
		place := 2*i + 1
		for j := 0; j < 5; j++ {
			items = append(items, Item{Width: 1, Base: at, Place: place})
		}
		items = append(items, Item{Width: 0.8, Free: true}, Item{Width: 1.3, Base: at + Turn/k/2, Place: place + 1})
	}
	theta := Angles(items, Stiffness)
	m := len(items) / k
	for i := range theta {
		want := theta[i] + Turn/k
		got := 0.0
		if i+m < len(theta) {
			got = theta[i+m]
		} else {
			got = theta[i+m-len(theta)] + Turn
		}
		if math.Abs(got-want) > 1e-12 {
			t.Errorf("item %d: next repeat at %g, want %g", i, got, want)
		}
	}
	// The fan's four gaps are near enough even.
	if a, b := theta[1]-theta[0], theta[2]-theta[1]; b < a/1.25 || b > a*1.25 {
		t.Errorf("gaps of a fan: %g and %g", a, b)
	}
}

// Stitches that cross stand as far apart as others, over the places of one another.
func TestCrossed(t *testing.T) {
	var row, round []Item
	for _, at := range []float64{0, 1, 2, 6, 7, 8, 3, 4, 5, 9, 10, 11} {
		row = append(row, Item{Width: 1, Base: at})
		round = append(round, Item{Width: 1, Base: at * Turn / 12})
	}
	for i, x := range Along(row, 1, Stiffness) {
		if math.Abs(x-float64(i)) > 1e-9 {
			t.Errorf("stitch %d of a row at %.3f", i, x)
		}
	}
	for i, a := range Angles(round, Stiffness) {
		if math.Abs(a-float64(i)*Turn/12) > 1e-9 {
			t.Errorf("stitch %d of a round at %.3f", i, a)
		}
	}
}

func TestSpread(t *testing.T) {
	theta := []float64{1, 1, 1.05, 3, 5}
	least := []float64{0.2, 0.2, 0.2, 0.2, 0.2}
	Spread(theta, least)
	for i := 0; i < 4; i++ {
		if theta[i+1]-theta[i] < 0.2-1e-12 {
			t.Errorf("gap %d is %g", i, theta[i+1]-theta[i])
		}
	}
	if m := (theta[0] + theta[1] + theta[2]) / 3; math.Abs(m-3.05/3) > 1e-12 {
		t.Errorf("the crowd moved from %g to %g", 3.05/3, m)
	}
	if theta[3] != 3 || theta[4] != 5 {
		t.Errorf("those with room moved to %g and %g", theta[3], theta[4])
	}
	seam := []float64{0.01, 3, Turn - 0.01}
	Spread(seam, []float64{0.3, 0.3, 0.3})
	if g := seam[0] + Turn - seam[2]; math.Abs(g-0.3) > 1e-12 {
		t.Errorf("gap at the seam %g", g)
	}
}

func TestStack(t *testing.T) {
	layers := []Layer{{Level: 0}, {Level: 5, Length: 30}, {Level: 10, Length: 60, Least: 20}, {Level: 20, Length: 90}}
	m := Stack(layers, Fit{Hole: 2, Outer: 80, MaxScale: 100})
	if r := m.Of(3); math.Abs(r-80) > 1e-6 {
		t.Errorf("the outermost round lies at %g, want 80", r)
	}
	for i := 1; i < 4; i++ {
		rise := m.Of(i) - m.Of(i-1)
		if rise < m.Scale*(layers[i].Level-layers[i-1].Level)-1e-9 || m.Of(i) < layers[i].Least {
			t.Errorf("layer %d rises %g to %g", i, rise, m.Of(i))
		}
	}
	for l := -5.0; l < 30; l += 0.5 {
		if m.At(1, l+0.5) < m.At(1, l) {
			t.Errorf("the map falls at level %g", l)
		}
	}
	// What gives way for the heights and yet has its room is not crowded; what is drawn
	// smaller than that is.
	tight := Stack([]Layer{{Level: 0}, {Level: 20, Least: 70}}, Fit{Hole: 2, Outer: 80, MaxScale: 10})
	if tight.Crowded {
		t.Errorf("crowded at %g", tight.Of(1))
	}
	if tight.Shrink(0.5); !tight.Crowded {
		t.Errorf("not crowded at %g", tight.Of(1))
	}
	// A layer pushed out for its stitches is no less even for it.
	pushed := Stack([]Layer{{Level: 0, Length: 60}, {Level: 5, Length: 90, Least: 40}, {Level: 10, Length: 120}}, Fit{Hole: 2, Outer: 80, MaxScale: 1})
	if low, high := pushed.At(1, 3), pushed.At(1, 6); math.Abs(high-low-3*pushed.Scale) > 1e-9 || pushed.Of(1)-pushed.Of(0) < 6*pushed.Scale {
		t.Errorf("levels 3 and 6 at %.2f and %.2f, at a scale of %.2f", low, high, pushed.Scale)
	}
	if m.At(2, 10) != m.Of(2) {
		t.Errorf("layer 2 lies at %g and its level at %g", m.Of(2), m.At(2, 10))
	}
	small := Stack(layers, Fit{Hole: 2, Outer: 80, MaxScale: 1})
	if small.Scale != 1 || small.Of(3) > 80 || small.Of(3) <= 22 {
		t.Errorf("at scale %g the outermost lies at %g", small.Scale, small.Of(3))
	}
	if m := Stack([]Layer{{Level: 3, Least: 500}}, Fit{Hole: 2, Outer: 80, MaxScale: 1}); !m.Crowded || m.Of(0) > 80 {
		t.Errorf("too many stitches: crowded %v, at %g", m.Crowded, m.Of(0))
	}
	in := Stack([]Layer{{Level: 20, Length: 9}, {Level: 10, Length: 60}, {Level: 0, Length: 60}}, Fit{Hole: 2, Outer: 80, MaxScale: 2})
	if !(in.At(1, 12) < in.Of(1)) || !(in.At(1, 5) > in.Of(1)) {
		t.Error("laid inwards, higher stitches must lie nearer the centre")
	}
}

// A layer that needs room is not drawn out alone: those inside it share it, and one that
// is no drawn round goes along.
func TestStackSharesStretch(t *testing.T) {
	layers := []Layer{{}, {Level: 5}, {Level: 10}, {Level: 15}, {Level: 20, Least: 60}}
	fit := Fit{Hole: 2, Outer: 80, MaxScale: 1}
	even := Stack(layers, fit)
	for i := 1; i < 5; i++ {
		if rise := even.Of(i) - even.Of(i-1); math.Abs(rise-58.0/4) > 1e-6 {
			t.Errorf("layer %d rises %g, want a quarter of what there is", i, rise)
		}
	}
	fit.Loose = true
	loose := Stack(layers, fit)
	for i := 1; i < 5; i++ {
		if rise := loose.Of(i) - loose.Of(i-1); rise > mostRise*5+1e-6 {
			t.Errorf("on a loose edge layer %d rises %g", i, rise)
		}
	}
}

func TestCircle(t *testing.T) {
	for _, mirrored := range []bool{false, true} {
		c := Circle{Start: 0.4, Mirrored: mirrored}
		f, g := c.At(1, 10), c.At(1+1e-6, 10)
		if d := math.Hypot((g.X-f.X)/1e-5-f.AlongX, (g.Y-f.Y)/1e-5-f.AlongY); d > 1e-5 {
			t.Errorf("mirrored %v: Along is off by %g", mirrored, d)
		}
		if math.Hypot(f.X-10*f.OutX, f.Y-10*f.OutY) > 1e-12 {
			t.Errorf("mirrored %v: Out is off", mirrored)
		}
	}
}

func BenchmarkAngles(b *testing.B) {
	for _, n := range []int{100, 1000, 10000} {
		items := make([]Item, n)
		for i := range items {
			items[i] = Item{Width: 1, Base: float64(i) * Turn / float64(n)}
		}
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			for b.Loop() {
				Angles(items, Stiffness)
			}
			b.ReportMetric(float64(n)*float64(b.N)/b.Elapsed().Seconds(), "items/s")
		})
	}
}

// On a wave the direction along is that of the curve, and out is square to it.
func TestWaveOnCircle(t *testing.T) {
	wave := &Wave{Step: Turn / 240}
	for k := range 241 {
		wave.Heights = append(wave.Heights, 0.1*math.Sin(3*float64(k)*wave.Step))
	}
	for _, mirrored := range []bool{false, true} {
		c := Circle{Start: 0.4, Mirrored: mirrored, Wave: wave, Round: 10, Full: 30}
		for a := 0.05; a < 2*Turn; a += 0.31 {
			f, g := c.At(a-1e-3, 50), c.At(a+1e-3, 50)
			n := math.Hypot(g.X-f.X, g.Y-f.Y)
			f.X, f.Y = (g.X-f.X)/n, (g.Y-f.Y)/n
			at := c.At(a, 50)
			if math.Abs(f.X-at.AlongX) > 0.03 || math.Abs(f.Y-at.AlongY) > 0.03 {
				t.Errorf("at %.2f along is %.3f %.3f, not %.3f %.3f", a, at.AlongX, at.AlongY, f.X, f.Y)
			}
			if math.Abs(at.AlongX*at.OutX+at.AlongY*at.OutY) > 1e-9 || at.X*at.OutX+at.Y*at.OutY <= 0 {
				t.Errorf("at %.2f out is %.3f %.3f", a, at.OutX, at.OutY)
			}
			if r := math.Hypot(c.At(a, 10).X, c.At(a, 10).Y); math.Abs(r-10) > 1e-9 {
				t.Errorf("a round that is a circle lies %.3f out", r)
			}
		}
	}
}

// A round much longer than those within it does not draw them out far: it is drawn the
// narrower.
func TestLongRoundsDoNotDrawOut(t *testing.T) {
	layers := []Layer{{Level: 0, Length: 10}, {Level: 10, Length: 60}, {Level: 20, Length: 120}, {Level: 30, Length: 700}}
	for k := 4; k < 12; k++ {
		layers = append(layers, Layer{Level: float64(10 * k), Length: 100})
	}
	m := Stack(layers, Fit{Hole: 1, Outer: 80, MaxScale: 1})
	if step := (m.Of(3) - m.Of(0)) / 3; step > 1.6*10*m.Scale {
		t.Errorf("the first rounds lie %.1f mm apart, %.1f times what they are", step, step/10/m.Scale)
	}
	if r := m.Of(3); r < mostSqueeze*m.Scale*700/Turn {
		t.Errorf("the long round is squeezed to a radius of %.1f mm", r)
	}
}
