package chart

import (
	"math"
	"testing"

	"whorl/patterns/fabric"
)

// In grit stitch every single crochet stands upright over that of the round below, near the
// centre and far out.
func TestGritStitch(t *testing.T) {
	c := newCloth("Hat").magic()
	for r := 1; r <= 6; r++ {
		c.rnd()
		for range 6 {
			c.st(sc, max(r-2, 0)).inc(sc)
			if r > 1 {
				c.same(sc)
			}
		}
	}
	for range 16 {
		c.rnd().rep(18, func(int) { c.inc(sc, dc).skip(1) })
	}
	f := c.fabric()
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	for _, c := range w.courses[8:] {
		for _, i := range c.order {
			if s := &c.round.Stitches[i]; s.Kind == sc {
				foot, _ := w.angle(s.On[0])
				if off := math.Abs(math.Remainder(c.theta[i]-foot, 2*math.Pi)); off > 0.05 {
					t.Fatalf("%s: a single crochet is turned by %.1f° from the one that it stands on", c.label(), off*180/math.Pi)
				}
			}
		}
	}
}
