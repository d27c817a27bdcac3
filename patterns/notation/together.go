package notation

import "whorl/patterns/stitch"

// together reads how many stitches are worked together behind the name of one: "dc 3
// tog", "single crochet two stitches together", "treble the next 3 sts together". It is
// 0 for other words.
func (p *parser) together() int {
	start := p.i
	p.eatAll("the", "next")
	n, ok := p.plainNumber()
	if ok && n > 1 && n <= MaxLegs {
		p.eat("st", "sts", "stitch", "stitches")
		if p.eat("tog", "togs", "together") {
			p.asOne()
			return n
		}
	}
	p.i = start
	return 0
}

// asOne passes over "as one stitch", "into 1 st", "as one sc" behind stitches that are worked
// together. It is the stitch that is told of, where one is.
func (p *parser) asOne() stitch.Kind {
	start := p.i
	if p.eat("as", "into") {
		p.eat("just")
		if p.eat("one", "1", "a") || p.tok().kind == tNumber && p.tok().value == 1 && p.eatKind(tNumber) {
			p.eat("single")
			if p.eat("st", "stitch") {
				return stitch.Kind{}
			}
			at := p.i
			if w, ok := p.what(); ok && w == (What{Kind: stitch.Of(w.Kind.Base)}) {
				return w.Kind
			}
			p.i = at
			return stitch.Kind{}
		}
	}
	p.i = start
	return stitch.Kind{}
}

// shapingInWords reads "work the next two stitches together", "crochet 2 tog", "two
// stitches in one": a decrease or an increase in whatever stitch the round is worked in.
func (p *parser) shapingInWords() (What, bool) {
	start := p.i
	if n, ok := p.plainNumber(); ok && n == 2 && p.eat("sts", "stitches") && p.eat("in", "into") &&
		(p.eat("one", "1") || p.tok().value == 1 && p.eatKind(tNumber)) {
		p.eat("st", "stitch")
		return What{Shaping: 1}, true
	}
	p.i = start
	said := p.eat("work", "crochet")
	p.eat("the")
	if !p.eat("next", "following", "foll") && !said {
		p.i = start
		return What{}, false
	}
	if n, ok := p.plainNumber(); ok && n == 2 {
		p.eat("st", "sts", "stitch", "stitches")
		if p.eat("tog", "together") {
			if k := p.asOne(); k.Is() {
				return What{Kind: stitch.Tog(k.Base, n)}, true
			}
			return What{Shaping: -1}, true
		}
	}
	p.i = start
	return What{}, false
}

// inTrade is what a name means in the trade, whatever the designer says of the single one; any other
// stitch as it is.
func (p *parser) inTrade(w What) What {
	if ph, ok := p.vocab.trade[w.Name]; ok && w.Name != "" && !w.Beg {
		return ph.what
	}
	return w
}

// workedTogether reads "worked together" behind "3 dc": a decrease over as many
// stitches, ", one in each of next 3 sts", or a cluster in one place.
func (p *parser) workedTogether(s *Stitches) bool {
	start := p.i
	one := p.inTrade(s.What)
	k := one.Kind
	if len(s.N.Values) != 1 || s.N.Values[0] < 2 || k.Shape != stitch.Plain || k.Base < stitch.Single {
		return false
	}
	p.eat("worked", "closed", "finished", "joined", "drawn")
	if !p.eat("tog", "together") {
		p.i = start
		return false
	}
	legs := s.N.Values[0]
	s.What, s.N = What{Kind: stitch.Tog(k.Base, legs), Loop: one.Loop}, Num{}
	p.asOne()
	at := p.i
	p.eatKind(tComma)
	p.eatKind(tOpen)
	p.eat("working")
	if p.eat("one", "1") || p.tok().kind == tNumber && p.tok().value == 1 && p.eatKind(tNumber) {
		p.eat("leg")
		if p.tok().is("in", "into", "around", "over") {
			return true // the places follow
		}
	}
	p.i = at
	return true
}

// allLegs reads ", all 3 legs in same st", "(working all legs in next ch-2 sp)" behind stitches that are
// worked together: the one place that all of them go into.
func (p *parser) allLegs(s *Stitches) {
	if s.What.Kind.Shape != stitch.Together || s.Places != nil {
		return
	}
	start := p.i
	p.eatKind(tComma)
	p.eatKind(tDash)
	open := p.eatKind(tOpen)
	p.eat("working", "with", "placing", "making")
	if p.eat("all", "both") {
		p.eat("of")
		p.eat("the", "its")
		n, numbered := p.plainNumber()
		if (!numbered || n == s.What.Kind.Legs) && p.eat("legs", "halves", "parts") {
			p.eat("worked", "made", "going", "go")
			if p.tok().is("in", "into", "around", "round") {
				if l := p.places(false); len(l) == 1 && !l[0].N.Set() && l[0].Pick != Each && (!open || p.eatKind(tClose)) {
					s.Places = l
					return
				}
			}
		}
	}
	p.i = start
}

// bothLegs passes over ", working both legs in the same st" behind stitches that are
// worked together in one place.
func (p *parser) bothLegs(s *Stitches) {
	if s.What.Kind.Shape != stitch.Together || len(s.Places) != 1 || s.Places[0].N.Set() {
		return
	}
	start := p.i
	p.eatKind(tComma)
	if p.eat("working", "with") {
		p.eat("both", "all")
		if p.eat("legs", "halves", "parts") && p.eat("in", "into") && p.eat("the", "same") {
			p.eat("same")
			if p.eat("st", "stitch", "sp", "space", "place") {
				return
			}
		}
	}
	p.i = start
}
