package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// The rounds of an oval in which stitches are worked together, as those of a bootie over its
// toe, come to rest all at once: what is left of the toe comes together over several rounds,
// those before the decreases among them, and the sides and the heel give way little by little.
const (
	restStiff  = 0.3  // what an uneven gap costs against a leg that leans by as large a share
	restClose  = 0.85 // of its width, which a stitch has at least
	restPasses = 400
	restMoves  = 1e-3 // of a stitch's height, in a pass, at which they have come to rest
)

// rest is a run of rounds coming to rest on a stadium in the fabric.
type rest struct {
	w      *work
	run    []*course
	radii  []float64 // of each, mm of fabric
	oval   ring.Stadium
	above  []map[int][]int // what stands on a stitch, in the next round of the run
	height float64
}

// restOval lets them come to rest, and lays what stands on them anew.
func (w *work) restOval() {
	if w.oval == nil || w.rows {
		return
	}
	for from := 2; from < len(w.courses); from++ {
		to, first := from, -1 // the first round in which stitches are worked together
		for ; to < len(w.courses) && w.plainLegs(w.courses[to]); to++ {
			if first < 0 && w.worksTogether(w.courses[to]) {
				first = to
			}
		}
		if first >= 0 {
			// Up to the last increases before it rounds fill the stadium.
			for c := first - 1; c >= from; c-- {
				if w.increases(w.courses[c]) {
					from = c + 1
				}
			}
			w.newRest(from, to).settle()
			for _, c := range w.courses[to:] {
				c.order = c.order[:0]
				w.layEdge(c)
				w.lay(c)
			}
		}
		from = to
	}
}

// plainLegs reports whether all that takes room in a round stands on stitches of rounds
// before, with no chains and spaces among them.
func (w *work) plainLegs(c *course) bool {
	for _, i := range c.order {
		s := &c.round.Stitches[i]
		if len(s.On) == 0 || s.Role == fabric.Join || s.Role == fabric.FirstHalf {
			return false
		}
		for _, p := range s.On {
			if _, ok := w.angle(p); !ok || p.At.Round == c.index || p.Into == stitch.Space || p.Into == stitch.RowEnd {
				return false
			}
		}
	}
	return len(c.order) > 3
}

// worksTogether reports whether a stitch of a round stands on several.
func (w *work) worksTogether(c *course) bool {
	for _, i := range c.order {
		if on := c.round.Stitches[i].On; len(on) > 1 && w.key(on[0]) != w.key(on[len(on)-1]) {
			return true
		}
	}
	return false
}

// increases reports whether stitches of a round stand together.
func (w *work) increases(c *course) bool {
	for k, i := range c.order {
		if w.together(c, i, c.order[(k+1)%len(c.order)]) {
			return true
		}
	}
	return false
}

func (w *work) newRest(from, to int) *rest {
	r := &rest{w: w, run: w.courses[from:to], oval: ring.Stadium{Long: w.oval.long, Side: w.oval.side}}
	out := 0.0
	for _, c := range w.courses[1:to] {
		out = math.Max(out+c.form.Height, (c.form.Circumference-2*w.oval.long)/ring.Turn)
		if c.index >= from {
			r.radii = append(r.radii, out)
			r.height += c.form.Height / float64(to-from)
		}
	}
	for k := range r.run {
		above := map[int][]int{}
		if k+1 < len(r.run) {
			for _, i := range r.run[k+1].order {
				for _, p := range r.run[k+1].round.Stitches[i].On {
					if p.At.Round == r.run[k].index {
						above[p.At.Stitch] = append(above[p.At.Stitch], i)
					}
				}
			}
		}
		r.above = append(r.above, above)
	}
	return r
}

// settle moves every stitch in turn to where its legs, those on it and its neighbours draw
// it, until none moves.
func (r *rest) settle() {
	for pass, moved := 0, math.Inf(1); pass < restPasses && moved > restMoves*r.height; pass++ {
		moved = 0
		for k := range r.run {
			moved = math.Max(moved, r.pass(k))
		}
	}
	for _, c := range r.run {
		w := r.w
		c.rests = true
		across := c.theta[c.order[0]] + ring.Turn - c.theta[c.order[len(c.order)-1]]
		c.seam = c.theta[c.order[0]] - across/2
		c.laySmall(across)
		w.layTravel(c)
		c.fold = w.foldOf(c)
	}
}

// pass moves the stitches of one round, and is how far the farthest went.
func (r *rest) pass(k int) (moved float64) {
	c, out := r.run[k], r.radii[k]
	n := len(c.order)
	around := r.oval.Length(ring.Turn, out) - r.oval.Length(0, out)
	at := make([]float64, n) // along the round, mm of fabric
	sum := 0.0
	for j, i := range c.order {
		at[j] = r.oval.Length(c.theta[i], out)
		sum += c.form.Widths[i]
	}
	times := around / sum
	gap := func(j int) float64 { // before a stitch
		i, before := c.order[j], c.order[(j+n-1)%n]
		return (c.form.Widths[i] + c.form.Widths[before]) / 2
	}
	// near is the place along the round, by the turns nearest a stitch, of an angle.
	near := func(j int, angle float64) float64 {
		return at[j] + math.Remainder(r.oval.Length(angle, out)-at[j], around)
	}
	least := make([]float64, n)
	for j, i := range c.order {
		was := at[j]
		goal, by := 0.0, 0.0
		leg := func(angle, tall float64) {
			to := near(j, angle)
			lean := (to - was) / tall
			pull := (1 + 1*lean*lean) / (tall * tall)
			goal, by = goal+pull*to, by+pull
		}
		for _, p := range c.round.Stitches[i].On {
			if a, ok := r.w.angle(p); ok {
				leg(a, c.form.Height)
			}
		}
		for _, up := range r.above[k][i] {
			leg(r.run[k+1].theta[up], r.run[k+1].form.Height)
		}
		before, after := at[(j+n-1)%n], at[(j+1)%n]
		if j == 0 {
			before -= around
		}
		if j == n-1 {
			after += around
		}
		for _, side := range [...]struct{ to, gap float64 }{{before + times*gap(j), gap(j)}, {after - times*gap((j+1)%n), gap((j + 1) % n)}} {
			pull := restStiff / math.Pow(times*side.gap, 2)
			goal, by = goal+pull*side.to, by+pull
		}
		at[j] += (goal/by - was) / 2
		moved = math.Max(moved, math.Abs(at[j]-was))
		least[j] = restClose * gap((j+1)%n) * ring.Turn / around
	}
	for j := range at {
		at[j] *= ring.Turn / around
	}
	ring.Spread(at, least)
	for j, i := range c.order {
		c.theta[i] = r.oval.Angle(at[j]*around/ring.Turn, out)
	}
	return moved
}

// toeSteep is what a leg over a toe rises at least by, as a share of what it goes along its
// round; mostToe is how many times as high a round becomes for that at most.
const toeSteep, mostToe = 2.8, 1.8

// overToes finds how far the rounds of an oval that come to rest must rise that no leg lies
// down; false where that is as far as they were.
func (w *work) overToes() bool {
	if w.oval == nil || w.rows || w.window > 0 {
		return false
	}
	any := false
	for _, c := range w.courses[w.lo+1 : w.last+1] {
		if !c.rests {
			continue
		}
		lean := 0.0
		for _, i := range c.order {
			foot := canvas.Point{}
			on := c.round.Stitches[i].On
			for _, p := range on {
				at, _ := w.foot(c, i, p)
				foot = foot.Add(at.Mul(1 / float64(len(on))))
			}
			along, _ := w.frame(c, c.theta[i], c.radius[i])
			lean = math.Max(lean, math.Abs(w.top(c, i).Sub(foot).Dot(along)))
		}
		rise := math.Min(toeSteep*lean, mostToe*w.radii.Scale*c.form.Height)
		any = any || math.Abs(rise-c.legs) > 0.1
		c.legs = rise
	}
	return any
}
