package notation

import "whorl/patterns/stitch"

// points are what is worked back along chains that stick out.
var points = []string{"point", "points", "petal", "leaf", "ray", "rays", "tip", "spike", "spikes", "frond", "finger", "feather", "tail", "stem", "arm"}

// bareWords are what the side of a chain is called that nothing has been worked into yet.
var bareWords = []string{"bare", "unworked", "free", "empty", "unused", "plain", "raw", "naked"}

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
	up := p.at(-1).is("up") || p.at(-2).is("up")
	climbs := up || p.at(-1).is("down") || p.at(-2).is("down")
	side, other := p.sideOfPoint()
	if (p.eat(points...) && pl.numbered() || climbs && side && pl.N.Set()) && p.ended() {
		if (other || up) && pl.Target.Sort == ChainStitch && pl.Into == stitch.Top {
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

// sideOfPoint reads "one side of the", "the other side", "the chain side" in front of the name of a
// point, and tells whether it is the other side.
func (p *parser) sideOfPoint() (side, other bool) {
	p.eat("the")
	other = p.eat(bareWords...) || p.eat("other", "opposite", "second", "remaining")
	if !other {
		p.eat("first", "next", "same", "one", "each", "worked", "stitched")
	}
	p.eat("ch", "chain")
	if side = p.eat("side", "edge", "loops", "lps"); side && p.eat("of") {
		p.eat("the", "each", "next", "this", "same", "your")
		p.eat("first", "next")
		side = false
	}
	return side, other
}

// numbered reports whether a place says how many stitches it is of.
func (pl *Place) numbered() bool { return pl.Pick != Each || pl.N.Set() }

// upPoint takes "working up the chain side", "working down the other side of the point" in front of
// stitches as a note: where the work has come to.
func (p *parser) upPoint(b *block) bool {
	start := p.i
	p.eat("now")
	if p.eat("working", "work", "going") && p.eat("up", "down", "along") {
		climbs := p.at(-1).is("up", "down")
		side, _ := p.sideOfPoint()
		named := p.eat(points...)
		if named && p.eat("and") {
			if p.eat("up", "down"); !p.eatAll("the", "other") && !p.eatAll("the", "second") {
				p.i = start
				return false
			}
			p.eat("side")
		}
		if p.eat("first"); (named || climbs && side) && (p.tok().kind == tComma || p.tok().kind == tColon || p.tok().kind == tStar || p.tok().kind == tStop) {
			return p.note(b, start, p.i)
		}
	}
	p.i = start
	return false
}

// tipOfPoint reads "tip", "tip ch of point", "ch at the tip": the chain at the tip of a point, that was
// passed over when its chains were worked back along.
func (p *parser) tipOfPoint() bool {
	start := p.i
	tip := p.eat("tip")
	p.eat("ch", "chain")
	if !tip && p.at(-1).is("ch", "chain") && p.i > start && p.eat("at", "of", "on") {
		p.eat("the")
		tip = p.eat("tip", "end", "point")
	}
	if tip {
		if at := p.i; p.eat("of") {
			p.eat("the", "each", "this", "next")
			if !p.eat(points...) {
				p.i = at
			}
		}
		if p.ended() {
			return true
		}
	}
	p.i = start
	return false
}

// besidePoint reads "at the tip" behind the next chain, and "between points", "before any point" behind
// a stitch of a kind: one that stands between them, not on their chains.
func (p *parser) besidePoint(pl *Place) bool {
	start := p.i
	if pl.Target.Sort == ChainStitch && pl.Pick == Next && !pl.N.Set() && p.eat("at") {
		if p.eat("the"); p.tipOfPoint() {
			pl.Target.Name = Tip
			return true
		}
		p.i = start
	}
	if pl.Target.Sort == OfKind && p.eat("between", "before", "after") {
		between := p.at(-1).is("between")
		p.eat("the", "two", "any", "each", "a")
		any := p.at(-1).is("any", "a")
		p.eat("two", "next", "first")
		if (between || p.at(-1).is("any", "a", "each", "next", "first")) && p.eat(points...) && p.ended() {
			pl.Target.Name = Foot
			if any && !between {
				pl.Pick = Any
			}
			return true
		}
	}
	p.i = start
	return false
}
