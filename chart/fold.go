package chart

import (
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// foldOf is how many times a round, with all it stands on, comes to the same
// again in one turn: the fold symmetry of the pattern itself.
func (w *work) foldOf(c *course) int {
	n := len(c.order)
	below, ok := w.foldBelow(c)
	if !ok {
		return 1
	}
	g := gcd(n, below)
	for _, f := range []int{g, gcd(g, len(c.round.Repeats))} {
		if f > 1 && w.repeats(c, f) {
			return f
		}
	}
	return 1
}

// foldBelow is the common fold of every round that the round stands on; 0, which
// every number divides, for the centre. It is false for edges.
func (w *work) foldBelow(c *course) (int, bool) {
	f := 0
	for _, i := range c.order {
		for _, p := range c.round.Stitches[i].On {
			if p.Into == stitch.Ring || p.At.Round == c.index {
				continue
			}
			d := w.at(p.At)
			if p.Into == stitch.RowEnd || d == nil || d.loose {
				return 0, false
			}
			f = gcd(f, d.fold)
		}
		if f == 1 {
			break
		}
	}
	return f, true
}

// repeats reports whether a turn by 1/f of the round maps it onto itself, and where its
// stitches are worked together later.
func (w *work) repeats(c *course, f int) bool {
	n := len(c.order)
	shift := n / f
	for k := range c.order {
		a := &c.round.Stitches[c.order[k]]
		b := &c.round.Stitches[c.order[(k+shift)%n]]
		if a.Counted() != b.Counted() || c.meeting[k] != c.meeting[(k+shift)%n] {
			return false
		}
		if a.Role == fabric.FirstHalf || b.Role == fabric.FirstHalf {
			continue
		}
		if len(a.On) != len(b.On) {
			return false
		}
		for j := range a.On {
			if !w.shifted(a.On[j], b.On[j], f) {
				return false
			}
		}
	}
	return true
}

// shifted reports whether place q is place p turned by 1/f of its round.
func (w *work) shifted(p, q fabric.Place, f int) bool {
	if p.Into != q.Into {
		return false
	}
	c := w.at(p.At)
	if p.At.Round != q.At.Round || c == nil || c.hub {
		return p.At.Round == q.At.Round
	}
	d := w.at(q.At)
	if d == nil || len(c.order)%f != 0 {
		return false
	}
	a, b := c.rank[p.At.Stitch], c.rank[q.At.Stitch]
	return a >= 0 && b >= 0 && (a+len(c.order)/f)%len(c.order) == b
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
