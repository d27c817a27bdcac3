package notation

import (
	"fmt"
	"strings"

	"whorl/patterns/stitch"
)

// phrase reads the longest name of the vocabulary that starts here. Hyphens
// between its words are passed over.
func (p *parser) phrase() (phrase, bool) {
	start := p.i
	best, found, end := phrase{}, false, start
	var b strings.Builder
	for n := 0; n < p.vocab.longest+1; n++ {
		t := p.tok()
		if n > 0 && t.kind == tHyphen {
			p.i++
			t = p.tok()
		}
		if t.kind != tWord && !(t.kind == tNumber && t.frac == 0) {
			break
		}
		if n > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(t.text)
		p.i++
		if ph, ok := p.vocab.lookup(b.String()); ok {
			best, found, end = ph, true, p.i
		}
	}
	p.i = start
	if !found {
		if t := p.tok(); t.kind == tWord {
			if ph, ok := p.vocab.glued(t.text); ok {
				p.i++
				return ph, true
			}
		}
		return phrase{}, false
	}
	p.i = end
	return best, true
}

// foreign reports a stitch of the other set of terms.
func (p *parser) foreign(start int) {
	other := stitch.UK
	if p.vocab.terms == stitch.UK {
		other = stitch.US
	}
	p.report(fail(p.from(start), "terms",
		p.words(start)+" is a stitch of "+other.String()+" terms, and this pattern is in "+p.vocab.terms.String()+" terms",
		"Use one set of terms throughout, and say which: terms: "+other.String()+" or terms: "+p.vocab.terms.String()+"."))
}

// what reads the name of a stitch: dc, BLO sc, FPdc, dc3tog, dc 3 tog,
// 3-dc cluster, puff st, ch-3 picot, inc, or one of the designer's own.
func (p *parser) what() (What, bool) {
	start := p.i
	p.eat("standing")
	if w, ok := p.namedWhat(); ok {
		p.loopBehind(&w)
		return w, true
	}
	p.i = start
	loop, hasLoop := p.loopWords()
	if hasLoop {
		p.eat("of")
	}
	beg := false
	if p.tok().is("beg", "beginning", "first", "starting") && p.at(1).kind != tNumber && !p.at(1).is("ch", "chain", "chs") {
		at := p.i
		p.i++
		if _, ok := p.what(); !ok || hasLoop {
			p.i = start
			return What{}, false
		}
		p.i = at + 1
		beg = true
	}
	w, ok := p.namedWhat()
	if !ok {
		p.i = start
		return What{}, false
	}
	w.Beg = beg
	if hasLoop && !w.Loop.Set {
		w.Loop = Loop{true, loop}
	}
	p.loopBehind(&w)
	return w, true
}

// loopBehind reads a loop between the stitch and its place: "sc BLO in next
// st", "sc2tog in BLO over next 2 sts".
func (p *parser) loopBehind(w *What) {
	start := p.i
	p.eat("in", "through")
	loop, ok := p.loopWords()
	if t := p.tok(); !ok || w.Loop.Set ||
		!(t.is("in", "over", "around", "across", "into", "next", "each") || (p.i == start+1 || w.Kind.Shape == stitch.Together) && (t.kind == tComma || t.kind == tStop || t.kind == tNumber)) {
		p.i = start
		return
	}
	w.Loop = Loop{true, loop}
}

// namedWhat is what without the loops before it.
func (p *parser) namedWhat() (What, bool) {
	start := p.i
	if w, ok := p.legged(); ok {
		return w, true
	}
	p.i = start
	crossed := p.eat("crossed")
	ph, ok := p.phrase()
	if !ok {
		if w, ok := p.shaped(0); ok {
			return w, true
		}
		p.i = start
		return What{}, false
	}
	w := ph.what
	if crossed {
		if w.Kind.Base < stitch.Single {
			p.i = start
			return What{}, false
		}
		w.Kind.Manner |= stitch.Crossed
	}
	if w.Kind.Base >= stitch.Single && w.Kind.Shape == stitch.Plain {
		// dc 3 tog, dc 3 together
		if n := p.tok(); n.kind == tNumber && n.frac == 0 && n.value > 1 && n.value <= MaxLegs &&
			p.at(1).is("tog", "together", "togs") {
			w.Kind.Shape, w.Kind.Legs = stitch.Together, n.value
			p.i += 2
		} else if p.tok().is("dec", "decrease", "decs") {
			w.Kind.Shape, w.Kind.Legs = stitch.Together, 2
			p.i++
		} else if p.tok().is("inc", "increase", "incs") {
			w.Shaping = 1
			p.i++
		}
	}
	if p.tok().tight(tSlash) && p.at(1).is("rf", "rb") && w.Kind.Base >= stitch.Single {
		// UK tr/rf: raised at the front
		w.Loop = Loop{true, stitch.FrontPost}
		if p.at(1).is("rb") {
			w.Loop.Into = stitch.BackPost
		}
		p.i += 2
	}
	if ph.foreign {
		p.foreign(start)
	}
	if w.Kind.Is() && p.tok().is("st", "sts", "stitch", "stitches") && !p.at(-1).is("st", "sts", "stitch") {
		p.i++
	}
	return w, true
}

// legged reads 3-dc cluster, 5-dc popcorn, ch-3 picot.
func (p *parser) legged() (What, bool) {
	start := p.i
	if p.eat("ch", "chain") {
		p.eatKind(tHyphen)
		if n, ok := p.plainNumber(); ok {
			p.eatKind(tHyphen)
			if p.eat("picot", "picots") {
				return What{Kind: stitch.Kind{Base: stitch.Chain, Shape: stitch.Picot, Legs: n}}, true
			}
		}
		p.i = start
		return What{}, false
	}
	n, ok := p.plainNumber()
	if !ok {
		return What{}, false
	}
	p.eatKind(tHyphen)
	if p.eat("ch", "chain") {
		p.eatKind(tHyphen)
		if p.eat("picot", "picots") {
			return What{Kind: stitch.Kind{Base: stitch.Chain, Shape: stitch.Picot, Legs: n}}, true
		}
		p.i = start
		return What{}, false
	}
	at := p.i
	ph, ok := p.phrase()
	if !ok || ph.what.Kind.Base < stitch.Single || ph.what.Kind.Shape != stitch.Plain {
		p.i = start
		return What{}, false
	}
	p.eatKind(tHyphen)
	w, ok := p.shaped(n)
	if !ok {
		p.i = start
		return What{}, false
	}
	if ph.foreign {
		p.foreign(at)
	}
	w.Kind.Base = ph.what.Kind.Base
	w.Loop = ph.what.Loop
	return w, true
}

// shapes are the words for stitches that are bundles of others, with the base
// and the number of legs that are usual when the words do not say (common
// practice, no source).
var shapes = map[string]stitch.Kind{
	"cluster": {Base: stitch.Double, Shape: stitch.Cluster},
	"cl":      {Base: stitch.Double, Shape: stitch.Cluster},
	"puff":    {Base: stitch.Half, Shape: stitch.Puff, Legs: 3},
	"bobble":  {Base: stitch.Double, Shape: stitch.Bobble, Legs: 5},
	"bo":      {Base: stitch.Double, Shape: stitch.Bobble, Legs: 5},
	"popcorn": {Base: stitch.Double, Shape: stitch.Popcorn, Legs: 5},
	"pop":     {Base: stitch.Double, Shape: stitch.Popcorn, Legs: 5},
	"pc":      {Base: stitch.Double, Shape: stitch.Popcorn, Legs: 5},
	"ps":      {Base: stitch.Half, Shape: stitch.Puff, Legs: 3},
	"picot":   {Base: stitch.Chain, Shape: stitch.Picot, Legs: 3},
}

// shaped reads cluster, puff st, bobble and their like. With no legs given, a
// cluster is not understood: it has no usual number.
func (p *parser) shaped(legs int) (What, bool) {
	start := p.i
	t := p.tok()
	k, ok := shapes[t.text]
	if !ok {
		k, ok = shapes[strings.TrimSuffix(t.text, "s")]
	}
	if !ok || t.kind != tWord {
		return What{}, false
	}
	p.i++
	p.eatKind(tHyphen)
	p.eat("st", "sts", "stitch", "stitches")
	if k.Shape == stitch.Cluster && legs == 0 {
		// cluster of 3 dc
		if p.eat("of") {
			if n, ok := p.plainNumber(); ok {
				if ph, ok := p.phrase(); ok && ph.what.Kind.Base >= stitch.Single {
					k.Base, k.Legs = ph.what.Kind.Base, n
					return What{Kind: k}, true
				}
			}
		}
		p.i = start
		return What{}, false
	}
	if legs > MaxLegs {
		p.report(fail(p.from(start), "too-large", fmt.Sprintf("a stitch of %d legs is more than can be worked", legs), "Check the number."))
		legs = MaxLegs
	}
	if legs > 0 {
		k.Legs = legs
	}
	return What{Kind: k}, true
}

// loopWords reads BLO, FLO, "back loop only", "front loops", "through back
// loop" and the like.
func (p *parser) loopWords() (stitch.Into, bool) {
	start := p.i
	p.eat("the", "through")
	p.eat("the")
	p.eat("unused", "free", "remaining", "rem", "unworked")
	switch {
	case p.eat("blo", "bl", "blos", "tbl"):
		p.eat("only")
		return stitch.BackLoop, true
	case p.eat("flo", "fl", "flos", "tfl"):
		p.eat("only")
		return stitch.FrontLoop, true
	}
	into := stitch.Top
	switch {
	case p.eat("third") || p.tok().kind == tOrdinal && p.tok().value == 3 && p.at(1).is("loop", "loops", "lp", "lps"):
		if !p.at(-1).is("third") {
			p.i++
		}
		into = stitch.ThirdLoop
	case p.eat("top"):
		if !p.tok().is("loop", "loops") {
			p.i = start
			return stitch.Top, false
		}
	case p.eat("back"):
		into = stitch.BackLoop
	case p.eat("front"):
		into = stitch.FrontLoop
	case p.eat("both"):
	default:
		p.i = start
		return stitch.Top, false
	}
	p.eatKind(tHyphen)
	if into == stitch.BackLoop && p.eat("bump", "bumps", "ridge", "ridges", "hump", "humps", "bar", "bars") {
		return stitch.BackBump, true
	}
	if !p.eat("loop", "loops", "lp", "lps") {
		p.i = start
		return stitch.Top, false
	}
	p.eat("only")
	return into, true
}

// adverbs say how, which changes nothing; the first few how tightly.
var adverbs = []string{"loosely", "tightly", "carefully", "firmly", "snugly", "also", "again", "just", "simply"}

const tightness = 5

// stitches reads "2 dc in next st", "dc 5", "hdc in next 5 (6, 7) sts",
// "sc2tog 6 times", "hdc around".
func (p *parser) stitches() (it Item, ok bool) {
	start := p.i
	p.eat(adverbs...)
	n, hasN := Num{}, false
	w, ok := p.what()
	if !ok {
		// "BLO 24 sc"
		loop, looped := p.loopWords()
		if n, hasN = p.num(); !hasN {
			p.i = start
			return nil, false
		}
		if looped {
			defer func() {
				if s, ok := it.(*Stitches); ok && !s.What.Loop.Set {
					s.What.Loop = Loop{true, loop}
				}
			}()
		}
		p.eat("more")
		if w, ok = p.what(); !ok {
			p.i = start
			return nil, false
		}
		// "3 dc cluster": the number is that of the legs.
		if w.Kind.Shape == stitch.Plain && w.Kind.Base >= stitch.Single && len(n.Values) == 1 {
			if s, ok := p.shaped(n.Values[0]); ok {
				s.Kind.Base = w.Kind.Base
				w, n, hasN = s, Num{}, false
			}
		}
	}
	if !hasN && p.tok().kind == tNumber && p.tok().frac == 0 {
		at := p.i
		n, hasN = p.num()
		if hasN && p.timesWord() {
			p.i, n, hasN = at, Num{}, false
		}
		p.eat("st", "sts", "stitch", "stitches")
	}
	s := &Stitches{N: n, What: w}
	p.eat(adverbs[:tightness]...)
	if p.tok().is("once") && p.at(1).is("in", "into", "around") {
		p.i++
	}
	if at := p.i; w.Kind.Base != stitch.Slip && p.tok().is("to") {
		// "sc to last st" goes on up to there; only slip stitches go to a place.
		if pl, ok := p.extentPlace(at, true); ok {
			s.Places = []Place{pl}
		}
	}
	if s.Places == nil {
		s.Places = p.places(true)
	}
	if w.Kind.Shape == stitch.Plain && w.Kind.Base >= stitch.Single && p.tok().is("tog", "together") &&
		len(s.Places) == 1 && len(s.Places[0].N.Values) == 1 {
		// "sc next 2 sts tog"
		p.i++
		s.What.Kind = stitch.Tog(w.Kind.Base, s.Places[0].N.Values[0])
		s.Places[0].Over = true
	}
	p.fromSide(s)
	p.oneEach(s)
	if s.Places != nil || hasN {
		if loop, ok := p.loopAfter(); ok {
			s.What.Loop = Loop{true, loop}
		}
	}
	if times, more, ok := p.times(); ok && !more {
		s.Times = times
	}
	s.Span = p.from(start)
	p.work = true
	return s, true
}

// oneEach reads ", one in each row end" behind stitches that are spread along row
// ends: it says how they come to be so many.
func (p *parser) oneEach(s *Stitches) {
	if len(s.Places) != 1 || s.Places[0].Target.Sort != RowEnds {
		return
	}
	start := p.i
	open := p.eatKind(tOpen)
	if !open && !p.eatKind(tComma) && !p.eatKind(tDash) {
		return
	}
	if _, ok := p.plainNumber(); ok {
		p.what()
		p.eat("st", "stitch")
		if p.eat("in", "into", "for", "per") {
			p.eat("each", "every", "the", "end", "of")
			p.eat("of", "each", "every")
			if (p.rowEnds() || p.eat("row")) && (!open || p.eatKind(tClose)) {
				return
			}
		}
	}
	p.i = start
}

// fromSide reads ", inserting the hook from the back" behind a post.
func (p *parser) fromSide(s *Stitches) {
	if len(s.Places) != 1 || s.Places[0].Into != stitch.FrontPost && s.Places[0].Into != stitch.BackPost {
		return
	}
	start := p.i
	p.eatKind(tComma)
	if p.eat("inserting", "working", "putting") {
		p.eat("the")
		p.eat("hook")
	}
	if p.eat("from") {
		p.eat("the")
		switch {
		case p.eat("front"):
			s.Places[0].Into = stitch.FrontPost
			return
		case p.eat("back", "behind", "rear"):
			s.Places[0].Into = stitch.BackPost
			return
		}
	}
	p.i = start
}

// loopAfter reads a loop that stands after the place: "in next 2 sts BLO",
// "around, working in back loops only".
func (p *parser) loopAfter() (stitch.Into, bool) {
	start := p.i
	if p.eatKind(tComma) && !p.tok().is("working") {
		p.i = start
		return stitch.Top, false
	}
	p.eat("working")
	p.eat("in", "into", "through")
	into, ok := p.loopWords()
	t := p.tok()
	if !ok || !(t.kind == tComma || t.kind == tSemi || t.kind == tStop || t.kind == tEnd || t.kind == tClose || t.kind == tOpen) {
		p.i = start
		return stitch.Top, false
	}
	return into, true
}

// timesWord reports whether the current token says that the number before it
// is a number of times.
func (p *parser) timesWord() bool {
	return p.tok().kind == tTimes || p.tok().is("times", "time", "more")
}

// times reads "6 times", "× 6", "6x", "twice", "5 more times", "once more".
// More is set when the number leaves out the first time.
func (p *parser) times() (n Num, more, ok bool) {
	start := p.i
	no := func() (Num, bool, bool) { p.i = start; return Num{}, false, false }
	p.eat("a")
	more = p.eat("another", "further")
	switch {
	case more && p.tok().is("time"):
		p.i++
		n = Num{Span: p.from(start), Values: []int{1}}
	case p.tok().is("once", "twice", "thrice"):
		n = p.timesList(start)
	case p.eatKind(tTimes):
		if n, ok = p.num(); !ok {
			return no()
		}
		if len(n.Values) > 1 && p.at(-1).raw == "]" && (p.tok().kind == tEnd || p.tok().first) {
			// "inc x 6 [12]": the bracket is the count of the round.
			p.i = start + 1
			v, _ := p.plainNumber()
			n = Num{Span: p.from(start), Values: []int{v}}
		}
		p.eat("times")
	default:
		if n, ok = p.num(); !ok {
			return no()
		}
		if p.eat("more") {
			more = true
			if !p.eat("times", "time") && p.tok().kind != tTimes {
				return no()
			}
		} else if !p.eatKind(tTimes) && !p.eat("times", "time") {
			return no()
		}
	}
	if p.eat("more", "again") {
		more = true
	}
	if p.eat("in") {
		if !p.eat("total", "all") {
			p.i--
		} else {
			more = false
		}
	} else if p.eat("total", "altogether") {
		more = false
	}
	return n, more, true
}

// timesList reads "twice" or, with a word for each size, "once (twice, 3 times)".
func (p *parser) timesList(start int) Num {
	one := func() (int, bool) {
		switch {
		case p.eat("once"):
			return 1, true
		case p.eat("twice"):
			return 2, true
		case p.eat("thrice"):
			return 3, true
		}
		n, ok := p.sizeValue()
		p.eat("times")
		return n, ok
	}
	n, _ := one()
	values := []int{n}
	at := p.i
	if len(p.sizes) > 1 && p.eatKind(tOpen) {
		for {
			n, ok := one()
			if !ok {
				break
			}
			values = append(values, n)
			p.eatKind(tComma)
		}
		if !p.eatKind(tClose) || len(values) != len(p.sizes) {
			p.i, values = at, values[:1]
		}
	}
	return Num{Span: p.from(start), Values: values}
}

// Stitch reads the name of one stitch that stands alone: "hdc", "BLO sc",
// "half double crochet". It is false for anything else.
func (v *Vocabulary) Stitch(words string) (stitch.Kind, stitch.Into, bool) {
	toks, _ := scan([]Line{{Text: words, Line: 1, Column: 1}})
	p := newParser(toks[:len(toks)-1], v, nil)
	w, ok := p.what()
	if !ok || p.tok().kind != tEnd || !w.Kind.Is() {
		return stitch.Kind{}, stitch.Top, false
	}
	return w.Kind, w.Loop.Into, true
}

// Leading is the stitch and the number that words begin with: 5 and dc of "5 dc
// in same st, …". The zero Kind when they begin otherwise.
func (v *Vocabulary) Leading(words string) (stitch.Kind, int) {
	toks, _ := scan([]Line{{Text: words, Line: 1, Column: 1}})
	p := newParser(toks[:len(toks)-1], v, nil)
	p.eat("work", "make")
	n, ok := p.num()
	if !ok {
		return stitch.Kind{}, 0
	}
	w, _ := p.what()
	return w.Kind, n.Values[0]
}

// Times is the first number of times in the words: 3 of "[yo, …] 3 times"; 0
// when there is none.
func Times(words string) int {
	toks, _ := scan([]Line{{Text: words, Line: 1, Column: 1}})
	p := newParser(toks[:len(toks)-1], NewVocabulary(stitch.US, nil), nil)
	for ; p.tok().kind != tEnd; p.i++ {
		at := p.i
		if n, more, ok := p.times(); ok {
			if more {
				return n.Values[0] + 1
			}
			return n.Values[0]
		}
		p.i = at
	}
	return 0
}
