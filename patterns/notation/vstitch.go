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

// vAlone reads "each V", "next V" for a V-st: the designer's own of that name, or "" for one that
// is only written out.
func (p *parser) vAlone() (name string, ok bool) {
	start := p.i
	if p.eat("v", "vs") && !p.eatKind(tHyphen) && (p.ended() || p.tok().first || p.tok().is("around", "across", "to", "along", "below", "of")) {
		if ph, own := p.vocab.lookup("v st"); own {
			name = ph.what.Name
		}
		return name, true
	}
	p.i = start
	return "", false
}
