package chart

import (
	"testing"

	"whorl/patterns/stitch"
)

// A range of rounds that ends before those with corners is drawn round.
func TestRangeBeforeCorners(t *testing.T) {
	m := newCloth("Square").magic()
	m.rnd().st(sc, 8)
	m.rnd().st(sc, 8)
	m.rnd().st(sc, 8)
	m.rnd().rep(4, func(int) { m.st(sc, 2).ch(2) })
	for n := 2; n < 8; n += 2 {
		m.rnd().rep(4, func(k int) { m.st(sc, n).sp(k, sc, stitch.Kind{Base: stitch.Chain, Legs: 2}, sc) })
	}
	for to := 1; to < 5; to++ {
		if r := Audit(draw(t, sample{"", m.fabric(), Options{Title: "Square", To: to}}).Scene); !r.Clean() {
			t.Errorf("rounds 1 to %d are not clean", to)
		}
	}
}
