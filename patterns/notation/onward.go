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
		if p.eat("going", "on", "working", "crocheting"); !p.tok().is("in", "as") {
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
		p.eat("this", "the", "same")
		p.eat("same")
		way = p.eat("way", "manner", "fashion", "pattern", "established", "set") || as && p.eat("before")
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
	clause := p.i
	p.eatKind(tComma)
	if at := p.i; (way || grows) && (p.eat("but") || true) && p.along(p.i) != nil {
		// Said of the sides, which is read behind it.
		p.i = clause
		r.Last, r.Span = One(p.from(start)), p.from(start)
		return r, nil
	} else if p.i = at; p.eat("working", "with", "having", "making", "adding", "increasing", "placing", "by") {
		p.eat("working", "making", "having")
		n, ok := p.num()
		if !ok && p.eat("an", "a", "one") {
			n, ok = One(p.from(start)), true
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
			p.i = start
			return nil, nil
		}
		between := false
		for p.i < end && p.tok().kind == tWord && !p.tok().is("until", "till", "to") {
			between = between || p.tok().is("between", "before", "after", "inc", "increase", "increases", "incs", "dec", "decrease", "decreases", "decs", "repeat", "section")
			p.i++
		}
		if !between {
			p.i = start
			return nil, nil
		}
		r.Step = n
		if fewer {
			r.Step.Values = append([]int(nil), n.Values...)
			for i := range r.Step.Values {
				r.Step.Values[i] = -r.Step.Values[i]
			}
		}
		way = true
	}
	for p.eat("on", "in", "for", "each", "every", "rnd", "round", "row", "rnds", "rounds", "time") {
	}
	if k := p.tok().kind; sides || !way && !grows || k != tEnd && k != tStop && k != tComma && k != tSemi && k != tOpen && k != tDash && !p.tok().is("until", "till") {
		p.i = start
		return nil, nil
	}
	r.Last = One(p.from(start))
	r.Span = p.from(start)
	return r, nil
}
