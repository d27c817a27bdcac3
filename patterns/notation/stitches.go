package notation

import (
	"whorl/patterns/stitch"
)

// loopWords reads BLO, FLO, "back loop only", "front loops", "through back
// loop" and the like.
func (p *parser) loopWords() (stitch.Into, bool) {
	start := p.i
	p.eat("the", "through")
	p.eat("the")
	p.eat("unused", "free", "remaining", "rem", "unworked")
	if p.at(-1).is("free", "unused") && p.tok().is("loop", "loops") && p.at(1).is("of") {
		p.i++
		return stitch.Underside, true // "in the free loop of each of the 3 ch"
	}
	switch {
	case p.eat("blo", "bl", "blos", "tbl"):
		p.eat("only")
		return stitch.BackLoop, true
	case p.eat("flo", "fl", "flos", "tfl"):
		p.eat("only")
		return stitch.FrontLoop, true
	}
	into := stitch.Top
	switch {
	case p.eat("third") || p.tok().kind == tOrdinal && p.tok().value == 3 && p.at(1).is("loop", "loops", "lp", "lps"):
		if !p.at(-1).is("third") {
			p.i++
		}
		into = stitch.ThirdLoop
	case p.horizontalBar():
		return stitch.ThirdLoop, true
	case p.tok().is("camel") && p.at(1).is("loop", "loops", "lp", "lps"):
		p.i++
		into = stitch.ThirdLoop
	case p.eat("top"):
		if !p.tok().is("loop", "loops") {
			p.i = start
			return stitch.Top, false
		}
	case p.eat("back"):
		into = stitch.BackLoop
	case p.eat("front"):
		into = stitch.FrontLoop
	case p.eat("both"):
	default:
		p.i = start
		return stitch.Top, false
	}
	p.eatKind(tHyphen)
	if into == stitch.BackLoop && p.eat("bump", "bumps", "ridge", "ridges", "hump", "humps", "bar", "bars") {
		return stitch.BackBump, true
	}
	if !p.eat("loop", "loops", "lp", "lps") {
		p.i = start
		return stitch.Top, false
	}
	p.eat("only")
	return into, true
}

// adverbs say how, which changes nothing; the first few how tightly.
var adverbs = []string{"loosely", "tightly", "carefully", "firmly", "snugly", "also", "again", "just", "simply"}

const tightness = 5

// stitches reads "2 dc in next st", "dc 5", "hdc in next 5 (6, 7) sts",
// "sc2tog 6 times", "hdc around".
func (p *parser) stitches() (it Item, ok bool) {
	start := p.i
	p.eat(adverbs...)
	if it, ok = p.longStitches(); ok {
		return it, ok
	}
	n, hasN := Num{}, false
	w, ok := p.what()
	if !ok {
		w, n, ok = p.shellOf()
		hasN = ok
	}
	if !ok {
		// "BLO 24 sc"
		loop, looped := p.loopWords()
		if n, hasN = p.num(); !hasN {
			p.i = start
			return nil, false
		}
		if looped {
			defer func() {
				if s, ok := it.(*Stitches); ok && !s.What.Loop.Set {
					s.What.Loop = Loop{true, loop}
				}
			}()
		}
		p.eat("more", "loose", "tight", "regular", "ordinary", "standard", "plain")
		if w, ok = p.what(); !ok {
			p.i = start
			return nil, false
		}
		// "3 dc cluster": the number is that of the legs.
		if w.Kind.Shape == stitch.Plain && w.Kind.Base >= stitch.Single && len(n.Values) == 1 {
			if s, ok := p.shaped(n.Values[0]); ok {
				s.Kind.Base = w.Kind.Base
				w, n, hasN = s, Num{}, false
			}
		}
	}
	if at := p.i; p.tok().tight(tHyphen) {
		p.i++ // "sc-blo"
		if loop, ok := p.loopWords(); ok {
			w.Loop = Loop{true, loop}
		} else {
			p.i = at
		}
	}
	if !hasN && !p.starOpen() {
		p.starTimes() // inc*6
	}
	if !hasN && p.tok().kind == tNumber && p.tok().frac == 0 {
		at := p.i
		n, hasN = p.num()
		if hasN && p.timesWord() {
			p.i, n, hasN = at, Num{}, false
		}
		p.eat("st", "sts", "stitch", "stitches")
	}
	if at := p.i; !hasN && w.Kind.Shape == stitch.Plain && w.Kind.Base >= stitch.Single {
		// "hdc twice in next st"
		k, more, ok := p.times()
		if n, hasN = k, ok && !more && p.tok().is("in", "into", "around") && p.at(1).is("next", "each", "every", "same", "first", "last", "the", "that", "this"); !hasN {
			p.i, n = at, Num{}
		}
	}
	s := &Stitches{N: n, What: w}
	if p.workedTogether(s) {
		hasN = false
	}
	if w.Kind.Shape == stitch.Together {
		p.eatAll("to", "decrease")
	}
	p.eat(adverbs[:tightness]...)
	p.allLegs(s)
	if p.tok().is("once", "worked", "made") && p.at(1).is("in", "into", "around", "round", "over") {
		p.i++
	}
	if at := p.i; w.Kind.Base != stitch.Slip && p.tok().is("to") {
		// "sc to last st" goes on up to there; only slip stitches go to a place.
		if pl, ok := p.extentPlace(at, true); ok {
			s.Places = []Place{pl}
		}
	}
	if at := p.i; s.Places == nil {
		if p.eat("only"); (p.ratherThan() || p.i > at) && !p.tok().is("in", "into", "on", "around") {
			p.i = at
		}
		if p.fromHookBehind(s); s.Places == nil {
			if s.Places = p.places(true); s.Places != nil {
				p.fromHookBehind(s)
			}
		}
	}
	s.fromHook()
	if close := p.matching(p.i); s.Places == nil && p.tok().kind == tOpen && close > 0 && p.at(1).is("that's", "that", "this", "which", "i.e", "ie", "also", "aka", "see") &&
		p.toks[close+1].is("in", "into", "around", "across", "to", "over") {
		at := p.i
		p.i = close + 1 // "crab stitch (that's dc worked backwards) in each st"
		if s.Places = p.places(true); s.Places == nil {
			p.i = at
		}
	}
	one := p.inTrade(w)
	if one.Kind.Shape == stitch.Plain && one.Kind.Base >= stitch.Single && p.tok().is("tog", "together") &&
		len(s.Places) == 1 && len(s.Places[0].N.Values) == 1 {
		// "sc next 2 sts tog"
		p.i++
		p.asOne()
		s.What = What{Kind: stitch.Tog(one.Kind.Base, s.Places[0].N.Values[0]), Loop: one.Loop}
		s.Places[0].Over = true
	}
	if p.tok().kind == tComma && p.at(1).is("worked", "working") && p.at(2).is("together", "tog") && len(s.Places) == 1 && len(s.Places[0].N.Values) == 1 && one.Kind.Shape == stitch.Plain && one.Kind.Base >= stitch.Single {
		// "FPdc around next 2 sts, worked together as one st"
		p.i += 3
		s.What = What{Kind: stitch.Tog(one.Kind.Base, s.Places[0].N.Values[0]), Loop: one.Loop}
		s.Places[0].Over = true
		p.asOne()
	}
	p.closedBehind(s)
	s.OwnSide()
	s.acrossLimbs()
	p.fromSide(s)
	p.bothLegs(s)
	p.oneEach(s)
	s.oneInEachSkipped()
	p.onLastMade(start, s)
	if s.Places != nil || hasN {
		if loop, ok := p.loopAfter(); ok {
			s.What.Loop = Loop{true, loop}
		}
	}
	if times, more, ok := p.times(); ok && !more {
		s.Times = times
	}
	s.Span = p.from(start)
	p.work = true
	return s, true
}

// oneEach reads ", one in each row end" behind stitches that go along row ends: it says
// how many they are, or how they come to be so many.
func (p *parser) oneEach(s *Stitches) {
	if len(s.Places) != 1 {
		return
	}
	// "work 84 dc evenly around the edge, 1 dc in each row end" says with the rate which edge.
	pl := &s.Places[0]
	edge := pl.Evenly && pl.Target == (Target{}) && pl.Extent.Sort == ToEnd && s.N.Set()
	if pl.Target.Sort != RowEnds && !edge || pl.Target.Kind.Is() {
		return
	}
	start := p.i
	open := p.eatKind(tOpen)
	if !open && !p.eatKind(tComma) && !p.eatKind(tDash) {
		return
	}
	p.eat("making", "working", "placing", "with")
	from := p.i
	if n, ok := p.plainNumber(); ok {
		each := Num{Span: p.from(from), Values: []int{n}}
		p.what()
		p.eat("st", "stitch", "sts", "stitches")
		if p.eat("in", "into", "for", "per") {
			p.eat("each", "every", "the", "end", "of")
			p.eat("of", "each", "every")
			rows, several := p.num()
			if (p.rowEnds() && p.edge == "" || p.eat("row") || several && p.eat("rows")) && (!open || p.eatKind(tClose)) {
				if edge {
					pl.Target, pl.Extent = Target{Sort: RowEnds}, Extent{}
				}
				at := p.from(from)
				s.rate(&Stitches{Span: at, N: each, What: s.What, Places: []Place{{Span: at, Pick: Each, N: rows, Every: !several, Target: Target{Sort: RowEnds}}}})
				return
			}
		}
	}
	p.i = start
}

// fromSide reads ", inserting the hook from the back" behind a post.
func (p *parser) fromSide(s *Stitches) {
	if len(s.Places) != 1 || s.Places[0].Into != stitch.FrontPost && s.Places[0].Into != stitch.BackPost {
		return
	}
	start := p.i
	p.eatKind(tComma)
	if p.eat("inserting", "working", "putting") {
		p.eat("the")
		p.eat("hook")
	}
	if p.eat("from") {
		p.eat("the")
		switch {
		case p.eat("front"):
			s.Places[0].Into = stitch.FrontPost
			return
		case p.eat("back", "behind", "rear"):
			s.Places[0].Into = stitch.BackPost
			return
		}
	}
	p.i = start
}

// loopAfter reads a loop that stands after the place: "in next 2 sts BLO",
// "around, working in back loops only".
func (p *parser) loopAfter() (stitch.Into, bool) {
	start := p.i
	if p.eatKind(tComma) && !p.tok().is("working") {
		p.i = start
		return stitch.Top, false
	}
	p.eat("working")
	p.eat("in", "into", "through")
	into, ok := p.loopWords()
	t := p.tok()
	if !ok || !(t.kind == tComma || t.kind == tSemi || t.kind == tStop || t.kind == tEnd || t.kind == tClose || t.kind == tOpen) {
		p.i = start
		return stitch.Top, false
	}
	return into, true
}

// longStitches reads "long dc in next st of row 1", "1 long sc in next st 2 rows below". A stitch
// is long where it goes farther down than others; where that is not said, it cannot be told.
func (p *parser) longStitches() (Item, bool) {
	start := p.i
	no := func() (Item, bool) { p.i = start; return nil, false }
	n := Num{}
	if p.tok().kind == tNumber {
		n, _ = p.num()
	}
	if _, known := p.vocab.lookup(p.tok().text + " " + p.at(1).text); known || !p.eat("long", "elongated", "lengthened") || p.tok().kind != tWord {
		return no()
	}
	it, ok := p.stitches()
	s, made := it.(*Stitches)
	if !ok || !made || s.What.Kind.Shape != stitch.Plain || s.What.Kind.Base < stitch.Single || len(s.Places) != 1 || s.Places[0].Below == 0 {
		return no()
	}
	if s.What.Kind == stitch.Of(stitch.Single) && !s.What.Loop.Set {
		s.What.Kind.Manner |= stitch.Spike
	}
	s.N, s.Span = n, p.from(start)
	return s, true
}
