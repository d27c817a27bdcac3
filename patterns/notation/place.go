package notation

import (
	"whorl/patterns/stitch"
)

// places reads where stitches go: "in next st", "over next 2 sts", "in 2nd ch
// from hook and in each ch across", "around". Extents alone are taken only
// when alone is set.
func (p *parser) places(alone bool) []Place {
	var l []Place
	first, ok := p.placed(alone)
	if !ok {
		return nil
	}
	l = append(l, first)
	for {
		start := p.i
		if first.Target.Sort == FromHook && p.tok().kind == tOpen {
			// "in 4th ch from hook (3 skipped chs count as dc) and in each ch"
			close := p.matching(p.i)
			if close > 0 && p.toks[close+1].is("and") {
				p.i++
				if c, _ := p.counts(); c != nil {
					p.said = c.(*Counts)
					p.i = close + 1
				} else {
					p.i = start
				}
			}
		}
		comma := p.eatKind(tComma)
		and := p.eat("and")
		if !and && !comma {
			return l
		}
		// After a comma alone, only the words "in" and "into" go on with the
		// same stitch.
		if !and && !p.tok().is("in", "into") {
			p.i = start
			return l
		}
		// "and in next st work 3 dc": a new instruction that names its place
		// first.
		more, ok := p.placed(false)
		if !ok && and && p.groupAhead() {
			// "in next tr and ch-1 sp"
			more, ok = p.place()
		}
		if !ok || p.tok().is("work", "make") {
			p.i = start
			return l
		}
		l = append(l, more)
	}
}

// placed reads one place with the preposition before it.
func (p *parser) placed(alone bool) (Place, bool) {
	start := p.i
	no := func() (Place, bool) { p.i = start; return Place{}, false }
	all := p.eat("all")
	evenly := p.eat("evenly")
	if evenly {
		p.eat("spaced")
	}
	words := p.i
	switch {
	case p.eat("in", "into", "on", "over", "between", "along", "under", "through", "to", "at", "using"):
		prep := p.at(-1).text
		if prep == "in" && p.tok().is("order") {
			return no()
		}
		pl, ok := p.place()
		if !ok {
			if prep == "to" {
				p.i = start
				return p.extentPlace(start, alone)
			}
			return no()
		}
		pl.All, pl.To = all, prep == "to"
		pl.Over = prep == "over" || prep == "using"
		pl.Evenly = pl.Evenly || evenly
		if prep == "between" && pl.Target.Sort == AnyStitch {
			pl.Target.Sort = Gap
			// "between first 2 sts", "between next 2 sts": one gap
			pl.N = Num{}
			if pl.Pick == Each && pl.Extent.Sort == NoExtent {
				pl.Pick = Next
			}
		}
		pl.Span = p.from(start)
		return pl, true
	case p.tok().is("around", "across", "round"):
		p.i++
		if p.tok().is("next", "nxt", "following", "foll", "same", "first", "last", "each", "every", "all", "post",
			"posts", "the", "row", "front", "back", "stem", "beg", "beginning", "top", "turning", "tch", "both", "any", "skipped", "missed", "unworked") ||
			p.targetAhead() ||
			p.tok().kind == tNumber || p.tok().kind == tOrdinal {
			at := p.i
			pl, ok := p.place()
			if ok {
				pl.Over = true
				pl.Evenly = pl.Evenly || evenly
				pl.Span = p.from(start)
				return pl, true
			}
			p.i = at
		}
		p.i = words
		if evenly {
			// "evenly around": over all there is.
			pl, ok := p.extentPlace(start, true)
			pl.Evenly = true
			return pl, ok
		}
		p.i = start
		return p.extentPlace(start, alone)
	case p.tok().is("next", "each", "every", "same", "nxt", "following", "foll"),
		p.tok().is("the") && p.at(1).is("next", "same", "following", "first", "last"):
		// "dc next 3 sts"
		pl, ok := p.place()
		if !ok {
			return no()
		}
		pl.Span = p.from(start)
		return pl, true
	case p.tok().is("until"):
		return p.extentPlace(start, alone)
	case evenly && alone:
		return Place{Span: p.from(start), Pick: Each, Extent: Extent{Sort: ToEnd}, Evenly: true}, true
	}
	return no()
}

// groupAhead reports whether "5-dc group" comes next, whose number is not how
// many.
func (p *parser) groupAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	t, ok := p.target()
	return ok && (t.Sort == OfName || t.Sort == ChainSpace)
}

// targetAhead reports whether a kind of stitch or a space comes next.
func (p *parser) targetAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	t, ok := p.target()
	return ok && (t.Sort == OfKind || t.Sort == ChainSpace || t.Sort == StartChain)
}

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

// place reads the place itself, after the preposition.
func (p *parser) place() (Place, bool) {
	start := p.i
	var pl Place
	no := func() (Place, bool) { p.i = start; return Place{}, false }

	for {
		if into, ok := p.loopWords(); ok {
			pl.Into, pl.Both = into, into == stitch.Top
			if !p.eat("of") && (p.tok().kind == tComma || p.tok().kind == tEnd) {
				return no()
			}
			continue
		}
		if into, ok := p.postWords(); ok {
			pl.Into = into
			continue
		}
		break
	}
	p.eat("the", "a", "an")
	p.eat("top")
	top := p.at(-1).is("top") && p.i > start
	if top {
		p.eat("loop", "loops")
		p.eat("of")
		p.eat("the")
	}
	p.eat("side", "edge")
	switch t := p.tok(); {
	case p.ringWords():
		pl.Pick, pl.Target = Only, Target{Sort: Ring, Text: p.words(start)}
		for _, t := range p.toks[start:p.i] {
			if t.is("magic", "adjustable", "sliding", "mr", "mc") {
				pl.Target.Name = Magic
			}
		}
	case p.rowEnds():
		pl.Pick, pl.Target = Each, Target{Sort: RowEnds}
	case t.is("each", "every", "all"):
		p.i++
		if p.tok().is("other", "second", "alternate", "third") || p.tok().kind == tOrdinal {
			return no()
		}
		p.eat("of")
		p.eat("the")
		pl.Pick, pl.Every = Each, true
		if p.eat("next", "nxt", "following", "foll", "first") {
			pl.Pick = Next
		} else if p.eat("last") {
			pl.Pick = Last
		}
		p.eat("rem", "remaining")
		if !p.groupAhead() {
			if n, ok := p.num(); ok {
				pl.N = n
				if pl.Pick == Each {
					pl.Pick = Next
				}
			}
		}
		if p.eat("skipped", "missed") {
			pl.Pick = Skipped
		}
		if p.rowEnds() {
			pl.Target = Target{Sort: RowEnds}
			break
		}
		var ok bool
		if pl.Target, ok = p.target(); !ok {
			pl.Target = Target{}
		}
		for p.tok().is("and") {
			at := p.i
			p.i++
			p.eat("in")
			p.eat("each", "every")
			t, ok := p.target()
			if !ok || t.Sort == FromHook {
				p.i = at
				break
			}
			if t.Sort == OfName || pl.N.Set() {
				p.i = at
				break
			}
			pl.Also = append(pl.Also, t)
		}
	case t.is("next", "nxt", "following", "foll"):
		p.i++
		p.eat("unworked", "free", "rem", "remaining")
		pl.Pick = Next
		if p.at(1).kind != tHyphen || !p.groupAhead() {
			if n, ok := p.num(); ok {
				pl.N = n
			}
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
			case k.kind == tComma, k.kind == tSemi, k.kind == tStop, k.kind == tEnd, k.kind == tClose, k.is("and", "then"):
			default:
				return no()
			}
		}
	case t.is("same"):
		p.i++
		pl.Pick = Same
		if !p.targetOr(&pl) {
			// "in same": the same place
			pl.Target = Target{}
		}
		if p.eat("as") {
			p.eat("the")
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
				p.eat("sl")
				p.eat("st", "stitch")
				pl.Target.Sort = JoinPlace
			case p.eat("first"):
				if _, ok := p.target(); !ok {
					return no()
				}
				pl.Target.Sort = JoinPlace
			case p.eat("last", "previous", "prev"):
				if _, ok := p.target(); !ok {
					return no()
				}
				p.eat("made")
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
	case t.is("first", "last", "final"), t.kind == tOrdinal, t.kind == tWord && ordinalWords[t.text] != 0:
		p.i++
		switch {
		case t.is("first"):
			pl.Pick, pl.Nth = First, 1
		case t.is("last", "final"):
			pl.Pick = Last
		default:
			pl.Pick, pl.Nth = Nth, t.value
			if t.kind == tWord {
				pl.Nth = ordinalWords[t.text]
			}
		}
		if n, ok := p.num(); ok {
			pl.N = n
			if pl.Pick == First {
				pl.Pick = Next
			}
		}
		if p.eat("skipped", "missed") {
			pl.Pick = Skipped
		}
		if !p.targetOr(&pl) {
			switch {
			case p.tok().is("of"):
				// "3rd of 3 ch"
				pl.Target = Target{Sort: ChainStitch}
			case pl.Pick == Last || pl.Pick == First:
				pl.Target = Target{}
			default:
				return no()
			}
		}
		if pl.Pick == Last && p.eat("made", "worked") {
			pl.Pick = Made
		}
		if p.eat("from") {
			p.eat("the")
			if !p.eat("hook") {
				return no()
			}
			pl.Pick, pl.Target.Sort = Nth, FromHook
		}
	case t.is("centre", "center", "middle"):
		p.i++
		pl.Pick = Centre
		if !p.targetOr(&pl) {
			return no()
		}
		if pl.Target.Sort == ChainSpace && !p.tok().is("of") {
			pl.Pick = Next // "in centre ch-2 sp": the one there is
		}
	case t.is("skipped", "missed", "unworked"):
		p.i++
		pl.Pick = Skipped
		if n, ok := p.num(); ok {
			pl.N = n
		}
		if !p.targetOr(&pl) {
			return no()
		}
	case t.is("joining"):
		p.i++
		p.eat("sl")
		if !p.targetOr(&pl) {
			return no()
		}
		pl.Pick, pl.Target = Same, Target{Sort: JoinPlace, Text: p.words(start)}
	case t.is("any"):
		p.i++
		pl.Pick = Any
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
		}
		if top {
			at := p.i
			if pl.N.Set() {
				p.i--
			}
			if n, ok := p.startChain(); ok {
				pl.Pick, pl.Target, pl.N = First, n, Num{}
				break
			}
			p.i = at
		}
		if !p.targetOr(&pl) {
			return no()
		}
		if pl.Target.Sort == StartChain {
			pl.Pick = First
		}
		if pl.Target.Sort == Gap && !pl.N.Set() {
			pl.Target.Name = Here // "in space between stitches"
		}
	}
	p.placeTail(&pl)
	pl.Span = p.from(start)
	return pl, true
}

// placeTail reads what may follow a target: "of next shell", "2 rnds below",
// "around", "to last 2 sts", "evenly".
func (p *parser) placeTail(pl *Place) {
	for {
		start := p.i
		switch {
		case p.tok().is("below") && pl.Below == 0 && pl.Target.Sort != Ring:
			p.i++
			pl.Below, pl.JustBelow = 1, true
			// "st below next st"
			if p.eat("next", "nxt", "following") {
				p.target()
			}
		case p.tok().is("of", "in", "on") && p.roundBelow(pl):
		case p.tok().is("of"):
			p.i++
			at := p.i
			p.eat("the")
			if t, ok := p.startChain(); ok {
				pl.Of = &Place{Span: p.from(at), Pick: First, Target: t}
				continue
			}
			p.i = at
			of, ok := p.place()
			if !ok {
				p.i = start
				return
			}
			if of.Target.Sort == Ring {
				return
			}
			pl.Of = &of
		case p.belowWords(pl):
		case p.tok().is("that", "which") && p.at(1).is("holds", "held", "contains", "has"):
			for k := p.tok(); k.kind == tWord && !k.is("and", "then"); k = p.tok() {
				p.i++
			}
		case p.tok().is("at") && p.at(1).is("base", "bottom", "foot") && p.at(2).is("of"):
			// "st at base of ch 3": the one it stands on
			p.i += 3
			p.eat("the")
			if _, ok := p.startChain(); !ok && p.chain() == nil {
				p.i = start
				return
			}
			pl.Pick, pl.Target.Sort = Same, JoinPlace
		case p.tok().is("just") && p.at(1).is("made", "worked"):
			p.i += 2
			pl.Pick = Made
		case p.tok().is("evenly"):
			p.i++
			p.eat("spaced")
			pl.Evenly = true
		default:
			if pl.Pick == Each && pl.Extent.Sort == NoExtent {
				if e, ok := p.extent(); ok {
					pl.Extent = e
					continue
				}
			} else if p.tok().is("around", "across") && !pl.Over {
				// "in next 5 sts across": says no more than was said.
				if pl.Target.Sort == RowEnds || pl.Extent.Sort != NoExtent {
					p.i++
					continue
				}
			}
			return
		}
	}
}

// roundBelow reads "of previous rnd", "of last row", "of rnd 2".
func (p *parser) roundBelow(pl *Place) bool {
	start := p.i
	p.i++
	p.eat("the")
	p.eat("previous", "prev", "last", "preceding", "prior", "current", "this", "foundation", "starting")
	if _, ok := roundWord(p.tok()); ok {
		p.i++
		if n, ok := p.plainNumber(); ok {
			pl.Below = -n // a round by number, told from a distance by its sign
		} else {
			p.eat("below")
		}
		return true
	}
	p.i = start
	return false
}

// belowWords reads "2 rnds below", "one row below", "below".
func (p *parser) belowWords(pl *Place) bool {
	start := p.i
	n, ok := p.plainNumber()
	if !ok {
		n = 1
	}
	if _, isRound := roundWord(p.tok()); isRound {
		p.i++
	} else if ok {
		p.i = start
		return false
	}
	if !p.eat("below", "down") {
		p.i = start
		return false
	}
	pl.Below = n
	// "st below next st"
	if p.tok().is("next", "nxt", "following") && pl.Pick == Next {
		p.i++
		if _, ok := p.target(); !ok {
			p.i--
		}
	}
	return true
}

// postWords reads "front post of", "post of", "around post of".
func (p *parser) postWords() (stitch.Into, bool) {
	start := p.i
	p.eat("the")
	into := stitch.FrontPost
	if p.eat("back") {
		into = stitch.BackPost
	} else {
		p.eat("front")
	}
	if p.eat("post", "posts", "stem", "stems") {
		p.eat("of")
		return into, true
	}
	p.i = start
	return stitch.Top, false
}

// ringWords reads "ring", "magic ring", "centre of ring", "loop" of a ring.
func (p *parser) ringWords() bool {
	start := p.i
	p.eat("the", "a", "an")
	p.eat("centre", "center", "middle")
	p.eat("of")
	p.eat("the")
	magic := p.eat("magic", "adjustable", "sliding")
	if p.eat("ring", "rings", "circle") || magic && p.eat("circle", "loop") || p.eat("mr", "mc") {
		return true
	}
	p.i = start
	return false
}

// rowEnds reads "row ends", "ends of rows", "sides of the rows", "end of each row".
func (p *parser) rowEnds() bool {
	start := p.i
	p.eat("the")
	if p.eatAll("row", "ends") || p.eatAll("row", "end") || p.eatAll("row", "edge") || p.eatAll("row", "sides") {
		return true
	}
	if p.eat("end", "ends", "side", "sides", "edge", "edges") && p.eat("of") {
		p.eat("the", "each")
		if p.eat("rows", "row", "brim", "ribbing", "band") {
			return true
		}
	}
	p.i = start
	return false
}

// targetOr reads a target into the place.
func (p *parser) targetOr(pl *Place) bool {
	t, ok := p.target()
	if ok {
		pl.Target = t
	}
	return ok
}

// startChain reads "beg ch-3", "beginning ch", "turning ch", "tch", "ch-3".
func (p *parser) startChain() (Target, bool) {
	start := p.i
	named := p.eat("beg", "beginning", "turning", "starting", "first", "initial", "t")
	p.eatKind(tHyphen)
	t := Target{Sort: StartChain}
	if !named && p.eat("tch") {
		t.Text = p.words(start)
		return t, true
	}
	number, numbered := 0, false
	if p.tok().kind == tNumber && p.at(1).kind != tNumber {
		number, numbered = p.plainNumber()
		p.eatKind(tHyphen)
	}
	if !p.eat("ch", "chain", "chs", "chains") {
		p.i = start
		return Target{}, false
	}
	if !numbered {
		p.eatKind(tHyphen)
		if p.tok().kind == tNumber {
			number, _ = p.plainNumber()
		}
	}
	if !named && number == 0 || p.spaceWord() {
		p.i = start
		return Target{}, false
	}
	t.Chains, t.Text = number, p.words(start)
	return t, true
}

// spaceWord reports whether the current token (after a hyphen) says space.
func (p *parser) spaceWord() bool {
	t := p.tok()
	if t.kind == tHyphen {
		t = p.at(1)
	}
	return t.is(spaceWords...)
}

var spaceWords = []string{"sp", "sps", "space", "spaces", "loop", "loops", "lp", "lps", "arch", "arches", "arc", "arcs"}

// target reads what is worked into: st, dc, shell, ch-2 sp, ch, beg ch-3.
func (p *parser) target() (Target, bool) {
	start := p.i
	done := func(t Target) (Target, bool) { t.Text = p.words(start); return t, true }
	corner := p.eat("corner", "corners")
	// ch-2 sp, 2-ch sp, ch sp, corner sp
	at := p.i
	n, hasN := 0, false
	if p.tok().kind == tNumber && (p.at(1).is("ch", "chain") || p.at(1).kind == tHyphen && p.at(2).is("ch", "chain")) {
		n, hasN = p.plainNumber()
		p.eatKind(tHyphen)
	}
	if p.eat("ch", "chain", "chs", "chains") {
		mark := p.i
		if !hasN {
			p.eatKind(tHyphen)
			if p.tok().kind == tNumber {
				n, hasN = p.plainNumber()
			}
		}
		p.eatKind(tHyphen)
		p.eatKind(tHyphen)
		if p.eat("corner") {
			corner = true
		}
		if p.eat(spaceWords...) {
			return done(Target{Sort: ChainSpace, Chains: n})
		}
		if corner && hasN {
			return done(Target{Sort: ChainSpace, Chains: n})
		}
		if hasN {
			if p.i = at; true {
				if t, ok := p.startChain(); ok {
					return t, true
				}
			}
			p.i = start
			return Target{}, false
		}
		p.i = mark
		return done(Target{Sort: ChainStitch, Kind: stitch.Of(stitch.Chain)})
	}
	p.i = at
	if p.eat("sp", "sps", "space", "spaces", "arch", "arches", "loop", "loops", "lp", "lps") {
		if p.tok().is("before") && p.at(1).is("next") {
			p.i += 2
			p.target()
			return done(Target{Sort: Gap, Name: Here})
		}
		if p.tok().is("between") {
			p.i++
			p.eat("each")
			if p.eat("st", "sts", "stitches", "stitch") {
				return done(Target{Sort: Gap})
			}
			if p.eat("last") {
				p.eat("skipped", "missed")
				p.target()
				p.eat("and")
				if p.eat("next") {
					p.target()
					return done(Target{Sort: Gap, Name: Here})
				}
			}
			p.i = start
			return Target{}, false
		}
		if corner {
			return done(Target{Sort: ChainSpace, Name: "corner"})
		}
		return done(Target{Sort: ChainSpace})
	}
	if corner {
		return done(Target{Sort: ChainSpace, Name: "corner"})
	}
	if t, ok := p.startChain(); ok {
		return t, true
	}
	p.eat("indicated", "designated", "stated", "given")
	if p.eat("st", "sts", "stitch", "stitches", "place", "places") {
		if p.eat("space", "sp") {
			return done(Target{Sort: Gap})
		}
		if p.tok().is("or") && p.at(1).is("sp", "space", "ch") {
			p.i += 2
			p.eatKind(tHyphen)
			p.eat("sp", "space")
		}
		p.eat("indicated", "designated", "stated", "given")
		return done(Target{Sort: AnyStitch})
	}
	if n, ok := p.plainNumber(); ok {
		p.eatKind(tHyphen)
		if w, ok := p.what(); ok && w.Kind.Is() && p.eat("group", "groups", "grp", "shell", "fan") {
			return done(Target{Sort: OfName, Name: "", Kind: w.Kind, Chains: n})
		}
		p.i = at
	}
	if p.eat("group", "groups", "grp") {
		return done(Target{Sort: OfName})
	}
	// "next cl", "next cluster": any cluster, when none is defined.
	if t := p.tok(); t.is("cl", "cls", "cluster", "clusters") {
		if _, own := p.vocab.phrases[t.text]; !own {
			p.i++
			return done(Target{Sort: OfShape, Kind: stitch.Kind{Shape: stitch.Cluster}})
		}
	}
	if w, ok := p.what(); ok {
		switch {
		case w.Kind.Shape == stitch.Puff || w.Kind.Shape == stitch.Picot && p.toks[at].is("picot", "picots") || w.Kind.Shape == stitch.Popcorn && !digit(rune(p.toks[at].text[0])) ||
			w.Kind.Shape == stitch.Bobble && !digit(rune(p.toks[at].text[0])):
			return done(Target{Sort: OfShape, Kind: w.Kind})
		case w.Name != "":
			return done(Target{Sort: OfName, Name: w.Name})
		case w.Kind.Is():
			p.eat("sts", "st")
			return done(Target{Sort: OfKind, Kind: w.Kind, Loop: w.Loop})
		case w.Shaping > 0:
			return done(Target{Sort: OfName, Name: "inc"})
		case w.Shaping < 0:
			return done(Target{Sort: OfName, Name: "dec"})
		}
	}
	p.i = start
	return Target{}, false
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
	if p.i > start {
		return no()
	}
	if e, ok := p.toLast(); ok {
		return done(e)
	}
	return no()
}

// toLast reads "to end", "to last 2 sts", "until last st", "until 3 sts rem".
func (p *parser) toLast() (Extent, bool) {
	start := p.i
	no := func() (Extent, bool) { p.i = start; return Extent{}, false }
	if !p.eat("to", "until", "till") {
		return no()
	}
	p.eat("within")
	p.eat("the")
	if p.eat("end") {
		if p.eat("of") {
			p.eat("the", "this")
			if !p.eat("rnd", "round", "row", "chain", "ch") {
				p.i--
			}
		}
		return Extent{Sort: ToEnd}, true
	}
	if p.eat("last") {
		e := Extent{Sort: ToLast}
		n, ok := Num{}, false
		if !p.groupAhead() {
			n, ok = p.num()
		}
		if !ok {
			n = One(p.from(start))
		}
		e.N = n
		t, ok := p.target()
		if !ok {
			if p.tok().kind == tWord {
				return no()
			}
			t = Target{}
		}
		e.Target = t
		return e, true
	}
	if t, ok := p.startChain(); ok {
		return Extent{Sort: ToPlace, Target: t}, true
	}
	if at := p.i; p.tok().is("ch", "center", "centre", "middle") || p.groupAhead() {
		p.eat("center", "centre", "middle")
		if t, ok := p.target(); ok && t.Sort == ChainSpace {
			return Extent{Sort: ToPlace, Target: t}, true
		}
		p.i = at
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
