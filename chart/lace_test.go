package chart

import (
	"math"
	"strings"
	"testing"

	"whorl/chart/scene"
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

// leastChain is the length on paper of the shortest chain of the loops of a work's rounds, mm.
func leastChain(c *Chart) float64 {
	least := math.Inf(1)
	var walk func(g *scene.Group)
	walk = func(g *scene.Group) {
		for _, n := range g.Nodes {
			switch n := n.(type) {
			case *scene.Group:
				walk(n)
			case *scene.Use:
				if strings.HasSuffix(datum(g, "kind"), " sp") {
					least = math.Min(least, n.Shape.D.Bounds().W())
				}
			}
		}
	}
	walk(&c.Scene.Root)
	return least
}

// The chains of loops are long enough to be told for chains, however little room their feet
// leave them: of loops that are slipped over on the way into them, of many stitches to a
// loop, of loops over every chain of a fan.
func TestChainsOfLoopsAreRead(t *testing.T) {
	slipped := newCloth("Mesh").magic()
	slipped.rnd().start(3).st(dc, 23).join()
	for range 2 {
		slipped.rnd().start(1).rep(24, func(int) { slipped.st(sc, 1).ch(3) }).join()
		slipped.rnd().start(3).rep(24, func(i int) { slipped.sp(i, dc, dc) }).join()
	}
	full := disc()
	full.rnd().rep(48, func(int) { full.st(sc, 1).ch(5).skip(1) })
	full.rnd().rep(48, func(i int) { full.sp(i, sc, sc, sc, sc, sc, sc) })
	for _, x := range []struct {
		name string
		f    *fabric.Fabric
	}{{"two to a loop", slipped.fabric()}, {"six to a loop", full.fabric()}, {"loops on loops", loopwork(24, 5, 3)}} {
		c := draw(t, sample{x.name, x.f, Options{}})
		if long := leastChain(c); long < 0.9 {
			t.Errorf("%s: a chain is %.2f mm long", x.name, long)
		}
		if !c.Legible() {
			t.Errorf("%s: %v", x.name, c.Findings)
		}
	}
}

// drawnLace is a fabric of lace laid out and drawn, its fans closed.
func drawnLace(t *testing.T, f *fabric.Fabric) *work {
	t.Helper()
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.turn()
	w.closeFans(w.reachRound)
	w.draw()
	return w
}

// The outermost legs of a fan do not lie down, where its stitches need not be as far apart
// as they are in the fabric.
func TestFansDoNotLieDown(t *testing.T) {
	c := newCloth("Fans").magic()
	c.rnd().start(1).st(sc, 24).join()
	c.rnd().start(1).rep(6, func(int) { c.st(sc, 1).ch(7).skip(3) }).join()
	c.rnd().start(1).rep(6, func(int) {
		c.st(dc, 1)
		for range 12 {
			c.same(dc)
		}
		c.ch(3)
	}).join()
	w := drawnLace(t, c.fabric())
	last := w.courses[len(w.courses)-1]
	fans := 0
	w.fans(last, domeLeast, func(fan []int, p fabric.Place) {
		fans++
		foot, _ := w.foot(last, fan[0], p)
		a, b := w.top(last, fan[0]).Sub(foot), w.top(last, fan[len(fan)-1]).Sub(foot)
		if open := math.Abs(a.AngleBetween(b)) * 90 / math.Pi; open > mostOpen+2*openSlack {
			t.Errorf("a fan opens by %.0f° to each side", open)
		}
	})
	if fans == 0 {
		t.Fatal("there is no fan")
	}
}

// Shells of a few stitches stand up between long loops, each over its place.
func TestShellsStandUpInLace(t *testing.T) {
	c := newCloth("Shells").magic()
	c.rnd().start(3).st(dc, 24).join()
	c.rnd().start(3).rep(6, func(int) {
		c.st(dc, 1)
		for range 9 {
			c.same(dc)
		}
		c.ch(2).skip(3)
	}).join()
	shell := func() { c.st(dc, 1).same(dc).same(dc).same(dc) }
	skips := [3]int{2, 4, 2}
	for range 5 {
		c.rnd().start(3).rep(6, func(int) {
			c.skip(skips[0])
			shell()
			c.skip(skips[1])
			shell()
			c.st(sc, 1).ch(3).skip(skips[2] - 1)
		}).join()
		skips = [3]int{1, 3, 3}
	}
	w := drawnLace(t, c.fabric())
	shells := 0
	for _, c := range w.courses[w.last-2 : w.last+1] {
		w.fans(c, closeLeast, func(fan []int, p fabric.Place) {
			shells++
			foot, _ := w.foot(c, fan[0], p)
			up := foot.Sub(w.centre)
			for _, i := range [2]int{fan[0], fan[len(fan)-1]} {
				if lean := math.Abs(w.top(c, i).Sub(foot).AngleBetween(up)) * 180 / math.Pi; lean > 48 {
					t.Errorf("%s: an outer leg of a shell leans by %.0f°", c.label(), lean)
				}
			}
		})
	}
	if shells != 36 {
		t.Errorf("%d shells", shells)
	}
}
