package notation

import (
	"slices"
	"strings"
)

// OneEnd is the Name of RowEnds that are taken one by one: "in next row end".
const OneEnd = "row end"

// oneRowEnd reads "end of next row", "next 2 row ends", "same row end", "side of last row": row ends
// that are taken one by one.
func (p *parser) oneRowEnd() (Place, bool) {
	start := p.i
	pl := Place{Target: Target{Sort: RowEnds, Name: OneEnd}}
	no := func() (Place, bool) { p.i = start; return Place{}, false }
	p.eat("the")
	side := p.eat("end", "ends", "side", "edge") && p.eat("of")
	p.eat("the")
	switch {
	case p.eat("next", "following", "foll"):
	case p.eat("first"):
		pl.Pick, pl.Nth = First, 1
	case p.eat("last", "final"):
		pl.Pick = Last
	case p.eat("same"):
		pl.Pick = Same
	default:
		return no()
	}
	if n, ok := p.num(); ok && pl.Pick == Next {
		pl.N = n
	}
	kind := p.i
	if w, ok := p.what(); !ok || !w.Kind.Is() || w.Loop.Set {
		p.i = kind // "end of next dc row"
	}
	if bare := !side && p.tok().is("row") && p.saysRowEnds(); bare {
		p.i++
		if p.eat("end", "ends", "edge", "edges", "side", "sides"); p.at(-1).is("row") && !p.ended() {
			return no()
		}
	} else if side && (pl.N.Set() || !p.eat("row")) || !side && (!p.eat("row") || !p.eat("end", "ends", "edge", "edges", "side", "sides")) {
		return no()
	}
	pl.Target.Text = p.words(start)
	pl.Span = p.from(start)
	return pl, true
}

// rowEndWord reads "row end", "row ends" behind the number of those that are skipped.
func (p *parser) rowEndWord() (Target, bool) {
	start := p.i
	if p.eat("row") && p.eat("end", "ends", "edge", "edges", "side", "sides") || p.i == start && p.eat("row", "rows") && p.ended() {
		return Target{Sort: RowEnds, Name: OneEnd, Text: p.words(start)}, true
	}
	p.i = start
	return Target{}, false
}

// saysRowEnds reports whether the words speak of row ends, so that "in next row" is one of them.
func (p *parser) saysRowEnds() bool { return p.says("row ends", "ends of rows", "ends of the rows") }

// says reports whether one of the phrases is among the words.
func (p *parser) says(phrases ...string) bool {
	var all strings.Builder
	for i := range p.toks {
		all.WriteString(" " + p.toks[i].text)
	}
	words := all.String() + " "
	return slices.ContainsFunc(phrases, func(s string) bool { return strings.Contains(words, " "+s+" ") })
}

// alongEnds reads "row ends", "the side edge" behind "along" where the words go into row ends one by one.
func (p *parser) alongEnds() bool {
	start := p.i
	if p.tok().is("the", "side", "row", "edge", "long", "straight", "left", "right") &&
		(p.saysRowEnds() || p.says("end of next row", "side of next row", "edge of next row", "next row end", "next row edge")) {
		if p.eat("the"); (p.rowEnds() && p.edge == "" || p.sideNamed()) && p.ended() {
			return true
		}
	}
	p.i, p.edge = start, ""
	return false
}

// intoLoopsThere reports whether ", into the ch-3 loops at the ends of the rows" comes next, behind
// what is told of the edge that the work goes on along: it says where the stitches to come go.
func (b *block) intoLoopsThere() bool {
	p := b.p
	start := p.i
	defer func() { p.i = start }()
	n := len(b.items)
	if n == 0 || p.work || !p.saysRowEnds() {
		return false
	}
	if _, note := b.items[n-1].(*Note); !note || !p.eat("into", "in", "working") {
		return false
	}
	p.eat("into", "in")
	p.eat("the", "each")
	t, ok := p.target()
	return ok && t.Sort == ChainSpace && p.eat("at", "of", "along", "on") && p.toks[p.sentenceEnd()-1].is("rows", "ends")
}
