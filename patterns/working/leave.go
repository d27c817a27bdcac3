package working

import (
	"slices"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// left is how many of an extent's targets there are from pos on, counted no
// further than limit.
func (w *roundWork) left(e *notation.Extent, limit int) int {
	n := 0
	t := w.spaceMeant(&e.Target)
	switch t.Sort {
	case notation.ChainSpace:
		for k := w.c.runFrom(w.pos); k < len(w.c.runs) && n < limit; k++ {
			if w.c.runIs(k, t) {
				n++
			}
		}
		return n
	case notation.OfKind, notation.OfShape, notation.ChainStitch:
		for i := w.pos; i < len(w.c.spots) && n < limit; i++ {
			if w.c.matches(i, &e.Target) {
				n++
			}
		}
		return n
	case notation.OfName:
		for i := w.pos; i < len(w.c.spots) && n < limit; i++ {
			if w.c.groupAt(i, e.Target.Name) != nil {
				n++
			}
		}
		return n
	}
	return w.remaining(limit)
}

// spaceMeant is a target, "ch-3", as the space that it is short for, where the round below has such a
// space still to come and the words do not speak of the chain that it began with.
func (w *roundWork) spaceMeant(t *notation.Target) *notation.Target {
	if !t.ByNumber() {
		return t
	}
	space := &notation.Target{Sort: notation.ChainSpace, Chains: t.Chains, Text: t.Text}
	for k := range w.c.runs {
		if w.c.runIs(k, space) {
			return space
		}
	}
	return t
}

// gapsMeant is a place "next 2 sps" as the spaces between groups, where the round below is of
// groups with no chains between them, or where as many of these lie before the next corner.
func (w *roundWork) gapsMeant(p *notation.Place) *notation.Place {
	if p.Target.Sort != notation.ChainSpace || p.Target.Chains != 0 || p.Target.Name != "" || p.Of != nil || p.Below != 0 ||
		p.Pick != notation.Next && p.Pick != notation.Each || len(p.Also) > 0 || strings.Contains(p.Target.Text, "ch") {
		return p
	}
	gap := *p
	gap.Target = notation.Target{Sort: notation.Gap, Name: notation.Groups, Text: p.Target.Text}
	from, to := 0, len(w.c.spots)
	if len(w.c.runs) > 0 {
		if k := w.c.runFrom(w.pos); k < len(w.c.runs) {
			to = w.c.runs[k].From
		}
		from = w.pos
	}
	gaps := 0
	for i := from; i < to; i++ {
		if w.c.next(i) == (i+1)%len(w.c.spots) && w.c.gapIs(i, &gap.Target) {
			gaps++
		}
	}
	if gaps == 0 || len(w.c.runs) > 0 && (p.Pick != notation.Next || !p.N.Set() || p.N.For(w.size) < 2 || p.N.For(w.size) != gaps) {
		return p
	}
	return &gap
}

// spacesInAll is a place "each of the 8 ch sps" as each chain space, where the round below has
// eight of them and none of eight chains.
func (w *roundWork) spacesInAll(p *notation.Place) *notation.Place {
	p = w.gapsMeant(p)
	if p.Pick != notation.Each || !p.Target.InAll() || len(w.c.runs) != p.Target.Chains || slices.Contains(w.c.chains, p.Target.Chains) {
		return p
	}
	each := *p
	each.Target.Chains = 0
	return &each
}

// atPlace reports whether the next place is the one an extent goes up to. Work
// that goes from space to space passes the stitches before it.
func (w *roundWork) atPlace(e *notation.Extent, passing bool) bool {
	if n := e.N.For(w.size); n > 0 {
		return w.before(&e.Target, n)
	}
	if e.Target.Sort == notation.SeamPlace {
		return !slices.ContainsFunc(w.c.spots[w.pos:w.nextSeam()], func(sp spot) bool { return sp.counts })
	}
	if w.pos < len(w.c.spots) && w.c.atCornerStitch(w.pos, &e.Target) {
		return true
	}
	if e.Target.Sort == notation.ChainSpace {
		if e.Target.Name == notation.Corner && len(w.c.runs) == 0 && w.cornersBelow() {
			return w.pos == len(w.c.spots)
		}
		if e.Target.Name == notation.Corner && len(w.c.runs) == 0 && w.c.index == 0 && len(w.sideRows) > 0 {
			return w.pos == len(w.c.spots) // the end of the edge of a flat piece
		}
		k := w.c.runFrom(w.pos)
		if k == len(w.c.runs) {
			if k > 0 && !w.r.Row && w.c.runs[0].From > 0 && !needsPlaces(w.next) && !needsPlaces(w.after) {
				return w.pos == len(w.c.spots) // up to where the round began, and nothing is told behind it
			}
			// Round a circle the next is then the first, where the round began.
			return w.r.Row || k == 0 || w.c.runs[0].From > 0 || !w.c.runIs(0, &e.Target) || w.pos > 0 && w.c.after(w.pos-1) == 0
		}
		for i := w.pos; i < w.c.runs[k].From && !passing; i++ {
			if w.c.spots[i].counts {
				return false
			}
		}
		return w.c.runIs(k, &e.Target)
	}
	if e.Target.Sort == notation.StartChain && w.pos < len(w.c.spots) && w.c.spots[w.pos].run > 0 {
		// The chains that the turning chain has beyond its stitch are part of it.
		if end := w.c.runs[w.c.spots[w.pos].run-1].To; end < len(w.c.spots) && w.c.spots[end].st.Role == fabric.Start {
			return true
		}
	}
	if k := w.c.runFrom(w.pos); e.Target.ByNumber() && k < len(w.c.runs) && w.c.runs[k].From == w.pos &&
		w.c.runIs(k, &notation.Target{Sort: notation.ChainSpace, Chains: e.Target.Chains}) {
		return true // "to the ch-6, hdc in each of the 6 chs"
	}
	return w.pos >= len(w.c.spots) || w.c.matches(w.pos, &e.Target)
}

// spaceOfTurning reports whether "each tr and each ch-1 sp to turning ch" is to take the space
// that the turning chain has beyond its stitch: work goes into the stitch behind it, "tr in
// 3rd ch of turning ch".
func (w *roundWork) spaceOfTurning(targets []notation.Target, e *notation.Extent) bool {
	if len(w.next) == 0 {
		return false
	}
	s, ok := w.next[0].(*notation.Stitches)
	if !ok || len(s.Places) != 1 || s.Places[0].Target.Sort != notation.ChainStitch || s.Places[0].Of == nil || s.Places[0].Of.Target.Sort != notation.StartChain {
		return false
	}
	if e.Target.Sort != notation.StartChain || w.pos >= len(w.c.spots) || w.c.spots[w.pos].run == 0 {
		return false
	}
	return slices.ContainsFunc(targets, func(t notation.Target) bool { return t.Sort == notation.ChainSpace })
}

// edgeAhead is the space beside the turning chain at the end of a row where the words behind the each
// go into that by its own name: "sc in each st and ch-1 sp across, ending with sc in sp of ch-4 and sc
// in 3rd ch of ch-4". It is -1 for none.
func (w *roundWork) edgeAhead() int {
	k := w.c.edgeRun()
	if !w.r.Row || w.nest > 0 || w.nestGroup > 0 || k < 0 {
		return -1
	}
	for _, it := range w.after {
		var l []notation.Place
		switch it := it.(type) {
		case *notation.Note:
			continue
		case *notation.Stitches:
			l = it.Places
		case *notation.Group:
			l = it.Place
		}
		if len(l) != 1 || l[0].Target.Sort != notation.ChainSpace || l[0].Pick == notation.Same {
			break
		}
		switch t := &l[0].Target; {
		case t.Name == notation.EdgeLoop, l[0].Of != nil && l[0].Of.Target.Sort == notation.StartChain:
			return k
		case t.Chains > 0 && w.c.chains[k] != t.Chains && w.c.runIs(k, t):
			return k
		}
		break
	}
	return -1
}

// chainOfLast reports whether a row ends in the top of a half cluster, by its name, that the
// row below began with: "ch 3, CL over next 4 sts". The chain there is a leg of it.
func (w *roundWork) chainOfLast() bool {
	end := len(w.c.spots) - 1
	if !w.r.Row || w.lastGroup == 0 || end < 1 || w.c.groups[w.lastGroup-1].To != end {
		return false
	}
	chain, cluster := &w.c.spots[end], &w.c.spots[end-1]
	return chain.use == unused && chain.st.Role == fabric.Start && cluster.use == worked && cluster.st.Kind.Shape == stitch.Together
}

// before reports whether no more than n stitches are left before the next place that a
// target names.
func (w *roundWork) before(t *notation.Target, n int) bool {
	left := 0
	for i := w.pos; i < len(w.c.spots) && left <= n; i++ {
		if run := w.c.spots[i].run; run > 0 && t.Sort == notation.ChainSpace && w.c.runIs(run-1, t) || w.c.atCornerStitch(i, t) ||
			t.Sort != notation.ChainSpace && w.c.matches(i, t) {
			break
		}
		if w.c.spots[i].counts && w.c.spots[i].use == unused {
			left++
		}
	}
	return left <= n
}

// spacesLeft reports whether there are chain spaces further on of a length
// that the round has been going into.
func (w *roundWork) spacesLeft() bool {
	for k := w.c.runFrom(w.pos); k < len(w.c.runs); k++ {
		if w.wants(k) {
			return true
		}
	}
	return false
}

// spaceBit stands for spaces of so many chains in a set of bits.
func spaceBit(chains int) uint64 { return 1 << min(chains, 63) }

// wants reports whether the round has been going into spaces like this one.
func (w *roundWork) wants(k int) bool {
	if w.figures&spaceBit(w.c.chains[k]) != 0 && !w.c.amongLike(k) {
		return false // beside a figure
	}
	return w.intoSpace&(spaceBit(0)|spaceBit(w.c.chains[k])) != 0
}

// restOfFirst reports whether the last n stitches of the round below stand in the
// place that it began in: the second half of a group split at its join.
func (w *roundWork) restOfFirst(n int) bool {
	if len(w.c.spots) == 0 || len(w.c.spots[0].st.On) == 0 || w.c.spots[0].st.Role != fabric.Start {
		return false
	}
	foot := w.c.spots[0].st.On[0]
	for i := len(w.c.spots) - 1; i > 0 && n > 0; i-- {
		if s := &w.c.spots[i]; !s.counts {
			continue
		} else if s.use != unused || len(s.st.On) == 0 || s.st.On[0] != foot {
			return false
		}
		n--
	}
	return n == 0
}

// restOfCut reports whether all that is left belongs to the group in whose middle the round began:
// "join with sc in 3rd dc of any 5-dc group, …, sc in 3rd dc of next 5-dc group".
func (w *roundWork) restOfCut() bool {
	for _, g := range w.c.cutGroups {
		within := true
		for i := range w.c.spots {
			s := &w.c.spots[i]
			within = within && (i >= g.From || !s.counts || s.use != unused || s.optional)
		}
		if within {
			return true
		}
	}
	return false
}

// stopsBefore reports whether the words of a row go no further than to its last n places:
// "sc in each st to last 4 sts, turn".
func (w *roundWork) stopsBefore(n int) bool {
	if !w.r.Row {
		return false
	}
	for i := len(w.items) - 1; i >= 0; i-- {
		var e *notation.Extent
		switch it := w.items[i].(type) {
		case *notation.Stitches:
			if len(it.Places) == 0 {
				return false
			}
			e = &it.Places[len(it.Places)-1].Extent
		case *notation.Repeat:
			e = &it.Extent
		case *notation.Turn, *notation.Note, *notation.FastenOff:
			continue
		default:
			return false
		}
		return e.Sort == notation.ToLast && max(1, e.N.For(w.size)) == n && w.remaining(n+1) == n
	}
	return false
}

// leftover is the number of places that have been neither used, skipped by
// name, nor passed on the way to a place that was named.
func (w *roundWork) leftover() int {
	if w.usedRing && !w.intoStitch {
		return 0 // the chains of the ring are under the stitches
	}
	n := 0
	for i := range w.c.spots {
		if s := &w.c.spots[i]; s.counts && s.use == unused && !s.optional && !w.ovalEnd(i) {
			n++
		}
	}
	if w.r.Row && w.blockChains() > 0 {
		n = 0 // from corner to corner the work goes from space to space
	}
	if n > 0 && (w.betweenPetals() || w.scallopBehind(n)) || n == 1 && (w.chainOfLast() || w.inWholeChain() || w.endsInTie()) {
		return 0
	}
	// A round that goes from space to space passes the stitches between its
	// last place and the join as it passes the others.
	if w.lastSpace && n <= w.gap {
		n = 0
	}
	// A row that slip stitches have brought to its first space ends in its last.
	if n > 0 && w.lastSpace && n <= w.passedBefore() && w.remaining(n+1) == n {
		n = 0
	}
	// A round that goes from shell to shell passes the rest of the one that the
	// round below was begun and ended with as it passes the others.
	if n > 0 && w.lastGroup > 0 && w.joined && w.restOfFirst(n) {
		n = 0
	}
	if n > 0 && w.joined && w.restOfCut() {
		n = 0
	}
	// What slip stitches at the beginning have moved the round past is passed at its
	// end as the like is between the other places.
	if n > 0 && w.settled && (n <= w.gap || w.lastGroup > 0) && w.joined && w.remaining(n+1) == n {
		n = 0
	}
	// "*ch 5, sk 5 sts, sc in next st; rep from * around, ch 5, join": the last
	// arch passes what the others skip by name; so does a round that goes from gap
	// to gap.
	if n > 0 && n <= w.mostSkipped && w.joined && w.remaining(n+1) == n {
		last := len(w.r.Stitches) - 1
		for last > 0 && w.r.Stitches[last].Role == fabric.Join {
			last--
		}
		if w.endsInChain() && !w.skippedLast() || last >= 0 && into(&w.r.Stitches[last]) == stitch.Between {
			n = 0
		}
	}
	if n > 0 && n <= w.gap && (w.endsBeyondSpace(n) || w.likePassed(n)) {
		n = 0
	}
	if n > 0 {
		return n
	}
	for k, r := range w.c.runs {
		if w.wants(k) && r.From >= w.pos && w.c.spots[r.From].use == unused && w.c.spots[r.To-1].use == unused {
			n++
		}
	}
	if n > 0 && w.joined && w.endsInChain() && n <= w.spacesSpanned() {
		return 0
	}
	return n
}

// likePassed reports whether the last n stitches of the round lie under its last chains and are such as
// it has passed over before, on the way to a kind of stitch: "*sc in next 3 dc, ch 2; rep from * around"
// over 3 dc and a sc in turn.
func (w *roundWork) likePassed(n int) bool {
	if !w.joined || len(w.passed) == 0 || !w.endsInChain() || w.skippedLast() || w.remaining(n+1) != n {
		return false
	}
	for i := w.pos; i < len(w.c.spots); i++ {
		if s := &w.c.spots[i]; s.counts && s.use == unused && !slices.ContainsFunc(w.passed, func(at int) bool { return w.c.spots[at].st.Counted() == s.st.Counted() }) {
			return false
		}
	}
	return true
}

// skippedLast reports whether the last place that has been dealt with was skipped by name, so
// that the chains there have said already what they pass. A place behind it that comes before the
// first on the round is where that began, and is joined to.
func (w *roundWork) skippedLast() bool {
	for i := len(w.c.spots) - 1; i >= 0; i-- {
		if s := &w.c.spots[i]; s.counts && s.use != unused {
			return s.use == skipped
		} else if s.counts && s.ref.Stitch < w.c.spots[0].ref.Stitch {
			return false
		}
	}
	return false
}

// endsInChain reports whether the last that was made before the join is a chain.
func (w *roundWork) endsInChain() bool {
	i := len(w.r.Stitches) - 1
	for i > 0 && w.r.Stitches[i].Role == fabric.Join {
		i--
	}
	return i >= 0 && w.r.Stitches[i].IsChain() && w.stepped.n == 0
}

// spacesSpanned is how many spaces at most the round goes over at a time, by name or on the way to
// a place that is named: the chains before its join span as many without a word.
func (w *roundWork) spacesSpanned() (most int) {
	n := 0
	for k, r := range w.c.runs {
		switch w.c.spots[r.From].use {
		case passed, skipped:
			if w.wants(k) {
				n++
			}
		default:
			n = 0
		}
		most = max(most, n)
	}
	return most
}

// endsBeyondSpace reports whether a row goes over chains from a space to its last stitch, "…,
// (3 dc, ch 2, 3 dc) in ch-2 sp, ch 1, 3 dc in last st", or lets the shell there spread so far,
// and the n stitches that are left lie between the two, as others lie between its first stitch and
// its first space.
func (w *roundWork) endsBeyondSpace(n int) bool {
	last := len(w.c.spots) - 1
	i := len(w.r.Stitches) - 1
	if !w.r.Row || i < 0 || last < n || len(w.r.Stitches[i].On) == 0 || w.spotOf(w.r.Stitches[i].On[0]) != last || into(&w.r.Stitches[i]) == stitch.Space {
		return false
	}
	edge := last // the first of the last stitches, which are worked one after the other: "dc in last 4 sts"
	for edge > 0 && w.c.spots[edge].use == worked && w.c.spots[edge].counts {
		edge--
	}
	edge++
	for k, left := edge-1, n; left > 0; k-- {
		if k < 0 || w.c.spots[k].counts && w.c.spots[k].use != unused {
			return false
		} else if w.c.spots[k].counts {
			left--
		}
	}
	for i >= 0 && len(w.r.Stitches[i].On) > 0 && into(&w.r.Stitches[i]) != stitch.Space && w.spotOf(w.r.Stitches[i].On[0]) >= edge {
		i--
	}
	chains := 0
	for ; i >= 0 && w.r.Stitches[i].IsChain() && w.r.Stitches[i].Role != fabric.Start; i-- {
		chains++
	}
	if i < 0 || into(&w.r.Stitches[i]) != stitch.Space {
		return false
	}
	return chains > 0 || i > 0 && slices.Equal(w.r.Stitches[i].On, w.r.Stitches[i-1].On)
}

// spacesAmongLast is how many of the last stitches that a repeat goes up to are spaces: what
// follows goes into as many places, one after the other, and some of them are spaces, as in "rep
// from * to last 2 sts, sc in last ch-sp, sc in last sc". Otherwise stitches would be passed over.
func spacesAmongLast(r *notation.Repeat, rest []notation.Item, size int) (spaces int) {
	e := &r.Extent
	if e.Sort != notation.ToLast || e.Target.Sort != notation.AnyStitch || len(r.Ending) > 0 {
		return 0
	}
	n := 0
	for _, it := range rest {
		switch it := it.(type) {
		case *notation.Join, *notation.Turn, *notation.Note, *notation.Chain, *notation.Colour, *notation.FastenOff:
			continue
		case *notation.Stitches:
			if len(it.Places) != 1 || it.What.Kind.Shape == stitch.Together || it.What.Shaping < 0 {
				return 0
			}
		case *notation.Group:
			if len(it.Place) != 1 {
				return 0
			}
		default:
			return 0
		}
		p := firstPlace(it)
		if p.N.Set() || p.Pick != notation.Next && p.Pick != notation.Last || p.Of != nil && p.Target.Sort == notation.ChainSpace {
			return 0
		}
		if n++; p.Target.Sort == notation.ChainSpace {
			spaces++
		}
	}
	if n != e.N.For(size) || spaces == n {
		return 0
	}
	return spaces
}
