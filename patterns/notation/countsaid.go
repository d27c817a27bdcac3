package notation

// saidAgain passes over what a count ends with that says no more than that it is so: "Eleven
// V-stitches again", "18 sc once more", "24 tr as before", "30 sc in this row".
func (p *parser) saidAgain() {
	for !p.tok().first {
		start := p.i
		switch {
		case p.eat("again", "altogether", "now", "only", "exactly", "complete", "completed"):
		case p.eat("once") && p.eat("more", "again"):
		case p.eat("as") && p.eat("before", "previously", "usual"):
		case p.eat("still") && p.eat("remain", "left"):
		case p.eat("in", "on", "to", "for", "across", "around", "round") && p.thisRound():
		default:
			p.i = start
			return
		}
	}
}

// orPerSide reports whether a count goes on with how many of them a side has: ", or 22 on each side",
// "; 4 to a side", "or 22 sc per side". Whether the corners are counted in is not said.
func (p *parser) orPerSide() bool {
	start, faults := p.i, len(p.faults)
	defer func() { p.i, p.faults = start, p.faults[:faults] }()
	if !p.eatKind(tComma) && !p.eatKind(tSemi) && !p.tok().is("or") {
		return false
	}
	p.eat("or", "so", "and")
	p.eatAll("that", "is")
	p.eat("that's")
	if _, ok := p.num(); !ok {
		return false
	}
	if w, ok := p.what(); !ok || !w.Kind.Is() {
		p.target()
	}
	side, _ := p.eachSideOf()
	return side && p.i == p.sentenceEnd()
}

// thisRound reads "the row", "each round", "row" behind "in".
func (p *parser) thisRound() bool {
	p.eat("the", "this", "each", "every", "that", "next")
	if _, round := roundWord(p.tok()); round && !p.tok().first && p.at(1).kind != tNumber {
		p.i++
		return true
	}
	return false
}

// apportioned reads how a count is shared out, ": 21 (23, 25) for each front, 30 for each sleeve
// and 44 for the back", "(14 on each side and 1 at the centre)": each of its numbers is of a
// part, and none of all.
func (p *parser) apportioned() bool {
	start, faults := p.i, len(p.faults)
	no := func() bool { p.i, p.faults = start, p.faults[:faults]; return false }
	open := false
	switch p.tok().kind {
	case tColon, tComma, tDash, tSemi:
		p.i++
	case tOpen:
		p.i++
		open = true
	}
	p.eat("being", "comprising", "consisting", "thus", "namely", "with")
	p.eatAll("made", "up")
	p.eat("of")
	for n := 0; ; n++ {
		if _, ok := p.num(); !ok {
			return no()
		}
		p.target()
		if !p.eat("for", "on", "at", "in", "along", "across", "to") && !p.tok().is("each", "per", "either") {
			return no()
		}
		from := p.i
		p.eat("the")
		part := false
		for p.tok().kind == tWord && !p.tok().first && !p.tok().is("and", "plus") {
			if _, round := roundWord(p.tok()); round || p.tok().is("next", "same", "size", "sizes") || p.stitchy(p.i, p.i+1) && !p.tok().is("each") {
				return no()
			}
			part = part || !p.tok().is("each", "every", "either", "both", "all")
			p.i++
		}
		if p.i == from || !part {
			return no()
		}
		more := false
		for p.eatKind(tComma) || p.eatKind(tSemi) || p.eat("and", "plus") {
			more = true
		}
		if more {
			continue
		}
		if open && !p.eatKind(tClose) || n == 0 && !p.alone(start) {
			return no()
		}
		if k := p.tok().kind; k != tStop && k != tEnd && k != tClose && !p.tok().first {
			return no()
		}
		return true
	}
}

// alone reports whether one number may tell how a count is shared out, behind the token from
// which on it does: in brackets or behind a colon, "59 sts: 14 on each side".
func (p *parser) alone(start int) bool {
	return p.toks[start].kind == tOpen || p.toks[start].kind == tColon
}

// wentToEnd reports whether what was worked last goes as far as the round does, so that a number
// of stitches behind a semicolon is their count: "sc in each ch across; 27 sc".
func (b *block) wentToEnd() bool {
	if len(b.items) == 0 {
		return false
	}
	switch it := b.items[len(b.items)-1].(type) {
	case *Stitches:
		return len(it.Places) > 0 && it.Places[len(it.Places)-1].Pick == Each && it.Places[len(it.Places)-1].Target.Sort != RowEnds
	case *Repeat:
		return it.Extent.Sort == ToEnd
	case *Turn:
		return true
	}
	return false
}
