package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// skippedUnder is "next skipped sc of Rnd 1", "skipped st 2 rnds below" where the hook is: the stitch of an
// older round that was passed over between what the stitches on either side stand on, mostly under chains,
// and that nothing has gone into. The chains are passed. It is nil for any other place.
func (w *roundWork) skippedUnder(p *notation.Place) []fabric.Place {
	free, after := w.freeUnder(p)
	if len(free) == 0 {
		return nil
	}
	if len(free) == 1 {
		w.pos = max(w.pos, after)
	}
	w.same, w.deepAt = []fabric.Place{{Into: p.Into, At: free[0], Last: free[0]}}, w.pos
	return w.same
}

// skippedHere is how many stitches "each skipped st" are: those skipped in this round, or else those under
// the next chains. It is 1 where there are none, for which the words are then refused.
func (w *roundWork) skippedHere(p *notation.Place) int {
	if n := len(w.lastSkip); n > 0 {
		return n
	}
	free, _ := w.freeUnder(p)
	return max(len(free), 1)
}

// freeUnder are the stitches that skippedUnder means, in the direction of the work, and the spot behind the
// chains over them.
func (w *roundWork) freeUnder(p *notation.Place) (free []fabric.Ref, behind int) {
	if p.Of != nil || p.Nth > 1 || p.Into == stitch.FrontPost || p.Into == stitch.BackPost || w.c.below == nil || w.c.edge > 0 || w.c.carried != nil || p.Target.Sort != notation.AnyStitch && p.Target.Sort != notation.OfKind ||
		p.Below == 0 && len(w.lastSkip) > 0 {
		return nil, 0
	}
	at := w.c.index - 1
	switch {
	case p.Below < 0:
		at = w.roundNumbered(-p.Below + w.later)
	case p.Below > 2:
		at = w.c.index - p.Below + 1 // counted from the round that is being worked
	}
	if at < 0 || at >= w.c.index {
		return nil, 0
	}
	before, after := w.pos-1, w.pos
	for before >= 0 && w.c.spots[before].run > 0 {
		before--
	}
	for after < len(w.c.spots) && w.c.spots[after].run > 0 {
		after++
	}
	o := w.olderRound(at)
	from, to := -1, len(o.spots)
	if before >= 0 {
		for _, k := range w.standing(w.c.spots[before].ref, o) {
			from = max(from, k)
		}
	}
	if after < len(w.c.spots) {
		for _, k := range w.standing(w.c.spots[after].ref, o) {
			to = min(to, k)
		}
	}
	for i := from + 1; i < to; i++ {
		if sp := &o.spots[i]; sp.counts && !o.used[sp.ref] && o.matches(i, &notation.Target{Sort: p.Target.Sort, Kind: p.Target.Kind, Loop: p.Target.Loop, Text: p.Target.Text}) {
			free = append(free, sp.ref)
		}
	}
	return free, after
}

// olderRound is a round under the one below, in the direction of the work, and which of its stitches have
// been gone into.
type olderRound struct {
	*course
	order map[fabric.Ref]int
	used  map[fabric.Ref]bool
	seen  int // stitches of the round that is being worked
}

func (w *roundWork) olderRound(at int) *olderRound {
	o := w.older
	if o == nil || o.index != at {
		r := w.part.Rounds[at]
		o = &olderRound{course: layCourse(r, at, w.r.Reversed != r.Reversed), used: w.usedSince(at)}
		o.order = make(map[fabric.Ref]int, len(o.spots))
		for i := range o.spots {
			o.order[o.spots[i].ref] = i
		}
		w.older = o
	}
	for ; o.seen < len(w.r.Stitches); o.seen++ {
		for _, on := range w.r.Stitches[o.seen].On {
			o.used[on.At] = true
		}
	}
	return o
}

// standing are the places in the order of an older round that a stitch stands on, through the rounds
// between.
func (w *roundWork) standing(ref fabric.Ref, o *olderRound) (l []int) {
	if ref.Round <= o.index {
		if k, ok := o.order[ref]; ok {
			l = append(l, k)
		}
		return l
	}
	st := w.part.At(ref)
	if st == nil {
		return nil
	}
	for _, on := range st.On {
		if on.Part != 0 || on.At.Stitch < 0 || on.At.Round >= ref.Round {
			continue
		}
		l = append(l, w.standing(on.At, o)...)
		if on.Last != on.At {
			l = append(l, w.standing(on.Last, o)...)
		}
	}
	return l
}
