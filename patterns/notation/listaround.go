package notation

import (
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// listAround makes "sc 2, inc around", with nothing between the stitches that says where
// they go, a list that is repeated round.
func (b *block) listAround(s *Stitches) bool {
	if s.What.Shaping == 0 && s.What.Kind.Shape != stitch.Together || len(s.Places) != 1 || s.Times.Set() || s.N.Set() || len(b.items) == 0 || b.p.depth > 1 {
		return false
	}
	pl := &s.Places[0]
	if pl.Pick != Each || pl.Extent.Sort != ToEnd || pl.Span.Length != b.p.at(-1).length && !(b.p.at(-1).is("around", "round") && b.p.at(-2).is("way")) {
		return false
	}
	from := 0
	for ; from < len(b.items); from++ {
		if _, note := b.items[from].(*Note); !note {
			break
		}
	}
	if from == len(b.items) {
		return false
	}
	for _, it := range b.items[from:] {
		if o, ok := it.(*Stitches); !ok || len(o.Places) > 0 || o.Times.Set() || len(o.But) > 0 || o.What.Kind.Base == stitch.Slip {
			return false
		}
	}
	r := &Repeat{Span: s.Span, Extent: pl.Extent}
	s.Places = nil
	r.Items = append(append(r.Items, b.items[from:]...), s)
	b.items = append(b.items[:from:from], r)
	return true
}

// setAround makes "1 sc, inc, around", "1 dc, 2 dc into next, all round", whose last words stand
// apart from the stitches, a list that is repeated round: all the stitches that the sentence tells,
// which do not say where they go or go into the next. A chain of 1 before them begins the round.
func (b *block) setAround() bool {
	p := b.p
	start := p.i
	from := b.sentence
	if p.depth > 1 || from >= len(b.items) || p.at(-1).kind != tComma {
		return false
	}
	if c, ok := b.items[from].(*Chain); ok && len(c.N.Values) == 1 && c.N.Values[0] == 1 && c.Counts == nil {
		from++
	}
	if len(b.items)-from < 2 {
		return false
	}
	for _, it := range b.items[from:] {
		s, ok := it.(*Stitches)
		if !ok || s.Times.Set() || len(s.But) > 0 || s.What.Kind.Base == stitch.Slip || len(s.Places) > 1 {
			return false
		}
		if len(s.Places) == 1 && (s.Places[0].Pick != Next || s.Places[0].Target.Sort != AnyStitch && s.Places[0].Target.Sort != OfKind) {
			return false
		}
	}
	e, ok := p.extent()
	if !ok || e.Sort != ToEnd && e.Sort != ToLast || e.Target.Sort == RowEnds || !p.ended() {
		p.i = start
		return false
	}
	r := &Repeat{Span: p.from(start), Extent: e}
	r.Items = append(r.Items, b.items[from:]...)
	b.items = append(b.items[:from:from], r)
	return true
}

// timesBefore reads "6 (sc, inc)", "6 x [sc, inc]": the number of times before what is
// repeated.
func (b *block) timesBefore() (bool, *fault.Fault) {
	p := b.p
	start := p.i
	n, ok := p.plainNumber()
	if !ok || n < 2 {
		p.i = start
		return false, nil
	}
	said := Num{Span: p.from(start), Values: []int{n}}
	p.eatKind(tTimes)
	open := p.i
	close := p.matching(open)
	if p.tok().kind != tOpen || close < 0 || !p.instructs(open+1) || p.multiplied(close+1) {
		p.i = start
		return false, nil
	}
	switch end := &p.toks[close+1]; {
	case end.first, end.kind == tComma, end.kind == tStop, end.kind == tEnd, end.kind == tOpen, end.kind == tSemi, end.kind == tClose, end.kind == tDash, end.kind == tEqual:
	default:
		p.i = start
		return false, nil
	}
	p.i = open + 1
	inner, f := p.items(true)
	if f != nil {
		return false, f
	}
	if p.i != close || len(inner) == 0 {
		return false, p.stuck()
	}
	p.i++
	p.work = true
	b.add(&Repeat{Span: said.Span, Items: inner, Times: said})
	return true, nil
}

// bareRound makes "Rnd 4: dc (18)", the shorthand of a plain round, one stitch in each st
// around. A count of more than one has to be stated, since "sc" alone is one stitch.
func (r *Round) bareRound() {
	several := false
	for _, st := range r.Stated {
		several = several || len(st.Counts) == 1 && len(st.Counts[0].N.Values) > 0 && st.Counts[0].N.Values[0] > 1
	}
	if !several || len(r.Label.Numbers) == 0 {
		return
	}
	var only *Stitches
	for _, it := range r.Items {
		switch it := it.(type) {
		case *Note, *Colour, *Turn, *Join, *NoJoin, *Marker, *FastenOff:
		case *Stitches:
			if only != nil {
				return
			}
			only = it
		default:
			return
		}
	}
	if only == nil || only.N.Set() || only.Times.Set() || len(only.Places) > 0 || len(only.But) > 0 || only.What.Name != "" ||
		only.What.Shaping == 0 && (only.What.Kind.Base < stitch.Single || only.What.Kind.Shape != stitch.Plain) {
		return
	}
	only.Places = []Place{{Span: only.Span, Pick: Each, Extent: Extent{Sort: ToEnd}}}
}

// fromBeginning reads "the beg of rnd", "start of the row" behind "rep from".
func (p *parser) fromBeginning() bool {
	start := p.i
	p.eat("the")
	if p.eat("beg", "beginning", "start") && p.eat("of") {
		p.eat("the", "this")
		if p.eat("rnd", "round", "row") {
			return true
		}
	}
	p.i = start
	return false
}

// repeatRound repeats all that the round has made so far, behind its joins and starting chain: "sc
// in next st, 2 sc in next st, rep from beg of rnd around".
func (b *block) repeatRound(start int) *fault.Fault {
	p := b.p
	from := 0
	for i, it := range b.items {
		s, made := it.(*Stitches)
		if made && s.What.Kind.Base != stitch.Slip || makesAny([]Item{it}) && !made {
			break
		}
		if _, skip := it.(*Skip); skip {
			break
		}
		from = i + 1
	}
	r := &Repeat{Items: append([]Item(nil), b.items[from:]...)}
	if len(r.Items) == 0 || !makesAny(r.Items) || p.depth > 1 {
		return p.failAt(start, "star", "nothing has been worked in this round to repeat", "Mark where the repeat begins with *.")
	}
	p.eatKind(tComma)
	if n, more, ok := p.times(); ok {
		r.Times, r.More = n, more || !p.at(-1).is("total", "all", "altogether")
	} else if e, ok := p.extent(); ok {
		r.Extent = e
	} else if p.ended() || p.tok().first {
		r.Extent = Extent{Sort: ToEnd, Text: "around"}
	} else {
		return p.failAt(start, "how-often", "the words do not say how often to repeat",
			"Write, for example: rep from * around, or: rep from * 5 more times.")
	}
	r.Star, r.Span = true, p.from(start)
	b.items = append(b.items[:from:from], r)
	return p.ending(r)
}
