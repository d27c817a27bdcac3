package notation

import (
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// ParseWords reads words that are not a round: the definition of a stitch.
func ParseWords(lines []Line, v *Vocabulary, sizes []string) ([]Item, fault.List) {
	toks, faults := scan(lines)
	if len(toks) > maxTokens {
		t := toks[maxTokens]
		return nil, fault.List{fail(Span{t.pos, t.length}, "too-large", "the definition is too long", "")}
	}
	p := newParser(toks[:len(toks)-1], v, sizes)
	p.defining = true
	p.passLead()
	name := p.passName()
	p.dropWorked()
	p.passGloss()
	p.dropCountsAs()
	one := p.closedTogether()
	if g := p.inBrackets(); g != nil && one == nil {
		return []Item{g}, faults
	}
	items, f := p.items(false)
	if f == nil && p.tok().kind != tEnd {
		f = p.stuck()
	}
	if f != nil {
		return nil, append(append(faults, f), p.faults...)
	}
	if one != nil {
		if items, f = p.asOneTop(items, *one); f != nil {
			return nil, append(append(faults, f), p.faults...)
		}
	}
	if g := p.allInOne(items); g != nil {
		items = []Item{g}
	}
	items = Bundled(inItsLoops(explained(items)), name.Kind.Shape)
	return items, append(faults, p.faults...)
}

// relative reports whether ", which is the right side" begins at token i: said of what goes
// before it.
func (p *parser) relative(i int) bool {
	if i == 0 || p.toks[i-1].kind != tComma || !p.toks[i].is("which", "so", "giving", "making", "creating", "forming", "because", "as") {
		return false
	}
	at := p.i
	defer func() { p.i = at }()
	p.i = i
	return !p.evident(i, p.sentenceEnd())
}

// passLead passes over what a definition may begin with before it comes to the stitches: "a
// group of 5 dc in same st", "made by working 5 dc into the st".
func (p *parser) passLead() {
	start := p.i
	p.eat("work", "make")
	for p.eat("made", "worked", "formed", "consisting", "composed", "made-up", "up") {
	}
	p.eat("of", "by", "as", "from")
	p.eat("follows", "working", "making", "crocheting", "placing")
	p.eatKind(tColon)
	if at := p.i; p.eat("a", "an", "one") && p.eat("group", "set", "bunch", "fan", "shell", "total") {
		p.eat("of")
	} else {
		p.i = at
	}
	if p.i == start || !p.instructs(p.i) && p.tok().kind != tOpen {
		p.i = start
	}
}

// anyOne reads "one st", "a single stitch", "any one space" in a definition: the place that the
// stitch is worked in, wherever that is.
func (p *parser) anyOne() (Place, bool) {
	start := p.i
	if p.defining {
		p.eat("a", "any")
		if p.eat("single", "one") || p.tok().kind == tNumber && p.tok().value == 1 && p.eatKind(tNumber) || p.i > start && p.at(-1).is("any") {
			if p.eat("and") && p.eat("the") && !p.eat("same") {
				p.i = start
				return Place{}, false
			}
			if t, ok := p.target(); ok && (t.Sort == AnyStitch || t.Sort == ChainSpace && t.Name == "" || t.Sort == ChainStitch && t.Name == "") && p.ended() {
				return Place{Span: p.from(start), Pick: Same, Target: t}, true
			}
		}
	}
	p.i = start
	return Place{}, false
}

// eitherPlace reads "ch or sp", "st, ch or sp", "indicated ch-1 sp or stitch" in a definition: whatever
// it is that the stitch is worked into.
func (p *parser) eitherPlace() bool {
	start := p.i
	if p.defining {
		p.eat(indicating...)
	}
	one := func() bool {
		switch {
		case p.eat("ch", "chain"):
			p.eatKind(tHyphen)
			at := p.i
			if p.plainNumber(); !p.eat("sp", "space", "lp", "loop") {
				p.i = at
			}
			return true
		}
		return p.eat("st", "stitch", "sp", "space", "lp", "loop", "ring")
	}
	or := false
	for ok := p.defining && one(); ok; {
		at := p.i
		p.eat(indicating...)
		comma := p.eatKind(tComma)
		this := p.eat("or") || p.eatKind(tSlash)
		if p.eat("in", "into"); this {
			p.eat("same", "the", "a")
			p.eat(indicating...)
		}
		if ok = (comma || this) && one(); !ok {
			p.i = at
			break
		}
		or = or || this
	}
	if !or {
		p.i = start
		return false
	}
	p.eat(indicating...)
	return true
}

// allInOne gathers a definition such as "1 dc, 1 ch, 1 dc in one st", of which the last alone says
// where it goes, into that one place. It is nil for any other.
func (p *parser) allInOne(items []Item) *Group {
	n := len(items)
	for n > 0 {
		if _, note := items[n-1].(*Note); !note {
			break
		}
		n--
	}
	if n < 2 || !placeless(items[:n-1]) {
		return nil
	}
	first, ok := items[0].(*Stitches)
	last, is := items[n-1].(*Stitches)
	if !ok || !is || first.What.Kind.Base < stitch.Single || len(last.Places) != 1 {
		return nil
	}
	pl := &last.Places[0]
	if pl.Target.Sort != AnyStitch && pl.Target.Sort != ChainSpace || pl.Of != nil || pl.N.Set() || pl.Below != 0 {
		return nil
	}
	if pl.Pick != Same && !(pl.Pick == Next && (pl.Bare || onlyChains(items[1:n-1]) && first.What == last.What)) {
		return nil // "dc, ch 1, dc in next st" is a V-st
	}
	g := &Group{Span: first.Span, Items: append([]Item(nil), items[:n]...), Place: last.Places}
	plain := *last
	plain.Places = nil
	g.Items[n-1] = &plain
	return g
}

// onlyChains reports whether instructions make chains and nothing else.
func onlyChains(items []Item) bool {
	for _, it := range items {
		if _, ok := it.(*Chain); !ok {
			return false
		}
	}
	return len(items) > 0
}

// inBrackets reads a definition that is nothing but a bracket, "(1 tr, 1 ch, 1 tr)": all of
// it goes into the one place. It is nil for any other.
func (p *parser) inBrackets() *Group {
	start := p.i
	no := func() *Group { p.i = start; return nil }
	close := p.matching(p.i)
	if p.tok().kind != tOpen || close < 0 {
		return no()
	}
	for p.i = close + 1; p.eatKind(tStop); {
	}
	end := p.i
	if p.tok().kind != tEnd {
		return no()
	}
	p.i = start + 1
	items, f := p.items(true)
	if f != nil || p.i != close || len(items) == 0 || !placeless(items) || len(p.faults) > 0 || len(p.stated) > 0 {
		p.faults, p.stated = nil, nil
		return no()
	}
	p.i = end
	at := p.from(start)
	return &Group{Span: at, Items: items, Place: []Place{{Span: at, Pick: Same, Target: Target{Text: "st"}}}}
}

// passName passes over a name that the words of a stitch begin with: "raised treble front, 1 tr
// around the post of next st", "bobble: work 4 tr tog in same st", "cluster (work 3 tr tog)". What
// follows has to say how it is made. It is the name, where that is one of the trade.
func (p *parser) passName() What {
	start := p.i
	p.eat("make", "work")
	p.eat("a", "one")
	w, ok := p.what()
	named := ok && w.Shaping == 0 && (w.Loop.Set || w.Kind.Shape != stitch.Plain && w.Kind.Shape != stitch.Together || w.Kind.Manner != 0)
	if !ok {
		named = p.eat("picot", "cluster", "cl", "shell", "fan", "v-stitch", "v-st", "rib")
		p.eat("stitch", "st")
	}
	mark := p.tok().kind
	if p.i++; named && p.madeAs(mark, w) {
		if mark != tOpen {
			return w
		}
		if close := p.matching(p.i - 1); close == len(p.toks)-2 {
			p.toks = append(p.toks[:close:close], p.toks[close+1:]...)
			return w
		}
	}
	p.i = start
	return What{}
}

// madeAs reports whether the words behind a name and a mark say how it is made. Behind a comma, a stop,
// a dash or in a bracket there could be more of what is made, unless it is said to be worked, or is a
// stitch of the same height.
func (p *parser) madeAs(mark tokenKind, w What) bool {
	at := p.i
	defer func() { p.i = at }()
	switch mark {
	case tColon, tEqual:
		return p.instructs(p.i)
	case tComma, tDash, tSemi, tStop, tOpen:
	default:
		return false
	}
	work := p.eat("work", "make")
	first, ok := p.stitches()
	s, is := first.(*Stitches)
	if !ok || !is || w.Loop.Set && !s.What.Loop.Set && !aroundPost(s.Places) {
		return false
	}
	if several := w.Kind.Shape != stitch.Plain && work && (s.N.For(0) > 1 || legsOf(s.What) > 1); w.Kind.Is() && s.What.Kind.Base != w.Kind.Base && !several {
		return false
	}
	return work || s.N.Set() || len(s.Places) > 0
}

// aroundPost reports whether a stitch goes round a post.
func aroundPost(l []Place) bool {
	return len(l) == 1 && (l[0].Into == stitch.FrontPost || l[0].Into == stitch.BackPost)
}

// dropWorked takes away ", worked" between the name of a stitch and the post or the place
// that it goes round or into: "front post dc, worked around the post of the dc 2 rows below".
// That a raised stitch is worked round a stem is only what it is.
func (p *parser) dropWorked() {
	start := p.i
	defer func() { p.i = start }()
	p.eat("a", "one", "1")
	if w, ok := p.what(); !ok || !w.Kind.Is() {
		return
	}
	from := p.i
	p.eatKind(tComma)
	p.eatKind(tDash)
	if !p.eat("worked", "working", "made", "work", "formed", "inserted", "placed") || p.tok().is("round", "around") && p.stemOnly() {
		return
	}
	end := p.i
	if p.tok().is("around", "round", "in", "into", "over", "through") && p.places(false) != nil && p.ended() {
		p.toks = append(p.toks[:from:from], p.toks[end:]...)
	}
}

// stemOnly is aroundStem of the words behind the one before.
func (p *parser) stemOnly() bool {
	p.i--
	defer func() { p.i++ }()
	return p.aroundStem()
}

// passGloss passes over what a shaping is called before it is said how it is made:
// "increase by working 2 dc in next st", "increase (2 sc in same st)", "decrease 1 st by
// working next 2 sc tog". Brackets about all that follows are taken away.
func (p *parser) passGloss() {
	start := p.i
	p.eat("to", "a", "an", "1", "one", "work", "make")
	p.eat("single", "simple", "basic", "regular")
	w, ok := p.what()
	if !ok || w.Shaping == 0 && w.Kind.Shape != stitch.Together {
		p.i = start
		return
	}
	at := p.i
	if _, ok := p.plainNumber(); ok || p.eat("a") {
		if !p.eat("st", "sts", "stitch", "stitches") {
			p.i = at
		}
	}
	at = p.i
	placed := w.Shaping != 0 && len(p.places(false)) > 0
	if !placed {
		p.i = at
	}
	if open := p.i; p.tok().kind == tOpen {
		close := p.matching(open)
		if close > 0 && close+1 == len(p.toks)-1 {
			p.i++
			p.eat("work", "make")
			if w.Shaping > 0 && p.instructs(p.i) {
				p.toks = append(p.toks[:close:close], p.toks[close+1:]...)
				return
			}
		}
		p.i = start
		return
	}
	if p.eat("by") || p.eatKind(tColon) || p.eatKind(tDash) || !placed && !p.oneMore(p.i+1) && (p.eatKind(tComma) || p.eatKind(tStop)) || p.eatKind(tSemi) {
		p.eat("working", "making", "crocheting", "placing", "work", "make")
		if p.instructs(p.i) {
			return
		}
	}
	p.i = start
}

// oneMore reports whether one plain stitch is worked at token i: "dec, sc in next st" makes both.
func (p *parser) oneMore(i int) bool {
	at := p.i
	defer func() { p.i = at }()
	p.i = i
	it, ok := p.stitches()
	s, is := it.(*Stitches)
	return ok && is && s.What.Kind.Is() && legsOf(s.What) == 0 && (!s.N.Set() || len(s.N.Values) == 1 && s.N.Values[0] == 1)
}

// dropCountsAs takes away "- counts as a cluster" at the end of a definition, where what it
// counts as is no stitch by itself: it is counted by its own name.
func (p *parser) dropCountsAs() {
	for j := p.i + 1; j+2 < len(p.toks); j++ {
		if !p.toks[j].is("counts", "count", "counted") || !p.toks[j+1].is("as") {
			continue
		}
		switch p.toks[j-1].kind {
		case tDash, tComma, tSemi, tOpen:
		default:
			return
		}
		at := p.i
		p.i = j + 2
		p.eat("a", "one", "1")
		_, stitch := p.what()
		short := len(p.toks)-p.i <= 3
		if p.i = at; !stitch && short {
			end := p.toks[len(p.toks)-1]
			p.toks = append(p.toks[:j-1:j-1], end)
		}
		return
	}
}
