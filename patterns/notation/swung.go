package notation

// swung reads a turn of the work about the starting chain in friendly words: "just swing the work around
// so you are looking at the bottom of the chain", "spin your piece 180 degrees, so that the underside of
// the chain faces you". What follows is worked along the other side of the chain.
func (p *parser) swung() bool {
	start := p.i
	no := func() bool { p.i = start; return false }
	p.eat("just", "simply", "now", "instead")
	if !p.eat("swing", "spin", "swivel", "flip", "rotate", "turn", "pivot", "twist", "swinging", "spinning", "rotating", "turning", "flipping") {
		return no()
	}
	p.eat("the", "your")
	p.eat("work", "piece", "project", "it", "everything", "chain")
	p.eat("clockwise", "anticlockwise", "counterclockwise")
	if p.tok().kind == tNumber && p.tok().value == 180 {
		p.i++
		if p.tok().kind == tOther {
			p.i++
		}
		p.eat("degrees", "deg")
	}
	p.eat("around", "round", "over", "upside", "about")
	p.eat("down")
	comma := p.eatKind(tComma)
	if !p.eat("so", "until", "till") && (comma || !p.eat("and", "to")) {
		return no()
	}
	from := p.i
	under, chain := false, false
	for p.tok().kind == tWord && !p.tok().first && !p.tok().is(deciding...) || p.tok().is("other", "under") {
		if p.tok().is("and", "then") && (p.ends(p.i+1) || p.instructs(p.i+1)) {
			break
		}
		under = under || p.tok().is("bottom", "underside", "underneath") || p.tok().is("side", "edge") && p.at(-1).is("other", "opposite", "lower", "bottom") ||
			p.tok().is("loops", "lps") && p.at(-1).is("free", "unused", "unworked", "bottom", "remaining")
		chain = chain || under && p.tok().is("ch", "chain", "chs", "chains", "foundation")
		p.i++
	}
	end := p.i
	if !chain || p.evident(from, end) || !p.ended() && p.tok().kind != tColon && !p.tok().is("and", "then") {
		return no()
	}
	return true
}
