package notation

import (
	"regexp"

	"whorl/patterns/stitch"
)

// vWords are the words for V-sts, of a target that is nothing else.
var vWords = regexp.MustCompile(`(?i)^Vs?([- ]?(st|stitch)(e?s)?)?$`)

// vStitch passes over the name that the trade has for two stitches in one place with a
// chain between them, "V-st", "V stitches", where the designer defines none of that name.
// How many chains there are differs, so it names only what is written out.
func (p *parser) vStitch() bool {
	start := p.i
	if _, own := p.vocab.lookup("v st"); !own && p.eat("v") {
		p.eatKind(tHyphen)
		if p.eat("st", "sts", "stitch", "stitches") {
			return true
		}
	}
	p.i = start
	return false
}

// vAlone reads "each V", "next V" for a V-st: the designer's own of that name, or "" for one that
// is only written out.
func (p *parser) vAlone() (name string, ok bool) {
	start := p.i
	if p.eat("v", "vs") && !p.eatKind(tHyphen) && (p.ended() || p.tok().first || p.tok().is("around", "across", "to", "along", "below", "of")) {
		if ph, own := p.vocab.lookup("v st"); own {
			name = ph.what.Name
		}
		return name, true
	}
	p.i = start
	return "", false
}

// shellOf reads "a shell of 5 dc", "fan of 7 tr", "5-dc shell" before the place that all of them go
// into.
func (p *parser) shellOf() (What, Num, bool) {
	start := p.i
	p.eat("a", "an", "one")
	named := p.eat("shell", "fan", "scallop", "group") && p.eat("of")
	n, ok := p.num()
	if ok && (named || p.eatKind(tHyphen)) {
		w, ok := p.what()
		plain := ok && w.Kind.Shape == stitch.Plain && w.Kind.Base >= stitch.Single && w.Name == ""
		if plain && (named || p.eat("shell", "fan", "scallop", "group")) && p.tok().is("in", "into", "over", "around") {
			return w, n, true
		}
	}
	p.i = start
	return What{}, Num{}, false
}
