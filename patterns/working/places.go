package working

import (
	"fmt"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// one resolves number i of the count places that p speaks of, and takes it.
func (w *roundWork) one(p *notation.Place, i, count int) ([]fabric.Place, *halt) {
	if w.given != nil && (p.Pick == notation.Same || p.Pick == notation.Next && count == 1) {
		on := w.given
		w.given, w.same = nil, on
		return w.looped(on, p), nil
	}
	if p.Target.Sort == notation.Ring {
		if w.c.below == nil && !w.c.ring && w.foundation == nil && !w.begun && p.Target.Name == notation.Magic {
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
	if p.Of != nil {
		return w.partOf(p)
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
		if p.Target.Sort == notation.JoinPlace && w.started && w.same != nil && !w.begun {
			return w.looped(w.same, p), nil
		}
		if p.Target.Sort == notation.JoinPlace && len(w.c.spots) > 0 {
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
		return w.looped(w.same, p), nil
	case notation.First:
		if p.Target.Sort == notation.StartChain {
			return w.startOf(p)
		}
		return w.firstOf(p)
	case notation.Last:
		return w.lastOfRound(p, i, count)
	case notation.Nth:
		return w.nth(p)
	case notation.Skipped:
		if len(w.lastSkip) == 0 {
			return nil, stopAt(p.Span, "nothing-skipped", "no stitch has been skipped before this", "")
		}
		at := w.lastSkip[min(max(p.Nth-1, i), len(w.lastSkip)-1)]
		on := []fabric.Place{w.c.place(at, p.Into)}
		w.c.spots[at].use = worked
		w.same = on
		return on, nil
	case notation.Centre:
		return nil, stopAt(p.Span, "centre", "the words do not say of what this is the centre",
			"Write, for example: centre dc of next shell.")
	}
	if p.Target.Sort == notation.StartChain {
		return w.startOf(p)
	}
	if p.Target.Sort == notation.OfName {
		return w.named(p)
	}
	if p.Bare && p.Target.Sort == notation.ChainSpace && !w.begun && len(w.same) == 1 && w.same[0].Into == stitch.Space &&
		(p.Target.Chains == 0 || w.same[0].Last.Stitch-w.same[0].At.Stitch+1 == p.Target.Chains) {
		// "sl st to ch-5 sp, ch 1, … in ch-5 sp": the one the work has come to.
		return w.same, nil
	}
	if p.Below != 0 && len(w.c.spots) > 0 && (p.Target.Sort == notation.AnyStitch || p.Target.Sort == notation.OfKind) &&
		!(p.Below < 0 && w.c.below.Number == -p.Below) {
		return w.deeper(p, count-i)
	}
	if p.Target.Sort == notation.Gap && p.Target.Name == notation.Here {
		at := w.pos - 1
		for at >= 0 && !w.c.spots[at].counts {
			at--
		}
		if at < 0 || w.c.after(at) == 0 && w.r.Row {
			return nil, w.outOf(p, 1)
		}
		if w.c.after(at) == 0 {
			// Round the end: the gap before the first stitch.
			w.same = []fabric.Place{w.c.place(0, stitch.Between)}
			return w.same, nil
		}
		pos := w.pos
		m := w.mark()
		on := w.gapAfter(at)
		w.back(m)
		w.pos, w.same = pos, on
		return on, nil
	}
	if p.Target.Sort == notation.ChainSpace && p.Target.Chains == 0 && w.c.ring && len(w.c.runs) == 0 {
		// "into the loop" of a sliding loop
		w.same = w.ringPlaces()
		return w.same, nil
	}
	at, run := w.nearest([]notation.Target{p.Target})
	if at < 0 {
		if len(w.c.spots) == 0 {
			return nil, w.nothingBelow(p.Span)
		}
		return nil, w.outOf(p, count-i)
	}
	return w.takeSpot(at, run, p, true), nil
}

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

// takeSpot takes the spot (or the chain run it begins) as the next place.
// Stitches before it are passed over; with check they are noticed when a kind
// of stitch was named.
func (w *roundWork) takeSpot(at, run int, p *notation.Place, check bool) []fabric.Place {
	gap := 0
	for j := w.pos; j < at; j++ {
		if s := &w.c.spots[j]; s.counts && s.use == unused {
			gap++
			if run > 0 || p.Target.Sort == notation.OfName || p.Target.Sort == notation.ChainStitch {
				w.use(j, passed)
			} else {
				w.use(j, passed)
				w.passed = append(w.passed, j)
			}
		}
	}
	w.gap = max(w.gap, gap)
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
		w.intoSpace |= spaceBit(p.Target.Chains)
		w.pos = r.To
		w.same = []fabric.Place{w.c.space(run - 1)}
		return w.same
	}
	w.intoStitch = w.intoStitch || w.begun
	w.use(at, worked)
	w.pos = at + 1
	if p.Target.Sort == notation.Gap {
		return w.gapAfter(at)
	}
	w.same = []fabric.Place{w.c.place(at, p.Into)}
	return w.same
}

// gapAfter is the place between the stitch at a spot and the next.
func (w *roundWork) gapAfter(at int) []fabric.Place {
	next := at + 1
	for next < len(w.c.spots) && !w.c.spots[next].counts {
		next++
	}
	if next == len(w.c.spots) {
		next = at
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

// firstOf is "first st", "first ch-2 sp": the first of the round below that is
// what the words say, used or not.
func (w *roundWork) firstOf(p *notation.Place) ([]fabric.Place, *halt) {
	if p.Target.Sort == notation.ChainSpace {
		for k, r := range w.c.runs {
			if p.Target.Chains == 0 || r.To-r.From == p.Target.Chains {
				return w.takeSpot(r.From, k+1, p, true), nil
			}
		}
		return nil, w.outOf(p, 1)
	}
	for i := range w.c.spots {
		if w.c.matches(i, &p.Target) || p.Target.Sort == notation.FromHook {
			if i >= w.pos {
				return w.takeSpot(i, 0, p, true), nil
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
	if p.Target.Sort == notation.ChainSpace {
		for k := len(w.c.runs) - 1; k >= 0; k-- {
			if r := w.c.runs[k]; p.Target.Chains == 0 || r.To-r.From == p.Target.Chains {
				return w.takeSpot(r.From, k+1, p, true), nil
			}
		}
		return nil, w.outOf(p, 1)
	}
	if p.Target.Sort == notation.OfName {
		return w.named(p)
	}
	want := count - i
	for j := len(w.c.spots) - 1; j >= 0; j-- {
		if !w.c.matches(j, &p.Target) || w.namesStart && w.c.spots[j].st.Role == fabric.Start && p.Target.Sort != notation.StartChain {
			continue
		}
		if want--; want == 0 {
			if w.c.spots[j].use == worked && !w.c.spots[j].st.IsChain() {
				return nil, w.outOf(p, 1)
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
	for i := range w.c.spots {
		if w.c.spots[i].st.Role == fabric.Start {
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
				ref := fabric.Ref{Round: w.c.index, Stitch: i}
				w.same = []fabric.Place{{Into: p.Into, At: ref, Last: ref}}
				return w.same, nil
			}
		}
	}
	return nil, stopAt(p.Span, "no-start", "the round below does not begin with a chain to work into",
		"Name the stitch instead: in last st.")
}

// partOf is "centre dc of next shell", "3rd ch of beg ch-3", "2nd dc of same
// group".
func (w *roundWork) partOf(p *notation.Place) ([]fabric.Place, *halt) {
	of := p.Of
	if of.Target.Sort == notation.StartChain {
		return w.startOf(&notation.Place{Span: p.Span, Into: p.Into, Target: of.Target})
	}
	if of.Target.Sort == notation.ChainSpace {
		// "centre ch of next ch-3 sp"
		for k, r := range w.c.runs {
			if r.From >= w.pos && (of.Target.Chains == 0 || r.To-r.From == of.Target.Chains) {
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
	for k, g := range w.c.groups {
		if g.name != of.Target.Name && !(of.Target.Sort == notation.AnyStitch) {
			continue
		}
		if of.Pick == notation.Next && g.From < w.pos || of.Pick == notation.Same && k+1 != w.lastGroup {
			continue
		}
		if of.Target.Name == "" && of.Target.Chains > 0 && !w.c.groupOf(g, of.Target.Kind, of.Target.Chains) {
			continue
		}
		var inside []int
		space := p.Target.Sort == notation.ChainSpace
		for j := g.From; j < g.To; j++ {
			if space && w.c.spots[j].run > 0 && w.c.runs[w.c.spots[j].run-1].From == j ||
				!space && w.c.matches(j, &p.Target) {
				inside = append(inside, j)
			}
		}
		if len(inside) == 0 {
			return nil, stopAt(p.Span, "centre", fmt.Sprintf("this %s has no %s", of.Target.Text, strings.TrimSpace(p.Target.Text)), "")
		}
		at := inside[len(inside)/2]
		switch p.Pick {
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
			if p.Nth > len(inside) {
				return nil, stopAt(p.Span, "centre", fmt.Sprintf("this %s has only %d of them", of.Target.Text, len(inside)), "")
			}
			at = inside[p.Nth-1]
		}
		w.passOver(w.pos, at)
		on := w.looped(w.take(at, w.c.spots[at].run, p), p)
		w.passOver(w.pos, g.To)
		w.lastGroup, w.lastSpace = k+1, true
		// The rest of the group may still be worked into by name.
		return on, nil
	}
	return nil, w.outOf(&notation.Place{Span: p.Span, Target: of.Target}, 1)
}

// named is "in next shell": into the group as a whole, which is its centre.
func (w *roundWork) named(p *notation.Place) ([]fabric.Place, *halt) {
	for k, g := range w.c.groups {
		if g.name != p.Target.Name || p.Target.Chains > 0 && !w.c.groupOf(g, p.Target.Kind, p.Target.Chains) || p.Pick == notation.Next && g.From < w.pos {
			continue
		}
		w.passOver(w.pos, g.From)
		mid, run := (g.From+g.To-1)/2, 0
		// A group with one space in it is worked into at the space.
		for j := g.From; j < g.To; j++ {
			if r := w.c.spots[j].run; r > 0 {
				mid, run = w.c.runs[r-1].From, r
			}
		}
		on := w.take(mid, run, p)
		w.passOver(g.From, g.To)
		w.pos, w.lastGroup, w.lastSpace = g.To, k+1, true
		return on, nil
	}
	return nil, w.outOf(p, 1)
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

// evenly spreads stitches over row ends.
func (w *roundWork) evenly(s *notation.Stitches, n int, hasN bool, p *notation.Place) *halt {
	if p.Target.Sort != notation.RowEnds && w.c.edge == 0 {
		return w.spread(s, n)
	}
	if w.c.edge == 0 {
		return stopAt(p.Span, "no-row-ends", "there are no row ends to work along",
			"Say which piece the part is picked up from, for example: from: Brim row ends.")
	}
	if !hasN {
		n = w.c.edge
	} else if !p.Evenly && (p.Every || p.Pick == notation.Each && n <= 3) {
		n *= w.c.edge // so many in each row end
	}
	if n > maxRound {
		return stopAt(s.Span, "too-large", "too many stitches", "")
	}
	for i := 0; i < n; i++ {
		row := (2*i + 1) * w.c.edge / (2 * n)
		on := []fabric.Place{{Into: stitch.RowEnd, Part: w.c.edgePart, At: fabric.Ref{Round: w.edgeRows[row]}, Last: fabric.Ref{Round: w.edgeRows[row]}}}
		w.same = on
		if h := w.into(s, 1, on); h != nil {
			return h
		}
	}
	return nil
}

// spread is the fault of stitches, increases or decreases spread evenly over
// stitches: the words leave it to the reader where. It offers the wording.
func (w *roundWork) spread(s *notation.Stitches, n int) *halt {
	have := w.c.count()
	what, change := plural(n, "stitch"), n-have
	switch {
	case s.What.Shaping > 0:
		what, change = plural(n, "increase"), n
	case s.What.Shaping < 0:
		what, change = plural(n, "decrease"), -n
	}
	h := stopAt(s.Span, "vague", fmt.Sprintf("%s spread evenly over %s: the words do not say into which", what, plural(have, "stitch")),
		"Write where each goes.")
	if words := spacing(change, have, w.plainBase(), w.terms); words != "" {
		h.help = "Write where each goes, for example: " + words + "."
	}
	return h
}

// skip passes over places by name.
func (w *roundWork) skip(s *notation.Skip) *halt {
	if h := w.seal(s.Span); h != nil {
		return h
	}
	n := 1
	if s.N.Set() {
		n = s.N.For(w.size)
	}
	w.lastChain = chainMade{} // it is no longer what was done last
	t := s.Target
	if p := s.Place; p != nil {
		switch {
		case (p.Pick == notation.First || p.Pick == notation.Next && p.Nth == 1) && w.pos > 0 && !w.begun:
			// "Ch 3, sk first st": the chain stands on it already.
			n--
		case p.Pick == notation.Same && w.pos > 0:
			return nil
		case p.Pick == notation.Each:
			n = w.remaining(maxRound)
		}
	}
	if w.deepAt == w.pos && w.deepAt > 0 && n > 0 {
		n--
	}
	w.deepAt = 0
	w.mostSkipped = max(w.mostSkipped, n)
	if w.skipsCast(s, n) {
		return nil
	}
	w.lastSkip = nil
	for i := 0; i < n; i++ {
		at, run := w.nearest([]notation.Target{t})
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
				if g.From == at && g.name == t.Name {
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
	return nil
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
	// The chain after those skipped has not been worked into yet.
	w.c.spots[n].use = unused
	w.undo = w.undo[:len(w.undo)-1]
	w.used--
	w.pos, w.same = n, nil
	return true
}

// nothingBelow is the fault of a round that stands on nothing.
func (w *roundWork) nothingBelow(at notation.Span) *halt {
	return stopAt(at, "no-foundation", "there is nothing to work into yet",
		"Begin with a magic ring or a starting chain, or say which part this one is worked on: from: Brim row ends.")
}
