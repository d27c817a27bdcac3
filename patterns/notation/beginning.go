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
	if hasN && !p.work {
		p.chainPlus(&n)
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

// chainPlus adds the chains of "ch 17 + 3", "ch 17 plus 3 more for turning", "ch 17 (+ 1 to turn)"
// to those before.
func (p *parser) chainPlus(n *Num) {
	start := p.i
	open := p.eatKind(tOpen)
	if p.eatKind(tComma); !p.eatKind(tPlus) && !p.eat("plus") {
		p.i = start
		return
	}
	p.eat("ch", "chain", "an")
	more, ok := p.num()
	p.eat("more", "extra", "additional")
	p.eat("ch", "chs", "chain", "chains", "sts")
	if p.eat("for", "to", "as") {
		p.eat("the", "a", "your")
		if p.eat("first"); !p.eat("turning", "turn", "tch") && !(p.at(-1).is("first") && p.eat("st", "stitch", "dc", "tr", "hdc", "sc", "htr")) {
			ok = false
		}
		p.eat("ch", "chain")
	}
	if !ok || open && !p.eatKind(tClose) || !open && !p.ended() && !p.tok().first || p.tok().kind == tPlus {
		p.i = start
		return
	}
	sum := Num{Span: n.Span}
	for i := range max(len(n.Values), len(more.Values)) {
		sum.Values = append(sum.Values, n.For(i)+more.For(i))
	}
	*n = sum
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

// ring reads "magic ring", "make an adjustable ring", and a slip knot as a note.
func (p *parser) ring() (Item, *fault.Fault) {
	start := p.i
	p.eat("make", "start", "begin", "beg", "form", "create", "with", "work", "using", "starting", "beginning", "commence", "commencing", "making")
	p.eat("with", "by")
	p.eat("making", "forming")
	p.eat("a", "an", "the")
	if p.drawnUp() && p.eat("ring", "circle", "loop") ||
		(p.eat("mr") || p.i == start && p.eat("mc")) && p.tok().kind != tOpen {
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
				if p.i++; p.at(-1).is("ring", "loop", "circle") && p.at(-2).is("a", "the", "form", "make") {
					return true
				}
			}
		}
	}
	p.i = start
	return false
}

// otherSide reads "working along opposite side of chain".
func (p *parser) otherSide() (Item, *fault.Fault) {
	start := p.i
	if p.swung() {
		return &OtherSide{p.from(start)}, nil
	}
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
			side = side || t.is("underside") || t.is("side", "edge", "loops") && (p.at(j-1).is("other", "opposite") || p.at(j-1).is(bareWords...)) || t.is("loops") && p.at(j-1).is("unused", "free", "remaining", "bottom")
			chain = chain || t.is("ch", "chain", "foundation")
		}
		if k := p.at(j).kind; side && chain && k != tNumber && k != tOrdinal {
			p.i += j
			p.soLong()
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
	and := false
	if p.eat("rotate", "turn") {
		p.eat("the")
		p.eat("piece", "work")
		at := p.i
		p.eatKind(tComma)
		if and = p.eat("and", "then"); and && p.alongFreeLoops() {
			return &OtherSide{p.from(start)}, nil // "turn piece and sc in next 9 unused loops along bottom of ch"
		}
		if and = and && p.tok().is("work", "now", "continue"); !and {
			p.i = at
		}
	}
	p.eat("to")
	p.eat("now")
	p.eat("work", "working")
	p.eat("back")
	p.eat("along", "on", "in", "into", "across", "down", "around", "up")
	p.eat("the")
	if p.eat("opposite", "other", "underside", "bottom") {
		p.eat("side", "edge", "loops", "loop")
		p.eat("of")
		p.eat("the")
		p.eat("foundation", "starting", "beginning", "beg")
		p.eat("ch", "chain", "chs", "side")
		p.soLong()
		if !and || p.ended() || p.tok().kind == tColon {
			return &OtherSide{p.from(start)}, nil
		}
	}
	p.i = start
	return nil, nil
}

// soLong passes over the number of "other side of ch-6", "opposite side of the ch-6 loop".
func (p *parser) soLong() {
	if p.at(-1).is("ch", "chain") && p.tok().tight(tHyphen) && p.at(1).kind == tNumber {
		p.i += 2
		p.eat(spaceWords...)
	}
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

// beginsAt takes "Beg at nose, with MC, ch 2", "Starting at the tip and using A, ch 4" as a note up
// to the yarn or the chain: a place on the finished piece, at which nothing is made yet.
func (p *parser) beginsAt(b *block) bool {
	start := p.i
	if p.work || p.depth > 1 || !p.eat("beg", "begin", "beginning", "start", "starting", "commence", "commencing") || !p.eat("at", "from") {
		p.i = start
		return false
	}
	place := p.i
	for p.tok().kind == tWord && !p.tok().first && !p.tok().is("with", "using", "and") && !p.stitchy(p.i, p.i+1) && p.i < place+6 {
		p.i++
	}
	end := p.i
	p.eat("and")
	t := p.tok()
	follows := t.is("with", "using") || end == p.i && (t.kind == tComma || t.kind == tStop || t.kind == tEnd)
	if !follows {
		follows = p.chain() != nil && p.ended()
	}
	if p.i = start; end == place || !follows {
		return false
	}
	return p.note(b, start, end)
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
