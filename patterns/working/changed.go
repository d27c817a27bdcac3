package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// changed is the words of rounds that are worked again with what is different in them. It
// is false, with a fault, where they leave open what the change is made in.
func (p *partWork) changed(r *notation.Round, ref *notation.Ref, of []*notation.Round) ([]*notation.Round, bool) {
	c := ref.Change
	if c == nil || c.Grows.Set() {
		return of, true
	}
	if c.Step.Set() {
		if !slices.ContainsFunc(p.stepping(c, of), func(g growth) bool { return len(g) > 0 }) {
			p.add(p.unchanged(r, c, "there is no run of stitches between increases or decreases in the repeated rounds"), true)
			return nil, false
		}
		if is := p.otherRun(c, of); is > 0 {
			p.add(p.unchanged(r, c, fmt.Sprintf("the runs between increases or decreases are of %s in the repeated rounds, not of %d", plural(is, "stitch"), c.Run.For(p.size))), true)
			return nil, false
		}
		return of, true
	}
	if (c.Last != nil || c.Leave.Set()) && len(of) > 1 {
		p.add(p.unchanged(r, c, "the words do not say which of the repeated rounds ends so"), true)
		return nil, false
	}
	out := make([]*notation.Round, len(of))
	made := 0
	for i, o := range of {
		text := *o
		ch := changing{p: p, c: c}
		switch {
		case c.Loop.Set:
			text.Items = append([]notation.Item{&notation.InLoops{Span: c.Span, Into: c.Loop.Into}}, ch.items(o.Items)...)
			text.Label.Loop = notation.Loop{}
			ch.made++
		case c.Spaces != nil:
			if k := c.Of; k.Is() && !ch.madeOf(o.Items, k) {
				p.add(p.unchanged(r, c, fmt.Sprintf("%s goes along in other stitches than %s", plainLabel(o.Label.Text), k.Name(p.terms))), true)
				return nil, false
			}
			text.Items = ch.items(o.Items)
		case c.New != nil:
			if c.Old == nil && !ch.oneKind(o.Items) {
				p.add(p.unchanged(r, c, fmt.Sprintf("%s has more than one kind of stitch, and the words do not say which of them changes", plainLabel(o.Label.Text))), true)
				return nil, false
			}
			if f := p.chainStays(r, c, o); f != nil {
				p.add(f, true)
				return nil, false
			}
			text.Items = ch.items(o.Items)
		default:
			text.Items = ch.end(o.Items)
		}
		made += ch.made
		out[i] = &text
	}
	if made == 0 {
		p.add(p.unchanged(r, c, "there is nothing in the repeated round that this change can be made in"), true)
		return nil, false
	}
	return out, true
}

// inLoopOf is a reference with the loop that stands in the label of its round: "Row 5 (BLO): Rep
// Row 2".
func inLoopOf(r *notation.Round, ref *notation.Ref) *notation.Ref {
	if !r.Label.Loop.Set || ref.Change != nil {
		return ref
	}
	in := *ref
	in.Change = &notation.Change{Span: r.Span, Loop: r.Label.Loop}
	return &in
}

// chainStays is the fault of a change that leaves open what becomes of the chain that a
// round begins with, where that counts as what is changed; else nil.
func (p *partWork) chainStays(r *notation.Round, c *notation.Change, o *notation.Round) *fault.Fault {
	if c.New.Target != nil {
		return nil
	}
	for _, round := range p.part.Rounds {
		for i := range round.Stitches {
			st := &round.Stitches[i]
			if round.Line != o.Line || st.Role != fabric.Start || !st.Counts {
				continue
			}
			space := i+1 < len(round.Stitches) && round.Stitches[i+1].IsChain() && round.Stitches[i+1].Column == st.Column
			if c.Old == nil || !c.Old.Chain && c.Old.What.Kind == st.As || c.Old.Chain && space {
				return p.unchanged(r, c, fmt.Sprintf("%s begins with a chain that counts as %s, and the words do not say what becomes of it",
					plainLabel(o.Label.Text), st.As.Name(p.terms)))
			}
		}
	}
	return nil
}

// unchanged is the fault of a change that cannot be made.
func (p *partWork) unchanged(r *notation.Round, c *notation.Change, message string) *fault.Fault {
	f := p.fault(c.Span, "vague", message, "Write the round out with the change in it.")
	f.Round = plainLabel(r.Label.Text)
	return f
}

// changing makes one change in the words of one round, and counts where.
type changing struct {
	p    *partWork
	c    *notation.Change
	made int
}

// items are instructions with the change made in all of them.
func (ch *changing) items(items []notation.Item) (l []notation.Item) {
	for _, it := range items {
		switch was := it.(type) {
		case *notation.Stitches:
			it = ch.stitches(was)
		case *notation.Chain:
			if o := ch.c.Old; o != nil && o.Chain && ch.same(o.N, was.N) && ch.c.New.Chain && was.Counts == nil && !was.Beg {
				chain := *was
				chain.N = ch.c.New.N
				ch.made++
				it = &chain
			}
		case *notation.Group:
			g := *was
			g.Items, g.Place = ch.items(was.Items), ch.places(was.Place)
			it = &g
		case *notation.Repeat:
			rep := *was
			rep.Items, rep.Ending = ch.items(was.Items), ch.items(was.Ending)
			it = &rep
		case *notation.Skip:
			if o := ch.c.Old; o != nil && o.Target != nil && ch.is(&was.Target, o.Target) {
				skip := *was
				skip.Target = *ch.c.New.Target
				ch.made++
				it = &skip
			}
		case *notation.InLoops:
			if ch.c.Loop.Set {
				continue
			}
		}
		l = append(l, it)
	}
	return l
}

func (ch *changing) stitches(was *notation.Stitches) notation.Item {
	s := *was
	s.Places = ch.places(was.Places)
	s.But = ch.items(was.But)
	slip := was.What.Kind == stitch.Of(stitch.Slip)
	if ch.c.Spaces != nil {
		return &s
	}
	if ch.c.Loop.Set {
		if inLoop(s.What.Loop.Into) && s.What.Loop.Set {
			s.What.Loop = notation.Loop{}
		}
		return &s
	}
	n := ch.c.New
	switch o := ch.c.Old; {
	case o == nil:
		if was.What.Kind.Is() && !slip && was.What.Kind.Shape == stitch.Plain {
			s.What.Kind = n.What.Kind
			ch.made++
		}
	case o.Target == nil && !o.Chain && n.Target == nil && was.What.Kind == o.What.Kind && was.What.Name == o.What.Name && (!o.N.Set() || ch.same(o.N, was.N)):
		if n.Chain {
			break
		}
		loop := s.What.Loop
		if s.What = n.What; !s.What.Loop.Set {
			s.What.Loop = loop
		}
		if n.N.Set() {
			s.N = n.N
		}
		ch.made++
	}
	return &s
}

// places are places with the change made in what is gone into.
func (ch *changing) places(places []notation.Place) []notation.Place {
	if ch.c.Spaces != nil {
		l := slices.Clone(places)
		for i := range l {
			if l[i].TakeIn(ch.c.Spaces) {
				ch.made++
			}
		}
		return l
	}
	out := append([]notation.Place(nil), places...)
	for i := range out {
		pl := &out[i]
		if ch.c.Loop.Set && inLoop(pl.Into) {
			pl.Into = stitch.Top
		}
		if o := ch.c.Old; o != nil && o.Target != nil && ch.c.New.Target != nil && ch.is(&pl.Target, o.Target) {
			pl.Target = *ch.c.New.Target
			ch.made++
		}
		if pl.Of != nil {
			of := ch.places([]notation.Place{*pl.Of})
			pl.Of = &of[0]
		}
	}
	return out
}

// is reports whether a target is the one that the change names.
func (ch *changing) is(t, named *notation.Target) bool {
	return t.Sort == named.Sort && t.Kind == named.Kind && t.Name == named.Name && (named.Chains == 0 || t.Chains == named.Chains)
}

// same reports whether two numbers are one in this size; a number that is not said is one.
func (ch *changing) same(a, b notation.Num) bool {
	value := func(n notation.Num) int {
		if !n.Set() {
			return 1
		}
		return n.For(ch.p.size)
	}
	return value(a) == value(b)
}

func inLoop(i stitch.Into) bool { return i == stitch.FrontLoop || i == stitch.BackLoop }

// oneKind reports whether a round is made of plain stitches of one kind, but for slip
// stitches.
func (ch *changing) oneKind(items []notation.Item) bool {
	var kind stitch.Kind
	one := true
	var look func([]notation.Item)
	look = func(items []notation.Item) {
		for _, it := range items {
			switch it := it.(type) {
			case *notation.Stitches:
				if k := it.What.Kind; k == stitch.Of(stitch.Slip) || it.What.Shaping != 0 {
					continue
				} else if !k.Is() || k.Shape != stitch.Plain || kind.Is() && k != kind {
					one = false
				} else {
					kind = k
				}
			case *notation.Group:
				look(it.Items)
			case *notation.Repeat:
				look(it.Items)
				look(it.Ending)
			}
		}
	}
	look(items)
	return one && kind.Is()
}

// end is instructions with another end: another last stitch, or fewer stitches.
func (ch *changing) end(items []notation.Item) []notation.Item {
	at := -1
	for i, it := range items {
		if needsPlaces([]notation.Item{it}) {
			if s, ok := it.(*notation.Stitches); ok && s.What.Kind == stitch.Of(stitch.Slip) && at >= 0 {
				continue
			}
			at = i
		}
	}
	if at < 0 {
		return items
	}
	var with []notation.Item
	switch was := items[at].(type) {
	case *notation.Stitches:
		with = ch.lastOfRun(was)
	case *notation.Repeat:
		with = ch.lastOfRepeat(was)
	}
	if with == nil {
		return items
	}
	ch.made++
	out := append([]notation.Item(nil), items[:at]...)
	return append(append(out, with...), items[at+1:]...)
}

// left is the skip of what is not worked at the end.
func (ch *changing) left() notation.Item {
	return &notation.Skip{Span: ch.c.Span, Unworked: true, N: ch.c.Leave, Target: notation.Target{Sort: notation.AnyStitch},
		Place: &notation.Place{Span: ch.c.Span, Pick: notation.Last, N: ch.c.Leave, Target: notation.Target{Sort: notation.AnyStitch}}}
}

// lastOfRun is stitches of which the last is another or is not worked; nil where that
// cannot be told.
func (ch *changing) lastOfRun(was *notation.Stitches) []notation.Item {
	if was.Times.Set() || len(was.Places) != 1 || len(was.But) > 0 {
		return nil
	}
	pl, n := was.Places[0], 1
	if ch.c.Leave.Set() {
		n = ch.c.Leave.For(ch.p.size)
	}
	var end notation.Item
	if ch.c.Leave.Set() {
		end = ch.left()
	} else {
		last := *ch.c.Last
		if ch.c.Moved && last.What != was.What {
			return nil
		}
		if len(last.Places) == 0 {
			place := pl
			place.N = notation.Num{}
			if pl.Pick == notation.Each || pl.Pick == notation.Next && pl.N.Set() {
				place = notation.Place{Span: last.Span, Pick: notation.Last, Target: notation.Target{Sort: notation.AnyStitch}}
			}
			last.Places = []notation.Place{place}
		}
		end = &last
	}
	one := notation.One(was.Span)
	rest := *was
	rest.Places = []notation.Place{pl}
	num := func(v int) notation.Num { return notation.Num{Span: was.Span, Values: []int{v}} }
	places := 1
	if pl.N.Set() {
		places = pl.N.For(ch.p.size)
	}
	single := !was.N.Set() || was.N.For(ch.p.size) == 1
	switch {
	case pl.Pick == notation.Each && pl.Extent.Sort == notation.ToEnd && len(pl.Also) == 0 && single:
		if rest.Places[0].Extent = (notation.Extent{Sort: notation.ToLast, N: one, Target: notation.Target{Sort: notation.AnyStitch}}); ch.c.Leave.Set() {
			rest.Places[0].Extent.N = ch.c.Leave
		}
		return []notation.Item{&rest, end}
	case pl.Pick == notation.Each:
		return nil
	case n < places:
		rest.Places[0].N = num(places - n)
		return []notation.Item{&rest, end}
	case n == places && single || n == 1 && places == 1 && !ch.c.Leave.Set() && !ch.c.Moved:
		return []notation.Item{end}
	}
	return nil
}

// lastOfRepeat is a repeat that ends otherwise; nil where that cannot be told.
func (ch *changing) lastOfRepeat(was *notation.Repeat) []notation.Item {
	if was.Extent.Sort != notation.ToEnd || len(was.Ending) > 0 || was.AtStop || was.Omit > 0 {
		return nil
	}
	if ch.c.Leave.Set() {
		return []notation.Item{was, ch.left()}
	}
	rep := *was
	last := *ch.c.Last
	if own, ok := was.Items[len(was.Items)-1].(*notation.Stitches); ok && ch.c.Moved {
		if own.What != last.What || own.N.Set() && own.N.For(ch.p.size) > 1 {
			return nil
		}
		rep.Omit = 1
	} else if ch.c.Moved || len(last.Places) == 0 {
		return nil
	}
	rep.Ending = []notation.Item{&last}
	return []notation.Item{&rep}
}

// borneOut sees that rounds worked again grow as the words say: the last n of the part.
func (p *partWork) borneOut(r *notation.Round, c *notation.Change, n int) {
	if c == nil || !c.Grows.Set() || p.broken || p.cascade {
		return
	}
	rounds := p.part.Rounds
	first := max(1, len(rounds)-n)
	for i := first; i < len(rounds); i++ {
		by := c.Grows.For(p.size)
		if (i-first)%max(c.Every, 1) > 0 {
			by = 0
		}
		if is := rounds[i].Count() - rounds[i-1].Count(); is != by && !(c.Of.Is() && kindsOf(rounds[i], c.Of)-kindsOf(rounds[i-1], c.Of) == by) {
			f := p.unchanged(r, c, fmt.Sprintf("the repeated words give %s %s, not %s", rounds[i].Label, more(is), more(by)))
			f.Code = "count"
			p.add(f, false)
			return
		}
	}
}

// kindsOf is how many stitches of a round count as the kind.
func kindsOf(r *fabric.Round, k stitch.Kind) (n int) {
	for i := range r.Stitches {
		if st := &r.Stitches[i]; st.Counts && st.Counted() == k {
			n++
		}
	}
	return n
}

// more is "2 stitches more", "1 stitch fewer" or "as many stitches as before".
func more(n int) string {
	switch {
	case n > 0:
		return plural(n, "stitch") + " more"
	case n < 0:
		return plural(-n, "stitch") + " fewer"
	}
	return "as many stitches as before"
}

// madeOf reports whether what goes along one by one in the instructions is stitches of a kind, so that
// one of it in each space is as the words say.
func (ch *changing) madeOf(items []notation.Item, k stitch.Kind) bool {
	return !slices.ContainsFunc(items, func(it notation.Item) bool {
		switch it := it.(type) {
		case *notation.Stitches:
			return len(it.Places) == 1 && it.What.Kind.Shape == stitch.Plain && it.Places[0].Pick == notation.Next && !it.Places[0].Over && it.What.Kind != k
		case *notation.Group:
			return !ch.madeOf(it.Items, k)
		case *notation.Repeat:
			return !ch.madeOf(it.Items, k) || !ch.madeOf(it.Ending, k)
		}
		return false
	})
}
