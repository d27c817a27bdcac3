package notation

// inSpiral takes "…; continue in a spiral", "…, but work in continuous rounds", said behind
// rounds that are not joined, as a note: it says no more than that.
func (b *block) inSpiral() bool {
	p := b.p
	if len(b.items) == 0 {
		return false
	}
	if _, ok := b.items[len(b.items)-1].(*NoJoin); !ok {
		return false
	}
	start := p.i
	if p.eat("you") {
		p.eat("will", "now")
		p.eat("be", "now")
	}
	verb := p.eat(keptVerbs...)
	if verb {
		p.eat("on", "working", "crocheting")
		p.eat("to")
	}
	if p.eat("work", "working", "crochet", "crocheting") {
		verb = true
	}
	p.eat("round", "around")
	if verb && p.spiralWords() {
		for p.eat("throughout", "now") || p.eatAll("without", "joining") || p.eatAll("from", "here", "on") || p.eatAll("from", "now", "on") || p.eatAll("from", "here") {
		}
		if p.ended() || p.tok().first || p.tok().kind == tOpen || p.tok().is("using", "marking", "moving", "placing", "with") {
			return p.note(b, start, p.i)
		}
	}
	p.i = start
	return false
}

// spiralWords reads "in a spiral", "in continuous rounds", "round and round".
func (p *parser) spiralWords() bool {
	if p.at(-1).is("round", "around") && p.eatAll("and", "round") || p.eatAll("and", "around") || p.eatAll("round", "and", "round") {
		return true
	}
	if !p.eat("in") {
		return false
	}
	p.eat("a", "one", "the")
	p.eat("continuous", "continual", "unbroken")
	spiral := p.eat("spiral", "spirals")
	return p.eat("round", "rounds", "rnd", "rnds") || spiral
}
