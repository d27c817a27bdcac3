package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// deeper is a place some rounds further down than the round below: under the
// next stitch, or under the next that stands on what the words name.
//
// "FPdc around next FPdc 2 rnds below" is counted by some from the round being
// worked: where no such stitch is that far down under any, the first time in a
// round, it is the one above that is meant, throughout the round.
func (w *roundWork) deeper(p *notation.Place, need int) ([]fabric.Place, *halt) {
	if p.Below < 2 || p.Target.Sort != notation.OfKind {
		return w.atDepth(p, need)
	}
	nearer := *p
	nearer.Below--
	switch w.depthOf {
	case p.Below:
		return w.atDepth(p, need)
	case nearer.Below:
		return w.atDepth(&nearer, need)
	}
	on, h := w.atDepth(p, need)
	if w.depthOf = p.Below; h == nil {
		return on, nil
	}
	if on, other := w.atDepth(&nearer, need); other == nil {
		w.depthOf = nearer.Below
		return on, nil
	}
	return nil, h
}

// atDepth is a place as many rounds further down as the words say.
func (w *roundWork) atDepth(p *notation.Place, need int) ([]fabric.Place, *halt) {
	any := *p
	any.Target, any.Below = notation.Target{}, 0
	for i := w.pos; i < len(w.c.spots); i++ {
		if !w.c.spots[i].counts {
			continue
		}
		on := []fabric.Place{w.c.place(i, p.Into)}
		var base *fabric.Stitch // in the part that this one goes on from
		level := w.c.spots[i].ref.Round - p.Below
		for d := 0; p.Below > 0 && d < p.Below || p.Below < 0 && on[0].At.Round > w.roundNumbered(-p.Below); d++ {
			next := w.below(on)
			if next[0].At == on[0].At {
				if base = w.inBase(on[0].At, p.Below-d); base != nil {
					break
				}
				if end := w.rowEndBelow(on[0].At); end != nil && d == p.Below-1 && p.Target.Sort != notation.OfKind {
					w.takeSpot(i, 0, &any, true)
					w.same, w.deepAt = end, w.pos
					return end, nil
				}
				if p.Below > 0 {
					return nil, stopAt(p.Span, "below", fmt.Sprintf("there is no round %d rounds below", p.Below), "Check how many rounds down the stitch is.")
				}
				break
			}
			on = next
		}
		on[0].Into = p.Into
		if base != nil {
			if p.Target.Sort == notation.OfKind && !sameKind(&p.Target, base) {
				continue
			}
		} else if p.Target.Sort == notation.OfKind && (!sameKind(&p.Target, w.part.At(on[0].At)) || p.Below > 0 && on[0].At.Round < level) {
			continue // another stitch, or one farther down that a long one stands on
		}
		w.takeSpot(i, 0, &any, true)
		w.same, w.deepAt = on, w.pos
		return on, nil
	}
	return nil, w.outOf(p, need)
}

// rowEndBelow is the row end that a stitch of a first round along an edge stands in: a spike one round
// below goes there. It is nil for any other.
func (w *roundWork) rowEndBelow(at fabric.Ref) []fabric.Place {
	st := w.part.At(at)
	if len(st.On) == 0 || st.On[0].Into != stitch.RowEnd {
		return nil
	}
	return st.On[:1:1]
}

// inBase is the stitch that lies d rounds below one of the round that the part goes on from, in
// the part that this round is the last of; nil where there is none. The part has only that
// round of it, so the place that is worked into is kept as the stitch above.
func (w *roundWork) inBase(at fabric.Ref, d int) *fabric.Stitch {
	if at.Round != 0 || d < 1 || w.part.From < 0 || !w.part.Rounds[0].Carried {
		return nil
	}
	from := w.f.Parts[w.part.From]
	last := len(from.Rounds) - 1
	if last < 0 || len(from.Rounds[last].Stitches) != len(w.part.Rounds[0].Stitches) {
		return nil
	}
	at.Round = last
	for ; d > 0; d-- {
		st := from.At(at)
		if st == nil || len(st.On) == 0 || st.On[0].At.Stitch < 0 || st.On[0].Into == stitch.RowEnd || st.On[0].Into == stitch.Ring || st.On[0].At == at {
			return nil
		}
		at = st.On[0].At
	}
	return from.At(at)
}

// gapAfter is the place between the stitch at a spot and the next.
func (w *roundWork) gapAfter(at int) []fabric.Place {
	next := w.c.after(at)
	w.use(at, passed)
	if at+1 < len(w.c.spots) && w.c.spots[at+1].run > 0 && next > 0 {
		// Chains between them are the space.
		return w.take(at+1, w.c.spots[at+1].run, &notation.Place{Target: notation.Target{Sort: notation.ChainSpace}})
	}
	if w.r.Row && w.c.after(next) == 0 {
		w.use(next, passed) // there is no gap after it
	}
	if w.pos = next; next == 0 {
		w.pos = len(w.c.spots) // round the end: the gap before the first
	}
	// A gap is named by the stitch after it, in the direction of its round.
	after := w.c.spots[next].ref
	if w.r.Reversed != w.c.below.Reversed {
		after = w.c.spots[at].ref
	}
	w.same = []fabric.Place{{Into: stitch.Between, At: after, Last: after}}
	return w.same
}

// below is the place that the stitch at a place stands on.
func (w *roundWork) below(on []fabric.Place) []fabric.Place {
	st := w.part.At(on[0].At)
	if len(st.On) == 0 || st.On[0].At.Stitch < 0 || st.On[0].Into == stitch.RowEnd || st.On[0].Into == stitch.Ring {
		return on
	}
	return []fabric.Place{{Into: on[0].Into, At: st.On[0].At, Last: st.On[0].At}}
}

// downFrom is the place that the words of a stitch of the designer's own have under the one
// that it is worked in: "spike in next st" for one that goes "in st 2 rnds below next st".
func (w *roundWork) downFrom(on []fabric.Place, p *notation.Place) []fabric.Place {
	if p.Below <= 0 || len(on) != 1 || on[0].At.Round != w.c.index || on[0].At.Stitch < 0 || on[0].Into == stitch.Space || on[0].Into == stitch.RowEnd {
		return on
	}
	deep := on
	for range p.Below {
		above := deep
		deep = w.below(deep)
		if p.Target.Sort == notation.OfKind && sameKind(&p.Target, w.part.At(above[0].At)) && !sameKind(&p.Target, w.part.At(deep[0].At)) {
			deep = above // counted from the round being worked
			break
		}
	}
	deep[0].Into = p.Into
	w.deepAt = w.pos
	return deep
}

// roundNumbered is the index of the round with a number, or the last.
func (w *roundWork) roundNumbered(n int) int {
	for i, r := range w.part.Rounds {
		if r.Number == n {
			return i
		}
	}
	return w.c.index
}

// edgeBelow is "end tr of row before last", "last sc of Row 1" behind all that a row has been
// worked into: the stitch at the edge where the hook is, of the row so many further down. It is nil
// for other places.
func (w *roundWork) edgeBelow(p *notation.Place) []fabric.Place {
	if p.Below == 0 || p.N.Set() || !w.r.Row || w.c.below == nil || !w.begun || w.pos == 0 || w.c.after(w.pos-1) > 0 {
		return nil
	}
	at := w.c.index - 1
	switch {
	case p.Below < 0:
		at = w.roundNumbered(-p.Below + w.later) // repeated, the words mean the row as far before
	case p.Below > 1:
		at = w.c.index - p.Below + 1 // counted from the row that is being worked
	}
	if at < 0 || at >= w.c.index {
		return nil
	}
	r := w.part.Rounds[at]
	for k := range r.Stitches {
		i := k // the stitch that the row begins with
		if r.Reversed == w.r.Reversed {
			i = len(r.Stitches) - 1 - k
		}
		st := &r.Stitches[i]
		if !st.Counts {
			continue
		}
		if p.Target.Sort != notation.AnyStitch && (p.Target.Sort != notation.OfKind || !sameKind(&p.Target, st)) {
			return nil
		}
		ref := fabric.Ref{Round: at, Stitch: i}
		return []fabric.Place{{Into: p.Into, At: ref, Last: ref}}
	}
	return nil
}

// edgeOfGroup is "last tr of shell of Row 1" behind all that a row has been worked into: the stitch at the edge
// where the hook is, where a group so called ends there. It is nil for other places.
func (w *roundWork) edgeOfGroup(p *notation.Place) []fabric.Place {
	of := p.Of
	if of == nil || of.Below == 0 || of.Of != nil || of.N.Set() || of.Target.Sort != notation.OfName || p.Pick != notation.Last || p.Below != 0 || of.Pick != notation.Next && of.Pick != notation.Last {
		return nil
	}
	edge := *p
	edge.Of, edge.Below = nil, of.Below
	on := w.edgeBelow(&edge)
	if on == nil {
		return nil
	}
	at := on[0].At
	c := layCourse(w.part.Rounds[at.Round], at.Round, w.r.Reversed != w.part.Rounds[at.Round].Reversed)
	for _, g := range c.groups {
		if g.is(of.Target.Name) && c.spots[g.To-1].ref == at {
			return on
		}
	}
	return nil
}

// leftFree is "next skipped sc of Rnd 1": the next stitch of an older round, which is the
// one that is worked on, that nothing has been worked into since.
func (w *roundWork) leftFree(p *notation.Place) ([]fabric.Place, *halt) {
	used := w.usedSince(w.c.index)
	plain := *p
	plain.Pick, plain.Below = notation.Next, 0
	for i := w.pos; i < len(w.c.spots); i++ {
		if w.c.spots[i].counts && !used[w.c.spots[i].ref] && w.c.matches(i, &plain.Target) {
			for j := w.pos; j < i; j++ {
				w.use(j, passed)
			}
			return w.looped(w.take(i, 0, &plain), &plain), nil
		}
	}
	return nil, w.noneLeft(p)
}

func (w *roundWork) noneLeft(p *notation.Place) *halt {
	return stopAt(p.Span, "nothing-skipped", fmt.Sprintf("%s has no stitch left that was skipped", w.c.belowName()), "Check the number of the round, or how many of its stitches were skipped.")
}

// postsDeeper is a post stitch round one that is named, "FPtr around next FPtr", where none of the round
// below is such a stitch and the next stands on one: round that. Other stitches are as they are.
func (w *roundWork) postsDeeper(s *notation.Stitches) *notation.Stitches {
	if len(s.Places) != 1 || !isPost(s.What.Loop) && !w.definition(&s.What).onePost() {
		return s
	}
	p := s.Places[0]
	if d := w.depthLast(); p.Pick == notation.Skipped && p.Below >= 0 && d > 0 && len(w.lastSkip) > 0 {
		// "FPtr around each of the 3 skipped sts", crossed over others two rows below: as far down.
		round := *s
		p.Below = d
		round.Places = []notation.Place{p}
		return &round
	}
	if p.Below != 0 || p.Pick != notation.Next || p.Of != nil || len(p.Also) > 0 || !ofPost(&p.Target) || !w.standsOver(&p.Target, 1) {
		return s
	}
	round := *s
	p.Below = 1
	round.Places = []notation.Place{p}
	return &round
}

// ofPostNamed is a place "next FPtr two rows below" that goes by the designer's own name for a stitch
// round a post: by what that is. Other places are as they are.
func (w *roundWork) ofPostNamed(p *notation.Place) *notation.Place {
	if p.Below <= 0 || p.Of != nil {
		return p
	}
	d := w.definitions[p.Target.Name]
	if !d.onePost() {
		return p
	}
	s := d.items[0].(*notation.Stitches)
	in := s.What.Loop.Into
	if !s.What.Loop.Set {
		in = s.Places[0].Into
	}
	named := *p
	named.Target = notation.Target{Sort: notation.OfKind, Kind: s.What.Kind, Loop: notation.Loop{Set: true, Into: in}, Text: p.Target.Text}
	return &named
}

// depthLast is how far below the round below the last stitch was worked, 0 for none.
func (w *roundWork) depthLast() int {
	if n := len(w.r.Stitches); n > 0 {
		if on := w.r.Stitches[n-1].On; len(on) > 0 && on[0].At.Stitch >= 0 && (on[0].Into == stitch.FrontPost || on[0].Into == stitch.BackPost) {
			return w.c.index - on[0].At.Round
		}
	}
	return 0
}

// ofPost reports whether a target is a stitch that was worked round a post.
func ofPost(t *notation.Target) bool {
	return t.Sort == notation.OfKind && (t.Name == notation.Post || isPost(t.Loop))
}

// standsOver reports whether none of the round below is such a stitch, and the next n stand on one each.
func (w *roundWork) standsOver(t *notation.Target, n int) bool {
	if w.c.index < 1 || w.c.below == nil {
		return false
	}
	for i := range w.c.spots {
		if w.c.matches(i, t) {
			return false
		}
	}
	for i := w.pos; i < len(w.c.spots) && n > 0; i++ {
		if !w.c.spots[i].counts {
			continue
		}
		if st := w.part.At(w.below([]fabric.Place{w.c.place(i, stitch.Top)})[0].At); st == nil || !sameKind(t, st) {
			return false
		}
		n--
	}
	return n == 0
}
