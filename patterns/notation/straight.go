package notation

import "whorl/patterns/stitch"

// straight reads rounds that are worked on as the last ones, with one stitch in each and none
// more or fewer: "Work 7 rounds without shaping", "Continue straight in tr until work measures
// 20 cm", "Work 2 rows of dc", "Rnds 2-4: Work even". Until when, the label or an Until says.
func (b *block) straight() bool {
	p := b.p
	start, faults := p.i, len(p.faults)
	p.eat("now", "then")
	if !p.eat("work", "continue", "cont", "carry", "proceed", "crochet", "keep", "make") {
		p.i = start
		return false
	}
	p.eat("on", "straight", "even")
	if p.at(-1).is("straight", "even") {
		p.i--
	}
	p.eat("working", "to")
	p.eat("work")
	r := &Ref{Onward: true, Even: true}
	var u *Until
	said, way := false, false
	for {
		at := p.i
		p.eatKind(tComma)
		if p.evenWords() {
			said = true
			continue
		}
		if k, ok := p.inKind(u); ok && !r.Of.Is() {
			r.Of = k
			continue
		}
		if p.onTheseSts() {
			continue
		}
		if u != nil && u.More && p.wayOn() {
			way = true // "Work a further 6 rows in pattern"
			continue
		}
		if u == nil {
			if u = p.soManyRows(); u != nil {
				continue
			}
			if it, f := p.until(); f == nil && it != nil {
				u = it.(*Until)
				continue
			}
			p.faults = p.faults[:faults]
			if u = p.toRound(); u != nil {
				continue
			}
		}
		p.i = at
		break
	}
	if r.Even = !way; way && r.Of.Is() || !said && !way && (!r.Of.Is() || u == nil) || !p.ended() && !p.tok().first || p.tok().kind == tOpen && p.howAhead() {
		p.i, p.faults = start, p.faults[:faults]
		return false
	}
	r.Last, r.Span = One(p.from(start)), p.from(start)
	p.work = true
	b.add(r)
	if u != nil {
		if !u.End.Set {
			u.End = p.endingRow()
		}
		b.add(u)
		b.apart()
	}
	return true
}

// roundsToWork reads a label that says how many rounds go as the words behind its colon say: "Work 2 rnds
// even: ch 1, hdc in each st around". They are the next ones.
func (p *parser) roundsToWork(l *Label) bool {
	start := p.i
	if !p.tok().first || !p.eat("work", "make", "crochet", "do") {
		return false
	}
	p.eat("the", "another")
	p.eat("next", "following", "further")
	n, ok := p.num()
	p.eat("more", "further", "additional", "extra")
	row, round := roundWord(p.tok())
	if !ok || !round || p.tok().is("r") {
		p.i = start
		return false
	}
	p.i++
	p.eat("more")
	p.evenWords()
	p.eatAll("as", "follows")
	p.eat("thus")
	if p.tok().kind != tColon || p.at(1).first || !p.instructs(p.i+1) || !p.evident(p.i+1, p.sentenceEnd()) {
		p.i = start
		return false
	}
	p.i++
	l.Next, l.Row = n, row
	return true
}

// evenWords reads "without shaping", "straight", "even", "without increasing or decreasing".
func (p *parser) evenWords() bool {
	start := p.i
	if p.eat("straight", "even", "plain") {
		return p.tok().kind != tWord || !p.tok().is("across", "rows", "rounds", "edge", "up", "around")
	}
	if p.eat("without") || p.eatAll("with", "no") {
		p.eat("any", "working")
		p.eat("further", "more", "additional", "other")
		if p.eat("shaping", "shapings", "inc", "increasing", "increases", "dec", "decreasing", "decreases") {
			for p.eat("or", "and", "any", "further", "more", "inc", "increasing", "increases", "dec", "decreasing", "decreases") {
			}
			return true
		}
	}
	p.i = start
	return false
}

// inKind reads "in tr", "of dc" or, behind so many rows, the kind alone: "4 rows tr".
func (p *parser) inKind(u *Until) (k stitch.Kind, ok bool) {
	start := p.i
	if !p.eat("in", "of") && !(u != nil && u.More && p.at(-1).is("rows", "rounds", "rnds", "row", "round", "rnd")) {
		return k, false
	}
	p.eat("plain")
	w, ok := p.what()
	if !ok || !w.Kind.Is() || w.Name != "" || w.Loop.Set || w.Kind != stitch.Of(w.Kind.Base) || w.Kind.Base <= stitch.Slip {
		p.i = start
		return k, false
	}
	p.eat("st", "sts", "throughout")
	return w.Kind, true
}

// onTheseSts passes over "on these 12 sts", "over all sts", of which there are no others.
func (p *parser) onTheseSts() bool {
	start := p.i
	if p.eat("on", "over") && p.eat("these", "those", "all", "remaining", "rem") {
		p.eat("rem", "remaining", "the")
		p.num()
		if t, ok := p.target(); ok && t.Sort == AnyStitch {
			return true
		}
	}
	p.i = start
	return false
}

// soManyRows reads "7 rounds", "a further 4 rows", "next 3 rows", which are those still to come.
func (p *parser) soManyRows() *Until {
	start := p.i
	p.eat("another", "a", "the")
	p.eat("next", "following", "foll", "further")
	n, ok := p.num()
	p.eat("more", "further", "additional", "extra")
	if _, round := roundWord(p.tok()); !ok || !round || p.tok().is("r") {
		p.i = start
		return nil
	}
	p.i++
	p.eat("more")
	return &Until{Span: p.from(start), Rows: n, More: true}
}
