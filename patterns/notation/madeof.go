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

// Bundled makes one stitch of several plain ones in one place, where what they are called is always
// closed at the top: "popcorn: 5 dc in same st". A cluster may be left open. Those of a bobble that
// are worked together in one place are one too: "bobble: 5 dc worked together in the same st".
func Bundled(items []Item, shape stitch.Shape) []Item {
	if shape != stitch.Bobble && shape != stitch.Popcorn && shape != stitch.Puff || len(items) == 0 {
		return items
	}
	s, ok := items[0].(*Stitches)
	if !ok || s.What.Name != "" || s.Times.Set() || len(s.But) > 0 || len(s.Places) != 1 {
		return items
	}
	legs, pl := s.What.Kind.Legs, &s.Places[0]
	switch s.What.Kind.Shape {
	case stitch.Together:
		if shape != stitch.Bobble || pl.Pick != Same || s.N.Set() {
			return items
		}
	case stitch.Plain:
		legs = s.N.For(0)
		if s.What.Kind.Base < stitch.Half || len(s.N.Values) != 1 || legs < 2 || legs > MaxLegs || pl.Pick != Same && pl.Pick != Next || pl.N.For(0) > 1 {
			return items
		}
	default:
		return items
	}
	for _, it := range items[1:] {
		switch it.(type) {
		case *Note, *Chain:
		default:
			return items
		}
	}
	one := *s
	one.What.Kind.Shape, one.What.Kind.Legs, one.N = shape, legs, Num{}
	return append([]Item{&one}, items[1:]...)
}
