package chart

import (
	"math"
	"sort"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
)

// Rounds in which increases stand over increases and decreases over decreases lie in
// zigzags as rows do, where their legs would lean far on circles. A motif is a star
// where its sides are drawn in at their middles.
const (
	zigzagLeast = 0.04 // of the stitches that lean far without a zigzag
	zigzagMost  = 0.5  // of those that still do with it
	// leastShift is by how many stitches those of a star's sides shift to their middles on
	// the whole, from round to round.
	leastShift = 0.5
	// The stitches of a star are tall where it points, so that its zigzag is less steep
	// and rounder.
	starSteep, starRound = 0.6, 6.0
	// Rounds are wider on paper than in the fabric, and need to be as much higher.
	zigzagApart = 1.3
)

// findZigzag lays the rounds along a zigzag where that lets legs lean much less; lay
// sets them on a page.
func (w *work) findZigzag(lay func(*page)) {
	far, square := w.leaning(lay)
	star := w.corners.sides > 0
	if far < zigzagLeast || star && !w.drawnIn() {
		return
	}
	w.stiff = stiffWave
	w.zigzag, w.longer = &ring.Wave{Step: ring.Turn, Heights: []float64{0, 0}}, 1
	w.turn()
	lay(newPage(w, false))
	if w.zigzag, w.longer = w.waveAround(); w.zigzag != nil {
		f, s := w.leaning(lay)
		if star || f < zigzagMost*far && s < zigzagMost*square {
			return
		}
	}
	w.stiff, w.zigzag, w.longer = 0, nil, 0
	w.turn()
}

// drawnIn reports whether the stitches of a motif's sides shift from its corners to the
// middles of the sides, where as many are taken in.
func (w *work) drawnIn() bool {
	each := ring.Turn / float64(w.corners.sides)
	shift, n := 0.0, 0.0
	for _, c := range w.courses[w.corners.from+1:] {
		_, below := w.cornerSpaces(c)
		corner := map[fabric.Ref]bool{}
		for _, r := range below {
			corner[r] = true
		}
		gap := ring.Turn / float64(max(len(c.order), 1))
		for _, i := range c.order {
			on := c.round.Stitches[i].On
			if !w.stands(c, i) || corner[on[0].At] {
				continue
			}
			if base, ok := w.stance(c, i, c.theta[i]-math.Pi); ok {
				base = w.square(c, base)
				shift += (math.Abs(math.Remainder(c.theta[i]-w.cornerAt, each)) - math.Abs(math.Remainder(base-w.cornerAt, each))) / gap
				n++
			}
		}
	}
	return shift > leastShift*n
}

// waveAround is the wave that all drawn rounds have in common, as they are laid now, and
// how much longer a round is on it; nil when there is none.
func (w *work) waveAround() (*ring.Wave, float64) {
	const step = ring.Turn / (waveSamples - 1)
	mean := make([]float64, waveSamples)
	rounds, each := 0.0, 0.0
	from := w.lo
	if w.corners.sides > 0 {
		from = min(max(from, w.corners.from+1), w.last)
	}
	for _, c := range w.courses[from : w.last+1] {
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
	steepest, wide := waveSteep, waveRound
	if w.corners.sides > 0 {
		steepest, wide = starSteep, starRound
	}
	steep := 0.0
	mean = rounded(mean, wide*ring.Turn/float64(max(len(w.courses[w.last].order), 1))/step)
	for k := range mean {
		mean[k] = math.Max(-steepest, math.Min(steepest, mean[k]))
		steep += mean[k] * mean[k] / waveSamples
	}
	v := &ring.Wave{Step: step, Heights: integral(mean, step)}
	return v, zigzagApart * math.Sqrt(1+steep)
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
			aside := math.Remainder(base-c.theta[i], ring.Turn) * w.mmAt((c.radius[i]+foot)/2)
			l = append(l, lean{above(c.theta[i], 0), aside/rise*w.up() - w.risesAt(c, i)})
		}
	}
	n := len(l)
	if n < 3 {
		return nil
	}
	sort.SliceStable(l, func(i, j int) bool { return l[i].at < l[j].at })
	out := make([]float64, int(math.Round(ring.Turn/step))+1)
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

// risesAt is the slope of a round's own tops at a stitch.
func (w *work) risesAt(c *course, i int) float64 {
	n, k := len(c.order), c.rank[i]
	a, b := c.order[(k+n-1)%n], c.order[(k+1)%n]
	across := math.Remainder(c.theta[b]-c.theta[a], ring.Turn) * w.mmAt(c.radius[i])
	if across <= 0 {
		return 0
	}
	return (c.radius[b] - c.radius[a]) / across
}
