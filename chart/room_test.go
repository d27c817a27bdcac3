package chart

import (
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// postTog works n of a kind round front posts and together.
func (c *cloth) postTog(k stitch.Kind, n int) *cloth {
	s := fabric.Stitch{Kind: stitch.Tog(k.Base, n), Counts: true}
	for range n {
		p := c.take()
		p.Into = stitch.FrontPost
		s.On = append(s.On, p)
	}
	c.put(s)
	return c
}

// cabledCrown closes nine columns of four front post stitches, with lower stitches among
// them whose bars lie beside the hooks of the next round.
func cabledCrown() *fabric.Fabric {
	c := newCloth("Hat").chainRing(72)
	c.rnd().start(2).st(dc, 72).join()
	for range 12 {
		c.rnd().start(2).rep(9, func(int) { c.into(dc, stitch.FrontPost, 4).st(hdc, 4) }).join()
	}
	two := stitch.Tog(stitch.Half, 2)
	c.rnd().start(2).rep(9, func(int) { c.into(tr, stitch.FrontPost, 4).tog(two).tog(two) }).join()
	c.rnd().start(2).rep(9, func(int) { c.into(dc, stitch.FrontPost, 4).tog(two) }).join()
	c.rnd().start(2).rep(9, func(int) { c.postTog(dc, 2).postTog(dc, 2).st(hdc, 1) }).join()
	c.rnd().start(2).rep(9, func(int) { c.postTog(dc, 2).st(hdc, 1) }).join()
	c.rnd().start(1).rep(9, func(int) { c.tog(two) }).join()
	return c.fabric()
}

// shellTube has a round that begins with a chain in a single crochet beside a shell.
func shellTube(repeats, rounds int) *fabric.Fabric {
	c := newCloth("Cowl").chainRing(6 * repeats)
	c.rnd().start(3, dc).st(dc, 6*repeats-1).join()
	c.rnd().start(1).rep(repeats, func(int) { c.st(sc, 1).skip(2).inc(dc, dc, dc, dc, dc).skip(2) }).join()
	for range rounds {
		c.rnd().start(4, dc).ch(1).same(dc).skip(2).st(sc, 1).skip(2)
		c.rep(repeats-1, func(int) { c.inc(dc, chains(1), dc).skip(2).st(sc, 1).skip(2) }).join()
		c.rnd().start(1).rep(repeats, func(i int) { c.sp(i, dc, dc, dc, dc, dc).skip(2).st(sc, 1) }).join()
	}
	return c.fabric()
}

// Bars keep off the hooks beside them, and beginning chains off the stitches below.
func TestRoomBeside(t *testing.T) {
	for _, s := range []sample{
		{"cabled crown", cabledCrown(), Options{Title: "Hat"}},
		{"two rounds of shells", shellTube(16, 2), Options{Title: "Cowl"}},
		{"four rounds of shells", shellTube(14, 4), Options{Title: "Cowl"}},
	} {
		c := draw(t, s)
		if r := Audit(c.Scene); len(r.Overlaps) > 0 {
			t.Errorf("%s: %v", s.name, r.Overlaps)
		}
	}
}
