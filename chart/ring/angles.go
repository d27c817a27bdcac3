// Package ring is the pure layout of work done in the round: where on the turn
// each stitch of a round goes, and how far out each round lies. It knows
// angles, widths and levels, and nothing of stitches or drawing.
//
// Angles are in radians and grow in the direction in which the first round is
// worked. A round's angles are kept unwrapped: they rise from the first stitch
// to the last, and the first comes again one full turn later.
package ring

import (
	"math"
	"sort"
)

// Turn is one full turn.
const Turn = 2 * math.Pi

// Item is one stitch that takes room along a round.
type Item struct {
	// Width is the room it takes, in any unit common to the round.
	Width float64
	// Before is extra room to be left before it, in the unit of Width.
	Before float64
	// Base is the mean angle of the places it stands on.
	Base float64
	// Free is set when it stands on nothing that has an angle: a chain, or a
	// stitch worked in the centre ring.
	Free bool
	// Place names what it stands on. Neighbours with the same Place that is
	// not 0 are a fan and are spread about it.
	Place int
}

// Stiffness is the usual κ: how much an uneven gap costs against an equal shift off the
// place below. At 3 the disturbance of a shell dies out over about two
// stitches, which keeps its fan even and its neighbours upright.
const Stiffness = 3

// fanSpread is the part of their natural room over which the stitches of one
// place would like to open.
const fanSpread = 0.8

// leastGap is the smallest gap between neighbours, as a part of the natural
// one.
const leastGap = 0.55

// Angles places the items of one round. It minimises
//
//	Σ (θ − base)² + κ Σ (gap − natural gap)²
//
// where κ is the stiffness, and the natural gap of two neighbours is half the sum of their widths and
// what is left before the second, scaled so that the round closes after one turn. The result rises strictly;
// a round whose items are all Free begins at 0. It takes time and space in
// proportion to the number of items.
func Angles(items []Item, stiffness float64) []float64 { return Apart(items, stiffness, 1) }

// Apart is [Angles] for a round whose items are so many times, 1 or more, farther from one
// another than they need. Its fans open no wider for that, and its stiffness falls with the
// third power of it: items keep to what they stand on, however uneven gaps become.
func Apart(items []Item, stiffness, times float64) []float64 {
	stiffness /= times * times * times
	n := len(items)
	if n == 0 {
		return nil
	}
	gaps := naturalGaps(items)
	theta := make([]float64, n)
	anchored := false
	for i := range items {
		anchored = anchored || !items[i].Free
	}
	switch {
	case !anchored:
		for i := 1; i < n; i++ {
			theta[i] = theta[i-1] + gaps[i-1]
		}
		return theta
	case n == 1:
		theta[0] = items[0].Base
		return theta
	}
	items = uncross(items)
	base := fanOut(items, gaps, beginning(items), fanSpread/times)
	diag := make([]float64, n)
	rhs := make([]float64, n)
	for i := range items {
		prev := (i + n - 1) % n
		diag[i] = 2 * stiffness
		rhs[i] = stiffness * (gaps[prev] - gaps[i])
		if !items[i].Free {
			diag[i]++
			rhs[i] += base[i]
		}
	}
	// The neighbour across the seam is a turn away.
	rhs[0] -= stiffness * Turn
	rhs[n-1] += stiffness * Turn
	solveCyclic(diag, -stiffness, rhs, theta)
	for i := range gaps {
		gaps[i] *= leastGap / times
	}
	Spread(theta, gaps)
	return theta
}

// naturalGaps are the gaps after each item; they sum to one turn.
func naturalGaps(items []Item) []float64 {
	n := len(items)
	total := 0.0
	for i := range items {
		total += items[i].Width + items[i].Before
	}
	gaps := make([]float64, n)
	for i := range items {
		if total > 0 {
			next := &items[(i+1)%n]
			gaps[i] = ((items[i].Width+next.Width)/2 + next.Before) * Turn / total
		} else {
			gaps[i] = Turn / float64(n)
		}
	}
	return gaps
}

// uncross is the items with their bases in rising order: stitches that cross stand over
// the places of one another, and are not drawn together where they cross.
func uncross(items []Item) []Item {
	var bound []Item
	rising := true
	for _, t := range items {
		if !t.Free {
			rising = rising && (len(bound) == 0 || bound[len(bound)-1].Base <= t.Base)
			bound = append(bound, t)
		}
	}
	if rising {
		return items
	}
	sort.SliceStable(bound, func(i, j int) bool { return bound[i].Base < bound[j].Base })
	l := make([]Item, len(items))
	copy(l, items)
	k := 0
	for i := range l {
		if !l[i].Free {
			l[i].Base, l[i].Place = bound[k].Base, bound[k].Place
			k++
		}
	}
	return l
}

// fanOut is the angle each item is drawn to: its base, or, for neighbours that
// share a place (with only free items such as chains between them), points
// spread evenly about it, over such a part of their natural room. It begins at item first, where no fan runs on; -1 when
// there is no such item.
func fanOut(items []Item, gaps []float64, first int, spread float64) []float64 {
	n := len(items)
	want := make([]float64, n)
	for i := range items {
		want[i] = items[i].Base
	}
	if first < 0 {
		return want
	}
	members := make([]int, 0, 8)
	offset := make([]float64, 0, 8)
	flush := func() {
		if len(members) > 1 {
			mean := 0.0
			for _, o := range offset {
				mean += o / float64(len(offset))
			}
			for k, m := range members {
				want[m] += spread * (offset[k] - mean)
			}
		}
		members, offset = members[:0], offset[:0]
	}
	along := 0.0
	for k := 0; k < n; k++ {
		i := (first + k) % n
		if !items[i].Free {
			if len(members) > 0 && (items[i].Place == 0 || items[i].Place != items[members[0]].Place) {
				flush()
				along = 0
			}
			members = append(members, i)
			offset = append(offset, along)
		}
		along += gaps[i]
	}
	flush()
	return want
}

// beginning is an item that is not in one fan with the item before it, over the
// seam where need be; -1 when there is none.
func beginning(items []Item) int {
	last := 0
	for i := len(items) - 1; i >= 0 && last == 0; i-- {
		if !items[i].Free {
			last = items[i].Place
		}
	}
	for i := range items {
		if !items[i].Free && (items[i].Place == 0 || items[i].Place != last) {
			return i
		}
	}
	return -1
}

// solveCyclic solves the symmetric cyclic tridiagonal system with diagonal
// diag and every off-diagonal (the corners too) off, for the right side rhs,
// into x. The last unknown is eliminated as a border of a plain tridiagonal
// system, so that no pivot is lost. diag and rhs are used up. n is at least 2;
// for n = 2 the two couplings fall on one entry.
func solveCyclic(diag []float64, off float64, rhs, x []float64) {
	n := len(diag)
	if n == 2 {
		c := 2 * off
		det := diag[0]*diag[1] - c*c
		x[0] = (rhs[0]*diag[1] - c*rhs[1]) / det
		x[1] = (diag[0]*rhs[1] - c*rhs[0]) / det
		return
	}
	m := n - 1
	border := make([]float64, m) // column of the last unknown
	border[0], border[m-1] = off, off
	if m == 1 {
		border[0] = off
	}
	// Forward elimination of both right sides together.
	for i := 1; i < m; i++ {
		f := off / diag[i-1]
		diag[i] -= f * off
		rhs[i] -= f * rhs[i-1]
		border[i] -= f * border[i-1]
	}
	u := make([]float64, m) // solution for rhs
	v := border             // solution for the border column, in place
	u[m-1] = rhs[m-1] / diag[m-1]
	v[m-1] /= diag[m-1]
	for i := m - 2; i >= 0; i-- {
		u[i] = (rhs[i] - off*u[i+1]) / diag[i]
		v[i] = (v[i] - off*v[i+1]) / diag[i]
	}
	// Last row: off·x[0] + off·x[m-1] + diag·x[m] = rhs, with x = u − v·x[m].
	x[m] = (rhs[m] - off*(u[0]+u[m-1])) / (diag[m] - off*(v[0]+v[m-1]))
	for i := 0; i < m; i++ {
		x[i] = u[i] - v[i]*x[m]
	}
}

// Spread moves angles as little as possible (in the least-squares sense within
// each crowded run) so that every gap is at least the given one; least[i] is
// the gap after item i, the last one across the seam. The sum of least must be
// under one turn.
func Spread(theta, least []float64) {
	n := len(theta)
	if n < 2 {
		return
	}
	// Cut the turn where the room to spare is greatest: that gap stays open.
	cut, spare := 0, math.Inf(-1)
	crowded := false
	for i := range theta {
		d := gap(theta, i) - least[i]
		crowded = crowded || d < 0
		if d > spare+1e-12 {
			cut, spare = i, d
		}
	}
	if !crowded {
		return
	}
	// Without their least gaps the angles must not fall.
	shift, bare := make([]float64, n), make([]float64, n)
	for k := 0; k < n; k++ {
		i := (cut + 1 + k) % n
		if k > 0 {
			shift[k] = shift[k-1] + least[(cut+k)%n]
		}
		bare[k] = unwound(theta, cut, i) - shift[k]
	}
	neverFall(bare)
	for k := range bare {
		i := (cut + 1 + k) % n
		theta[i] = bare[k] + shift[k]
		if i <= cut {
			theta[i] -= Turn
		}
	}
	if gap(theta, cut) < least[cut]-1e-9 {
		even(theta, least)
	}
}

// neverFall moves numbers as little as possible, in the least-squares sense, so
// that none is less than the one before: isotonic regression by pooling adjacent
// violators.
func neverFall(v []float64) {
	type pool struct{ sum, count float64 }
	pools := make([]pool, 0, len(v))
	for _, x := range v {
		pools = append(pools, pool{x, 1})
		for len(pools) > 1 {
			a, b := pools[len(pools)-2], pools[len(pools)-1]
			if a.sum/a.count <= b.sum/b.count {
				break
			}
			pools = pools[:len(pools)-1]
			pools[len(pools)-1] = pool{a.sum + b.sum, a.count + b.count}
		}
	}
	k := 0
	for _, p := range pools {
		for range int(p.count) {
			v[k] = p.sum / p.count
			k++
		}
	}
}

// even lays all angles as far apart as their least gaps ask in proportion, for
// a round so confused that nothing better can be said; it is turned to lie as
// near as can be to where they were.
func even(theta, least []float64) {
	total := 0.0
	for _, l := range least {
		total += l
	}
	at, mean := make([]float64, len(theta)), 0.0
	for i := range theta {
		if i > 0 {
			at[i] = at[i-1] + least[i-1]*Turn/total
		}
		mean += (theta[i] - at[i]) / float64(len(theta))
	}
	for i := range theta {
		theta[i] = at[i] + mean
	}
}

// gap is the gap after item i.
func gap(theta []float64, i int) float64 {
	if i == len(theta)-1 {
		return theta[0] + Turn - theta[i]
	}
	return theta[i+1] - theta[i]
}

// unwound is the angle of item i on a turn that begins after item cut.
func unwound(theta []float64, cut, i int) float64 {
	if i <= cut {
		return theta[i] + Turn
	}
	return theta[i]
}
