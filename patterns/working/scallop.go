package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// scallopBehind reports whether the n stitches that a row leaves behind it all hang in a loop of
// chains that was closed at the edge, in the row before the one below: the scallop of an edging,
// which the row that turns before it is not to go along.
func (w *roundWork) scallopBehind(n int) bool {
	if !w.r.Row || !w.hand.turned || !w.begun || w.c.index < 1 || w.remaining(n+1) != n {
		return false
	}
	below := w.part.Rounds[w.c.index-1]
	hangs := false
	for i := range w.c.spots {
		s := &w.c.spots[i]
		if !s.counts || s.use != unused || s.optional {
			continue
		}
		if s.st.Kind == stitch.Of(stitch.Slip) {
			continue
		}
		if len(s.st.On) != 1 || s.st.On[0].Into != stitch.Space || s.st.On[0].At.Round != w.c.index-1 || !closedAtEdge(below, s.st.On[0].Last.Stitch) {
			return false
		}
		hangs = true
	}
	return hangs
}

// closedAtEdge reports whether nothing but a slip stitch comes behind a chain of a row, down in an
// older row.
func closedAtEdge(r *fabric.Round, chain int) bool {
	if chain < 0 || chain != len(r.Stitches)-2 {
		return false
	}
	last := &r.Stitches[chain+1]
	return last.Kind == stitch.Of(stitch.Slip) && len(last.On) == 1
}
