package notation

import "whorl/patterns/stitch"

// habit is what a sentence says once of all the rounds or rows behind it: "Every round
// begins with 2 ch and ends with a ss to the first st."
type habit struct {
	row    bool
	begins *Chain
	counts *Counts // what the chain counts as, where a bracket says it
	joins  *Join
}

// habit reads such a sentence and keeps it for the rounds that follow.
func (b *block) habit() bool {
	p := b.p
	start := p.i
	h := &habit{}
	said := h.ofEvery(p) || h.doEvery(p)
	if said && h.row && h.joins != nil {
		said = false
	}
	if said {
		p.eatKind(tComma)
		for p.eat("unless", "except", "where", "stated", "otherwise", "noted", "told", "instructed", "throughout", "from", "here", "on", "and") {
		}
	}
	if k := p.tok().kind; !said || k != tStop && k != tEnd && k != tSemi && !p.tok().first {
		p.i = start
		return false
	}
	p.habits = append(p.habits, h)
	b.add(&Note{Span: p.from(start), Text: p.words(start)})
	if h.begins != nil && h.begins.Counts != nil {
		h.counts = h.begins.Counts // "…, which does not count as a st"
	}
	return true
}

// every reads "every round", "all rows", "each of the following rnds".
func (h *habit) every(p *parser) bool {
	if !p.eat("every", "each", "all") {
		return false
	}
	p.eat("of")
	p.eat("the", "these")
	p.eat("following", "next", "remaining")
	row, ok := roundWord(p.tok())
	if !ok || p.tok().is("r") {
		return false
	}
	p.i++
	h.row = row
	p.eat("now", "from", "always")
	return true
}

// ofEvery reads "every round begins with 2 ch and ends with a ss to the first st", "all
// rounds are joined with a sl st in the first st".
func (h *habit) ofEvery(p *parser) bool {
	start := p.i
	if h.every(p) {
		begins := p.eat("begins", "begin", "starts", "start") && p.eat("with", "by") && h.chain(p)
		at := p.i
		p.eatKind(tComma)
		if p.eat("and"); !begins {
			p.i = at
		}
		p.eat("is", "are")
		if p.eat("ends", "end", "finishes", "finish", "closes", "close", "closed", "joined", "joins") && p.eat("with", "by", "using") && h.slip(p) {
			return true
		}
		if p.i = at; begins {
			return true
		}
	}
	p.i = start
	return false
}

// doEvery reads "begin every round with ch 1 and end it with a sl st in the first st",
// "join each round with a sl st in first st".
func (h *habit) doEvery(p *parser) bool {
	start := p.i
	closes := []string{"end", "finish", "close", "join"}
	switch {
	case p.eat("begin", "start") && h.every(p) && p.eat("with", "by") && h.chain(p):
		at := p.i
		p.eatKind(tComma)
		p.eatKind(tSemi)
		p.eat("and")
		if p.eat(closes...) {
			if p.eat("it", "them") || (&habit{}).every(p) {
			}
			if p.eat("with", "by", "using") && h.slip(p) {
				return true
			}
		}
		p.i = at
		return true
	default:
		p.i = start
		if p.eat(closes...) && h.every(p) && p.eat("with", "by", "using") && h.slip(p) {
			return true
		}
	}
	p.i = start
	return false
}

// chain reads the chain that the rounds begin with.
func (h *habit) chain(p *parser) bool {
	p.eat("a")
	c, ok := p.chain().(*Chain)
	if !ok {
		return false
	}
	if at := p.i; p.eatKind(tOpen) {
		if it, f := p.counts(); it != nil && f == nil && p.eatKind(tClose) {
			h.counts = it.(*Counts)
		} else {
			p.i = at
		}
	}
	h.begins = c
	return true
}

// slip reads the slip stitch that closes the rounds.
func (h *habit) slip(p *parser) bool {
	start := p.i
	p.eat("a", "one", "1")
	w, ok := p.what()
	if !ok || w.Kind != stitch.Of(stitch.Slip) {
		return false
	}
	j := &Join{}
	if p.eat("to", "in", "into") && !p.eat("join", "close") {
		pl, ok := p.place()
		if !ok || pl.Pick != First && pl.Target.Sort != StartChain && (pl.Of == nil || pl.Of.Target.Sort != StartChain) {
			return false
		}
		j.Place = &pl
	}
	j.Span, h.joins = p.from(start), j
	return true
}

// follow lets a round begin and end as the sentences before it say, where its own words
// do not.
func (r *Round) follow(habits []*habit) {
	if len(r.Label.Numbers) == 0 && !r.Label.Next.Set() || !makesStitches(r.Items) {
		return
	}
	for _, h := range habits {
		if h.row != r.Label.Row {
			continue
		}
		if h.begins != nil {
			r.beginWith(h)
		}
		if h.joins != nil {
			r.endWith(h)
		}
	}
}

// makesStitches reports whether instructions make stitches of their own.
func makesStitches(items []Item) bool {
	makes := false
	for _, it := range items {
		switch it := it.(type) {
		case *Ref:
			return false
		case *Stitches:
			makes = makes || it.What.Kind != stitch.Of(stitch.Slip)
		case *Group, *Repeat:
			makes = true
		}
	}
	return makes
}

func (r *Round) beginWith(h *habit) {
	at := 0
	for ; at < len(r.Items); at++ {
		switch it := r.Items[at].(type) {
		case *Chain:
			if it.Counts == nil && it.N.For(0) == h.begins.N.For(0) {
				it.Counts = h.counts
			}
			return // it says so itself
		case *Join, *Colour, *Note, *Turn, *Marker, *MagicRing, *InLoops:
			continue
		case *Stitches:
			if it.What.Kind == stitch.Of(stitch.Slip) {
				continue
			}
		}
		break
	}
	add := []Item{h.begins}
	if h.counts != nil {
		add = append(add, h.counts)
	}
	r.Items = append(append(append([]Item(nil), r.Items[:at]...), add...), r.Items[at:]...)
}

func (r *Round) endWith(h *habit) {
	at := len(r.Items)
	for i := len(r.Items) - 1; i >= 0; i-- {
		switch it := r.Items[i].(type) {
		case *Join:
			if it.Yarn == "" && i > 0 {
				return
			}
		case *NoJoin:
			return
		case *Note, *Turn, *Colour, *Marker, *FastenOff:
			at = i
			continue
		}
		break
	}
	r.Items = append(append(append([]Item(nil), r.Items[:at]...), h.joins), r.Items[at:]...)
}
