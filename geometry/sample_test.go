package geometry

import (
	"math"
	"strings"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// disc is n rounds of k that grow by so many stitches a round.
func disc(k stitch.Kind, by, n int) *fabric.Part {
	b := rounds().ring(0).inRing(k, by)
	for i := 2; i <= n; i++ {
		b.even(k, stitch.Top, by*i)
	}
	b.part.Name = "Mat"
	return b.part
}

// polygon is two rounds of dc with k corners: five dc in each, one between two.
func polygon(k int) *fabric.Part {
	b := rounds().ring(0).inRing(dc, 2*k)
	r := b.next()
	for i := range 2 * k {
		add(r, 1+4*(i%2), fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{on(stitch.Top, 1, i)}})
	}
	b.part.Name = "Motif"
	return b.part
}

func band(k stitch.Kind, width, n int) *fabric.Part {
	b := rows().chain(width)
	for range n {
		b.even(k, stitch.Top, width)
	}
	return b.part
}

func tube(around, n int) *fabric.Part {
	b := rounds().ring(around)
	for range n {
		b.even(sc, stitch.Top, around)
	}
	return b.part
}

// By hand, at 5 mm a stitch: sc is 6/2π·5 = 4.7746 mm tall, dc 12/2π·5 = 9.5493
// mm. Round n of a disc of 6n sc is 30n mm round, 30n/π across; a motif of two
// rounds of dc is 2·9.5493 = 19.0986 mm from its centre to its sides.
func TestSampleSize(t *testing.T) {
	flat, band, tube := disc(sc, 6, 8), band(sc, 20, 6), tube(40, 10)
	for _, c := range []struct {
		part *fabric.Part
		s    Sample
		want float64
	}{
		{flat, Sample{From: 1, To: 4, Way: Across}, 120 / math.Pi},
		{flat, Sample{From: 1, To: 6}, 180 / math.Pi},
		{flat, Sample{From: 6, To: 6, Way: Across}, 180 / math.Pi},
		{flat, Sample{Name: "mat"}, 240 / math.Pi},
		{flat, Sample{Name: "coaster", Way: Around}, 240},
		{flat, Sample{From: 3, To: 5, Way: High}, 3 * 4.7746},
		{polygon(4), Sample{Name: "square"}, 38.1972},
		{polygon(4), Sample{Name: "motif", Way: Side}, 38.1972},
		{polygon(4), Sample{Name: "motif", Way: Corner}, 38.1972 * math.Sqrt2},
		{polygon(6), Sample{Name: "hexagon", Way: Across}, 38.1972},
		{polygon(6), Sample{Name: "hexagon", Way: Side}, 38.1972 / math.Sqrt(3)},
		{polygon(6), Sample{Name: "hexagon", Way: Corner}, 38.1972 * 2 / math.Sqrt(3)},
		{polygon(3), Sample{Name: "triangle", Way: Side}, 38.1972 * math.Sqrt(3)},
		{polygon(3), Sample{Name: "triangle", Way: Corner}, 19.0986 * 3},
		{polygon(3), Sample{From: 1, To: 1}, 30 / math.Pi}, // six dc in the ring
		{band, Sample{From: 1, To: 5, Rows: true}, 5 * 4.7746},
		{band, Sample{From: 3, To: 4, Rows: true}, 2 * 4.7746},
		{band, Sample{Name: "panel"}, 100},
		{band, Sample{Name: "panel", Way: High}, 6 * 4.7746},
		{tube, Sample{From: 1, To: 5}, 5 * 4.7746},
		{tube, Sample{Name: "cowl", Way: Across}, 100},
		{tube, Sample{Name: "cowl", Way: Around}, 200},
	} {
		f := []*fabric.Fabric{nil, {Parts: []*fabric.Part{c.part}}}
		g := gauge(t)
		got, err := c.s.Size(f, g)
		if err != nil {
			t.Errorf("%s %+v: %v", c.part.Name, c.s, err)
			continue
		}
		near(t, c.part.Name+" "+c.s.what(), got, c.want, 1e-3*c.want)
		// At the gauge that the sample asks for it comes to what was measured.
		scaled, err := g.Times(110 / got)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := c.s.Size(f, scaled)
		near(t, c.part.Name+" "+c.s.what()+", scaled", again, 110, 1e-6)
		near(t, "height in widths", scaled.Height(hdc, stitch.Top)/scaled.Width(hdc, stitch.Top), 8/(2*math.Pi), 1e-9)
	}
	// 24 stitches around a circle 11 cm across.
	g := gauge(t)
	size, _ := Sample{From: 1, To: 4, Way: Across}.Size([]*fabric.Fabric{{Parts: []*fabric.Part{flat}}}, g)
	g, _ = g.Times(110 / size)
	near(t, "width", g.Width(sc, stitch.Top), math.Pi*110/24, 1e-6)
	if g.Assumed() {
		t.Error("a measured piece is no gauge")
	}
}

// A part is known by its name, or else by what can be measured of it.
func TestSamplePart(t *testing.T) {
	f := []*fabric.Fabric{{Parts: []*fabric.Part{band(dc, 20, 9), disc(sc, 6, 5), polygon(6)}}}
	for _, c := range []struct {
		s    Sample
		want float64
	}{
		{Sample{From: 1, To: 2, Rows: true}, 2 * 9.5493},
		{Sample{From: 1, To: 5}, 150 / math.Pi},
		{Sample{Name: "finished hexagon", Way: Across}, 38.1972},
		{Sample{Name: "mat", Way: Across}, 150 / math.Pi},
		{Sample{Name: "the brim", Way: Across}, 100},
	} {
		got, err := c.s.Size(f, gauge(t))
		if err != nil {
			t.Errorf("%+v: %v", c.s, err)
		}
		near(t, c.s.what(), got, c.want, 1e-3*c.want)
	}
}

func TestSampleRefuses(t *testing.T) {
	oval := rounds().chain(10)
	add(oval.next(), 20, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Underside, 0, 3)}})
	one := func(p *fabric.Part) []*fabric.Fabric { return []*fabric.Fabric{{Parts: []*fabric.Part{p}}} }
	for _, c := range []struct {
		f    []*fabric.Fabric
		s    Sample
		says string
	}{
		{one(disc(sc, 6, 4)), Sample{From: 1, To: 9, Way: Across}, "there is no Rnd 9"},
		{one(disc(sc, 6, 4)), Sample{Name: "mat", Way: Side}, `"mat" has no corners`},
		{one(oval.part), Sample{Name: "basket", Way: Across}, `"basket" cannot be measured that way`},
		{one(band(sc, 4, 4)), Sample{Name: "scarf", Way: Around}, `"scarf" cannot be measured that way`},
		{append(one(disc(sc, 6, 4)), one(disc(sc, 7, 4))...), Sample{From: 1, To: 4}, "Rnds 1-4 is not of one size in all sizes"},
		{nil, Sample{Name: "mat"}, `"mat" has no size`},
	} {
		if size, err := c.s.Size(c.f, gauge(t)); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %v, %v; want %q", c.s, size, err, c.says)
		}
	}
	for _, by := range []float64{0.01, 100, 0, math.NaN(), math.Inf(1)} {
		if _, err := gauge(t).Times(by); err == nil {
			t.Errorf("times %v", by)
		}
	}
}
