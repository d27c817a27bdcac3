package geometry

import (
	"fmt"
	"math"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// motif is a flat motif of dc with k corners, two chains in each: so many more
// dc to each side in every round.
func motif(k, more, n int) *builder {
	b := rounds().ring(0)
	for i := range n {
		r := b.next()
		for c := range k {
			for j := range more * (i + 1) {
				at := fabric.Place{Into: stitch.Ring, At: fabric.Ref{Stitch: -1}}
				if i > 0 {
					per := more*i + 2
					at = on(stitch.Top, i, c*per+j*more*i/(more*(i+1)))
					if j < more/2 || j >= more*(i+1)-more/2 { // the corner's space before and after
						corner := (c*per + per*k - 2) % (per * k)
						if j >= more {
							corner = c*per + more*i
						}
						at = fabric.Place{Into: stitch.Space, At: fabric.Ref{Round: i, Stitch: corner}, Last: fabric.Ref{Round: i, Stitch: corner + 1}}
					}
				}
				add(r, 1, fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{at}})
			}
			add(r, 2, fabric.Stitch{Kind: ch})
		}
	}
	return b
}

// A motif with corners lies flat with more stitches than a circle: its edge is
// that of the regular polygon about the circle, k tan(π/k)/π as long, and its
// chains lie slack. It is not said to ruffle.
func TestMotifsLieFlat(t *testing.T) {
	g := gauge(t, Reading{Count: 14, Kind: dc, Rows: 7, Over: 100})
	for _, c := range []struct{ corners, more int }{{4, 3}, {6, 2}} {
		b := motif(c.corners, c.more, 5)
		f := b.measured(t, g)
		if l := Findings(b.part, f); len(l) != 0 {
			t.Errorf("%d corners: %+v", c.corners, l)
		}
	}
	// The same many stitches without corners ruffle.
	b := rounds().ring(0).inRing(dc, 16)
	for n := 2; n <= 6; n++ {
		b.even(dc, stitch.Top, 16*n)
	}
	if l := Findings(b.part, b.measured(t, g)); len(l) != 1 || l[0].Trait != Ruffled {
		t.Errorf("%+v", l)
	}
}

func TestSlacks(t *testing.T) {
	g := gauge(t)
	b := motif(4, 4, 3)
	free := Slacks(b.part, b.measured(t, g))
	for i, want := range []float64{0,
		8 * 0.85 / (16 + 8*0.85), // in a ring there are no corners yet
		8*0.85/(32+8*0.85) + 1 - math.Pi/4,
		8*0.85/(48+8*0.85) + 1 - math.Pi/4} {
		near(t, fmt.Sprint("round ", i), free[i], want, 1e-9)
	}
	for _, x := range Slacks(crown(8, 9, 3).part, crown(8, 9, 3).measured(t, g)) {
		near(t, "a plain crown", x, 0, 0)
	}
}
