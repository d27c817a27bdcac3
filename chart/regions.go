package chart

import "whorl/chart/ring"

// regions are the parts of a ring that is no circle, in the order of rising angles:
// straight ones with even numbers, what turns between them with odd ones.
type regions struct {
	n    int
	of   func(angle float64) int
	span func(region int) float64 // its angle
}

// fill gives the stitches of a round the widths at which those that stand in a region
// fill it.
func (g regions) fill(items []ring.Item) {
	in, ok := g.places(items)
	if !ok {
		return
	}
	sum := make([]float64, g.n)
	for k := range items {
		sum[in[k]] += items[k].Width + items[k].Before
	}
	for k := range items {
		before := in[(k+len(items)-1)%len(items)]
		if sum[in[k]] > 0 {
			scale := g.span(in[k]) / sum[in[k]]
			items[k].Width *= scale
			items[k].Before *= scale
		}
		for r := (before + 1) % g.n; r != in[k] && before != in[k]; r = (r + 1) % g.n {
			items[k].Before += g.span(r)
		}
	}
}

// places are the regions that the stitches of a round are in. What stands on nothing is
// between its neighbours. It is false where none stands on anything.
func (g regions) places(items []ring.Item) ([]int, bool) {
	n := len(items)
	first := 0
	for first < n && items[first].Free {
		first++
	}
	if first == n {
		return nil, false
	}
	in := make([]int, n)
	for from := 0; from < n; {
		i := (first + from) % n
		in[i] = g.of(items[i].Base)
		// The free ones after it, up to the next that is not.
		to, run := from+1, items[i].Width/2
		for to < n && items[(first+to)%n].Free {
			run += items[(first+to)%n].Width
			to++
		}
		next := &items[(first+to)%n]
		run += next.Width / 2
		over := above(next.Base, items[i].Base-ring.Turn/4) - items[i].Base
		along := items[i].Width / 2
		for k := from + 1; k < to; k++ {
			j := (first + k) % n
			in[j] = g.of(items[i].Base + over*(along+items[j].Width/2)/run)
			along += items[j].Width
		}
		from = to
	}
	return in, true
}
