package geometry

import (
	"math"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Areas against the plane's: a disc πr², a tube 2πrh, a rectangle.
func TestArea(t *testing.T) {
	g, err := NewGauge([]Reading{{Count: 16, Kind: dc, Rows: 8, Over: 100}})
	if err != nil {
		t.Fatal(err)
	}
	const w, h = 100. / 16, 100. / 8
	disc := rounds().ring(0).inRing(dc, 12).even(dc, stitch.Top, 24).even(dc, stitch.Top, 36)
	tube := rounds().chain(40).even(dc, stitch.Top, 40).even(dc, stitch.Top, 40)
	cloth := rows().chain(20).even(dc, stitch.Top, 20).even(dc, stitch.Top, 20).even(dc, stitch.Top, 20)
	for _, c := range []struct {
		name string
		part *fabric.Part
		want float64
	}{
		{"disc", disc.part, (12./2 + (12+24)/2. + (24+36)/2.) * w * h},
		{"tube", tube.part, 40 * w * 2 * h},
		{"cloth", cloth.part, 20 * w * 3 * h},
	} {
		form, err := Measure(&fabric.Fabric{Parts: []*fabric.Part{c.part}}, g)
		if err != nil {
			t.Fatal(err)
		}
		if a := Area(c.part, form.Parts[0]); math.Abs(a-c.want) > 1e-6*c.want {
			t.Errorf("%s: %v mm², want %v", c.name, a, c.want)
		}
	}
	// The flat-circle rule: 12 dc a round lie flat, so the area is nearly that of
	// the disc of their radius.
	flat, _ := NewGauge([]Reading{{Count: 20, Kind: dc, Over: 100}})
	form, _ := Measure(&fabric.Fabric{Parts: []*fabric.Part{disc.part}}, flat)
	r := form.Parts[0].Rounds[3].Radius
	if a := Area(disc.part, form.Parts[0]); math.Abs(a/(math.Pi*r*r)-1) > 0.01 {
		t.Errorf("%v mm², but πr² is %v", a, math.Pi*r*r)
	}
	again := *disc.part
	again.Rounds = append(again.Rounds[:0:0], again.Rounds...)
	last := *again.Rounds[3]
	last.Carried = true
	again.Rounds[3] = &last
	if a, b := Area(&again, form.Parts[0]), Area(disc.part, form.Parts[0]); !(a < b) {
		t.Errorf("a round that is carried on is not left out: %v, %v", a, b)
	}
}

// A stitch weighs as its legs, a beginning as its chains.
func TestStitchArea(t *testing.T) {
	g, err := NewGauge([]Reading{{Count: 20, Kind: dc, Rows: 8, Over: 100}})
	if err != nil {
		t.Fatal(err)
	}
	area := func(k stitch.Kind) float64 { return g.Width(k, stitch.Top) * g.Height(k, stitch.Top) }
	for _, c := range []struct {
		name string
		s    fabric.Stitch
		want float64
	}{
		{"dc", fabric.Stitch{Kind: dc}, 5 * 12.5},
		{"sc", fabric.Stitch{Kind: sc}, area(sc)},
		{"chain", fabric.Stitch{Kind: ch}, area(ch)},
		{"slip stitch", fabric.Stitch{Kind: sl, Role: fabric.Join}, area(sl)},
		{"beginning", fabric.Stitch{Kind: ch, Role: fabric.Start, Chains: 3, Counts: true, As: dc}, 3 * area(ch)},
		{"together", fabric.Stitch{Kind: stitch.Tog(stitch.Double, 5)}, 5 * area(dc)},
		{"cluster", fabric.Stitch{Kind: stitch.Kind{Base: stitch.Double, Shape: stitch.Cluster, Legs: 3}}, 3 * area(dc)},
		{"picot", fabric.Stitch{Kind: stitch.Kind{Base: stitch.Chain, Shape: stitch.Picot, Legs: 3}}, 3*area(ch) + area(sl)},
		{"foundation", fabric.Stitch{Kind: stitch.Kind{Base: stitch.Double, Manner: stitch.Foundation}}, area(dc) + area(ch)},
	} {
		part := &fabric.Part{Rounds: []*fabric.Round{{Stitches: []fabric.Stitch{c.s, c.s}}, {Carried: true, Stitches: []fabric.Stitch{c.s}}}}
		if got := g.StitchArea(part); !(c.want > 0) || math.Abs(got-2*c.want) > 1e-9*got {
			t.Errorf("%s: %v mm², want %v", c.name, got, 2*c.want)
		}
	}
}

func TestWhole(t *testing.T) {
	for _, c := range []struct {
		needed, ball float64
		want         int
	}{{86, 100, 1}, {100, 100, 1}, {100.0001, 100, 2}, {0.3, 0.1, 3}, {1, 50, 1}, {251, 50, 6}} {
		if got := Whole(c.needed, c.ball); got != c.want {
			t.Errorf("%v in balls of %v: %d, want %d", c.needed, c.ball, got, c.want)
		}
	}
}
