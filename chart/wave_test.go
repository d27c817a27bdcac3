package chart

import (
	"math"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// feathers are rows in which decreases lie side by side, and increases as many, with plain
// rows between them.
func feathers(each, plain int) *fabric.Fabric {
	n := 6 * each
	c := flatPiece(3*n + 3)
	c.row().skip(1).start(1).st(sc, 3*n+2)
	dc2tog := stitch.Kind{Base: stitch.Double, Shape: stitch.Together, Legs: 2}
	for range 3 {
		c.row().start(3, dc)
		c.rep(3, func(int) {
			c.rep(each, func(int) { c.tog(dc2tog) })
			c.rep(2*each, func(int) { c.inc(dc, dc) })
			c.rep(each, func(int) { c.tog(dc2tog) })
		})
		c.st(dc, 1)
		for range plain {
			c.row().start(1).st(sc, 3*n+2)
		}
	}
	return c.fabric()
}

// Where several increases lie side by side and decreases as many, rows do not bunch over
// the increases: their stitches are evenly apart and the rows lie in waves, the plain ones
// between as well.
func TestFeathers(t *testing.T) {
	for _, tt := range []struct{ each, plain int }{{2, 0}, {2, 1}, {3, 1}, {3, 2}} {
		c := rowsChart(t, feathers(tt.each, tt.plain), Options{})
		if r := Audit(c.Scene); len(r.Overlaps) > 0 {
			t.Error(tt, r.Overlaps)
		}
		for _, row := range []string{"2", "3", "4"} {
			ps := topsOf(c, row)
			low, high := math.Inf(1), math.Inf(-1)
			least, most := math.Inf(1), 0.0
			for k, p := range ps {
				low, high = math.Min(low, p[1]), math.Max(high, p[1])
				if k > 0 {
					gap := math.Hypot(p[0]-ps[k-1][0], p[1]-ps[k-1][1])
					least, most = math.Min(least, gap), math.Max(most, gap)
				}
			}
			if high-low < 3 || most > 1.5*least {
				t.Errorf("%v, row %s: waves %.1f mm deep, tops %.2f to %.2f mm apart", tt, row, high-low, least, most)
			}
		}
	}
}

// A row with a stitch for each of the row below stands over it, its shells too, unless its
// decreases lead it along; stitches that cross stand over the places of one another.
func TestDrift(t *testing.T) {
	dc2tog := stitch.Kind{Base: stitch.Double, Shape: stitch.Together, Legs: 2}
	for _, tt := range []struct {
		name string
		work func(*cloth)
		want float64
	}{
		{"plain", func(c *cloth) { c.st(dc, 12) }, 0},
		{"shells", func(c *cloth) {
			c.st(sc, 1)
			c.rep(2, func(int) { c.skip(2).inc(dc, dc, dc, dc, dc).skip(2) })
			c.st(sc, 1)
		}, 0},
		{"crossed", func(c *cloth) {
			c.st(dc, 3).skip(3).st(dc, 3)
			c.next -= 6
			c.st(dc, 3).skip(3).st(dc, 3)
		}, 0},
		{"one and one", func(c *cloth) { c.st(dc, 5).tog(dc2tog).inc(dc, dc).st(dc, 4) }, 0.5},
		{"three and three", func(c *cloth) {
			c.rep(3, func(int) { c.tog(dc2tog) })
			c.rep(3, func(int) { c.inc(dc, dc) })
			c.st(dc, 3)
		}, 2.5},
	} {
		c := flatPiece(13)
		c.row().skip(1).start(1).st(sc, 12)
		c.row().start(1)
		tt.work(c)
		w := rowsLaid(t, c.fabric())
		over, below := w.courses[2], w.courses[1]
		if got := over.drift(over.edge(), below, below.edge()); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%s: drifts by %.2f stitches, not %.2f", tt.name, got, tt.want)
		}
	}
}
