package notation

import (
	"strings"

	"whorl/patterns/stitch"
)

// timesWord reports whether the current token says that the number before it
// is a number of times.
func (p *parser) timesWord() bool {
	return p.tok().kind == tTimes || p.tok().is("times", "time", "more")
}

// times reads "6 times", "× 6", "6x", "twice", "5 more times", "once more".
// More is set when the number leaves out the first time.
func (p *parser) times() (n Num, more, ok bool) {
	start := p.i
	no := func() (Num, bool, bool) { p.i = start; return Num{}, false, false }
	p.eat("a")
	more = p.eat("another", "further")
	switch {
	case more && p.tok().is("time"):
		p.i++
		n = Num{Span: p.from(start), Values: []int{1}}
	case p.tok().is("once", "twice", "thrice"):
		n = p.timesList(start)
	case p.eatKind(tTimes):
		if n, ok = p.timesEach(); !ok {
			return no()
		}
		ends := p.tok().kind == tEnd || p.tok().first || p.tok().kind == tStop
		if len(n.Values) > 1 && ends && (p.at(-1).raw == "]" || p.at(-2).value >= 2*n.Values[0]) {
			// "inc x 6 [12]", "(sc, inc) x 6 (66)": the bracket is the count of the
			// round; no size repeats so much more often than the smallest.
			p.i = start + 1
			v, _ := p.plainNumber()
			n = Num{Span: p.from(start), Values: []int{v}}
		}
		p.eat("times")
	default:
		if n, ok = p.num(); !ok {
			return no()
		}
		if p.eat("more") {
			more = true
			if !p.eat("times", "time") && p.tok().kind != tTimes {
				return no()
			}
		} else if !p.eatKind(tTimes) && !p.eat("times", "time") {
			return no()
		}
	}
	if p.eat("more", "again") {
		more = true
	}
	if p.eat("in") {
		if !p.eat("total", "all") {
			p.i--
		} else {
			more = false
		}
	} else if p.eat("total", "altogether") {
		more = false
	}
	p.otherSides()
	return n, more, true
}

// inAllTimes reads how often a passage is worked behind it: "6 times", "worked 6 times", "a total of 6
// times", "for 6 times".
func (p *parser) inAllTimes() (n Num, more, ok bool) {
	start := p.i
	p.eat("worked", "work", "made", "done", "crocheted")
	p.eat("for")
	total := p.eatAll("a", "total", "of")
	if n, more, ok = p.times(); !ok {
		p.i = start
	}
	return n, more && !total, ok
}

// timesEach reads the number behind ×, "6", "6 (8, 10)", "6, 8, 10". A bracket that has a number for every
// size itself is the count of the round: "inc × 6 [12 / 14 / 16]".
func (p *parser) timesEach() (Num, bool) {
	start := p.i
	n, ok := p.plainNumber()
	if !ok || len(p.sizes) < 2 {
		p.i = start
		return p.num()
	}
	num := Num{Span: p.from(start), Values: []int{n}}
	at := p.i
	if p.bareList(&num) {
		num.Span = p.from(start)
		return num, true
	}
	if p.eatKind(tOpen) {
		for n := 0; ; n++ {
			if _, ok := p.sizeValue(); !ok {
				break
			}
			if p.tok().kind == tClose && (n+1 == len(p.sizes) || n+1 == len(p.forSizes)) {
				p.i = at
				return num, true
			}
			if k := p.tok().kind; k != tComma && k != tSlash && k != tSemi && k != tColon && p.tok().text != "|" {
				break
			}
			p.i++
		}
	}
	p.i = start
	return p.num()
}

// otherSides passes over "for the remaining two edges", "along the other 2 sides" behind a number
// of times.
func (p *parser) otherSides() {
	start := p.i
	if p.eat("for", "along", "around", "round", "on", "across", "over", "to", "work", "working") {
		p.eat("along", "around", "across")
		p.eat("the")
		if p.eat("remaining", "rem", "other", "opposite", "last", "second", "final") {
			p.eat("of")
			if p.tok().kind == tNumber || numberWords[p.tok().text] > 0 {
				p.i++
			}
			p.eat("remaining", "other", "opposite")
			p.eat("long", "short")
			if p.eat("sides", "edges", "corners", "side", "edge", "half") && p.ended() {
				return
			}
		}
	}
	p.i = start
}

// overSides reads "on all sides", "along each of the 4 sides", "for the remaining 3 sides" behind a
// repeat: how often it is worked, or, without a number, that it goes on all round.
func (p *parser) overSides(r *Repeat) bool {
	start := p.i
	no := func() bool { p.i = start; return false }
	if !p.eat("for", "along", "around", "on", "across", "over", "at", "down", "in", "into") && !p.at(-1).is("for") {
		return no()
	}
	p.eat("the")
	more := p.eat("remaining", "rem", "other")
	if !more && !p.eat("all", "each", "every") {
		return no()
	}
	p.eat("of")
	p.eat("the", "its")
	more = p.eat("remaining", "rem", "other", "following", "next") || more
	at := p.from(p.i)
	n, counted := p.plainNumber()
	more = p.eat("remaining", "rem", "other") || more
	if p.eat("sides", "edges", "corners", "side", "edge", "corner") {
	} else if _, ok := p.target(); !ok {
		return no()
	} else if p.eat("around", "across") && !p.ended() {
		return no()
	}
	if !p.ended() && !p.tok().is("join", "ending", "of") {
		return no()
	}
	if p.eat("of") {
		p.eat("the")
		if !p.eat("square", "motif", "blanket", "piece", "cloth", "panel", "hexagon", "triangle", "rectangle", "mat") {
			return no()
		}
	}
	if !counted {
		r.Extent = Extent{Sort: ToEnd, Text: "around"}
		return true
	}
	r.Times, r.More = Num{Span: at, Values: []int{n}}, more
	return true
}

// timesList reads "twice" or, with a word for each size, "once (twice, 3 times)".
func (p *parser) timesList(start int) Num {
	one := func() (int, bool) {
		switch {
		case p.eat("once"):
			return 1, true
		case p.eat("twice"):
			return 2, true
		case p.eat("thrice"):
			return 3, true
		}
		n, ok := p.sizeValue()
		p.eat("times")
		return n, ok
	}
	n, _ := one()
	values := []int{n}
	at := p.i
	if len(p.sizes) > 1 && p.eatKind(tOpen) {
		for {
			n, ok := one()
			if !ok {
				break
			}
			values = append(values, n)
			p.eatKind(tComma)
		}
		switch closed := p.eatKind(tClose); {
		case closed && len(values) == len(p.sizes):
		case closed && len(values) > 1 && len(values) == len(p.forSizes):
			values = p.spread(values)
		default:
			p.i, values = at, values[:1]
		}
	}
	return Num{Span: p.from(start), Values: values}
}

// Stitch reads the name of one stitch that stands alone: "hdc", "BLO sc",
// "half double crochet", also where one of its names is that of a group or cluster: "MB (make
// bobble)". It is false for anything else.
func (v *Vocabulary) Stitch(words string) (stitch.Kind, stitch.Into, bool) {
	toks, _ := scan([]Line{{Text: words, Line: 1, Column: 1}})
	p := newParser(toks[:len(toks)-1], v, nil)
	w, ok := p.what()
	if !ok || p.tok().kind != tEnd || !w.Kind.Is() {
		for _, one := range otherNames(strings.ToLower(words)) {
			if k, into, ok := v.Stitch(strings.TrimPrefix(one, "make ")); ok && k.Shape != stitch.Plain {
				return k, into, true
			}
		}
		return stitch.Kind{}, stitch.Top, false
	}
	return w.Kind, w.Loop.Into, true
}

// Leading is the stitch and the number that words begin with: 5 and dc of "5 dc
// in same st, …". The zero Kind when they begin otherwise.
func (v *Vocabulary) Leading(words string) (stitch.Kind, int) {
	toks, _ := scan([]Line{{Text: words, Line: 1, Column: 1}})
	p := newParser(toks[:len(toks)-1], v, nil)
	p.eat("work", "make")
	n, ok := p.num()
	if !ok {
		return stitch.Kind{}, 0
	}
	w, _ := p.what()
	return w.Kind, n.Values[0]
}

// First is the first plain stitch that the words name; the zero Kind for none.
func (v *Vocabulary) First(words string) stitch.Kind {
	toks, _ := scan([]Line{{Text: words, Line: 1, Column: 1}})
	p := newParser(toks[:len(toks)-1], v, nil)
	for p.tok().kind != tEnd {
		at := p.i
		if w, ok := p.what(); ok && w.Kind.Shape == stitch.Plain && w.Kind.Base >= stitch.Single {
			return w.Kind
		}
		p.i = at + 1
	}
	return stitch.Kind{}
}

// Times is the first number of times in the words: 3 of "[yo, …] 3 times"; 0
// when there is none.
func Times(words string) int {
	toks, _ := scan([]Line{{Text: words, Line: 1, Column: 1}})
	p := newParser(toks[:len(toks)-1], NewVocabulary(stitch.US, nil), nil)
	for ; p.tok().kind != tEnd; p.i++ {
		at := p.i
		if n, more, ok := p.times(); ok {
			if more {
				return n.Values[0] + 1
			}
			return n.Values[0]
		}
		p.i = at
	}
	return 0
}
