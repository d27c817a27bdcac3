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
			return n
		}
	}
	p.i = start
	return 0
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
			return What{Shaping: -1}, true
		}
	}
	p.i = start
	return What{}, false
}

// workedTogether reads "worked together" behind "3 dc": a decrease over as many
// stitches, ", one in each of next 3 sts", or a cluster in one place.
func (p *parser) workedTogether(s *Stitches) bool {
	start := p.i
	k := s.What.Kind
	if len(s.N.Values) != 1 || s.N.Values[0] < 2 || k.Shape != stitch.Plain || k.Base < stitch.Single {
		return false
	}
	p.eat("worked", "closed", "finished", "joined", "drawn")
	if !p.eat("tog", "together") {
		p.i = start
		return false
	}
	legs := s.N.Values[0]
	s.What.Kind, s.N = stitch.Tog(k.Base, legs), Num{}
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
