package notation

import (
	"unicode"
	"unicode/utf8"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// join reads "join with sl st in first dc", "sl st to first sc to join",
// "join", "do not join", "join yarn B with sl st in any st".
func (p *parser) join() (Item, *fault.Fault) {
	start := p.i
	if p.eatAll("do", "not", "join") && p.onwards() || p.eatAll("don't", "join") || p.eatAll("without", "joining") || p.eatAll("not", "joined") {
		return &NoJoin{p.from(start)}, nil
	}
	if p.tok().is("to") && p.at(1).is("join", "close") && p.work && !p.joined {
		at := p.i
		if p.i += 2; p.ended() || p.tok().first {
			return &Join{Span: p.from(at)}, nil // "change to B to join"
		}
		p.i = at
	}
	if p.tok().is("with") && p.at(1).is("rs", "ws", "right", "wrong") {
		// "With RS facing, join …"
		for p.tok().kind == tWord && !p.tok().is("join", "rejoin", "attach", "reattach") {
			p.i++
		}
		p.eatKind(tComma)
		if !p.tok().is("join", "rejoin", "attach", "reattach") {
			p.i = start
			return nil, nil
		}
	}
	if p.tok().is("join", "joining") && p.at(1).is("the", "short", "ends", "edges", "sides", "seam", "pieces", "both", "them", "together") &&
		!p.at(2).is("new", "yarn", "round", "rnd", "work", "colour", "color", "next", "contrast", "contrasting", "main") && !p.at(2).is(shades...) && !p.at(2).is(shaded...) && !p.yarnSaid(1) {
		// "Join the short ends with slip stitches": making up.
		p.i = p.sentenceEnd()
		return &Note{Span: p.from(start), Text: p.words(start)}, nil
	}
	if p.joinsEnds() {
		p.i = p.sentenceEnd()
		return &Note{Span: p.from(start), Text: p.words(start)}, nil
	}
	if p.assembles() {
		p.i = p.sentenceEnd()
		return &Note{Span: p.from(start), Text: p.words(start)}, nil
	}
	if s := p.joinsLimb(); s != nil {
		return s, nil
	}
	if p.tok().is("invisible", "seamless") && p.at(1).is("join") && p.work {
		p.i++ // "invisible join" at the end of a round
	}
	if p.eat("join", "joining") || p.rejoins() || p.closesRound() || p.tok().is("close") && !p.at(1).is("up", "it", "them", "the", "hole", "top", "opening", "gap", "any", "small", "remaining", "rem") && p.eat("close") {
		return p.joinTail(start)
	}
	// [1] sl st in first st [to join]
	if n, ok := p.plainNumber(); ok && n != 1 || !ok && p.eat("a") && p.tok().first {
		p.i = start
	}
	if w, ok := p.what(); ok && w.Kind == stitch.Of(stitch.Slip) {
		if !p.work && p.intoRing() {
			return &FormRing{p.from(start)}, nil // "ch 6, sl st into a ring"
		}
		if !p.work && p.formsRing() {
			return &FormRing{p.from(start)}, nil // "6 ch, ss to form into a ring"
		}
		p.eat("to", "in", "into")
		prep := p.at(-1).kind == tWord && p.at(-1).is("to", "in", "into")
		if p.eat("join") {
			j := &Join{Span: p.from(start)}
			if p.tok().is("to", "in", "into") {
				p.i++
				if pl, ok := p.place(); ok {
					j.Place = &pl
				}
			}
			if p.formsRing() {
				return &FormRing{p.from(start)}, nil
			}
			j.Span = p.from(start)
			return j, nil
		}
		if at := p.i; prep && p.work && p.depth <= 1 {
			// "ss to 2 ch", the chain that the round began with
			t, ok := p.startChain()
			if k := p.tok().kind; ok && (k == tStop || k == tEnd || k == tOpen || k == tDash || p.tok().first || (k == tComma || k == tSemi) && p.ends(p.i+1)) {
				return &Join{Span: p.from(start), Place: &Place{Span: p.from(at), Pick: First, Target: t}}, nil
			}
			p.i = at
		}
		if prep {
			if pl, ok := p.place(); ok && (pl.Pick == First || pl.Target.Sort == StartChain || pl.Of != nil && pl.Of.Target.Sort == StartChain) && pl.Target.Sort != FromHook {
				j := &Join{Place: &pl}
				if pl.Pick == First && (pl.Target.Sort == OfKind || pl.Target.Sort == AnyStitch) {
					p.eat("made", "worked") // "ss in first dc made"
				}
				if p.formsRing() {
					return &FormRing{p.from(start)}, nil
				}
				if p.eatAll("to", "join") {
					p.eat("rnd", "round")
				}
				j.Span = p.from(start)
				return j, nil
			}
			if p.formsRing() {
				return &FormRing{p.from(start)}, nil
			}
		}
	}
	p.i = start
	// "dc in first sc to join", "… to form last ch-6 lp"
	p.eat("a", "one")
	p.num()
	if w, ok := p.what(); ok && w.Kind.Base > stitch.Slip && p.eat("in", "into", "to") {
		if pl, ok := p.place(); ok && (pl.Pick == First || pl.Of != nil && pl.Of.Target.Sort == StartChain) && p.closing() {
			return &Join{Span: p.from(start), Place: &pl, With: w}, nil
		}
	}
	p.i = start
	return nil, nil
}

// onwards passes over ", here or later" behind what is not done. It is true.
func (p *parser) onwards() bool {
	p.eat("rnds", "rounds")
	at := p.i
	p.eatKind(tComma)
	if p.eat("here", "now", "this", "either") && p.eat("or", "and", "nor") {
		p.eat("at", "on")
		p.eat("later", "hereafter", "afterwards", "after", "any", "throughout")
		return true
	}
	p.i = at
	if p.eat("after", "at", "on") {
		the := p.eat("the", "any", "each", "this", "last", "final")
		end := p.eat("end", "last", "final")
		p.eat("of")
		p.eat("the", "any", "each", "this")
		if !p.eat("last", "final") {
			p.eatKind(tOrdinal) // "at end of 4th row"
		}
		if _, round := roundWord(p.tok()); round && !p.tok().is("r") {
			p.i++
			p.plainNumber()
			return true
		}
		if the || end && p.ended() {
			return true
		}
	}
	p.i = at
	return true
}

// closing reads the words by which a stitch closes a round: "to join", "to form
// last ch-6 lp", "for last loop", "completing last arch".
func (p *parser) closing() bool {
	start := p.i
	open := p.eatKind(tOpen)
	p.eatKind(tComma)
	switch {
	case p.eatAll("to", "join"):
		p.eat("rnd", "round")
	case p.eat("forming", "completing", "making", "creating") || p.eat("to") && p.eat("form", "complete", "make", "create", "count", "close") || p.eat("for", "as"):
		loose := p.at(-1).is("for", "as")
		p.eat("as")
		p.eat("the", "a", "this")
		if !p.eat("last", "final", "new") && loose {
			p.i = start // "3 sc in first sc for the corner" closes nothing
			return false
		}
		if t, ok := p.target(); ok && t.Sort != ChainSpace {
			p.i = start
			return false
		} else if !ok && !p.eat("rnd", "round") {
			p.i = start
			return false
		}
	default:
		p.i = start
		return false
	}
	if open && !p.eatKind(tClose) {
		p.i = start
		return false
	}
	return true
}

// rejoins reads "rejoin", or "attach" said of a yarn.
func (p *parser) rejoins() bool {
	start := p.i
	if p.eat("rejoin", "reattach") || p.eatAll("re", "join") || p.eatAll("re", "attach") {
		return true
	}
	if !p.work && p.eat("draw", "pull") {
		// "draw up a loop of B in any ch-2 sp"
		p.eat("up")
		p.eat("a")
		if p.eat("loop", "lp") {
			at := p.i
			if p.eat("of", "with") {
				if _, ok := p.yarn(); !ok {
					p.i = start
					return false
				}
			}
			if p.tok().is("in", "into", "to") {
				if p.tok().is("in", "into", "to") && p.toks[at].is("of", "with") {
					p.i = at + 1
				}
				return true
			}
		}
		p.i = start
	}
	if p.eat("attach", "attaching") {
		at := p.i
		if _, ok := p.yarn(); ok {
			p.i = at
			return true
		}
	}
	p.i = start
	return false
}

// joinTail goes on after the word join.
func (p *parser) joinTail(start int) (Item, *fault.Fault) {
	j := &Join{}
	if !p.eatAll("in", "the", "round") {
		p.eatAll("into", "a", "round")
	}
	p.eat("rnd", "round", "work")
	at := p.i
	if p.eat("in") && capital(p.tok().raw) && len(p.tok().raw) <= 2 && p.tok().kind == tWord {
		at = p.i // "Join in C."
	} else {
		p.i = at
	}
	if yarn, ok := p.yarn(); ok {
		j.Yarn = yarn
	} else if yarn, ok := p.yarnName(); ok {
		j.Yarn = yarn
	} else {
		p.i = at
	}
	bracketed := p.tok().kind == tOpen && (p.at(1).is("with", "sl", "ss", "slip", "using") || p.at(2).is("sl", "ss", "slip"))
	if bracketed {
		p.i++
	}
	for p.eat("as", "before", "usual", "invisibly", "seamlessly") {
	}
	if p.tok().is("with", "in") && p.work && j.Yarn == "" && p.yarnLast(p.i+1) {
		j.Span = p.from(start) // "join with B": the round is joined, and B goes on
		return j, nil
	}
	if p.eat("with", "using", "by", "w") && p.tok().kind == tSlash {
		p.i++
	}
	p.eat("a", "an")
	if p.eat("invisible", "seamless") {
		p.eat("join")
	}
	if w, ok := p.what(); ok {
		j.With = w
	}
	for p.eat("as", "before", "usual", "always") {
	}
	p.throughBoth()
	if p.formsRing() {
		return &FormRing{p.from(start)}, nil
	}
	if at := p.i; p.eat("at") && p.eat("the", "center", "centre", "back", "front", "side") {
		// "attach yarn at the center back, in the stitch with the join"
		for p.eat("center", "centre", "back", "front", "neck", "side", "of", "the", "hat", "seam") {
		}
		if p.eatKind(tComma); !p.tok().is("in", "into", "to", "with") {
			p.i = at
		}
	} else {
		p.i = at
	}
	if p.tok().is("to", "in", "into", "on", "at", "around", "round") {
		at := p.i
		p.i++
		if p.atUnderarm() {
			if j.Underarm = true; j.Yarn == "" && !p.work {
				j.Yarn = "new"
			}
		} else if p.slit(0) || p.cornerOfSide() {
			// "join yarn at thumb opening", "to the corner of one long side"
		} else if pl, ok := p.place(); ok {
			if pl.Target.Sort == RowEnds && pl.Target.Name == ChainEdge && j.Yarn == "" && j.With.Kind.Is() && p.at(-2).is("beginning", "starting") {
				// "join with a sl st to beginning ch": the one of this round
				pl.Pick, pl.Target = First, Target{Sort: StartChain, Text: pl.Target.Text}
			} else if pl.Target.Sort == RowEnds && pl.Target.Name == ChainEdge {
				// "join yarn to the foundation chain": in its first
				pl.Pick, pl.Nth, pl.Target = First, 1, Target{Sort: ChainStitch, Name: ChainEdge, Kind: stitch.Of(stitch.Chain), Text: pl.Target.Text}
			}
			p.joinsLeft(j, &pl, at)
			j.Place = &pl
			if pl.Target.Sort == SeamPlace && j.Yarn == "" && !p.work {
				j.Yarn = "new"
			}
			if pl.Target.Sort == Ring {
				band := p.bandAt(at + 1)
				// "join into a ring with a sl st"
				if p.eat("with") {
					p.eat("a")
					p.what()
					if at := p.i; p.eat("in", "into", "to") {
						if _, ok := p.place(); !ok {
							p.i = at
						}
					}
				}
				p.ringed = true
				if band {
					return &MagicRing{Span: p.from(start), Round: pl.Target.Text}, nil // there already
				}
				return &FormRing{p.from(start)}, nil
			}
			if j.Yarn != "" {
				if pl.Pick == Nth && pl.Of == nil {
					p.afterJoin() // "in 5th sc from the join", where the round begins
					if at := p.i; p.afterPiece() != "" {
						return nil, p.failAt(at, "join", "cannot work out which stitch this is, counted from another piece", "Skip those before it: skip next 4 sts after first flap, join yarn in next st.")
					}
				}
				p.onSideNamed()
			}
		} else if p.atSeam() {
			// "join yarn at the back seam": where the round begins
			if j.Yarn == "" && !p.work {
				j.Yarn = "new" // "join with sl st at seam"
			}
		} else if p.at(-1).is("at") && j.Yarn != "" && !p.tok().is("beginning", "beg", "start") {
			// "join A at the front corner of the neck": where the work begins
			for p.tok().kind == tWord && !p.tok().first && !p.ends(p.i) && !p.tok().is("and", "then") {
				p.i++
			}
		} else if p.tok().is("form", "make") || p.tok().is("the") {
			p.i = at
		} else if p.eat("beginning", "beg", "start", "beginning-chain") {
			j.Place = &Place{Pick: First}
		} else {
			return nil, p.failAt(p.i, "join", "cannot work out what the round is joined to",
				"Write, for example: join with sl st in first dc.")
		}
	}
	p.withSlip(j)
	if pl := p.beforeSeam(p.i); j.Place == nil && j.Yarn != "" && pl != nil {
		j.Place = pl
		p.i = p.phraseEnd()
	} else if j.Place == nil && j.Yarn != "" && p.tok().is("where") {
		p.i = p.phraseEnd() // "where the strap meets the band"
	}
	if j.Place == nil && p.tok().is("between") {
		if pl, ok := p.placed(false); ok && pl.Target.Sort == Gap {
			j.Place = &pl
		}
	}
	if bracketed {
		p.eatKind(tClose)
	}
	if p.formsRing() {
		return &FormRing{p.from(start)}, nil
	}
	p.closing()
	at = p.i
	p.eatKind(tComma)
	open := p.eatKind(tOpen)
	if p.eat("completing", "completes", "to") {
		p.eat("complete")
		p.eat("the", "a", "first", "last")
		n, hasN := p.plainNumber()
		_ = n
		if w, ok := p.what(); ok && w.Kind.Shape == stitch.Together && !hasN {
			j.Splits = &Counts{Span: p.from(at), As: w.Kind, Half: true}
			if open {
				p.eatKind(tClose)
			}
			at = p.i
		}
	}
	p.i = at
	p.hereAndLater()
	j.Span = p.from(start)
	return j, nil
}

// fasten reads "fasten off", "finish off", "cut yarn".
func (p *parser) fasten() (Item, *fault.Fault) {
	start := p.i
	if !p.eatAll("fasten", "off") && !p.eatAll("finish", "off") && !p.eatAll("bind", "off") && !p.eat("fo") && !p.slashed("f", "o") &&
		!(p.tok().is("cut", "break") && (p.at(1).is("yarn", "thread", "cotton", "wool", "off", "the") || capital(p.at(1).raw))) {
		return nil, nil
	}
	if p.tok().is("or") || p.tok().kind == tComma && p.at(1).is("or") {
		p.i = p.sentenceEnd() // "Fasten off, or make a hanging loop: ch 14, …" is left to the maker
		return &FastenOff{p.from(start), p.words(start)}, nil
	}
	for k := p.tok().kind; k != tEnd && k != tStop && k != tClose; k = p.tok().kind {
		if k == tOpen {
			// "leaving a 12" (30 cm) tail", but not the count of the round
			close := p.matching(p.i)
			sizes := p.at(-1).kind == tNumber && close > 0 && p.toks[close+1].kind == tWord // remaining 28 (32) sts
			if close < 0 || units[p.toks[close-1].text] == 0 && !sizes {
				break
			}
			p.i = close + 1
			continue
		}
		if (k == tDash || k == tColon || k == tEqual) && p.at(1).kind == tNumber {
			break // "Break off A - 12 tr", "finish off: 80 sc"
		}
		// "Fasten off A, join B in any sp": only the yarn ends here.
		if t := p.tok(); (t.kind == tComma || t.kind == tSemi || t.is("and", "then")) && (p.ends(p.i+1) || p.instructs(p.i+1)) {
			break
		}
		p.i++
	}
	return &FastenOff{p.from(start), p.words(start)}, nil
}

// slashed passes over two words with a stroke between them: F/O.
func (p *parser) slashed(a, b string) bool {
	if p.tok().is(a) && p.at(1).kind == tSlash && p.at(2).is(b) {
		p.i += 3
		return true
	}
	return false
}

// capital reports whether a word begins with a capital letter, as the names of
// yarns do.
func capital(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsUpper(r)
}

// rest passes over the rest of the sentence.
func (p *parser) rest() {
	for p.tok().kind != tEnd && p.tok().kind != tStop && p.tok().kind != tClose && p.tok().kind != tOpen {
		p.i++
	}
}

// areJoined reports whether a sentence says of all rounds that they are joined: "Rounds are
// joined with a sl st", "Each round is joined in the first st".
func (p *parser) areJoined() bool {
	start := p.i
	defer func() { p.i = start }()
	p.eat("all", "each", "every", "the")
	p.eat("of")
	p.eat("the")
	if _, round := roundWord(p.tok()); !round || p.tok().is("r") {
		return false
	}
	p.i++
	return p.eat("are", "is") && p.eat("joined", "closed")
}
