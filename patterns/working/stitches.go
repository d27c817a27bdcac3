package working

import (
	"cmp"
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// stitches works one instruction that makes stitches.
func (w *roundWork) stitches(s *notation.Stitches) *halt {
	if w.c.below == nil && !w.c.ring && !w.begun && intoMagic(s.Places) {
		// "6 sc in magic ring" makes the ring on the way.
		if h := w.magicHere(s.Span); h != nil {
			return h
		}
	}
	if h := w.seal(s.Span); h != nil {
		return h
	}
	if h, closes := w.closesInRing(s); closes {
		return h
	}
	if len(s.Places) > 0 && s.What.Kind.Base != stitch.Slip {
		if h := w.anywhere(&s.Places[0]); h != nil {
			return h
		}
	}
	if d := w.definition(&s.What); d.otherFor(s) != nil && d.otherFor(s).Name == "" && w.alias == "" {
		same := *s
		same.What = *d.otherFor(s)
		if s.What.Loop.Set {
			same.What.Loop = s.What.Loop
		}
		same.OwnSide()
		same.OwnFromHook()
		if k := &same.What.Kind; k.Shape == stitch.Together && k.Legs == 0 {
			// "CL over next 9 sts": over as many as are named.
			if len(s.Places) == 1 {
				k.Legs = s.Places[0].N.For(w.size)
			}
			if k.Legs < 2 {
				return stopAt(s.Span, "legs", fmt.Sprintf("the words do not say over how many stitches this %s goes", d.name), fmt.Sprintf("Write, for example: %s over next 5 sts.", d.name))
			}
		}
		if k := &same.What.Kind; d.gathers && k.Shape == stitch.Together && len(s.Places) == 1 && !s.Places[0].N.Set() && !s.Places[0].Over && s.Places[0].Pick != notation.Each {
			k.Shape = stitch.Cluster // "CL in next st"
		}
		outer := w.own
		w.alias, w.own = d.name, cmp.Or(outer, d.name)
		h := w.stitches(&same)
		w.alias, w.own = "", outer
		return h
	}
	s = w.postsDeeper(w.clusterOver(s))
	times, n := 1, 1
	if s.Times.Set() {
		times = s.Times.For(w.size)
	}
	if s.N.Set() {
		n = s.N.For(w.size)
	}
	if times == 0 || n == 0 {
		return nil
	}
	if float64(times)*float64(n) > maxRound {
		return stopAt(s.Span, "too-large", fmt.Sprintf("%s would have more than %d stitches", w.r.Label, maxRound), "Check the numbers.")
	}
	if s.What.Kind.Shape == stitch.Picot && len(s.Places) == 0 {
		for i := 0; i < n*times; i++ {
			if h := w.make(s.What.Kind, nil, s.Span); h != nil {
				return h
			}
		}
		return nil
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
		if w.overSeveral(s) {
			if h := w.acrossPlaces(s, n); h != nil {
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

// overSeveral reports whether a decrease goes over all the places named together: "dc2tog
// over last dc and turning ch".
func (w *roundWork) overSeveral(s *notation.Stitches) bool {
	k, h := w.kind(s)
	if h != nil || k.Shape != stitch.Together || len(s.Places) < 2 {
		return false
	}
	for i := range s.Places {
		p := &s.Places[i]
		if p.Pick == notation.Each || p.Evenly || i > 0 && p.Target.Sort != notation.StartChain && (p.Of == nil || p.Of.Target.Sort != notation.StartChain) && p.Pick != notation.Skipped {
			return false
		}
	}
	return true
}

// acrossPlaces makes n decreases over all the places named.
func (w *roundWork) acrossPlaces(s *notation.Stitches, n int) *halt {
	for range n {
		var on []fabric.Place
		for i := range s.Places {
			p := s.Places[i]
			count := 1
			if p.N.Set() {
				count = p.N.For(w.size)
			}
			if p.Pick == notation.Last {
				p.Pick = notation.Next // the last before the chain
			}
			for j := range count {
				leg, h := w.one(&p, j, count)
				if h != nil {
					return h
				}
				on = append(on, leg...)
			}
		}
		if k, _ := w.kind(s); len(on) != k.Legs {
			return stopAt(s.Span, "legs", fmt.Sprintf("%s takes %s, not %d", k.Name(w.terms), plural(k.Legs, "stitch"), len(on)), "Let the number in its name and the places agree.")
		}
		if h := w.into(s, 1, on); h != nil {
			return h
		}
	}
	return nil
}

// unplaced works stitches that do not say where they go: one in each of the
// next places, or in the ring when that is where the round goes.
func (w *roundWork) unplaced(s *notation.Stitches, n int) *halt {
	if s.What.Kind == stitch.Of(stitch.Slip) && !s.N.Set() && w.begun && !w.r.Row && w.inGroup == nil && w.given == nil &&
		w.nest == 0 && (w.remaining(1) == 0 || w.started && w.c.below != nil && w.c.below.Closing == fabric.Joined && !needsPlaces(w.after)) {
		// "…, sl st" at the end of a round closes it, and so does that of a round that
		// begins with a chain as the one before it was closed.
		return w.join(&notation.Join{Span: s.Span}, w.after)
	}
	if w.given != nil {
		on := w.given
		w.given, w.same = nil, on
		return w.into(s, n, on)
	}
	if w.inGroup != nil {
		w.same = w.inGroup
		return w.into(s, n, w.inGroup)
	}
	if w.ground != nil || w.c.ring && (len(w.c.spots) == 0 || w.goesIntoRing && !w.intoStitch) {
		// "2 dc, ch 2, 3 dc in ring": all of them
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
	if d := w.definition(&s.What); d != nil && d.chained && w.onlyTravelled() {
		return w.into(s, n, w.same) // "sl st in next ch-2 sp, beg shell": where the work has come to
	}
	next := notation.Place{Span: s.Span, Pick: notation.Next}
	for i := 0; i < n; i++ {
		if d := w.definition(&s.What); d != nil && (!d.needsPlace || d.inSpace() || d.inSame() && !w.begun && !w.started || w.isBlock(d)) {
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
	p = w.ofLeft(w.spacesInAll(p))
	k, h := w.kind(s)
	if h != nil {
		return h
	}
	if h := w.onSide(p); h != nil {
		return h
	}
	w.slipping = k.Base == stitch.Slip
	if h, ok := w.backAlong(s, n, k, p); ok && (h != nil || w.point.on) {
		return h
	}
	if p.JustBelow && s.What.Loop.Set && s.What.Loop.Into >= stitch.FrontPost && s.What.Loop.Into <= stitch.BackPost {
		// "FPdc around dc below" is the round below, as always.
		plain := *p
		plain.Below = 0
		p = &plain
	}
	if p.Both {
		loop := w.loop
		w.loop = stitch.Top
		defer func() { w.loop = loop }()
	}
	if p.Extent.Sort == notation.ToMarker {
		return stopAt(p.Span, "marker", "the words do not say how many stitches there are to the marker", "Give a number: sc in next 12 sts.")
	}
	if k.Manner&stitch.Spike != 0 && p.Below == 0 && p.Target.Sort == notation.AnyStitch {
		// A spike without a depth goes into the round below the last.
		deeper := *p
		deeper.Below = 1
		p = &deeper
	}
	w.pastGroup(p)
	if h, ok := w.inSequence(s, p); ok {
		return h
	}
	if k.Manner&stitch.Crossed != 0 {
		return w.crossed(s, p)
	}
	if k.Base == stitch.Slip && w.moves && (p.Pick == notation.Next || p.Pick == notation.First && p.Target.Sort == notation.ChainSpace) && w.pos == 0 && !w.begun && !w.started && len(w.r.Stitches) == 0 &&
		w.c.below != nil && w.c.below.Closing == fabric.Joined && !w.c.below.Ring && len(w.c.spots) > 0 {
		// After a join the hook stands on the first stitch already.
		w.use(0, skipped)
		w.pos, w.lastSkip = 1, []int{0}
	}
	if p.Pick == notation.Next && len(w.r.Stitches) > 0 && w.given == nil && p.Of == nil && p.Target.Sort != notation.ChainSpace && p.Target.Sort != notation.Gap {
		w.standsOnFirst()
	}
	if k.Base == stitch.Slip && w.moves && p.To && p.Target.Sort == notation.ChainSpace && !w.begun && !w.started {
		// "sl st to next ch-2 sp": along the stitches before it.
		if h := w.slipTo(s, p); h != nil {
			return h
		}
	}
	if k == stitch.Of(stitch.Slip) && w.closesChain(p) {
		return w.join(&notation.Join{Span: s.Span, Place: &notation.Place{Span: p.Span, Pick: notation.Nth, Nth: p.Nth,
			Target: notation.Target{Sort: notation.StartChain, Text: p.Target.Text}}}, w.after)
	}
	if k == stitch.Of(stitch.Slip) && w.closes(p) {
		return w.levelOff(s, p)
	}
	legs := 1
	if k.Shape == stitch.Together {
		legs = k.Legs
	}
	p = w.toChain(s, p)
	w.toTop(p)
	if h, ok := w.onMotifs(s, n, legs, hasN, p); ok {
		return h
	}
	if h, ok := w.edgeToCorner(s, n, hasN, p); ok {
		return h
	}
	if h, ok := w.alongEdge(s, n, hasN, p); ok {
		return h
	}
	if oneByOne(p, false) && w.c.edge == 0 {
		return stopAt(p.Span, "row-ends", "row ends one at a time can only be worked along by themselves",
			"Put them in a part of their own, from: Brim row ends; or write how many go along all of them: work 9 sc evenly along row ends.")
	}
	if (p.Evenly || p.Target.Sort == notation.RowEnds) && !oneByOne(p, false) {
		return w.evenly(s, n, hasN, p)
	}
	if ofEach(p) {
		return w.eachOf(p, func(on []fabric.Place) *halt { return w.into(s, n, on) })
	}
	if w.severalOf(p) && legs == 1 {
		return w.inGroupOf(p, func(on []fabric.Place) *halt { return w.into(s, n, on) })
	}
	if p.Target.Sort == notation.FromHook && legs > 1 && p.N.Set() {
		return w.overFromHook(s, legs, p)
	}
	if p.Pick == notation.Each && w.countBeyond(p) > 0 {
		left := *p
		left.Pick, left.Every = notation.Skipped, true // "in each st of Row 1", behind all of the row below
		p = &left
	}
	switch p.Pick {
	case notation.Each:
		if n > 1 && p.Spread(hasN, s) {
			if left := w.remaining(maxRound); left == n {
				n = 1 // "6 sc across": over the six that there are
			} else if !w.statesAsMany(n * left) {
				return w.notSpread(s, n, left)
			}
		}
		return w.each(s, n, legs, p)
	case notation.Next, notation.Last, notation.Any:
		if w.given != nil && p.N.For(w.size) <= 1 && p.Target.Sort != notation.ChainSpace {
			on := w.looped(w.downFrom(w.given, p), p)
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
		if plural && count > 1 && hasN && n == count && legs == 1 && !p.Every && w.asManyInEach(n) {
			if n = 1; w.reading.asMany == allInEach {
				n = count
			}
		} else if plural && count > 1 && hasN && n == count && legs == 1 && !p.Every {
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
		count := 1
		switch {
		case p.Pick != notation.Skipped:
		case p.N.Set():
			count = p.N.For(w.size)
		case p.Every && w.countBeyond(p) > 0:
			count = w.countBeyond(p)
		case p.Every && w.missedBelow():
			count = w.leftInSlit()
		case p.Every:
			count = w.skippedHere(p)
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
	if s.What.Name != "" && w.unread[s.What.Name] {
		h := stopAt(s.Span, "undefined", "", "")
		h.known = true // what is wrong with its words has been said
		return h
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
	if k == stitch.Of(stitch.Slip) && !w.begun && (!w.r.Row || w.slipsIn) && w.c.count() > 0 && s.What.Shaping == 0 && w.moves {
		return w.travel(s, on)
	}
	loop := w.loopFor(s, on)
	if loop == stitch.FrontPost || loop == stitch.BackPost {
		if on[0].Into == stitch.Space || on[0].Into == stitch.Ring {
			return stopAt(s.Span, "post", "a chain space has no post to work round", "Work into the space: dc in next ch-2 sp.")
		}
	}
	from := len(w.r.Stitches)
	if n > 1 && w.inGroup == nil {
		defer func() {
			if len(w.r.Stitches) == from+n {
				w.r.Groups = append(w.r.Groups, fabric.Group{Span: fabric.Span{From: from, To: from + n}})
			}
		}()
	}
	if w.alias != "" {
		// Counted by its own name, one by one.
		defer func() {
			for i := from; i < len(w.r.Stitches); i++ {
				w.r.Groups = append(w.r.Groups, fabric.Group{Span: fabric.Span{From: i, To: i + 1}, Name: w.alias})
			}
		}()
	}
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
		first := !w.begun
		if h := w.make(k, places, s.Span); h != nil {
			return h
		}
		if first && w.leads != nil {
			n := len(w.r.Stitches)
			w.r.Stitches[n-1].As = w.leads.As
			if w.leads.Name != "" {
				w.r.Groups = append(w.r.Groups, fabric.Group{Span: fabric.Span{From: n - 1, To: n}, Name: w.leads.Name})
			}
		}
	}
	return nil
}

// nameOf is what the words call the stitch.
func (w *roundWork) nameOf(s *notation.Stitches) string {
	k, _ := w.kind(s)
	return k.Name(w.terms)
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
