package notation

import "whorl/patterns/stitch"

// evenlyRound reads "sc evenly around all four sides, placing 3 sc in each corner", "work
// 44 sc evenly around with 3 sc in each corner": what goes into a corner, and then the edge
// up to the next, four times. A number of all of them is that of the round.
func (b *block) evenlyRound() bool {
	p := b.p
	start, stated := p.i, len(p.stated)
	no := func() bool { p.i, p.stated = start, p.stated[:stated]; return false }
	p.eat("work", "working")
	p.eatAll("a", "round", "of")
	at := p.i
	n, hasN := p.num()
	w, ok := p.what()
	if !ok || w.Kind.Base < stitch.Single || w.Kind.Shape != stitch.Plain || !p.eat("evenly") || !p.eat("around", "round") {
		return no()
	}
	edge := p.from(at)
	for j := 0; p.tok().kind == tWord && !p.tok().first && !p.tok().is("with", "working", "placing", "making", "work", "putting", "and"); j++ {
		if j > 7 {
			return no()
		}
		p.i++
	}
	p.eatKind(tComma)
	p.eat("and")
	p.eat("with", "working", "placing", "making", "work", "putting")
	side := p.perSide()
	places, corner := p.inEachCorner()
	if corner == nil {
		return no()
	}
	for i := range places {
		places[i].Pick, places[i].N, places[i].Every = Next, Num{}, false
	}
	if g, ok := corner.(*Group); ok {
		g.Place = places
	} else {
		corner.(*Stitches).Places = places
	}
	if hasN {
		p.stated = append(p.stated, &Stated{Span: n.Span, Counts: []StatedCount{{N: n}}})
	}
	along := &Stitches{Span: edge, N: side, What: w, Places: []Place{{Span: edge, Pick: Each, Evenly: true,
		Extent: Extent{Sort: ToPlace, Target: Target{Sort: ChainSpace, Name: Corner, Text: "corner"}, Text: "across to next corner"}}}}
	p.work = true
	b.add(&Repeat{Span: p.from(start), Items: []Item{corner, along}, Times: Num{Span: edge, Values: []int{4}}})
	return true
}

// perSide reads "8 sc along each side and" before what goes into the corners.
func (p *parser) perSide() Num {
	start := p.i
	n, ok := p.num()
	if _, isStitch := p.what(); ok && isStitch && p.eat("along", "on", "across", "down", "to") && p.eat("each") && p.eat("side", "edge") {
		p.eatKind(tComma)
		p.eat("and", "with")
		return n
	}
	p.i = start
	return Num{}
}

// inEachCorner reads "3 sc in each corner", "(sc, ch 1, sc) in every corner": where, and
// what, nil for anything else.
func (p *parser) inEachCorner() ([]Place, Item) {
	start := p.i
	var it Item
	var places []Place
	if p.tok().kind == tOpen {
		close := p.matching(p.i)
		if close < 0 {
			return nil, nil
		}
		p.i++
		inner, f := p.items(true)
		if f != nil || p.i != close || len(inner) == 0 {
			p.i = start
			return nil, nil
		}
		p.i++
		p.eat("at")
		places = p.places(false)
		it = &Group{Span: p.from(start), Items: inner}
	} else if s, ok := p.stitches(); ok {
		if st, ok := s.(*Stitches); ok {
			places, it = st.Places, st
		}
	}
	if len(places) != 1 || places[0].Target.Name != Corner && places[0].Target.Sort != CornerStitch || !places[0].Every && !p.at(-1).is("corners") {
		p.i = start
		return nil, nil
	}
	places[0].Target = Target{Sort: ChainSpace, Name: Corner, Text: "corner"}
	places[0].Bare = true
	return places, it
}

// starred reports whether a repeat has begun with a star before the current token.
func (p *parser) starred() bool {
	for j := 0; j < p.i; j++ {
		if p.toks[j].kind == tStar {
			return true
		}
	}
	return false
}
