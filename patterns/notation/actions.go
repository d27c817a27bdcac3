package notation

import (
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// unworkedWords are said of places that are left.
var unworkedWords = []string{"unworked", "free", "unused", "alone"}

// skip reads "sk next 2 sts", "skip 2", "miss next ch-1 sp", "sk first st", "from the
// first flap, skip 20 sts", "count 6 sts to the left of the seam".
func (p *parser) skip() (Item, *fault.Fault) {
	start := p.i
	after := p.fromPiece()
	it, f := p.skipped(start)
	s, ok := it.(*Skip)
	if !ok {
		if f == nil && it == nil {
			p.i = start
		}
		return it, f
	}
	if s.After == "" {
		s.After = after
	}
	s.Span = p.from(start)
	return s, nil
}

// skipTo reads "to next V-st" behind the word skip, where what follows names its place: it goes
// there in any case. It is nil for other words.
func (p *parser) skipTo(start int) Item {
	at := p.i
	if p.eat("to", "ahead", "across") {
		p.eat("to")
		if pl, ok := p.place(); ok && (pl.Pick == Next || pl.Pick == Last) && !pl.Bare && (pl.Target.Sort == OfName || pl.Target.Sort == ChainSpace || pl.Target.Sort == OfKind) && p.ended() {
			end := p.i
			p.eatKind(tComma)
			p.eat("and", "then")
			it, ok := p.stitches()
			s, is := it.(*Stitches)
			if placed := ok && is && len(s.Places) > 0; placed || p.toks[end].kind == tSemi {
				p.i = end
				return &Note{Span: p.from(start), Text: p.words(start)}
			}
		}
	}
	p.i = at
	return nil
}

// skipped goes on behind the piece that the places are counted from.
func (p *parser) skipped(start int) (Item, *fault.Fault) {
	if p.tok().is("count") && !p.work {
		return p.counted(start)
	}
	if p.eat("leave", "leaving") {
		return p.left(start)
	}
	if !p.eat("sk", "skip", "miss", "skipping", "missing", "skp") {
		return nil, nil
	}
	p.eat("over")
	if it := p.skipTo(start); it != nil {
		return it, nil
	}
	if p.eat("that", "this") && p.tok().is("st", "stitch", "ch", "chain") {
		p.i++ // "until 1 stitch remains. Skip that stitch"
		return &Skip{Span: p.from(start), N: One(p.from(start)), Target: Target{}}, nil
	}
	p.eat("the", "a")
	s := &Skip{}
	first := p.i
	p.centre()
	if n, ok := p.num(); ok {
		s.N = n
		p.eatKind(tHyphen)
		if p.tok().is("front", "centre", "center", "middle", "back") && p.at(1).is("st", "sts", "stitch", "stitches") {
			p.i++ // "the 20 front sts"
		}
		if n.Values[0] > 0 && p.tok().is("ch") && (p.at(1).is("sp", "sps", "space") || p.at(1).kind == tHyphen) {
			p.i = first
			s.N = Num{}
		}
	} else if !p.tok().is("next", "nxt", "following", "first", "last", "same", "each", "st", "ch", "sp", "foll") &&
		p.tok().kind == tEnd {
		return nil, p.stuck()
	}
	if s.N.Set() {
		if t, ok := p.rowEndWord(); ok {
			s.Target = t
		} else if t, ok := p.target(); ok {
			s.Target = t
		}
		if at := p.i; s.Target.Sort == ChainStitch && p.eat("of") {
			// "miss 2 ch of turning ch": those beside the stitch that it counts as
			p.eat("the")
			if _, ok := p.startChain(); !ok {
				p.i = at
			}
		}
		if at := p.i; s.Target.Sort == OfKind && p.eat("of") {
			// "sk 2 dc of shell": the next ones, which are its
			p.eat("the", "next", "this", "that", "same")
			if t, ok := p.target(); !ok || t.Sort != OfName {
				p.i = at
			}
		}
		if on := (Place{Pick: Next, N: s.N, Target: s.Target}); (s.Target.Sort == OfKind || s.Target.Sort == AnyStitch) && p.tok().is("of", "in", "on", "from") && p.roundBelow(&on) {
			on.Span = p.from(first)
			s.Place = &on // "sk 4 sc of Row 2"
		}
		s.Behind = p.behind()
		s.Span = p.from(start)
		if f := p.origin(s); f != nil {
			return nil, f
		}
		if ok, f := p.skipsKinds(s); f != nil {
			return nil, f
		} else if ok {
			return s, nil
		}
		if at := p.i; p.eat("and") && !p.skipsChains(s) && (!p.tok().is("next", "following", "last") || !p.skipsOn(s)) {
			p.i = at
		}
		return s, nil
	}
	if p.skipsWritten(s) {
		s.Span = p.from(start)
		return s, nil
	}
	pl, ok := p.place()
	if !ok {
		return nil, p.failAt(p.i, "not-understood", "cannot work out what is skipped",
			"Write, for example: sk next 2 sts.")
	}
	s.Behind = p.behind()
	s.Place, s.N, s.Target = &pl, pl.N, pl.Target
	s.Span = p.from(start)
	if f := p.origin(s); f != nil {
		return nil, f
	}
	if ok, f := p.skipsKinds(s); f != nil {
		return nil, f
	} else if ok {
		return s, nil
	}
	if at := p.i; p.eat("and") {
		// "sk first dc and next ch"
		if !p.skipsChains(s) && (!p.tok().is("next", "following", "first", "last") || !p.skipsOn(s)) {
			p.i = at
		}
	}
	return s, nil
}

// centre passes over "centre" before a number of stitches that lie between two sides: "miss the centre 12 sts".
func (p *parser) centre() bool {
	if !p.tok().is("centre", "center", "middle", "central", "front") || p.at(1).kind != tNumber {
		return false
	}
	start := p.i
	p.i++
	if _, ok := p.num(); !ok || !p.tok().is("st", "sts", "stitches") {
		p.i = start
		return false
	}
	p.i = start + 1
	return true
}

// left goes on after "leave": "rem sts unworked", "last 2 sts unworked", "next 20 sts
// free for the front", "the scallop unworked".
func (p *parser) left(start int) (Item, *fault.Fault) {
	s := &Skip{Unworked: true}
	words := p.i
	p.eat("the")
	if at := p.i; p.centre() {
		// "leaving centre 12 sts unworked"
		s.N, _ = p.num()
		if t, ok := p.target(); ok && p.eat(unworkedWords...) {
			s.Target, s.Span = t, p.from(start)
			s.Place = &Place{Span: s.Span, Pick: Next, N: s.N, Target: t}
			return s, nil
		}
		p.i = at
		s.N = Num{}
	}
	if p.eat("rem", "remaining") {
		pl := Place{Pick: Each}
		if n, ok := p.num(); ok {
			pl.N = n
		}
		if _, ok := p.target(); ok && p.leftUnworked() {
			s.Place = &pl
			s.Span = p.from(start)
			return s, nil
		}
	} else if pl, ok := p.place(); ok {
		s.Behind = p.behind()
		f := p.origin(s)
		if p.eat(unworkedWords...) {
			if f == nil && s.After == "" {
				f = p.origin(s)
			}
			if f != nil {
				return nil, f
			}
			if pl.Target.Sort == ChainSpace && !pl.N.Set() && pl.Bare {
				// "leaving the corner sps unworked"
				return &Note{Span: p.from(start), Text: p.words(start)}, nil
			}
			s.Place, s.N, s.Target = &pl, pl.N, pl.Target
			if pl.Target.Sort == OfName && pl.Target.Name == "" && pl.Bare && !pl.N.Set() {
				s.Place, s.Target = &Place{Span: pl.Span, Pick: Each}, Target{} // "leaving the scallop unworked"
			}
			s.Span = p.from(start)
			return s, nil
		}
	}
	p.i = words
	p.eat("the")
	if at := p.i; p.tok().kind == tNumber {
		if t, ok := p.startChain(); ok && p.eat(unworkedWords...) && p.rowEndsHere() {
			// "leaving 3-ch unworked, turn"
			return &Skip{Span: p.from(start), Unworked: true, Target: t, Place: &Place{Span: p.from(at), Pick: Next, Target: t}}, nil
		}
	}
	if p.i = words; p.restLeft() {
		if p.at(-2).is("edging", "border", "trim") {
			return &Note{Span: p.from(start), Text: p.words(start)}, nil // another piece
		}
		return &Skip{Span: p.from(start), Unworked: true, Place: &Place{Span: p.from(start), Pick: Each}}, nil
	}
	p.i = start
	return nil, nil
}

// rowEndsHere reports whether the words of a row end, or turn the work.
func (p *parser) rowEndsHere() bool {
	next := p.tok()
	if next.kind == tComma || next.kind == tSemi {
		next = p.at(1)
	}
	return next.is("turn") || next.kind == tStop || next.kind == tEnd || next.first
}

// restLeft reads "the scallop unworked", "the rest of the row unworked" at the end of a
// phrase: whatever has not been worked into, by what the designer calls it.
func (p *parser) restLeft() bool {
	start := p.i
	p.eat("the", "this", "that", "all", "these", "those")
	rest := p.eat("rest", "remainder")
	for n := 0; n < 4 && p.tok().kind == tWord && !p.tok().first && !p.tok().is(unworkedWords...); n++ {
		if t := p.tok(); !rest && (t.is("each", "every", "next", "first", "last") || p.stitchy(p.i, p.i+1)) {
			break // what is left is said in other words
		}
		p.i++
	}
	if p.i > start+1 && p.eat(unworkedWords...) && p.ended() {
		return true
	}
	p.i = start
	return false
}

// skipsOn reads the second place of "sk first dc and next ch" into the skip.
func (p *parser) skipsOn(s *Skip) bool {
	start := p.i
	pl, ok := p.place()
	if !ok {
		return false
	}
	s.And = &Skip{Span: p.from(start), Place: &pl, N: pl.N, Target: pl.Target}
	return true
}

// skipsChains reads "2 ch", "the ch-1 sp" of "miss first tr and 2 ch" into the skip. With
// the number behind it, "and ch 2", chains are made.
func (p *parser) skipsChains(s *Skip) bool {
	if p.skipsSpace(s) {
		return true
	}
	start := p.i
	p.eat("the")
	at := p.i
	n, ok := p.plainNumber()
	if !ok {
		n = 1 // "miss first tr and ch": one that is made has its number
	}
	if !p.tok().tight(tHyphen) && p.eat("ch", "chs", "chain", "chains") && p.ended() {
		pl := Place{Span: p.from(start), Pick: Next, N: Num{Span: p.from(at), Values: []int{n}}, Target: Target{Sort: ChainStitch, Kind: stitch.Of(stitch.Chain), Text: p.at(-1).raw}}
		s.And = &Skip{Span: pl.Span, N: pl.N, Target: pl.Target, Place: &pl}
		return true
	}
	p.i = start
	return false
}

// skipsSpace reads "2-ch sp", "the ch-1 sp" of "miss 2 tr and 2-ch sp" into the skip.
func (p *parser) skipsSpace(s *Skip) bool {
	start := p.i
	p.eat("the")
	if t, ok := p.target(); ok && t.Sort == ChainSpace {
		s.And = &Skip{Span: p.from(start), Target: t, Place: &Place{Span: p.from(start), Pick: Next, Target: t}}
		return true
	}
	p.i = start
	return false
}

// behind reads "behind FPtr", "directly behind it", which says why a stitch is skipped.
func (p *parser) behind() bool {
	start := p.i
	p.eat("directly", "just", "right", "lying", "hidden")
	if p.eat("behind", "beneath", "under") {
		p.eat("the", "each", "this", "that", "your")
		post := p.eat("post", "raised", "long", "new")
		if _, ok := p.what(); ok || p.eat("it", "them", "post", "posts", "this") || post || p.ended() || p.tok().is(unworkedWords...) {
			if post {
				p.eat("st", "sts", "stitch", "stitches")
			}
			p.eat("just")
			p.eat("made", "worked")
			return true
		}
	}
	p.i = start
	return false
}

// turn reads "turn", "turn work", "do not turn", "without turning".
func (p *parser) turn() (Item, *fault.Fault) {
	start := p.i
	if p.eatAll("do", "not", "join", "or", "turn") {
		return &NoJoin{p.from(start)}, nil
	}
	if p.eatAll("do", "not", "turn") || p.eatAll("don't", "turn") || p.eatAll("without", "turning") {
		if p.eatAll("from", "here", "on") || p.eatAll("from", "now", "on") || p.eat("again", "anymore") {
			p.eat("again")
		}
		p.onwards()
		if p.tok().is("or", "nor") && p.at(1).is("fasten", "cut", "break", "bind", "finish", "weave", "change") {
			p.i = p.phraseEnd() // "do not turn or fasten off"
		}
		return &Note{Span: p.from(start), Text: p.words(start)}, nil
	}
	if p.eat("turn", "turning") {
		// "turn with 3 ch"
		if p.eat("work"); p.eat("with", "using") {
			p.eat("a")
			if at := p.i; p.chain() != nil && (p.ended() || p.tok().first) {
				p.i = at
				return &Turn{p.from(start)}, nil
			}
		}
		p.i = start
	}
	if p.tok().is("turn") && p.at(1).kind == tWord {
		// "Turn brim so seam is on the inside", "Turn right side out": how the
		// piece lies, but not "turn work", "turn and ch 1".
		noun, next := p.at(1), p.at(2)
		if noun.is("the") {
			noun, next = next, p.at(3)
		}
		laid := noun.is("work", "piece", "ring") && next.is("so", "right", "wrong", "inside", "over", "upside")
		if laid || !noun.is("work", "piece", "and", "then", "at", "now", "each", "every", "ch", "chain", "without", "around", "to", "until", "till", "leaving", "leave") && !p.stitchy(p.i+1, p.i+2) {
			end := p.sentenceEnd()
			for p.i++; p.i < end && !((p.tok().kind == tComma || p.tok().is("and", "then")) && p.instructs(p.i+1)); {
				p.i++
			}
			return &Note{Span: p.from(start), Text: p.words(start)}, nil
		}
	}
	if p.eat("turn") {
		p.eat("work", "piece", "the")
		p.eat("work", "piece")
		return &Turn{p.from(start)}, nil
	}
	return nil, nil
}

// loops reads "working in back loops only", "in BLO", before a comma or the
// end of the phrase: the loop for the rest of the round.
func (p *parser) loops() (Item, *fault.Fault) {
	start := p.i
	p.eat("work", "working", "worked")
	p.eat("this", "rnd", "round", "row", "all", "sts")
	p.eat("rnd", "round", "row")
	beside := p.besideLoops()
	free := p.freeAhead()
	if !p.eat("in", "into", "through") {
		p.i = start
		if into, ok := p.loopWords(); ok && (p.tok().kind == tColon || p.tok().kind == tComma || p.tok().kind == tOpen || p.tok().kind == tStar) {
			return &InLoops{p.from(start), into, 0, free}, nil
		}
		p.i = start
		return nil, nil
	}
	if n := p.sideOfRound(); beside && n > 0 {
		return &InLoops{p.from(start), stitch.Top, n, false}, nil
	}
	free = p.freeAhead()
	into, ok := p.loopWords()
	if !ok {
		into, ok = p.anyLoops(free)
	}
	if ok {
		if p.leftOver() {
			free = true
		}
		if p.eat("of") || p.ofRoundAhead() && p.eat("in", "on", "from") {
			p.eat("each", "the", "every", "all", "this")
			if roundNext(p.tok()) && p.at(1).is("only") {
				p.i += 2 // "through the back loops of this round only"
			}
			p.eat("starting", "foundation", "beginning", "beg")
			p.eat("st", "sts", "stitch", "stitches", "ch", "chs", "chain", "chains")
			at := p.i
			if p.ofRoundAhead() {
				p.eat("of", "in", "on", "from")
			}
			if _, round := roundWord(p.tok()); round {
				p.i++
				if n, ok := p.plainNumber(); ok {
					p.eat("st", "sts", "stitches")
					return &InLoops{p.from(start), into, n, free}, nil
				}
				p.i = at
			}
		}
		if p.eat("for", "throughout") {
			// "for this round", "throughout the row": to the end of the phrase
			for k := p.tok(); k.kind == tWord && !k.is("work", "and", "then"); k = p.tok() {
				p.i++
			}
		}
	}
	for ok && p.eat("again", "now", "once", "more") {
	}
	t := p.tok()
	if ok && !p.work && p.instructs(p.i) {
		return &InLoops{p.from(start), into, 0, free}, nil // "in BLO sc 12"
	}
	if !ok || !(t.kind == tComma || t.kind == tColon || t.kind == tStop || t.kind == tSemi || t.kind == tEnd ||
		t.kind == tStar || t.kind == tDash || t.kind == tClose || t.kind == tOpen || t.kind == tNumber ||
		t.is("work", "around", "across") && p.at(1).kind == tComma) {
		p.i = start
		return nil, nil
	}
	p.eat("around", "across")
	if p.work && !p.defining && (t.kind == tStop || t.kind == tEnd) && p.toks[start].is("in") {
		// "sc in BLO." does not say in which stitches.
		return nil, p.failAt(start, "not-understood", "the words do not say which stitches are worked into",
			"Write, for example: sc in back loop only of each st around.")
	}
	return &InLoops{p.from(start), into, 0, free}, nil
}

// turnsAt reports whether nothing but the turn and the chain that the next row begins with
// stands between tokens i and end: "13 sc. Ch 1, turn."
func (p *parser) turnsAt(i, end int) bool {
	at, faults := p.i, len(p.faults)
	defer func() { p.i, p.faults = at, p.faults[:faults] }()
	chains := 0
	for p.i = i; p.i < end; {
		if p.eatKind(tStop) || p.eatKind(tComma) || p.eatKind(tSemi) || p.eat("and", "then") {
			continue
		}
		if close := p.matching(p.i); p.tok().kind == tOpen && close > 0 {
			p.i++
			if it, _ := p.counts(); it == nil || p.i != close {
				return false
			}
			p.i = close + 1 // "(ch 2 does not count as hdc)"
			continue
		}
		if p.chain() != nil {
			chains++
			continue
		}
		if it, _ := p.turn(); it == nil {
			return false
		}
	}
	return chains == 1
}
