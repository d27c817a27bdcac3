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
