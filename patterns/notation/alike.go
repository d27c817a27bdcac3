package notation

import (
	"regexp"
	"slices"
	"strings"
)

// motifs are what pieces are called of which many alike are made and joined.
var motifs = []string{"square", "motif", "hexagon", "block", "granny", "circle", "flower", "triangle", "tile", "octagon", "pentagon", "medallion",
	"wheel", "rosette", "snowflake", "diamond", "star", "piece", "panel"}

// ofAnotherAlike takes a sentence about other pieces alike as a note, since it makes none of
// the stitches of this one: "Work Rounds 1-5 of the next square, then work Round 6, but at
// each corner work (2 tr, 1 ch, ss in corner sp of first square, 1 ch, 2 tr)"; and, in a
// line that is headed "Joining:", whatever is worked into the pieces before.
func (p *parser) ofAnotherAlike(b *block) bool {
	start, end := p.i, p.sentenceEnd()
	if p.depth <= 1 && b.holdsTogether() && p.throughLayers(end) {
		return p.note(b, start, end)
	}
	if p.labelled && p.tok().pos.Line == p.toks[0].pos.Line || p.depth > 1 {
		return false
	}
	p.passJoining()
	if line := p.lineEnd(); p.i > start && p.toks[start].first && p.throughLayers(line) {
		end = line // all of it is how they are joined
	}
	if !(p.repeatsForOther(end) || p.joiningLine() && (p.namesOther(end) || p.throughLayers(end))) {
		p.i = start
		return false
	}
	names := p.roundsNamed(start, end)
	p.note(b, start, end)
	b.items[len(b.items)-1].(*Note).Names = names
	return true
}

// roundsNamed are the rounds that are named between tokens start and end, nil for none.
func (p *parser) roundsNamed(start, end int) *Ref {
	var l Label
	for p.i = start; p.i < end; {
		if _, round := roundWord(p.tok()); round && p.at(1).kind == tNumber {
			p.i++
			p.numbers(&l, true)
		} else {
			p.i++
		}
	}
	if len(l.Numbers) == 0 {
		return nil
	}
	p.i = end
	return &Ref{Span: p.from(start), Rounds: l.Numbers}
}

// repeatsForOther reports whether a sentence begins with rounds that are worked for another
// piece: "Work Rounds 1-5 of the next square", "Rep Rnds 1 and 2 for each remaining motif".
func (p *parser) repeatsForOther(end int) bool {
	start := p.i
	defer func() { p.i = start }()
	if p.eat("for", "on", "to") {
		// "For the second square, work Rounds 1-5, then …"
		p.eat("make", "work")
		if !p.otherAlike(end) || !p.eatKind(tComma) {
			return false
		}
		p.eat("work", "make", "follow", "complete", "rep", "repeat")
		_, round := roundWord(p.tok())
		return round
	}
	if !p.eat("work", "make", "follow", "complete", "rep", "repeat", "working") {
		return false
	}
	p.eat("as", "the")
	p.eat("for")
	if _, round := roundWord(p.tok()); !round {
		return false
	}
	p.i++
	var l Label
	if p.numbers(&l, true); len(l.Numbers) == 0 {
		return false
	}
	return p.eat("of", "for", "on") && p.otherAlike(end)
}

// otherAlike reads "the next square", "each of the remaining motifs".
func (p *parser) otherAlike(end int) bool {
	p.eat("the", "a", "every", "each", "all")
	p.eat("of")
	p.eat("the", "your")
	if !p.eat("next", "second", "other", "following", "remaining", "rest", "subsequent", "another", "new", "third", "last") && !p.at(-1).is("each", "every", "all") {
		return false
	}
	p.eat("of")
	p.eat("the")
	if p.i < end && p.motif() {
		p.i++
		return true
	}
	return false
}

// motif reports whether a piece that is made many times is named here.
func (p *parser) motif() bool {
	return p.tok().kind == tWord && slices.Contains(motifs, strings.TrimSuffix(p.tok().text, "s"))
}

// joiningLine reports whether the line is headed by how pieces are joined: "Joining:", "Join
// as you go:", "To join the squares:".
func (p *parser) joiningLine() bool {
	j := p.i
	for j > 0 && !p.toks[j].first {
		j--
	}
	joins := false
	for ; j < len(p.toks) && p.toks[j].kind != tColon && p.toks[j].kind != tStop && p.toks[j].kind != tEnd; j++ {
		joins = joins || p.toks[j].is("joining", "join", "joined", "assembly")
	}
	return joins && p.toks[j].kind == tColon && j < p.i
}

// passJoining passes over the head of such a line.
func (p *parser) passJoining() {
	j := p.i
	for ; j-p.i < 7 && p.toks[j].kind != tEnd && p.toks[j].kind != tStop; j++ {
		if p.toks[j].kind == tColon {
			if at := p.i; p.tok().first && j > at {
				if p.i = j + 1; !p.joiningLine() {
					p.i = at
				}
			}
			return
		}
	}
}

// namesOther reports whether the sentence names a piece that was made before: "of the first
// square", "into the adjoining motif".
func (p *parser) namesOther(end int) bool {
	start := p.i
	defer func() { p.i = start }()
	for j := start + 1; j < end; j++ {
		if p.i = j; p.motif() && p.toks[j-1].is("first", "previous", "adjacent", "adjoining", "completed", "finished", "joined", "last", "neighbouring", "neighboring", "second", "other", "corresponding") {
			return true
		}
	}
	return false
}

// throughLayers reports whether the sentence works through two pieces that are held together:
// "working through both thicknesses".
func (p *parser) throughLayers(end int) bool {
	for j := p.i + 1; j < end; j++ {
		if p.toks[j].is("thicknesses", "layers") && p.toks[j-1].is("both", "two", "the", "all") && j > p.i+2 && p.toks[j-3].is("working", "work") {
			return true
		}
	}
	return false
}

// held is advice that motifs are held together.
var held = regexp.MustCompile(`(?i)\b(hold|place|put|lay|with)\b.*\b(squares|motifs|hexagons|blocks|triangles|pieces|circles|octagons|tiles)\b.*\b(together|facing)\b`)

// holdsTogether reports whether the sentence before held motifs together.
func (b *block) holdsTogether() bool {
	if len(b.items) == 0 {
		return false
	}
	n, ok := b.items[len(b.items)-1].(*Note)
	return ok && held.MatchString(n.Text)
}
