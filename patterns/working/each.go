package working

import (
	"fmt"
	"slices"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// each works "in each st around".
func (w *roundWork) each(s *notation.Stitches, n, legs int, p *notation.Place) *halt {
	if w.given != nil && p.Extent.Sort == notation.NoExtent {
		on := w.given
		w.given, w.same = nil, on
		return w.into(s, n, on)
	}
	leave := 0
	p = w.upToLeft(p)
	if p.Extent.Sort == notation.ToLast {
		if leave = p.Extent.N.For(w.size); w.leavesRound(s, legs, leave, &p.Extent) {
			leave = 0
		}
	}
	targets := append([]notation.Target{p.Target}, p.Also...)
	own := len(targets)
	for _, but := range s.But {
		targets = append(targets, placeOf(but).Target)
	}
	if h := w.noCorner(s); h != nil {
		return h
	}
	edge := w.edgeAhead()
	any, among := false, 0
	if on, k := w.standsIn(p, targets); on != nil {
		any = true
		h := (*halt)(nil)
		if k < own {
			h = w.into(s, n, on)
		} else {
			h = w.instead(s.But[k-own], on)
		}
		if h != nil {
			return h
		}
	}
	for {
		if leave > 0 {
			if left := w.left(&p.Extent, leave+1); left < leave {
				return w.outOf(p, leave-left)
			} else if left == leave && !w.spaceBefore(targets) {
				break
			}
		}
		if e := &p.Extent; e.Sort == notation.ToPlace && e.Target.Sort != notation.SeamPlace && !w.spaceOfTurning(targets, e) && w.atPlace(e, p.Target.Sort == notation.ChainSpace && len(p.Also) == 0) {
			break
		}
		i, run := w.nearest(targets)
		if p.Extent.Sort == notation.ToPlace && p.Target.Sort == notation.Gap && w.gapBeyond(i, &p.Extent) {
			break
		}
		if p.Target.Sort == notation.Gap && w.lastGapAhead(i) {
			break
		}
		if p.Extent.Sort == notation.ToPlace && p.Extent.Target.Sort == notation.SeamPlace && (i < 0 || i > w.nextSeam()) {
			break
		}
		if done, h := w.butOverSeam(s, i, p); h != nil {
			return h
		} else if done {
			any = true
			continue
		}
		if i < 0 || run > 0 && run-1 == edge || w.namesStart && w.c.spots[i].st.Role == fabric.Start || w.c.spots[i].optional {
			break
		}
		any = true
		if k := w.exception(targets[:own], targets[own:], i, run); k >= 0 {
			if h := w.instead(s.But[k], w.takeSpot(i, run, placeOf(s.But[k]), false)); h != nil {
				return h
			}
			continue
		}
		if legs > 1 && run == 0 {
			if p.Target.Text != "" {
				return stopAt(s.Span, "ambiguous", fmt.Sprintf("a %s in each stitch can be read as over each %d stitches or as all in one", w.nameOf(s), legs),
					fmt.Sprintf("Write *%s over next %d sts; rep from * around, or *%s in next st; rep from * around.", w.nameOf(s), legs, w.nameOf(s)))
			}
			if h := w.together(s, 1, legs, legs, &notation.Place{Span: p.Span, Pick: notation.Next, Target: p.Target, Into: p.Into}); h != nil {
				return h
			}
			continue
		}
		if p.Among.Set() && w.c.matches(i, &targets[own-1]) {
			among++
		}
		on := w.takeEach(targets, i, run, p, false)
		if h := w.into(s, n, on); h != nil {
			return h
		}
	}
	if !any && w.c.ring && len(w.c.spots) == 0 {
		return stopAt(p.Span, "runs-out", "there are no stitches in the ring to work into", "Say how many: 6 sc in ring.")
	}
	if !any && leave == 0 {
		return w.outOf(p, 1)
	}
	if said := p.Among.For(w.size); p.Among.Set() && among != said {
		return stopAt(p.Span, "runs-out", fmt.Sprintf("%s has %d of these %s, not %d", w.c.below.Label, among, strings.TrimSpace(targets[own-1].Text), said), "Check the number.")
	}
	return nil
}

// upToLeft is a place "each dc across" up to what the words behind it leave unworked at the end of the
// row: "dc in each dc across, leave turning ch unworked", "leaving last 2 sts unworked".
func (w *roundWork) upToLeft(p *notation.Place) *notation.Place {
	if !w.r.Row || w.nest > 0 || w.nestGroup > 0 || p.N.Set() || p.Extent.Sort != notation.NoExtent && p.Extent.Sort != notation.ToEnd {
		return p
	}
	rest := w.after
	for len(rest) > 0 && !needsPlaces(rest[:1]) {
		switch rest[0].(type) {
		case *notation.Note, *notation.Turn, *notation.Counts:
			rest = rest[1:]
		default:
			return p
		}
	}
	if len(rest) == 0 {
		return p
	}
	s, ok := rest[0].(*notation.Skip)
	if !ok || s.Place == nil || s.Behind || s.And != nil || needsPlaces(rest[1:]) {
		return p
	}
	s = w.turningLeft(s)
	upTo := *p
	switch turning := s.Target.Sort == notation.StartChain; {
	case turning && !w.noTurningLeft(s):
		upTo.Extent = notation.Extent{Sort: notation.ToPlace, Target: s.Target}
	case !turning && s.Unworked && s.Place.Pick == notation.Last:
		n := s.N
		if !n.Set() {
			n = notation.One(s.Span)
		}
		upTo.Extent = notation.Extent{Sort: notation.ToLast, N: n, Target: s.Target}
	default:
		return p
	}
	return &upTo
}

// noTurningLeft reports whether it is a turning chain that is left unworked and none of those in the round
// below stands for a stitch.
func (w *roundWork) noTurningLeft(s *notation.Skip) bool {
	if s.Target.Sort != notation.StartChain {
		return false
	}
	for i := range w.c.spots {
		if w.c.spots[i].counts && w.c.matches(i, &s.Target) {
			return false
		}
	}
	return true
}

// leavesRound reports whether decreases "until 16 sts remain" leave so many in the round when they go
// all round it, and nothing is worked behind them: then none is left unworked.
func (w *roundWork) leavesRound(s *notation.Stitches, legs, leave int, e *notation.Extent) bool {
	if legs < 2 || s.What.Kind.Shape != stitch.Together && s.What.Shaping >= 0 || !e.Remain() || w.begun || w.remaining(maxRound) != legs*leave {
		return false
	}
	for _, it := range w.after {
		switch it.(type) {
		case *notation.Join, *notation.Note, *notation.FastenOff, *notation.Turn, *notation.NoJoin, *notation.Marker, *notation.Colour:
		default:
			return false
		}
	}
	return true
}

// spaceBefore reports whether a space that is among the targets comes before the next
// stitch: before the last st, too, where the each goes up to that.
func (w *roundWork) spaceBefore(targets []notation.Target) bool {
	i, run := w.nearest(targets)
	if run == 0 {
		return false
	}
	for j := w.pos; j < i; j++ {
		if w.c.spots[j].counts {
			return false
		}
	}
	return true
}

// standsIn is the space that slip stitches have brought the beginning of the
// round to, when the each that follows is of such spaces, or goes into them otherwise
// than into the rest: "sl st in first ch-2 sp, ch 1, 3 sc in each ch-2 sp around" goes into
// that one first. It gives which of the targets it is, and is nil otherwise.
func (w *roundWork) standsIn(p *notation.Place, targets []notation.Target) ([]fabric.Place, int) {
	if w.begun || w.nest > 0 || p.N.Set() || len(w.same) != 1 || w.same[0].Into != stitch.Space {
		return nil, 0
	}
	travelled := w.beganHere
	for i := range w.r.Stitches {
		st := &w.r.Stitches[i]
		if st.Counts {
			return nil, 0
		}
		travelled = travelled || st.Role == fabric.Travel
	}
	run := w.c.spots[w.spotOf(w.same[0])].run
	for k := len(targets) - 1; k >= 0 && travelled && run > 0; k-- {
		if t := &targets[k]; t.Sort == notation.ChainSpace && w.c.runIs(run-1, t) {
			return w.same, k
		}
	}
	return nil, 0
}

// placeOf is the place of an exception to an each.
func placeOf(but notation.Item) *notation.Place {
	if g, ok := but.(*notation.Group); ok {
		return &g.Place[0]
	}
	return &but.(*notation.Stitches).Places[0]
}

// instead works an exception to an each.
func (w *roundWork) instead(but notation.Item, on []fabric.Place) *halt {
	if g, ok := but.(*notation.Group); ok {
		return w.groupIn(g.Items, "", on)
	}
	s, n := but.(*notation.Stitches), 1
	if s.N.Set() {
		n = s.N.For(w.size)
	}
	return w.into(s, n, on)
}

// takeEach takes the spot that one of the targets of an each is at: a group at
// its centre.
func (w *roundWork) takeEach(targets []notation.Target, i, run int, p *notation.Place, check bool) []fabric.Place {
	for k := range targets {
		if t := &targets[k]; t.Sort == notation.OfName && w.c.groupAt(i, t.Name) != nil && run == 0 {
			on, _ := w.named(&notation.Place{Span: p.Span, Pick: notation.Next, Target: *t, Into: p.Into})
			return on
		}
	}
	for k := range targets {
		if t := &targets[k]; k > 0 && t.Sort == notation.Gap && run == 0 && w.c.gapIs(i, t) {
			gap := *p
			gap.Target = *t
			return w.takeSpot(i, run, &gap, check) // "in each V-st and in each sp between V-sts"
		}
	}
	return w.takeSpot(i, run, p, check)
}

// exception is which of the targets of exceptions a spot is, -1 for none: the
// one that says most closely what is there, if it does so better than the each's
// own.
func (w *roundWork) exception(own, targets []notation.Target, i, run int) int {
	best, fit := -1, 1
	for k := range own {
		fit = max(fit, w.fit(&own[k], i, run))
	}
	for k := range targets {
		t := &targets[k]
		if t.Name == notation.Corner && t.Chains == 0 && run > 0 && fit > 1 {
			continue // a space that is gone into as it is is no corner
		}
		if f := w.fit(t, i, run); f > fit || f == fit && f > 1 && best < 0 {
			best, fit = k, f
		}
	}
	return best
}

// fit is how closely a target says what is at a spot: 0 not at all, 1 as any
// stitch, 2 by its height or as a space, 3 by its very kind and loop, 4 as a corner.
func (w *roundWork) fit(t *notation.Target, i, run int) int {
	switch {
	case w.c.atCornerStitch(i, t):
		return 4
	case t.Sort == notation.ChainSpace:
		if run > 0 && w.c.runIs(run-1, t) {
			return 2
		}
	case run > 0:
	case t.Sort == notation.OfName:
		if w.c.groupAt(i, t.Name) != nil {
			return 2
		}
	case !w.c.matches(i, t):
	case t.Sort == notation.AnyStitch:
		return 1
	default:
		st := w.c.spots[i].st
		post := len(st.On) > 0 && (st.On[0].Into == stitch.FrontPost || st.On[0].Into == stitch.BackPost)
		if st.Counted() == t.Kind && (t.Loop.Set || !post) {
			return 3
		}
		return 2
	}
	return 0
}

// nearest is the next spot that is any of the targets, and 1 + its chain run
// if it is a space. It is -1 when there is none.
func (w *roundWork) nearest(targets []notation.Target) (int, int) {
	from := w.pos
	if len(targets) == 1 && targets[0].Sort == notation.Gap && w.r.Row && w.started && !w.begun && from == 1 {
		from = 0 // the gap beside the turning chain
	}
	if len(targets) == 1 && targets[0].Sort == notation.Gap && !w.r.Row && w.slipping && !w.begun && !w.started && from == 1 && w.travelled() == 0 {
		from = 0 // "sl st in sp between first 2 sts": beside the one that was joined to
	}
	if slices.ContainsFunc(targets, func(t notation.Target) bool { return t.Sort == notation.Gap }) && w.leavesGroup() {
		from-- // the gap just behind the group that has been gone into
	} else if from == w.pos && w.besideGap(targets) {
		from-- // the gap behind the last stitch of the group that has been gone along
	}
	for i := from; i < len(w.c.spots); i++ {
		for k := range targets {
			t := &targets[k]
			switch t.Sort {
			case notation.ChainSpace:
				if w.c.atCornerStitch(i, t) {
					return i, 0
				}
				if r := w.c.spots[i].run; r > 0 && w.c.runs[r-1].From == i {
					if w.c.runIs(r-1, t) {
						return i, r
					}
				}
			case notation.OfName:
				if w.c.groupAt(i, t.Name) != nil {
					return i, 0
				}
			case notation.Gap:
				if w.c.gapIs(i, t) {
					return i, 0
				}
			default:
				if w.c.matches(i, t) {
					return i, 0
				}
			}
		}
	}
	return -1, 0
}
