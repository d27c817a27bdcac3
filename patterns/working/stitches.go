package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// stitches works one instruction that makes stitches.
func (w *roundWork) stitches(s *notation.Stitches) *halt {
	if h := w.seal(s.Span); h != nil {
		return h
	}
	times := 1
	if s.Times.Set() {
		times = s.Times.For(w.size)
	}
	n := 1
	if s.N.Set() {
		n = s.N.For(w.size)
	}
	if times == 0 || n == 0 {
		return nil
	}
	if float64(times)*float64(n) > maxRound {
		return stopAt(s.Span, "too-large", fmt.Sprintf("%s would have more than %d stitches", w.r.Label, maxRound), "Check the numbers.")
	}
	if h := w.picotBack(s); h != nil {
		if h == stopHere {
			return nil
		}
		return h
	}
	for t := 0; t < times; t++ {
		if len(s.Places) == 0 {
			if h := w.unplaced(s, n); h != nil {
				return h
			}
			continue
		}
		for i := range s.Places {
			if h := w.placed(s, n, &s.Places[i]); h != nil {
				return h
			}
		}
	}
	return nil
}

// picotBack makes a picot of "ch 3, sl st in 3rd ch from hook": the chains just
// made are closed onto themselves.
func (w *roundWork) picotBack(s *notation.Stitches) *halt {
	l := w.lastChain
	if len(s.Places) != 1 || l.item == nil || l.to != len(w.r.Stitches) || !w.begun {
		return nil
	}
	p := &s.Places[0]
	if p.Target.Sort != notation.FromHook || s.What.Kind.Base > stitch.Single || s.What.Kind.Base == stitch.None {
		return nil
	}
	w.dropFrom(l.from)
	w.lastChain = chainMade{}
	st := fabric.Stitch{Kind: stitch.Kind{Base: stitch.Chain, Shape: stitch.Picot, Legs: l.to - l.from}}
	if h := w.add(st, s.Span); h != nil {
		return h
	}
	return stopHere
}

// unplaced works stitches that do not say where they go: one in each of the
// next places, or in the ring when that is where the round goes.
func (w *roundWork) unplaced(s *notation.Stitches, n int) *halt {
	if w.given != nil {
		on := w.given
		w.given, w.same = nil, on
		return w.into(s, n, on)
	}
	if w.inGroup != nil {
		w.same = w.inGroup
		return w.into(s, n, w.inGroup)
	}
	if w.ground != nil || w.c.ring && len(w.c.spots) == 0 {
		on := w.ringPlaces()
		if on == nil {
			return stopAt(s.Span, "no-ring", "there is no ring to work into", "")
		}
		w.same = on
		return w.into(s, n, on)
	}
	if s.What.Kind.Manner&stitch.Foundation != 0 && len(w.c.spots) == 0 {
		for i := 0; i < n; i++ {
			if h := w.make(s.What.Kind, nil, s.Span); h != nil {
				return h
			}
		}
		return nil
	}
	next := notation.Place{Span: s.Span, Pick: notation.Next}
	for i := 0; i < n; i++ {
		if d := w.definition(&s.What); d != nil && !d.needsPlace {
			if h := w.runDefinition(d, s, nil); h != nil {
				return h
			}
			continue
		}
		if h := w.placed(s, 1, &next); h != nil {
			return h
		}
	}
	return nil
}

// placed works n stitches at one place of the words.
func (w *roundWork) placed(s *notation.Stitches, n int, p *notation.Place) *halt {
	hasN := s.N.Set()
	k, h := w.kind(s)
	if h != nil {
		return h
	}
	legs := 1
	if k.Shape == stitch.Together {
		legs = k.Legs
	}
	if p.Evenly || p.Target.Sort == notation.RowEnds {
		return w.evenly(s, n, hasN, p)
	}
	switch p.Pick {
	case notation.Each:
		return w.each(s, n, legs, p)
	case notation.Next, notation.Last, notation.Any:
		if w.given != nil && p.N.For(w.size) <= 1 && p.Target.Sort != notation.ChainSpace {
			on := w.given
			w.given, w.same = nil, on
			return w.into(s, n, on)
		}
		count := 1
		plural := p.N.Set()
		if plural {
			count = p.N.For(w.size)
		}
		if legs > 1 && (count > 1 || p.Pick == notation.Next && !plural && !p.Over && p.Target.Sort == notation.AnyStitch && p.Target.Text == "") {
			return w.together(s, n, legs, count, p)
		}
		if !plural && s.What.Shaping != 0 && legs > 1 {
			return w.together(s, n, legs, legs, p)
		}
		if plural && count > 1 && hasN && n == count && legs == 1 && !p.Every {
			return stopAt(s.Span, "ambiguous",
				fmt.Sprintf("%d stitches in %d places can be read as one in each or as %d in each", n, count, n),
				fmt.Sprintf("Write %s in next %d sts, or %d %s in each of next %d sts.", k.Name(w.terms), count, n, k.Name(w.terms), count))
		}
		for i := 0; i < count; i++ {
			on, h := w.one(p, i, count)
			if h != nil {
				return h
			}
			if h := w.into(s, n, on); h != nil {
				return h
			}
		}
		return nil
	default:
		on, h := w.one(p, 0, 1)
		if h != nil {
			return h
		}
		return w.into(s, n, on)
	}
}

// kind is the kind of stitch that the words make; an increase or decrease is
// made of the plain stitch of the round.
func (w *roundWork) kind(s *notation.Stitches) (stitch.Kind, *halt) {
	switch {
	case s.What.Shaping < 0:
		b := w.plainBase()
		if s.What.Kind.Base >= stitch.Single {
			b = s.What.Kind.Base
		}
		k := stitch.Tog(b, 2)
		k.Manner = s.What.Kind.Manner
		return k, nil
	case s.What.Shaping > 0:
		if s.What.Kind.Is() {
			return stitch.Kind{Base: s.What.Kind.Base, Manner: s.What.Kind.Manner}, nil
		}
		return stitch.Of(w.plainBase()), nil
	}
	return s.What.Kind, nil
}

// into makes n stitches in one place (all of on, for the legs of one).
func (w *roundWork) into(s *notation.Stitches, n int, on []fabric.Place) *halt {
	if d := w.definition(&s.What); d != nil {
		for i := 0; i < n; i++ {
			if h := w.runDefinition(d, s, on); h != nil {
				return h
			}
		}
		return nil
	}
	if s.What.Name != "" {
		return stopAt(s.Span, "undefined", fmt.Sprintf("%q is not a stitch that is known here", s.What.Name),
			"Say how it is made under stitches:")
	}
	k, h := w.kind(s)
	if h != nil {
		return h
	}
	if s.What.Shaping > 0 {
		n *= 2
	}
	if k == stitch.Of(stitch.Slip) && !w.begun && !w.r.Row && w.c.count() > 0 && s.What.Shaping == 0 {
		return w.travel(s, on)
	}
	loop := w.loopFor(s, on)
	if k.Shape == stitch.Together && len(on) == 1 && k.Legs > 1 {
		// All the legs in one place.
		legs := make([]fabric.Place, k.Legs)
		for i := range legs {
			legs[i] = on[0]
		}
		on = legs
	}
	for i := 0; i < n; i++ {
		places := make([]fabric.Place, len(on))
		copy(places, on)
		for j := range places {
			if places[j].Into == stitch.Top {
				places[j].Into = loop
			}
		}
		if h := w.make(k, places, s.Span); h != nil {
			return h
		}
	}
	return nil
}

// loopFor is the loop or post that the words ask for.
func (w *roundWork) loopFor(s *notation.Stitches, on []fabric.Place) stitch.Into {
	switch {
	case s.What.Loop.Set:
		return s.What.Loop.Into
	case len(on) > 0 && on[0].Into != stitch.Top:
		return on[0].Into
	case s.What.Kind.Manner&stitch.Invisible != 0:
		return stitch.FrontLoop
	}
	return w.loop
}

// travel makes slip stitches that move the beginning of the round.
func (w *roundWork) travel(s *notation.Stitches, on []fabric.Place) *halt {
	return w.add(fabric.Stitch{Kind: s.What.Kind, Role: fabric.Travel, On: on}, s.Span)
}

// together works decreases: count places taken legs at a time.
func (w *roundWork) together(s *notation.Stitches, n, legs, count int, p *notation.Place) *halt {
	if !p.N.Set() || count == 1 {
		count = legs
	}
	if count%legs != 0 {
		return stopAt(p.Span, "legs",
			fmt.Sprintf("%s takes %d stitches, not %d", s.What.Kind.Name(w.terms), legs, count),
			fmt.Sprintf("Write %s over next %s, or use a %s.", s.What.Kind.Name(w.terms), plural(legs, "st"),
				stitch.Tog(s.What.Kind.Base, count).Name(w.terms)))
	}
	if n > 1 && count == legs {
		count *= n
	}
	for i := 0; i < count; i += legs {
		var on []fabric.Place
		for j := 0; j < legs; j++ {
			pl, h := w.one(p, i+j, count)
			if h != nil {
				return h
			}
			on = append(on, pl...)
		}
		w.same = on[len(on)-1:]
		if h := w.into(s, 1, on); h != nil {
			return h
		}
	}
	return nil
}

// each works "in each st around".
func (w *roundWork) each(s *notation.Stitches, n, legs int, p *notation.Place) *halt {
	if w.given != nil && p.Extent.Sort == notation.NoExtent {
		on := w.given
		w.given, w.same = nil, on
		return w.into(s, n, on)
	}
	leave := 0
	if p.Extent.Sort == notation.ToLast {
		leave = p.Extent.N.For(w.size)
	}
	targets := append([]notation.Target{p.Target}, p.Also...)
	any := false
	for {
		if leave > 0 {
			if left := w.left(&p.Extent, leave+1); left < leave {
				return w.outOf(p.Span, leave-left)
			} else if left == leave {
				break
			}
		}
		if p.Extent.Sort == notation.ToPlace && w.atPlace(&p.Extent) {
			break
		}
		i, run := w.nearest(targets)
		if i < 0 {
			break
		}
		any = true
		if legs > 1 {
			if h := w.together(s, 1, legs, legs, &notation.Place{Span: p.Span, Pick: notation.Next, Target: p.Target, Into: p.Into}); h != nil {
				return h
			}
			continue
		}
		on := w.takeSpot(i, run, p, false)
		if h := w.into(s, n, on); h != nil {
			return h
		}
	}
	if !any && w.c.ring && len(w.c.spots) == 0 {
		return stopAt(p.Span, "runs-out", "there are no stitches in the ring to work into", "Say how many: 6 sc in ring.")
	}
	if !any && leave == 0 {
		return w.outOf(p.Span, 1)
	}
	return nil
}

// nearest is the next spot that is any of the targets, and 1 + its chain run
// if it is a space. It is -1 when there is none.
func (w *roundWork) nearest(targets []notation.Target) (int, int) {
	for i := w.pos; i < len(w.c.spots); i++ {
		for k := range targets {
			t := &targets[k]
			switch t.Sort {
			case notation.ChainSpace:
				if r := w.c.spots[i].run; r > 0 && w.c.runs[r-1].From == i {
					if sp := w.c.runs[r-1]; t.Chains == 0 || sp.To-sp.From == t.Chains {
						return i, r
					}
				}
			case notation.OfName:
				if w.c.groupAt(i, t.Name) != nil {
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
