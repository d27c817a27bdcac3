package chart

import (
	"math"
	"testing"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// cornerToCorner is a square of n blocks to a side, of three chains and three dc each, worked
// from corner to corner.
func cornerToCorner(n int) *fabric.Fabric {
	c := flatPiece(6)
	var loops []fabric.Place // of the row before, in the order in which they were worked
	in := func(chains []int) fabric.Place {
		at := func(i int) fabric.Ref { return fabric.Ref{Round: c.index(), Stitch: i} }
		c.cur.Spaces = append(c.cur.Spaces, fabric.Span{From: chains[0], To: chains[2] + 1})
		return fabric.Place{Into: stitch.Space, At: at(chains[0]), Last: at(chains[2])}
	}
	chains := func(n int) (l []int) {
		for range n {
			l = append(l, c.put(fabric.Stitch{Kind: stitch.Of(stitch.Chain)}))
		}
		return l
	}
	for row := 1; row < 2*n; row++ {
		var now []fabric.Place
		c.row()
		base, round := []int{0, 1, 2}, 0
		if row <= n {
			if row > 1 {
				base, round = chains(3), c.index()
			}
			now = append(now, in(chains(3)))
			for k := range 3 {
				c.put(fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{{At: fabric.Ref{Round: round, Stitch: base[2-k]}}}})
			}
		}
		for k := len(loops) - 1; k >= 0; k-- {
			c.put(fabric.Stitch{Kind: stitch.Of(stitch.Slip), Counts: true, On: []fabric.Place{loops[k]}})
			if row > n && k == 0 {
				break
			}
			now = append(now, in(chains(3)))
			for range 3 {
				c.put(fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{loops[k]}})
			}
		}
		loops = now
	}
	return c.fabric()
}

// Blocks worked from corner to corner are squares in rows and columns: their legs are alike,
// and half of them lean to each side of their row by half a right angle.
func TestBlocks(t *testing.T) {
	c := rowsChart(t, cornerToCorner(4), Options{})
	r := Audit(c.Scene)
	if len(r.Overlaps) > 0 || len(r.Astray) > 0 || len(r.Texts) > 0 || len(r.Leaning) > 0 {
		t.Fatal(r.Overlaps, r.Astray, r.Texts, r.Leaning)
	}
	if r.Stretch > 1.1 {
		t.Errorf("legs are up to %.2f times as long as others", r.Stretch)
	}
	left, right := 0, 0
	a := newAuditor()
	a.walk(&c.Scene.Root, scene.Plain)
	for _, s := range a.subjects {
		if s.kind != "dc" || len(s.bases) == 0 {
			continue
		}
		leg := s.tops[0].Sub(s.bases[0])
		switch off := math.Abs(math.Abs(leg.X) - math.Abs(leg.Y)); {
		case leg.Y >= 0 || off > 0.03:
			t.Errorf("%s: its leg is %v", s.name, leg)
		case leg.X < 0:
			left++
		default:
			right++
		}
	}
	if left+right != 16*3 || left == 0 || right == 0 || left%3 != 0 {
		t.Errorf("%d legs to the left, %d to the right", left, right)
	}
}

// Rows of other stitches are no blocks.
func TestNoBlocks(t *testing.T) {
	for name, f := range map[string]*fabric.Fabric{"ribbing": ribbing(6), "ripple": ripple(dc, 6), "netting": netting(7)} {
		if w := rowsLaid(t, f); w.findBlocks() != nil {
			t.Errorf("%s in blocks", name)
		}
	}
}

// A range of rows is drawn in blocks as it is in the whole chart, over the edge of the row
// below.
func TestBlocksOfSomeRows(t *testing.T) {
	c := rowsChart(t, cornerToCorner(4), Options{From: 3, To: 6})
	r := Audit(c.Scene)
	if !r.Clean() || len(r.Leaning) > 0 || r.Stretch > 1.1 {
		t.Fatal(r)
	}
	if find(&c.Scene.Root, "below") == nil || find(&c.Scene.Root, "row2") != nil {
		t.Error("the row below is not drawn as an edge")
	}
	block := find(&c.Scene.Root, "r3s1")
	if leg := pointsOf(block, "top")[0].Sub(pointsOf(block, "base")[0]); math.Abs(math.Abs(leg.X)-math.Abs(leg.Y)) > 0.03 {
		t.Errorf("its first leg is %v", leg)
	}
}
