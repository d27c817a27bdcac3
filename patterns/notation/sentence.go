package notation

import "whorl/patterns/stitch"

// Full sentences leave out what has just been said, and say once more what is known.

// another reads stitches whose kind is that of the stitches before them: "1 dc into the first
// stitch and 2 into the next", "2 more into the same space", "another into the next".
func (b *block) another() bool {
	p := b.p
	start := p.i
	like := b.lastStitches()
	if like == nil || like.What.Shaping != 0 || like.What.Kind == stitch.Of(stitch.Slip) || p.defining {
		return false
	}
	n, counted := p.num()
	more := p.eat("more", "extra", "further", "others")
	if !counted && p.eat("another") {
		more = true
		if n, counted = p.num(); !counted {
			n = One(p.from(start))
		}
	}
	if !counted && !more || !p.tok().is("in", "into", "around", "over") {
		p.i = start
		return false
	}
	s := &Stitches{N: n, What: like.What}
	if s.Places = p.places(false); s.Places == nil {
		p.i = start
		return false
	}
	s.fromHook()
	s.Span = p.from(start)
	p.work = true
	b.addStitches(s)
	return true
}

// inOrder takes "2 dc in the 2nd st" behind "1 dc in the first st" as the next: they are counted from
// the beginning, one after the other.
func (b *block) inOrder(s *Stitches) {
	if len(s.Places) != 1 {
		return
	}
	pl := &s.Places[0]
	if pl.Of != nil || pl.N.Set() || pl.Below != 0 || pl.Target.Sort != AnyStitch && pl.Target.Sort != OfKind {
		return
	}
	switch {
	case pl.Pick == First:
		b.told, b.toldNth = s, 1
	case pl.Pick == Nth && b.told != nil && pl.Nth == b.toldNth+1 && b.lastStitches() == b.told:
		pl.Pick, pl.Nth = Next, 0
		b.told, b.toldNth = s, b.toldNth+1
	}
}

// lastStitches are the stitches made last in a run of instructions; nil where something else than
// chains and what is passed over has come between.
func (b *block) lastStitches() *Stitches {
	for i := len(b.items) - 1; i >= 0; i-- {
		switch it := b.items[i].(type) {
		case *Stitches:
			return it
		case *Chain, *Skip, *Note, *Counts:
		default:
			return nil
		}
	}
	return nil
}

// whichIs takes ", which is the middle stitch of the corner" as a note: what goes before it, said in
// other words.
func (b *block) whichIs() bool {
	p := b.p
	if len(b.items) == 0 || !p.tok().is("which", "who", "that") || !p.at(1).is("is", "are", "was", "were", "will", "should", "lies", "lie", "sits", "sit", "falls", "fall", "makes", "make", "forms", "form", "becomes", "become", "brings", "leaves", "gives") {
		return false
	}
	if p.tok().is("that") && p.at(-1).kind != tComma {
		return false
	}
	start, end := p.i, p.i
	for ; ; end++ {
		t := &p.toks[end]
		if k := t.kind; k == tEnd || k == tStop || k == tComma || k == tSemi || k == tColon || k == tClose || k == tOpen || k == tStar {
			break
		}
		if t.is("work", "worked", "make", "made", "rep", "repeat", "sk", "skip", "miss", "until", "times", "twice") {
			return false
		}
		if end > start+1 && t.is("and", "then") && (p.ends(end+1) || p.instructs(end+1)) {
			break
		}
	}
	return p.note(b, start, end)
}

// backAtStart reads "you are back at the beginning", "you reach the start of the round", "the round is
// complete" behind "until".
func (p *parser) backAtStart() bool {
	start := p.i
	if p.eat("you", "you've", "you're") {
		back := false
		for p.eat("are", "have", "get", "come", "reach", "arrive", "go", "been", "gone", "back", "right", "all", "again", "to", "at", "the", "way") {
			back = true
		}
		if back && p.eat("beginning", "start", "end", "join", "joining") || p.at(-1).is("way") && p.tok().is("around", "round") || p.at(-1).is("been", "gone") && p.tok().is("around", "round") {
			p.eat("around", "round")
			p.eat("point")
			if at := p.i; p.eat("of") {
				p.eat("the")
				if !p.eat("round", "rnd", "row") {
					p.i = at
				}
			}
			p.eat("again")
			if p.ended() {
				return true
			}
		}
	}
	if p.i = start; p.eat("all") {
		p.eat("of")
		p.eat("the")
		if _, ok := p.target(); ok && p.eat("have", "are") {
			p.eat("been")
			if p.eat("worked", "used", "filled", "done", "finished") && p.ended() {
				return true // "until all the trebles have been worked"
			}
		}
	}
	if p.i = start; p.eat("the") && p.eat("round", "rnd", "row") && p.eat("is") && p.eat("complete", "completed", "finished", "done") && p.ended() {
		return true
	}
	p.i = start
	return false
}

// everySeveral reports whether "4 stitches" comes next behind "every": once in so many, which says
// not in which of them.
func (p *parser) everySeveral() bool {
	at := p.i
	defer func() { p.i = at }()
	n, ok := p.plainNumber()
	return ok && n > 1 && p.eat("st", "sts", "stitches")
}
