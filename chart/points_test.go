package chart

import (
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// The points of a star spring from the round that they are worked on: they do not float off
// it, also where the next round goes up and down their sides.
func TestPointsOnTheirRound(t *testing.T) {
	c := newCloth("Star").magic()
	c.rnd().st(dc, 12)
	c.rnd().rep(12, func(int) { c.inc(dc, dc) })
	at := func(round, i int) []fabric.Place {
		return []fabric.Place{{At: fabric.Ref{Round: round, Stitch: i}}}
	}
	slip := stitch.Of(stitch.Slip)
	back := []stitch.Kind{slip, sc, hdc, dc, dc, tr}
	c.rnd()
	for range 6 {
		from := len(c.cur.Stitches)
		c.ch(7)
		for k, kind := range back {
			c.put(fabric.Stitch{Kind: kind, Counts: true, On: at(c.index(), from+5-k)})
		}
		c.skip(3).st(slip, 1)
	}
	points := c.index()
	c.rnd()
	for p := range 6 {
		from := 14 * p
		for k := range 6 {
			c.put(fabric.Stitch{Kind: sc, Counts: true, On: at(points, from+k)})
		}
		c.put(fabric.Stitch{Kind: sc, Counts: true, On: at(points, from+6)})
		c.put(fabric.Stitch{Kind: sc, Counts: true, On: at(points, from+6)})
		for k := range 6 {
			c.put(fabric.Stitch{Kind: sc, Counts: true, On: at(points, from+7+k)})
		}
		c.put(fabric.Stitch{Kind: slip, Counts: true, On: at(points, from+13)})
	}
	f := c.fabric()
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	below, star := w.courses[points-1], w.courses[points]
	if len(w.points) != 6 {
		t.Fatalf("%d points", len(w.points))
	}
	for _, p := range w.points {
		gap := star.radius[p.chains[0]] - below.radius[0]
		if gap > 1.6*w.unit {
			t.Errorf("the first chain of a point is %.1f units off the round that it stands on", gap/w.unit)
		}
	}
}
