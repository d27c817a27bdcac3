package notation

// notInto reads "do not work into turning ch", "not working in the last st", "(do not work in top of
// turning ch)" for what it leaves unworked, and "do not work in first st" before the work of a row for
// what it skips.
func (b *block) notInto() bool {
	p, start := b.p, b.p.i
	ref := b.afterRef()
	s := b.notWorked()
	if s == nil || ref && s.Target.Sort == StartChain {
		p.i = start
		return false
	}
	s.Span = p.from(start)
	b.add(s)
	return true
}

// notIntoBracket reads the same in brackets up to the token close.
func (b *block) notIntoBracket(open, close int) bool {
	p := b.p
	p.i = open + 1
	s := b.notWorked()
	if p.eatKind(tStop); s == nil || p.i != close {
		p.i = open
		return false
	}
	p.i = close + 1
	s.Span = p.from(open)
	b.add(s)
	return true
}

// notWorked reads the words themselves, and is nil for others.
func (b *block) notWorked() *Skip {
	p := b.p
	made := false // the verb has been read
	switch {
	case p.eatAll("do", "not") || p.eat("don't", "never"):
	case p.eat("not", "without"):
		if made = p.eat("working", "crocheting", "making"); !made {
			return nil
		}
	case !b.afterRef() && p.eat("omitting", "ignoring", "omit", "ignore"):
		p.eat("the")
		at := p.i
		if t, ok := p.startChain(); ok && (t.Chains == 0 || p.tok().kind != tNumber) && p.leftHere() {
			return &Skip{Unworked: true, Target: t, Place: &Place{Span: p.from(at), Pick: Next, Target: t}}
		}
		return nil
	default:
		return nil
	}
	if !made && !p.eat("work", "crochet", "make", "st", "stitch") {
		return nil
	}
	if p.eat("a", "any"); !p.eat("st", "sts", "stitch", "stitches") {
		p.what()
	}
	if !p.eat("in", "into") {
		return nil
	}
	p.eat("to")
	p.eat("the")
	if p.eat("top") {
		if !p.eat("of") {
			return nil
		}
		p.eat("the")
	}
	at := p.i
	if t, ok := p.startChain(); ok && p.leftHere() {
		return &Skip{Unworked: true, Target: t, Place: &Place{Span: p.from(at), Pick: Next, Target: t}}
	}
	p.i = at
	pl, ok := p.place()
	if !ok || pl.Target.Sort != AnyStitch && pl.Target.Sort != OfKind || pl.Of != nil || !p.leftHere() {
		return nil
	}
	switch {
	case pl.Pick == Last:
		return &Skip{Unworked: true, N: pl.N, Target: pl.Target, Place: &pl}
	case pl.Pick == First && !b.works():
		return &Skip{N: pl.N, Target: pl.Target, Place: &pl}
	}
	return nil
}

// leftHere reads "at end of row" behind such a place, and reports whether the phrase ends there.
func (p *parser) leftHere() bool {
	if at := p.i; p.eat("at", "on") {
		p.eat("the")
		p.eat("end")
		p.eat("of")
		p.eat("the", "this")
		if !p.eat("row", "rnd", "round", "end") && !p.at(-1).is("end") {
			p.i = at
		}
	}
	return p.ended()
}

// works reports whether stitches have been worked before in the same round.
func (b *block) works() bool {
	for _, it := range b.items {
		switch it.(type) {
		case *Stitches, *Group, *Repeat, *Skip:
			return true
		}
	}
	return false
}

// leftLast puts a turning chain that is said to be left before the work of its row behind it: "Ch 2, turn.
// Do not work into turning ch. Dc in each dc across."
func leftLast(items []Item) []Item {
	for i, it := range items {
		switch it := it.(type) {
		case *Stitches, *Group, *Repeat:
			return items
		case *Skip:
			if !it.Unworked || it.Target.Sort != StartChain {
				continue
			}
			last := i
			for j := i + 1; j < len(items); j++ {
				switch items[j].(type) {
				case *Stitches, *Group, *Repeat:
					last = j
				}
			}
			moved := append(append(append([]Item(nil), items[:i]...), items[i+1:last+1]...), it)
			return append(moved, items[last+1:]...)
		}
	}
	return items
}
