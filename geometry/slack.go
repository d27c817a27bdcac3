package geometry

import (
	"math"

	"whorl/patterns/fabric"
)

// Slacks is how much of the slack of every round is none of a ruffle or a
// gather, as a share of its circumference, from 0 up:
//
//   - chains that hang between stitches lie slack by themselves;
//   - a motif with k corners is no circle: with the same depth its edge is
//     longer by k tan(π/k)/π, a tenth for a hexagon and a quarter for a square.
//
// Corners are the places, three to eight of them, that hold the most stitches
// of a round, three at least and twice as many as any other; a plain edging keeps
// those of the round below.
// (The excess length is that of the regular polygon about a circle; that chains
// bear no load along the edge is common practice, no source.)
func Slacks(part *fabric.Part, rounds []RoundForm) []float64 {
	l := make([]float64, len(rounds))
	corners := 0
	for i, r := range part.Rounds {
		f := &rounds[i]
		if f.Circumference <= 0 {
			continue
		}
		if k, full := cornersOf(r); k > 0 {
			corners = 0
			if full {
				corners = k
			}
		}
		chains := 0.0
		for j := range r.Stitches {
			if s := &r.Stitches[j]; hangs(s) && !(i == 0 && isFoundation(r)) {
				chains += f.Widths[j]
			}
		}
		l[i] = chains / f.Circumference
		if corners > 0 {
			k := float64(corners)
			l[i] += 1 - math.Pi/(k*math.Tan(math.Pi/k))
		}
	}
	return l
}

// cornersOf is the number of places of a round that hold the most stitches, of
// those that hold three at least, 0 for none; full tells whether they can be
// the corners of a motif.
func cornersOf(r *fabric.Round) (k int, full bool) {
	in := map[fabric.Place]int{}
	most, next := 0, 0
	for j := range r.Stitches {
		s := &r.Stitches[j]
		if !s.Counts || len(s.On) != 1 || s.On[0].At.Stitch < 0 {
			continue
		}
		in[s.On[0]]++
		most = max(most, in[s.On[0]])
	}
	if most < 3 {
		return 0, false
	}
	for _, n := range in {
		if n == most {
			k++
		} else {
			next = max(next, n)
		}
	}
	return k, k >= 3 && k <= 8 && most >= 2*next
}

// slack is how slack a round is beyond what is none of a ruffle, above 0.
func slack(rounds []RoundForm, free []float64, i int) float64 {
	return -rounds[i].Strain - free[i]
}
