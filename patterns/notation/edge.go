package notation

import "whorl/patterns/stitch"

// bands are what pieces worked in rows are called that are picked up along their
// row ends.
var bands = []string{"brim", "ribbing", "band", "headband", "hatband", "strip", "cuff", "rib", "piece"}

// rowEnds reads "row ends", "ends of rows", "long edge of the brim", "end of each
// row", "brim edge".
func (p *parser) rowEnds() bool {
	start := p.i
	p.edgeRows, p.edgeKind = Num{}, stitch.Kind{}
	if p.edge = p.flatEdge(); p.edge != "" {
		return true
	}
	climbs := p.at(-1).is("down", "up") || p.at(-1).is("along") && p.at(-2).is("evenly", "spaced", "work", "working")
	p.eat("the", "one")
	one := p.eat("first", "second", "other", "opposite", "next", "left", "right", "remaining", "third", "fourth")
	if p.at(-1).is("left", "right") && p.tok().kind == tHyphen && p.at(1).is("hand") || p.tok().is("hand") {
		p.eatKind(tHyphen)
		p.i++ // "left-hand edge"
	}
	ofBand := func() {
		at := p.i
		if p.eat("of") {
			p.eat("the", "this", "that")
			if p.eat(bands...) {
				return
			}
			p.eat("first", "second", "other", "opposite", "one", "left", "right", "same", "next", "remaining", "last", "final")
			p.eatKind(tHyphen)
			p.eat("hand")
			if p.eat("side", "front", "half", "section") && p.ended() {
				return
			}
		}
		p.i = at
	}
	if climbs && p.flap() || p.flapSide() {
		return true
	}
	if one && p.tok().is("row") && p.at(1).is("end", "edge", "side") {
		p.i = start
		return false // "next row end" is one of them
	}
	at := p.i
	kind := p.rowsOfKind()
	if !kind.Is() {
		p.i = at
	}
	if p.eat("row") {
		p.eatKind(tHyphen)
		if p.eat("end", "ends", "edge", "edges", "sides") || kind.Is() && p.eat("side") {
			p.edgeKind = kind // "tr row ends"
			ofBand()
			return true
		}
	}
	p.i = at
	if p.tok().is(bands...) && p.at(1).is("edge", "side", "edges") {
		p.i += 2
		return true
	}
	if at := p.i; p.eat("top", "bottom", "upper", "lower") {
		p.eat("edge")
		if p.eat("of") {
			p.eat("the", "this")
			if p.eat(bands...) {
				return true // "around the top of the cuff"
			}
		}
		p.i = at
	}
	if p.tok().is("top", "upper") && p.at(1).is("edge", "side") {
		p.edge = TopEdge
	} else if p.tok().is("bottom", "lower") && p.at(1).is("edge", "side") {
		p.edge = ChainEdge
	}
	long := p.eat("neck", "front", "bottom", "lower", "long", "longer", "short", "shorter", "raw", "upper", "top", "row", "one") ||
		p.tok().is("side") && p.at(1).is("edge", "edges") && p.eat("side")
	long = p.eat("long") || long
	if p.eat("end", "ends", "side", "sides", "edge", "edges") {
		if p.eat("of") {
			p.eat("the", "each", "all", "every")
			p.eat("of")
			p.eat("the", "these")
			some := p.eat("next", "following", "remaining", "rem", "first", "last", "other")
			rows, _ := p.num()
			kind := p.rowsOfKind()
			if !(some && !rows.Set()) && p.eat("rows", "row") {
				p.edgeRows, p.edgeKind = rows, kind
				ofBand()
				return true
			}
			if p.eat(bands...) {
				return true
			}
		} else if (long || one || climbs && !p.tok().is("loop", "loops")) && p.at(-1).is("edge", "side") {
			return true
		}
	}
	p.i, p.edge = start, ""
	return false
}

// rowsOfKind reads what rows are called behind "end of each": "brim rows", "mesh row". It is the
// kind of their stitches where they are told by it: "tr rows".
func (p *parser) rowsOfKind() (k stitch.Kind) {
	start := p.i
	if w, ok := p.what(); ok && w.Kind.Is() && !w.Loop.Set {
		k = w.Kind
	} else if p.i = start; !p.eat(bands...) {
		p.eat("heel", "sole", "body", "side", "pattern", "mesh", "shell", "striped", "coloured", "colored", "panel")
	}
	if !p.tok().is("row", "rows") {
		p.i = start
		return stitch.Kind{}
	}
	return k
}

// eachRowOf reads "tr row" behind "in each", which is the end of one: "2 dc into each tr row".
func (p *parser) eachRowOf() bool {
	start := p.i
	if k := p.rowsOfKind(); k.Is() && p.eat("row") && (p.ended() || p.tok().is("and", "all", "around", "round", "along", "across", "to")) {
		p.edge, p.edgeRows, p.edgeKind = "", Num{}, k
		return true
	}
	p.i = start
	return false
}

// flatEdge reads the name of an edge of a flat piece that is no row ends:
// "foundation ch edge", "underside of the ch", "last row".
func (p *parser) flatEdge() string {
	start := p.i
	p.eat("the")
	if p.eat("underside", "bottom") || p.tok().is("other", "opposite") && p.at(1).is("side", "edge", "loops") && p.eat("other", "opposite") && p.eat("side", "edge", "loops") {
		if p.eat("of") {
			p.eat("the", "this")
			at := p.i
			if p.startingChain() && p.tok().kind != tNumber {
				return ChainEdge
			}
			if p.i = at; p.chainAcross() {
				return ChainEdge
			}
		}
		p.i = start
		return ""
	}
	if p.eat("ch", "chain") {
		// "along ch-2 edge" of a slit
		p.eatKind(tHyphen)
		if _, ok := p.plainNumber(); ok && p.eat("edge", "side") {
			return ChainEdge
		}
		p.i = start
		return ""
	}
	top := p.at(-1).is("of") && p.at(-2).is("top") || p.at(-1).is("the") && p.at(-2).is("of") && p.at(-3).is("top")
	if !(top && p.tok().is("starting", "beginning")) && p.tok().is("foundation", "cast", "starting", "beginning", "original") && p.startingChain() {
		return ChainEdge
	}
	if p.eatAll("last", "row") || p.eatAll("final", "row") {
		return TopEdge
	}
	p.i = start
	return ""
}

// startingChain reads "foundation ch", "starting chain edge", "cast-on edge", "ch".
func (p *parser) startingChain() bool {
	start := p.i
	if n, ok := p.num(); ok && !n.Set() {
		return false
	}
	named := p.eat("foundation", "starting", "beginning", "original", "base", "cast")
	if p.at(-1).is("cast") {
		p.eatKind(tHyphen)
		p.eat("on")
	}
	p.eatKind(tHyphen)
	chain := p.eat("ch", "chs", "chain", "chains")
	if p.spaceWord() || chain && p.tok().kind == tHyphen && p.at(1).kind == tNumber {
		p.i = start
		return false
	}
	if edge := p.eat("edge", "side"); named && edge || chain {
		return true
	}
	p.i = start
	return false
}

// chainAcross reads "ch-1", "thumb chain", "bridging 4 ch", "ch-4 sp": the chains across a slit
// by how many they are.
func (p *parser) chainAcross() bool {
	start := p.i
	p.eat("thumb", "bridging", "bridge", "gap", "slit")
	if t, ok := p.target(); ok && (t.Sort == StartChain || t.Sort == ChainSpace || t.Sort == ChainStitch) && t.Name == "" {
		return true
	}
	p.i = start
	return false
}

// inBase reads "base of each of 20 tr along lower edge", "foot of next 18 sts", "the underside
// of each sc of Row 1": the starting chain from its other side.
func (p *parser) inBase() (Place, bool) {
	start := p.i
	p.eat("the")
	if !p.eat("base", "foot", "bottom", "underside") || !p.eat("of") || !p.tok().is("each", "every", "next", "first", "last", "the", "following") && p.tok().kind != tNumber {
		p.i = start
		return Place{}, false
	}
	pl, ok := p.place()
	if !ok || pl.Of != nil || pl.Below != 0 && pl.Below != -1 || pl.Target.Sort != AnyStitch && pl.Target.Sort != OfKind || pl.Into != stitch.Top ||
		pl.Pick != Each && pl.Pick != Next && pl.Pick != First && pl.Pick != Last {
		p.i = start
		return Place{}, false
	}
	pl.Below, pl.Bare = 0, false
	pl.Target = Target{Sort: ChainStitch, Name: ChainEdge, Kind: stitch.Of(stitch.Chain), Text: "ch"}
	if at := p.i; p.eat("along", "across", "at", "on", "of") {
		p.eat("the")
		p.eat("lower", "bottom", "foundation", "starting", "beginning", "cast", "other", "opposite", "long", "first")
		p.eatKind(tHyphen)
		p.eat("on")
		if !p.eat("edge", "side", "end", "chain", "ch", "row") || !p.ended() {
			p.i = at
		}
	}
	pl.Span = p.from(start)
	return pl, true
}

// edgePlace is the edge whose name has been read.
func (p *parser) edgePlace() Target { return Target{Sort: RowEnds, Name: p.edge, Kind: p.edgeKind} }

// cornerPlace reads a corner of a piece or of a slit: "other corner", "side of the
// opening", "corner of the thumb hole".
func (p *parser) cornerPlace() (Place, bool) {
	start := p.i
	p.eat("the", "each")
	p.whichCorner()
	nth := p.eat("first", "second", "third", "fourth", "last", "other", "opposite", "next", "same", "remaining", "final") || p.eatKind(tOrdinal)
	corner := p.eat("corner", "corners")
	if !corner && !p.eat("side", "sides", "edge", "end", "gap", "space") {
		p.i = start
		return Place{}, false
	}
	pl := Place{Pick: Next, Bare: true, Target: Target{Sort: ChainSpace, Name: Corner}}
	done := func() (Place, bool) {
		pl.Target.Text = p.words(start)
		pl.Span = p.from(start)
		return pl, true
	}
	if p.eat("of", "at") {
		p.eat("the", "this")
		for p.eat("thumb", "hand", "other", "side", "first", "second", "leg", "arm") {
		}
		if p.eat("opening", "hole", "gap", "slit", "thumbhole") {
			return done()
		}
		if corner && p.eat("cloth", "piece", "blanket", "scarf", "square", "mat", "work", "row", "rectangle", "panel") {
			return done()
		}
	} else if corner && nth && p.at(-2).is("other", "opposite", "second", "third", "fourth", "remaining", "final") && !p.spaceWord() {
		return done()
	}
	p.i = start
	return Place{}, false
}

// whichCorner passes over "top right-hand", "lower left" before "corner": a piece may be
// turned any way up.
func (p *parser) whichCorner() {
	start := p.i
	for p.eat("top", "upper", "bottom", "lower", "right", "left", "front", "back", "near", "far", "outer", "outside") {
		p.eatKind(tHyphen)
		p.eat("hand")
	}
	if !p.tok().is("corner") {
		p.i = start
	}
}

// ofCorner reads "of each corner", "of next 3-sc corner group" behind "centre st",
// which is the stitch at the corner.
func (p *parser) ofCorner(pl *Place) bool {
	start := p.i
	if (pl.Target.Sort == AnyStitch || pl.Target.Sort == OfKind) && p.eat("of", "at", "in") {
		p.eat("the")
		pick := Next
		if p.eat("each", "every", "all") {
			pick = Each
		} else if p.eat("any", "a") {
			pick = Any
		}
		p.eat("next", "the", "first", "last", "four", "same")
		at := p.i
		if p.plainNumber(); !p.eatKind(tHyphen) {
			p.i = at
		} else {
			p.what()
		}
		if p.eat("corner", "corners") && !p.spaceWord() {
			p.eat("group", "groups", "cluster", "shell", "inc", "increase", "3", "set")
			pl.Pick, pl.Target = pick, Target{Sort: CornerStitch, Kind: pl.Target.Kind, Text: p.words(start)}
			return true
		}
	}
	p.i = start
	return false
}

// ofCornerSts passes over "of the first corner", "at next corner shell" behind so many
// stitches: the corner is where they are, which is where the work has come to.
func (p *parser) ofCornerSts(pl *Place) bool {
	start := p.i
	if pl.Pick == Next && pl.N.Set() && (pl.Target.Sort == AnyStitch || pl.Target.Sort == OfKind) {
		p.i++
		p.eat("the", "each", "this", "that", "same")
		p.eat("first", "next", "last", "second", "third", "fourth", "same", "following")
		if p.eat("corner") && !p.spaceWord() {
			p.eat("group", "cluster", "shell", "fan", "inc", "increase", "set")
			if p.ended() {
				return true
			}
		}
	}
	p.i = start
	return false
}

// middleOfCorner reads "of each 5-dc corner", "of next 3-sc corner group" behind the
// ordinal of the stitch in the middle of so many, which is the one at the corner.
func (p *parser) middleOfCorner(pl *Place) bool {
	start := p.i
	for j := p.i; j < p.i+5 && j+1 < len(p.toks); j++ {
		if p.toks[j].kind == tNumber && p.toks[j+1].kind == tHyphen && p.toks[j].value == 2*pl.Nth-1 {
			if p.ofCorner(pl) {
				return true
			}
			break
		}
	}
	p.i = start
	return false
}

// rate takes "working 3 sc for every 2 rows" to stitches along row ends: it says how many they
// are, or, where that has been said, says it again.
func (s *Stitches) rate(of *Stitches) bool {
	pl := &s.Places[len(s.Places)-1]
	if pl.Target.Sort != RowEnds || pl.Target.Name != "" || len(of.Places) != 1 || of.Places[0].Target.Sort != RowEnds || of.What != s.What {
		return false
	}
	if s.N.Set() {
		s.But = append(s.But, of)
	} else {
		s.N, *pl = of.N, of.Places[0]
	}
	return true
}

// onChainEdge reads "on the underside of the foundation chain", "along the other side of
// starting ch" behind a chain that is gone into.
func (p *parser) onChainEdge() bool {
	start := p.i
	if p.eat("on", "along", "of", "at", "across") && p.flatEdge() == ChainEdge && p.ended() {
		return true
	}
	p.i = start
	if p.eat("along", "across") {
		// "each of next 31 ch along the bottom"
		p.eat("the", "your")
		if p.eat("bottom", "base", "lower", "foundation", "starting") && (p.eat("edge", "side") || p.at(-1).is("bottom", "base")) && p.ended() {
			return true
		}
	}
	p.i = start
	return false
}

// joinedThere reports whether words from token start on, "on the opposite edge", say where the
// yarn has been joined, and name no chain.
func (b *block) joinedThere(start int) bool {
	n := len(b.items)
	if n == 0 {
		return false
	}
	j, ok := b.items[n-1].(*Join)
	for i := start; i < b.p.i; i++ {
		if b.p.toks[i].is("ch", "chs", "chain", "chains", "foundation", "cast", "starting", "loops") {
			return false
		}
	}
	return ok && j.Yarn != "" && j.Place == nil && b.p.ended()
}

// toCorner passes over how far the row ends are gone along, where that is all of them: "to the other
// corner", "down to next corner", "along the edge to the far end".
func (p *parser) toCorner() bool {
	start := p.i
	if p.eat("along", "down", "up", "across", "all") {
		p.eat("the", "this", "along")
		p.eat("way")
		p.eat("edge", "side")
	}
	if p.eat("as") {
		p.eat("far")
		p.eat("as")
	} else if !p.eat("to") {
		p.i = start
		return false
	}
	p.eat("the")
	p.eat("other", "next", "far", "opposite", "second", "top", "bottom", "lower", "upper")
	if !p.eat("corner", "end") && !(p.eat("foundation", "starting") && p.eat("ch", "chain", "edge")) || !p.ended() {
		p.i = start
		return false
	}
	return true
}
