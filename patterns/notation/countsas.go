package notation

import (
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// inPlace reads what says that a chain is a stitch without the word count: "for the first
// dc", "as 1 tr", "standing for 1 tr and 1 ch", "= 1 tr", "in place of first tr". It is nil
// for other words.
func (p *parser) inPlace() *Counts {
	start := p.i
	if c := p.standsFor(); c != nil && (c.As.Is() || c.Name != "") {
		return c
	}
	p.i = start
	return nil
}

// standsFor is [parser.inPlace], or "for the first cluster", which tells no number of legs.
func (p *parser) standsFor() *Counts {
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
	if c == nil || c.As == (stitch.Kind{}) && c.Name == "" || c.Half || !of && (!first || said != start) || p.toks[start].is("instead") && !first {
		p.i = start
		return nil
	}
	c.Span = p.from(start)
	return c
}

// startMade reads what a chain and the stitch behind it are said to be in place of, "(= first cluster)", "for
// the first cl", or that the larger one is made, "– first tr4tog made". It is nil for other words: what is
// only called "first cluster" may be the stitch without the chain.
func (b *block) startMade() *Counts {
	p, n := b.p, len(b.items)
	if n < 2 {
		return nil
	}
	s, ok := b.items[n-1].(*Stitches)
	if _, skip := b.items[n-2].(*Skip); skip && n > 2 {
		n--
	}
	if ch, chain := b.items[n-2].(*Chain); !ok || !chain || ch.Counts != nil && !ch.Counts.Not || s.N.Set() || s.Times.Set() {
		return nil
	}
	start := p.i
	c := p.standsFor()
	of := c != nil && !p.toks[start].is("the", "first", "this") && p.toks[start].kind != tOrdinal || start > 0 && p.toks[start-1].kind == tEqual
	if c == nil {
		of = p.eat("to") && p.eat("make", "form", "complete")
		p.eat("the", "a", "an", "one")
		_ = p.eat("first", "beg", "beginning", "starting", "initial") || p.eatKind(tOrdinal) || p.tok().value == 1 && p.eatKind(tNumber)
		p.eatKind(tHyphen)
		c = p.countedAs(&Counts{})
	}
	p.eat("is")
	p.eat("now")
	_ = p.eat("worked") || p.eat(finished...)
	larger := s.What.Kind.Legs > 0 && c.As.Legs == s.What.Kind.Legs+1 && c.As.Base == s.What.Kind.Base
	if !of && !larger || c.Half || c.Space || c.Several > 0 || c.As.Shape == stitch.Plain && c.Name == "" || !p.ended() {
		p.i = start
		return nil
	}
	c.Span = p.from(start)
	return c
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
		if t.is("stand") && p.at(j-1).is("to", "which", "that", "these") && p.at(j+1).is("for") || t.is("stands") && p.at(j+1).is("for") {
			at, short = j+1, true // "to stand for 1 tr"
			break
		}
		if t.is("counts", "count", "counted", "counting") || t.is("st", "stitch") && p.at(j-1).is("a") && p.at(j-2).is("not") && p.at(j+1).kind == tClose {
			at = j
			break
		}
		if n := p.chainInBrackets(j); n > 0 {
			j += n - 1
			continue
		}
		if t.kind == tClose || t.kind == tEnd || t.kind == tStop || t.kind == tSemi || t.kind == tOpen ||
			t.kind == tComma && !p.at(j-1).is("throughout") {
			break
		}
		if t.kind == tWord && !(j == 0 && t.is("which", "that")) && !t.is("this", "the", "these", "first", "ch", "chain", "chs", "chains", "turning", "beg",
			"beginning", "starting", "here", "and", "throughout", "does", "do", "will", "not", "doesn't",
			"don't", "skipped", "missed", "now", "always", "is", "are", "each", "at", "of", "rnd", "round",
			"row", "in", "start", "rnds", "rows", "pattern", "entire", "for", "to", "initial", "made", "group",
			"together", "joined", "last", "it", "a", "an", "never", "beginning", "st", "every",
			"or", "both", "any", "included", "part", "towards", "toward", "stitch") {
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
		if n := p.chainInBrackets(j); n > 0 {
			j += n - 1
			continue
		}
		if t.kind == tClose || t.kind == tEnd || t.kind == tStop || t.kind == tSemi {
			break
		}
		c.Throughout = c.Throughout || t.is("throughout")
	}
	for p.eat("here", "and", "or", "anywhere", "elsewhere", "else", "throughout", "now", "in", "total", "count", "all", "rnds", "rounds", "rows", "the", "pattern", "through", "out", "on", "from", "for", "st", "this", "rnd", "row", "round") {
	}
	if p.tok().is("unless", "except") {
		p.rest()
	}
	c.Span = p.from(start)
	return c, nil
}

// chainInBrackets is how many tokens "(3 ch)" takes that stands j tokens on, behind the
// name of the chain that is meant: "turning ch (3 ch) counts as 1 tr". It is 0 for other words.
func (p *parser) chainInBrackets(j int) int {
	start := p.i
	defer func() { p.i = start }()
	p.i += j
	if p.at(-1).is("ch", "chain", "chs", "chains", "tch") && p.eatKind(tOpen) && p.chain() != nil && p.eatKind(tClose) {
		return p.i - start - j
	}
	return 0
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
	if p.i > from && p.i > start+1 && p.eat("ch", "chs", "chain", "chains", "st", "sts") && !p.spaceWord() && p.tok().kind != tNumber && !p.tok().tight(tHyphen) {
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
	} else if p.countedAsSeveral(c) {
	} else if !c.Not && p.eat("cl", "cluster") {
		c.As.Shape = stitch.Cluster // of as many legs as those of the round
	} else {
		p.eat("st", "sts", "stitch", "stitches")
	}
	back := p.i
	if c.As.Shape == stitch.Plain {
		p.eatKind(tComma) // but "counting as first dc3tog, ch 5, …" goes on
	}
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

// countedAsSeveral reads "2 dc": more stitches than one.
func (p *parser) countedAsSeveral(c *Counts) bool {
	start := p.i
	if n, ok := p.plainNumber(); ok && n > 1 && p.tok().kind != tHyphen {
		if w, ok := p.what(); ok && w.Name == "" && w.Kind == stitch.Of(w.Kind.Base) && w.Kind.Base >= stitch.Single && !p.tok().is("tog", "together") {
			c.As, c.Several = w.Kind, n
			return true
		}
	}
	p.i = start
	return false
}
