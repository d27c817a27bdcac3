package geometry

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// crown is a crown-down cap of hdc with so many increases a round, then even.
func crown(increases, growing, even int) *builder {
	b := rounds().ring(0).inRing(hdc, increases)
	for n := 2; n <= growing; n++ {
		b.even(hdc, stitch.Top, increases*n)
	}
	for range even {
		b.even(hdc, stitch.Top, increases*growing)
	}
	return b
}

func found(t *testing.T, b *builder) ([]Finding, []Phase) {
	t.Helper()
	f := b.measured(t, gauge(t, Reading{Count: 20, Kind: hdc, Over: 100}))
	return Findings(b.part, f), Phases(b.part, f)
}

func isPhases(t *testing.T, got []Phase, want ...Phase) {
	t.Helper()
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("phases %v, want %v", got, want)
	}
}

// 8 increases a round keep a circle of hdc flat (agreed by six published
// teaching sources): with 16 it ruffles, with 4 it is a cone of half-angle asin
// ½.
func TestRuffleAndDome(t *testing.T) {
	f, p := found(t, crown(8, 9, 8))
	if len(f) != 0 {
		t.Errorf("a flat crown: %+v", f)
	}
	isPhases(t, p, Phase{Flat, 1, 9}, Phase{Tube, 10, 17})

	f, p = found(t, crown(16, 7, 20))
	if len(f) != 1 || f[0].Trait != Ruffled || f[0].From != 1 || f[0].To != 7 || f[0].Least != 16 || f[0].Most != 16 || f[0].Even != 8 {
		t.Fatalf("16 increases: %+v", f)
	}
	// Half of the length has no room in a flat disc.
	near(t, "slack of the ruffle", f[0].Strain, 0.5, 0.02)
	if f[0].Last < 9 {
		t.Errorf("the fullness ends at round %d", f[0].Last)
	}
	if p[0] != (Phase{Ruffled, 1, 7}) {
		t.Errorf("phases %v", p)
	}

	f, p = found(t, crown(4, 16, 8))
	if len(f) != 1 || f[0].Trait != Domed || f[0].From != 1 || f[0].To != 16 || f[0].Least != 4 || f[0].Even != 8 || f[0].Strain != 0 {
		t.Fatalf("4 increases: %+v", f)
	}
	isPhases(t, p, Phase{Domed, 1, 16}, Phase{Tube, 17, 24})
}

// One round with too many increases in a flat circle.
func TestOneRuffledRound(t *testing.T) {
	// One increase in eight too many before it makes no difference.
	full := crown(9, 4, 0)
	full.even(hdc, stitch.Top, 90)
	if f, _ := found(t, full); len(f) != 1 || f[0].From != 4+1 {
		t.Errorf("%+v", f)
	}
	b := crown(8, 4, 0)
	for _, n := range []int{56, 64, 72, 80} { // 24 increases in round 5
		b.even(hdc, stitch.Top, n)
	}
	f, _ := found(t, b)
	if len(f) != 1 || f[0].Trait != Ruffled || f[0].From != 5 || f[0].To != 5 || f[0].Most != 24 || f[0].Even != 8 || f[0].Last != 8 {
		t.Errorf("%+v", f)
	}
}

// A crown that closes from 72 to 9 stitches in four rounds: a flat gathered top,
// the outer rounds slack by up to 40 %, the last stretched by 21 % (the design's
// own trial).
func TestGather(t *testing.T) {
	b := rounds().chain(72)
	for range 8 {
		b.even(hdc, stitch.Top, 72)
	}
	for _, n := range []int{54, 36, 18, 9} {
		b.even(hdc, stitch.Top, n)
	}
	f, p := found(t, b)
	if len(f) != 2 || f[0].Trait != Gathered || f[1].Trait != Stretched {
		t.Fatalf("%+v", f)
	}
	if f[0].From != 9 || f[0].To != 12 || f[0].Least != 9 || f[0].Most != 18 || f[0].Even != 8 || f[0].First != 5 {
		t.Errorf("%+v", f[0])
	}
	near(t, "slack", f[0].Strain, 0.40, 0.005)
	near(t, "stretch", f[1].Strain, 0.21, 0.005)
	// 9 stitches and 21 %.
	if f[1].From != 12 || f[1].To != 12 || f[1].Fits != 11 {
		t.Errorf("%+v", f[1])
	}
	if p[0].Trait != Tube || p[len(p)-1] != (Phase{Gathered, 9, 12}) {
		t.Errorf("%v", p)
	}
}

func TestFindingsOfOddities(t *testing.T) {
	scarf := rows().chain(9)
	scarf.even(sc, stitch.Top, 9)
	for _, b := range []*builder{rounds(), rows(), rounds().ring(0), rounds().ring(0).inRing(sc, 1), scarf, rounds().ring(0).inRing(sc, 30),
		{&fabric.Part{Rounds: []*fabric.Round{{}}}}} {
		f, p := found(t, b)
		if len(f) != 0 || len(p) > 1 {
			t.Errorf("%+v %v", f, p)
		}
	}
}

func TestAgainstTheHead(t *testing.T) {
	z := Finished{Widest: 500, Brim: 500, Depth: 200}
	for _, c := range []struct {
		brim, widest, head, ease, off float64
		strays                        bool
	}{
		{500, 500, 530, -30, 0, false},
		{500, 500, 530, -12, -18, false}, // 1.8 cm, 3.5 %
		{500, 500, 530, 0, -30, true},
		{500, 500, 450, 0, 50, true},
		{300, 300, 330, -17, -13, true}, // 4.2 %
		{420, 700, 560, -20, 0, false},  // a slouch on a ribbed brim
		{390, 514, 550, -35, -1, false},
		// An adult's ribbed brim for a head of 20 to 23 in measures 16 to 17 in
		// relaxed (common practice, no source): the hat above it fits.
		{16 * inch, 19.5 * inch, 20 * inch, -inch, 0, false},
		{17 * inch, 22 * inch, 23 * inch, -inch, 0, false},
	} {
		z.Brim, z.Widest = c.brim, c.widest
		f, ok := z.Against(c.head, c.ease)
		if !ok || math.Abs(f.Off-c.off) > 1e-9 || f.Strays() != c.strays {
			t.Errorf("%+v: %+v %v", c, f, f.Strays())
		}
	}
	// 23 in → 9.2 in (hookthatyarn 2016).
	f, _ := z.Against(23*inch, 0)
	near(t, "depth by rule", f.Rule/inch, 9.2, 1e-9)
	for _, bad := range [][2]float64{{0, 0}, {math.NaN(), 0}, {500, -600}, {500, math.NaN()}, {math.Inf(1), 0}} {
		if _, ok := z.Against(bad[0], bad[1]); ok {
			t.Errorf("%v was held against", bad)
		}
	}
	if _, ok := (&Finished{}).Against(500, 0); ok {
		t.Error("a scarf was held against a head")
	}
}

func TestBody(t *testing.T) {
	b := crown(8, 9, 3)
	r := b.part.Rounds[len(b.part.Rounds)-1]
	for i := range 12 {
		r.Repeats = append(r.Repeats, fabric.Span{From: 6 * i, To: 6*i + 6})
	}
	n, w, m, ok := Body(b.part, b.measured(t, gauge(t, Reading{Count: 20, Kind: hdc, Over: 100})))
	if n != 72 || m != 6 || !ok || math.Abs(w-5) > 1e-9 {
		t.Error(n, w, m, ok)
	}
}

// Rounds beside a tube that are as wide as it is, in rounds that come in turn, are of
// it; others are not.
func TestTubesWander(t *testing.T) {
	form := func(r ...float64) (l []RoundForm) {
		for _, v := range r {
			l = append(l, RoundForm{R: v})
		}
		return l
	}
	for name, c := range map[string]struct {
		rounds []RoundForm
		in     []Phase
		want   []Phase
	}{
		"end":       {form(88, 95, 88, 95, 95.4), []Phase{{Tube, 0, 2}, {Domed, 3, 4}}, []Phase{{Tube, 0, 4}}},
		"beginning": {form(95, 88, 95, 88), []Phase{{Closing, 0, 1}, {Tube, 2, 3}}, []Phase{{Tube, 0, 3}}},
		"both":      {form(95, 88, 95, 88, 95, 95), []Phase{{Closing, 0, 1}, {Tube, 2, 3}, {Domed, 4, 5}}, []Phase{{Tube, 0, 5}}},
		"wider":     {form(88, 90, 97, 101), []Phase{{Tube, 0, 1}, {Domed, 2, 3}}, []Phase{{Tube, 0, 1}, {Domed, 2, 3}}},
		"crown":     {form(20, 60, 90, 90), []Phase{{Domed, 0, 1}, {Tube, 2, 3}}, []Phase{{Domed, 0, 1}, {Tube, 2, 3}}},
		"flat":      {form(90, 90, 90, 90), []Phase{{Flat, 0, 1}, {Tube, 2, 3}}, []Phase{{Flat, 0, 1}, {Tube, 2, 3}}},
	} {
		if diff := cmp.Diff(c.want, wandering(c.in, c.rounds)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}
