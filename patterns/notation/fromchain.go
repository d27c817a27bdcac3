package notation

import "whorl/patterns/fault"

// chainToBegin reads from which chain a row begins: "starting in 2nd ch from hook", "working from the second
// chain". Into says that stitches behind it may be told as what goes into that chain: "starting in 2nd ch from
// hook".
func (p *parser) chainToBegin() (pl Place, into, ok bool) {
	start := p.i
	begins := p.eat("starting", "beginning", "start", "begin", "commencing", "commence")
	if !begins && p.eat("work", "working") && !p.tok().is("from") {
		p.i = start
	}
	from := p.eat("from")
	in := !from && begins && p.eat("in", "with", "at", "on", "into")
	if !from && !begins {
		return pl, false, false
	}
	p.eat("the")
	pl, ok = p.place()
	hook := pl.Target.Sort == FromHook
	if !ok || pl.Pick != Nth || pl.Of != nil || pl.N.Set() || !hook && (pl.Target.Sort != ChainStitch || !from && !in) {
		p.i = start
		return pl, false, false
	}
	pl.Target.Sort, pl.Span = FromHook, p.from(start)
	return pl, in && hook, true
}

// fromChain reads "from 2nd ch:", "starting from 2nd ch from hook," at the beginning of a round. Of stitches
// behind it the first goes into that chain; a repeat, a bracket, a new sentence begin there.
func (b *block) fromChain() (bool, *fault.Fault) {
	p, start := b.p, b.p.i
	no := func() (bool, *fault.Fault) { p.i = start; return false, nil }
	if p.depth > 1 || len(b.stars) > 0 && !b.stars[len(b.stars)-1].wrapped {
		return no()
	}
	if p.work {
		if b.fromChainBehind() {
			return true, nil
		}
		return no()
	}
	for _, it := range b.items {
		switch it.(type) {
		case *Note, *Chain, *Colour:
		default:
			return no()
		}
	}
	pl, into, ok := p.chainToBegin()
	if !ok {
		return no()
	}
	sentence := p.tok().kind == tStop
	if sentence || p.tok().kind == tComma || p.tok().kind == tColon {
		p.i++
	}
	p.eat("and", "then")
	p.eat("work", "make")
	if p.tok().kind == tColon {
		p.i++
	}
	if sentence || p.goesAlong() {
		if !b.inThatChain(pl) {
			b.add(&Begin{Span: pl.Span, Place: pl})
		}
		return true, nil
	}
	lead := &p.toks[start]
	if into && (p.tok().kind == tOpen || !lead.is("begin", "commence", "commencing")) {
		return no() // stitches, or a group, which go into it
	}
	at := p.i
	it, ok := p.stitches()
	s, is := it.(*Stitches)
	if !ok || !is || !s.beginIn(pl) {
		p.i = at
		return true, p.stuck()
	}
	s.Span = p.from(start)
	b.add(s)
	return true, nil
}

// beginIn lets the first of stitches go into the chain that a row begins in. It is false for stitches that do not
// go on from there one by one.
func (s *Stitches) beginIn(pl Place) bool {
	if len(s.Places) > 0 && s.Places[0].Pick == Each {
		s.spreadFrom()
		s.Places = append([]Place{pl}, s.Places...)
		return true
	}
	return s.onFrom([]Place{pl})
}

// goesAlong reports whether what comes next goes along the chain and not into one of its stitches: a repeat, a
// bracket that is worked several times, something passed over.
func (p *parser) goesAlong() bool {
	t := p.tok()
	switch {
	case t.kind == tStar, t.is("sk", "skip", "miss"):
		return true
	case t.kind == tOpen:
		close := p.matching(p.i)
		if close < 0 {
			return false
		}
		at := p.i
		defer func() { p.i = at }()
		p.i = close + 1
		return !p.inSame() && (p.multiplied(close+1) || p.tok().is("along", "to", "until"))
	}
	at, work, faults := p.i, p.work, len(p.faults)
	defer func() { p.i, p.work, p.faults = at, work, p.faults[:faults] }()
	if p.chain() != nil {
		return true
	}
	it, ok := p.stitches()
	s, _ := it.(*Stitches)
	return ok && s != nil && s.inFirstChain()
}

// inFirstChain reports whether stitches go into "first ch", "first st".
func (s *Stitches) inFirstChain() bool {
	return len(s.Places) > 0 && s.Places[0].Pick == First && s.Places[0].Of == nil && !s.Places[0].N.Set() &&
		(s.Places[0].Target.Sort == ChainStitch || s.Places[0].Target.Sort == AnyStitch)
}

// inThatChain reads stitches behind the chain that a row begins in. "First ch" is that chain then: the first of those
// that are worked.
func (b *block) inThatChain(pl Place) bool {
	p := b.p
	at, work, faults := p.i, p.work, len(p.faults)
	it, ok := p.stitches()
	s, is := it.(*Stitches)
	if is && s.inFirstChain() && len(s.Places) == 1 {
		s.Places = []Place{pl}
	} else if !ok || !is || !s.beginIn(pl) {
		p.i, p.work, p.faults = at, work, p.faults[:faults]
		return false
	}
	b.add(s)
	return true
}

// fromChainBehind reads "starting in 2nd ch from hook" behind what is worked along the chain: "sc in each ch
// across, starting in 2nd ch from hook".
func (b *block) fromChainBehind() bool {
	p, start := b.p, b.p.i
	open := p.eatKind(tOpen)
	pl, _, ok := p.chainToBegin()
	if !ok || open && !p.eatKind(tClose) || !p.ended() && !p.tok().first {
		p.i = start
		return false
	}
	first := -1
	for i, it := range b.items {
		switch it := it.(type) {
		case *Note, *Chain, *Colour:
			continue
		case *Stitches:
			if len(it.Places) > 0 && it.Places[0].Target.Sort == FromHook {
				first = -1
				break
			}
			if first < 0 {
				first = i
			}
		case *Repeat, *Group, *Skip:
			if first < 0 {
				first = i
			}
		}
		if first < 0 {
			break
		}
	}
	if first < 0 {
		p.i = start
		return false
	}
	if s, ok := b.items[first].(*Stitches); !ok || !s.beginIn(pl) {
		b.insert(first, &Begin{Span: pl.Span, Place: pl})
	}
	return true
}
