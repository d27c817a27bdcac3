package notation

import "whorl/patterns/fault"

// skipsKinds reads "and hdc", ", hdc and next sc" behind "sk next dc" into the skip: more stitches that are
// told by their kind, to the end of the phrase.
func (p *parser) skipsKinds(s *Skip) (bool, *fault.Fault) {
	start := p.i
	if pl := s.Place; s.Target.Sort != OfKind || s.Unworked || s.And != nil || pl != nil && (pl.Pick != Next && pl.Pick != First || pl.Of != nil || pl.Below != 0) {
		return false, nil
	}
	no := func() (bool, *fault.Fault) { p.i = start; return false, nil }
	last := s
	var more *Skip
	for and := false; !and; {
		comma := p.eatKind(tComma)
		if and = p.eat("and"); !and && !comma {
			return no()
		}
		at := p.i
		p.eat("the")
		next := p.eat("next", "following", "foll", "nxt")
		n, counted := p.num()
		t, ok := p.target()
		if !ok || t.Sort != OfKind || !p.ended() {
			return no()
		}
		if words := p.from(at); !next && (and && p.madeToo(&t) || !and && !counted && t.Kind != s.Target.Kind && p.tok().kind == tComma && p.at(1).kind == tOpen) {
			f := fail(words, "both-ways", "\""+p.words(at)+"\" can be read as skipped as well, or as made with what follows",
				"Write, for example: sk next sc and next dc, or: sk next sc, (dc, ch 1, dc) in next sc.")
			p.i = start
			return false, f
		}
		a := &Skip{Span: p.from(at), Target: t, Place: &Place{Span: p.from(at), Pick: Next, Target: t}}
		if counted {
			a.N, a.Place.N = n, n
		}
		if more == nil {
			more = a
		} else {
			last.And = a
		}
		last = a
	}
	if s.And = more; s.Place == nil {
		s.Place = &Place{Span: s.Span, Pick: Next, N: s.N, Target: s.Target}
	}
	return true, nil
}

// madeToo reports whether chains and the same stitch in its place follow, as where "dc, ch 1, dc in next sc" is
// written without brackets.
func (p *parser) madeToo(t *Target) bool {
	at := p.i
	defer func() { p.i = at }()
	if !p.eatKind(tComma) || p.chain() == nil {
		return false
	}
	p.eatKind(tComma)
	p.eat("and")
	p.num()
	w, ok := p.what()
	return ok && w.Kind == t.Kind && p.tok().is("in", "into", "all")
}
