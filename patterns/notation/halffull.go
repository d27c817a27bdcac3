package notation

import "strings"

// halfOrFull reads "half" or "full" before the shells of a count, where the pattern tells
// those at an edge from the others: which are which is not known from how they are
// made, so that the number says no more than a remark.
func (p *parser) halfOrFull() bool {
	start := p.i
	if p.eat("half", "full", "whole", "complete") {
		if p.tok().is(groupWords...) || p.tok().is("cluster", "clusters", "cl", "cls", "wheel", "wheels", "motif", "motifs", "leaf", "leaves") {
			return true
		}
	}
	p.i = start
	return false
}

// ownAt reports whether the words here are the name of one of the designer's own
// stitches: "half cl" of the half clusters that she tells of is no remark.
func (p *parser) ownAt() bool {
	start := p.i
	t, ok := p.target()
	p.i = start
	return ok && t.Sort == OfName && p.toks[start].is("half", "full", "whole", "complete") && strings.HasPrefix(t.Name, p.toks[start].text)
}
