package notation

import (
	"fmt"

	"whorl/patterns/stitch"
)

// madeOf reads "of 3 dc", "made with 5 tr", "of 3 loops" behind cluster, bobble, puff or
// popcorn: what it is a bundle of. Loops are those drawn up, where they are not said to be
// on the hook, which counts each with its yarn over.
func (p *parser) madeOf(k stitch.Kind) (stitch.Kind, bool) {
	start := p.i
	no := func() (stitch.Kind, bool) { p.i = start; return stitch.Kind{}, false }
	open := p.eatKind(tOpen)
	p.eat("made", "worked", "consisting", "formed")
	if !p.eat("of", "with", "from") && !(open && p.defining) {
		return no()
	}
	n, ok := p.plainNumber()
	if !ok {
		return no()
	}
	at := p.i
	switch ph, ok := p.phrase(); {
	case ok && ph.what.Kind.Base >= stitch.Single && ph.what.Kind.Shape == stitch.Plain:
		if k.Base = ph.what.Kind.Base; ph.foreign {
			p.foreign(at)
		}
	case k.Shape == stitch.Puff && p.eat("loop", "loops", "lp", "lps", "strand", "strands"):
		if p.eat("on") {
			p.eat("the", "your")
			if !p.eat("hook") || n < 3 {
				return no()
			}
			n = (n - 1) / 2
		}
	default:
		return no()
	}
	if n < 1 || open && !p.eatKind(tClose) {
		return no()
	}
	if n > MaxLegs {
		p.report(fail(p.from(start), "too-large", fmt.Sprintf("a stitch of %d legs is more than can be worked", n), "Check the number."))
		n = MaxLegs
	}
	k.Legs = n
	return k, true
}
