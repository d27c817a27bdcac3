package geometry

import (
	"math"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// finish measures parts and finishes them.
func finish(t *testing.T, g *Gauge, parts ...*fabric.Part) *Finished {
	t.Helper()
	f := &fabric.Fabric{Parts: parts}
	form, err := Measure(f, g)
	if err != nil {
		t.Fatal(err)
	}
	z, err := Finish(f, form)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

// A cap from the crown down: 6 rounds of flat dc, then 8 even. Its depth is that
// of 14 rounds, its width laid flat half its circumference (smalltowndreamz
// 2014).
func TestCrownDown(t *testing.T) {
	g := gauge(t)
	b := rounds().ring(0).inRing(dc, 12)
	for n := 2; n <= 6; n++ {
		b.even(dc, stitch.Top, 12*n)
	}
	for range 8 {
		b.even(dc, stitch.Top, 72)
	}
	h := g.Height(dc, stitch.Top)
	z := finish(t, g, b.part)
	near(t, "brim", z.Brim, 360, 1e-6)
	near(t, "widest", z.Widest, 360, 1e-6)
	near(t, "flat width", z.FlatWidth, 180, 1e-6)
	near(t, "depth", z.Depth, 14*h, 1e-6)
	near(t, "turned up", z.TurnedUp(2*h), 12*h, 1e-6)
	near(t, "turned up by nonsense", z.TurnedUp(math.NaN()), 14*h, 1e-6)
	near(t, "hole", z.Hole, 0, 0)
	near(t, "standing", z.Pieces[0].Standing, 8*h, 1e-3)
	if !z.Pieces[0].CrownFirst {
		t.Error("crown is not first")
	}
}

// An edging round a cap and a flap on it is longer than the cap is round, and does not
// make it wider.
func TestEdgedRoundFlaps(t *testing.T) {
	cap := rounds().ring(0).inRing(dc, 12)
	for n := 2; n <= 6; n++ {
		cap.even(dc, stitch.Top, 12*n)
	}
	edge := func(part int) *fabric.Part {
		b := rounds().ring(0).inRing(sc, 100)
		b.part.From = 0
		b.part.Rounds[0].Carried, b.part.Rounds[0].Number = true, 6
		for i := range 20 {
			b.part.Rounds[1].Stitches[i].On = []fabric.Place{{Into: stitch.RowEnd, Part: part, At: fabric.Ref{Round: 1}}}
		}
		return b.part
	}
	if goesOn(cap.part, edge(1)) {
		t.Error("an edging round a flap is taken for the next round of the cap")
	}
	if !goesOn(cap.part, edge(0)) {
		t.Error("an edging on the cap itself is not")
	}
}

// A ribbed strip, and a body picked up along it and closed at the crown.
func TestBrimUp(t *testing.T) {
	g := gauge(t, Reading{Count: 20, Kind: sc, Rows: 20, Over: 100}) // sc 5 × 5 mm
	strip := rows().chain(12)
	for range 100 {
		strip.even(sc, stitch.BackLoop, 12)
	}
	body := rounds()
	body.part.From = 0
	r := body.next()
	r.Edge = 100
	for j := range 72 {
		add(r, 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{{Into: stitch.RowEnd, At: fabric.Ref{Round: j + 1}}}})
	}
	for range 20 {
		body.even(sc, stitch.Top, 72)
	}
	for n := 11; n >= 1; n-- {
		body.even(sc, stitch.Top, 6*n)
	}
	z := finish(t, g, strip.part, body.part)
	near(t, "length of the strip", z.Pieces[0].Length, 100*5*0.85, 1e-6)
	near(t, "width of the strip", z.Pieces[0].Width, 60, 1e-6)
	near(t, "brim", z.Brim, 425, 1e-6)
	near(t, "widest", z.Widest, 360, 0.5)
	near(t, "depth", z.Depth, 60+32*5, 1e-6)
	near(t, "hole", z.Hole, 30, 1e-6)
	if z.Pieces[1].CrownFirst || !z.Pieces[0].Rows {
		t.Errorf("%+v", z.Pieces)
	}
}

// A band worked on from a crown that is wider draws it in: the brim is its far edge.
func TestBandDrawsIn(t *testing.T) {
	g := gauge(t, Reading{Count: 20, Kind: sc, Rows: 20, Over: 100}) // sc 5 × 5 mm
	hat := rounds().ring(0).inRing(sc, 6)
	for n := 2; n <= 20; n++ {
		hat.even(sc, stitch.Top, 6*n)
	}
	band := rounds()
	band.part.From = 0
	carried := band.next()
	carried.Carried, carried.Number = true, 20
	add(carried, 120, fabric.Stitch{Kind: sc, Counts: true})
	for range 5 {
		band.even(sc, stitch.Top, 80)
	}
	z := finish(t, g, hat.part, band.part)
	near(t, "brim", z.Brim, 400, 1e-6)
	near(t, "widest", z.Widest, 600, 0.5)
}

func TestFinishOddities(t *testing.T) {
	scarf := rows().chain(30)
	for range 200 {
		scarf.even(hdc, stitch.Top, 30)
	}
	z := finish(t, nil, scarf.part)
	near(t, "length", z.Pieces[0].Length, 200*5*8/(2*math.Pi), 1e-6)
	near(t, "width", z.Pieces[0].Width, 150, 1e-6)
	near(t, "brim of a scarf", z.Brim, 0, 0)
	for _, p := range []*fabric.Part{
		rounds().part, rows().part, rounds().ring(0).part, rounds().ring(9).part, rows().chain(5).part,
		rounds().ring(0).inRing(sc, 1).part, {From: 40, Rounds: []*fabric.Round{{}}},
	} {
		z := finish(t, nil, p)
		for _, x := range []float64{z.Brim, z.Widest, z.Depth, z.Hole, z.Pieces[0].Length, z.Pieces[0].Width, z.Pieces[0].Standing} {
			if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
				t.Errorf("%+v", z)
			}
		}
	}
	if _, err := Finish(nil, nil); err == nil {
		t.Error("nothing was finished")
	}
	if _, err := Finish(&fabric.Fabric{Parts: []*fabric.Part{scarf.part}}, &Form{Parts: []*PartForm{{}}}); err == nil {
		t.Error("a form of another fabric was taken")
	}
}

// A circle lies flat, as wide as it has settled; one with too few increases cups, but
// is meant to lie flat; a crown with sides, a half sphere and a cone are not.
func TestFinishedLies(t *testing.T) {
	// counts of single crochet, round by round
	grown := func(k, n int) (l []int) {
		for i := range n {
			l = append(l, k*(i+1))
		}
		return l
	}
	sphere := func(n int) (l []int) {
		for i := range n {
			a := math.Pi / 2 * float64(i+1) / float64(n)
			l = append(l, int(math.Round(4*float64(n)*math.Sin(a)))) // 2πr/w with r = n·h·2/π
		}
		return l
	}
	for _, c := range []struct {
		name       string
		counts     []int
		flat, cups bool
	}{
		{"circle", grown(6, 8), true, false},
		{"mandala", grown(5, 8), false, true},
		{"cap", append(grown(6, 6), 36, 36, 36, 36, 36, 36), false, false},
		{"half sphere", sphere(8), false, false},
		{"cone", grown(2, 8), false, false},
	} {
		b := rounds().ring(0).inRing(sc, c.counts[0])
		for _, n := range c.counts[1:] {
			b.even(sc, stitch.Top, n)
		}
		done := finish(t, gauge(t), b.part)
		z := done.Pieces[0]
		if z.Flat != c.flat || z.Cups != c.cups {
			t.Errorf("%s: flat %v, cups %v: %.1f mm standing, %.1f mm deep, %.1f mm across", c.name, z.Flat, z.Cups, z.Standing, z.Depth, z.Across)
		}
		near(t, c.name+" across", z.Across, z.Widest/math.Pi, 1e-9)
	}
}
