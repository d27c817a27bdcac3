package chart

import (
	"testing"

	"whorl/patterns/stitch"
)

// The rim of a pot, increased in one loop, stands close on its places however far the
// wall is stretched on paper.
func TestNarrowPairs(t *testing.T) {
	c := newCloth("Pot").magic()
	for r := 1; r <= 13; r++ {
		c.rnd().rep(6, func(int) {
			if r > 1 && r <= 6 {
				c.st(sc, r-2).inc(sc, sc)
			} else {
				c.st(sc, min(r, 6))
			}
		})
	}
	c.rnd().rep(6, func(int) {
		c.into(sc, stitch.FrontLoop, 6)
		c.same(sc)
	})
	r := Audit(draw(t, sample{"pot", c.fabric(), Options{Title: "Pot"}}).Scene)
	if len(r.Overlaps)+len(r.Leaning) > 0 {
		t.Errorf("overlaps %v, leaning %v", r.Overlaps, r.Leaning)
	}
}
