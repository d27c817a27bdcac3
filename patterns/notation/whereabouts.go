package notation

import "whorl/patterns/fault"

// whereabouts passes over "along that side", "around the top of the cuff": where the
// places are that have been named already.
func (p *parser) whereabouts(rows bool) bool {
	start := p.i
	if p.eat("at") {
		// "in ch-3 lp at tip of pineapple"
		p.eat("the")
		if p.eat("tip", "top", "point", "end", "peak") && p.eat("of") {
			p.eat("the", "each", "next")
			if p.tok().kind == tWord {
				if p.i++; p.ended() {
					return true
				}
			}
		}
		if p.eat("beg", "beginning", "start") && p.eat("of") {
			p.eat("the", "this")
			if _, round := roundWord(p.tok()); round && p.at(1).kind != tNumber {
				p.i++
				return true // "3rd of 4 ch at beg of round"
			}
		}
		for p.eat("straight", "other", "same", "left", "right", "front", "back", "outer", "inner", "lower", "upper", "side", "scalloped", "shaped", "long", "short", "hand") {
			p.eatKind(tHyphen)
		}
		if p.eat("edge", "side", "border") && p.ended() {
			return true // "in next 2 tr at the straight edge"
		}
		p.i = start
	}
	if rows && (p.toWhere() || p.aroundBand()) {
		return true
	}
	if p.eat("along", "on", "down", "up", "around", "across") || rows && p.eat("of", "at") {
		the := p.eat("the")
		if p.eat("that", "this") && p.eat("side", "edge", "end") && !p.tok().is("of") {
			return true
		}
		if at := p.i; rows {
			if p.sideNamed() && !p.tok().is("of") {
				return true
			}
			p.i = at
		}
		if the && p.eat("top", "bottom", "edge", "upper", "lower") {
			p.eat("edge")
			if p.eat("of") {
				p.eat("the")
				if p.eat(bands...) {
					return true
				}
			}
		}
	}
	p.i = start
	return false
}

// sideNamed reads "left-hand edge", "other long side", "right side edge".
func (p *parser) sideNamed() bool {
	for p.eat("straight", "other", "same", "opposite", "first", "second", "next", "left", "right", "one", "each", "both", "long", "longer", "short", "shorter",
		"remaining", "outer", "outside", "row", "vertical", "hand") {
		p.eatKind(tHyphen)
	}
	if p.tok().is("side") && p.at(1).is("edge", "edges") {
		p.i++
	}
	return p.eat("side", "edge", "end", "sides", "edges")
}

// worn are pieces that have an edge of row ends all round.
var worn = []string{"hat", "strip", "cap", "beanie", "bonnet", "mitten", "mitt", "glove", "sock", "slipper", "bootie", "wristband", "tube", "basket", "bag"}

// aroundBand passes over "around top of band", "along one long edge of the brim", "around the lower
// edge", "around the cuff" behind row ends: the edge that they are.
func (p *parser) aroundBand() bool {
	start := p.i
	p.eatAll("all", "the", "way")
	p.eat("all")
	if !p.eat("around", "round", "along", "across", "at", "on") {
		p.i = start
		return false
	}
	p.eat("the", "one", "either", "this", "any")
	for p.eat("long", "longer", "upper", "lower", "top", "bottom", "open", "outer", "inner", "raw", "free", "side", "whole", "entire") {
	}
	edge := p.eat("edge", "side", "opening", "end", "mouth") || p.at(-1).is("top", "bottom", "side")
	if at := p.i; edge && p.eat("of") {
		p.eat("the", "this")
		if !p.eat(bands...) && !p.eat(worn...) {
			p.i = at
		}
	} else if !edge && (p.eat(bands...) || p.eat(worn...)) {
		p.eat("edge", "opening")
		edge = true // "around the cuff"
	}
	if edge && p.ended() {
		return true
	}
	p.i = start
	return false
}

// toWhere passes over "to the front", "back to the heel", "up to the seam" behind row ends: as
// far as they go.
func (p *parser) toWhere() bool {
	start := p.i
	p.eat("back", "up", "down", "round", "around")
	if p.eat("to", "towards", "toward") {
		p.eat("the")
		p.eat("centre", "center", "middle", "other", "upper", "lower")
		if p.eat("front", "back", "heel", "toe", "seam", "start", "beginning", "top", "bottom", "side", "neck", "nape", "underarm", "ankle", "cuff",
			"crown", "brim", "tip", "join", "marker") {
			p.eat("seam", "edge")
			if at := p.i; p.eat("of") {
				p.eat("the", "your")
				if p.tok().kind != tWord || p.tok().first || p.stitchy(p.i, p.i+1) {
					p.i = at
				} else {
					p.i++
				}
			}
			if p.ended() {
				return true
			}
		}
	}
	p.i = start
	return false
}

// acrossFront passes over "across the top", "along the front edge" behind so many
// stitches: where they are, which is where the work has come to.
func (p *parser) acrossFront() bool {
	start := p.i
	if p.eat("across", "along", "over", "at", "on", "for") {
		p.eat("the")
		if p.eat("top", "bottom", "front", "back", "nape", "forehead", "neck", "tip", "crown") {
			p.eat("edge", "side", "of")
			p.eat("the")
			p.eat("neck", "head", "hat", "flap", "blanket", "piece", "panel", "shawl", "row")
			if p.ended() {
				return true
			}
		}
	}
	p.i = start
	return false
}

// alongFlatEdge reads "along the foundation chain", "across the last row", "of the underside of the
// chain" behind so many stitches: the edge that they are on.
func (p *parser) alongFlatEdge(pl *Place) bool {
	start := p.i
	if pl.Target.Sort != AnyStitch && pl.Target.Sort != ChainStitch && pl.Target.Sort != OfKind || pl.Target.Name != "" ||
		!p.eat("along", "across", "over", "on", "of", "at", "in") {
		return false
	}
	edge := p.flatEdge()
	switch {
	case edge == "" || !p.ended():
	case edge == TopEdge:
		pl.OnTop = true
		return true
	case pl.Target.Sort != OfKind:
		pl.Target = Target{Sort: ChainStitch, Name: ChainEdge, Text: pl.Target.Text}
		return true
	}
	p.i = start
	return false
}

// ofTop reads "of last row", "of the top edge": on the way round a flat piece, its
// last row again.
func (p *parser) ofTop(pl *Place) bool {
	start := p.i
	p.i++
	if p.flatEdge() == TopEdge || p.eatAll("the", "top", "edge") || p.eatAll("top", "edge") || p.eatAll("the", "top", "row") {
		pl.OnTop = true
		return true
	}
	p.i = start
	return false
}

// afterSkipped reads "the stitch after it", "st after that": the next one behind a
// stitch that was passed over.
func (p *parser) afterSkipped() bool {
	start := p.i
	p.eat("the")
	if p.eat("st", "stitch", "one") && p.eat("after", "following") && (p.eat("it", "that", "this") || p.ended() || p.eat("the") && p.eat(skippedWords...) && p.eat("st", "stitch", "one")) && p.ended() {
		return true
	}
	p.i = start
	return false
}

// withJoin reads "the stitch with the join", "st where you joined": where the round below
// was joined.
func (p *parser) withJoin() bool {
	start := p.i
	p.eat("the", "same")
	if p.eat("st", "stitch") {
		switch {
		case p.eat("with", "of", "at") && p.eat("the") && p.eat("join", "joining", "seam") && p.ended():
			return true
		case p.eat("where") && p.eat("you", "the"):
			p.eat("last", "round", "rnd")
			if p.eat("join", "joined", "joins") || p.eat("is", "was") && p.eat("joined") {
				return p.ended()
			}
		}
	}
	p.i = start
	return false
}

// onSideNamed passes over "at the beginning of a short edge", "on one long side" behind the
// place that yarn is joined to: which of several alike it is.
func (p *parser) onSideNamed() bool {
	start := p.i
	if p.eat("at", "on", "of", "to", "before", "along", "in") {
		for p.eat("the", "a", "an", "any", "one", "either", "beginning", "start", "end", "beg", "left", "right", "of", "your") {
		}
		if p.sideNamed() && (p.ended() || p.eat("of") && p.pieceNamed()) {
			return true
		}
	}
	p.i = start
	return false
}

// pieceNamed passes over "the blanket", "any square".
func (p *parser) pieceNamed() bool {
	for p.eat("the", "a", "an", "any", "your", "one", "joined", "finished", "whole") {
	}
	if p.tok().kind != tWord || p.tok().first || p.stitchy(p.i, p.i+1) {
		return false
	}
	p.i++
	return p.ended()
}

// betweenPieces is the fault of stitches that go into the join between two pieces, which
// are worked one at a time; nil where none does.
func (p *parser) betweenPieces() *fault.Fault {
	start := p.i
	defer func() { p.i = start }()
	if !p.eat("in", "into", "at", "on", "over") {
		return nil
	}
	for p.eat("the", "each", "every", "next", "a") {
	}
	if !p.eat("join", "joins", "seam", "seams", "joining", "joinings") || !p.ended() && !p.tok().is("between", "of") {
		return nil
	}
	return fail(p.from(start), "not-understood", "cannot work into the join between two pieces: they are worked one at a time",
		"Say what goes along one of them, for example: 2 dc in next st.\n"+
			"What is worked round all of them can stand under notes:.")
}
