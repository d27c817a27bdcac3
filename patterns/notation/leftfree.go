package notation

// intoLeft reads "working behind petals in unworked sts of Rnd 1", "working in the skipped sc of Rnd 2":
// what follows goes into stitches that rounds before have passed over. Where they lie, behind or in front,
// needs no telling.
func (b *block) intoLeft() bool {
	p, start := b.p, b.p.i
	no := func() bool { p.i = start; return false }
	if !p.eat("working", "work") {
		return no()
	}
	if p.eat("behind") || p.eatAll("in", "front", "of") || p.eatAll("in", "back", "of") {
		for !p.tok().is("in", "into", "to") {
			if k := p.tok().kind; k != tWord && k != tNumber && k != tHyphen && k != tComma || k == tWord && p.instructs(p.i) {
				return no()
			}
			p.i++
		}
		p.eat("to")
	}
	if p.eat("only"); !p.eat("in", "into") {
		return no()
	}
	p.eat("the", "each")
	p.eat("of")
	p.eat("the")
	pl := Place{Pick: Skipped}
	if n, ok := p.num(); ok {
		pl.N = n
	}
	if !p.passedOver() && !p.eat("free", "unused") || !p.targetOr(&pl) || pl.Target.Sort != AnyStitch && pl.Target.Sort != OfKind {
		return no()
	}
	p.leftBefore(&pl)
	p.placeTail(&pl)
	if pl.N, pl.Every = (Num{}), true; pl.Below >= 0 || !p.ended() && p.tok().kind != tColon {
		return no()
	}
	p.eat("only")
	pl.Span = p.from(start)
	b.add(&In{Span: p.from(start), Place: pl})
	return true
}
