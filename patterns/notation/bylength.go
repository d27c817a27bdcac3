package notation

import "whorl/patterns/stitch"

// chainByLength reads a chain that is told by its length and not by its number: "Make a chain 40 cm
// long and thread through eyelet rnd", "chain 16 inches", "a 16-inch chain", "chain until cord
// measures 40 cm", "a chain long enough to go round the head". How many chains that are is not
// known: it is advice where it is a cord, and nothing that could be worked on.
func (b *block) chainByLength() bool {
	p := b.p
	start := p.i
	if p.startsFromHook() || p.quoted(start) {
		return false
	}
	p.eat("make", "work", "crochet", "form", "making", "working")
	p.eat("a", "an", "the", "one", "another")
	said := false
	if p.tok().kind == tNumber && p.length() {
		p.eatKind(tHyphen)
		p.eat("long")
		p.eat("crochet", "crocheted", "length")
		p.eat("of")
		if said = p.eat("chain", "ch"); said && (p.spaceWord() || p.tok().kind == tHyphen || p.tok().kind == tNumber) {
			said = false // "a 2 cm ch-3 loop"
		}
		p.eat("cord", "tie", "string", "strap")
	} else {
		p.eat("crochet", "crocheted", "length")
		p.eat("of")
		if p.eat("chain", "ch", "chaining") && !p.spaceWord() {
			p.eat("cord", "tie", "string", "strap")
			said = p.toldLength()
		}
	}
	if !said {
		p.i = start
		return false
	}
	for {
		at := p.i
		for p.eatKind(tComma) || p.eat("and", "then") {
		}
		if p.i == at || !p.alongChain() {
			p.i = at
			break
		}
	}
	if end := p.sentenceEnd(); !p.tok().first && !p.evident(p.i, end) {
		p.i = end
	}
	b.add(&Note{Span: p.from(start), Text: p.words(start), ByLength: true})
	return true
}

// toldLength reads how long a chain is: "40 cm long", "of about 16 in", "measuring 40 cm", "until it
// measures 40 cm", "long enough to go around".
func (p *parser) toldLength() bool {
	start := p.i
	p.eatKind(tComma)
	p.eat("that", "which")
	switch {
	case p.eat("until", "till"):
		for ; p.tok().kind == tWord && !p.tok().first && !p.tok().is("and", "then"); p.i++ {
			if p.tok().is("length", "fits", "long") {
				p.i = p.phraseEnd()
				return true
			}
		}
		return p.tok().kind == tNumber && p.length()
	case p.eatAll("long", "enough"), p.eatAll("as", "long", "as"):
		p.i = p.phraseEnd()
		return true
	}
	p.eat("of", "for", "to", "measuring", "measures", "measure", "is")
	p.eat("a", "the", "your", "my")
	if p.eat(wished...) && p.eat("length") || p.eat("length") && p.eat("of") && p.tok().kind == tNumber && p.length() {
		return true
	}
	p.eat("measure")
	p.eat("about", "approximately", "approx", "roughly", "around", "circa")
	if p.tok().kind == tNumber && p.length() {
		return true
	}
	p.i = start
	return false
}

// length passes over a length with its unit, one or one for each size, and in another unit in brackets:
// "40 cm", "16-18 inches", "40 (45, 50) cm (16 (18, 20) in) long". That "in" is one shows what follows.
func (p *parser) length() bool {
	start, unit, depth := p.i, false, 0
walk:
	for ; ; p.i++ {
		t := p.tok()
		switch {
		case t.first && p.i > start:
			break walk
		case t.kind == tNumber, t.kind == tSlash:
		case t.kind == tOpen && p.at(1).kind == tNumber && p.lengthsIn(p.matching(p.i)):
			depth++
		case t.kind == tClose && depth > 0:
			depth--
		case (t.kind == tComma || t.kind == tColon || t.kind == tSemi) && depth > 0:
		case (t.kind == tHyphen || t.kind == tDash || t.is("or", "to")) && (p.at(1).kind == tNumber || units[p.at(1).text] > 0):
		case t.is("in") && !p.inches():
			break walk
		case units[t.text] > 0:
			unit = true
			if p.at(1).kind == tStop && p.at(2).is("long", "in") && !p.at(2).first {
				p.i++ // "16 in. long"
			}
		default:
			break walk
		}
	}
	if !unit {
		p.i = start
		return false
	}
	if !p.eat("long") && p.eat("in") {
		p.eat("length")
	}
	return true
}

// lengthsIn reports whether nothing but numbers and units stands in the brackets up to a token.
func (p *parser) lengthsIn(close int) bool {
	for j := p.i + 1; j < close; j++ {
		switch t := &p.toks[j]; {
		case t.kind == tNumber, t.kind == tSlash, t.kind == tHyphen, t.kind == tDash, t.kind == tComma, t.kind == tColon, t.kind == tSemi, t.kind == tOpen, t.kind == tClose, t.kind == tStop, units[t.text] > 0:
		default:
			return false
		}
	}
	return close > 0
}

// inches reports whether an "in" is a unit of length.
func (p *parser) inches() bool {
	next := p.at(1)
	if next.kind == tStop {
		next = p.at(2)
	}
	return next.is("long", "length", "chain", "crochet") || next.is("in") && p.at(2).is("length") || p.at(1).kind == tClose ||
		p.at(1).kind == tHyphen && p.at(2).is("long", "chain")
}

// quoted reports whether the words from a token on stand in quotation marks.
func (p *parser) quoted(i int) bool {
	n := 0
	for j := i - 1; j >= 0; j-- {
		if p.toks[j].kind == tQuote && (j == 0 || p.toks[j-1].kind != tNumber) {
			n++
		}
	}
	return n%2 == 1
}

// alongChain passes over stitches back along a chain: "sl st in 2nd ch from hook and in each ch across".
func (p *parser) alongChain() bool {
	start, faults := p.i, len(p.faults)
	if it, ok := p.stitches(); ok {
		s := it.(*Stitches)
		along := len(s.Places) > 0 && s.What.Kind.Is()
		for _, pl := range s.Places {
			along = along && (pl.Target.Sort == FromHook || pl.Target.Sort == ChainStitch) && s.What.Kind.Base >= stitch.Slip
		}
		if along {
			return true
		}
	}
	p.i, p.faults = start, p.faults[:faults]
	return false
}
