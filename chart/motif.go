package chart

import (
	"math"
	"slices"

	"whorl/chart/ring"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// aboutMotif is the border of a motif, part from of the fabric, or of its border. Its
// corners are the spaces that the last round of the motif has in them, or else the places
// that most is worked into. It is nil where the motif has no corners or is a star, and
// where those places are none.
func (w *work) aboutMotif(from int) *border {
	o := w.o
	o.Part, o.From, o.To = from, 0, 0
	motif, err := newWork(w.fabric, &geometry.Form{Parts: w.forms}, o, fabric.InRounds)
	if err != nil {
		return nil
	}
	motif.turn()
	n := motif.corners.sides
	if motif.border != nil {
		n = len(motif.border.corners)
	}
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
	spaces, _ := motif.cornerSpaces(motif.courses[len(motif.courses)-1])
	corners := map[int]bool{}
	for _, sp := range spaces {
		corners[w.key(fabric.Place{Into: stitch.Space, At: fabric.Ref{Stitch: sp.From}})] = true
	}
	if runs = runs[0].atCorners(n, corners); runs == nil {
		return nil
	}
	return newBorder(w.fabric.Parts[from].Name, runs)
}

// mostUneven is how many times as long as the shortest the longest side of a motif is
// at most.
const mostUneven = 1.25

// atCorners cuts the places all round a motif into n sides, before each of the corners
// or, where something is not worked into each of those, before the n places that more is
// worked into than into any other; nil where those are not so many, or not evenly far
// apart.
func (e *edging) atCorners(n int, corners map[int]bool) []edging {
	if last := len(e.keys) - 1; last > 0 && e.keys[0] == e.keys[last] { // begun and ended in one
		e.uses[0] += e.uses[last]
		e.widths[0] += e.widths[last]
		e.keys, e.rows, e.uses = e.keys[:last], e.rows[:last], e.uses[:last]
		e.widths, e.spaces = e.widths[:last], e.spaces[:last]
	}
	if len(e.keys) <= 2*n {
		return nil
	}
	met := 0
	for _, key := range e.keys {
		if corners[key] {
			met++
		}
	}
	corner := func(at int) bool { return corners[e.keys[at]] }
	if met != n {
		most := slices.Sorted(slices.Values(e.uses))
		slices.Reverse(most)
		if most[n-1] == most[n] {
			return nil
		}
		corner = func(at int) bool { return e.uses[at] >= most[n-1] }
	}
	var sides []edging
	first := 0
	for !corner(first) {
		first++
	}
	for k := range e.keys {
		at := (first + k) % len(e.keys)
		if corner(at) {
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
