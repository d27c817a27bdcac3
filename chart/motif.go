package chart

import (
	"math"
	"slices"

	"whorl/chart/ring"
	"whorl/geometry"
	"whorl/patterns/fabric"
)

// aboutMotif is the border of a motif, part from of the fabric, whose corners are the
// places of its last round that most is worked into; nil where it has no corners, is a
// star, or most is worked into others than its corners.
func (w *work) aboutMotif(from int) *border {
	o := w.o
	o.Part, o.From, o.To = from, 0, 0
	motif, err := newWork(w.fabric, &geometry.Form{Parts: w.forms}, o, fabric.InRounds)
	if err != nil {
		return nil
	}
	motif.turn()
	n := motif.corners.sides
	if n == 0 {
		return nil
	}
	if motif.findZigzag(motif.reachRound); motif.zigzag != nil {
		return nil // a star
	}
	runs := w.edgings(len(w.courses[0].round.Stitches))
	if len(runs) != 1 {
		return nil
	}
	if runs = runs[0].atCorners(n); runs == nil {
		return nil
	}
	return newBorder(w.fabric.Parts[from].Name, runs)
}

// mostUneven is how many times as long as the shortest the longest side of a motif is
// at most.
const mostUneven = 1.25

// atCorners cuts the places all round a motif into n sides, before each of the n places
// that more is worked into than into any other; nil where those are not so many, or not
// evenly far apart.
func (e *edging) atCorners(n int) []edging {
	if last := len(e.keys) - 1; last > 0 && e.keys[0] == e.keys[last] { // begun and ended in one
		e.uses[0] += e.uses[last]
		e.widths[0] += e.widths[last]
		e.keys, e.rows, e.uses = e.keys[:last], e.rows[:last], e.uses[:last]
		e.widths, e.spaces = e.widths[:last], e.spaces[:last]
	}
	if len(e.keys) <= 2*n {
		return nil
	}
	most := slices.Sorted(slices.Values(e.uses))
	slices.Reverse(most)
	if most[n-1] == most[n] {
		return nil
	}
	var sides []edging
	first := slices.IndexFunc(e.uses, func(u int) bool { return u >= most[n-1] })
	for k := range e.keys {
		at := (first + k) % len(e.keys)
		if e.uses[at] >= most[n-1] {
			sides = append(sides, edging{side: motifSide})
		}
		sides[len(sides)-1].add(e, at)
	}
	short, long := math.Inf(1), 0.0
	for _, s := range sides {
		short, long = math.Min(short, s.length), math.Max(long, s.length)
	}
	if long > mostUneven*short {
		return nil
	}
	return sides
}

// regular are the corners of a motif with sides so long on the whole, one of which lies
// at the foot; the first is to the right of the top.
func regular(long []float64) []ring.Corner {
	n := len(long)
	each := ring.Turn / float64(n)
	side := 0.0
	for _, l := range long {
		side += l / float64(n)
	}
	out := side / 2 / math.Sin(each/2)
	foot := -math.Pi/2 + each/2
	first := foot + each*math.Ceil((math.Pi/4-foot)/each-1e-9)
	if first > math.Pi/2 {
		first -= each
	}
	corners := make([]ring.Corner, n)
	for k := range corners {
		s, c := math.Sincos(first + each*float64(k))
		corners[k] = ring.Corner{X: out * c, Y: out * s}
	}
	return corners
}
