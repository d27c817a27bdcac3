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
