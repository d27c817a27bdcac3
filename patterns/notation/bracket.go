package notation

import (
	"whorl/patterns/fault"
)

// bracket reads what stands in brackets: a count, what something counts as,
// advice, a group in one place or a repeat. Places are set when they were
// written before it.
func (b *block) bracket(places []Place) *fault.Fault {
	p := b.p
	open := p.i
	close := p.matching(open)
	if close < 0 {
		return p.failAt(open, "bracket", "this bracket is never closed", "Add the closing bracket.")
	}
	if close == open+2 && p.toks[open+1].is("s") && !p.toks[open].spaced {
		p.i = close + 1 // "next 2 st(s)"
		return nil
	}
	if p.i = open + 1; places == nil {
		if ok, f := b.chainsBetween(); f != nil {
			return f
		} else if ok && p.i != close {
			return p.stuck()
		} else if ok {
			p.i++ // "8 dc in ring (ch 1 between each)"
			return nil
		}
	}
	if p.i = open; places == nil && !p.multiplied(close+1) {
		if b.tellsPlaces(open, close) || b.tellsRate(open, close) {
			p.i = close + 1
			b.add(&Note{Span: p.from(open), Text: p.words(open)})
			return nil
		}
		p.i = open + 1
		if c := b.ofLastChain(); c != nil && p.i == close {
			p.i = close + 1
			b.attach(c)
			return nil
		}
		p.i = open + 1
		if s := p.statedUpTo(close); s != nil && p.toks[close-1].is("made") && p.toks[close+1].kind == tComma && p.instructs(close+2) {
			p.i = close + 1 // "1 tr into 4th ch from hook (2 tr made), …"
			b.add(&Note{Span: p.from(open), Text: p.words(open)})
			return nil
		} else if s != nil {
			s.Span = Span{p.toks[open].pos, p.toks[close].pos.Column - p.toks[open].pos.Column + 1}
			if p.toks[close].pos.Line != p.toks[open].pos.Line {
				s.Length = p.toks[open].length
			}
			p.stated = append(p.stated, s)
			for j := open + 1; j < close; j++ {
				if p.saysMore(j) {
					p.note(b, j, close) // "(88 dc, which is 22 to a side)"
					break
				}
			}
			p.i = close + 1
			p.thingBehind(s)
			return nil
		}
		p.i = open + 1
		if c := b.startMade(); c != nil && p.i == close {
			p.i = close + 1
			b.add(c)
			return nil
		}
		p.i = open + 1
		if c, _ := p.counts(); c != nil {
			p.i = close + 1
			b.attach(c.(*Counts))
			return nil
		}
		p.i = open + 1
		if w, ok := p.what(); ok && p.i == close && len(b.items) > 0 && !w.Beg && p.toks[open-1].kind != tComma {
			// "6 foundation single crochet (fsc)": its abbreviation.
			p.i = close + 1
			return nil
		}
		if b.notIntoBracket(open, close) {
			return nil
		}
		p.i = open + 1
		if !p.stitchy(open+1, close) || p.madeNote(open+1, close) || !p.instructs(open+1) {
			p.i = close + 1
			b.add(&Note{Span: p.from(open), Text: p.words(open)})
			return nil
		}
	}
	p.i = open + 1
	inner, f := p.items(true)
	if f != nil && p.defining && places == nil && len(b.items) > 0 && !p.evident(open+1, close) {
		p.i = close + 1 // "(waistcoat stitch)" behind the words of a stitch
		b.add(&Note{Span: p.from(open), Text: p.words(open)})
		return nil
	}
	if f != nil {
		return f
	}
	if p.i != close {
		return p.stuck()
	}
	p.i++
	if len(inner) == 0 {
		return p.failAt(open, "bracket", "there is nothing to work in these brackets", "")
	}
	return b.afterBracket(open, inner, places)
}

// afterBracket reads what is to be done with a bracketed group.
func (b *block) afterBracket(open int, inner []Item, places []Place) *fault.Fault {
	p := b.p
	if places != nil {
		b.add(&Group{Span: p.from(open), Items: inner, Place: places})
		return nil
	}
	if p.tok().is("to", "until") {
		// "[…] to last 2 sts" goes on; it is no place.
		at := p.i
		if e, ok := p.extent(); ok {
			r := &Repeat{Items: inner, Extent: e, Span: p.from(at)}
			b.add(r)
			return p.ending(r)
		}
		p.i = at
	}
	if n := p.workedWhere(); n > 0 {
		p.i += n // "(2 dc, ch 2, 2 dc) worked into next sp"
	}
	if l := p.places(false); l != nil {
		g := &Group{Items: inner, Place: l}
		if n, more, ok := p.times(); ok && !more {
			g.Times = n
		}
		g.Span = p.from(open)
		if !b.groupAsItComes(g) {
			b.add(g)
		}
		return nil
	}
	tail := p.i
	if p.defining && (p.tok().kind == tEnd || p.tok().kind == tStop) {
		// The definition of a stitch in brackets: all in one place.
		b.add(&Group{Span: p.from(open), Items: inner, Place: []Place{{Span: p.from(open), Pick: Same}}})
		return nil
	}
	p.eatKind(tComma)
	p.eatKind(tSemi)
	p.eat("rep", "repeat", "repeated")
	if p.tok().kind == tStar && p.tok().text == "*" && p.at(1).kind == tNumber && !p.starOpen() {
		p.tok().kind = tTimes // (inc, sc) * 3
	}
	p.eat("across", "around")
	if p.at(-1).is("across", "around") {
		p.i--
	}
	r := &Repeat{Items: inner}
	ref := roundsIn(inner)
	if ref != nil && p.tok().is("until", "till", "to") {
		b.add(ref) // "[Rep Rows 2 and 3] until piece measures 20 cm"
		return nil
	}
	if n, more, ok := p.times(); ok && ref != nil {
		if more {
			n = oneMore(n)
		}
		ref.Times, ref.Span = n, p.from(open)
		ref.End = p.endingRow()
		b.add(ref)
		return nil
	} else if ok {
		r.Times, r.More = n, more
		r.Span = p.from(tail)
		if l := p.places(false); l != nil {
			b.add(&Group{Span: p.from(open), Items: []Item{r}, Place: l})
			return nil
		}
		p.eat("around", "across")
		b.add(r)
		return p.ending(r)
	}
	if e, ok := p.extent(); ok {
		r.Extent = e
		r.Span = p.from(tail)
		b.add(r)
		return p.ending(r)
	}
	p.i = tail
	if len(inner) == 1 {
		if s, ok := inner[0].(*Stitches); ok && (len(s.Places) > 0 || p.tok().kind == tStar && p.starOpen()) {
			b.add(s) // "(tr3tog over next 3 ch)", "*sc, (sc2tog)* 6 times": only set apart
			return nil
		}
	}
	if b.leavesOut(open, inner) {
		return nil
	}
	return p.failAt(open, "how-often", "the words do not say what to do with this bracket",
		"Say how often, for example: [ … ] 6 times, or [ … ] around;\nor where, for example: ( … ) in next st.")
}

// roundsIn is the reference to rounds, said only once, that instructions consist of:
// "[Work Rows 2 and 3] 9 times". It is nil when they are anything else.
func roundsIn(items []Item) *Ref {
	var ref *Ref
	for _, it := range items {
		switch it := it.(type) {
		case *Ref:
			if ref != nil || it.Times.Set() || it.Onward {
				return nil
			}
			ref = it
		case *Note:
		default:
			return nil
		}
	}
	return ref
}

// oneMore is a number raised by one.
func oneMore(n Num) Num {
	n.Values = append([]int(nil), n.Values...)
	for i := range n.Values {
		n.Values[i]++
	}
	return n
}

// leavesOut takes "(skip the dc)" behind what goes into each of other places as a
// note: it says what is not gone into.
func (b *block) leavesOut(open int, inner []Item) bool {
	if len(b.items) == 0 || len(inner) != 1 {
		return false
	}
	skip, ok := inner[0].(*Skip)
	s, is := b.items[len(b.items)-1].(*Stitches)
	if !ok || !is || len(s.Places) == 0 || s.Places[len(s.Places)-1].Pick != Each {
		return false
	}
	for _, pl := range s.Places {
		if t := pl.Target; t.Sort == AnyStitch || t.Sort == skip.Target.Sort && t.Kind == skip.Target.Kind && t.Name == skip.Target.Name {
			return false
		}
	}
	b.add(&Note{Span: b.p.from(open), Text: b.p.words(open)})
	return true
}

// multiplied reports whether token i says how often or where, so that the
// bracket before it is an instruction.
func (p *parser) multiplied(i int) bool {
	at := p.i
	defer func() { p.i = at }()
	p.i = i
	t := p.tok()
	switch {
	case t.kind == tWord && capital(t.raw) && t.is("each", "in", "over", "between"):
		return false // "(9 sc) Each round adds 1 sc.": another sentence
	case t.is("in", "into", "around", "across", "evenly", "over", "twice", "once", "between", "thrice", "each"),
		t.kind == tTimes, t.is("all") && p.at(1).is("in", "into", "around"):
		return true
	case t.kind == tStar && t.text == "*" && p.at(1).kind == tNumber:
		end := p.at(2)
		return !p.starOpen() && (end.kind == tEnd || end.kind == tStop || end.kind == tOpen || end.kind == tComma || end.kind == tSemi || end.kind == tClose || end.kind == tSlash)
	case t.is("rep", "repeat", "repeated"):
		// "(sc, inc) repeat 6 times", but not "(72 sts); rep from *" or
		// "(12 sc) rep rnd 2".
		p.i++
		if _, _, ok := p.times(); ok {
			return true
		}
		return p.tok().is("around", "across", "to")
	case t.is("to", "until"):
		_, ok := p.extent()
		return ok
	case p.workedWhere() > 0:
		return true
	}
	_, _, ok := p.times()
	return ok
}

// workedWhere is how many words stand between a bracket and the place that it is "worked in",
// "all made into"; 0 where none do.
func (p *parser) workedWhere() int {
	n := 0
	if p.tok().is("all") {
		n++
	}
	if p.at(n).is("worked", "made", "placed") && !p.at(n).first && p.at(n+1).is("in", "into", "around", "over") && !p.at(n+2).is("rows", "rounds", "rnds", "a", "all") {
		return n + 1
	}
	return 0
}

// ofLastChain reads "= 1 tr", "first dc" in a bracket behind a chain: what it stands for.
func (b *block) ofLastChain() *Counts {
	if n := len(b.items); n > 0 {
		if c, ok := b.items[n-1].(*Chain); ok && c.Counts == nil {
			return b.p.inPlace()
		}
	}
	return nil
}

// attach gives what a bracket says of a chain or group to the item before it.
func (b *block) attach(c *Counts) {
	for i := len(b.items) - 1; i >= 0 && !c.Half; i-- {
		switch it := b.items[i].(type) {
		case *Chain:
			if it.Counts == nil {
				it.Counts = c
				return
			}
		case *Turn, *Note:
			continue
		}
		break
	}
	b.add(c)
}
