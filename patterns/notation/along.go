package notation

import (
	"strings"

	"whorl/patterns/stitch"
)

// Along is how the sides of rounds that are repeated differ from those of the rounds
// they are like: "with one more group along each side", "but with 4 groups of 3 dc along
// each side", "but with 2 dc in each of next 3 gaps on every side".
type Along struct {
	Span
	// N is how many there are along each side: in all or, with More, more than before,
	// every round anew.
	N    Num
	More bool
	// Groups is set for several stitches in one place, else it is stitches.
	Groups bool
	// Of and Kind are the stitches of a group, or Kind alone the stitch; unset when not
	// said.
	Of   int
	Kind stitch.Kind
	// Brackets is set for "working the brackets 4 times": N of what is repeated in
	// brackets.
	Brackets bool
}

// sideWords are what "each side" is called.
var sideWords = []string{"side", "sides", "edge", "edges"}

// unitWords are what designers call the stitches in one space of a granny square.
var unitWords = []string{"group", "groups", "grp", "grps", "cluster", "clusters", "cl", "cls", "shell", "shells", "block", "blocks", "set", "sets",
	"fan", "fans", "trio", "trios", "bunch", "unit", "units", "grannies"}

// alongSides reads "with one more group along each side" behind the rounds that are
// repeated, or "continue adding one group to each side" by itself.
func (b *block) alongSides(sentence bool) bool {
	p := b.p
	start := p.i
	var ref *Ref
	if n := len(b.items); n > 0 {
		ref, _ = b.items[n-1].(*Ref)
	}
	first := sentence && p.tok().is("adding", "add", "increasing") // "Adding one group to each side, continue …"
	alone := first || sentence && p.eat("continue", "cont", "continuing", "carry", "keep")
	if alone {
		p.eat("on", "going")
		p.eat("working")
		if p.eat("in") {
			p.eat("the")
			p.eat("rounds", "rnds", "round", "rnd")
			p.eatKind(tComma)
		}
		ref = &Ref{Onward: true}
	}
	if ref == nil || ref.Along != nil {
		p.i = start
		return false
	}
	p.eat("but", "only")
	a := p.along(start)
	if a == nil || alone && !a.More {
		p.i = start
		return false
	}
	if first {
		p.eatKind(tComma)
		if p.eat("continue", "cont", "keep", "carry", "work", "rep", "repeat") {
			p.eat("on", "going", "working")
			if at := p.i; p.eat("in", "as") {
				p.eat("this", "the")
				p.eat("same")
				if !p.eat("way", "manner", "fashion", "rounds", "rnds", "before", "established", "set", "round", "rnd") {
					p.i = at
				}
			}
		}
		if !p.ended() && !p.tok().is("until", "till", "for") {
			p.i = start
			return false
		}
	}
	ref.Along = a
	if alone {
		ref.Span, ref.Last = a.Span, One(a.Span)
		b.add(ref)
		p.work = true
	}
	return true
}

// along reads how the sides differ; nil when the words say something else.
func (p *parser) along(start int) *Along {
	adds := false
	switch {
	case p.eat("with", "working", "having", "making", "placing", "work", "make", "there"):
		if p.at(-1).is("there") {
			p.eat("will", "is", "are")
			p.eat("be")
		}
		p.eat("working", "work", "adding")
		adds = p.at(-1).is("adding")
	case p.eat("adding", "add", "increasing", "increase", "inc"):
		adds = true
		p.eat("by")
	case p.eachSide() && p.eat("growing", "grows", "gaining", "gains", "increasing", "increases"):
		p.eat("by")
		return p.alongNumber(start, true, true)
	default:
		p.i = start
		return nil
	}
	first := p.i
	if a := p.alongNumber(start, adds, false); a != nil {
		return a
	}
	p.i = first
	return p.alongWords(start)
}

// alongNumber reads "one more 3-dc group on each side", "4 groups of 3 tr along each
// side".
func (p *parser) alongNumber(start int, adds, side bool) *Along {
	a := &Along{More: adds}
	more := func() { a.More = p.eat("more", "extra", "additional", "further", "new") || a.More }
	more()
	n, ok := p.num()
	if !ok && p.eat("a", "an", "another") {
		a.More = a.More || p.at(-1).is("another")
		n, ok = One(p.from(p.i-1)), true
	}
	if !ok {
		return nil
	}
	a.N = n
	more()
	if !p.alongUnit(a) {
		return nil
	}
	more()
	there, every := p.alongWhere()
	side = side || there
	if !p.ended() && !p.tok().is("until", "till") {
		return nil
	}
	// Without a word on sides, only one that is added can be meant.
	if !side && !(a.More && a.Groups && every && onlyOne(n)) {
		return nil
	}
	a.Span = p.from(start)
	return a
}

// alongUnit reads what there are so many of: "group", "3-dc cluster", "groups of 3 tr",
// "dc".
func (p *parser) alongUnit(a *Along) bool {
	p.eat("granny")
	start := p.i
	if n, ok := p.plainNumber(); ok {
		p.eatKind(tHyphen)
		if w, ok := p.what(); ok && w.Kind.Is() {
			a.Groups, a.Of, a.Kind = n > 1, n, w.Kind
			p.eat(unitWords...)
			return n > 1
		}
		p.i = start
	}
	if p.eat(unitWords...) {
		a.Groups = true
		if at := p.i; p.eat("of") {
			n, ok := p.plainNumber()
			if w, is := p.what(); ok && n > 1 && is && w.Kind.Is() {
				a.Of, a.Kind = n, w.Kind
			} else {
				p.i = at
			}
		}
		return true
	}
	if p.eat("st", "sts", "stitch", "stitches") {
		return true
	}
	if t, ok := p.target(); ok && t.Sort == ChainSpace && t.Name == "" {
		// "three 1-ch sps to fill": a group in each
		if at := p.i; p.eat("to") && p.eat("fill", "work", "go", "crochet") {
			p.eat("in", "into")
		} else {
			p.i = at
		}
		a.Groups = true
		return true
	}
	p.i = start
	w, ok := p.what()
	if ok && p.tok().kind == tHyphen && p.at(1).is(unitWords...) {
		p.i++ // "dc-groups"
	}
	switch {
	case !ok:
		return false
	case w.Name != "" || w.Kind.Is() && w.Kind.Shape != stitch.Plain:
		a.Groups = true
	case w.Kind.Is():
		if a.Kind = w.Kind; p.eat(unitWords...) {
			a.Groups = true // "dc group", of as many as there are
		}
	}
	return true
}

// alongWords reads "2 tr into each of next 3 gaps along every side", "[3 dc in next sp,
// ch 1] 4 times along each side", "the brackets 4 times": what each side has in all.
func (p *parser) alongWords(start int) *Along {
	a := &Along{Groups: true}
	first := p.i
	p.eat("the")
	if p.eat("brackets", "bracket", "bracketed", "instructions", "section", "parentheses", "part", "words") {
		for p.eat("in", "the", "brackets", "bracket", "parentheses", "section", "instructions", "part", "repeat", "between", "stitches", "sts") {
		}
		n, more, ok := p.times()
		if !ok {
			return nil
		}
		a.N, a.Brackets, a.More = n, true, more
		p.alongWhere()
		if !p.ended() {
			return nil
		}
		a.Span = p.from(start)
		return a
	}
	p.i = first
	var unit *Stitches
	if p.tok().kind == tOpen {
		inner := &block{p: p}
		if f := inner.bracket(nil); f != nil || len(inner.items) != 1 {
			return nil
		}
		r, ok := inner.items[0].(*Repeat)
		if !ok || !r.Times.Set() || r.More {
			return nil
		}
		a.N = r.Times
		for _, it := range r.Items {
			if s, ok := it.(*Stitches); ok {
				unit = s
			}
		}
	} else if it, ok := p.stitches(); ok {
		if unit = it.(*Stitches); unit.Places == nil && (p.eat("and") || p.eatKind(tComma)) && p.chain() != nil {
			unit.Places = p.places(false) // "3 tr and 1 ch in each of the two 1-ch sps"
		}
	}
	if unit == nil || len(unit.Places) != 1 || unit.Places[0].Pick != Next || !unit.What.Kind.Is() || len(unit.N.Values) > 1 {
		return nil
	}
	if !a.N.Set() {
		a.N = unit.Places[0].N
	}
	if side, _ := p.alongWhere(); !side || !a.N.Set() || !p.ended() {
		return nil
	}
	if a.Kind = unit.What.Kind; unit.N.Set() {
		a.Of = unit.N.For(0)
	}
	a.Groups = a.Of > 1
	a.Span = p.from(start)
	return a
}

// alongWhere reads "along each side of the square every round", and tells whether the
// sides were said, and that it is so every round.
func (p *parser) alongWhere() (side, every bool) {
	for {
		start := p.i
		switch {
		case p.eachSide():
			side = true
		case p.everyTime():
			every = true
		case p.eat("than") && (p.eat("before") || p.eat("on", "in") && p.lastOne() || p.lastOne()):
		case p.tok().is("instead"):
			p.i++
			if p.eat("of") {
				if _, _, ok := p.times(); !ok {
					p.num()
				}
			}
		default:
			p.i = start
			return side, every
		}
	}
}

// lastOne reads "the last round", "the time before".
func (p *parser) lastOne() bool {
	p.eat("the")
	p.eat("last", "previous", "prev")
	p.eat("round", "rnd", "row", "one", "time")
	return p.eat("before") || p.at(-1).is("round", "rnd", "row", "one", "time")
}

// everyTime reads "each round", "on every rnd", "each time".
func (p *parser) everyTime() bool {
	start := p.i
	p.eat("on", "in", "for", "with", "at")
	if p.eat("each", "every", "per") {
		p.eat("new", "following", "successive", "subsequent")
		if p.eat("round", "rnd", "row", "time") {
			return true
		}
	}
	p.i = start
	return false
}

// eachSide reads "along each side of the square", "a side", "between the corners".
func (p *parser) eachSide() bool {
	start := p.i
	if p.eat("between") {
		for p.eat("the", "each", "every", "all", "pair", "two", "2", "of", "4", "four", "any") {
		}
		if p.eat("corner", "corners") {
			p.eat("group", "groups", "shell", "shells", "sp", "sps", "space", "spaces")
			return true
		}
		p.i = start
		return false
	}
	p.eat("along", "on", "at", "to", "in", "across", "for", "down", "over", "onto", "up")
	p.eat("all") // "along all four sides"
	all := p.at(-1).is("all")
	p.eat("of")
	p.eat("the")
	if !p.eat("each", "every", "a", "per", "both") && !all {
		p.i = start
		return false
	}
	p.eat("of")
	p.eat("the")
	if p.tok().kind == tNumber || numberWords[p.tok().text] > 0 {
		p.i++
	}
	p.eat("straight", "long", "flat")
	if !p.eat(sideWords...) {
		p.i = start
		return false
	}
	if p.tok().is("of") {
		at := p.i
		p.i++
		p.eat("the", "each", "every", "your")
		n := 0
		for ; p.tok().kind == tWord && !p.tok().is("each", "every", "on", "in", "and", "then", "until", "till", "between") && n < 3; n++ {
			p.i++
		}
		if n == 0 {
			p.i = at
		}
	}
	return true
}

// along is ", with 1 more 3-dc group along each side" behind the rounds that are repeated.
func (s Style) along(a *Along) string {
	if a == nil {
		return ""
	}
	if a.Brackets {
		return ", working the brackets " + s.times(a.N)
	}
	n := s.Num(a.N)
	if a.More {
		n += " more"
	}
	unit := "st"
	switch {
	case a.Groups && a.Of > 1 && a.Kind.Is():
		unit = "group"
		if !s.one(a.N) {
			unit = "groups"
		}
		unit += " of " + s.Num(Num{Values: []int{a.Of}}) + " " + s.several(s.kind(a.Kind, Loop{}), a.Kind)
	case a.Groups:
		if unit = "group"; !s.one(a.N) {
			unit = "groups"
		}
	case a.Kind.Is():
		if unit = s.kind(a.Kind, Loop{}); !s.one(a.N) {
			unit = s.several(unit, a.Kind)
		}
	case !s.one(a.N):
		unit = "sts"
	}
	return strings.TrimRight(", with "+n+" "+unit, " ") + " along each side"
}
