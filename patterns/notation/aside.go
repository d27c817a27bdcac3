package notation

import (
	"strings"

	"whorl/patterns/stitch"
)

// handling are words for what the hands do meanwhile. A phrase that begins with any
// other such word makes stitches if it names them.
var handling = []string{
	"holding", "keeping", "taking", "being", "making", "leaving", "pulling", "drawing", "tightening", "inserting", "adjusting",
	"catching", "carrying", "crossing", "encasing", "enclosing", "covering", "stretching", "easing", "noting", "remembering",
	"folding", "placing", "moving", "marking", "wrapping", "treating", "counting", "facing", "matching", "aligning", "stuffing",
	"sewing", "weaving", "allowing", "ensuring", "checking", "bringing", "pushing", "removing", "flattening", "dropping",
}

// phraseEnd is the token that ends the phrase.
func (p *parser) phraseEnd() int {
	j := p.i
	for k := p.toks[j].kind; k != tEnd && k != tStop && k != tClose && k != tColon && k != tComma && k != tSemi; k = p.toks[j].kind {
		if next := p.overSizes(j); next > j {
			j = next
		} else if k == tOpen {
			break
		} else {
			j++
		}
	}
	return j
}

// overSizes is the token behind the brackets at token i in which a number before them has
// its other sizes, "64 (112) rows"; i where none open there.
func (p *parser) overSizes(i int) int {
	if p.toks[i].kind != tOpen || i == p.i || p.toks[i-1].kind != tNumber {
		return i
	}
	at, faults := p.i, p.faults
	defer func() { p.i, p.faults = at, faults }()
	p.i = i - 1
	p.num()
	return max(p.i, i)
}

// aside takes a phrase that only says how the work is held as a note: "working
// over tail", "being careful not to twist", "working in front of dc just made".
func (p *parser) aside(b *block) bool {
	t := p.tok()
	start := p.i
	switch {
	case b.afterRef() && p.lastInTurning() > 0:
		return p.note(b, start, p.lastInTurning()) // "As Row 1, working last 2 tr in top of 3 ch"
	case p.upPoint(b):
		return true
	case b.afterRef() && p.stripes():
		return p.note(b, start, p.i)
	case t.is("working", "work") && p.at(2).kind != tStar && (p.at(1).is("over", "behind", "from", "toward", "towards", "around", "along", "right", "left", "clockwise", "backwards") ||
		p.at(1).is("in") && p.at(2).is("front", "a", "continuous", "opposite", "same", "rounds", "rnds", "rows")):
	case t.is(handling...), t.kind == tWord && strings.HasSuffix(t.text, "ing") && len(t.text) > 4 && !t.is("working", "skipping", "missing",
		"ending", "beginning", "joining", "turning", "repeating", "omitting", "chaining", "increasing", "decreasing",
		"starting", "spring", "ring", "completing", "changing", "switching", "using", "putting", "picking", "closing") &&
		!p.stitchy(p.i+1, p.phraseEnd()):
	case t.is("putting", "closing", "popping", "tucking") && p.at(1).is("the", "a", "an", "your", "it", "some", "in") && !p.stitchy(p.i+1, p.phraseEnd()):
		// "putting the pad in before closing the fourth side"
	case t.is("increasing", "decreasing", "inc", "dec", "working", "having") && b.afterRef(), t.is("rotate", "pivot", "fold", "flatten", "pinch"):
		// "Rep row 3, increasing 2 sts each row"
	case t.is("here") && b.behindNote():
		// "…, inserting hook between the legs (waistcoat stitch), here and on all following rnds"
		if p.hereAndLater(); p.i == start {
			return false
		}
		return p.note(b, start, p.i)
	case b.intoLoopsThere():
		// "rotate to work along the shell edge, into the ch-3 loops at the ends of the rows"
	case t.is("going", "go") && p.at(1).is("back") && (p.toks[p.phraseEnd()].kind == tComma || p.at(2).is("over", "behind") || p.at(3).is("of")):
		// "going back and working in front of the sts just made, FPtr around …"
	case t.is("from") && p.at(1).is("left", "right") && p.at(2).is("to") && p.at(3).is("left", "right"):
		return p.note(b, start, p.i+4)
	case t.is("using", "with") && p.toolEnd() > 0:
		return p.note(b, start, p.toolEnd()) // "make 132 ch using a 6 mm hook"
	case t.is("omitting", "leaving") && b.afterRef() && p.turningChainAhead():
		// "Repeat 2nd to 5th rows, omitting the turning ch at end of last row"
	case (t.is("do") && p.at(1).is("not") && !p.at(2).is("join", "turn") || t.is("don't") && !p.at(1).is("join", "turn")):
	case t.is("without") && !p.at(1).is("joining", "turning"), t.is("being", "taking") && p.at(1).is("careful", "care"):
		// "without twisting chain, join"
	case b.fromJoin():
		return true
	case t.is("worked", "work", "working") && p.at(1).is("round", "around") && len(b.items) > 0 && p.aroundStem():
		// "raised treble front, worked round the stem from the front"
	case (t.is("beg", "start") && p.at(2).is("same", "the") || t.is("beginning", "starting") && (p.at(2).is("same") || p.at(2).is("the") && p.at(3).is("same"))) && p.at(1).is("in") && p.phraseEnd() > p.i+3 && p.toks[p.phraseEnd()].kind == tComma:
		// "ch 2, beg in same st, *puff in next st": the next is that one
	case t.is("to") && p.at(1).is("complete", "finish", "form", "make", "create", "increase", "decrease", "level", "even", "balance", "match", "keep", "fill", "cover") && len(b.items) > 0:
		// "2 dc in same st as beg ch-3 to complete the first shell"
		return p.note(b, start, p.phraseEnd())
	case t.is("ending", "finishing", "end") && b.afterRef() && p.colourAhead():
		// "until the scarf measures 160 cm, ending after the second row of color C"
		return p.note(b, start, p.phraseEnd())
	case t.is("starting", "beginning") && (p.at(1).is("in", "with") && p.work || p.at(1).is("at", "from") && !p.startsFurther(p.i+2)):
	case t.is("leave", "leaving") && (p.at(1).is("rem", "remaining") || p.at(1).is("last", "next")):
		return false
	default:
		return false
	}
	ref, stripes := b.afterRef(), false
	for k := p.tok().kind; k != tEnd && k != tStop && k != tClose && k != tOpen && k != tColon; k = p.tok().kind {
		stripes = stripes || p.tok().is("sequence", "stripe", "stripes")
		// "Continuing in stripes of 2 rounds A, 2 rounds B, rep Round 2"
		if (k == tComma || k == tSemi) && !(stripes && p.at(1).kind == tNumber) {
			break
		}
		if ref && p.i > start && p.soLongAhead() {
			break // "Rep Row 3, decreasing at each end until 2 sts remain"
		}
		if p.i > start+1 && !stripes && p.worksOn() || k == tWord && p.tok().is("and") && p.inLoopsAhead(p.i+1) {
			break
		}
		p.i++
	}
	return p.note(b, start, p.i)
}

// behindNote reports whether what was read last makes nothing.
func (b *block) behindNote() bool {
	if len(b.items) == 0 {
		return false
	}
	n, ok := b.items[len(b.items)-1].(*Note)
	return ok && n.Doubt == nil
}

// startsFurther reports whether a stitch is named at token i that is not the first in the round,
// "(starting at the) 3rd st", "last st": working on from there is no way of holding the work.
func (p *parser) startsFurther(i int) bool {
	at := p.i
	defer func() { p.i = at }()
	p.i = i
	pl, ok := p.place()
	return ok && (pl.Pick == Last || pl.Pick == Nth && pl.Nth > 1)
}

// toolEnd is the end of a phrase that says with what the work is done, or with how many
// strands: "using a 6 mm (J-10) hook", "with yarn held double". It is 0 for other phrases.
func (p *parser) toolEnd() int {
	end := p.phraseEnd()
	if p.toks[end].kind == tOpen {
		if close := p.matching(end); close > 0 && p.toks[close+1].is("hook", "needle") {
			return close + 2
		}
	}
	for j := p.i + 1; j < end; j++ {
		if p.toks[j].is("hook", "strand", "strands", "held", "doubled", "double") && !p.evident(p.i+1, end) {
			return end
		}
		if p.toks[j].is("thread", "cotton", "size", "weight", "ply") && !p.evident(p.i+1, end) && !p.yarnAt(p.i+1) {
			return end // "with size 10 thread", but "with white cotton"
		}
	}
	return 0
}

// inLoopsAhead reports whether token i begins "in the BLO of Rnd 1".
func (p *parser) inLoopsAhead(i int) bool {
	at := p.i
	defer func() { p.i = at }()
	if p.i = i; !p.eat("in", "into", "through") {
		return false
	}
	_, ok := p.loopWords()
	return ok
}

// turningChainAhead reports whether "omitting" is said of the chain that turns, or of the
// turn itself.
func (p *parser) turningChainAhead() bool {
	j := p.i + 1
	if p.toks[j].is("out") {
		j++
	}
	for ; p.toks[j].is("the", "a", "last", "final", "ch", "chain"); j++ {
	}
	return p.toks[j].is("turning", "turn", "tch")
}

// aroundStem reports whether the phrase says no more than that a stitch is worked round
// a stem, and from which side.
func (p *parser) aroundStem() bool {
	j := p.i + 2
	if p.toks[j].is("the") {
		j++
	}
	if !p.toks[j].is("stem", "post", "stalk") {
		return false
	}
	for j++; j < p.phraseEnd(); j++ {
		if !p.toks[j].is("of", "the", "st", "stitch", "below", "from", "front", "back", "inserting", "hook", "at", "and", "to", "right", "left", "in", "rnd", "round", "row") {
			return false
		}
	}
	return true
}

// infront takes "in front of these", "behind the last 2 sts made" as a note: the hook passes there.
func (p *parser) infront(b *block) bool {
	start := p.i
	if !p.eatAll("in", "front", "of") && !p.eat("behind") {
		return false
	}
	if p.eat("them", "it") {
		return p.note(b, start, p.i)
	}
	if b.intoOlder() && p.overSpace() {
		return p.note(b, start, p.i)
	}
	these := p.eat("these", "those")
	last := !these && (p.eat("the") || true) && p.eat("last", "previous", "prev")
	of := p.i
	p.num()
	if _, ok := p.target(); !ok || p.tok().is("in", "into", "around", "round", "over") {
		p.i = of // "in front of these 1 FPtr around …"
	}
	p.eat("just")
	if made := p.eat("made", "worked"); these || last && made {
		return p.note(b, start, p.i)
	}
	p.i = start
	return false
}

// postsOnPosts reads "working each FPdc around FPdc below" behind a round that is repeated: where its stitches
// around posts come anyway.
func (p *parser) postsOnPosts() bool {
	start := p.i
	if p.eat("working", "making", "placing") {
		p.eat("each", "the", "all", "every")
		made, ok := p.what()
		if ok && (made.Name != "" || made.Loop.Into == stitch.FrontPost || made.Loop.Into == stitch.BackPost) && p.eat("around", "round", "over", "on", "into", "in") {
			p.eat("each", "the", "corresponding")
			if p.eat("post") {
				p.eat("of")
				p.eat("each", "the", "corresponding")
			}
			of, ok := p.what()
			if p.eat("of", "in", "on", "from") {
				p.eat("the", "last", "previous", "prev")
				if _, round := roundWord(p.tok()); round {
					p.i++
				}
			}
			p.eat("below")
			if ok && of.Kind == made.Kind && of.Loop == made.Loop && of.Name == made.Name && (p.ended() || p.tok().is("until", "till")) {
				return true
			}
		}
	}
	p.i = start
	return false
}

// intoOlder reports whether the stitch that has just been told goes into one that was skipped, or that is
// further down.
func (b *block) intoOlder() bool {
	if len(b.items) == 0 {
		return false
	}
	s, ok := b.items[len(b.items)-1].(*Stitches)
	return ok && len(s.Places) == 1 && (s.Places[0].Pick == Skipped || s.Places[0].Below != 0)
}

// overSpace passes over "the ch-1 sp", "next ch-2 loop" at the end of an instruction.
func (p *parser) overSpace() bool {
	start := p.i
	p.eat("the", "next", "each")
	if t, ok := p.target(); ok && (t.Sort == ChainSpace || t.Sort == ChainStitch || t.ByNumber()) && p.ended() {
		return true
	}
	p.i = start
	return false
}

// spacesLeftOut reads "missing out every ch-1 sp", "skipping the ch sps": spaces, which "each st" does not go
// into anyway.
func (p *parser) spacesLeftOut() bool {
	start := p.i
	p.i++
	p.eat("out", "over")
	every := p.eat("every", "each", "all")
	p.eat("of")
	p.eat("the")
	if t, ok := p.target(); ok && (t.Sort == ChainSpace || t.Sort == ChainStitch) && (every || p.at(-1).is("sps", "spaces", "loops", "lps", "chs", "chains")) &&
		(p.ended() || p.tok().is("around", "across", "throughout")) {
		if p.tok().kind == tComma && p.at(1).is("around", "across") && (p.at(2).kind == tStop || p.at(2).kind == tSemi || p.at(2).kind == tEnd || p.at(2).kind == tOpen || p.at(2).kind == tComma) {
			p.i++ // "sc in each sc, skipping all chs, around"
		}
		p.eat("around", "across", "throughout")
		return true
	}
	p.i = start
	return false
}

// colourAhead reports whether the phrase speaks of a colour or a stripe.
func (p *parser) colourAhead() bool {
	for j := p.i; j < p.phraseEnd(); j++ {
		if p.toks[j].is("color", "colour", "colors", "colours", "stripe", "stripes", "yarn", "mc", "cc") {
			return true
		}
		if _, round := roundWord(&p.toks[j]); round && j > p.i && (p.toks[j-1].kind == tNumber || numberWords[p.toks[j-1].text] > 0) {
			at := p.i
			p.i = j + 1
			of := p.eat("of", "in")
			name := p.i
			_, yarn := p.yarn()
			if !yarn {
				p.i = name
			}
			if !yarn && of && p.tok().kind == tWord && p.tok().raw != p.tok().text && p.phraseEnd() == name+1 && !p.stitchy(name, name+1) {
				yarn = true // "ending with two rows of Harbor", whatever yarn that is
			}
			if p.i = at; yarn {
				return true // "ending with 2 rows M"
			}
		}
	}
	return false
}

// fromJoin reads ", beginning in the sp where you joined" behind a repeat.
func (b *block) fromJoin() bool {
	p := b.p
	if len(b.items) == 0 || !p.tok().is("starting", "beginning") || !p.at(1).is("in") {
		return false
	}
	r, ok := b.items[len(b.items)-1].(*Repeat)
	if !ok {
		return false
	}
	end := p.phraseEnd()
	for j := p.i; j < end; j++ {
		if p.toks[j].is("join", "joined", "joining") || p.toks[j].is("sl", "ss", "slip") && p.toks[j-1].is("as", "the") {
			r.FromJoin = true
			p.i = end
			return true
		}
	}
	return false
}

// worksOn reports whether an instruction begins here inside a phrase, without a
// comma before it: "working in front of sts just made work 1 FPdtr around …".
func (p *parser) worksOn() bool {
	start := p.i
	defer func() { p.i = start }()
	if p.tok().is("work", "make") {
		return p.instructs(p.i)
	}
	if p.at(-1).is("of", "the", "each", "last", "next", "over", "behind", "to", "in", "into", "previous", "prev", "these", "those", "beg", "first",
		"around", "with", "and", "same", "from", "joining", "than", "any", "all", "under") {
		return false
	}
	_, counted := p.num()
	_, ok := p.what()
	if counted && ok && p.toks[start-1].is("it", "them", "made", "worked") {
		return true // "working in front of tr just made 1 tr missed st"
	}
	return ok && p.tok().is("in", "into", "around", "round", "over", "through") && p.instructs(start)
}

// afterRef reports whether the last instruction repeats rounds by their number.
func (b *block) afterRef() bool {
	if len(b.items) == 0 {
		return false
	}
	switch b.items[len(b.items)-1].(type) {
	case *Ref, *Until:
		return true
	}
	return false
}

// afterRounds reports whether nothing but rounds that are repeated, and notes on them, stand
// at the end: until when may follow.
func (b *block) afterRounds() bool {
	for i := len(b.items) - 1; i >= 0; i-- {
		switch it := b.items[i].(type) {
		case *Note:
		case *Ref:
			return !it.Times.Set()
		default:
			return false
		}
	}
	return false
}

// clauseAdvice takes a phrase after a comma as a note when it begins with a
// word of advice: "…, pulling the loop up tight".
func (p *parser) clauseAdvice(b *block) bool {
	t := p.tok()
	if t.is("from") && p.at(1).is("the") && p.at(2).is("bottom", "top", "crown", "brim", "tip", "toe", "centre", "center", "middle") && p.at(3).is("up", "down", "out", "outwards") {
		return p.note(b, p.i, p.phraseEnd())
	}
	if n := p.withSideFacing(); n > 0 {
		return p.note(b, p.i, p.i+n) // "1 ch, with right side facing work 43 dc …"
	}
	if t.is("rs", "ws") && p.at(1).is("facing") || t.is("right", "wrong") && p.at(1).is("side") && p.at(2).is("facing") {
		return p.note(b, p.i, p.phraseEnd()) // "Join yarn at seam, RS facing."
	}
	if k := p.at(-1).kind; (k == tSemi || k == tComma || k == tDash) && t.is("they", "they'll", "these", "it", "it'll", "that'll", "those", "this") && !p.evident(p.i, p.phraseEnd()) && !p.vagueAhead() {
		return p.note(b, p.i, p.phraseEnd()) // "leave the last 8 sts; they'll be the front"
	}
	if t.is("that") && p.at(-1).is("so") {
		// ", so that the raised stitches stack up": what comes of it
		return p.note(b, p.i, p.phraseEnd())
	}
	if !t.is("pulling", "making", "taking", "being", "keeping", "placing", "leaving", "drawing", "tightening",
		"working", "loosely", "snugly", "tightly", "as", "adjusting", "holding", "marking", "stuffing", "weave",
		"sew", "mark", "ready", "to", "for", "seam", "leave", "pull", "close", "stuff", "run", "thread", "gather", "cinch") &&
		!(t.is("draw") && (p.at(1).is("tight", "tightly", "closed") || p.at(1).is("up") && !p.at(2).is("a", "the", "loop") || p.at(1).is("through") && p.at(2).is("rem", "remaining", "the", "all", "last", "these"))) {
		return false
	}
	start := p.i
	through := t.is("draw", "run", "thread", "weave") // "draw through remaining 28 (32) sts"
	for p.tok().kind != tEnd && p.tok().kind != tStop && p.tok().kind != tComma && p.tok().kind != tSemi &&
		p.tok().kind != tClose && !(p.tok().kind == tColon && p.at(1).kind == tNumber) && (through && p.at(-1).kind == tNumber || p.tok().kind != tOpen) && !(p.tok().is("and", "then") && p.ends(p.i+1)) {
		if through && p.tok().kind == tOpen && p.matching(p.i) > 0 {
			p.i = p.matching(p.i)
		}
		p.i++
	}
	if p.stitchy(start, p.i) && !t.is("draw", "weave", "mark", "marking", "placing", "pull", "pulling", "sew", "seam", "stuff", "leave", "run", "thread", "gather") {
		p.i = start
		return false
	}
	return p.note(b, start, p.i)
}

// withSideFacing is how many words say "with right side facing", "with the WS of work
// facing you"; 0 for others.
func (p *parser) withSideFacing() int {
	start := p.i
	defer func() { p.i = start }()
	if !p.eat("with") {
		return 0
	}
	p.eat("the")
	if !p.eat("rs", "ws") && !(p.eat("right", "wrong") && p.eat("side")) {
		return 0
	}
	if p.eat("of") {
		p.eat("the")
		p.eat("work", "piece", "fabric")
	}
	if !p.eat("facing") {
		return 0
	}
	p.eat("you")
	return p.i - start
}

// notTightly passes over "not too tightly", "but not tight".
func (p *parser) notTightly() bool {
	start := p.i
	p.eat("but")
	if p.eat("not") {
		p.eat("too", "very", "so")
		if p.eat("tightly", "tight", "loosely", "loose", "firmly", "hard") {
			return true
		}
	}
	p.i = start
	return false
}

// vagueAhead reports whether the phrase leaves work to the reader.
func (p *parser) vagueAhead() bool { return p.vagueAt(p.i, p.phraseEnd()) != nil }

// multipleOf reports whether a sentence says which numbers of chains or stitches a pattern
// takes: "Make a multiple of 4 ch plus 2 (22 ch used here)". How many there are is told
// behind it.
func (p *parser) multipleOf() bool {
	start := p.i
	defer func() { p.i = start }()
	p.eat("make", "work", "ch", "chain", "begin", "start", "cast", "pattern", "worked", "you", "foundation", "for")
	p.eat("with", "over", "on", "need", "any", "is", "chain", "ch")
	p.eat("with", "over", "on")
	p.eat("a", "any")
	return p.eat("multiple", "multiples", "mult") && p.eat("of") && p.tok().kind == tNumber
}
