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
	open   bool // a stretch has other than one run for each increase
}

// growth is how many stitches each plain run of a round gets more every time.
type growth map[*notation.Stitches]int

// onwardOf is how rounds go on as those before them: the round that each of the next
// ones is like, in turn, and how the runs of those grow. What the last round of shaping
// and the latest one before it that is built alike differ in, it goes on to differ in;
// where there is none alike, every run between the increases gets more by what the words
// say, or by what the two last rounds of shaping show. A round of increases alone has runs
// of none. It is nil where the rounds before do not show it.
func (p *partWork) onwardOf(ref *notation.Ref) (of []*notation.Round, grow []growth) {
	if ref.Even {
		of = p.straightOf(ref)
	} else {
		of = p.patternRows(ref)
	}
	if of != nil || ref.Even {
		return of, make([]growth, len(of))
	}
	if p.alongOf(ref) != nil {
		return p.latest[max(len(p.latest)-1, 0):], nil
	}
	if of, grow = p.increasing(ref); of != nil {
		return of, grow
	}
	of = p.inPattern(ref)
	return of, make([]growth, len(of))
}

// increasing is onwardOf for rounds with increases or decreases between plain runs.
func (p *partWork) increasing(ref *notation.Ref) (of []*notation.Round, grow []growth) {
	if of, grow = p.onwardAlike(ref); of != nil {
		return of, grow
	}
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
	if last < 0 || len(a.plain) == 0 || a.open {
		return nil, nil
	}
	period := 1
	switch {
	case ref.Every:
	case before >= 0:
		period = last - before
	case last != len(p.latest)-1:
		return nil, nil
	}
	if ref.Every {
		of = p.latest[last : last+1]
	} else if last < len(p.latest)-period {
		return nil, nil
	} else {
		of = p.latest[len(p.latest)-period:]
	}
	step := 0
	if ref.Step.Set() {
		step = ref.Step.For(p.size)
	} else if before < 0 {
		return nil, nil
	} else if step = a.plain[0]; len(b.plain) > 0 {
		step -= b.plain[0]
	}
	if step == 0 {
		return nil, nil
	}
	for _, r := range of {
		g := growth{}
		p.growAll(r.Items, step, g)
		grow = append(grow, g)
	}
	return of, grow
}

// onwardAlike is how rounds go on where a round of shaping before the last one is built
// like it. It is nil where there is none.
func (p *partWork) onwardAlike(ref *notation.Ref) (of []*notation.Round, grow []growth) {
	var shaped []int // rounds of shaping, the last first
	for i := len(p.latest) - 1; i >= 0; i-- {
		if p.runsOf(p.latest[i].Items).shaped > 0 {
			shaped = append(shaped, i)
		}
	}
	if len(shaped) == 0 {
		return nil, nil
	}
	last := shaped[0]
	for k, at := range shaped[1:] {
		g, ok := p.difference(p.latest[at].Items, p.latest[last].Items)
		if !ok {
			continue
		}
		period := last - at
		for i := len(p.latest) - period; i < len(p.latest); i++ {
			r := p.latest[i]
			own := growth{}
			switch {
			case i == last:
				own = g
			case p.runsOf(r.Items).shaped == 0:
				if ref.Every {
					continue
				}
			case i < period:
				return nil, nil
			default:
				if own, ok = p.difference(p.latest[i-period].Items, r.Items); !ok {
					return nil, nil
				}
			}
			if n := ref.Step.For(p.size); ref.Step.Set() && k == 0 {
				for s, by := range own {
					if by != 0 {
						own[s] = n
					}
				}
			}
			of, grow = append(of, r), append(grow, own)
		}
		if ref.Every && k == 0 {
			return p.latest[last : last+1], []growth{g}
		}
		return of, grow
	}
	return nil, nil
}

// difference is by how much the runs of a round are longer than those of another that is
// built like it. It is false where it is built otherwise, and where none is.
func (p *partWork) difference(before, r []notation.Item) (growth, bool) {
	g := growth{}
	if !p.alike(before, r, g) {
		return nil, false
	}
	for _, by := range g {
		if by != 0 {
			return g, true
		}
	}
	return nil, false
}

func (p *partWork) alike(before, r []notation.Item, g growth) bool {
	a, b := built(before), built(r)
	if len(a) != len(b) {
		return false
	}
	num := func(n notation.Num) int { return n.For(p.size) }
	for i := range a {
		switch s := b[i].(type) {
		case *notation.Stitches:
			o, ok := a[i].(*notation.Stitches)
			if !ok || o.What != s.What {
				return false
			}
			was, one := p.plainRun(o)
			is, other := p.plainRun(s)
			if one != other {
				return false
			}
			if one {
				g[s] = is - was
				continue
			}
			if num(o.N) != num(s.N) || num(o.Times) != num(s.Times) || len(o.Places) != len(s.Places) {
				return false
			}
			for k := range s.Places {
				if num(o.Places[k].N) != num(s.Places[k].N) {
					return false
				}
			}
		case *notation.Repeat:
			o, ok := a[i].(*notation.Repeat)
			if !ok || num(o.Times) != num(s.Times) || o.More != s.More || o.Extent.Sort != s.Extent.Sort || num(o.Extent.N) != num(s.Extent.N) ||
				len(o.Ending)+len(s.Ending) > 0 || !p.alike(o.Items, s.Items, g) {
				return false
			}
		default:
			return false // lace is not gone on with by its runs
		}
	}
	return true
}

// built are the instructions that make or pass over stitches along a round.
func built(items []notation.Item) (l []notation.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if it.What.Kind.Base == stitch.Slip {
				continue // on the way to the beginning
			}
			l = append(l, it)
		case *notation.Group, *notation.Repeat, *notation.Skip:
			l = append(l, it)
		}
	}
	return l
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
			r.open = r.open || in.open
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
	r.open = r.open || shaped > 0 && len(plain) > 0 && len(plain) != shaped
	return r
}

// growAll lets every plain run grow that has an increase of its own in its stretch.
func (p *partWork) growAll(items []notation.Item, by int, g growth) {
	shaped := 0
	var plain []*notation.Stitches
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Repeat:
			p.growAll(it.Items, by, g)
		case *notation.Stitches:
			if _, ok := p.plainRun(it); ok {
				plain = append(plain, it)
			} else if p.shapes(it) {
				shaped++
			}
		}
	}
	if shaped == 0 || shaped != len(plain) {
		return
	}
	for _, s := range plain {
		g[s] = by
	}
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
	case len(s.Places) == 1 && inLine(&s.Places[0]) && s.Places[0].Of == nil && (!s.N.Set() || s.N.For(p.size) == 1):
		return max(1, s.Places[0].N.For(p.size)), true
	}
	return 0, false
}

// shapes reports whether stitches are an increase or a decrease.
func (p *partWork) shapes(s *notation.Stitches) bool {
	if s.What.Shaping != 0 || s.What.Kind.Shape == stitch.Together {
		return true
	}
	return s.N.Set() && s.N.For(p.size) > 1 && len(s.Places) == 1 &&
		(inLine(&s.Places[0]) || s.Places[0].Pick == notation.Same || s.Places[0].Pick == notation.Each)
}

// inLine reports whether a place is so many stitches in a row: the next, the first or
// the last ones.
func inLine(p *notation.Place) bool {
	return p.Pick == notation.Next || p.Pick == notation.First || p.Pick == notation.Last
}

// grown is a round with its runs longer by so many times their growth; runs that come to
// nothing are left out. It is nil where one would come below that.
func (p *partWork) grown(r *notation.Round, g growth, times int) *notation.Round {
	if len(g) == 0 {
		return r
	}
	items, ok := p.grownItems(r.Items, g, times)
	if !ok {
		return nil
	}
	longer := *r
	longer.Items = items
	return &longer
}

func (p *partWork) grownItems(items []notation.Item, g growth, times int) (l []notation.Item, ok bool) {
	for _, it := range items {
		switch was := it.(type) {
		case *notation.Repeat:
			rep := *was
			if rep.Items, ok = p.grownItems(was.Items, g, times); !ok {
				return nil, false
			}
			it = &rep
		case *notation.Stitches:
			by := g[was] * times
			if by == 0 {
				break
			}
			s := *was
			n, _ := p.plainRun(was)
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
	if n == 0 {
		return
	}
	along := p.alongOf(ref)
	of, grow := p.onwardOf(ref)
	if len(of) == 0 {
		p.openPattern(r, ref)
		return
	}
	if f := p.notShown(ref, of[0]); f != nil {
		p.add(f, true)
		return
	}
	defer func(before int) { p.borneOut(r, ref.Change, len(p.part.Rounds)-before) }(len(p.part.Rounds))
	for i := 0; i < n && !p.broken; i++ {
		if along != nil {
			if !p.alongRound(r, of[0], along, i+1, i == n-1) {
				return
			}
			continue
		}
		text := p.grown(of[i%len(of)], grow[i%len(of)], i/len(of)+1)
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

// stepping is how the runs of rounds that are worked again get longer every time, "working 1 fewer st
// before each decrease"; nil where the words say nothing of it.
func (p *partWork) stepping(c *notation.Change, of []*notation.Round) (grow []growth) {
	if c == nil || !c.Step.Set() {
		return nil
	}
	for _, r := range of {
		g := growth{}
		p.growAll(r.Items, c.Step.For(p.size), g)
		grow = append(grow, g)
	}
	return grow
}

// otherRun is how long a run of the rounds is that are worked again, where the words say that it was of another
// length; 0 where they are right or do not say.
func (p *partWork) otherRun(c *notation.Change, of []*notation.Round) (is int) {
	if !c.Run.Set() {
		return 0
	}
	for _, r := range of {
		g := growth{}
		p.growAll(r.Items, 1, g)
		for s := range g {
			if n, ok := p.plainRun(s); ok && n != c.Run.For(p.size) {
				is = max(is, n)
			}
		}
	}
	return is
}
