package notation

import "whorl/patterns/stitch"

// asStitches takes "working in each dc and each ch-1 sp as a st", "counting each ch-1 sp as one stitch"
// before the work of a round: what it names is gone into in turn with the stitches, in all of it.
func (p *parser) asStitches(b *block) bool {
	start := p.i
	no := func() bool { p.i = start; return false }
	if !p.eat("working", "work", "counting", "count", "treating", "treat", "taking") {
		return no()
	}
	p.eat("in", "into")
	var l []Target
	for {
		for p.eat("each", "every", "the", "all", "any", "both", "a") {
		}
		t, ok := p.target()
		if !ok {
			return no()
		}
		switch {
		case t.ByNumber():
			l = append(l, Target{Sort: ChainSpace, Chains: t.Chains, Text: t.Text})
		case (t.Sort == ChainSpace || t.Sort == ChainStitch) && t.Name == "":
			l = append(l, t)
		case t.Sort != OfKind && t.Sort != AnyStitch && t.Sort != OfShape && t.Sort != OfName:
			return no()
		}
		if !p.eat("and") {
			break
		}
	}
	if len(l) == 0 || !p.eat("as") {
		return no()
	}
	p.eat("a", "one", "1", "if")
	p.eat("it", "they")
	p.eat("were", "was")
	p.eat("a")
	if !p.eat("st", "sts", "stitch", "stitches") || !p.ended() {
		return no()
	}
	p.inTurn = l
	return p.note(b, start, p.i)
}

// takeInTurn lets the places of instructions that are stitches of any kind take in what is to be gone
// into as one.
func takeInTurn(items []Item, l []Target) {
	for _, it := range items {
		switch it := it.(type) {
		case *Stitches:
			for i := range it.Places {
				it.Places[i].TakeIn(l)
			}
		case *Group:
			for i := range it.Place {
				it.Place[i].TakeIn(l)
			}
			takeInTurn(it.Items, l)
		case *Repeat:
			takeInTurn(it.Items, l)
			takeInTurn(it.Ending, l)
		case *Skip:
			if it.Place != nil {
				it.Place.TakeIn(l)
			}
		}
	}
}

// TakeIn lets a place that is any stitches take in what is to be gone into as one. It is false for others.
func (pl *Place) TakeIn(l []Target) bool {
	if pl.Target.Sort == AnyStitch && pl.Of == nil && len(pl.Also) == 0 && (pl.Pick == Next || pl.Pick == Each) {
		pl.Also = append(pl.Also, l...)
		return true
	}
	return false
}

// changeSpaces reads "working 1 dc in each ch sp", "working into ch sps as sts": the spaces are gone into
// in turn with the stitches.
func (p *parser) changeSpaces() *Change {
	p.eat("working", "work", "making", "with", "treating", "counting")
	c, n := &Change{}, 0
	p.eatAll("only", "one")
	if k, ok := p.plainNumber(); ok {
		n = k
	}
	w, ok := p.what()
	if ok && (n > 1 || w.Name != "" || w.Kind != stitch.Of(w.Kind.Base)) {
		return nil
	}
	c.Of = w.Kind
	if !p.eat("in", "into") && ok {
		return nil
	}
	each := p.eat("each", "every", "all")
	p.eat("the", "of")
	t, is := p.target()
	if !is || t.Sort != ChainSpace || t.Name != "" {
		return nil
	}
	as := p.eat("as")
	if as {
		p.eat("a", "one", "1", "if")
		if !p.eat("st", "sts", "stitch", "stitches") {
			return nil
		}
	}
	if ok && !each || !ok && !as {
		return nil
	}
	c.Spaces = []Target{{Sort: ChainSpace, Chains: t.Chains, Text: t.Text}}
	return c
}
