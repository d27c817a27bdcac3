package chart

import (
	"testing"

	"whorl/patterns/stitch"
)

// Shells that pass over the loop between them without chains, and single stitches round
// them, keep to what they stand on and leave the loop open.
func TestShellsLeaveTipOpen(t *testing.T) {
	c := newCloth("Doily").magic()
	c.rnd().start(3, dc).st(dc, 23).join()
	c.rnd().start(1).rep(12, func(int) { c.st(sc, 1).ch(4).skip(1) }).join()
	c.rnd().start(1).rep(12, func(i int) { c.sp(i, sc).ch(5) }).join()
	c.rnd().start(1).rep(12, func(i int) { c.sp(i, sc).ch(6) }).join()
	shell := []stitch.Kind{dc, dc, chains(2), dc, dc}
	c.rnd().start(1).rep(4, func(i int) { c.sp(3*i, shell...).ch(4).sp(3*i+1, shell...) }).join()
	c.rnd().start(1).rep(8, func(i int) {
		c.st(sc, 2).sp(i+i/2+i%2, sc).st(sc, 2)
		if i%2 == 0 {
			c.sp(i+i/2+1, sc, sc, sc)
		}
	}).join()
	s := draw(t, sample{"doily", c.fabric(), Options{Title: "Doily"}}).Scene
	if r := Audit(s); len(r.Overlaps)+len(r.Leaning)+len(r.Fans) > 0 {
		t.Errorf("overlaps %v, leaning %v, uneven fans %v", r.Overlaps, r.Leaning, r.Fans)
	}
}

// A doily that closes over the tips of its pineapples is drawn whole, not as the halves of a
// ball.
func TestLaceHasNoHalves(t *testing.T) {
	c := newCloth("Doily").magic()
	c.rnd().start(3, dc).st(dc, 23).join()
	for k := range 3 {
		c.rnd().start(1).rep(12, func(i int) {
			if k == 0 {
				c.st(sc, 1).skip(1)
			} else {
				c.sp(i, sc)
			}
			c.ch(7)
		}).join()
	}
	for range 3 {
		c.rnd().start(1).rep(12, func(i int) { c.sp(i, sc).ch(2) }).join()
	}
	f := c.fabric()
	if h := Halves(f, measure(t, f), Options{}); len(h) > 0 {
		t.Errorf("it is drawn in halves: %v", h)
	}
}
