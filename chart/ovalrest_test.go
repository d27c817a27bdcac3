package chart

import (
	"math"
	"testing"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// bootie is a sole worked round a chain, with its sides, whose toe is closed in three rounds.
func bootie() *cloth {
	c := roundChain(8)
	c.rnd().inc(sc, sc).st(sc, 5).inc(sc, sc).inc(sc, sc).inc(sc, sc).st(sc, 5).inc(sc, sc).inc(sc, sc)
	c.rnd()
	for k, times := range []int{1, 3, 2} {
		for range times {
			c.st(sc, 1).inc(sc, sc)
		}
		if k < 2 {
			c.st(sc, 5)
		}
	}
	for range 2 {
		c.rnd().st(sc, 28)
	}
	two := stitch.Tog(stitch.Single, 2)
	c.rnd().st(sc, 6).rep(4, func(int) { c.tog(two).st(sc, 1) }).st(sc, 10)
	c.rnd().st(sc, 6).rep(4, func(int) { c.tog(two) }).st(sc, 10)
	for range 3 {
		c.rnd().st(sc, 20)
	}
	return c
}

// What is left of a toe comes together before and after its decreases: no leg lies down, the
// heel and the rounds after them stay in their order, and nothing touches.
func TestBootie(t *testing.T) {
	f := bootie().fabric()
	if r := Audit(draw(t, sample{"bootie", f, Options{Title: "Bootie"}}).Scene); len(r.Overlaps)+len(r.Texts)+len(r.Leaning) > 0 {
		t.Errorf("overlaps %v, texts %v, leaning %v", r.Overlaps, r.Texts, r.Leaning)
	}
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	for _, c := range w.courses[4:] {
		for k, i := range c.order {
			next, over := c.order[(k+1)%len(c.order)], 0.0
			if k == len(c.order)-1 {
				over = ring.Turn
			}
			if c.theta[next]+over <= c.theta[i] {
				t.Errorf("%s: stitch %d lies behind %d", c.label(), next, i)
			}
			on := c.round.Stitches[i].On
			if len(on) < 2 {
				continue
			}
			a, _ := w.foot(c, i, on[0])
			b, _ := w.foot(c, i, on[1])
			rise := w.radii.Of(w.layer(c)) - w.radii.Of(w.layer(c)-1)
			if wide := math.Hypot(a.X-b.X, a.Y-b.Y); wide > 2*rise {
				t.Errorf("%s: the legs of a decrease that is %.1f mm high are %.1f mm apart", c.label(), rise, wide)
			}
		}
	}
}
