package chart

import (
	"math"
	"slices"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// A loop of chains whose feet are near one another stands out as an arch, and needs no
// more room along its round than they do. How a round's loops hang tells both how much room
// they are given (looproom.go) and how high they stand in it.

const (
	archShare  = 2 / math.Pi // of a loop along its round, for the length of its chains: half a circle
	levelShare = 0.75        // likewise, of one that lies low
	tightShare = 0.5         // likewise, of a high one, for its symbols to be told apart
	steepLong  = 2.88        // how many times its chord the steepest arch is long
	gentleLong = 1.1         // likewise the highest of those in which much stands
	mostChains = 20          // in the longest
	archChains = 3           // in the shortest loop that arches
	chainPitch = 0.68        // units, from chain to chain where there is room for it
	tightPitch = 0.56        // likewise, where a loop would be higher than half a circle
	archAside  = 0.3         // units, from the top of the stitch at either end
	steepArch  = 1.25        // of an arch's height to its chord, at most
	gentleArch = 0.2         // likewise, where much stands in it
	mostArch   = 2.0         // units, of an arch's height
	leastWide  = 0.36        // units, of a loop for each stitch in it, to arch
)

// hang is how the loops of a round hang: high, where nothing or little stands in them, low
// where much does, or straight where stitches stand on their chains one by one.
type hang int

const (
	unknown hang = iota
	steep
	gentle
	straight
)

// share is how far along its round a loop reaches, for the length of its chains, and
// most how high it is for its chord, at most.
func (h hang) share() float64 {
	if h == steep {
		return archShare
	}
	return levelShare
}

func (h hang) most() float64 {
	switch h {
	case steep:
		return steepArch
	case gentle:
		return gentleArch
	}
	return 0
}

// long is how many times its chord a loop may be long.
func (h hang) long() float64 {
	switch h {
	case steep:
		return steepLong
	case gentle:
		return gentleLong
	}
	return 1
}

// hangs is how the loops of a round hang, all alike.
func (w *work) hangs(c *course) hang {
	if c.hang == unknown {
		c.hang = steep
		c.loops(func(_ int, run []int, _ int) {
			switch n, ones := w.standingOn(c, run); {
			case ones:
				c.hang = straight
			case n >= manyIn && len(run) >= longLoop:
				c.hang = max(c.hang, gentle)
			}
		})
	}
	return c.hang
}

// crowded reports whether a loop of a round has more in it than it has room for: it does
// not arch, as what stands in it needs the width.
func (w *work) crowded(c *course) bool {
	found := false
	c.loops(func(before int, run []int, after int) {
		n, _ := w.standingOn(c, run)
		wide := (above(c.theta[after], c.theta[before]) - c.theta[before]) * (c.radius[before] + c.radius[after]) / 2
		found = found || n >= manyIn && len(run) >= longLoop && wide < leastWide*w.unit*float64(n)
	})
	return found
}

// loops calls f for every loop of chains of a round, which hangs between the stitches
// before and after it in the order of angles, and may go on over the seam.
func (c *course) loops(f func(before int, run []int, after int)) {
	n := len(c.order)
	first := 0
	for first < n && c.isLoop(c.order[first]) {
		first++
	}
	if first == n {
		return // nothing that they could hang between
	}
	before := c.order[first]
	var run []int
	for k := 1; k <= n; k++ {
		if k == n-first && c.open {
			return
		}
		i := c.order[(first+k)%n]
		if c.isLoop(i) {
			run = append(run, i)
			continue
		}
		if len(run) > 0 {
			f(before, run, i)
		}
		before, run = i, nil
	}
}

// ringed reports whether rounds lie on a ring, with no corners and no waves,
// and have no loops as long as the handles of a bag.
func (w *work) ringed() bool {
	_, ok := w.shape.(ring.Circle)
	return ok && w.zigzag == nil && !w.rows && w.longest() <= mostChains
}

// longest is how many chains the longest loop of the drawn rounds has.
func (w *work) longest() int {
	if w.chains == nil {
		w.chains = make([]int, len(w.courses))
		for k, c := range w.courses {
			c.loops(func(_ int, run []int, _ int) { w.chains[k] = max(w.chains[k], len(run)) })
		}
	}
	return slices.Max(w.chains[w.lo : w.last+1])
}

// standingOn is how many stitches stand in the space of a loop, and whether any stands on
// one of its chains. What only passes over it on its way does not count.
func (w *work) standingOn(c *course, run []int) (inSpace int, onChains bool) {
	if w.on == nil {
		w.on = map[fabric.Place]int{}
		for _, d := range w.courses {
			for i := range d.round.Stitches {
				if !d.takesRoom(i) {
					continue
				}
				for _, p := range d.round.Stitches[i].On {
					at := fabric.Place{At: p.At}
					if p.Into == stitch.Space {
						at.Into = p.Into
					}
					w.on[at]++
				}
			}
		}
	}
	for _, i := range run {
		at := fabric.Ref{Round: c.index, Stitch: i}
		inSpace += w.on[fabric.Place{Into: stitch.Space, At: at}]
		onChains = onChains || len(run) > 1 && w.on[fabric.Place{At: at}] > 0
	}
	return inSpace, onChains
}

// arch sets the loops of a round on a ring in arches between the tops of the stitches that
// they hang between: chains lie close where there is room to, and are as far apart as
// they must where the stitches are.
func (w *work) arch(c *course) {
	c.pitch = nil
	if !w.ringed() || !c.arched() {
		return
	}
	hang := w.hangs(c)
	if hang == straight || w.crowded(c) {
		return
	}
	up := w.up()
	c.pitch = map[int]float64{}
	c.loops(func(before int, run []int, after int) {
		if len(run) < 2 && !(c.domed[before] && c.domed[after]) || !c.holdsArch(before) || !c.holdsArch(after) {
			return
		}
		from, to := c.theta[before], above(c.theta[after], c.theta[before])
		y0, y1 := c.radius[before]*up, c.radius[after]*up
		mean := math.Max((c.radius[before]+c.radius[after])/2, 0.5)
		wide := (to - from) * mean
		aside := math.Min(archAside*w.unit, wide/5)
		if hang == gentle {
			aside /= 2 // the wider a loop, the less what stands along it leans
		}
		wide -= 2 * aside
		if wide <= 0 {
			return
		}
		rise := y1 - y0
		chord := math.Hypot(wide, rise)
		n := float64(len(run)) * w.unit
		lean := rise
		if hang == gentle {
			if chord > n*chainPitch {
				return // nothing to spare
			}
			lean = 0 // low enough to be spaced as if its ends were level
		}
		length := math.Max(n*tightPitch, math.Min(n*chainPitch, chord/archShare))
		spots, long := ring.Arch(wide, lean, length, math.Min(mostArch*w.unit, hang.most()*chord), w.unit/2, len(run))
		for k, i := range run {
			a := from + (aside+spots[k].X)/mean
			c.theta[i] += math.Remainder(a-c.theta[i], ring.Turn)
			c.radius[i] = (y0 + spots[k].Y + (rise-lean)*spots[k].X/wide) * up
			c.pitch[i] = long / float64(len(run))
		}
	})
}

// holdsArch reports whether an arch may spring from a stitch: not from the top of a tall
// join, which is the middle of one, nor from a post behind what lies before it.
func (c *course) holdsArch(i int) bool {
	s := &c.round.Stitches[i]
	return s.Role != fabric.Join && (len(s.On) == 0 || s.On[0].Into != stitch.FrontPost && s.On[0].Into != stitch.BackPost)
}
