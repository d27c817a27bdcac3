package notation

// vStitch passes over the name that the trade has for two stitches in one place with a
// chain between them, "V-st", "V stitches", where the designer defines none of that name.
// How many chains there are differs, so it names only what is written out.
func (p *parser) vStitch() bool {
	start := p.i
	if _, own := p.vocab.lookup("v st"); !own && p.eat("v") {
		p.eatKind(tHyphen)
		if p.eat("st", "sts", "stitch", "stitches") {
			return true
		}
	}
	p.i = start
	return false
}
