package notation

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
