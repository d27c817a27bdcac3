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
	if !p.eat("continue", "cont", "continuing", "proceed") {
		if sides = p.eat("work", "working", "keep", "carry", "go"); !sides {
			return nil, nil
		}
		p.eat("going", "on", "working", "crocheting", "repeating")
		if even := p.eat("even", "straight"); p.tok().is("in", "as") && (even || p.patternUntil()) {
			sides = false
		}
		if !p.tok().is("in", "as") {
			p.i = start
			return nil, nil
		}
	}
	end := p.sentenceEnd()
	r := &Ref{Onward: true}
	grows := p.eat("to")
	grows = p.eat("increasing", "inc", "increase", "decreasing", "dec", "decrease") || grows && p.at(-1).is("inc", "increase")
	if n, ok := p.num(); ok && grows && n.Set() {
		// "decrease 8 sts on every round"
		p.target()
		for p.eat("on", "in", "each", "every", "rnd", "round", "row") {
			r.Every = r.Every || p.at(-1).is("each", "every") && p.tok().is("rnd", "round", "row")
			if p.at(-1).is("in") && p.tok().is("this", "the", "same") {
				p.i--
				break
			}
		}
	}
	way := false
	if p.eat("in", "as") {
		as := p.at(-1).is("as")
		p.eat("this", "the", "same", "est")
		p.eat("same", "established", "set")
		way = p.eat("way", "manner", "fashion", "pattern", "patt", "pat", "established", "set") || p.at(-1).is("established", "set") || as && p.eat("before")
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
	} else if p.i = at; p.eat("working", "with", "having", "making", "adding", "increasing", "placing", "by") {
		n, ok := p.runStep(end)
		if !ok {
			p.i = start
			return nil, nil
		}
		r.Step = n
		way = true
	}
	for !(p.tok().is("for") && !p.at(1).is("each", "every", "the")) && p.eat("on", "in", "for", "each", "every", "rnd", "round", "row", "rnds", "rounds", "time") {
	}
	if k := p.tok().kind; sides || !way && !grows || k != tEnd && k != tStop && k != tComma && k != tSemi && k != tOpen && k != tDash && !p.tok().is("until", "till") && !(way && p.tok().is("for", "to")) {
		p.i = start
		return nil, nil
	}
	r.Last = One(p.from(start))
	r.Span = p.from(start)
	return r, nil
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
		n.Values = append([]int(nil), n.Values...)
		for i := range n.Values {
			n.Values[i] = -n.Values[i]
		}
	}
	return n, between
}

// changeRuns reads "working 1 fewer st before each decrease every time".
func (p *parser) changeRuns() *Change {
	if !p.eat("working", "with", "having", "making", "work") {
		return nil
	}
	n, ok := p.runStep(p.sentenceEnd())
	if !ok {
		return nil
	}
	return &Change{Step: n}
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

// keepRepeating reads "Keep repeating", "Now continue to work", "Carry on with" before the
// rounds that are gone on with, as the word repeat: "Keep repeating Row 2 until …".
func (p *parser) keepRepeating() {
	start := p.i
	p.eat("now", "then", "just", "simply")
	kept := p.eat("keep", "continue", "cont", "carry", "go", "proceed", "continuing", "keeping", "carrying")
	if kept {
		p.eat("on")
		p.eat("by", "to", "with", "in")
	}
	verb := p.i
	if p.eat("going", "working", "crocheting", "repeating"); kept && (p.i > verb || p.at(-1).is("on")) && (p.likeThis() || true) && p.tok().is("until", "till") {
		// "Keep going until …"
		p.i--
		p.tok().text, p.tok().first = "continue", p.toks[start].first
		return
	}
	p.i = verb
	if !p.eat("repeating", "repeat", "rep") && !(kept && p.eat("working", "work", "crocheting", "doing")) && !(kept && p.at(-1).is("with")) {
		p.i = start
		return
	}
	at := p.i
	for p.eat("the", "these", "this", "last", "previous", "only", "just") {
	}
	p.plainNumber()
	_, round := roundWord(p.tok())
	if p.i = start; !round || verb == start && !p.tok().is("repeating") || p.toks[at-1].first && at-1 > start {
		return
	}
	t := &p.toks[at-1]
	t.kind, t.text = tWord, "rep"
	t.first = p.toks[start].first
	p.i = at - 1
}

// goesOnRepeating reads "Continue in this way, repeating Rows 3-4 …", "Cont as set, working Rows 3
// and 4 alternately …" as the word repeat: the rounds that are named say how it goes on.
func (p *parser) goesOnRepeating() {
	start := p.i
	p.eat("now", "then", "and")
	if !p.eat("continue", "cont", "continuing", "proceed", "carry", "keep", "go", "work") {
		p.i = start
		return
	}
	p.eat("on", "going", "working")
	way := p.i
	for p.eat("in", "as", "this", "the", "that", "same", "way", "manner", "fashion", "pattern", "patt", "pat", "set", "established", "est", "before", "now",
		"stripe", "striped", "stripes", "sequence", "colour", "color", "thus", "so", "like", "your", "above", "given") {
	}
	if said := p.i > way; !said || !p.eatKind(tComma) && !p.eatKind(tDash) && !p.eatKind(tSemi) && !p.tok().is("repeating", "by", "rep") {
		p.i = start
		return
	}
	p.eat("by")
	at := p.i
	if !p.eat("repeating", "rep", "repeat", "working", "alternating") {
		p.i = start
		return
	}
	named := p.eat("the", "these") && p.eat("last", "previous", "these") || p.eat("last", "previous", "these")
	if p.eat("only", "just"); named {
		p.plainNumber()
	}
	_, round := roundWord(p.tok())
	if p.i = start; !round || !named && p.toks[at+1].is("the") {
		return
	}
	t := &p.toks[at]
	t.kind, t.text, t.first = tWord, "rep", p.toks[start].first
	p.i = at
}

// likeThis passes over "like this", "this way".
func (p *parser) likeThis() bool {
	return p.eatAll("like", "this") || p.eatAll("this", "way") || p.eatAll("like", "that")
}
