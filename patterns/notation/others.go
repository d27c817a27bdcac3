package notation

import "whorl/patterns/fault"

// othersToo reads "and every alternate row", "and all even-numbered rnds", "(and all WS rows)" behind
// the one number of a label: every second round from there on, up to the last that is told behind it.
func (p *parser) othersToo(l *Label) {
	start := p.i
	no := func() { p.i = start }
	open := p.eatKind(tOpen)
	if len(l.Numbers) != 1 || len(l.Numbers[0].From.Values) > 1 || l.Numbers[0].ToEnd || l.Numbers[0].From.Values[0] != l.Numbers[0].To.Values[0] ||
		!p.eat("and") || !p.eat("every", "all", "each") {
		no()
		return
	}
	p.eat("following", "subsequent")
	said := false
	for p.eat("even", "odd", "other", "alternate", "second", "ws", "rs", "wrong", "right", "side") || p.tok().kind == tOrdinal && p.tok().value == 2 && p.eatKind(tOrdinal) {
		said = true
		if p.eatKind(tHyphen); p.eat("numbered") {
			break
		}
	}
	p.eat("following", "subsequent")
	_, round := roundWord(p.tok())
	if !said || !round || p.tok().is("r") {
		no()
		return
	}
	p.i++
	p.eat("following", "after", "thereafter")
	if open && !p.eatKind(tClose) || p.tok().kind != tColon && p.tok().kind != tDash && p.tok().kind != tOpen && p.tok().kind != tStop {
		no()
		return
	}
	l.Others = true
}

// others gives labels for every second round their numbers, from those of the rounds that are told
// behind them: "Row 2 and every alternate row" between Rows 1, 3, 5 and 7 is Rows 2, 4 and 6.
func (t *Text) others() (faults fault.List) {
	for i, r := range t.Rounds {
		l := &r.Label
		if !l.Others {
			continue
		}
		from := l.Numbers[0].From
		first, last := from.Values[0], 0
		told := map[int]bool{}
		for _, after := range t.Rounds[i+1:] {
			if len(after.Label.Numbers) == 0 {
				continue
			}
			if n := after.Label.Numbers[0].From.Values[0]; n <= first {
				break // they begin anew
			} else if told[n] = true; n > last {
				last = max(n, after.Label.highest())
			}
		}
		if last == 0 {
			faults = append(faults, fail(from.Span, "no-end", "the words do not say which is the last of these rounds",
				"Give its number, for example: Row 2 and every other row to Row 10."))
			continue
		}
		for n := first + 2; n < last; n += 2 {
			if !told[n] {
				one := Num{Span: from.Span, Values: []int{n}}
				l.Numbers = append(l.Numbers, Range{From: one, To: one})
			}
		}
	}
	return faults
}
