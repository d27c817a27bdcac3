package chart

import (
	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// asideShare is how far a stitch steps aside for one that is worked over it, as a share
// of the way to its neighbour.
const asideShare = 0.36

// stepAside moves the stitches that others, of later rounds and in the same place, are
// worked over and that nothing stands on: a front post stitch around the one two rounds
// below leaves a stitch behind it, which would lie under it. They move to the left, or to
// the right where a hook bulges to the left.
func (w *work) stepAside() {
	held := map[fabric.Ref]bool{}
	for _, c := range w.courses {
		for i := range c.round.Stitches {
			if !w.stands(c, i) || c.round.Stitches[i].Role == fabric.Start {
				continue // a dot or a chain beside it
			}
			for _, p := range c.round.Stitches[i].On {
				held[p.At] = true
			}
		}
	}
	var aside []func()
	for _, c := range w.courses[1:] {
		under := w.courses[c.index-1]
		over := map[fabric.Ref]stitch.Into{} // how post stitches of c go round those past the round below
		for _, i := range c.order {
			on := c.round.Stitches[i].On
			if len(on) != 1 || on[0].At.Round >= under.index {
				continue
			}
			if into := shown(on[0].Into, c.round); into == stitch.FrontPost || into == stitch.BackPost {
				over[on[0].At] = into
			}
		}
		n := len(under.order)
		for k, j := range under.order {
			on := under.round.Stitches[j].On
			if len(on) != 1 || held[fabric.Ref{Round: under.index, Stitch: j}] || n < 3 {
				continue
			}
			into, ok := over[on[0].At]
			if !ok {
				continue
			}
			side := 1 // a step to the left, by rising angle
			if left := into != stitch.BackPost; left == w.toTheRight() {
				side = n - 1
			}
			gap := under.gap(k, side)
			aside = append(aside, func() { under.theta[j] += asideShare * gap })
		}
	}
	for _, move := range aside {
		move()
	}
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
