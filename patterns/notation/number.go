package notation

import (
	"fmt"
	"strings"
)

// num reads a number, with its brackets if there is one for each size.
func (p *parser) num() (Num, bool) {
	start := p.i
	n, ok := p.plainNumber()
	if !ok && len(p.sizes) > 1 && (p.tok().kind == tDash || p.tok().kind == tHyphen) &&
		(p.at(1).kind == tOpen || p.at(1).kind == tSlash) && (p.at(2).kind == tNumber || p.at(2).kind == tDash || p.at(2).kind == tHyphen) {
		// - (68, 76), - / 68 / 76: none for the smallest size
		p.i++
		n, ok = 0, true
	}
	if !ok {
		return p.bracketed()
	}
	num := Num{Values: []int{n}}
	if len(p.sizes) > 1 {
		p.sizeList(&num, start)
	}
	num.Span = p.from(start)
	return num, true
}

// bracketed reads "(1: 2: 3)" where all the numbers of the sizes that a round is for stand in
// brackets, as those of the larger sizes do everywhere: "1 hdc in each of next (1: 2: 3) hdc", "rep
// from * (4: 5: 6) times".
func (p *parser) bracketed() (Num, bool) {
	start := p.i
	if k := p.at(-1).kind; len(p.sizes) < 2 || start == 0 || k == tDash || k == tHyphen || !p.eatKind(tOpen) {
		return Num{}, false
	}
	var values []int
	for {
		n, ok := p.sizeValue()
		if !ok {
			break
		}
		values = append(values, n)
		if !p.eatKind(tColon) && !p.eatKind(tComma) && !p.eatKind(tSlash) && !p.eatKind(tSemi) {
			break
		}
	}
	closed := p.eatKind(tClose)
	before := &p.toks[start-1]
	stitches := before.is("next", "nxt", "following", "foll", "last", "first", "rem", "remaining", "of", "skip", "sk", "miss") && p.nounAt(0) ||
		closed && len(values) > 1 && p.stitchPlaced()
	switch {
	case !closed || len(values) == 0 || !stitches && !(before.is("ch", "chain") && p.ended()) && !p.timesWord():
	case len(values) == len(p.sizes):
		return Num{Span: p.from(start), Values: values}, true
	case len(values) == len(p.forSizes):
		return Num{Span: p.from(start), Values: p.spread(values)}, true
	case len(values) > 1 && stitches:
		sizes := p.sizes
		if len(p.forSizes) > 0 {
			sizes = p.forSizes
		}
		p.report(fail(p.from(start), "size-list", fmt.Sprintf("%d numbers for %s", len(values), sizesHere(sizes)),
			"Write one number for each size, smallest first: "+strings.Join(sizes, ", ")+"."))
		return Num{Span: p.from(start), Values: values}, true
	}
	p.i = start
	return Num{}, false
}

// stitchPlaced reports whether a stitch and where it goes comes next: the "hdc into a magic loop" behind
// "[8, 9, 10]", which is then how many of them are made.
func (p *parser) stitchPlaced() bool {
	start := p.i
	defer func() { p.i = start }()
	if _, ok := p.what(); ok {
		p.eat("sts", "stitches")
		return p.tok().is("in", "into", "evenly", "over") && !p.tok().first && !p.at(1).is("all", "total")
	}
	return false
}

// sizedStitches reads "[8, 9, 10] hdc into a magic loop", a number for each size and nothing else in brackets.
func (b *block) sizedStitches() bool {
	p := b.p
	start := p.i
	if p.tok().kind != tOpen {
		return false
	}
	if n, ok := p.bracketed(); ok && len(n.Values) > 1 && p.stitchPlaced() {
		p.i = start
		if it, ok := p.stitches(); ok {
			b.addStitches(it.(*Stitches))
			return true
		}
	}
	p.i = start
	return false
}

// sizesHere is how many sizes there are.
func sizesHere(sizes []string) string {
	if len(sizes) == 1 {
		return "1 size"
	}
	return fmt.Sprintf("%d sizes", len(sizes))
}

// plainNumber reads one number in figures or words.
func (p *parser) plainNumber() (int, bool) {
	t := p.tok()
	if t.kind == tNumber && t.frac == 0 {
		p.i++
		return t.value, true
	}
	if t.kind == tWord {
		if n, ok := numberWords[t.text]; ok {
			p.i++
			if n >= 20 && n%10 == 0 {
				// forty-eight, forty eight
				at := p.i
				p.eatKind(tHyphen)
				if unit := numberWords[p.tok().text]; p.tok().kind == tWord && unit > 0 && unit < 10 {
					p.i++
					return n + unit, true
				}
				p.i = at
			}
			return n, true
		}
	}
	return 0, false
}

// sizeList reads the rest of 60 (72, 78, 90), or of 60/72/78/90.
func (p *parser) sizeList(num *Num, start int) {
	at := p.i
	if p.tok().kind == tSlash || p.tok().kind == tColon || p.tok().text == "|" {
		p.unbracketed(num, start)
		return
	}
	if p.bareList(num, "sts", "stitches", "chs", "chains", "times", "time", "more", "further", "additional", "rnds", "rounds", "rows") {
		return
	}
	values := num.Values
	listed := false // the brackets can be nothing but a list
	for p.tok().kind == tOpen {
		back := p.i
		p.i++
		var more []int
		for {
			n, ok := p.sizeValue()
			if !ok {
				break
			}
			more = append(more, n)
			if p.tok().kind != tComma && p.tok().kind != tSlash && p.tok().kind != tSemi &&
				p.tok().kind != tColon {
				break
			}
			p.i++
		}
		if p.tok().kind != tClose || len(more) == 0 ||
			(len(more) == 1 && len(values)+1 != len(p.sizes) && len(values)+1 != len(p.forSizes) && p.at(1).kind != tOpen && !p.nounAt(1)) {
			p.i = back
			break
		}
		p.i++
		listed = listed || len(more) > 1 || p.nounAt(0)
		values = append(values, more...)
	}
	switch {
	case len(values) == len(p.sizes):
		num.Values = values
	case len(values) > 1 && len(values) == len(p.forSizes):
		num.Values = p.spread(values)
	case len(values) > 1 && listed:
		p.report(fail(p.from(start), "size-list",
			fmt.Sprintf("%d numbers for %d sizes", len(values), len(p.sizes)),
			"Write one number for each size, smallest first: "+p.sizeNames()+"."))
		num.Values = values
	default:
		p.i = at
	}
}

// unbracketed reads the rest of 60/72/78, of 60 / 72 / 78, 60:72:78 or 60 | 72 | 78, behind its first number.
// A list of too many or too few that can be nothing else is a fault; two numbers may be a fraction, and a
// colon the end of a label.
func (p *parser) unbracketed(num *Num, start int) {
	at, sign := p.i, *p.tok()
	values := num.Values
	if start > 0 {
		_, label := roundWord(&p.toks[start-1])
		if label && sign.kind == tColon || p.toks[start-1].kind == tSlash {
			return
		}
	}
	for p.tok().kind == sign.kind && p.tok().text == sign.text {
		back := p.i
		p.i++
		n, ok := p.sizeValue()
		if !ok {
			p.i = back
			break
		}
		values = append(values, n)
	}
	long := len(values) > 2
	switch {
	case len(values) == 1, sign.kind == tColon && !long, sign.kind == tColon && !p.nounAt(0) && !p.timesWord() && p.toks[max(start-1, 0)].kind != tTimes:
		p.i = at
	case len(values) == len(p.sizes):
		num.Values = values
	case len(values) == len(p.forSizes):
		num.Values = p.spread(values)
	case sign.kind != tColon && (long || sign.spaced && (p.nounAt(0) || p.timesWord())):
		p.wrongList(values, start)
		num.Values = values
	default:
		p.i = at
	}
}

// wrongList reports a list that has not one number for each size.
func (p *parser) wrongList(values []int, start int) {
	sizes := p.sizes
	if len(p.forSizes) > 0 && len(p.forSizes) < len(sizes) {
		sizes = p.forSizes
	}
	p.report(fail(p.from(start), "size-list", fmt.Sprintf("%d numbers for %s", len(values), sizesHere(sizes)),
		"Write one number for each size, smallest first: "+p.sizeNames()+"."))
}

// bareList reads ", 9, 10" behind the first of as many numbers as there are sizes, without
// brackets, where one of the nouns shows that they belong together: "8, 9, 10 sts".
func (p *parser) bareList(num *Num, nouns ...string) bool {
	start := p.i
	values := num.Values
	for len(values) < len(p.sizes) && p.tok().tight(tComma) && p.at(1).kind == tNumber {
		p.i++
		n, _ := p.plainNumber()
		values = append(values, n)
	}
	if len(values) > 1 && len(values) == len(p.forSizes) {
		values = p.spread(values)
	}
	if k := p.tok().kind; len(values) == len(p.sizes) && (p.tok().is(nouns...) || len(nouns) == 0 && (k == tStop || k == tSemi || k == tEnd || k == tOpen && start > 1 && p.toks[start-2].kind == tTimes && p.endsBehind())) {
		num.Values = values
		return true
	}
	p.i = start
	return false
}

// endsBehind reports whether nothing comes behind the bracket that opens here: it is a count.
func (p *parser) endsBehind() bool {
	close := p.matching(p.i)
	return close > 0 && (p.ends(close+1) || p.toks[close+1].first)
}

// nounAt reports whether a stitch or a place stands n tokens on, so that a
// bracket before it belongs to its number: 72 (80) sc.
func (p *parser) nounAt(n int) bool {
	at := p.i
	defer func() { p.i = at }()
	p.i += n
	if p.tok().kind != tWord {
		return false
	}
	t, ok := p.target()
	return ok && t.Sort != Ring
}

// sizeValue is one number of a size list; a dash is none.
func (p *parser) sizeValue() (int, bool) {
	switch p.tok().kind {
	case tDash, tHyphen:
		p.i++
		return 0, true
	}
	return p.plainNumber()
}

func (p *parser) sizeNames() string {
	return p.sizes[0] + " (" + strings.Join(p.sizes[1:], ", ") + ")"
}
