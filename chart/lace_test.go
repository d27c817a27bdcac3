package chart

import (
	"math"
	"testing"

	"whorl/patterns/fabric"
)

// loopwork is loops of chains on close stitches, and rounds of a stitch in each.
func loopwork(n, chains, rounds int) *fabric.Fabric {
	c := newCloth("Netting").magic()
	c.rnd().st(dc, n).join()
	c.rnd().start(1).rep(n, func(int) { c.st(sc, 1).ch(chains) }).join()
	for range rounds {
		c.rnd().start(1).rep(n, func(i int) { c.sp(i, sc).ch(chains) }).join()
	}
	return c.fabric()
}

// Loops between near feet stand out as arches, and do not drive their round so far out
// that its legs become spokes.
func TestLoopsOfLace(t *testing.T) {
	for _, chains := range []int{3, 5} {
		f := loopwork(24, chains, 3)
		c := draw(t, sample{"loopwork", f, Options{}})
		r := Audit(c.Scene)
		if !r.Clean() {
			t.Errorf("loops of %d: %v %v %v", chains, r.Overlaps, r.Texts, r.Astray)
		}
		if r.Stretch > 1.8 {
			t.Errorf("loops of %d: legs of one kind are %.2f times as long in one round as in another", chains, r.Stretch)
		}
	}
}

// The edge that a part begins on, which is not drawn, lies one stitch under its first round.
func TestEdgeUnderFirstRound(t *testing.T) {
	f := loopwork(24, 5, 4)
	form := measure(t, f)
	w, err := newWork(f, form, Options{From: 3, To: 6}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	c := w.courses[w.lo]
	for _, i := range c.order {
		if s := &c.round.Stitches[i]; s.Counts {
			if leg := c.radius[i] - w.meanFoot(c, i); leg > 1.7*w.unit {
				t.Errorf("stitch %d stands %.1f single crochets over the edge", i, leg/w.unit)
			}
		}
	}
}

func TestArc(t *testing.T) {
	for _, x := range []struct {
		chord, length, most, least float64
		high                       float64 // of the middle
	}{
		{10, 5, 8, 0, 0},           // the feet are far apart
		{10, 5, 8, 1, 1},           // but a little
		{10, 5 * math.Pi, 8, 1, 5}, // half a circle
		{2, 8, 20, 1, 3.72},        // half an ellipse
		{2, 80, 3, 1, 3},           // no higher than that
		{10, 5 * math.Pi, 2, 1, 2}, // nor this
	} {
		spots, long := arc(x.chord, x.length, x.most, x.least, 5)
		if d := math.Abs(spots[2].y - x.high); d > 0.05 || math.Abs(spots[2].x-x.chord/2) > 1e-6 {
			t.Errorf("%v: the middle is at %.3f, %.3f", x, spots[2].x, spots[2].y)
		}
		for k, s := range spots {
			if m := spots[4-k]; math.Abs(s.y-m.y) > 1e-6 || math.Abs(s.x+m.x-x.chord) > 1e-6 {
				t.Errorf("%v: %v and %v do not mirror one another", x, s, m)
			}
		}
		if long < x.chord-1e-9 {
			t.Errorf("%v: it is %.2f long", x, long)
		}
	}
}

// A wide fan of one kind falls off to its ends, and one no wider than it is tall does not.
func TestWideFansFallOff(t *testing.T) {
	for _, n := range []int{3, 11} {
		c := newCloth("Fans").magic()
		c.rnd().start(1).st(sc, 12).join()
		c.rnd().start(1).rep(6, func(int) { c.st(sc, 1).ch(5).skip(1) }).join()
		c.rnd().start(1).rep(6, func(i int) { c.sp(i, sc).ch(5) }).join()
		c.rnd().start(1).rep(6, func(int) {
			for k := range n {
				if k == 0 {
					c.st(dc, 1)
				} else {
					c.same(dc)
				}
			}
			c.ch(3)
		}).join()
		f := c.fabric()
		w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
		if err != nil {
			t.Fatal(err)
		}
		w.draw()
		d := w.courses[len(w.courses)-1]
		var fan []float64
		for _, i := range d.order {
			if !d.isLoop(i) && len(fan) < n {
				fan = append(fan, d.radius[i])
			}
		}
		fall := fan[n/2] - fan[0]
		if wide := n > 5; wide != (fall > 0.1*w.unit) {
			t.Errorf("the ends of a fan of %d lie %.2f mm under its middle, a single crochet being %.2f", n, fall, w.unit)
		}
	}
}
