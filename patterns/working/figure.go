package working

import "whorl/patterns/notation"

// insideFigure is the next space, from the one found on, that lies inside a figure of
// several rounds such as a pineapple: "sc in first ch-3 lp of pineapple" passes the loop
// on the way to it. It is the one found when there is none.
func (w *roundWork) insideFigure(targets []notation.Target, at, run int) (int, int) {
	pos := w.pos
	defer func() { w.pos = pos }()
	for a, r := at, run; a >= 0 && r > 0; a, r = w.nearest(targets) {
		if w.c.amongLike(r - 1) {
			return a, r
		}
		w.pos = w.c.runs[r-1].To
	}
	return at, run
}

// amongLike reports whether the stitches on both sides of a space are of one kind, and
// none belongs to a group that the other is no part of.
func (c *course) amongLike(k int) bool {
	n, r := len(c.spots), c.runs[k]
	before, after := (r.From+n-1)%n, r.To%n
	a, b := &c.spots[before], &c.spots[after]
	if a.run > 0 || b.run > 0 || a.st.Counted() != b.st.Counted() {
		return false
	}
	for _, g := range c.groups {
		if in := g.From <= before && before < g.To; in != (g.From <= after && after < g.To) && g.To-g.From > 2 {
			return false
		}
	}
	return true
}
