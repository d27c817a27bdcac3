package notation

import (
	"whorl/patterns/stitch"
)

// skippedWords are said of places that were passed over.
var skippedWords = []string{"skipped", "missed", "sk", "unworked", "held", "reserved"}

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
		if more, ok := p.ontoUnworked(); ok {
			l = append(l, more)
			continue
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
		behind := p.i
		more, ok := p.placed(and && first.Target.Sort == FromHook && p.tok().is("across", "around"))
		if ok && more.Pick == Each && more.Target.Text == "" && first.Target.Sort == FromHook {
			// "in 2nd ch from hook and across"
			more.Target = Target{Sort: ChainStitch, Kind: stitch.Of(stitch.Chain)}
		}
		if !ok && and && first.Target.Sort == FromHook {
			more, ok = p.restOfChain(&first)
		}
		if last := &l[len(l)-1]; !ok && and && last.Into != stitch.Top && p.eat("of") {
			// "in front loop of same st and of each of next 25 sts"
			if more, ok = p.place(); ok && more.Into == stitch.Top {
				more.Into = last.Into
			}
		}
		if !ok && and && p.groupAhead() {
			// "in next tr and ch-1 sp"
			more, ok = p.place()
		}
		if !ok && and {
			more, ok = p.andSkipped(&first)
		}
		if !ok && and && (p.turningAhead() && (first.Over || !p.bareChain()) || first.Over && first.Target.Text != "" && p.unworkedNext()) {
			// "over last dc and turning ch"
			p.eat("the")
			more, ok = p.place()
		}
		if !ok || p.tok().is("work", "make") {
			p.i = start
			return l
		}
		last := &l[len(l)-1]
		if ok && and && !p.starred() {
			p.chainsThere(last, &more, behind)
		}
		if last.asTheyCome(&more) {
			continue
		}
		l = append(l, more)
	}
}

// asTheyCome takes "in top of each popcorn around" to the "in each dc" before it: they are
// gone into in the order in which they come. It is false where each is a stretch of its own.
func (pl *Place) asTheyCome(more *Place) bool {
	for _, p := range []*Place{pl, more} {
		if p.Pick != Each || p.N.Set() || p.Of != nil || p.Below != 0 || p.Evenly || p.Over || p.Target.Sort == RowEnds || p.Target.Sort == FromHook {
			return false
		}
	}
	if more.Among.Set() && pl.Extent.Sort == ToEnd && !pl.Among.Set() {
		pl.Extent, more.Extent = Extent{}, pl.Extent // "in each hdc around and in each of the 6 chs"
	}
	if pl.Extent.Sort != NoExtent || pl.Into != more.Into || pl.Both != more.Both {
		return false
	}
	pl.Also = append(append(pl.Also, more.Target), more.Also...)
	pl.Extent, pl.Among = more.Extent, more.Among
	return true
}

// chainsThere makes "and in each of the 6 chs around", behind what goes into each stitch, each chain
// that there is: they are so many. "In each of next 6 chs" are the next.
func (p *parser) chainsThere(each, more *Place, from int) {
	if each.Pick != Each || each.Extent.Sort != NoExtent && each.Extent.Sort != ToEnd || more.Pick != Next || !more.Every || !more.N.Set() || more.Target.Sort != ChainStitch || more.Target.Name != "" || more.Of != nil {
		return
	}
	for _, t := range p.toks[from:p.i] {
		if t.is("next", "nxt", "following", "foll", "first", "rem", "remaining") {
			return
		}
	}
	if at := p.i; p.tok().is("around", "across", "round", "to") {
		e, ok := p.extent()
		if !ok || e.Sort != ToEnd {
			p.i = at
			return
		}
		more.Extent = e
	}
	more.Pick, more.Among, more.N = Each, more.N, Num{}
}

// placed reads one place with the preposition before it.
func (p *parser) placed(alone bool) (Place, bool) {
	if pl, ok := p.clothPlace(); ok {
		return pl, true
	}
	start := p.i
	no := func() (Place, bool) { p.i = start; return Place{}, false }
	if p.tok().is("all") && p.at(1).is("the") && p.at(2).is("way") {
		return p.extentPlace(start, alone) // "all the way round"
	}
	all := p.eat("all")
	evenly := p.eat("evenly")
	if evenly {
		p.eat("spaced")
	}
	words := p.i
	if evenly && p.eat("along", "across", "over", "on") {
		if p.starred() && p.oneSide() {
			pl := Place{Pick: Each, Evenly: true, Extent: Extent{Sort: ToPlace, Target: Target{Sort: ChainSpace, Name: Corner}, Text: "across to next corner"}}
			pl.Span = p.from(start)
			return pl, true // "22 sc evenly along the edge, 3 sc in the corner"
		}
		p.i = words
	}
	if pl, ok := p.aroundLimb(); ok {
		return pl, true
	}
	if p.tok().is("for", "per") {
		// "3 sc for every 2 rows": spread along the row ends
		at := p.i
		p.i++
		p.eat("every", "each")
		pl := Place{Pick: Each, Target: Target{Sort: RowEnds}}
		if n, ok := p.num(); ok {
			pl.N = n
		} else if pl.Target.Kind = p.rowsOfKind(); pl.Target.Kind.Is() {
			pl.Every = true // "2 dc for each tr row"
		} else {
			pl.N = One(p.from(at))
		}
		if row, ok := roundWord(p.tok()); ok && row && !p.tok().is("r") {
			p.i++
			p.eat("end", "ends")
			p.placeTail(&pl)
			pl.Span = p.from(start)
			return pl, true
		}
		p.i = at
	}
	if at := p.i; p.tok().is("back") && p.at(1).is("up", "down") {
		p.i += 2
		if p.ended() {
			// "10 sc back up": the other side of what was gone down
			return Place{Span: p.from(start), Pick: Each, Target: Target{Sort: RowEnds}, Evenly: true}, true
		}
		p.i = at + 1 // "back down the other side"
		if !p.sideAhead() {
			p.i = start
		}
	}
	if p.tok().is("down", "up") {
		// "evenly down side edge"
		at := p.i
		p.i++
		if p.rowEnds() {
			pl := Place{Span: p.from(start), Pick: Each, Target: p.edgePlace(), Evenly: evenly || p.at(-1).is("flap", "earflap")}
			p.placeTail(&pl)
			return pl, true
		}
		p.i = at
	}
	if p.tok().is("across", "over") && p.at(1).is("to", "into") && p.at(-1).is("st", "ss", "stitch", "sts") {
		p.i++ // "sl st across to next corner sp"
	}
	switch {
	case p.eat("in", "into", "on", "over", "between", "along", "under", "through", "to", "at", "using"):
		prep := p.at(-1).text
		if prep == "along" {
			p.eat("to") // "ss along to centre of first loop"
			prep = p.at(-1).text
		}
		if prep == "in" && p.tok().is("order") {
			return no()
		}
		if prep == "between" {
			bare := !p.tok().is("next", "nxt", "following", "foll") && !p.at(1).is("next", "nxt", "following", "foll")
			t, pick, next, ok := p.between()
			if !ok {
				return no()
			}
			if p.eachGap = pick == Each; (pick == Each || pick == Next && !next) && p.eachOfGaps() {
				pick = Each
			} else if !next && t.Name == "" && !p.tok().is("of") {
				t.Name = Here // "between sts"
			}
			pl := Place{Pick: pick, Bare: bare && pick == Next, Target: t, Evenly: evenly}
			p.placeTail(&pl)
			if pl.Pick == Each && pl.Extent.Sort == NoExtent && p.starred() {
				pl.Pick = Next
			}
			pl.Span = p.from(start)
			return pl, true
		}
		pl, ok := p.place()
		if !ok {
			if prep == "to" {
				p.i = start
				return p.extentPlace(start, alone)
			}
			return no()
		}
		if prep == "along" && pl.Bare && pl.Pick == Next && pl.Target.Sort == ChainStitch && !pl.N.Set() {
			pl.Pick, pl.Bare = Each, false // "3 sc along ch": one in each
		}
		pl.All, pl.To = all, prep == "to"
		pl.Over = prep == "over" || prep == "using"
		pl.Evenly = pl.Evenly || evenly
		pl.Span = p.from(start)
		return pl, true
	case alone && p.tok().is("even") && p.evenAcross():
		return Place{Span: p.from(start), Pick: Each, Extent: Extent{Sort: ToEnd, Text: p.words(start)}}, true
	case p.tok().is("around", "across", "round"):
		p.i++
		if p.rowEnds() {
			pl := Place{Pick: Each, Target: p.edgePlace(), Evenly: evenly}
			p.placeTail(&pl)
			pl.Span = p.from(start)
			return pl, true
		}
		if p.tok().is("next", "nxt", "following", "foll", "same", "first", "last", "each", "every", "all", "post",
			"posts", "the", "row", "front", "back", "stem", "beg", "beginning", "top", "turning", "tch", "both", "joining", "any", "skipped", "sk", "missed", "unworked") ||
			p.targetAhead() || p.bandAt(p.i) ||
			p.tok().kind == tNumber || p.tok().kind == tOrdinal {
			at := p.i
			pl, ok := p.place()
			if ok {
				pl.Over = true
				if p.toks[at-1].is("across") && pl.Bare && pl.Pick == Next && pl.Target.Sort == ChainStitch && !pl.N.Set() {
					pl.Pick, pl.Bare, pl.Over = Each, false, false // "5 sc across the ch": one in each
				}
				pl.Evenly = pl.Evenly || evenly
				if pl.Below != 0 && pl.Of == nil && pl.Into == stitch.Top && (pl.Target.Sort == OfKind || pl.Target.Sort == AnyStitch) {
					pl.Into = stitch.FrontPost // "around the first dc of round 3": its post
				}
				pl.Span = p.from(start)
				return pl, true
			}
			p.i = at
		}
		p.i = words
		if evenly {
			// "evenly around": over all there is.
			pl, ok := p.extentPlace(start, true)
			if at := p.i; ok && p.eat("in", "into", "along") {
				p.eat("the")
				if p.rowEnds() && p.edge == "" {
					pl.Target, pl.Extent = p.edgePlace(), Extent{} // "evenly around in row ends"
				} else {
					p.i = at
				}
			}
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

// sideAhead reports whether an edge of row ends is named behind the word "up" or "down".
func (p *parser) sideAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	p.i++
	return p.rowEnds()
}

// eachFollowing passes over "following" in "each following ch-1 sp", where no number
// says how many.
func (p *parser) eachFollowing() bool {
	start := p.i
	p.i++
	if p.tok().is("next") || p.tok().kind == tNumber && !p.groupAhead() {
		p.i = start
		return false
	}
	return true
}

// thisAhead reports whether "this" is said of a place: "into this sp", "in that same st".
func (p *parser) thisAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	p.i++
	p.eat("same", "very")
	p.eat("same")
	t, ok := p.target()
	return ok && (t.Sort == ChainSpace || t.Sort == AnyStitch || t.Sort == OfKind || t.Sort == OfName || t.Sort == CornerStitch)
}

// endStitch reports whether "end" at the current token is said of a stitch: "in end ch",
// "into the end 2 sts". That is the last.
func (p *parser) endStitch() bool {
	at := p.i
	defer func() { p.i = at }()
	p.i++
	p.num()
	t, ok := p.target()
	return ok && (t.Sort == ChainSpace || t.Sort == ChainStitch || t.Sort == AnyStitch || t.Sort == OfKind || t.Sort == OfName)
}

// betweenLegs reads "the V between the two legs of the next st": where a waistcoat
// stitch goes, which is a stitch of the round below like any other.
func (p *parser) betweenLegs() bool {
	start := p.i
	p.eat("the")
	p.eat("v", "middle", "centre", "center")
	p.eat("between", "of")
	p.eat("the")
	p.eat("two", "2")
	p.eatKind(tNumber)
	if !p.eat("legs", "strands") || !p.eat("of") {
		p.i = start
		return false
	}
	p.eat("the", "each")
	p.eat("next")
	if p.eat("st", "stitch") {
		p.eat("below")
		return true
	}
	if w, ok := p.what(); ok && w.Kind.Is() {
		return true
	}
	p.i = start
	return false
}

// foundation reads "foundation", "foundation ring", "starting ring": the chain that a piece was
// begun with, seen from its other side.
func (p *parser) foundation() bool {
	start := p.i
	if p.eat("foundation") && (p.eat("ring", "edge", "round", "row", "loop", "circle") || true) ||
		p.eat("starting", "original", "initial", "beginning", "neck", "chain", "ch") && p.eat("ring", "loop", "circle") {
		return true
	}
	p.i = start
	return false
}
