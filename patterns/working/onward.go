package working

import (
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// runs are the plain runs between the increases or decreases of a round: as many as
// there are of these, or none that can be told.
type runs struct {
	shaped int // increases and decreases
	plain  []int
}

// onwardOf is how rounds go on as those before them: the round that each of the next
// ones is like, in turn, and how many stitches each run between the increases of
// those gets more every time. A round of increases alone has runs of none. It is nil
// where the rounds before do not show it.
func (p *partWork) onwardOf(ref *notation.Ref) (of []*notation.Round, step int) {
	if p.alongOf(ref) != nil {
		return p.latest[max(len(p.latest)-1, 0):], 0
	}
	return p.increasing(ref)
}

// increasing is onwardOf for rounds with increases or decreases between plain runs.
func (p *partWork) increasing(ref *notation.Ref) (of []*notation.Round, step int) {
	last, before := -1, -1
	var a, b runs
	for i := len(p.latest) - 1; i >= 0 && before < 0; i-- {
		r := p.runsOf(p.latest[i].Items)
		switch {
		case r.shaped == 0:
		case last < 0:
			last, a = i, r
		default:
			before, b = i, r
		}
	}
	if last < 0 || len(a.plain) == 0 {
		return nil, 0
	}
	period := 1
	switch {
	case ref.Every:
	case before >= 0:
		period = last - before
	case last != len(p.latest)-1:
		return nil, 0
	}
	of = p.latest[len(p.latest)-period:]
	if ref.Every {
		of = p.latest[last : last+1]
	} else if last < len(p.latest)-period {
		return nil, 0
	}
	if ref.Step.Set() {
		step = ref.Step.For(p.size)
	} else if before < 0 {
		return nil, 0
	} else if step = a.plain[0]; len(b.plain) > 0 {
		step -= b.plain[0]
	}
	if step == 0 {
		return nil, 0
	}
	return of, step
}

// runsOf finds the increases of instructions and the plain runs beside them. Where a
// stretch has not as many runs as increases, it has none.
func (p *partWork) runsOf(items []notation.Item) (r runs) {
	var plain []int
	shaped := 0
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Repeat:
			in := p.runsOf(it.Items)
			r.shaped += in.shaped
			r.plain = append(r.plain, in.plain...)
		case *notation.Stitches:
			if n, ok := p.plainRun(it); ok {
				plain = append(plain, n)
			} else if p.shapes(it) {
				shaped++
			}
		}
	}
	r.shaped += shaped
	if shaped > 0 && len(plain) == shaped {
		r.plain = append(r.plain, plain...)
	}
	return r
}

// plainRun is how many places a run of one stitch each goes over: "sc in next 3 sts",
// "sc 3".
func (p *partWork) plainRun(s *notation.Stitches) (int, bool) {
	if s.What.Shaping != 0 || s.What.Kind.Shape == stitch.Together || s.Times.Set() {
		return 0, false
	}
	switch {
	case len(s.Places) == 0:
		return max(1, s.N.For(p.size)), true
	case len(s.Places) == 1 && s.Places[0].Pick == notation.Next && s.Places[0].Of == nil && (!s.N.Set() || s.N.For(p.size) == 1):
		return max(1, s.Places[0].N.For(p.size)), true
	}
	return 0, false
}

// shapes reports whether stitches are an increase or a decrease.
func (p *partWork) shapes(s *notation.Stitches) bool {
	if s.What.Shaping != 0 || s.What.Kind.Shape == stitch.Together {
		return true
	}
	return s.N.Set() && s.N.For(p.size) > 1 && len(s.Places) == 1 && (s.Places[0].Pick == notation.Next || s.Places[0].Pick == notation.Same || s.Places[0].Pick == notation.Each)
}

// grown is a round with the runs between its increases longer by so many; runs that
// come to nothing are left out. It is nil where one would come below that.
func (p *partWork) grown(r *notation.Round, by int) *notation.Round {
	items, ok := p.grownItems(r.Items, by)
	if !ok {
		return nil
	}
	longer := *r
	longer.Items = items
	return &longer
}

func (p *partWork) grownItems(items []notation.Item, by int) (l []notation.Item, ok bool) {
	here := p.runsOf(items)
	for _, it := range items {
		if rep, is := it.(*notation.Repeat); is {
			in := p.runsOf(rep.Items)
			here.shaped -= in.shaped
			here.plain = here.plain[:max(len(here.plain)-len(in.plain), 0)]
		}
	}
	for _, it := range items {
		switch was := it.(type) {
		case *notation.Repeat:
			rep := *was
			if rep.Items, ok = p.grownItems(was.Items, by); !ok {
				return nil, false
			}
			it = &rep
		case *notation.Stitches:
			n, run := p.plainRun(was)
			if !run || len(here.plain) == 0 {
				break
			}
			s := *was
			if n += by; n < 0 {
				return nil, false
			} else if n == 0 {
				continue
			}
			num := notation.Num{Span: s.Span, Values: []int{n}}
			if len(s.Places) == 0 {
				s.N = num
			} else {
				s.Places = append([]notation.Place(nil), s.Places...)
				s.Places[0].N = num
			}
			it = &s
		}
		l = append(l, it)
	}
	return l, true
}

// goOnward works n rounds that go on as those before them.
func (p *partWork) goOnward(r *notation.Round, ref *notation.Ref, n int) {
	along := p.alongOf(ref)
	of, step := p.onwardOf(ref)
	if len(of) == 0 {
		p.add(p.vagueOnward(ref), true)
		return
	}
	for i := 0; i < n && !p.broken; i++ {
		if along != nil {
			if !p.alongRound(r, of[0], along, i+1, i == n-1) {
				return
			}
			continue
		}
		text := p.grown(of[i%len(of)], step*(i/len(of)+1))
		if text == nil {
			p.add(p.vagueOnward(ref), true)
			return
		}
		p.oneRound(r, text, p.number+1, i == n-1)
	}
}

// vagueOnward is the fault of rounds before that do not show how to go on.
func (p *partWork) vagueOnward(ref *notation.Ref) *fault.Fault {
	return p.fault(ref.Span, "vague", "the rounds before do not show how these go on", "Write them out, or name those that they repeat: Rnds 5-10: Rep Rnds 3 and 4.")
}
