package notation

// edgeLoop reads "turning ch sp", "ch-2 turning sp", "tch loop", "loop of missed ch": the
// loop at the edge that a turning chain makes, or chains passed over.
func (p *parser) edgeLoop() (Target, bool) {
	start := p.i
	number := func() {
		p.eatKind(tHyphen)
		p.plainNumber()
		p.eatKind(tHyphen)
	}
	turning := p.eat("turning", "t")
	p.eatKind(tHyphen)
	ch := p.eat("tch")
	turning = turning || ch
	if !ch {
		number()
		ch = p.eat("ch", "chain")
	}
	if number(); !turning {
		turning = p.eat("turning")
	}
	if turning && ch && p.eat(spaceWords...) {
		return Target{Sort: ChainSpace, Name: EdgeLoop}, true
	}
	p.i = start
	p.eat("ch", "chain")
	p.eatKind(tHyphen)
	if p.eat("sp", "space", "loop", "lp") && p.eat("of", "over") {
		p.eat("the")
		p.plainNumber()
		if p.eat(skippedWords...) && p.eat("ch", "chs", "chain", "chains") && p.ended() {
			return Target{Sort: ChainSpace, Name: EdgeLoop}, true
		}
	}
	p.i = start
	return Target{}, false
}

// formedByChain passes over "formed by the turning ch", "made by 5 skipped chs", said of
// a loop at the edge.
func (p *parser) formedByChain() bool {
	start := p.i
	p.eat("that", "which")
	p.eat("was", "is")
	if p.eat("formed", "made", "created", "left") && p.eat("by", "with", "at", "from") {
		p.eat("the")
		p.plainNumber()
		for p.eat("beg", "beginning", "turning", "starting", "first", "foundation", "initial") || p.eat(skippedWords...) {
		}
		p.plainNumber()
		p.eat(skippedWords...)
		p.eat("turning")
		if p.eat("ch", "chs", "chain", "chains", "tch") {
			p.eatKind(tHyphen)
			p.plainNumber()
			p.atBeginning()
			if p.ended() || p.tok().first {
				return true
			}
		}
	}
	if p.i = start; p.eat("formed", "made", "created", "left") && p.atBeginning() && (p.ended() || p.tok().first) {
		return true
	}
	p.i = start
	return false
}

// atBeginning passes over "at beg of Row 1", "at the start of the previous row": where the
// chain stands that forms a loop at the edge.
func (p *parser) atBeginning() bool {
	start := p.i
	if p.eat("of", "in", "on") {
		p.eat("the")
		p.eat("last", "previous", "prev", "first", "preceding", "foundation")
		if _, round := roundWord(p.tok()); round && !p.tok().is("r") {
			p.i++
			p.plainNumber()
			return true
		}
		p.i = start
	}
	if p.eat("at", "from", "in", "on") {
		p.eat("the", "very")
		if p.eat("beg", "beginning", "start") {
			at := p.i
			p.eat("of")
			p.eat("the")
			p.eat("last", "previous", "prev", "first", "preceding", "foundation")
			if _, round := roundWord(p.tok()); !round || p.tok().is("r") {
				p.i = at
				return true
			}
			p.i++
			p.plainNumber()
			return true
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

// halfLoop reads "half lp just made", "half loop below beg ch-3", "same half lp": the last loop of the
// round below, whose other half is the stitch that closed it. It is the Name of that place, "" for
// other words.
func (p *parser) halfLoop() string {
	start := p.i
	p.eat("the")
	p.eat("same", "this", "that", "first")
	if !p.eat("half") || !p.eat(spaceWords...) {
		p.i = start
		return ""
	}
	at := p.i
	switch {
	case p.eat("just") && p.eat("made", "worked", "formed", "completed"):
		return HalfLoop
	case p.eat("below", "under", "beneath", "beside", "as") || p.eatAll("at", "base", "of") || p.eatAll("at", "the", "base", "of"):
		p.eat("the", "first")
		if _, ok := p.startChain(); ok || p.chain() != nil {
			return HalfLoop
		}
	}
	p.i = at
	return HalfLoop
}
