package notation

import "whorl/patterns/stitch"

// points are what is worked back along chains that stick out.
var points = []string{"point", "points", "petal", "leaf", "ray", "rays", "tip", "spike", "spikes", "frond", "finger", "feather", "tail", "stem", "arm"}

// alongPoint reads "along the other side of the point", "down the point" behind stitches:
// where they are, which is where the work has come to. The other side of its chains is
// their underside.
func (p *parser) alongPoint(pl *Place) bool {
	start := p.i
	if pl.Of != nil || pl.Target.Sort != ChainStitch && pl.Target.Sort != AnyStitch && pl.Target.Sort != OfKind {
		return false
	}
	if !p.eat("along", "down", "up") {
		return false
	}
	p.eat("the")
	other := p.eat("other", "opposite", "second")
	if !other {
		p.eat("first", "next", "same", "one", "each")
	}
	if p.eat("side", "edge") && p.eat("of") {
		p.eat("the", "each", "next", "this", "same")
		p.eat("next")
	}
	if p.eat(points...) && p.ended() {
		if other && pl.Target.Sort == ChainStitch && pl.Into == stitch.Top {
			pl.Into = stitch.Underside
		}
		return true
	}
	p.i = start
	return false
}

// baseOfPiece reads "base of leaf", "bottom of the heart" behind "sl st in": where a stem that
// hangs from a piece is closed, which is where its chains began.
func (p *parser) baseOfPiece() bool {
	start := p.i
	slip := p.at(-1).is("in", "into", "to", "the") && (p.at(-2).is("st", "stitch", "ss", "slst") || p.at(-3).is("st", "stitch", "ss", "slst"))
	if slip && !p.defining && p.eat("base", "bottom", "foot") && p.eat("of") {
		if p.eat("the"); !p.tok().is("each", "every", "next", "same", "this", "that") && p.ofMotif(&Place{}) {
			return true
		}
	}
	p.i = start
	return false
}
