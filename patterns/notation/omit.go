package notation

import (
	"fmt"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// lastRep reads "at the end of last rep", "on final repeat".
func (p *parser) lastRep() bool {
	start := p.i
	if p.tok().is("at", "from") && !(p.at(1).kind == tStar) {
		p.i++
		p.eat("the")
		p.eat("end")
	}
	p.eat("on", "of", "in")
	p.eat("the")
	if p.eat("last", "final") && p.eat("rep", "repeat", "time") {
		return true
	}
	p.i = start
	return false
}

// lastRepAhead reports whether "of last rep" comes next.
func (p *parser) lastRepAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	return p.lastRep()
}

// whatLiesBetween reads "the single tr between", "all tr between the shells" behind "omitting":
// what the repeat passes over anyway, since it goes from figure to figure.
func (p *parser) whatLiesBetween() bool {
	start := p.i
	p.eat("the", "all", "every", "each", "any")
	p.eat("the")
	p.eat("single", "lone")
	if _, ok := p.target(); ok && p.eat("between", "in-between", "inbetween") {
		if p.eat("the", "them", "two", "each"); !p.ended() {
			p.target()
		}
		if p.ended() || p.tok().first {
			return true
		}
	}
	p.i = start
	return false
}

// omitting reads what the last repeat leaves out: "last ch 2", "last dc", "last 2 dc on
// final rep", "after **". The word omitting has been read.
func (p *parser) omitting(r *Repeat) *fault.Fault {
	p.eat("out", "off")
	if p.whatLiesBetween() {
		return nil
	}
	p.eat("the")
	p.eat("last", "final")
	if p.eat("after") && p.tok().kind == tStar {
		p.i++
		r.AtStop = true
		return nil
	}
	if p.tok().kind == tOpen && len(r.Items) > 0 {
		return p.omitsGroup(r)
	}
	at := p.i
	n, counted := p.num()
	if p.chain() != nil || p.tok().kind == tHyphen {
		p.lastRep()
		r.Omit = 1
		if n := len(r.Items); n > 2 {
			_, skip := r.Items[n-1].(*Skip)
			if _, chain := r.Items[n-2].(*Chain); skip && chain {
				r.Omit = 2 // "…, ch 2, sk 1 dc; rep from * omitting ch 2 at end of last rep"
			}
		}
		return nil
	}
	w, ok := p.what()
	if !ok && p.eat("st", "sts", "stitch", "stitches") {
		ok = true
	}
	if !ok {
		return p.stuck()
	}
	r.Omit = 1
	p.endsOther(r, w, at)
	if !p.lastRep() && p.places(false) != nil {
		p.lastRep()
		return nil
	}
	if !counted {
		n = One(p.from(at))
	}
	r.shorten(n, w)
	return nil
}

// endsOther notices that the stitch left out is none that the repeat ends with: "omitting
// last dc" where the last of it is a sc.
func (p *parser) endsOther(r *Repeat, w What, at int) {
	i := len(r.Items) - 1
	for ; i >= 0; i-- {
		switch r.Items[i].(type) {
		case *Note, *Marker, *Stop:
			continue
		}
		break
	}
	if i < 0 || w.Name != "" || w.Kind != stitch.Of(w.Kind.Base) || w.Kind.Base < stitch.Single {
		return
	}
	if s, ok := r.Items[i].(*Stitches); ok && s.What.Name == "" && s.What.Kind.Shape == stitch.Plain && s.What.Kind.Base >= stitch.Single && s.What.Kind.Base != w.Kind.Base {
		t := p.vocab.terms
		f := fail(p.from(at), "omit", fmt.Sprintf("the repeat ends with %s, not with the %s that is left out", s.What.Kind.Base.Name(t), w.Kind.Base.Name(t)),
			"Check which stitch the last repeat does without.")
		f.Severity = fault.Warning
		p.report(f)
	}
}

// omitsGroup reads "[3 dc, ch 1] on last rep" where the repeat ends with that: what the last
// repeat leaves out, or leaves out once of the times that it makes it.
func (p *parser) omitsGroup(r *Repeat) *fault.Fault {
	start := p.i
	p.i++
	group, f := p.items(true)
	if f != nil {
		return f
	}
	p.eatKind(tClose)
	words := p.words(start)
	if at := p.i; !p.lastRepAhead() && p.places(false) == nil {
		p.i = at
	}
	n := len(r.Items)
	rep, repeats := r.Items[n-1].(*Repeat)
	in, grouped := r.Items[n-1].(*Group)
	switch {
	case grouped && alike(in.Items, group):
		r.Omit = 1
	case repeats && rep.Times.Set() && rep.Ending == nil && alike(rep.Items, group):
		r.Omit = 1
		if less, ok := rep.Times.without(One(rep.Span)); ok {
			short := *rep
			short.Times = less
			r.Ending = []Item{&short}
		}
	case len(group) > 0 && len(group) < n && alike(r.Items[n-len(group):], group):
		r.Omit = len(group)
	default:
		at := p.from(start)
		return fail(at, "omit", "the repeat does not end with "+words, "Leave out what its last words make, for example: omitting last ch 2.")
	}
	p.lastRep()
	return nil
}

// alike reports whether instructions make the same stitches and chains, wherever they go.
func alike(a, b []Item) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		switch x := a[i].(type) {
		case *Stitches:
			y, ok := b[i].(*Stitches)
			if !ok || x.What.Kind != y.What.Kind || x.What.Name != y.What.Name || max(x.N.For(0), 1) != max(y.N.For(0), 1) {
				return false
			}
		case *Chain:
			if y, ok := b[i].(*Chain); !ok || x.N.For(0) != y.N.For(0) {
				return false
			}
		case *Skip:
			if y, ok := b[i].(*Skip); !ok || max(x.N.For(0), 1) != max(y.N.For(0), 1) || x.Target.Sort != y.Target.Sort || x.Target.Kind != y.Target.Kind {
				return false
			}
		default:
			return false
		}
	}
	return true
}

// endsShort reads "ending last rep 1 dc short", "working 1 dc less at end of last rep":
// what the last repeat is short of.
func (p *parser) endsShort(r *Repeat) bool {
	start := p.i
	ends := p.eat("ending", "end", "finishing")
	said := ends && p.lastRep()
	if !said && (ends || !p.eat("working", "making")) {
		p.i = start
		return false
	}
	at := p.i
	n, ok := p.num()
	if !ok && p.eat("a", "an", "one") {
		n, ok = One(p.from(at)), true
	}
	w, stitch := p.what()
	if !stitch {
		p.eat("st", "sts", "stitch", "stitches")
	}
	if !ok || !p.eat("short", "less", "fewer") || !said && !p.lastRep() || !r.shorten(n, w) {
		p.i = start
		return false
	}
	r.Omit = 1
	return true
}

// shorten leaves n stitches of a kind out of the last instruction of the last repeat
// where that makes more of them: of "dc in each of next 26 dc" the last dc is one. It
// reports whether it does.
func (r *Repeat) shorten(n Num, w What) bool {
	last, ok := r.Items[len(r.Items)-1].(*Stitches)
	if !ok || w.Kind.Is() && last.What.Kind != w.Kind || w.Name != last.What.Name || last.Times.Set() || len(last.Places) > 1 {
		return false
	}
	short := *last
	switch {
	case len(last.Places) == 1 && last.Places[0].Pick == Next && last.Places[0].N.Set() && onlyOne(last.N):
		short.Places = []Place{last.Places[0]}
		if short.Places[0].N, ok = last.Places[0].N.without(n); !ok {
			return false
		}
	case last.N.Set() && (len(last.Places) == 0 || !last.Places[0].N.Set() && last.Places[0].Pick != Each):
		if short.N, ok = last.N.without(n); !ok {
			return false
		}
	default:
		return false
	}
	r.Ending = []Item{&short}
	return true
}

// onlyOne reports whether a number is one, said or not.
func onlyOne(n Num) bool {
	for _, v := range n.Values {
		if v != 1 {
			return false
		}
	}
	return true
}

// without is a number less n; it is false where that leaves none.
func (n Num) without(m Num) (Num, bool) {
	out := n
	out.Values = nil
	for i := range max(len(n.Values), len(m.Values)) {
		v := n.For(i) - m.For(i)
		if v <= 0 {
			return n, false
		}
		out.Values = append(out.Values, v)
	}
	return out, true
}

// insteadOfSkip reads "instead of skipping 2 sts", "rather than missing next 2 dc" behind what the last
// repeat ends with, where the skip is what the others end with.
func (p *parser) insteadOfSkip(r *Repeat) bool {
	start := p.i
	if n := len(r.Items); n > 1 && (p.eatAll("instead", "of") || p.eatAll("rather", "than") || p.eatAll("in", "place", "of")) {
		p.eat("the", "last", "final")
		said, ok := r.Items[n-1].(*Skip)
		it, f := p.skip()
		if s, is := it.(*Skip); ok && is && f == nil && (!s.N.Set() || sameNum(s.N, said.N)) {
			return true
		}
	}
	p.i = start
	return false
}
