package notation

import (
	"slices"
	"strings"

	"whorl/patterns/fault"
)

// colour reads "change to yarn B", "with colour A", "switch to Silt".
func (p *parser) colour() (Item, *fault.Fault) {
	start := p.i
	if name, ok := p.completesWith(); ok {
		return &Colour{p.from(start), name}, nil
	}
	switch {
	case p.tok().is("change", "changing", "switch") && p.hookChanged():
		return &Note{Span: p.from(start), Text: p.words(start)}, nil // "Change to a 5 mm hook"
	case p.eat("change", "changing", "switch", "switching", "swap", "swapping"):
		p.eat("colour", "color", "yarn", "yarns")
		p.eat("to")
	case p.tok().is("with", "using") && p.toolEnd() == 0:
		p.i++
	case p.tok().is("pick", "picking", "bring", "bringing") && p.at(1).is("up", "in") && p.yarnAt(p.i+2):
		p.i += 2 // "Pick up A, ch 1"
	case p.tok().is("drop", "dropping") && p.yarnAt(p.i+1):
		p.i++
		if _, ok := p.yarn(); !ok || !p.ended() && !p.tok().first {
			p.i = start
			return nil, nil
		}
		return &Note{Span: p.from(start), Text: p.words(start)}, nil
	case p.tok().is("still") && p.at(1).is("in", "with", "using"):
		p.i += 2 // "Still in Slate, ch 1"
	case p.tok().is("in") && p.tok().first && p.at(1).kind == tWord && capital(p.at(1).raw) && len(p.at(1).raw) > 2 && p.at(2).kind == tComma && !p.stitchy(p.i+1, p.i+2):
		p.i++ // "In Oat, ch 5."
	case p.tok().is("in") && p.yarnSaid(1):
		p.i++ // "in first colour make 37 ch", "in the contrast, 1 ch"
	case p.tok().is("in") && (p.anyName(1) != "" || p.inShade()):
		p.i++ // "In pale grey, 6 dc in a magic ring", "In white. Ch 6."
	case p.tok().is("start", "starting", "begin") && p.at(1).is("in", "with") && p.at(2).kind == tWord && len(p.at(2).raw) == 1 && capital(p.at(2).raw) && (p.at(3).kind == tStop || p.at(3).kind == tColon || p.at(3).kind == tComma):
		p.i += 2 // "Start in B."
	case p.tok().is("in") && p.at(1).kind == tWord && len(p.at(1).raw) == 1 && capital(p.at(1).raw) && p.at(2).kind == tComma:
		p.i++ // "then, in A, ch 5"
	case p.tok().is("yarn", "colour", "color") && p.at(1).kind == tWord && capital(p.at(1).raw) &&
		(p.at(2).kind == tStop || p.at(2).kind == tColon || p.at(2).kind == tComma):
		// "Yarn A. Join with …"
	default:
		return p.yarnAlone(), nil
	}
	with := p.at(-1).is("with", "using") || p.at(-1).is("in") && !p.toks[start].is("change", "switch")
	name, ok := p.yarn()
	if ok {
		p.eat("still", "again", "only", "throughout")
	}
	if t := p.tok(); !ok && with && t.kind == tWord && !p.stitchy(p.i, p.i+1) && !t.is("rs", "ws", "tail", "end", "a", "the", "right", "wrong") &&
		(capital(t.raw) && p.at(1).kind == tComma || p.at(1).kind == tColon || p.at(1).is("yarn", "colour", "color") && (p.at(2).kind == tComma || p.at(2).kind == tColon)) {
		name, ok = t.raw, true
		p.i++
		p.eat("yarn", "colour", "color")
	}
	if !ok && with {
		if name = p.anyName(0); name != "" {
			ok = true
			p.i += strings.Count(name, " ") + 1
		}
	}
	if !ok && p.at(-1).is("to") {
		// "change to Silt": any name
		at := p.i
		for p.tok().kind == tWord && !p.tok().is("in", "on", "at", "and", "for") {
			p.i++
		}
		if p.i > at {
			name, ok = p.words(at), true
		}
	}
	if !ok {
		p.i = start
		return nil, nil
	}
	p.yarnWhere()
	if p.at(-1).is("for", "the") || p.tok().is("for") {
		// "for the band": what it is for
		for k := p.tok(); k.kind == tWord && !k.is("and", "then", "work", "make") && !p.stitchy(p.i, p.i+1); k = p.tok() {
			p.i++
		}
	}
	return &Colour{p.from(start), name}, nil
}

// hookChanged reads "change back to the smaller hook", "change to a 5 mm hook and yarn B".
func (p *parser) hookChanged() bool {
	start := p.i
	for n := 0; n < 12 && !p.ended(); n++ {
		if p.i++; p.at(-1).is("hook", "hooks") {
			// "a hook one size smaller"
			at := p.i
			p.eat("that", "which")
			p.eat("is")
			p.eat("a", "half")
			p.num()
			if !p.eat("size", "sizes") || !p.eat("smaller", "larger", "bigger", "down", "up", "lower", "higher") {
				p.i = at
			}
			return true
		}
		if p.tok().first {
			break
		}
	}
	p.i = start
	return false
}

// yarnAlone reads the name of one of the pattern's yarns at the beginning of a line,
// with a comma, a colon or nothing behind it: "cocoa, ch 5".
func (p *parser) yarnAlone() Item {
	start := p.i
	if !p.tok().first {
		return nil
	}
	for _, name := range p.vocab.yarns {
		words := strings.Fields(name)
		for _, w := range words {
			if !p.eat(w) {
				break
			}
		}
		k := p.tok().kind
		if p.i == start+len(words) && (k == tComma || k == tColon || k == tDash || k == tStop || k == tEnd || p.tok().first) {
			return &Colour{p.from(start), p.words(start)}
		}
		p.i = start
	}
	return nil
}

// yarnNouns are the words for a yarn of one colour.
var yarnNouns = []string{"yarn", "colour", "color", "col", "shade", "cone", "skein"}

// threadNoun passes over "thread", "cotton", "wool" where that is what is joined or cut, and nothing is
// threaded: "join thread at corner", "new cotton".
func (p *parser) threadNoun() bool {
	before := p.at(-1)
	return p.i > 0 && before.kind == tWord && before.is("join", "joining", "rejoin", "attach", "attaching", "reattach", "the", "new", "next", "contrasting", "contrast", "first", "main", "other", "same") &&
		p.tok().is("thread", "cotton", "wool") && !p.at(1).is("through", "the", "a", "onto", "ribbon", "cord", "elastic", "ball", "hat") && p.eat("thread", "cotton", "wool")
}

// yarnParts are what a yarn is used for, or how it is told from the other.
var yarnParts = []string{"border", "edging", "edge", "trim", "background", "accent", "petal", "petals", "flower", "leaf", "stem", "center", "centre", "body",
	"outline", "brim", "band", "darker", "lighter", "dark", "light", "pale", "bright"}

// yarnSaid reports whether n tokens on a yarn is told by a word that means nothing else:
// "first colour", "the contrast yarn", "MC".
func (p *parser) yarnSaid(n int) bool {
	at := p.i
	defer func() { p.i = at }()
	p.i += n
	first := p.i
	if _, ok := p.yarn(); !ok {
		return false
	}
	for j := first; j < p.i; j++ {
		if p.toks[j].is(yarnNouns...) || p.toks[j].is("mc", "cc") {
			return true
		}
	}
	return false
}

// yarnAt reports whether a yarn is told at token i.
func (p *parser) yarnAt(i int) bool {
	at := p.i
	defer func() { p.i = at }()
	p.i = i
	_, ok := p.yarn()
	return ok || len(p.vocab.yarns) > 0 && slices.ContainsFunc(p.vocab.yarns, func(name string) bool {
		return p.eatAll(strings.Fields(name)...)
	})
}

// yarn reads the name of a yarn: "yarn B", "colour A", "MC", "new colour", "B".
func (p *parser) yarn() (string, bool) {
	if p.tok().is("the") || p.tok().is("a") && p.at(1).is("new", "yarn", "thread", "colour", "color", "contrasting") {
		p.i++
	}
	if p.eat("mc", "cc") || p.eatAll("main", "colour") || p.eatAll("main", "color") {
		if p.tok().kind == tNumber && !p.tok().spaced {
			p.i++ // CC2
			return strings.ToUpper(p.at(-2).raw) + p.at(-1).raw, true
		}
		return strings.ToUpper(p.at(-1).raw), true
	}
	if name, ok := p.shade(); ok {
		return name, true
	}
	which := p.i
	if (ordinalOf(p.tok()) > 0 || p.tok().kind == tOrdinal || p.tok().is("final", "last", "remaining")) && p.at(1).is(yarnNouns...) {
		p.i++
	}
	if p.tok().is(yarnParts...) && p.at(1).is(yarnNouns...) {
		p.i += 2
		return p.words(which), true // "the border colour"
	}
	p.eat("new", "next", "contrasting", "contrast", "first", "main", "other", "same")
	if p.i > which && p.at(-1).is("contrast", "main") && (p.ended() || p.tok().is("to", "in", "into", "with")) {
		return map[bool]string{true: "MC", false: "new"}[p.at(-1).is("main")], true // "in contrast, ch 1"
	}
	if p.eat(yarnNouns...) || p.threadNoun() {
		t := p.tok()
		if nth := ordinalOf(&p.toks[which]); nth > 1 || p.toks[which].is("main", "final", "last", "remaining") || p.toks[which].kind == tOrdinal && p.toks[which].value > 1 {
			return p.words(which), true // "second colour"
		}
		if t.is("no", "number") && p.at(1).kind == tStop && p.at(2).kind == tNumber {
			p.i += 2 // "shade no. 2"
			t = p.tok()
		} else if t.is("no", "number") && p.at(1).kind == tNumber {
			p.i++
			t = p.tok()
		}
		if at := p.i; p.eatKind(tOpen) {
			if name, ok := p.shade(); ok && p.eatKind(tClose) {
				return name, true // "yarn (pink)"
			}
			p.i = at
		}
		if t.kind == tWord && len([]rune(t.raw)) <= 2 && !t.is("in", "to", "at", "on") || t.kind == tNumber {
			p.i++
			return t.raw, true
		}
		if name, ok := p.shade(); ok {
			return name, true // "colour white"
		}
		return "new", true
	}
	t := p.tok()
	if t.kind == tWord && len(t.raw) == 1 && strings.ToUpper(t.raw) == t.raw {
		p.i++
		return t.raw, true
	}
	return "", false
}

// inShade reports whether a sentence begins with the colour that it is worked in, and the work or nothing
// comes behind it: "In white.", "In A ch 6".
func (p *parser) inShade() bool {
	at := p.i
	defer func() { p.i = at }()
	if !p.startsSentence() {
		return false
	}
	p.i++
	p.eat("the")
	if t := p.tok(); t.kind == tWord && len(t.raw) == 1 && capital(t.raw) {
		p.i++
	} else if _, ok := p.shade(); !ok {
		return false
	}
	if k := p.tok().kind; k == tStop || k == tColon || k == tComma || k == tEnd || p.tok().first {
		return true
	}
	if !p.eatKind(tDash) {
		p.eat("and")
	}
	return p.begins()
}

// begins reports whether work comes next.
func (p *parser) begins() bool {
	if p.instructs(p.i) {
		return true
	}
	at, ringed := p.i, p.ringed
	defer func() { p.i, p.ringed = at, ringed }()
	ring, _ := p.ring()
	return ring != nil
}

// placeOrRing reports whether what is named n tokens on, behind "in", is worked into or is a ring: "In MR:".
func (p *parser) placeOrRing(n int) bool {
	at, ringed := p.i, p.ringed
	defer func() { p.i, p.ringed = at, ringed }()
	p.i += n
	if ring, _ := p.ring(); ring != nil {
		return true
	}
	p.i = at + n
	if p.at(-1).is("in", "into") {
		p.i--
		return p.places(false) != nil
	}
	_, ok := p.target()
	return ok
}

// startsSentence reports whether the token is the first of a line or stands behind a full stop.
func (p *parser) startsSentence() bool {
	return p.i == 0 || p.tok().first || p.at(-1).kind == tStop || p.at(-1).kind == tColon
}

// anyName is the name of a yarn that begins n tokens on and is told by no letter, "red",
// "pale grey", when a comma and work stand behind it, or where nothing is made yet a full stop or a
// colon; "" for anything else.
func (p *parser) anyName(n int) string {
	end := n
	for ; end < n+3 && p.at(end).kind == tWord && !p.at(end).first; end++ {
		if i := p.i + end; p.stitchy(i, i+1) || p.vagueWord(i) || p.at(end).is(noShade...) {
			return ""
		}
	}
	before := p.work || !p.toks[p.i+n-1].first && p.at(n-2).kind != tStop && p.at(n-2).kind != tColon
	if k := p.at(end).kind; end == n || k != tComma && (before || k != tStop && k != tColon || p.placeOrRing(n)) {
		return ""
	}
	next := p.i + end + 1
	if p.toks[next].is("make", "work", "using") {
		next++
	}
	at := p.i
	p.i = next
	work := p.begins()
	if p.i = at; !work {
		return ""
	}
	p.i = at + end
	defer func() { p.i = at }()
	return p.words(at + n)
}

// noShade are words that name no yarn behind "in" or "with".
var noShade = []string{"rs", "ws", "right", "wrong", "side", "facing", "hook", "needle", "tail", "loop", "loops", "post", "stitch", "total", "all", "turn",
	"rounds", "rows", "pattern", "same", "first", "last", "both", "each", "back", "front", "marker", "mm", "size", "round", "row",
	"pairs", "spiral", "spirals", "parts", "pieces", "piece", "rib", "ribbing", "short", "order", "turn"}
