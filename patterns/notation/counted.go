package notation

import (
	"slices"
	"strings"

	"whorl/patterns/stitch"
)

// roundsSaid reads "5 rounds" behind a count, which says again how many rounds the
// label names, as a note.
func (p *parser) roundsSaid(b *block) {
	start := p.i
	if p.saysMore(start) {
		p.note(b, start, p.sentenceEnd()) // "88 dc, which is 22 to a side"
		return
	}
	open := p.eatKind(tOpen)
	p.eat("for")
	if _, ok := p.num(); ok {
		if _, ok := roundWord(p.tok()); ok {
			p.i++
			p.eat("total", "in")
			p.eat("total")
			if k := p.tok().kind; open && p.eatKind(tClose) || !open && (k == tStop || k == tEnd || p.tok().first) {
				b.add(&Note{Span: p.from(start), Text: p.words(start)})
				return
			}
		}
	}
	p.i = start
}

// onlyCounted reports whether a count that the sentence ends with comes next: "sc in next 5 (18)",
// "dc in next 11 - 22 dc".
func (p *parser) onlyCounted() bool {
	if t := p.tok(); (t.kind == tDash || t.kind == tHyphen && t.spaced || t.kind == tEqual) && p.at(1).kind == tNumber {
		start, stated := p.i, len(p.stated)
		defer func() { p.i, p.stated = start, p.stated[:stated] }()
		p.i++
		return p.countList() != nil && (p.tok().kind == tStop || p.tok().kind == tEnd || p.tok().first)
	}
	close := p.matching(p.i)
	return p.tok().kind == tOpen && close == p.i+2 && p.at(1).kind == tNumber && (p.toks[close+1].kind == tEnd || p.toks[close+1].kind == tStop || p.toks[close+1].first)
}

// ofGroups reports whether a count is of what stitches make together, "39 groups and 2 tr at each
// end": it is no instruction.
func (s *Stated) ofGroups() bool {
	return slices.ContainsFunc(s.Counts, func(c StatedCount) bool { return c.Target.Sort == OfName || c.Target.Sort == Remark })
}

// countBehind is the token behind the count that is a sentence of its own behind this one, or
// the current one where there is none.
func (p *parser) countBehind() int {
	start := p.i
	defer func() { p.i = start }()
	if p.eatKind(tStop) {
		if close := p.matching(p.i); p.tok().kind == tOpen && close > 0 {
			// "you will have 23 shells. (94 dc)"
			if p.i++; p.statedUpTo(close) != nil && (p.toks[close+1].kind == tStop || p.toks[close+1].kind == tEnd || p.toks[close+1].first) {
				return close + 1
			}
			return start
		}
		if s := p.countList(); s != nil && (p.tok().kind == tStop || p.tok().kind == tEnd || p.tok().first) {
			return p.i
		}
	}
	return start
}

// thingBehind gives bare numbers in brackets what is counted, where it stands behind them:
// "(64, 72, 80) sc", "[24] sts". Work may not follow it in its sentence.
func (p *parser) thingBehind(s *Stated) {
	for i := range s.Counts {
		if t := &s.Counts[i].Target; t.Sort != AnyStitch || t.Text != "" {
			return
		}
	}
	start := p.i
	if p.tok().kind != tWord || p.tok().first {
		return
	}
	t, ok := p.target()
	for ok && !p.tok().first && p.eat("total", "in", "all", "made", "rem", "remain") {
	}
	if k := p.tok().kind; !ok || k != tStop && k != tEnd && !p.tok().first && !((k == tComma || k == tSemi) && p.ends(p.i+1)) {
		p.i = start
		return
	}
	s.Counts[len(s.Counts)-1].Target = t
	s.Span.Length += p.toks[p.i-1].pos.Column + p.toks[p.i-1].length - p.toks[start-1].pos.Column - p.toks[start-1].length
}

// countingChain reads ", counting ch-3 as 1 dc", "(including the turning ch)" behind a
// count: that the chain at the beginning is one of those counted. It is nil for other
// words.
func (p *parser) countingChain() *Counts {
	start := p.i
	no := func() *Counts { p.i = start; return nil }
	open := p.tok().kind == tOpen
	if !open && p.tok().kind != tComma && !p.tok().is("not", "counting", "including", "incl") {
		return nil
	}
	if open || p.tok().kind == tComma {
		p.i++
	}
	not := p.eat("not")
	if p.eatAll("do", "not") || p.eat("don't") {
		if not = p.tok().is("count", "include"); !not {
			return no()
		}
	}
	if !p.eat("counting", "including", "incl", "includes", "counts") && !(not && p.eat("count", "include")) {
		return no()
	}
	p.eat("the", "each")
	t, ok := p.startChain()
	if !ok {
		return no()
	}
	c := &Counts{Not: not, Of: t.Chains}
	if p.eat("as") {
		p.eat("a", "an", "the")
		p.eat("first", "one")
		if p.tok().kind == tNumber && p.tok().value == 1 {
			p.i++
		}
		if w, ok := p.what(); ok {
			c.As, c.Name = w.Kind, w.Name
		} else if !p.eat("st", "stitch") {
			return no()
		}
	}
	for p.eat("here", "and", "throughout", "always") {
		c.Throughout = c.Throughout || p.at(-1).is("throughout", "always")
	}
	if open && !p.eatKind(tClose) || !p.ended() && !p.tok().first {
		return no()
	}
	c.Span = p.from(start)
	return c
}

// ofChain gives the chain that the round begins with what is said of it behind the count.
func (b *block) ofChain(c *Counts) {
	if c == nil || !c.Not && !c.As.Is() {
		return // that it is counted shows in the count
	}
	for _, it := range b.items {
		switch it := it.(type) {
		case *Chain:
			if it.Counts == nil && (c.Of == 0 || it.N.For(0) == c.Of) {
				it.Counts = c
			}
			return
		case *Stitches:
			if it.What.Kind != stitch.Of(stitch.Slip) {
				return
			}
		case *Group, *Repeat:
			return
		}
	}
}

// things reads what a designer counts that is none of the trade's stitches, up to
// the end of the count: "9 cable panels".
func (p *parser) things() (string, bool) {
	start := p.i
	for n := 0; n < 3 && p.tok().kind == tWord && !p.tok().first && !p.stitchy(p.i, p.i+1) && !p.tok().is("and", "in", "times", "x", "more", "total", "each", "for", "of", "per", "at", "on"); n++ {
		p.i++
	}
	several := strings.HasSuffix(p.at(-1).text, "s") || p.at(-1).is("teeth", "feet", "mice", "geese", "fish", "sheep")
	if k := p.tok().kind; p.i > start && several && (k == tEnd || k == tClose || k == tStop || k == tComma || p.tok().first || p.ofSoAhead() || p.tok().is("separated", "with") ||
		p.tok().is("and") && (p.at(1).kind == tNumber || numberWords[p.at(1).text] > 0)) {
		return p.words(start), true
	}
	p.i = start
	return "", false
}

// eachSideOf reads "per side", "on each side of the spine", "at each end", "either side of
// the 2-ch sp" behind a count, which is of a part of the stitches then. It reports whether
// as many lie on both sides of a space, so that twice the number are all.
func (p *parser) eachSideOf() (part, both bool) {
	start := p.i
	along := p.eat("on", "to", "along", "at")
	if !p.eat("each", "either", "every", "both", "per") && !(p.eat("a") && (along || p.tok().is("side", "corner", "edge"))) ||
		!p.eat("side", "sides", "half", "edge", "edges", "end", "ends", "corner", "wing") {
		p.i = start
		return false, false
	}
	if p.eat("of") {
		for p.eat("the", "centre", "center", "central", "middle") {
			both = both || !p.at(-1).is("the")
		}
		t, ok := p.target()
		both = both && p.spaceWord() || ok && (t.Sort == ChainSpace || t.Sort == StartChain)
		if !ok && p.tok().kind == tWord && !p.tok().first {
			p.i++
		}
	}
	return true, both
}

// loneSpace reads "2-ch sp", "ch-2" between or behind the counts of a list, of which there
// have been n: one such space.
func (p *parser) loneSpace(n int) (Target, bool) {
	start := p.i
	if n > 0 && (p.tok().kind != tNumber || p.at(1).kind == tHyphen) {
		if t, ok := p.target(); ok && t.Chains > 0 && (t.Sort == StartChain || t.Sort == ChainSpace) && !strings.HasSuffix(t.Text, "s") {
			t.Sort = ChainSpace // "26 sc + ch-2"
			return t, true
		}
	}
	p.i = start
	return Target{}, false
}

// addAlike adds up what a list counts more than once, as it comes along the row: "1 space, 4
// blocks, 1 space", or where they are: "12 ch-3 loops at the points and 6 between the points".
func (s *Stated) addAlike(part []bool) {
	for i := 1; i < len(s.Counts); i++ {
		for j := 0; j < i; j++ {
			if j+1 == i && !(i < len(part) && part[i] && part[j]) {
				continue
			}
			a, b := &s.Counts[j], &s.Counts[i]
			if b.Target.Sort != ChainSpace && b.Target.Sort != OfName && !(b.Target.Sort == OfKind && i == j+2 && (s.Counts[j+1].Target.Sort == ChainSpace || s.Counts[j+1].Target.Sort == OfName)) || a.At.Set() || b.At.Set() || len(a.N.Values) != len(b.N.Values) ||
				a.Target.Sort != b.Target.Sort || strings.TrimSuffix(a.Target.Name, "s") != strings.TrimSuffix(b.Target.Name, "s") || a.Target.Chains != b.Target.Chains || a.Target.Kind != b.Target.Kind {
				continue
			}
			sum := append([]int(nil), a.N.Values...)
			for k := range sum {
				sum[k] += b.N.Values[k]
			}
			a.N.Values = sum
			s.Counts = append(s.Counts[:i:i], s.Counts[i+1:]...)
			if i < len(part) {
				part = append(part[:i:i], part[i+1:]...)
			}
			i--
			break
		}
	}
}

// chainThing reads "ch-50 handles", "9-ch handles", "2 (4)-ch underarms": chains by what the
// designer calls them.
func (p *parser) chainThing() (Target, bool) {
	start := p.i
	no := func() (Target, bool) { p.i = start; return Target{}, false }
	before := p.eat("ch", "chain") && p.eatKind(tHyphen)
	if !before {
		p.i = start
	}
	if p.tok().kind != tNumber {
		return no()
	}
	n, ok := p.num()
	if !before {
		p.eatKind(tHyphen)
		ok = ok && p.eat("ch", "chain")
	}
	if !ok || p.tok().kind != tWord || p.spaceWord() || p.tok().is("and", "picot", "picots", "st", "sts", "corner", "corners", "at", "in") {
		return no()
	}
	if _, known := p.vocab.lookup(p.tok().text); known {
		return no()
	}
	p.i++
	t := Target{Sort: ChainSpace, Text: p.words(start)}
	if len(n.Values) == 1 {
		t.Chains = n.Values[0]
	}
	return t, true
}

// crossedApart makes remarks of the counts of a list that tells crossed stitches from others of
// their kind: "4 crossed dc, 2 dc" may be of pairs.
func (s *Stated) crossedApart() {
	for i := range s.Counts {
		k := s.Counts[i].Target.Kind
		if k.Manner&stitch.Crossed == 0 {
			continue
		}
		for j := range s.Counts {
			if t := &s.Counts[j].Target; t.Sort == OfKind && t.Kind.Base == k.Base {
				t.Sort = Remark
			}
		}
	}
}

// whereWords reports whether words behind what is counted say where it is: "at the points".
func whereWords(toks []token) bool {
	for i := range toks {
		if i > 0 && toks[i].is("in", "on", "along", "at", "around", "inside", "between", "across", "round", "down", "outside", "over") {
			return true
		}
	}
	return false
}

// remarkOn passes over "in the pineapples", "along each side" behind a count; whether
// it is of a part only: "that is 12 along each side".
func (p *parser) remarkOn() {
	start := p.i
	if p.eat("in", "on", "along", "at", "around", "inside", "between", "across", "round", "down", "outside", "over") {
		p.eat("the", "each", "every", "all", "two", "these", "those", "both")
		if p.tok().kind == tWord && !p.tok().first {
			if _, round := roundWord(p.tok()); !round && !p.stitchy(p.i, p.i+1) && !p.tok().is("total", "all", "next", "end") {
				p.i++
				p.eat("edge", "side", "sides", "edges")
				if k := p.tok().kind; k == tClose || k == tEnd || k == tComma || k == tStop || k == tSemi || p.tok().is("and") {
					return
				}
			}
		}
	}
	p.i = start
}

// thatIs passes over ", that is 12 along each side" between the counts of a list.
func (p *parser) thatIs() {
	start := p.i
	p.eatKind(tComma)
	if p.eat("that", "which") && p.eat("is", "makes", "gives") || p.eat("ie") || p.tok().is("i") && p.at(1).kind == tStop && p.at(2).is("e") {
		if p.tok().is("i") {
			p.i += 3
			p.eatKind(tStop)
			p.eatKind(tComma)
		}
		j := p.phraseEnd()
		if next := p.toks[min(j+1, len(p.toks)-1)]; p.toks[j].kind == tComma && (next.kind == tNumber || next.is("and")) {
			p.i = j
			return
		}
	}
	p.i = start
}

// rowsInAll reads "rows in all", "rounds altogether" behind a number.
func (p *parser) rowsInAll() bool {
	start := p.i
	if _, round := roundWord(p.tok()); round && !p.tok().is("r") {
		p.i++
		if p.eat("altogether", "total", "overall", "worked", "completed") || p.eat("in") && p.eat("all", "total") {
			return true
		}
	}
	p.i = start
	return false
}

// endOf reads "at end of Row 8", "after Rnd 8": the round that a count is of.
// It is unset when there is none.
func (p *parser) endOf() Num {
	start := p.i
	if p.eat("at", "after", "on", "in", "by", "for") {
		p.eat("the")
		if p.eat("end", "completion") {
			p.eat("of")
		}
	}
	if _, ok := roundWord(p.tok()); ok && !p.tok().is("r") {
		p.i++
		if n, ok := p.num(); ok {
			return n
		}
	}
	p.i = start
	return Num{}
}

// endOfLast passes over "at the end of the last round", which a count is of as it is.
func (p *parser) endOfLast() {
	start := p.i
	p.i++
	p.eat("the")
	if p.eat("end", "completion") {
		p.eat("of")
	}
	p.eat("the")
	if p.eat("last", "final", "this", "that") {
		if _, ok := roundWord(p.tok()); ok {
			p.i++
			return
		}
	}
	p.i = start
}

// saysMore reports whether words about a count begin at token i, with a comma.
func (p *parser) saysMore(i int) bool {
	if p.toks[i].kind != tComma || i+2 >= len(p.toks) {
		return false
	}
	if p.toks[i+1].is("of") && p.toks[i+2].is("which") {
		return true // "72 sts, of which 24 are raised"
	}
	return p.toks[i+1].is("which", "that's", "giving", "making", "or") || p.toks[i+1].is("that") && p.toks[i+2].is("is", "makes", "gives")
}

// dashedCount is the dash in the words from token start up to end behind which they end in a
// count, "placing 1 st in each row end - 70 (75, 80) sc": the count is the round's. It is end
// when there is none.
func (p *parser) dashedCount(start, end int) int {
	if !p.work {
		return end
	}
	at, faults := p.i, len(p.faults)
	defer func() { p.i, p.faults = at, p.faults[:faults] }()
	for j := end - 2; j > start; j-- {
		if k := p.toks[j].kind; k != tDash && k != tEqual {
			continue
		}
		p.i = j + 1
		if s := p.countList(); s != nil && p.i >= end && (s.Counts[0].Target.Text != "" || p.toks[j-1].kind != tNumber) {
			return j
		}
	}
	return end
}

// ofSo reads "of 8 dc", "of 5 tr each", ", each of 7 dc", "with 5 dc each, 1 ch between them"
// behind what a designer calls several stitches in one place: how many, and of which kind.
func (p *parser) ofSo() (n int, k stitch.Kind, ok bool) {
	start := p.i
	p.eatKind(tComma)
	p.eat("each")
	p.eat("made", "consisting", "composed")
	if p.eat("of", "with", "from", "having") {
		if n, ok = p.plainNumber(); ok {
			if w, is := p.what(); is && w.Kind.Is() && w.Kind.Base > stitch.Slip {
				p.eat("each", "apiece")
				return n, w.Kind, true
			}
		}
	}
	p.i = start
	return 0, k, false
}

// apart passes over ", with 1 ch between them", "separated by ch-2 sps" behind a count of groups.
func (p *parser) apart() {
	start := p.i
	p.eatKind(tComma)
	if p.eat("with", "separated", "divided", "joined") {
		between := p.at(-1).is("separated", "divided", "joined")
		for k := p.tok().kind; (k == tWord || k == tNumber || k == tHyphen) && !p.tok().first; k = p.tok().kind {
			between = between || p.tok().is("between")
			p.i++
		}
		if between {
			return
		}
	}
	p.i = start
}

func (p *parser) ofSoAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	_, _, ok := p.ofSo()
	return ok
}

// eachCounted gives a list of as many counts as the label names rounds to them, one to each: "Rnds
// 6-8: … 72, 84 and 96 tr". As many as there are sizes may be one for each of these.
func (r *Round) eachCounted(sizes int) {
	if len(r.Label.Numbers) != 1 || len(r.Stated) != 1 {
		return
	}
	rg, s := r.Label.Numbers[0], r.Stated[0]
	last := len(s.Counts) - 1
	if last < 1 || last+1 == sizes || rg.ToEnd || len(rg.From.Values) != 1 || len(rg.To.Values) != 1 || rg.To.Values[0]-rg.From.Values[0] != last {
		return
	}
	of := s.Counts[last].Target
	for i, c := range s.Counts {
		if c.At.Set() || i < last && (c.Target.Sort != AnyStitch || c.Target.Text != "" && c.Target.Text != of.Text) {
			return
		}
	}
	for i := range s.Counts {
		s.Counts[i].Target = of
		s.Counts[i].At = Num{Span: s.Counts[i].N.Span, Values: []int{rg.From.Values[0] + i}}
	}
}
