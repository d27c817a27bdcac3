package notation

// ofAnyFigure reads "any point", "one leaf", "any star point" behind a stitch or a space of it:
// whichever group of stitches in one place a joined yarn begins at, called by what it looks like.
func (p *parser) ofAnyFigure(pl *Place) bool {
	start := p.i
	if pl.Pick == Last && pl.N.Set() || pl.Target.Sort != ChainSpace && pl.Target.Sort != OfKind && pl.Target.Sort != AnyStitch || !p.eat("any", "one", "a", "either") {
		return false
	}
	p.eat("of")
	p.eat("the")
	at := p.i
	for n := 0; n < 2 && p.tok().kind == tWord && !p.tok().first; n++ {
		t := p.tok()
		if _, known := p.vocab.lookup(t.text); known || p.vocab.near(t.text) != "" || t.is(groupWords...) || t.is(notFigures...) {
			break
		}
		if p.i++; p.ended() {
			pl.Of = &Place{Span: p.from(at), Pick: Any, Target: Target{Sort: OfName, Text: p.words(at)}}
			return true
		}
	}
	p.i = start
	return false
}

// notFigures are words behind "of" that name no group of stitches.
var notFigures = []string{"row", "rows", "rnd", "round", "rounds", "corner", "corners", "turning", "beg", "beginning", "ring", "group", "groups", "toe", "back", "front",
	"side", "sides", "edge", "edges", "chain", "ch", "square", "motif", "piece", "block"}

// oneGroupAhead reports whether "5tr group", "5 dc shell" comes next: one of them, of so many stitches.
func (p *parser) oneGroupAhead() bool {
	start := p.i
	defer func() { p.i = start }()
	if n, ok := p.plainNumber(); !ok || n < 2 {
		return false
	}
	p.eatKind(tHyphen)
	w, ok := p.what()
	p.eatKind(tHyphen)
	return ok && w.Kind.Is() && p.eat("group", "grp", "gp", "shell", "fan", "scallop", "petal")
}

// several reports whether a place is so many stitches in a row, "the 9 dc", "next 5 sts", of which one may
// be told: "first of the 9 dc".
func (pl *Place) several() bool {
	return pl.Pick == Next && pl.N.Set() && pl.Of == nil && pl.Below == 0 && (pl.Target.Sort == OfKind || pl.Target.Sort == AnyStitch && pl.Target.Text != "")
}

// inGroup reports whether so many stitches are said to be those of a group: "3 tr of next petal".
func (pl *Place) inGroup() bool {
	one := *pl
	one.Of = nil
	return pl.Of != nil && pl.Of.Target.Sort == OfName && !pl.Of.N.Set() && one.several()
}

// oneOf makes a place one of so many stitches: in a row, or in the group that they are said to be in.
func (pl *Place) oneOf(of *Place) {
	if pl.Target, pl.Of = of.Target, of; of.inGroup() {
		pl.Of, pl.Among = of.Of, of.N
	}
}

// ofSeveral gives "first of the 9 dc" the kind of stitch that it is. "2nd of 3 tr of next petal" is
// the 2nd tr of it.
func (pl *Place) ofSeveral() {
	if of := pl.Of; (of.several() || of.inGroup()) && pl.Target.Sort == ChainStitch && pl.Target.Text == "" {
		pl.oneOf(of)
	}
}

// picksUp reads "pick up and work", "pick up" before stitches that are named: it makes them.
func (p *parser) picksUp() bool {
	start := p.i
	if p.eatAll("pick", "up") {
		if p.eat("and") {
			p.eat("work", "make")
		}
		at := p.i
		p.eat("a", "an")
		p.num()
		if w, ok := p.what(); ok && w.Kind.Base > 0 && p.tok().is("in", "into", "at", "evenly", "from") {
			p.i = at
			return true
		}
	}
	p.i = start
	return false
}

// oneInEachSkipped takes "6 sc across skipped sts" for one stitch in each of so many.
func (s *Stitches) oneInEachSkipped() {
	if len(s.Places) != 1 || !s.N.Set() || s.What.Shaping != 0 {
		return
	}
	pl := &s.Places[0]
	if pl.Pick == Skipped && !pl.N.Set() && !pl.Evenly && pl.Nth == 0 && (pl.Target.Text == "sts" || pl.Target.Text == "stitches") {
		pl.N, s.N = s.N, Num{}
	}
}

// spaceOfGroup reads "V-st sp", "shell space" behind a group: the space in it.
func (p *parser) spaceOfGroup(pl *Place) bool {
	if !p.tok().is(spaceWords...) || p.tok().is("loop", "loops", "lp", "lps") && pl.Target.Name == "" {
		return false
	}
	of, text := *pl, p.tok().text
	p.i++
	p.placeTail(&of)
	*pl = Place{Span: of.Span, Pick: Next, Bare: true, To: of.To, Target: Target{Sort: ChainSpace, Text: text}, Of: &of}
	return true
}
