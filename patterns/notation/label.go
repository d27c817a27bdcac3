package notation

import (
	"fmt"
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
	r.Span = p.from(0)
	if p.i == 0 {
		r.Span = Span{p.tok().pos, p.tok().length}
	}
	items, f := p.items(false)
	if f == nil && p.tok().kind != tEnd {
		f = p.stuck()
	}
	r.Items, r.Stated, r.Opening = items, p.stated, p.opening
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
	p.sizesFirst(&l)
	if p.skipsTo(&l) {
		l.Text = p.words(start)
		return l, true
	}
	if p.tok().kind == tNumber && p.tok().frac == 0 && p.at(1).kind == tColon {
		n, _ := p.num()
		p.i++
		l.Numbers, l.Bare = []Range{{From: n, To: n}}, true
		l.Text = p.words(start)
		return l, true
	}
	if n := p.tok(); (n.kind == tOrdinal || ordinalOf(n) > 0) && p.at(1).is("rnd", "round", "row", "rd") {
		num := Num{Span: Span{n.pos, n.length}, Values: []int{max(n.value, ordinalOf(n))}}
		l.Numbers = []Range{{From: num, To: num}}
		l.Row, _ = roundWord(p.at(1))
		p.i += 2
		named = true
	} else if p.ordinals(&l) {
		named = true
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
			if letterOnly && p.tok().kind != tNumber {
				return no()
			}
			p.numbers(&l, ranges)
			if len(l.Numbers) == 0 && !named {
				return no()
			}
		} else if named && p.toks[start].is("foundation", "base", "set", "setup", "beginning", "starting") {
			p.eat("chain", "ch", "ring")
		} else if named && p.toks[start].is("edging", "border", "trim") && p.i == start+1 && p.tok().kind == tColon && p.instructs(p.i+1) {
			// "Edging: Ch 1, …": a round of its own.
			l.Next = One(Span{p.toks[start].pos, p.toks[start].length})
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
	p.sizesBehind(&l)
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
	case p.eatKind(tDash), p.eatKind(tStop), p.eatKind(tEqual):
		if _, round := roundWord(p.at(-2)); len(l.Numbers) == 0 && (!named || p.at(-1).kind == tStop && !round) {
			return no() // "BASE." is a heading
		}
	default:
		return no()
	}
	l.Text = strings.TrimRight(p.words(start), " :.-–—=")
	return l, true
}

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

// ordinals reads "5th and 6th rows", "3rd to 8th rows".
func (p *parser) ordinals(l *Label) bool {
	start := p.i
	var list []Range
	one := func() (Num, bool) {
		t := p.tok()
		n := max(ordinalOf(t), t.value)
		if t.kind != tOrdinal && ordinalOf(t) == 0 {
			return Num{}, false
		}
		p.i++
		return Num{Span: Span{t.pos, t.length}, Values: []int{n}}, true
	}
	for {
		from, ok := one()
		if !ok {
			break
		}
		r := Range{From: from, To: from}
		if p.eat("to", "through") || p.eatKind(tHyphen) || p.eatKind(tDash) {
			if to, ok := one(); ok {
				r.To = to
			}
		}
		if at := p.i; len(p.sizes) > 1 && p.eatKind(tOpen) {
			// 6th to 12th (13th, 14th) rounds
			more := []int{r.To.Values[0]}
			for {
				n, ok := one()
				if !ok {
					break
				}
				more = append(more, n.Values[0])
				p.eatKind(tComma)
			}
			if p.eatKind(tClose) && len(more) == len(p.sizes) {
				if r.From.Values[0] == r.To.Values[0] {
					r.From.Values = more
				}
				r.To.Values = more
			} else {
				p.i = at
			}
		}
		list = append(list, r)
		if !p.eat("and") && !p.eatKind(tComma) {
			break
		}
		p.eat("and")
	}
	row, ok := roundWord(p.tok())
	if !ok || len(list) == 0 || len(list) == 1 && list[0].From.Values[0] == list[0].To.Values[0] && !p.tok().is("rnd", "round", "row", "rd") {
		p.i = start
		return false
	}
	p.i++
	l.Row, l.Numbers = row, list
	return true
}

// numbers reads 5, 5-10, 5 and 6, 3, 5 and 7, 3-end, 4-8 (9, 10, 10).
func (p *parser) numbers(l *Label, ranges bool) {
	for {
		p.eatAll("number")
		from, ok := p.num()
		if !ok {
			return
		}
		r := Range{From: from, To: from}
		switch t := p.tok(); {
		case t.kind == tHyphen, t.kind == tDash && ranges, t.is("to", "through", "thru"):
			back := p.i
			p.i++
			p.eat("rnd", "rnds", "round", "rounds", "row", "rows", "r")
			if to, ok := p.num(); ok && !(t.kind == tDash && p.countNoun()) {
				r.To = to
			} else if !ok && p.eat("end") {
				r.ToEnd = true
			} else {
				p.i = back
			}
		}
		if p.rangeSizes(&r) {
			l.Numbers = append(l.Numbers, r)
			return
		}
		l.Numbers = append(l.Numbers, r)
		back := p.i
		if !p.eatKind(tComma) && !p.tok().is("and") {
			return
		}
		p.eat("and")
		p.eat("rnd", "rnds", "round", "rounds", "row", "rows", "r")
		if p.tok().kind != tNumber {
			p.i = back
			return
		}
		// "Rep Rnds 3 and 4, 2 more times": the 2 is no round.
		at := p.i
		p.num()
		if p.timesWord() {
			p.i = back
			return
		}
		p.i = at
	}
}

// countNoun reports whether the number just read is one of stitches: the 54 of
// "Repeat Rnd 15 - 54 sts".
func (p *parser) countNoun() bool {
	at := p.i
	defer func() { p.i = at }()
	_, ok := p.target()
	return ok
}

// rangeSizes reads the ranges of the other sizes: Rnds 2-3 (2-4, 2-5).
func (p *parser) rangeSizes(r *Range) bool {
	if len(p.sizes) < 2 || p.tok().kind != tOpen || p.at(1).kind != tNumber ||
		p.at(2).kind != tHyphen && p.at(2).kind != tDash {
		return false
	}
	start := p.i
	p.i++
	from, to := r.From.Values, r.To.Values
	for {
		a, ok := p.plainNumber()
		if !ok {
			break
		}
		b := a
		if p.eatKind(tHyphen) || p.eatKind(tDash) {
			if b, ok = p.plainNumber(); !ok {
				break
			}
		}
		from, to = append(from, a), append(to, b)
		if !p.eatKind(tComma) && !p.eatKind(tSemi) {
			break
		}
	}
	if p.tok().kind != tClose || len(from) != len(p.sizes) {
		p.i = start
		return false
	}
	p.i++
	r.From.Values, r.To.Values = from, to
	return true
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
	if n, ok := p.num(); ok && p.i < close {
		if _, ok := roundWord(p.tok()); ok {
			l.Rounds = n
		}
	}
	p.i = start
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
	p.only(l, start)
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

// only takes the names of sizes out of "Adult and Adult Large only", from token
// start up to the current one.
func (p *parser) only(l *Label, start int) {
	text := p.words(start)
	t := strings.TrimPrefix(strings.ToLower(text), "for ")
	if !strings.HasSuffix(t, "only") && !strings.HasPrefix(t, "size") && !strings.HasSuffix(t, " sizes") && !strings.HasSuffix(t, " size") &&
		!p.allSizes(t) {
		return
	}
	t = strings.TrimSpace(strings.TrimSuffix(t, "only"))
	for _, word := range []string{"sizes", "size"} {
		t = strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(t, word), word))
	}
	if t == "all" {
		return
	}
	if group := p.sizeGroup(t); group != nil {
		l.Only = append(l.Only, group...)
		return
	}
	t = strings.NewReplacer(" and ", ",", "&", ",", "+", ",").Replace(t)
	var names []string
	for _, name := range strings.Split(t, ",") {
		if name = strings.TrimSpace(name); p.sizeNamed(name) != "" {
			names = append(names, name) // L/XL may be one size
		} else {
			names = append(names, strings.Split(name, "/")...)
		}
	}
	for _, name := range names {
		name = strings.TrimPrefix(strings.TrimSpace(name), "size ")
		size := p.sizeNamed(name)
		if size != "" {
			l.Only = append(l.Only, size)
		}
		if size == "" && name != "" {
			p.faults = append(p.faults, fail(Span{p.toks[start].pos, len([]rune(text))}, "unknown-size",
				fmt.Sprintf("there is no size %q", name), "The sizes are "+p.sizeNames()+"."))
			l.Only = append(l.Only, name)
		}
	}
}

// sizesFirst reads the sizes that a round is for where they stand before its
// number: "For size Large only, Rnd 3: …", "Adult only: Rnd 7: …".
func (p *parser) sizesFirst(l *Label) {
	start := p.i
	for p.tok().kind != tEnd && p.tok().kind != tStop && p.i-start < 16 && (p.i == start || !p.tok().first) {
		p.i++
		k := p.tok().kind
		if k != tColon && k != tComma && k != tDash {
			continue
		}
		_, round := roundWord(p.at(1))
		if p.at(1).first || !round && !p.at(1).is(skipping...) {
			continue
		}
		faults := len(p.faults)
		if p.words(start) == "All sizes" {
			l.Only = append(l.Only, p.sizes...)
		} else {
			p.only(l, start)
		}
		if len(l.Only) == 0 && p.at(1).is(skipping...) {
			// "Preemie: skip to Rnd 9", "For Newborn size, go to Rnd 5"
			name := strings.TrimPrefix(strings.ToLower(p.words(start)), "for ")
			if s := p.sizeNamed(strings.TrimSpace(strings.TrimSuffix(name, "size"))); s != "" {
				l.Only = append(l.Only, s)
			}
		}
		if len(l.Only) > 0 && (len(p.faults) == faults || p.toks[start].is("for", "size", "sizes")) {
			p.i++
			return
		}
		l.Only, p.faults = nil, p.faults[:faults]
		break
	}
	p.i = start
}

// skipping are words that send a size on to a later round.
var skipping = []string{"skip", "proceed", "go", "continue", "move", "jump", "omit"}

// skipsTo reads "skip to Rnd 9", "proceed to Rnd 9 of Body", "continue with Rnd 9"
// behind the sizes that it is for.
func (p *parser) skipsTo(l *Label) bool {
	start := p.i
	if (len(l.Only) > 0 || p.tok().first && p.tok().is("skip", "proceed")) && p.eat(skipping...) {
		p.eat("on", "straight", "directly")
		if p.eat("to", "with", "at", "from") {
			if row, ok := roundWord(p.tok()); ok {
				p.i++
				if n, ok := p.num(); ok {
					l.SkipTo, l.Row = n, row
					for k := p.tok(); k.kind != tEnd && k.kind != tStop && !k.first; k = p.tok() {
						p.i++
					}
					p.eatKind(tStop)
					return true
				}
			}
		}
	}
	p.i = start
	return false
}

// allSizes reports whether words are names of sizes and nothing else: "Small",
// "Child and Teen".
func (p *parser) allSizes(text string) bool {
	for _, name := range strings.FieldsFunc(strings.ReplaceAll(text, " and ", ","), func(r rune) bool { return r == ',' || r == '&' }) {
		if name = strings.TrimSpace(name); name == "" || p.sizeNamed(name) == "" {
			return false
		}
	}
	return strings.TrimSpace(text) != ""
}

// sizesBehind reads the sizes that a round is for where a dash or a comma stands
// before them: "Rnd 5 – Child and Adult sizes only: …".
func (p *parser) sizesBehind(l *Label) {
	if k := p.tok().kind; k != tDash && k != tComma || len(l.Only) > 0 {
		return
	}
	start := p.i
	p.i++
	first := p.i
	for k := p.tok().kind; k != tColon && k != tEnd && k != tStop && k != tOpen && p.i-start < 16; k = p.tok().kind {
		p.i++
	}
	faults := len(p.faults)
	if p.tok().kind == tColon && p.i > first {
		p.only(l, first)
	}
	if len(l.Only) == 0 || len(p.faults) > faults {
		l.Only, p.faults, p.i = nil, p.faults[:faults], start
	}
}

// sizeNamed is the size that a name stands for: the name itself, its plural
// ("Adults only"), or its first letter where no other size begins with it. It
// is "" for none.
func (p *parser) sizeNamed(name string) string {
	found := ""
	if toks, _ := scan([]Line{{Text: name, Line: 1, Column: 1}}); len(toks) == 2 {
		if n := max(ordinalOf(&toks[0]), toks[0].value); n > 0 && n <= len(p.sizes) && toks[0].kind != tNumber {
			found = p.sizes[n-1] // "2nd and 3rd sizes"
		}
	}
	for _, s := range p.sizes {
		if strings.EqualFold(name, s) {
			return s
		}
		switch {
		case strings.EqualFold(name, s+"s"), len(name) == 1 && len(s) > 1 && strings.EqualFold(name, s[:1]):
			if found != "" {
				return ""
			}
			found = s
		}
	}
	return found
}

// sizeLine reads a line that says which sizes the rounds after it are for:
// "Size Large only:", "Sizes M and L only", "All sizes:".
func (p *parser) sizeLine() (Label, bool) {
	start := p.i
	var l Label
	all := p.eatAll("all", "sizes")
	if !all {
		at := p.i
		p.eat("for")
		sized := p.tok().is("size", "sizes")
		for p.tok().kind != tColon && p.tok().kind != tStop && p.tok().kind != tEnd && p.i-start < 16 && (p.i == start || !p.tok().first) {
			p.i++
		}
		if !sized && !p.at(-1).is("only") {
			p.i = start
			return Label{}, false
		}
		faults := len(p.faults)
		if p.only(&l, at); !sized && len(p.faults) > faults {
			p.i, p.faults = start, p.faults[:faults]
			return Label{}, false
		}
	}
	if !p.eatKind(tColon) {
		p.eatKind(tStop)
	}
	if !p.tok().first && p.tok().kind != tEnd || !all && len(l.Only) == 0 {
		p.i = start
		return Label{}, false
	}
	l.Text = p.words(start)
	return l, true
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
