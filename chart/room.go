package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// footWidth is the distance from what stitch i stands on to the nearest other place
// that a neighbour stands on; 0 where there is none.
func (d *roundArtist) footWidth(i int, feet []canvas.Point) float64 {
	c := d.c
	n := len(c.order)
	if c.rank[i] < 0 || n < 2 {
		return 0
	}
	least := math.Inf(1)
	for _, step := range [...]int{1, n - 1} {
		others, _ := d.feet(c, c.order[(c.rank[i]+step)%n])
		for _, q := range others {
			for _, f := range feet {
				if gap := q.Sub(f).Length(); gap > 0.05 {
					least = math.Min(least, gap)
				}
			}
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// shares reports whether a neighbour of stitch i stands in the same place.
func (d *roundArtist) shares(i int) bool {
	c := d.c
	n := len(c.order)
	if _, own := c.strung[i]; own || c.rank[i] < 0 || n < 2 {
		return false
	}
	for _, step := range [...]int{1, n - 1} {
		k := (c.rank[i] + step) % n
		for tries := 0; tries < n && len(c.round.Stitches[c.order[k]].On) == 0; tries++ {
			k = (k + step) % n
		}
		if c.order[k] == i {
			continue
		}
		for _, p := range c.round.Stitches[i].On {
			for _, q := range c.round.Stitches[c.order[k]].On {
				if key := d.key(p); (key != 0 || d.flat && p.Into == stitch.Ring) && key == d.key(q) {
					return true
				}
			}
		}
	}
	return false
}

// neighbours are this round, those below and above it, and the next where stitches of it
// reach down here.
func (d *roundArtist) neighbours() (rounds []*roundArtist) {
	for _, r := range []*roundArtist{d.below, d, d.above} {
		if r != nil {
			rounds = append(rounds, r)
		}
	}
	if d.above == nil {
		return rounds
	}
	behind := map[int]bool{d.above.c.index: d.above.standsBehind(d.c.index, nil)}
	for r, n := d.above.above, 0; r != nil && n < beneath; r, n = r.above, n+1 {
		if r.standsBehind(d.c.index+1, behind) {
			behind[r.c.index] = true
			rounds = append(rounds, r)
		}
	}
	return rounds
}

// standsBehind reports whether some of a round is worked on rounds before the one of an
// index, or on others of which some is.
func (d *roundArtist) standsBehind(index int, others map[int]bool) bool {
	for i := range d.c.round.Stitches {
		for _, p := range d.c.round.Stitches[i].On {
			if p.Into != stitch.Ring && p.Into != stitch.RowEnd && p.At.Round != d.c.index && (p.At.Round < index || others[p.At.Round]) {
				return true
			}
		}
	}
	return false
}

// again reports whether the stitch before i stands in the same one place.
func (d *roundArtist) again(i int) bool {
	on := d.c.round.Stitches[i].On
	if i == 0 || len(on) != 1 || d.c.round.Stitches[i-1].Role != fabric.Worked {
		return false
	}
	before := d.c.round.Stitches[i-1].On
	return len(before) == 1 && d.key(before[0]) == d.key(on[0])
}

// onHook is how many stitches before stitch i go round the same post in the same way, with
// the side of it that they are on as [symbols.Anchors] has it; 0 for none.
func (d *roundArtist) onHook(i int, in stitch.Into, an symbols.Anchors) int {
	if in != stitch.FrontPost && in != stitch.BackPost {
		return 0
	}
	n := 0
	for j := i; d.again(j) && shown(d.c.round.Stitches[j-1].On[0].Into, d.c.round) == in; j-- {
		n++
	}
	if n > 0 && an.Top.Sub(d.top(d.c, i-1)).Dot(an.Up.Rot90CCW()) < 0 {
		return -n
	}
	return n
}

// A hook is moved by mostAside units, and no more than asideMM, off its place.
const mostAside, asideMM = 0.3, 0.9

// hookAside is where the foot of stitch i is drawn: beside its place when that is a
// post round which its hook would lie over the leg of a neighbour in the same place.
func (d *roundArtist) hookAside(i int, in stitch.Into, an symbols.Anchors) []canvas.Point {
	hand := 1.0 // hooks bulge to the right for the front
	switch {
	case len(an.Base) != 1 || !an.Shared:
		return an.Base
	case in == stitch.BackPost:
		hand = -1
	case in != stitch.FrontPost:
		return an.Base
	}
	c, n := d.c, len(d.c.order)
	foot := an.Base[0]
	side := an.Top.Sub(foot).Rot90CCW().Norm(hand) // clockwise on the page, where y is down
	for _, step := range [...]int{1, n - 1} {
		j := c.order[(c.rank[i]+step)%n]
		on := c.round.Stitches[j].On
		if len(on) != 1 || on[0].Into == c.round.Stitches[i].On[0].Into || d.key(on[0]) != d.key(c.round.Stitches[i].On[0]) {
			continue
		}
		if d.top(c, j).Sub(an.Top).Dot(side) > 0 {
			return []canvas.Point{foot.Sub(side.Mul(math.Min(mostAside*d.unit, asideMM)))}
		}
	}
	return an.Base
}

// A hook is widest so far up from its place, in units, and so far out, or by the share
// of the room at its place that a symbol takes to each side.
const (
	hookUp, hookOut = 0.17, 0.26
	sideShare       = 0.44
	hookAir         = 0.1 // mm of white that a bar keeps off it
)

// barRoom is the room along the round that the bar of stitch i has beside the hooks of
// its neighbours, whose places lie as far out as its top where they are taller stitches:
// the width that it would have, or less.
func (d *roundArtist) barRoom(i int, top canvas.Point, width float64) float64 {
	c, n := d.c, len(d.c.order)
	if c.rank[i] < 0 || n < 2 {
		return width
	}
	along, up := d.frame(c, c.theta[i], c.radius[i])
	for _, step := range [...]int{1, n - 1} {
		j := c.order[(c.rank[i]+step)%n]
		feet, _ := d.feet(c, j)
		for k, p := range c.round.Stitches[j].On {
			hand := 1.0
			switch shown(p.Into, c.round) {
			case stitch.BackPost:
				hand = -1
			case stitch.FrontPost:
			default:
				continue
			}
			foot := feet[k]
			way := d.top(c, j).Sub(foot).Norm(1)
			out := math.Min(hookOut*d.unit, sideShare*d.footWidth(j, feet))
			hook := foot.Add(way.Mul(hookUp * d.unit)).Add(way.Rot90CCW().Mul(hand * out))
			for _, at := range [...]canvas.Point{foot, hook} {
				if off := at.Sub(top); math.Abs(off.Dot(up)) < hookOut*d.unit {
					room := math.Abs(off.Dot(along)) - d.pen.Line/2 - hookAir
					width = math.Min(width, math.Max(room, 0)/sideShare)
				}
			}
		}
	}
	return width
}
