package chart

import (
	"math"
	"slices"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// The rim of a pot, increased in one loop, stands close on its places however far the
// wall is stretched on paper.
func TestNarrowPairs(t *testing.T) {
	c := newCloth("Pot").magic()
	for r := 1; r <= 13; r++ {
		c.rnd().rep(6, func(int) {
			if r > 1 && r <= 6 {
				c.st(sc, r-2).inc(sc, sc)
			} else {
				c.st(sc, min(r, 6))
			}
		})
	}
	c.rnd().rep(6, func(int) {
		c.into(sc, stitch.FrontLoop, 6)
		c.same(sc)
	})
	r := Audit(draw(t, sample{"pot", c.fabric(), Options{Title: "Pot"}}).Scene)
	if len(r.Overlaps)+len(r.Leaning) > 0 {
		t.Errorf("overlaps %v, leaning %v", r.Overlaps, r.Leaning)
	}
}

// The handles of a basket and what is worked into them stand square over the wall, however
// far that is stretched on paper.
func TestHandles(t *testing.T) {
	c := newCloth("Basket").magic()
	for r := 1; r <= 20; r++ {
		c.rnd()
		for range 8 {
			if r > 1 && r <= 8 {
				c.st(sc, r-2).inc(sc, sc)
			} else {
				c.st(sc, min(r, 8))
			}
		}
	}
	handles := func(over func(k int)) {
		c.rnd()
		for k := range 2 {
			c.st(sc, 10)
			over(k)
			c.st(sc, 10)
		}
	}
	handles(func(int) { c.ch(12).skip(12) })
	handles(func(k int) { c.sp(k, slices.Repeat([]stitch.Kind{sc}, 14)...) })
	c.rnd().st(sc, 68)
	r := Audit(draw(t, sample{"basket", c.fabric(), Options{Title: "Basket"}}).Scene)
	if len(r.Overlaps)+len(r.Leaning) > 0 {
		t.Errorf("overlaps %v, leaning %v", r.Overlaps, r.Leaning)
	}
}

// V-stitches one over another stay Vs however far the tube of them is stretched on paper.
func TestVStitchesFarOut(t *testing.T) {
	c := newCloth("Hat").magic()
	c.rnd().st(dc, 12)
	c.rnd().rep(12, func(int) { c.inc(dc, dc) })
	c.rnd().rep(12, func(int) { c.st(dc, 1).ch(1).same(dc).skip(1) })
	for range 10 {
		c.rnd().rep(12, func(k int) { c.sp(k, dc).ch(1).sp(k, dc) })
	}
	f := c.fabric()
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	last := w.courses[w.last]
	for _, i := range last.order {
		if last.isLoop(i) {
			continue
		}
		feet, _ := w.feet(last, i)
		_, up := w.frame(last, last.theta[i], last.radius[i])
		leg := w.top(last, i).Sub(feet[0])
		if lean := math.Acos(leg.Dot(up)/leg.Length()) * 180 / math.Pi; lean > 50 {
			t.Fatalf("a leg of a V leans %.0f°", lean)
		}
	}
}
