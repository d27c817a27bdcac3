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
	for words := ""; p.i == start || p.vocab.begins(words); {
		t := p.tok()
		if p.i > start && t.kind == tHyphen {
			p.i++
			t = p.tok()
		}
		if t.kind != tWord && !(t.kind == tNumber && t.frac == 0) {
			break
		}
		if words == "" {
			words = t.text
		} else {
			words += " " + t.text
		}
		p.i++
		if ph, ok := p.vocab.lookup(words); ok {
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
	if p.tok().is("pop", "puff") && p.at(1).is("it", "them", "your", "that", "this", "him", "her") {
		return What{}, false // "pop it on somebody you love"
	}
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
		p.i++
		p.eatKind(tHyphen) // "beg-pc"
		at := p.i
		if _, ok := p.what(); !ok || hasLoop {
			p.i = start
			return What{}, false
		}
		p.i = at
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
		!(t.is("in", "over", "around", "across", "into", "next", "each") || t.is("to", "until", "till", "up") && p.extentAhead() || (p.i == start+1 || w.Kind.Shape == stitch.Together) && (t.kind == tComma || t.kind == tStop || t.kind == tNumber)) {
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
	if w, ok := p.shapingInWords(); ok {
		return w, true
	}
	if p.eat("invisible", "inv") {
		w, ok := p.namedWhat()
		if ok = ok && (w.Shaping < 0 || w.Kind.Shape == stitch.Together && w.Kind.Legs == 2); ok {
			w.Kind.Manner |= stitch.Invisible
			return w, true
		}
		p.i = start
	}
	ph, ok := p.phrase()
	crossed := !ok && p.eat("crossed") // no name of the designer's, "crossed pair"
	if crossed {
		ph, ok = p.phrase()
	}
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
		if n := p.together(); n > 0 {
			w.Kind.Shape, w.Kind.Legs = stitch.Together, n
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
	if p.eat("loop", "lp", "strand") && n > 0 {
		p.eatKind(tHyphen)
		if w, ok := p.shaped(n); ok && w.Kind.Shape == stitch.Puff {
			return w, true // 3-loop puff st
		}
		p.i = start
		return What{}, false
	}
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
	if legs == 0 && k.Shape != stitch.Picot {
		if of, ok := p.madeOf(k); ok {
			return What{Kind: of}, true
		}
		if k.Shape == stitch.Cluster {
			p.i = start
			return What{}, false
		}
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

// NamesLoop reports whether a name is that of a loop which stitches go into, "3rd loop", "BLO", and of no stitch.
func NamesLoop(name string) bool {
	toks, _ := scan([]Line{{Text: name, Line: 1, Column: 1}})
	p := newParser(toks[:len(toks)-1], NewVocabulary(stitch.US, nil), nil)
	_, ok := p.loopWords()
	return ok && p.tok().kind == tEnd
}
