package chart

import (
	"testing"

	"whorl/patterns/fabric"
)

func TestWedge(t *testing.T) {
	for _, c := range []struct {
		name    string
		f       *fabric.Fabric
		repeats int
		shown   int // stitches
	}{
		{"circle", flat(hdc, 8, 6, true), 1, 1 + 2 + 3 + 4 + 5 + 6},
		{"circle", flat(dc, 12, 4, true), 3, 3 * (1 + 2 + 3 + 4)},
		{"crown", closing(hdc, 9, 6, 2, 2), 2, 2 * (6 + 6 + 6 + 5 + 4 + 3 + 2 + 1)},
	} {
		chart, err := Wedge(c.f, measure(t, c.f), Options{Title: c.name, Repeats: c.repeats})
		if err != nil {
			t.Fatal(err)
		}
		if err := chart.Scene.Check(); err != nil {
			t.Error(err)
		}
		if n := len(tops(&chart.Scene.Root, nil)); n != c.shown {
			t.Errorf("%s: %d stitches in %d repeats, want %d", c.name, n, c.repeats, c.shown)
		}
		if r := Audit(chart.Scene); !r.Clean() {
			t.Errorf("%s: overlaps %v, texts %v, legs %v", c.name, r.Overlaps, r.Texts, r.Astray)
		}
		if len(chart.Findings) > 0 {
			t.Errorf("%s: %v", c.name, chart.Findings)
		}
	}
}

// Without a repeat the whole is drawn, and the chart says so.
func TestWedgeWithoutRepeat(t *testing.T) {
	c := newCloth("Odd").magic()
	c.rnd().st(sc, 5).st(hdc, 1)
	f := c.fabric()
	chart, err := Wedge(f, measure(t, f), Options{})
	if err != nil || len(chart.Findings) == 0 || len(tops(&chart.Scene.Root, nil)) != 6 {
		t.Errorf("%v, %+v", err, chart)
	}
}

// Rounds whose kinds come again all round have no repeat where one place has more in it than
// the others.
func TestWedgeWithGusset(t *testing.T) {
	c := newCloth("Gusset").chainRing(16)
	c.rnd().st(hdc, 16)
	c.rnd().inc(hdc, hdc, hdc).st(hdc, 15)
	f := c.fabric()
	chart, err := Wedge(f, measure(t, f), Options{})
	if err != nil || len(chart.Findings) == 0 {
		t.Errorf("a gusset is shown as a repeat: %v, %q", err, chart.Scene.Alt)
	}
}
