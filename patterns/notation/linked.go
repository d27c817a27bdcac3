package notation

// barWords are said of which of the bars at the side of a stitch the hook goes through.
var barWords = []string{"horizontal", "vertical", "middle", "side", "upper", "lower", "top", "bottom", "first", "second", "diagonal", "front", "remaining"}

// linkBar reads "down through horizontal bar of last st", "in upper bar" behind "insert hook": a loop
// drawn through it takes the place of a yarn over, which links the stitch to the one before it.
func (p *parser) linkBar() bool {
	start := p.i
	for p.eat("down", "up", "downwards", "upwards", "through", "in", "into", "under", "behind", "from", "to", "the", "around", "right", "left") ||
		p.tok().is("top", "bottom") && p.at(1).is("to", "through", "down") && p.eat("top", "bottom") {
	}
	which := p.i
	for p.eat(barWords...) {
	}
	if !p.eat("bar", "bars", "strand") {
		p.i = start
		return false
	}
	named := p.toks[which].is("middle", "upper", "lower", "top", "bottom", "second")
	said := false
	for p.tok().kind == tWord && !p.tok().is("and", "then", "yo", "yoh", "yrh", "yarn", "pull", "draw", "pick", "next", "back") {
		said = said || p.tok().is("last", "previous", "prev", "just", "preceding", "turning", "same")
		p.i++
	}
	if said || named && !p.tok().is("next", "back") && p.i > which {
		return true
	}
	p.i = start
	return false
}
