package chart

import (
	"testing"

	"whorl/patterns/fabric"
)

// The feet of a fan in a loop stand in one place or, where they part along the loop, so far
// from one another that their strokes do not run into one.
func TestFeetInALoop(t *testing.T) {
	parted := 0
	for n := 10; n <= 12; n++ {
		const between = 2
		c := disc()
		c.rnd().rep(96/(between+1), func(int) { c.st(sc, 1).ch(5).skip(between) })
		c.rnd().rep(96/(between+1), func(i int) {
			for range n {
				c.sp(i, dc)
			}
		})
		f := c.fabric()
		w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
		if err != nil {
			t.Fatal(err)
		}
		w.draw()
		last := w.courses[len(w.courses)-1]
		for i := 1; i < n; i++ {
			if _, ok := last.strung[i]; !ok {
				continue
			}
			parted++
			a, b := last.strung[i-1], last.strung[i]
			if apart := w.point(a.angle, a.radius).Sub(w.point(b.angle, b.radius)).Length(); apart < 0.8*partFeet {
				t.Errorf("feet of a fan of %d over %d stitches lie %.2f mm apart", n, between+1, apart)
			}
		}
	}
	if parted == 0 {
		t.Error("no feet part")
	}
}

// Single crochets in a loop of two chains stand along it, and so do those on both sides of a
// point of chains: none lies beside the others.
func TestSinglesInALoop(t *testing.T) {
	for name, lay := range map[string]func(c *cloth) int{
		"3 sc in each ch-2 sp": func(c *cloth) int {
			c.rnd().rep(48, func(int) { c.st(sc, 1).ch(2).skip(1) })
			c.rnd().rep(48, func(i int) { c.sp(i, sc, sc, sc) })
			return 3 * 48
		},
		"(2 sc, ch 3, 2 sc) in each ch-3 sp": func(c *cloth) int {
			c.rnd().rep(24, func(int) { c.st(sc, 1).ch(3).skip(3) })
			c.rnd().rep(24, func(i int) { c.sp(i, sc, sc).ch(3).sp(i, sc, sc) })
			return 4 * 24
		},
	} {
		c := disc()
		singles := lay(c)
		f := c.fabric()
		w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
		if err != nil {
			t.Fatal(err)
		}
		w.draw()
		last := w.courses[len(w.courses)-1]
		if n := len(last.strung); n != singles {
			t.Errorf("%s: %d of %d stand along their loops", name, n, singles)
		}
		if r := Audit(draw(t, sample{name, f, Options{}}).Scene); !r.Clean() {
			t.Errorf("%s: %v %v %v %v", name, r.Overlaps, r.Texts, r.Astray, r.Leaning)
		}
	}
}
