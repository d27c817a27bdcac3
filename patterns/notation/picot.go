package notation

import (
	"fmt"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// picot reads a stitch that closes the chains just made onto the first of them: "sl st in
// first of these 3 ch", "ss back into the first ch made", "sl st in base of these 3 ch". It
// is the same as "in 3rd ch from hook".
func (p *parser) picot() (Item, *fault.Fault) {
	start := p.i
	chains := p.chainsBefore()
	no := func() (Item, *fault.Fault) { p.i = start; return nil, nil }
	if chains < 2 {
		return nil, nil
	}
	w, ok := p.what()
	if !ok || w.Kind.Shape != stitch.Plain || w.Kind.Base != stitch.Slip && w.Kind.Base != stitch.Single {
		return no()
	}
	p.eat("back")
	if !p.eat("in", "into", "to", "through", "on") {
		return no()
	}
	at := p.i
	p.eat("the")
	base := p.eat("base", "foot", "bottom")
	if !base && p.nth() != 1 {
		return no()
	}
	ch := p.eat("ch", "chain", "st", "stitch")
	ch = ch && p.at(-1).is("ch", "chain")
	told := false
	if p.eat("of") {
		told = p.eat("these", "those", "this", "that")
		p.eat("the")
		p.eat("same")
		n, numbered := 0, false
		from := p.i
		if !p.tok().is("ch", "chain", "chs", "chains") {
			n, numbered = p.plainNumber()
		}
		p.eatKind(tHyphen)
		if chain := p.eat("ch", "chain", "chs", "chains"); chain && !numbered {
			p.eatKind(tHyphen)
			n, numbered = p.plainNumber()
		} else if !chain && !(ch && told) {
			return no()
		}
		if p.spaceWord() || p.tok().is("picot", "edge") {
			return no()
		}
		if numbered && n != chains {
			if !told {
				return no()
			}
			return nil, p.failAt(from, "chain", fmt.Sprintf("%d chains were made just before this, not %d", chains, n), "Let the two numbers agree.")
		}
		told = told || numbered || base
	} else if base || !ch {
		return no()
	}
	p.eat("just")
	told = p.eat("made", "worked") || told
	if !told && !p.defining && p.depth < 2 {
		return no() // "sl st in first ch" may join the round
	}
	pl := Place{Span: p.from(at), Pick: Nth, Nth: chains, Target: Target{Sort: FromHook, Kind: stitch.Of(stitch.Chain), Text: p.words(at)}}
	if p.tok().is("to") && p.at(1).is("join") {
		return no()
	}
	p.closesPicot()
	p.work = true
	return &Stitches{Span: p.from(start), What: w, Places: []Place{pl}}, nil
}

// onLastMade takes "3 ch, ss in last dc" inside a repeat as a picot on the stitch made
// last: the last stitch of the round below can be gone into only once. So it is where the words
// say that it is a picot, and in a bracket that all goes into one place.
func (p *parser) onLastMade(start int, s *Stitches) {
	if len(s.Places) != 1 || s.What.Kind != stitch.Of(stitch.Slip) {
		return
	}
	pl := &s.Places[0]
	if pl.Pick != Last || pl.N.Set() || pl.Every || pl.Of != nil || pl.Below != 0 || pl.Target.Sort != OfKind && pl.Target.Sort != AnyStitch {
		return
	}
	end := p.i
	p.i = start
	chains := p.chainsBefore()
	p.i = end
	if chains < 2 || chains > 6 {
		return
	}
	p.closesPicot()
	t := p.tok()
	again := t.kind == tStar || t.kind == tClose || (t.kind == tComma || t.kind == tSemi) && (p.at(1).is("rep", "repeat", "repeating") || p.at(1).kind == tStar)
	if again || p.i > end || p.inBracketAt() {
		pl.Pick = Made
	}
}

// inBracketAt reports whether the words stand in a bracket that goes into one place, "(2 dc, 3 ch, ss in
// last dc, 1 dc) in next sp".
func (p *parser) inBracketAt() bool {
	for i, depth := p.i, 0; i+1 < len(p.toks); i++ {
		switch t := &p.toks[i]; {
		case t.kind == tOpen:
			depth++
		case t.kind == tClose && depth > 0:
			depth--
		case t.kind == tClose:
			return p.toks[i+1].is("in", "into", "around") || p.toks[i+1].is("all") && i+2 < len(p.toks) && p.toks[i+2].is("in", "into", "around")
		case t.kind == tStar, t.kind == tStop, t.kind == tEnd:
			return false
		}
	}
	return false
}

// closesPicot passes over "to form picot", "(picot made)".
func (p *parser) closesPicot() {
	start := p.i
	if p.eat("to", "for") {
		p.eat("form", "make", "complete", "close")
		p.eat("a", "the", "one")
		if p.eat("picot") {
			return
		}
	}
	p.i = start
}

// chainsBefore is how many chains the words just before make: the 3 of "ch 3, ", "3 ch and ".
// 0 when they make none.
func (p *parser) chainsBefore() int {
	j := p.i - 1
	for j > 0 && (p.toks[j].kind == tComma || p.toks[j].kind == tSemi || p.toks[j].is("and", "then", "a", "an", "1")) {
		j--
	}
	if j < 1 {
		return 0
	}
	t, u := &p.toks[j], &p.toks[j-1]
	if u.kind == tHyphen && j > 1 {
		u = &p.toks[j-2]
	}
	word := func(t *token) bool { return t.is("ch", "chain", "chs", "chains") }
	switch {
	case t.kind == tNumber && t.frac == 0 && word(u):
		return t.value
	case word(t) && u.kind == tNumber && u.frac == 0:
		return u.value
	case t.kind == tWord && word(u):
		return numberWords[t.text]
	}
	return 0
}
