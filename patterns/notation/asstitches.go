package notation

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
				it.Places[i].takeIn(l)
			}
		case *Group:
			for i := range it.Place {
				it.Place[i].takeIn(l)
			}
			takeInTurn(it.Items, l)
		case *Repeat:
			takeInTurn(it.Items, l)
			takeInTurn(it.Ending, l)
		case *Skip:
			if it.Place != nil {
				it.Place.takeIn(l)
			}
		}
	}
}

func (pl *Place) takeIn(l []Target) {
	if pl.Target.Sort == AnyStitch && pl.Of == nil && len(pl.Also) == 0 && (pl.Pick == Next || pl.Pick == Each) {
		pl.Also = append(pl.Also, l...)
	}
}
