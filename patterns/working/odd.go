package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// odd is the first thing in a round that its numbers and places contradict, though it can
// be worked as it is written.
type odd struct {
	at                  notation.Span
	code, message, help string
}

// step is a number of stitches or chains that have just been skipped, or slipped along.
type step struct {
	n   int
	run int // 1 + the chains that they are some of, else 0
}

// wonder keeps what is odd; the first of a round is reported.
func (w *roundWork) wonder(at notation.Span, code, message, help string) {
	if w.odd.message == "" {
		w.odd = odd{at, code, w.r.Label + " " + message, help}
	}
}

// stepTo notices, where the work goes on to spot at past so many stitches, that a number of
// them was told just before and is too small: "sk next st, shell in next ch-2 sp" where two
// stitches lie before that space.
func (w *roundWork) stepTo(p *notation.Place, at, left int) {
	one := "stitch"
	if w.stepped.run > 0 {
		one = "ch"
		for j := w.pos; j < at; j++ {
			if w.c.spots[j].run == w.stepped.run {
				left++
			}
		}
	}
	if n := w.stepped.n; n > 0 && left > 0 && p.Target.Sort != notation.Gap {
		w.wonder(p.Span, "passed-over", fmt.Sprintf("steps over %s here, but %d lie before the place that is named", plural(n, one), n+left),
			"Check the number, and which place is meant.")
	}
	w.stepped = step{}
}

// stepsTo is the step that a skip of n ends with.
func (w *roundWork) stepsTo(s *notation.Skip, n int) {
	if w.stepped = (step{}); s.Unworked || s.Place != nil && s.Place.Pick != notation.Next {
		return
	}
	switch s.Target.Sort {
	case notation.AnyStitch, notation.OfKind:
		w.stepped.n = n
	case notation.ChainStitch:
		if run := w.c.spots[w.pos-1].run; n > 1 && run > 0 && w.pos-w.c.runs[run-1].From == n {
			w.stepped = step{n, run}
		}
	}
}

// toEdge notices that the last place of a row, the chain that the one below began with or
// its last stitch, has been skipped or worked into before, or that stitches before it are
// passed over where the row passes over none elsewhere, none that stand by themselves in lace.
func (w *roundWork) toEdge(p *notation.Place, at int) {
	if !w.r.Row || !w.begun || w.nest > 0 || at != len(w.c.spots)-1 || len(w.c.spots) < 2 {
		return
	}
	what := "last " + w.c.spots[at].st.Counted().Name(w.terms)
	if w.c.spots[at].st.Role == fabric.Start {
		what = "turning chain"
	}
	switch s := &w.c.spots[at]; {
	case s.counts && s.use == worked && w.pos > at:
		w.wonder(p.Span, "twice", fmt.Sprintf("works into the %s, which has been worked into already", what), "Check the numbers before it, or say that both go in the same stitch.")
	case s.counts && s.use == skipped:
		w.wonder(p.Span, "passed-over", fmt.Sprintf("works into the %s, which has been skipped already", what), "Check the number that is skipped.")
	case s.counts && s.use == unused:
		n := w.loneBefore(at)
		if w.gap == 0 {
			n = w.unusedBefore(at)
		}
		if n > 0 {
			w.wonder(p.Span, "passed-over", fmt.Sprintf("passes over %s before the %s", plural(n, "stitch"), what), "Skip them by name (sk next st), or check the numbers before it.")
		}
	}
}

// unusedBefore is how many stitches between where the work is and spot at have not been used.
func (w *roundWork) unusedBefore(at int) (n int) {
	for j := w.pos; j < at; j++ {
		if s := &w.c.spots[j]; s.counts && s.use == unused {
			n++
		}
	}
	return n
}

// loneBefore is how many of them stand by themselves, which a row of shells that are gone into at
// their centres has no reason to pass over: 0 where it has passed over such before.
func (w *roundWork) loneBefore(at int) (n int) {
	for j := range w.c.spots[:at] {
		s := &w.c.spots[j]
		if !s.counts || j == 0 || !w.c.lone(j) {
			continue
		}
		if j < w.pos && s.use == passed {
			return 0
		} else if j >= w.pos && s.use == unused {
			n++
		}
	}
	return n
}

// lone reports whether the stitch at a spot shares its place with neither of those beside it.
func (c *course) lone(i int) bool {
	for _, step := range []int{-1, 1} {
		j := i + step
		for j >= 0 && j < len(c.spots) && !c.spots[j].counts {
			j += step
		}
		if j >= 0 && j < len(c.spots) && c.together(i, j) {
			return false
		}
	}
	return true
}

// leaves notices that stitches are said to be left unworked that have been worked into.
func (w *roundWork) leaves(s *notation.Skip) {
	n := s.N.For(w.size)
	if s.Target.Sort != notation.AnyStitch && s.Target.Sort != notation.OfKind {
		return
	}
	if have := w.remaining(n + 1); w.r.Row && s.N.Set() && have < n {
		w.wonder(s.Span, "left-over", fmt.Sprintf("leaves %s unworked, not the %d that are told", plural(have, "stitch"), n), "Check the number.")
	}
}

// noticeOdd reports what is odd in the round.
func (w *roundWork) noticeOdd() bool {
	if w.odd.message == "" {
		return false
	}
	if len(w.roundFaults) > 0 {
		return true // something has been said of the round already
	}
	w.warn(w.odd.at, w.odd.code, w.odd.message, w.odd.help)
	return true
}
