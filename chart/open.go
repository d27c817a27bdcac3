package chart

import (
	"math"
	"strconv"

	"whorl/chart/ring"
	"whorl/chart/typeface"
)

// leastAside is the rise from round to round, mm, at which two numbers of two
// figures can stand beside one another.
const leastAside = 3.6

// open parts the rounds at their seams, and nowhere else, to make room behind them for the
// numbers of some rounds. share is how much of the reckoned room is made. It is false when
// there is no room to be had.
func (w *work) open(rounds []*course, share float64) bool {
	w.channels = make([]float64, len(w.courses))
	for k := w.lo; k <= w.last; k++ {
		c := w.courses[k]
		n := len(c.order)
		if n == 0 {
			continue
		}
		want := 0.0
		for _, m := range rounds {
			// Rounds near by are parted a little less each, so that the
			// channel opens and closes gently.
			want = math.Max(want, share*w.channel(m)-0.8*math.Abs(float64(m.index-k)))
		}
		round := ring.Turn * w.radii.Of(w.layer(c))
		spare := round - float64(n)*leastPitch*0.9
		want = math.Min(want, spare)
		if want <= 0 {
			continue
		}
		w.channels[k] = want * c.form.Circumference / (round - want)
	}
	for _, m := range rounds {
		if w.channels[m.index] > 0 {
			return true
		}
	}
	return false
}

// turnSeam turns the seam to the foot of the chart, where numbers stand one over another,
// if rounds are too low for them beside one another.
func (w *work) turnSeam() {
	rise := math.Abs(w.radii.Of(w.layerAt(w.last))-w.radii.Of(w.layerAt(w.lo))) / math.Max(float64(w.last-w.lo), 1)
	if rise < leastAside {
		w.seamAt = atFoot
	}
}

// channel is the extra room on paper that a round needs at its seam for its
// number beside its beginning chain, and behind it for the signs of the yarn, mm.
func (w *work) channel(c *course) float64 {
	h := figureHeights[len(figureHeights)-1]
	wide := typeface.Width(strconv.Itoa(c.round.Number), h/typeface.CapHeight(1), true, false)
	// Its reach along the round, whose seam stands at an angle on the page.
	sin, cos := math.Sincos(w.startAngle() + c.seam)
	reach := wide*math.Abs(sin) + h*math.Abs(cos) + 2*numberAir
	pitch := ring.Turn * w.radii.Of(w.layer(c)) / float64(len(c.order))
	return reach + w.laneRoom(c) + (0.76+0.5)*w.unit + 1.1 - pitch
}
