package notation

import (
	"slices"

	"whorl/patterns/fault"
)

// goingOn is a sentence of rounds that go on, as far as it has been read.
type goingOn struct {
	way     bool   // "in this way", "as set"
	rounds  *Ref   // "repeating Rows 3 and 4"
	behind  int    // the token behind them
	times   Num    // "5 more times"
	until   *Until // "until Row 17", "for 10 more rows"
	toRound bool   // it is "to Row 17"
	end     Ending // "ending with Row 3"
	yarns   []Item // which yarns they are worked in
	order   []Item // until when and in which yarns, as they are written
}

// goingOn reads a sentence of rounds that go on: "Continue in this way, changing colour every
// 2 rows, to Row 17", "Continue as set, repeating Rows 3 and 4, until 24 rows have been
// worked", "Alternate Rows 3 and 4 in the colour sequence for 10 more rows". How, which
// rounds, in which yarns and until when may stand in any order, with or without commas. What
// follows them is read behind it.
func (b *block) goingOn() bool {
	p := b.p
	start, faults := p.i, len(p.faults)
	p.eat("now", "then", "just", "simply")
	first := p.i
	kept, named := p.goingOnVerb()
	g := &goingOn{}
	if p.i > first {
		for {
			at := p.i
			for p.eatKind(tComma) || p.eatKind(tDash) || p.eat("and", "while", "by", "but", "then") {
			}
			if !g.clause(p, start, kept || named) {
				p.i = at
				break
			}
		}
	}
	if g.rounds == nil && !g.way && len(g.yarns) == 0 && g.until != nil && kept && !g.toRound {
		g.until.Kept, g.until.Span = true, p.from(start)
		if g.end.Set {
			g.until.End = g.end
		}
		b.add(g.until) // "Continue until …": the round before, as often as it takes
		b.apart()
		return true
	}
	if g.rounds != nil && g.until == nil && b.inBands(g.rounds, g.behind) {
		return true
	}
	told := g.until != nil || g.end.Set || g.times.Set() || g.rounds != nil && (g.rounds.Times.Set() || g.rounds.End.Set)
	switch {
	case g.rounds == nil && !g.way && len(g.yarns) == 0, // "Continue until …" is of the round that is told before
		g.rounds == nil && !told && (len(g.yarns) == 0 || !g.way),
		g.rounds == nil && p.howAhead(),
		!kept && !named && !told,
		!p.ended() && !p.tok().first && !(g.rounds != nil && named):
		p.i, p.faults = start, p.faults[:faults]
		return false
	}
	r := g.rounds
	if r == nil {
		r = &Ref{Onward: true, Last: One(p.from(start))}
	}
	if r.Kept = kept && !r.Onward; g.times.Set() {
		r.Times = g.times
	}
	if r.Span = p.from(start); g.end.Set {
		r.End = g.end
	}
	for _, it := range g.yarns {
		if c, ok := it.(*Colour); ok {
			b.add(c) // as if it stood before them
		}
	}
	p.work = true
	b.add(r)
	for _, it := range g.order {
		if _, ok := it.(*Colour); !ok {
			b.add(it)
		}
	}
	b.apart()
	return true
}

// howAhead reports whether it comes next how the rounds go on: ", working 1 more sc between
// increases", "with one more group along each side".
func (p *parser) howAhead() bool {
	n := 0
	if p.tok().kind == tComma {
		n = 1
	}
	return p.at(n).is("working", "with", "having", "making", "adding", "increasing", "decreasing", "placing", "by", "but")
}

// openGoingOn is the fault of a sentence of rounds that go on for so long, which nothing can be
// made of: none of them is passed over as advice.
func (p *parser) openGoingOn() *fault.Fault {
	start, faults := p.i, len(p.faults)
	defer func() { p.i, p.faults = start, p.faults[:faults] }()
	if !p.eat("continue", "cont") && !(p.eat("carry", "proceed", "keep") && p.tok().is("on", "going", "working", "repeating", "decreasing", "increasing", "in", "as", "with")) {
		return nil
	}
	p.i = start
	_, named := p.goingOnVerb()
	first, like := p.i, false
	for j, end := first, p.sentenceEnd(); j < end && p.toks[j].kind != tOpen && p.toks[j].kind != tStar; j++ {
		p.i = j
		like = like || p.tok().is(shapingVerbs...) || p.tok().is("way", "manner", "fashion")
		if like && p.tok().is("until", "till") {
			// "until you have 6 sc between increases"
		} else if u, f := p.until(); u == nil && f == nil && (j == first && !named || p.toRound() == nil) && !p.endingRow().Set {
			if _, _, ok := p.times(); !ok {
				continue
			}
		}
		p.i = end
		return fail(p.from(start), "vague", "cannot work out how these rounds go on",
			"Name the rounds that they repeat and the last of them: Rep Rows 3 and 4 until there are 24 rows.")
	}
	return nil
}

// keptVerbs are verbs for going on with rounds.
var keptVerbs = []string{"continue", "cont", "continuing", "proceed", "carry", "keep", "keeping", "carrying", "go", "going"}

// goingOnVerb reads "continue to work", "keep going", "carry on", "alternate", "rep", and tells
// whether it says that the rounds are gone on with, and whether that rounds follow.
func (p *parser) goingOnVerb() (kept, named bool) {
	kept = p.eat(keptVerbs...)
	if kept {
		p.eat("on", "going")
		p.eat("on", "to", "by", "with")
	}
	if p.tok().is("alternate", "alternating") && (p.at(1).is("colours", "colors", "colour", "color", "yarns", "shades", "the") || p.yarnAt(p.i+1)) {
		return kept, false // "Keep alternating colours"
	}
	named = p.eat("repeat", "rep", "repeating", "alternate", "alternating")
	if !named {
		if p.eat("work", "working", "crocheting", "stitching") && p.at(1).is("in", "as") {
			p.eat("even", "straight")
		}
	}
	return kept, named
}

// clause reads one clause of the sentence that begins at token start.
func (g *goingOn) clause(p *parser, start int, named bool) bool {
	at, faults := p.i, len(p.faults)
	if g.until == nil && !g.times.Set() {
		if u, f := p.until(); f == nil && u != nil && p.stopsHere() {
			g.until = u.(*Until)
			g.order = append(g.order, u)
			return true
		}
		p.i, p.faults = at, p.faults[:faults]
		if g.until = p.toRound(); g.until != nil {
			g.toRound = true
			g.order = append(g.order, g.until)
			return true
		}
		if g.until = p.moreTold(); g.until != nil {
			g.order = append(g.order, g.until)
			return true
		}
		p.eat("for")
		if n, _, ok := p.times(); ok {
			g.times = n
			p.orUntil()
			return true
		}
		p.i = at
	}
	if !g.end.Set {
		if g.end = p.endingRow(); g.end.Set {
			return true
		}
	}
	if it := p.inYarns(); it != nil {
		g.yarns, g.order = append(g.yarns, it), append(g.order, it)
		return true
	}
	if g.rounds == nil {
		if r := p.roundsInTurn(start, named && !g.way || g.way && p.at(-1).kind == tComma); r != nil {
			g.rounds, g.behind = r, p.i
			return true
		}
		if close := p.matching(p.i); g.way && p.tok().kind == tOpen && close > 0 {
			// "in pattern (Rows 2 and 3)"
			p.i++
			if r := p.roundsInTurn(start, true); r != nil && p.i == close {
				p.i = close + 1
				g.rounds, g.behind = r, p.i
				return true
			}
			p.i = at
		}
	}
	if p.wayOn() {
		g.way = true
		return true
	}
	p.i = at
	return false
}

// roundsInTurn reads "repeating Rows 3 and 4", "working the last 2 rows", "alternating between
// Rows 3 and 4" or, where the verb has been read, the rounds alone.
func (p *parser) roundsInTurn(start int, verb bool) *Ref {
	at, faults := p.i, len(p.faults)
	told := p.eat("repeating", "rep", "repeat", "working", "work", "alternating", "alternate", "repetition", "repeats", "following")
	if told && p.at(-1).is("repetition", "repeats") {
		p.eat("of")
	}
	if p.eat("between", "only", "just"); told || verb || p.i > at || p.toks[at-1].is("work", "working", "with") {
		words := p.i
		p.eat("the", "these", "that", "those")
		p.eat("last", "previous", "prev", "preceding")
		p.eat("just", "only")
		p.plainNumber()
		if _, round := roundWord(p.tok()); round && !p.tok().is("r") {
			p.i = words
			if it, f := p.referTo(start); f == nil && it != nil {
				if r := it.(*Ref); r.Piece == "" {
					return r
				}
			}
		}
	}
	p.i, p.faults = at, p.faults[:faults]
	return nil
}

// wayOn reads "in this way", "in stripe pattern as set", "as before", "like this".
func (p *parser) wayOn() bool {
	start := p.i
	if p.likeThis() || p.eat("thus", "likewise") {
		return true
	}
	if !p.eat("in", "as", "following") {
		return false
	}
	said := false
	for {
		switch {
		case p.eat("way", "manner", "fashion", "pattern", "patt", "pat", "set", "established", "est", "before", "sequence", "stripes", "order", "usual"):
			said = true
		case p.eat("this", "the", "that", "same", "your", "above", "given", "stripe", "striped", "striping", "colour", "color", "now", "so", "far", "as", "exactly", "just", "row", "two-row", "2-row"):
		default:
			if !said || p.tok().is("of", "repeat", "for") && !p.forSoLong() {
				p.i = start
				return false
			}
			return true
		}
	}
}

// toRound reads "to Row 17", "through Rnd 20", "up to and including the end of Row 9", "as far as
// Row 12": the last of the rounds that are gone on with.
func (p *parser) toRound() *Until {
	start := p.i
	if p.eatAll("as", "far", "as") || p.eat("up") && p.eat("to", "through") || p.eat("to", "through", "thru", "until", "till", "ending") {
		if p.at(-1).is("ending") {
			p.eat("at", "after", "with", "on")
		}
		if p.eat("and") && !p.eat("including") {
			p.i = start
			return nil
		}
		if p.eatKind(tComma); p.at(-1).kind == tComma && !p.eatAll("and", "including") {
			p.i = start
			return nil
		}
		if p.at(-1).is("until", "till") {
			p.reaching()
		}
		p.eat("the")
		if p.eat("end", "completion") && !p.eat("of") {
			p.i = start
			return nil
		}
		if p.eat("row", "round", "rnd", "rd") {
			if n, ok := p.num(); ok && !p.toks[start].is("ending") {
				for p.eat("inclusive", "included", "is", "has", "been", "complete", "completed", "worked", "done", "reached", "finished") {
				}
				return &Until{Span: p.from(start), Rows: n, Numbered: true, UpTo: p.upToRow(start), End: p.endingRow()}
			}
		} else if p.at(-1).is("to") {
			// "to 24 rows in all"
			n, ok := p.num()
			if _, round := roundWord(p.tok()); ok && round && !p.tok().is("r") {
				p.i++
				for p.eat("in", "total", "all", "altogether", "deep", "long", "high", "tall") {
				}
				return &Until{Span: p.from(start), Rows: n, End: p.endingRow()}
			}
		}
	}
	p.i = start
	return nil
}

// lastToRound takes "Rep Row 2 to Row 13" behind Row 2 for that row up to Row 13, not for rows
// that are still to come. Start is the token of its first number; what follows it is read as
// until when the rounds are gone on with.
func (p *parser) lastToRound(r *Ref, start int) {
	if len(r.Rounds) != 1 || r.Rounds[0].ToEnd || p.upTo == 0 {
		return
	}
	rg := &r.Rounds[0]
	if len(rg.From.Values) > 1 || rg.From.Values[0] != p.upTo || slices.Min(rg.To.Values) <= p.upTo {
		return
	}
	end := p.i
	p.i = start
	if p.num(); p.tok().is("to", "through", "thru", "until", "till") && p.toRound() != nil {
		p.i, rg.To = start, rg.From
		p.num()
		return
	}
	p.i = end
}

// reaching passes over "you reach", "you've finished", "you get to" before the last of the rounds
// that are gone on with.
func (p *parser) reaching() {
	start := p.i
	if !p.eat("you", "you've", "you’ve", "we", "we've", "we’ve") {
		return
	}
	p.eat("have")
	if p.eat("reach", "reached", "finish", "finished", "complete", "completed", "worked", "hit", "done") {
		return
	}
	if p.eat("get", "got", "come", "are", "is") && p.eat("to", "through", "at", "up") {
		p.eat("to")
		return
	}
	p.i = start
}

// moreTold reads "10 more rows", "another 4 rounds".
func (p *parser) moreTold() *Until {
	start := p.i
	more := p.eat("another", "a")
	if p.at(-1).is("a") && p.i > start {
		more = p.eat("further")
	}
	n, ok := p.num()
	more = p.eat("more", "further", "additional", "extra") || more
	if _, round := roundWord(p.tok()); ok && more && round && !p.tok().is("r") {
		p.i++
		p.eat("more")
		return &Until{Span: p.from(start), Rows: n, More: true, End: p.endingRow()}
	}
	p.i = start
	return nil
}

// soLongAhead reports whether until when rounds are gone on with comes next: "until …", "to Row
// 17", "for 10 more rows", "5 more times", "ending with Row 3".
func (p *parser) soLongAhead() bool {
	start := p.i
	defer func() { p.i = start }()
	if p.tok().is("until", "till") || p.tok().is("for") && p.forSoLong() || p.toRound() != nil || p.moreTold() != nil || p.endingRow().Set {
		return true
	}
	_, _, ok := p.times()
	return ok
}

// stopsHere reports whether a clause may end here.
func (p *parser) stopsHere() bool {
	return p.ended() || p.tok().first || p.soLongAhead() || p.tok().is("in", "while", "working", "repeating", "changing", "alternating", "keeping", "following", "as")
}

// inYarns reads in which yarns rounds are worked that go on: a note where they change, the
// colour where it is the same for all of them; nil for other words.
func (p *parser) inYarns() Item {
	start := p.i
	if p.coloursInTurn() || p.stripes() || p.yarnsInTurn() || p.yarnWhenNeeded() {
		if p.at(-1).kind == tComma {
			p.i--
		}
		return &Note{Span: p.from(start), Text: p.words(start)}
	}
	if p.eat("in", "with", "using") {
		if name, ok := p.yarn(); ok && (p.ended() && !p.stripeAt(p.i+1) || p.tok().first || p.soLongAhead()) {
			return &Colour{p.from(start), name}
		}
		p.i = start
	}
	return nil
}

// yarnsInTurn reads "alternating A and B", "alternate colours as set", "switching between the two
// colours", "in A and B alternately", "using A, B and C in turn".
func (p *parser) yarnsInTurn() bool {
	start := p.i
	turns := p.eat("alternating", "alternate", "switching", "changing", "swapping", "rotating")
	if !turns && !p.eat("using", "working", "with", "in", "keeping", "following") {
		return false
	}
	p.eat("in", "with", "between", "from", "to", "through")
	yarns := 0
	for i := p.i; ; {
		p.eat("the", "two", "2", "both", "three", "all", "your", "of")
		switch {
		case p.soLongAhead():
		case p.eat("colours", "colors", "yarns", "shades", "colour", "color", "stripe", "stripes", "yarn") && !p.yarnAt(p.i):
			yarns += 2
		case p.yarnAt(p.i):
			if _, ok := p.yarn(); !ok {
				p.yarnName()
			}
			yarns++
		case p.tok().kind == tWord && len(p.tok().raw) == 1 && capital(p.tok().raw), p.tok().kind == tWord && capital(p.tok().raw) && !p.tok().first && p.vocab.near(p.tok().text) == "" && !p.stitchy(p.i, p.i+1):
			p.i++
			yarns++
		}
		if p.i == i {
			break
		}
		at := p.i
		for p.eatKind(tComma) || p.eatKind(tSlash) || p.eat("and", "then", "&") {
		}
		if i = p.i; !(p.yarnAt(p.i) || p.tok().kind == tWord && capital(p.tok().raw) && !p.tok().first) {
			p.i = at
			break
		}
	}
	for p.eat("in", "as", "turn", "alternately", "alternating", "throughout", "set", "established", "before", "sequence", "order", "every", "each", "row", "rnd", "round", "time", "rows", "rounds", "rnds", "other", "at", "the", "end", "start", "same", "way", "colour", "color", "changes", "on") {
		turns = turns || p.at(-1).is("turn", "alternately", "alternating")
	}
	if !turns || yarns < 2 || !p.ended() && !p.tok().first && !p.soLongAhead() {
		p.i = start
		return false
	}
	return true
}
