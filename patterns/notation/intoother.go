package notation

import (
	"slices"
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// otherLeads tell one motif from the one that is being made.
var otherLeads = []string{"first", "second", "third", "previous", "prev", "previously", "preceding", "prior", "adjacent", "adjoining", "neighbouring", "neighboring",
	"other", "another", "joined", "completed", "finished", "last", "next", "same", "corresponding", "matching", "opposite", "already", "made"}

// otherPiece reads "first hexagon", "the previously joined motif", "1st square's side", "motif 1":
// another motif than the one that is being made.
func (p *parser) otherPiece() bool {
	start := p.i
	for p.eat("the", "a", "any", "each", "one") {
	}
	lead := false
	for p.tok().is(otherLeads...) || p.tok().kind == tOrdinal {
		p.i++
		lead = true
	}
	near := p.i > start && p.at(-1).is("adjacent", "adjoining", "neighbouring", "neighboring", "joined", "completed", "finished", "corresponding")
	loose := p.i > start && p.at(-1).is("next", "last")
	p.eat("granny", "corner")
	t := p.tok()
	noun := strings.TrimSuffix(strings.TrimSuffix(strings.TrimSuffix(t.text, "'s"), "’s"), "s")
	if t.kind == tWord && (slices.Contains(motifs, noun) || slices.Contains([]string{"hexie", "doily", "coaster", "mandala", "patch", "shape", "leaf"}, noun)) {
		if inCloth := slices.Contains([]string{"block", "tile", "piece", "panel"}, noun); inCloth && !near ||
			loose && !slices.Contains([]string{"square", "motif", "hexagon", "octagon", "triangle", "granny", "pentagon", "hexie"}, noun) {
			p.i = start
			return false // a block of the piece itself, a wheel or a star of the row below
		}
		p.i++
		p.eatKind(tQuote)
		if n := p.tok(); !lead && (n.kind == tNumber || n.kind == tWord && len(n.raw) == 1 && capital(n.raw)) {
			p.i++
			lead = true
		}
		if lead {
			return true
		}
	}
	p.i = start
	return false
}

// motifName reads "Square A", "the basic motif", "motif 1" behind rounds that are those of another
// piece; "" for other words.
func (p *parser) motifName() string {
	start := p.i
	p.eat("the")
	at := p.i
	for n := 0; n < 3 && p.tok().kind == tWord && !p.tok().first && !p.tok().is("next", "each", "every", "remaining", "all", "this", "that", "these"); n++ {
		noun := p.tok().joinable()
		if p.i++; !noun {
			continue
		}
		if t := p.tok(); t.kind == tNumber || t.kind == tWord && len(t.raw) == 1 && capital(t.raw) {
			p.i++
		}
		return strings.ToLower(p.words(at))
	}
	p.i = start
	return ""
}

// throughRow reads "to end of R3", "through Rnd 4", "until Round 5 is complete" behind the name of a
// piece: its rounds from the first to that one.
func (p *parser) throughRow() (Range, bool) {
	start := p.i
	p.eatKind(tComma)
	p.eat("up")
	if p.eat("to", "through", "until", "till") {
		p.eatAll("and", "including")
		p.eat("the")
		p.eat("end")
		p.eat("of")
		if roundNext(p.tok()) {
			p.i++
			if n, ok := p.num(); ok {
				if p.eat("is", "has") {
					p.eat("been")
					p.eat("complete", "completed", "done", "worked")
				}
				p.eat("inclusive")
				if p.ended() {
					return Range{From: One(p.from(start)), To: n}, true
				}
			}
		}
	}
	p.i = start
	return Range{}, false
}

// roundsAsPiece reads "Rounds 1 and 2 as for Motif 1", "Rnds 1-5 same as first hexagon" behind
// "work": rounds of another piece. It is nil for other words.
func (p *parser) roundsAsPiece(start int) *Ref {
	at := p.i
	if roundNext(p.tok()) {
		p.i++
		var l Label
		if p.numbers(&l, true); len(l.Numbers) > 0 && (p.eat("same") || p.tok().is("as", "like", "exactly")) {
			p.eat("exactly")
			p.eat("as", "like")
			p.eat("for", "in", "on")
			name := p.pieceName()
			if name == "" {
				name = p.motifName()
			}
			if name != "" && p.ended() {
				return &Ref{Span: p.from(start), Rounds: l.Numbers, Piece: name}
			}
		}
	}
	p.i = at
	return nil
}

// intoOther takes a stitch that joins the motif that is being made to one made before as a note, as
// it makes nothing of this one: "sl st in corresponding ch-3 sp of first hexagon", "join with sl
// st to corner of adjoining square", "join to second motif:".
func (p *parser) intoOther() (Item, *fault.Fault) {
	start := p.i
	no := func() (Item, *fault.Fault) { p.i = start; return nil, nil }
	if p.tok().is("drop", "dropping", "remove", "removing") && p.droppedLoop() {
		return &Note{Span: p.from(start), Text: p.words(start), Joins: true}, nil
	}
	verb := p.eat("join", "joining", "attach", "attaching", "connect")
	if !verb {
		if p.tok().kind == tNumber && p.tok().value == 1 || p.tok().is("a", "an", "one") {
			p.i++
		}
		w, ok := p.what()
		if !ok || w.Kind != stitch.Of(stitch.Slip) && w.Kind != stitch.Of(stitch.Single) {
			return no()
		}
		if w.Kind != stitch.Of(stitch.Slip) && !p.correspondingAhead() {
			return no() // a stitch of the round
		}
	}
	if !p.work && !(verb && p.tok().is("to", "with")) {
		return no()
	}
	end := p.otherEnd()
	for j := p.i; j < end; j++ {
		if t := p.toks[j]; t.is("of", "on", "from", "to", "onto", "into", "in", "with", "and") && j > p.i || j == p.i && t.is("to", "with", "in", "into") {
			p.i = j + 1
			if p.otherPiece() && p.i <= end {
				if !p.work && p.toks[end].kind != tColon {
					break // "Join to first square with B": where the yarn is joined
				}
				p.i = end
				return &Note{Span: p.from(start), Text: p.words(start), Joins: true}, nil
			}
		}
	}
	return no()
}

// otherEnd is where the phrase ends that tells where a stitch goes into another motif.
func (p *parser) otherEnd() int {
	for j := p.i; ; j++ {
		switch p.toks[j].kind {
		case tComma, tSemi, tStop, tEnd, tClose, tOpen, tColon, tStar, tDash:
			return j
		}
		if p.toks[j].is("and", "then") && p.instructs(j+1) {
			return j
		}
	}
}

// correspondingAhead reports whether the place of a stitch is told by what lies opposite it.
func (p *parser) correspondingAhead() bool {
	for _, t := range p.toks[p.i:p.otherEnd()] {
		if t.is("corresponding", "matching", "opposite", "adjoining", "adjacent", "neighbouring", "neighboring") {
			return true
		}
	}
	return false
}

// droppedLoop reads how a loop is drawn through another motif: "drop loop from hook, insert hook in
// corresponding ch-3 sp of first square, pull loop through".
func (p *parser) droppedLoop() bool {
	start, other := p.i, false
	for p.tok().is("drop", "dropping", "remove", "removing", "insert", "inserting", "place", "put", "pick", "pull", "draw", "pulling", "drawing", "replace", "from", "with", "then", "and") {
		end := p.otherEnd()
		for j := p.i; j < end; j++ {
			at := p.i
			if p.i = j; p.toks[j].is("corresponding", "adjacent", "adjoining", "matching") || j > at && p.toks[j-1].is("of", "on", "from") && p.otherPiece() {
				other = true
			}
			p.i = at
		}
		if p.i = end; p.tok().kind != tComma && p.tok().kind != tSemi {
			break
		}
		p.i++
	}
	if k := p.at(-1).kind; k == tComma || k == tSemi {
		p.i--
	}
	if !other || !p.work {
		p.i = start
		return false
	}
	return true
}
