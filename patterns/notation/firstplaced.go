package notation

import (
	"slices"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// firstPlaced reads "working first sc in same st as join" behind the work of a round: where the first of
// its stitches goes, which is where it begins anyway. It refuses what would have it go elsewhere.
func (b *block) firstPlaced() (bool, *fault.Fault) {
	p := b.p
	start := p.i
	no := func() (bool, *fault.Fault) { p.i = start; return false, nil }
	if p.depth > 1 || len(b.items) == 0 || !p.eat("working", "placing", "making", "with") {
		return no()
	}
	p.eat("the", "your")
	if !p.eat("first", "1st") && !(p.tok().kind == tOrdinal && p.tok().value == 1 && p.eatKind(tOrdinal)) {
		return no()
	}
	w, named := p.what()
	if !named && !p.eat("st", "stitch") {
		return no()
	}
	p.eat("being", "is")
	p.eat("worked", "made", "placed")
	if !p.tok().is("in", "into") {
		return no()
	}
	pl := p.places(false)
	if len(pl) != 1 || !p.ended() {
		return no()
	}
	first := firstMade(b.items, false)
	begins := pl[0].Target.Sort == JoinPlace || pl[0].Pick == First && pl[0].Target.Sort == AnyStitch
	if begins && first != nil && (!named || first.What == w) && (len(first.Places) == 0 || first.Places[0].Pick == Each ||
		first.Places[0].Pick == Next || first.Places[0].Pick == First) && (len(first.Places) == 0 || first.Places[0].Target.Sort == AnyStitch || first.Places[0].Target.Sort == OfKind) {
		return p.note(b, start, p.i), nil
	}
	if first != nil && b.firstInChain(first, &pl[0]) && (!named || first.What == w) {
		return true, nil
	}
	return false, p.failAt(start, "not-understood", "the words have the first stitch go elsewhere than those before them",
		"Say it where the round begins: ch 1, sc in same st as join, *ch 1, sc in next st; rep from * around.")
}

// firstInChain puts the first stitch of "1 dc in each tr to end, working first dc in top of 3 ch" before the
// others, into the chain that the round below begins with.
func (b *block) firstInChain(first *Stitches, pl *Place) bool {
	if pl.Target.Sort != StartChain && (pl.Of == nil || pl.Of.Target.Sort != StartChain) || first.N.Set() && (len(first.N.Values) != 1 || first.N.Values[0] != 1) || len(first.But) > 0 ||
		len(first.Places) != 1 || first.Places[0].Pick != Each {
		return false
	}
	i := slices.Index(b.items, Item(first))
	if i < 0 {
		return false
	}
	one := *first
	pl.Begins = true
	one.Places = []Place{*pl}
	b.items = slices.Insert(b.items, i, Item(&one))
	return true
}

// firstMade is what a round makes first, in the stitch that it was joined in: nil where a chain before it
// may count, or it goes on from there by slip stitches.
func firstMade(items []Item, counts bool) *Stitches {
	for _, it := range items {
		switch it := it.(type) {
		case *Stitches:
			if counts || it.What.Kind.Base == stitch.Slip {
				return nil
			}
			return it
		case *Repeat:
			return firstMade(it.Items, counts)
		case *Chain:
			counts = counts || len(it.N.Values) != 1 || it.N.Values[0] != 1
		case *Counts:
			counts = !it.Not
		case *Note, *InLoops, *Turn:
		default:
			return nil
		}
	}
	return nil
}

// moreAtEnd takes "working 2 sc in first st", "making 2 dc in last dc" behind "sc in each st across": the
// stitch at that end is among them, and takes so many.
func (b *block) moreAtEnd() bool {
	p := b.p
	start := p.i
	no := func() bool { p.i = start; return false }
	if p.depth > 1 || len(b.items) == 0 || !p.eat("working", "making", "placing", "with") {
		return no()
	}
	last := len(b.items) - 1
	all, ok := b.items[last].(*Stitches)
	if !ok || all.N.Set() && slices.Max(all.N.Values) > 1 || all.Times.Set() || len(all.But) > 0 || !all.eachToEnd() {
		return no()
	}
	it, ok := p.stitches()
	s, _ := it.(*Stitches)
	if !ok || s == nil || len(s.N.Values) == 0 || slices.Min(s.N.Values) < 2 || s.Times.Set() || len(s.Places) != 1 || !p.ended() {
		return no()
	}
	at := &s.Places[0]
	if at.N.Set() || at.Nth > 1 || at.Of != nil || at.Target.Sort != AnyStitch && at.Target.Sort != OfKind {
		return no()
	}
	switch at.Pick {
	case First:
		b.items = slices.Insert(b.items, last, Item(s))
	case Last:
		all.Places[0].Extent = Extent{Sort: ToLast, N: One(s.Span), Target: at.Target, Text: "to last " + at.Target.Text}
		b.add(s)
	default:
		return no()
	}
	return true
}

// eachToEnd reports whether stitches go into each stitch as far as there are any.
func (s *Stitches) eachToEnd() bool {
	if len(s.Places) != 1 {
		return false
	}
	pl := &s.Places[0]
	return pl.Pick == Each && !pl.N.Set() && pl.Of == nil && pl.Below == 0 && !pl.Evenly && len(pl.Also) == 0 &&
		(pl.Target.Sort == AnyStitch || pl.Target.Sort == OfKind) && pl.Extent.Sort == ToEnd
}
