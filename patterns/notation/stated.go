package notation

import (
	"slices"
	"strings"

	"whorl/patterns/stitch"
)

// trailingCount reads a count without brackets at the end of a round: "72
// sts.", "60 (72, 78) hdc". A count of plain stitches is one only when it is a
// sentence of its own and nothing but notes follows.
func (p *parser) trailingCount(sentence bool) bool {
	if !p.work || p.depth > 1 {
		return false
	}
	start := p.i
	if p.eat("stitch", "st") && !p.eat("count") {
		p.i = start
	}
	var of Num
	counting := (*Counts)(nil)
	if sentence && p.tok().is("counting", "including") {
		if counting = p.countingChain(); counting == nil || !p.eatKind(tComma) {
			p.i = start
			return false
		}
	}
	if p.tok().is("which") && p.at(1).is("gives", "makes", "leaves", "brings") && p.at(-1).kind == tComma {
		p.i++
		sentence = true
	}
	if sentence && p.tok().is("at", "after", "by", "on") {
		of = p.endOf() // "At the end of Row 25 you have 25 shells."
		if !of.Set() {
			p.endOfLast()
		}
		p.eatKind(tComma)
	}
	p.eat("total", "you", "there", "you'll", "you've", "there'll", "there's", "that's", "that", "this", "it's", "makes")
	if !p.eatAll("comes", "to") {
		p.eat("should", "will", "now", "are", "have", "got", "makes", "is", "gives", "make", "leaves")
	}
	if !p.eatAll("a", "total", "of") {
		p.eat("you", "me", "us", "a", "total", "it")
	}
	if close := p.matching(p.i); p.tok().kind == tOpen && close > 0 && p.i > start {
		// "There are {48 sc}"
		p.i++
		if s := p.statedUpTo(close); s != nil {
			p.i = close + 1
			p.stated = append(p.stated, s)
			return true
		}
		p.i = start
		return false
	}
	p.eat("now", "have", "be")
	p.eatKind(tColon)
	if s := p.countBySize(p.sentenceEnd()); sentence && s != nil {
		p.stated = append(p.stated, s)
		return true
	}
	if p.tok().kind != tNumber && numberWords[p.tok().text] == 0 && !(p.tok().kind == tDash && p.at(1).kind == tOpen) {
		p.i = start
		return false
	}
	led := p.i > start // "you will have 11 sc"
	s := p.countList()
	if s == nil {
		p.i = start
		return false
	}
	if p.tok().kind == tOpen {
		// "20 petals (100 dc, 20 sc)"
		if close := p.matching(p.i); close > 0 {
			at := p.i
			p.i++
			if more := p.statedUpTo(close); more != nil && (more.Counts[0].Target.Text != "" || more.Counts[0].Target.Sort == Remark) {
				s.Counts = append(s.Counts, more.Counts...)
				p.i = close + 1
				at = p.i
				p.eatKind(tComma)
				if p.eat("and") || p.at(-1).kind == tComma {
					// "28 dc (7 on each side) and 4 ch-2 sps"
					if more := p.countList(); more != nil && more.Counts[0].Target.Text != "" {
						s.Counts = append(s.Counts, more.Counts...)
						at = p.i
					}
				}
				p.i = at
			} else {
				p.i = at
			}
		}
	}
	t := p.tok()
	generic := s.Counts[0].Target.Sort == AnyStitch && s.Counts[0].Target.Text != ""
	which := p.saysMore(p.i) && !p.at(1).is("giving", "making", "or") || p.orPerSide()
	then := t.kind == tComma && p.at(1).is("then") && (p.at(2).kind == tNumber || numberWords[p.at(2).text] > 0)
	turns := t.kind == tComma && (p.toks[max(start-1, 0)].kind == tColon || p.toks[max(start-1, 0)].kind == tDash) && p.ends(p.i+1) // "across: 8 hdc, turn"
	if t.kind != tStop && t.kind != tEnd && !t.first && !which && !then && !turns || !(sentence || generic || p.joined) {
		p.i = start
		return false
	}
	if !generic {
		// Nothing to be worked may follow; "Do not turn", "Join B" may.
		from, end := p.i, p.i
		if which {
			from = p.sentenceEnd() // "68 sc, which is 17 along each side"
		}
		if led || s.ofGroups() {
			from = p.countBehind() // "39 groups and 2 tr at each end. 121 tr."
		}
		for end < len(p.toks) && !p.toks[end].first {
			end++
		}
		if !p.joined && !then && p.evident(from, end) && !p.turnsAt(from, end) {
			p.i = start
			return false
		}
	}
	for i := range s.Counts {
		if of.Set() && !s.Counts[i].At.Set() {
			s.Counts[i].At = of
		}
	}
	if counting != nil {
		s.Counting = counting // "Counting the first 3 chain, you have 16 tr."
	}
	s.Span = p.from(start)
	p.stated = append(p.stated, s)
	for p.tok().kind == tComma && p.at(1).is("then") {
		// "20 dc, then 26 dc": one for each of the rounds
		at := p.i
		p.i += 2
		more := p.countList()
		if more == nil || more.Counts[0].Target.Text == "" {
			p.i = at
			break
		}
		more.Span, more.Then = p.from(at+2), true
		p.stated = append(p.stated, more)
	}
	return true
}

// statedUpTo reads a count that fills the bracket up to token close, or gives
// nil.
func (p *parser) statedUpTo(close int) *Stated {
	start := p.i
	if s := p.countBySize(close); s != nil {
		return s
	}
	p.eatKind(tEqual)
	if p.eat("stitch", "st") && !p.eat("count") {
		p.i = start
	}
	at := p.endOf()
	if !at.Set() {
		p.lastCounts()
	}
	if !p.eatKind(tComma) {
		p.eatKind(tEqual)
	}
	p.eat("total", "you", "now", "there")
	p.eat("should", "will", "now", "are", "have", "of")
	p.eat("now", "have", "be")
	p.eatKind(tColon)
	s := p.countList()
	if s == nil {
		p.i = start
		return nil
	}
	for i := range s.Counts {
		if !s.Counts[i].At.Set() {
			s.Counts[i].At = at
		}
	}
	if p.saysMore(p.i) {
		p.i = close // "…, which is 22 to a side"
	} else if p.i < close && p.eatKind(tComma) && p.tok().is("counting", "including", "not", "with") {
		p.i = close // "…, counting the split shell as one"
	}
	if p.tok().kind == tStop && p.i+1 == close {
		p.i++ // "[64 trebles.]"
	}
	if p.i != close {
		p.i = start
		return nil
	}
	return s
}

// lastCounts passes over what leads to a count of the last round: "last rnd", "ending with", "count".
func (p *parser) lastCounts() {
	start := p.i
	if p.tok().is("at", "after", "on", "in") {
		p.endOfLast()
		return
	}
	if p.eat("makes", "making", "giving", "gives", "leaves", "leaving") || p.eatAll("that", "is") || p.eat("that's") {
		return
	}
	if p.eat("last", "final") {
		if _, round := roundWord(p.tok()); round {
			p.i++
			return
		}
	}
	if p.eat("ending", "ends", "end", "finishing", "finish") && p.eat("with", "on", "at") || p.eat("count", "counts") ||
		p.eat("to") && p.tok().kind == tNumber {
		return
	}
	p.i = start
}

// ofEveryRound passes over "each rnd", "per row", "all round" behind a count that all of several
// rounds have.
func (p *parser) ofEveryRound() bool {
	start := p.i
	if p.eat("all") {
		p.eatAll("the", "way")
	}
	if p.eat("around", "round") && p.toks[start].is("all") {
		return true
	}
	p.i = start
	p.eat("in", "on")
	if p.eat("per", "each", "every") {
		if _, round := roundWord(p.tok()); round && !p.tok().is("r") {
			p.i++
			return true
		}
	}
	p.i = start
	return false
}

// ofSeam makes a count of slip stitches behind a note a remark: they are those of a
// seam, and none of the fabric, where that is no row of its own. What a count says of the chain goes to that.
func (b *block) ofSeam(l []*Stated) {
	b.ofChain(l[0].Counting)
	n := len(b.items)
	if n == 0 {
		return
	}
	note, ok := b.items[n-1].(*Note)
	for _, s := range l {
		for i := range s.Counts {
			slips := s.Counts[i].Target.Kind == stitch.Of(stitch.Slip)
			c := &s.Counts[i]
			row := ok && b.p.labelled && note.Of.Is() && b.onlyCloses()
			if ok && note.Closes && !row && note.Of.Is() && !note.Seam.Set() && i == 0 && (c.Target.Sort == AnyStitch || c.Target.Kind == note.Of) {
				note.Seam = c.N // "sc through both layers. [4]"
			}
			if ok && (note.Closes && !row || slips && !note.Closes) || slips && b.hangs() {
				c.Target.Sort = Remark
			}
		}
	}
}

// hangs reports whether what is being read hangs from the piece: it stands behind "Stem:".
func (b *block) hangs() bool {
	for i := len(b.items) - 1; i >= 0; i-- {
		if n, ok := b.items[i].(*Note); ok {
			words := strings.Fields(strings.ToLower(strings.Trim(n.Text, " :")))
			return len(words) > 0 && len(words) < 4 && slices.Contains(hanging, words[len(words)-1])
		}
	}
	return false
}

// onlyCloses reports whether nothing has been worked before a seam: it is a row of its own
// then, and no sentence behind one.
func (b *block) onlyCloses() bool {
	return !slices.ContainsFunc(b.items, func(it Item) bool {
		switch it.(type) {
		case *Note, *Chain, *Turn, *Marker:
			return false
		}
		return true
	})
}

// countList reads "72 hdc", "78 sts, 13 ch-2 sps", "24 dc and 4 corner sps".
func (p *parser) countList() *Stated {
	s := &Stated{}
	var part []bool // of which it is said where they are
	start := p.i
	for {
		at := p.i
		if p.eat("of") && !p.eat("which", "them", "these", "those") {
			p.i = at
		}
		if len(s.Counts) > 0 {
			p.eat("the")
		}
		if t, ok := p.loneSpace(len(s.Counts)); ok {
			s.Counts = append(s.Counts, StatedCount{N: One(p.from(at)), Target: t})
			if (p.tok().kind == tComma || p.tok().kind == tPlus) && p.at(1).kind == tNumber {
				p.i++
				continue
			}
			break
		}
		n, ok := p.num()
		if ok && p.tok().is("of") && p.at(1).is("them", "these", "those", "which") {
			p.i += 2 // "60 sts, 18 of them bobbles"
			p.eat("are", "being")
		} else if ok && p.toks[at].is("of") {
			p.eat("are", "being")
		}
		if !ok && p.eat("a", "an") {
			n, ok = One(p.from(at)), true // "and a 5-ch loop"
		}
		if !ok {
			// A comma that is followed by no number ends the list.
			p.i = at
			return nil
		}
		c := StatedCount{N: n}
		p.eat("total")
		p.eatKind(tTimes) // "4 x 2-ch sps"
		back := p.i
		if p.at(-1).is("are", "being", "them", "these", "which", "those") && p.tok().kind == tWord {
			if _, ok := p.target(); !ok {
				if _, ok = p.things(); !ok {
					// "of which 20 are raised"
					p.i++
					c.Target = Target{Sort: Remark, Text: p.words(back)}
					s.Counts = append(s.Counts, c)
					break
				}
			}
			p.i = back
		}
		half := !p.ownAt() && p.halfOrFull()
		if p.tok().is("corner", "side", "edge", "end") && p.at(1).is("shells", "fans", "groups", "clusters", "shell", "fan", "group", "cluster") {
			p.i++
			half = true // some of the shells
		}
		if w, ok := p.legged(); ok && w.Kind.Shape == stitch.Picot {
			// However they are closed.
			c.Target = Target{Sort: Remark, Text: p.words(back)}
		} else if p.rowsInAll() {
			c.Target = Target{Sort: RowsInAll, Text: p.words(back)}
		} else if t, ok := p.chainThing(); ok {
			c.Target = t
		} else if t, ok := p.target(); ok {
			if c.Target = t; half {
				c.Target.Sort = Remark // half a shell at an edge
			}
			if t.ByNumber() && n.For(0) > 1 {
				c.Target.Sort = ChainSpace // "12 sc, 12 ch-3"
			}
		} else if w, ok := p.what(); ok && w.Kind.Is() {
			c.Target = Target{Sort: OfKind, Kind: w.Kind, Loop: w.Loop, Text: p.words(back)}
		} else if p.tok().kind == tWord && !p.tok().is("in", "times", "x", "more", "total", "each") &&
			p.tok().is("petals", "points", "corners", "clusters", "shells", "fans", "groups", "reps", "repeats",
				"ridges", "ribs", "scallops", "picots", "popcorns", "bobbles", "puffs", "sides", "spokes", "loops", "cables", "crosses", "leaves",
				"waves", "handles", "twists", "motifs", "squares", "blocks", "boxes", "arches", "wedges", "sections", "bumps",
				"mesh", "meshes", "holes", "windows", "ladders") {
			c.Target = Target{Sort: OfName, Name: p.tok().text, Text: p.tok().raw}
			p.i++
		} else if name, ok := p.things(); ok {
			c.Target = Target{Sort: OfName, Name: strings.ToLower(name), Text: name}
		} else if len(s.Counts) > 0 && onlyOne(n) && p.tok().is("buttonhole", "eyelet", "hole", "opening", "slit", "thumbhole", "armhole", "earhole", "space", "block", "corner", "point", "petal", "picot", "bobble", "popcorn", "cable", "motif", "gap") {
			c.Target = Target{Sort: OfName, Name: p.tok().text + "s", Text: p.tok().raw} // "12 dc, 1 buttonhole"
			p.i++
		}
		if n, k, ok := p.ofSo(); ok {
			c.Target = Target{Sort: OfName, Kind: k, Chains: n, Text: p.words(back)}
		}
		if c.Target.Sort == OfName {
			p.apart()
		}
		if p.eat("increased", "decreased", "inc'd", "dec'd", "inc", "dec") {
			// "3 sts increased" says something else than how many there are.
			c.Target.Sort = Remark
		}
		if s.Counting == nil {
			s.Counting = p.countingChain()
		}
		if p.eat("not", "including", "incl") {
			// "(8 sts including chs)"
			p.eat("counting", "including")
			at := p.i - 1
			p.eat("the")
			t, ok := p.target()
			if !ok {
				return nil
			}
			if p.toks[at].is("including", "incl") && !p.toks[at-1].is("not") && t.Sort != StartChain {
				c.Target.Sort = Remark
			}
		}
		if p.eat("for") {
			p.eat("all", "each")
			if !p.eat("sizes", "size") {
				return nil
			}
		}
		if p.tok().is("at", "after", "on", "in") {
			at := p.i
			if c.At = p.endOf(); !c.At.Set() {
				p.endOfLast()
			}
			if p.i == at && p.tok().is("at", "after") && p.at(1).is("end", "the") {
				for k := p.tok().kind; k != tClose && k != tEnd && k != tComma && k != tStop && k != tSemi && !(p.tok().is("and") && p.at(1).kind == tNumber); k = p.tok().kind {
					p.i++
				}
			}
		}
		if !p.ofEveryRound() && p.perThing() {
			c.Target.Sort = Remark
		}
		counted := c.Target
		perSide, both := p.eachSideOf()
		if perSide {
			c.Target.Sort = Remark // 17 per side
		}
		if c.Target.Sort != AnyStitch || c.Target.Text != "" {
			at := p.i
			if p.remarkOn(); p.i > at && p.toks[at+1].is("each", "every") {
				c.Target.Sort = Remark // 5 ch-3 lps in each pineapple
			}
		}
		part = append(part, p.toks[p.i-1].kind == tWord && whereWords(p.toks[back:p.i]))
		p.thatIs()
		p.saidAgain()
		for !p.tok().first && p.eat("total", "rem", "remain", "remaining", "made", "left", "in", "all", "inc'd", "now", "around", "altogether", "worked", "complete", "sts", "per", "side", "on", "each", "each side") {
		}
		if s.Counting == nil {
			s.Counting = p.countingChain()
		}
		if both && len(s.Counts) == 0 && p.ended() && !p.tok().is("and") && (p.tok().kind != tComma || p.ends(p.i+1)) {
			c.Target = counted // "(6 tr on each side of the 2-ch sp)" are 12
			c.N.Values = append([]int(nil), c.N.Values...)
			for i := range c.N.Values {
				c.N.Values[i] *= 2
			}
		}
		s.Counts = append(s.Counts, c)
		if p.tok().kind == tComma && p.at(1).is("not", "including", "incl") {
			p.i++
			including := p.tok().is("including", "incl")
			p.eat("not", "including", "incl")
			p.eat("counting", "including")
			p.eat("the")
			t, ok := p.target()
			if !ok {
				return nil
			}
			if including && t.Sort != StartChain {
				s.Counts[len(s.Counts)-1].Target.Sort = Remark
			}
		}
		if p.saidAgain(); p.apportioned() {
			break
		}
		if !(p.tok().kind == tComma || p.tok().kind == tColon || p.tok().kind == tSemi || p.tok().kind == tPlus || p.tok().kind == tSlash ||
			p.tok().kind == tDash || p.tok().is("and", "plus")) {
			break
		}
		if c := p.tok(); c.kind == tDash || c.kind == tComma || c.kind == tSemi {
			// "(72 sts – 6 inc)": a count and a remark are not both counts.
			at := p.i
			p.i++
			_, lone := p.loneSpace(len(s.Counts)) // "(3 dc, ch-2 sp, 3 dc)"
			p.i = at
			if next := p.at(1); !lone && next.kind != tNumber && numberWords[next.text] == 0 && !next.is("and", "plus", "of") && !(next.kind == tDash && p.at(2).kind == tOpen) {
				break
			}
		}
		p.i++
		p.eat("and", "plus")
	}
	s.addAlike(part)
	s.crossedApart()
	s.Span = p.from(start)
	return s
}

// perThing passes over "per petal", "to each point" behind a count, which says how many there are
// of a part only.
func (p *parser) perThing() bool {
	start := p.i
	if p.eat("per") && p.tok().kind == tWord && !p.tok().first {
		p.i++
		if _, round := roundWord(p.at(-1)); !round && p.ended() {
			return true
		}
	}
	p.i = start
	return false
}
