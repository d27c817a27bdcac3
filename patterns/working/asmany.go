package working

import (
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
