package notation

// ParseNotes reads what running notes say that beginning chains count as: "Ch 2 at
// the beginning of a round does not count as a st". All else in them is prose.
func ParseNotes(lines []Line, v *Vocabulary, sizes []string) (l []*Counts) {
	toks, _ := scan(lines)
	if len(toks) > maxTokens {
		return nil
	}
	p := newParser(toks[:len(toks)-1], v, sizes)
	for p.tok().kind != tEnd {
		start := p.i
		if said := p.chainsSaid(); len(said) > 0 {
			l = append(l, said...)
		} else if c := p.chainCounts(); c != nil {
			l = append(l, c)
			p.eatKind(tComma)
			if p.eat("and", "while", "but"); p.tok().is("the", "a", "all", "each", "every", "ch", "chain", "beg", "beginning", "turning") || p.tok().kind == tNumber {
				continue // "3 ch counts as 1 tr, and 4 ch as 1 tr and 1 ch"
			}
		}
		for k := p.tok().kind; k != tEnd && k != tStop && k != tSemi && !(p.i > start && p.tok().first); k = p.tok().kind {
			p.i++
		}
		for p.eatKind(tStop) || p.eatKind(tSemi) {
		}
	}
	return l
}

// chainCounts reads "Each beg ch 3 counts as dc" at the beginning of a sentence, nil for
// other words.
func (p *parser) chainCounts() *Counts {
	start := p.i
	for p.eat("the", "a", "all", "each", "every", "note", "notes") || p.eatKind(tColon) {
	}
	at := p.i
	it, f := p.counts()
	c, ok := it.(*Counts)
	chain := false
	for j := at; j < p.i; j++ {
		chain = chain || p.toks[j].is("ch", "chain", "chs", "chains", "tch")
	}
	if ok && f == nil && chain && (c.Not || c.As.Is()) && !c.Half {
		c.Throughout = true
		return c
	}
	p.i = start
	return nil
}

// chainsSaid reads a sentence that says once what the chains count as that rounds begin
// with: "Neither the ch 1 nor the ch 3 at the start of a round counts as a stitch", "Do
// not count beginning chains", "Each round begins with a ch 2, which counts as a dc",
// "Stitch counts do not include the turning chain". It is empty for other words, and for
// chains of some rounds only.
func (p *parser) chainsSaid() (l []*Counts) {
	start := p.i
	for p.eatKind(tOpen) || p.eatKind(tComma) || p.eatKind(tColon) || p.eatKind(tDash) || p.eat("please", "note", "notes", "nb", "n", "b", "important", "remember", "that", "in", "this",
		"pattern", "throughout", "whole", "entire", "unless", "otherwise", "stated", "noted", "specified", "indicated", "also", "always", "here", "design", "piece", "project") {
	}
	for len(l) < 8 {
		at := p.i
		if len(l) > 0 {
			p.eatKind(tComma)
			p.eatKind(tSemi)
			p.eat("and", "but", "while", "whereas")
		}
		said := p.oneSaid(l)
		if len(said) == 0 || len(l) > 0 && p.i == at {
			p.i = at
			break
		}
		l = append(l, said...)
	}
	if at := p.i; len(l) > 0 {
		if p.i = start; p.ofSomeRounds(at) {
			return nil
		}
		p.i = at
	}
	if len(l) == 0 {
		p.i = start
	}
	for _, c := range l {
		c.Span, c.Throughout, c.Alone = p.from(start), true, true
	}
	return l
}

// chainsSaid reads such a sentence among the words of a part.
func (b *block) chainsSaid() bool {
	p := b.p
	if p.depth > 1 {
		return false
	}
	start := p.i
	l := p.chainsSaid()
	if k := p.tok().kind; len(l) == 0 || k != tStop && k != tEnd && k != tSemi && !p.tok().first {
		p.i = start
		return false
	}
	for _, c := range l {
		b.add(c)
	}
	return true
}

// ofSomeRounds reports whether the sentence, whose first words up to token at have been
// read, names rounds by number: what it says holds for these only.
func (p *parser) ofSomeRounds(at int) bool {
	end := p.sentenceEnd()
	for j := p.i; j < end; j++ {
		if j > at && p.toks[j].first {
			break
		}
		if _, round := roundWord(&p.toks[j]); round && p.toks[j+1].kind == tNumber {
			return true
		}
	}
	return false
}

// oneSaid reads one such clause behind others that have been read.
func (p *parser) oneSaid(before []*Counts) []*Counts {
	start := p.i
	not := false
	switch {
	case p.roundsBegin():
		// "Each round begins with a ch 3 that does not count as a st"
		l := p.chainsNamed()
		open := p.eatKind(tComma) || p.eatKind(tOpen)
		if p.eat("which", "that", "this", "these", "and"); len(l) > 0 && (open || p.i > start) {
			p.eat("it", "this")
			if p.countsAs(l, false) {
				return l
			}
		}
	case p.countVerb(&not):
		// "Do not count the ch 3 as a stitch"
		if l := p.chainsNamed(); len(l) > 0 {
			if not {
				p.restOfClause()
				return said(l, Counts{Not: true})
			}
			if p.eat("as") && p.standsInFor(l) {
				return l
			}
		}
	case p.stitchCount(&not):
		// "The stitch count at the end of each round does not include the ch 3"
		if l := p.chainsNamed(); len(l) > 0 {
			p.restOfClause()
			return said(l, Counts{Not: not})
		}
	default:
		neither := p.eat("neither")
		p.eat("both", "either")
		l := p.chainsNamed()
		if len(l) > 0 && (p.countsAs(l, neither) || len(before) > 0 && p.eat("as") && p.standsInFor(l)) {
			return l
		}
	}
	p.i = start
	return nil
}

// said gives chains what is said of them.
func said(l []*Counts, c Counts) []*Counts {
	for _, one := range l {
		of := one.Of
		*one = c
		one.Of = of
	}
	return l
}

// roundsBegin reads "each round begins with", "start every row with".
func (p *parser) roundsBegin() bool {
	start, h := p.i, &habit{}
	if h.every(p) && p.eat("begins", "begin", "starts", "start") && p.eat("with", "by") {
		return true
	}
	if p.i = start; p.eat("begin", "start") && h.every(p) && p.eat("with", "by") {
		return true
	}
	p.i = start
	return false
}

// countVerb reads "do not count", "I never count", "count" before chains, and whether it
// says that they do not.
func (p *parser) countVerb(not *bool) bool {
	start := p.i
	p.eat("i", "we", "you", "please", "always")
	if p.eat("do", "should", "will") {
		*not = p.eat("not")
	} else {
		*not = p.eat("don't", "never")
	}
	if p.eat("count", "include", "treat", "regard", "consider") {
		return true
	}
	p.i, *not = start, false
	return false
}

// stitchCount reads "Stitch counts do not include", "the count at the end of each row
// includes", and whether it says that they do not.
func (p *parser) stitchCount(not *bool) bool {
	start := p.i
	p.eat("the", "all", "my", "final", "given")
	if p.eat("st", "sts", "stitch", "stitches"); p.eat("count", "counts", "total", "totals", "numbers") {
		for n := 0; n < 10 && p.tok().is("given", "stated", "at", "the", "end", "of", "each", "every", "a", "in", "brackets", "parentheses", "rnd", "rnds", "round", "rounds", "row", "rows", "for", "all"); n++ {
			p.i++
		}
		if p.eat("do", "does", "will") {
			*not = p.eat("not", "never")
		} else {
			*not = p.eat("don't", "doesn't", "never")
		}
		if p.eat("include", "includes", "count", "counts") {
			return true
		}
	}
	p.i, *not = start, false
	return false
}

// chainsNamed reads the chains that rounds begin with: "the ch 1 or ch 3 at the start of a
// round", "beginning chains". There is one entry for each number, which is 0 where none
// is told, and none for other chains.
func (p *parser) chainsNamed() (l []*Counts) {
	start := p.i
	begins := false
	for {
		n, first, ok := p.chainNamed()
		if !ok {
			p.i = start
			return nil
		}
		begins = begins || first
		l = append(l, &Counts{Of: n})
		at := p.i
		p.eatKind(tComma)
		p.eatKind(tSlash)
		if p.eat("or", "and", "nor"); p.i > at {
			p.eat("neither", "nor")
			next := p.i
			if _, _, ok := p.chainNamed(); ok {
				p.i = next
				continue
			}
		}
		p.i = at
		break
	}
	begins = p.whereRoundsBegin() || begins
	for _, c := range l {
		if c.Of == 0 && !begins {
			p.i = start
			return nil
		}
	}
	return l
}

// chainNamed reads one of them, the number of its chains and whether it is said to be one
// at the beginning.
func (p *parser) chainNamed() (n int, begins, ok bool) {
	start := p.i
	for p.eat("the", "a", "an", "all", "any", "each", "every", "your", "these", "this", "that", "of", "first", "initial", "opening", "beg", "beginning", "starting", "start", "turning", "t") || p.eatKind(tHyphen) {
		begins = begins || p.at(-1).is("initial", "opening", "beg", "beginning", "starting", "start", "turning", "t")
	}
	if n, ok = p.plainNumber(); ok {
		p.eatKind(tHyphen)
		begins = p.eat("beg", "beginning", "starting", "turning") || begins
	}
	if p.eat("tch") {
		return n, true, true
	}
	if !p.eat("ch", "chain", "chs", "chains") || p.spaceWord() {
		p.i = start
		return 0, false, false
	}
	if !ok {
		at := p.i
		_ = p.eatKind(tHyphen) || p.eat("of") // "turning chain of 3"
		if n, ok = p.plainNumber(); !ok {
			p.i = at
		} else if p.spaceWord() {
			p.i = start
			return 0, false, false
		}
	}
	p.eat("st", "sts", "stitch", "stitches")
	return n, begins, true
}

// whereRoundsBegin reads "at the start of each round", "that begins a row", "worked at the
// beginning of rows", "of every round".
func (p *parser) whereRoundsBegin() bool {
	start := p.i
	p.eat("made", "worked", "used")
	if p.eat("that", "which", "to") && p.eat("begins", "begin", "starts", "start") ||
		p.eat("at", "in", "on") && (p.eat("the") || true) && p.eat("start", "beg", "beginning") && (p.eat("of") || true) || p.eat("of", "on", "in") {
		for p.eat("the", "a", "an", "all", "any", "each", "every", "your", "some", "these", "most", "new") {
		}
		if _, round := roundWord(p.tok()); round {
			p.i++
			return true
		}
	}
	p.i = start
	return false
}

// countsAs reads "does not count as a stitch", "is always your first dc", "replaces the
// first tr" behind chains.
func (p *parser) countsAs(l []*Counts, not bool) bool {
	start := p.i
	is := p.eatKind(tEqual)
	for {
		switch {
		case p.eat("not", "doesn't", "don't", "isn't", "aren't", "never", "cannot", "won't"):
			not = true
			is = is || p.at(-1).is("isn't", "aren't")
		case p.eat("is", "are", "be"):
			is = true
		case p.eat("do", "does", "will", "should", "always", "also", "usually", "to", "only"):
		default:
			counted := p.eat("count", "counts", "counted", "counting", "considered", "regarded", "treated", "taken", "included", "part")
			stands := !counted && (p.eat("replaces", "replace", "represents", "represent", "equals", "equal", "makes", "forms") ||
				p.eat("stands", "stand", "standing", "substitutes", "substitute") && p.eat("in", "for", "as") && (p.eat("for") || true) ||
				p.eat("takes", "take") && p.eatAll("the", "place", "of") || p.eat("serves", "acts", "serve", "act", "used") && p.eat("as"))
			switch {
			case not && (counted || is && !stands && p.aStitch()):
				p.restOfClause()
				said(l, Counts{Not: true})
				return true
			case not || !counted && !stands && !is:
				p.i = start
				return false
			case counted && p.at(-1).is("included", "part"):
				p.restOfClause()
				said(l, Counts{})
				return true
			}
			if counted {
				p.eat("to", "be", "as")
				p.eat("be")
			}
			if p.standsInFor(l) {
				return true
			}
			p.i = start
			return false
		}
	}
}

// aStitch reads "a stitch", "your first dc", "any stitch".
func (p *parser) aStitch() bool {
	p.eat("a", "an", "the", "your", "any", "counted", "included")
	p.eat("first")
	if p.eat("st", "sts", "stitch", "stitches") {
		return true
	}
	_, ok := p.what()
	return ok
}

// standsInFor reads "your first dc", "1 tr", "a stitch": what chains stand for.
func (p *parser) standsInFor(l []*Counts) bool {
	at := p.i
	p.eat("your", "each", "every", "one")
	c := p.countedAs(&Counts{})
	if p.i == at || c.Half || c.Space || !c.As.Is() && !p.at(-1).is("st", "sts", "stitch", "stitches") {
		p.i = at
		return false
	}
	for p.eat("of", "the", "a", "each", "every", "round", "rnd", "row", "here", "and", "throughout", "always", "in", "pattern", "stitch", "count", "this", "rounds", "rows") {
		if p.at(-1).is("and") && !p.tok().is("throughout") {
			p.i--
			break
		}
	}
	said(l, *c)
	return true
}

// restOfClause passes over what is left of a clause: "towards the stitch count, unless
// otherwise stated".
func (p *parser) restOfClause() {
	for k := p.tok().kind; k != tEnd && k != tStop && k != tSemi && k != tClose && k != tOpen && k != tComma && !(p.tok().is("and", "but", "while", "whereas") && !p.at(1).is("throughout")); k = p.tok().kind {
		p.i++
	}
}
