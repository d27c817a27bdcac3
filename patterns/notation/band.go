package notation

import "strings"

// band reads "hair elastic", "elastic band", "curtain ring": a thing that stitches are
// worked round as round a ring.
func (p *parser) band() bool {
	start := p.i
	p.eat("hair", "plastic", "metal", "brass", "wooden", "curtain")
	if p.eat("elastic", "hoop") || p.at(-1).is("hair") && p.eat("tie", "band", "bobble") || p.i > start && p.eat("ring") {
		p.eat("hair")
		p.eat("band", "ring", "tie")
		return true
	}
	p.i = start
	return false
}

// bandAt reports whether such a thing is named at token i.
func (p *parser) bandAt(i int) bool {
	at := p.i
	defer func() { p.i = at }()
	p.i = i
	p.eat("the", "a", "an", "your")
	return p.band()
}

// nameBand names a ring that is such a thing. What it is called is its text.
func (t *Target) nameBand() {
	words := strings.Fields(t.Text)
	for len(words) > 0 && (words[0] == "the" || words[0] == "a" || words[0] == "an" || words[0] == "your") {
		words = words[1:]
	}
	for _, w := range words {
		switch w {
		case "elastic", "hoop", "hair", "plastic", "metal", "brass", "wooden", "curtain":
			t.Name, t.Text = Band, strings.Join(words, " ")
			return
		}
	}
}
