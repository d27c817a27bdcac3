package notation

import (
	"strings"

	"whorl/patterns/stitch"
)

// place reads the place itself, after the preposition.
func (p *parser) place() (Place, bool) {
	start := p.i
	var pl Place
	no := func() (Place, bool) { p.i = start; return Place{}, false }
	if pl, ok := p.cornerPlace(); ok {
		return pl, true
	}
	if pl, ok := p.anyOne(); ok {
		return pl, true
	}
	if pl, ok := p.severalFromHook(); ok {
		return pl, true
	}
	if pl, ok := p.inBase(); ok {
		return pl, true
	}
	if pl, ok := p.oneRowEnd(); ok {
		return pl, true
	}
	if p.rowEnds() && p.edge != "" {
		pl.Pick, pl.Target = Each, p.edgePlace()
		p.placeTail(&pl)
		pl.Span = p.from(start)
		return pl, true
	}
	p.i = start

	for {
		free := p.freeAhead()
		if into, ok := p.loopWords(); ok {
			pl.Into, pl.Both, pl.Free = into, into == stitch.Top, free
			if !p.eat("of") && (p.tok().kind == tComma || p.tok().kind == tEnd) {
				return no()
			}
			continue
		}
		if into, ok := p.postWords(); ok {
			pl.Into = into
			continue
		}
		if at := p.i; p.eat("the") && p.eat("underside", "bottom") || p.eat("underside") || p.eat("other", "opposite") && p.eat("side", "edge", "loops", "loop") {
			// "in the underside of each of the 6 ch"
			if p.eat("of") && p.tok().is("each", "every", "next") {
				pl.Into = stitch.Underside
				continue
			}
			p.i = at
		} else {
			p.i = at
		}
		break
	}
	if p.betweenLegs() {
		pl.Pick, pl.Target = Next, Target{}
		p.placeTail(&pl)
		pl.Span = p.from(start)
		return pl, true
	}
	if half := p.halfLoop(); half != "" || p.withJoin() {
		pl.Pick, pl.Target = Same, Target{Sort: JoinPlace, Name: half, Text: "st"}
		pl.Span = p.from(start)
		return pl, true
	}
	if p.afterSkipped() {
		pl.Pick = Next
		pl.Span = p.from(start)
		return pl, true
	}
	p.eat("the", "a", "an")
	level := p.eat("corresponding", "matching") // "matching st 2 rnds below"
	if !p.eat("top") && p.at(1).is("of") {
		p.eat("head", "eye") // "head of next CL", "eye of next wheel"
	}
	p.closingLoop()
	top := p.at(-1).is("top", "head", "eye") && p.i > start
	if top {
		p.eat("loop", "loops")
		p.eat("of")
		p.eat("the")
	}
	if at := p.i; !p.rowEnds() {
		p.eat("side", "edge")
	} else {
		p.i = at
	}
	switch t := p.tok(); {
	case p.ringWords():
		pl.Pick, pl.Target = Only, Target{Sort: Ring, Text: p.words(start)}
		for _, t := range p.toks[start:p.i] {
			if t.is(drawnUp...) || t.is("mr", "mc") {
				pl.Target.Name = Magic
			}
		}
		pl.Target.nameBand()
	case p.tipOfPoint():
		pl.Pick, pl.Target = Next, Target{Sort: ChainStitch, Kind: stitch.Of(stitch.Chain), Name: Tip, Text: p.words(start)}
	case p.baseOfPiece():
		pl.Pick, pl.Target = Same, Target{Sort: JoinPlace, Text: "st"}
	case t.is("base", "foot") && p.at(1).is("of"):
		// "in base of first ch-5": the stitch that the round began on
		p.i += 2
		p.eat("the")
		p.eat("first", "beg", "beginning")
		if _, ok := p.startChain(); !ok && p.chain() == nil {
			return no()
		}
		pl.Pick, pl.Target = First, Target{}
	case p.rowEnds():
		pl.Pick, pl.Target, pl.Rows = Each, p.edgePlace(), p.edgeRows
	case t.is("each", "every", "all"):
		p.i++
		if p.tok().is("other", "second", "alternate", "third") || p.tok().kind == tOrdinal || t.is("every") && p.everySeveral() {
			return no()
		}
		of := p.eat("of")
		if p.eat("the") && p.tok().is("other") && (p.at(1).kind == tNumber || numberWords[p.at(1).text] > 0) {
			p.i++ // "each of the other 17 spaces"
		}
		if several, ok := p.severalFromHook(); ok {
			return several, true
		}
		pl.Pick, pl.Every = Each, true
		if p.tok().is("following") && p.eachFollowing() {
			// "in each following ch-1 sp to end"
		} else if p.eat("next", "nxt", "following", "foll", "first") {
			pl.Pick = Next
		} else if p.eat("last") {
			pl.Pick = Last
		}
		p.eat("rem", "remaining")
		if !p.groupAhead() || pl.Pick == Next && p.severalSpaces() {
			if n, ok := p.num(); ok {
				pl.N = n
				if pl.Pick == Each {
					pl.Pick = Next
				}
			}
		}
		if p.passedOver() {
			pl.Pick = Skipped
		}
		if at := p.i; p.rowEnds() && p.edge == "" || pl.Pick == Each && p.eachRowOf() {
			if pl.Target = p.edgePlace(); pl.N.Set() && !of && t.is("each", "every") {
				pl.Pick = Each // "3 sc in every 2 row ends"
			} else if pl.N.Set() {
				pl.Pick, pl.Rows, pl.N = Each, pl.N, Num{} // "each of the 88 row ends"
			}
			break
		} else {
			p.i = at
		}
		noun := p.inEachLoop(&pl)
		var ok bool
		if pl.Target, ok = p.target(); !ok {
			pl.Target = Target{Text: noun}
		}
		for pl.Pick != Skipped && p.tok().is("and") {
			at := p.i
			p.i++
			p.eat("in")
			if !p.eat("each", "every") {
				p.eat("the") // "in each stitch and in the chain space"
			}
			t, ok := p.target()
			if !ok || t.Sort == FromHook || p.tok().is("in", "into", "around") && p.at(1).is("each", "every", "next", "same", "the") {
				p.i = at // "and FPdc around each FPdc" is made, not gone into
				break
			}
			if t.Sort == OfName && !p.extentAhead() || pl.N.Set() {
				p.i = at
				break
			}
			pl.Also = append(pl.Also, t)
		}
	case t.is("next", "nxt", "following", "foll"):
		p.i++
		p.eat("unworked", "free", "rem", "remaining")
		pl.Pick = Next
		if p.at(1).kind != tHyphen && !p.oneGroupAhead() || !p.groupAhead() {
			if n, ok := p.num(); ok {
				pl.N = n
			}
		}
		if p.passedOver() {
			pl.Pick = Skipped
		}
		if p.targetOr(&pl) {
			// "next 2 ch-sp" is one space of two chains; of two, it would say
			// sps.
			if last := p.at(-1); pl.Target.Sort == ChainSpace && pl.Target.Chains == 0 && len(pl.N.Values) == 1 && pl.N.Values[0] > 1 &&
				last.is("sp", "space", "lp", "loop", "arch") {
				pl.Target.Chains, pl.N = pl.N.Values[0], Num{}
			}
		} else {
			// "sc in next, 2 sc in next": the noun is often left out.
			switch k := p.tok(); {
			case k.kind == tComma, k.kind == tSemi, k.kind == tStop, k.kind == tEnd, k.kind == tClose, k.kind == tStar, k.is("and", "then"), p.onlyCounted():
			default:
				return no()
			}
		}
	case t.is("same"), t.is("this", "that") && p.thisAhead():
		if p.i++; !t.is("same") {
			p.eat("same", "very")
			p.eat("same")
		}
		pl.Pick = Same
		if p.tok().is("post", "stem") && p.at(1).kind != tHyphen {
			// "1 dc around same post"
			p.i++
			if pl.Into == stitch.Top {
				pl.Into = stitch.FrontPost
			}
			break
		}
		if !p.targetOr(&pl) {
			// "in same": the same place
			pl.Target = Target{}
		}
		if p.eat("as") {
			p.eat("the")
			p.eat("very")
			at := p.i
			w, isStitch := p.what()
			slip := isStitch && w.Kind == stitch.Of(stitch.Slip)
			if !slip {
				p.i = at
			}
			switch {
			case slip:
				pl.Target.Sort = JoinPlace
			case p.eat("joining", "join", "joined"):
				p.slipStitch()
				pl.Target.Sort = JoinPlace
			case p.eat("first"):
				if p.num(); p.tok().kind == tHyphen {
					return no()
				}
				if _, ok := p.target(); !ok { // "as first 2 hdc"
					return no()
				}
				pl.Target.Sort = JoinPlace
			case p.eat("last", "previous", "prev", "end"):
				if _, ok := p.target(); !ok {
					return no()
				}
				p.eat("made")
			case p.tok().is("beg", "beginning", "starting") && !p.at(1).is("ch", "chain") && p.at(1).kind != tNumber && p.at(1).kind != tHyphen:
				// "in same sc as beg half shell"
				for p.i++; p.tok().kind == tWord && !p.tok().first && !p.ended(); p.i++ {
				}
				pl.Target.Sort = JoinPlace
			default:
				if _, ok := p.startChain(); ok {
					pl.Target.Sort = JoinPlace
				} else if p.chain() != nil {
					pl.Target.Sort = JoinPlace
				} else {
					return no()
				}
			}
		}
	case top && (p.firstChain(&pl) || p.topOfMissed(&pl)):
	case t.is("first", "last", "final"), t.is("end") && p.endStitch(), t.kind == tOrdinal, t.kind == tWord && ordinalWords[t.text] != 0:
		p.i++
		switch {
		case t.is("first"), t.kind == tOrdinal && t.value == 1:
			pl.Pick, pl.Nth = First, 1
		case t.is("last", "final", "end"):
			pl.Pick = Last
		default:
			pl.Pick, pl.Nth = Nth, t.value
			if t.kind == tWord {
				pl.Nth = ordinalWords[t.text]
			}
		}
		if !p.groupAhead() {
			if n, ok := p.num(); ok {
				pl.N = n
				if pl.Pick == First {
					pl.Pick = Next
				}
			}
		}
		if p.passedOver() {
			pl.Pick = Skipped
		}
		if at := p.i; p.eat("of") {
			// "first of the 10 skipped sts"
			p.eat("the", "these", "those")
			p.num()
			if p.passedOver() && p.targetOr(&pl) {
				pl.Pick = Skipped
				break
			}
			p.i = at
		}
		if !p.targetOr(&pl) {
			switch {
			case p.tok().is("of"):
				// "3rd of 3 ch"
				pl.Target = Target{Sort: ChainStitch}
			case pl.Pick == Last || pl.Pick == First || p.ended():
				pl.Target = Target{} // "1 sc in the first, 2 in the second"
			default:
				return no()
			}
		}
		if pl.Pick == Nth && p.middleOfCorner(&pl) {
			break
		}
		if pl.Pick == Last && (p.eat("made", "worked") || p.defining && !pl.N.Set() && p.ended()) {
			pl.Pick = Made
		}
		if at := p.i; p.eat("from") {
			p.eat("the")
			if !p.eat("hook") {
				if p.i = at; (pl.Pick == Next && pl.N.Set() || pl.Pick == Nth) && p.countsFrom() {
					break // "skip first 5 sts from center back", "in 5th sc from the join"
				}
				return no()
			}
			pl.Pick, pl.Target.Sort = Nth, FromHook
		}
	case t.is("beg", "beginning", "starting", "initial") && p.firstAhead():
		// "beg sc" is the first, like "first sc"
		p.i++
		pl.Pick, pl.Nth = First, 1
		p.targetOr(&pl)
	case t.is("centre", "center", "middle"):
		p.i++
		pl.Pick = Centre
		if p.tok().is("of") {
			// "centre of first ch-5 loop" is the loop, and a stitch that goes
			// into a shell goes into its centre.
			p.i++
			of, ok := p.place()
			if ok && (of.several() || of.inGroup()) {
				pl.oneOf(&of)
				break // "centre of the 5 dc"
			}
			if !ok || of.Target.Sort != ChainSpace && of.Target.Sort != OfName {
				return no()
			}
			return of, true
		}
		if !p.targetOr(&pl) {
			return no()
		}
		if p.ofCorner(&pl) {
			break
		}
		if pl.Target.Sort == ChainSpace && !p.tok().is("of") {
			pl.Pick, pl.Target.Name = Next, Middle // "in centre ch-2 sp": the one there is
		}
	case t.is("skipped", "missed", "unworked", "sk"):
		p.i++
		pl.Pick = Skipped
		if n, ok := p.num(); ok {
			pl.N = n
		}
		if !p.targetOr(&pl) {
			return no()
		}
	case t.is("joining", "closing"):
		p.i++
		p.eat("sl")
		if !p.targetOr(&pl) {
			return no()
		}
		if t := &pl.Target; t.Sort == ChainSpace || t.Sort == OfKind && t.Kind.Base > stitch.Slip {
			// "in joining loop", "around joining dc": the loop that it completes
			pl.Pick, pl.Target, pl.Into = Made, Target{Sort: ChainSpace, Text: p.words(start)}, stitch.Top
			break
		}
		pl.Pick, pl.Target = Same, Target{Sort: JoinPlace, Text: p.words(start)}
	case t.is("any"):
		p.i++
		if pl.Pick = Any; p.passedOver() {
			pl.Pick = Skipped
		}
		if noun := p.inEachLoop(&pl); !p.targetOr(&pl) && noun == "" {
			return no()
		}
	case t.is("rem", "remaining") && (p.at(1).kind == tNumber || p.at(1).is(skippedWords...)):
		p.i++
		pl.N, _ = p.num()
		if p.eat(skippedWords...) {
			pl.Pick, pl.Every = Skipped, !pl.N.Set()
		}
		if !p.targetOr(&pl) {
			return no()
		}
	case t.is("rem", "remaining") && p.at(1).kind == tWord:
		// "sc in remaining chs"
		p.i++
		pl.Pick = Each
		if !p.targetOr(&pl) {
			return no()
		}
	default:
		pl.Pick, pl.Bare = Next, true
		if !p.groupAhead() {
			if n, ok := p.num(); ok {
				pl.N = n
				p.eat("of")
			}
			if p.tok().is(skippedWords...) {
				p.i++
				pl.Pick = Skipped
			}
		}
		if top {
			at := p.i
			if pl.N.Set() {
				p.i--
			}
			if n, ok := p.startChain(); ok {
				n.Text = "top of " + n.Text
				pl.Pick, pl.Target, pl.N = First, n, Num{}
				break
			}
			p.i = at
		}
		began := p.tok().is("beg", "beginning")
		if !p.targetOr(&pl) {
			return no()
		}
		if top && pl.Pick == Next && pl.Target.Sort == ChainStitch && pl.Target.Name == "" && !pl.N.Set() && p.at(-1).is("ch", "chain") && p.at(-2).is("of", "the") {
			pl.Target = Target{Sort: StartChain, Text: p.words(start)} // "dc in top of ch"
		}
		if pl.Target.Sort == StartChain || began && pl.Target.Sort != ChainSpace {
			pl.Pick = First // "top of beg cl"
		}
		if pl.Target.Sort == OfName && !pl.N.Set() && !began && p.eachAcross() {
			pl.Pick, pl.Bare = Each, false // "V-st in V-sts across", "shell over shell to end"
			break
		}
		if text := strings.ToLower(pl.Target.Text); pl.Target.Sort == Gap && pl.Target.Name != Pair && (strings.Contains(text, " next ") || strings.Contains(text, " following ")) {
			pl.Bare = false
		}
		if pl.Target.Sort == Gap && p.lastGap && !pl.N.Set() {
			pl.Pick, pl.Bare = Last, false // "in space before first V-st", "between last and first V-sts"
			break
		}
		if pl.Target.Sort == Gap && !pl.N.Set() && pl.Target.At == 0 && p.eachOfGaps() {
			pl.Pick, pl.Bare = Each, false // "in spaces between groups across"
			break
		}
		if pl.Target.Sort == Gap && !pl.N.Set() && pl.Target.At == 0 && pl.Target.Name == "" && !p.nextGap && !p.tok().is("of") {
			pl.Target.Name = Here // "in space between stitches"
		}
	}
	if p.placeTail(&pl); level && pl.Below == 0 {
		return no()
	}
	pl.Span = p.from(start)
	return pl, true
}

// severalSpaces reports whether "5 ch sps" comes next behind "each of next": five spaces, and
// not those of five chains.
func (p *parser) severalSpaces() bool {
	if p.tok().kind != tNumber || !p.at(1).is("ch", "chain") || !p.at(1).spaced {
		return false
	}
	sps := p.at(2)
	if sps.kind == tHyphen {
		sps = p.at(3) // "next 2 ch-sps"
	}
	return sps.is("sps", "spaces", "loops", "lps")
}

// firstAhead reports whether "beg" is said of a stitch: "beg sc", but not "beg
// ch", nor a stitch of the designer's own whose name begins so.
func (p *parser) firstAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	if ph, ok := p.phrase(); ok && ph.what.Name != "" {
		return false
	}
	p.i = at + 1
	t, ok := p.target()
	return ok && (t.Sort == OfKind || t.Sort == OfShape || t.Sort == OfName || t.Sort == AnyStitch)
}
