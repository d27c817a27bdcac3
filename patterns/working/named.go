package working

import (
	"fmt"
	"slices"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// firstOf is "first st", "first ch-2 sp": the first of the round below that is
// what the words say, used or not.
func (w *roundWork) firstOf(p *notation.Place) ([]fabric.Place, *halt) {
	if w.nest > 0 && w.pos > 0 && (p.Target.Sort == notation.AnyStitch || p.Target.Sort == notation.OfKind) {
		// "*2 dc in first st, dc in next st; rep from *": each time the next.
		next := *p
		next.Pick, next.Nth = notation.Next, 0
		return w.one(&next, 0, 1)
	}
	if p.Target.Sort == notation.ChainSpace {
		for k, r := range w.c.runs {
			if w.c.runIs(k, &p.Target) {
				return w.takeSpot(r.From, k+1, p, true), nil
			}
		}
		return nil, w.outOf(p, 1)
	}
	if p.Target.Sort == notation.OfName && slices.ContainsFunc(w.c.groups, func(g spotGroup) bool { return g.is(p.Target.Name) }) {
		return w.named(p)
	}
	for k := w.c.side; k < len(w.c.spots); k++ {
		i := (k + len(w.c.spots) - w.c.lead) % len(w.c.spots)
		if w.c.matches(i, &p.Target) || p.Target.Sort == notation.FromHook {
			if i >= w.pos {
				return w.takeSpot(i, 0, p, true), nil
			}
			if w.nest > 0 && w.begun && w.c.spots[i].use == worked && w.remaining(1) > 0 {
				// "*dc in first st, 2 dc in next st; rep around": the first of the
				// repeat
				next := *p
				next.Pick, next.Nth = notation.Next, 0
				return w.one(&next, 0, 1)
			}
			w.same = []fabric.Place{w.c.place(i, p.Into)}
			w.use(i, worked)
			return w.same, nil
		}
	}
	if len(w.c.spots) == 0 {
		return nil, w.nothingBelow(p.Span)
	}
	return nil, w.outOf(p, 1)
}

// lastOfRound is "last st", "last 2 sts": counted from the end.
func (w *roundWork) lastOfRound(p *notation.Place, i, count int) ([]fabric.Place, *halt) {
	want := count - i
	if p.Target.Sort == notation.ChainSpace {
		for k := len(w.c.runs) - 1; k >= 0; k-- {
			if r := w.c.runs[k]; w.c.runIs(k, &p.Target) {
				if want--; want > 0 {
					continue
				}
				if w.c.spots[r.From].use == worked && r.From < w.pos {
					return nil, w.outOf(p, 1)
				}
				return w.takeSpot(r.From, k+1, p, true), nil
			}
		}
		return nil, w.outOf(p, 1)
	}
	if p.Target.Sort == notation.OfName {
		return w.named(p)
	}
	for j := len(w.c.spots) - 1 - w.c.lead; j >= 0; j-- {
		if !w.c.matches(j, &p.Target) || w.namesStart && w.c.spots[j].st.Role == fabric.Start && p.Target.Sort != notation.StartChain {
			continue
		}
		if want--; want == 0 {
			if w.c.spots[j].use == worked && !w.c.spots[j].st.IsChain() && !w.slippedOver(j) {
				return nil, w.outOf(p, 1)
			}
			if w.c.spots[j].use == worked && (w.c.side > 0 && j >= w.c.side && w.under > 0 || w.c.oval > 0 && j == w.c.oval) {
				w.wonder(p.Span, "twice", "works into the last ch, which has been worked into already", "Check the number before it.")
			}
			if p.Target.Sort != notation.Gap && (w.c.spots[j].use == skipped || w.gap > 0) {
				w.toEdge(p, j)
			}
			if n := w.unusedBefore(j); w.lastSpace && len(w.r.Repeats) > 0 && n > 0 && n <= w.gap && p.Target.Sort == notation.OfKind {
				w.passOver(w.pos, j) // the rest of the fan, as between the others: "dc in next ch sp; …, 3 tr in last dc"
			}
			w.spanned(p, j)
			if p.Target.Sort == notation.Gap && j >= w.pos {
				return w.takeSpot(j, 0, p, false), nil // past the stitches on the way to it
			}
			return w.looped(w.take(j, 0, p), p), nil
		}
	}
	if len(w.c.spots) == 0 {
		return nil, w.nothingBelow(p.Span)
	}
	return nil, w.outOf(p, want)
}

// nth is "2nd ch from hook", or "2nd st": counted from where the work is.
func (w *roundWork) nth(p *notation.Place) ([]fabric.Place, *halt) {
	if p.Target.Sort == notation.FromHook {
		return w.fromHook(p)
	}
	if p.Target.Sort == notation.StartChain {
		return w.startOf(p)
	}
	left, from := p.Nth, w.pos
	if !w.begun && p.Target.Sort != notation.ChainSpace {
		// The 2nd st at the beginning of a row is counted from its edge.
		from = 0
	}
	for i := from; i < len(w.c.spots); i++ {
		if w.c.matches(i, &p.Target) {
			if left--; left == 0 {
				return w.takeSpot(i, 0, p, true), nil
			}
		}
	}
	return nil, w.outOf(p, left)
}

// startOf is "top of beg ch-3", "3rd ch of beg ch-4": the chain that began the
// round below.
func (w *roundWork) startOf(p *notation.Place) ([]fabric.Place, *halt) {
	if t := w.spaceMeant(&p.Target); t.Sort == notation.ChainSpace && !w.beganCounted() {
		next := *p
		next.Pick, next.Target = notation.Next, *t
		return w.one(&next, 0, 1)
	}
	for i := range w.c.spots {
		if w.c.spots[i].st.Role == fabric.Start {
			w.checkChain(w.c.below, w.c.spots[i].ref.Stitch, p)
			w.toEdge(p, i)
			if i >= w.pos {
				return w.takeSpot(i, 0, p, false), nil
			}
			w.same = []fabric.Place{w.c.place(i, p.Into)}
			w.use(i, worked)
			return w.same, nil
		}
	}
	if w.c.below != nil {
		for i := range w.c.below.Stitches {
			if st := &w.c.below.Stitches[i]; st.Role == fabric.Start {
				w.checkChain(w.c.below, i, p)
				ref := fabric.Ref{Round: w.c.index, Stitch: i}
				w.same = []fabric.Place{{Into: p.Into, At: ref, Last: ref}}
				return w.same, nil
			}
		}
	}
	return nil, stopAt(p.Span, "no-start", "the round below does not begin with a chain to work into",
		"Name the stitch instead: in last st.")
}

// beganCounted reports whether the round below begins with a chain that counts as a stitch.
func (w *roundWork) beganCounted() bool {
	return w.c.below != nil && slices.ContainsFunc(w.c.below.Stitches, func(st fabric.Stitch) bool { return st.Role == fabric.Start && st.Counts })
}

// beginsWithout reports whether the round below begins with no chain that brings the hook to its height.
func (w *roundWork) beginsWithout() bool {
	return w.c.below != nil && !slices.ContainsFunc(w.c.below.Stitches, func(st fabric.Stitch) bool { return st.Role == fabric.Start })
}

// partOf is "centre dc of next shell", "3rd ch of beg ch-3", "2nd dc of same
// group".
func (w *roundWork) partOf(p *notation.Place) ([]fabric.Place, *halt) {
	of := p.Of
	if t := w.spaceMeant(&of.Target); t != &of.Target && p.Target.Sort == notation.ChainStitch && !w.beganCounted() {
		space := *of // "first ch of ch-6"
		space.Target = *t
		of = &space
	}
	if of.Target.Sort == notation.StartChain && p.Target.Sort == notation.ChainSpace {
		// "sp of turning ch": beside the stitch that it counts as
		isStart := func(i int) bool { return i >= 0 && i < len(w.c.spots) && w.c.spots[i].st.Role == fabric.Start }
		for k, r := range w.c.runs {
			if isStart(r.From-1) || isStart(r.To) {
				return w.takeSpot(r.From, k+1, p, true), nil
			}
		}
		return nil, w.outOf(p, 1)
	}
	if t := of.Target; t.Sort == notation.StartChain && t.Chains > 0 && p.Nth > 0 && slices.Contains(w.c.chains, t.Chains) && w.beginsWithout() {
		space := *of // "3rd of 5 ch", where the row below begins with no chain
		space.Target = notation.Target{Sort: notation.ChainSpace, Chains: t.Chains, Text: t.Text}
		of = &space
	}
	if of.Target.Sort == notation.StartChain {
		return w.startOf(&notation.Place{Span: p.Span, Into: p.Into, Target: of.Target, Nth: p.Nth, Of: of})
	}
	if of.Target.Sort == notation.ChainSpace {
		// "centre ch of next ch-3 sp"
		for k, r := range w.c.runs {
			if r.From >= w.pos && w.c.runIs(k, &of.Target) {
				n := r.To - r.From
				at := r.From + n/2
				if p.Pick == notation.Nth {
					at = r.From + p.Nth - 1
				}
				if p.Pick == notation.First {
					at = r.From
				}
				if at >= r.To {
					return nil, stopAt(p.Span, "centre", fmt.Sprintf("this space has only %s", plural(n, "chain")), "")
				}
				for j := w.pos; j < r.From; j++ {
					if w.c.spots[j].counts {
						w.use(j, passed)
					}
				}
				_ = k
				on := w.take(at, 0, p)
				w.pos = r.To
				return on, nil
			}
		}
		return nil, w.outOf(p, 1)
	}
	if w.ofRun(p) {
		return w.inRun(p)
	}
	if on := w.begunGroup(p); on != nil {
		return on, nil
	}
	if p.Bare && of.Bare && p.Target.Sort == notation.ChainSpace && !w.begun && len(w.same) == 1 && w.same[0].Into == stitch.Space {
		return w.same, nil // "sl st in ch-1 sp, ch 1, … in ch-1 sp of V-st": the one the work has come to
	}
	for k, g := range w.c.groups {
		byNumber := of.Target.Name == "" && of.Target.Chains > 0 // "of 5-dc shell", which has a name of its own
		if !g.is(of.Target.Name) && !byNumber && of.Target.Sort != notation.AnyStitch {
			continue
		}
		if of.Pick == notation.Last && w.c.anotherAfter(k, of.Target.Name) {
			continue
		}
		// "sl st in next 2 dc and in ch-2 space of shell": the one the work is in
		within := of.Bare && g.From < w.pos && w.pos < g.To
		if of.Pick == notation.Next && g.From < w.pos && !within && !w.onEdgeOf(g) || of.Pick == notation.Same && k+1 != w.lastGroup {
			continue
		}
		if byNumber && !w.c.groupOf(g, of.Target.Kind, of.Target.Chains) {
			continue
		}
		var inside []int
		if p.Target.Sort == notation.Gap {
			inside = w.c.gapsIn(g, &p.Target)
		} else {
			space := p.Target.Sort == notation.ChainSpace
			for j := g.From; j < g.To; j++ {
				if space && w.c.spots[j].run > 0 && w.c.runs[w.c.spots[j].run-1].From == j ||
					!space && w.c.matches(j, &p.Target) {
					inside = append(inside, j)
				}
			}
		}
		if within && w.begun && len(inside) > 0 && inside[len(inside)-1] < w.pos {
			continue // worked into already: the one of the next
		}
		if len(inside) == 0 {
			return nil, stopAt(p.Span, "centre", fmt.Sprintf("this %s has no %s", of.Target.Text, strings.TrimSpace(p.Target.Text)), "")
		}
		if n := p.Among.For(w.size); p.Among.Set() && n != len(inside) {
			return nil, stopAt(p.Span, "centre", fmt.Sprintf("this %s has %d of them, not %d", strings.TrimSpace(of.Target.Text), len(inside), n), "Check the number.")
		}
		at := inside[len(inside)/2]
		if p.Pick == notation.Next && !p.Bare && p.Target.Sort != notation.ChainSpace && p.Target.Sort != notation.Gap {
			at = inside[0] // "next dc of group"
		}
		pick := p.Pick
		if p.Target.At > 0 {
			pick = notation.Nth
		}
		switch pick {
		case notation.Centre, notation.Next:
			if len(inside)%2 == 0 && p.Pick == notation.Centre {
				return nil, stopAt(p.Span, "centre", fmt.Sprintf("this %s has %d of them, so there is none in the centre", of.Target.Text, len(inside)),
					"Name the one that is meant: 2nd dc of next "+of.Target.Text+".")
			}
		case notation.First:
			at = inside[0]
		case notation.Last:
			at = inside[len(inside)-1]
		case notation.Nth:
			nth := max(p.Nth, p.Target.At)
			if nth > len(inside) {
				return nil, stopAt(p.Span, "centre", fmt.Sprintf("this %s has only %d of them", of.Target.Text, len(inside)), "")
			}
			at = inside[nth-1]
		}
		w.passOver(w.pos, at)
		// Spaces between the groups are no places that the round has been going into.
		gone := w.intoSpace
		on := w.looped(w.take(at, w.c.spots[at].run, p), p)
		w.intoSpace = gone
		w.passOver(w.pos, g.To)
		w.lastGroup, w.lastSpace = k+1, true
		// The rest of the group may still be worked into by name.
		return on, nil
	}
	return nil, w.outOf(&notation.Place{Span: p.Span, Target: of.Target}, 1)
}

// afterGroup is the spot that p means instead of one in the group that the work has just
// gone into the space of: "*shell in ch-1 sp of next shell, FPdc around next dc; rep" goes
// around the one that stands alone between the shells; -1 where none does.
func (w *roundWork) afterGroup(p *notation.Place, at int) int {
	if w.lastGroup == 0 || at < 0 || p.Target.Sort != notation.OfKind {
		return -1
	}
	g := w.c.groups[w.lastGroup-1]
	if at < g.From || at >= g.To || g.To+1 >= len(w.c.spots) || !w.c.matches(g.To, &p.Target) {
		return -1
	}
	if len(w.c.groupsAt[g.To]) > 0 || len(w.c.groupsAt[g.To+1]) == 0 {
		return -1
	}
	return g.To
}

// ofEach reports whether a place is in each of several: "ch-1 sp of each V-st".
func ofEach(p *notation.Place) bool {
	return p.Of != nil && p.Of.Target.Sort == notation.OfName && (p.Of.Pick == notation.Each || p.Of.Pick == notation.Next && p.Of.N.Set())
}

// eachOf works in the place that p names in each of the things it is part of.
func (w *roundWork) eachOf(p *notation.Place, work func([]fabric.Place) *halt) *halt {
	one, of := *p, *p.Of
	one.Of, of.Pick, of.N = &of, notation.Next, notation.Num{}
	count, leave := maxRound, 0
	switch e := &p.Of.Extent; {
	case p.Of.Pick == notation.Next:
		count = p.Of.N.For(w.size)
	case e.Sort == notation.ToLast:
		leave = e.N.For(w.size)
	case e.Sort == notation.ToPlace:
		return stopAt(p.Span, "not-understood", "the words do not say how many there are up to there", "Give a number: in ch-1 sp of each of next 4 V-sts.")
	}
	for i := 0; i < count; i++ {
		if at, _ := w.nearest([]notation.Target{of.Target}); at < 0 || leave > 0 && w.left(&p.Of.Extent, leave+1) <= leave {
			if i == 0 || p.Of.Pick == notation.Next {
				return w.outOf(p.Of, 1)
			}
			return nil
		}
		var h *halt
		if w.severalOf(&one) {
			h = w.inGroupOf(&one, work)
		} else {
			var on []fabric.Place
			if on, h = w.partOf(&one); h == nil {
				h = work(on)
			}
		}
		if h != nil {
			return h
		}
	}
	return nil
}

// named is "in next shell": into the group as a whole, which is its centre.
func (w *roundWork) named(p *notation.Place) ([]fabric.Place, *halt) {
	for k, g := range w.c.groups {
		if !g.is(p.Target.Name) || p.Target.Chains > 0 && !w.c.groupOf(g, p.Target.Kind, p.Target.Chains) || p.Pick == notation.Next && g.From < w.pos && !w.onEdgeOf(g) && !w.underChainIs(k, p) || p.Pick == notation.Last && w.c.anotherAfter(k, p.Target.Name) {
			continue
		}
		w.passOver(w.pos, g.From)
		mid, run, gap := w.c.centre(g)
		into := *p
		if gap {
			into.Target = notation.Target{Sort: notation.Gap}
		}
		if at := w.c.onlyTop(g); at >= 0 && p.Pick == notation.Next {
			// "dc in top of next star", whose chains make a space of their own
			on := w.takeSpot(at, 0, &notation.Place{Span: p.Span, Pick: notation.Next, Into: p.Into}, false)
			w.lastGroup, w.lastSpace = k+1, true
			return on, nil
		}
		gone := w.intoSpace
		on := w.take(mid, run, &into)
		w.passOver(g.From, g.To)
		w.pos, w.lastGroup, w.lastSpace, w.intoSpace = g.To, k+1, true, gone
		return on, nil
	}
	return nil, w.outOf(p, 1)
}

// onEdgeOf reports whether nothing has been made but the chain that begins the row, on
// the first stitch of the group: "ch 3, turn, shell in shell".
func (w *roundWork) onEdgeOf(g spotGroup) bool {
	return w.started && !w.begun && w.pos == 1 && g.From == 0 && g.To > 2 || w.skippedInto(g)
}

// underChainIs reports whether the chain at the beginning stands on the one stitch of a group that is
// named, "3 ch, 3 tr into top of Cl4", and the next such does not come next.
func (w *roundWork) underChainIs(k int, p *notation.Place) bool {
	g := w.c.groups[k]
	return p.Bare && !p.N.Set() && w.started && !w.begun && w.pos == 1 && g.From == 0 && g.To == 1 &&
		(k+1 == len(w.c.groups) || w.c.groups[k+1].From > 1 || !w.c.groups[k+1].is(p.Target.Name))
}

// skippedInto reports whether the work has come into a group by skipping the first of its stitches
// and nothing else: it is the next one still.
func (w *roundWork) skippedInto(g spotGroup) bool {
	if w.pos <= g.From || w.pos >= g.To {
		return false
	}
	for i := g.From; i < w.pos; i++ {
		if s := &w.c.spots[i]; s.counts && s.use != skipped {
			return false
		}
	}
	return true
}

// onlyTop is the one stitch of a group that has chains beside it, -1 where it has more
// or no chains.
func (c *course) onlyTop(g spotGroup) int {
	top := -1
	for i := g.From; i < g.To; i++ {
		if c.spots[i].run > 0 {
			continue
		}
		if top >= 0 {
			return -1
		}
		top = i
	}
	if g.To-g.From < 2 {
		return -1
	}
	return top
}

// passOver passes over the stitches of a stretch of spots on the way to a
// place that is named.
func (w *roundWork) passOver(from, to int) {
	n := 0
	for j := from; j < to; j++ {
		if w.c.spots[j].counts && w.c.spots[j].use == unused {
			w.use(j, passed)
			n++
		}
	}
	w.gap = max(w.gap, n)
}
