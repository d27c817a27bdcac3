package notation

import "slices"

// eachSizesRange reads the rounds of every size with its name beside them, behind the first of them:
// "R17-R26 (0-3m), R17-R28 (3-6m), R17-R30 (6-12m)", "Rnds 9-12 for S, 9-14 for M and L", "R17-R26 / R17-R28
// / R17-R30", where the sizes are in their order. The label is for the sizes that are named.
func (p *parser) eachSizesRange(l *Label, r *Range) bool {
	if len(p.sizes) < 2 || len(l.Numbers) > 0 || len(r.From.Values) > 1 || len(r.To.Values) > 1 || r.ToEnd {
		return false
	}
	start := p.i
	no := func() bool { p.i = start; return false }
	from, to := make([]int, len(p.sizes)), make([]int, len(p.sizes))
	first, last := r.From.Values[0], r.To.Values[0]
	named, entries := p.tok().kind != tSlash, 0
	for ; ; entries++ {
		at := []int{entries}
		if named {
			if at = p.besideSizes(); at == nil {
				return no()
			}
		}
		for _, i := range at {
			if i >= len(p.sizes) || from[i] > 0 {
				return no()
			}
			from[i], to[i] = first, last
		}
		back := p.i
		separated := p.eatKind(tSlash) || named && (p.eatKind(tComma) || p.eatKind(tSemi))
		separated = named && p.eat("and", "or") || separated
		var ok bool
		if first, last, ok = p.firstAndLast(); !separated || !ok {
			p.i = back
			break
		}
		if first == last && first > r.From.Values[0] && r.To.Values[0] > r.From.Values[0] {
			first = r.From.Values[0] // "Rnds 2-3 (S), 4 (M), 5 (L)"
		}
	}
	if entries == 0 || !named && entries+1 != len(p.sizes) {
		return no()
	}
	switch p.tok().kind {
	case tColon, tStop, tDash, tEqual:
	default:
		return no()
	}
	var only []string
	for i, s := range p.sizes {
		if from[i] > 0 {
			only = append(only, s)
		}
	}
	if len(only) < len(p.sizes) {
		l.Only, p.forSizes = only, only
	}
	r.From.Values, r.To.Values = from, to
	return true
}

// eachSizesFirst reads the rounds of every size with its name before them: "S: R4-R5. M: R4-R6. L: R4-R7.",
// "Small: Rnds 4-5; Medium and Large: Rnds 4-7:".
func (p *parser) eachSizesFirst(l *Label) bool {
	start := p.i
	no := func() bool { p.i = start; return false }
	from, to := make([]int, len(p.sizes)), make([]int, len(p.sizes))
	entries := 0
	for ; ; entries++ {
		at := p.i
		for k := p.tok(); (k.kind == tWord || k.kind == tComma || k.kind == tHyphen || k.kind == tNumber) && (p.i == start || !k.first) && p.i-at < 9; k = p.tok() {
			p.i++
		}
		var of Label
		colon := p.i
		row, round := roundWord(p.at(1))
		if p.tok().kind != tColon || !round && entries == 0 || !p.sizesSaid(&of, at, colon) {
			p.i = at
			break
		}
		p.i++
		first, last, ok := p.firstAndLast()
		if !ok {
			return no()
		}
		for i, s := range p.sizes {
			if slices.Contains(of.Only, s) && from[i] > 0 {
				return no()
			} else if slices.Contains(of.Only, s) {
				from[i], to[i] = first, last
			}
		}
		l.Row = l.Row || row
		l.Only = append(l.Only, of.Only...)
		if !p.eatKind(tComma) && !p.eatKind(tSemi) && !p.eatKind(tStop) && !p.eatKind(tSlash) && !p.eatKind(tColon) && !p.eatKind(tDash) {
			return no()
		}
		p.eat("and")
	}
	if entries < 2 || p.tok().first || p.tok().kind == tEnd {
		l.Only, l.Row = nil, false
		return no()
	}
	if len(l.Only) == len(p.sizes) {
		l.Only = nil
	}
	span := p.from(start)
	l.Numbers = []Range{{From: Num{Span: span, Values: from}, To: Num{Span: span, Values: to}}}
	return true
}

// firstAndLast reads "R17 - R28", "17 to 28", "Rnd 17".
func (p *parser) firstAndLast() (first, last int, ok bool) {
	number := func() (int, bool) {
		if _, round := roundWord(p.tok()); round {
			p.i++
		}
		if p.tok().kind != tNumber {
			return 0, false
		}
		return p.plainNumber()
	}
	if first, ok = number(); !ok {
		return 0, 0, false
	}
	at := p.i
	if p.eatKind(tHyphen) || p.eatKind(tDash) || p.eat("to", "through", "thru") {
		if last, ok = number(); ok {
			return first, last, last >= first
		}
		p.i = at
	}
	return first, first, true
}

// besideSizes reads the sizes that stand beside the numbers of rounds, "(3-6m)", "(M and L)", "for size S":
// their places in the order of sizes, nil for anything else.
func (p *parser) besideSizes() (at []int) {
	start := p.i
	end := p.matching(p.i)
	bracket := p.tok().kind == tOpen
	if !bracket {
		if !p.eat("for", "in") {
			return nil
		}
		end = p.i
		for k := &p.toks[end]; k.kind == tWord && !k.first && !k.is("or") && end-p.i < 8 || end == p.i && k.kind == tNumber || k.kind == tHyphen ||
			k.kind == tNumber && p.toks[end-1].kind != tComma && !p.toks[end-1].is("and"); k = &p.toks[end] {
			if _, round := roundWord(k); round {
				break
			}
			end++
		}
		if end > p.i && p.toks[end-1].is("and") {
			end--
		}
		start = p.i - 1
	} else if p.i++; end < 0 {
		p.i = start
		return nil
	}
	var l Label
	if !p.sizesSaid(&l, p.i, end) {
		p.i = start
		return nil
	}
	for i, s := range p.sizes {
		for _, o := range l.Only {
			if o == s {
				at = append(at, i)
			}
		}
	}
	if p.i = end; bracket {
		p.i++
	}
	return at
}
