package notation

// skipsOn reads "Skip to Rnd 10" behind the work of a round that is for some sizes only:
// with which round they go on. It is kept as a note, which says so when it is printed.
func (b *block) skipsOn() bool {
	p := b.p
	start := p.i
	no := func() bool { p.i = start; return false }
	p.eat("now", "then")
	if len(p.forSizes) == 0 && len(p.sizes) > 1 || !p.work || !p.eat(skipping...) {
		return no()
	}
	p.eat("on", "straight", "directly", "ahead", "now")
	if !p.eat("to", "with", "at", "from") {
		return no()
	}
	if _, ok := roundWord(p.tok()); !ok {
		return no()
	}
	p.i++
	n, ok := p.num()
	if !ok || !p.ended() && p.tok().kind != tEnd {
		return no()
	}
	b.add(&Note{Span: p.from(start), Text: p.words(start), GoTo: n})
	return true
}
