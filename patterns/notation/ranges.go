package notation

import (
	"fmt"
	"slices"
)

// ordinalOf is the number of an ordinal in words, else 0.
func ordinalOf(t *token) int {
	if t.is("first") {
		return 1
	}
	if t.kind != tWord {
		return 0
	}
	return ordinalWords[t.text]
}

// ordinal reads "5th", with one for each size "12th (13th, 14th)".
func (p *parser) ordinal() (Num, bool) {
	start := p.i
	n := p.nth()
	if n == 0 {
		return Num{}, false
	}
	num := Num{Span: p.from(start), Values: []int{n}}
	if at := p.i; len(p.sizes) > 1 && p.eatKind(tOpen) {
		values := num.Values
		for n := p.nth(); n > 0; n = p.nth() {
			values = append(values, n)
			p.eatKind(tComma)
		}
		if p.eatKind(tClose) && len(values) == len(p.sizes) {
			num = Num{Span: p.from(start), Values: values}
		} else {
			p.i = at
		}
	}
	return num, true
}

// stretches are words before "round" by which a stretch of rounds is numbered anew.
var stretches = []string{"dec", "decrease", "inc", "increase", "brim", "crown", "edging", "border", "band", "trim", "shaping", "cuff", "body"}

// ordinals reads "5th and 6th rows", "3rd to 8th rows", "11th (12th, 13th) to 25th
// (28th, 30th) rounds", "26th (29th, 31st) round".
func (p *parser) ordinals(l *Label) bool {
	start := p.i
	var list []Range
	for {
		from, ok := p.ordinal()
		if !ok {
			break
		}
		r := Range{From: from, To: from}
		if p.eat("to", "through") || p.eatKind(tHyphen) || p.eatKind(tDash) {
			if to, ok := p.ordinal(); ok {
				r.To = to
			}
		}
		list = append(list, r)
		if !p.eat("and") && !p.eatKind(tComma) {
			break
		}
		p.eat("and")
	}
	series := ""
	if _, round := roundWord(p.at(1)); len(list) > 0 && round && !p.at(1).is("r") && p.tok().kind == tWord && (p.tok().is(stretches...) || !p.stitchy(p.i, p.i+1)) && !roundNext(p.tok()) {
		series = p.tok().raw // "2nd to 4th brim rounds"
		p.i++
	}
	row, ok := roundWord(p.tok())
	one := len(list) == 1 && list[0].From.Values[0] == list[0].To.Values[0] && len(list[0].To.Values) == 1
	if bare := !ok && start > 0 && p.toks[start-1].is("as", "for", "rep", "repeat") && (p.ended() || p.tok().first); bare && len(list) > 0 {
		l.Numbers = list // "4th row: As 2nd"
		return true
	}
	if !ok || len(list) == 0 || one && !p.tok().is("rnd", "round", "row", "rd") {
		p.i = start
		return false
	}
	p.i++
	l.Row, l.Numbers = row, list
	if series != "" {
		l.Series = series
	}
	return true
}

// numbers reads 5, 5-10, 5 and 6, 3, 5 and 7, 3-end, 4-8 (9, 10, 10).
func (p *parser) numbers(l *Label, ranges bool) {
	began := p.at(-2).is("from")
	for {
		p.eatAll("number")
		if r, ok := p.bareRanges(); ok {
			l.Numbers = append(l.Numbers, r)
			return
		}
		if p.bracketedRanges(l) {
			return
		}
		from, ok := p.num()
		if !ok {
			return
		}
		r := Range{From: from, To: from}
		switch t := p.tok(); {
		case t.kind == tHyphen, t.kind == tDash && ranges, t.is("to", "through", "thru"), began && t.is("until", "till") && p.at(1).is("rnd", "round", "row", "rd"):
			if len(l.Numbers) > 0 && t.kind == tWord && p.at(1).is("rnd", "round", "row") {
				break // "Rep Rows 3 and 4 to Row 17"
			}
			back := p.i
			p.i++
			p.eat("rnd", "rnds", "round", "rounds", "row", "rows", "r", "rd", "rds")
			if to, ok := p.num(); ok && !(t.kind == tDash && p.countNoun()) {
				r.To = to
			} else if !ok && (p.eat("end") || p.eatAll("the", "end")) {
				r.ToEnd = true
			} else {
				p.i = back
			}
		default:
			r.ToEnd = p.onwardsTo()
		}
		if list := p.everyOther(r); list != nil {
			l.Numbers = append(l.Numbers, list...)
			return
		}
		if p.rangeSizes(&r) || p.eachSizesRange(l, &r) {
			l.Numbers = append(l.Numbers, r)
			return
		}
		if p.pairSizes(l, &r) {
			return
		}
		l.Numbers = append(l.Numbers, r)
		back := p.i
		if !p.eatKind(tComma) && !p.tok().is("and") {
			return
		}
		p.eat("and")
		p.eat("rnd", "rnds", "round", "rounds", "row", "rows", "r", "rd", "rds")
		if p.tok().kind != tNumber || p.sizesToColon() {
			p.i = back
			return
		}
		// "Rep Rnds 3 and 4, 2 more times": the 2 is no round.
		at, comma := p.i, p.at(-1).kind == tComma
		p.num()
		if p.timesWord() || comma && p.tok().is("rows", "rounds", "rnds", "more") && !p.ends(p.i+1) {
			p.i = back // nor is the 8 of "Rep Row 2, 8 rows in A"
			return
		}
		p.i = at
	}
}

// bareNumbers reads the number of a round alone, at the beginning of a line: "3:", and, with work
// behind it, "3.", "3)", "(3)", "3 -", "3-5.". A list numbered so that tells of no work is none.
func (p *parser) bareNumbers(l *Label, ranges bool) bool {
	start := p.i
	no := func() bool { p.i, l.Numbers, l.Bare = start, nil, false; return false }
	if p.tok().kind == tNumber && p.tok().frac == 0 && p.at(1).kind == tColon {
		n, _ := p.num()
		p.i++
		l.Numbers, l.Bare = []Range{{From: n, To: n}}, true
		return true
	}
	if !p.tok().first {
		return false
	}
	open := p.eatKind(tOpen)
	if p.tok().kind != tNumber || p.tok().frac != 0 {
		return no()
	}
	p.numbers(l, ranges)
	if p.at(1).kind == tClose {
		p.eatKind(tStop) // "3.)"
	}
	closed := p.eatKind(tClose)
	dash := p.tok().kind == tDash
	if ended := p.eatKind(tStop) || p.eatKind(tColon) || p.eatKind(tDash); len(l.Numbers) == 0 || !closed && (open || !ended) || dash && !p.at(-1).spaced && !p.tok().spaced || p.tok().first {
		return no()
	}
	carries := p.tok().is("with", "in", "into", "using", "change", "working", "starting") && p.evident(p.i, p.lineEnd())
	if p.tok().is("turn", "join", "fasten") || !carries && !p.magicRingAhead() && !p.instructs(p.i) {
		return no() // "72. Turn." is a count
	}
	l.Bare = true
	return true
}

// listed takes a line of a numbered list in which nothing is worked as a note: "2. Sew the ears
// to the head."
func (p *parser) listed(b *block) bool {
	start := p.i
	if !p.tok().first || p.tok().kind != tNumber || p.at(1).kind != tStop && p.at(1).kind != tClose {
		return false
	}
	p.i += 2
	if line := p.lineEnd(); p.tok().kind != tWord || p.tok().first || p.ends(p.i) || p.evident(p.i, line) || p.instructs(p.i) {
		p.i = start
		return false
	}
	return p.note(b, start, p.sentenceEnd())
}

// onwardsTo reads "onwards", "and on", "and all following rows" behind the number of a round:
// it and those after it.
func (p *parser) onwardsTo() bool {
	start := p.i
	if p.eatKind(tPlus) || p.eat("onward", "onwards") {
		return true
	}
	if p.eat("and") && (p.eat("onward", "onwards", "on", "up") || p.eat("all") && p.eat("following", "subsequent", "remaining", "later") && p.eat("rows", "rounds", "rnds")) && p.tok().kind == tColon {
		return true
	}
	p.i = start
	if p.eat("until", "till", "to") {
		p.eat("you", "it", "the")
		p.eat("are", "is")
		if p.eat("you're", "done", "finished", "complete", "end") && p.tok().kind == tColon {
			return true // "Row 3 until you are done:"
		}
	}
	p.i = start
	return false
}

// everyOther reads "and every even-numbered rnd through Rnd 8", "and every other row
// to Row 12" behind a number: the rounds by twos. Nil when it is not so.
func (p *parser) everyOther(r Range) []Range {
	start := p.i
	no := func() []Range { p.i = start; return nil }
	if !p.eat("and") || !p.eat("every", "all") || !p.eat("even", "odd", "other", "alternate", "following", "second") {
		return no()
	}
	p.eatKind(tHyphen)
	p.eat("numbered")
	p.eat("alternate")
	if _, ok := roundWord(p.tok()); !ok {
		return no()
	}
	p.i++
	if !p.eat("through", "to", "until", "up") {
		return no()
	}
	p.eat("to", "and")
	p.eat("including")
	p.eat("rnd", "round", "row")
	to, ok := p.num()
	first := r.From.For(0)
	if !ok || len(r.From.Values) > 1 || slices.Min(to.Values) < first || slices.Max(to.Values)-first > 400 {
		return no()
	}
	var list []Range
	for n := first; n <= slices.Max(to.Values); n += 2 {
		one := Num{Span: r.From.Span, Values: []int{n}}
		last := one
		if n > slices.Min(to.Values) {
			// Not in every size: a range that ends before it begins is none.
			last.Values = nil
			for _, v := range to.Values {
				last.Values = append(last.Values, min(n, max(v, n-1)))
			}
		}
		list = append(list, Range{From: one, To: last})
	}
	return list
}

// countNoun reports whether the number just read is one of stitches: the 54 of
// "Repeat Rnd 15 - 54 sts".
func (p *parser) countNoun() bool {
	at := p.i
	defer func() { p.i = at }()
	_, ok := p.target()
	return ok
}

// bracketedRanges reads rounds of each size that all stand in brackets: Rnds [13-14, 13-16, 13-18], Rnd (12, 14, 14).
func (p *parser) bracketedRanges(l *Label) bool {
	start := p.i
	if len(p.sizes) < 2 || len(l.Numbers) > 0 || !p.eatKind(tOpen) {
		return false
	}
	var from, to []int
	for {
		a, ok := p.plainNumber()
		if !ok {
			break
		}
		b := a
		if p.eatKind(tHyphen) || p.eatKind(tDash) || p.eat("to", "through", "thru", "and") {
			if b, ok = p.plainNumber(); !ok {
				break
			}
		}
		from, to = append(from, a), append(to, b)
		if !p.eatKind(tComma) && !p.eatKind(tSemi) && !p.eatKind(tSlash) && !p.eatKind(tColon) {
			break
		}
	}
	closed := p.eatKind(tClose)
	span := p.from(start)
	switch n := len(from); {
	case closed && n == len(p.sizes):
	case closed && n == len(p.forSizes):
		from, to = p.spread(from), p.spread(to)
	case closed && n > 1 && p.tok().kind == tColon:
		p.report(fail(span, "size-list", fmt.Sprintf("%d numbers for %s", n, sizesHere(p.sizes)),
			"Write one number for each size, smallest first: "+p.sizeNames()+"."))
	default:
		p.i = start
		return false
	}
	l.Numbers = append(l.Numbers, Range{From: Num{Span: span, Values: from}, To: Num{Span: span, Values: to}})
	return true
}

// pairSizes reads the other sizes' rounds behind the second of two: Rnds 17 and 18 (17
// and 18, 18 and 19), or the first of them alone where a size has one: (17, 18 and 19).
func (p *parser) pairSizes(l *Label, r *Range) bool {
	n := len(l.Numbers)
	if len(p.sizes) < 2 || n != 1 || p.tok().kind != tOpen || p.at(1).kind != tNumber || p.at(-2).kind != tWord || !p.at(-2).is("and") {
		return false
	}
	first := l.Numbers[0]
	if len(first.From.Values) > 1 || len(r.From.Values) > 1 || first.From.Values[0] != first.To.Values[0] || r.From.Values[0] != first.From.Values[0]+1 {
		return false
	}
	start, and := p.i, false
	p.i++
	from, to := []int{first.From.Values[0]}, []int{r.From.Values[0]}
	for {
		a, ok := p.plainNumber()
		if !ok {
			break
		}
		b := a
		if p.eat("and") {
			if b, ok = p.plainNumber(); !ok || b != a+1 {
				break
			}
			and = true
		}
		from, to = append(from, a), append(to, b)
		if !p.eatKind(tComma) && !p.eatKind(tSemi) {
			break
		}
	}
	if p.tok().kind != tClose || !and || len(from) != len(p.sizes) && len(from) != len(p.forSizes) {
		p.i = start
		return false
	}
	if len(from) != len(p.sizes) {
		from, to = p.spread(from), p.spread(to)
	}
	p.i++
	first.From.Values, first.To.Values = from, to
	l.Numbers[0] = first
	return true
}

// rangeSizes reads the ranges of the other sizes: Rnds 2-3 (2-4, 2-5), R6-R13 (R6-R17),
// Rounds 2 to 3 (2 to 4).
func (p *parser) rangeSizes(r *Range) bool {
	if len(p.sizes) < 2 || p.tok().kind != tOpen {
		return false
	}
	start := p.i
	p.i++
	from, to, ranges := p.rangeList(r.From.Values, r.To.Values, tComma, tSemi, tSlash)
	switch {
	case p.tok().kind != tClose || ranges == 0:
		p.i = start
		return false
	case len(from) == len(p.sizes):
	case len(from) == len(p.forSizes):
		from, to = p.spread(from), p.spread(to)
	default:
		p.i = start
		return false
	}
	p.i++
	r.From.Values, r.To.Values = from, to
	return true
}

// rangeList reads "2-4, 2-5", "R6-R17", "5", and a dash for none, behind the ranges before, between such
// signs, and tells how many of them are from one round to another.
func (p *parser) rangeList(from, to []int, between ...tokenKind) (_, _ []int, ranges int) {
	number := func() (int, bool) {
		if _, round := roundWord(p.tok()); round && p.at(1).kind == tNumber {
			p.i++
		}
		return p.plainNumber()
	}
	for {
		a, ok := number()
		if k := p.tok().kind; !ok && (k == tDash || k == tHyphen) && p.at(1).kind != tNumber {
			p.i++ // none
		} else if !ok {
			return from, to, ranges
		}
		b := a
		if ok && (p.eatKind(tHyphen) || p.eatKind(tDash) || p.eat("to", "through", "thru")) {
			if b, ok = number(); !ok {
				return from, to, ranges
			}
			ranges++
		}
		from, to = append(from, a), append(to, b)
		if !slices.Contains(between, p.tok().kind) {
			return from, to, ranges
		}
		p.i++
	}
}

// bareRanges reads the ranges of all sizes without brackets, "13-15/13-16/13-17", "5/5-6/5-7". With commas,
// "2-4, 2-5, 2-6", they have to begin alike, or they are rounds of every size.
func (p *parser) bareRanges() (Range, bool) {
	if start := p.i; len(p.sizes) > 1 {
		for _, sign := range []tokenKind{tSlash, tComma} {
			from, to, ranges := p.rangeList(nil, nil, sign)
			alike := ranges > 0 && (sign == tSlash || slices.Min(from) == slices.Max(from) && ranges == len(from))
			if alike && len(from) == len(p.forSizes) && len(from) > 1 {
				from, to = p.spread(from), p.spread(to)
			}
			if alike && len(from) == len(p.sizes) {
				span := p.from(start)
				return Range{From: Num{Span: span, Values: from}, To: Num{Span: span, Values: to}}, true
			}
			p.i = start
		}
	}
	return Range{}, false
}
