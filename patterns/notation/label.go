package notation

import (
	"strings"

	"whorl/patterns/fault"
)

// round reads one round: label, instructions, stated counts.
func (p *parser) round() (*Round, *fault.Fault) {
	r := &Round{}
	l, ok := p.label()
	if !ok {
		p.i = 0
	}
	if r.Label = l; len(l.Only) > 0 {
		p.forSizes = l.Only
	}
	p.inTurn = nil
	if p.labelled = len(l.Numbers) > 0 || l.Next.Set(); len(l.Numbers) > 0 {
		p.upTo = l.highest()
	}
	r.Span = p.from(0)
	if p.i == 0 {
		r.Span = Span{p.tok().pos, p.tok().length}
	}
	items, f := p.items(false)
	if f == nil && p.tok().kind != tEnd {
		f = p.stuck()
	}
	r.Items, r.Stated, r.Opening = leftLast(items), p.stated, p.opening
	if p.inTurn != nil {
		takeInTurn(r.Items, p.inTurn)
	}
	p.zeros(r)
	r.bareRound()
	r.backwards()
	r.eachCounted(len(p.sizes))
	return r, f
}

// roundWord reports whether the token says round or row.
func roundWord(t *token) (row, ok bool) {
	switch {
	case t.is("rnd", "rnds", "round", "rounds", "rd", "rds"):
		return false, true
	case t.is("row", "rows"):
		return true, true
	case t.is("r"):
		return false, true
	}
	return false, false
}

// label reads what stands before the colon: "Rnd 5", "Rnds 5-10", "Row 1 (RS)",
// "Rnds 4-9 (6 rnds)", "Foundation", "Next rnd", "2nd row".
func (p *parser) label() (Label, bool) {
	start := p.i
	if l, ok := p.labelAt(true); ok {
		return l, true
	}
	// "Rnd 1 - 6 sc" is no range.
	p.i = start
	p.faults, p.stated = nil, nil
	if l, ok := p.labelAt(false); ok {
		return l, true
	}
	p.i = start
	return Label{}, false
}

// labelAt reads a label; a dash between numbers is a range when ranges is set,
// and else the end of the label.
func (p *parser) labelAt(ranges bool) (Label, bool) {
	var l Label
	start := p.i
	no := func() (Label, bool) { p.i = start; return Label{}, false }
	named := false
	if len(p.sizes) > 1 && p.eachSizesFirst(&l) {
		l.Text = strings.Trim(p.words(start), " .:()-–—")
		return l, true
	}
	p.sizesFirst(&l)
	if p.skipsTo(&l) {
		l.Text = p.words(start)
		return l, true
	}
	if p.edgingRound(&l) {
		return l, true
	}
	if k := p.at(-1).kind; len(l.Only) > 0 && (k == tColon || k == tComma) && !roundNext(p.tok()) && (p.instructs(p.i) || p.workAgain(p.i)) {
		l.Text, l.Sizes = strings.TrimRight(p.words(start), " :,"), true
		return l, true // "Child only: Rep Rows 2 and 3 once more."
	}
	if p.roundsToWork(&l) {
		l.Text = strings.Trim(p.words(start), " .:()-–—")
		return l, true
	}
	if p.bareNumbers(&l, ranges) {
		l.Text = strings.Trim(p.words(start), " .:()-–—")
		return l, true
	}
	if n := p.tok(); (n.kind == tOrdinal || ordinalOf(n) > 0) && p.at(1).is("rnd", "round", "row", "rd") {
		num := Num{Span: Span{n.pos, n.length}, Values: []int{max(n.value, ordinalOf(n))}}
		l.Numbers = []Range{{From: num, To: num}}
		l.Row, _ = roundWord(p.at(1))
		p.i += 2
		named = true
		p.othersToo(&l)
	} else if p.ordinals(&l) {
		named = true
	} else if p.named(&l); l.Series != "" {
		p.roundNumbers(&l, ranges)
	} else {
		for p.tok().is("next", "last", "final", "set", "setup", "up", "foundation", "base", "dec",
			"decrease", "inc", "increase", "edging", "border", "trim", "first", "beginning", "starting", "crown", "shaping", "brim") &&
			!(p.tok().is("dec", "inc", "decrease", "increase") && p.at(1).kind == tNumber) {
			l.Foundation = l.Foundation || p.tok().is("foundation", "set", "setup", "base", "starting", "beginning")
			if p.tok().is("dec", "decrease", "inc", "increase", "edging", "border", "trim", "crown", "shaping", "brim") {
				l.Series = p.tok().raw
			}
			if p.tok().is("next") {
				l.Next = One(Span{p.tok().pos, p.tok().length})
			}
			named = true
			p.i++
			p.eatKind(tHyphen)
			if l.Next.Set() {
				if n, ok := p.num(); ok {
					l.Next = n
				}
			}
		}
		if row, ok := roundWord(p.tok()); ok {
			l.Row = row
			letterOnly := p.tok().is("r")
			l.Bare = letterOnly
			p.i++
			if p.tok().kind == tStop && p.at(1).kind == tNumber {
				p.i++ // "Rnd. 1"
			}
			if p.tok().kind == tOther && p.tok().text == "#" {
				p.i++
			}
			if letterOnly && p.tok().kind != tNumber && !(named && p.tok().kind == tColon) {
				return no()
			}
			if !l.Next.Set() || !p.stitchBehind() {
				p.numbers(&l, ranges)
			}
			if len(l.Numbers) == 0 && !named {
				return no()
			}
			p.othersToo(&l)
		} else if named && p.toks[start].is("foundation", "base", "set", "setup", "beginning", "starting") {
			if p.tok().is("chains", "chs") {
				return no() // "Beginning chains never count as stitches."
			}
			p.eat("chain", "ch", "ring")
		} else if named && p.toks[start].is("edging", "border", "trim") && p.i == start+1 && p.tok().kind == tColon && p.instructs(p.i+1) {
			// "Edging: Ch 1, …": a round of its own.
			l.Next = One(Span{p.toks[start].pos, p.toks[start].length})
		} else if !p.namedRound(&l) {
			return no()
		}
	}
	for p.tok().kind == tOpen {
		back := p.i
		if !p.labelNote(&l) {
			p.i = back
			break
		}
	}
	if p.tok().is("rs", "ws") && (p.at(1).kind == tColon || p.at(1).kind == tDash) {
		l.side(p.tok().text)
		p.i++
	}
	p.sizesBehind(&l)
	p.labelRemark()
	// "Rnd 2 - Increase Rnd:"
	if p.tok().kind == tDash {
		for j := 1; j <= 5; j++ {
			t := p.at(j)
			if t.kind == tColon {
				p.i += j
				break
			}
			if t.kind != tWord || !(t.is("inc", "increase", "dec", "decrease", "even", "set", "up", "pattern", "rnd", "round", "row", "first", "last", "foundation", "shaping")) {
				break
			}
		}
	}
	switch {
	case p.eatKind(tColon):
		p.eatKind(tDash)
	case p.tok().kind == tSlash && p.tok().spaced && len(l.Numbers) > 0 && p.eatKind(tSlash):
	case p.eatKind(tDash), p.eatKind(tStop), p.eatKind(tEqual):
		if _, round := roundWord(p.at(-2)); len(l.Numbers) == 0 && (!named || p.at(-1).kind == tStop && !round) {
			return no() // "BASE." is a heading
		}
	case l.Next.Set() && p.stitchBehind() && !p.tok().first: // "Next rnd. 1 ch", whose stop is that of the abbreviation
	case (len(l.Numbers) > 0 || l.Foundation) && !l.Bare && !p.tok().first && p.instructs(p.i):
		l.Unmarked = true // "1st row 1 ch, 1 dc into each dc", as old leaflets print it
	default:
		return no()
	}
	l.Text = strings.TrimRight(p.words(start), " :.-–—=")
	if len(l.Numbers) > 0 || l.Next.Set() {
		p.sizesInside(&l)
	}
	return l, true
}

// stitchBehind reports whether the number that comes next is of stitches or chains: "Next rnd. 1 ch".
func (p *parser) stitchBehind() bool {
	start := p.i
	defer func() { p.i = start }()
	p.eatKind(tStop)
	if p.tok().kind != tNumber {
		return false
	}
	p.i++
	if p.tok().is("ch", "chs", "chain") {
		return true
	}
	w, ok := p.what()
	return ok && w.Kind.Is()
}

// named passes over the name of a stretch of rounds that are numbered by
// themselves: the Band of "Band Rnd 1", the Ear flap of "Ear flap Row 2".
func (p *parser) named(l *Label) {
	start := p.i
	for n := 0; n < 2 && p.tok().kind == tWord; n++ {
		if _, round := roundWord(p.tok()); round || p.tok().is(notNames...) || n == 0 && !capital(p.tok().raw) {
			break
		}
		_, stitch := p.vocab.lookup(p.tok().text)
		if _, round := roundWord(p.at(1)); stitch && (n > 0 || !round || p.at(1).is("r") || !p.tok().first) {
			break // but "Puff Rnd 1" names rounds
		}
		p.i++
		_, round := roundWord(p.tok())
		if k := p.at(1).kind; round && (!p.tok().is("r") || p.tok().raw == "R" && k == tNumber) && (k == tNumber || k == tWord && numberWords[p.at(1).text] > 0) {
			l.Series = p.words(start)
			return
		}
	}
	p.i = start
}

// namedRound reads the name of a round that has no number: "Picot row", "Buttonhole
// Row (RS)", "Thumb round". A colon, after a bracket perhaps, has to follow.
func (p *parser) namedRound(l *Label) bool {
	start := p.i
	if !capital(p.tok().raw) {
		return false
	}
	for n := 0; n < 2 && p.tok().kind == tWord && !p.tok().is(notNames...) && !(n > 0 && p.tok().first); n++ {
		p.i++
		p.eatKind(tHyphen)
		row, round := roundWord(p.tok())
		if !round || !p.tok().is("row", "round", "rnd") {
			continue
		}
		p.i++
		end := p.i
		if p.tok().kind == tOpen {
			end = p.matching(p.i) + 1
		}
		if end > 0 && p.toks[end].kind == tColon {
			l.Row, l.Next, l.Called = row, One(Span{p.toks[start].pos, p.toks[start].length}), p.words(start)
			return true
		}
		break
	}
	p.i = start
	return false
}

// notNames are words before the number of a round that do not name it.
var notNames = []string{"rep", "repeat", "work", "next", "last", "final", "first", "as", "like", "same", "all", "each", "every", "foundation", "set", "setup", "base",
	"starting", "beginning", "for", "at", "after", "to", "from", "end", "on", "in", "of", "then", "and", "repeating", "working", "continue", "join", "see", "begin", "start",
	"sizes", "size", "only", "through", "with"}

// roundNumbers reads "Rnd 1", "Rounds 3-7" behind the name of a series.
func (p *parser) roundNumbers(l *Label, ranges bool) {
	l.Row, _ = roundWord(p.tok())
	p.i++
	p.numbers(l, ranges)
}

// labelRemark passes over words before the colon that only say what the round is
// for: "Round 9, for the handles:".
func (p *parser) labelRemark() {
	start := p.i
	if !p.eatKind(tComma) && !p.eatKind(tDash) {
		return
	}
	for n := 0; n < 6 && p.tok().kind == tWord && !p.tok().first; n++ {
		p.i++
	}
	if k := p.tok().kind; k != tColon && (k != tDash || p.toks[start].kind == tDash) || p.i == start+1 || p.instructs(start+1) {
		p.i = start
	}
}

// labelNote reads a bracket in a label: (RS), (6 rnds), (dec rnd), (Adult only).
func (p *parser) labelNote(l *Label) bool {
	close := p.matching(p.i)
	if close < 0 {
		return false
	}
	end := p.at(close - p.i + 1)
	if sides := p.at(1).is("rs", "ws", "right", "wrong"); !sides && !(end.kind == tColon || end.kind == tDash || end.kind == tStop || end.kind == tOpen ||
		end.kind == tEqual) {
		return false
	}
	p.i++
	start := p.i
	if n, ok := p.num(); ok && p.i < close {
		if _, ok := roundWord(p.tok()); ok {
			l.Rounds = n
		}
	}
	p.i = start
	if p.toks[close-1].kind != tNumber && len(l.Only) == 0 && p.sizesSaid(l, start, close) {
		p.i = close + 1 // "(3 mos)" is no count
		return true
	}
	if s := p.statedUpTo(close); s != nil && s.Counts[0].Target.Text != "" {
		p.stated = append(p.stated, s)
		p.i = close + 1
		return true
	}
	for p.i < close {
		if into, ok := p.loopWords(); ok && p.i <= close {
			l.Loop = Loop{true, into}
			continue
		}
		if p.tok().is("rs", "ws") {
			l.side(p.tok().text)
		}
		if p.eatAll("right", "side") {
			l.side("rs")
			continue
		}
		if p.eatAll("wrong", "side") {
			l.side("ws")
			continue
		}
		p.i++
	}
	if p.only(l, start); len(l.Only) == 0 {
		if f := (&Note{Span: p.from(start), Text: p.words(start)}).forSome(p.sizes); f != nil {
			p.faults = append(p.faults, f)
		}
	}
	p.i = close + 1
	return true
}

func (l *Label) side(s string) {
	if s == "rs" {
		l.Side = 1
	} else {
		l.Side = 2
	}
}

// matching is the number of the token that closes the bracket at token i, or
// -1.
func (p *parser) matching(i int) int {
	depth := 0
	for j := i; j < len(p.toks); j++ {
		switch p.toks[j].kind {
		case tOpen:
			depth++
		case tClose:
			if depth--; depth == 0 {
				return j
			}
		}
	}
	return -1
}
