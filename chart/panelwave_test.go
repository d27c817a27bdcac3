package chart

import (
	"math"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// rippled is a tube whose rounds increase over increases and decrease over decreases, with
// so many plain rounds after each.
func rippled(repeats, plain int) *fabric.Fabric {
	dc2tog := stitch.Tog(stitch.Double, 2)
	c := newCloth("Cowl").chainRing(14 * repeats)
	c.rnd().start(1).st(sc, 14*repeats).join()
	for range 4 {
		c.rnd().start(2).rep(repeats, func(int) { c.inc(dc, dc).st(dc, 4).tog(dc2tog).tog(dc2tog).st(dc, 4).inc(dc, dc) }).join()
		for range plain {
			c.rnd().start(1).st(sc, 14*repeats).join()
		}
	}
	return c.fabric()
}

// A ripple worked in rounds lies in waves on a panel, as one in rows does: its legs stand
// square to the rounds, and its stitches evenly apart.
func TestPanelOfRipple(t *testing.T) {
	for _, left := range []bool{false, true} {
		for plain := range 2 {
			f := rippled(8, plain)
			c, err := Panel(f, measure(t, f), Options{Repeats: 2, LeftHanded: left})
			if err != nil {
				t.Fatal(err)
			}
			if r := Audit(c.Scene); !r.Clean() || len(r.Leaning) > 0 {
				t.Errorf("%d plain: overlaps %v, texts %v, legs %v, leaning %v", plain, r.Overlaps, r.Texts, r.Astray, r.Leaning)
			}
			for _, round := range []string{"2", "3", "4"} {
				ps := tops(find(&c.Scene.Root, "rnd"+round), nil)
				low, high := math.Inf(1), math.Inf(-1)
				least, most := math.Inf(1), 0.0
				for k, p := range ps {
					low, high = math.Min(low, p[1]), math.Max(high, p[1])
					if k > 0 {
						gap := math.Hypot(p[0]-ps[k-1][0], p[1]-ps[k-1][1])
						least, most = math.Min(least, gap), math.Max(most, gap)
					}
				}
				if high-low < 3 || most > 1.5*least {
					t.Errorf("%d plain, round %s: waves %.1f mm deep, tops %.2f to %.2f mm apart", plain, round, high-low, least, most)
				}
			}
		}
	}
	f := closing(hdc, 9, 6, 6, 2)
	w, err := newWork(f, measure(t, f), Options{To: 6}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.panel, w.flat = true, true
	w.turn()
	w.cutRepeats(1)
	if w.findPanelWave(); w.zigzag != nil {
		t.Error("a plain tube lies in waves")
	}
}
