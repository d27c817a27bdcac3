package chart

import (
	"math"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// isHub reports whether the part's first round is the centre of the second.
func (w *work) isHub(c *course) bool {
	if c.round.About != "" {
		return false // an edge
	}
	if c.round.Ring && len(c.round.Stitches) == 0 {
		return true
	}
	if len(w.courses) < 2 || !isFoundation(c.round) {
		return false
	}
	var at fabric.Ref
	n := 0
	for i := range w.courses[1].round.Stitches {
		s := &w.courses[1].round.Stitches[i]
		if s.Role == fabric.Join || s.Role == fabric.Start {
			continue
		}
		for _, p := range s.On {
			switch {
			case p.Into == stitch.Ring:
				return true
			case n > 0 && p.At != at:
				return false
			}
			at = p.At
			n++
		}
	}
	return n > 2
}

// ground reports whether a course is what the first round stands on, and no round itself.
func (c *course) ground() bool { return c.hub || c.loose || c.round.About != "" }

// isFoundation reports whether a round is only chains (and their joining).
func isFoundation(r *fabric.Round) bool {
	for i := range r.Stitches {
		s := &r.Stitches[i]
		if s.Role == fabric.Worked && !(s.IsChain() && len(s.On) == 0) {
			return false
		}
	}
	return true
}

// isLoose reports whether a round is a chain that is not joined.
func isLoose(r *fabric.Round) bool {
	return isFoundation(r) && !r.Ring && r.Closing == fabric.Open
}

// layLoose lays the places of an unjoined chain round the turn in the order in
// which the next round uses them, each side of the chain apart.
func (w *work) layLoose(c *course) {
	if w.oval != nil {
		w.layOval()
		c.settle(w)
		return
	}
	next := w.courses[1]
	var keys []int
	for _, i := range next.rising() {
		for _, p := range next.round.Stitches[i].On {
			if k := w.key(p); k != 0 && p.At.Round == 0 && (len(keys) == 0 || keys[len(keys)-1] != k) {
				keys = append(keys, k)
			}
		}
	}
	for i := len(keys) - 1; i >= 0; i-- { // the first use wins
		w.edge[keys[i]] = (float64(i) + 0.5) * ring.Turn / float64(len(keys))
	}
	c.settle(w)
}

// settle gives the chains of an unjoined foundation the angles of their places.
func (c *course) settle(w *work) {
	c.fold = 1
	for i := range c.theta {
		c.rank[i] = -1
		c.theta[i] = math.NaN()
		if a, ok := w.edge[w.key(fabric.Place{At: fabric.Ref{Stitch: i}})]; ok {
			c.theta[i] = a
		}
	}
	c.fill()
}

// fill gives the stitches without an angle that of the one before.
func (c *course) fill() {
	last := 0.0
	for i, a := range c.theta {
		if math.IsNaN(a) {
			c.theta[i] = last
		}
		last = c.theta[i]
	}
}

// layEdge lays the row ends that a round is picked up on round the turn, in the
// order of use, as far apart as the rows between them say, and among them the stitches
// of another piece that it goes on over.
func (w *work) layEdge(c *course) {
	type end struct{ key, part, row int }
	var ends []end
	_, rows := c.onEnds()
	for _, i := range c.rising() {
		if !c.takesRoom(i) {
			continue
		}
		for _, p := range c.round.Stitches[i].On {
			e := end{w.key(p), p.Part, p.At.Round}
			switch {
			case p.Into == stitch.RowEnd:
			case rows && p.At.Round == 0 && w.courses[0].round.Carried:
				e.part, e.row = -1, p.At.Stitch
			default:
				continue
			}
			if _, ok := w.edge[e.key]; !ok && (len(ends) == 0 || ends[len(ends)-1] != e) {
				ends = append(ends, e)
			}
		}
	}
	if len(ends) == 0 {
		return
	}
	at := make([]float64, len(ends))
	for i := 1; i < len(ends); i++ {
		d := 1
		if ends[i].part == ends[i-1].part {
			d = max(1, abs(ends[i].row-ends[i-1].row))
		}
		at[i] = at[i-1] + float64(d)
	}
	span := at[len(at)-1]
	whole := math.Max(float64(c.round.Edge), span+1)
	for i := len(ends) - 1; i >= 0; i-- {
		w.edge[ends[i].key] = (at[i] + (whole-span)/2) * ring.Turn / whole
	}
}

// onEnds is the part whose row ends stitches of a course are worked into; false where
// none is worked into any.
func (c *course) onEnds() (part int, ok bool) {
	for i := range c.round.Stitches {
		for _, p := range c.round.Stitches[i].On {
			if p.Into == stitch.RowEnd {
				return p.Part, true
			}
		}
	}
	return 0, false
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
