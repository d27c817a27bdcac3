package shaping

import (
	"fmt"
	"math"
	"testing"

	"whorl/chart/ring"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// crown is a cap of half doubles from the crown down: so many stitches in each
// round.
func crown(counts ...int) *fabric.Fabric {
	hdc := stitch.Of(stitch.Half)
	part := &fabric.Part{Name: "Cap", From: -1, Rounds: []*fabric.Round{{Label: "Ring", Ring: true, Closing: fabric.Joined}}}
	for i, n := range counts {
		r := &fabric.Round{Label: fmt.Sprint("Rnd ", i+1), Number: i + 1, Closing: fabric.Spiral}
		for j := range n {
			on := fabric.Place{Into: stitch.Ring, At: fabric.Ref{Stitch: -1}}
			if i > 0 {
				at := fabric.Ref{Round: i, Stitch: j * counts[i-1] / n}
				on = fabric.Place{Into: stitch.Top, At: at, Last: at}
			}
			r.Stitches = append(r.Stitches, fabric.Stitch{Kind: hdc, Counts: true, On: []fabric.Place{on}})
		}
		part.Rounds = append(part.Rounds, r)
	}
	return &fabric.Fabric{Parts: []*fabric.Part{part}}
}

func pieceOf(t *testing.T, f *fabric.Fabric) *piece {
	t.Helper()
	form, err := geometry.Measure(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	p, err := newPiece(f, form, 0)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// around is the length of a hoop, drawn from seam to seam.
func (h *hoop) around(seams []float64) (sum, widest, narrowest float64) {
	narrowest = math.Inf(1)
	for k := range seams {
		next := seams[(k+1)%len(seams)]
		if k+1 == len(seams) {
			next += ring.Turn
		}
		l, one := h.along(seams[k], next), 0.0
		for i := 1; i < len(l); i++ {
			one += l[i].minus(l[i-1]).length()
		}
		sum += one
		widest, narrowest = math.Max(widest, one), math.Min(narrowest, one)
	}
	return sum, widest, narrowest
}

// A round that is slack is drawn as long as it is: the ruffles have the length
// that has no room in the circle where it comes to rest, and its stitches are
// all of their width.
func TestRufflesHaveTheExcessLength(t *testing.T) {
	for name, f := range map[string]*fabric.Fabric{
		"16 increases":   crown(16, 32, 48, 64, 80, 80, 80, 80, 80, 80),
		"one frill":      crown(8, 16, 24, 56, 64, 72, 80, 80),
		"ruffled edge":   crown(8, 16, 24, 32, 32, 32, 64, 128, 256),
		"gathered crown": crown(72, 72, 72, 72, 54, 36, 18, 9),
	} {
		p := pieceOf(t, f)
		s := p.surface()
		folded := 0
		for i, c := range p.rounds {
			h := &s.hoops[i+1]
			if h.waves == 0 {
				continue
			}
			folded++
			got, widest, narrowest := h.around(s.seams[i])
			if want := c.form.Circumference; math.Abs(got/want-1) > 0.01 {
				t.Errorf("%s, %s: drawn %.1f mm long, it is %.1f mm", name, c.round.Label, got, want)
			}
			if widest > 1.3*narrowest {
				t.Errorf("%s, %s: stitches %.2f to %.2f mm wide", name, c.round.Label, narrowest, widest)
			}
		}
		if folded < 2 {
			t.Errorf("%s: only %d rounds lie in folds", name, folded)
		}
	}
}

// A piece that fits lies in no folds, and its hoops are where it comes to rest.
func TestSurfaceOfADome(t *testing.T) {
	p := pieceOf(t, crown(4, 8, 12, 16, 20, 24, 24, 24))
	s := p.surface()
	for i, c := range p.rounds {
		h := s.hoops[i+1]
		if h.waves != 0 || math.Abs(h.r-c.form.R) > 1e-6 || math.Abs(h.up+c.form.Z) > 1e-9 {
			t.Errorf("%s: %+v, settled at %.3f, %.3f", c.round.Label, h, c.form.R, c.form.Z)
		}
	}
}

// Every stitch is one quad.
func TestOneQuadAStitch(t *testing.T) {
	f := crown(8, 16, 24, 32, 32)
	p := pieceOf(t, f)
	n := map[int]int{}
	for _, q := range p.patches(f) {
		n[q.round]++
	}
	for i, want := range []int{8, 16, 24, 32, 32} {
		if n[i] != want {
			t.Errorf("round %d: %d quads, want %d", i+1, n[i], want)
		}
	}
}
