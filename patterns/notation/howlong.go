package notation

import (
	"regexp"

	"whorl/patterns/fault"
)

// rowsTold reads behind the words "until" or "for" how many rows are worked: "you have
// worked 121 rows in all", "3 more rounds", "a total of 20 rows", "the end of Rnd 12",
// "Row 40 is complete". It is nil when the words say something else.
func (p *parser) rowsTold(start int) (*Until, *fault.Fault) {
	at := p.i
	u := &Until{More: p.at(-1).is("for")}
	p.roughly()
	if p.tok().is("a") && p.at(1).is("further") {
		p.i++ // "for a further 4 rows"
	} else if p.eat("a") {
		if !p.eat("total") || !p.eat("of") {
			p.i = at
			return nil, nil
		}
		u.More = false
	}
	if p.pieceHas() {
		p.eat("worked", "completed", "done", "made", "had")
	}
	p.eat("the", "all", "of")
	if from := p.i; p.nth() > 0 {
		// "until the 13th (14th, 15th) round has been worked"
		p.i = from
		if n, ok := p.ordinal(); ok {
			if _, round := roundWord(p.tok()); round {
				p.i++
				for p.eat("has", "have", "been", "is", "worked", "completed", "complete", "reached", "done", "finished") {
				}
				if p.ended() || p.tok().kind == tEnd {
					u.Rows, u.Numbered, u.More = n, true, false
					u.Span, u.UpTo = p.from(start), p.upToRow(start)
					return u, nil
				}
			}
		}
		p.i = from
	}
	if p.eat("end", "completion") {
		p.eat("of")
	}
	p.eat("another", "next", "following", "further")
	p.eat("these", "the")
	n, ok := p.num()
	if ok && p.eat("more", "further", "additional", "extra") {
		u.More = true
	}
	if _, round := roundWord(p.tok()); round {
		p.i++
		if !ok && !u.More {
			n, ok = p.num()
			u.Numbered, u.UpTo = true, p.upToRow(start) && !p.tok().is("is", "has", "complete", "completed", "worked", "done")
		}
	} else {
		ok = false
	}
	if !ok {
		p.i = at
		return nil, nil
	}
	u.Rows = n
	for {
		switch {
		case p.eat("total", "all", "altogether", "overall"):
			u.More = false
		case p.eat("more", "further", "longer", "long", "deep", "high", "tall", "are", "is", "have", "has", "in", "been", "complete", "completed", "worked", "done", "made", "finished"):
		default:
			return p.rowsEnd(u, start)
		}
	}
}

// finishedRow are the words of a row that is worked before one stops.
var finishedRow = regexp.MustCompile(`(?i)\b(complet|work(ed|ing)|done|finish|end|through|thru|inclu|made|been)`)

// upToRow reports whether the words from token number start name a row and do not say that it is
// worked: "until you reach Row 6", "to Row 6".
func (p *parser) upToRow(start int) bool { return !finishedRow.MatchString(p.words(start)) }

// pieceHas reads "there are", "you have", "the ribbing has", "cuff is" before a number.
func (p *parser) pieceHas() bool {
	start := p.i
	for n := 0; n < 4 && p.tok().kind == tWord && !p.tok().is("has", "have", "are", "is", "measures", "measure", "of"); n++ {
		p.i++
	}
	if p.i > start && p.eat("has", "have", "are", "is") {
		return true
	}
	p.i = start
	if p.eat("there", "you", "piece", "it") {
		return true
	}
	return false
}

// rowsEnd reads what may follow the number of rows: what they come to in length, and
// which of them is the last.
func (p *parser) rowsEnd(u *Until, start int) (*Until, *fault.Fault) {
	if at := p.i; p.eat("and", "or") {
		// "and the scarf measures about 150 cm": about what that comes to
		for n := 0; n < 4 && p.tok().kind == tWord && !p.tok().is("measures", "measure"); n++ {
			p.i++
		}
		measures := p.eat("measures", "measure")
		p.eat("about", "approximately", "approx", "roughly")
		if !measures {
			p.i = at
		} else if _, f := p.lengths(); f != nil {
			return nil, f
		}
	}
	u.End = p.endingRow()
	u.Span = p.from(start)
	if p.orAsLiked(); !u.End.Set {
		u.End = p.endingRow()
	}
	return u, nil
}

// orUntil passes over ", or until the hat is about 4 (4½, 5) cm short of the depth you want"
// behind a number of times, which is what is worked.
func (p *parser) orUntil() {
	start := p.i
	open := p.tok().kind == tOpen
	close := p.matching(p.i)
	if open {
		p.i++
	}
	p.eatKind(tComma)
	if !p.eat("or") || !p.tok().is("until", "till", "to", "as", "for", "however") || open && close < 0 {
		p.i = start
		return
	}
	if open {
		p.i = close + 1
		return
	}
	for !p.tok().first && !p.tok().is("ending", "finishing") {
		switch p.tok().kind {
		case tOpen:
			if c := p.matching(p.i); c > 0 {
				p.i = c
			}
		case tStop, tSemi, tEnd, tComma, tClose, tStar, tDash:
			return
		}
		p.i++
	}
}

// orAsLiked passes over ", or to the length you like", "(or desired length)" behind a
// length or a number of rows, which is what is worked.
func (p *parser) orAsLiked() {
	start := p.i
	open := p.eatKind(tOpen)
	p.eatKind(tComma)
	if p.eat("or") {
		liked := false
		for ; p.tok().kind == tWord && !p.tok().first; p.i++ {
			liked = liked || p.tok().is("length", "long", "like", "want", "wish", "prefer", "desired", "required", "needed", "liked", "size", "longer", "taste")
		}
		if liked && p.ended() && (!open || p.eatKind(tClose)) {
			return
		}
	}
	p.i = start
}

// leftOpen is the fault of a phrase that leaves a number to the reader: "as many times as
// you like".
func (p *parser) leftOpen() *fault.Fault {
	start := p.i
	defer func() { p.i = start }()
	for ; p.tok().kind == tWord && (p.i == start || !p.tok().first); p.i++ {
		if p.tok().is("you") && p.at(1).is("like", "want", "wish", "prefer", "need", "please") || p.tok().is("desired", "required", "preferred") {
			p.i += 2
			return fail(p.from(start), "vague", "\""+p.words(start)+"\" leaves the number to the reader, so nothing can be counted",
				"Give a number of rows or a length: until piece measures 38 cm.")
		}
	}
	return nil
}

// apart reads ", without numbering them", "(these are not numbered)" behind rounds that are
// repeated.
func (b *block) apart() {
	p := b.p
	start := p.i
	open := p.tok().kind == tOpen
	if close := p.matching(p.i); open && close > 0 {
		p.i++
	} else if !p.eatKind(tComma) && p.tok().kind != tDash && !p.tok().is("without") {
		return
	}
	not := false
	for ; p.tok().kind == tWord && !p.tok().first; p.i++ {
		not = not || p.tok().is("without", "not", "don't", "unnumbered")
		if !not || !p.tok().is("numbering", "numbered", "number", "unnumbered") {
			continue
		}
		for p.i++; p.tok().kind == tWord && !p.tok().first; p.i++ {
		}
		if open {
			p.eatKind(tClose)
		}
		switch it := b.items[len(b.items)-1].(type) {
		case *Ref:
			it.Apart = true
			return
		case *Until:
			it.Apart = true
			return
		}
	}
	p.i = start
}

// moreRounds reads "work 3 more rounds as Rnd 2": the rounds that are repeated, and how
// many they come to. Rounds that are like none named are a fault.
func (b *block) moreRounds() (bool, *fault.Fault) {
	p := b.p
	start := p.i
	if !p.eat("work", "make", "crochet", "do") {
		return false, nil
	}
	p.eat("the", "another", "a")
	p.eat("next", "following", "further")
	n, ok := p.num()
	p.eat("more", "further", "additional", "extra", "unnumbered")
	if _, round := roundWord(p.tok()); !ok || !round || p.tok().is("r") {
		p.i = start
		return false, nil
	}
	p.i++
	p.eat("more")
	u := &Until{Span: p.from(start), Rows: n, More: true}
	p.eat("exactly", "worked", "made", "the")
	p.eat("same", "just")
	if p.eat("as", "like", "repeating", "following") {
		p.eat("for", "in")
		if _, round := roundWord(p.tok()); round {
			if it, f := p.referTo(start); f != nil {
				return false, f
			} else if r, ok := it.(*Ref); ok && !r.Times.Set() {
				b.items = append(b.items, r, u)
				b.apart()
				return true, nil
			}
		}
	}
	p.i = start
	if !p.tok().first && p.at(-1).kind != tStop && p.at(-1).kind != tColon || p.optional(start, p.sentenceEnd()) {
		return false, nil
	}
	return false, fail(u.Span, "vague", "the words do not say how these rounds are worked",
		"Name the round that they repeat, for example: Rep Rnd 3 for 4 more rounds.")
}

// roughly passes over "about", "approximately" before a number.
func (p *parser) roughly() {
	if p.at(1).kind == tNumber || p.at(1).kind == tStop && p.at(2).kind == tNumber {
		if p.eat("about", "approximately", "roughly", "around", "approx") {
			p.eatKind(tStop)
		}
	}
}

// soMuchLonger reads "10 cm", "a further 4 in", "about 5 cm more" behind "for": the length that is
// still to come.
func (p *parser) soMuchLonger(start int) *Until {
	at, faults := p.i, len(p.faults)
	if !p.at(-1).is("for") {
		return nil
	}
	if p.eat("a", "another") {
		p.eat("further")
	}
	p.roughly()
	length, f := p.lengths()
	p.eat("more", "longer", "further")
	if p.orAsLiked(); f != nil || length == nil || !p.ended() {
		p.i, p.faults = at, p.faults[:faults]
		return nil
	}
	return &Until{Span: p.from(start), Length: length, Added: true, End: p.endingRow()}
}

// numberedLength reports whether "for" comes next with a number, "for 3 stripes": how long something is
// gone on with.
func (p *parser) numberedLength() bool {
	start := p.i
	defer func() { p.i = start }()
	if !p.eat("for") {
		return false
	}
	for p.eat("a", "another", "further", "the", "next", "about", "approximately", "roughly", "around") {
	}
	_, ok := p.plainNumber()
	return ok
}
