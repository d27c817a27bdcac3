package chart

import (
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Numbers that stand now to one side of the seam and now to the other are hard to follow:
// they are set anew in one line, and where the rounds are too low for that, only every so
// many of them.

// thinnings are how many rounds go to a number, fewest first.
var thinnings = [...]int{2, 5}

const (
	thinFrom   = 10   // rounds that a chart has at least where some go without a number
	mostLed    = 8    // rounds, of which one number may be led to its round rather
	turnsEvery = 8    // rounds, in which the line may change sides once
	sideLeast  = 0.8  // mm off the seam: nearer, a number is on neither side of it
	mostStands = 90   // places that are tried for each number
	standShare = 0.25 // what being off the seam and the middle counts, beside going on straight
	turnCost   = 6.0  // mm that changing sides counts as
)

// berth is a place where a round's number has room.
type berth struct {
	along float64 // mm before the seam
	at    canvas.Point
	box   box
	cost  float64
}

// side is that of the seam on which something stands, 0 by the seam itself.
func side(along float64) int {
	switch {
	case along > sideLeast:
		return 1
	case along < -sideLeast:
		return -1
	}
	return 0
}

// crossings is how often a line of numbers changes sides.
func crossings(alongs []float64) (n int) {
	on := 0
	for _, x := range alongs {
		if s := side(x); s != 0 {
			if on != 0 && s != on {
				n++
			}
			on = s
		}
	}
	return n
}

// ahead are the rounds, but those that are missing their number, that have it ahead of the
// seam.
func ahead(cs, missing []*course, alongs []float64) (l []*course) {
	k := 0
	for _, c := range cs {
		if slices.Contains(missing, c) {
			continue
		}
		if side(alongs[k]) < 0 {
			l = append(l, c)
		}
		k++
	}
	return l
}

// isCalm reports whether a line of numbers can be followed.
func isCalm(alongs []float64) bool { return crossings(alongs) <= len(alongs)/turnsEvery }

// thinned are the rounds that have a number where so many go to one: always the first and
// the last, and none next to the last.
func thinned(cs []*course, every int) (l []*course) {
	first, last := cs[0].round.Number, cs[len(cs)-1].round.Number
	for i, c := range cs {
		n := c.round.Number
		on := n%every == 0
		if every == 2 {
			on = (n-first)%2 == 0
		}
		if i == 0 || i == len(cs)-1 || on && n-first > every/3 && last-n > max(every/3, 1) {
			l = append(l, c)
		}
	}
	return l
}

// line sets the numbers of rounds at the largest height at which all find room, or else at
// the smallest, in a line as straight as can be; none where they cannot stand so. missing are
// the rounds without any white.
func (a *artist) line(f *finder, cs []*course) (texts []*scene.Text, alongs []float64, missing []*course) {
	for _, h := range figureHeights {
		if texts, alongs, missing = a.lineOf(f, cs, a.o.enlarged(h)); texts != nil && len(missing) == 0 {
			break
		}
	}
	return texts, alongs, missing
}

// lineOf is the line of numbers of one height.
func (a *artist) lineOf(f *finder, all []*course, h float64) (texts []*scene.Text, alongs []float64, missing []*course) {
	var stands [][]berth
	var cs []*course
	for _, c := range all {
		if l := a.stands(f, c, h); len(l) > 0 {
			stands, cs = append(stands, l), append(cs, c)
		} else {
			missing = append(missing, c)
		}
	}
	if len(cs) == 0 {
		return nil, nil, missing
	}
	from := make([][]int, len(cs)) // the place of the number before
	for k := range cs {
		from[k] = make([]int, len(stands[k]))
		if k == 0 {
			continue
		}
		free := false
		for i := range stands[k] {
			s, best := &stands[k][i], math.Inf(1)
			for j, t := range stands[k-1] {
				cost := t.cost + math.Abs(s.along-t.along)
				if side(s.along)*side(t.along) < 0 {
					cost += turnCost
				}
				if cost < best && !s.box.meets(t.box) {
					best, from[k][i] = cost, j
				}
			}
			s.cost += best
			free = free || best < math.Inf(1)
		}
		if !free {
			return nil, nil, missing
		}
	}
	at, best := 0, math.Inf(1)
	for i, s := range stands[len(cs)-1] {
		if s.cost < best {
			at, best = i, s.cost
		}
	}
	texts, alongs = make([]*scene.Text, len(cs)), make([]float64, len(cs))
	var taken []box
	for k := len(cs) - 1; k >= 0; k-- {
		s := stands[k][at]
		for _, b := range taken {
			if b.meets(s.box) {
				return nil, nil, missing
			}
		}
		taken = append(taken, s.box)
		texts[k], alongs[k] = a.numberAt(cs[k], s.at, h), s.along
		at = from[k][at]
	}
	return texts, alongs, missing
}

// stands are the places for a round's number near its beginning, the nearest ones.
func (a *artist) stands(f *finder, c *course, h float64) (l []berth) {
	inner, outer := a.seamBand(c)
	mid := (inner + outer) / 2
	wide, reach := a.numberRoom(c, h)
	rise := math.Max(math.Abs(outer-inner)/2+0.1, 0.3)
	search(reach, rise, func(s spot) bool {
		r := mid + s.up
		p := a.shape.At(c.seam-s.along/a.mmAt(r), r)
		at := canvas.Point{X: a.centre.X + p.X, Y: a.centre.Y + p.Y}
		b := box{at.X - wide/2, at.Y - h/2, at.X + wide/2, at.Y + h/2}
		if f.free(b.grown(numberAir)) {
			l = append(l, berth{s.along, at, b.grown(numberAir / 2), standShare * s.cost})
		}
		return len(l) == mostStands
	})
	return l
}

// numberRoom is how wide a round's number is, and how far from its beginning it may stand.
func (a *artist) numberRoom(c *course, h float64) (wide, reach float64) {
	inner, outer := a.seamBand(c)
	pitch := ring.Turn * (inner + outer) / 2 / float64(len(c.order))
	wide = typeface.Width(strconv.Itoa(c.round.Number), h/typeface.CapHeight(1), true, false)
	if a.window > 0 {
		return wide, 12 // past what lies beside the wedge
	}
	return wide, math.Min(1.6*pitch, 8) + wide/2
}

// numberAt is a round's number about a point.
func (a *artist) numberAt(c *course, at canvas.Point, h float64) *scene.Text {
	return &scene.Text{X: hundredth(at.X), Y: hundredth(at.Y + h/2), Size: hundredth(h / typeface.CapHeight(1)), Bold: true,
		Align: scene.Centre, Colour: *a.colourOf(c.index - a.lo), String: strconv.Itoa(c.round.Number)}
}
