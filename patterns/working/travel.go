package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// travel makes slip stitches that move the beginning of the round.
func (w *roundWork) travel(s *notation.Stitches, on []fabric.Place) *halt {
	h := w.add(fabric.Stitch{Kind: s.What.Kind, Role: fabric.Travel, On: on}, s.Span)
	if w.stepped = (step{}); !(w.r.Row && w.slipsIn) && len(on) > 0 && on[0].Into != stitch.Space {
		w.stepped.n = w.travelled()
	}
	return h
}

// slipsIn reports whether a row begins with slip stitches that only bring the work to
// where it begins with a chain: "sl st in first 4 sts, ch 1, sc in next st", which binds
// off what it passes. Where slip stitches come again they are stitches of the row.
func slipsIn(items []notation.Item) bool {
	slips := 0
	for len(items) > 0 {
		switch it := items[0].(type) {
		case *notation.Stitches:
			if it.What.Kind != stitch.Of(stitch.Slip) || len(it.Places) == 0 {
				return false
			}
			slips++
		case *notation.Join: // "sl st in first dc"
			if it.Yarn != "" || it.Place == nil || it.With.Kind.Base > stitch.Slip {
				return false
			}
			slips++
		case *notation.Chain:
			return slips > 0 && len(items) > 1 && goesOnTall(items[1:]) && !slipsAgain(items[1:])
		case *notation.Note, *notation.Colour, *notation.Turn:
		default:
			return false
		}
		items = items[1:]
	}
	return false
}

// goesOnTall reports whether instructions go on with a stitch that is no slip stitch, so
// that the chain before them is no loop.
func goesOnTall(items []notation.Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			return it.What.Kind.Base != stitch.Slip
		case *notation.Group:
			return goesOnTall(it.Items)
		case *notation.Repeat:
			return goesOnTall(it.Items)
		case *notation.Counts, *notation.Note:
		default:
			return false
		}
	}
	return false
}

// slipsAgain reports whether there are slip stitches among instructions.
func slipsAgain(items []notation.Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if it.What.Kind.Base == stitch.Slip && it.What.Name == "" && it.What.Shaping == 0 {
				return true
			}
		case *notation.Group:
			if slipsAgain(it.Items) {
				return true
			}
		case *notation.Repeat:
			if slipsAgain(it.Items) || slipsAgain(it.Ending) {
				return true
			}
		}
	}
	return false
}

// passedBefore is how many stitches slip stitches at the beginning of a row have passed
// or bound off before the place that it begins in.
func (w *roundWork) passedBefore() int {
	n := w.travelled()
	if !w.r.Row || n == 0 {
		return 0
	}
	on := w.r.Stitches[n-1].On
	if len(on) == 0 {
		return 0
	}
	passed := 0
	for i := 0; i < w.spotOf(on[0]); i++ {
		if w.c.spots[i].counts {
			passed++
		}
	}
	return passed
}

// slippedOver reports whether slip stitches that moved the beginning of the round are all
// that has been worked into spot j: the round ends with it.
func (w *roundWork) slippedOver(j int) bool {
	over := false
	for i := range w.r.Stitches {
		st := &w.r.Stitches[i]
		for _, on := range st.On {
			if on.Into == stitch.Space || on.At != w.c.spots[j].ref && on.Last != w.c.spots[j].ref {
				continue
			}
			if st.Role != fabric.Travel {
				return false
			}
			over = true
		}
	}
	return over
}

// movedPast reports whether there are stitches to come that the slip stitches at the
// beginning of the round have moved past, and nothing else has been worked into.
func (w *roundWork) movedPast() bool {
	if w.travelled() == 0 {
		return false
	}
	for j := w.pos; j < len(w.c.spots); j++ {
		into := slices.ContainsFunc(w.r.Stitches, func(st fabric.Stitch) bool {
			return st.Role != fabric.Travel && slices.ContainsFunc(st.On, func(on fabric.Place) bool { return on.At == w.c.spots[j].ref })
		})
		if w.c.spots[j].counts && !into {
			return true
		}
	}
	return false
}
