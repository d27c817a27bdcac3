package chart

import (
	"slices"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// What the handles of a bag hang from stays square over its top, and so do the rounds over
// it; what is worked into the handles stands along them.
func TestHandlesOfABag(t *testing.T) {
	for _, into := range []string{"chains", "loops"} {
		t.Run(into, func(t *testing.T) {
			c := newCloth("Bag").magic()
			for r := 1; r <= 14; r++ {
				c.rnd()
				for range 6 {
					if r > 1 && r <= 10 {
						c.st(sc, r-2).inc(sc, sc)
					} else {
						c.st(sc, min(r, 10))
					}
				}
			}
			c.rnd()
			for range 2 {
				c.st(sc, 12).ch(60).skip(18)
			}
			c.rnd()
			for k := range 2 {
				c.st(sc, 12)
				if into == "chains" {
					below := c.index() - 1
					sp := c.part.Rounds[below].Spaces[k]
					for i := sp.From; i < sp.To; i++ {
						c.put(fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{{At: fabric.Ref{Round: below, Stitch: i}}}})
					}
				} else {
					c.sp(k, slices.Repeat([]stitch.Kind{sc}, 60)...)
				}
			}
			c.rnd().st(sc, 144)
			r := Audit(draw(t, sample{"bag", c.fabric(), Options{Title: "Bag"}}).Scene)
			if len(r.Overlaps)+len(r.Leaning) > 0 {
				t.Errorf("overlaps %v, leaning %v", r.Overlaps, r.Leaning)
			}
		})
	}
}
