package notation

import (
	"strings"

	"whorl/patterns/fault"
)

// refer reads a reference to rounds written before: "rep rnds 3 and 4", "rep
// last 2 rows 3 more times", "work as for rnd 3". The word rep has been read.
func (p *parser) refer() (Item, *fault.Fault) {
	start := p.i
	if p.at(-1).is("rep", "repeat", "repeating") && p.i > 0 {
		start--
	} else {
		worked := p.eat("work", "worked", "complete", "make", "finish")
		p.eat("the")
		again := p.i
		if worked && p.eat("last", "previous", "prev") {
			// "Work the last round 4 (5, 6) more times"
			p.num()
			if _, ok := roundWord(p.tok()); ok {
				p.i++
				if _, _, ok := p.times(); ok {
					p.i = again
					return p.referTo(start)
				}
			}
			p.i = again
		}
		if worked || p.at(-1).is("then") || p.at(-1).is("the") && p.at(-2).is("then") {
			// "then work the 8th round once more", "then Rows 4 and 5 again"
			it, f := p.referTo(start)
			if r, ok := it.(*Ref); ok && f == nil && (r.Times.Set() || p.eat("again") || p.tok().kind == tClose && p.depth > 1 || worked && p.changeAhead()) && (len(r.Rounds) > 0 || r.Called != "") {
				return r, nil
			}
			p.i = again
		}
		if r := p.roundsAsPiece(start); worked && r != nil {
			return r, nil
		}
		if at := p.i; worked && p.eat("in") {
			// "Work in the same way as Rnd 4"
			p.eat("exactly", "just", "the")
			if p.eat("the"); !p.eat("same") || !p.eat("way", "manner", "fashion") || !p.tok().is("as") {
				p.i = at
			}
		}
		if !p.eat("as", "same", "like", "alternate") {
			p.i = start
			return nil, nil
		}
		p.eat("as")
		p.eat("given", "worked", "before")
		p.eat("for", "in")
		if p.onAnotherEdge() {
			return &Note{Span: p.from(start), Text: p.words(start)}, nil
		}
		if r := p.asPiece(start); r != nil {
			return r, nil
		}
		if p.toks[start].is("complete", "make", "finish") || p.tok().is("follows", "below") {
			p.i = start
			return nil, nil
		}
		if _, round := roundWord(p.tok()); !round && !p.tok().is("the", "last", "previous", "prev") && p.tok().kind != tOrdinal && p.toks[start].is("work") {
			return nil, p.failAt(start, "vague", "the words do not say which round is meant", "Name it by its number: Rep Rnd 3.")
		}
	}
	return p.referTo(start)
}

// referTo goes on with the rounds that are meant.
func (p *parser) referTo(start int) (Item, *fault.Fault) {
	p.eat("the", "these", "that", "those")
	r := &Ref{}
	if at := p.i; p.at(-1).is("these") {
		// "Rep these 2 rows until …"
		if n, ok := p.num(); ok {
			if _, round := roundWord(p.tok()); round {
				p.i, r.Last = at, n
			}
		}
		p.i = at
	}
	if at := p.i; p.eat("from") || p.tok().kind == tOrdinal {
		// "Repeat from 3rd to 8th rows twice more"
		var l Label
		if p.ordinals(&l) {
			r.Rounds, r.Series = l.Numbers, l.Series
			p.eat("throughout", "alternately")
			if n, _, ok := p.times(); ok {
				r.Times = n
				p.orUntil()
			}
			r.End = p.endingRow()
			r.Span = p.from(start)
			return r, nil
		}
		p.i = at
	}
	if p.eat("last", "previous", "these", "prev", "this") || r.Last.Set() {
		n, ok := p.num()
		if !ok {
			n = One(p.from(start))
		}
		r.Last = n
		if _, ok := roundWord(p.tok()); !ok {
			return nil, nil
		}
		p.i++
	} else {
		if _, ok := roundWord(p.at(1)); ok && p.tok().kind == tWord && !roundNext(p.tok()) && (p.tok().is(stretches...) || !p.stitchy(p.i, p.i+1)) && p.at(2).kind == tNumber && !p.timesAt(2) {
			r.Series = p.tok().raw // "rep brim Rnd 1"
			p.i++
		}
		if r.Called = p.calledRound(); r.Called == "" {
			if _, ok := roundWord(p.tok()); !ok {
				return nil, nil
			}
			p.i++
			var l Label
			numbers := p.i
			p.numbers(&l, true)
			if len(l.Numbers) == 0 {
				return nil, nil
			}
			r.Rounds = l.Numbers
			p.lastToRound(r, numbers)
		}
		if at := p.i; p.eat("of", "from", "for") {
			if r.Piece = p.pieceName(); r.Piece == "" {
				r.Piece = p.motifName()
			}
			if r.Piece == "" {
				r.Piece = p.partName()
			}
			if r.Piece == "" {
				p.i = at
			}
		}
	}
	p.eat("alternately", "alternatively", "throughout")
	if p.eat("in") && !p.eat("turn", "alternation") {
		p.i--
	}
	if p.eat("for") && !p.eat("pattern", "pat", "patt") {
		p.i--
	}
	at := p.i
	p.eatKind(tComma)
	if n, _, ok := p.times(); ok {
		r.Times = n
		p.orUntil()
		at = p.i
		p.eatKind(tComma)
	}
	p.i = at
	r.End = p.endingRow()
	p.eatAll("for", "pattern")
	p.eatAll("for", "pat")
	if p.eat("once", "twice") && p.eat("more") {
		r.Times = Num{Span: p.from(start), Values: []int{map[bool]int{true: 1, false: 2}[p.at(-2).is("once")]}}
	}
	r.Span = p.from(start)
	return r, nil
}

// calledRound reads the name of a round that has no number: "Rib Row", "picot round"; ""
// for none.
func (p *parser) calledRound() string {
	start := p.i
	for n := 0; n < 2 && p.tok().kind == tWord && !p.tok().is(notNames...) && !p.tok().is("previous", "this", "that", "these", "those", "ws", "rs", "other", "both"); n++ {
		p.i++
		p.eatKind(tHyphen)
		if _, round := roundWord(p.tok()); round && p.tok().is("row", "round", "rnd") && (p.at(1).kind != tNumber || p.timesAt(1)) {
			p.i++
			return p.words(start)
		}
	}
	p.i = start
	return ""
}

// timesAt reports whether the number n tokens on is how often something is worked: the 2 of "Rep Rib Rnd
// 2 more times", and not that of "Rep Rib Rnd 2 once more".
func (p *parser) timesAt(n int) bool {
	start := p.i
	p.i += n
	_, _, ok := p.times()
	ok = ok && p.tok().kind != tNumber // "Rep Rib Rnd 2 x 3"
	p.i = start
	return ok
}

// onAnotherEdge reads "edging along the other side", said of what is worked the same
// again elsewhere, to the end of the sentence.
func (p *parser) onAnotherEdge() bool {
	start := p.i
	if p.eat(headings...) {
		p.eat("rnd", "round", "rounds", "row", "rows")
		if p.eat("along", "on", "around", "round", "across", "to", "at", "down", "up", "over") {
			p.i = p.sentenceEnd()
			return true
		}
	}
	p.i = start
	return false
}

// endingRow reads ", ending with Row 2", "ending with a WS row", "ending after an
// RS rnd": the last round of the repeat.
func (p *parser) endingRow() (e Ending) {
	start := p.i
	p.eatKind(tComma)
	p.eat("and", "but")
	if !p.eat("ending", "finishing", "end") {
		p.i = start
		return Ending{}
	}
	at := p.i
	p.eat("the")
	if e.Within = p.eat("last", "final") && p.eat("rep", "repeat"); !e.Within {
		p.i = at
	}
	if !p.eat("with", "on", "after", "at", "by") {
		p.i = start
		return Ending{}
	}
	p.eat("a", "an", "the", "working")
	switch {
	case p.eat("rs") || p.eatAll("right", "side"):
		e.Side = 1
	case p.eat("ws") || p.eatAll("wrong", "side"):
		e.Side = 2
	}
	var nth Label
	if p.ordinals(&nth) {
		e.Round = nth.Numbers[0].From // "with a 4th row"
	} else if _, ok := roundWord(p.tok()); ok {
		p.i++
		if n, ok := p.num(); ok {
			e.Round = n
		}
	}
	if e.Side == 0 && !e.Round.Set() || e.Within && !e.Round.Set() {
		p.i = start
		return Ending{}
	}
	for p.eat("of", "the", "pattern", "pat", "repeat", "complete", "completed", "facing") {
	}
	e.Set, e.Span = true, p.from(start)
	return e
}

// until reads "until piece measures 38 (46, 51, 55) cm", "until 62 (70, 78)
// rows are complete".
func (p *parser) until() (Item, *fault.Fault) {
	start := p.i
	if u := p.openLength(); u != nil {
		return u, nil
	}
	p.eat("continue", "cont", "work", "rep", "repeat")
	p.eat("even")
	if !p.eat("until", "till", "for") && !(p.eat("up") && p.eat("to")) {
		p.i = start
		return nil, nil
	}
	if p.eat("and") {
		p.eat("including")
	}
	if u := p.soMuchLonger(start); u != nil {
		return u, nil
	}
	if u, f := p.rowsTold(start); u != nil || f != nil {
		if f != nil {
			return nil, f
		}
		return u, nil
	}
	if p.eat("there", "you", "piece") {
		p.eat("are", "have", "has")
	}
	if n, ok := p.num(); ok {
		had := p.at(-1).is("have", "has") || p.toks[start].is("until", "till") // "until you have 48 sts"
		if _, ok := p.target(); ok || p.tok().is("rem", "remain", "remains") {
			remain := p.eat("rem", "remain", "remains", "left")
			if !remain && p.eat("are", "is") {
				remain = p.eat("left", "rem", "remaining")
			}
			end := p.endingRow()
			if k := p.tok().kind; (remain || had) && (k == tStop || k == tEnd || k == tComma || k == tSemi || k == tOpen || k == tDash) {
				return &Until{Span: p.from(start), Stitches: n, End: end}, nil
			}
		}
	}
	p.i = start
	if u, f := p.untilMeasures(); u != nil || f != nil {
		if f != nil {
			return nil, f
		}
		return u, nil
	}
	return nil, nil
}

// units are the units of length, in millimetres.
var units = map[string]float64{
	"cm": 10, "cms": 10, "mm": 1, "in": 25.4, "ins": 25.4, "inch": 25.4, "inches": 25.4, "\"": 25.4,
	"ft": 304.8, "feet": 304.8, "foot": 304.8, "m": 1000, "metre": 1000, "metres": 1000, "meter": 1000, "meters": 1000, "yard": 914.4, "yards": 914.4,
}

// lengths reads 38 (46, 51, 55) cm, 15½ in, 15 1/2".
func (p *parser) lengths() ([]float64, *fault.Fault) {
	start := p.i
	var l []float64
	unit := 0.0
	read := func() bool {
		t := p.tok()
		if t.kind != tNumber {
			return false
		}
		v := float64(t.value) + t.frac
		p.i++
		if p.tok().kind == tNumber && p.at(1).kind == tSlash {
			// 15 1/2
			if d := p.at(2); d.kind == tNumber && d.value > 0 {
				v += float64(p.tok().value) / float64(d.value)
				p.i += 3
			}
		} else if p.tok().kind == tNumber && p.tok().frac > 0 && p.tok().value == 0 {
			v += p.tok().frac
			p.i++
		}
		if u := units[p.tok().text]; u > 0 {
			unit = u
			p.i++
		}
		l = append(l, v)
		return true
	}
	bad := func() ([]float64, *fault.Fault) {
		return nil, p.failAt(start, "length", "cannot work out this length",
			"Write, for example: 38 cm, or 15½ in; with one number for each size: 38 (46, 51) cm.")
	}
	if !read() {
		return bad()
	}
	if at, sign := p.i, p.tok().text; len(p.sizes) > 1 && unit == 0 && (p.tok().kind == tSlash || sign == "|") {
		for p.tok().text == sign && p.at(1).kind == tNumber {
			p.i++
			read()
		}
		if len(l) == 2 && l[0] < l[1] && (l[1] == 2 || l[1] == 4 || l[1] == 8) {
			p.i, l, unit = at, l[:1], 0 // ½ in
		}
	}
	for p.tok().kind == tOpen && p.at(1).kind == tNumber {
		close := p.matching(p.i)
		if close < 0 {
			break
		}
		back, n, u := p.i, len(l), unit
		p.i++
		for read() {
			if !p.eatKind(tComma) && !p.eatKind(tSlash) && !p.eatKind(tColon) && !p.eatKind(tSemi) {
				break
			}
		}
		if p.i != close || len(p.sizes) < 2 {
			p.i, l, unit = back, l[:n], u
			break
		}
		p.i++
	}
	if u := units[p.tok().text]; u > 0 {
		unit = u
		p.i++
	}
	if unit == 0 {
		return bad()
	}
	if len(l) != 1 && len(l) != len(p.sizes) {
		p.faults = append(p.faults, fail(p.from(start), "size-list",
			strings.TrimSpace(p.words(start))+": a length for each size is wanted, or one for all",
			"The sizes are "+p.sizeNames()+"."))
	}
	for i := range l {
		l[i] *= unit
		if l[i] <= 0 || l[i] > 100000 {
			return bad()
		}
	}
	return l, nil
}
