package notation

// formedByChain passes over "formed by the turning ch", "made by 5 skipped chs", said of
// a loop at the edge.
func (p *parser) formedByChain() bool {
	start := p.i
	p.eat("that", "which")
	p.eat("was", "is")
	if p.eat("formed", "made", "created") && p.eat("by", "with", "at", "from") {
		p.eat("the")
		for p.eat("beg", "beginning", "turning", "starting", "first", "foundation", "initial") || p.eat(skippedWords...) {
		}
		p.plainNumber()
		p.eat(skippedWords...)
		p.eat("turning")
		if p.eat("ch", "chs", "chain", "chains", "tch") {
			p.eatKind(tHyphen)
			p.plainNumber()
			if p.ended() || p.tok().first {
				return true
			}
		}
	}
	p.i = start
	return false
}

// formedBy reads "formed by joining hdc": said of the loop that the stitch which
// closed the last round completed.
func (p *parser) formedBy() bool {
	start := p.i
	if p.eat("formed", "made", "created") && p.eat("by", "with") {
		p.eat("the")
		p.eat("joining", "last", "join")
		if w, ok := p.what(); ok && w.Kind.Is() {
			return true
		}
	}
	p.i = start
	return false
}
