package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// edgeLoop reports whether the chain that a row begins with is a loop at its edge and
// nothing else: nothing is said of what it counts as, the row makes no other of its
// length, and a loop so long is counted behind it, "(7 tr and a 5-ch loop)", or gone
// into by the next row. Before a single crochet, 2 chains are long enough.
func (w *roundWork) edgeLoop(it *notation.Chain, n int) bool {
	if w.tie(it, n) || w.saidLoop(it, n) {
		return true
	}
	if w.uncountedLoop(it, n) {
		return true
	}
	if !w.r.Row || it.Counts != nil || w.throughout[n] != nil || n < 4 && (n < 2 || w.mainKind().Base != stitch.Single) || chainsOf(w.items, n) != 1 {
		return false
	}
	for _, s := range w.stated {
		for i := range s.Counts {
			if t := &s.Counts[i].Target; t.Sort == notation.ChainSpace && t.Chains == n {
				return s.Counts[i].N.For(w.size) == 1
			}
		}
	}
	next := w.nextText()
	return next != nil && (intoSpaces(next.Items, n) == 1 || intoEdgeLoop(next.Items))
}

// uncountedLoop reports whether the chain that a row begins with, which is said to count as no stitch, is
// a loop at its edge: it is long, the row makes no other of its length, and the next goes into one so long, "5 ch
// (does not count as a st), …", "7 dc in 5-ch loop".
func (w *roundWork) uncountedLoop(it *notation.Chain, n int) bool {
	c := it.Counts
	if c == nil {
		c = w.throughout[n]
	}
	if !w.r.Row || c == nil || !c.Not || n < 4 || chainsOf(w.items, n) != 1 {
		return false
	}
	next := w.nextText()
	return next != nil && (intoSpaces(next.Items, n) == 1 || namesEdgeLoop(next.Items))
}

// saidLoop reports whether the words say that the chain a row begins with is a space of all its
// chains: "2 ch (counts as a 2-ch sp)".
func (w *roundWork) saidLoop(it *notation.Chain, n int) bool {
	c := it.Counts
	if c == nil {
		c = w.throughout[n]
	}
	return w.r.Row && c != nil && c.Space && c.Chains >= n
}

// tallest is more chains than any stitch is tall.
const tallest = 10

// tie reports whether the chain that a row begins with is a tie that hangs before it: far more
// chains than a stitch is tall, with nothing said of what it counts as, and either another tie of
// much the same length behind the row, or chains that the next row goes into.
func (w *roundWork) tie(it *notation.Chain, n int) bool {
	if !w.r.Row || it.Counts != nil || w.throughout[n] != nil || n <= tallest || !slices.Contains(w.items, notation.Item(it)) {
		return false
	}
	for i := len(w.items) - 1; i >= 0; i-- {
		switch last := w.items[i].(type) {
		case *notation.Turn, *notation.Note, *notation.FastenOff:
			continue
		case *notation.Chain:
			if m := last.N.For(w.size); last != it && m >= n-1 && m <= n+1 {
				return true
			}
		}
		break
	}
	next := w.nextText()
	if next == nil {
		return false
	}
	taken := 0
	for _, it := range next.Items {
		if p := firstPlace(it); p != nil && p.Target.Sort == notation.ChainStitch && p.Pick == notation.Next && p.N.Set() {
			taken = max(taken, p.N.For(w.size))
		}
	}
	return taken >= n-1
}

// firstLoop reports whether the chain that a round begins with is its first space: nothing is said
// of what it counts as, and the round is joined to a space of as many, "ch 2, 12 sc evenly down row
// ends, …; join with sl st in first ch-2 sp", or has as many such spaces stated as it makes of
// them with that one.
func (w *roundWork) firstLoop(it *notation.Chain, n int) bool {
	if w.r.Row || it.Counts != nil || it.Beg || w.throughout[n] != nil || w.throughout[0] != nil || n < 2 || w.same != nil || len(w.after) == 0 {
		return false
	}
	if next, ok := w.after[0].(*notation.Stitches); !ok || len(next.Places) == 0 || next.Places[0].Pick == notation.Same || next.Places[0].Target.Sort == notation.ChainSpace {
		return false
	}
	if j := closingJoin(w.items); j != nil && j.Place != nil {
		if p := j.Place; p.Pick == notation.First && p.Of == nil && p.Target.Sort == notation.ChainSpace && p.Target.Chains == n && p.Target.Name == "" {
			return true
		}
	}
	for _, at := range w.items {
		if _, repeats := at.(*notation.Repeat); repeats {
			return false
		}
	}
	for _, s := range w.stated {
		for i := range s.Counts {
			if t := &s.Counts[i].Target; t.Sort == notation.ChainSpace && t.Chains == n {
				return s.Counts[i].N.For(w.size) > 1 && s.Counts[i].N.For(w.size) == chainsOf(w.items, n)
			}
		}
	}
	return false
}

// closedLoop reports whether the chain that a round begins with goes straight back to where it
// stands, "sl st in next sc, ch 12, sl st in same sc": a loop, and no stitch.
func (w *roundWork) closedLoop(it *notation.Chain, n int) bool {
	if w.r.Row || it.Counts != nil || it.Beg || n < 3 || len(w.after) == 0 {
		return false
	}
	s, ok := w.after[0].(*notation.Stitches)
	return ok && s.What.Kind == stitch.Of(stitch.Slip) && len(s.Places) == 1 && s.Places[0].Pick == notation.Same && s.Places[0].Target.Sort != notation.JoinPlace
}

// hangs reports whether all that a round makes is a loop to hang the piece by: chains that go back by a
// slip stitch to where they stand.
func (w *roundWork) hangs() bool {
	var at []fabric.Place
	chains, back := 0, 0
	for i := range w.r.Stitches {
		st := &w.r.Stitches[i]
		switch {
		case st.IsChain():
			chains += max(st.Chains, 1)
		case st.Kind != stitch.Of(stitch.Slip) || len(st.On) != 1 || chains > 0 && (at == nil || st.On[0] != at[0]):
			return false
		default:
			if chains > 0 {
				back++
			}
			at = st.On
		}
	}
	return !w.r.Row && chains > 3 && back == 1
}

// skippedLoop reports whether n chains passed over at the beginning of the first row are
// a loop at its edge: many more than a stitch of the kind is tall, before a low one, and
// the next row goes into loops.
func (w *roundWork) skippedLoop(k stitch.Kind, n int) bool {
	if !w.r.Row || n < 2 || k.Base > stitch.Single || len(w.r.Stitches) > 0 {
		return false
	}
	next := w.nextText()
	if next == nil {
		return false
	}
	into := intoSpaces(next.Items, n)
	return n >= 4 && chainsOf(w.items, n) > 0 && into > 0 || into == 1 && chainsOf(w.items, n) == 0 || intoEdgeLoop(next.Items)
}

// intoEdgeLoop reports whether the words name the loop at the edge that the row below begins with:
// "sc in turning ch sp", "in ch-sp formed by skipped chs"; or the last space, behind a repeat
// into each of the others: "*ch 1, sc in next ch-1 sp; rep from * across, ch 1, sc in last ch-sp",
// "*sc in next ch-1 sp, ch 1, sk next sc; rep from * to last sp, sc in last sp".
func intoEdgeLoop(items []notation.Item) bool {
	if endsInLastSpace(items) {
		return true
	}
	for i := 2; i < len(items); i++ {
		last := firstPlace(items[i])
		_, chain := items[i-1].(*notation.Chain)
		rep, repeat := items[i-2].(*notation.Repeat)
		if last == nil || !chain || !repeat || last.Pick != notation.Last || last.Target.Sort != notation.ChainSpace || last.N.Set() || rep.Extent.Sort != notation.ToEnd {
			continue
		}
		for _, it := range rep.Items {
			if p := firstPlace(it); p != nil && p.Pick == notation.Next && p.Target.Sort == notation.ChainSpace {
				return true
			}
		}
	}
	return namesEdgeLoop(items)
}

// namesEdgeLoop is the same where it is named by what it is: "turning ch sp", "turning loop".
func namesEdgeLoop(items []notation.Item) bool {
	return slices.ContainsFunc(items, func(it notation.Item) bool {
		p := firstPlace(it)
		return p != nil && p.Target.Sort == notation.ChainSpace && p.Target.Name == notation.EdgeLoop
	})
}

// endsInLastSpace reports whether a row goes into spaces and over the stitches behind each of them,
// up to the last space, which ends it: nothing is said of a stitch behind that one.
func endsInLastSpace(items []notation.Item) bool {
	n := len(items)
	for n > 0 && !needsPlaces(items[n-1:n]) {
		n--
	}
	if n < 2 {
		return false
	}
	last := firstPlace(items[n-1])
	at := n - 2
	if _, chain := items[at].(*notation.Chain); chain {
		at--
	}
	if last == nil || at < 0 || last.Pick != notation.Last || last.Target.Sort != notation.ChainSpace || last.N.Set() {
		return false
	}
	rep, repeats := items[at].(*notation.Repeat)
	if !repeats || rep.Extent.Sort != notation.ToLast || rep.Extent.N.For(0) != 1 || rep.Extent.Target.Sort != notation.ChainSpace {
		return false
	}
	into, over := false, false
	for _, it := range rep.Items {
		switch it := it.(type) {
		case *notation.Skip:
			over = into
		default:
			if p := firstPlace(it); p != nil {
				into = p.Pick == notation.Next && p.Target.Sort == notation.ChainSpace
				over = false
			}
		}
	}
	if over {
		return true
	}
	// "Ch 2, *sc in next ch-1 sp, ch 1; rep …": a low stitch needs no chains to turn so long.
	turn, ok := items[0].(*notation.Chain)
	s, low := items[n-1].(*notation.Stitches)
	return into && ok && turn.Counts == nil && turn.N.For(0) > 1 && low && s.What.Kind.Base == stitch.Single
}

// nextText is the round that is written behind the one being worked or, where that only
// repeats another, the first that it repeats; nil for none.
func (w *roundWork) nextText() *notation.Round {
	rounds := w.texts[w.index].Rounds
	for i, r := range rounds {
		if len(r.Items) > 0 && len(w.items) > 0 && r.Line == w.r.Line {
			for _, next := range rounds[i+1:] {
				if ref := onlyRef(next); ref != nil {
					if of := w.repeatedFirst(ref, r); of != nil {
						return of
					}
				}
				if makes(next.Items) {
					return next
				}
			}
		}
	}
	return nil
}

// repeatedFirst is the first round that a reference behind the round at names, nil where it
// cannot be told.
func (w *roundWork) repeatedFirst(ref *notation.Ref, at *notation.Round) *notation.Round {
	if ref.Onward || ref.Piece != "" || ref.Called != "" || len(ref.Rounds) == 0 && ref.Last.For(w.size) != 1 {
		return nil
	}
	if len(ref.Rounds) == 0 {
		return at // "Rep last row"
	}
	n := ref.Rounds[0].From.For(w.size)
	for _, r := range w.texts[w.index].Rounds {
		for _, rg := range r.Label.Numbers {
			if rg.From.For(w.size) <= n && n <= rg.To.For(w.size) && onlyRef(r) == nil {
				return r
			}
		}
	}
	return nil
}

// chainsOf is how many chains of n the instructions make, a repeated one counted twice.
func chainsOf(items []notation.Item, n int) (sum int) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Chain:
			if it.N.For(0) == n {
				sum++
			}
		case *notation.Group:
			sum += chainsOf(it.Items, n)
		case *notation.Repeat:
			sum += 2 * chainsOf(it.Items, n)
		}
	}
	return sum
}

// intoSpaces is how many instructions go into a space of just n chains, a repeated one
// counted twice.
func intoSpaces(items []notation.Item, n int) (sum int) {
	for _, it := range items {
		places := placesOf(it)
		if r, repeat := it.(*notation.Repeat); repeat {
			sum += 2 * intoSpaces(r.Items, n)
		}
		for i := range places {
			if p := &places[i]; p.Target.Sort == notation.ChainSpace && p.Target.Chains == n && p.Pick != notation.Each {
				sum++
			}
		}
	}
	return sum
}
