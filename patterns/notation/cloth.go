package notation

import (
	"slices"

	"whorl/patterns/stitch"
)

// cloths are things of woven cloth that an edging is worked into.
var cloths = []string{"hankie", "hanky", "handkerchief", "linen", "pillowcase", "pillowslip", "towel", "napkin", "serviette", "traycloth", "tablecloth", "fabric", "material", "fleece", "flannel", "felt"}

// ontoCloth reads "join thread with sl st in any corner of hankie", "attach thread to hem of towel"
// at the beginning of an edging: the edge of the cloth is the ring that its first round stands on.
func (b *block) ontoCloth() bool {
	p := b.p
	start := p.i
	if p.work || p.upTo > 1 || p.cloth != "" {
		return false
	}
	if p.eat("with") && p.eat("right", "wrong", "rs", "ws") {
		p.eat("side", "sides")
		if p.eat("of") {
			p.eat("the")
			p.eat(cloths...)
		}
		p.eat("facing")
		p.eatKind(tComma)
	}
	end := p.phraseEnd()
	if !p.eat("join", "attach") {
		p.i = start
		return false
	}
	named := ""
	for j := p.i; j < end; j++ {
		switch t := &p.toks[j]; {
		case t.is(cloths...), t.is("cloth") && j+1 == end && p.toks[j-1].is("to"):
			named = t.text
		case t.kind == tNumber, t.kind == tStar:
			p.i = start
			return false
		}
	}
	if hem := slices.ContainsFunc(p.toks[p.i:end], func(t token) bool { return t.is("hem") }); hem && named == "" {
		for j := range p.toks {
			if p.toks[j].is(cloths...) || p.toks[j].is("cloth") {
				named = p.toks[j].text
			}
		}
	}
	if named == "" {
		p.i = start
		return false
	}
	var first *Stitches
	for ; p.i < end; p.i++ {
		if p.eat("with") {
			p.eat("a", "an")
			if w, ok := p.what(); ok && w.Kind.Is() && w.Kind.Base > stitch.Slip {
				first = &Stitches{What: w}
			}
			p.i--
		}
	}
	p.cloth, p.ringed = named, true
	b.add(&MagicRing{Span: p.from(start), Round: named})
	if first != nil {
		first.Span, first.Places = p.from(start), []Place{p.onCloth(start)}
		p.work = true
		b.add(first)
	}
	return true
}

// numberBefore reports whether the stitch that is named before token i is one of so many: "77 dc".
func (p *parser) numberBefore(i int) bool {
	for i--; i >= 0 && p.toks[i].kind != tComma && p.toks[i].kind != tStop && p.toks[i].kind != tSemi && p.toks[i].kind != tStar; i-- {
		if p.toks[i].kind == tNumber || numberWords[p.toks[i].text] > 0 {
			return true
		}
	}
	return false
}

// clothOf is the cloth that the line before the first round joins the yarn to, "" for none: "With RS of
// handkerchief facing, join thread into hem at any corner."
func clothOf(rounds []*Round) string {
	for i := len(rounds) - 1; i >= 0; i-- {
		r := rounds[i]
		if len(r.Label.Numbers) > 0 || r.Label.Next.Set() {
			return ""
		}
		for _, it := range r.Items {
			switch it := it.(type) {
			case *Note, *Colour:
			case *MagicRing:
				if slices.Contains(cloths, it.Round) || it.Round == "cloth" {
					return it.Round
				}
				return ""
			default:
				return ""
			}
		}
	}
	return ""
}

// onCloth is the edge of the cloth as a place.
func (p *parser) onCloth(start int) Place {
	return Place{Span: p.from(start), Pick: Only, Target: Target{Sort: Ring, Name: Band, Text: p.cloth}}
}

// clothPlace reads "in corner", "evenly spaced across to next corner", "along side of hankie", where
// the round goes along the edge of a cloth.
func (p *parser) clothPlace() (Place, bool) {
	start := p.i
	if p.cloth == "" {
		return Place{}, false
	}
	p.eat("evenly", "closely")
	p.eat("spaced")
	said := p.i > start
	if (said || p.tok().is("across", "along", "down", "up", "around", "round")) && !p.numberBefore(start) {
		p.i = start
		return Place{}, false // how many are to go along it is not said
	}
	if p.eat("in", "into", "at", "across", "along", "down", "up", "over", "around", "round", "on") {
		for p.eat("the", "same", "next", "last", "first", "other", "this", "that", "remaining", "final", "one", "opposite", "second", "third", "fourth", "all", "way", "around", "round", "entire", "whole",
			"corner", "side", "edge", "hem", "hemmed", "end", "long", "short", "of", "outer", "outside", "place", "cloth", "blanket", "piece") || p.eat(cloths...) {
			said = true
		}
	}
	if at := p.i; p.eat("up", "as") || p.tok().is("to") {
		p.eat("far")
		p.eat("as")
		p.eat("to")
		p.eat("the", "next", "last", "first", "other", "following", "opposite")
		p.eat("next", "last", "first", "other", "following", "opposite")
		if !p.eat("corner", "end", "beginning", "start") {
			p.i = at
		}
	}
	if !said || !p.ended() && !p.tok().first {
		p.i = start
		return Place{}, false
	}
	return p.onCloth(start), true
}
