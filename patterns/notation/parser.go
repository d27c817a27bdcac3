package notation

import (
	"fmt"
	"slices"
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// The limits of what a parser takes on. Nothing written for people comes near.
const (
	maxDepth  = 12    // brackets and repeats inside each other
	maxTokens = 60000 // words and signs in one part
)

// Parse reads the words of one part. Sizes are the names of the pattern's
// sizes, which say how many numbers stand in brackets. Rounds that could not
// be read are left out of the tree, with a fault for each in the list.
func Parse(lines []Line, v *Vocabulary, sizes []string) (*Text, fault.List) {
	toks, faults := scan(lines)
	toks = dropBareCloses(toks)
	if len(toks) > maxTokens {
		t := toks[maxTokens]
		return &Text{}, fault.List{{Code: "too-large", Severity: fault.Error, Pos: t.pos, Length: t.length,
			Message: fmt.Sprintf("the part is longer than %d words", maxTokens),
			Help:    "Divide it into several parts."}}
	}
	text := &Text{}
	var only []string   // the sizes that rounds are for
	done := false       // and the others are finished
	var some fault.List // notes for some of the sizes, till the next round
	var head *Round     // a number on a line of its own, told for each size behind it
	var habits []*habit // what was said of all the rounds from there on
	starts := roundStarts(toks, v, sizes)
	for i, s := range starts {
		end := len(toks) - 1
		if i+1 < len(starts) {
			end = starts[i+1]
		}
		if s == end {
			continue
		}
		p := newParser(toks[s:end], v, sizes)
		p.upTo = upTo(text.Rounds)
		if l, ok := p.sizeLine(); ok && (p.finished || p.tok().kind == tEnd) {
			faults = append(faults, p.faults...)
			only, done = l.Only, p.finished
			if s += p.i; s == end {
				continue
			}
		}
		if done && beginsAnew(toks[s:end]) {
			only, done = nil, false
		}
		p = newParser(toks[s:end], v, sizes)
		p.forSizes, p.taken, p.upTo, p.plain = only, takenBy(text.Rounds), upTo(text.Rounds), plainOf(text.Rounds)
		p.cloth = clothOf(text.Rounds)
		n := len(text.Rounds)
		if !toks[s].first && n > 0 {
			p.before = text.Rounds[n-1].Label.Only
		}
		r, f := p.round()
		if !toks[s].first && n > 0 {
			r.Label.sameFor(&text.Rounds[n-1].Label)
		}
		if !r.Label.Sizes {
			head = nil
		} else if n > 0 && text.Rounds[n-1].headsSizes() {
			head, text.Rounds = text.Rounds[n-1], text.Rounds[:n-1]
		}
		if head != nil {
			r.Label.numbered(&head.Label)
		}
		if r.Label.everySize(len(sizes)) {
			only = nil // its numbers say that it is for all of them again
		}
		switch len(r.Label.Only) {
		case 0:
			r.Label.Only = only
		case len(sizes):
			only, r.Label.Only = nil, nil // "(all sizes)"
		}
		if f != nil {
			faults = append(faults, f)
			// What could be read is kept: a later round may refer to it, and
			// it stands in the tree as a round that cannot be worked.
			r.Broken = true
		}
		faults = append(faults, p.faults...)
		if len(r.Label.Numbers) > 0 || r.Label.Next.Set() {
			if len(r.Label.Only) == 0 {
				faults = append(faults, some...)
			}
			some = nil // where the sizes are named with the rounds, nothing hangs on the note
		}
		for _, it := range r.Items {
			if n, ok := it.(*Note); ok {
				if f := n.forSome(sizes); f != nil {
					some = append(some, f)
				}
			}
		}
		habits = append(habits, p.habits...)
		r.follow(habits)
		text.Rounds = append(text.Rounds, r.parted()...)
		if headsAllSizes(toks[s:end]) {
			only = nil
		}
	}
	text.chainAtRing()
	return text, append(faults, text.others()...)
}

// upTo is the number that the last numbered round comes up to, in the size where it is highest.
func upTo(rounds []*Round) int {
	for i := len(rounds) - 1; i >= 0; i-- {
		if n := rounds[i].Label.highest(); n > 0 {
			return n
		}
	}
	return 0
}

// highest is the highest of the numbers of a label, 0 where it has none.
func (l *Label) highest() (n int) {
	for _, r := range l.Numbers {
		for _, v := range r.To.Values {
			n = max(n, v)
		}
	}
	return n
}

// takenBy are the sizes of the last rounds that are for some sizes only, as far back
// as they have the same number.
func takenBy(rounds []*Round) (l []string) {
	for i := len(rounds) - 1; i >= 0; i-- {
		r := rounds[i]
		if len(r.Label.Only) == 0 || len(r.Label.Numbers) == 0 || len(rounds[len(rounds)-1].Label.Numbers) == 0 ||
			r.Label.Numbers[0].From.For(0) != rounds[len(rounds)-1].Label.Numbers[0].From.For(0) {
			break
		}
		l = append(l, r.Label.Only...)
	}
	return l
}

// roundStarts are the tokens at which rounds begin: the first, and every label
// at the start of a line.
func roundStarts(toks []token, v *Vocabulary, sizes []string) []int {
	starts := []int{0}
	sent := 0 // up to where a sentence goes that sends sizes on
	for i := range toks {
		if i == 0 || toks[i].kind == tEnd || i < sent {
			continue
		}
		if !toks[i].first {
			if k := toks[i-1].kind; (k == tClose || k == tStop) && i > 1 {
				// "… (54) Newborn: go on to the Sides."
				p := newParser(toks[i:], v, sizes)
				if l, ok := p.label(); ok && len(l.Only) > 0 && (l.SkipTo.Set() || l.SkipToPart != "") && p.tok().first {
					starts = append(starts, i)
					continue
				}
			}
			if p := newParser(toks[i:], v, sizes); (toks[i-1].kind == tStop || toks[i-1].kind == tClose) && (p.thenSkips() || p.skipsLater(0)) {
				// "R8 (Child only): … – 60. Skip to R10.", "… – 60. You are done, so skip to R10."
				p.i = 0
				p.before = labelledFor(toks[starts[len(starts)-1]:], v, sizes)
				if l, ok := p.label(); ok && len(p.before) > 0 && l.SkipTo.Set() && (p.tok().first || p.tok().kind == tEnd) {
					starts = append(starts, i)
					continue
				}
			}
			if k := toks[i-1].kind; (k == tClose || k == tStop) && len(labelledFor(toks[starts[len(starts)-1]:], v, sizes)) > 0 {
				// "Rnd 3: For S: …. For M and L: …"
				p := newParser(toks[i:], v, sizes)
				if l, ok := p.label(); ok && l.Sizes {
					starts = append(starts, i)
					continue
				}
			}
			nth := toks[i].kind == tOrdinal || toks[i].is("next")
			if toks[i-1].kind == tStop || nth && toks[i-1].kind == tColon && headedShort(toks, i-1) || pieceColon(toks, i, v, sizes) {
				// "Don't stuff. Rnd 10: …", "Shape armholes. Next row: …" in the middle of a line
				p := newParser(toks[i:], v, sizes)
				if l, ok := p.label(); ok && (len(l.Numbers) > 0 || l.Next.Set()) && p.at(-1).kind == tColon && !p.at(-2).first {
					if _, round := roundWord(&toks[i]); round || nth || toks[i].is("edging", "border", "trim") {
						starts = append(starts, i)
					}
				}
			}
			continue
		}
		p := newParser(toks[i:], v, sizes)
		if _, ok := p.sizesDone(); ok {
			starts = append(starts, i)
			continue
		}
		if l, ok := p.label(); ok && !(l.Unmarked && goesOn(&toks[i-1])) {
			if starts = append(starts, i); l.SkipTo.Set() || l.SkipToPart != "" {
				sent = i + p.i
			}
			continue
		}
		p = newParser(toks[i:], v, sizes)
		if _, ok := p.sizeLine(); ok {
			starts = append(starts, i)
		}
	}
	return starts
}

// goesOn reports whether a sentence goes on behind a token that is the last of its line, so
// that the next line begins no round without saying so: "rep from * to end, as in / 1st row".
func goesOn(t *token) bool {
	return t.kind == tComma || t.kind == tDash || t.kind == tHyphen ||
		t.is("as", "in", "into", "to", "of", "from", "until", "rep", "repeat", "and", "or", "next", "each", "every", "last", "previous", "for", "with", "the", "like", "work")
}

// sameFor gives work for some of the sizes, told behind that for others on the same line, the number of
// their round.
func (l *Label) sameFor(before *Label) {
	if !l.Sizes || len(before.Only) == 0 || len(before.Numbers) == 0 || slices.ContainsFunc(l.Only, func(s string) bool { return slices.Contains(before.Only, s) }) {
		return
	}
	l.numbered(before)
}

// numbered gives work for some of the sizes the number of another label.
func (l *Label) numbered(as *Label) {
	l.Numbers, l.Row, l.Series, l.Text, l.Sizes = as.Numbers, as.Row, as.Series, as.Text, false
}

// labelledFor are the sizes that the label at the beginning of tokens is for.
func labelledFor(toks []token, v *Vocabulary, sizes []string) []string {
	l, _ := newParser(toks, v, sizes).label()
	return l.Only
}

// parted sets a reference to other rounds that follows the work of a round
// ("… turn. Rep Row 2 until piece measures 5 cm") apart as rounds of its own.
func (r *Round) parted() []*Round {
	work, slips := false, false
	for i, it := range r.Items {
		switch it := it.(type) {
		case *Ref:
			work = work || slips && !it.one()
			if !work {
				work = true // another reference after it is a round of its own
				continue
			}
			at := it.Where()
			rest := &Round{Span: at, Items: r.Items[i:], Broken: r.Broken, Label: Label{Row: r.Label.Row, Only: r.Label.Only}}
			first := *r
			first.Items, first.Stated = r.Items[:i], nil
			for _, s := range r.Stated {
				if s.Line < at.Line || s.Line == at.Line && s.Column < at.Column {
					first.Stated = append(first.Stated, s)
				} else {
					rest.Stated = append(rest.Stated, s)
				}
			}
			return append([]*Round{&first}, rest.parted()...)
		case *Stitches:
			if it.What.Kind == stitch.Of(stitch.Slip) && len(it.Places) > 0 && it.Places[0].Pick != Each {
				slips = true // to where the round begins that is referred to
			} else {
				work = true
			}
		case *Group, *Repeat:
			work = true
		}
	}
	return []*Round{r}
}

// one reports whether a reference is to one round, to be worked once.
func (r *Ref) one() bool {
	if r.Onward || r.Times.Set() {
		return false
	}
	return onlyOne(r.Last) && (r.Last.Set() || len(r.Rounds) == 1 && !r.Rounds[0].ToEnd && r.Rounds[0].From.For(0) == r.Rounds[0].To.For(0))
}

// parser reads one round.
type parser struct {
	toks  []token
	i     int
	vocab *Vocabulary
	sizes []string
	// finished is set where a line says that some sizes are done, which are not to work what follows.
	finished bool
	depth    int
	// stars are the items at which repeats marked with a star began, one list
	// for each depth of brackets.
	stars  [][]int
	faults fault.List
	// habits are what has been said of all the rounds that follow.
	habits []*habit
	// defining is set for the words of a special stitch.
	defining bool
	// holds is set when they hold last loops on the hook.
	holds bool
	// said is what a bracket between two places says of the chains at the
	// beginning, kept for the item that follows.
	said *Counts
	// before are the sizes that the round before on the same line is for.
	before []string
	// labelled is set when the round has a number, upTo is the highest number so far, its own included.
	labelled bool
	upTo     int
	plain    What // the plain stitch that the rounds before are worked in
	// inTurn is what the round says is gone into as a stitch: "working in each ch-1 sp as a st".
	inTurn []Target
	// opening is set when the words have named a slit in another part.
	opening bool
	// edge is which edge rowEnds has read: TopEdge, ChainEdge, or "" for row ends.
	edge string
	// edgeRows is how many rows it has said there are, and edgeKind the kind of stitch that
	// they are told by: "each of the 75 tr rows".
	edgeRows Num
	edgeKind stitch.Kind
	// nextGap says that the gap read last is the next one, not just here.
	nextGap bool
	// eachGap says that it is each of several: "sp between each group", "spaces between groups".
	eachGap bool
	// lastGap says that it is the last of the round.
	lastGap bool
	// forSizes are the sizes that the round is for, nil for all.
	forSizes []string
	// taken are the sizes that the rounds before, of one number, were for, which
	// "all other sizes" leaves out.
	taken []string
	// work says that the round so far has made stitches, which tells a count
	// at its end from an instruction.
	work bool
	// cloth is what the edging is worked into, "hankie"; "" for none.
	cloth string
	// ringed says that the round has made a ring, which is "it" then.
	ringed bool
	// joined says that the last instruction was the join that closes the round.
	joined bool
	// stated are the counts found, in order.
	stated []*Stated
}

// newParser reads tokens, which need no end token.
func newParser(toks []token, v *Vocabulary, sizes []string) *parser {
	if n := len(toks); n > 0 && toks[n-1].kind == tEnd {
		return &parser{toks: toks, vocab: v, sizes: sizes}
	}
	end := token{kind: tEnd, spaced: true, first: true, length: 1}
	if n := len(toks); n > 0 {
		end.pos = toks[n-1].pos
		end.pos.Column += toks[n-1].length
	}
	return &parser{toks: append(toks[:len(toks):len(toks)], end), vocab: v, sizes: sizes}
}

// tok is the current token, at(n) the one n places on.
func (p *parser) tok() *token { return p.at(0) }
func (p *parser) at(n int) *token {
	if p.i+n >= len(p.toks) || p.i+n < 0 {
		return &p.toks[len(p.toks)-1]
	}
	return &p.toks[p.i+n]
}

// eat passes over the current token if it is one of the words.
func (p *parser) eat(words ...string) bool {
	if p.tok().is(words...) {
		p.i++
		return true
	}
	return false
}

// eatAll passes over the words if they stand in this order, hyphens between
// them ignored.
func (p *parser) eatAll(words ...string) bool {
	start := p.i
	for n, w := range words {
		if n > 0 {
			p.eatKind(tHyphen)
		}
		if !p.eat(w) {
			p.i = start
			return false
		}
	}
	return true
}

func (p *parser) eatKind(k tokenKind) bool {
	if p.tok().kind == k {
		p.i++
		return true
	}
	return false
}

// from is the span from token number start to the token before the current
// one, on the line it begins on.
func (p *parser) from(start int) Span {
	if start >= len(p.toks) {
		start = len(p.toks) - 1
	}
	s := Span{Pos: p.toks[start].pos, Length: p.toks[start].length}
	for j := start + 1; j < p.i && j < len(p.toks); j++ {
		if t := &p.toks[j]; t.pos.Line == s.Line {
			s.Length = t.pos.Column + t.length - s.Column
		}
	}
	return s
}

// words is the text from token number start to the current one, as written.
func (p *parser) words(start int) string {
	var b strings.Builder
	for j := start; j < p.i && j < len(p.toks); j++ {
		if j > start && p.toks[j].spaced {
			b.WriteByte(' ')
		}
		b.WriteString(p.toks[j].raw)
	}
	return b.String()
}

// fail is a fault at the span.
func fail(s Span, code, message, help string) *fault.Fault {
	return &fault.Fault{Code: code, Severity: fault.Error, Pos: s.Pos, Length: s.Length,
		Message: message, Help: help}
}

// report keeps a fault that does not stop the reading. Words may be looked at
// more than once, so it is kept only once.
func (p *parser) report(f *fault.Fault) {
	for _, o := range p.faults {
		if o.Pos == f.Pos && o.Code == f.Code {
			return
		}
	}
	p.faults = append(p.faults, f)
}

// failAt is a fault at token i.
func (p *parser) failAt(i int, code, message, help string) *fault.Fault {
	t := p.toks[min(i, len(p.toks)-1)]
	return fail(Span{t.pos, t.length}, code, message, help)
}

// stuck is the fault for a token that nothing can be made of.
func (p *parser) stuck() *fault.Fault {
	t := p.tok()
	switch t.kind {
	case tEnd:
		return p.failAt(p.i, "unfinished", "the round breaks off here", "Say what is worked, and into what.")
	case tClose:
		return p.failAt(p.i, "bracket", "this bracket was never opened", "Add the opening bracket, or take this one away.")
	}
	if f := p.vague(); f != nil {
		return f
	}
	if f := p.leftOpen(); f != nil {
		return f
	}
	if f := p.everyNth(); f != nil {
		return f
	}
	if f := p.betweenPieces(); f != nil {
		return f
	}
	// "2 hcd": what is wrong is the word, not the number before it.
	if next := p.at(1); t.kind == tNumber && next.kind == tWord && p.vocab.near(next.text) != "" {
		p.i++
	}
	// A word with hyphens is named whole.
	start := p.i
	for p.i++; p.tok().tight(tHyphen) && p.at(1).tight(tWord); p.i += 2 {
	}
	word, at := p.words(start), p.from(start)
	p.i = start
	meant := ""
	if near := p.vocab.near(p.tok().text); near != "" {
		meant = fmt.Sprintf("Did you mean %q?\n", near)
	}
	return fail(at, "not-understood", fmt.Sprintf("cannot work out %q here", word),
		meant+"Say it as a stitch and where it goes, for example: 2 dc in next st.\n"+
			"A stitch of your own needs a line under stitches: that says how it is made.")
}
