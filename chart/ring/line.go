package ring

import "math"

// Along places the items of one row, which does not close. It minimises
//
//	Σ (x − base)² + κ Σ (gap − natural gap)²
//
// where the natural gap of two neighbours is half the sum of their widths, times
// scale, and κ is the stiffness. The result rises strictly and is in the unit of the bases; a row whose
// items are all Free begins at 0. It takes time and space in proportion to the
// number of items.
func Along(items []Item, scale, stiffness float64) []float64 {
	n := len(items)
	if n == 0 {
		return nil
	}
	gaps := make([]float64, n) // after each item
	for i := 1; i < n; i++ {
		gaps[i-1] = scale * ((items[i-1].Width+items[i].Width)/2 + items[i].Before)
	}
	anchored := false
	for i := range items {
		anchored = anchored || !items[i].Free
	}
	x := make([]float64, n)
	if !anchored {
		for i := 1; i < n; i++ {
			x[i] = x[i-1] + gaps[i-1]
		}
		return x
	}
	items = uncross(items)
	base := fanOut(items, gaps, 0, fanSpread)
	diag := make([]float64, n)
	for i := range items {
		if i > 0 {
			diag[i] += stiffness
			x[i] += stiffness * gaps[i-1]
		}
		if i < n-1 {
			diag[i] += stiffness
			x[i] -= stiffness * gaps[i]
		}
		if !items[i].Free {
			diag[i]++
			x[i] += base[i]
		}
	}
	// Elimination down the tridiagonal system, and back.
	for i := 1; i < n; i++ {
		f := stiffness / diag[i-1]
		diag[i] -= f * stiffness
		x[i] += f * x[i-1]
	}
	x[n-1] /= diag[n-1]
	for i := n - 2; i >= 0; i-- {
		x[i] = (x[i] + stiffness*x[i+1]) / diag[i]
	}
	// No gap is less than a part of the natural one.
	shift := make([]float64, n)
	for i := 1; i < n; i++ {
		shift[i] = shift[i-1] + leastGap*gaps[i-1]
		x[i] -= shift[i]
	}
	neverFall(x)
	for i := range x {
		x[i] += shift[i]
	}
	return x
}

// Wave is a height over the length of a row, by samples at even steps.
type Wave struct {
	From, Step float64   // of the samples, along the row
	Heights    []float64 // at least two
}

// At is the height and the slope at a distance along the row. Beyond its ends a
// wave goes on level.
func (w *Wave) At(along float64) (height, slope float64) {
	last := len(w.Heights) - 1
	t := (along - w.From) / w.Step
	k := min(max(int(math.Floor(t)), 0), last-1)
	t = min(max(t-float64(k), 0), 1)
	slopeAt := func(i int) float64 {
		a, b := max(i-1, 0), min(i+1, last)
		return (w.Heights[b] - w.Heights[a]) / (float64(b-a) * w.Step)
	}
	return w.Heights[k]*(1-t) + w.Heights[k+1]*t, slopeAt(k)*(1-t) + slopeAt(k+1)*t
}

// Extent is the lowest and the highest height; none for no wave.
func (w *Wave) Extent() (low, high float64) {
	if w == nil {
		return 0, 0
	}
	low, high = w.Heights[0], w.Heights[0]
	for _, h := range w.Heights {
		low, high = min(low, h), max(high, h)
	}
	return low, high
}
