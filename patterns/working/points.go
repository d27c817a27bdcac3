package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// point is a chain of the round itself that is worked back along: the point of a star, a
// leaf, a fringe. Its stitches go into the chains from the tip down.
type point struct {
	on         bool
	from, made int // the first of the chains, and how many
	next       int // the chain that is worked into next
}

// startsPoint reports whether chains are worked back along as soon as they are made.
func (w *roundWork) startsPoint(n int) bool {
	if w.c.below == nil || w.c.below.Number == 0 && !w.c.below.Carried || len(w.next) == 0 {
		return false
	}
	if _, turn := w.next[0].(*notation.Turn); turn && len(w.next) > 1 {
		w.next = w.next[1:] // "Ch 6, turn, dc in 4th ch from hook"
	}
	s, ok := w.next[0].(*notation.Stitches)
	return ok && len(s.Places) > 0 && s.Places[0].Target.Sort == notation.FromHook && s.Places[0].Nth < n-1
}

// goesOnAlong reports whether the instruction after this one goes into the next chain.
func (w *roundWork) goesOnAlong() bool {
	if len(w.next) == 0 {
		return false
	}
	s, ok := w.next[0].(*notation.Stitches)
	return ok && len(s.Places) > 0 && s.Places[0].Target.Sort == notation.ChainStitch && s.Places[0].Of == nil
}

// backAlong works stitches into the chains of a point. It is false where the words go into
// no such chains.
func (w *roundWork) backAlong(s *notation.Stitches, n int, k stitch.Kind, p *notation.Place) (*halt, bool) {
	if l := w.lastChain; p.Target.Sort == notation.FromHook && w.begun && l.item != nil && l.to == len(w.r.Stitches) && p.Nth < l.to-l.from-1 {
		if p.Nth < 1 {
			return nil, false
		}
		w.point = point{on: true, from: l.from, made: l.to - l.from, next: l.to - p.Nth}
		w.lastChain = chainMade{}
		w.tipLoop(p.Nth - 1)
		return w.intoPoint(s, n), true
	}
	if !w.point.on || w.point.next < w.point.from {
		w.point.on = false
		return nil, false
	}
	switch {
	case p.Target.Sort == notation.ChainStitch && p.Of == nil && p.Target.Name == "":
	case p.Target.Sort == notation.AnyStitch && p.Of == nil && (p.Pick == notation.Next || p.Pick == notation.Each):
	default:
		return w.endPoint(p.Span), true
	}
	count := 1
	switch left := w.point.next - w.point.from + 1; {
	case p.N.Set():
		count = p.N.For(w.size)
	case p.Pick == notation.Each:
		count = left
	}
	legs := 1
	if k.Shape == stitch.Together {
		if legs = k.Legs; count == 1 {
			count = legs
		}
	}
	for i := 0; i < count; i += legs {
		if w.point.next-legs+1 < w.point.from {
			return stopAt(p.Span, "runs-out", fmt.Sprintf("the %d chains have been worked back along already", w.point.made), "Check how many stitches go into them."), true
		}
		if legs > 1 {
			var on []fabric.Place
			for range legs {
				on = append(on, w.chainOfPoint())
			}
			w.same = on[legs-1:]
			if h := w.into(s, 1, on); h != nil {
				return h, true
			}
			continue
		}
		if h := w.intoPoint(s, n); h != nil {
			return h, true
		}
	}
	return nil, true
}

// intoPoint makes n stitches in the next chain of the point.
func (w *roundWork) intoPoint(s *notation.Stitches, n int) *halt {
	w.same = []fabric.Place{w.chainOfPoint()}
	return w.into(s, n, w.same)
}

// chainOfPoint is the next chain of the point, from its tip down.
func (w *roundWork) chainOfPoint() fabric.Place {
	ref := fabric.Ref{Round: len(w.part.Rounds), Stitch: w.point.next}
	w.point.next--
	return fabric.Place{Into: stitch.Top, At: ref, Last: ref}
}

// endPoint leaves the chains of a point. It is the fault of some that nothing has been
// worked into.
func (w *roundWork) endPoint(at notation.Span) *halt {
	if left := w.point.next - w.point.from + 1; w.point.on && left > 0 {
		w.point.on = false
		return stopAt(at, "left-over", fmt.Sprintf("%s of the %d that are worked back along %s left without a stitch", plural(left, "chain"), w.point.made, isAre(left)),
			"Work into each of them, or skip them by name: sk next ch.")
	}
	w.point.on = false
	return nil
}

// skipsInPoint passes over chains of a point by name. It is false for anything else.
func (w *roundWork) skipsInPoint(s *notation.Skip, n int) bool {
	if !w.point.on || s.Target.Sort != notation.ChainStitch || w.point.next-n+1 < w.point.from {
		return false
	}
	w.point.next -= n
	return true
}

// atTip is the fault of a tip that the work has not come to.
func (w *roundWork) atTip(p *notation.Place) *halt {
	if p.Target.Sort != notation.ChainStitch || p.Target.Name != notation.Tip || w.pos < len(w.c.spots) && w.c.spots[w.pos].st.IsChain() {
		return nil
	}
	return stopAt(p.Span, "no-tip", "the work has not come to a chain at the tip of a point", "Work along its side first, or name the stitch: 3 sc in next st.")
}

// beforePoint reports whether the work has come to the chains of a point of the round below, which
// lie bare.
func (w *roundWork) beforePoint() bool {
	return w.pos < len(w.c.spots) && w.c.spots[w.pos].st.IsChain() && slices.ContainsFunc(w.c.spots, func(s spot) bool { return s.onPoint() })
}

// onPoint reports whether a stitch stands on the chains of a point of its own round.
func (s *spot) onPoint() bool {
	return len(s.st.On) > 0 && s.st.On[0].At.Round == s.ref.Round && s.st.On[0].Into != stitch.Ring
}

// footOfFirst is the slip stitch between points that the round was begun in, where it comes round to it
// again: the last of its points ends there. It is nil where another is left.
func (w *roundWork) footOfFirst(p *notation.Place) []fabric.Place {
	if !w.begun || w.r.Row || p.Pick != notation.Next || p.Target.Sort != notation.OfKind || p.Target.Kind != stitch.Of(stitch.Slip) || len(w.c.spots) == 0 {
		return nil
	}
	if first := &w.c.spots[0]; first.use == worked || first.onPoint() || !w.c.matches(0, &p.Target) {
		return nil
	}
	if at, _ := w.nearest([]notation.Target{p.Target}); at >= 0 || w.remaining(1) > 0 {
		return nil
	}
	w.use(0, worked)
	w.same = []fabric.Place{w.c.place(0, p.Into)}
	return w.same
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// besideTie is the last stitch of the row, which a slip stitch goes into behind a tie that has been
// worked back along: "ch 31, sl st in 2nd ch from hook and in each ch, sl st in last sc". It is nil
// where stitches of the row below are left, or there is no tie.
func (w *roundWork) besideTie(p *notation.Place) []fabric.Place {
	if !w.slipping || !w.r.Row || !w.begun || p.N.Set() || p.Of != nil || p.Target.Sort != notation.AnyStitch && p.Target.Sort != notation.OfKind || w.remaining(1) > 0 {
		return nil
	}
	chains := 0
	for i := len(w.r.Stitches) - 1; i >= 0; i-- {
		st := &w.r.Stitches[i]
		switch {
		case st.IsChain():
			chains++
		case st.Kind.Base == stitch.Slip:
		case chains < 2 || p.Target.Sort == notation.OfKind && !sameKind(&p.Target, st):
			return nil
		default:
			ref := fabric.Ref{Round: len(w.part.Rounds), Stitch: i}
			return []fabric.Place{{Into: p.Into, At: ref, Last: ref}}
		}
	}
	return nil
}

// endsInTie reports whether a row is a tie that hangs from the one stitch which the row below has
// come to: a chain worked back along to its last and fastened off, and nothing else.
func (w *roundWork) endsInTie() bool {
	return w.r.Row && w.fasten && w.c.count() == 1 && w.point.made > 0 && w.point.from == 0 && w.point.next < 0
}
