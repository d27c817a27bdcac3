package chart

import (
	"slices"
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

// The layers of a flower are worked on the layers before, behind the petals:
// the joins of these keep clear of the legs that pass by them, three rounds on.
func TestJoinsBesideLayers(t *testing.T) {
	c := newCloth("Flower").magic()
	c.rnd().start(3, dc).ch(2)
	for range 5 {
		c.st(dc, 1).ch(2)
	}
	c.join()
	round := func(layer, each, chains int, in stitch.Into) {
		c.rnd()
		for i := range 6 {
			c.put(fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{{Into: in, At: fabric.Ref{Round: layer, Stitch: each * i}}}})
			c.ch(chains)
		}
		c.join()
	}
	petals := func(dcs int) {
		petal := append(append([]stitch.Kind{sc, hdc}, slices.Repeat([]stitch.Kind{dc}, dcs)...), hdc, sc)
		c.rnd().rep(6, func(i int) { c.sp(i, petal...) }).join()
	}
	petals(3)
	round(1, 3, 4, stitch.FrontPost)
	petals(5)
	round(3, 5, 6, stitch.Top)
	petals(7)
	if r := Audit(draw(t, sample{"flower", c.fabric(), Options{}}).Scene); len(r.Overlaps) > 0 {
		t.Error(r.Overlaps)
	}
}
