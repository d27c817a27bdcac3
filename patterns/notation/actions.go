package notation

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// chain reads "ch 3", "ch3", "3 ch", "beg ch-3", "chain 60 (72, 78)".
func (p *parser) chain() Item {
	start := p.i
	c := &Chain{}
	beg := p.eat("beg", "beginning")
	n, hasN := p.num()
	if hasN {
		p.eatKind(tHyphen)
	}
	if !p.eat("ch", "chain", "chs", "chains") || p.spaceWord() || p.tok().kind == tHyphen && p.at(1).is("picot") || p.tok().is("picot") {
		p.i = start
		return nil
	}
	if !hasN {
		p.eat("of")
		p.eatKind(tHyphen)
		at := p.i
		if n, hasN = p.num(); hasN && p.timesWord() && !p.tok().is("more") {
			p.i, n, hasN = at, Num{}, false
		}
		p.eatKind(tHyphen)
		if p.tok().is("picot", "picots") || p.spaceWord() {
			p.i = start
			return nil
		}
		p.eat("more")
		p.eat("sts", "st", "stitches", "chs", "chains")
	}
	if !hasN {
		n = One(p.from(start))
	}
	c.N, c.Beg = n, beg
	c.Span = p.from(start)
	at := p.i
	p.eatKind(tComma)
	if p.tok().is("counts", "counting", "does", "counted", "not", "doesn't", "to", "this", "as") {
		if p.eatAll("to", "count") {
			p.i--
		}
		if k, _ := p.counts(); k != nil {
			c.Counts = k.(*Counts)
			return c
		}
	}
	p.i = at
	if p.eatAll("for", "the", "first") || p.eatAll("for", "first") || p.eatAll("as", "first") {
		if w, ok := p.what(); ok && w.Kind.Is() {
			c.Counts = &Counts{Span: p.from(at), As: w.Kind}
			return c
		}
	}
	p.i = at
	return c
}

// skip reads "sk next 2 sts", "skip 2", "miss next ch-1 sp", "sk first st".
func (p *parser) skip() (Item, *fault.Fault) {
	start := p.i
	if p.eat("leave", "leaving") {
		// "leave rem sts unworked", "leaving last 2 sts unworked"
		s := &Skip{Unworked: true}
		p.eat("the")
		if p.eat("rem", "remaining") {
			pl := Place{Pick: Each}
			if n, ok := p.num(); ok {
				pl.N = n
			}
			if _, ok := p.target(); ok && p.eat("unworked", "free") {
				s.Place = &pl
				s.Span = p.from(start)
				return s, nil
			}
		} else if pl, ok := p.place(); ok && p.eat("unworked", "free") {
			s.Place, s.N, s.Target = &pl, pl.N, pl.Target
			s.Span = p.from(start)
			return s, nil
		}
		p.i = start
		return nil, nil
	}
	if !p.eat("sk", "skip", "miss", "skipping", "missing", "skp") {
		return nil, nil
	}
	p.eat("over")
	p.eat("the", "a")
	s := &Skip{}
	if n, ok := p.num(); ok {
		s.N = n
		p.eatKind(tHyphen)
		if n.Values[0] > 0 && p.tok().is("ch") && (p.at(1).is("sp", "sps", "space") || p.at(1).kind == tHyphen) {
			p.i = start + 1
			s.N = Num{}
		}
	} else if !p.tok().is("next", "nxt", "following", "first", "last", "same", "each", "st", "ch", "sp", "foll") &&
		p.tok().kind == tEnd {
		return nil, p.stuck()
	}
	if s.N.Set() {
		if t, ok := p.target(); ok {
			s.Target = t
		}
		p.behind()
		s.Span = p.from(start)
		return s, nil
	}
	pl, ok := p.place()
	if !ok {
		return nil, p.failAt(p.i, "not-understood", "cannot work out what is skipped",
			"Write, for example: sk next 2 sts.")
	}
	p.behind()
	s.Place, s.N, s.Target = &pl, pl.N, pl.Target
	s.Span = p.from(start)
	return s, nil
}

// behind reads "behind FPtr", which says why a stitch is skipped.
func (p *parser) behind() {
	start := p.i
	if p.eat("behind", "beneath", "under") {
		p.eat("the", "each")
		if _, ok := p.what(); ok || p.eat("it", "them", "post", "posts") {
			p.eat("just")
			p.eat("made")
			return
		}
	}
	p.i = start
}

// turn reads "turn", "turn work", "do not turn", "without turning".
func (p *parser) turn() (Item, *fault.Fault) {
	start := p.i
	if p.eatAll("do", "not", "join", "or", "turn") {
		return &NoJoin{p.from(start)}, nil
	}
	if p.eatAll("do", "not", "turn") || p.eatAll("don't", "turn") || p.eatAll("without", "turning") {
		return &Note{p.from(start), p.words(start)}, nil
	}
	if p.eat("turn") {
		p.eat("work", "piece", "the")
		p.eat("work", "piece")
		return &Turn{p.from(start)}, nil
	}
	return nil, nil
}

// join reads "join with sl st in first dc", "sl st to first sc to join",
// "join", "do not join", "join yarn B with sl st in any st".
func (p *parser) join() (Item, *fault.Fault) {
	start := p.i
	if p.eatAll("do", "not", "join") || p.eatAll("don't", "join") || p.eatAll("without", "joining") || p.eatAll("not", "joined") {
		return &NoJoin{p.from(start)}, nil
	}
	if p.tok().is("with") && p.at(1).is("rs", "ws", "right", "wrong") {
		// "With RS facing, join …"
		for p.tok().kind == tWord && !p.tok().is("join") {
			p.i++
		}
		p.eatKind(tComma)
		if !p.tok().is("join") {
			p.i = start
			return nil, nil
		}
	}
	if p.tok().is("join") && p.at(1).is("the", "short", "ends", "edges", "sides", "seam", "pieces", "both") &&
		!p.at(2).is("new", "yarn", "round", "rnd", "work", "colour", "color") {
		// "Join the short ends with slip stitches": making up.
		p.i = p.sentenceEnd()
		return &Note{p.from(start), p.words(start)}, nil
	}
	if p.eat("join", "joining", "close") {
		return p.joinTail(start)
	}
	// sl st in first st [to join]
	if w, ok := p.what(); ok && w.Kind == stitch.Of(stitch.Slip) {
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
		if prep {
			if pl, ok := p.place(); ok && (pl.Pick == First || pl.Target.Sort == StartChain || pl.Of != nil && pl.Of.Target.Sort == StartChain) && pl.Target.Sort != FromHook {
				j := &Join{Place: &pl}
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
	// "dc in first sc to join"
	if w, ok := p.what(); ok && w.Kind.Base > stitch.Slip && p.eat("in", "into", "to") {
		if pl, ok := p.place(); ok && pl.Pick == First && p.tok().is("to") && p.at(1).is("join") {
			return nil, fail(p.from(start), "join", "a round that is closed with a "+w.Kind.Name(p.vocab.terms)+" instead of a slip stitch is not followed here",
				"Write the last space with all its chains, and join with sl st: ch 5, join with sl st in first sc.")
		}
	}
	p.i = start
	return nil, nil
}

// joinTail goes on after the word join.
func (p *parser) joinTail(start int) (Item, *fault.Fault) {
	j := &Join{}
	p.eat("rnd", "round", "work")
	at := p.i
	if yarn, ok := p.yarn(); ok {
		j.Yarn = yarn
	} else if t := p.tok(); capital(t.raw) && t.kind == tWord && p.at(1).is("with", "in", "to", "at") && !p.stitchy(p.i, p.i+1) {
		j.Yarn = t.raw
		p.i++
	} else {
		p.i = at
	}
	bracketed := p.tok().kind == tOpen && (p.at(1).is("with", "sl", "ss", "slip", "using") || p.at(2).is("sl", "ss", "slip"))
	if bracketed {
		p.i++
	}
	for p.eat("as", "before", "usual") {
	}
	if p.eat("with", "using", "by", "w") && p.tok().kind == tSlash {
		p.i++
	}
	p.eat("a", "an")
	if w, ok := p.what(); ok {
		j.With = w
		if w.Kind.Base != stitch.Slip && j.Yarn == "" {
			return nil, p.failAt(p.i-1, "join", "a round is joined with a slip stitch",
				"Write, for example: join with sl st in first dc.")
		}
	}
	if p.tok().is("to", "in", "into", "on", "at") {
		at := p.i
		p.i++
		if pl, ok := p.place(); ok {
			j.Place = &pl
			if pl.Target.Sort == Ring {
				// "join into a ring with a sl st"
				if p.eat("with") {
					p.eat("a")
					p.what()
				}
				return &FormRing{p.from(start)}, nil
			}
			if p.tok().is("with") {
				p.i++
				p.eat("a")
				p.what()
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
	if bracketed {
		p.eatKind(tClose)
	}
	if p.formsRing() {
		return &FormRing{p.from(start)}, nil
	}
	if p.eatAll("to", "join") {
		p.eat("rnd", "round")
	}
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
	j.Span = p.from(start)
	return j, nil
}

// formsRing reads "to form ring", "forming a ring".
func (p *parser) formsRing() bool {
	start := p.i
	p.eatKind(tComma)
	p.eat("to", "and")
	if p.eat("form", "make", "forming", "making", "create") {
		p.eat("a", "the")
		if p.eat("ring", "circle", "loop", "round") {
			return true
		}
	}
	p.i = start
	return false
}

// fasten reads "fasten off", "finish off", "cut yarn".
func (p *parser) fasten() (Item, *fault.Fault) {
	start := p.i
	if p.eatAll("fasten", "off") || p.eatAll("finish", "off") || p.eatAll("bind", "off") || p.eat("fo") {
		p.rest()
		return &FastenOff{p.from(start)}, nil
	}
	if p.tok().is("cut", "break") && (p.at(1).is("yarn", "off", "the") || capital(p.at(1).raw)) {
		p.rest()
		return &FastenOff{p.from(start)}, nil
	}
	return nil, nil
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

// ring reads "magic ring", "make an adjustable ring".
func (p *parser) ring() (Item, *fault.Fault) {
	start := p.i
	p.eat("make", "start", "begin", "form", "create", "with", "work", "using")
	p.eat("with")
	p.eat("a", "an", "the")
	if p.eat("magic", "adjustable", "sliding") && p.eat("ring", "circle", "loop") ||
		p.i == start && p.eat("mr", "mc") && p.tok().kind != tOpen {
		p.eat("method", "technique")
		return &MagicRing{p.from(start)}, nil
	}
	p.i = start
	return nil, nil
}

// counts reads what something counts as: "counts as dc", "does not count as a
// st", "ch 3 counts as first dc here and throughout".
func (p *parser) counts() (Item, *fault.Fault) {
	start := p.i
	// The word count must come within the next few words.
	at, short := -1, false
	for j := 0; j < 14; j++ {
		t := p.at(j)
		if t.is("c") && p.at(j+1).kind == tSlash && p.at(j+2).is("a") {
			at, short = j+2, true // c/a: counts as
			break
		}
		if t.is("counts", "count", "counted", "counting") {
			at = j
			break
		}
		if t.kind == tClose || t.kind == tEnd || t.kind == tStop || t.kind == tSemi || t.kind == tOpen ||
			t.kind == tComma && !p.at(j-1).is("throughout") {
			break
		}
		if t.kind == tWord && !t.is("this", "the", "these", "first", "ch", "chain", "chs", "turning", "beg",
			"beginning", "starting", "here", "and", "throughout", "does", "do", "will", "not", "doesn't",
			"don't", "skipped", "missed", "now", "always", "is", "are", "each", "at", "of", "rnd", "round",
			"row", "in", "start", "rnds", "rows", "pattern", "entire", "for", "to", "initial", "made", "group",
			"together", "joined", "last", "it", "a", "an", "never", "beginning", "st", "every") {
			if w := p.vocab.phrases[t.text]; !w.what.Kind.Is() {
				if _, ok := p.vocab.glued(t.text); !ok {
					break
				}
			}
		}
	}
	if at < 0 {
		return nil, nil
	}
	c := &Counts{}
	for j := 0; j <= at; j++ {
		c.Not = c.Not || p.at(j).is("not", "doesn't", "don't", "never")
		c.Throughout = c.Throughout || p.at(j).is("throughout")
		c.Half = c.Half || p.at(j).is("together")
	}
	p.i += at + 1
	p.eatKind(tColon)
	if !p.eat("as") && !c.Not && !short {
		p.i = start
		return nil, nil
	}
	for p.eat("the", "a", "an", "first", "one", "half", "leg", "of", "part") || p.tok().kind == tNumber && p.tok().value == 1 {
		if p.tok().kind == tNumber {
			p.i++
		}
		c.Half = c.Half || p.at(-1).is("half", "leg", "part")
	}
	if w, ok := p.what(); ok {
		c.As = w.Kind
	} else {
		p.eat("st", "sts", "stitch", "stitches")
	}
	back := p.i
	p.eatKind(tComma)
	p.eatKind(tPlus)
	p.eat("and", "plus")
	if ch, ok := p.chain().(*Chain); ok && c.As.Is() {
		c.Chains = ch.N.For(0)
	} else if t, ok := p.target(); ok && t.Sort == ChainSpace && c.As.Is() {
		c.Chains = max(1, t.Chains)
	} else {
		p.i = back
	}
	for j := p.i; j < len(p.toks); j++ {
		t := &p.toks[j]
		if t.kind == tClose || t.kind == tEnd || t.kind == tStop || t.kind == tSemi {
			break
		}
		c.Throughout = c.Throughout || t.is("throughout")
	}
	for p.eat("here", "and", "throughout", "now", "in", "total", "count", "all", "rnds", "rounds", "rows", "the", "pattern", "through", "out", "on", "from", "for", "st", "this", "rnd", "row", "round") {
	}
	c.Span = p.from(start)
	return c, nil
}

// loops reads "working in back loops only", "in BLO", before a comma or the
// end of the phrase: the loop for the rest of the round.
func (p *parser) loops() (Item, *fault.Fault) {
	start := p.i
	p.eat("work", "working", "worked")
	p.eat("this", "rnd", "round", "row", "all", "sts")
	p.eat("rnd", "round", "row")
	if !p.eat("in", "into", "through") {
		p.i = start
		if into, ok := p.loopWords(); ok && (p.tok().kind == tColon || p.tok().kind == tComma || p.tok().kind == tOpen || p.tok().kind == tStar) {
			return &InLoops{p.from(start), into, 0}, nil
		}
		p.i = start
		return nil, nil
	}
	into, ok := p.loopWords()
	if ok {
		if p.eat("of") {
			p.eat("each", "the", "every", "all")
			p.eat("starting", "foundation", "beginning", "beg")
			p.eat("st", "sts", "stitch", "stitches", "ch", "chs", "chain", "chains")
			at := p.i
			if _, round := roundWord(p.tok()); round {
				p.i++
				if n, ok := p.plainNumber(); ok {
					return &InLoops{p.from(start), into, n}, nil
				}
				p.i = at
			}
		}
		if p.eat("for") || p.eat("throughout") {
			p.rest()
		}
	}
	t := p.tok()
	if !ok || !(t.kind == tComma || t.kind == tColon || t.kind == tStop || t.kind == tSemi || t.kind == tEnd ||
		t.kind == tStar || t.kind == tDash || t.kind == tClose || t.kind == tOpen || t.kind == tNumber ||
		t.is("work", "around", "across") && p.at(1).kind == tComma) {
		p.i = start
		return nil, nil
	}
	p.eat("around", "across")
	if p.work && (t.kind == tStop || t.kind == tEnd) && p.toks[start].is("in") {
		// "sc in BLO." does not say in which stitches.
		return nil, p.failAt(start, "not-understood", "the words do not say which stitches are worked into",
			"Write, for example: sc in back loop only of each st around.")
	}
	return &InLoops{p.from(start), into, 0}, nil
}

// otherSide reads "working along opposite side of chain".
func (p *parser) otherSide() (Item, *fault.Fault) {
	start := p.i
	if p.tok().is("working", "work", "turn", "rotate", "continue", "continuing", "now", "along", "on", "going", "turning", "go") {
		// However it is said: the other side or the underside of the chain,
		// in a phrase without a number.
		side, chain := false, false
		j := 0
		for ; ; j++ {
			t := p.at(j)
			if t.kind != tWord {
				break
			}
			side = side || t.is("underside") || t.is("side", "edge", "loops") && p.at(j-1).is("other", "opposite")
			chain = chain || t.is("ch", "chain", "foundation")
		}
		if k := p.at(j).kind; side && chain && k != tNumber && k != tOrdinal {
			p.i += j
			return &OtherSide{p.from(start)}, nil
		}
	}
	p.eat("rotate", "turn")
	p.eat("to")
	p.eat("now")
	p.eat("work", "working")
	p.eat("back")
	p.eat("along", "on", "in", "into", "across", "down", "around")
	p.eat("the")
	if p.eat("opposite", "other", "underside", "bottom") {
		p.eat("side", "edge", "loops", "loop")
		p.eat("of")
		p.eat("the")
		p.eat("foundation", "starting", "beginning", "beg")
		p.eat("ch", "chain", "chs", "side")
		return &OtherSide{p.from(start)}, nil
	}
	p.i = start
	return nil, nil
}

// colour reads "change to yarn B", "with colour A", "switch to Silt".
func (p *parser) colour() (Item, *fault.Fault) {
	start := p.i
	switch {
	case p.eat("change", "changing", "switch", "switching"):
		p.eat("colour", "color", "yarn", "yarns")
		p.eat("to")
	case p.eat("with", "using"):
	case p.tok().is("in") && p.at(1).is("colour", "color", "yarn"):
		p.i++
	default:
		return nil, nil
	}
	with := p.at(-1).is("with", "using")
	name, ok := p.yarn()
	if t := p.tok(); !ok && with && t.kind == tWord && capital(t.raw) && p.at(1).kind == tComma && !p.stitchy(p.i, p.i+1) &&
		!t.is("rs", "ws") {
		name, ok = t.raw, true
		p.i++
	}
	if !ok && p.at(-1).is("to") {
		// "change to Silt": any name
		at := p.i
		for p.tok().kind == tWord && !p.tok().is("in", "on", "at", "and", "for") {
			p.i++
		}
		if p.i > at {
			name, ok = p.words(at), true
		}
	}
	if !ok {
		p.i = start
		return nil, nil
	}
	for p.eat("in", "on", "at", "for", "last", "next", "the", "rnd", "round", "row", "of", "yo", "st", "end", "this") {
	}
	return &Colour{p.from(start), name}, nil
}

// yarn reads the name of a yarn: "yarn B", "colour A", "MC", "new colour", "B".
func (p *parser) yarn() (string, bool) {
	if p.tok().is("the") || p.tok().is("a") && p.at(1).is("new", "yarn", "colour", "color", "contrasting") {
		p.i++
	}
	if p.eat("mc", "cc") || p.eatAll("main", "colour") || p.eatAll("main", "color") {
		return strings.ToUpper(p.at(-1).raw), true
	}
	p.eat("new", "next", "contrasting", "contrast")
	if p.eat("yarn", "colour", "color", "col") {
		t := p.tok()
		if t.kind == tWord && len([]rune(t.raw)) <= 2 && !t.is("in", "to", "at", "on") || t.kind == tNumber {
			p.i++
			return t.raw, true
		}
		return "new", true
	}
	t := p.tok()
	if t.kind == tWord && len(t.raw) == 1 && strings.ToUpper(t.raw) == t.raw {
		p.i++
		return t.raw, true
	}
	return "", false
}

// marker reads "place marker in last st made", "pm".
func (p *parser) marker() (Item, *fault.Fault) {
	start := p.i
	switch {
	case p.eat("pm"):
	case p.tok().is("place", "placing", "move", "moving", "put", "remove", "removing") &&
		(p.at(1).is("marker", "markers", "pm", "m") || p.at(2).is("marker", "markers")):
	default:
		return nil, nil
	}
	for p.tok().kind != tEnd && p.tok().kind != tStop && p.tok().kind != tComma && p.tok().kind != tSemi &&
		p.tok().kind != tClose {
		p.i++
	}
	return &Marker{p.from(start), p.words(start)}, nil
}
