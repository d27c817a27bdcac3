package notation

// sizesOfSpace reads the chains that a space has in the sizes behind the first of them: "ch-8 (ch-10) sp",
// "8-ch (10-ch, 12-ch) sp", "ch-8 sp (ch-10 sp)" where the space has been named. Each size has its own.
func (p *parser) sizesOfSpace(named bool) bool {
	start := p.i
	if len(p.sizes) < 2 || p.tok().kind != tOpen && p.tok().kind != tSlash {
		return false
	}
	bracket, n := p.tok().kind == tOpen, 1
	p.i++
	for p.chainsOfSpace(named) {
		if n++; !p.eatKind(tComma) && !p.eatKind(tSlash) && !p.eatKind(tSemi) && !p.eatKind(tColon) {
			break
		}
	}
	if n == len(p.sizes) || n == len(p.forSizes) {
		if (!bracket || p.eatKind(tClose)) && (named || p.spaceWord() || p.tok().is(slung...)) {
			return true
		}
	}
	p.i = start
	return false
}

// chainsOfSpace reads "ch-10" or "10-ch", and "sp" behind it where the space is named for each size.
func (p *parser) chainsOfSpace(named bool) bool {
	if p.eat("ch", "chain") {
		p.eatKind(tHyphen)
		if _, ok := p.plainNumber(); !ok {
			return false
		}
	} else if _, ok := p.plainNumber(); ok {
		if p.eatKind(tHyphen); !p.eat("ch", "chain") {
			return false
		}
	} else {
		return false
	}
	if named {
		p.eatKind(tHyphen)
		return p.eat(spaceWords...)
	}
	return true
}
