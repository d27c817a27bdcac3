package notation

import (
	"whorl/patterns/fault"
)

// chain reads "ch 3", "ch3", "3 ch", "beg ch-3", "chain 60 (72, 78)".
func (p *parser) chain() Item {
	start := p.i
	c := &Chain{}
	beg := p.eat("beg", "beginning")
	if p.tok().is("foundation", "starting", "base") && p.at(1).is("ch", "chain") && p.at(2).is("of") {
		p.i++
	}
	n, hasN := p.num()
	if hasN {
		p.eatKind(tHyphen)
	}
	if hasN && p.tok().is("turning") && p.at(1).is("ch", "chain", "chs", "chains") {
		p.i++ // "3 turning ch"
	}
	if !p.eat("ch", "chain", "chs", "chains") && (p.tok().text != "chaining" || hasN || !p.eat("chaining")) || p.spaceWord() || p.tok().kind == tHyphen && p.at(1).is("picot") || p.tok().is("picot") {
		p.i = start
		return nil
	}
	if !hasN {
		p.eat("of")
		p.eatKind(tHyphen)
		at := p.i
		if n, hasN = p.num(); hasN && p.timesWord() && !p.tok().is("more") {
			p.i, n, hasN = at, Num{}, false
		}
		if hasN && len(n.Values) == 1 && len(p.sizes) > 1 && !p.work {
			p.bareList(&n) // "Ch 60, 66, 72."
		}
		p.eatKind(tHyphen)
		if p.tok().is("picot", "picots") || p.spaceWord() {
			p.i = start
			return nil
		}
		p.eat("more")
		p.eat("sts", "st", "stitches", "chs", "chains")
	}
	if !hasN {
		n = One(p.from(start))
	}
	c.N, c.Beg = n, beg
	c.Span = p.from(start)
	at := p.i
	p.eatKind(tComma)
	if p.tok().is("counts", "counting", "does", "counted", "not", "doesn't", "to", "this", "as", "which", "it") {
		p.eat("which", "it")
		if p.eatAll("to", "count") {
			p.i--
		}
		if k, _ := p.counts(); k != nil {
			c.Counts = k.(*Counts)
			return c
		}
	}
	p.i = at
	p.eatKind(tComma)
	if k := p.inPlace(); k != nil && p.ended() {
		c.Counts = k
		return c
	}
	p.i = at
	return c
}

// addChain adds a chain and, when it is said to be for it, the turn: "3 ch to turn", "ch 1
// for turning".
func (b *block) addChain(c Item) {
	p := b.p
	b.add(c)
	start := p.i
	open := p.eatKind(tOpen)
	if (p.eatAll("to", "turn") || p.eatAll("for", "turning") || p.eatAll("for", "the", "turn") || p.eatAll("for", "turn")) && (!open || p.eatKind(tClose)) {
		if p.eat("work"); p.work && p.depth <= 1 {
			b.add(&Turn{p.from(start)})
		}
		return
	}
	p.i = start
	if p.at(-2).is("turning") && p.work && p.depth <= 1 && (p.tok().kind == tStop || p.tok().kind == tEnd || p.tok().first) {
		b.add(&Turn{p.from(start - 1)}) // "…, 3 turning ch."
	}
}

// inPlace reads what says that a chain is a stitch without the word count: "for the first
// dc", "as 1 tr", "standing for 1 tr and 1 ch", "= 1 tr", "in place of first tr". It is nil
// for other words.
func (p *parser) inPlace() *Counts {
	start := p.i
	p.eat("which", "that", "this", "it", "these")
	p.eat("to")
	of := p.eatKind(tEqual)
	for _, words := range [][]string{{"for"}, {"as"}, {"in", "place", "of"}, {"instead", "of"}, {"in", "lieu", "of"}, {"takes", "the", "place", "of"},
		{"take", "the", "place", "of"}, {"stand", "as"}, {"stands", "as"}, {"standing", "as"}, {"standing", "for"}, {"acts", "as"}, {"acting", "as"}, {"serves", "as"},
		{"is"}, {"equals"}, {"equal", "to"}, {"equalling"}, {"replaces"}, {"replacing"}, {"makes"}, {"forms"}} {
		of = of || p.eatAll(words...)
	}
	said := p.i
	c := p.countedAs(&Counts{})
	first := ordinalOf(&p.toks[said]) == 1 || p.toks[said].kind == tOrdinal && p.toks[said].value == 1
	first = first || ordinalOf(&p.toks[min(said+1, len(p.toks)-1)]) == 1
	if c == nil || !c.As.Is() && c.Name == "" || c.Half || !of && (!first || said != start) || p.toks[start].is("instead") && !first {
		p.i = start
		return nil
	}
	c.Span = p.from(start)
	return c
}

// ring reads "magic ring", "make an adjustable ring", and a slip knot as a note.
func (p *parser) ring() (Item, *fault.Fault) {
	start := p.i
	p.eat("make", "start", "begin", "beg", "form", "create", "with", "work", "using", "starting", "beginning", "commence", "commencing", "making")
	p.eat("with", "by")
	p.eat("making", "forming")
	p.eat("a", "an", "the")
	if p.drawnUp() && p.eat("ring", "circle", "loop") ||
		p.i == start && p.eat("mr", "mc") && p.tok().kind != tOpen {
		p.eat("method", "technique")
		if p.tok().is("with") && (p.at(1).kind == tNumber || numberWords[p.at(1).text] > 0) && p.instructs(p.i+1) {
			p.i++ // "make a magic ring with 6 sc in it"
		}
		p.ringed = true
		return &MagicRing{Span: p.from(start)}, nil
	}
	p.i = start
	if p.woundRing() {
		p.ringed = true
		return &MagicRing{Span: p.from(start)}, nil
	}
	if p.eat("make", "start", "begin", "form", "tie", "with", "create", "place") {
		p.eat("by", "with", "making")
		p.eat("making")
		if p.eat("a", "your"); p.eatAll("slip", "knot") || p.eat("slipknot") {
			for p.eat("on", "onto", "the", "your", "hook", "crochet") {
			}
			return &Note{Span: p.from(start), Text: p.words(start)}, nil
		}
	}
	p.i = start
	return nil, nil
}

// woundRing reads "Wind yarn round finger to form a ring".
func (p *parser) woundRing() bool {
	start := p.i
	if p.eat("wind", "wrap", "loop") {
		p.eat("the", "end", "tail")
		p.eat("of")
		p.eat("the")
		if p.eat("yarn", "thread") {
			for j := 0; p.tok().kind == tWord && j < 12; j++ {
				if p.i++; p.at(-1).is("ring", "loop", "circle") && p.at(-2).is("a", "the") {
					return true
				}
			}
		}
	}
	p.i = start
	return false
}

// counts reads what something counts as: "counts as dc", "does not count as a
// st", "ch 3 counts as first dc here and throughout".
func (p *parser) counts() (Item, *fault.Fault) {
	start := p.i
	if p.chainCounting() {
		return nil, nil
	}
	// The word count must come within the next few words.
	at, short := -1, false
	for j := 0; j < 14; j++ {
		t := p.at(j)
		if t.is("c") && p.at(j+1).kind == tSlash && p.at(j+2).is("a") {
			at, short = j+2, true // c/a: counts as
			break
		}
		if t.is("as") && j > 1 && p.at(j-1).kind == tNumber && p.at(j-2).is("ch", "chain") && p.at(j+1).is("a", "one") {
			at, short = j, true // "ch 3 counts as a dc, and ch 4 as a dc plus a ch-1 space"
			break
		}
		if t.is("stand") && p.at(j-1).is("to") && p.at(j+1).is("for") || t.is("stands") && p.at(j+1).is("for") {
			at, short = j+1, true // "to stand for 1 tr"
			break
		}
		if t.is("counts", "count", "counted", "counting") || t.is("st", "stitch") && p.at(j-1).is("a") && p.at(j-2).is("not") && p.at(j+1).kind == tClose {
			at = j
			break
		}
		if t.kind == tClose || t.kind == tEnd || t.kind == tStop || t.kind == tSemi || t.kind == tOpen ||
			t.kind == tComma && !p.at(j-1).is("throughout") {
			break
		}
		if t.kind == tWord && !t.is("this", "the", "these", "first", "ch", "chain", "chs", "chains", "turning", "beg",
			"beginning", "starting", "here", "and", "throughout", "does", "do", "will", "not", "doesn't",
			"don't", "skipped", "missed", "now", "always", "is", "are", "each", "at", "of", "rnd", "round",
			"row", "in", "start", "rnds", "rows", "pattern", "entire", "for", "to", "initial", "made", "group",
			"together", "joined", "last", "it", "a", "an", "never", "beginning", "st", "every",
			"included", "part", "towards", "toward", "stitch") {
			if w, _ := p.vocab.lookup(t.text); !w.what.Kind.Is() {
				if _, ok := p.vocab.glued(t.text); !ok {
					break
				}
			}
		}
	}
	if at < 0 {
		return nil, nil
	}
	c := &Counts{}
	for j := 0; j <= at; j++ {
		c.Not = c.Not || p.at(j).is("not", "doesn't", "don't", "never")
		c.Throughout = c.Throughout || p.at(j).is("throughout")
		c.Half = c.Half || p.at(j).is("together")
		if n := p.at(j); n.kind == tNumber && (p.at(j-1).is("ch", "chain") || p.at(j-1).kind == tHyphen && p.at(j-2).is("ch", "chain") ||
			p.at(j+1).is("ch", "chs", "chain", "chains") || p.at(j+1).kind == tHyphen && p.at(j+2).is("ch", "chain")) {
			c.Of = n.value // "beg ch-3 counts as dc"
		} else if n.kind == tNumber && p.at(j+1).is(skippedWords...) && p.at(j+2).is("ch", "chs", "chain", "chains") {
			c.Passed = n.value // "first 3 skipped ch count as dc"
		}
	}
	p.i += at + 1
	p.eatKind(tColon)
	if !p.eat("as") && !c.Not && !short {
		p.i = start
		return nil, nil
	}
	p.countedAs(c)
	for j := p.i; j < len(p.toks); j++ {
		t := &p.toks[j]
		if t.kind == tClose || t.kind == tEnd || t.kind == tStop || t.kind == tSemi {
			break
		}
		c.Throughout = c.Throughout || t.is("throughout")
	}
	for p.eat("here", "and", "throughout", "now", "in", "total", "count", "all", "rnds", "rounds", "rows", "the", "pattern", "through", "out", "on", "from", "for", "st", "this", "rnd", "row", "round") {
	}
	if p.tok().is("unless", "except") {
		p.rest()
	}
	c.Span = p.from(start)
	return c, nil
}

// BaseOf is how many of n chains passed over at the beginning lie along the starting
// chain: as said, or all that are more than those which count as the stitch.
func (c *Counts) BaseOf(n int) int {
	switch {
	case c == nil:
		return 0
	case c.Base == 0 && c.As.Is() && c.Chains == 0 && c.Passed > 0 && c.Passed < n:
		return n - c.Passed
	}
	return c.Base
}

// baseChains reads "and 1 missed base ch", "plus 2 skipped foundation chs" behind what
// chains count as: how many of the starting chain are passed over besides.
func (p *parser) baseChains() int {
	start := p.i
	p.eatKind(tComma)
	p.eatKind(tPlus)
	p.eat("and", "plus", "with")
	n, ok := p.plainNumber()
	if !ok {
		p.eat("a", "an", "the", "one")
		n = 1
	}
	from := p.i
	for p.eat("base", "foundation", "starting", "extra") || p.eat(skippedWords...) {
	}
	if p.i > from && p.i > start+1 && p.eat("ch", "chs", "chain", "chains", "st", "sts") && !p.spaceWord() {
		return n
	}
	p.i = start
	return 0
}

// chainCounting reports whether a chain is made here that is said to count as something:
// "3 ch to count as 1 tr", "ch 3, counting as dc", but "ch 3 counts as dc" makes none.
func (p *parser) chainCounting() bool {
	at := p.i
	defer func() { p.i = at }()
	n, numbered := p.num()
	p.eatKind(tHyphen)
	if !p.eat("ch", "chain", "chs", "chains") {
		return false
	}
	p.eatKind(tHyphen)
	if m, ok := p.num(); ok {
		n, numbered = m, true
	}
	p.eatKind(tComma)
	return numbered && n.Set() && (p.tok().is("counting", "standing", "which") || p.tok().is("to") && p.at(1).is("count", "stand") || p.tok().is("not") && p.at(1).is("counted", "counting"))
}

// countedAs reads the stitch that something counts as, and the chains with it: "first dc",
// "1 tr plus ch 2". It is c.
func (p *parser) countedAs(c *Counts) *Counts {
	for p.eat("the", "a", "an", "first", "one", "half", "leg", "of", "part") || p.tok().kind == tOrdinal && p.tok().value == 1 && p.eatKind(tOrdinal) || p.tok().kind == tNumber && p.tok().value == 1 && !p.at(1).tight(tHyphen) {
		if p.tok().kind == tNumber && p.tok().value == 1 && !p.at(1).tight(tHyphen) {
			p.i++
		}
		c.Half = c.Half || p.at(-1).is("half", "leg", "part")
	}
	if at := p.i; !c.Not {
		if t, ok := p.target(); ok && t.Sort == ChainSpace {
			c.Chains, c.Space = max(1, t.Chains), true
		} else {
			p.i = at
		}
	}
	before := 0
	if at := p.i; !c.Not && !c.Space {
		// "counts as ch 1 and dc"
		if ch, ok := p.chain().(*Chain); ok && p.eat("and", "plus") {
			before = ch.N.For(0)
			p.eat("a", "one", "first")
		} else {
			p.i = at
		}
	}
	if c.Space {
	} else if w, ok := p.what(); ok {
		c.As, c.Name = w.Kind, w.Name
	} else {
		p.eat("st", "sts", "stitch", "stitches")
	}
	back := p.i
	p.eatKind(tComma)
	p.eatKind(tPlus)
	p.eat("and", "plus")
	p.eat("a", "an", "the")
	if ch, ok := p.chain().(*Chain); ok && c.As.Is() && (ch.Counts != nil || p.tok().is("does", "do", "doesn't", "don't", "is", "isn't", "never", "counts", "as", "at", "are")) {
		p.i = back // "ch 3 counts as 1 dc, and ch 1 does not count": of another chain
	} else if ok && c.As.Is() {
		c.Chains = ch.N.For(0)
	} else if t, ok := p.target(); ok && t.Sort == ChainSpace && c.As.Is() {
		c.Chains = max(1, t.Chains)
	} else {
		p.i = back
	}
	if before > 0 && c.As.Is() {
		c.Chains = before
	}
	if c.As.Is() {
		c.Base = p.baseChains()
	} else {
		c.Passed = 0
	}
	return c
}

// otherSide reads "working along opposite side of chain".
func (p *parser) otherSide() (Item, *fault.Fault) {
	start := p.i
	if p.tok().is("working", "work", "turn", "rotate", "continue", "continuing", "now", "along", "on", "going", "turning", "go") {
		// However it is said: the other side or the underside of the chain,
		// in a phrase without a number.
		side, chain := false, false
		j := 0
		for ; ; j++ {
			t := p.at(j)
			if t.kind != tWord {
				break
			}
			side = side || t.is("underside") || t.is("side", "edge", "loops") && p.at(j-1).is("other", "opposite") || t.is("loops") && p.at(j-1).is("unused", "free", "remaining", "bottom")
			chain = chain || t.is("ch", "chain", "foundation")
		}
		if k := p.at(j).kind; side && chain && k != tNumber && k != tOrdinal {
			p.i += j
			return &OtherSide{p.from(start)}, nil
		}
		if p.alongBottom() {
			return &OtherSide{p.from(start)}, nil
		}
		if p.eat("working", "work", "now", "continue", "continuing") {
			// "working along the foundation chain, 3 sc in first ch"
			p.eat("work", "working")
			if p.eat("along", "across", "on", "down", "in", "into") {
				if p.eat("the"); p.tok().is("foundation", "starting", "cast", "original", "beginning") && p.startingChain() && p.ended() {
					return &OtherSide{p.from(start)}, nil
				}
			}
			p.i = start
		}
	}
	p.eat("rotate", "turn")
	p.eat("to")
	p.eat("now")
	p.eat("work", "working")
	p.eat("back")
	p.eat("along", "on", "in", "into", "across", "down", "around")
	p.eat("the")
	if p.eat("opposite", "other", "underside", "bottom") {
		p.eat("side", "edge", "loops", "loop")
		p.eat("of")
		p.eat("the")
		p.eat("foundation", "starting", "beginning", "beg")
		p.eat("ch", "chain", "chs", "side")
		return &OtherSide{p.from(start)}, nil
	}
	p.i = start
	return nil, nil
}

// alongBottom reads "rotate and work along bottom edge" before chains that are worked into:
// the edge is that of the starting chain.
func (p *parser) alongBottom() bool {
	start := p.i
	if p.eat("rotate", "turn") {
		p.eatKind(tComma)
		p.eat("and", "to", "then")
	}
	p.eat("continue", "continuing", "now")
	if p.eat("work", "working") {
		p.eat("along", "across", "on", "in")
		p.eat("the")
		if p.eat("bottom", "lower") && p.eat("edge", "side") && (p.tok().kind == tComma || p.tok().kind == tColon) {
			for j := p.i + 1; j < len(p.toks) && p.toks[j].kind != tComma && p.toks[j].kind != tStop; j++ {
				if p.toks[j].is("ch", "chain", "chs") {
					return true
				}
			}
		}
	}
	p.i = start
	return false
}

// startingIn reads "Starting in any ch-1 sp," before anything is made.
func (p *parser) startingIn(b *block) bool {
	start := p.i
	if p.work || p.depth > 1 || !p.eat("starting", "beginning", "begin", "start", "beg") || !p.eat("in", "with", "at") {
		p.i = start
		return false
	}
	if pl, ok := p.place(); ok && p.ended() && p.tok().kind != tOpen && (pl.Pick == Any || pl.Of != nil && pl.Of.Pick == Any) {
		b.add(&Begin{Span: p.from(start), Place: pl})
		return true
	}
	p.i = start
	return false
}

// atEdgeFirst passes over "at lower edge", "from the neck", "in the middle" before "with 72 ch":
// where on the piece the work begins.
func (p *parser) atEdgeFirst() bool {
	start := p.i
	if p.eat("at", "from", "on", "in") {
		n := 0
		for ; p.tok().kind == tWord && !p.tok().first && !p.tok().is("with", "by") && !p.stitchy(p.i, p.i+1) && n < 6; n++ {
			p.i++
		}
		if n > 0 && p.tok().is("with", "by") {
			return true
		}
	}
	p.i = start
	return false
}

// beginsWork reports whether a ring comes next, or stitches that go into one.
func (p *parser) beginsWork() bool {
	at, ringed := p.i, p.ringed
	defer func() { p.i, p.ringed = at, ringed }()
	if it, _ := p.ring(); it != nil {
		_, ring := it.(*MagicRing)
		return ring
	}
	it, ok := p.stitches()
	if !ok {
		return false
	}
	s := it.(*Stitches)
	return len(s.Places) == 1 && s.Places[0].Target.Sort == Ring
}
