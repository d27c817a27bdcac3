package notation

import "whorl/patterns/stitch"

// between reads which gap is meant, after the word between: "next 2 sts", "each
// tr", "3-ch and next tr", "1st and 2nd dc", "3-dc groups". Next is set when the
// words say which one rather than just here.
func (p *parser) between() (t Target, pick Pick, next, ok bool) {
	start := p.i
	t.Sort = Gap
	no := func() (Target, Pick, bool, bool) { p.i = start; return Target{}, Next, false, false }
	p.eat("the")
	if pick = Next; p.pair(&t) {
		t.Text = p.words(start)
		return t, Next, true, true
	}
	if p.atJoin(&t) {
		t.Text = p.words(start)
		return t, Last, true, true
	}
	if pick, ok := p.atEdge(&t); ok {
		t.Text = p.words(start)
		return t, pick, true, true
	}
	if pick, ok := p.ofPair(&t); ok {
		t.Text = p.words(start)
		return t, pick, true, true
	}
	switch {
	case p.eat("each", "every", "all"):
		pick, next = Each, true
		p.eat("of")
		p.eat("the")
	case p.eat("next", "nxt", "following", "foll"):
		next = true
	case p.eat("first"):
		pick, next = First, true
	case p.eat("last"):
		pick, next = Last, true
	case p.eat("any"):
		pick, next = Any, true
	}
	if !p.groupAhead() {
		if n, ok := p.num(); ok {
			if len(n.Values) != 1 || n.Values[0] != 2 {
				return no() // a gap is between two
			}
			next = true
		}
	}
	of, ok := p.target()
	if !ok || !t.gapOf(&of) {
		return no()
	}
	t.Text = p.words(start)
	return t, pick, next, true
}

// eachOfGaps reports whether the gap that has just been read is each of those there are: it is
// said to be, and no repeat takes them one by one, or the words go on over all of them, "between
// groups across".
func (p *parser) eachOfGaps() bool {
	return p.eachAcross() || p.eachGap && !p.starred()
}

// eachAcross reports whether "across", "around" follows several that are named.
func (p *parser) eachAcross() bool {
	start := p.i
	defer func() { p.i = start }()
	e, ok := p.extent()
	return ok && e.Sort == ToEnd
}

// gapBeside reads "before next V-st", "after this shell", "before first group": the gap
// on that side of it.
func (p *parser) gapBeside() (Target, bool) {
	start := p.i
	t := Target{Sort: Gap}
	before := p.eat("before")
	if !before && !p.eat("after", "following") {
		return t, false
	}
	p.eat("the")
	if _, ok := p.startChain(); ok && before {
		p.lastGap = true // "in sp before beg ch-3": at the join
		return t, true
	}
	first := before && p.eat("first") || !before && p.eat("last", "final")
	if !first && !(before && p.eat("next", "following") || !before && p.eat("this", "that", "same", "next")) {
		p.i = start
		return t, false
	}
	if p.tok().is("corner") && p.at(1).is("group", "cluster", "shell", "fan") {
		p.i++ // "before the next corner group"
	}
	of, ok := p.target()
	named := ok && of.Sort == OfName && t.gapOf(&of)
	if !named && (first || !ok) && !(before && p.tok().kind != tWord) {
		p.i = start
		return t, false
	}
	if p.lastGap = first; !named && !first {
		t.Name = Here
	}
	return t, true
}

// sitsInSpace reads "that sits in a 1-ch sp", "worked into any ch sp": a stitch that
// was worked there.
func (p *parser) sitsInSpace(pl *Place) bool {
	start := p.i
	if pl.Target.Sort != OfKind && pl.Target.Sort != AnyStitch || pl.Of != nil {
		return false
	}
	p.eat("that", "which")
	that := p.i > start
	p.eat("is", "was", "has", "are", "were", "lies")
	p.eat("been")
	worked := p.eat("worked", "made", "sitting", "standing", "placed", "lying")
	if that && !worked {
		worked = p.eat("sits", "stands", "goes", "went") || p.at(-1).is("is", "was", "lies")
	}
	if worked && p.eat("in", "into", "over", "above", "on") {
		p.eat("a", "an", "any", "the", "one")
		p.eat("of")
		p.eat("the")
		if t, ok := p.target(); ok && t.Sort == ChainSpace {
			pl.InSpace = true
			return true
		}
	}
	p.i = start
	return false
}

// atJoin reads the last and the first stitch of a round, "last and first V-sts", "last
// group and first group": the gap at its join.
func (p *parser) atJoin(t *Target) bool {
	start := p.i
	last, first := false, false
	var of Target
	for n := 0; n < 2; n++ {
		p.eat("the")
		last, first = last || p.tok().is("last", "final"), first || p.tok().is("first")
		if !p.eat("last", "final", "first") {
			break
		}
		if o, ok := p.target(); ok {
			of = o
		}
		if n == 0 && !p.eat("and") {
			break
		}
	}
	if last && first && of.Text != "" && t.gapOf(&of) {
		return true
	}
	p.i = start
	return false
}

// gapOfHole reports whether "gap" is followed by what it lies between round a hole, which is not gone
// past: "between the last and first of them", "between first and last skipped sts".
func (p *parser) gapOfHole() bool {
	start := p.i
	defer func() { p.i = start }()
	p.i++
	p.whichGap()
	return p.i > start+1
}

// whichGap passes over where the gap of a hole is: "between the last and first of them", "at the
// corner", "at each end of the skipped sts".
func (p *parser) whichGap() {
	start := p.i
	switch {
	case p.eat("between"):
		p.eat("the")
		first := p.eat("last", "final", "first")
		for p.eat("st", "sts", "stitch", "and", "the", "last", "final", "first") {
		}
		if of := p.i; first && (p.eat("of") && p.eat("them", "these", "those") || p.toks[of].is("skipped", "missed", "unworked") && p.eat("skipped", "missed", "unworked") && p.eat("st", "sts", "stitch", "stitches")) {
			return
		}
	case p.eat("at", "in", "on"):
		p.eat("the", "each", "this", "either")
		at := p.i
		if p.eat("corner", "corners", "end", "ends", "side", "sides", "edge", "join", "bottom", "top"); p.i > at {
			if of := p.i; p.eat("of") {
				p.eat("the")
				if !p.slit(0) && !(p.eat("skipped", "missed", "unworked") && p.eat("st", "sts", "stitch", "stitches")) {
					p.i = of
				}
			}
			return
		}
	}
	p.i = start
}

// atEdge reads the gap at either end of a row by what is on its sides: "first dc and first group",
// "turning ch and next shell", "last group and turning ch", "last 3-dc group and last dc".
func (p *parser) atEdge(t *Target) (Pick, bool) {
	start := p.i
	edge := func(named bool) bool {
		if _, ok := p.startChain(); ok {
			return true
		}
		named = p.eat("edge", "end") || named
		of, ok := p.target()
		return ok && named && (of.Sort == OfKind || of.Sort == AnyStitch)
	}
	group := func() bool {
		of, ok := p.target()
		return ok && (of.Sort == OfName || of.Sort == OfKind || of.Sort == AnyStitch)
	}
	first := p.eat("first")
	if edge(first) && p.eat("and") {
		p.eat("the")
		if p.eat("first", "next", "following") && group() && p.ended() {
			t.At = 1
			return Next, true
		}
	}
	if p.i = start; p.eat("last", "final") && group() && p.eat("and") {
		p.eat("the")
		if edge(p.eat("last", "final")) && p.ended() {
			return Last, true
		}
	}
	p.i = start
	return Next, false
}

// ofPair reads "2 hdc of next pair", "hdc of any pair", "any pair of hdc": the gap inside
// two stitches that stand by themselves.
func (p *parser) ofPair(t *Target) (Pick, bool) {
	start := p.i
	picked := func() Pick {
		switch {
		case p.eat("any"):
			return Any
		case p.eat("each", "every"):
			return Each
		case p.eat("first"):
			return First
		}
		p.eat("the", "a", "next", "following", "same")
		return Next
	}
	kind := func() bool {
		of, ok := p.target()
		if !ok || of.Sort != OfKind && of.Sort != AnyStitch {
			return false
		}
		t.Kind, t.Loop, t.Name = of.Kind, of.Loop, Pair
		return true
	}
	if pick := picked(); p.eat("pair") && p.eat("of") && kind() {
		return pick, true
	}
	p.i = start
	n, two := p.plainNumber()
	if two && n != 2 {
		p.i = start
		return Next, false
	}
	if kind() && p.eat("of", "in") {
		pick := picked()
		if two && p.tok().kind == tNumber && p.tok().value == 2 && p.at(1).kind == tHyphen {
			p.i += 2 // "the 2 tr of next 2-tr group"
			p.what()
		}
		if p.eat("pair") || two && p.eat("group", "grp", "gp", "gr") {
			return pick, true
		}
	}
	p.i, t.Name, t.Kind, t.Loop = start, "", stitch.Kind{}, Loop{}
	return Next, false
}

// gapOf makes t the gap between what of names; false for what has no gaps.
func (t *Target) gapOf(of *Target) bool {
	switch of.Sort {
	case AnyStitch:
	case OfKind, OfShape:
		t.Kind, t.Loop = of.Kind, of.Loop
	case OfName:
		t.Name, t.Kind, t.Chains = Groups, of.Kind, of.Chains
		if of.Name != "" {
			t.Name = of.Name
		} else if vWords.MatchString(of.Text) {
			t.Name = VStitch
		}
	default:
		return false
	}
	return true
}

// pair reads the two stitches of a gap by name: "beg ch-3 and next dc", "last st
// and next st", "1st and 2nd dc".
func (p *parser) pair(t *Target) bool {
	start := p.i
	first, here, nth := false, false, 0
	var group Target
	if _, ok := p.startChain(); ok {
		first = true
	} else if p.eat("last", "previous", "prev", "same", "this", "that") {
		p.eat(skippedWords...)
		group, _ = p.target()
		p.eat("made", "worked")
		here = true
	} else if nth = p.nth(); nth > 0 {
		p.target()
	} else {
		return false
	}
	if !p.eat("and") {
		p.i = start
		return false
	}
	p.eat("the")
	second := p.nth()
	switch {
	case nth > 0 && second == nth+1:
		t.At = nth
	case first && (second > 0 && second < 3 || p.eat("next", "following")):
		t.At = 1
	case here && p.eat("next", "following"):
		t.Name = Here
	default:
		p.i = start
		return false
	}
	of, ok := p.target()
	if !ok && t.Name == Here {
		p.eat("one") // "this group and the next one"
	}
	switch {
	case t.Name == Here && group.Sort == OfName:
		t.Name = ""
		t.gapOf(&group) // "this V-st and next"
	case t.Name == Here && ok && of.Sort == OfName:
		t.Name = ""
		t.gapOf(&of) // "this and the next V-st"
	case ok && t.Name != Here && !first:
		t.gapOf(&of)
	}
	return true
}

// nth reads an ordinal in figures or words; 0 when there is none.
func (p *parser) nth() int {
	t := p.tok()
	n := ordinalOf(t)
	if t.kind == tOrdinal {
		n = t.value
	}
	if n > 0 {
		p.i++
	}
	return n
}
