package notation

import "whorl/patterns/stitch"

// limbs are what pieces are called that are made alike and joined into one.
var limbs = []string{"leg", "arm", "foot", "paw", "fluke", "ear", "horn", "wing", "toe", "hump", "tube", "tentacle", "antler", "fin", "claw", "lobe"}

// limb reads one of several pieces that are joined: "the first leg", "2nd leg", "leg 2",
// "the other leg". It is "" for other words.
func (p *parser) limb() string {
	start := p.i
	p.eat("the", "your")
	lead := ""
	switch t := p.tok(); {
	case t.is("first", "second", "third", "fourth", "other", "left", "right", "same", "this"):
		p.i++
		lead = t.text
	case t.kind == tOrdinal && t.value >= 1 && t.value <= 4:
		p.i++
		lead = nth[t.value-1]
	}
	noun := p.tok()
	if !noun.is(limbs...) || p.at(1).tight(tHyphen) || p.at(1).is("flap", "flaps", "piece", "pieces", "hole", "opening") {
		p.i = start
		return ""
	}
	p.i++
	if lead == "" {
		// "leg 2", "leg B"
		switch t := p.tok(); {
		case t.kind == tNumber && t.value >= 1 && t.value <= 4 && t.frac == 0:
			lead = nth[t.value-1]
		case t.is("one", "a"):
			lead = nth[0]
		case t.is("two", "b"):
			lead = nth[1]
		default:
			p.i = start
			return ""
		}
		p.i++
	}
	return lead + " " + noun.text
}

var nth = [...]string{"first", "second", "third", "fourth"}

// ofLimb reads "of first leg", "around the other leg" behind stitches.
func (p *parser) ofLimb(pl *Place) bool {
	start := p.i
	p.i++
	if name := p.limb(); name != "" && pl.Limb == "" && pl.Of == nil {
		pl.Limb = name
		return true
	}
	p.i = start
	return false
}

// aroundLimb reads "around first leg", "on leg 2" where stitches go: each of its stitches.
func (p *parser) aroundLimb() (Place, bool) {
	start := p.i
	p.eat("all", "evenly")
	if p.eat("around", "round", "across", "along", "on", "over", "in", "into", "of", "from", "to") {
		if p.at(-1).is("all") {
			p.eat("round", "around")
		}
		if name := p.limb(); name != "" {
			return Place{Span: p.from(start), Pick: Each, Limb: name, Target: Target{Sort: AnyStitch, Text: "st"}}, true
		}
	}
	p.i = start
	return Place{}, false
}

// acrossLimbs makes "11 sc around first leg" so many stitches of that piece, one in each;
// and "3 sc along ch" so many chains.
func (s *Stitches) acrossLimbs() {
	if len(s.Places) != 1 || !s.N.Set() || s.What.Kind.Shape == stitch.Together {
		return
	}
	pl := &s.Places[0]
	if (pl.Limb != "" || pl.Target.Sort == ChainStitch && pl.Extent.Sort == NoExtent) && pl.Pick == Each && !pl.N.Set() && !pl.Every {
		pl.Pick, pl.N, s.N = Next, s.N, Num{}
	}
}

// joinsLimb reads how another piece is joined: "join to first leg with a sc in any st",
// "join with sl st to the first leg". The stitch is one in its next stitch.
func (p *parser) joinsLimb() Item {
	start := p.i
	no := func() Item { p.i = start; return nil }
	if !p.eat("join", "joining", "attach", "connect") {
		return nil
	}
	name := ""
	place := func() {
		at := p.i
		if p.eat("to", "in", "into", "on") {
			if name = p.limb(); name != "" {
				return
			}
			if pl, ok := p.place(); ok && pl.Limb != "" {
				name = pl.Limb
				return
			}
		}
		p.i = at
	}
	if name = p.limb(); name == "" {
		place()
	}
	if !p.eat("with", "by", "using") {
		return no()
	}
	p.eat("working", "making")
	p.eat("a", "an", "one")
	w, ok := p.what()
	if !ok || !w.Kind.Is() || w.Kind.Shape != stitch.Plain {
		return no()
	}
	if name == "" {
		place()
	} else if at := p.i; p.eat("in", "into", "to", "on") {
		// "in any st", "in the last st"
		if pl, ok := p.place(); !ok || pl.Limb != "" && pl.Limb != name {
			p.i = at
		}
	}
	if name == "" {
		return no()
	}
	p.work = true
	return &Stitches{Span: p.from(start), What: w, Places: []Place{{Span: p.from(start), Pick: Next, Limb: name, Target: Target{Sort: AnyStitch, Text: "st"}}}}
}

// likewise reads "Work second leg in the same way", "Make the other fluke as the first": a
// piece that is made over again. It goes up to the end of the sentence.
func (p *parser) likewise(end int) bool {
	start := p.i
	defer func() { p.i = start }()
	if !p.eat("work", "make", "crochet", "repeat") {
		return false
	}
	p.eat("a", "the", "one", "your")
	if name := p.limb(); name == "" || name == "first "+p.at(-1).text {
		if !p.eat("another") || !p.eat(limbs...) {
			return false
		}
	}
	for j := p.i; j < end; j++ {
		t, next := &p.toks[j], &p.toks[j+1]
		if t.is("same", "exact") && next.is("way", "manner", "fashion", "as") || t.is("likewise", "identically", "identical", "alike", "match") || t.is("as") && next.is("for", "first", "the", "you") {
			return true
		}
	}
	return p.i == end
}

// pieceColon reports whether the tokens before number i are the name of a piece and a colon
// at the beginning of a line: "First fluke: Rnd 1: …".
func pieceColon(toks []token, i int, v *Vocabulary, sizes []string) bool {
	line := i - 1
	for line > 0 && !toks[line].first {
		line--
	}
	if toks[i-1].kind != tColon || i-line > 5 {
		return false
	}
	p := newParser(toks[line:], v, sizes)
	return p.limb() != "" && p.i == i-1-line
}
