package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// chain makes chains: of the starting chain, at the beginning of a round, or
// along it.
func (w *roundWork) chain(it *notation.Chain) *halt {
	n := it.N.For(w.size)
	if n == 0 {
		return nil
	}
	if n > maxRound {
		return stopAt(it.Span, "too-large", fmt.Sprintf("%d chains are more than can be worked", n), "Check the number.")
	}
	if w.c.below == nil && !w.c.ring && !w.begun && !w.started {
		return w.castOn(it, n)
	}
	if !w.begun && !w.started && w.nest == 0 && len(w.r.Stitches) == w.travelled() {
		return w.start(it, n)
	}
	w.begun = true
	from := len(w.r.Stitches)
	if w.split != nil && w.lastChain.item == it {
		from = w.lastChain.from
	}
	for i := 0; i < n; i++ {
		if h := w.add(fabric.Stitch{Kind: stitch.Of(stitch.Chain)}, it.Span); h != nil {
			return h
		}
	}
	w.lastChain = chainMade{it, from, len(w.r.Stitches)}
	return nil
}

// travelled is the number of slip stitches that moved the beginning.
func (w *roundWork) travelled() int {
	n := 0
	for n < len(w.r.Stitches) && w.r.Stitches[n].Role == fabric.Travel {
		n++
	}
	return n
}

// castOn makes chains of the starting chain.
func (w *roundWork) castOn(it *notation.Chain, n int) *halt {
	w.castItem = it
	if w.foundation == nil {
		w.foundation = &fabric.Round{Label: "the starting chain", Row: w.r.Row, Line: it.Line}
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
	f := &fabric.Round{Label: "the ring", Ring: true, Line: it.Line}
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
	return w.start(w.castItem, chains)
}

// onRound lays out the round whose loops the words name.
func (w *roundWork) onRound(it *notation.InLoops) *halt {
	if it.Round == 0 {
		return nil
	}
	for i, r := range w.part.Rounds {
		if r.Number == it.Round {
			w.c = layCourse(r, i, w.r.Reversed != r.Reversed)
			w.pos, w.used, w.undo, w.same = 0, 0, nil, nil
			return nil
		}
	}
	return stopAt(it.Span, "no-round", fmt.Sprintf("there is no round %d below", it.Round), "Name a round that has been worked already.")
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
	if len(w.r.Stitches) > 0 && !w.r.Row {
		// Foundation stitches, joined into a round.
		return w.join(&notation.Join{Span: it.Span}, nil)
	}
	return stopAt(it.Span, "ring", "there is no chain here to make a ring of", "Write, for example: Ch 4, join with sl st to form ring.")
}

// turnNow turns the work at the beginning of a round.
func (w *roundWork) turnNow(t *notation.Turn) *halt {
	if w.turnedBefore || w.r.Row {
		// Said at the end of the last round already, or a row, which is
		// always turned.
		return nil
	}
	w.r.Reversed = !w.r.Reversed
	w.r.Wrong = !w.r.Wrong
	w.c = layCourse(w.c.below, w.c.index, w.r.Reversed != w.c.below.Reversed)
	w.undo, w.pos, w.same = nil, 0, nil
	for i := range w.r.Stitches {
		if st := &w.r.Stitches[i]; st.Role == fabric.Start && st.Counts && len(w.c.spots) > 0 {
			w.take(0, 0, &notation.Place{})
		}
	}
	return nil
}

// start makes the chain that begins a round.
func (w *roundWork) start(it *notation.Chain, n int) *halt {
	c := w.startCounts(it, n)
	w.started = true
	st := fabric.Stitch{Kind: stitch.Of(stitch.Chain), Role: fabric.Start, Chains: n}
	extra := 0
	if w.leads != nil {
		// The chain and the stitch after it are one: a beginning cluster.
		c = &notation.Counts{Not: true}
		if w.leadsLeg && w.pos == 0 && len(w.c.spots) > 0 {
			st.On = w.take(0, 0, &notation.Place{})
			w.same = nil
			return w.add(st, it.Span)
		}
	}
	if w.split != nil && w.split.chainLeg {
		st.Chains = n
		if w.pos == 0 && len(w.c.spots) > 0 {
			st.On = w.take(0, 0, &notation.Place{})
			w.same = nil
		}
		return w.add(st, it.Span)
	}
	if c != nil && !c.Not {
		st.Counts, st.As = true, c.As
		if !st.As.Is() {
			st.As = stitch.Of(standsFor(n))
			if k := w.mainKind(); k.Is() && k.Chains() <= n {
				st.As = stitch.Of(k.Base)
			}
		}
		extra = min(c.Chains, n-1)
		st.Chains = n - extra
	}
	switch {
	case w.inGroup != nil:
		st.On = w.inGroup
	case w.same != nil:
		st.On = w.same
	case w.ground != nil || w.c.ring && (len(w.c.spots) == 0 || w.goesIntoRing):
		st.On = w.ringPlaces()
	case len(w.c.spots) > 0 && st.Counts:
		st.On = w.take(0, 0, &notation.Place{})
	case len(w.c.spots) > 0:
		st.On = []fabric.Place{w.c.place(0, stitch.Top)}
	case w.c.edge > 0:
		row := w.edgeRows[0]
		st.On = []fabric.Place{{Into: stitch.RowEnd, Part: w.c.edgePart, At: fabric.Ref{Round: row}, Last: fabric.Ref{Round: row}}}
	}
	if h := w.add(st, it.Span); h != nil {
		return h
	}
	for i := 0; i < extra; i++ {
		if h := w.add(fabric.Stitch{Kind: stitch.Of(stitch.Chain)}, it.Span); h != nil {
			return h
		}
	}
	return nil
}

// standsFor is the plain stitch as tall as n chains (turning chains: sc 1, hdc
// 2, dc 3, tr 4, dtr 5; Crochet Guild of America lesson, 1997).
func standsFor(n int) stitch.Base {
	return min(stitch.Single+stitch.Base(max(n, 1)-1), stitch.TripleTreble)
}

// startCounts is what the chain at the beginning counts as: what the words say
// of it or said before; what the join says; else the rule of the trade, that
// it counts except for single crochet.
func (w *roundWork) startCounts(it *notation.Chain, n int) *notation.Counts {
	if c := it.Counts; c != nil {
		// What is said once holds for the chains after it that say nothing,
		// as designers mean it whether or not they write "throughout".
		w.throughout[n] = c
		return c
	}
	if c := w.throughout[n]; c != nil {
		return c
	}
	if c := w.throughout[0]; c != nil {
		return c
	}
	k := w.mainKind()
	as := &notation.Counts{Span: it.Span, As: stitch.Of(k.Base)}
	not := &notation.Counts{Span: it.Span, Not: true}
	if k.Base >= stitch.Half && n > k.Chains() {
		as.Chains = n - k.Chains()
	}
	if j := joinIn(w.items); j != nil && j.Place != nil {
		p := j.Place
		if p.Target.Sort == notation.StartChain || p.Of != nil && p.Of.Target.Sort == notation.StartChain {
			if p.Nth > 0 && p.Nth < n {
				as.Chains = n - p.Nth
				as.As = stitch.Of(standsFor(p.Nth))
			}
			return as
		}
		if p.Target.Sort == notation.OfKind {
			return not
		}
	}
	counts := k.Base >= stitch.Half && n >= k.Chains() && n > 1
	if n > 1 {
		w.unsaid |= spaceBit(n)
		if w.reading.otherwise&spaceBit(n) != 0 {
			counts = !counts
		}
	}
	if counts {
		return as
	}
	return not
}

// joinIn is the last join among the instructions.
func joinIn(items []notation.Item) *notation.Join {
	for i := len(items) - 1; i >= 0; i-- {
		switch it := items[i].(type) {
		case *notation.Join:
			return it
		case *notation.Repeat:
			if j := joinIn(it.Ending); j != nil {
				return j
			}
		}
	}
	return nil
}

// mainKind is the first kind of stitch that the round is made of.
func (w *roundWork) mainKind() stitch.Kind { return w.firstKind(w.items, 0) }

func (w *roundWork) firstKind(items []notation.Item, depth int) stitch.Kind {
	for _, it := range items {
		var k stitch.Kind
		switch it := it.(type) {
		case *notation.Stitches:
			k = it.What.Kind
			if d := w.definition(&it.What); d != nil && depth < maxNested {
				k = w.firstKind(d.items, depth+1)
			}
		case *notation.Group:
			k = w.firstKind(it.Items, depth)
		case *notation.Repeat:
			k = w.firstKind(it.Items, depth)
		}
		if k.Base >= stitch.Single {
			return k
		}
	}
	return stitch.Kind{}
}

// plainBase is the stitch that an increase or decrease is made of: the plain
// one of the round, else the one most of the round below is made of.
func (w *roundWork) plainBase() stitch.Base {
	if k := w.mainKind(); k.Base >= stitch.Single {
		return k.Base
	}
	var n [stitch.TripleTreble + 1]int
	best := stitch.Single
	if w.c.below != nil {
		for i := range w.c.below.Stitches {
			if st := &w.c.below.Stitches[i]; st.Counts {
				b := st.Counted().Base
				if n[b]++; b >= stitch.Single && n[b] > n[best] {
					best = b
				}
			}
		}
	}
	return best
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
		if k := w.mainKind(); k.Base >= stitch.Half && n-1 >= k.Chains() && !w.saysNot() {
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
	counts := k.Base >= stitch.Half && n-1 >= k.Chains()
	if c != nil {
		counts = !c.Not
	} else if k.Base >= stitch.Half {
		w.unsaid |= spaceBit(n - 1)
		if w.reading.otherwise&spaceBit(n-1) != 0 {
			counts = !counts
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
		if along > 0 && counts {
			st.Chains = min(n-1-along, k.Chains())
			foot = n - 2 - along
			if n-1-along <= k.Chains() {
				foot = n - 2
			}
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

func (w *roundWork) saysNot() bool {
	c := w.skippedCount()
	return c != nil && c.Not
}

// otherSide goes on along the other side of the starting chain.
func (w *roundWork) otherSide(it *notation.OtherSide) *halt {
	if w.c.below == nil || w.c.below.Number != 0 || len(w.c.spots) == 0 {
		return stopAt(it.Span, "other-side", "there is no starting chain with another side to work along", "")
	}
	// The chains come again in the order they were made; the one at the turn
	// has been worked into.
	n := len(w.c.spots)
	last := n - 1
	for last >= 0 && w.c.spots[last].use != worked {
		last--
	}
	for j := last; j >= 0; j-- {
		if w.c.spots[j].use == skipped {
			break
		}
		s := w.c.spots[j]
		s.use = unused
		if j == last {
			continue
		}
		w.c.spots = append(w.c.spots, s)
	}
	w.pos = n
	w.loop = stitch.Underside
	return nil
}
