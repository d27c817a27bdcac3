package notation

import (
	"slices"
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// passage reads what is repeated, and how often, where no star marks it: "and repeat
// this all the way around", "repeat these 2 sts 5 more times", "and so on around". It is
// the sentence so far, without the chain that it begins with, or the sentence before.
// It reports whether there is such a passage.
func (b *block) passage(start int) (bool, *fault.Fault) {
	p := b.p
	at := p.i
	p.eat("this", "that", "these", "those", "the", "it", "both", "all")
	p.eat("whole", "same", "last", "above")
	if n := p.i; p.tok().kind == tNumber || numberWords[p.tok().text] > 0 {
		// "these 2 stitches", but "5 more times" says how often
		p.plainNumber()
		if !p.eat("st", "sts", "stitch", "stitches", "steps", "step", "instructions") {
			p.i = n
		}
	}
	p.eat("st", "sts", "stitches", "instructions", "sequence", "pattern", "steps", "step", "section", "combination", "motif", "sentence", "bit", "increase", "decrease")
	for p.eat("over", "again", "from", "for") {
	}
	p.eatKind(tComma)
	r := &Repeat{Star: true}
	var each *Target
	if n, more, ok := p.times(); ok {
		r.Times, r.More = n, more
	} else if e, ok := p.extent(); ok {
		r.Extent = e
	} else if each = p.inEvery(r); each == nil {
		p.i = at
		return false, nil
	}
	if s := b.openStar(); s != nil && len(b.items) > s.start {
		r.Span = p.from(start)
		b.wrap(s, r)
		return true, p.ending(r)
	}
	from := b.began()
	if from < 0 || each != nil && !goesInto(b.items[from:], each) {
		p.i = at
		return false, nil
	}
	r.Span = p.from(start)
	body := b.items[from:]
	if first, ok := body[0].(*Stitches); ok && len(first.Places) == 1 && first.Places[0].Pick == First && first.Places[0].Of == nil {
		// "1 sc in the first stitch and 2 sc in the next, and repeat this": what is
		// repeated goes into the next.
		again := *first
		again.Places = append([]Place(nil), first.Places...)
		again.Places[0].Pick, again.Places[0].Nth = Next, 0
		r.Items = append([]Item{&again}, body[1:]...)
		if r.Times.Set() && !r.More {
			r.Times = r.Times.less(1)
		}
		r.More = false
		b.add(r)
	} else {
		r.Items = append([]Item(nil), body...)
		b.items = append(b.items[:from:from], r)
	}
	return true, p.ending(r)
}

// openStar is the star that has not been repeated from, where there is one and no more.
func (b *block) openStar() (open *blockStar) {
	for _, s := range b.stars {
		if s.wrapped {
			continue
		}
		if open != nil || s.end >= 0 {
			return nil
		}
		open = s
	}
	return open
}

// inEvery reads "in every stitch around", "into each of the remaining spaces" behind "do this": as
// often as there are such places. It is nil for other words.
func (p *parser) inEvery(r *Repeat) *Target {
	start := p.i
	if !p.eat("in", "into") || !p.tok().is("each", "every", "all") {
		p.i = start
		return nil
	}
	pl, ok := p.place()
	if !ok || pl.Pick != Each || pl.N.Set() || len(pl.Also) > 0 || pl.Of != nil || pl.Extent.Sort > ToEnd || pl.Target.Name == Corner {
		p.i = start
		return nil
	}
	r.Extent = Extent{Sort: ToEnd, Text: "around"}
	return &pl.Target
}

// goesInto reports whether a passage goes into one place, of the sort of a target: then it may be
// worked in each.
func goesInto(items []Item, t *Target) bool {
	var place *Place
	for _, it := range items {
		var places []Place
		switch it := it.(type) {
		case *Stitches:
			places = it.Places
		case *Group:
			places = it.Place
		case *Chain, *Note:
			continue
		}
		if len(places) != 1 || place != nil && places[0].Pick != Same || place == nil && (places[0].Pick != Next && places[0].Pick != First || places[0].N.Set()) {
			return false
		}
		if place == nil {
			place = &places[0]
		}
	}
	return place != nil && place.Target.Sort == t.Sort
}

// less is a number less n, for each size.
func (n Num) less(by int) Num {
	l := n
	l.Values = nil
	for _, v := range n.Values {
		l.Values = append(l.Values, max(v-by, 0))
	}
	return l
}

// began is the first item of the passage that ends here, -1 when it cannot be told: of
// this sentence, if it makes stitches, else of the one before. What a round begins with
// is no part of it, but a chain that may stand for a stitch leaves that open.
func (b *block) began() int {
	for _, s := range b.stars {
		if !s.wrapped {
			return -1
		}
	}
	from := b.sentence
	if !makesAny(b.items[from:]) {
		from = b.before
	}
	for ; from < len(b.items); from++ {
		switch it := b.items[from].(type) {
		case *Chain:
			// One instruction behind it is all that there is to repeat.
			if it.Counts == nil && (len(it.N.Values) != 1 || it.N.Values[0] > 1) && !(from+2 == len(b.items) && makesAny(b.items[from+1:])) {
				return -1
			}
		case *Stitches, *Group:
			if b.besideBeginning(from) {
				continue
			}
			for _, it := range b.items[from:] {
				switch it.(type) {
				case *Stitches, *Group, *Chain, *Skip, *Repeat, *Note:
				default:
					return -1
				}
			}
			return from
		case *Counts, *Join, *Turn, *Colour, *Note, *Marker, *MagicRing, *InLoops:
		default:
			return -1
		}
	}
	return -1
}

// besideBeginning reports whether an item goes into the place that the chain before it stands on,
// with more behind it: "chain 3, 1 dc into the same stitch, 2 dc into the next, and do this …". It
// belongs to the beginning.
func (b *block) besideBeginning(i int) bool {
	s, ok := b.items[i].(*Stitches)
	if !ok || i == 0 || len(s.Places) != 1 || s.Places[0].Pick != Same || !makesAny(b.items[i+1:]) {
		return false
	}
	chains := false
	for _, it := range b.items[:i] {
		switch it := it.(type) {
		case *Chain:
			chains = true
		case *Stitches:
			if it.What.Kind != stitch.Of(stitch.Slip) {
				return false
			}
		case *Group, *Repeat:
			return false
		}
	}
	return chains
}

// makesAny reports whether instructions make stitches.
func makesAny(items []Item) bool {
	for _, it := range items {
		switch it.(type) {
		case *Stitches, *Group, *Repeat:
			return true
		}
	}
	return false
}

// goesOn reads "keep repeating this around", "continue like this to the end", "and so on
// around": a passage once more.
func (b *block) goesOn() (bool, *fault.Fault) {
	p := b.p
	start := p.i
	switch {
	case p.tok().is("on") && p.at(-1).is("so"):
		p.i++
	case start > 0 && p.at(-1).kind == tComma && p.timesInAll():
	case p.eat("keep", "continue", "carry", "go", "do"):
		p.eat("on", "going")
		if p.eat("repeating", "doing") {
			break
		}
		if p.at(-1).is("do") && p.tok().is("this", "these") {
			break
		}
		p.eat("in")
		if p.eat("like", "this", "the") {
			p.eat("this", "that", "same")
			p.eat("way", "manner", "fashion")
			if f := b.saidAgain(); f != nil {
				return false, f
			}
			break
		}
		p.eat("by")
		at := p.i
		if f := b.saidAgain(); f != nil || p.i == at {
			p.i = start
			return false, f
		} // "carry on, alternating 1 and 2"
	default:
		return false, nil
	}
	if ok, f := b.passage(start); ok || f != nil {
		return ok, f
	}
	p.i = start
	return false, nil
}

// inTurnWords begin the words that say again what is repeated.
var inTurnWords = []string{"working", "alternating", "making", "doing", "placing", "putting"}

// saidAgain reads ", working 1 and then 2 sc", ", alternating 1 and 2 in the stitches" behind "continue
// in this way": the numbers of the passage once more, which have to agree with it.
func (b *block) saidAgain() *fault.Fault {
	p := b.p
	start := p.i
	p.eatKind(tComma)
	at := p.i
	if !p.eat(inTurnWords...) && p.i == start {
		return nil
	}
	p.eat("between", "first")
	var said []int
	for {
		n, ok := p.plainNumber()
		if !ok {
			n = 1
		}
		one := p.eat("a", "an")
		w, named := p.what()
		if !ok && !one && !named {
			break
		}
		if w.Shaping > 0 {
			n *= 2
		}
		said = append(said, n)
		p.eat("st", "sts", "stitch", "stitches")
		p.inTheNext()
		if p.tok().kind == tComma && (p.at(1).is("and", "then") || p.at(1).kind == tNumber) {
			p.i++
		}
		for p.eat("and", "then") {
		}
	}
	p.eatAll("in", "turn")
	p.eat("alternately", "alternatingly")
	from := b.began()
	if s := b.openStar(); s != nil {
		from = s.start
	}
	if len(said) < 2 || from < 0 {
		p.i = start
		return nil
	}
	var made []int
	for _, it := range b.items[from:] {
		if s, ok := it.(*Stitches); ok {
			n := 1
			if s.N.Set() {
				n = s.N.For(0)
			}
			if s.What.Shaping > 0 {
				n *= 2
			}
			made = append(made, n)
		}
	}
	if !slices.Equal(said, made) {
		return fail(p.from(at), "repeat", "\""+strings.TrimSpace(p.words(at))+"\" does not agree with what is told before it", "Say what is repeated once: *sc in next st, 2 sc in next st; rep from * around.")
	}
	p.eatKind(tComma)
	return nil
}

// inTheNext passes over "in the next", "in each of the stitches" behind a number.
func (p *parser) inTheNext() {
	start := p.i
	if !p.eat("in", "into") {
		return
	}
	p.eat("each", "every", "one")
	p.eat("of")
	p.eat("the")
	p.eat("next", "following")
	p.eat("st", "sts", "stitch", "stitches", "one")
	if p.i == start+1 {
		p.i = start
	}
}

// timesInAll reports whether "eight times in all" comes next: said of the sentence before it.
func (p *parser) timesInAll() bool {
	at := p.i
	defer func() { p.i = at }()
	_, more, ok := p.times()
	return ok && !more && p.at(-1).is("all", "altogether", "total") && p.ended()
}

// elsewhere reads "repeat on the other long side", "do the same along the opposite edge",
// "work the second side to match", where what is worked has been fastened off or a line
// of its own says so: the same once more, of which nothing new is told.
func (b *block) elsewhere() bool {
	p := b.p
	start := p.i
	fastened := false
	for i := len(b.items) - 1; i >= 0 && !fastened; i-- {
		_, fastened = b.items[i].(*FastenOff)
		if _, note := b.items[i].(*Note); !note {
			break
		}
	}
	if p.depth > 1 || !p.work || !fastened && !p.tok().first {
		return false
	}
	switch {
	case p.eat("rep", "repeat"):
		p.eat("this", "the", "these")
		p.eat("edging", "border", "trim", "same", "process", "rows", "instructions")
	case p.eat("do", "work"):
		p.eat("the", "exactly")
		p.eat("same")
	default:
		return false
	}
	p.eat("on", "along", "for", "at", "across", "over", "round", "around", "to")
	p.eat("the")
	if p.eat("other", "opposite", "second", "remaining", "next") && !p.at(-1).is("next") {
		p.eat("long", "short", "side", "row", "foundation", "ear", "thumb", "neck", "two", "three")
		if p.eat("side", "sides", "edge", "edges", "end", "ends", "half", "piece", "pieces", "flap", "hand", "mitt", "sock", "sleeve", "strap", "corner", "armhole", "flaps") || p.at(-1).is("side", "ear", "thumb") {
			for p.tok().kind == tWord && p.tok().is("of", "the", "scarf", "blanket", "piece", "shawl", "band", "in", "same", "way", "manner", "to", "match", "likewise") {
				p.i++
			}
			if p.ended() && !p.tok().is("and", "then") && p.tok().kind != tComma && p.tok().kind != tOpen {
				return p.note(b, start, p.i)
			}
		}
	}
	p.i = start
	return false
}
