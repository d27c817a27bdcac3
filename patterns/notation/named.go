package notation

import (
	"slices"
	"strings"

	"whorl/patterns/fault"
)

// namesMade reads what has just been made by its name, which makes nothing more: "– V-st
// made", ", first shell formed", ": called a fan". The name may be unknown to the parser.
func (b *block) namesMade() bool {
	p := b.p
	start := p.i
	no := func() bool { p.i = start; return false }
	if len(b.items) == 0 || start == 0 {
		return no()
	}
	switch b.items[len(b.items)-1].(type) {
	case *Group, *Stitches:
	default:
		return no()
	}
	switch p.at(-1).kind {
	case tDash, tHyphen, tComma, tColon, tSemi, tEqual, tStop:
	default:
		if !p.tok().is("for", "as", "to") {
			return no()
		}
	}
	if c := b.startMade(); c != nil {
		b.add(c)
		return true
	} else if p.tok().is("for", "as", "to") {
		return no()
	}
	if _, ok := p.madeName(); !ok || !p.ended() && p.tok().kind != tStar && !p.tok().first {
		return no()
	}
	b.add(&Note{Span: p.from(start), Text: p.words(start)})
	return true
}

// madeName reads "first V-st made", "called a fan", and "V-st" behind a sign of equality,
// and is the name.
func (p *parser) madeName() (string, bool) {
	start := p.i
	equal := p.i > 0 && p.at(-1).kind == tEqual
	called := p.eat("called", "named")
	p.eat("the", "a", "an", "one", "your")
	if p.eat("first", "beginning", "beg") || p.eatKind(tOrdinal) || p.tok().kind == tNumber && p.tok().value == 1 && p.eatKind(tNumber) {
		p.eatKind(tHyphen)
	}
	at := p.i
	for n := 0; n < 5 && (p.tok().kind == tWord || p.tok().kind == tHyphen) && (p.i == at || !p.tok().first) && !p.tok().is(finished...); n++ {
		if p.tok().is("in", "into", "and", "then", "next", "each", "rep", "repeat", "turn", "join", "of", "skip", "miss", "sk", "sts", "to", "not", "as") {
			p.i = start
			return "", false
		}
		p.i++
	}
	name := p.words(at)
	if name == "" || !p.eat(finished...) && !called && !equal {
		p.i = start
		return "", false
	}
	if equal && !called && !p.at(-1).is(finished...) {
		// "= V-st", but "= sc": only a name of the designer's
		if ph, ok := p.vocab.own[Plain(name)]; !ok || ph.what.Name == "" {
			p.i = start
			return "", false
		}
	}
	return name, true
}

// finished are the words behind the name of what has been made.
var finished = []string{"made", "formed", "completed", "complete"}

// Defined is a stitch whose name the words tell as it is first made: "(dc, ch 1, dc) in
// next st (V-st made)".
type Defined struct {
	Span  // of the name
	Name  string
	Words string // "(dc, ch 1, dc) in same st"
	From  fault.Pos
	item  Item
}

// DefinedInside are the stitches that the words of a part name where they are made, and
// that the vocabulary does not know: groups, or several alike, in one place. One that is
// told of in two ways is left out.
func DefinedInside(lines []Line, v *Vocabulary, sizes []string) (l []Defined) {
	toks, _ := scan(lines)
	if len(toks) > maxTokens {
		return nil
	}
	var unlike []string
	for i := 1; i+2 < len(toks); i++ {
		switch toks[i].kind {
		case tOpen, tDash, tComma, tColon, tSemi, tHyphen, tStop:
		default:
			continue
		}
		p := newParser(toks, v, sizes)
		p.i = i + 1
		p.eat("first", "1st")
		p.eatKind(tOrdinal)
		first := p.i
		name, ok := p.madeName()
		if !ok || p.toks[first].is("beg", "beginning", "half") || toks[i].kind == tOpen && p.tok().kind != tClose {
			continue
		}
		words := strings.Fields(Plain(name))
		if _, known := v.lookup(Plain(name)); known || slices.ContainsFunc(words, func(w string) bool { return slices.Contains(notStitches, w) }) ||
			len(words) == 1 && (words[0] == "st" || words[0] == "stitch") {
			continue
		}
		d, ok := p.madeBefore(i)
		if !ok {
			continue
		}
		d.Name = name
		d.Span = p.from(first)
		if k := slices.IndexFunc(l, func(d Defined) bool { return Plain(d.Name) == Plain(name) }); k >= 0 {
			if !alikeIn(l[k].item, d.item) {
				unlike = append(unlike, Plain(name))
			}
			continue
		}
		l = append(l, d)
	}
	return slices.DeleteFunc(l, func(d Defined) bool { return slices.Contains(unlike, Plain(d.Name)) })
}

// notStitches are things of which it is said that they are made, and that are worked into
// or told of in other ways.
var notStitches = []string{"corner", "ring", "loop", "lp", "sp", "space", "arch", "increase", "decrease", "inc", "dec", "row", "round",
	"rnd", "side", "edge", "picot", "ch", "chain", "leaf", "petal", "hole", "buttonhole", "eyelet", "point", "mesh", "block", "crown", "toe", "square"}

// madeBefore is what is made in one place right before token i, as a definition of it. It
// is false when that is not several stitches in one place, or has begun before.
func (p *parser) madeBefore(i int) (Defined, bool) {
	for s := i - 1; s > 0 && s > i-40 && p.toks[s].kind != tStop && !p.toks[s+1].first; s-- {
		if k := p.toks[s].kind; k != tOpen && k != tNumber {
			continue
		}
		q := newParser(p.toks, p.vocab, p.sizes)
		q.i, q.work = s, true
		b := &block{p: q}
		if f := b.next(false); f != nil || q.i != i || len(b.items) != 1 {
			continue
		}
		var places *[]Place
		switch it := b.items[0].(type) {
		case *Group:
			if places = &it.Place; it.Times.Set() {
				return Defined{}, false
			}
		case *Stitches:
			if places = &it.Places; it.Times.Set() || it.N.For(0) < 2 {
				return Defined{}, false
			}
		}
		if places == nil || len(*places) != 1 || !onePlace(&(*places)[0]) {
			return Defined{}, false
		}
		d := Defined{From: p.toks[s].pos, item: b.items[0]}
		// The words up to the place; a definition goes where the stitch is worked.
		for q.i = s; q.i < i && (q.tok().pos.Line != (*places)[0].Line || q.tok().pos.Column < (*places)[0].Column); q.i++ {
		}
		for q.i > s+1 && q.at(-1).is("in", "into", "the") {
			q.i--
		}
		d.Words = q.words(s) + " in same st"
		(*places)[0] = Place{Pick: Same}
		return d, true
	}
	return Defined{}, false
}

// onePlace reports whether a place is one that nothing has gone into before.
func onePlace(pl *Place) bool {
	return (pl.Pick == Next || pl.Pick == First || pl.Pick == Last || pl.Pick == Nth || pl.Pick == Any) && pl.N.For(0) <= 1 && !pl.Over && !pl.Every && len(pl.Also) == 0
}

// alikeIn reports whether two definitions say the same.
func alikeIn(a, b Item) bool {
	s := Style{}
	return s.Items([]Item{a}) == s.Items([]Item{b})
}

// ownNumbered reads one of the designer's own stitches whose name begins with what any group or
// cluster may be called, "CL7", "shell 5".
func (p *parser) ownNumbered() (string, bool) {
	start := p.i
	if p.tok().kind == tWord && (p.at(1).kind == tNumber || p.at(1).kind == tHyphen) {
		if w, ok := p.what(); ok && w.Name != "" && p.i > start+1 {
			return w.Name, true
		}
	}
	p.i = start
	return "", false
}

// closingLoop passes over "closing loop of", "ch-1 that closes" before "next CL7": the top of a cluster,
// where its legs are drawn together.
func (p *parser) closingLoop() bool {
	start := p.i
	if p.eat("closing") {
		if (p.eat(spaceWords...) || p.eat("ch", "chain", "st", "stitch")) && p.eat("of") {
			return true
		}
	} else if p.eat("ch", "chain", "st", "stitch") || p.eat(spaceWords...) {
		p.eatKind(tHyphen)
		p.eatKind(tNumber)
		p.eat("that", "which")
		if p.eat("closing", "closes", "closed") {
			return true
		}
	}
	p.i = start
	return false
}
