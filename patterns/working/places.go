package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// one resolves number i of the count places that p speaks of, and takes it.
func (w *roundWork) one(p *notation.Place, i, count int) ([]fabric.Place, *halt) {
	if p.Begins && !w.beganCounted() {
		return nil, stopAt(p.Span, "no-start", "the chain that the round below begins with counts as no stitch, so that it is not the first to work into", "Name the stitch instead: in first st.")
	}
	p = w.ofLeft(p)
	if w.given != nil && (p.Pick == notation.Same || p.Pick == notation.Next && count == 1) {
		on := w.downFrom(w.given, p)
		w.given, w.same = nil, on
		return w.looped(on, p), nil
	}
	if p.Target.Sort == notation.Ring {
		if w.c.below == nil && !w.c.ring && w.foundation == nil && !w.begun && p.Target.MakesRing() {
			// "6 sc in magic ring" makes the ring on the way.
			if h := w.magicRing(&notation.MagicRing{Span: p.Span}); h != nil {
				return nil, h
			}
		}
		on := w.ringPlaces()
		if on == nil {
			return nil, stopAt(p.Span, "no-ring", "there is no ring to work into",
				"Begin with a magic ring, or with: Ch 4, join with sl st to form ring.")
		}
		w.same = on
		return on, nil
	}
	if on, h, ok := w.beyond(p); ok {
		return on, h
	}
	if on := w.edgeOfGroup(p); on != nil {
		return on, nil
	}
	if p.Of != nil {
		return w.partOf(p)
	}
	if h := w.atTip(p); h != nil {
		return nil, h
	}
	if on := w.footOfFirst(p); on != nil {
		return on, nil
	}
	if on := w.onCorner(p); on != nil {
		return on, nil
	}
	if on := w.atCorner(p); on != nil {
		return on, nil
	}
	if around := w.aroundClosing(p); around || (p.Pick == notation.Made || p.Pick == notation.Same) && p.Target.Sort == notation.ChainSpace && !w.begun && w.c.below != nil && w.c.below.Completed > 0 {
		// "in sp just made", "in same sp": the one that the closing stitch
		// completed.
		if around {
			p = &notation.Place{Span: p.Span, Pick: notation.Made, Target: notation.Target{Sort: notation.ChainSpace, Text: p.Target.Text}}
		}
		return w.takeSpot(w.c.runs[0].From, 1, p, false), nil
	}
	if p.Target.Sort == notation.CornerStitch && p.Pick == notation.Next && !w.begun && w.travelled() > 0 && len(w.same) > 0 && len(w.c.spots) > 0 {
		if i := w.spotOf(w.same[0]); i < len(w.c.spots) && w.c.cornerStitch(i) {
			return w.looped(w.same, p), nil // "sl st in next sc (corner), 3 sc in corner sc"
		}
	}
	switch p.Pick {
	case notation.Made:
		for i := len(w.r.Stitches) - 1; i >= 0; i-- {
			if st := &w.r.Stitches[i]; st.Counts && (p.Target.Sort == notation.AnyStitch || sameKind(&p.Target, st)) {
				ref := fabric.Ref{Round: len(w.part.Rounds), Stitch: i}
				return []fabric.Place{{Into: p.Into, At: ref, Last: ref}}, nil
			}
		}
		return nil, w.outOf(p, 1)
	case notation.Same:
		if b := w.c.below; p.Target.Name == notation.HalfLoop && (b == nil || b.Completed == 0) {
			return nil, stopAt(p.Span, "half-loop", "there is no half loop: the round below was not closed with a stitch behind chains",
				"Name the place another way, for example: in next ch-5 sp.")
		}
		if on := w.begunIn(); p.Target.Sort == notation.JoinPlace && on != nil {
			w.same = on
			return on, nil
		}
		if p.Target.Sort == notation.JoinPlace && w.started && w.same != nil && !w.begun {
			return w.looped(w.same, p), nil
		}
		if b := w.c.below; p.Target.Sort == notation.JoinPlace && w.begun && b != nil && b.Number == 0 && !b.Carried && b.Count() == 0 {
			// "5 hdc in same ch as first hdc", along a starting chain
			for i := range w.r.Stitches {
				if st := &w.r.Stitches[i]; st.Counts && st.Role == fabric.Worked && len(st.On) > 0 && st.On[0].Into != stitch.Ring {
					w.same = []fabric.Place{{Into: p.Into, At: st.On[0].At, Last: st.On[0].Last}}
					return w.same, nil
				}
			}
		}
		if p.Target.Sort == notation.JoinPlace && len(w.c.spots) > 0 {
			if w.c.below != nil && w.c.below.Completed > 0 && len(w.c.runs) > 0 && w.c.runs[0].From == 0 {
				w.same = []fabric.Place{w.c.space(0)} // the loop that was completed
				return w.same, nil
			}
			if w.pos == 0 {
				return w.looped(w.take(0, 0, p), p), nil
			}
			w.same = []fabric.Place{w.c.place(0, p.Into)}
			return w.same, nil
		}
		if w.same == nil {
			if len(w.c.spots) == 0 && w.c.ring {
				return w.ringPlaces(), nil
			}
			if len(w.c.spots) == 0 {
				return nil, w.nothingBelow(p.Span)
			}
			// At the beginning of a round, the same stitch is the one that
			// was joined to.
			return w.looped(w.take(0, 0, p), p), nil
		}
		if i := w.spotOf(w.same[0]); p.Target.Sort == notation.ChainSpace && w.same[0].Into != stitch.Space && i < len(w.c.spots) && w.c.spots[i].run > 0 {
			// Slip stitches along the chains of a loop, then "in same loop".
			return w.take(i, w.c.spots[i].run, p), nil
		}
		return w.looped(w.same, p), nil
	case notation.First:
		if p.Target.Sort == notation.StartChain {
			return w.startOf(p)
		}
		return w.firstOf(p)
	case notation.Last:
		if on := w.edgeBelow(p); on != nil {
			return on, nil
		}
		if on := w.besideTie(p); on != nil {
			return on, nil
		}
		if at := w.beforeFirst(p); at >= 0 {
			return w.takeSpot(at, 0, p, true), nil
		}
		return w.lastOfRound(p, i, count)
	case notation.Nth:
		return w.nth(p)
	case notation.Skipped:
		if w.missedBelow() {
			next := *p
			next.Pick = notation.Next
			return w.one(&next, i, count)
		}
		if p.Below < 0 && w.c.below != nil && w.c.below.Number == -p.Below && len(w.lastSkip) == 0 {
			return w.leftFree(p)
		}
		if on := w.skippedUnder(p); on != nil {
			return on, nil
		}
		chains := slices.ContainsFunc(w.lastSkip, func(at int) bool { return w.c.spots[at].st.IsChain() })
		if !chains && p.Nth > 0 && (p.Target.Sort == notation.ChainStitch || p.Target.Sort == notation.StartChain) && w.c.below != nil {
			// "4th of 5 missed ch": passed over at the beginning of the row below
			return w.startOf(&notation.Place{Span: p.Span, Into: p.Into, Nth: p.Nth, Of: p, Target: notation.Target{Sort: notation.StartChain, Chains: p.N.For(w.size), Text: "missed " + p.Target.Text}})
		}
		at := w.skippedSpot(p.Nth)
		if len(w.lastSkip) == 0 {
			return nil, stopAt(p.Span, "nothing-skipped", "no stitch has been skipped before this", "")
		} else if at < 0 {
			return nil, stopAt(p.Span, "nothing-skipped", fmt.Sprintf("only %s skipped before this", wereOf(len(w.lastSkip))), "")
		}
		on := []fabric.Place{w.c.place(at, p.Into)}
		for range p.Below {
			on = w.below(on)
		}
		w.undo = append(w.undo, undoUse{at, w.c.spots[at].use})
		w.c.spots[at].use = worked
		w.same = on
		return on, nil
	case notation.Centre:
		if at, _ := w.nearest([]notation.Target{p.Target}); at >= 0 && w.c.centreStitch(at) {
			return w.takeSpot(at, 0, p, true), nil // "to center sc of next corner, 3 sc in center sc"
		} else if at < 0 && w.nest > 0 && w.cornersBelow() {
			return nil, w.outOf(p, 1) // behind the last corner
		}
		return nil, stopAt(p.Span, "centre", "the words do not say of what this is the centre",
			"Write, for example: centre dc of next shell.")
	}
	if p.Target.Sort == notation.StartChain {
		return w.startOf(p)
	}
	if p.Target.Sort == notation.OfName {
		if d := w.definitions[p.Target.Name]; p.Below != 0 && d != nil && d.alias != nil && d.alias.Kind.Is() {
			// "FPdc 2 rnds below", where the designer tells how it is made
			kind := *p
			kind.Target = notation.Target{Sort: notation.OfKind, Kind: d.alias.Kind, Loop: d.alias.Loop, Text: p.Target.Text}
			return w.one(&kind, i, count)
		}
		if round := w.ofPostNamed(p); round != p {
			return w.one(round, i, count)
		}
		return w.named(p)
	}
	if p.Bare && p.Target.Sort == notation.ChainSpace && !w.begun && len(w.same) == 1 && w.same[0].Into == stitch.Space &&
		(p.Target.Chains == 0 || w.same[0].Last.Stitch-w.same[0].At.Stitch+1 == p.Target.Chains) {
		// "sl st to ch-5 sp, ch 1, … in ch-5 sp": the one the work has come to.
		return w.same, nil
	}
	if on := w.begunGap(p); on != nil {
		return on, nil
	}
	if p.Below != 0 && len(w.c.spots) > 0 && (p.Target.Sort == notation.AnyStitch || p.Target.Sort == notation.OfKind) &&
		!(p.Below < 0 && w.c.below.Number == -p.Below) {
		return w.deeper(p, count-i)
	}
	if p.Target.Sort == notation.Gap && p.Target.At > 0 {
		at := w.c.nthGap(&p.Target)
		if at < 0 {
			return nil, w.outOf(p, 1)
		}
		return w.takeSpot(at, 0, p, true), nil
	}
	if p.Target.Sort == notation.Gap && p.Target.Name == notation.Here {
		at := w.pos - 1
		for at >= 0 && !w.c.spots[at].counts {
			at--
		}
		if at < 0 || w.c.after(at) == 0 && w.r.Row {
			return nil, w.outOf(p, 1)
		}
		pos, was := w.pos, w.same
		m := w.mark()
		on := w.gapAfter(at)
		w.back(m)
		if next := w.c.next(at); next > at && len(was) == 1 && was[0] == on[0] && p.Target.Beside() {
			return w.takeSpot(next, 0, p, true), nil // "*2 dc in sp before next dc; rep from *": one after the other
		}
		w.pos, w.same = pos, on
		return on, nil
	}
	if p.Target.Sort == notation.ChainSpace && p.Target.Chains == 0 && w.c.ring && len(w.c.runs) == 0 {
		// "into the loop" of a sliding loop
		w.same = w.ringPlaces()
		return w.same, nil
	}
	targets := append([]notation.Target{p.Target}, p.Also...)
	between := w.gapMeant(p)
	if between != nil {
		targets = append(targets, *between)
	}
	at, run := w.nearest(targets)
	if at >= 0 && run == 0 && between != nil {
		gap := *p
		gap.Target = *between
		return w.takeSpot(at, 0, &gap, true), nil
	}
	if lone := w.afterGroup(p, at); count == 1 && run == 0 && lone >= 0 {
		at = lone
	}
	for pos := w.pos; at >= 0 && run == 0 && (p.AfterSpace && !w.c.followsSpace(at) || p.InSpace && !w.c.sitsInSpace(at)); w.pos = pos {
		w.pos = at + 1
		at, run = w.nearest(targets)
	}
	if at >= 0 && run > 0 && p.Figure != "" {
		at, run = w.insideFigure(targets, at, run)
		w.figures |= spaceBit(w.c.chains[run-1])
	}
	if on := w.underChain(p, at, run); on != nil {
		return on, nil
	}
	if at < 0 {
		if len(w.c.spots) == 0 {
			return nil, w.nothingBelow(p.Span)
		}
		if w.slipping && !w.r.Row && w.begun && w.remaining(1) == 0 && p.Target.Sort == notation.AnyStitch && i == count-1 {
			// The last slip stitch of the round goes into its first place.
			w.same = []fabric.Place{w.c.place(0, p.Into)}
			return w.same, nil
		}
		if p.Target.Sort == notation.ChainStitch && w.r.Row {
			// "ch 2, sk 2 chs, dc in next ch": the turning chain comes last
			for i := w.pos; i < len(w.c.spots); i++ {
				if w.c.spots[i].st.Role == fabric.Start {
					return w.takeSpot(i, 0, p, true), nil
				}
			}
		}
		if on := w.roundToFirst(p); on != nil {
			return on, nil
		}
		return nil, w.outOf(p, count-i)
	}
	if h := w.pastCorner(p, at); h != nil {
		return nil, h
	}
	w.namesWhole(&p.Target, run)
	return w.takeSpot(at, run, p, true), nil
}

// underChain is the stitch that the chain at the beginning stands on, where it is the one that
// is named, "ch 3, 4 dc in top of dc5tog", and the next such does not come next. It is nil
// otherwise.
func (w *roundWork) underChain(p *notation.Place, at, run int) []fabric.Place {
	if !p.Bare || p.N.Set() || p.Target.Sort != notation.OfKind && p.Target.Sort != notation.OfShape || !w.started || w.begun || w.pos != 1 || run > 0 ||
		!w.c.matches(0, &p.Target) || at >= 0 && w.c.after(0) == at {
		return nil
	}
	w.same = []fabric.Place{w.c.place(0, p.Into)}
	w.use(0, worked)
	return w.same
}

// roundToFirst is the first stitch of the round below as the last place of this
// one, when the round began past it: "ch 1, *sc in next ch-1 sp, sc in next dc; rep
// from * around" on a round that begins with a dc. It is nil otherwise.
func (w *roundWork) roundToFirst(p *notation.Place) []fabric.Place {
	if on := w.roundToSpace(p); on != nil {
		return on
	}
	if w.r.Row || len(w.c.spots) == 0 || w.c.spots[0].use != passed || w.c.below.Closing != fabric.Joined ||
		p.Target.Sort != notation.OfKind && p.Target.Sort != notation.AnyStitch || !w.c.matches(0, &p.Target) {
		return nil
	}
	w.use(0, worked)
	w.passed = slices.DeleteFunc(slices.Clone(w.passed), func(at int) bool { return at == 0 })
	w.pos = len(w.c.spots)
	w.same = []fabric.Place{w.c.place(0, p.Into)}
	return w.same
}

// roundToSpace is the space that the yarn was joined in as the last place of the
// round, when nothing was worked into it: "join in any ch-2 sp, ch 1, *5 sc in next
// ch-2 sp; rep from * around". It is nil otherwise.
func (w *roundWork) roundToSpace(p *notation.Place) []fabric.Place {
	if w.r.Row || p.Target.Sort != notation.ChainSpace || len(w.c.runs) == 0 || w.c.runs[0].From != 0 || !w.begun ||
		len(w.r.Stitches) == 0 || w.r.Stitches[0].Role != fabric.Travel || !w.c.runIs(0, &p.Target) {
		return nil
	}
	space := w.c.space(0)
	for i := range w.r.Stitches {
		if st := &w.r.Stitches[i]; len(st.On) == 0 || st.On[0] != space {
			continue
		} else if st.Role != fabric.Travel && (st.Role != fabric.Start || st.Counts) {
			return nil
		}
	}
	w.pos = len(w.c.spots)
	w.same = []fabric.Place{space}
	return w.same
}

// skippedSpot is the nth of the spots skipped last, or for 0 the first of them
// that has not been worked into since; -1 when there is none.
func (w *roundWork) skippedSpot(nth int) int {
	if nth > 0 && nth <= len(w.lastSkip) {
		return w.lastSkip[nth-1]
	}
	for _, at := range w.lastSkip {
		if nth == 0 && w.c.spots[at].use != worked {
			return at
		}
	}
	if len(w.lastSkip) == 1 && nth == 0 {
		return w.lastSkip[0] // the one there is, once more
	}
	return -1
}

func wereOf(n int) string {
	if n == 1 {
		return "1 stitch was"
	}
	return fmt.Sprintf("%d stitches were", n)
}

// missedBelow reports whether the round below is a slit, whose stitches were
// passed over when it was made.
func (w *roundWork) missedBelow() bool { return w.opening && w.c.index == 0 && len(w.lastSkip) == 0 }

// begunIn is the space or gap that the round was begun in, nil when it was begun
// on a stitch.
func (w *roundWork) begunIn() []fabric.Place {
	for i := range w.r.Stitches {
		switch st := &w.r.Stitches[i]; {
		case st.Role == fabric.Travel:
		case st.Role == fabric.Start && len(st.On) > 0 && (st.On[0].Into == stitch.Space || st.On[0].Into == stitch.Between):
			return st.On
		default:
			return nil
		}
	}
	return nil
}

// takeSpot takes the spot (or the chain run it begins) as the next place.
// Stitches before it are passed over; with check they are noticed when a kind
// of stitch was named.
func (w *roundWork) takeSpot(at, run int, p *notation.Place, check bool) []fabric.Place {
	gap := 0
	between := len(w.same) == 1 && w.same[0].Into == stitch.Between
	for j := w.pos; j < at; j++ {
		if s := &w.c.spots[j]; s.counts && s.use == unused {
			gap++
			if between && (w.c.together(j, at) || w.c.flat && w.c.next(at) < 0 && w.c.together(j, at-1)) {
				w.use(j, passed) // the rest of the group at the edge, or the last one before it, behind the last gap
			} else if run > 0 || p.Target.Sort == notation.OfName || p.Target.Sort == notation.Gap || p.Target.Sort == notation.ChainStitch {
				w.use(j, passed)
			} else {
				w.use(j, passed)
				w.passed = append(w.passed, j)
			}
		}
	}
	w.gap = max(w.gap, gap)
	w.stepTo(p, at, gap)
	return w.looped(w.take(at, run, p), p)
}

// take uses a spot and moves on past it.
func (w *roundWork) take(at, run int, p *notation.Place) []fabric.Place {
	w.deepAt = 0
	w.lastSpace = run > 0
	if run > 0 {
		r := w.c.runs[run-1]
		for j := r.From; j < r.To; j++ {
			w.use(j, worked)
		}
		switch {
		case w.slipping && w.moves && !w.begun && !w.started:
			// on the way to where the round begins
		case p.Target.Name == notation.Corner && p.Target.Chains == 0:
			w.intoSpace |= spaceBit(w.c.longest)
		case p.Target.IsLoop():
			for k, n := range w.c.chains {
				if w.c.runIs(k, &p.Target) {
					w.intoSpace |= spaceBit(n)
				}
			}
		default:
			w.intoSpace |= spaceBit(p.Target.Chains)
		}
		w.pos = r.To
		w.same = []fabric.Place{w.c.space(run - 1)}
		return w.same
	}
	if w.c.spots[at].seam {
		return w.takeSeam(at)
	}
	w.intoStitch = w.intoStitch || w.begun
	w.use(at, worked)
	w.pos = at + 1
	if p.Target.Sort == notation.Gap {
		w.lastSpace = true
		return w.gapAfter(at)
	}
	w.same = []fabric.Place{w.c.place(at, p.Into)}
	return w.same
}

// looped gives places the loop that the words name.
func (w *roundWork) looped(on []fabric.Place, p *notation.Place) []fabric.Place {
	if p.Into == stitch.Top || len(on) == 0 || on[0].Into == p.Into || on[0].Into == stitch.Space {
		return on
	}
	out := make([]fabric.Place, len(on))
	copy(out, on)
	for i := range out {
		out[i].Into = p.Into
	}
	return out
}

// ringPlaces is the place in the ring, nil when there is none.
func (w *roundWork) ringPlaces() []fabric.Place {
	if !w.c.ring {
		return nil
	}
	w.usedRing = true
	return []fabric.Place{{Into: stitch.Ring, At: fabric.Ref{Round: w.c.index, Stitch: -1}, Last: fabric.Ref{Round: w.c.index, Stitch: -1}}}
}

// nothingBelow is the fault of a round that stands on nothing.
func (w *roundWork) nothingBelow(at notation.Span) *halt {
	return stopAt(at, "no-foundation", "there is nothing to work into yet",
		"Begin with a magic ring or a starting chain, or say which part this one is worked on: from: Brim row ends.")
}
