package notation

// formsPattern reads "2nd and 3rd rows form the pattern", "These 4 rows set the patt", "Rows 2-5 are
// the lace pattern" as a note of the rows that "in pattern" means from there on.
func (b *block) formsPattern() bool {
	p := b.p
	start, faults := p.i, len(p.faults)
	no := func() bool { p.i, p.faults = start, p.faults[:faults]; return false }
	if p.depth > 1 {
		return false
	}
	p.eat("the")
	if t := p.tok(); t.kind != tOrdinal && ordinalOf(t) == 0 && !t.is("last", "previous", "these", "this", "from") {
		if _, round := roundWord(t); !round {
			return no()
		}
	}
	it, f := p.referTo(start)
	r, ok := it.(*Ref)
	if f != nil || !ok || r.Piece != "" || r.Times.Set() || r.Called != "" {
		return no()
	}
	p.eat("inclusive", "inc", "incl")
	if !p.eat("form", "forms", "set", "sets", "establish", "establishes", "make", "makes", "are", "is", "constitute", "constitutes", "comprise", "complete") {
		return no()
	}
	p.eat("up")
	p.eat("the", "one", "a")
	p.eat("st", "stitch", "lace", "mesh", "shell", "basic", "whole")
	if !p.eat("pattern", "patt", "pat", "patterns") {
		return no()
	}
	p.eat("repeat", "rep")
	p.eat("and", "which")
	if p.eat("are", "is") {
		if !p.eat("repeated", "worked", "rep") {
			return no()
		}
		p.eat("throughout")
	}
	if !p.ended() && !p.tok().first {
		return no()
	}
	r.Span = p.from(start)
	b.add(&Note{Span: p.from(start), Text: p.words(start), Forms: r})
	return true
}
