package notation

// edgings are what a single round or row round a piece is called.
var edgings = []string{"edging", "border", "trim", "edge"}

// edgingRound reads the name of an edging that is worked in one round, which its words follow
// without a label of their own: "Edging: Ch 1, …", or "Scalloped edging" on a line by itself.
func (p *parser) edgingRound(l *Label) bool {
	start := p.i
	no := func() bool { p.i = start; return false }
	if !p.tok().first || !capital(p.tok().raw) {
		return false
	}
	for n := 0; !p.tok().is(edgings...); n++ {
		if n == 2 || p.tok().kind != tWord || n > 0 && p.tok().first || p.tok().is(working...) || p.tok().is(notNames...) {
			return no()
		}
		p.i++
		p.eatKind(tHyphen)
	}
	if p.tok().first && p.i > start {
		return no()
	}
	p.i++
	called := p.words(start)
	colon := p.eatKind(tColon)
	if !colon {
		p.eatKind(tStop)
	}
	if colon && p.instructs(p.i) || p.edgingBelow() {
		l.Next, l.Called = One(Span{p.toks[start].pos, p.toks[start].length}), called
		l.Text = called
		return true
	}
	return no()
}

// edgingBelow reports whether the work of the round stands on the next line, without a label.
func (p *parser) edgingBelow() bool {
	if !p.tok().first || p.tok().kind == tEnd {
		return false
	}
	below := newParser(p.toks[p.i:], p.vocab, p.sizes)
	if _, labelled := below.label(); labelled {
		return false
	}
	end := p.lineEnd()
	return p.instructs(p.i) || p.evident(p.i, end)
}
