package notation

// begBracket passes over the name of a stitch behind which it is told how the first of them is made, "beg
// cl (ch 3, dc2tog) in ring", "cluster (dc3tog) in next st" where no stitch of that name is known: what
// stands in the bracket is worked.
func (b *block) begBracket() bool {
	p := b.p
	start := p.i
	p.eat("a", "the")
	beg := p.eat("beg", "beginning", "starting", "first")
	p.eatKind(tHyphen)
	t := p.tok()
	_, own := p.vocab.lookup(t.text)
	if known := t.is("cl", "cls", "cluster", "popcorn", "pop", "pc", "puff", "bobble", "bo", "shell", "fan", "group"); !known && !own || !beg && own {
		p.i = start
		return false
	}
	p.i++
	p.eat("st", "stitch")
	open := p.i
	close := p.matching(open)
	if p.tok().kind != tOpen || close < 0 || !p.toks[close+1].is("in", "into", "around") || !p.instructs(open+1) {
		p.i = start
		return false
	}
	if p.i = open + 1; beg && p.chain() == nil {
		p.i = start
		return false
	}
	if own {
		// The designer's own, of which the bracket says again how it begins.
		p.i = start
		w, ok := p.what()
		if ok && p.i == open {
			p.i = close + 1
			if places := p.places(false); w.Beg && places != nil {
				b.add(&Stitches{Span: p.from(start), What: w, Places: places})
				p.work = true
				return true
			}
		}
		p.i = start
		return false
	}
	p.i = open
	return true
}
