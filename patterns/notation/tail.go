package notation

import (
	"whorl/patterns/stitch"
)

// placeTail reads what may follow a target: "of next shell", "2 rnds below",
// "around", "to last 2 sts", "evenly".
func (p *parser) placeTail(pl *Place) {
	p.mixed(pl)
	for {
		start := p.i
		switch {
		case pl.Target.Sort == ChainStitch && p.tok().is("at", "below", "beneath", "under") && p.underSt(pl):
		case p.tok().is("below") && pl.Below == 0 && pl.Target.Sort != Ring:
			p.i++
			pl.Below, pl.JustBelow = 1, true
			// "st below next st"
			if p.eat("next", "nxt", "following") {
				p.target()
			}
		case p.tok().is("of", "on", "from", "around", "along") && p.ofLimb(pl):
		case p.tok().is("at", "along", "across", "on", "of", "over") && p.onFlap(pl):
		case p.tok().is("along", "down", "up") && p.alongPoint(pl):
		case pl.Target.Sort == RowEnds && p.toCorner():
		case p.tok().is("of") && p.ofTop(pl):
		case p.tok().is("of", "at", "in") && p.ofCornerSts(pl):
		case p.tok().is("of", "in", "on", "from") && p.roundBelow(pl):
		case p.tok().is("of", "at", "on", "in", "along", "around") && p.slit(1):
		case pl.Target.Sort == ChainStitch && pl.Of == nil && p.ofUnderarm(pl):
		case pl.Target.Sort == OfName && pl.Of == nil && p.spaceOfGroup(pl):
		case pl.Of != nil && pl.Of.Target.ByNumber() && p.slit(0): // "first ch of ch-6 thumb opening"
		case pl.Pick == Skipped && p.whose():
		case pl.Target.Sort == ChainStitch && p.onChainEdge():
			pl.Target.Name = ChainEdge // "any ch on the underside of the foundation chain"
		case p.tok().is("of", "on", "in", "from") && p.ofBlock(pl):
		case p.tok().is("of") && p.lastRepAhead():
			return
		case p.tok().is("of"):
			p.i++
			at := p.i
			p.eat("the")
			t, ok := p.missedChain()
			if !ok {
				t, ok = p.startChain()
			}
			if !ok && pl.Target.Sort == ChainStitch && pl.Nth > 0 {
				// "the third chain of the 6"
				if n, number := p.plainNumber(); number && n >= pl.Nth && p.ended() {
					t, ok = Target{Sort: StartChain, Chains: n, Text: p.words(at)}, true
				}
			}
			if ok {
				pl.Of = &Place{Span: p.from(at), Pick: First, Target: t}
				continue
			}
			p.i = at
			p.eat("the")
			if pl.Target.Sort == ChainStitch && (p.startingChain() || p.foundation()) && p.ended() {
				pl.Target.Name = ChainEdge // "first ch of foundation chain"
				continue
			}
			if p.i = at; p.ofAnyFigure(pl) || p.ofMotif(pl) {
				continue
			}
			of, ok := p.place()
			if !ok {
				p.i = start
				return
			}
			if of.Target.Sort == Ring {
				return
			}
			pl.Of = &of
			pl.ofSeveral()
		case p.besidePoint(pl):
		case (pl.Pick == Any || pl.Pick == Next && !pl.N.Set() && pl.Target.Sort == OfKind) && p.tok().is("between") && p.amid():
		case pl.Pick == Each && pl.Of == nil && p.overGroup(pl):
		case pl.Pick == Each && !pl.N.Set() && p.including(pl):
		case (pl.Pick == Each || pl.Pick == Next && !pl.N.Set()) && pl.Target.Sort == ChainSpace && p.besideEach(pl):
		case pl.Target.Sort != RowEnds && p.belowWords(pl):
		case p.besideSeam(pl):
		case p.followsSpace(pl) || p.sitsInSpace(pl):
		case p.tok().is("that", "which") && p.at(1).is("holds", "held", "contains", "has"):
			for k := p.tok(); k.kind == tWord && !k.is("and", "then"); k = p.tok() {
				p.i++
			}
		case p.tok().is("at", "in") && (p.at(1).is("the") && p.at(2).is("middle", "centre", "center") || p.at(1).is("middle", "centre", "center")):
			// "into 2-ch space at the middle of next shell"
			p.i++
			p.eat("the")
			p.i++
			if !p.eat("of") {
				p.i = start
				return
			}
			of, ok := p.place()
			if !ok {
				p.i = start
				return
			}
			pl.Of = &of
		case p.tok().is("at") && (p.at(1).is("base", "bottom", "foot") && p.at(2).is("of") || p.at(1).is("the") && p.at(2).is("base", "bottom", "foot") && p.at(3).is("of")):
			// "st at base of ch 3": the one it stands on
			if p.i += 3; p.at(-1).is("base", "bottom", "foot") {
				p.i++
			}
			p.eat("the", "this", "that")
			if _, ok := p.startChain(); !ok && p.chain() == nil {
				p.i = start
				return
			}
			pl.Pick, pl.Target.Sort = Same, JoinPlace
		case pl.Pick != Same && p.leftBefore(pl):
			// "each of the 8 sts you left alone"
			pl.Pick, pl.Bare = Skipped, false
		case p.tok().is("just") && p.at(1).is(skippedWords...) && pl.Pick == Next && !pl.N.Set():
			p.i += 2 // "tr just missed"
			pl.Pick, pl.Bare = Skipped, false
		case p.tok().is("just") && p.at(1).is("made", "worked", "formed", "completed"):
			p.i += 2
			pl.Pick = Made
		case pl.Target.Sort == ChainSpace && p.formedByChain():
			pl.Target.Name, pl.Target.Chains = EdgeLoop, 0
		case pl.Target.Sort == ChainSpace && p.formedBy():
			pl.Pick = Made
		case pl.Target.Sort == ChainStitch && (pl.Pick == Each || pl.Pick == Next) && p.backAlong():
		case p.tok().is("evenly"):
			p.i++
			p.eat("spaced")
			pl.Evenly = true
		case p.whereabouts(pl.Target.Sort == RowEnds):
		case pl.Pick == Next && pl.N.Set() && pl.Target.Sort != RowEnds && (p.alongFlatEdge(pl) || p.acrossFront()):
		default:
			if pl.Pick == Each && pl.Extent.Sort == NoExtent {
				if e, ok := p.extent(); ok {
					pl.Extent = e
					continue
				}
			} else if p.tok().is("around", "across") && !pl.Over {
				// "in next 5 sts across": says no more than was said.
				if p.at(1).is("top", "bottom") {
					p.i += 2 // "across top"
					continue
				}
				if pl.Target.Sort == RowEnds || pl.Extent.Sort != NoExtent {
					p.i++
					continue
				}
			}
			return
		}
	}
}

// mixed reads the spaces of "next 99 sts and ch-1 sps", so many of either as they come.
func (p *parser) mixed(pl *Place) {
	start := p.i
	if pl.Pick != Next || !pl.N.Set() || pl.Target.Sort != AnyStitch && pl.Target.Sort != OfKind || !p.eat("and", "or") {
		return
	}
	if t, ok := p.target(); ok && t.Sort == ChainSpace && t.Name == "" && p.at(-1).is("sps", "spaces", "loops", "lps") {
		pl.Also = append(pl.Also, t)
		return
	}
	p.i = start
}

// ofMotif passes over "pineapple", "each leaf": a figure of several rounds that no
// stitch is named after, of which the place is the next one.
func (p *parser) ofMotif(pl *Place) bool {
	start := p.i
	p.eat("the", "each", "every", "next", "same", "this", "that")
	if t := p.tok(); pl.Pick != Last && t.kind == tWord && !t.first && p.vocab.near(t.text) == "" && !t.is(groupWords...) &&
		!t.is("row", "rows", "rnd", "round", "each", "next", "last", "first", "corner", "corners", "turning", "beg", "beginning", "ring", "group", "groups", "toe", "back", "front") {
		if _, known := p.vocab.lookup(t.text); !known {
			if p.i++; p.ended() && (pl.Target.Sort == ChainSpace || pl.Target.Sort == OfKind || pl.Target.Sort == AnyStitch) {
				if pl.Pick == First {
					pl.Pick, pl.Nth = Next, 0
				}
				if pl.Target.Sort == ChainSpace {
					pl.Figure, pl.Bare = p.at(-1).text, false
				}
				return true
			}
		}
	}
	p.i = start
	return false
}

// followsSpace reads "that follows a space", "after any ch-1 sp".
func (p *parser) followsSpace(pl *Place) bool {
	start := p.i
	if p.eat("that", "which") && p.eat("follows", "follow", "is", "comes") {
		p.eat("just", "right", "directly")
		p.eat("after")
	} else if p.i = start; !p.eat("after", "following") {
		return false
	}
	p.eat("a", "any", "the")
	if t, ok := p.target(); ok && t.Sort == ChainSpace {
		pl.AfterSpace = true
		return true
	}
	p.i = start
	return false
}

// overGroup reads "across next shell", "over each fan" behind each stitch of a kind: the
// group that they are of.
func (p *parser) overGroup(pl *Place) bool {
	start := p.i
	if p.eat("across", "along", "over", "on") && p.tok().is("the", "next", "each", "same", "first", "last") {
		if of, ok := p.place(); ok && of.Target.Sort == OfName {
			pl.Of = &of
			return true
		}
	}
	p.i = start
	return false
}

// amid passes over "between petals" behind a stitch of a kind.
func (p *parser) amid() bool {
	start := p.i
	p.i++
	p.eat("the", "next")
	p.eat("two", "2")
	p.eatKind(tNumber)
	if p.tok().kind == tWord {
		if p.i++; p.ended() {
			return true
		}
	}
	p.i = start
	return false
}

// whose passes over "of the toe", "at the nape" behind stitches that were left
// unworked: there are no others.
func (p *parser) whose() bool {
	start := p.i
	if p.eat("of", "at", "on", "along", "across", "for", "from", "round", "around") {
		n := 0
		for p.tok().kind == tWord && !p.tok().is("and", "then", "work", "turn", "join") && !p.tok().first && n < 5 {
			p.i++
			n++
		}
		if (n > 0 || p.at(-1).is("along", "across", "round", "around")) && p.ended() {
			return true
		}
	}
	p.i = start
	return false
}

// underSt reads "at base of next V-st" behind a chain of the starting chain, seen from its
// other side: the next that something stands on.
func (p *parser) underSt(pl *Place) bool {
	start := p.i
	if p.eat("at") {
		p.eat("the")
		if !p.eat("base", "bottom", "foot") || !p.eat("of") {
			p.i = start
			return false
		}
	} else {
		p.i++
	}
	p.eat("the")
	if p.tok().is("next", "each", "every", "last", "first", "following") {
		if of, ok := p.place(); ok && (of.Target.Sort == OfName || of.Target.Sort == OfKind || of.Target.Sort == AnyStitch) {
			pl.Pick, pl.Nth, pl.Bare, pl.Target = Next, 0, false, Target{Text: "st"}
			if of.Pick == Each {
				pl.Pick, pl.Extent = Each, of.Extent
			}
			return true
		}
	}
	p.i = start
	return false
}

// ofUnderarm reads "of the underarm", "at the armhole chain" behind a chain: of those across a slit.
func (p *parser) ofUnderarm(pl *Place) bool {
	start := p.i
	if p.eat("of", "at", "along") {
		p.eat("the", "each", "one")
		p.num()
		if p.eat("underarm", "armhole", "thumb", "sleeve") {
			if p.eat("opening", "ch", "chs", "chain", "chains") || p.ended() {
				p.opening = true
				if pl.Pick == Centre || pl.Pick == First || pl.Pick == Last || pl.Pick == Nth {
					pl.Of = &Place{Span: p.from(start), Pick: Next, Target: Target{Sort: ChainSpace, Text: p.words(start)}}
				}
				return true
			}
		}
	}
	p.i = start
	return false
}

// roundBelow reads "of previous rnd", "of last row", "of rnd 2".
func (p *parser) roundBelow(pl *Place) bool {
	start := p.i
	p.i++
	p.eat("the")
	nth := p.nth() // "of 1st row"
	if nth == 0 {
		p.eat("previous", "prev", "last", "preceding", "prior", "current", "this", "foundation", "starting", "short")
	}
	if _, ok := roundWord(p.tok()); ok {
		p.i++
		switch {
		case nth > 0 && p.tok().is("below", "down"):
			p.i, nth = start, 0
			return false
		case nth > 0:
			pl.Below = -nth
			return true
		case p.beforeLast():
			pl.Below = 1
			return true
		}
		if n, ok := p.plainNumber(); ok {
			pl.Below = -n // a round by number, told from a distance by its sign
		} else {
			p.eat("below")
			p.ofStretch()
		}
		return true
	}
	p.i = start
	return false
}

// ofStretch passes over "of the main part", "of crown" behind the last round.
func (p *parser) ofStretch() {
	start := p.i
	if p.eat("of") {
		p.eat("the")
		main := p.eat("main")
		if p.eat(headings...) || p.eat("part", "piece", "hat", "cap") || main {
			return
		}
	}
	p.i = start
}

// beforeLast reads "before last", "but one" behind "row": the one that the round below stands on.
func (p *parser) beforeLast() bool {
	if p.eatAll("but", "one") || p.eatAll("before", "last") || p.eatAll("before", "the", "last") || p.eatAll("before", "previous") || p.eatAll("before", "that") {
		p.eat("row", "rnd", "round", "one")
		return true
	}
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
	if p.tok().is("back", "front") && p.at(1).is("of") {
		// "in back of next dc"
		into := stitch.FrontPost
		if p.tok().is("back") {
			into = stitch.BackPost
		}
		p.i += 2
		p.eat("the", "post", "posts")
		return into, true
	}
	into := stitch.FrontPost
	if p.eat("back") {
		into = stitch.BackPost
	} else {
		p.eat("front")
	}
	if p.eat("post", "posts", "stem", "stems") {
		if !p.eat("of") && p.at(-2).is("front", "back") {
			// "in front post double crochet" names the stitch
			at := p.i
			w, ok := p.what()
			if p.i = at; ok && w.Kind.Is() && !w.Loop.Set {
				p.i = start
				return stitch.Top, false
			}
		}
		return into, true
	}
	p.i = start
	return stitch.Top, false
}

// ringWords reads "ring", "magic ring", "centre of ring", "loop" of a ring.
func (p *parser) ringWords() bool {
	start := p.i
	if p.ringed && p.eat("it") {
		return true // "make a magic ring and work 6 dc into it"
	}
	p.eat("the", "a", "an")
	p.eat("centre", "center", "middle")
	p.eat("of")
	p.eat("the")
	if p.band() {
		return true
	}
	p.eat("same", "initial", "starting", "beginning", "beg", "foundation", "original")
	p.eat("ch", "chain")
	magic := p.drawnUp()
	if p.eat("ring", "rings", "circle") || magic && p.eat("circle", "loop") || p.eat("mr", "mc") {
		return true
	}
	p.i = start
	return false
}
