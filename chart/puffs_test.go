package chart

import (
	"testing"

	"whorl/patterns/stitch"
)

// Two puffs in the space of one chain keep off one another, though they stand on one point.
func TestPuffsInOnePlace(t *testing.T) {
	puff := stitch.Kind{Base: stitch.Double, Shape: stitch.Puff, Legs: 3}
	c := newCloth("Puffs").magic()
	c.rnd().rep(8, func(int) { c.st(puff, 1).ch(1) })
	c.rnd().rep(8, func(i int) { c.sp(i, puff).ch(1).sp(i, puff).ch(1) })
	c.rnd().rep(16, func(i int) { c.sp(i, puff).ch(1).sp(i, puff).ch(1) })
	if r := Audit(draw(t, sample{"puffs", c.fabric(), Options{}}).Scene); len(r.Overlaps) > 0 {
		t.Error(r.Overlaps)
	}
}
