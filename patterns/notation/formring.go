package notation

import (
	"whorl/patterns/stitch"
)

// drawnUp are the words for a ring that is drawn together over its stitches.
var drawnUp = []string{"magic", "adjustable", "sliding", "slip", "drawstring"}

// drawnUp passes over what such a ring is called: "magic", "double adjustable", "slip", which
// is one before a ring and the knot on the hook before a loop.
func (p *parser) drawnUp() bool {
	start := p.i
	if p.tok().is("double") && p.at(1).is(drawnUp...) {
		p.i++
	}
	if p.tok().is("slip") && !p.at(1).is("ring", "circle") || !p.eat(drawnUp...) {
		p.i = start
		return false
	}
	p.eatKind(tHyphen)
	return true
}

// formsRing reads "to form ring", "forming a ring", "to work in the round".
func (p *parser) formsRing() bool {
	start := p.i
	p.eatKind(tComma)
	p.eat("to", "and")
	if p.eat("form", "make", "forming", "making", "create", "close", "closing", "complete", "completing", "finish") {
		if p.eat("the", "it", "chain", "ch", "into") {
			p.eat("chain", "ch")
			p.eat("into")
		}
		p.eat("a", "the")
		if p.eat("ring", "circle", "loop", "round") {
			p.ringed = true
			return true
		}
	}
	if p.i = start; p.eat("to", "for", "and", "ready") {
		// "to work in the round", "and begin working in rounds"
		p.eat("to", "for")
		p.eat("begin", "start", "beginning", "starting", "continue", "now")
		if p.eat("work", "working", "crochet", "crocheting") && p.eat("in") {
			p.eat("the", "a", "joined", "continuous")
			if p.eat("round", "rounds", "rnds", "rnd", "ring", "circle", "spiral") {
				return true
			}
		}
	}
	p.i = start
	return false
}

// intoRing reads "into a ring", "in a circle" behind what is joined to be one.
func (p *parser) intoRing() bool {
	start := p.i
	if p.eat("into", "in", "to") && p.eat("a") && p.eat("ring", "circle", "loop") {
		p.ringed = true
		return true
	}
	p.i = start
	return false
}

// slipToFirst passes over "with a ss in first ch", which says how a chain is closed.
func (p *parser) slipToFirst() bool {
	start := p.i
	if p.eat("with", "by", "using") {
		p.eat("working", "making")
		if p.slipStitchToFirst() {
			return true
		}
	}
	p.i = start
	return false
}

// slipStitchToFirst passes over "a ss", "1 sl st in first ch", "slip stitch to join".
func (p *parser) slipStitchToFirst() bool {
	start := p.i
	if !p.eat("a", "one") && p.tok().kind == tNumber && p.tok().value == 1 {
		p.i++
	}
	if w, ok := p.what(); ok && w.Kind == stitch.Of(stitch.Slip) {
		at := p.i
		if p.eat("in", "into", "to") && !p.eat("join", "close") {
			if pl, ok := p.place(); !ok || pl.Pick != First && pl.Target.Sort != StartChain {
				p.i = at
			}
		}
		return true
	}
	p.i = start
	return false
}

// closedChain reads chains that are told of together with the ring that they are closed
// into, "Close 6 ch into a ring with a ss", "Form a ring of 6 ch joined with a sl st", and
// the ring told of behind its chains: "…, make into a ring with a ss", "and close the ring
// with a ss".
func (b *block) closedChain() bool {
	p := b.p
	start := p.i
	no := func() bool { p.i = start; return false }
	if p.work || p.depth > 1 || !p.eat("join", "close", "form", "make", "connect", "joined", "closed", "formed", "connected", "begin", "start", "commence") {
		return no()
	}
	if p.at(-1).is("begin", "start", "commence") && !p.eat("with", "by") {
		return no()
	}
	p.eat("making", "forming", "joining", "closing")
	if b.chainRing() {
		return true
	}
	if n := len(b.items); n > 0 {
		if _, ok := b.items[n-1].(*Chain); ok {
			at := p.i
			p.eat("it", "this", "them", "these", "the")
			p.eat("ch", "chain", "chs", "chains")
			told := p.intoRing() || p.at(-1).is("form", "make") && p.eat("a") && p.eat("ring", "circle") && p.tok().is("with", "by", "using")
			if !told {
				p.i = at
				told = p.eat("the") && p.eat("ring", "circle") && p.tok().is("with", "by", "using")
			}
			if told {
				p.slipToFirst()
				p.ringed = true
				b.add(&FormRing{p.from(start)})
				return true
			}
			return no()
		}
	}
	at := p.i
	p.eat("a")
	if p.eat("ring", "circle", "loop") && p.eat("of", "from", "with", "by", "using") {
		p.eat("making", "working")
		c, ok := p.chain().(*Chain)
		if !ok {
			return no()
		}
		b.add(c)
		p.joinedToRing()
		p.ringed = true
		b.add(&FormRing{p.from(start)})
		return true
	}
	p.i = at
	p.eat("the")
	c, ok := p.chain().(*Chain)
	if !ok || !p.intoRing() {
		return no()
	}
	p.slipToFirst()
	b.add(c)
	b.add(&FormRing{p.from(start)})
	return true
}

// chainRing reads "a ch-4 ring", "6-ch ring": chains joined into a ring.
func (b *block) chainRing() bool {
	p := b.p
	start := p.i
	p.eat("a")
	c := &Chain{}
	n, ok := p.num()
	p.eatKind(tHyphen)
	chain := p.eat("ch", "chain")
	if !ok {
		p.eatKind(tHyphen)
		n, ok = p.num()
	}
	if c.N, c.Span = n, p.from(start); !ok || !chain || !p.eat("ring", "circle") {
		p.i = start
		return false
	}
	p.ringed = true
	b.add(c)
	p.joinedToRing()
	b.add(&FormRing{p.from(start)})
	return true
}

// joinedToRing passes over ", joined with a ss", "and joining with a sl st in first ch", "and a sl st" behind
// the chains of a ring, which say how they are closed.
func (p *parser) joinedToRing() {
	start := p.i
	and := p.eatKind(tComma)
	and = p.eat("and") || and
	if p.eat("join", "joined", "close", "closed", "joining", "closing") {
		p.eat("the", "it", "them")
		p.eat("ring", "circle")
		if p.slipToFirst() {
			return
		}
	} else if and && p.slipStitchToFirst() {
		return
	}
	p.i = start
}

// asFollows passes over "…, work as follows:" behind work, where the rounds come next.
func (p *parser) asFollows() bool {
	start := p.i
	if !p.eat("work", "working", "continue") || !p.eatAll("as", "follows") || p.tok().kind != tColon && !p.ended() || p.tok().kind == tComma {
		p.i = start
		return false
	}
	p.eatKind(tColon)
	return true
}

// ringFollows reads "Work into a magic circle as follows:", "Working into the ring:", where
// nothing is worked in the sentence itself: what follows goes there.
func (b *block) ringFollows() bool {
	p := b.p
	start := p.i
	no := func() bool { p.i = start; return false }
	if p.work || p.depth > 1 {
		return no()
	}
	p.eat("all")
	p.eat("rounds", "sts", "stitches")
	p.eat("are", "now", "then")
	if !p.eat("work", "working", "worked", "crochet") || !p.eat("in", "into", "inside") {
		return no()
	}
	pl, ok := p.place()
	if !ok || pl.Target.Sort != Ring {
		return no()
	}
	switch {
	case p.eatAll("as", "follows"), p.eatAll("the", "following"), p.eat("thus"):
	}
	if k := p.tok().kind; k != tColon && k != tStop && k != tEnd && !p.tok().first {
		return no()
	}
	b.add(&In{Span: p.from(start), Place: pl})
	return true
}

// magicRing reads "magic ring", "a MR".
func (p *parser) magicRing() bool {
	p.eat("a", "the")
	return p.eat("mr", "mc") || p.drawnUp() && p.eat("ring", "circle", "loop")
}

// magicRingAhead reports whether a magic ring comes next: "MR 6", "In a magic ring, 6 sc", "6 in MR".
func (p *parser) magicRingAhead() bool {
	start := p.i
	defer func() { p.i = start }()
	if it, _ := p.ring(); it != nil {
		_, magic := it.(*MagicRing)
		return magic
	}
	p.num()
	p.eat("st", "sts", "stitch", "stitches")
	p.eat("in", "into")
	return p.magicRing()
}

// ringOf reads the shorthand of toy patterns for the stitches that a magic ring begins with,
// "MR 6", "6 in MR", "MR x 6": single crochets (common practice, no source).
func (b *block) ringOf() bool {
	p := b.p
	start := p.i
	if p.work || p.depth > 1 {
		return false
	}
	n, ok := p.num()
	if ok {
		p.eat("st", "sts", "stitch", "stitches")
		p.eat("in", "into")
		p.eatKind(tComma)
		ok = p.magicRing()
	} else if ok = p.magicRing(); ok {
		if !p.eat("with", "of", "x") && !p.eatKind(tTimes) && !p.eatKind(tComma) {
			p.eatKind(tColon)
		}
		n, ok = p.num()
		p.eat("st", "sts", "stitch", "stitches")
	}
	if k := p.tok().kind; !ok || !p.ended() && k != tEqual && k != tEnd && !p.tok().first {
		p.i = start
		return false
	}
	p.ringed, p.work = true, true
	b.add(&MagicRing{Span: p.from(start)})
	b.add(&Stitches{Span: p.from(start), N: n, What: What{Kind: stitch.Of(stitch.Single)}})
	return true
}
