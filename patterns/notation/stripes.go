package notation

// stripes reads ", working 4 rows in A, 2 rows in B and 2 rows in C throughout" behind rows
// that are worked again: in which yarn is kept as a note.
func (p *parser) stripes() bool {
	start := p.i
	if p.eat("working", "keeping", "in", "alternating", "striping", "repeating", "with", "ending", "finishing", "work", "alternate"); p.i == start {
		return false
	} else if p.at(-1).is("ending", "finishing") && !p.eat("with", "on") {
		p.i = start
		return false
	}
	p.inStripesOf()
	n := 0
	for {
		if n > 0 && p.lastStripe() {
			n++
			break
		}
		if _, ok := p.num(); !ok {
			break
		}
		at := p.i - 1
		p.eat("more")
		if _, ok := roundWord(p.tok()); !ok {
			p.i = at // "5 more times"
			break
		}
		p.i++
		p.eat("each")
		p.eat("in", "with", "of", "each")
		p.eat("of")
		if _, ok := p.yarn(); !ok {
			if _, ok := p.yarnName(); !ok && (p.tok().kind != tWord || !capital(p.tok().raw)) {
				break
			} else if !ok {
				p.i++
			}
		}
		n++
		for p.eatKind(tComma) || p.eat("and", "then", "with", "throughout", "alternately") || p.stripesEnd() {
			if p.tok().kind == tWord && len(p.tok().raw) == 1 && capital(p.tok().raw) {
				p.i++ // "2 rows each in A, B and C"
			}
		}
	}
	if p.eat("throughout", "alternately", "in", "as") && p.at(-1).is("in", "as") {
		p.eat("sequence", "turn", "before", "set")
	}
	// "Work 4 rows in A" are rows of their own where they are not all.
	if n == 0 || !p.ended() && !p.soLongAhead() || p.toks[start].is("work") && !(n > 1 && p.at(-1).is("throughout", "alternately", "turn", "sequence")) {
		p.i = start
		return false
	}
	return true
}

// inStripesOf reads "stripes of", "the following stripe sequence:" before the stripes.
func (p *parser) inStripesOf() {
	start := p.i
	p.eat("in")
	p.eat("the")
	p.eat("same", "following")
	if p.eat("stripes") || p.eat("stripe", "striping", "colour", "color") && p.eat("sequence", "pattern", "order", "repeat") {
		if p.eat("of"); p.eatKind(tColon) || p.at(-1).is("of") {
			return
		}
	}
	p.i = start
}

// stripesEnd passes over "ending with" before the stripe that comes last.
func (p *parser) stripesEnd() bool {
	start := p.i
	if _, round := roundWord(p.at(2)); !round && p.eat("ending", "finishing", "end", "finish") && p.eat("with", "on", "in") {
		return true
	}
	p.i = start
	return false
}

// lastStripe reads "an A stripe", "a stripe of A", "A" behind "ending with".
func (p *parser) lastStripe() bool {
	start := p.i
	if p.at(-1).is("with", "on", "in") && p.at(-2).is("ending", "finishing", "end", "finish") {
		p.eat("a", "an", "one")
		told := p.eat("stripe") && p.eat("of", "in")
		if _, ok := p.yarn(); !ok {
			if _, ok = p.yarnName(); !ok && p.tok().kind == tWord && len(p.tok().raw) == 1 && capital(p.tok().raw) {
				p.i++
			} else if !ok {
				p.i = start
				return false
			}
		}
		if p.eat("stripe"); p.ended() || told {
			return true
		}
	}
	p.i = start
	return false
}

// coloursInTurn reads "changing colour every 2 rows", "keeping to the stripe sequence as
// set", "following the colour order A, B, C": which yarn it is, is left to the reader. For
// how long, which may stand behind it without a comma, is not part of it.
func (p *parser) coloursInTurn() bool {
	start := p.i
	if p.eat("in", "keeping", "keep", "maintaining", "maintain", "following", "follow", "continuing", "continue", "cont", "working", "with", "using") {
		p.eat("to", "in", "with", "up")
		p.eat("the", "your", "this", "same")
		p.eat("same")
		told := p.eat("colour", "color", "stripe", "striping", "yarn", "colours", "colors")
		p.eat("change", "changes")
		if !told || !p.eat("sequence", "order", "pattern", "patt", "repeat", "scheme") && !p.at(-1).is("changes") {
			p.i = start
			return false
		}
	} else if !p.eat("changing", "alternating", "change", "alternate", "switching", "rotating") ||
		!p.eat("colour", "color", "colours", "colors", "yarn", "yarns", "shade", "shades") ||
		!p.tok().is("every", "each", "as", "after", "on", "in", "for", "throughout", "following") && !(p.tok().is("at") && p.at(2).is("end", "start", "beginning")) {
		p.i = start
		return false
	}
	if p.at(-1).is("yarn") && p.tok().is("in", "on", "for") {
		p.i = start // "change yarn in last st"
		return false
	}
	for {
		end := p.phraseEnd()
		for p.i < end && !p.soLongAhead() {
			p.i++
		}
		if p.i < end || p.tok().kind != tComma || !p.stripeAt(p.i+1) {
			break
		}
		p.i++
	}
	return true
}

// yarnWhenNeeded reads "joining a new ball where needed", "change colour when necessary".
func (p *parser) yarnWhenNeeded() bool {
	start := p.i
	if p.eat("join", "joining", "add", "adding", "attach", "attaching", "change", "changing", "changes", "begin", "start", "starting") {
		p.eat("to", "on", "in", "with")
		p.eat("a", "the", "another")
		p.eat("new", "next", "fresh", "second")
		if p.eat("yarn", "yarns", "ball", "balls", "skein", "skeins", "colour", "color", "colours", "colors", "strand") && (!p.eat("of") || p.eat("yarn")) &&
			p.eat("as", "when", "where", "whenever", "wherever", "if") && p.eat("needed", "required", "necessary", "desired", "wanted", "wished", "liked") {
			end := p.phraseEnd()
			for p.i < end && !p.tok().is("until", "till") {
				p.i++ // "at a row end"
			}
			return true
		}
	}
	p.i = start
	return false
}

// forSoLong reports whether "for 12 more rows", "for a total of 40 rows" comes next.
func (p *parser) forSoLong() bool {
	start := p.i
	defer func() { p.i = start }()
	p.i++
	u, _ := p.rowsTold(start)
	return u != nil
}

// stripeAt reports whether token i goes on with a list of yarns: "B", "and C", "2 rows B".
func (p *parser) stripeAt(i int) bool {
	start := p.i
	defer func() { p.i = start }()
	p.i = i
	p.eat("and", "then")
	if _, ok := p.num(); ok {
		if _, round := roundWord(p.tok()); !round {
			return false
		}
		p.i++
		p.eat("of", "in", "with")
	}
	return p.yarnAt(p.i)
}
