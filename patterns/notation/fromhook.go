package notation

import (
	"slices"

	"whorl/patterns/stitch"
)

// severalFromHook reads "2nd and 3rd ch from hook", "4th, 5th and 6th chs from the hook":
// the first of them, and how many there are.
func (p *parser) severalFromHook() (Place, bool) {
	start := p.i
	p.eat("the")
	first := p.nth()
	n := 1
	for first > 0 {
		p.eatKind(tComma)
		p.eat("and", "the")
		if next := p.nth(); next != first+n {
			break
		}
		n++
	}
	text := p.i
	if n < 2 || !p.eat("ch", "chs", "chain", "chains") || !p.eat("from") {
		p.i = start
		return Place{}, false
	}
	if p.eat("the"); !p.eat("hook") {
		p.i = start
		return Place{}, false
	}
	return Place{Span: p.from(start), Pick: Nth, Nth: first, N: Num{Span: p.from(start), Values: []int{n}},
		Target: Target{Sort: FromHook, Kind: stitch.Of(stitch.Chain), Text: p.words(text)}}, true
}

// fromHookBehind reads "starting in 2nd ch from hook" behind a decrease, "dc2tog over next 2 ch, starting in
// 3rd ch from hook", where that is the first of those chains.
func (p *parser) fromHookBehind(s *Stitches) {
	start, legs := p.i, s.What.Kind.Legs
	if len(s.Places) > 0 {
		first := &s.Places[0]
		if len(s.Places) > 1 || first.Pick != Next || first.Of != nil || first.Target.Sort != ChainStitch && first.Target.Sort != AnyStitch || len(first.N.Values) > 1 {
			return
		}
		if first.N.Set() {
			legs = first.N.For(0)
		}
		p.eatKind(tComma)
	}
	if s.What.Kind.Shape != stitch.Together && s.What.Name == "" || !p.eat("starting", "beginning", "begun") || !p.eat("in", "with", "at") {
		p.i = start
		return
	}
	pl, ok := p.place()
	if !ok || pl.Target.Sort != FromHook {
		p.i = start
		return
	}
	if pl.Over = true; legs > 0 {
		pl.N = Num{Span: pl.Span, Values: []int{legs}}
	}
	s.Places = []Place{pl}
}

// overFromHook lets a decrease that begins in a chain counted from the hook go on over
// the chains after it. It is false where the words name another number of them.
func (s *Stitches) overFromHook() bool {
	legs := s.What.Kind.Legs
	over := 1
	for i := 1; i < len(s.Places); i++ {
		pl := &s.Places[i]
		if pl.Pick != Next || pl.Of != nil || pl.Target.Sort != ChainStitch && pl.Target.Sort != AnyStitch {
			return false
		}
		if over++; pl.N.Set() {
			over += pl.N.For(0) - 1
		}
	}
	if len(s.Places) > 1 && over != legs {
		return false
	}
	s.Places = s.Places[:1]
	s.Places[0].Over = true
	s.Places[0].N = Num{Span: s.Places[0].Span, Values: []int{legs}}
	return true
}

// fromHook settles what goes into chains counted from the hook: a run of stitches into
// several of them, or a decrease over them.
func (s *Stitches) fromHook() {
	if len(s.Places) == 0 || s.Places[0].Target.Sort != FromHook {
		return
	}
	first := &s.Places[0]
	switch {
	case s.What.Kind.Shape == stitch.Together:
		if len(s.Places) > 1 {
			s.overFromHook()
		}
	case first.N.Set():
		rest := Place{Span: first.Span, Pick: Next, N: Num{Span: first.Span, Values: []int{first.N.For(0) - 1}}, Target: Target{Sort: ChainStitch, Kind: stitch.Of(stitch.Chain), Text: "ch"}}
		first.N = Num{}
		s.Places = append([]Place{*first, rest}, s.Places[1:]...)
	}
}

// OwnFromHook is fromHook for one of the designer's own stitches, once it is known what it is: "dc2tog over
// 3rd and 4th ch from hook".
func (s *Stitches) OwnFromHook() {
	if len(s.Places) == 0 || s.Places[0].Target.Sort != FromHook || s.What.Kind.Shape != stitch.Together {
		return
	}
	s.Places = slices.Clone(s.Places)
	switch first := &s.Places[0]; {
	case len(s.Places) == 2 && s.Places[1].Pick == Next && s.Places[1].N.Set():
		first.Over, first.N = true, Num{Span: first.Span, Values: []int{1 + s.Places[1].N.For(0)}}
		s.Places = s.Places[:1]
	case len(s.Places) > 1 || first.Over && !first.N.Set():
		s.overFromHook()
	}
}

// overFrom lets a decrease begin in the chain that is named before it: "starting in 2nd ch
// from hook, sc2tog over next 2 chs", of which the first is that chain.
func (s *Stitches) overFrom(places []Place) bool {
	if len(s.Places) > 1 || len(s.Places) == 1 && (s.Places[0].Of != nil || s.Places[0].Pick != Next || s.Places[0].N.Set() && s.Places[0].N.For(0) != s.What.Kind.Legs) {
		return false
	}
	s.Places = places[:1]
	return s.overFromHook()
}

// listFromHook takes "sc, dc in 2nd ch from hook" at the beginning of a row: the stitches before
// that have no place go into that chain as well, there being no other yet. Chains of the
// starting chain stand before them.
func (b *block) listFromHook(s *Stitches) bool {
	if len(s.Places) != 1 || s.Places[0].Target.Sort != FromHook || s.Places[0].Pick != Nth || s.Places[0].N.Set() || s.Times.Set() || b.p.depth > 1 ||
		s.What.Kind.Shape == stitch.Together || s.What.Shaping != 0 {
		return false
	}
	from := len(b.items)
	for from > 0 {
		it, ok := b.items[from-1].(*Stitches)
		if !ok || len(it.Places) > 0 || it.What.Kind.Base < stitch.Single || it.What.Kind.Shape == stitch.Together || it.Times.Set() {
			break
		}
		from--
	}
	if from == len(b.items) || len(b.stars) > 0 {
		return false
	}
	for _, it := range b.items[:from] {
		switch it.(type) {
		case *Chain, *Note, *Turn, *Colour:
		default:
			return false
		}
	}
	b.gather(from, s)
	return true
}

// startingWith passes over "starting" before "in 2nd ch from hook"; "with", "at" and "on" say the same.
func (p *parser) startingWith() {
	if p.tok().is("starting", "beg", "beginning") && p.at(1).is("in", "with", "at", "on") {
		nth := p.at(2)
		if nth.is("the") {
			nth = p.at(3)
		}
		if p.i++; !p.tok().is("in") && (nth.kind == tOrdinal || ordinalOf(nth) > 0) {
			p.tok().text = "in"
		}
	}
}

// inSame passes over "in same ch" behind what goes into the place that is named before it:
// "starting in 2nd ch from hook, work (dc, tr) in same ch".
func (p *parser) inSame() bool {
	start := p.i
	if p.eat("all"); p.eat("in", "into") {
		p.eat("the")
		if p.eat("same", "that", "this") && p.eat("same", "ch", "chain", "st", "stitch", "place", "one") && p.ended() {
			return true
		}
	}
	p.i = start
	return false
}

// onFrom lets a run of stitches begin in the chain that is named before it:
// "starting in 2nd ch from hook, sc in next 5 chs", "…: sc 5". It is false for
// anything but a run.
func (s *Stitches) onFrom(places []Place) bool {
	if s.What.Kind.Shape == stitch.Together {
		return s.overFrom(places)
	}
	run := s.N
	switch {
	case len(s.Places) == 0:
	case len(s.Places) == 1 && s.Places[0].Pick == Next && !s.N.Set():
		run = s.Places[0].N
	default:
		return false
	}
	next := Place{Span: s.Span, Pick: Next, N: run}
	if len(s.Places) == 1 {
		next = s.Places[0]
	}
	next.N.Values = nil
	more := false
	for _, n := range run.Values {
		next.N.Values = append(next.N.Values, max(n-1, 0))
		more = more || n > 1
	}
	if s.N, s.Places = (Num{}), places; more {
		s.Places = append(places[:len(places):len(places)], next)
	}
	return true
}

// restOfChain reads "of each ch across", "back bump of each remaining ch" behind "in back bump of
// 2nd ch from hook and": the chains that follow the first, in the same loop where none is named.
func (p *parser) restOfChain(first *Place) (Place, bool) {
	start := p.i
	same := p.eat("of")
	if p.tok().is("the", "back", "bottom") || same && p.tok().is("each", "every", "all", "next") {
		if pl, ok := p.place(); ok && pl.Target.Sort == ChainStitch && (pl.Pick == Each || pl.Pick == Next && pl.N.Set()) {
			if same {
				pl.Into = first.Into
			}
			return pl, true
		}
	}
	p.i = start
	return Place{}, false
}
