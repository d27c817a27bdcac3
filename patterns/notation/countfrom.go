package notation

import "whorl/patterns/fault"

// counted reads "count 6 sts to the left of the centre back": the stitches before the one
// that a yarn is joined in.
func (p *parser) counted(start int) (Item, *fault.Fault) {
	p.i++
	p.eat("along", "across", "over", "out", "off", "forward", "round", "around")
	p.eat("the")
	p.eat("next", "first")
	s := &Skip{}
	n, ok := p.num()
	t, isTarget := p.target()
	at := p.i
	if ok && isTarget {
		s.N, s.Target = n, t
		if f := p.origin(s); f != nil {
			return nil, f
		}
		if p.i > at {
			return s, nil
		}
		if p.joinsNext() {
			return nil, p.failAt(at, "not-understood", "cannot work out from where these stitches are counted",
				"Write, for example: count 6 sts from the seam, join yarn in next st.")
		}
	}
	p.i = start
	return nil, nil
}

// joinsNext reports whether the yarn is joined later on the line in the next stitch: what was counted
// before says which that is.
func (p *parser) joinsNext() bool {
	for j := p.i; j < len(p.toks)-1 && !p.toks[j].first; j++ {
		if p.toks[j].is("join", "rejoin", "attach", "reattach") && !p.toks[j-1].is("the", "first", "last") {
			for k := j + 1; k < j+10 && k < len(p.toks)-1; k++ {
				if p.toks[k].is("next", "following") {
					return true
				}
			}
		}
	}
	return false
}

// origin reads from where stitches that are passed over are counted: "after the join at
// centre back", "after the first flap", and what they are left for.
func (p *parser) origin(s *Skip) *fault.Fault {
	p.onPiece()
	p.forWhat()
	if at := p.i; p.eatAll("to", "the", "right", "of") || p.eat("before") && !p.tok().is("next", "first", "last", "each") && p.seamAhead() {
		f := fail(p.from(at), "vague", "these stitches are counted against the way the round is worked, so the words do not say which is the first",
			"Count them the way the round goes: skip next 30 sts, join yarn in next st.")
		p.i = at
		return f
	}
	if s.After = p.afterPiece(); s.After == "" {
		at := p.i
		p.afterJoin()
		s.FromJoin = p.i > at
	}
	p.forWhat()
	return nil
}

// seamAhead reports whether the seam or the join is named next.
func (p *parser) seamAhead() bool {
	for j := p.i; j < p.i+3 && j < len(p.toks); j++ {
		if p.toks[j].is("seam", "join", "joins", "joining") {
			return true
		}
	}
	return false
}

// afterJoin passes over "after the join at centre back", which says from where the
// stitches skipped are counted: from where the round begins.
func (p *parser) afterJoin() {
	start := p.i
	left := p.eatAll("to", "the", "left") || p.eatAll("to", "left") || p.eat("left", "leftwards", "leftward", "out", "along", "around", "on")
	if left && (p.tok().kind == tStop || p.tok().kind == tComma || p.tok().kind == tSemi) {
		return
	}
	if left && p.eat("of") || p.eat("after", "from", "past") {
		p.eat("the", "last", "previous", "your")
		p.eat("back")
		p.eat("centre", "center", "middle")
		p.eat("of")
		p.eat("the")
		p.eat("back")
		if at := p.at(-1); at.is("back") && p.ended() || at.is("back") && p.tok().is(unworkedWords...) {
			return
		}
		if p.eat("join", "joins", "joining", "seam", "beginning", "start") {
			for p.tok().kind == tWord && !p.tok().is("and", "then", "unworked", "free", "for") && !p.ends(p.i) {
				p.i++
			}
			return
		}
	}
	p.i = start
}

// countsFrom reports whether what stitches are counted from is named next: the join, the
// middle of the back, a piece.
func (p *parser) countsFrom() bool {
	start := p.i
	defer func() { p.i = start }()
	if p.afterPiece() != "" {
		return true
	}
	p.afterJoin()
	return p.i > start
}
