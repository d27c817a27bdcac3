package chart

import (
	"math"
	"testing"

	"whorl/chart/ring"
	"whorl/geometry"
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
	if !w.evenFans(c, unevenFan) {
		t.Error("the fan was not moved")
	}
	if after := w.uneven(c, c.order); after > 1.02 {
		t.Errorf("the widest gap is %.2f times the narrowest", after)
	}
	if c.theta[0] != first || c.theta[4] != last {
		t.Error("the fan's ends moved")
	}
	if w.evenFans(c, unevenFan) {
		t.Error("an even fan was moved")
	}
}

// A fan round the corner of a motif opens evenly too.
func TestFanAtMotifCorner(t *testing.T) {
	const each = ring.Turn / 4
	round := &fabric.Round{Number: 1}
	c := &course{round: round, form: &geometry.RoundForm{}}
	for i := range 5 {
		round.Stitches = append(round.Stitches, fabric.Stitch{Kind: dc, On: []fabric.Place{{At: fabric.Ref{Stitch: 3}}}})
		c.order, c.rank = append(c.order, i), append(c.rank, i)
		c.theta = append(c.theta, each+0.03+0.08*float64(i-2))
		c.radius = append(c.radius, 40)
	}
	c.form.Tops, c.form.Level = make([]float64, 5), 1
	w := &work{courses: []*course{c}, layout: layout{shape: ring.Polygon{Sides: 4}, radii: ring.Stack([]ring.Layer{{Level: 1, Length: 200, Rise: 1}}, ring.Fit{Outer: 40, MaxScale: 1})}}
	w.corners.laid = -1 // a round beyond those whose corners are spaces
	if before := w.uneven(c, c.order); before < 1.34 {
		t.Fatalf("the fan is even to begin with: %.2f", before)
	}
	theta := append([]float64{}, c.theta...)
	w.openEvenly()
	moved := 0.0
	for i := range theta {
		moved = math.Max(moved, math.Abs(theta[i]-c.theta[i]))
	}
	if moved < 0.01 {
		t.Error("the fan was left as it was")
	}
}

// What stands on the side of a square is set square on it: as much nearer the middle of the
// side as the side grows. A round that ruffles makes the side no longer than a flat one.
func TestSquareOnSide(t *testing.T) {
	const each, height, below = ring.Turn / 4, 10.0, 400.0
	const flat = below + 8*height // of a square
	for _, test := range []struct {
		name        string
		long, grown float64
	}{
		{"no longer than below", below, 1},
		{"half as much as lies flat", below + 4*height, (below + 4*height) / below},
		{"as much as lies flat", flat, flat / below},
		{"half as long again", 1.5 * below, flat / below},
	} {
		w := &work{corners: corners{sides: 4, from: 0}, courses: []*course{
			{form: &geometry.RoundForm{Circumference: below}},
			{index: 1, form: &geometry.RoundForm{Circumference: test.long, Height: height}},
		}}
		const from = 0.3 // from the middle of the side
		got := w.square(w.courses[1], each/2+from) - each/2
		if want := from / test.grown; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %.3f from the middle of the side, not %.3f", test.name, got, want)
		}
	}
}
