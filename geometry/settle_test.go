package geometry

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/optimize"
)

// shape is a surface of revolution by arc length u along its meridian.
type shape struct {
	name     string
	from, to float64 // of u
	inner    float64
	radius   func(u float64) float64
	height   func(u float64) float64
}

const big = 100.0 // the shapes' radius, mm

// The exact shapes by their meridians. The sphere's rounds are those of M.
// Martinez and A. Taylor Lipnicki, "Automating crochet patterns for surfaces of
// revolution", Bridges 2023: 2πR sin θ long at the polar angle θ.
var shapes = []shape{
	{"disc", 0, big, 0, func(u float64) float64 { return u }, func(u float64) float64 { return 0 }},
	{"cylinder", 0, big, big, func(u float64) float64 { return big }, func(u float64) float64 { return u }},
	{"cone of half-angle asin 0.6", 0, big, 0, func(u float64) float64 { return 0.6 * u }, func(u float64) float64 { return 0.8 * u }},
	{"sphere", 0, math.Pi * big, 0, func(u float64) float64 { return big * math.Sin(u/big) },
		func(u float64) float64 { return big * (1 - math.Cos(u/big)) }},
	{"pseudosphere", 0, 2 * big, big, func(u float64) float64 { return big * math.Exp(-u/big) },
		// The tractrix: z = R (artanh q − q), q = √(1 − e^(−2u/R)).
		func(u float64) float64 {
			q := math.Sqrt(1 - math.Exp(-2*u/big))
			return big * (math.Atanh(q) - q)
		}},
}

// worst is the largest error of radius or height, over the shape's radius, when
// it is worked in n rounds.
func (s shape) worst(t *testing.T, n int) float64 {
	t.Helper()
	step := (s.to - s.from) / float64(n)
	var lengths, slants []float64
	for i := 1; i <= n; i++ {
		r := s.radius(s.from + float64(i)*step)
		if r < 1e-9 {
			break // the far pole of the sphere
		}
		lengths, slants = append(lengths, 2*math.Pi*r), append(slants, step)
	}
	r, z, err := Settle(lengths, slants, s.inner)
	if err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for i := range r {
		u := s.from + float64(i+1)*step
		worst = math.Max(worst, math.Abs(r[i]-s.radius(u)))
		worst = math.Max(worst, math.Abs(z[i]-s.height(u)))
	}
	return worst / big
}

func TestExactShapes(t *testing.T) {
	for _, s := range shapes {
		t.Run(s.name, func(t *testing.T) {
			last := math.Inf(1)
			for _, n := range []int{40, 80, 160, 320} {
				e := s.worst(t, n)
				if e > 0.005 {
					t.Errorf("%d rounds: off by %.3f %% of the radius, want ≤ 0.5 %%", n, 100*e)
				}
				if e > 1e-6 && e > 0.75*last {
					t.Errorf("%d rounds: error %.2g does not fall from %.2g", n, e, last)
				}
				t.Logf("%d rounds: %.4f %%", n, 100*e)
				last = e
			}
		})
	}
}

// Rows growing by N+1 stitches for N have radius h / ln((N+1)/N): D. W.
// Henderson and D. Taimina, "Crocheting the hyperbolic plane", Mathematical
// Intelligencer 23(2), 2001 (formula from memory).
func TestHyperbolicPlane(t *testing.T) {
	for _, c := range []struct{ n, height, radius float64 }{
		{5, 6, 6 / math.Log(1.2)}, // 32.9 mm
		{12, 5, 62.4667},
		{1, 10, 14.4270},
	} {
		got, err := HyperbolicRadius(c.height, c.n)
		if err != nil || math.Abs(got-c.radius) > 5e-4 {
			t.Errorf("N = %v, rows of %v mm: radius %v (%v), want %v", c.n, c.height, got, err, c.radius)
		}
	}
	// A strip whose rows grow at that rate settles as the pseudosphere of that
	// radius, out to its rim.
	const n, h = 24.0, 2.0
	radius, err := HyperbolicRadius(h, n)
	if err != nil {
		t.Fatal(err)
	}
	var lengths, slants []float64
	for r := radius * math.Pow(n/(n+1), 60); r <= radius; r *= (n + 1) / n {
		lengths, slants = append(lengths, 2*math.Pi*r), append(slants, h)
	}
	slants[0] = 0
	r, z, err := Settle(lengths, slants, Free)
	if err != nil {
		t.Fatal(err)
	}
	depth := func(r float64) float64 {
		q := math.Sqrt(1 - r*r/(radius*radius))
		return radius * (math.Atanh(q) - q)
	}
	last := len(r) - 1
	for i := range r {
		want := depth(lengths[0]/(2*math.Pi)) - depth(lengths[i]/(2*math.Pi))
		if math.Abs(z[i]-want) > 0.005*radius {
			t.Errorf("row %d: %.3f mm along the axis, want %.3f", i, z[i], want)
		}
	}
	if got := math.Abs(2*math.Pi*r[last]/lengths[last] - 1); got > 0.005 {
		t.Errorf("the rim is strained by %v", got)
	}
	// Beyond the rim no surface of revolution is so large: it ruffles.
	for range 10 {
		lengths, slants = append(lengths, lengths[len(lengths)-1]*(n+1)/n), append(slants, h)
	}
	r, _, err = Settle(lengths, slants, Free)
	if err != nil {
		t.Fatal(err)
	}
	if s := 2*math.Pi*r[len(r)-1]/lengths[len(r)-1] - 1; s > -0.02 {
		t.Errorf("ten rows beyond the rim the strain is %v, want slack", s)
	}
	for _, bad := range [][2]float64{{0, 5}, {6, 0}, {-1, 5}, {math.NaN(), 5}, {6, math.NaN()}, {math.Inf(1), 5}} {
		if r, err := HyperbolicRadius(bad[0], bad[1]); err == nil {
			t.Errorf("HyperbolicRadius(%v) = %v without an error", bad, r)
		}
	}
}

// randomRounds is a list of rounds such as no sane designer would write.
func randomRounds(rnd *rand.Rand, n int) (lengths, slants []float64, inner float64) {
	inner = Free
	if rnd.Intn(2) == 0 {
		inner = 20 * rnd.Float64() * float64(rnd.Intn(2))
	}
	l := 20 + 300*rnd.Float64()
	for range n {
		l = math.Min(3000, math.Max(5, l*(0.6+0.9*rnd.Float64())))
		lengths = append(lengths, l)
		slants = append(slants, 2+18*rnd.Float64())
	}
	return lengths, slants, inner
}

func TestAgainstGonum(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	taut := 0
	for trial := range 100 {
		lengths, slants, inner := randomRounds(rnd, 1+rnd.Intn(30))
		r, _, err := Settle(lengths, slants, inner)
		if err != nil {
			t.Fatal(err)
		}
		// The energy, from its definition, in the strains.
		energy := func(u []float64) float64 {
			e, below := 0.0, inner
			for i := range u {
				radius := (1 + u[i]) * lengths[i] / (2 * math.Pi)
				e += u[i] * u[i]
				if below >= 0 {
					if v := math.Abs(radius-below)/slants[i] - 1; v > 0 {
						e += 20 * v * v
					}
				}
				below = radius
			}
			return e
		}
		slope := func(grad, u []float64) {
			below := inner
			for i := range u {
				grad[i] = 2 * u[i]
				radius := (1 + u[i]) * lengths[i] / (2 * math.Pi)
				if d := radius - below; below >= 0 && math.Abs(d) > slants[i] {
					g := 40 * (math.Abs(d)/slants[i] - 1) / slants[i] * math.Copysign(1, d) / (2 * math.Pi)
					grad[i] += g * lengths[i]
					if i > 0 {
						grad[i-1] -= g * lengths[i-1]
					}
				}
				below = radius
			}
		}
		// BFGS stops where its line search can see no fall any more: a few
		// fresh starts from there bring it to the bottom.
		theirs, least := make([]float64, len(r)), 0.0
		for range 5 {
			res, err := optimize.Minimize(optimize.Problem{Func: energy, Grad: slope}, theirs,
				&optimize.Settings{GradientThreshold: 1e-10}, &optimize.BFGS{})
			if res == nil {
				t.Fatal(err)
			}
			theirs, least = res.X, res.F
		}
		ours := make([]float64, len(r))
		for i := range r {
			ours[i] = 2*math.Pi*r[i]/lengths[i] - 1
		}
		for i := range ours {
			if d := math.Abs(ours[i] - theirs[i]); d > 1e-6 {
				t.Errorf("list %d, round %d of %d: strain %.9f, gonum/optimize %.9f", trial, i+1, len(r), ours[i], theirs[i])
			}
		}
		if e := energy(ours); e > least*(1+1e-12)+1e-15 {
			t.Errorf("list %d: energy %v, gonum/optimize %v", trial, e, least)
		}
		if least > 1e-6 {
			taut++
		}
		grad := make([]float64, len(r))
		slope(grad, ours)
		for i, g := range grad {
			if math.Abs(g) > 1e-8 {
				t.Errorf("list %d: slope %g left in round %d", trial, g, i+1)
			}
		}
	}
	if taut < 50 {
		t.Errorf("only %d of the lists have rounds that do not fit", taut)
	}
}

// A crown of hdc (w 6.25 mm, h/w = 8/2π) that closes from 72 to 9 stitches in
// four rounds. The design's own trial of it: a flat gathered top, the outer
// decrease rounds slack by up to 40 %, the last stretched by 21 %.
func TestGatheredCrown(t *testing.T) {
	const w, h = 6.25, 6.25 * 8 / (2 * math.Pi)
	var lengths, slants []float64
	for _, n := range []float64{72, 72, 72, 72, 72, 72, 54, 36, 18, 9} {
		lengths, slants = append(lengths, n*w), append(slants, h)
	}
	r, z, err := Settle(lengths, slants, Free)
	if err != nil {
		t.Fatal(err)
	}
	slack := 0.0
	for i := range r {
		slack = math.Max(slack, 1-2*math.Pi*r[i]/lengths[i])
	}
	near(t, "most slack", slack, 0.40, 0.005)
	near(t, "stretch of the last round", 2*math.Pi*r[9]/lengths[9]-1, 0.21, 0.005)
	near(t, "depth of the gathered top", z[9]-z[5], 0, 1e-9)
}

func TestSettleRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		l, s  []float64
		inner float64
	}{
		{nil, nil, Free}, {[]float64{1}, nil, 0}, {[]float64{0}, []float64{1}, 0},
		{[]float64{-1}, []float64{1}, 0}, {[]float64{nan}, []float64{1}, 0}, {[]float64{inf}, []float64{1}, 0},
		{[]float64{1}, []float64{0}, 0}, {[]float64{1}, []float64{nan}, Free}, {[]float64{1}, []float64{inf}, 0},
		{[]float64{1}, []float64{1}, nan}, {[]float64{1}, []float64{1}, inf}, {[]float64{1}, []float64{1}, -2},
		{[]float64{1, 1}, []float64{0, 0}, Free},
	} {
		if _, _, err := Settle(c.l, c.s, c.inner); err == nil {
			t.Errorf("Settle(%v, %v, %v) gave no error", c.l, c.s, c.inner)
		}
	}
	// Extreme but legal.
	for _, c := range [][2][]float64{
		{{5}, {1}}, {{1e-6, 1e6, 1e-6}, {0.1, 0.1, 0.1}}, {{1e9}, {0.1}}, {{5, 5, 5}, {1e-6, 1e6, 1e-6}},
	} {
		r, z, err := Settle(c[0], c[1], 0)
		if err != nil {
			t.Errorf("Settle(%v): %v", c, err)
		}
		for i := range r {
			if math.IsNaN(r[i]+z[i]) || math.IsInf(r[i]+z[i], 0) || r[i] < 0 {
				t.Errorf("Settle(%v) = %v, %v", c, r, z)
			}
		}
	}
}

// Pieces that swell and close again, some too fast: what is worked; and lists of
// rounds that hardly ever fit: the hardest.
func BenchmarkSettle(b *testing.B) {
	for _, n := range []int{200, 2000, 20000} {
		var lengths, slants []float64
		for i := range n {
			lengths = append(lengths, 400+250*math.Sin(float64(i)/5))
			slants = append(slants, 6)
		}
		run := func(name string, lengths, slants []float64) {
			b.Run(fmt.Sprint(name, "/", n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, _, err := Settle(lengths, slants, Free); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
		run("swelling", lengths, slants)
		lengths, slants, _ = randomRounds(rand.New(rand.NewSource(1)), n)
		run("random", lengths, slants)
	}
}
