package notation

import (
	"slices"
	"strings"
)

// joinable reports whether a token is what pieces are called that are joined to one another.
func (t *token) joinable() bool {
	return t.kind == tWord && (slices.Contains(motifs, strings.TrimSuffix(t.text, "s")) || t.is("strip", "strips", "halves", "grannies"))
}

// assembles reports whether the sentence from here on puts finished pieces together: "Join
// hexagons with wrong sides together, working 1 dc through both layers in each st",
// "Crochet the squares together through the back loops", "Join all five squares into a strip in
// this manner".
func (p *parser) assembles() bool {
	start := p.i
	defer func() { p.i = start }()
	if !p.eat("join", "joining", "crochet", "attach", "sew", "seam", "whipstitch") {
		return false
	}
	p.eat("the", "all", "your", "both", "two", "finished", "four")
	if p.eat("of"); p.at(-1).is("of") {
		p.eat("the", "these")
	}
	p.eat("the", "rem", "remaining", "other", "finished", "completed")
	p.plainNumber()
	p.eat("the", "finished", "remaining", "rem", "other", "completed")
	noun := p.tok()
	if noun.joinable() && strings.HasSuffix(noun.text, "s") && !p.evident(p.i+1, p.sentenceEnd()) {
		return true
	}
	if noun.kind != tWord || noun.first || !strings.HasSuffix(noun.text, "s") || noun.is("ss", "this", "as", "rs", "ws", "across", "colours", "colors", "yarns") || p.stitchy(p.i, p.i+1) {
		return false
	}
	if _, ok := roundWord(noun); ok {
		return false
	}
	for j := p.i + 1; j < p.sentenceEnd(); j++ {
		if p.toks[j].is("together", "tog", "layers", "thicknesses", "seam", "seams", "seaming", "invisibly") {
			return true
		}
	}
	return false
}

// goesOnJoining takes how further pieces are put together as those before as a note: "Continue in
// this manner until all the motifs have been joined", "Repeat to join the remaining strips". What
// is put together must have been told before it.
func (b *block) goesOnJoining() bool {
	p := b.p
	start, end := p.i, p.sentenceEnd()
	if p.depth > 1 || !p.tok().is("continue", "cont", "carry", "keep", "repeat", "rep", "proceed", "add", "join") || len(b.items) == 0 || p.evident(start+1, end) {
		return false
	}
	switch b.items[len(b.items)-1].(type) {
	case *Note, *FastenOff:
	default:
		return false
	}
	pieces, joins := false, false
	for j := start; j < end; j++ {
		t := &p.toks[j]
		pieces = pieces || t.joinable()
		joins = joins || t.is("join", "joining", "joined", "sewn", "sew", "sewing", "attach", "attached", "together", "seam", "seams")
		if t.kind == tStar {
			return false
		}
	}
	return pieces && joins && p.note(b, start, end)
}

// joinsEnds reports whether the first and the last row of a piece are joined, "Join last row to
// foundation ch with ss to make a tube.": making up.
func (p *parser) joinsEnds() bool {
	start := p.i
	defer func() { p.i = start }()
	end := func() bool {
		p.eat("the", "your")
		if !p.eat("last", "first", "final", "foundation", "starting", "beginning", "cast-on") {
			return false
		}
		_, round := roundWord(p.tok())
		if round && p.tok().is("row", "rows") || p.tok().is("ch", "chain", "edge") {
			p.i++
			return true
		}
		return false
	}
	return p.eat("join", "joining") && end() && p.eat("to", "and", "with") && end()
}

// joinsAll reports whether a sentence says how all rounds are joined: "Join each round with a
// sl st in the first st", "Join with sl st to first st at the end of every rnd".
func (p *parser) joinsAll() bool {
	for j, end := p.i+1, p.sentenceEnd(); j < end; j++ {
		next := &p.toks[j+1]
		_, round := roundWord(next)
		if k := j - 3; k > p.i && p.toks[j-1].is("of") && p.toks[j-2].is("end", "ends", "side", "sides") {
			if p.toks[k].is("the") {
				k--
			}
			if p.toks[k].is("in", "into", "along") {
				continue // "join yarn, 2 sc in end of each row" goes into them
			}
		}
		if p.toks[j].is("each", "every", "all") && round && !p.toks[j+2].is("end", "ends", "edge", "edges") || j == p.i+1 && p.toks[j].is("rnds", "rounds") {
			return true
		}
	}
	return false
}
