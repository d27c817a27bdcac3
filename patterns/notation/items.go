package notation

import (
	"fmt"

	"whorl/patterns/fault"
)

// star is a repeat begun with a star and not yet wrapped.
type star struct {
	mark  string // as written: * or ** or †
	tok   int    // the token, for messages
	start int    // the item it stands before
	end   int    // the item it is closed before, -1 while open
}

// items reads instructions up to the end of the round, or up to the closing
// bracket.
func (p *parser) items(bracket bool) ([]Item, *fault.Fault) {
	if p.depth++; p.depth > maxDepth {
		return nil, p.failAt(p.i, "nesting", fmt.Sprintf("more than %d brackets and repeats inside each other", maxDepth),
			"Name the inner part as a stitch of its own under stitches:.")
	}
	defer func() { p.depth-- }()
	b := &block{p: p}
	sentence := true
	for {
		switch t := p.tok(); {
		case t.kind == tEnd || t.kind == tClose && bracket:
			for _, s := range b.stars {
				if !s.wrapped {
					return b.items, p.failAt(s.tok, "star", "this "+s.mark+" is never repeated",
						"Add, for example: rep from "+s.mark+" around.")
				}
			}
			return b.items, nil
		case t.kind == tStop, t.kind == tColon && !sentence:
			p.i++
			sentence = true
			continue
		case t.kind == tComma, t.kind == tSemi, t.is("then", "and", "now", "so", "but"), t.kind == tPlus, t.kind == tColon:
			p.i++
			continue
		case t.is("loosely", "tightly", "firmly", "snugly", "carefully") && !b.p.instructs(p.i):
			p.i++
			continue
		case t.kind == tDash || t.kind == tEqual || t.kind == tQuote:
			p.i++
			sentence = true
			continue
		}
		before, counts := p.i, len(p.stated)
		if f := b.next(sentence || p.tok().first); f != nil {
			if p.defining && sentence && len(b.items) > 0 {
				// What follows the words of a stitch is advice.
				p.i = before
				end := p.sentenceEnd()
				p.note(b, before, end)
				continue
			}
			return b.items, f
		}
		if len(p.stated) > counts {
			sentence = true
			continue
		}
		if p.i == before {
			return b.items, p.stuck()
		}
		sentence = false
	}
}

// block is a run of instructions at one depth of brackets.
type block struct {
	p     *parser
	items []Item
	stars []*blockStar
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

// addStitches adds stitches; those that are "all in" one place take the ones
// before them along, and "working 3 sc in each corner" belongs to the each
// before it.
func (b *block) addStitches(s *Stitches) {
	if len(s.Places) == 1 && s.Places[0].All {
		from := len(b.items)
		for i := len(b.items) - 1; i >= 0; i-- {
			if st, ok := b.items[i].(*Stitches); ok && len(st.Places) == 0 {
				from = i
			} else if _, ok := b.items[i].(*Chain); !ok {
				break
			}
		}
		if from < len(b.items) {
			places := s.Places
			s.Places = nil
			g := &Group{Span: s.Span, Items: append(append([]Item(nil), b.items[from:]...), s), Place: places}
			b.items = append(b.items[:from:from], g)
			return
		}
	}
	// "sc in each dc around, 3 sc in each corner sp": the corners are among
	// what has been gone round already.
	if len(s.Places) == 1 && s.Places[0].Pick == Each && s.Places[0].Target.Sort == ChainSpace && len(b.items) > 0 {
		if last, ok := b.items[len(b.items)-1].(*Stitches); ok && len(last.Places) > 0 {
			if pl := last.Places[len(last.Places)-1]; pl.Pick == Each && pl.Extent.Sort == ToEnd {
				last.But = append(last.But, s)
				return
			}
		}
	}
	b.add(s)
}

// exception reads "working 3 sc in each corner", an exception to the each
// before it.
func (b *block) exception() bool {
	p := b.p
	start := p.i
	if len(b.items) == 0 || !p.eat("working", "making", "with", "placing", "but") {
		return false
	}
	last, ok := b.items[len(b.items)-1].(*Stitches)
	if !ok || len(last.Places) == 0 || last.Places[len(last.Places)-1].Pick != Each {
		p.i = start
		return false
	}
	var but Item
	if p.tok().kind == tOpen {
		p.i = start
		return false
	}
	but, ok = p.stitches()
	s, _ := but.(*Stitches)
	if !ok || len(s.Places) != 1 || s.Places[0].Pick != Each && (s.Places[0].Pick != Next || s.Places[0].Target.Sort != ChainSpace) {
		p.i = start
		return false
	}
	last.But = append(last.But, s)
	return true
}

func (b *block) add(i Item) { b.items = append(b.items, i) }

// next reads one instruction. At the beginning of a sentence it may be advice
// or, at the end of the round, a count.
func (b *block) next(sentence bool) *fault.Fault {
	p := b.p
	if p.trailingCount(sentence) {
		return nil
	}
	if f := p.vague(); f != nil {
		return f
	}
	if sentence && p.advice(b) {
		return nil
	}
	p.eat(adverbs...)
	switch t := p.tok(); {
	case t.kind == tStar:
		return b.star()
	case t.kind == tOpen:
		return b.bracket(nil)
	case t.is("rep", "repeat", "repeating", "reps"):
		p.work = true
		return b.repeat()
	}
	start := p.i
	for _, read := range []func() (Item, *fault.Fault){
		p.evenShaping, p.otherSide, p.turn, p.join, p.fasten, p.ring, p.counts, p.skip, p.loops, p.refer, p.until,
		p.colour, p.marker,
	} {
		item, f := read()
		if f != nil {
			return f
		}
		if item != nil {
			if _, ok := item.(*Ref); ok {
				p.work = true
			}
			b.add(item)
			return nil
		}
		p.i = start
	}
	if b.exception() || p.aside(b) {
		return nil
	}
	if p.eat("work", "make", "working", "crochet", "do", "worked", "complete", "begin", "start") {
		p.eat("with", "by")
		p.eat("a", "an")
		if p.tok().kind == tColon {
			p.i++
		}
		if p.tok().kind == tEnd {
			return p.stuck()
		}
		return b.next(false)
	}
	// "in next sp, work (…)": the place comes first.
	if p.tok().is("starting", "beg", "beginning") && p.at(1).is("in", "with") {
		p.i++
	}
	if p.tok().is("in", "into", "over") {
		if places := p.places(false); places != nil {
			if it, f, ok := b.placeFirst(start, places); ok {
				if f == nil && it != nil {
					b.add(it)
				}
				return f
			}
		}
		p.i = start
	}
	if c := p.chain(); c != nil {
		b.add(c)
		return nil
	}
	if s, ok := p.stitches(); ok {
		b.addStitches(s.(*Stitches))
		if p.said != nil {
			b.add(p.said)
			p.said = nil
		}
		return nil
	}
	p.i = start
	if p.clauseAdvice(b) {
		return nil
	}
	return p.stuck()
}

// placeFirst goes on after "in next ch-2 sp": a stitch, a group, or, for the
// ring, all that follows.
func (b *block) placeFirst(start int, places []Place) (Item, *fault.Fault, bool) {
	p := b.p
	p.eatKind(tComma)
	p.eatKind(tColon)
	p.eat("work", "make")
	p.eatKind(tColon)
	if len(places) == 1 && places[0].Target.Sort == Ring {
		return &In{Span: p.from(start), Place: places[0]}, nil, true
	}
	if p.tok().kind == tOpen {
		return nil, b.bracket(places), true
	}
	at := p.i
	if s, ok := p.stitches(); ok {
		st := s.(*Stitches)
		switch {
		case st.Places == nil:
			st.Places = places
		case places[0].Target.Sort == FromHook && st.Places[0].Pick == Each:
			// "starting in 2nd ch from hook, sc in each ch across"
			st.Places = append(places, st.Places...)
		default:
			p.i = at
			return nil, nil, false
		}
		st.Span = p.from(start)
		return st, nil, true
	}
	p.i = at
	return nil, nil, false
}

// bracket reads what stands in brackets: a count, what something counts as,
// advice, a group in one place or a repeat. Places are set when they were
// written before it.
func (b *block) bracket(places []Place) *fault.Fault {
	p := b.p
	open := p.i
	close := p.matching(open)
	if close < 0 {
		return p.failAt(open, "bracket", "this bracket is never closed", "Add the closing bracket.")
	}
	if places == nil && !p.multiplied(close+1) {
		p.i = open + 1
		if s := p.statedUpTo(close); s != nil {
			s.Span = Span{p.toks[open].pos, p.toks[close].pos.Column - p.toks[open].pos.Column + 1}
			if p.toks[close].pos.Line != p.toks[open].pos.Line {
				s.Length = p.toks[open].length
			}
			p.stated = append(p.stated, s)
			p.i = close + 1
			return nil
		}
		p.i = open + 1
		if c, _ := p.counts(); c != nil {
			p.i = close + 1
			b.attach(c.(*Counts))
			return nil
		}
		p.i = open + 1
		if w, ok := p.what(); ok && p.i == close && len(b.items) > 0 && !w.Beg {
			// "6 foundation single crochet (fsc)": its abbreviation.
			p.i = close + 1
			return nil
		}
		p.i = open + 1
		if !p.stitchy(open+1, close) || p.madeNote(open+1, close) || !p.instructs(open+1) {
			p.i = close + 1
			b.add(&Note{p.from(open), p.words(open)})
			return nil
		}
	}
	p.i = open + 1
	inner, f := p.items(true)
	if f != nil {
		return f
	}
	if p.i != close {
		return p.stuck()
	}
	p.i++
	if len(inner) == 0 {
		return p.failAt(open, "bracket", "there is nothing to work in these brackets", "")
	}
	return b.afterBracket(open, inner, places)
}

// afterBracket reads what is to be done with a bracketed group.
func (b *block) afterBracket(open int, inner []Item, places []Place) *fault.Fault {
	p := b.p
	if places != nil {
		b.add(&Group{Span: p.from(open), Items: inner, Place: places})
		return nil
	}
	if p.tok().is("to", "until") {
		// "[…] to last 2 sts" goes on; it is no place.
		at := p.i
		if e, ok := p.extent(); ok {
			r := &Repeat{Items: inner, Extent: e, Span: p.from(at)}
			b.add(r)
			return p.ending(r)
		}
		p.i = at
	}
	if l := p.places(false); l != nil {
		g := &Group{Items: inner, Place: l}
		if n, more, ok := p.times(); ok && !more {
			g.Times = n
		}
		g.Span = p.from(open)
		b.add(g)
		return nil
	}
	tail := p.i
	if p.defining && (p.tok().kind == tEnd || p.tok().kind == tStop) {
		// The definition of a stitch in brackets: all in one place.
		b.add(&Group{Span: p.from(open), Items: inner, Place: []Place{{Span: p.from(open), Pick: Same}}})
		return nil
	}
	p.eatKind(tComma)
	p.eatKind(tSemi)
	p.eat("rep", "repeat", "repeated")
	if p.tok().kind == tStar && p.tok().text == "*" && p.at(1).kind == tNumber {
		p.tok().kind = tTimes // (inc, sc) * 3
	}
	p.eat("across", "around")
	if p.at(-1).is("across", "around") {
		p.i--
	}
	r := &Repeat{Items: inner}
	if n, more, ok := p.times(); ok {
		r.Times, r.More = n, more
		r.Span = p.from(tail)
		if l := p.places(false); l != nil {
			b.add(&Group{Span: p.from(open), Items: []Item{r}, Place: l})
			return nil
		}
		p.eat("around", "across")
		b.add(r)
		return p.ending(r)
	}
	if e, ok := p.extent(); ok {
		r.Extent = e
		r.Span = p.from(tail)
		b.add(r)
		return p.ending(r)
	}
	p.i = tail
	return p.failAt(open, "how-often", "the words do not say what to do with this bracket",
		"Say how often, for example: [ … ] 6 times, or [ … ] around;\nor where, for example: ( … ) in next st.")
}

// multiplied reports whether token i says how often or where, so that the
// bracket before it is an instruction.
func (p *parser) multiplied(i int) bool {
	at := p.i
	defer func() { p.i = at }()
	p.i = i
	t := p.tok()
	switch {
	case t.is("in", "into", "around", "across", "evenly", "over", "twice", "once", "between", "thrice", "each"),
		t.kind == tTimes:
		return true
	case t.kind == tStar && t.text == "*" && p.at(1).kind == tNumber:
		end := p.at(2)
		return end.kind == tEnd || end.kind == tStop || end.kind == tOpen || end.kind == tComma || end.kind == tSemi || end.kind == tClose
	case t.is("rep", "repeat", "repeated"):
		// "(sc, inc) repeat 6 times", but not "(72 sts); rep from *" or
		// "(12 sc) rep rnd 2".
		p.i++
		if _, _, ok := p.times(); ok {
			return true
		}
		return p.tok().is("around", "across", "to")
	case t.is("to", "until"):
		_, ok := p.extent()
		return ok
	}
	_, _, ok := p.times()
	return ok
}

// attach gives what a bracket says of a chain or group to the item before it.
func (b *block) attach(c *Counts) {
	for i := len(b.items) - 1; i >= 0 && !c.Half; i-- {
		switch it := b.items[i].(type) {
		case *Chain:
			if it.Counts == nil {
				it.Counts = c
				return
			}
		case *Turn, *Note:
			continue
		}
		break
	}
	b.add(c)
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
		p.i++
		same.end = len(b.items)
		at := p.i
		p.eatKind(tComma)
		p.eatKind(tSemi)
		rep := p.eat("rep", "repeat")
		if p.eat("from", "between") {
			p.i = at
			return nil
		}
		r := &Repeat{Star: true}
		if n, more, ok := p.times(); ok {
			r.Times, r.More = n, more
		} else if e, ok := p.extent(); ok {
			r.Extent = e
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

// repeat reads "rep from * around", "rep from * 5 more times", "rep rnd 3".
func (b *block) repeat() *fault.Fault {
	p := b.p
	start := p.i
	p.i++
	if it, f := p.refer(); f != nil {
		return f
	} else if it != nil {
		b.add(it)
		return nil
	}
	p.i = start + 1
	if p.tok().kind == tOpen && p.multiplied(max(p.matching(p.i), 0)+1) {
		// "Repeat (inc, sc) 3 times"
		return b.bracket(nil)
	}
	p.eat("instructions", "directions", "sequence", "pattern")
	hasFrom := p.eat("from", "between")
	between := hasFrom && p.at(-1).is("between")
	p.eat("the", "first")
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
	if from == nil {
		if !hasFrom && p.tok().kind != tStar {
			markTok = start
		}
		return p.failAt(markTok, "star", "there is no "+mark+" before this to repeat from",
			"Mark where the repeat begins with "+mark+".")
	}
	toStop := false
	if between && p.eat("and") || p.tok().is("to") && p.at(1).kind == tStar {
		p.eat("to")
		if p.tok().kind == tStar {
			toStop = p.tok().text != mark
			p.i++
		}
		p.eat("s")
	}
	if from.wrapped && !toStop {
		return p.failAt(markTok, "star", "there is no "+mark+" before this to repeat from",
			"Mark where the repeat begins with "+mark+".")
	}
	r := &Repeat{Star: true}
	p.eat("for")
	if p.eat("a") {
		p.eat("total")
		p.eat("of")
	}
	total := p.at(-1).is("of")
	p.eatKind(tComma)
	if n, more, ok := p.times(); ok {
		// After "rep from *" the first time has been worked already, said or
		// not; only "6 times in all" counts it.
		r.Times, r.More = n, more || !p.at(-1).is("total", "all", "altogether") && !total
		p.eat("around", "across")
	} else if e, ok := p.extent(); ok {
		r.Extent = e
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
	b.wrap(from, r)
	return p.ending(r)
}

// ending reads what may follow a repeat: "ending last rep at **", "omitting
// last ch 2", "ending last rep with …".
func (p *parser) ending(r *Repeat) *fault.Fault {
	start := p.i
	for p.tok().kind == tComma || p.tok().kind == tSemi || p.tok().is("and", "but") {
		p.i++
	}
	lastRep := func() bool {
		p.eat("on", "of", "in")
		p.eat("the")
		if p.eat("last", "final") {
			if p.eat("rep", "repeat", "time") {
				return true
			}
			p.i--
		}
		return false
	}
	switch {
	case p.eat("ending", "end", "stopping", "stop", "finishing"):
		said := lastRep()
		if p.eat("at", "after", "before") {
			if p.tok().kind == tStar {
				at := p.i
				p.i++
				lastRep()
				r.AtStop = true
				for _, it := range r.Items {
					if _, ok := it.(*Stop); ok {
						return nil
					}
				}
				return p.failAt(at, "star", "there is no "+p.toks[at].text+" inside this repeat to end at",
					"Mark the point inside the repeat with "+p.toks[at].text+".")
			}
		} else if said && p.eat("with") {
			items, f := p.endingItems()
			r.Ending = items
			return f
		} else if !said && p.eat("with") {
			// "ending with sc in last st": goes on after the last repeat.
			return nil
		}
	case p.eat("omitting", "omit", "leaving", "leave"):
		p.eat("out", "off")
		p.eat("the")
		p.eat("last", "final")
		at := p.i
		if _, ok := p.num(); !ok {
			p.i = at
		}
		if p.chain() != nil || p.tok().kind == tHyphen {
			lastRep()
			r.Omit = 1
			return nil
		}
		if _, ok := p.stitches(); ok {
			lastRep()
			r.Omit = 1
			return nil
		}
		if p.eat("after") && p.tok().kind == tStar {
			p.i++
			r.AtStop = true
			return nil
		}
		return p.stuck()
	}
	p.i = start
	return nil
}

// endingItems reads the instructions that replace the end of a last repeat: up
// to the end of the sentence or the join.
func (p *parser) endingItems() ([]Item, *fault.Fault) {
	b := &block{p: p}
	for {
		for p.tok().kind == tComma || p.tok().is("and", "then") {
			p.i++
		}
		t := p.tok()
		if t.kind == tEnd || t.kind == tStop || t.kind == tSemi || t.kind == tClose || t.is("join", "turn") {
			return b.items, nil
		}
		before := p.i
		if f := b.next(false); f != nil {
			return b.items, f
		}
		if p.i == before {
			return b.items, p.stuck()
		}
	}
}
