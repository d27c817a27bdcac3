package notation

import (
	"slices"
	"strings"

	"whorl/patterns/fault"
)

// whereabouts are words that a remark on the side begins with: where on the piece
// the work is, how it lies, what it is for.
var whereabouts = []string{"at", "along", "from", "down", "up", "which", "that", "so", "as", "behind", "before", "after", "beside", "near", "on",
	"to", "for", "by", "with", "within", "inside", "outside", "toward", "towards", "through", "throughout", "above", "beneath", "against", "beyond",
	"always", "again", "also", "too", "just", "exactly", "where", "while", "when", "whilst", "like", "this", "these", "it", "they", "you",
	"held", "made", "worked", "placed", "thus", "therefore", "hence"}

// deciding are words that change how much is worked, so that none of them may be
// left unread.
var deciding = []string{"sk", "skip", "skipping", "miss", "missing", "rep", "repeat", "repeating", "omit", "omitting", "except", "each", "every", "all",
	"both", "times", "time", "once", "twice", "thrice", "half", "double", "triple", "more", "less", "fewer", "extra", "only", "instead", "without", "but",
	"inc", "dec", "increase", "decrease", "increasing", "decreasing", "until", "till", "leave", "leaving", "turn", "join", "evenly", "alternate",
	"alternately", "other", "next", "between", "below", "under", "together", "not", "or", "no"}

// doubtful passes over a phrase behind some work that cannot be read, when nothing in
// it says how much is worked: "1 tr in each of next 2 tr at the straight edge". It is
// kept as a remark, together with the fault it would have been: whoever works the
// round finds by its stated count whether it may be left at that. One that a sentence
// begins with must have work behind it.
func (b *block) doubtful(start int, sentence bool, f *fault.Fault) bool {
	p := b.p
	if p.defining || f.Code != "not-understood" || start >= len(p.toks) || f.Pos != p.toks[start].pos {
		return false
	}
	t := &p.toks[start]
	if t.kind != tWord || !slices.Contains(whereabouts, t.text) && !(strings.HasSuffix(t.text, "ing") && len(t.text) > 4) || p.vocab.near(t.text) != "" {
		return false
	}
	p.i = start
	end := start
	for ; ; end++ {
		t := &p.toks[end]
		if k := t.kind; k == tEnd || k == tStop || k == tComma || k == tSemi || k == tClose || k == tOpen && !p.multiplied(max(p.matching(end), 0)+1) {
			break
		}
		if t.kind != tWord && t.kind != tHyphen || t.is(deciding...) || p.vocab.near(t.text) != "" {
			return false
		}
		if t.is("and", "then") && (p.ends(end+1) || p.instructs(end+1)) {
			break
		}
		p.i = end
		if _, ok := p.what(); ok && p.goesSomewhere() {
			return false // stitches are made in it
		}
	}
	if end == start || sentence && !(p.toks[end].kind == tComma && p.instructs(end+1)) {
		return false
	}
	p.i = end
	b.add(&Note{Span: p.from(start), Text: p.words(start), Doubt: f})
	return true
}

// sentenceStart is where a sentence begins: at which token, and how much has been read
// before it.
type sentenceStart struct{ tok, items, stated, stars int }

// looseLine passes over a sentence that cannot be read on a line of its own behind a
// round: "Embroider the eyes between Rnds 6 and 7", "With B, edge the whole blanket". A
// line that looks like a round with a number is none. Whoever works the part finds out
// whether anything hangs on it.
func (b *block) looseLine(f *fault.Fault) bool {
	p := b.p
	line := b.from.tok
	for line > 0 && !p.toks[line].first {
		line--
	}
	if p.defining || line == 0 || !p.work || f.Code != "not-understood" || p.numbered(line) {
		return false
	}
	p.i = b.from.tok
	end := p.sentenceEnd()
	if p.tok().is("work", "continue", "next", "decrease", "increase", "dec", "inc", "begin", "start") {
		return false // what follows hangs on it
	}
	for j := p.i; j < end; j++ {
		if p.toks[j].is("rep", "repeat", "repeating") || p.toks[j].first && j > p.i && p.numbered(j) {
			return false
		}
	}
	b.items, p.stated, b.stars = b.items[:b.from.items], p.stated[:b.from.stated], b.stars[:b.from.stars]
	if end == p.i {
		return false
	}
	p.i = end
	n := &Note{Span: p.from(b.from.tok), Text: p.words(b.from.tok), Doubt: f, Loose: true}
	if !p.evident(b.from.tok, end) {
		n.Doubt = nil // nothing is made
	}
	b.add(n)
	return true
}

// numbered reports whether the line at a token names a round: "Rnd 5 2 dc in …",
// "1st dec round: …".
func (p *parser) numbered(line int) bool {
	number, round := false, false
	for j := line; j < line+5 && j < len(p.toks) && (j == line || !p.toks[j].first); j++ {
		t := &p.toks[j]
		_, is := roundWord(t)
		round = round || is
		number = number || t.kind == tNumber || t.kind == tOrdinal || ordinalOf(t) > 0 || t.is("next", "last")
		if k := t.kind; k == tColon || k == tComma || k == tStop {
			break
		}
	}
	return number && round
}
