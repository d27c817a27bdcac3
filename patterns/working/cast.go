package working

import (
	"fmt"
	"regexp"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// castOn makes chains of the starting chain.
func (w *roundWork) castOn(it *notation.Chain, n int) *halt {
	w.castItem = it
	if w.foundation == nil {
		w.foundation = &fabric.Round{Label: "the starting chain", Row: w.r.Row, Colour: w.r.Colour, Line: it.Line}
	}
	f := w.foundation
	if len(f.Stitches)+n > maxRound {
		return stopAt(it.Span, "too-large", fmt.Sprintf("the starting chain would have more than %d chains", maxRound), "Check the number.")
	}
	for i := 0; i < n; i++ {
		f.Stitches = append(f.Stitches, fabric.Stitch{Kind: stitch.Of(stitch.Chain), Line: it.Line, Column: it.Column})
	}
	f.Spaces = []fabric.Span{{From: 0, To: len(f.Stitches)}}
	return nil
}

// seal makes the starting chain the round below, when stitches are about to go
// into it.
func (w *roundWork) seal(at notation.Span) *halt {
	if w.foundation == nil {
		return nil
	}
	f := w.foundation
	w.foundation = nil
	w.part.Rounds = append(w.part.Rounds, f)
	w.c = layCourse(f, len(w.part.Rounds)-1, !f.Ring)
	w.pos, w.same = 0, nil
	return nil
}

// magicRing begins with a ring.
func (w *roundWork) magicRing(it *notation.MagicRing) *halt {
	if w.c.below != nil {
		return stopAt(it.Span, "ring", "a ring can only be made at the beginning of a part", "Begin a new part for it.")
	}
	if it.Round != "" && w.r.Row {
		return stopAt(it.Span, "no-foundation", "rows along one edge of a "+it.Round+" have nothing to stand on that is worked",
			"Begin them on a chain of as many stitches, or work all the way round the "+it.Round+" in rounds.")
	}
	f := &fabric.Round{Label: "the ring", Ring: true, About: it.Round, Line: it.Line}
	w.part.Rounds = append(w.part.Rounds, f)
	w.c = layCourse(f, len(w.part.Rounds)-1, false)
	return nil
}

// magicHere makes a ring that the words name on the way. Chains made before it
// are those that begin the round.
func (w *roundWork) magicHere(at notation.Span) *halt {
	chains := 0
	if w.foundation != nil {
		chains = len(w.foundation.Stitches)
		w.foundation = nil
	}
	if h := w.magicRing(&notation.MagicRing{Span: at}); h != nil || chains == 0 {
		return h
	}
	w.goesIntoRing = true
	if w.heartLoop(w.castItem, chains) {
		return w.chain(w.castItem)
	}
	return w.start(w.castItem, chains)
}

// formRing closes the starting chain into a ring.
func (w *roundWork) formRing(it *notation.FormRing) *halt {
	if w.foundation != nil {
		w.foundation.Ring = true
		w.foundation.Closing = fabric.Joined
		if h := w.seal(it.Span); h != nil {
			return h
		}
		return nil
	}
	if len(w.r.Stitches) > 0 {
		// Foundation stitches, or a row before the rounds, joined into a round.
		return w.join(&notation.Join{Span: it.Span}, nil)
	}
	return stopAt(it.Span, "ring", "there is no chain here to make a ring of", "Write, for example: Ch 4, join with sl st to form ring.")
}

// fromHook is "2nd ch from hook": into the starting chain. The chains passed
// over are the height of the first stitch, and count as one unless it is a
// single crochet or the words say otherwise.
func (w *roundWork) fromHook(p *notation.Place) ([]fabric.Place, *halt) {
	if w.c.below == nil || w.c.below.Number != 0 || w.pos > 0 {
		return nil, stopAt(p.Span, "from-hook", "chains are counted from the hook only at the beginning of the first row",
			"Name the stitch another way.")
	}
	n := p.Nth
	if n < 1 {
		return nil, stopAt(p.Span, "from-hook", fmt.Sprintf("there is no %dth ch from the hook", n), "Count from 1: the chain on the hook is not counted.")
	}
	if n > len(w.c.spots) {
		return nil, w.outOf(p, n-len(w.c.spots))
	}
	if !w.r.Row && len(w.c.spots) <= 6 && n == len(w.c.spots) {
		// All of the first round goes into one chain: it is the ring.
		w.c.below.Ring, w.c.ring = true, true
		w.c.spots = nil
		w.same = w.ringPlaces()
		w.started = true
		if k := w.mainKind(); w.skippedCounts(k, n-1) {
			return w.same, w.add(fabric.Stitch{Kind: stitch.Of(stitch.Chain), Role: fabric.Start, Chains: n - 1,
				Counts: true, As: stitch.Of(k.Base), On: w.same}, p.Span)
		}
		return w.same, nil
	}
	for j := 0; j < n-1; j++ {
		w.use(j, skipped)
	}
	k := w.mainKind()
	c := w.skippedCount()
	w.checkSkipped(c, n-1)
	block := c == nil && w.r.Row && w.blockChains() == n-1
	counts := !block && w.skippedCounts(k, n-1)
	if c != nil && c.As.Is() {
		k = c.As // "3 skipped chs count as dc", before a row of sc
	}
	space := c != nil && c.Space
	if !w.started && c == nil && !counts && (block || w.skippedLoop(k, n-1)) {
		w.started, w.begun = true, true
		for i := 0; i < n-1; i++ {
			if h := w.add(fabric.Stitch{Kind: stitch.Of(stitch.Chain)}, p.Span); h != nil {
				return nil, h
			}
		}
	}
	if n > 1 && !w.started {
		w.started = true
		st := fabric.Stitch{Kind: stitch.Of(stitch.Chain), Role: fabric.Start, Chains: n - 1}
		along := 0
		if over := n - 1 - k.Chains(); counts && over > 0 {
			// What is more than the height of the stitch lies along the row,
			// over as many chains that are passed over.
			if along = over; over%2 == 0 {
				along = over / 2
			}
		}
		if c != nil && counts && c.Chains > 0 {
			along = min(c.Chains, n-2)
		}
		foot := n - 2
		if base := c.BaseOf(n - 1); counts && base > 0 {
			along = max(0, min(c.Chains, n-2-base))
			if foot = n - 2 - along - base; along == 0 {
				st.Chains = max(1, n-1-base)
			}
			foot = max(0, foot)
		}
		if along > 0 && counts {
			st.Chains = min(n-1-along, k.Chains())
			foot = n - 2 - along
			if n-1-along <= k.Chains() {
				foot = n - 2
			}
		}
		if space {
			// "skipped chs count as a ch-1 sp"
			along = min(c.Chains, n-2)
			st.Chains, foot = n-1-along, n-2-along
		}
		st.On = []fabric.Place{w.c.place(foot, stitch.Top)}
		if counts {
			st.Counts, st.As = true, stitch.Of(k.Base)
		}
		if h := w.add(st, p.Span); h != nil {
			return nil, h
		}
		for i := 0; i < along; i++ {
			if h := w.add(fabric.Stitch{Kind: stitch.Of(stitch.Chain)}, p.Span); h != nil {
				return nil, h
			}
		}
	}
	return w.take(n-1, 0, p), nil
}

// skippedCount is what the words say of the chains passed over at the
// beginning, nil when nothing.
func (w *roundWork) skippedCount() *notation.Counts {
	for _, it := range w.items {
		if k, ok := it.(*notation.Counts); ok && !k.Half && k.As.Shape == stitch.Plain {
			return k
		}
	}
	return w.throughout[0]
}

// skippedCounts reports whether n chains passed over at the beginning count as
// a stitch of the kind: as the words say, or as the join does; else by the rule
// of the trade.
func (w *roundWork) skippedCounts(k stitch.Kind, n int) bool {
	if c := w.skippedCount(); c != nil {
		return !c.Not && !c.Space
	}
	if j := closingJoin(w.items); j != nil && j.Place != nil {
		switch j.Place.Target.Sort {
		case notation.StartChain:
			return true
		case notation.OfKind:
			return false
		}
	}
	counts := k.Base >= stitch.Half && n >= k.Chains()
	if k.Base >= stitch.Half {
		w.unsaid |= spaceBit(n)
		if w.reading.otherwise&spaceBit(n) != 0 {
			counts = !counts
		}
	}
	return counts
}

// otherSide goes on along the other side of the starting chain.
func (w *roundWork) otherSide(it *notation.OtherSide) *halt {
	if w.opening && len(w.part.Rounds) == 1 {
		return nil // along the chains across a slit, which come next
	}
	if w.underneath() {
		w.loop = stitch.Underside
		return nil
	}
	if w.c.oval > 0 && !w.r.Row {
		return nil // said again
	}
	if w.beforePoint() {
		return nil // "working up the other side of the chain" of a point, which comes next
	}
	if w.c.below == nil || w.c.below.Number != 0 || len(w.c.spots) == 0 {
		return stopAt(it.Span, "other-side", "there is no starting chain with another side to work along", "")
	}
	if !w.begun && w.used == 0 && w.pos == 0 {
		return nil // a first row, along the chain as it is
	}
	w.aroundEnd(w.after)
	return nil
}

// ontoOtherSide goes on along the other side of the starting chain of an oval where the words name
// it with the place, "3 sc in last ch, sc in next 4 chs on opposite side of ch", or turn the work at
// the end of the chain: "3 sc in last ch, rotate, sc in next 4 chs".
func (w *roundWork) ontoOtherSide(s *notation.Stitches, p *notation.Place) {
	if w.r.Row || !w.begun || w.c.oval > 0 || w.c.below == nil || w.c.below.Number != 0 || w.c.below.Ring || w.c.below.Carried || w.opening || w.nest > 0 ||
		p.Target.Sort != notation.ChainStitch && p.Target.Sort != notation.AnyStitch || p.Pick != notation.Next && p.Pick != notation.Each || p.Of != nil ||
		len(w.c.spots) == 0 || w.pos < len(w.c.spots) {
		return
	}
	if p.Target.Name == notation.ChainEdge || w.rotatedBefore(s) || w.otherSideNext() {
		w.aroundEnd(append([]notation.Item{s}, w.after...))
	}
}

// chainLoops is a place "next 9 loops" on the other side of a starting chain, whose loops they are.
func (w *roundWork) chainLoops(p *notation.Place) *notation.Place {
	if w.c.oval == 0 || len(w.c.runs) > 0 || !p.Target.IsLoop() || p.Target.Chains > 0 || p.Target.Name != "" || p.Of != nil {
		return p
	}
	one := *p
	one.Target.Sort, one.Target.Kind = notation.ChainStitch, stitch.Of(stitch.Chain)
	return &one
}

// otherSideNext reports whether the other side of the chain is named behind the stitches that go
// into it: "sc in next 4 chs on opposite side".
func (w *roundWork) otherSideNext() bool {
	if len(w.after) == 0 {
		return false
	}
	_, ok := w.after[0].(*notation.OtherSide)
	return ok
}

// rotatedBefore reports whether the work is rotated just before an instruction.
func (w *roundWork) rotatedBefore(s *notation.Stitches) bool {
	i := slices.Index(w.items, notation.Item(s))
	if i < 1 {
		return false
	}
	n, ok := w.items[i-1].(*notation.Note)
	return ok && rotates.MatchString(n.Text)
}

// rotates are words that turn the work at the end of a chain, and no more than that.
var rotates = regexp.MustCompile(`(?i)^(?:do not turn,? *)?(?:rotate|pivot)(?: (?:the |your )?(?:work|piece))?(?: 180(?: degrees|°)?)?$`)

// aroundEnd goes round the end of a starting chain: its chains come again in the order they were
// made; the one at the turn has been worked into. What follows are the items.
func (w *roundWork) aroundEnd(items []notation.Item) {
	n := len(w.c.spots)
	last := n - 1
	for last >= 0 && w.c.spots[last].use != worked {
		last--
	}
	first := last
	for first >= 0 && w.c.spots[first].use != skipped {
		first--
	}
	for j := last; j > first; j-- {
		s := w.c.spots[j]
		s.use = unused
		if j == last && (w.madeIn(s.ref) != 1 || w.takes(items) == last-first-1) {
			continue // it has the stitches of its end already
		}
		w.c.spots = append(w.c.spots, s)
	}
	if end := len(w.c.spots) - 1; end >= n {
		w.c.oval = end
		w.c.spots[end].optional = w.ovalEnd(end)
	}
	w.pos = n
	w.loop = stitch.Underside
}

// ovalEnd reports whether a spot is the other side of the first chain of an oval and
// that chain holds the stitches of its end already: more than one.
func (w *roundWork) ovalEnd(i int) bool {
	if i != w.c.oval || i == 0 {
		return false
	}
	return w.madeIn(w.c.spots[i].ref) > 1
}

// takes is how many places instructions take that go into so many in turn, 0 for others.
func (w *roundWork) takes(items []notation.Item) (n int) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			switch {
			case len(it.Places) == 0 && it.N.Set():
				n += it.N.For(w.size)
			case len(it.Places) == 1 && it.Places[0].Pick == notation.Next && it.Places[0].N.Set():
				n += it.Places[0].N.For(w.size)
			case len(it.Places) == 1 && it.Places[0].Pick == notation.Next:
				n++
			default:
				return 0
			}
		case *notation.Skip, *notation.Repeat, *notation.Group:
			return 0
		}
	}
	return n
}

// madeIn is how many of the stitches so far stand in one place.
func (w *roundWork) madeIn(at fabric.Ref) (n int) {
	for k := range w.r.Stitches {
		if st := &w.r.Stitches[k]; st.Counts && len(st.On) > 0 && st.On[0].At == at {
			n++
		}
	}
	return n
}
