package working

import (
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// edgeLoop reports whether the chain that a row begins with is a loop at its edge and
// nothing else: nothing is said of what it counts as, the row makes no other of its
// length, and a loop so long is counted behind it, "(7 tr and a 5-ch loop)", or gone
// into by the next row.
func (w *roundWork) edgeLoop(it *notation.Chain, n int) bool {
	if !w.r.Row || it.Counts != nil || w.throughout[n] != nil || n < 4 || chainsOf(w.items, n) != 1 {
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
	return next != nil && intoSpaces(next.Items, n) == 1
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
	if j := joinIn(w.items); j != nil && j.Place != nil {
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

// skippedLoop reports whether n chains passed over at the beginning of the first row are
// a loop at its edge: many more than a stitch of the kind is tall, before a low one, and
// the next row goes into loops.
func (w *roundWork) skippedLoop(k stitch.Kind, n int) bool {
	if !w.r.Row || n < 4 || k.Base > stitch.Single || len(w.r.Stitches) > 0 || chainsOf(w.items, n) == 0 {
		return false
	}
	next := w.nextText()
	return next != nil && intoSpaces(next.Items, n) > 0
}

// nextText is the round that is written behind the one being worked, nil for none.
func (w *roundWork) nextText() *notation.Round {
	rounds := w.texts[w.index].Rounds
	for i, r := range rounds {
		if len(r.Items) > 0 && len(w.items) > 0 && r.Line == w.r.Line {
			for _, next := range rounds[i+1:] {
				if makes(next.Items) {
					return next
				}
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
		var places []notation.Place
		switch it := it.(type) {
		case *notation.Stitches:
			places = it.Places
		case *notation.Group:
			places = it.Place
		case *notation.Repeat:
			sum += 2 * intoSpaces(it.Items, n)
		}
		for i := range places {
			if p := &places[i]; p.Target.Sort == notation.ChainSpace && p.Target.Chains == n && p.Pick != notation.Each {
				sum++
			}
		}
	}
	return sum
}
