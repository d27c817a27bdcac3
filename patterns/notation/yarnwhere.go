package notation

// yarnWhere passes over where a yarn is changed: "in last st", "at the end of Row 4", "on the
// last yarn over of the last dc", "as you finish the round".
func (p *parser) yarnWhere() {
	start := p.i
	if p.tok().is("to") && p.at(1).is("join") {
		return // "pick up A to join": the round is joined
	}
	if p.eat("in", "on", "at", "for", "during", "while", "when", "as", "to", "upon") || p.stageAhead() {
		for last := false; ; {
			if p.eat("last", "final", "closing", "the", "each", "every", "this", "that") {
				last = true
				continue
			}
			if _, ok := roundWord(p.tok()); ok {
				p.i++
				p.num() // "at end of Row 4"
				continue
			}
			if p.eat("in", "on", "at", "during", "you", "it", "of", "end", "start", "beginning", "st", "sts", "stitch", "stitches", "yo", "yoh", "yrh", "loop", "loops", "lp", "step",
				"stage", "part", "pull", "through", "draw", "wrap", "finish", "finishing", "complete", "completing", "work", "working", "make", "making", "join", "joining", "slip") ||
				p.eatAll("yarn", "over") || p.eatAll("yarn", "round", "hook") || p.eatAll("sl", "st") {
				continue
			}
			if _, ok := p.what(); ok && last {
				continue
			}
			break
		}
		if p.ended() || p.tok().first {
			return
		}
	}
	p.i = start
	for p.eat("in", "on", "at", "for", "last", "next", "the", "rnd", "round", "row", "rnds", "rows", "of", "yo", "st", "end", "this", "each", "every", "final") {
		if _, ok := roundWord(p.at(-1)); ok {
			p.num()
		}
	}
}

// stageAhead reads "before", "after", "with" or "by" where they say at which stage of a stitch the yarn is changed: "before the last yarn over", "with the last
// pull through".
func (p *parser) stageAhead() bool {
	for n := 1; n < 5 && p.tok().is("before", "after", "with", "by") && p.at(n).kind == tWord; n++ {
		if p.at(n).is("last", "final", "completing", "finishing", "working", "joining", "making") {
			p.i++
			return true
		}
	}
	return false
}

// completesWith reads "complete last sc with B", "finishing the last stitch in yarn B": the yarn
// that the work goes on with.
func (p *parser) completesWith() (string, bool) {
	start := p.i
	no := func() (string, bool) { p.i = start; return "", false }
	if !p.eat("complete", "completing", "finish", "finishing", "close", "closing") {
		return no()
	}
	p.eat("off")
	p.eat("the", "this")
	p.eat("last", "final")
	p.eat("yo", "yarn", "pull", "loop")
	p.eat("of", "over", "through")
	p.eat("the")
	p.eat("last", "final")
	if !p.eat("st", "stitch") {
		if w, ok := p.what(); !ok || !w.Kind.Is() {
			return no()
		}
	}
	if !p.eat("with", "in", "using") {
		return no()
	}
	name, ok := p.yarn()
	if !ok {
		name, ok = p.yarnName()
	}
	if !ok || !p.ended() && !p.tok().first {
		return no()
	}
	return name, true
}

// stripeWords are words with which it is told which rows are in which yarn.
var stripeWords = []string{"of", "in", "with", "each", "every", "and", "then", "turn", "alternately", "alternating", "alternate", "throughout", "sequence", "order",
	"as", "follows", "set", "before", "ending", "end", "beginning", "finishing", "starting", "odd", "even", "odd-numbered", "numbered", "back", "to", "after", "change", "changing",
	"switch", "switching", "using", "working", "first", "last", "other", "second", "same", "following", "repeat", "repeated", "a", "the", "this", "pattern", "keeping", "wide", "thick", "again", "always"}

// stripeTalk reads in which yarn rows are that are worked again, where nothing else is said:
// "in stripes of 4 rows B, 4 rows A", "working 4 rows of each colour in turn, and ending with 4
// rows of A", "switching to B after Row 6 and back to A after Row 8". Which yarn it is, is left to
// the reader, so how many rows there are must be told in the label.
func (p *parser) stripeTalk() bool {
	start := p.i
	yarn, rows := false, false
	one := func() bool {
		at := p.i
		if _, round := roundWord(p.tok()); round && !p.tok().is("r") {
			p.i++
			rows = true
			return true
		}
		if p.tok().is("for") && (p.at(1).kind == tNumber || numberWords[p.at(1).text] > 0) {
			return false
		}
		if p.eat("colour", "color", "colours", "colors", "shade", "shades", "stripe", "stripes", "striped", "striping") {
			yarn = true
			return true
		}
		if !p.tok().is("a", "first", "last", "same", "other") || capital(p.tok().raw) && len(p.tok().raw) == 1 {
			if _, ok := p.yarn(); ok && p.i > at {
				yarn = true
				return true
			}
			p.i = at
		}
		if p.yarnAt(p.i) && p.tok().kind == tWord && !p.tok().is("a") {
			yarn = true
			p.i++
			return true
		}
		if _, ok := p.num(); ok {
			p.eatKind(tHyphen)
			return true
		}
		if p.eat(stripeWords...) || p.tok().is("for") && p.eat("for") {
			return true
		}
		if t := p.tok(); t.kind == tWord && capital(t.raw) && !t.first && p.vocab.near(t.text) == "" && !p.stitchy(p.i, p.i+1) {
			p.i++
			yarn = true
			return true
		}
		return false
	}
	for {
		if p.tok().first && p.i > start {
			break
		}
		if one() {
			continue
		}
		if k := p.tok().kind; k == tComma || k == tColon || k == tSemi {
			if p.i++; !p.tok().first && one() {
				continue
			}
			p.i--
		}
		break
	}
	for p.i > start && p.at(-1).is("and", "then") {
		p.i--
	}
	if !yarn || !rows || !p.ended() && !p.tok().first {
		p.i = start
		return false
	}
	return true
}

// yarnLast reports whether token i is a yarn that the phrase ends with.
func (p *parser) yarnLast(i int) bool {
	start := p.i
	defer func() { p.i = start }()
	p.i = i
	_, ok := p.yarn()
	return ok && (p.ended() || p.tok().first) && !p.toks[p.i-1].is("round", "ring")
}

// yarnOfRounds reads "in B", "with colour A" behind rounds that are worked again, for so long or
// until so much: the yarn of all of them, which is told as if it stood before them.
func (b *block) yarnOfRounds() bool {
	p := b.p
	start := p.i
	if !b.afterRef() || !p.eat("in", "with", "using") {
		return false
	}
	name, ok := p.yarn()
	if !ok || !p.ended() && !p.tok().first && !p.tok().is("for", "until", "till") || p.stripeAt(p.i+1) {
		p.i = start
		return false
	}
	b.insert(len(b.items)-1, &Colour{p.from(start), name})
	return true
}
