package chart

import (
	"testing"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// pairs is rows of a single and a double crochet in every other stitch.
func pairs(each, rows int) *fabric.Fabric {
	c := flatPiece(2*each + 1)
	for range rows {
		c.row().start(1)
		for range each {
			c.inc(sc, dc).skip(1)
		}
		c.st(sc, 1)
	}
	return c.fabric()
}

// The chain that begins a round and touches something near its foot is drawn slimmer, on a
// stem.
func TestStartIsDrawnSlimmer(t *testing.T) {
	f := flatCounting(12, 3)
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	a := newArtist(w)
	a.rounds()
	d := a.drawn[len(a.drawn)-1]
	before := boxOf(t, d.start(0))
	feet, _ := d.feet(d.c, 0)
	a.slimmer([]Clash{{A: d.groups[0].ID, At: feet[0]}}, 0.5)
	after := boxOf(t, d.start(0))
	if after.y1-after.y0 >= before.y1-before.y0 {
		t.Errorf("it is %.2f mm wide, %.2f before", after.y1-after.y0, before.y1-before.y0)
	}
}

// boxOf is the room that the strokes of a group take.
func boxOf(t *testing.T, g *scene.Group) box {
	t.Helper()
	b, ok := boundsOf(g, scene.Plain)
	if !ok {
		t.Fatal("nothing is drawn")
	}
	return b
}

// The bar of a single crochet that lies level with the top of a taller stitch beside it is
// drawn shorter, in every row alike.
func TestBarsAreDrawnShorter(t *testing.T) {
	f := pairs(20, 8)
	c := rowsChart(t, f, Options{})
	if r := Audit(c.Scene); !r.Clean() {
		t.Errorf("%d overlaps: %v", len(r.Overlaps), r.Overlaps)
	}
}

// postCrown is a crown of front post stitches over those two rounds below, closed by single
// crochets worked three together.
func postCrown(each int) *fabric.Fabric {
	c := newCloth("Crown").chainRing(6 * each)
	c.rnd().st(dc, 6*each).join()
	posts := func(odd int) {
		at := c.index() - 1 // the doubles
		c.rnd()
		n := len(c.below)
		for k := range n {
			if k%2 != odd {
				c.st(dc, 1)
				continue
			}
			on := c.below[k].At
			for behind := c.part.Rounds[at+1]; on.Round > at; {
				on = behind.Stitches[on.Stitch].On[0].At
			}
			c.skip(1).put(fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{{Into: stitch.FrontPost, At: on}}})
		}
		c.join()
	}
	for n := each; n > 3; n -= 2 {
		c.rnd().rep(6, func(int) { c.st(sc, n-3).tog(stitch.Tog(stitch.Single, 3)) }).join()
		posts((each - n) / 2 % 2)
	}
	return c.fabric()
}

// A hook is drawn narrower, and what is behind it steps farther aside, where a decrease beside
// it lets both lean.
func TestHooksBesideDecreases(t *testing.T) {
	for _, each := range []int{10, 12, 14} {
		f := postCrown(each)
		c, err := Round(f, measure(t, f), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if r := Audit(c.Scene); len(r.Overlaps) > 0 {
			t.Errorf("%d stitches in a repeat: %v", each, r.Overlaps)
		}
	}
}
