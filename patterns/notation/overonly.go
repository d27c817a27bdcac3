package notation

// overOnly reads "Working back and forth over the next 14 sts only", "Now work on just the
// first 6 sts:" as a note: the rows that follow say it again.
func (b *block) overOnly() bool {
	p := b.p
	start := p.i
	p.eat("continue", "cont", "now", "begin", "start")
	p.eat("by")
	if !p.eat("work", "working", "worked") {
		p.i = start
		return false
	}
	if p.eat("back") {
		p.eat("and", "&")
		p.eat("forth", "forwards", "forward")
	}
	if at := p.i; !p.eatAll("in", "rows") && !p.eat("flat") {
		p.i = at
	}
	only := p.eat("only", "just")
	if !p.eat("on", "over", "across", "in", "along", "into", "with") {
		p.i = start
		return false
	}
	only = p.eat("only", "just") || only
	p.eat("the", "these", "those", "just")
	p.eat("next", "first", "last", "following", "same")
	p.num()
	t, ok := p.target()
	if only = p.eat("only", "alone") || only; !ok || !only || t.Sort != AnyStitch && t.Sort != OfKind || !p.ended() && p.tok().kind != tColon && !p.tok().first {
		p.i = start
		return false
	}
	b.add(&Note{Span: p.from(start), Text: p.words(start)})
	return true
}
