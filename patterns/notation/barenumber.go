package notation

import (
	"strings"

	"whorl/patterns/stitch"
)

// bareNumber reads the numbers of toy shorthand, "[3, inc] 3 times", "6, dec, 12, dec, 6": so many of
// the plain stitch that the rounds before are worked in, where that is known and an increase or a
// decrease stands beside the number.
func (b *block) bareNumber() bool {
	p := b.p
	t := p.tok()
	if !p.plain.Kind.Is() || len(p.sizes) > 1 || t.kind != tNumber || t.frac != 0 || t.value < 1 {
		return false
	}
	switch p.at(-1).kind {
	case tComma, tOpen, tStar, tColon:
	default:
		if p.i > 0 && !t.first {
			return false
		}
	}
	switch p.at(1).kind {
	case tComma, tSemi, tStop, tClose, tEnd, tStar:
	default:
		return false
	}
	if !b.shapesBefore() && !p.shapesBehind() {
		return false
	}
	p.i++
	at := p.from(p.i - 1)
	p.work = true
	b.add(&Stitches{Span: at, N: Num{Span: at, Values: []int{t.value}}, What: p.plain})
	return true
}

// shapesBefore reports whether the last instruction is one increase or decrease, with nothing that
// says where it goes or how often: the number behind "inc 6" may be a count.
func (b *block) shapesBefore() bool {
	if len(b.items) == 0 || b.p.at(-1).kind != tComma {
		return false
	}
	s, ok := b.items[len(b.items)-1].(*Stitches)
	return ok && s.What.shapes() && !s.N.Set() && !s.Times.Set() && len(s.Places) == 0
}

// shapesBehind reports whether an increase or a decrease stands behind the number.
func (p *parser) shapesBehind() bool {
	at := p.i
	defer func() { p.i = at }()
	p.i++
	if !p.eatKind(tComma) {
		return false
	}
	p.plainNumber()
	w, ok := p.what()
	return ok && w.shapes()
}

// shapes reports whether a stitch is an increase or a decrease.
func (w *What) shapes() bool {
	name := strings.ToLower(w.Name)
	return w.Shaping != 0 || name == "" && w.Kind.Shape == stitch.Together || name == "inc" || name == "dec" || name == "invdec" || name == "inv dec"
}

// plainOf is the plain stitch that rounds are worked in; it is no kind where there are several, or
// none.
func plainOf(rounds []*Round) (w What) {
	several := false
	var look func([]Item)
	look = func(items []Item) {
		for _, it := range items {
			switch it := it.(type) {
			case *Stitches:
				k := it.What.Kind
				if it.What.shapes() || k.Base == stitch.Slip {
					continue
				}
				if it.What.Name != "" || k != stitch.Of(k.Base) || k.Base < stitch.Single || w.Kind.Is() && w.Kind != k {
					several = true
				}
				w.Kind = k
				look(it.But)
			case *Group:
				look(it.Items)
			case *Repeat:
				look(it.Items)
				look(it.Ending)
			}
		}
	}
	for _, r := range rounds {
		look(r.Items)
	}
	if several {
		return What{}
	}
	return w
}
