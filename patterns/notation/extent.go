package notation

import "regexp"

// remain are the words of stitches that are there in the end.
var remain = regexp.MustCompile(`(?i)\b(remain|remains|rem|left|remaining)\b`)

// Remain reports whether an extent is told by what remains, "until 3 sts remain".
func (e *Extent) Remain() bool { return e.Sort == ToLast && remain.MatchString(e.Text) }

// extentPlace makes "around" or "to last 2 sts" a place: each stitch so far.
func (p *parser) extentPlace(start int, alone bool) (Place, bool) {
	if !alone {
		p.i = start
		return Place{}, false
	}
	e, ok := p.extent()
	if !ok {
		p.i = start
		return Place{}, false
	}
	return Place{Span: p.from(start), Pick: Each, Extent: e}, true
}

// extent reads "around", "across", "to end", "to last 2 sts", "until 3 sts
// rem".
func (p *parser) extent() (Extent, bool) {
	start := p.i
	done := func(e Extent) (Extent, bool) {
		e.Text = p.words(start)
		return e, true
	}
	no := func() (Extent, bool) { p.i = start; return Extent{}, false }
	p.eat("all")
	p.eatAll("the", "way")
	if p.eat("around", "across", "along", "round") {
		if p.slit(0) {
			return done(Extent{Sort: ToEnd})
		}
		if p.at(-1).is("along", "across") && p.oneSide() {
			return done(Extent{Sort: ToPlace, Target: Target{Sort: ChainSpace, Name: Corner}})
		}
		if at := p.i; p.rowEnds() && p.edge != "" {
			return done(Extent{Sort: ToEnd, Target: p.edgePlace()})
		} else if p.i = at; p.at(-1).is("across", "along") && (p.eatAll("the", "top") || p.eatAll("top")) && p.ended() {
			p.edge = TopEdge
			return done(Extent{Sort: ToEnd, Target: p.edgePlace()})
		}
		if p.alongEnds() {
			return done(Extent{Sort: ToEnd})
		}
		p.eat("the", "entire", "whole")
		p.eat("entire", "whole")
		p.eat("rnd", "round", "row", "piece", "edge", "chain", "ch", "band", "brim", "ring", "hat", "side", "circle")
		at := p.i
		if e, ok := p.toLast(); ok {
			return done(e)
		}
		p.i = at
		return done(Extent{Sort: ToEnd})
	}
	if p.i > start && !p.at(-1).is("way") {
		return no()
	}
	if e, ok := p.toLast(); ok {
		return done(e)
	}
	return no()
}

// ended reports whether the phrase ends here.
func (p *parser) ended() bool {
	switch p.tok().kind {
	case tComma, tSemi, tStop, tEnd, tClose, tOpen, tDash:
		return true
	}
	return p.tok().is("and", "then")
}

// oneSide reads "the side" where the round goes from corner to corner, so that it is
// the stretch up to the next of them.
func (p *parser) oneSide() bool {
	start := p.i
	p.eat("the", "this", "each", "that")
	if p.eat("side", "edge") && !p.tok().is("of", "edge", "edges") {
		for j := range p.toks {
			if p.toks[j].is("corner", "corners") {
				return true
			}
		}
	}
	p.i = start
	return false
}

// endAhead reports whether "to end" goes as far as the end stitch, which is worked by
// itself: "to end st, 2 sc in end st".
func (p *parser) endAhead() bool {
	if !p.endStitch() {
		return false
	}
	at := p.i
	defer func() { p.i = at }()
	p.i++
	p.num()
	p.target()
	if !p.ended() {
		return false
	}
	for j, to := p.i, p.sentenceEnd(); j < to; j++ {
		if p.toks[j].is("end", "last", "final") && p.toks[j-1].is("in", "into", "the", "of", "over", "around", "next") {
			return true
		}
	}
	return false
}

// toLast reads "to end", "to last 2 sts", "until last st", "until 3 sts rem".
func (p *parser) toLast() (Extent, bool) {
	start := p.i
	no := func() (Extent, bool) { p.i = start; return Extent{}, false }
	if p.tok().is("up") && p.at(1).is("to", "until") {
		p.i++
	}
	if !p.eat("to", "until", "till") {
		return no()
	}
	p.eat("within")
	if p.backAtStart() {
		return Extent{Sort: ToEnd}, true
	}
	if at := p.i; p.eat("you", "there", "just", "only") {
		// "until you reach the last shell", "until there are 2 sts left"
		p.eat("reach", "get", "come", "are", "have", "is")
		p.eat("only", "just", "to")
		if at+1 == p.i && p.toks[at].is("you", "there") {
			return no()
		}
	}
	p.eat("the")
	end := p.tok().is("end") && p.endAhead()
	if !end && p.eat("end") {
		if p.eat("of") {
			p.eat("the", "this")
			p.eat("short")
			if !p.eat("rnd", "round", "row", "chain", "ch") {
				p.i--
			}
		}
		return Extent{Sort: ToEnd}, true
	}
	if at := p.i; p.eat("last", "final") && p.eat("half") {
		// "to the last half fan": the whole ones end there
		if t, ok := p.target(); ok && t.Sort == OfName {
			return Extent{Sort: ToEnd}, true
		}
		p.i = at
	} else {
		p.i = at
	}
	if p.eat("last") || end && p.eat("end") {
		e := Extent{Sort: ToLast}
		n, ok := Num{}, false
		if !p.groupAhead() {
			n, ok = p.num()
		}
		if !ok {
			n = One(p.from(start))
		}
		e.N = n
		if word := p.tok().text; p.eat(blockWords...) {
			e.Target = Target{Sort: ChainSpace, Name: Block, Text: word}
			return e, true
		}
		if t, ok := p.rowEndWord(); ok {
			e.Target = t
			return e, true
		}
		t, ok := p.target()
		if !ok {
			if p.tok().kind == tWord {
				return no()
			}
			t = Target{}
		}
		if to, ok := p.beforePlace(); ok {
			return Extent{Sort: ToPlace, N: n, Target: to}, true // "to last tr before 2-ch sp"
		}
		if at := p.i; t.Sort == OfKind && p.eat("and") {
			// "to last 2 tr and dc", "to last 2 tr and 1 dc"
			p.eat("last", "the", "final")
			more, ok := p.num()
			if !ok {
				more = One(p.from(at))
			}
			if also, ok := p.target(); ok && also.Sort == OfKind && also.Kind != t.Kind && p.ended() && len(more.Values) == 1 {
				e.N = Num{Span: n.Span, Values: append([]int(nil), n.Values...)}
				for i := range e.N.Values {
					e.N.Values[i] += more.Values[0]
				}
				e.Target = Target{Text: "sts"}
				return e, true
			}
			p.i = at
		}
		if to, ok := p.turningChain(); ok {
			p.eat("rem", "remain", "remaining", "left")
			return Extent{Sort: ToPlace, N: n, Target: to}, true // "to last dc and turning ch"
		}
		e.Target = t
		return e, true
	}
	if at := p.i; p.eat("st", "stitch") {
		if to, ok := p.beforePlace(); ok {
			return Extent{Sort: ToPlace, N: One(p.from(start)), Target: to}, true
		}
		p.i = at
	}
	if at := p.i; p.tok().kind == tNumber {
		// "until 1 chain remains"
		n, _ := p.num()
		t, ok := p.target()
		if word := p.tok().text; !ok && p.eat(blockWords...) {
			t, ok = Target{Sort: ChainSpace, Name: Block, Text: word}, true
		}
		if to, turning := p.turningChain(); ok && turning && (p.eat("rem", "remain", "remains", "left", "remaining") || p.eat("are", "is") && p.eat("left", "remaining")) {
			return Extent{Sort: ToPlace, N: n, Target: to}, true // "until 1 dc and turning ch remain"
		}
		if ok && (p.eat("rem", "remain", "remains", "left", "remaining") || p.eat("are", "is") && p.eat("left", "remaining")) {
			return Extent{Sort: ToLast, N: n, Target: t}, true
		}
		p.i = at
	}
	if at := p.i; p.eat("only", "just") {
		p.eat("the")
		if !p.tok().is("turning", "tch") {
			p.i = at
		}
	}
	if t, ok := p.startChain(); ok {
		p.eat("rem", "remain", "remains", "left")
		return Extent{Sort: ToPlace, Target: t}, true
	}
	if p.tok().is("first", "second") && !p.at(1).is("st", "sts", "stitch") {
		// "to first ch-2 sp", "to first corner"
		at := p.i
		p.i++
		if t, ok := p.target(); ok && t.Sort == ChainSpace {
			return Extent{Sort: ToPlace, Target: t}, true
		}
		p.i = at
	}
	if at := p.i; p.eat("center", "centre", "middle") && p.ended() {
		return Extent{Sort: ToPlace, Target: Target{Sort: ChainSpace, Name: Middle, Text: p.words(at)}}, true
	} else {
		p.i = at
	}
	if t, ok := p.middleOfNext(); ok {
		return Extent{Sort: ToPlace, Target: t}, true
	}
	if at := p.i; p.tok().is("ch", "center", "centre", "middle") || p.groupAhead() {
		middle := p.eat("center", "centre", "middle")
		if t, ok := p.target(); ok && t.Sort == ChainSpace {
			if middle {
				t.Name = Middle
			}
			return Extent{Sort: ToPlace, Target: t}, true
		} else if ok && middle && (t.Sort == OfKind || t.Sort == AnyStitch) {
			return Extent{Sort: ToPlace, Target: Target{Sort: CornerStitch, Kind: t.Kind, Name: Middle, Text: p.words(at)}}, true
		}
		p.i = at
	}
	if t, ok := p.chainsAtSlit(); ok {
		return Extent{Sort: ToPlace, Target: t}, true
	}
	if t, ok := p.toSeam(); ok {
		return Extent{Sort: ToPlace, Target: t}, true
	}
	if p.eat("marker", "m", "pm") {
		return Extent{Sort: ToMarker}, true
	}
	if p.eat("next") {
		if t, ok := p.target(); ok {
			return Extent{Sort: ToPlace, Target: t}, true
		}
		return no()
	}
	if p.tok().is("corner") {
		if t, ok := p.target(); ok {
			return Extent{Sort: ToPlace, Target: t}, true
		}
		return no()
	}
	if n, ok := p.num(); ok {
		t, ok := p.target()
		if !ok {
			t = Target{}
		}
		if to, ok := p.beforePlace(); ok {
			return Extent{Sort: ToPlace, N: n, Target: to}, true // "to 2 sts before ch-2 sp"
		}
		switch {
		case p.eat("rem", "remain", "remains", "left"):
		case p.eat("before"):
			p.eat("the")
			if !p.eat("end") {
				return no()
			}
		case p.eat("are", "is"):
			if !p.eat("left") {
				return no()
			}
		case p.eat("of", "from"):
			p.eat("the")
			if !p.eat("end") {
				return no()
			}
		default:
			return no()
		}
		return Extent{Sort: ToLast, N: n, Target: t}, true
	}
	return no()
}

// beforePlace reads "before 2-ch sp", "of the next corner" behind so many stitches: up to
// where they are left.
func (p *parser) beforePlace() (Target, bool) {
	start := p.i
	if p.eat("before", "preceding", "of", "from") {
		p.eat("the")
		p.eat("next", "first", "center", "centre", "middle")
		middle, at := p.at(-1).is("center", "centre", "middle"), p.i-1
		t, ok := p.target()
		if ok && middle && (t.Sort == OfKind || t.Sort == AnyStitch) {
			return Target{Sort: CornerStitch, Kind: t.Kind, Name: Middle, Text: p.words(at)}, true
		}
		if ok && (t.Sort == ChainSpace || t.Sort == CornerStitch || t.Sort == SeamPlace || t.Sort == StartChain && !t.ByNumber()) {
			if middle {
				t.Name = Middle
			}
			return t, true
		}
	}
	p.i = start
	return Target{}, false
}

// middleOfNext reads "middle dc of the next corner", "centre st of next corner", "2nd of 3
// dc at corner": the corner that a side goes up to.
func (p *parser) middleOfNext() (Target, bool) {
	start := p.i
	if p.eat("center", "centre", "middle") || p.nth() == 2 {
		if p.eat("of") {
			p.eat("the")
			p.num()
		}
		kind := Target{}
		t, ok := p.target()
		if ok && t.Sort == OfKind {
			kind = t
		}
		if (ok && (t.Sort == OfKind || t.Sort == AnyStitch) || !ok && p.tok().is("of", "at", "in")) && p.eat("of", "at", "in") {
			p.eat("the", "each")
			p.eat("next", "following")
			if p.eat("corner") {
				p.eat("group")
				return Target{Sort: CornerStitch, Kind: kind.Kind, Text: p.words(start)}, true
			}
		}
	}
	p.i = start
	return Target{}, false
}

// extentAhead reports whether "around", "to end" or the end of the phrase comes
// next.
func (p *parser) extentAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	switch p.tok().kind {
	case tComma, tSemi, tStop, tEnd, tClose:
		return true
	}
	_, ok := p.extent()
	return ok
}

// evenAcross passes over "even", "even around", "even to end of row" behind a stitch: one in each.
func (p *parser) evenAcross() bool {
	start := p.i
	p.i++
	if e, ok := p.extent(); ok && e.Sort != ToEnd || !p.ended() && !p.tok().first && !(p.tok().is("for") && p.forSoLong()) {
		p.i = start
		return false
	}
	return true
}
