package notation

// headings are what the stretches of a piece are called.
var headings = []string{"edging", "border", "band", "brim", "crown", "body", "sides", "side", "ribbing", "rib", "trim", "flap", "flaps", "cuff", "thumb",
	"hand", "shaping", "finishing", "yoke", "cup", "top", "base", "section", "increases", "decreases", "rounds", "rows", "stripes", "panel", "earflaps", "ties", "strap", "handle", "handles",
	"lace", "texture", "heel", "toe", "foot", "leg", "head", "ear", "ears", "gusset"}

// hanging is what hangs from a piece.
var hanging = []string{"loop", "hanger", "stem", "stalk", "cord", "tie", "string", "tail", "curl"}

// hangs reads the name of a loop or a cord that hangs from a piece, "Hanging loop:",
// "Stem:", with work behind it. It goes to the colon.
func (p *parser) hangs() bool {
	start := p.i
	if !p.tok().first || !capital(p.tok().raw) {
		return false
	}
	for n := 0; n < 3 && p.tok().kind == tWord; n++ {
		p.i++
	}
	if p.tok().kind == tColon && p.instructs(p.i+1) && p.at(-1).is(hanging...) {
		return true
	}
	p.i = start
	return false
}

// headed reports whether the line is the last before the next label and names a
// stretch of the piece, though with the name of a stitch: "Shell edging".
func (p *parser) headed() bool {
	if !p.tok().first || !capital(p.tok().raw) {
		return false
	}
	j := p.i
	for ; p.toks[j].kind == tWord && (j == p.i || !p.toks[j].first); j++ {
		if p.toks[j].is("work", "in", "each", "around", "rep", "repeat", "ch", "join") {
			return false
		}
	}
	if p.toks[j].kind == tColon {
		j++
	}
	return p.toks[j].kind == tEnd && j-p.i <= 5 && p.toks[j-1].is(headings...)
}

// working are words that no name of a piece has in it.
var working = []string{"in", "into", "each", "every", "around", "across", "next", "join", "turn", "ch", "chain", "work", "make", "repeat", "rep",
	"sk", "skip", "miss", "sl", "ss", "fasten", "until", "change", "do", "evenly", "st", "sts", "stitches", "through", "over", "without", "continue",
	"begin", "start", "starting", "beginning", "end", "finish", "using", "cut", "break", "rs", "ws", "fo", "off"}

// titled takes what a piece is called, at the head of its words, as a heading: a line of
// its own, "Puff wheel coaster", "EARS (make 2)", or the words before a starting chain or a ring,
// "Leaf: ch 11".
func (p *parser) titled(b *block) bool {
	start := p.i
	line := p.lineEnd()
	if p.opens(line) {
		return p.heading(b, start, line)
	}
	if t := p.tok(); t.kind != tWord || !t.first || !capital(t.raw) || t.is(notTitles...) {
		return false
	}
	if p.vagueAt(start, line) != nil {
		return false
	}
	if p.stretchOf(line) {
		return p.heading(b, start, line)
	}
	j, names := start, false // whether a word is none of the trade's
	for ; j < line && j < len(p.toks)-1; j++ {
		t := &p.toks[j]
		if t.kind == tHyphen || t.kind == tDash || t.kind == tSlash || t.kind == tQuote {
			continue
		}
		if t.kind != tWord || j > start && t.first {
			break
		}
		if k := p.stitchNamed(j); k > j+1 {
			j = k - 1 // "Half double crochet beanie"
			continue
		}
		if t.is(working...) || t.is(deciding...) || t.is("as", "like", "same") || j-start > 6 {
			return false
		}
		names = names || !p.stitchy(j, j+1)
	}
	switch last, t := &p.toks[j-1], &p.toks[j]; {
	case !names:
		return false
	case t.kind == tColon && j+1 < line:
		if p.tok().is(advising...) && !last.is(headings...) || p.tok().is("with") || last.is(hanging...) {
			return false
		}
		p.i = j + 1
		p.eat("with", "using")
		at, ringed := p.i, p.ringed
		ring, _ := p.ring()
		_, isRing := ring.(*MagicRing)
		p.i, p.ringed = at, ringed
		p.eat("make", "work")
		begins := isRing || p.chain() != nil
		if p.i = start; !begins {
			return false
		}
		return p.heading(b, start, j+1)
	case t.kind == tColon && p.toks[line].first && !p.tok().is(advising...):
		return p.heading(b, start, line)
	case t.kind == tOpen:
		close := p.matching(j)
		if close < 0 || close+1 < line && !(close+2 == line && (p.toks[close+1].kind == tColon || p.toks[close+1].kind == tStop)) || !p.ofPiece(j+1, close) {
			return false
		}
		return p.heading(b, start, line)
	case j == line && t.kind != tEnd || t.kind == tEnd && start == 0:
		if last.kind != tWord || p.stitchy(j-1, j) || p.vagueWord(j-1) || t.kind == tWord && !capital(t.raw) {
			return false
		}
		return p.heading(b, start, line)
	}
	return false
}

// opens reports whether a line of its own says only that the work begins: "TO MAKE",
// "To begin:", "To make the hat".
func (p *parser) opens(line int) bool {
	if t := p.tok(); !t.first || !t.is("to") || !capital(t.raw) || !p.at(1).is("make", "work", "crochet", "begin", "start") || line > p.i+5 || !p.toks[line].first {
		return false
	}
	end := line
	if p.toks[end-1].kind == tColon {
		end--
	}
	for j := p.i + 2; j < end; j++ {
		if p.toks[j].kind != tWord || !p.toks[j].is("the", "your", "a", "an") && p.stitchy(j, j+1) {
			return false
		}
	}
	return !p.toks[end-1].is("up") // "TO MAKE UP"
}

// stitchNamed is the token behind the name of a stitch that begins at token j, "double
// crochet", or j where there is none.
func (p *parser) stitchNamed(j int) int {
	at := p.i
	defer func() { p.i = at }()
	p.i = j
	if _, ok := p.phrase(); !ok {
		return j
	}
	return p.i
}

// behindHeading reports whether the item read last is a heading with a colon, behind which
// a sentence begins: "Scarf: With 5.5 mm hook ch 21".
func (b *block) behindHeading() bool {
	n := len(b.items)
	if n == 0 || b.p.at(-1).kind != tColon {
		return false
	}
	note, ok := b.items[n-1].(*Note)
	return ok && note.Heading
}

// stretchOf reports whether a line names a piece and a stretch of it, and nothing is worked in it:
// "Side-to-side scarf: increase section", "Shawl – decrease half".
func (p *parser) stretchOf(line int) bool {
	parted := false
	for j := p.i; j < line; j++ {
		switch t := &p.toks[j]; {
		case t.kind == tColon && !parted && j > p.i, t.kind == tDash && !parted && j > p.i:
			parted = true
			if p.evident(j+1, line) {
				return false
			}
		case t.kind == tHyphen, t.kind == tWord && !t.is(working...) && !roundNext(t):
		default:
			return false
		}
	}
	last := &p.toks[line-1]
	return parted && line-p.i <= 10 && (last.is(headings...) || last.is("half", "part", "portion", "end", "point", "triangle"))
}

// ofPiece reports whether the words in brackets behind the name of a piece, between
// tokens i and j, say how many are made, or anything but work: "make two alike".
func (p *parser) ofPiece(i, j int) bool {
	if i+1 < j && p.toks[i].is("make") && p.toks[i+1].kind != tOpen {
		return true
	}
	for k := i; k < j; k++ {
		t := &p.toks[k]
		if t.is("make", "makes") || t.kind == tTimes {
			continue
		}
		if t.kind == tNumber && (k == i || !p.toks[k-1].is("make", "makes") && p.toks[k-1].kind != tTimes) {
			return false
		}
	}
	return !p.stitchy(i, j)
}

func (p *parser) heading(b *block, start, end int) bool {
	p.note(b, start, end)
	b.items[len(b.items)-1].(*Note).Heading = true
	return true
}

// notTitles are words that a sentence of work or a reference to other work begins with.
var notTitles = []string{"work", "working", "make", "making", "rep", "repeat", "repeating", "continue", "cont", "join", "rejoin", "attach", "turn", "fasten", "cut",
	"begin", "start", "starting", "change", "with", "using", "in", "into", "for", "from", "to", "at", "on", "next", "ch", "chain", "inc", "dec", "increase", "decrease",
	"sk", "skip", "miss", "now", "then", "as", "like", "complete", "finish", "do", "follow", "omit", "omitting", "leave", "keep", "place", "pick", "and", "or", "but",
	"end", "ending", "note", "notes", "tip", "hint", "important", "nb", "this", "these", "it", "each", "every", "all"}

// title reports whether a line that titled does not take names a piece or a stretch of one, and perhaps says in a
// word or two how it is made: "FINGERLESS MITT (make 2)", "Cuff:", "Slouchy hat, worked side
// to side". Nothing is worked in it, and it ends in no full stop.
func (p *parser) title() bool {
	t := p.tok()
	if !t.first || t.kind != tWord || !capital(t.raw) || t.is(notTitles...) {
		return false
	}
	start, end := p.i, p.titleEnd()
	if p.hangs() {
		p.i = start
		return false // a loop or a cord, whose colon is its own
	}
	if k := p.toks[end-1].kind; k != tWord && k != tClose && k != tColon && k != tNumber || !p.toks[end].first && p.toks[end-1].kind != tColon || p.instructs(start) || p.ends(start) {
		return false
	}
	if _, round := roundWord(t); round || p.vagueAt(start, end) != nil || p.evident(start, end) {
		return false
	}
	words, depth := 0, 0
	for j := start; j < end; j++ {
		switch t := &p.toks[j]; {
		case t.kind == tOpen:
			depth++
		case t.kind == tClose:
			depth--
		case depth > 0:
			if t.is("only", "size", "sizes", "blo", "flo", "loop", "loops") {
				return false
			}
		case t.is(deciding...), t.is("as", "like", "same"):
			return false
		case t.kind == tWord:
			words++
		case t.kind == tColon && j == end-1, t.kind == tComma, t.kind == tHyphen, t.kind == tDash, t.kind == tSlash, t.kind == tNumber, t.kind == tOther && t.text == "&":
		default:
			return false
		}
	}
	return depth == 0 && words <= 12 && !p.vagueWord(end-1)
}

// titleEnd is where a title at the beginning of a line ends: behind a colon before work on the
// same line ("Cuff: With smaller hook, ch 32"), else with the line.
func (p *parser) titleEnd() int {
	end := p.lineEnd()
	for j := p.i; j+1 < end; j++ {
		if p.toks[j].kind == tColon {
			if next := &p.toks[j+1]; next.is("with", "using") || p.instructs(j+1) {
				return j + 1
			}
			break
		}
	}
	return end
}

// beginsShaping reports whether the sentence says no more than that the shaping begins: "Begin the
// crown decreases.", "Now start decreasing for the top."
func (p *parser) beginsShaping(end int) bool {
	start := p.i
	defer func() { p.i = start }()
	p.eat("now", "here", "then")
	if !p.eat("begin", "start", "commence", "starting", "beginning") {
		return false
	}
	shapes := false
	for p.i < end {
		switch {
		case p.eat("decreases", "decrease", "decreasing", "increases", "increase", "increasing", "shape", "shaping", "dec", "decs", "inc", "incs"):
			shapes = true
		case p.eat("the", "crown", "hat", "top", "toe", "heel", "your", "our", "to", "for", "of", "body", "brim", "section", "rounds", "rnds", "rows", "neck", "neckline", "armhole", "armholes",
			"thumb", "gusset", "raglan", "work", "working", "sleeve", "yoke", "head", "bag", "tip", "here", "now", "with", "by", "and"):
		default:
			return false
		}
	}
	return shapes
}

// headedShort reports whether a colon ends a heading of a few words at the beginning of a line, "Shape
// neck:", which is no label itself.
func headedShort(toks []token, colon int) bool {
	if colon == 0 {
		return false
	}
	j := colon
	for ; j > 0 && !toks[j].first; j-- {
		if k := toks[j-1].kind; k != tWord {
			return false
		}
	}
	_, round := roundWord(&toks[colon-1])
	return j < colon && colon-j <= 3 && !round
}
