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

// partings are the shares of the reckoned room that are tried one after another where rounds
// are parted, the likeliest first; where that is enough, the least that is too is looked for.
var partings, lessPartings = []float64{0.7, 0.85, 1, 1.2, 1.4}, []float64{0.3, 0.5}

// partAtSeam parts the rounds whose number or sign of the yarn finds no room, or only off the
// line of the others, at the seam, no more than they must be.
func (w *work) partAtSeam(best *Chart, missing []*course) *Chart {
	fewest, parted := len(missing), w.parting
	far, _ := w.lean()
	wanting := missing
	tidy := func() bool { return fewest == 0 && best.untidy() == 0 }
	for i, share := range partings {
		if fewest > 0 {
			w.turnSeam()
		} else {
			wanting = append(append(wanting, best.ahead...), best.cramped...)
		}
		if tidy() || !w.open(wanting, share) {
			break
		}
		c, still := w.draw()
		lean, _ := w.lean()
		tidier := c.untidy() < best.untidy() && lean <= far && c.touching <= best.touching
		if (len(still) < fewest || len(still) == fewest && tidier) && !c.Small() {
			best, fewest, parted, far = c, len(still), w.parting, lean
		}
		if i == 0 && tidy() {
			return w.partLess(best, wanting)
		}
		wanting = append(wanting, still...)
	}
	if fewest > 0 {
		w.parting, w.leaders = parted, true
		best, _ = w.draw()
	}
	return best
}

// partLess is a chart whose parted rounds find all the room that they want, parted less where
// they find it still.
func (w *work) partLess(best *Chart, wanting []*course) *Chart {
	for _, share := range lessPartings {
		if !w.open(wanting, share) {
			break
		}
		c, missing := w.draw()
		if len(missing) == 0 && c.untidy() == 0 && c.touching <= best.touching && !c.Small() {
			return c
		}
	}
	return best
}

// open parts the rounds at their seams, and nowhere else, to make room behind them for the
// numbers of some rounds. share is how much of the reckoned room is made. It is false when
// there is no room to be had.
func (w *work) open(rounds []*course, share float64) bool {
	w.channels = make([]float64, len(w.courses))
	wants := make([]float64, len(rounds))
	for i, m := range rounds {
		wants[i] = share * w.channel(m)
	}
	for k := w.lo; k <= w.last; k++ {
		c := w.courses[k]
		n := len(c.order)
		if n == 0 {
			continue
		}
		want := 0.0
		for i, m := range rounds {
			// Rounds near by are parted a little less each, so that the
			// channel opens and closes gently.
			want = math.Max(want, wants[i]-0.8*math.Abs(float64(m.index-k)))
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
