package chart

import (
	"testing"

	"whorl/patterns/fabric"
)

// The chains in the middle of a shell stay at its top where the round is evened out, so that
// what stands there next does not begin among its legs.
func TestShellsKeepTheirTops(t *testing.T) {
	c := disc()
	c.rnd().rep(6, func(int) {
		c.inc(dc, dc, chains(2), dc, dc).ch(3).skip(3)
		for range 6 {
			c.st(sc, 1).ch(3).skip(1)
		}
	}).join()
	for spaces := 8; spaces > 4; spaces-- {
		c.rnd().rep(6, func(i int) {
			c.sp(spaces*i, dc, dc, chains(2), dc, dc).ch(3)
			for k := 2; k < spaces; k++ {
				c.sp(spaces*i+k-1, sc).ch(3)
			}
		}).join()
	}
	f := c.fabric()
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	shells := w.courses[len(w.courses)-1]
	for i := range shells.round.Stitches { // as low as the mean of the round is
		shells.radius[i] = w.radii.Of(w.layer(shells))
	}
	w.alike(shells)
	n := 0
	for i := range shells.round.Stitches {
		if i < 2 || !shells.isLoop(i) || !w.opens(shells, i) {
			continue
		}
		before, _ := shells.besideLoop(i)
		if n++; shells.radius[i] < shells.radius[before] {
			t.Errorf("a chain of a shell is %.2f mm out, the stitch beside it %.2f", shells.radius[i], shells.radius[before])
		}
	}
	if n == 0 {
		t.Error("there is no shell with chains in it")
	}
}
