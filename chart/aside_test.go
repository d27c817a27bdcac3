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
