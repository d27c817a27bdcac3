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
	if !w.begun && !w.started && w.nest == 0 && !w.slitAhead() && len(w.r.Stitches) == w.travelled() && !w.startsPoint(n) && !w.beginsLoop(it, n) {
		h := w.start(it, n)
		if h == nil && !w.r.Stitches[len(w.r.Stitches)-1].Counts {
			w.beganBeyond(w.next)
		}
		return h
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

// standsOnFirst lets a round that begins with loops of chains or with a skip go
// on from the stitch that was joined to, on which the hook stands: the next is
// the one after, and that one comes last.
func (w *roundWork) standsOnFirst() {
	below := w.c.below
	if below == nil || below.Closing != fabric.Joined || below.Number == 0 || w.r.Row || w.started || w.pos > 0 || w.same != nil ||
		below.Completed > 0 || len(w.c.spots) < 2 || w.c.lead > 0 || w.settled {
		return
	}
	for i := range w.r.Stitches {
		if !w.r.Stitches[i].IsChain() {
			return
		}
	}
	w.c.begin(1)
	w.c.lead = 1
}

// beginsLoop reports whether the chain that a round begins with is the first of
// its loops: the repeat after it begins with the like and what follows that, as
// in "ch 3, sl st in next st, *ch 3, sl st in next st; rep from * around".
func (w *roundWork) beginsLoop(it *notation.Chain, n int) bool {
	if w.edgeLoop(it, n) || w.firstLoop(it, n) || w.closedLoop(it, n) || w.heartLoop(it, n) || w.beginsBlock(it, n) {
		return true
	}
	if w.r.Row || it.Counts != nil || it.Beg || w.c.below == nil || w.c.below.Closing != fabric.Joined || w.c.below.Number == 0 {
		return false
	}
	var made []notation.Item
	for i, o := range w.items {
		if o == notation.Item(it) {
			made = w.items[i:]
		}
	}
	at := 1
	for ; at < len(made); at++ {
		if _, skip := made[at].(*notation.Skip); !skip {
			break
		}
	}
	if at+1 >= len(made) {
		return false
	}
	s, ok := made[at].(*notation.Stitches)
	rep, repeats := made[at+1].(*notation.Repeat)
	if !ok || !repeats || len(rep.Items) <= at || s.What.Kind.Base > stitch.Single || len(s.Places) != 1 || s.Places[0].Pick != notation.Next {
		return false
	}
	again, chain := rep.Items[0].(*notation.Chain)
	t, stitches := rep.Items[at].(*notation.Stitches)
	return chain && stitches && again.N.For(w.size) == n && t.What == s.What
}

// slitAhead reports whether a chain at the beginning of a round of a spiral, which
// has no beginning chains, goes over stitches that are skipped: the slit of a thumb.
func (w *roundWork) slitAhead() bool {
	if w.r.Row || w.c.below == nil || w.c.below.Closing != fabric.Spiral || w.c.below.Number == 0 || len(w.after) == 0 {
		return false
	}
	s, ok := w.after[0].(*notation.Skip)
	return ok && !s.Unworked
}

// travelled is the number of slip stitches that moved the beginning.
func (w *roundWork) travelled() int {
	n := 0
	for n < len(w.r.Stitches) && w.r.Stitches[n].Role == fabric.Travel {
		n++
	}
	return n
}

// onlyTravelled reports whether nothing has been made yet but slip stitches that
// moved the beginning to a place.
func (w *roundWork) onlyTravelled() bool {
	n := w.travelled()
	return n > 0 && n == len(w.r.Stitches) && len(w.same) > 0
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
	if w.c.below == nil {
		return nil // nothing has been worked yet that could be worked into
	}
	carried := w.c.carried
	w.c = layCourse(w.c.below, w.c.index, w.r.Reversed != w.c.below.Reversed)
	w.c.carried = carried
	w.undo, w.pos, w.same = nil, 0, nil
	for i := range w.r.Stitches {
		st := &w.r.Stitches[i]
		if st.Role == fabric.Start && len(st.On) == 1 && len(w.sideRows) > 0 && w.c.index == 0 && len(w.c.spots) > 0 && !endsFirst(w.after) {
			st.On = []fabric.Place{w.c.place(0, st.On[0].Into)} // "Ch 1, turn": at the end of the last row
		}
		if st.Role == fabric.Start && st.Counts && len(w.c.spots) > 0 {
			w.take(0, 0, &notation.Place{})
		}
	}
	return nil
}

// start makes the chain that begins a round.
func (w *roundWork) start(it *notation.Chain, n int) *halt {
	w.settle(it, nil)
	c := w.startCounts(it, n)
	if w.started = true; c != nil && (c == it.Counts || c == w.throughout[n] || c == w.throughout[0]) {
		w.saids[w.r], w.saidHere = c, c == it.Counts
	}
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
	if c != nil && c.Space {
		// "ch 2 (counts as ch-1 sp)"
		extra = min(c.Chains, n-1)
		st.Chains = n - extra
	} else if c != nil && !c.Not {
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
	case w.inJoinLoop():
		// The stitch that closed the round below brought the hook to its loop.
		st.On = []fabric.Place{w.c.space(0)}
		if st.Counts {
			w.take(0, 1, &notation.Place{Target: notation.Target{Sort: notation.ChainSpace}})
		}
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

// inJoinLoop reports whether the round below was closed by a stitch that
// completes a loop, and nothing has been worked since: that loop is where the
// work stands.
func (w *roundWork) inJoinLoop() bool {
	return w.c.below != nil && w.c.below.Completed > 0 && len(w.c.runs) > 0 && w.pos == 0 && w.c.runs[0].From == 0
}

// standsFor is the plain stitch as tall as n chains (turning chains: sc 1, hdc
// 2, dc 3, tr 4, dtr 5; Crochet Guild of America lesson, 1997).
func standsFor(n int) stitch.Base {
	return min(stitch.Single+stitch.Base(max(n, 1)-1), stitch.TripleTreble)
}

// settle lets the round begin where slip stitches have moved it: what they
// passed comes last.
func (w *roundWork) settle(it notation.Item, rest []notation.Item) {
	n := len(w.r.Stitches)
	if n == 0 || w.settled || w.nest > 0 || w.r.Row || w.r.Stitches[n-1].Role != fabric.Travel || len(w.r.Stitches[n-1].On) == 0 {
		return
	}
	w.settled = true
	if c, ok := it.(*notation.Chain); ok && w.unmoved(c, rest) {
		return
	}
	at := w.spotOf(w.r.Stitches[n-1].On[0])
	if w.r.Stitches[n-1].On[0].Into == stitch.Between {
		at = w.pos - 1 // the stitch before the gap
	}
	if at <= 0 || at >= w.pos {
		return
	}
	n = len(w.c.spots)
	by := w.c.begin(at)
	for i, k := range w.lastSkip {
		w.lastSkip[i] = (k - by + n) % n
	}
	w.pos, w.undo = w.pos-by, nil
}

// startCounts is what the chain at the beginning counts as: what the words say
// of it or said before; what the join says; else the rule of the trade, that
// it counts except for single crochet.
func (w *roundWork) startCounts(it *notation.Chain, n int) *notation.Counts {
	if c := it.Counts; c != nil {
		w.checkHeight(it, c, n)
		// What is said once holds for the chains after it that say nothing,
		// as designers mean it whether or not they write "throughout"; but not against what
		// is said of all of them.
		delete(w.onlyHere, n)
		switch all := w.throughout[n]; {
		case all == nil || !all.Throughout || c.Throughout:
			w.throughout[n] = c
		case all.Not != c.Not:
			w.onlyHere[n] = c
		case all.As != c.As || all.Chains != c.Chains || all.Space != c.Space:
			w.throughout[n] = c
		}
		return c
	}
	if c := w.counted[it]; c != nil {
		return c
	}
	c := w.unsaidCounts(it, n)
	w.counted[it] = c
	return c
}

// unsaidCounts is what a chain at the beginning counts as that its words say nothing of.
func (w *roundWork) unsaidCounts(it *notation.Chain, n int) *notation.Counts {
	if c := w.throughout[n]; c != nil {
		if only := w.onlyHere[n]; only != nil && w.againAs(only, c, n) {
			return only
		}
		return c
	}
	if c := w.throughout[0]; c != nil && (c.Not || n >= c.As.Chains() || w.mainKind().Base == c.As.Base) {
		return c // a ch 1 is no dc, whatever the taller ones are
	}
	k := w.mainKind()
	as := &notation.Counts{Span: it.Span, As: stitch.Of(k.Base)}
	not := &notation.Counts{Span: it.Span, Not: true}
	if k.Base >= stitch.Half && n > k.Chains() {
		as.Chains = n - k.Chains()
	}
	if j := closingJoin(w.items); j != nil && j.Place != nil {
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

// againAs reports whether a chain that its round says nothing of is what a round before said of its own
// only, against what is said of all of them: as the join tells, which goes into the chain or into the
// first stitch of another kind; else as the counts do.
func (w *roundWork) againAs(only, all *notation.Counts, n int) bool {
	if j := closingJoin(w.items); j != nil && j.Place != nil {
		switch p := j.Place; {
		case p.Target.Sort == notation.StartChain || p.Of != nil && p.Of.Target.Sort == notation.StartChain:
			return !only.Not
		case p.Target.Sort == notation.OfShape || p.Target.Sort == notation.OfName || p.Target.Sort == notation.OfKind && p.Target.Kind != all.As && p.Target.Kind != only.As:
			return only.Not
		}
	}
	w.unsaid |= spaceBit(n)
	return w.reading.otherwise&spaceBit(n) != 0
}

// closingJoin is the join that closes a round, not that of the yarn it begins with.
func closingJoin(items []notation.Item) *notation.Join {
	for i, it := range items {
		if needsPlaces(items[i : i+1]) {
			return joinIn(items[i:])
		}
		if _, chain := it.(*notation.Chain); chain {
			return joinIn(items[i:])
		}
	}
	return nil
}

// joinIn is the last join that closes the round among the instructions: none of a new yarn.
func joinIn(items []notation.Item) *notation.Join {
	for i := len(items) - 1; i >= 0; i-- {
		switch it := items[i].(type) {
		case *notation.Join:
			if it.Yarn == "" {
				return it
			}
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
