package chart

import (
	"math"
	"testing"

	"whorl/chart/ring"
)

// The chains at the sides of a petal stand beside its legs, the one over the other, and
// nothing touches.
func TestPetalsStand(t *testing.T) {
	c := newCloth("Flower").magic()
	c.rnd().st(sc, 8)
	c.rnd().rep(8, func(int) { c.inc(sl, chains(2), dc, dc, chains(2), sl) })
	w, leaning := laid(t, c.fabric())
	if len(leaning) > 0 {
		t.Error(leaning)
	}
	r := w.courses[2]
	if len(r.petals) != 16 {
		t.Fatalf("%d sides of petals", len(r.petals))
	}
	for _, k := range r.petals {
		low, high := k.chains[0], k.chains[1]
		if k.down {
			low, high = high, low
		}
		rise := r.radius[high] - r.radius[low]
		across := math.Abs(math.Remainder(r.theta[high]-r.theta[low], ring.Turn)) * r.radius[low]
		if rise < 0.9*w.unit || across > rise {
			t.Errorf("a chain is %.2f up and %.2f aside of the one below it, in units", rise/w.unit, across/w.unit)
		}
		if top := r.radius[k.tall]; r.radius[high] > top {
			t.Errorf("a chain stands %.2f units over the petal", (r.radius[high]-top)/w.unit)
		}
	}
}
