package notation

import (
	"slices"
	"strings"

	"whorl/patterns/fault"
)

// wished are words that leave a length to whoever works it.
var wished = []string{"desired", "required", "preferred", "wanted", "wished", "needed", "chosen"}

// openLength reads "until desired length", "until the scarf is as long as you like", "until
// the yarn is used up", "to the required length", "as many times as you like": how long rows are gone on with is
// left to the reader. That is worth a warning, for there is a number missing; what is repeated
// is known all the same, and comes out as often as it is worked. It is nil where a length or a number is told.
func (p *parser) openLength() *Until {
	start := p.i
	p.eat("continue", "cont", "work", "rep", "repeat", "working")
	p.eat("even")
	from := p.i
	switch {
	case p.eatAll("as", "many", "times", "as"), p.eatAll("as", "often", "as"):
		if p.eat("you") {
			p.eat("like", "want", "wish", "need", "prefer", "please")
		} else if !p.eat(wished...) && !p.eat("necessary", "liked") {
			p.i = start
			return nil
		}
	case p.eat("for", "to"):
		p.eat("the", "a")
		p.eat("your", "my")
		if !p.eat(wished...) || !p.eat("length", "size", "height", "width", "depth") {
			p.i = start
			return nil
		}
	case p.eat("until", "till"):
		open := false
		for ; p.tok().kind == tWord && !p.tok().is("and", "then", "ending", "finishing") && !p.tok().first; p.i++ {
			open = open || p.tok().is(wished...) || p.tok().is("you", "you'd", "you’d") && (p.at(1).is("like", "want", "wish", "prefer", "need", "please") || p.at(1).is("would") && p.at(2).is("like", "prefer")) ||
				p.tok().is("long", "big", "wide") && p.at(1).is("enough") || p.tok().is("fits", "yarn") || p.tok().is("run") && p.at(1).is("out")
		}
		if !open || !p.ended() && !p.tok().is("ending", "finishing") && !p.tok().first || p.tok().kind == tOpen && !p.sampleAhead() || p.evident(from, p.i) || p.commaOr() {
			p.i = start
			return nil
		}
	default:
		p.i = start
		return nil
	}
	at, words := p.from(from), p.words(from)
	if l := p.sampleLength(); l != nil {
		return &Until{Span: p.from(start), Length: l, End: p.endingRow()}
	}
	u := &Until{Open: true, Span: at, Text: words, End: p.endingRow()}
	f := fail(at, "vague", "\""+words+"\" leaves the number of rows to the reader, so the repeat is worked once here",
		"Give a number of rows or a length: until piece measures 38 cm.")
	f.Severity = fault.Warning
	p.report(f)
	return u
}

// commaOr reports whether "or" goes on to a length or a number that is told: "until
// desired length, or 40 cm".
func (p *parser) commaOr() bool {
	start := p.i
	defer func() { p.i = start }()
	p.eatKind(tComma)
	return p.eat("or", "about", "approximately")
}

// untilAhead reports whether the words of a phrase leave a length open that rows are gone
// on with, which openLength reads.
func untilAhead(words string) bool {
	l := strings.Fields(words)
	at := slices.Index(l, "length")
	for i := 0; i < at; i++ {
		if slices.Contains([]string{"until", "till", "for", "to"}, l[i]) {
			return true
		}
	}
	return false
}

// sampleAhead reports whether sampleLength reads what comes next.
func (p *parser) sampleAhead() bool {
	start := p.i
	defer func() { p.i = start }()
	return p.sampleLength() != nil
}

// sampleLength reads "(approx 150 cm)", "(sample is 60")", ", about 150 cm", ". Mine is 60 in
// long" behind a length that is left to the reader: how long it is in the designer's own. It is
// nil where none is told.
func (p *parser) sampleLength() []float64 {
	start := p.i
	no := func() []float64 { p.i = start; return nil }
	open := p.eatKind(tOpen)
	if !open && !p.eatKind(tComma) && !p.eatKind(tDash) && !(p.tok().kind == tStop && p.at(1).is("mine", "sample", "shown", "my", "the") && !p.at(1).first && p.eatKind(tStop)) {
		return no()
	}
	for n := 0; n < 8 && p.eat("the", "sample", "mine", "my", "one", "shown", "here", "pictured", "original", "scarf", "piece", "strap", "shawl", "blanket", "is", "was", "measures", "measured", "approx",
		"approximately", "about", "around", "roughly", "i", "used", "worked", "made", "stopped", "at", "in", "photo", "photos", "model", "it", "cowl", "hat"); n++ {
		p.eatKind(tStop)
	}
	if p.tok().kind != tNumber {
		return no()
	}
	l, f := p.lengths()
	if f != nil || len(l) == 0 {
		return no()
	}
	p.eat("long", "wide", "high", "tall", "in", "length")
	p.eat("length")
	if p.eatKind(tSlash) {
		p.lengths()
	}
	if open && !p.eatKind(tClose) || !open && !p.ended() && !p.tok().first {
		return no()
	}
	return l
}
