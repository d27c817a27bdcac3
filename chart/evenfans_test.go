package chart

import (
	"testing"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
)

// A fan of five that stands beside a corner, some of it round that, opens evenly; the first
// and the last stay where they are.
func TestFanAtCorner(t *testing.T) {
	const each = ring.Turn / 4
	square := ring.Edges{}
	for k, p := range []ring.Corner{{X: 40, Y: 40}, {X: -40, Y: 40}, {X: -40, Y: -40}, {X: 40, Y: -40}} {
		p.Angle, p.Around = each*float64(k), each/10
		square.Corners = append(square.Corners, p)
	}
	round := &fabric.Round{Number: 1}
	c := &course{round: round}
	for i := range 5 {
		round.Stitches = append(round.Stitches, fabric.Stitch{Kind: dc, On: []fabric.Place{{At: fabric.Ref{Stitch: 3}}}})
		c.order = append(c.order, i)
		c.theta = append(c.theta, each-each/20+0.02*float64(i-2))
		c.radius = append(c.radius, 12)
	}
	w := &work{courses: []*course{c}, layout: layout{shape: square}}
	first, last := c.theta[0], c.theta[4]
	if before := w.uneven(c, c.order); before < 1.34 {
		t.Fatalf("the fan is even to begin with: %.2f", before)
	}
	if !w.evenFans(c) {
		t.Error("the fan was not moved")
	}
	if after := w.uneven(c, c.order); after > 1.02 {
		t.Errorf("the widest gap is %.2f times the narrowest", after)
	}
	if c.theta[0] != first || c.theta[4] != last {
		t.Error("the fan's ends moved")
	}
	if w.evenFans(c) {
		t.Error("an even fan was moved")
	}
}
