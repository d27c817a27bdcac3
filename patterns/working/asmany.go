package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// asMany is how as many stitches in as many places are read: "2 dc in next 2 sts".
type asMany uint8

const (
	unread    asMany = iota // not at all
	allInEach               // two in each of them
	oneInEach               // one in each
)

// asManyInEach reports whether a reading has been chosen for n stitches in n places, which only a
// count of the round's own stitches can bear out.
func (w *roundWork) asManyInEach(n int) bool {
	w.asManySaid = true
	return w.reading.asMany != unread && slices.ContainsFunc(w.stated, func(s *notation.Stated) bool {
		return slices.ContainsFunc(s.Counts, func(c notation.StatedCount) bool {
			return !c.At.Set() && (c.Target.Sort == notation.AnyStitch || c.Target.Sort == notation.OfKind && c.Target.Kind.Is())
		})
	})
}

// borneOut works a part in which as many stitches go into as many places in both readings, and
// gives the one that comes out with all its counts; nil where that is none of them, or both.
func (w *work) borneOut(f *fabric.Fabric, k, size int, best *partWork) (out *partWork) {
	if !best.asManySaid || len(best.faults) == 0 {
		return nil
	}
	for _, m := range []asMany{allInEach, oneInEach} {
		r := best.reading
		r.asMany = m
		if p := w.workPart(f, k, size, r); len(p.faults) == 0 {
			if out != nil {
				return nil
			}
			out = p
		}
	}
	return out
}

// statesAsMany reports whether a count of the round is of n stitches or more.
func (w *roundWork) statesAsMany(n int) bool {
	return slices.ContainsFunc(w.stated, func(s *notation.Stated) bool {
		return slices.ContainsFunc(s.Counts, func(c notation.StatedCount) bool { return !c.At.Set() && c.N.For(w.size) >= n })
	})
}

// notSpread is the fault of "6 sc across" over other than 6 stitches, where no count tells whether
// they are spread over these or made in each.
func (w *roundWork) notSpread(s *notation.Stitches, n, left int) *halt {
	k := w.nameOf(s)
	return stopAt(s.Span, "ambiguous", fmt.Sprintf("%d %s over %s can be read as so many in all or as so many in each", n, k, plural(left, "stitch")),
		fmt.Sprintf("Write %d %s in each st, or name the stitches: %s in next %d sts.", n, k, k, n))
}
