package geometry

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"whorl/patterns/stitch"
)

func TestGaugeSizes(t *testing.T) {
	// 16 hdc and 11 rounds = 10 cm.
	g := gauge(t, Reading{Count: 16, Kind: hdc, Rows: 11, Over: 100})
	near(t, "width of hdc", g.Width(hdc, stitch.Top), 6.25, 1e-12)
	near(t, "width of tr", g.Width(tr, stitch.Top), 6.25, 1e-12)
	near(t, "height of hdc", g.Height(hdc, stitch.Top), 100.0/11, 1e-12)
	// By the ratios sc 6 : hdc 8 : dc 12 : tr 16 (six published teaching sources).
	near(t, "height of sc", g.Height(sc, stitch.Top), 100.0/11*6/8, 1e-12)
	near(t, "height of dc", g.Height(dc, stitch.Top), 100.0/11*12/8, 1e-12)
	near(t, "height of tr", g.Height(tr, stitch.Top), 100.0/11*16/8, 1e-12)
	near(t, "width of dc3tog", g.Width(stitch.Tog(stitch.Double, 3), stitch.Top), 6.25, 1e-12)
	near(t, "width of ch", g.Width(ch, stitch.Top), 0.85*6.25, 1e-12)
	near(t, "rise of FPdc", g.Height(dc, stitch.FrontPost), 0.7*g.Height(dc, stitch.Top), 1e-12)
	picot := stitch.Kind{Base: stitch.Chain, Shape: stitch.Picot, Legs: 3}
	near(t, "height of a ch-3 picot", g.Height(picot, stitch.Top), 1.5*0.85*6.25, 1e-12)
	if g.Assumed() {
		t.Error("a gauge that was given is said to be assumed")
	}

	// Without rows the height follows from the width: h/w = k/2π.
	g = gauge(t, Reading{Count: 20, Kind: sc, Over: 100})
	near(t, "height of sc", g.Height(sc, stitch.Top), 5*6/(2*math.Pi), 1e-12)

	// Several lines: each kind from its own, others from the nearest.
	g = gauge(t, Reading{Count: 20, Kind: sc, Rows: 22, Over: 100}, Reading{Count: 16, Kind: dc, Rows: 8, Over: 100},
		Reading{Count: 18, Kind: sc, In: stitch.BackLoop, Rows: 26, Over: 100})
	near(t, "height of dc", g.Height(dc, stitch.Top), 12.5, 1e-12)
	near(t, "height of tr", g.Height(tr, stitch.Top), 12.5*16/12, 1e-12)
	near(t, "height of hdc", g.Height(hdc, stitch.Top), 100.0/22*8/6, 1e-12)
	near(t, "width of hdc", g.Width(hdc, stitch.Top), 5, 1e-12)
	near(t, "height of BLO sc", g.Height(sc, stitch.FrontLoop), 100.0/26, 1e-12)
	near(t, "width of BLO sc", g.Width(sc, stitch.BackLoop), 100.0/18, 1e-12)

	g = gauge(t)
	if !g.Assumed() || g.Width(sc, stitch.Top) != 5 {
		t.Errorf("no gauge: width %v, assumed %v", g.Width(sc, stitch.Top), g.Assumed())
	}
}

// Taller stitches are taller, and none is without a size.
func TestGaugeOrder(t *testing.T) {
	g := gauge(t)
	ext := func(k stitch.Kind) stitch.Kind { k.Manner = stitch.Extended; return k }
	order := []stitch.Kind{ch, sl, sc, ext(sc), hdc, ext(hdc), dc, ext(dc), tr, ext(tr),
		stitch.Of(stitch.DoubleTreble), stitch.Of(stitch.TripleTreble), ext(stitch.Of(stitch.TripleTreble))}
	for i := 1; i < len(order); i++ {
		a, b := g.Height(order[i-1], stitch.Top), g.Height(order[i], stitch.Top)
		if !(a > 0 && a < b) {
			t.Errorf("%s is %v tall, %s is %v", order[i-1].Name(stitch.US), a, order[i].Name(stitch.US), b)
		}
	}
	for base := stitch.Chain; base <= stitch.TripleTreble; base++ {
		for shape := stitch.Plain; shape <= stitch.Picot; shape++ {
			for in := stitch.Top; in <= stitch.BackBump; in++ {
				k := stitch.Kind{Base: base, Shape: shape, Legs: 3}
				if w, h := g.Width(k, in), g.Height(k, in); !(w > 0 && h > 0) {
					t.Errorf("%s: %v × %v", k.NameInto(in, stitch.US), w, h)
				}
			}
		}
	}
	for _, k := range []stitch.Kind{{}, {Base: 99}} {
		if g.Width(k, stitch.Top) != 0 || g.Height(k, stitch.Top) != 0 {
			t.Errorf("%v has a size", k)
		}
	}
}

func TestGaugeRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, r := range []Reading{
		{Count: 0, Over: 100}, {Count: -3, Over: 100}, {Count: nan, Over: 100}, {Count: inf, Over: 100},
		{Count: 16, Over: 0}, {Count: 16, Over: -100}, {Count: 16, Over: nan}, {Count: 16, Over: inf},
		{Count: 16, Over: 100, Rows: -1}, {Count: 16, Over: 100, Rows: nan}, {Count: 16, Over: 100, Rows: inf},
		{Count: 201, Over: 100}, {Count: 1, Over: 101}, {Count: 16, Over: 100, Rows: 1000},
		{Count: 16, Over: 100, Rows: 0.1},
	} {
		for _, k := range []stitch.Kind{hdc, {Base: 77}} {
			r.Kind = k
			g, err := NewGauge([]Reading{{Count: 14, Kind: dc, Over: 100}, r})
			var re *ReadingError
			if g != nil || !errors.As(err, &re) || re.Index != 1 {
				t.Errorf("%+v: %v", r, err)
			} else if !strings.Contains(err.Error(), "; ") || strings.Contains(err.Error(), "NaN") {
				t.Errorf("%+v: message %q", r, err)
			}
		}
	}
	same := Reading{Count: 16, Kind: hdc, Over: 100}
	if _, err := NewGauge([]Reading{same, same}); err != nil {
		t.Errorf("the same line twice: %v", err)
	}
	if _, err := NewGauge([]Reading{same, {Count: 17, Kind: hdc, Over: 100}}); err == nil {
		t.Error("two gauges for hdc were taken")
	}
}

func TestOverride(t *testing.T) {
	g := gauge(t)
	for _, d := range Defaults() {
		if d.Name == "" || d.Meaning == "" || d.Source == "" || !(d.Value > 0) {
			t.Errorf("incomplete default %+v", d)
		}
		if err := g.Override(d.Name, d.Value*1.5); err != nil {
			t.Errorf("%s: %v", d.Name, err)
		}
		for _, bad := range []float64{math.NaN(), math.Inf(1), -1, d.Value * 1000} {
			if g.Override(d.Name, bad) == nil {
				t.Errorf("%s = %v was taken", d.Name, bad)
			}
		}
	}
	near(t, "width of sc", g.Width(sc, stitch.Top), 7.5, 1e-12)
	near(t, "width of ch", g.Width(ch, stitch.Top), 7.5*0.85*1.5, 1e-12)
	near(t, "height of sc", g.Height(sc, stitch.Top), 7.5*9/(2*math.Pi), 1e-12)
	if g.Override("sc heigth", 1) == nil {
		t.Error("an unknown default was taken")
	}
}

// "6 repeats and 8 rounds = 10 cm" against the model of the same repeat.
func TestScaled(t *testing.T) {
	r := Reading{Count: 6, Pattern: "fan repeats", Rows: 8, Over: 100}
	g := gauge(t, Reading{Count: 16, Kind: dc, Over: 100}, r)
	if p := g.Patterns(); len(p) != 1 || !reflect.DeepEqual(p[0], r) {
		t.Fatalf("patterns %v", p)
	}
	// A repeat of 3 dc, rounds one dc tall.
	width, height := 3*g.Width(dc, stitch.Top), g.Height(dc, stitch.Top)
	s, err := g.Scaled(r, width, height)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "width of 6 repeats", 6*3*s.Width(dc, stitch.Top), 100, 1e-9)
	near(t, "height of 8 rounds", 8*s.Height(dc, stitch.Top), 100, 1e-9)
	near(t, "sc over dc", s.Height(sc, stitch.Top)/s.Height(dc, stitch.Top), 0.5, 1e-9)
	near(t, "the gauge before", g.Width(dc, stitch.Top), 6.25, 1e-9)
	for _, bad := range [][2]float64{{0, 1}, {-1, 1}, {math.NaN(), 1}, {1, math.NaN()}, {math.Inf(1), 1}, {1e-9, 1}} {
		if _, err := g.Scaled(r, bad[0], bad[1]); err == nil {
			t.Errorf("scaled to %v", bad)
		}
	}
}

// "8 rounds = 10 cm in hdc": 12.5 mm tall, and 12.5·2π/8 mm wide by the
// flat-circle rule, unless a stitch was measured across.
func TestRowsAlone(t *testing.T) {
	rows := Reading{Kind: hdc, Rows: 8, Over: 100}
	g := gauge(t, rows)
	near(t, "height of hdc", g.Height(hdc, stitch.Top), 12.5, 1e-12)
	near(t, "height of dc", g.Height(dc, stitch.Top), 12.5*12/8, 1e-12)
	near(t, "width of hdc", g.Width(hdc, stitch.Top), 12.5*2*math.Pi/8, 1e-12)
	near(t, "width of dc", g.Width(dc, stitch.Top), 12.5*2*math.Pi/8, 1e-12)
	if !g.Assumed() {
		t.Error("a gauge of rounds is said to be measured across")
	}
	for _, across := range []Reading{{Count: 16, Kind: hdc, Over: 100}, {Count: 16, Kind: sc, Over: 100}} {
		for _, l := range [][]Reading{{rows, across}, {across, rows}} {
			g = gauge(t, l...)
			near(t, "height of hdc", g.Height(hdc, stitch.Top), 12.5, 1e-12)
			near(t, "width of hdc", g.Width(hdc, stitch.Top), 6.25, 1e-12)
		}
	}
	if _, err := NewGauge([]Reading{rows, {Kind: hdc, Rows: 9, Over: 100}}); err == nil {
		t.Error("two gauges of rounds for hdc were taken")
	}
	if _, err := NewGauge([]Reading{rows, {Count: 16, Kind: hdc, Rows: 9, Over: 100}}); err == nil {
		t.Error("two heights for hdc were taken")
	}
	// Rounds of a stitch pattern alone: the widths follow, but not those measured.
	rows = Reading{Pattern: "fans", Rows: 8, Over: 100}
	s, err := gauge(t).Scaled(rows, 30, 10)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "width of dc", s.Width(dc, stitch.Top), 5*1.25, 1e-12)
	s, err = gauge(t, Reading{Count: 20, Kind: dc, Over: 100}).Scaled(rows, 30, 10)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "width of dc that was measured", s.Width(dc, stitch.Top), 5, 1e-12)
}
