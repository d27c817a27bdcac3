package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// intoMagic reports whether a place is a ring that has to be made.
func intoMagic(places []notation.Place) bool {
	for i := range places {
		if places[i].Target.MakesRing() {
			return true
		}
	}
	return false
}

// picotBack makes a picot of "ch 3, sl st in 3rd ch from hook": the chains just
// made are closed onto themselves.
func (w *roundWork) picotBack(s *notation.Stitches) *halt {
	l := w.lastChain
	if len(s.Places) != 1 || l.item == nil || l.to != len(w.r.Stitches) || !w.begun {
		return nil
	}
	p := &s.Places[0]
	if p.Target.Sort != notation.FromHook && p.Pick != notation.Made || s.What.Kind.Base > stitch.Single || s.What.Kind.Base == stitch.None {
		return nil
	}
	if p.Pick == notation.Made && !slices.ContainsFunc(w.r.Stitches[:l.from], func(st fabric.Stitch) bool { return st.Counts }) {
		return nil // no stitch has been made that it could go into
	}
	n := l.to - l.from
	if p.Target.Sort == notation.FromHook && p.Nth > n {
		w.wonder(p.Span, "chain", fmt.Sprintf("has ch %d here, so there is no chain number %d from the hook", n, p.Nth), "Check the two numbers.")
	}
	if p.Target.Sort == notation.FromHook && p.Nth < n-1 {
		if p.Nth < 3 || s.What.Kind.Base != stitch.Slip || w.goesOnAlong() {
			return nil // they are worked back along
		}
		l.from = l.to - p.Nth // "ch 5, sl st in 3rd ch from hook, ch 2": a picot on the way
	}
	w.dropFrom(l.from)
	w.lastChain = chainMade{}
	st := fabric.Stitch{Kind: stitch.Kind{Base: stitch.Chain, Shape: stitch.Picot, Legs: l.to - l.from}}
	if h := w.add(st, s.Span); h != nil {
		return h
	}
	return stopHere
}

// slipTo makes a slip stitch in each stitch up to the space that a place names.
func (w *roundWork) slipTo(s *notation.Stitches, p *notation.Place) *halt {
	at, run := w.nearest([]notation.Target{p.Target})
	if run == 0 {
		return nil // the fault is told where the space is taken
	}
	for i := w.pos; i < at; i++ {
		if w.c.spots[i].counts {
			if h := w.travel(s, w.take(i, 0, &notation.Place{})); h != nil {
				return h
			}
		}
	}
	return nil
}

// closes reports whether a slip stitch in the next stitch stands at the end of
// a round that has been worked all round: it goes into the beginning of the round
// itself, to even out the step of a spiral.
func (w *roundWork) closes(p *notation.Place) bool {
	if w.r.Row || !w.begun || w.nest > 0 || w.inGroup != nil || w.given != nil || w.joined || p.Pick != notation.Next || p.Of != nil ||
		p.Target.Sort != notation.AnyStitch && p.Target.Sort != notation.OfKind || w.remaining(1) > 0 || w.c.count() == 0 {
		return false
	}
	n := 1
	if p.N.Set() {
		n = p.N.For(w.size)
	}
	return n < countIn(w.r.Stitches)
}

// closesLoop reports whether a stitch after chains at the end of a round goes
// into the beginning of the round itself, so that it closes the round and
// completes the last loop: "…, ch 3, dc in first sc."
func (w *roundWork) closesLoop(s *notation.Stitches, rest []notation.Item) bool {
	n := len(w.r.Stitches)
	if w.r.Row || !w.begun || w.nest > 0 || w.inGroup != nil || w.given != nil || w.joined || n == 0 || !w.r.Stitches[n-1].IsChain() ||
		s.What.Kind.Base < stitch.Single || s.What.Kind.Shape != stitch.Plain || s.N.Set() && s.N.For(w.size) != 1 || s.Times.Set() ||
		len(s.Places) != 1 || needsPlaces(rest) || joinIn(rest) != nil {
		return false
	}
	first := 0
	for first < n && !w.r.Stitches[first].Counts {
		first++
	}
	p := &s.Places[0]
	switch {
	case first == n:
		return false
	case p.Target.Sort == notation.StartChain || p.Of != nil && p.Of.Target.Sort == notation.StartChain:
		return w.r.Stitches[first].Role == fabric.Start
	case p.Of != nil || p.Pick != notation.First:
		return false
	case p.Target.Sort == notation.OfKind:
		return sameKind(&p.Target, &w.r.Stitches[first])
	}
	return p.Target.Sort == notation.AnyStitch
}

// closesChain reports whether "sl st in 3rd ch" at the end of a round joins it to
// the chain that it began with.
func (w *roundWork) closesChain(p *notation.Place) bool {
	if w.r.Row || !w.begun || w.nest > 0 || p.Pick != notation.Nth || p.Target.Sort != notation.ChainStitch || p.Of != nil ||
		!w.usedRing && w.remaining(maxRound) > max(w.mostSkipped, w.gap) {
		return false
	}
	for i := range w.r.Stitches {
		if st := &w.r.Stitches[i]; st.Role == fabric.Start {
			return st.Chains >= p.Nth
		}
	}
	return false
}

// levelOff makes the slip stitches that even out the step of a spiral. They are
// not counted.
func (w *roundWork) levelOff(s *notation.Stitches, p *notation.Place) *halt {
	n := 1
	if p.N.Set() {
		n = p.N.For(w.size)
	}
	made := len(w.r.Stitches)
	for i := 0; i < made && n > 0; i++ {
		if !w.r.Stitches[i].Counts {
			continue
		}
		ref := fabric.Ref{Round: len(w.part.Rounds), Stitch: i}
		if h := w.add(fabric.Stitch{Kind: s.What.Kind, Role: fabric.Join, On: []fabric.Place{{Into: p.Into, At: ref, Last: ref}}}, s.Span); h != nil {
			return h
		}
		n--
	}
	return nil
}

// inSequence works one of the designer's own stitches over the places that it takes in turn. It reports
// false for any other.
func (w *roundWork) inSequence(s *notation.Stitches, p *notation.Place) (*halt, bool) {
	d := w.definition(&s.What)
	switch n := p.N.For(w.size); {
	case d == nil || !d.sequence:
	case w.inTurn(p):
		return w.sequence(d, s, p), true
	case p.Over && !p.Every && p.Below == 0 && p.Pick == notation.Next && n > 1 && p.Target.Sort == notation.OfKind:
		return w.outOf(p, n), true // "cable over next 4 FPdc", and they are others
	}
	return nil, false
}

// sequence works one of the designer's own stitches that goes over several
// places in turn: once, as often as the places named take, or around.
func (w *roundWork) sequence(d *definition, s *notation.Stitches, p *notation.Place) *halt {
	leave, upTo, from := 0, w.used+1, w.used
	if s.N.Set() && p.Pick != notation.Each {
		// "8 crossed pairs over next 16 sts"
		for range s.N.For(w.size) {
			if h := w.runDefinition(d, s, nil); h != nil {
				return h
			}
		}
		if took := w.used - from; p.N.Set() && took != p.N.For(w.size) {
			return stopAt(p.Span, "legs", fmt.Sprintf("%d %s take %s, not %d", s.N.For(w.size), d.name, plural(took, "stitch"), p.N.For(w.size)), "Let the two numbers agree.")
		}
		return nil
	}
	switch {
	case p.Pick == notation.Each:
		upTo = w.used + w.remaining(maxRound)
		if p.Extent.Sort == notation.ToLast {
			leave = p.Extent.N.For(w.size)
		}
	case p.N.Set():
		upTo = w.used + p.N.For(w.size)
	}
	for w.used < upTo-leave {
		used := w.used
		if h := w.runDefinition(d, s, nil); h != nil {
			return h
		}
		if w.used == used {
			return stopAt(s.Span, "endless", fmt.Sprintf("%s takes up no stitches of the round below", d.name), "Say how often.")
		}
	}
	if n := p.N.For(w.size); p.N.Set() && p.Pick != notation.Each && w.used-from > n {
		return stopAt(p.Span, "legs", fmt.Sprintf("%s does not come out over %s", d.name, plural(n, "stitch")), "Let the number in the round and that in the stitch agree.")
	}
	return nil
}

// inTurn reports whether a place is stitches that come one after the other, by whatever name: "over next
// 2 sts", and "over next 2 ch" along a starting chain.
func (w *roundWork) inTurn(p *notation.Place) bool {
	if p.Target.Sort == notation.AnyStitch {
		return p.Pick != notation.Skipped
	}
	n := p.N.For(w.size)
	if p.Pick != notation.Next || p.Of != nil || !p.N.Set() || n < 2 || w.pos+n > len(w.c.spots) {
		return false
	}
	for i := w.pos; i < w.pos+n; i++ {
		if !w.c.matches(i, &p.Target) && (p.Target.Sort != notation.OfName || w.c.groupAt(i, p.Target.Name) == nil) {
			return false
		}
	}
	return true
}

// crossed works pairs of stitches that cross: the second place first.
func (w *roundWork) crossed(s *notation.Stitches, p *notation.Place) *halt {
	k := s.What.Kind
	k.Manner &^= stitch.Crossed
	plain := *s
	plain.What.Kind = k
	plain.N = notation.Num{}
	next := notation.Place{Span: p.Span, Pick: notation.Next, Target: p.Target, Into: p.Into}
	pairs := 1
	switch {
	case p.Pick == notation.Each:
		pairs = (w.remaining(maxRound) + 1) / 2
	case p.N.Set():
		if n := p.N.For(w.size); n%2 == 0 {
			pairs = n / 2
		} else {
			return stopAt(p.Span, "legs", fmt.Sprintf("crossed stitches go in pairs, and %d is not a number of pairs", n), "Cross over next 2 sts.")
		}
	}
	for i := 0; i < pairs; i++ {
		a, h := w.one(&next, 0, 1)
		if h != nil {
			return h
		}
		b, h := w.one(&next, 0, 1)
		if h != nil {
			return h
		}
		if h := w.into(&plain, 1, b); h != nil {
			return h
		}
		if h := w.into(&plain, 1, a); h != nil {
			return h
		}
	}
	return nil
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

// overFromHook works a decrease over a chain that is counted from the hook and those after it.
func (w *roundWork) overFromHook(s *notation.Stitches, legs int, p *notation.Place) *halt {
	if n := p.N.For(w.size); n != legs {
		return stopAt(p.Span, "count", fmt.Sprintf("%s goes over %d chains, not %d", w.nameOf(s), legs, n), "Check the two numbers.")
	}
	on, h := w.fromHook(p)
	if h != nil {
		return h
	}
	for i := 1; i < legs; i++ {
		more, h := w.one(&notation.Place{Span: p.Span, Pick: notation.Next, Into: p.Into}, 0, 1)
		if h != nil {
			return h
		}
		on = append(on[:len(on):len(on)], more...)
	}
	w.same = on[len(on)-1:]
	return w.into(s, 1, on)
}

// clusterOver is a cluster "over next 3 sts", of as many legs as there are stitches, as these legs
// worked together, one in each. Other stitches are as they are.
func (w *roundWork) clusterOver(s *notation.Stitches) *notation.Stitches {
	k := s.What.Kind
	if k.Shape != stitch.Cluster || k.Legs < 2 || len(s.Places) != 1 {
		return s
	}
	if p := &s.Places[0]; !p.Over || p.Evenly || p.Pick == notation.Each || p.N.For(w.size) != k.Legs {
		return s
	}
	over := *s
	over.What.Kind.Shape = stitch.Together
	return &over
}

// otherFor is the stitch that the name is another word for where it is used, nil where its own words say
// more: "wheel over last 7 sts" is the dc7tog that the wheel is made as "over next 7 sts", and so is the one
// over chains counted from the hook.
func (d *definition) otherFor(s *notation.Stitches) *notation.What {
	switch {
	case d == nil:
		return nil
	case d.alias != nil:
		return d.alias
	}
	made, ok := d.items[0].(*notation.Stitches)
	if !ok || !d.single || made.What.Kind.Shape != stitch.Together || len(made.Places) != 1 || len(s.Places) == 0 {
		return nil
	}
	p, at := &made.Places[0], &s.Places[0]
	if !p.Over || p.Pick != notation.Next || p.Of != nil || p.Target.Sort != notation.AnyStitch && p.Target.Sort != notation.OfKind || p.N.For(0) != made.What.Kind.Legs {
		return nil
	}
	if at.Target.Sort != notation.FromHook && (len(s.Places) > 1 || p.Target.Sort != notation.AnyStitch || !at.Over || at.Pick != notation.Last) {
		return nil
	}
	return &made.What
}
