package chart

import (
	"math"
	"sort"

	"whorl/chart/ring"
)

// Rounds in which increases stand over increases and decreases over decreases lie in
// zigzags as rows do, where their legs would lean far on circles.
const (
	zigzagLeast = 0.04 // of the stitches that lean far on circles
	zigzagMost  = 0.5  // of those that still do on a zigzag
)

// findZigzag lays the rounds along a zigzag where that lets fewer legs lean; lay sets
// them on a page.
func (w *work) findZigzag(lay func(*page)) {
	if w.corners.sides > 0 {
		return
	}
	far, square := w.leaning(lay)
	if far < zigzagLeast {
		return
	}
	w.stiff = stiffWave
	w.turn()
	lay(newPage(w, false))
	if w.zigzag, w.longer = w.waveAround(); w.zigzag != nil {
		if f, s := w.leaning(lay); f <= zigzagMost*far && s < square {
			return
		}
	}
	w.stiff, w.zigzag, w.longer = 0, nil, 0
	w.turn()
}

// waveAround is the wave that all drawn rounds have in common, as they are laid now, and
// how much longer a round is on it; nil when there is none.
func (w *work) waveAround() (*ring.Wave, float64) {
	const step = ring.Turn / (waveSamples - 1)
	mean := make([]float64, waveSamples)
	rounds, each := 0.0, 0.0
	for _, c := range w.courses[w.lo : w.last+1] {
		slopes := w.slopesAround(c, step)
		if slopes == nil {
			continue
		}
		rounds++
		for k, s := range integral(slopes, step) {
			mean[k] += slopes[k]
			each += s * s
		}
	}
	if rounds < 2 {
		return nil, 0
	}
	common := 0.0
	for k, h := range integral(mean, step) {
		mean[k] /= rounds
		common += h * h / rounds / rounds
	}
	if common < waveAlike*each/rounds {
		return nil, 0
	}
	steep := 0.0
	mean = rounded(mean, waveRound*ring.Turn/float64(max(len(w.courses[w.last].order), 1))/step)
	for k := range mean {
		mean[k] = math.Max(-waveSteep, math.Min(waveSteep, mean[k]))
		steep += mean[k] * mean[k] / waveSamples
	}
	v := &ring.Wave{Step: step, Heights: integral(mean, step)}
	return v, math.Sqrt(1 + steep)
}

// slopesAround is how a round would slope to be square to its stitches, at even steps of
// a turn; nil when none of them stands on anything.
func (w *work) slopesAround(c *course, step float64) []float64 {
	type lean struct{ at, slope float64 }
	var l []lean
	for _, i := range c.order {
		if !w.stands(c, i) {
			continue
		}
		base, ok := w.stance(c, i, c.theta[i]-math.Pi)
		foot := w.meanFoot(c, i)
		if rise := (c.radius[i] - foot) * w.up(); ok && rise > 0 {
			aside := math.Remainder(base-c.theta[i], ring.Turn) * (c.radius[i] + foot) / 2
			l = append(l, lean{above(c.theta[i], 0), aside / rise * w.up()})
		}
	}
	n := len(l)
	if n < 3 {
		return nil
	}
	sort.SliceStable(l, func(i, j int) bool { return l[i].at < l[j].at })
	out := make([]float64, waveSamples)
	k := 0
	for j := range out {
		x := float64(j) * step
		for k < n && l[k].at < x {
			k++
		}
		a, b := l[(k+n-1)%n], l[k%n]
		if k == 0 {
			a.at -= ring.Turn
		}
		if k == n {
			b.at += ring.Turn
		}
		t := math.Max(0, math.Min(1, (x-a.at)/math.Max(b.at-a.at, 1e-9)))
		out[j] = a.slope*(1-t) + b.slope*t
	}
	return out
}
