package notation

import "whorl/patterns/fault"

// onward reads "continue in this manner, working 1 more sc between increases each
// rnd", "continue increasing in the same way": rounds that go on as those before them
// did. Until when, the label or an Until says.
func (p *parser) onward() (Item, *fault.Fault) {
	start := p.i
	// "Work in the same way", "Keep going in this manner", "Continue as established":
	// only with what is different along the sides.
	sides := false
	if p.tok().is(shapingVerbs...) && p.at(1).is("in", "as", "like") {
		// "Dec in same manner until 12 sts rem"
	} else if p.shapesEvery() {
		p.eat("then", "now", "next")
	} else if !p.eat("continue", "cont", "continuing", "proceed") {
		if sides = p.eat("work", "working", "keep", "carry", "go"); !sides {
			return nil, nil
		}
		p.eat("going", "on", "working", "crocheting", "repeating")
		if even := p.eat("even", "straight"); p.tok().is("in", "as") && (even || p.patternUntil()) {
			sides = false
		}
		if !p.tok().is("in", "as") && !(p.tok().is(shapingVerbs...) && p.at(1).is("in", "as", "like", "this", "until", "till", "every", "each", "on")) {
			p.i = start
			return nil, nil
		}
	}
	end := p.sentenceEnd()
	r := &Ref{Onward: true}
	grows, said := p.eat("to"), p.i
	grows = p.eat(shapingVerbs...) || grows && p.at(-1).is("inc", "increase")
	sides = sides && !grows
	if n, ok := p.num(); ok && grows && n.Set() {
		// "decrease 8 sts on every round"
		p.target()
		every := 1
		for p.eat("on", "in", "each", "every", "rnd", "round", "row") {
			if p.at(-1).is("each", "every") && p.alternate() {
				every = 2
				continue
			}
			r.Every = r.Every || p.at(-1).is("each", "every") && p.tok().is("rnd", "round", "row")
			if p.at(-1).is("in") && p.tok().is("this", "the", "same") {
				p.i--
				break
			}
		}
		if r.Every || every > 1 {
			r.Change = &Change{Span: p.from(said), Text: p.words(said), Grows: n, Every: every}
			if p.toks[said].is("decreasing", "decrease", "dec") {
				r.Change.Grows.Values = negative(n.Values)
			}
		}
	}
	way := grows && p.likeThis()
	if p.eat("in", "as") {
		as := p.at(-1).is("as")
		p.eat("this", "the", "same", "est")
		p.eat("same", "established", "set")
		way = p.eat("way", "manner", "fashion", "pattern", "patt", "pat", "established", "set") || p.at(-1).is("established", "set") || as && p.eat("before")
		if at := p.i; way && !grows && p.eatKind(tComma) {
			if grows = p.eat("increasing", "decreasing") && p.tok().is("until", "till"); !grows {
				p.i = at // else "in this manner, decreasing until 12 sts remain"
			}
		}
		if way && !as && p.eat("as") {
			as = p.eat("established", "set", "before")
		}
		sides = sides || as && !grows
	}
	if at := p.i; way && p.eat("on", "in") && p.eat("each", "every") && p.eat("rnd", "round", "row") {
		r.Every = true
	} else {
		p.i = at
	}
	if way {
		if r.Shown = p.shown(); r.Shown != nil {
			sides = false
		}
	}
	clause := p.i
	p.eatKind(tComma)
	if at := p.i; (way || grows) && (p.eat("but") || true) && p.along(p.i) != nil {
		// Said of the sides, which is read behind it.
		p.i = clause
		r.Last, r.Span = One(p.from(start)), p.from(start)
		return r, nil
	} else if p.i = at; (way || grows) && p.growsSo(r) {
		way, sides = true, false
	} else if p.i = at; p.eat("working", "with", "having", "making", "adding", "increasing", "placing", "by") {
		n, ok := p.runStep(end)
		if !ok {
			p.i = start
			return nil, nil
		}
		r.Step = n
		way, sides = true, false
	}
	for !(p.tok().is("for") && !p.at(1).is("each", "every", "the")) && p.eat("on", "in", "for", "each", "every", "rnd", "round", "row", "rnds", "rounds", "time") {
	}
	if k := p.tok().kind; sides || !way && !grows || k != tEnd && k != tStop && k != tComma && k != tSemi && k != tOpen && k != tDash && !p.tok().is("until", "till") && !(way && p.tok().is("for", "to")) {
		p.i = start
		return nil, nil
	}
	behind := p.i
	if grows && p.tok().is("until", "till") {
		if u, f := p.until(); u == nil && f == nil {
			p.i = start
			return nil, nil // nobody knows until when
		}
	}
	p.i = behind
	r.Last = One(p.from(start))
	r.Span = p.from(start)
	return r, nil
}

// shapesEvery reports whether "then decrease 8 sts on every round until …" comes next: rounds that are shaped as
// those before them were.
func (p *parser) shapesEvery() bool {
	start, faults := p.i, len(p.faults)
	defer func() { p.i, p.faults = start, p.faults[:faults] }()
	p.eat("then", "now", "next")
	if !p.eat(shapingVerbs...) {
		return false
	}
	if n, ok := p.num(); !ok || !n.Set() || !p.eat("st", "sts", "stitches") {
		return false
	}
	p.eat("on", "in")
	if !p.eat("each", "every") {
		return false
	}
	p.alternate()
	return p.eat("rnd", "round", "row") && (p.tok().is("until", "till", "to") || p.tok().kind == tComma && p.at(1).is("until", "till"))
}

// alternate reads "alternate", "other", "2nd" behind "every".
func (p *parser) alternate() bool {
	if p.tok().kind == tOrdinal && p.tok().value == 2 {
		p.i++
		return true
	}
	return p.eat("other", "alternate", "alt", "second")
}

// shapingVerbs are verbs for rounds that get wider or narrower.
var shapingVerbs = []string{"increasing", "inc", "increase", "decreasing", "dec", "decrease"}

// growsSo reads "increasing 6 sts every rnd" behind "in this way": what comes of it.
func (p *parser) growsSo(r *Ref) bool {
	start := p.i
	c := p.changeGrowth()
	if c == nil || !p.stopsHere() && !p.tok().is("to") {
		return false
	}
	c.Span, c.Text = p.from(start), p.words(start)
	r.Change = c
	return true
}

// runStep reads "1 more sc between increases", "one dc fewer before each decrease": by how many
// stitches each run between the increases or decreases is longer every time, below 0 for shorter.
func (p *parser) runStep(end int) (Num, bool) {
	p.eat("working", "making", "having")
	at := p.i
	n, ok := p.num()
	if !ok && p.eat("an", "a", "one") {
		n, ok = One(p.from(at)), true
	}
	said, fewer := false, false
	for range 2 {
		// "1 more sc", "one dc fewer"
		if p.eat("fewer", "less") {
			said, fewer = true, true
		} else if p.eat("more", "additional", "extra", "further") {
			said = true
		}
		p.target()
	}
	if !ok || !said {
		return n, false
	}
	between := false
	for p.i < end && p.tok().kind == tWord && !p.tok().is("until", "till", "to") {
		between = between || p.tok().is("between", "before", "after", "inc", "increase", "increases", "incs", "dec", "decrease", "decreases", "decs", "repeat", "section")
		p.i++
	}
	if fewer {
		n.Values = negative(n.Values)
	}
	return n, between
}

// negative are the numbers below 0 instead of above.
func negative(l []int) []int {
	l = append([]int(nil), l...)
	for i := range l {
		l[i] = -l[i]
	}
	return l
}

// changeRuns reads "working 1 fewer st before each decrease every time".
func (p *parser) changeRuns() *Change {
	if !p.eat("working", "with", "having", "making", "work") {
		return nil
	}
	at := p.i
	n, ok := p.runStep(p.sentenceEnd())
	if ok {
		return &Change{Step: n}
	}
	p.i = at
	if n, was, ok := p.runInstead(); ok {
		return &Change{Step: n, Run: was}
	}
	return nil
}

// runInstead reads "4 sc instead of 3 before each inc", "4 sc between increases instead of 3": by how
// many stitches each run between the increases or decreases is longer than before, and how long it was.
func (p *parser) runInstead() (n, was Num, ok bool) {
	start := p.i
	n, ok = p.num()
	if _, named := p.what(); !ok || !named && !p.eat("st", "sts", "stitches") {
		p.i = start
		return n, was, false
	}
	between := false
	for range 2 {
		if !was.Set() && (p.eatAll("instead", "of") || p.eatAll("rather", "than") || p.eat("not")) {
			if was, ok = p.num(); ok {
				p.what()
			}
		}
		for !p.ended() && p.tok().kind == tWord && p.tok().is("between", "before", "after", "inc", "increase", "increases", "incs", "dec", "decrease", "decreases", "decs", "each", "every", "the") {
			between = between || p.tok().is("between", "before", "after")
			p.i++
		}
	}
	if !between || !was.Set() || len(was.Values) != len(n.Values) || !p.ended() && p.tok().kind != tOpen {
		p.i = start
		return n, was, false
	}
	n.Values = append([]int(nil), n.Values...)
	for i := range n.Values {
		n.Values[i] -= was.Values[i]
	}
	return n, was, n.Values[0] != 0
}

// patternUntil reports whether "in pattern", "in established pattern", "as established" comes
// next and how long it is gone on with: "work in pattern for 20 cm".
func (p *parser) patternUntil() bool {
	start := p.i
	defer func() { p.i = start }()
	said := p.tok().is("as")
	p.i++
	for p.eat("the", "this", "same") {
	}
	told := false
	for p.eat("est", "established", "set", "pattern", "patt", "pat") {
		told = true
	}
	if !said && p.eat("as") {
		p.eat("established", "set", "est")
	}
	return told && p.tok().is("until", "till", "for", "to")
}

// likeThis passes over "like this", "this way".
func (p *parser) likeThis() bool {
	return p.eatAll("like", "this") || p.eatAll("this", "way") || p.eatAll("like", "that")
}
