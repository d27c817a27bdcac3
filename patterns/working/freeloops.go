package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// inLoops sets the loops that what follows goes into, and lays out the round whose they are.
func (w *roundWork) inLoops(it *notation.InLoops) *halt {
	if w.foundation != nil || w.c.below == nil {
		return nil
	}
	at := w.c.index
	if it.Round == 0 {
		if !it.Free || w.begun || at != len(w.part.Rounds)-1 {
			return nil
		}
		free, h := w.lastFree(it)
		if h != nil || free < 0 {
			return h
		}
		at = free
	} else if at = w.numbered(it.Round); at < 0 {
		return stopAt(it.Span, "no-round", fmt.Sprintf("there is no round %d below", it.Round), "Name a round that has been worked already.")
	}
	if w.c.index == at && len(w.r.Stitches) > 0 {
		return nil // a yarn has been joined there
	}
	r := w.part.Rounds[at]
	w.c = layCourse(r, at, w.r.Reversed != r.Reversed)
	w.pos, w.used, w.undo, w.same = 0, 0, nil, nil
	if it.Free {
		return w.onFree(it)
	}
	return nil
}

// numbered is the index of the round with a number, -1 for none.
func (w *roundWork) numbered(n int) int {
	for i, r := range w.part.Rounds {
		if r.Number == n {
			return i
		}
	}
	return -1
}

// lastFree is the index of the round whose loops have been left free, where the words do not say which: the
// one that later rounds have worked into the other loops of. It is -1 where there is none.
func (w *roundWork) lastFree(it *notation.InLoops) (int, *halt) {
	found := -1
	for i := range w.c.index {
		if len(w.freeLoops(i, it.Into)) == 0 {
			continue
		} else if found >= 0 {
			return -1, stopAt(it.Span, "which-round", fmt.Sprintf("%s and %s both have loops that are free, and the words do not say which are meant", w.part.Rounds[found].Label, w.part.Rounds[i].Label),
				fmt.Sprintf("Write, for example: in free loops of %s.", w.part.Rounds[i].Label))
		}
		found = i
	}
	return found, nil
}

// freeLoops are the stitches of the round at an index that later rounds have worked into one loop of, and
// the loop that is free: the one named, or either.
func (w *roundWork) freeLoops(at int, named stitch.Into) map[fabric.Ref]stitch.Into {
	used := map[fabric.Ref][]stitch.Into{}
	for _, r := range w.part.Rounds[at+1:] {
		var begun []fabric.Ref // what a chain that counts stands in: it goes in as the stitches behind it
		for i := range r.Stitches {
			st := &r.Stitches[i]
			if st.Role == fabric.Travel || st.Role == fabric.Start && !st.Counts {
				continue
			}
			for _, on := range st.On {
				switch {
				case on.Part != 0 || on.At.Round != at:
				case st.Role == fabric.Start:
					begun = append(begun, on.At)
				default:
					for _, ref := range append(begun, on.At) {
						used[ref] = append(used[ref], on.Into)
					}
					begun = nil
				}
			}
		}
	}
	free := map[fabric.Ref]stitch.Into{}
	for ref, loops := range used {
		left := stitch.Top
		for i, l := range loops {
			if l == stitch.FrontLoop && (i == 0 || left == stitch.BackLoop) {
				left = stitch.BackLoop
			} else if l == stitch.BackLoop && (i == 0 || left == stitch.FrontLoop) {
				left = stitch.FrontLoop
			} else {
				left = stitch.Top
				break
			}
		}
		if left != stitch.Top && (named == left || named != stitch.FrontLoop && named != stitch.BackLoop) {
			free[ref] = left
		}
	}
	return free
}

// onFree leaves the stitches out of the course whose loops later rounds have worked into.
func (w *roundWork) onFree(it *notation.InLoops) *halt {
	free := w.freeLoops(w.c.index, it.Into)
	if len(free) == 0 {
		if w.c.index == len(w.part.Rounds)-1 {
			return nil // of the round below all are
		}
		return stopAt(it.Span, "loops", fmt.Sprintf("%s has no such loops that were left free", w.c.below.Label), "Check the number of the round, and which of its loops the round after it goes into.")
	}
	loop, all := stitch.Top, true
	for i := range w.c.spots {
		s := &w.c.spots[i]
		left, ok := free[s.ref]
		if all = all && (ok || !s.counts); !ok {
			continue
		}
		if loop != stitch.Top && loop != left {
			return stopAt(it.Span, "loops", fmt.Sprintf("%s has front loops and back loops that are free", w.c.below.Label), "Say which are meant, for example: in free back loops.")
		}
		loop = left
	}
	if w.loop = loop; all {
		return nil
	}
	spots := w.c.spots[:0]
	for _, s := range w.c.spots {
		if _, ok := free[s.ref]; ok {
			s.run = 0
			spots = append(spots, s)
		}
	}
	w.c = &course{below: w.c.below, index: w.c.index, spots: spots}
	return nil
}

// namesFree is the loop that all places of the instructions name as left free, "2 sc in each free back loop of
// Rnd 1"; ok is false where one names none or another.
func namesFree(items []notation.Item) (into stitch.Into, ok bool) {
	for _, it := range items {
		places := placesOf(it)
		if r, repeat := it.(*notation.Repeat); repeat {
			in, some := namesFree(r.Items)
			if !some || ok && in != into {
				return 0, false
			}
			into, ok = in, true
		}
		for i := range places {
			if places[i].Pick == notation.Same {
				continue
			}
			if !places[i].Free || ok && places[i].Into != into {
				return 0, false
			}
			into, ok = places[i].Into, true
		}
	}
	return into, ok
}
