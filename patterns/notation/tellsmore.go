package notation

import "strings"

// TellsMore finds, in what stands behind the words that define a stitch, a sentence that has more
// worked: "Ch 1 between shells", "Always ch 1 after each shell", "Then work 1 sc in next st". It
// is false where there is none; what makes no difference, "Work loosely", "Ch 1 to close", is none.
func TellsMore(behind Line, name string, v *Vocabulary, sizes []string) (Span, bool) {
	toks, _ := scan([]Line{behind})
	if len(toks) > maxTokens {
		return Span{}, false
	}
	p := newParser(toks[:len(toks)-1], v, sizes)
	p.defining = true
	long, short, _ := strings.Cut(Plain(name), " (")
	for p.tok().kind != tEnd {
		for p.eatKind(tStop) || p.eatKind(tSemi) {
		}
		start, end := p.i, p.sentenceEnd()
		for i := start; i < end; i++ {
			if k := p.toks[i].kind; k == tColon || k == tEqual || k == tDash {
				return Span{}, false // another definition
			}
		}
		if p.tellsAnother() {
			return Span{}, false // "… and tr2tog is 2 tr worked together"
		}
		if p.worksMore(start, end, long, strings.TrimSuffix(short, ")")) {
			p.i = end
			return p.from(start), true
		}
		if p.i = end; p.i == start {
			p.i++
		}
	}
	return Span{}, false
}

// tellsAnother reports whether the sentence goes on to say what another stitch is: a name, and
// what it stands for.
func (p *parser) tellsAnother() bool {
	start := p.i
	defer func() { p.i = start }()
	for p.eatKind(tComma) || p.eat("and", "while", "but", "whereas") {
	}
	p.eat("a", "an", "the")
	from := p.i
	if _, ok := p.what(); !ok {
		p.i = from
	}
	for p.tok().kind == tWord && p.i-from < 4 && !p.tok().is("is", "are", "means", "stands", "refers", "consists", "equals") {
		p.i++
	}
	if p.i == from || !p.eat("is", "are", "means", "stands", "refers", "consists", "equals") {
		return false
	}
	p.eat("for", "to", "of")
	return p.instructs(p.i) || p.tok().kind == tOpen
}

// beside are the words before the stitch that other work goes beside.
var beside = []string{"between", "before", "after", "beside"}

// worksMore reports whether the sentence between two tokens has stitches, chains or skips worked
// beside a stitch that is called so.
func (p *parser) worksMore(start, end int, names ...string) bool {
	told, near := -1, false
	for i := start; i < end; i++ {
		t := p.toks[i]
		if t.is("count", "counts", "counted", "close", "secure", "lock", "complete", "finish", "fasten", "tighten") {
			return false
		}
		if told < 0 && (t.is("ch", "chain", "sk", "skip", "miss") || t.kind == tNumber || t.is("work", "make")) && p.instructs(i) {
			told = i
		}
		near = near || t.is("side") && i > start && p.toks[i-1].is("either", "each", "both") || t.is("sides") && i > start && p.toks[i-1].is("both")
		if t.is(beside...) {
			for j := i + 1; j < min(end, i+4); j++ {
				near = near || p.toks[j].is("them", "these", "it") || p.called(j, names...)
			}
		}
	}
	if told < 0 {
		return false
	}
	if near {
		return true
	}
	p.i = start
	for p.eat("then", "and", "next", "now", "always", "also", "finally") || p.eatKind(tComma) {
	}
	return (p.i > start || p.tok().is("ch", "chain", "sk", "skip", "miss")) && p.instructs(p.i)
}

// called reports whether a token is a stitch by one of its names, or several of them.
func (p *parser) called(i int, names ...string) bool {
	for _, n := range names {
		if last := n[strings.LastIndex(n, " ")+1:]; last != "" && strings.TrimSuffix(Plain(p.toks[i].text), "s") == strings.TrimSuffix(last, "s") {
			return true
		}
	}
	return false
}
