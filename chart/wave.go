package chart

import (
	"math"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
)

// Rows in which increases stand over increases and decreases over decreases lie
// in waves, as in a ripple: stitches are about square to their row, so where all
// lean one way the row slopes the other.
const (
	waveSamples = 240
	waveSteep   = 1.0 // the greatest slope
	waveLeast   = 0.8 // in units: lower waves are left straight
	waveAlike   = 0.5 // how much of the rows' single waves must be common to all
	waveRound   = 3.0 // stitches over which the turns of a wave are rounded off
	waveWhole   = 0.8 // of the longest row that every row reaches: others are a part of it
	waveFlat    = 0.2 // of the greatest wave of a row: a lower one is none, as in plain rows between
	waveFew     = .25 // of the rows that wave at least
	wavePlain   = 0.6 // of the slope of those that wave that all lie in at least, however many are plain
)

// wave is the wave that all drawn rows have in common, between two distances along
// them, in mm of the fabric, and how much longer a row is on it than straight; nil and
// 1 when there is none. As the fabric does, rows come to lie farther apart by as much
// as they are drawn in.
func (w *work) wave(low, high float64) (*ring.Wave, float64) {
	step := (high - low) / (waveSamples - 1)
	var rows [][]float64 // the slopes of each
	for _, c := range w.courses[max(w.lo, 1) : w.last+1] {
		if slopes := w.slopes(c, low, step); slopes != nil {
			rows = append(rows, slopes)
		}
	}
	mean := common(rows, step)
	if mean == nil {
		return nil, 1
	}
	steep := 0.0
	c := w.courses[w.last]
	mean = rounded(mean, waveRound*(high-low)/float64(max(len(c.order), 1))/step)
	for k := range mean {
		mean[k] = math.Max(-waveSteep, math.Min(waveSteep, mean[k]))
		steep += mean[k] * mean[k] / waveSamples
	}
	v := &ring.Wave{From: low, Step: step, Heights: integral(mean, step)}
	if a, b := v.Extent(); b-a < waveLeast*w.singleHeight() {
		return nil, 1
	}
	return v, math.Sqrt(1 + steep)
}

// common is the slope at every step that rows of these have in common, as flat as plain
// ones among them make it; nil where they have too little in common.
func common(rows [][]float64, step float64) []float64 {
	squares := make([]float64, len(rows)) // of the single waves
	most := 0.0
	for r, slopes := range rows {
		for _, h := range integral(slopes, step) {
			squares[r] += h * h
		}
		most = math.Max(most, squares[r])
	}
	if len(rows) < 2 || most == 0 {
		return nil
	}
	mean := make([]float64, len(rows[0]))
	waving, each := 0.0, 0.0
	for r, slopes := range rows {
		if squares[r] < waveFlat*waveFlat*most {
			continue
		}
		waving++
		each += squares[r]
		for k, s := range slopes {
			mean[k] += s
		}
	}
	share := waving / float64(len(rows))
	if share < waveFew {
		return nil
	}
	all := 0.0
	for k := range mean {
		mean[k] /= waving
	}
	for _, h := range integral(mean, step) {
		all += h * h
	}
	if all < waveAlike*each/waving {
		return nil
	}
	for k := range mean {
		mean[k] *= math.Max(share, wavePlain)
	}
	return mean
}

// ripples reports whether rows lie in waves.
func (w *work) ripples() bool {
	w.lo = w.first
	if w.courses[w.first].hub && w.last > w.first {
		w.lo++
	}
	low, high := w.along()
	for _, c := range w.courses[max(w.lo, 1) : w.last+1] {
		if c.reaches() < waveWhole*(high-low) {
			return false
		}
	}
	wave, _ := w.wave(low, high)
	return wave != nil
}

// righted reports whether legs lean less as the rows are laid now, in waves, than they did
// by so much or, where the rows do lie in waves, than on straight rows spread as evenly.
func (w *work) righted(straight float64) bool {
	if w.ripples() {
		w.waves = false
		_, straight = w.leaning(w.layOut)
		w.waves = true
	}
	_, square := w.leaning(w.layOut)
	return square < straight
}

// slopes is how a row would slope to be square to its stitches, at even steps
// along it; nil when none of them stands on anything.
func (w *work) slopes(c *course, low, step float64) []float64 {
	var at, slope, bases []float64
	for _, i := range c.order {
		if s := &c.round.Stitches[i]; s.IsChain() || s.Role == fabric.Start && !s.Counts {
			continue
		}
		base, ok := w.stance(c, i, 0)
		if ok && c.form.Height > 0 {
			at = append(at, c.theta[i])
			bases = append(bases, base)
		}
	}
	n := len(at) - 1
	if n < 1 {
		return nil
	}
	// What a row is longer or shorter than the one below is no wave.
	longer := w.courses[max(c.index-1, 0)].reaches()
	if longer > 0 {
		longer = c.reaches() / longer
	}
	middle := w.middleOf(c)
	for k, base := range bases {
		slope = append(slope, (middle+(base-middle)*longer-at[k])/c.form.Height)
	}
	out := make([]float64, waveSamples)
	k := 0
	for j := range out {
		x := low + float64(j)*step
		for k < len(at)-2 && at[k+1] < x {
			k++
		}
		t := math.Max(0, math.Min(1, (x-at[k])/math.Max(at[k+1]-at[k], 1e-9)))
		out[j] = slope[k]*(1-t) + slope[k+1]*t
	}
	return out
}

// reaches is how far apart the ends of a row are.
func (c *course) reaches() float64 {
	if len(c.order) == 0 {
		return 0
	}
	return c.theta[c.order[len(c.order)-1]] - c.theta[c.order[0]]
}

// rounded is slopes averaged over a length of so many samples.
func rounded(slopes []float64, over float64) []float64 {
	half := int(math.Round(over / 2))
	out := make([]float64, len(slopes))
	for k := range slopes {
		for j := k - half; j <= k+half; j++ {
			out[k] += slopes[min(max(j, 0), len(slopes)-1)] / float64(2*half+1)
		}
	}
	return out
}

// integral sums slopes up to heights about their mean, without what they rise or
// fall from end to end.
func integral(slopes []float64, step float64) []float64 {
	n := len(slopes)
	h := make([]float64, n)
	for k := 1; k < n; k++ {
		h[k] = h[k-1] + step*(slopes[k-1]+slopes[k])/2
	}
	end, mean := h[n-1], 0.0
	for k := range h {
		h[k] -= end * float64(k) / float64(n-1)
		mean += h[k] / float64(n)
	}
	for k := range h {
		h[k] -= mean
	}
	return h
}
