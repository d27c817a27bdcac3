package notation

import (
	"slices"

	"whorl/patterns/fault"
)

// ending reads what may follow a repeat: "ending last rep at **", "omitting
// last ch 2", "ending last rep with …".
func (p *parser) ending(r *Repeat) *fault.Fault {
	start := p.i
	for p.tok().kind == tComma || p.tok().kind == tSemi || p.tok().is("and", "but") {
		p.i++
	}
	switch {
	case p.endsShort(r) || p.endsWhereBegun():
		return nil
	case p.onLastRep():
		return p.lastAs(r)
	case p.eat("ending", "end", "ends", "stopping", "stop") || p.finishes():
		said := p.lastRep()
		if p.tok().is("by") && p.at(1).is("working", "making", "placing") {
			p.i += 2
		}
		if p.eat("at", "after", "before") {
			if p.tok().kind == tStar {
				at := p.i
				p.i++
				p.lastRep()
				r.AtStop = true
				for _, it := range r.Items {
					if _, ok := it.(*Stop); ok {
						return nil
					}
				}
				return p.failAt(at, "star", "there is no "+p.toks[at].text+" inside this repeat to end at",
					"Mark the point inside the repeat with "+p.toks[at].text+".")
			}
		} else if said && (p.eat("with", "working", "by") || p.tok().kind == tNumber || p.tok().is("sk", "skip", "miss", "ch") || p.instructs(p.i)) {
			return p.lastAs(r)
		} else if !said && (p.tok().is("with", "sk", "skip", "miss", "ch") || p.tok().kind == tNumber || p.instructs(p.i)) {
			// "ending with sc in last st" goes on after the last repeat, or goes
			// over from it before its end.
			p.eat("with")
			p.eat("only", "just")
			p.eat("a", "an")
			if p.lastGoes() {
				return nil
			}
			return p.lastAs(r) // "ending with sc in next 2 sts instead of 3"
		}
	case p.fewerAtLast(r):
		return nil
	case p.tok().is("leaving", "leave") && p.unworkedAhead():
		// "…, leave last ch unworked" is of the round below.
	case p.eat("omitting", "omit", "leaving", "leave"):
		return p.omitting(r)
	}
	p.i = start
	return nil
}

// endsWhereBegun passes over "finishing the last side at the first shell": the last repeat
// comes to its end where the round began.
func (p *parser) endsWhereBegun() bool {
	start := p.i
	if p.eat("ending", "finishing", "stopping", "end", "finish") {
		p.eat("the")
		if p.eat("last", "final") && p.eat("side", "rep", "repeat") && p.eat("at", "before", "by") {
			p.eat("the")
			if p.eat("first", "beginning", "starting") {
				p.eat("corner")
				if _, ok := p.target(); ok && p.ended() {
					return true
				}
			}
		}
	}
	p.i = start
	return false
}

// chainAtEnd takes "ending ch 5" as what is left of the last repeat, where that begins with
// such a chain and goes into one place behind it: that one is left out, and what is
// skipped before it is skipped.
func (r *Repeat) chainAtEnd() {
	if len(r.Ending) != 1 || len(r.Items) < 3 {
		return
	}
	end, ok := r.Ending[0].(*Chain)
	first, is := r.Items[0].(*Chain)
	last, stitches := r.Items[len(r.Items)-1].(*Stitches)
	_, skips := r.Items[1].(*Skip)
	if ok && is && stitches && skips && end.N.For(0) == first.N.For(0) && !last.N.Set() {
		r.Ending, r.Omit = nil, 1
	}
}

// onLastRep reads "on last rep work", "last rep ends with", before what it works.
func (p *parser) onLastRep() bool {
	start := p.i
	p.eat("except")
	if at := p.i; p.lastRep() && (at < p.i-2 || p.tok().is("ends", "will", "finishes")) {
		p.eatKind(tComma)
		p.eat("will")
		if p.eat("ends", "end", "finishes", "finish") && p.eat("with") || p.eat("work", "working", "make", "making") {
			return true
		}
	}
	p.i = start
	return false
}

// lastAs reads what the last repeat ends with, and instead of what. Stitches that are made
// instead of others go where these go, unless another place is named: "ending with 2 dc
// instead of 3 dc".
func (p *parser) lastAs(r *Repeat) *fault.Fault {
	p.eat("only", "just")
	items, f := p.endingItems()
	p.eat("only") // "ending last rep with 2 dc in last ch only"
	r.Ending = items
	r.chainAtEnd()
	if len(items) == 1 && len(r.Items) > 1 {
		_, chain := r.Items[0].(*Chain)
		if s, ok := items[0].(*Stitches); ok && chain && (!s.N.Set() || sameNum(s.N, One(s.Span))) {
			r.overToEdge(s)
		}
	}
	if f == nil && (p.insteadOf() || p.insteadOfSkip(r)) {
		if r.Omit = 1; len(items) == 1 && len(r.Items) > 0 {
			s, is := items[0].(*Stitches)
			last, was := r.Items[len(r.Items)-1].(*Stitches)
			if is && was && s.Places == nil && s.N.Set() && last.N.Set() {
				s.Places = last.Places
			}
		}
	}
	return f
}

// finishes reads "finish", "finishing", "to finish" before what the last repeat ends with, and
// not "finish off".
func (p *parser) finishes() bool {
	start := p.i
	p.eat("to")
	if p.eat("finish", "finishes", "finishing") {
		p.eatKind(tComma)
		at := p.i
		p.lastRep()
		if p.tok().is("with") && p.instructs(p.i+1) || p.tok().is("by") || p.tok().kind == tNumber || p.instructs(p.i) || p.toks[at-1].is("finishing") {
			p.i = at
			return true
		}
	}
	p.i = start
	return false
}

// fewerAtLast reads "working 2 tr only (instead of 3) in last ch", "with 2 tr in last ch
// instead of 3", "making only 2 tr in last ch on last rep": what the last repeat ends with.
func (p *parser) fewerAtLast(r *Repeat) bool {
	start := p.i
	if !p.eatAll("at", "the", "end") && !p.eatAll("at", "end") && !p.eatAll("to", "end") {
		p.i = start
	}
	if p.eat("last", "final") {
		// "…; rep from * to end, last dc into 3rd of 4 ch"
		if p.lastAtEdge() && p.lastElsewhere(r) {
			return true
		}
		p.i, r.Ending, r.Omit = start, nil, 0
		return false
	}
	fewer := p.tok().is("working", "making", "placing", "putting") // else it has to be said
	if !fewer && p.tok().kind != tNumber && !p.tok().is("with", "except", "work", "make") && !(p.tok().is("the") && p.at(1).is("last", "final")) {
		p.i = start
		return false
	}
	first := p.i
	if p.tok().kind != tNumber {
		p.i++
		first++
	}
	p.eat("working", "work", "making", "make")
	p.eat("the")
	if (fewer || p.tok().is("last", "final") && p.toks[start].is("with", "the")) && p.eat("last", "final") && p.lastElsewhere(r) {
		return true
	}
	p.i = first
	p.eat("working", "work", "making", "make")
	fewer = p.eat("only", "just") || fewer
	n, ok := p.num()
	w, named := p.what()
	if named {
		p.eat("only")
		fewer = p.ratherThan() || fewer
		if places := p.places(false); len(places) == 1 && (places[0].Pick == Last || places[0].Target.Sort == StartChain) {
			instead := p.insteadOf() || p.ratherThan()
			at := p.i
			p.eatKind(tComma)
			last := p.tok().is("on", "of", "at", "in") && p.lastRep()
			if !last {
				p.i = at
			}
			if fewer && (ok || instead || last) || instead || last {
				r.Ending = []Item{&Stitches{Span: p.from(start), N: n, What: w, Places: places}}
				return true
			}
		}
	}
	p.i = start
	return false
}

// insteadOf reads "instead of 3 tr", "rather than 3", "instead of last sc".
func (p *parser) insteadOf() bool {
	start := p.i
	if p.eatAll("instead", "of") || p.eatAll("rather", "than") || p.eatAll("in", "place", "of") {
		p.eat("the", "a", "an", "your")
		p.eat("last", "final", "usual", "normal")
		if p.chain() != nil {
			return true
		}
		if _, ok := p.stitches(); ok {
			return true
		}
		if _, ok := p.num(); ok {
			p.eat("st", "sts", "stitches")
			if p.what(); p.ended() || p.tok().first || p.tok().is("in", "into", "on", "at", "of") {
				return true
			}
		}
	}
	p.i = start
	return false
}

// ratherThan reads "(instead of 3)", "instead of 3 tr" between stitches and their place.
func (p *parser) ratherThan() bool {
	start := p.i
	open := p.eatKind(tOpen)
	if p.eat("only") && open && p.eatKind(tClose) {
		return true
	}
	if p.eatAll("instead", "of") || p.eat("not") || p.eatAll("rather", "than") || p.eatAll("in", "place", "of") {
		p.eat("the")
		p.eat("usual")
		if _, ok := p.num(); ok {
			if p.what(); !open || p.eatKind(tClose) {
				return true
			}
		}
	}
	p.i = start
	return false
}

// lastElsewhere reads "sc in top of turning ch" behind "working last": where the
// last stitch of the last repeat goes instead. Where it would come to it by itself
// that says no more.
func (p *parser) lastElsewhere(r *Repeat) bool {
	n, several := p.num()
	w, ok := p.what()
	if !ok || len(r.Items) < 2 {
		return false
	}
	if l, is := r.Items[len(r.Items)-1].(*Stitches); several && (!is || l.What != w || !sameNum(l.N, n)) {
		return false // "working last 2 dc in top of ch-3" behind "2 dc in next dc"
	}
	if p.eat("being", "is", "to") {
		p.eat("be")
	}
	p.eat("worked", "made")
	at := p.i
	places := p.places(false)
	if len(places) != 1 {
		return false
	}
	last, ok := r.Items[len(r.Items)-1].(*Stitches)
	if ok && last.What == w && len(last.Places) == 1 && (last.Places[0].Of != nil || last.Places[0].Target.Sort == OfName) {
		r.Ending, r.Omit = []Item{&Stitches{Span: p.from(at - 1), N: last.N, What: w, Places: places}}, 1
	} else if s := (&Stitches{Span: p.from(at - 1), What: w, Places: places}); r.overToEdge(s) || p.lastAndChain(r, s) {
	} else if _, chain := r.Items[len(r.Items)-1].(*Chain); chain && r.Extent.Sort == ToEnd && places[0].Pick == Last && places[0].Target.Sort != ChainSpace {
		// "*1 dc in next loop, 3 ch; …, last dc in last tr": behind the last chains
		r.Ending = []Item{&Stitches{Span: p.from(at - 1), What: w, Places: places}}
	}
	return true
}

// overToEdge makes stitches at the edge of a row what the last repeat goes over to behind the last loop,
// where its stitch goes into one: "*3 ch, 1 dc in next 3-ch loop; …, working last dc in 3rd of 4 ch", "…,
// ending with 1 dc in last tr" have the 3 ch before them.
func (r *Repeat) overToEdge(s *Stitches) bool {
	last, ok := r.Items[len(r.Items)-1].(*Stitches)
	if !ok || last.What != s.What || len(last.Places) != 1 || r.Extent.Sort != ToEnd || len(s.Places) != 1 || s.Times.Set() {
		return false
	}
	if in := &last.Places[0]; in.Target.Sort != ChainSpace || in.Target.Chains == 0 && !in.Target.IsLoop() {
		return false
	}
	if to := &s.Places[0]; (to.Pick != Last || to.Target.Sort == ChainSpace) && to.Target.Sort != StartChain && (to.Of == nil || to.Of.Target.Sort != StartChain) {
		return false
	}
	s.N = last.N
	r.Ending = append(append([]Item(nil), r.Items[:len(r.Items)-1]...), s)
	return true
}

// lastAtEdge reports whether "dc into 3rd of 4 ch", "tr in last st" comes next: where a row comes to its
// end anyway.
func (p *parser) lastAtEdge() bool {
	start := p.i
	defer func() { p.i = start }()
	p.num()
	if _, ok := p.what(); !ok {
		return false
	}
	pl := p.places(false)
	return len(pl) == 1 && (pl[0].Target.Sort == StartChain || pl[0].Of != nil && pl[0].Of.Target.Sort == StartChain || pl[0].Pick == Last) && p.ended()
}

// lastGoes reads "last dc in turning ch" behind "ending with": it says no more than
// where the last repeat comes to its end.
func (p *parser) lastGoes() bool {
	start := p.i
	p.eat("the")
	if p.eat("last", "final") {
		p.num()
		if _, ok := p.what(); ok && p.tok().is("in", "into", "on") && p.places(false) != nil {
			return true
		}
	}
	p.i = start
	return false
}

// lastInTurning is the token behind "working last 2 tr in top of 3 ch", said of rounds that
// are worked again, 0 for other words: their last stitches come there by themselves.
func (p *parser) lastInTurning() int {
	start := p.i
	defer func() { p.i = start }()
	if !p.eat("working", "work", "placing", "place", "with", "making") {
		return 0
	}
	p.eat("the")
	if !p.eat("last", "final") {
		return 0
	}
	p.num()
	if _, ok := p.what(); !ok && !p.eat("st", "sts", "stitch", "stitches") {
		return 0
	}
	p.eat("worked")
	if !p.tok().is("in", "into", "on") {
		return 0
	}
	pl := p.places(false)
	if len(pl) != 1 || pl[0].Target.Sort != StartChain && (pl[0].Of == nil || pl[0].Of.Target.Sort != StartChain) || !p.ended() && !p.tok().first {
		return 0
	}
	return p.i
}

// endingAhead reports whether it is said next how the last repeat ends.
func (p *parser) endingAhead() bool {
	p.eatKind(tComma)
	p.eat("and")
	return p.tok().is("ending", "end", "finishing", "omitting") && !p.at(1).is("of") || p.lastInTurning() > 0
}

// unworkedAhead reports whether the phrase ends with the word unworked.
func (p *parser) unworkedAhead() bool {
	for j := 1; j < 8; j++ {
		t := p.at(j)
		if t.is(unworkedWords...) {
			return true
		}
		if t.kind == tComma || t.kind == tStop || t.kind == tSemi || t.kind == tEnd {
			break
		}
	}
	return false
}

// endingItems reads the instructions that replace the end of a last repeat: up
// to the end of the sentence or the join.
func (p *parser) endingItems() ([]Item, *fault.Fault) {
	b := &block{p: p}
	for {
		for p.tok().kind == tComma || p.tok().is("and", "then") {
			p.i++
		}
		t := p.tok()
		if t.kind == tEnd || t.kind == tStop || t.kind == tSemi || t.kind == tClose || t.is("join", "turn", "instead") || t.is("only") && p.onlyLast() || t.is("in") && p.at(1).is("place") || t.is("rather") && p.at(1).is("than") {
			return b.items, nil
		}
		before := p.i
		if len(b.items) > 0 {
			// "…, ch 3, dc in first sc to join" closes the round.
			it, _ := p.join()
			p.i = before
			if _, ok := it.(*Join); ok {
				return b.items, nil
			}
		}
		if f := b.next(false); f != nil {
			return b.items, f
		}
		if p.i == before {
			return b.items, p.stuck()
		}
	}
}

// linksFirst reads "ltr into the 2nd ch of the 3 ch" behind "working the first": the first of
// linked stitches is drawn through the chain that the round begins with, and stands where it would.
func (p *parser) linksFirst(what What) bool {
	w, ok := p.what()
	if !ok || w != what {
		return false
	}
	pl := p.places(false)
	return len(pl) == 1 && pl[0].Of != nil && pl[0].Of.Target.Sort == StartChain && p.ended()
}

// onlyLast reports whether "only" ends what is told: "2 dc in last ch only".
func (p *parser) onlyLast() bool {
	p.i++
	defer func() { p.i-- }()
	return p.ended() || p.tok().first
}

// lastInChain takes ", working the last sc in the 3rd ch of ch-4", ", last 2 dc in top of
// turning ch" behind an each as a note: the chain that the row below begins with is where an each comes to its end.
func (b *block) lastInChain() bool {
	p := b.p
	start := p.i
	p.eat("and") // "and the last one in the top of 3 ch"
	if len(b.items) == 0 || !p.eat("working", "making", "with", "placing", "putting") && !p.tok().is("last", "final", "the") {
		return false
	}
	s, ok := b.items[len(b.items)-1].(*Stitches)
	p.eat("the")
	if ok && s.What.Name != "" && p.eat("first") && p.linksFirst(s.What) {
		b.add(&Note{Span: p.from(start), Text: p.words(start)})
		return true
	}
	if ok && len(s.Places) > 0 && s.Places[len(s.Places)-1].toTheEnd() && p.eat("last", "final") {
		n, several := p.num() // "working last 2tr in top of tch" of "2tr in each tr"
		one := p.at(-1).is("one")
		w, ok := p.what()
		if p.eat("being", "is", "to") {
			one = one || !ok // "the last being in the turning ch"
			p.eat("be")
		}
		p.eat("worked", "made")
		pl := p.places(false)
		ok = (ok || one) && (!several || len(n.Values) == 1 && (n.Values[0] == 1 && !s.N.Set() || s.N.Set() && len(s.N.Values) == 1 && s.N.Values[0] == n.Values[0]))
		if (ok && w == s.What || one) && len(pl) == 1 && (pl[0].Target.Sort == StartChain || pl[0].Of != nil && pl[0].Of.Target.Sort == StartChain || s.Places[len(s.Places)-1].endsIn(&pl[0])) && p.ended() {
			b.add(&Note{Span: p.from(start), Text: p.words(start)})
			return true
		}
	}
	p.i = start
	return false
}

// endsIn reports whether the last of what an each goes into is the other place, "the last ch
// sp" of "each ch sp and each dc".
func (pl *Place) endsIn(last *Place) bool {
	if last.Pick != Last || last.Of != nil || last.N.Set() {
		return false
	}
	for _, t := range append([]Target{pl.Target}, pl.Also...) {
		if t.Sort == last.Target.Sort && (t.Text == last.Target.Text || t.Sort == AnyStitch) {
			return true
		}
	}
	return false
}

// sameNum reports whether two numbers are the same in every size.
func sameNum(a, b Num) bool { return slices.Equal(a.Values, b.Values) }

// toTheEnd reports whether a place is each as it comes, or so many of them: the last may be told
// once more.
func (pl *Place) toTheEnd() bool {
	return pl.Pick == Each || pl.Pick == Next && pl.Every && pl.N.Set()
}
