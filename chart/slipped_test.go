package chart

import (
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Petals behind petals: the slip stitches of a later round are worked into what the first
// loops pass over, and their dots keep clear of these loops.
func TestSlippedBehindLoops(t *testing.T) {
	slip := stitch.Of(stitch.Slip)
	c := newCloth("Flower").chainRing(4)
	c.rnd()
	for range 10 {
		c.put(fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{{Into: stitch.Ring, At: fabric.Ref{Stitch: -1}}}})
	}
	c.join()
	first := c.index()
	c.rnd().rep(5, func(int) { c.ch(3).skip(1).st(slip, 1) })
	c.rnd().rep(5, func(i int) { c.sp(i, sc, dc, dc, dc, sc) }).join()
	c.rnd()
	for i := range 5 {
		c.put(fabric.Stitch{Kind: slip, Counts: true, On: []fabric.Place{{At: fabric.Ref{Round: first, Stitch: 2 * i}}}})
		c.ch(4)
	}
	c.join()
	c.rnd().rep(5, func(i int) { c.sp(i, sc, dc, dc, dc, dc, dc, sc) }).join()
	if r := Audit(draw(t, sample{"flower", c.fabric(), Options{}}).Scene); !r.Clean() {
		t.Error(r.Overlaps, r.Texts, r.Astray)
	}
}
