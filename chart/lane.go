package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
)

// Where yarn is cut and joined round after round, its signs stand in a lane along the seam,
// behind the numbers: each within its own round, the yarn that is joined before the end of it.

// laneReach is how far behind the beginning of its round a sign stands in the lane, at
// most, mm.
const laneReach = 8.0

// berthOf is what stands in the lane: a sign of a round.
type berthOf struct {
	c *course
	s yarnSign
}

// laned are the signs that stand in the lane; none where yarn is not joined between rounds.
func (w *work) laned() (l []berthOf) {
	if w.rows || w.flat || w.window > 0 {
		return nil
	}
	joins := false
	for _, c := range w.courses[w.lo : w.last+1] {
		for _, s := range w.yarnSigns(c) {
			if s.sign == ofCut && c.index < w.last || s.sign == ofAttach {
				l = append(l, berthOf{c, s})
				joins = joins || s.sign == ofAttach
			}
		}
	}
	if !joins {
		return nil
	}
	return l
}

// laneRoom is how wide the lane of a round is whose signs are as small as can be, mm.
func (w *work) laneRoom(c *course) (room float64) {
	sin, cos := math.Sincos(w.startAngle() + c.seam)
	for _, b := range w.laned() {
		if b.c == c {
			tall := w.o.enlarged(yarnHeights[len(yarnHeights)-1])
			_, wide := b.s.label(tall, &ink)
			room += wide*math.Abs(sin) + tall*math.Abs(cos) + 2*aidAir
		}
	}
	return room
}

// inLane draws the signs that find room in the lane, all of one height: the largest at which
// all do, or else the smallest. The rounds of those that find none are cramped.
func (a *artist) inLane(f *finder) map[berthOf]*scene.Group {
	signs := a.laned()
	start := len(f.taken)
	var drawn map[berthOf]*scene.Group
	for _, height := range yarnHeights {
		f.taken = f.taken[:start]
		drawn = map[berthOf]*scene.Group{}
		for _, b := range signs {
			if g := a.moored(f, b, a.o.enlarged(height)); g != nil {
				drawn[b] = g
			}
		}
		if len(drawn) == len(signs) {
			break
		}
	}
	for _, b := range signs {
		if drawn[b] == nil {
			a.cramped = append(a.cramped, b.c)
		}
	}
	return drawn
}

// moored draws a sign so tall in the white behind the beginning of its round, and within it;
// nil where there is none.
func (a *artist) moored(f *finder, b berthOf, tall float64) *scene.Group {
	c := b.c
	colour := a.colourOf(c.index - a.lo)
	label, wide := b.s.label(tall, colour)
	inner, outer := a.seamBand(c)
	mid := (inner + outer) / 2
	rise := math.Max(math.Abs(outer-inner)/2-tall/4, 0.3)
	d := aid{wide: wide, tall: tall}
	ok := search(laneReach, rise, func(s spot) bool {
		if s.along < 0 {
			return false
		}
		r := mid + s.up
		angle := c.seam - s.along/a.mmAt(r)
		d.at = a.point(angle, r)
		if !f.free(box{d.at.X - wide/2, d.at.Y - tall/2, d.at.X + wide/2, d.at.Y + tall/2}.grown(aidAir)) {
			return false
		}
		d.along, d.up = a.frame(c, angle, r)
		return true
	})
	if !ok {
		return nil
	}
	at := canvas.Point{X: hundredth(d.at.X), Y: hundredth(d.at.Y)}
	f.taken = append(f.taken, d.about(at).grown(aidAir))
	g := &scene.Group{Title: c.label() + ": " + b.s.words(), Style: scene.Style{Stroke: colour}}
	a.drawYarn(g, b.s, at, d, tall, label)
	return g
}
