package notation

// zeros refuses a 0 that stands alone where chains, stitches or places are counted: "ch 0",
// "next ch-0 sp", "sc in next 0 sts". In a list of sizes a 0 is none for that size, and
// repeats may be worked 0 times.
func (p *parser) zeros(r *Round) {
	for i := range p.toks {
		t := &p.toks[i]
		if t.kind != tNumber || t.value != 0 || t.frac != 0 || p.inSizeList(i) {
			continue
		}
		before, next := i-1, i+1
		for before >= 0 && p.toks[before].kind == tHyphen {
			before--
		}
		for next < len(p.toks)-1 && p.toks[next].kind == tHyphen {
			next++
		}
		counts := p.toks[next].is("st", "sts", "stitch", "stitches", "ch", "chs", "chain", "chains", "sp", "sps", "space", "spaces") ||
			before >= 0 && p.toks[before].is("ch", "chain", "next", "first", "last", "skip", "sk", "miss")
		if !counts && p.toks[next].kind == tWord {
			_, counts = p.vocab.lookup(p.toks[next].text)
		}
		space := before >= 0 && p.toks[before].is("ch", "chain")
		if counts && (space || !r.says(t)) {
			p.report(p.failAt(i, "number", "none is to be made or worked into here", "Check the number, or leave the instruction out."))
		}
	}
}

// inSizeList reports whether the number at token i is one of those for the sizes: 0 (2, 2),
// 4 (0, 2), 0/2/2.
func (p *parser) inSizeList(i int) bool {
	number := func(t token) bool {
		return t.kind == tNumber || t.kind == tDash || t.kind == tHyphen || numberWords[t.text] > 0
	}
	if p.toks[i+1].kind == tOpen && i+2 < len(p.toks) && number(p.toks[i+2]) && len(p.sizes) > 1 || p.toks[i+1].kind == tSlash || i > 0 && p.toks[i-1].kind == tSlash {
		return true
	}
	for at := i - 1; at >= 0; at-- {
		switch t := p.toks[at]; {
		case t.kind == tOpen:
			return len(p.sizes) > 1
		case !number(t) && t.kind != tComma && t.kind != tSemi && t.kind != tColon:
			return false
		}
	}
	return false
}

// says reports whether a token stands in a stated count, where a 0 is compared, or in
// advice.
func (r *Round) says(t *token) bool {
	in := func(s Span) bool {
		return t.pos.Line == s.Line && t.pos.Column >= s.Column && t.pos.Column < s.Column+s.Length
	}
	for _, s := range r.Stated {
		if in(s.Span) {
			return true
		}
	}
	for _, it := range r.Items {
		if n, ok := it.(*Note); ok && in(n.Span) {
			return true
		}
	}
	return false
}
