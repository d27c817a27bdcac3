package chart

import (
	"math"
	"slices"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// A loop of chains whose feet are near one another stands out as an arch, and needs no
// more room along its round than they do.

const (
	mostChains = 20   // in the longest
	archChains = 3    // in the shortest loop that arches
	chainPitch = 0.72 // units, from chain to chain where they lie close
	archAside  = 0.3  // units, from the top of the stitch at either end
	steepArch  = 1.25 // of an arch's height to its chord, at most
	gentleArch = 0.2  // likewise, where fans stand on it
	mostArch   = 2.0  // units, of an arch's height
	leastWide  = 0.36 // units, of a loop for each stitch in it, to arch
)

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

// arch sets the loops of a round on a ring in arches between the tops of the stitches that
// they hang between: chains lie close where there is room to, and are as far apart as
// they must where the stitches are.
func (w *work) arch(c *course) {
	c.pitch = nil
	if !w.ringed() || !c.arched() {
		return
	}
	flat := w.flatness(c)
	if flat == 0 {
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
		if flat < steepArch {
			aside *= 1.7 // what stands along it leans the less
		}
		wide -= 2 * aside
		if wide <= 0 {
			return
		}
		chord := math.Hypot(wide, y1-y0)
		length := float64(len(run)) * chainPitch * w.unit
		if flat < steepArch && chord > length {
			return // nothing to spare
		}
		spots, long := arc(chord, length, math.Min(mostArch*w.unit, flat*chord), w.unit/2, len(run))
		for k, i := range run {
			share := spots[k].x / chord
			a := from + (aside+share*wide)/mean
			c.theta[i] += math.Remainder(a-c.theta[i], ring.Turn)
			c.radius[i] = (y0 + (y1-y0)*share + spots[k].y) * up
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

// standingOn is how many stitches stand in the space of a loop, and whether any stands on
// one of its chains.
func (w *work) standingOn(c *course, run []int) (inSpace int, onChains bool) {
	if w.on == nil {
		w.on = map[fabric.Place]int{}
		for _, d := range w.courses {
			for i := range d.round.Stitches {
				for _, p := range d.round.Stitches[i].On {
					p.Last = fabric.Ref{}
					if p.Into != stitch.Space {
						p = fabric.Place{At: p.At}
					}
					w.on[p]++
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

// flatness says how the loops of a round lie: no arch of them is higher than so much of
// its chord.
func (w *work) flatness(c *course) float64 {
	most := steepArch
	c.loops(func(before int, run []int, after int) {
		n, ones := w.standingOn(c, run)
		wide := (above(c.theta[after], c.theta[before]) - c.theta[before]) * (c.radius[before] + c.radius[after]) / 2
		crowded := n >= manyIn && len(run) >= longLoop && wide < leastWide*w.unit*float64(n)
		switch {
		case ones, crowded:
			most = 0
		case n >= manyIn && len(run) >= longLoop:
			most = math.Min(most, gentleArch)
		}
	})
	return most
}

// spotOn is a place on an arch, from its left end.
type spotOn struct{ x, y float64 }

// arc is n places in the middles of equal parts of an arch of a length over a chord: an
// arc of a circle up to half of one, half an ellipse beyond that, which is no steeper
// than steepArch and no higher than so much, and nearly straight where the chord is as long;
// and the length that it comes to.
func arc(chord, length, most, least float64, n int) ([]spotOn, float64) {
	half := chord / 2
	least = math.Min(math.Min(least, most), 0.15*chord)
	x, y := func(t float64) float64 { return half * (1 - math.Cos(t)) }, func(t float64) float64 { return 0 }
	switch {
	case length <= math.Pi*half || most <= half:
		// Half its angle, whose sine is the half chord over the radius.
		low, high := 2*math.Atan(least/half), 2*math.Atan(math.Min(most, half)/half)
		for range 40 {
			if mid := (low + high) / 2; math.Sin(mid)/mid > chord/length {
				low = mid
			} else {
				high = mid
			}
		}
		r := half / math.Sin(low)
		x = func(t float64) float64 { return half - r*math.Sin(low*(1-2*t/math.Pi)) }
		y = func(t float64) float64 { return r*math.Cos(low*(1-2*t/math.Pi)) - r*math.Cos(low) }
	default:
		low, high := half, most
		for range 40 {
			if mid := (low + high) / 2; halfEllipse(half, mid) < length {
				low = mid
			} else {
				high = mid
			}
		}
		y = func(t float64) float64 { return low * math.Sin(t) }
	}
	const steps = 200
	long := make([]float64, steps+1)
	for k := 1; k <= steps; k++ {
		a, b := math.Pi*float64(k-1)/steps, math.Pi*float64(k)/steps
		long[k] = long[k-1] + math.Hypot(x(b)-x(a), y(b)-y(a))
	}
	spots := make([]spotOn, n)
	k := 0
	for j := range spots {
		goal := long[steps] * (float64(j) + 0.5) / float64(n)
		for k < steps-1 && long[k+1] < goal {
			k++
		}
		t := math.Pi * (float64(k) + (goal-long[k])/math.Max(long[k+1]-long[k], 1e-9)) / steps
		spots[j] = spotOn{x(t), y(t)}
	}
	return spots, long[steps]
}

// halfEllipse is half the circumference of an ellipse by its half axes (Ramanujan's first
// approximation, 1914).
func halfEllipse(a, b float64) float64 {
	return math.Pi / 2 * (3*(a+b) - math.Sqrt((3*a+b)*(a+3*b)))
}
