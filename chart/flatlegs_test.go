package chart

import (
	"testing"

	"whorl/patterns/stitch"
)

// Decreases on a round that stands partly on bobbles, and those that close a crown fast,
// stand on both their legs.
func TestFlatLegs(t *testing.T) {
	bob := stitch.Kind{Base: stitch.Double, Shape: stitch.Bobble, Legs: 5}
	dec := stitch.Tog(stitch.Single, 2)
	over := newCloth("Crown")
	over.chainRing(36)
	over.rnd().st(sc, 36)
	over.rnd().rep(6, func(int) { over.st(sc, 5).st(bob, 1) })
	over.rnd().st(sc, 36)
	for n := 4; n >= 0; n-- {
		over.rnd().rep(6, func(int) { over.st(sc, n).tog(dec) })
	}
	fast := newCloth("Tip")
	fast.chainRing(28)
	for range 8 {
		fast.rnd().st(sc, 28)
	}
	for n := 10; n >= 6; n -= 2 {
		fast.rnd().rep(2, func(int) { fast.tog(dec).st(sc, n).tog(dec) })
	}
	fast.rnd().rep(8, func(int) { fast.tog(dec) })
	for _, c := range []*cloth{over, fast} {
		s := draw(t, sample{"", c.fabric(), Options{Title: "Hat"}}).Scene
		if r := Audit(s); len(r.Flat) > 0 || !r.Clean() {
			t.Errorf("legs lie flat: %v", r.Flat)
		}
		if c != over {
			continue
		}
		g := find(&s.Root, "r4s10")
		top, feet := pointsOf(g, "top")[0], pointsOf(g, "base")
		if short, long := top.Sub(feet[1]).Length(), top.Sub(feet[0]).Length(); long > 2*short {
			t.Errorf("of the legs of a decrease one is %.1f mm long, the other, over a bobble, %.1f", long, short)
		}
	}
}

// So do those of rows that close in.
func TestFlatLegsOfRows(t *testing.T) {
	c := flatPiece(30).row().st(sc, 30)
	for n := 4; n >= 0; n-- {
		c.row().rep(5, func(int) { c.st(sc, n).tog(stitch.Tog(stitch.Single, 2)) })
	}
	s := rowsChart(t, c.fabric(), Options{Title: "Back"}).Scene
	if r := Audit(s); len(r.Flat) > 0 || !r.Clean() {
		t.Errorf("legs lie flat: %v", r.Flat)
	}
}
