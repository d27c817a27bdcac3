package notation

// slit reads "thumb opening", n tokens on.
func (p *parser) slit(n int) bool {
	start := p.i
	p.i += n
	p.eat("the")
	limb := p.eat("thumb", "arm", "leg", "ear", "hand")
	if limb && n == 1 && p.toks[start].is("at") && p.ended() {
		p.opening = true // "first ch of ch-6 at thumb"
		return true
	}
	if p.eat("opening", "hole", "thumbhole", "armhole", "slit", "gap") {
		p.opening = true
		return true
	}
	p.i = start
	return false
}

// chainsAtSlit reads "thumb opening", "the chs" where a round goes up to it: the chains across it.
func (p *parser) chainsAtSlit() (Target, bool) {
	start, opening := p.i, p.opening
	defer func() { p.opening = opening }()
	slit := p.slit(0)
	if (p.eat("ch", "chs", "chain", "chains") || slit) && p.ended() {
		return Target{Sort: ChainSpace, Text: p.words(start)}, true
	}
	p.i = start
	return Target{}, false
}
