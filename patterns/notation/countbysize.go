package notation

// countBySize reads a count that is told for each size by its name up to token close, "S: 56, M: 60, L: 64", "S:
// 14 puffs and 42 sc; M: 15 puffs and 45 sc", "56 sts for S, 60 sts for M". It is nil for any other.
func (p *parser) countBySize(close int) *Stated {
	start, faults := p.i, len(p.faults)
	no := func() *Stated { p.i, p.faults = start, p.faults[:faults]; return nil }
	if len(p.sizes) < 2 {
		return nil
	}
	told := map[string]*Stated{}
	if p.sizeEntry(p.i, close) < 0 && !p.countsBeforeSizes(told, close) {
		return no()
	}
	for p.i < close {
		colon := p.sizeEntry(p.i, close)
		var of Label
		if colon < 0 || !p.sizesSaid(&of, p.i, colon) {
			return no()
		}
		end := close
		for j := colon + 1; j < close && end == close; j++ {
			if k := p.toks[j].kind; (k == tComma || k == tSemi || k == tSlash || k == tStop) && p.sizeEntry(j+1, close) > 0 {
				end = j
			}
		}
		p.i = colon + 1
		s := p.countList()
		if s == nil || p.i != end {
			return no()
		}
		for _, size := range of.Only {
			if told[size] != nil {
				return no()
			}
			told[size] = s
		}
		p.i = end
		if p.i < close {
			p.i++
		}
	}
	sizes := p.sizes
	if len(told) < len(sizes) {
		sizes = p.forSizes
	}
	if len(told) != len(sizes) || len(sizes) == 0 {
		return no()
	}
	var all *Stated
	for i, size := range sizes {
		s := told[size]
		if s == nil {
			return no()
		}
		if i == 0 {
			all = &Stated{Counts: append([]StatedCount(nil), s.Counts...)}
			for k := range all.Counts {
				all.Counts[k].N = Num{Span: Span{p.toks[start].pos, p.from(start).Length}}
			}
		}
		if len(s.Counts) != len(all.Counts) {
			return no()
		}
		for k, c := range s.Counts {
			if t := &all.Counts[k].Target; c.Target.Sort != t.Sort || c.Target.Kind != t.Kind || c.Target.Name != t.Name || c.Target.Chains != t.Chains || len(c.N.Values) != 1 {
				return no()
			}
			all.Counts[k].N.Values = append(all.Counts[k].N.Values, c.N.Values[0])
		}
	}
	if len(sizes) < len(p.sizes) {
		for k := range all.Counts {
			all.Counts[k].N.Values = p.spread(all.Counts[k].N.Values)
		}
	}
	all.Span = p.from(start)
	return all
}

// countsBeforeSizes reads "56 S, 60 M and 64 L", "56 sts for S, 60 sts for M", with one number for each size.
func (p *parser) countsBeforeSizes(told map[string]*Stated, close int) bool {
	for p.i < close {
		n, ok := p.plainNumber()
		if !ok {
			return false
		}
		c := StatedCount{N: Num{Span: p.from(p.i - 1), Values: []int{n}}}
		at := p.i
		if t, ok := p.target(); ok && (p.tok().is("for", "in") || p.tok().kind == tOpen) {
			c.Target = t
		} else {
			p.i = at
		}
		if !p.eat("for", "in") && c.Target.Text != "" && p.tok().kind != tOpen {
			return false
		}
		open := p.eatKind(tOpen)
		p.eat("size")
		from := p.i
		for p.i < close && (p.tok().kind == tWord || p.tok().kind == tNumber || p.tok().kind == tHyphen) && !p.tok().is("and") {
			p.i++
		}
		sizes := p.exactSizes(p.words(from))
		if from == p.i || len(sizes) != 1 || told[sizes[0]] != nil {
			return false
		}
		told[sizes[0]] = &Stated{Counts: []StatedCount{c}}
		if open && !p.eatKind(tClose) {
			return false
		}
		if p.eatKind(tComma) || p.eatKind(tSemi) || p.eatKind(tSlash) {
			p.eat("and")
		} else if !p.eat("and") && p.i < close {
			return false
		}
	}
	return len(told) > 1
}

// sizeEntry is the token of the colon behind the name of a size at token i, -1 for none.
func (p *parser) sizeEntry(i, close int) int {
	for j := i; j < close && j < i+6; j++ {
		switch k := p.toks[j].kind; {
		case j > i && (k == tColon || k == tEqual || k == tDash):
			return j
		case k != tWord && k != tNumber && k != tHyphen:
			return -1
		}
	}
	return -1
}
