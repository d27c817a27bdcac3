package notation

import (
	"strings"

	"whorl/patterns/fault"
)

// stitchyWords are words that make a sentence an instruction.
var stitchyWords = []string{
	"st", "sts", "stitch", "stitches", "ch", "chs", "chain", "chains", "sk", "skip", "miss", "rep", "repeat",
	"join", "turn", "inc", "dec", "around", "across", "next", "each", "times", "ring", "twice", "sp", "sps",
	"shell", "cluster", "cl", "fasten", "twice",
}

// stitchy reports whether the tokens from i up to j hold words of the trade
// that make an instruction.
func (p *parser) stitchy(i, j int) bool {
	for ; i < j && i < len(p.toks); i++ {
		t := &p.toks[i]
		switch t.kind {
		case tStar:
			return true
		case tWord:
			if t.is(stitchyWords...) {
				return true
			}
			at := p.i
			p.i = i
			_, ok := p.phrase()
			p.i = at
			if ok {
				return true
			}
		}
	}
	return false
}

// madeNote reports whether the words between tokens i and j only name what has
// been made or say which side it is: (first shell made), (RS), (corner).
func (p *parser) madeNote(i, j int) bool {
	if j <= i {
		return true
	}
	last := &p.toks[j-1]
	if last.is("made", "complete", "completed", "formed", "worked", "rnd", "round", "row", "side", "only") {
		return true
	}
	if p.toks[i].is("skip", "skipping", "miss", "missing", "ignore", "ignoring") && p.toks[i+1].is("the", "all", "every") && i > 1 && p.toks[i-2].is("around", "across", "round") {
		return true // "… in each ch-7 loop around (skip the sc)"
	}
	return p.toks[i].is("see", "note", "mark", "do", "if", "you", "this", "these", "the", "it", "now", "optional", "be")
}

// advising are the words that a sentence of advice begins with.
var advising = []string{
	"mark", "place", "move", "note", "notes", "tip", "stuff", "weave", "sew", "leave", "check", "remember", "you",
	"this", "these", "it", "pull", "tighten", "block", "steam", "attach", "insert", "try", "measure", "piece",
	"hint", "see", "optional", "pin", "thread", "be", "stop", "important", "remove", "use", "hat",
	"brim", "crown", "body", "keep", "enjoy", "if", "rs", "right", "wrong", "ws", "here", "lay", "wind", "whipstitch",
	"gather", "draw", "finishing", "edging", "nb", "they", "there", "when", "before", "hold", "fold", "seam",
	"line", "align", "bring", "rotate", "flip", "secure", "trim", "tie", "add", "finish", "overlap", "match", "whip",
	"embroider", "button", "flatten", "press", "the", "drop", "carry", "count", "begin", "continue", "for", "on", "after", "at", "to",
	"from", "pinch", "squash", "run", "cinch", "darn", "close", "wash", "press",
}

// advice takes a sentence that is not an instruction as a note: one without
// any words of the trade, a heading on a line of its own, or one that begins
// like advice. When such a sentence goes on with work after a comma or a
// colon, only what stands before it is a note.
func (p *parser) advice(b *block) bool {
	start := p.i
	end := p.sentenceEnd()
	t := p.tok()
	if t.kind == tNumber && p.leaves() {
		return p.note(b, start, end)
	}
	if t.kind != tWord && t.kind != tQuote {
		return false
	}
	if t.is("do", "don't", "without") {
		// "do not join" and "do not turn" are read elsewhere.
		if p.at(1).is("not") && !p.at(2).is("join", "turn") || t.is("don't") && !p.at(1).is("join", "turn") {
			return p.note(b, start, end)
		}
		if t.is("without") && !p.at(1).is("joining", "turning") {
			for j := start + 1; j < end; j++ {
				if p.toks[j].kind == tComma {
					return p.note(b, start, j)
				}
			}
			return p.note(b, start, end)
		}
		return false
	}
	if p.multipleOf() {
		for j := start + 1; j < end; j++ {
			if k := p.toks[j].kind; (k == tSemi || k == tColon || k == tComma) && p.instructs(j+1) {
				return p.note(b, start, j) // "Multiple of 10 plus 7; make 27 ch"
			}
		}
		return p.note(b, start, end)
	}
	if p.beginsShaping(end) {
		return p.note(b, start, end)
	}
	if p.likewise(end) {
		return p.note(b, start, end)
	}
	if t.is("each", "every") && (p.at(1).is("rep", "repeat") || p.at(1).is("row", "rnd", "round")) && p.at(2).is("adds", "increases", "decreases", "gives", "has", "is", "takes") {
		for j := start + 2; j < end; j++ {
			if k := p.toks[j].kind; k == tSemi {
				return p.note(b, start, j) // "Each repeat adds 20 dc; there are 226 dc after Row 34"
			}
		}
		return p.note(b, start, end)
	}
	if p.hasSoMany() {
		return p.note(b, start, end)
	}
	if t.is("make", "making", "be") && p.at(1).is("sure", "certain") {
		for j := start + 2; j < end; j++ {
			if k := p.toks[j].kind; (k == tComma || k == tSemi) && (p.ends(j+1) || p.instructs(j+1)) {
				return p.note(b, start, j)
			}
		}
		return p.note(b, start, end)
	}
	if p.trimmed(b, end) {
		return true
	}
	if p.loopedOn(end) || t.is("join", "joining") && p.joinsAll() || p.areJoined() {
		return p.note(b, start, end)
	}
	if t.is("work", "working", "worked") && p.at(1).is("in") && p.at(2).is("continuous", "joined", "spiral", "rounds", "rnds", "rows", "a") &&
		!p.at(3).is("ring", "circle", "magic") {
		return p.note(b, start, end)
	}
	if t.is("using", "with") {
		// "Using 4 mm hook, …", "With larger hook, …"
		for j := start + 1; j < end && p.toks[j].kind != tComma && p.toks[j].kind != tSemi; j++ {
			if p.toks[j].is("hook", "needle", "facing", "strand", "strands", "held", "doubled") {
				for j < end && p.toks[j].kind != tComma && !p.toks[j].is("make", "work", "ch", "chain", "begin", "start", "commence") {
					j++
				}
				if sided := p.toks[start+1].is("rs", "ws", "right", "wrong"); !sided || p.toks[j].kind == tComma && !p.ends(j+1) && p.instructs(j+1) {
					return p.note(b, start, j)
				}
			}
		}
	}
	for _, read := range []func() (Item, *fault.Fault){p.ring, p.counts, p.marker, p.until, p.refer, p.join, p.fasten, p.colour, p.loops, p.otherSide} {
		it, f := read()
		p.i = start
		if it != nil || f != nil {
			return false
		}
	}
	if p.title() {
		return p.heading(b, start, p.titleEnd())
	}
	if t.is("leave", "leaving", "count", "from", "after", "starting", "beginning") {
		// "Leave remaining sts unworked."
		it, f := p.skip()
		if p.i = start; it != nil || f != nil {
			return false
		}
	}
	for j := start + 1; j < end; j++ {
		if p.toks[j-1].is("as") && p.toks[j].is("follows", "below", "folls", "following") && (j+1 == end || p.toks[j+1].kind == tColon && (j+2 == end || p.toks[j+2].first)) {
			return p.note(b, start, end) // "Continue increasing in every round as follows:"
		}
	}
	if p.optional(start, end) || t.is("start") && p.at(1).is("stuffing") {
		return p.note(b, start, end)
	}
	if t.is("to") && p.at(1).is("join", "sew", "attach", "assemble", "seam", "block", "line") && !p.at(2).is("in", "with", "to") {
		return p.note(b, start, end) // "To join hexagons, hold two together …"
	}
	if line := p.lineEnd(); t.first && p.toks[line].first && line <= start+3 && p.toks[line-1].is(headings...) {
		return p.heading(b, start, line)
	}
	if t.is(advising...) {
		if t.is("note", "notes", "important", "tip", "nb") && (p.at(1).kind == tColon || p.at(1).kind == tDash) {
			// "Note: Ch 1 at beg of a rnd never counts as a stitch."
			p.i += 2
			if it, _ := p.counts(); it != nil {
				c := it.(*Counts)
				c.Throughout = true
				b.add(c)
				return true
			}
			return p.note(b, start, end)
		}
		if t.is("finish", "close") && p.at(1).is("with", "by") && p.stitchy(start, end) || p.seamAt(start) {
			return false
		}
		// Work may follow after a comma or a colon.
		for j := start + 1; j < end; j++ {
			if p.toks[j].is("and", "then") && (p.ends(j+1) || p.seamAt(j+1)) {
				return p.note(b, start, j)
			}
			if k := p.toks[j].kind; (k == tComma || k == tColon || k == tDash || k == tSemi && !p.stitchy(start, j)) && j+1 < end && (p.instructs(j+1) || p.seamAt(j+1)) {
				return p.note(b, start, j)
			}
		}
		if t.is("at", "begin", "continue") && p.stitchy(start, end) || t.is("for", "on", "add", "to") && p.evident(start, end) {
			return false
		}
		return p.note(b, start, end)
	}
	if line := p.lineEnd(); t.first && line < end && p.toks[line].first && line-start <= 6 && !p.stitchy(start, line) &&
		p.toks[line-1].kind == tWord && !p.vagueWord(line-1) {
		return p.heading(b, start, line) // BASE, TOP AND HANDLES
	}
	if p.hangs() {
		return p.note(b, start, p.i)
	}
	if p.headed() {
		return p.heading(b, start, len(p.toks)-1)
	}
	if p.stitchy(start, end) {
		return false
	}
	if line := p.lineEnd(); t.first && line <= end+1 && p.toks[line].first && p.toks[line-1].kind != tComma {
		if line <= end && p.toks[line-1].kind == tWord {
			return p.heading(b, start, line)
		}
		return p.note(b, start, min(line, end))
	}
	if end-start >= 3 || end == start+1 && len(t.raw) > 2 && strings.ToUpper(t.raw) == t.raw && p.toks[end].kind == tStop {
		return p.note(b, start, end)
	}
	return false
}

// leaves reports whether a sentence says how many stitches are where: "7 (7, 8) sts
// of the last round are left unworked".
func (p *parser) leaves() bool {
	start := p.i
	defer func() { p.i = start }()
	if _, ok := p.num(); !ok {
		return false
	}
	if _, ok := p.target(); !ok {
		return false
	}
	end := p.sentenceEnd()
	says := false
	for j := p.i; j < end; j++ {
		if p.toks[j].kind != tWord && p.toks[j].kind != tComma {
			return false
		}
		says = says || p.toks[j].is("are", "is", "will", "left", "lie", "remain", "should")
	}
	return says && p.tok().is("of", "are", "will", "lie", "on", "at", "between", "remain", "should")
}

// isProse reports whether a sentence that cannot be read from its first word on is
// none of the work: it begins with a word that is like no stitch, and nothing in it
// is made. "Put the eyes between Rnds 9 and 10."
func (p *parser) isProse(start int) bool {
	t := &p.toks[start]
	if t.kind != tWord || p.vocab.near(t.text) != "" || t.is("work", "make", "in", "into", "with", "using", "working", "rep", "repeat", "inc", "dec", "sk", "skip", "miss", "ch") {
		return false
	}
	p.i = start
	return !p.evident(start, p.sentenceEnd())
}

// evident reports whether the words between tokens i and j show that stitches are
// made: a number of them, a stitch and where it goes, a star, a repeat, a skip.
func (p *parser) evident(i, j int) bool {
	at := p.i
	defer func() { p.i = at }()
	for k := i; k < j; k++ {
		t := &p.toks[k]
		switch {
		case t.kind == tStar, t.kind == tTimes, t.is("rep", "repeat", "repeating", "sk", "skip", "skipping", "miss", "missing"):
			return true
		case t.kind == tNumber:
			p.i = k
			if p.chain() != nil {
				return true
			}
			p.i = k
			if n, ok := p.num(); ok && len(n.Values) > 0 {
				if w, ok := p.what(); ok && (w.Kind.Is() || w.Name != "" || w.Shaping != 0) {
					return true // "5 dc"
				}
			}
		case t.kind == tWord:
			p.i = k
			if t.is("ch", "chain", "chaining") && p.at(1).kind == tNumber {
				return true
			}
			if w, ok := p.what(); ok && (w.Kind.Is() || w.Name != "" || w.Shaping != 0) && p.goesSomewhere() {
				return true
			}
			if p.i = k; k-i <= 2 && p.eat("in", "into", "around", "over") {
				p.eat("the")
				if p.eat("next", "each", "every", "same", "following") {
					p.eat("of")
					p.num()
					if _, ok := p.target(); ok {
						return true // "bauble in each st"
					}
				}
			}
		}
	}
	return false
}

// goesSomewhere reports whether a place follows: "in next st", "to last 2 sts",
// "around".
func (p *parser) goesSomewhere() bool {
	switch {
	case p.tok().kind == tNumber, p.tok().is("next", "each", "around", "across", "evenly"):
		return true
	case p.eat("in", "into", "around", "over", "to", "on"):
		p.eat("the")
		return p.tok().kind == tNumber || p.tok().kind == tOrdinal ||
			p.tok().is("next", "each", "every", "same", "first", "last", "ring", "st", "sts", "sp", "ch", "all", "any", "top")
	}
	return false
}

// ends reports whether a join, a turn or the end of the yarn begins at token i.
func (p *parser) ends(i int) bool {
	at, faults := p.i, len(p.faults)
	defer func() { p.i, p.faults = at, p.faults[:faults] }()
	for _, read := range []func() (Item, *fault.Fault){p.join, p.turn, p.fasten} {
		p.i = i
		it, _ := read()
		if _, note := it.(*Note); it != nil && !note && !p.tok().is("back", "seam") {
			return true
		}
	}
	return false
}

// vagueWord reports whether a sentence goes on behind token i, so that the line it
// ends is no heading.
func (p *parser) vagueWord(i int) bool {
	return p.toks[i].is("in", "into", "to", "of", "the", "and", "or", "from", "with", "a", "an", "for", "on", "at", "until", "then", "work", "make", "over", "behind", "by")
}

// optional reports whether a sentence leaves it to the reader whether to do what it
// says: "if desired", "if you like".
func (p *parser) optional(start, end int) bool {
	for j := start; j+2 < end+2 && j+2 < len(p.toks); j++ {
		if a, b := &p.toks[j+1], &p.toks[j+2]; j < end && p.toks[j].is("if") && (a.is("desired", "liked", "wished", "wanted", "preferred") ||
			a.is("you") && b.is("like", "wish", "want", "prefer")) {
			return true
		}
	}
	return false
}

// lineEnd is the first token of the next line.
func (p *parser) lineEnd() int {
	j := p.i + 1
	for j < len(p.toks)-1 && !p.toks[j].first {
		j++
	}
	return j
}

// instructs reports whether an instruction that makes or passes over stitches
// begins at token i.
func (p *parser) instructs(i int) bool {
	at, stated, work, faults := p.i, len(p.stated), p.work, len(p.faults)
	defer func() { p.i, p.stated, p.work, p.faults = at, p.stated[:stated], work, p.faults[:faults] }()
	p.i = i
	p.eat(adverbs...)
	if p.tok().kind == tStar {
		return true
	}
	if p.tok().kind == tOpen {
		return p.multiplied(max(p.matching(i), 0) + 1)
	}
	p.eat("work", "make")
	if from := p.i; from > i {
		p.eat("the", "another")
		_, ok := p.num()
		if close := p.matching(p.i); p.tok().kind == tOpen && close > 0 {
			p.i = close + 1 // "1 (3)", for two of the sizes
		}
		if more := p.eat("more", "extra", "additional", "further"); ok && more && roundNext(p.tok()) {
			return true // "work 3 more rnds as Rnd 2"
		}
		p.i = from
	}
	if p.tok().is("sk", "skip", "miss", "rep", "repeat", "inc", "dec", "turn") {
		return true
	}
	if p.chain() != nil || p.tok().is("count") && p.at(1).kind == tNumber {
		return true
	}
	if _, ok := p.stitches(); ok {
		return true
	}
	if it, _ := p.join(); it != nil {
		return true
	}
	if p.tok().is("in", "into") {
		return p.places(false) != nil
	}
	return false
}

func (p *parser) note(b *block, start, end int) bool {
	p.i = p.dashedCount(start, end)
	if start > 0 && p.toks[start-1].is("now", "so", "but") {
		start-- // "Now for the rib", "so that the ribs stack up"
	}
	b.add(&Note{Span: p.from(start), Text: p.words(start)})
	return true
}

// sentenceEnd is the token that ends the sentence: a full stop, the end, or a
// closing bracket.
func (p *parser) sentenceEnd() int {
	depth := 0
	for j := p.i; j < len(p.toks); j++ {
		switch p.toks[j].kind {
		case tOpen:
			depth++
		case tClose:
			if depth--; depth < 0 {
				return j
			}
		case tStop:
			if depth == 0 {
				return j
			}
		case tEnd:
			return j
		}
	}
	return len(p.toks) - 1
}
