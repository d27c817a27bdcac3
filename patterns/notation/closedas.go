package notation

import (
	"slices"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// closed are the verbs that say of several stitches that they have one top, closing those that give
// it as an order.
var (
	closed = []string{"joined", "drawn", "closed", "worked", "gathered", "finished", "pulled", "taken", "crocheted", "caught", "fastened"}

	closing = []string{"join", "joining", "draw", "drawing", "close", "closing", "work", "working", "gather", "gathering", "finish", "finishing",
		"pull", "pulling", "take", "taking"}

	// closingWords are the other words of such a phrase.
	closingWords = []string{"and", "then", "all", "of", "them", "these", "sts", "stitches", "legs", "loops", "lps", "the", "last", "off", "up", "through",
		"at", "top", "tops", "tog", "together", "as", "into", "in", "one", "once", "a", "st", "stitch", "single", "each", "to", "being"}
)

// closedAhead reads "all joined together at the top", "close them all together" from token j on. It
// tells where the phrase ends, 0 for any other, and whether that they are together is said.
func (p *parser) closedAhead(j int) (end int, together bool) {
	verb, order, top, number := false, false, false, false
	for end = j; ; end++ {
		t := &p.toks[end]
		n := t.kind == tNumber && !number && p.toks[end+1].is("sts", "stitches", "legs", "loops", "lps")
		if !n && !t.is(closed...) && !t.is(closing...) && !t.is(closingWords...) {
			break
		}
		verb = verb || t.is(closed...)
		order = order || t.is(closing...)
		top = top || t.is("top", "tops")
		together = together || t.is("tog", "together", "once") || t.is("one") && p.toks[end-1].is("as", "into")
		number = number || n
	}
	if !verb && !order || !together && !top || p.toks[end-1].is("in", "into", "through", "of", "and", "then", "to", "the", "a") {
		return 0, false
	}
	return end, together || verb
}

// closedEnds reports whether a phrase ends at token i.
func (p *parser) closedEnds(i int) bool {
	switch p.toks[i].kind {
	case tComma, tSemi, tStop, tDash, tClose, tEnd:
		return true
	}
	return false
}

// closedBehind reads ", all joined together at the top", "(closed together)" behind stitches: they are
// one, all in one place or each in one of several.
func (p *parser) closedBehind(s *Stitches) {
	start := p.i
	if p.defining || len(s.Places) != 1 || s.Places[0].Target.Sort == Ring {
		return
	}
	sign := p.eatKind(tComma) || p.eatKind(tStop) || p.eatKind(tSemi) || p.eatKind(tDash)
	open := !sign && p.eatKind(tOpen)
	if !sign && !open && !p.tok().is("and", "then") {
		p.i = start
		return
	}
	from := p.i
	end, said := p.closedAhead(from)
	one := p.oneTop(s)
	if end == 0 || !said || one == nil || one.What.Kind.Base == stitch.Single && !p.toks[from].is("all") && !p.toks[from].is(closed...) ||
		p.toks[start].kind == tStop && (one.What.Kind.Shape == stitch.Together || one.What.Kind.Legs < 3) {
		p.i = start // "sc in last 5 sts. Draw together.": the piece is
		return
	}
	switch p.i = end; {
	case p.tok().is("with"), open && p.tok().kind != tClose:
		p.report(closedUnclear(p.from(from)))
	case !open && !p.closedEnds(end):
		p.i = start
		return
	}
	if open {
		p.eatKind(tClose)
	}
	*s = *one
}

// closedTogether takes such a phrase away from the words of a designer's own stitch. Nil where nothing
// is said.
func (p *parser) closedTogether() *Span {
	for j := p.i + 2; j < len(p.toks)-1; j++ {
		sign := p.toks[j-1].kind == tComma || p.toks[j-1].kind == tSemi || p.toks[j-1].kind == tStop || p.toks[j-1].kind == tDash
		if !sign && !p.toks[j].is("and", "then") {
			continue
		}
		end, _ := p.closedAhead(j)
		if end == 0 {
			continue
		}
		if p.toks[end].is("with") {
			return &Span{p.toks[j].pos, p.toks[j].length} // "then join together with a bead"
		}
		if !p.closedEnds(end) {
			continue
		}
		back := p.i
		p.i = end
		at := p.from(j)
		p.i = back
		if sign {
			j-- // the sign behind them is left
		}
		p.toks = slices.Delete(slices.Clone(p.toks), j, end)
		return &at
	}
	return nil
}

// closedUnclear is the fault of such a phrase behind what is no number of stitches.
func closedUnclear(at Span) *fault.Fault {
	return fail(at, "not-understood", "what is closed together here is not clear", "Name the stitch by its legs, for example: 5-dc cluster in next st, dc3tog over next 3 sts.")
}

// asOneTop makes one stitch of those that the words of a designer's own stitch say are closed
// together: the first of items.
func (p *parser) asOneTop(items []Item, at Span) ([]Item, *fault.Fault) {
	no := closedUnclear(at)
	for _, t := range p.toks {
		if t.pos == at.Pos {
			return nil, no // what they are closed with is said as well
		}
	}
	i := slices.IndexFunc(items, func(it Item) bool { _, note := it.(*Note); return !note })
	if i < 0 {
		return nil, no
	}
	s, ok := items[i].(*Stitches)
	if g, group := items[i].(*Group); group && len(g.Items) == 1 && len(g.Place) == 1 && !g.Times.Set() {
		// "5 dc all worked into the same st"
		if in, stitches := g.Items[0].(*Stitches); stitches && len(in.Places) == 0 {
			placed := *in
			placed.Span, placed.Places = g.Span, slices.Clone(g.Place)
			placed.Places[0].All = false
			s, ok = &placed, true
		}
	}
	if !ok {
		return nil, no
	}
	for _, it := range items[i+1:] {
		switch it.(type) {
		case *Note, *Chain, *Counts:
		default:
			return nil, no
		}
	}
	one := p.oneTop(s)
	if one == nil {
		return nil, no
	}
	items = slices.Clone(items)
	items[i] = one
	return items, nil
}

// oneTop is the one stitch that stitches make which are closed together, all in one place or each in
// one of several. It is nil where they cannot be.
func (p *parser) oneTop(s *Stitches) *Stitches {
	if s.Times.Set() || len(s.But) > 0 || len(s.Places) > 1 || len(s.N.Values) > 1 {
		return nil
	}
	if legsOf(s.What) > 1 {
		return s // a cluster is
	}
	one := *s
	one.What = p.inTrade(s.What)
	k, legs := one.What.Kind, 1
	if s.N.Set() {
		legs = s.N.Values[0]
	}
	shape := stitch.Cluster
	if len(s.Places) == 1 && (s.Places[0].N.Set() || s.Places[0].Pick == Each) {
		pl := s.Places[0]
		if legs != 1 || len(pl.N.Values) != 1 || pl.Pick != Next && pl.Pick != Each {
			return nil
		}
		legs, pl.Pick, pl.Over = pl.N.Values[0], Next, true
		one.Places, shape = []Place{pl}, stitch.Together
	}
	if legs < 2 || legs > MaxLegs || k != stitch.Of(k.Base) || k.Base < stitch.Single {
		return nil
	}
	k.Shape, k.Legs = shape, legs
	one.What.Kind, one.N = k, Num{}
	return &one
}
