package chart

import (
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// What a front post stitch of a flat piece leaves behind it, two rows up, steps aside from
// under it, for either hand.
func TestStepAsideInRows(t *testing.T) {
	for _, left := range []bool{false, true} {
		c := flatPiece(13).row().st(dc, 13)
		dcs := c.index()
		c.row().st(sc, 13).row()
		for k := range 13 {
			if k%2 == 0 {
				c.st(dc, 1)
				continue
			}
			c.skip(1).put(fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{{Into: stitch.FrontPost, At: fabric.Ref{Round: dcs, Stitch: k}}}})
		}
		if r := Audit(rowsChart(t, c.fabric(), Options{LeftHanded: left}).Scene); len(r.Overlaps) > 0 {
			t.Errorf("left-handed %v: %v", left, r.Overlaps)
		}
	}
}

// What a spike stitch leaves behind it, in as many rounds as it passes, steps aside from under
// it, and comes to the same again as often as the spikes do.
func TestStepAsideUnderSpikes(t *testing.T) {
	for _, passed := range []int{2, 3} {
		c := newCloth("Band").chainRing(24)
		for range passed + 1 {
			c.rnd().st(sc, 24)
		}
		at := c.index() - passed
		c.rnd()
		for k := range 24 {
			if k%4 != 3 {
				c.st(sc, 1)
				continue
			}
			c.skip(1).put(fabric.Stitch{Kind: stitch.Kind{Base: stitch.Single, Manner: stitch.Spike}, Counts: true,
				On: []fabric.Place{{At: fabric.Ref{Round: at, Stitch: k}}}})
		}
		f := c.fabric()
		chart, err := Round(f, measure(t, f), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if r := Audit(chart.Scene); !r.Clean() {
			t.Errorf("%d rounds passed: %v, repeats differ by %.2f°", passed, r.Overlaps, r.Turn)
		}
	}
}
