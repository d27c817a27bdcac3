package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// onLeftFree lays the course on the stitches that rounds before have left free, where the round goes
// into nothing else: "2 dc in each skipped st around", "in unworked sts of Rnd 1, sc in next st". Those
// are then all the stitches there are.
func (w *roundWork) onLeftFree() {
	if w.r.Row || w.opening && w.c.index == 0 || w.c.below == nil || w.foundation != nil {
		return
	}
	n, ok := intoLeft(w.items, 0)
	if !ok {
		return
	}
	for i := w.c.index; i >= 0; i-- {
		r := w.part.Rounds[i]
		if r.Row || n != 0 && r.Number != n || n == 0 && i == w.c.index {
			continue
		}
		c := layCourse(r, i, w.r.Reversed != r.Reversed)
		used := w.usedSince(i)
		free := c.spots[:0]
		for _, s := range c.spots {
			if s.counts && !used[s.ref] {
				free = append(free, s)
			}
		}
		if len(free) > 0 {
			w.c = &course{below: r, index: i, spots: free}
			w.onLeft = true
			return
		}
	}
}

// leftInSlit is how many stitches "each skipped st" is in a slit: those to come that are no chains.
func (w *roundWork) leftInSlit() (n int) {
	for _, s := range w.c.spots[min(w.pos, len(w.c.spots)):] {
		if s.counts && s.use == unused && !s.st.IsChain() {
			n++
		}
	}
	return n
}

// usedSince are the stitches of the round at an index that later rounds have worked into.
func (w *roundWork) usedSince(at int) map[fabric.Ref]bool {
	used := map[fabric.Ref]bool{}
	for _, r := range w.part.Rounds[at+1:] {
		for i := range r.Stitches {
			for _, on := range r.Stitches[i].On {
				if on.Part == 0 && on.At.Stitch >= 0 && on.Into != stitch.RowEnd && r.Stitches[i].Role != fabric.Travel {
					used[on.At] = true
				}
			}
		}
	}
	return used
}

// intoLeft reports whether all that instructions go into are stitches that were passed over before the
// round, and the number of the round that the words say they are of, 0 where they say none.
func intoLeft(items []notation.Item, n int) (int, bool) {
	some, plain, other, ground := false, true, false, false
	var look func(items []notation.Item)
	place := func(pl *notation.Place) {
		switch {
		case pl.Pick == notation.Same || pl.Pick == notation.Made:
		case ground && pl.Below == 0 && pl.Of == nil && pl.Pick != notation.Centre && (pl.Target.Sort == notation.AnyStitch || pl.Target.Sort == notation.OfKind):
		case pl.Pick != notation.Skipped || pl.Of != nil || pl.Below > 0 || n != 0 && pl.Below < 0 && pl.Below != -n ||
			pl.Target.Sort != notation.AnyStitch && pl.Target.Sort != notation.OfKind:
			other = true
		default:
			if some = true; pl.Below < 0 {
				n = -pl.Below
			}
		}
	}
	begun := false
	look = func(items []notation.Item) {
		for _, it := range items {
			switch it := it.(type) {
			case *notation.Stitches:
				for i := range it.Places {
					place(&it.Places[i])
				}
				plain, begun = plain && (len(it.Places) > 0 || len(it.But) == 0), true
			case *notation.Group:
				for i := range it.Place {
					place(&it.Place[i])
				}
				begun = true
			case *notation.Repeat:
				look(it.Items)
				look(it.Ending)
			case *notation.In:
				if it.Place.Pick == notation.Skipped {
					place(&it.Place)
					ground = true
				}
			case *notation.Join:
				if !begun && it.Place != nil {
					place(it.Place)
				}
			case *notation.Skip, *notation.OtherSide:
				plain = false
			}
		}
	}
	look(items)
	return n, some && plain && !other
}

// slipsToLeft reports whether a slip stitch only brings the work to the first stitch that was passed over:
// "sl st to first skipped st, ch 1, sc in each skipped st". The round begins there, as where a yarn is
// joined.
func (w *roundWork) slipsToLeft(s *notation.Stitches, rest []notation.Item) bool {
	if s.What.Kind != stitch.Of(stitch.Slip) || w.begun || w.started || len(w.r.Stitches) > 0 || w.nest > 0 || len(s.Places) != 1 || !begins(rest) {
		return false
	}
	p := &s.Places[0]
	return p.Pick == notation.Skipped && p.Nth <= 1 && !p.Every && !p.N.Set() && w.ofLeft(p) != p
}

// onLeftHere is "in skipped sts of Rnd 1" before the words of the stitches that go there.
func (w *roundWork) onLeftHere(it *notation.In) *halt {
	if w.onLeft {
		return nil
	}
	return stopAt(it.Span, "nothing-skipped", "no stitches have been left free there, or the round goes into others as well", "Say of each stitch where it goes: sc in next skipped st of Rnd 1.")
}

// ofLeft is a place as it is called where nothing but what was passed over is worked into: "each skipped
// st" is each stitch there is.
func (w *roundWork) ofLeft(p *notation.Place) *notation.Place {
	if p.Pick != notation.Skipped || !w.onLeft && !w.missedBelow() || p.Of != nil {
		return p
	}
	if !w.onLeft && p.Nth != 1 || p.Target.Sort != notation.AnyStitch && p.Target.Sort != notation.OfKind {
		return p
	}
	plain := *p
	switch {
	case p.Every && !p.N.Set():
		plain.Pick = notation.Each
	case p.Nth == 1:
		plain.Pick, plain.Nth = notation.First, 0
	case p.Nth > 1:
		plain.Pick = notation.Nth
	default:
		plain.Pick = notation.Next
	}
	if plain.Below < 0 {
		plain.Below = 0
	}
	return &plain
}
