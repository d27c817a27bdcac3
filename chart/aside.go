package chart

import (
	"math"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// asideShare is how far a stitch steps aside for one that is worked over it, as a share
// of the way to its neighbour.
const asideShare = 0.36

// Where a hook leans by hookLean of what its leg does, at the height of what is behind it,
// that steps aside by no more than mostAsideShare.
const hookLean, mostAsideShare = 0.3, 0.7

// worked is a stitch that is worked past the round below it, over what stands on its foot.
type worked struct {
	c    *course
	i    int
	foot fabric.Ref
	into stitch.Into
}

// stepAside moves the stitches that others, of later rounds and in the same place, are
// worked over and that nothing else stands on: a front post stitch around the one two rounds
// below leaves a stitch behind it, which would lie under it, and a spike stitch as many as
// it is deep. They move to the left, or to the right where a hook bulges to the left.
func (w *work) stepAside() {
	above := map[fabric.Ref][]fabric.Ref{} // what stands on each
	for _, c := range w.courses {
		for i := range c.round.Stitches {
			if !w.stands(c, i) || c.round.Stitches[i].Role == fabric.Start {
				continue // a dot or a chain beside it
			}
			for _, p := range c.round.Stitches[i].On {
				above[p.At] = append(above[p.At], fabric.Ref{Round: c.index, Stitch: i})
			}
		}
	}
	moved := map[fabric.Ref]float64{}
	for _, c := range w.courses[1:] {
		for _, i := range c.order {
			s := &c.round.Stitches[i]
			if len(s.On) != 1 || s.On[0].At.Round >= c.index-1 {
				continue
			}
			o := worked{c, i, s.On[0].At, shown(s.On[0].Into, c.round)}
			if o.into == stitch.FrontPost || o.into == stitch.BackPost || s.Kind.Manner&stitch.Spike != 0 {
				w.under(o, o.foot, above, moved)
			}
		}
	}
	for _, c := range w.courses {
		for _, j := range c.order {
			c.theta[j] += moved[fabric.Ref{Round: c.index, Stitch: j}]
		}
	}
}

// under finds how far what stands on a place, and is left behind a stitch worked over it,
// steps aside. It is false where other stitches stand on some of that, which stays.
func (w *work) under(o worked, at fabric.Ref, above map[fabric.Ref][]fabric.Ref, moved map[fabric.Ref]float64) bool {
	free := true
	for _, r := range above[at] {
		if r.Round >= o.c.index {
			if r.Round > o.c.index || at != o.foot {
				free = false
			}
			continue
		}
		c := w.courses[r.Round]
		if len(c.round.Stitches[r.Stitch].On) != 1 || c.rank[r.Stitch] < 0 || len(c.order) < 3 || !w.under(o, r, above, moved) {
			free = false
			continue
		}
		moved[r] = w.aside(o, c, r.Stitch)
		c.fold = gcd(c.fold, o.c.fold)
	}
	return free
}

// aside is how far stitch j of c steps aside for one worked over it: farther where both lean
// to that side, so that it stays clear of a hook.
func (w *work) aside(o worked, c *course, j int) float64 {
	side := 1 // a step to the left, by rising angle
	if left := o.into != stitch.BackPost; left == w.toTheRight() {
		side = len(c.order) - 1
	}
	gap := c.gap(c.rank[j], side)
	step := asideShare * gap
	foot, ok := w.angle(fabric.Place{At: o.foot})
	if !ok || o.into != stitch.FrontPost && o.into != stitch.BackPost {
		return step
	}
	turn := func(a float64) float64 {
		if c.open {
			return a - foot
		}
		return math.Remainder(a-foot, ring.Turn)
	}
	hook := hookLean * turn(o.c.theta[o.i])
	if behind := (turn(c.theta[j]) - hook) / gap; behind < 0 {
		step += math.Min(-behind, mostAsideShare-asideShare) * gap
	}
	return step
}

// toTheRight reports whether angles rise to the right, seen with the round below at the foot.
func (w *work) toTheRight() bool {
	if w.rows {
		return !w.leftwards(false)
	}
	return w.o.LeftHanded != (!w.panel && w.closesIn())
}

// gap is the angle from the stitch of a rank to its neighbour, 1 or n-1 ranks on; that to
// the other one, turned round, where the course ends.
func (c *course) gap(rank, on int) float64 {
	n := len(c.order)
	to := (rank + on) % n
	d := c.theta[c.order[to]] - c.theta[c.order[rank]]
	switch ends := on == 1 && to == 0 || on > 1 && rank == 0; {
	case ends && c.open && on == 1:
		return c.theta[c.order[n-1]] - c.theta[c.order[n-2]]
	case ends && c.open:
		return c.theta[c.order[0]] - c.theta[c.order[1]]
	case ends && on == 1:
		return d + ring.Turn
	case ends:
		return d - ring.Turn
	}
	return d
}
