package notation

import (
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// Change is what is different where rounds are worked again: "rep Row 2, working tr
// instead of dc", "as Rnd 3, but in BLO", "rep Row 4, omitting the last dc". One of its
// fields says what.
type Change struct {
	Span
	Text string // as written
	// Loop is the loop that all of it is worked in.
	Loop Loop
	// Old is what is made or gone into otherwise, and New what instead. Without an Old
	// it is all the stitches of the round.
	Old, New *Unit
	// Last takes the place of the last stitch; where it has no place, that of the last
	// stitches stays. Moved is set when it is the same stitch in another place.
	Last  *Stitches
	Moved bool
	// Leave is how many stitches at the end are left out.
	Leave Num
	// Grows is how many stitches more each round has, or fewer when negative, which the
	// repeated words have to bear out.
	Grows Num
	// Every is how many rounds go with each that grows, itself the first: 2 for every alternate
	// one; 0 and 1 for all.
	Every int
	// Step is how many stitches more each run between the increases or decreases has every time
	// that the rounds are worked, or fewer when negative.
	Step Num
	// Run is how long the words say each such run was, unset when they do not.
	Run Num
	// Of is the kind of those stitches, zero where none is named.
	Of stitch.Kind
	// Spaces are gone into in turn with the stitches, by one stitch each of the kind Of, or of any.
	Spaces []Target
}

// Unit is what a change puts something else for: so many stitches or chains, or a place
// that they go into.
type Unit struct {
	N      Num
	What   What
	Chain  bool
	Target *Target
}

// inStripes reports whether "working 2 rows A and 2 rows B" comes next.
func (p *parser) inStripes() bool {
	start := p.i
	defer func() { p.i = start }()
	return p.stripes()
}

// changed reads what is different behind rounds that are worked again. A change that it
// cannot make out is a fault, so that none is passed over.
func (b *block) changed() (bool, *fault.Fault) {
	p := b.p
	var ref *Ref
	for i := len(b.items) - 1; i >= 0 && ref == nil; i-- {
		switch it := b.items[i].(type) {
		case *Ref:
			ref = it
		case *Until, *Note:
		default:
			return false, nil
		}
	}
	if ref == nil || ref.Onward || ref.Piece != "" || ref.Along != nil {
		return false, nil
	}
	if p.endsWithCount() {
		return true, nil
	}
	start, faults, work := p.i, len(p.faults), p.work
	c := p.change()
	p.faults, p.work = p.faults[:faults], work
	if c != nil && ref.Change == nil {
		c.Span, c.Text = p.from(start), p.words(start)
		ref.Change = c
		return true, nil
	}
	p.i = start
	if end := p.phraseEnd(); p.alters(end) {
		p.i = end
		at, words := p.from(start), p.words(start)
		p.i = start
		return false, fail(at, "vague", "cannot work out how \""+words+"\" changes the round that is repeated",
			"Write the round out with the change in it.")
	}
	return false, nil
}

// endsWithCount reads "ending with 71 tr": the count that the last of them has.
func (p *parser) endsWithCount() bool {
	start := p.i
	if p.eat("ending", "finishing", "end", "finish", "giving", "making") {
		p.eat("with", "on", "up")
		p.eat("with")
		p.eatAll("a", "total", "of")
		p.eatAll("total", "of")
		at := p.i
		if s := p.countList(); s != nil && !onlyOne(s.Counts[0].N) && s.Counts[0].Target.Text != "" && p.ended() {
			s.Span = p.from(at)
			p.stated = append(p.stated, s)
			return true
		}
	}
	p.i = start
	return false
}

// change reads one change, nil when the words say something else.
func (p *parser) change() *Change {
	start := p.i
	for _, read := range []func() *Change{p.changeLoop, p.loopAlone, p.changeSpaces, p.changeRuns, p.changeGrowth, p.changeUnit, p.changeLast, p.changeLeave} {
		p.i = start
		p.eat("but", "except", "only", "this", "time")
		if c := read(); c != nil && (p.ended() && !p.tok().is("and", "then") || p.tok().first || p.tok().is("until", "till") ||
			p.tok().is("and", "then") && (p.ends(p.i+1) || p.at(1).is("change", "changing", "weave", "cut", "do", "don't", "leave", "leaving"))) {
			return c
		}
	}
	p.i = start
	return nil
}

// changeLoop reads "but in BLO", "working in the front loops only", "through both loops".
func (p *parser) changeLoop() *Change {
	p.eat("working", "work", "worked", "crocheting", "going")
	if !p.eat("in", "into", "through", "under") {
		return nil
	}
	into, ok := p.loopWords()
	if !ok {
		return nil
	}
	if p.eat("of"); p.at(-1).is("of") {
		p.eat("each", "every", "all")
		p.eat("st", "sts", "stitch", "stitches")
	}
	p.eat("only", "throughout", "around", "across")
	return &Change{Loop: Loop{Set: true, Into: into}}
}

// insteadWords reads "instead of", "in place of", "rather than".
func (p *parser) insteadWords() bool {
	return p.eatAll("instead", "of") || p.eatAll("in", "place", "of") || p.eatAll("in", "lieu", "of") || p.eatAll("rather", "than")
}

// unit reads "3 dc", "ch 2" or, when into is set, "ch-3 sps".
func (p *parser) unit(into bool) *Unit {
	p.eat("the", "a", "an", "each", "every", "all")
	if into {
		p.eat("the", "each", "every", "all")
		if t, ok := p.target(); ok {
			return &Unit{Target: &t}
		}
		return nil
	}
	start := p.i
	if c, ok := p.chain().(*Chain); ok && c != nil {
		return &Unit{N: c.N, Chain: true}
	}
	p.i = start
	n, _ := p.num()
	w, ok := p.what()
	if !ok || w.Shaping != 0 || w.Name != "" && w.Kind.Is() {
		return nil
	}
	p.eat("st", "sts", "stitch", "stitches")
	return &Unit{N: n, What: w}
}

// changeUnit reads "working tr instead of dc", "into ch-3 sps instead of ch-2 sps",
// "replacing sc with hdc", "in hdc".
func (p *parser) changeUnit() *Change {
	if p.eat("replacing", "replace", "swapping", "substituting", "changing", "exchanging") {
		word := p.at(-1).text
		one := p.unit(false)
		if one == nil {
			if word == "changing" && p.eat("to") {
				if one = p.unit(false); one != nil && !one.Chain && !one.N.Set() {
					p.eat("throughout")
					return &Change{New: one}
				}
			}
			return nil
		}
		by := p.eat("with", "by", "to")
		if !by && !p.eat("for") {
			return nil
		}
		other := p.unit(false)
		if other == nil {
			return nil
		}
		if by {
			return &Change{Old: one, New: other}
		}
		return &Change{Old: other, New: one} // "substituting hdc for sc"
	}
	p.eat("working", "making", "using", "with", "work", "make", "use", "crocheting")
	p.eat("all", "it")
	into := p.eat("into")
	at := p.i
	if !into && p.eat("in") {
		if n := p.unit(false); n != nil && !n.Chain && !n.N.Set() {
			p.eat("throughout")
			if p.ended() {
				return &Change{New: n} // "in hdc"
			}
		}
		p.i, into = at+1, true
	}
	n := p.unit(into)
	if n == nil {
		return nil
	}
	if !p.insteadWords() {
		p.eat("throughout")
		if into || n.Chain || n.N.Set() || at > 0 && p.toks[at-1].is("into") || !(at > 0 && p.toks[at-1].is("with", "using", "use", "in")) && !p.at(-1).is("throughout") {
			return nil
		}
		return &Change{New: n} // "using hdc"
	}
	p.eat("into", "in")
	o := p.unit(into)
	if o == nil {
		return nil
	}
	return &Change{Old: o, New: n}
}

// changeLast reads "working last dc in next ch-2 sp", "ending with tr in turning chain",
// "with 2 sc in last st": what the round ends with instead of its last stitch.
func (p *parser) changeLast() *Change {
	ends := p.eat("ending", "finishing", "end", "finish")
	if ends {
		p.lastRep()
		p.eat("row", "rnd", "round")
	} else if !p.eat("working", "placing", "making", "with", "work", "make", "place") {
		return nil // "rep Rnd 2, sc in last st" may come on top of it
	}
	p.eat("with", "by")
	p.eat("working", "making")
	p.eat("a", "an", "one", "the")
	moved := p.eat("last", "final")
	start := p.i
	it, ok := p.stitches()
	s, _ := it.(*Stitches)
	if !ok || s.Times.Set() || len(s.But) > 0 || s.What.Shaping != 0 {
		p.i = start
		return nil
	}
	if moved && s.N.Set() && !onlyOne(s.N) || len(s.Places) > 1 {
		return nil
	}
	turning := func(pl *Place) bool {
		return pl.Target.Sort == StartChain || pl.Of != nil && pl.Of.Target.Sort == StartChain
	}
	if len(s.Places) == 0 {
		if moved || !ends || s.What.Kind.Shape == stitch.Together {
			return nil
		}
		return &Change{Last: s} // "ending with a tr"
	}
	pl := &s.Places[0]
	if pl.Evenly || pl.Pick == Each || !moved && pl.Pick != Last && !turning(pl) || pl.N.Set() && !onlyOne(pl.N) {
		return nil
	}
	return &Change{Last: s, Moved: moved}
}

// changeLeave reads "omitting the last dc", "leaving last 2 sts unworked".
func (p *parser) changeLeave() *Change {
	leaves := p.eat("leaving", "leave")
	if leaves {
		p.eat("out", "off")
		leaves = !p.at(-1).is("out", "off")
	} else if !p.eat("omitting", "omit", "without", "skipping", "missing", "minus") {
		return nil
	}
	p.eat("out", "working")
	p.eat("the")
	if !p.eat("last", "final") {
		return nil
	}
	at := p.i
	n, ok := p.num()
	if !ok {
		n = One(p.from(at - 1))
	}
	w, is := p.what()
	if !is && !p.eat("st", "sts", "stitch", "stitches") || is && (!w.Kind.Is() || w.Kind == stitch.Of(stitch.Slip)) {
		return nil
	}
	if unworked := p.eat(unworkedWords...); leaves && !unworked {
		return nil
	}
	return &Change{Leave: n}
}

// alters reports whether the phrase up to a token may change what is worked: it names
// stitches, chains or loops, and does not say that these are as before.
func (p *parser) alters(end int) bool {
	t := p.tok()
	if t.is("do", "don't") && (p.at(1).is("fasten", "turn", "join", "cut", "break") || p.at(2).is("fasten", "turn", "join", "cut", "break")) || t.is("do", "don't") && !p.stitchy(p.i, end) {
		return false
	}
	if !t.is("do", "don't", "working", "work", "making", "having", "with", "using", "without", "increasing", "decreasing", "inc", "dec", "replacing", "placing",
		"substituting", "swapping", "beginning", "starting", "skipping", "omitting", "leaving", "leave", "adding", "putting", "going") || p.turningChainAhead() {
		return false
	}
	if t.is("omitting") && (p.at(1).is("turn", "join") || p.at(2).is("turn", "join")) {
		return false
	}
	for j := p.i; j < end; j++ {
		if p.toks[j].is("before", "set", "established", "usual", "color", "colors", "colour", "colours", "stripe", "stripes", "yarn", "front", "behind", "hook", "marker", "markers") {
			return false
		}
		if _, round := roundWord(&p.toks[j]); round && j > p.i && p.toks[j-1].kind == tNumber {
			return false // "working 2 rows C and 2 rows M alternately"
		}
	}
	for j := p.i + 1; j < end; j++ {
		if p.toks[j].is("joining", "turning") && j == p.i+1 {
			return false
		}
	}
	return p.stitchy(p.i, end) || t.is("increasing", "decreasing", "inc", "dec") || p.evident(p.i, end)
}
