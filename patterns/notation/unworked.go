package notation

import "whorl/patterns/stitch"

// passedOver reads "skipped", "remaining unworked": said of places that were passed over.
func (p *parser) passedOver() bool {
	start := p.i
	p.eat("rem", "remaining")
	if p.eat(skippedWords...) && !p.loopAhead() {
		return true
	}
	p.i = start
	return false
}

// leftUnworked reads "unworked", "of fan unworked", "on this row free" behind the stitches that remain.
func (p *parser) leftUnworked() bool {
	start := p.i
	if p.eat("of", "in", "on") {
		for n := 0; n < 4 && p.tok().kind == tWord && !p.tok().first && !p.tok().is(unworkedWords...) && !p.tok().is("and", "then"); n++ {
			p.i++
		}
	}
	if p.eat(unworkedWords...) {
		return true
	}
	p.i = start
	return false
}

// joinsLeft makes the place from token from on that a yarn is joined in one of those left before, where it is
// called so: "rejoin yarn to next unworked st", "to rem sts".
func (p *parser) joinsLeft(j *Join, pl *Place, from int) {
	if j.Yarn == "" || pl.Pick != Next && pl.Pick != First && pl.Pick != Each || pl.Of != nil || pl.Target.Sort != AnyStitch && pl.Target.Sort != OfKind {
		return
	}
	for i := from; i < p.i; i++ {
		if p.toks[i].is("unworked", "rem", "remaining") {
			pl.Pick, pl.Nth, pl.Bare, pl.N = Skipped, 0, false, Num{}
		}
	}
}

// freeLoops reads "unused loops along bottom of ch", "loops on opposite side of foundation ch": the other side
// of the starting chain.
func (p *parser) freeLoops() (Target, bool) {
	start := p.i
	no := func() (Target, bool) { p.i = start; return Target{}, false }
	free := p.eat("unused", "free", "remaining", "rem", "unworked")
	if !p.eat("loops", "loop", "lps", "lp") || !p.eat("along", "on", "of", "across", "at", "from", "in") {
		return no()
	}
	p.eat("the")
	if p.eat("underside", "bottom", "base") || p.eat("other", "opposite", "lower") && p.eat("side", "edge") {
		free = p.eat("edge", "side") || true
		if !p.eat("of") {
			return no()
		}
		p.eat("the")
	}
	p.eat("foundation", "starting", "beginning", "beg", "original", "base")
	if !free || !p.eat("ch", "chain", "chs", "chains") || !p.ended() {
		return no()
	}
	return Target{Sort: ChainStitch, Kind: stitch.Of(stitch.Chain), Name: ChainEdge}, true
}

// alongFreeLoops reports whether stitches come next that go into the other side of the starting chain.
func (p *parser) alongFreeLoops() bool {
	at, faults := p.i, len(p.faults)
	defer func() { p.i, p.faults = at, p.faults[:faults] }()
	it, ok := p.stitches()
	s, _ := it.(*Stitches)
	return ok && len(s.Places) == 1 && s.Places[0].Target.Sort == ChainStitch && s.Places[0].Target.Name == ChainEdge
}

// leftBefore reads "you left alone", "that were left unworked", "left unworked at the end of Row 2":
// of places passed over before, and the row that left them.
func (p *parser) leftBefore(pl *Place) bool {
	start := p.i
	p.eat("that", "which")
	p.eat("you", "we", "were", "was")
	p.eat("have", "had", "been")
	said := p.i > start
	if p.eat("left") && (p.eat(unworkedWords...) || said && p.eat("behind", "over")) || said && p.eat("skipped", "missed") {
		if !p.leftIn(pl) {
			p.eat("earlier", "before", "at", "on")
		}
		return true
	}
	p.i = start
	return false
}

// leftIn reads "on Row 2", "at the end of Row 2": the row that left stitches unworked.
func (p *parser) leftIn(pl *Place) bool {
	start := p.i
	if p.eat("at") {
		p.eat("the")
		if !p.eat("end") {
			p.i = start
		}
	}
	if p.tok().is("of", "in", "on", "from", "by", "at") && p.roundBelow(pl) {
		return true
	}
	p.i = start
	return false
}

// ontoUnworked reads ", continuing across the 5 unworked sts of Row 1", ", including the 5 unworked
// sts" behind the stitches of a row: it goes on onto those that short rows left.
func (p *parser) ontoUnworked() (Place, bool) {
	start := p.i
	no := func() (Place, bool) { p.i = start; return Place{}, false }
	p.eatKind(tComma)
	p.eat("and", "then")
	if !p.eat("continuing", "continue", "including", "working", "plus", "finishing") {
		return no()
	}
	p.eat("on")
	p.eat("working", "to")
	p.eat("across", "into", "in", "over", "onto", "along", "with", "on")
	pl, ok := p.place()
	if !ok || pl.Pick != Skipped || pl.Target.Sort != AnyStitch && pl.Target.Sort != OfKind || !p.ended() {
		return no()
	}
	if p.tok().kind == tComma {
		// "working in unworked sts of Row 1, sc in next 5 sts" says where those go.
		at := p.i
		p.i++
		p.num()
		_, stitches := p.what()
		if p.i = at; stitches {
			return no()
		}
	}
	pl.Every = true
	return pl, true
}

// andSkipped reads "6 skipped sts", "missed st around" behind "in each of the 6 ch and", or chains
// behind such stitches: the other side of a slit.
func (p *parser) andSkipped(first *Place) (Place, bool) {
	start := p.i
	if first.Target.Sort == ChainStitch && (first.Every || first.N.Set()) && first.Of == nil {
		p.eat("the")
		n, _ := p.num()
		if pl := (Place{Pick: Skipped, N: n, Every: true}); p.passedOver() && p.targetOr(&pl) && (pl.Target.Sort == AnyStitch || pl.Target.Sort == OfKind) {
			p.placeTail(&pl)
			pl.Span = p.from(start)
			return pl, true
		}
	}
	if p.i = start; first.Pick == Skipped && first.Of == nil {
		pl := Place{Pick: Each, Every: true}
		p.eat("the")
		if n, ok := p.num(); ok {
			pl.Pick, pl.N = Next, n
		}
		if p.targetOr(&pl) && pl.Target.Sort == ChainStitch {
			p.placeTail(&pl)
			pl.Span = p.from(start)
			return pl, true
		}
	}
	p.i = start
	return Place{}, false
}

// unworkedNext reports whether "first unworked st" comes next, behind "over next st and".
func (p *parser) unworkedNext() bool {
	start := p.i
	defer func() { p.i = start }()
	pl, ok := p.place()
	return ok && pl.Pick == Skipped && (pl.Target.Sort == AnyStitch || pl.Target.Sort == OfKind)
}

// skippedToCome takes "Work hdc in skipped st behind the FPdc", "Work into the skipped sts in front of the
// cable" behind the count of a round that skips none for advice: how those of the rounds to come are worked.
func (b *block) skippedToCome() bool {
	p, start := b.p, b.p.i
	if len(p.stated) == 0 || p.depth > 1 {
		return false
	}
	for i := range start {
		if p.toks[i].is("sk", "skip", "skips", "skipping", "miss", "misses", "missing", "leave", "leaving") {
			return false
		}
	}
	p.eat("always", "remember", "then")
	p.eat("to")
	if p.eat("work", "make", "working") {
		p.eat("a", "an", "the", "each", "all")
		if _, ok := p.what(); !ok {
			p.eat("sts", "stitches")
		}
		p.eat("in", "into", "over")
		p.eat("the", "each", "every", "any")
		p.eat("of")
		p.eat("the")
		if p.eat(skippedWords...) {
			if _, ok := p.target(); ok && (p.tok().is("behind", "from") || p.eatAll("in", "front")) && !p.stitchyBehind() {
				return p.note(b, start, p.sentenceEnd())
			}
		}
	}
	p.i = start
	return false
}

// stitchyBehind reports whether more is worked behind a comma in the sentence.
func (p *parser) stitchyBehind() bool {
	for j, end := p.i, p.sentenceEnd(); j < end; j++ {
		if k := p.toks[j].kind; (k == tComma || k == tSemi) && (p.instructs(j+1) || p.ends(j+1)) {
			return true
		}
	}
	return false
}

// skipsWritten reads "next [1 dc, 3 ch, 1 dc]" behind the word skip: the stitches of one kind that the
// bracket has are passed over, with the chains between them.
func (p *parser) skipsWritten(s *Skip) bool {
	start, faults, stated := p.i, len(p.faults), len(p.stated)
	p.eat("next", "following", "foll")
	close := p.matching(p.i)
	if p.tok().kind != tOpen || close < 0 {
		p.i = start
		return false
	}
	p.i++
	items, f := p.items(true)
	n, kind, ok := 0, What{}, f == nil && p.i == close && len(p.faults) == faults && len(p.stated) == stated
	for i, it := range items {
		switch it := it.(type) {
		case *Stitches:
			if n == 0 {
				kind = it.What
			}
			ok = ok && it.What == kind && it.What.Kind.Base >= stitch.Single && it.What.Name == "" && !it.What.Loop.Set && it.Places == nil && !it.Times.Set() && len(it.N.Values) < 2
			n += max(it.N.For(0), 1)
		case *Chain:
			ok = ok && i > 0 && i < len(items)-1
		default:
			ok = false
		}
	}
	p.i = close + 1
	if !ok || n < 2 || n > MaxLegs || !p.ended() {
		p.i, p.faults, p.stated = start, p.faults[:faults], p.stated[:stated]
		return false
	}
	at := p.from(start)
	s.N, s.Target = Num{Span: at, Values: []int{n}}, Target{Sort: OfKind, Kind: kind.Kind}
	s.Place = &Place{Span: at, Pick: Next, N: s.N, Target: s.Target}
	return true
}
