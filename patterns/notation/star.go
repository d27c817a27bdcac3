package notation

import (
	"whorl/patterns/fault"
)

// star is a repeat begun with a star and not yet wrapped.
type star struct {
	mark  string // as written: * or ** or †
	tok   int    // the token, for messages
	start int    // the item it stands before
	end   int    // the item it is closed before, -1 while open
}

type blockStar struct {
	star
	wrapped bool
	items   []Item // what was wrapped
}

// toStop reports whether what was repeated has a ** in it, so that it can be
// repeated once more up to there.
func (s *blockStar) toStop() bool {
	for _, it := range s.items {
		if _, ok := it.(*Stop); ok && s.wrapped {
			return true
		}
	}
	return false
}

// star reads a star: the beginning of a repeat, its end, or the ** inside.
func (b *block) star() *fault.Fault {
	p := b.p
	t := p.tok()
	mark := t.text
	var same *blockStar
	for _, s := range b.stars {
		if s.mark == mark && !s.wrapped && s.end < 0 {
			same = s
		}
	}
	if same != nil && len(b.items) > same.start {
		if same.end = len(b.items); !p.starTimes() { // "*sc, inc*6"
			p.i++
		}
		at := p.i
		p.eatKind(tComma)
		p.eatKind(tSemi)
		rep := p.eat("rep", "repeat")
		if p.eat("from", "between") || rep && p.tok().kind == tStar {
			p.i = at
			return nil
		}
		r := &Repeat{Star: true}
		if n, more, ok := p.inAllTimes(); ok {
			r.Times, r.More = n, more
		} else if e, ok := p.extent(); ok {
			r.Extent = e
		} else if k := p.tok().kind; rep && p.depth <= 1 && (p.ended() && k != tClose || k == tEqual) {
			r.Extent = Extent{Sort: ToEnd, Text: "around"} // "*…*, repeat."
		} else if rep {
			return p.stuck()
		} else {
			p.i = at
			return nil
		}
		r.Span = p.from(at)
		b.wrap(same, r)
		return p.ending(r)
	}
	if len(mark) > 1 && !p.starRepeated(mark) {
		open := false
		for _, s := range b.stars {
			open = open || !s.wrapped
		}
		if !open {
			return p.failAt(p.i, "star", "this "+mark+" stands outside any repeat",
				"Mark where the repeat begins with *.")
		}
		p.i++
		b.add(&Stop{Span{t.pos, t.length}})
		return nil
	}
	b.stars = append(b.stars, &blockStar{star: star{mark: mark, tok: p.i, start: len(b.items), end: -1}})
	p.i++
	return nil
}

// starRepeated reports whether the round says "rep from" the mark, which makes
// a double star the beginning of a repeat rather than a stop inside one.
func (p *parser) starRepeated(mark string) bool {
	for j := p.i + 1; j+1 < len(p.toks); j++ {
		if p.toks[j].is("from") && p.toks[j+1].kind == tStar && p.toks[j+1].text == mark {
			return true
		}
	}
	return false
}

// starOpen reports whether a repeat that was begun with * is still to be closed, so that the star
// that comes next closes it; where "rep from *" is told behind that, it does not.
func (p *parser) starOpen() (open bool) {
	for j := p.i + 1; j < len(p.toks); j++ {
		if p.toks[j].kind == tStar {
			if p.toks[j-1].is("from") {
				return false
			}
			break
		}
	}
	for j := range p.toks[:p.i] {
		if t := &p.toks[j]; t.kind == tStar && t.text == "*" {
			told := j > 0 && (p.toks[j-1].is(repeating...) || p.toks[j-1].is("from", "between", "to", "and", "first", "the"))
			open = !told && !open
		}
	}
	return open
}

// starTimes makes a sign of times of a star that a number stands behind: "inc*6", "(inc, sc) * 3".
// In "*sc, inc* 6 (7, 8) times" the star is one.
func (p *parser) starTimes() bool {
	if t := p.tok(); t.kind != tStar || t.text != "*" || p.at(1).kind != tNumber {
		return false
	}
	switch p.at(2).kind {
	case tEnd, tStop, tOpen, tComma, tSemi, tClose, tEqual, tDash, tSlash:
	default:
		return false
	}
	at, faults := p.i, len(p.faults)
	p.i++
	p.num()
	times := p.timesWord() || p.eat("more")
	p.i, p.faults = at, p.faults[:faults]
	if !times {
		p.tok().kind = tTimes
	}
	return !times
}

// wrap makes the items since the star the body of r.
func (b *block) wrap(s *blockStar, r *Repeat) {
	end := len(b.items)
	if s.end >= 0 {
		end = s.end
	}
	r.Items = append([]Item(nil), b.items[s.start:end]...)
	rest := append([]Item(nil), b.items[end:]...)
	b.items = append(append(b.items[:s.start:s.start], r), rest...)
	s.wrapped, s.items = true, r.Items
	// Stars that stood inside are wrapped or were left open: those are
	// reported at the end.
	for _, o := range b.stars {
		if !o.wrapped && o.start > s.start {
			o.start = len(b.items)
		}
	}
}

// repeating are the words that a repeat is told with.
var repeating = []string{"rep", "repeat", "repeating", "reps"}

// onceMore reads what was repeated before and is repeated again without that word: "then from * to **
// once", "then work once from * to **", "and * to ** once more".
func (b *block) onceMore() (bool, *fault.Fault) {
	p := b.p
	start := p.i
	p.eat("work", "working")
	p.timesBeforeStar()
	from := p.eat("from", "between")
	if from {
		p.eat("the", "first")
		p.eat("first")
	}
	if len(b.stars) == 0 || p.tok().kind != tStar || !from && !(p.at(1).is("to") && p.at(2).kind == tStar) {
		p.i = start
		return false, nil
	}
	p.i = start
	p.work = true
	return true, b.repeat()
}

// timesBeforeStar reads "once" of "once from * to **"; not set where no star is named behind it.
func (p *parser) timesBeforeStar() Num {
	start := p.i
	if n, _, ok := p.times(); ok && (p.tok().kind == tStar || p.tok().is("from", "between") && (p.at(1).kind == tStar || p.at(1).is("the", "first"))) {
		return n
	}
	p.i = start
	return Num{}
}

// repeat reads "rep from * around", "rep from * 5 more times", "rep rnd 3".
func (b *block) repeat() *fault.Fault {
	p := b.p
	start := p.i
	p.eat("work", "working")
	p.eat(repeating...)
	words := p.i
	if it, f := p.refer(); f != nil {
		return f
	} else if it != nil {
		b.add(it)
		b.apart()
		return nil
	}
	p.i = words
	if p.tok().kind == tOpen && p.multiplied(max(p.matching(p.i), 0)+1) {
		// "Repeat (inc, sc) 3 times"
		return b.bracket(nil)
	}
	p.eat("instructions", "directions", "sequence", "pattern")
	early := p.timesBeforeStar()
	hasFrom := p.eat("from", "between")
	if hasFrom && p.fromBeginning() {
		return b.repeatRound(start)
	}
	between := hasFrom && p.at(-1).is("between")
	p.eat("the", "first")
	p.eat("first")
	mark, markTok := "*", p.i
	if p.tok().kind == tStar {
		mark = p.tok().text
		p.i++
		if p.tok().is("s") || p.tok().kind == tQuote {
			p.i++
		}
		p.eat("s")
	} else if hasFrom {
		return p.failAt(p.i, "star", "the words do not say from where to repeat", "Write, for example: rep from * around.")
	}
	var from *blockStar
	for _, s := range b.stars {
		if s.mark == mark && !s.wrapped {
			from = s
		}
	}
	if from == nil {
		for _, s := range b.stars {
			if s.mark == mark && s.toStop() {
				from = s
			}
		}
	}
	toStop, again := false, false
	if from == nil || from.wrapped {
		// "*…*; rep from * to * twice, …; rep from * to * across": the passage
		// once more.
		at := p.i
		if p.eat("to", "and") && p.tok().kind == tStar && p.tok().text == mark {
			for _, s := range b.stars {
				if s.mark == mark && s.wrapped && s.end >= 0 {
					from, again = s, true
				}
			}
		}
		p.i = at
	}
	if from == nil && !hasFrom {
		at := p.i
		p.i = words
		if ok, f := b.passage(start); ok || f != nil {
			return f
		}
		p.i = at
	}
	if from == nil && !hasFrom && markTok == p.i && len(b.stars) == 0 && len(b.items) > 0 {
		// "sc 1, inc, repeat x 7": all of it
		if n, more, ok := p.times(); ok {
			r := &Repeat{Items: b.items, Times: n, More: more, Span: p.from(start)}
			b.items = []Item{r}
			return p.ending(r)
		}
	}
	if from == nil {
		if !hasFrom && p.tok().kind != tStar {
			markTok = start
		}
		return p.failAt(markTok, "star", "there is no "+mark+" before this to repeat from",
			"Mark where the repeat begins with "+mark+".")
	}
	if !hasFrom {
		p.eat("this", "it", "that")
	}
	if between && (p.eat("and") || p.tok().kind == tStar) || p.tok().is("to") && p.at(1).kind == tStar {
		p.eat("to")
		if p.tok().kind == tStar {
			toStop = p.tok().text != mark
			p.i++
			if !toStop && !from.wrapped && from.end >= 0 && from.end < len(b.items) {
				// "*…*, 7 dc in corner st; rep from * to * once more": the passage
				// again, behind what follows it.
				from.wrapped, from.items, again = true, append([]Item(nil), b.items[from.start:from.end]...), true
			}
		}
		p.eat("s")
	}
	if from.wrapped && !toStop && !again {
		return p.failAt(markTok, "star", "there is no "+mark+" before this to repeat from",
			"Mark where the repeat begins with "+mark+".")
	}
	r := &Repeat{Star: true}
	if at := p.i; p.eat("for", "in") && p.eat("each", "every") {
		// "rep from * for each fan around"
		if _, ok := p.target(); !ok {
			p.eat(headings...)
		}
		if !p.tok().is("around", "across") {
			p.i = at
		}
	}
	p.eat("for")
	if p.eat("a") {
		p.eat("total")
		p.eat("of")
	}
	total := p.at(-1).is("of")
	back := p.i
	p.eatKind(tComma)
	if p.overSides(r) {
		// "rep from * on all 4 sides"
	} else if n, more, ok := p.times(); ok {
		// After "rep from *" the first time has been worked already, said or
		// not; only "6 times in all" counts it.
		r.Times, r.More = n, more || !p.at(-1).is("total", "all", "altogether") && !total
		p.eat("around", "across")
	} else if at := p.i; (toStop || again) && p.eat("again", "only") {
		r.Times = Num{Span: p.from(at), Values: []int{1}}
	} else if early.Set() {
		p.i, r.Times, r.More = back, early, true
	} else if e, ok := p.extent(); ok {
		r.Extent = e
	} else if p.lastSide() {
		r.Extent = Extent{Sort: ToEnd}
	} else if p.closesAhead() || p.endingAhead() {
		// "rep from *, ending with sc in last st", "rep from *, sl st to first puff": all round
		p.i = back
		r.Extent = Extent{Sort: ToEnd, Text: "around"}
	} else if k := p.tok().kind; p.depth <= 1 && (k == tComma || k == tStop || k == tSemi || k == tEnd || k == tOpen ||
		(k == tEqual || k == tDash) && p.at(1).kind == tNumber || p.tok().is("join", "turn")) {
		// "rep from *, join", "rep * to * = 18 sc": all round, as far as it goes
		p.i = back
		r.Extent = Extent{Sort: ToEnd, Text: "around"}
	} else {
		return p.failAt(start, "how-often", "the words do not say how often to repeat",
			"Write, for example: rep from * around, or: rep from * 5 more times.")
	}
	r.Span = p.from(start)
	if toStop {
		// The first time has been worked to its end; what is repeated stops
		// at the mark, so it stands after it on its own.
		items := b.items[from.start:]
		if from.wrapped {
			items = from.items
		}
		for i, it := range items {
			if _, ok := it.(*Stop); ok {
				r.Items = append([]Item(nil), items[:i]...)
				from.wrapped, from.items = true, items
				r.More = false
				b.add(r)
				return p.ending(r)
			}
		}
	}
	if again {
		r.Items = append([]Item(nil), from.items...)
		r.More = false
		b.add(r)
		return p.ending(r)
	}
	b.wrap(from, r)
	return p.ending(r)
}

// lastSide reads "to last side": as often as leaves room for what is worked there.
func (p *parser) lastSide() bool {
	start := p.i
	if p.eat("to", "until") {
		p.eat("the")
		if p.eat("last", "final") && p.eat("side", "edge") {
			return true
		}
	}
	p.i = start
	return false
}
