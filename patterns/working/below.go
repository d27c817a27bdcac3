package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// deeper is a place some rounds further down than the round below: under the
// next stitch, or under the next that stands on what the words name.
func (w *roundWork) deeper(p *notation.Place, need int) ([]fabric.Place, *halt) {
	any := *p
	any.Target, any.Below = notation.Target{}, 0
	for i := w.pos; i < len(w.c.spots); i++ {
		if !w.c.spots[i].counts {
			continue
		}
		on := []fabric.Place{w.c.place(i, p.Into)}
		for d := 0; p.Below > 0 && d < p.Below || p.Below < 0 && on[0].At.Round > w.roundNumbered(-p.Below); d++ {
			next := w.below(on)
			if next[0].At == on[0].At {
				if p.Below > 0 {
					return nil, stopAt(p.Span, "below", fmt.Sprintf("there is no round %d rounds below", p.Below), "Check how many rounds down the stitch is.")
				}
				break
			}
			on = next
		}
		on[0].Into = p.Into
		if p.Target.Sort == notation.OfKind && !sameKind(&p.Target, w.part.At(on[0].At)) {
			continue
		}
		w.takeSpot(i, 0, &any, true)
		w.same, w.deepAt = on, w.pos
		return on, nil
	}
	return nil, w.outOf(p, need)
}

// gapAfter is the place between the stitch at a spot and the next.
func (w *roundWork) gapAfter(at int) []fabric.Place {
	next := at + 1
	for next < len(w.c.spots) && !w.c.spots[next].counts {
		next++
	}
	if next == len(w.c.spots) {
		// Round the end: the gap before the first stitch.
		w.use(at, passed)
		w.pos = next
		w.same = []fabric.Place{w.c.place(0, stitch.Between)}
		return w.same
	}
	// A gap is named by the stitch after it, in the direction of its round.
	a, b := w.c.spots[at].ref, w.c.spots[next].ref
	if a.Stitch > b.Stitch {
		b = a
	}
	w.use(next, passed)
	w.pos = next
	w.same = []fabric.Place{{Into: stitch.Between, At: b, Last: b}}
	return w.same
}

// below is the place that the stitch at a place stands on.
func (w *roundWork) below(on []fabric.Place) []fabric.Place {
	st := w.part.At(on[0].At)
	if len(st.On) == 0 || st.On[0].At.Stitch < 0 || st.On[0].Into == stitch.RowEnd || st.On[0].Into == stitch.Ring {
		return on
	}
	return []fabric.Place{{Into: on[0].Into, At: st.On[0].At, Last: st.On[0].At}}
}

// roundNumbered is the index of the round with a number, or the last.
func (w *roundWork) roundNumbered(n int) int {
	for i, r := range w.part.Rounds {
		if r.Number == n {
			return i
		}
	}
	return w.c.index
}
