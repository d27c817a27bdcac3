package chart

import (
	"math"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// filet is a row of sc on a chain, a mesh of dc and chains on it, a row of sc on that, and
// shells under loops of chains.
func filet() *fabric.Fabric {
	c := flatPiece(122)
	c.row().skip(1).start(1).st(sc, 121)
	c.row().start(3, dc).ch(1).skip(1)
	for k := range 60 {
		if c.st(dc, 1); k < 59 {
			c.ch(1).skip(1)
		}
	}
	for i := range c.cur.Stitches {
		c.cur.Stitches[i].Counts = true // chains are worked over
	}
	c.row().start(1).st(sc, 121)
	c.row().start(1).st(sc, 1)
	for range 20 {
		c.skip(2).inc(dc, dc, dc, dc, dc).skip(2).st(sc, 1)
	}
	c.row().start(1).st(sc, 1)
	for range 20 {
		c.ch(3).skip(2).st(sc, 1).ch(3).skip(2).st(sc, 1)
	}
	return c.fabric()
}

// A mesh, and what is worked on its stitches and chains one by one, stands upright. Chains
// that pass over the tops of a shell keep clear of them.
func TestMeshStandsUpright(t *testing.T) {
	c := rowsChart(t, filet(), Options{})
	r := Audit(c.Scene)
	if len(r.Overlaps) > 0 || len(r.Leaning) > 0 {
		t.Errorf("overlaps %v, leaning %v", r.Overlaps, r.Leaning)
	}
	for _, row := range []string{"2", "3"} {
		if off := aslant(c, row, "1"); off > 0.25 {
			t.Errorf("row %s: a top is %.2f mm beside what is below", row, off)
		}
	}
}

// aslant is how far, at most, a top of a row is beside the nearest of another, mm.
func aslant(c *Chart, row, below string) (most float64) {
	for _, p := range topsOf(c, row) {
		off := math.Inf(1)
		for _, q := range topsOf(c, below) {
			off = math.Min(off, math.Abs(p[0]-q[0]))
		}
		most = math.Max(most, off)
	}
	return most
}

// Picots push the stitches of a row aside by no more than themselves.
func TestPicotsInRow(t *testing.T) {
	c := flatPiece(32)
	c.row().skip(1).start(1).st(sc, 31)
	c.row().start(1)
	for k := range 31 {
		if c.st(sc, 1); k%2 == 1 {
			c.put(fabric.Stitch{Kind: stitch.Kind{Base: stitch.Chain, Shape: stitch.Picot, Legs: 3}})
		}
	}
	chart := rowsChart(t, c.fabric(), Options{})
	if off := aslant(chart, "1", "2"); off > 0.25 {
		t.Errorf("a top is %.2f mm beside what is below", off)
	}
}

// A first mesh worked in the 6th chain from the hook stands on as many chains as it has
// stitches and spaces; its turning chain is no part of the foundation.
func TestMeshOnChain(t *testing.T) {
	c := flatPiece(34)
	c.row()
	c.next = 3
	c.start(3, dc).ch(1).skip(1)
	for k := range 15 {
		if c.st(dc, 1); k < 14 {
			c.ch(1).skip(1)
		}
	}
	standsOnChain(t, c.fabric(), 31, 0.1)
}

// rowsLaid is the work of a piece with its rows laid.
func rowsLaid(t *testing.T, f *fabric.Fabric) *work {
	t.Helper()
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRows)
	if err != nil {
		t.Fatal(err)
	}
	w.rows, w.flat = true, true
	for i, c := range w.courses {
		c.open = true
		if i > 0 {
			c.reversed = w.courses[i-1].reversed != w.comesBack(c)
		}
	}
	w.hideTurningChain(w.courses[0])
	w.layRows()
	return w
}

// The first row of an ear flap stands square on some of the stitches of the hat's edge, one
// on each, however wide those are, and the next rows square on it.
func TestRowOnEdgeOfRound(t *testing.T) {
	c := newCloth("Flap")
	edge := &fabric.Round{Label: "Rnd 15", Number: 15, Carried: true, Closing: fabric.Joined}
	for range 54 {
		edge.Stitches = append(edge.Stitches, fabric.Stitch{Kind: hdc, Counts: true})
	}
	c.part.Worked = fabric.InRows
	c.part.Rounds = append(c.part.Rounds, edge)
	for r := range 3 {
		c.row()
		if r == 0 {
			c.next = 8
		}
		c.start(1).st(sc, 12)
	}
	w := rowsLaid(t, c.fabric())
	for _, row := range w.courses[1:] {
		for _, i := range row.order {
			base, _ := w.stance(row, i, 0)
			if off := math.Abs(row.theta[i] - base); off > 0.1 {
				t.Errorf("%s: stitch %d is %.2f mm beside its place", row.round.Label, i, off)
			}
		}
	}
}

// standsOnChain checks that the first row has n places, as many as its foundation, each at most so many
// millimetres beside its chain.
func standsOnChain(t *testing.T, f *fabric.Fabric, n int, most float64) {
	t.Helper()
	w := rowsLaid(t, f)
	if stand, row := len(w.courses[0].order), len(w.courses[1].order); stand != n || row != n {
		t.Errorf("%d stitches, spaces and chains on %d chains, not %d on as many", row, stand, n)
	}
	for k, i := range w.courses[1].order {
		if off := math.Abs(w.courses[1].theta[i] - w.courses[0].theta[w.courses[0].order[k]]); off > most {
			t.Errorf("stitch %d is %.2f mm beside its chain", k+1, off)
		}
	}
}

// The chains of a first mesh that are counted from the hook with the turning chain, "dc in 8th
// ch from hook", go on from it and are no part of the foundation either.
func TestFirstSpaceOnChain(t *testing.T) {
	c := flatPiece(44)
	c.row()
	c.next = 4
	c.start(3, dc).ch(2).skip(2)
	for k := range 13 {
		if c.st(dc, 1); k < 12 {
			c.ch(2).skip(2)
		}
	}
	standsOnChain(t, c.fabric(), 40, 0.25)
}
