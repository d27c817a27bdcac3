package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// skip passes over places by name.
func (w *roundWork) skip(s *notation.Skip) *halt {
	for ; s != nil; s = s.And {
		if h := w.skipOne(s); h != nil {
			return h
		}
	}
	return nil
}

// skipOne passes over the places of one name.
func (w *roundWork) skipOne(s *notation.Skip) *halt {
	if h := w.seal(s.Span); h != nil {
		return h
	}
	n := 1
	if s.N.Set() {
		n = s.N.For(w.size)
	}
	if p := s.Place; p != nil && p.Below < 0 && w.c.below != nil && w.c.below.Number > 0 && w.c.below.Number != -p.Below && !w.onLeft && !w.skipsDeeper(s, n) {
		return stopAt(p.Span, "below", fmt.Sprintf("%s is worked on %s, so stitches of an older one cannot be skipped in it", w.r.Label, w.c.belowName()), "Say how many stitches of "+w.c.belowName()+" are skipped.")
	}
	w.lastChain = chainMade{} // it is no longer what was done last
	if w.skipsInPoint(s, n) {
		return nil
	}
	if h := w.endPoint(s.Span); h != nil {
		return h
	}
	if turning := w.turningLeft(s); turning != s && !slices.ContainsFunc(w.c.spots[w.pos:max(len(w.c.spots)-1, w.pos)], func(sp spot) bool { return sp.counts || sp.st.IsChain() }) {
		s, n = turning, 1
	}
	if s.Unworked && w.noTurningLeft(s) {
		return nil
	}
	t := *w.spaceMeant(&s.Target)
	if w.skipsDeeper(s, n) {
		t = notation.Target{Sort: notation.AnyStitch}
	}
	if p := s.Place; p != nil {
		switch {
		case (p.Pick == notation.First || p.Pick == notation.Next && p.Nth == 1) && w.pos > 0 && !w.begun:
			// "Ch 3, sk first st": the chain stands on it already.
			if p.Pick == notation.First && t.Sort == notation.OfKind && !w.c.spots[0].counts {
				break // it stands on a chain before that one
			}
			if n--; p.Pick == notation.First && t.Sort == notation.OfKind && t.Name == "" && !w.c.matches(0, &t) {
				w.wonder(s.Span, "passed-over", fmt.Sprintf("skips the first %s, and the first stitch is a %s", named(&t, w.terms), w.c.spots[0].st.Counted().Name(w.terms)), "Check which stitch is meant.")
			}
		case p.Pick == notation.Same && w.pos > 0:
			return nil
		case w.leavesKind(s, p):
			n = w.remaining(maxRound)
		case p.Pick == notation.Each:
			n = w.remaining(maxRound)
			if p.N.Set() && p.N.For(w.size) != n {
				return stopAt(p.N.Span, "left-over", fmt.Sprintf("%s leaves %s unworked, not %d", w.r.Label, plural(n, "stitch"), p.N.For(w.size)),
					w.leftBy()+".")
			}
		}
	}
	if p := s.Place; p != nil && p.Of != nil && p.Of.Target.Sort == notation.OfName && (p.Pick == notation.First || p.Pick == notation.Last) {
		return w.skipInGroup(p, n)
	}
	if s.Place == nil && n == 1 && w.depth <= 1 && w.onChainsPlace() {
		return nil // "3 ch (counts as 1 tr), miss 1 st": the one it stands on
	}
	if s.Place == nil || s.Place.Pick == notation.Next {
		w.standsOnFirst()
	}
	if s.Behind && w.deepAt < 0 && w.deepAt == -w.pos {
		return nil // by the definition of the stitch, and again in the round
	}
	if n > 1 && (s.Behind || w.deepAt > 0 && w.deepAt == w.pos) && w.deepLast(n) {
		w.deepAt = 0
		return nil
	}
	deep := w.deepAt > 0 && w.deepAt == w.pos && n > 0
	if deep {
		n--
	}
	w.deepAt = 0
	if deep && n == 0 {
		w.deepAt = -w.pos
		return nil // what was skipped before it is still what "the skipped sts" are
	}
	w.mostSkipped = max(w.mostSkipped, n)
	if !s.Unworked && w.skipsCast(s, n) {
		return nil
	}
	w.lastSkip = nil
	for i := 0; i < n; i++ {
		at, run := w.nearest([]notation.Target{t})
		if at < 0 && i == n-1 && w.intoSpace != 0 && w.roundToFirst(&notation.Place{Span: s.Span, Target: t}) != nil {
			return nil
		}
		if at < 0 {
			return w.outOf(&notation.Place{Span: s.Span, Target: t}, n-i)
		}
		for j := w.pos; j < at; j++ {
			if sp := &w.c.spots[j]; sp.counts && sp.use == unused {
				w.use(j, passed)
				if run == 0 && t.Sort != notation.OfName {
					w.passed = append(w.passed, j)
				}
			}
		}
		end := at + 1
		if run > 0 {
			end = w.c.runs[run-1].To
		}
		if t.Sort == notation.OfName {
			for _, g := range w.c.groups {
				if g.From == at && g.is(t.Name) {
					end = g.To
				}
			}
		}
		for j := at; j < end; j++ {
			w.use(j, skipped)
		}
		w.lastSkip = append(w.lastSkip, at)
		w.pos = end
	}
	w.stepsTo(s, n)
	return nil
}

// leavesKind reports whether a row leaves what is all that is left of it: "leave dc unworked".
func (w *roundWork) leavesKind(s *notation.Skip, p *notation.Place) bool {
	if !s.Unworked || !p.Bare || p.N.Set() || p.Pick != notation.Next || s.Target.Sort != notation.OfKind || w.nest > 0 || needsPlaces(w.after) {
		return false
	}
	for i := w.pos; i < len(w.c.spots); i++ {
		if w.c.spots[i].counts && !w.c.matches(i, &s.Target) {
			return false
		}
	}
	return true
}

// skipsDeeper reports whether what is skipped are stitches farther down, "skip next 3 FPtr, FPtr around each
// of next 3 FPtr two rows below", none of which stands in the round below: the next so many stand on them,
// and are passed over.
func (w *roundWork) skipsDeeper(s *notation.Skip, n int) bool {
	t := &s.Target
	if !ofPost(t) || s.Place != nil && s.Place.Pick != notation.Next {
		return false
	}
	return w.standsOver(t, n)
}

// deepLast reports whether the last n stitches were made farther down than the round below: what is
// behind them has been passed over with them.
func (w *roundWork) deepLast(n int) bool {
	for i := len(w.r.Stitches) - 1; i >= 0 && n > 0; i-- {
		if st := &w.r.Stitches[i]; !st.Counts || len(st.On) == 0 || st.On[0].At.Round >= w.c.index || st.On[0].At.Stitch < 0 {
			return false
		}
		n--
	}
	return n == 0
}

// onChainsPlace reports whether nothing has been made yet but a beginning chain that
// counts as a stitch and no more, so that a stitch skipped is that below it.
func (w *roundWork) onChainsPlace() bool {
	if w.begun || !w.started || w.pos != 1 || len(w.r.Stitches) != 1 {
		return false
	}
	st := &w.r.Stitches[0]
	return st.Role == fabric.Start && st.Counts && st.Chains <= st.As.Chains()
}

// skipsCast makes a beginning chain of chains skipped at the beginning of a
// first row: "Sk first ch, sc in next ch". It reports whether it did.
func (w *roundWork) skipsCast(s *notation.Skip, n int) bool {
	if w.c.below == nil || w.c.below.Number != 0 || w.c.below.Ring || w.c.below.Count() > 0 || w.begun || w.started || w.pos > 0 ||
		len(w.c.spots) == 0 || n < 1 || n >= len(w.c.spots) || w.c.below.Carried {
		return false
	}
	_, h := w.fromHook(&notation.Place{Span: s.Span, Pick: notation.Nth, Nth: n + 1, Target: notation.Target{Sort: notation.FromHook}})
	if h != nil {
		return false
	}
	w.notYetInto(n)
	return true
}

// notYetInto takes the first stitch out of the chain behind n that have been skipped: it has not been worked
// into yet.
func (w *roundWork) notYetInto(n int) {
	if w.c.ring {
		return // all goes into the one chain that is left
	}
	w.c.spots[n].use = unused
	w.undo = w.undo[:len(w.undo)-1]
	w.used--
	w.pos, w.same = n, nil
}

// beginsFromHook lets a row begin in a chain counted from the hook, and makes no stitch in it:
// "starting in 2nd ch from hook, *sc in next ch, …".
func (w *roundWork) beginsFromHook(p *notation.Place) *halt {
	if w.begun {
		return stopAt(p.Span, "from-hook", "chains are counted from the hook only at the beginning of the first row", "Name the stitch another way.")
	}
	if _, h := w.fromHook(p); h != nil {
		return h
	}
	w.notYetInto(p.Nth - 1)
	return nil
}

// skipInGroup passes over the first or the last n stitches of a group: of the one that
// has been worked into last, as long as they are not behind the work, or of the next.
func (w *roundWork) skipInGroup(p *notation.Place, n int) *halt {
	for k, g := range w.c.groups {
		of := p.Of.Target.Name
		if !g.is(of) || k+1 < w.lastGroup || k+1 > w.lastGroup && g.From < w.pos && !w.onEdgeOf(g) && !(p.Pick == notation.Last && w.pos < g.To) {
			continue
		}
		if k+1 == w.lastGroup && p.Pick == notation.First {
			continue
		}
		var inside []int
		for j := g.From; j < g.To; j++ {
			if w.c.matches(j, &p.Target) {
				inside = append(inside, j)
			}
		}
		if len(inside) < n {
			return stopAt(p.Span, "centre", fmt.Sprintf("this %s has only %d of them", p.Of.Target.Text, len(inside)), "")
		}
		if p.Pick == notation.Last {
			inside = inside[len(inside)-n:]
		} else {
			inside = inside[:n]
		}
		w.lastSkip = nil
		for _, j := range inside {
			w.use(j, skipped)
			w.lastSkip = append(w.lastSkip, j)
		}
		w.passOver(w.pos, inside[0])
		w.pos = max(w.pos, inside[n-1]+1)
		return nil
	}
	return w.outOf(&notation.Place{Span: p.Span, Target: p.Of.Target}, 1)
}

// turningLeft is what a row leaves unworked, "leaving 3 ch unworked", as the turning chain, where the row
// below began with one of so many; else what the words say.
func (w *roundWork) turningLeft(s *notation.Skip) *notation.Skip {
	n := s.Target.Chains // "leaving 3-ch unworked"
	if s.Target.Sort == notation.ChainStitch && s.N.Set() {
		n = s.N.For(w.size)
	} else if !s.Target.ByNumber() {
		return s
	}
	if !s.Unworked || !w.r.Row || s.Place == nil || s.Place.Of != nil || w.c.below == nil || len(w.c.below.Stitches) == 0 {
		return s
	}
	if st := &w.c.below.Stitches[0]; st.Role != fabric.Start || st.Chains != n {
		return s
	}
	turning, place := *s, *s.Place
	turning.Target = notation.Target{Sort: notation.StartChain, Text: s.Target.Text}
	turning.N, turning.Place = notation.Num{}, &place
	place.N, place.Pick, place.Target = notation.Num{}, notation.Next, turning.Target
	return &turning
}
