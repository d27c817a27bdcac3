package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// heart reports whether a round in a ring begins with chains and ends with chains and a slip
// stitch in the ring, and goes back to it nowhere else: "ch 3, 3 tr, 3 dc, 1 tr, 3 dc, 3 tr in
// ring, ch 3, sl st in ring". Both are loops that the next round goes into.
func heart(items []notation.Item) bool {
	first, last, back, in := -1, -1, 0, false
	for i, it := range items {
		switch it := it.(type) {
		case *notation.Chain:
			if first < 0 {
				first = i
			}
			last = i
			continue
		case *notation.Stitches:
			if slipsInRing(it) || in && slipsOnce(it) && len(it.Places) == 0 {
				if back++; last < 0 || last == first || last != i-1 {
					return false
				}
				continue
			}
			if it.What.Kind.Base == stitch.Slip {
				return false
			}
		case *notation.In:
			in = in || it.Place.Target.Sort == notation.Ring
			continue
		case *notation.Group:
		case *notation.Repeat, *notation.Join:
			return false
		default:
			continue
		}
		if first < 0 || back > 0 {
			return false
		}
	}
	return back == 1
}

// slipsInRing reports whether an instruction is one slip stitch in the ring.
func slipsInRing(s *notation.Stitches) bool {
	return slipsOnce(s) && len(s.Places) == 1 && (s.Places[0].Target.Sort == notation.Ring || magicLoop(&s.Places[0]))
}

// magicLoop reports whether a place is "the loop", which is the ring where there is no other.
func magicLoop(p *notation.Place) bool {
	t := &p.Target
	return p.Bare && p.Pick == notation.Next && !p.N.Set() && p.Of == nil && t.Sort == notation.ChainSpace && t.Chains == 0 && t.Name == "" && (t.Text == "loop" || t.Text == "lp")
}

func slipsOnce(s *notation.Stitches) bool {
	return s.What.Kind == stitch.Of(stitch.Slip) && !s.Times.Set() && (!s.N.Set() || s.N.For(0) == 1)
}

// heartLoop reports whether a chain is the loop that a heart begins with.
func (w *roundWork) heartLoop(it *notation.Chain, n int) bool {
	c := it.Counts
	return n > 1 && !w.r.Row && w.c.ring && (c == nil || c.Not) && heart(w.items)
}

// closesInRing closes a round with a slip stitch in the ring in its middle: that of a heart, and
// of the rounds on it. It reports whether it does.
func (w *roundWork) closesInRing(s *notation.Stitches) (*halt, bool) {
	ring := slipsInRing(s) || len(s.Places) == 0 && slipsOnce(s) && w.ground != nil && w.ground.Target.Sort == notation.Ring && heart(w.items)
	if !ring || w.r.Row || !w.begun || w.nest > 0 || needsPlaces(w.after) || w.c.ring && !heart(w.items) {
		return nil, false
	}
	if len(s.Places) == 1 && magicLoop(&s.Places[0]) && w.c.runFrom(w.pos) < len(w.c.runs) {
		return nil, false
	}
	at := len(w.part.Rounds) - 1
	for at >= 0 && !w.part.Rounds[at].Ring {
		at--
	}
	if at < 0 {
		return nil, false
	}
	ref := fabric.Ref{Round: at, Stitch: -1}
	if h := w.add(fabric.Stitch{Kind: s.What.Kind, Role: fabric.Join, On: []fabric.Place{{Into: stitch.Ring, At: ref, Last: ref}}}, s.Span); h != nil {
		return h, true
	}
	w.r.Closing, w.joined = fabric.Joined, true
	w.carryOn(w.after)
	return stopHere, true
}
