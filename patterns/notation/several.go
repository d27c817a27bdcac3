package notation

// sharing are words that share rounds out to several pieces.
var sharing = []string{"each", "both", "twice", "first", "second", "one", "two", "three", "four", "alike", "same", "identical", "identically", "every", "sides"}

// severalAhead takes what stands before the first round of a part that is made several times, as
// a note: "Make two circles.", "Work Rnds 1-8 for each; fasten off the first circle only."
func (p *parser) severalAhead(b *block) bool {
	start, end := p.i, p.sentenceEnd()
	if p.labelled || p.work || p.depth > 1 {
		return false
	}
	t := p.tok()
	if t.is("make", "crochet", "work") && (numberWords[p.at(1).text] > 0 || p.at(1).is("both") || p.at(1).kind == tNumber && t.is("make")) {
		// "Make one circle following Rnds 1-8 and fasten off; make a second …"
		p.i += 2
		_, named := p.target()
		if p.i = start; named || p.evident(start, end) || p.at(2).is("ch", "chs", "chain", "chains") {
			return false
		}
		return p.note(b, start, end)
	}
	if t.is("work", "follow", "complete", "crochet") {
		p.i++
		p.eat("the")
	}
	_, round := roundWord(p.tok())
	rounds := round && p.at(1).kind == tNumber
	p.i = start
	if !rounds || p.evident(start, end) {
		return false
	}
	shares := false
	for j := start; j < end; j++ {
		if p.toks[j].is("as", "like", "again", "more", "in", "into") {
			return false // rounds of another piece
		}
		shares = shares || p.toks[j].is(sharing...)
	}
	return shares && p.note(b, start, end)
}
