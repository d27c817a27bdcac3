package notation

import (
	"fmt"

	"whorl/patterns/fault"
)

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
			b.begin()
			continue
		case t.is("now", "so", "but", "then") && t.first:
			p.i++
			sentence = true
			continue
		case t.is("followed") && p.at(1).is("by"):
			p.i += 2
			continue
		case t.kind == tSemi && b.ends():
			p.i++
			sentence = true
			continue
		case t.kind == tComma, t.kind == tSemi, t.is("then", "and", "now", "so", "but"), t.kind == tPlus, t.kind == tColon:
			p.i++
			continue
		case t.is("loosely", "tightly", "firmly", "snugly", "carefully") && !b.p.instructs(p.i):
			p.i++
			continue
		case t.is("not", "but") && p.notTightly():
			continue
		case t.kind == tDash || t.kind == tEqual || t.kind == tQuote:
			if t.kind == tDash && !bracket && p.trailingCount(true) {
				sentence = true // "- (64, 72) sts": none in the smallest size
				continue
			}
			p.i++
			sentence = true
			continue
		}
		before, counts := p.i, len(p.stated)
		if sentence || p.tok().first {
			b.from = sentenceStart{before, len(b.items), counts, len(b.stars)}
		}
		if f := b.next(sentence || p.tok().first); f != nil {
			if p.defining && len(b.items) > 0 && (sentence || p.relative(before)) {
				// What follows the words of a stitch is advice.
				p.i = before
				end := p.sentenceEnd()
				p.note(b, before, end)
				continue
			}
			if sentence && !p.defining && f.Code == "not-understood" && f.Pos == p.toks[before].pos && p.isProse(before) {
				p.i = before
				p.note(b, before, p.sentenceEnd())
				continue
			}
			if b.doubtful(before, sentence, f) {
				sentence = false
				continue
			}
			if !bracket && b.looseLine(f) {
				sentence = true
				continue
			}
			p.i = before
			return b.items, f
		}
		if len(p.stated) > counts {
			sentence = true
			b.ofSeam(p.stated[counts:])
			p.roundsSaid(b)
			continue
		}
		if p.i == before {
			return b.items, p.stuck()
		}
		sentence = b.behindHeading()
	}
}

// block is a run of instructions at one depth of brackets.
type block struct {
	p     *parser
	items []Item
	stars []*blockStar
	// sentence is the item that the sentence begins with, before that of the sentence
	// before it.
	sentence, before int
	// from is where the sentence that is being read begins.
	from sentenceStart
	// told are the stitches that went into a place by its number last, and toldNth that number:
	// "1 dc in first st".
	told    *Stitches
	toldNth int
	// last is set for what a round or a row is said to end with.
	last bool
}

// begin notes that a sentence begins.
func (b *block) begin() {
	if n := len(b.items); n > b.sentence {
		b.before, b.sentence = b.sentence, n
	}
}

// ends reports whether the last instruction is advice, so that a new sentence begins
// behind a semicolon.
func (b *block) ends() bool {
	if len(b.items) == 0 {
		return false
	}
	switch it := b.items[len(b.items)-1].(type) {
	case *Note:
		return true
	case *Ref:
		return it.Change != nil && it.Change.Grows.Set() // "Each round adds 1 sc; …"
	}
	return false
}

func (b *block) add(i Item) {
	_, b.p.joined = i.(*Join)
	b.items = append(b.items, i)
}

// next reads one instruction. At the beginning of a sentence it may be advice
// or, at the end of the round, a count.
func (b *block) next(sentence bool) *fault.Fault {
	p := b.p
	if b.sizedStitches() {
		return nil
	}
	if p.listed(b) || p.trailingCount(sentence || p.at(-1).kind == tSemi && b.wentToEnd()) {
		return nil
	}
	if b.alongSides(sentence) || b.namesMade() || b.closedAs() || b.chainByLength() || b.notInto() || b.inSpiral() {
		return nil
	}
	if start := p.i; p.coloursInTurn() || p.yarnWhenNeeded() || !sentence && p.work && p.stripeTalk() ||
		b.afterRef() && p.tok().is("work", "repeating") && p.stripes() {
		b.add(&Note{Span: p.from(start), Text: p.words(start)})
		return nil
	}
	if start := p.i; b.afterRef() && p.postsOnPosts() {
		b.add(&Note{Span: p.from(start), Text: p.words(start)})
		return nil
	}
	if !sentence && b.afterRef() && p.lastInTurning() == 0 && !p.inStripes() {
		if ok, f := b.changed(); ok || f != nil {
			return f
		}
	}
	if ok, f := b.fromChain(); ok {
		return f
	}
	if ok, f := b.changedFirst(); ok || f != nil {
		return f
	}
	if b.yarnOfRounds() {
		return nil
	}
	if b.afterRef() && p.tok().is("working", "increasing", "decreasing", "keeping", "changing") && p.aside(b) {
		return nil // "Rep last rnd 4 times, working around the post of each FPdc as before"
	}
	if sentence && (b.habit() || b.chainsSaid() || b.growthSaid()) {
		return nil
	}
	if sentence {
		if b.ontoCloth() || b.formsPattern() || b.goesOnJoining() || b.straight() {
			return nil
		}
		if ok, f := b.shapedOn(); ok || f != nil {
			return f
		}
		if b.goingOn() {
			return nil
		}
		if it, _ := p.onward(); it != nil {
			p.work = true
			b.add(it)
			return nil
		}
	} else if p.shapesEvery() {
		if it, _ := p.onward(); it != nil {
			b.add(it) // "until 40 sts remain, then decrease 8 sts on every round until …"
			return nil
		}
	}
	if b.afterRounds() {
		if u := p.toRound(); u != nil {
			b.add(u)
			return nil
		}
	}
	if ok, f := b.goesOn(); ok || f != nil {
		return f
	}
	if p.joined && b.hangingLoop() {
		return nil
	}
	if sentence && (b.elsewhere() || b.overOnly() || b.skippedToCome()) {
		return nil
	}
	if sentence {
		if ok, f := b.moreRounds(); ok || f != nil {
			return f
		}
	}
	if f := p.vague(); f != nil {
		return f
	}
	if from := p.i; (sentence || !p.work && p.depth <= 1) && (p.eat("start", "begin", "starting", "beginning", "commence") || p.tok().is("beg") && p.at(1).is("at", "by", "with") && p.eat("beg")) {
		edge := p.atEdgeFirst()
		p.eat("by", "with")
		if edge && b.chainRing() {
			return nil
		}
		if edge && p.beginsWork() {
			return b.next(false) // "Start at the crown with a magic ring"
		}
		if with := p.at(-1).is("with") && p.i-from > 2; with || p.tok().is("chaining") {
			if c := p.chain(); c != nil {
				b.add(c) // "Start by chaining 33", "Begin at lower edge with 72 ch"
				return nil
			}
		} else if p.at(-1).is("with") {
			if c := p.chain(); c != nil && p.ended() {
				b.add(c) // "Begin with 5 ch, join with a ss"
				return nil
			}
		}
		p.i = from
	}
	if p.beginsAt(b) {
		return nil
	}
	if sentence && p.depth <= 1 && p.tok().is(keptVerbs...) {
		if f := p.openGoingOn(); f != nil {
			return f
		}
	}
	if sentence && (b.ringFollows() || b.ringOf() || p.severalAhead(b) || p.pieceHead(b) || p.titled(b) || p.edgingOn(b) || p.uncounted(b) || p.ofAnotherAlike(b) || p.advice(b)) {
		return nil
	}
	if b.intoLeft() || !sentence && b.setAround() {
		return nil
	}
	if p.tok().is("skipping", "missing", "ignoring") && (p.spacesLeftOut() || b.stitchesLeftOut()) {
		return nil
	}
	if b.moreAtEnd() {
		return nil
	}
	if ok, f := b.firstPlaced(); ok || f != nil {
		return f
	}
	if p.infront(b) || b.ontoCloth() || b.evenlyRound() || b.closedChain() || !sentence && p.asFollows() {
		return nil
	}
	p.eat(adverbs...)
	if at := p.i; p.eat("a", "an", "another") {
		// "2 ch and a ss into …", "another dc into the same st"
		if _, ok := p.what(); ok {
			p.i = at + 1
		} else {
			p.i = at
		}
	}
	if ok, f := b.onceMore(); ok {
		return f
	}
	switch t := p.tok(); {
	case t.kind == tStar:
		return b.star()
	case b.begBracket():
		if p.tok().kind != tOpen {
			return nil
		}
		return b.bracket(nil)
	case t.kind == tOpen:
		return b.bracket(nil)
	case t.is(repeating...):
		p.work = true
		return b.repeat()
	case t.kind == tNumber:
		if b.bareNumber() {
			return nil
		}
		if ok, f := b.timesBefore(); ok || f != nil {
			return f
		}
	}
	start := p.i
	for _, read := range []func() (Item, *fault.Fault){
		p.evenShaping, p.picot, p.makingUp, p.otherSide, p.turn, p.intoOther, p.join, p.fasten, p.ring, p.counts, p.skip, p.loops, p.refer, p.until,
		p.colour, p.marker,
	} {
		item, f := read()
		if f != nil {
			return f
		}
		if item != nil {
			switch item.(type) {
			case *Ref:
				p.work = true
			case *OtherSide:
				if b.joinedThere(start) {
					item = &Note{Span: p.from(start), Text: p.words(start)}
				}
			}
			b.add(item)
			b.apart()
			return nil
		}
		p.i = start
	}
	if p.tok().is("ending", "finishing", "end", "finish") && (p.at(1).is("with") || p.at(1).kind == tNumber && p.tok().is("ending", "finishing") && p.instructs(p.i+1)) && !(b.afterRef() && p.colourAhead()) {
		p.i++
		p.eat("with")
		p.eat("a", "an", "one")
		b.last = true
		defer func() { b.last = false }()
		return b.next(false)
	}
	if ok, f := b.chainsBetween(); ok || f != nil {
		return f
	}
	if b.afterRef() && p.numberedLength() {
		at := p.i
		p.i = p.phraseEnd()
		f := fail(p.from(at), "how-often", "the words do not say in rows, times or a length for how long to go on: \""+p.words(at)+"\"", "Write, for example: for 8 more rows, 4 more times, until piece measures 20 cm.")
		p.i = at
		return f
	}
	if b.allIn() || b.lastInChain() || b.exception() || b.allRound() || p.asStitches(b) || p.aside(b) {
		return nil
	}
	if p.picksUp() {
		return b.next(false) // "pick up 1 sc in the corner"
	}
	if !p.startsFromHook() && p.eat("work", "make", "working", "crochet", "do", "worked", "complete", "begin", "start", "commence") {
		p.eat("with", "by")
		p.eat("making", "working")
		p.eat("a", "an")
		if p.tok().kind == tColon {
			p.i++
		}
		if p.tok().kind == tEnd {
			return p.stuck()
		}
		if k := p.at(1).kind; sentence && p.tok().kind == tNumber && (k == tStop || k == tComma) {
			p.i++
			b.add(&Note{Span: p.from(start), Text: p.words(start)}) // "Make 2."
			return nil
		}
		return b.next(false)
	}
	if p.startingIn(b) {
		return nil
	}
	// "in next sp, work (…)": the place comes first.
	if p.startsFromHook() {
		p.i++
	} else {
		p.startingWith()
	}
	if p.tok().is("in", "into", "over") || p.tok().is("along", "across", "around", "down", "up") && p.edgeAhead() {
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
		b.addChain(c)
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
	if b.another() || b.whichIs() || p.clauseAdvice(b) {
		return nil
	}
	return p.stuck()
}

// startsFromHook reports whether "start in 2nd ch from hook" comes next, which is where
// what follows begins.
func (p *parser) startsFromHook() bool {
	start := p.i
	defer func() { p.i = start }()
	if !p.eat("start", "begin", "commence") || !p.eat("in", "into", "with") {
		return false
	}
	pl, ok := p.place()
	return ok && pl.Target.Sort == FromHook
}

// edgeAhead reports whether row ends are named behind the word that comes next:
// "working across neck edge, work 48 sc evenly".
func (p *parser) edgeAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	p.i++
	return p.rowEnds()
}

// placeFirst goes on after "in next ch-2 sp": a stitch, a group, or, for the
// ring, all that follows.
func (b *block) placeFirst(start int, places []Place) (Item, *fault.Fault, bool) {
	p := b.p
	p.eatKind(tComma)
	p.eatKind(tColon)
	if p.eat("work", "make") {
		p.eat("a", "an")
	}
	p.eatKind(tColon)
	if len(places) == 1 && places[0].Target.Sort == Ring {
		return &In{Span: p.from(start), Place: places[0]}, nil, true
	}
	if p.tok().kind == tOpen {
		f := b.bracket(places)
		p.inSame()
		return nil, f, true
	}
	at := p.i
	if s, ok := p.stitches(); ok {
		st := s.(*Stitches)
		if g := p.bothIn(start, st, places); g != nil {
			return g, nil, true
		}
		if g := p.listInEach(start, st, places); g != nil {
			return g, nil, true
		}
		switch {
		case st.Places == nil && places[0].Target.Sort == FromHook && p.inSame():
			st.Places = places
		case places[0].Target.Sort == FromHook && p.toks[start].is("starting", "beginning", "beg", "start", "begin", "commence") && st.onFrom(places):
		case st.Places == nil, places[0].Target.Sort == FromHook && st.Places[0].Pick == Same && len(st.Places) == 1:
			st.Places = places
		case places[0].Target.Sort == RowEnds && (st.Places[0].Evenly || st.Places[0].Target.Sort == RowEnds):
			// "working in ends of rows, work 66 sc evenly around"
			st.Places[0].Target = places[0].Target
		case places[0].Target.Sort == FromHook && st.Places[0].Pick == Each:
			// "starting in 2nd ch from hook, sc in each ch across"
			st.spreadFrom()
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
