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
	r.Label = l
	r.Span = p.from(0)
	if p.i == 0 {
		r.Span = Span{p.tok().pos, p.tok().length}
	}
	items, f := p.items(false)
	if f == nil && p.tok().kind != tEnd {
		f = p.stuck()
	}
	r.Items, r.Stated = items, p.stated
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
	var l Label
	start := p.i
	no := func() (Label, bool) { p.i = start; return Label{}, false }
	named := false
	if p.tok().kind == tOrdinal && p.at(1).is("rnd", "round", "row", "rd") {
		n := p.tok()
		num := Num{Span: Span{n.pos, n.length}, Values: []int{n.value}}
		l.Numbers = []Range{{From: num, To: num}}
		l.Row, _ = roundWord(p.at(1))
		p.i += 2
		named = true
	} else {
		for p.tok().is("next", "last", "final", "set", "setup", "up", "foundation", "base", "dec",
			"decrease", "inc", "increase", "edging", "first", "beginning", "starting") &&
			!(p.tok().is("dec", "inc", "decrease", "increase") && p.at(1).kind == tNumber) {
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
			p.i++
			if letterOnly && p.tok().kind != tNumber {
				return no()
			}
			p.numbers(&l)
			if len(l.Numbers) == 0 && !named {
				return no()
			}
		} else if named && p.toks[start].is("foundation", "base", "set", "setup", "beginning", "starting") {
			p.eat("chain", "ch")
		} else {
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
	switch {
	case p.eatKind(tColon):
		p.eatKind(tDash)
	case p.eatKind(tDash), p.eatKind(tStop), p.eatKind(tEqual):
		if len(l.Numbers) == 0 && !named {
			return no()
		}
	default:
		return no()
	}
	l.Text = strings.TrimRight(p.words(start), " :.-–—=")
	return l, true
}

// numbers reads 5, 5-10, 5 and 6, 3, 5 and 7, 3-end, 4-8 (9, 10, 10).
func (p *parser) numbers(l *Label) {
	for {
		p.eatAll("number")
		from, ok := p.num()
		if !ok {
			return
		}
		r := Range{From: from, To: from}
		switch t := p.tok(); {
		case t.kind == tHyphen, t.kind == tDash, t.is("to", "through", "thru"):
			back := p.i
			p.i++
			if to, ok := p.num(); ok {
				r.To = to
			} else if p.eat("end") {
				r.ToEnd = true
			} else {
				p.i = back
			}
		}
		l.Numbers = append(l.Numbers, r)
		back := p.i
		if !p.eatKind(tComma) && !p.tok().is("and") {
			return
		}
		p.eat("and")
		p.eat("rnd", "rnds", "round", "rounds", "row", "rows")
		if p.tok().kind != tNumber {
			p.i = back
			return
		}
	}
}

// labelNote reads a bracket in a label: (RS), (6 rnds), (dec rnd), (Adult only).
func (p *parser) labelNote(l *Label) bool {
	close := p.matching(p.i)
	if close < 0 {
		return false
	}
	end := p.at(close - p.i + 1)
	if !(end.kind == tColon || end.kind == tDash || end.kind == tStop || end.kind == tOpen ||
		end.kind == tEqual) {
		return false
	}
	p.i++
	start := p.i
	for p.i < close {
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
	l.only(p.words(start), p.sizes)
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

// only takes the names of sizes out of "Adult and Adult Large only".
func (l *Label) only(text string, sizes []string) {
	t := strings.ToLower(text)
	if !strings.Contains(t, "only") && !strings.HasPrefix(t, "size") {
		return
	}
	t = strings.ReplaceAll(strings.ReplaceAll(t, "only", ""), "and", ",")
	t = strings.TrimPrefix(strings.TrimPrefix(strings.TrimSpace(t), "sizes"), "size")
	for _, name := range strings.FieldsFunc(t, func(r rune) bool { return r == ',' || r == '&' || r == '/' }) {
		name = strings.TrimSpace(strings.TrimSpace(name))
		for _, s := range sizes {
			if strings.EqualFold(name, s) {
				l.Only = append(l.Only, s)
			}
		}
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
