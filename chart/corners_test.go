package chart

import (
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// A motif of two rounds, which fills the gap between others, has its corners in its last
// round, where stitches stand on its sides; loops with nothing between them are none.
func TestCornersOfTwoRounds(t *testing.T) {
	for _, c := range []struct{ side, corners int }{{4, 4}, {0, 0}} {
		m := newCloth("Filler").magic()
		m.rnd().rep(4, func(int) { m.st(dc, 4).ch(2) }).join()
		m.rnd().rep(4, func(k int) {
			m.st(sc, c.side).sp(k, sc, sc, stitch.Kind{Base: stitch.Chain, Legs: 2}, sc, sc)
		}).join()
		f := m.fabric()
		w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
		if err != nil {
			t.Fatal(err)
		}
		if w.draw(); w.corners.sides != c.corners {
			t.Errorf("%d stitches a side: %d corners, want %d", c.side, w.corners.sides, c.corners)
		}
		if r := Audit(draw(t, sample{"", f, Options{Title: "Filler"}}).Scene); !r.Clean() || c.corners > 0 && len(r.Leaning) > 0 {
			t.Errorf("%d stitches a side: legs leaning %v", c.side, r.Leaning)
		}
	}
}

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
