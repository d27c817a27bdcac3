package notation

import (
	"regexp"
	"slices"
	"strings"

	"whorl/patterns/fault"
)

// exactSizes are the sizes of words that are their names and nothing else, "Medium", "M & L", "M/L";
// nil for any other. A letter alone has to be the size, and not only its first letter.
func (p *parser) exactSizes(words string) (sizes []string) {
	if strings.TrimSpace(words) == "" || len(p.sizes) < 2 {
		return nil
	}
	named := func(name string) bool {
		s := p.sizeNamed(strings.TrimSpace(name))
		if s == "" || len(strings.TrimSpace(name)) == 1 && !strings.EqualFold(strings.TrimSpace(name), s) && letterOf(s) != strings.ToUpper(strings.TrimSpace(name)) {
			return false
		}
		sizes = append(sizes, s)
		return true
	}
	for _, name := range unitBehind(strings.FieldsFunc(strings.NewReplacer(" and ", ",", " or ", ",").Replace(strings.ToLower(words)), func(r rune) bool { return r == ',' || r == '&' || r == '+' })) {
		if named(name) {
			continue
		}
		for _, one := range unitBehind(strings.Split(name, "/")) {
			if !named(one) {
				return nil
			}
		}
	}
	return sizes
}

// sizesSaid takes words that are sizes, "Size L only", "For sizes M and L", "all sizes", into the label.
// It is false for any others, of which nothing is kept.
func (p *parser) sizesSaid(l *Label, from, to int) bool {
	at, faults := p.i, len(p.faults)
	if p.i = to; to <= from {
		p.i = at
		return false
	}
	words := strings.ToLower(p.words(from))
	if !forAll.MatchString(words) {
		for cut := true; cut; {
			cut = false
			for _, tail := range [][]string{{"as", "follows"}, {"continue"}, {"carry", "on"}, {"go", "on"}, {"continuing"}, {"now"}, {"here"}} {
				if n := len(tail); p.i-from > n && p.toks[p.i-n].is(tail[0]) && p.toks[p.i-1].is(tail[n-1]) {
					p.i -= n
					cut = true
				}
			}
		}
		words = strings.ToLower(p.words(from))
	}
	said := strings.HasSuffix(words, "only") || strings.Contains(words, "size")
	bare := strings.TrimPrefix(words, "for ")
	switch sizes := p.exactSizes(bare); {
	case forAll.MatchString(words):
		l.Only = append([]string(nil), p.sizes...)
	case sizes != nil:
		l.Only = sizes
	case said:
		p.only(l, from)
	}
	p.i = at
	if len(p.faults) > faults || len(l.Only) == 0 {
		l.Only, p.faults = nil, p.faults[:faults]
		return false
	}
	return true
}

// sizesInside reads the sizes that a round is for behind its colon: "Rnd 3: (Sizes M & L only) Ch 1, …",
// "Rnd 3: Size L only: Ch 1, …".
func (p *parser) sizesInside(l *Label) {
	if len(l.Only) > 0 || len(p.sizes) < 2 {
		return
	}
	start := p.i
	if close := p.matching(start); p.tok().kind == tOpen && close > 0 {
		if p.sizesSaid(l, start+1, close) {
			p.i = close + 1
			if k := p.tok().kind; k == tColon || k == tDash || k == tComma || k == tHyphen {
				p.i++
			}
		}
		return
	}
	for j := start + 1; j < start+12 && j < len(p.toks)-1 && !p.toks[j].first; j++ {
		switch k := p.toks[j].kind; k {
		case tColon, tDash, tComma, tHyphen:
			if k != tHyphen && !p.instructs(j+1) && p.toks[j+1].kind != tStar || k == tHyphen && !p.toks[j].spaced || k == tComma && !p.toks[start].is("for", "size", "sizes") {
				continue
			}
			if p.sizesSaid(l, start, j) {
				p.i = j + 1
				return
			}
		case tStop, tEnd, tStar, tOpen:
			return
		}
	}
}

// sizesAlone reports whether the words from a token up to here are sizes and nothing else, "Size Small", "For
// Adult only", "M and L sizes".
func (p *parser) sizesAlone(start int) bool {
	words := strings.TrimSuffix(strings.TrimPrefix(strings.ToLower(p.words(start)), "for "), " only")
	words = strings.TrimPrefix(strings.TrimPrefix(strings.TrimPrefix(words, "the "), "sizes "), "size ")
	return p.exactSizes(strings.TrimSuffix(strings.TrimSuffix(words, " sizes"), " size")) != nil
}

// workAgain reports whether the words at token i are to work a round by its number again, "work Rnd 2 once more".
func (p *parser) workAgain(i int) bool {
	if i+2 >= len(p.toks) || !p.toks[i].is("work", "rep", "repeat") {
		return false
	}
	_, round := roundWord(&p.toks[i+1])
	for j := i + 2; round && j < len(p.toks) && !p.toks[j].first && p.toks[j].kind != tStop && p.toks[j].kind != tSemi; j++ {
		if p.toks[j].is("once", "twice", "more", "again", "times") {
			return true
		}
	}
	return false
}

// sizesEnd reads a sentence that some sizes are done with, "Small ends here.", "Stop here for Small.":
// the rounds that follow are for the others.
func (p *parser) sizesEnd() (l Label, ok bool) {
	start := p.i
	p.eatKind(tOpen)
	p.eat("for")
	p.eat("size", "sizes", "the")
	from, to := p.i, p.i
	if p.eat("stop", "end", "finish") && p.eat("here") && p.eat("for", "if") {
		p.eat("you", "you're")
		p.eat("are")
		p.eat("making", "working")
		p.eat("the", "size", "sizes")
		for from = p.i; p.tok().kind == tWord && !p.tok().first || p.tok().kind == tComma || p.tok().kind == tSlash || p.tok().kind == tHyphen; p.i++ {
		}
		to = p.i
	} else {
		p.i = from
		for p.i-from < 8 && p.tok().kind != tStop && p.tok().kind != tEnd && !(p.i > from && p.tok().first) && !p.tok().is("ends", "end", "stops", "stop", "is", "are", "finish", "finishes") &&
			p.tok().kind != tColon && !(p.tok().kind == tComma && p.at(1).is("you", "you're", "your", "that's")) {
			p.i++
		}
		to = p.i
		p.eatKind(tColon)
		p.eatKind(tComma)
		p.eat("you")
		if !p.eat("ends", "end", "stops", "stop", "finishes", "finish", "stopping") && !p.eat("is", "are", "you're", "your", "that's") {
			p.i = start
			return l, false
		}
		p.eat("all")
		p.eat("now")
		p.eat("complete", "completed", "done", "finished")
		if !p.eat("here") && !p.at(-1).is("complete", "completed", "done", "finished") {
			p.i = start
			return l, false
		}
	}
	if at := p.i; p.eat("with") {
		for p.eat("the", "your", "crown", "brim", "body", "shaping", "decreases", "increases", "section", "part", "piece") {
		}
		if !p.ended() && !p.tok().first {
			p.i = at
		}
	}
	p.movesOn()
	end := p.i
	p.i = to
	sizes := p.exactSizes(strings.TrimSuffix(strings.TrimSuffix(p.words(from), " size"), " sizes"))
	p.i = end
	p.eatKind(tStop)
	p.eatKind(tClose)
	p.eatKind(tStop)
	p.movesOn()
	if sizes == nil || !p.tok().first && p.tok().kind != tEnd {
		p.i = start
		return Label{}, false
	}
	for _, s := range p.sizes {
		if !slices.Contains(sizes, s) {
			l.Only = append(l.Only, s)
		}
	}
	l.Text = p.words(start)
	return l, len(l.Only) > 0
}

// movesOn passes over "Skip ahead to the body.", "Move on to the edging." up to the end of its
// line, behind what sizes are done with.
func (p *parser) movesOn() {
	start := p.i
	p.eatKind(tComma)
	p.eat("and", "then")
	if p.tok().first || !p.eat("skip", "move", "go", "proceed", "jump", "hop", "head", "continue", "carry") {
		return
	}
	for p.eat("ahead", "on", "straight", "directly", "down", "forward", "now") {
	}
	if p.eat("to", "with") {
		for p.tok().kind == tWord && !p.tok().first && p.i-start < 9 {
			p.i++
		}
		if p.eatKind(tStop); p.tok().first || p.tok().kind == tEnd {
			return
		}
	}
	p.i = start
}

// sizesOnLine reads a line of nothing but sizes, with or without signs about them: "Medium and Large",
// "*For all sizes*", "--- LARGE ONLY ---".
func (p *parser) sizesOnLine() (l Label, ok bool) {
	start := p.i
	sign := func(t *token) bool {
		return t.kind == tStar || t.kind == tDash || t.kind == tHyphen || t.kind == tOpen || t.kind == tClose || t.kind == tColon || t.kind == tStop || t.kind == tEqual || t.kind == tOther
	}
	end := p.lineEnd()
	from, to := start, end
	for from < to && sign(&p.toks[from]) {
		from++
	}
	for to > from && sign(&p.toks[to-1]) {
		to--
	}
	if to == from || to-from > 16 || !p.sizesSaid(&l, from, to) {
		return Label{}, false
	}
	if len(l.Only) == len(p.sizes) {
		l.Only = nil
	}
	p.i = end
	l.Text = p.words(start)
	return l, true
}

// headsSizes reports whether a round is nothing but its number, "Rnd 7:", which the work told for some of
// the sizes on the lines behind it has: "Size S only: Ch 1, …".
func (r *Round) headsSizes() bool {
	l := &r.Label
	return len(r.Items) == 0 && !r.Broken && len(l.Only) == 0 && len(l.Numbers) == 1 && sameNum(l.Numbers[0].From, l.Numbers[0].To)
}

// skipsRounds reads "skip Rnd 5", "omit Rnds 5 and 6 and continue with Rnd 7" behind the sizes that it is
// for. Rounds further on than the next are no place to go on from.
func (p *parser) skipsRounds(l *Label) bool {
	start := p.i
	if len(l.Only) == 0 || !p.eat("skip", "omit", "miss", "leave") {
		return false
	}
	p.eat("out")
	row, ok := roundWord(p.tok())
	if !ok {
		p.i = start
		return false
	}
	p.i++
	var r Label
	if p.numbers(&r, true); len(r.Numbers) == 0 {
		p.i = start
		return false
	}
	first, last := r.Numbers[0].From.For(0), r.highest()
	if p.upTo > 0 && first != p.upTo+1 {
		p.i = start
		return false
	}
	l.Row, l.SkipTo = row, Num{Span: p.from(start), Values: []int{last + 1}}
	p.eatKind(tComma)
	p.eatKind(tSemi)
	p.eat("and", "then")
	at := p.i
	if p.eat("go", "continue", "proceed", "move", "carry", "resume", "work", "start", "begin") {
		p.eat("on", "straight")
		p.eat("to", "with", "at", "from")
		if _, ok := roundWord(p.tok()); ok {
			p.i++
			if n, ok := p.num(); ok {
				l.SkipTo = n
			}
		} else {
			p.i = at
		}
	}
	p.eatKind(tStop)
	if !p.tok().first && p.tok().kind != tEnd {
		l.SkipTo, p.i = Num{}, start
		return false
	}
	return true
}

// directing are words that tell what to do next, where sizes are named beside them.
var directing = regexp.MustCompile(`(?i)\b(only|skip|omit|proceed|stop|(go|move|jump|hop|head|continue) (on|to|with|straight|directly|ahead)|(ends?|stops?) here|(work|repeat|rep|omitting) (rnds?|rounds?|rows?))\b`)

// goesElsewhere is somebody told before a colon to go on with another round, "Preemie: go to Rnd 9".
var goesElsewhere = regexp.MustCompile(`(?i)^[^:.,]{1,30}: *(now |then )?(skip|go|proceed|continue|move|jump|hop|head) (on |straight |directly |ahead )?(to|with) (the )?(r|rnd|round|row)s? ?\d`)

// forSome is the fault of a note that tells some of the sizes to do what the others do not; nil for
// any other.
func (n *Note) forSome(sizes []string) *fault.Fault {
	if len(sizes) < 2 || n.Heading || !directing.MatchString(n.Text) {
		return nil
	}
	words := strings.FieldsFunc(n.Text, func(r rune) bool { return !letter(r) && !digit(r) && r != '-' && r != '\'' })
	sized := false
	for i, w := range words {
		for _, s := range sizes {
			one := s == w && (len(w) > 1 || i > 0 && slices.Contains([]string{"size", "sizes", "for"}, strings.ToLower(words[i-1])))
			sized = sized || one && !(i+1 < len(words) && slices.Contains(notSizes, strings.ToLower(words[i+1])))
		}
	}
	if !sized && !goesElsewhere.MatchString(n.Text) {
		return nil
	}
	return fail(n.Span, "size", "cannot work out what these words tell some of the sizes to do",
		"Write, for example: "+sizes[0]+": skip to Rnd 5. Or name the sizes with the round: Rnd 4 ("+sizes[len(sizes)-1]+" only): …")
}

// notSizes are things that are small, medium or large themselves.
var notSizes = []string{"hook", "button", "buttons", "needle", "stitch", "bobble", "bobbles", "hole", "amount", "piece", "petal", "petals", "circle", "square", "motif"}
