package chart

import (
	"math"

	"whorl/chart/ring"
)

// panelSamples are those of a wave in one repeat of a panel.
const panelSamples = 60

// findPanelWave lays the rounds of a panel in waves, as the rows of a ripple are, where
// they have one in common on which their legs lean less than on straight lines.
func (w *work) findPanelWave() {
	w.stiff = stiffWave
	w.turn()
	_, straight := w.leaning(w.reachPanel)
	if w.zigzag, w.longer = w.waveOfRepeat(); w.zigzag != nil {
		if _, square := w.leaning(w.reachPanel); square < straight {
			return
		}
	}
	w.stiff, w.zigzag, w.longer = 0, nil, 0
	w.turn()
}

// waveOfRepeat is the wave that the drawn rounds have in common, as they are laid now on
// straight lines, over one repeat from the angle 0 on, its heights in units of angle; and how
// much longer a round is on it. nil when there is none.
func (w *work) waveOfRepeat() (*ring.Wave, float64) {
	const n = panelSamples
	step := ring.Turn / float64(w.fold*n)
	var rounds [][]float64
	for _, c := range w.courses[max(w.lo, 1) : w.last+1] {
		if slopes := w.slopesAround(c, step); slopes != nil {
			rounds = append(rounds, slopes)
		}
	}
	all := common(rounds, step)
	if all == nil {
		return nil, 0
	}
	mean, trend := make([]float64, n), 0.0
	for k := range w.fold * n {
		mean[k%n] += all[k] / float64(w.fold)
		trend += all[k] / float64(w.fold*n)
	}
	half := int(math.Round(waveRound * float64(w.fold*n) / float64(max(len(w.courses[w.last].order), 1)) / 2))
	slopes, steep := make([]float64, n), 0.0
	for k := range slopes {
		for j := k - half; j <= k+half; j++ {
			slopes[k] += (mean[(j%n+n)%n] - trend) / float64(2*half+1)
		}
		slopes[k] = math.Max(-waveSteep, math.Min(waveSteep, slopes[k]))
		steep += slopes[k] * slopes[k] / n
	}
	v := &ring.Wave{Step: step, Heights: integral(append(slopes, slopes[0]), step)}
	if low, high := v.Extent(); (high-low)*w.mmAt(0) < waveLeast*w.unit {
		return nil, 0
	}
	return v, math.Sqrt(1 + steep)
}

// waveAbout is the wave of a panel from half its width before the middle to as far behind
// it, its heights in mm on paper; nil where it has none.
func (w *work) waveAbout(mid, half, along float64) *ring.Wave {
	if w.zigzag == nil {
		return nil
	}
	step, n := w.zigzag.Step, panelSamples
	from := math.Floor((mid - half) / step)
	v := &ring.Wave{From: from*step - mid, Step: step}
	for k := from; k <= math.Ceil((mid+half)/step)+1; k++ {
		v.Heights = append(v.Heights, along*w.zigzag.Heights[(int(k)%n+n)%n])
	}
	return v
}
