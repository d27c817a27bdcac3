package notation

import "whorl/patterns/stitch"

// leg is one insertion of the hook, with what was done before the next.
type leg struct {
	yos   int // yarns over before it
	draws int // through loops on the hook
	first int // of the loops drawn through the first time
	place []Place
	post  Loop
}

// hooked is the stitch that movements come to, with the chain before it and the stitch passed
// over behind it. Chains at the end close it.
func hooked(moves []move, at Span) ([]Item, bool) {
	loops, pending, open, linking := 1, 0, false, false
	var legs []leg
	var before, after []Item
	var as stitch.Kind
	for _, m := range moves {
		switch m.sort {
		case link:
			if open || pending > 0 && linking {
				return nil, false
			}
			linking = true
			continue
		case yarnOver:
			if linking {
				continue // "yo, pull up a loop" through the bar
			}
			pending += m.n
		case insert:
			if open {
				return nil, false
			}
			legs = append(legs, leg{yos: pending, place: m.place, post: m.post})
			loops, pending, open = loops+pending, 0, true
		case pullUp:
			if linking {
				pending, linking = pending+1, false // the loop is there instead of a yarn over
				continue
			}
			if !open {
				return nil, false
			}
			loops, pending, open = loops+1, 0, false
		case through:
			if open && pending == 0 && m.n == 0 {
				loops, open = loops+1, false // "pull through"
				continue
			}
			if open || len(legs) == 0 {
				return nil, false
			}
			n := m.n
			if n == 0 {
				n = loops
			}
			if n > loops {
				return nil, false
			}
			if loops -= n; !m.on {
				loops++
				l := &legs[len(legs)-1]
				if l.draws++; l.draws == 1 {
					l.first = n
				}
			}
			pending = 0
		case complete:
			if !m.kind.Is() && len(legs) == 1 && legs[0].yos == 0 {
				m.kind = stitch.Of(stitch.Single)
			}
			if as = m.kind; !as.Is() || len(legs) != 1 {
				return nil, false
			}
			loops, pending, open = 1, 0, false
		case chains:
			if len(legs) == 0 {
				before = append(before, &Chain{Span: at, N: Num{Span: at, Values: []int{m.n}}})
			} else if loops > 1 {
				return nil, false
			}
		case made:
			if len(legs) > 0 {
				return nil, false
			}
			before = append(before, m.item)
		case passes:
			if len(legs) == 0 || loops > 1 {
				return nil, false
			}
			after = append(after, m.skip)
		}
		if loops == 1 && !open && len(legs) > 0 && (m.sort == insert || m.sort == pullUp) {
			return nil, false
		}
	}
	if len(legs) == 0 || loops != 1 || open || pending > 0 || linking {
		return nil, false
	}
	s, ok := legsAs(legs, as)
	if !ok {
		return nil, false
	}
	s.Span = at
	return append(append(before, s), after...), true
}

// numberOf is how many places one insertion names.
func numberOf(places []Place) int {
	if len(places) != 1 {
		return 0
	}
	return places[0].N.For(0)
}

// plainByLoops are the plain stitches by how many yarns over they begin with and how often
// the hook is then drawn through loops.
var plainByLoops = map[[2]int]stitch.Kind{
	{0, 1}: stitch.Of(stitch.Single), {0, 2}: {Base: stitch.Single, Manner: stitch.Extended},
	{1, 1}: stitch.Of(stitch.Half), {1, 2}: stitch.Of(stitch.Double), {1, 3}: {Base: stitch.Double, Manner: stitch.Extended},
	{2, 3}: stitch.Of(stitch.Treble), {2, 4}: {Base: stitch.Treble, Manner: stitch.Extended},
	{3, 4}: stitch.Of(stitch.DoubleTreble), {4, 5}: stitch.Of(stitch.TripleTreble),
}

// legsAs is the stitch that legs make: one of the trade, several closed together in one place
// or over several.
func legsAs(legs []leg, as stitch.Kind) (*Stitches, bool) {
	one := &legs[0]
	s := &Stitches{What: What{Loop: one.post}}
	if len(legs) == 1 {
		if s.What.Kind = as; !as.Is() {
			k, ok := plainByLoops[[2]int{one.yos, one.draws}]
			if one.yos == 1 && one.draws == 2 && one.first == 1 {
				k = stitch.Kind{Base: stitch.Half, Manner: stitch.Extended}
			}
			if !ok {
				return nil, false
			}
			s.What.Kind = k
		}
		if n := numberOf(one.place); n > 1 {
			// "insert hook in front loops of next 2 sts"
			pl := one.place[0]
			if s.What.Kind.Shape != stitch.Plain || n > MaxLegs || pl.Pick != Next || pl.Below != 0 {
				return nil, false
			}
			s.What.Kind.Shape, s.What.Kind.Legs = stitch.Together, n
			if pl.Into != stitch.Top && !one.post.Set {
				s.What.Loop = Loop{Set: true, Into: pl.Into}
			}
		} else if len(one.place) == 1 {
			pl := one.place[0]
			if deep := pl.Below != 0; deep && s.What.Kind == stitch.Of(stitch.Single) && !one.post.Set {
				s.What.Kind.Manner |= stitch.Spike
			}
			switch {
			case pl.Below != 0, pl.Pick == Made, pl.Pick == Skipped, pl.Target.Sort == ChainSpace && !pl.Bare, pl.Into != stitch.Top && !one.post.Set:
				if pl.Pick == Same {
					pl.Pick = Next
				}
				s.Places = []Place{pl}
			}
		} else if len(one.place) > 1 {
			return nil, false
		}
		return s, true
	}
	together := 0
	for i := range legs {
		l := &legs[i]
		last := i == len(legs)-1
		if l.yos != one.yos && one.draws+one.yos > 0 || !last && l.draws != one.draws || last && l.draws <= one.draws || l.post != one.post {
			return nil, false
		}
		if len(l.place) > 1 {
			return nil, false
		}
		if len(l.place) == 0 {
			continue
		}
		pl := &l.place[0]
		if pl.Pick == Made && (i == 0 || s.Places != nil) {
			s.Places = []Place{*pl} // "around post of dc just made"
			continue
		}
		if pl.Target.Sort == Ring && pl.Pick == Only && pl.Target.Name == "" && len(legs[0].place) == 1 && legs[0].place[0].Target.Sort == Ring {
			continue // the words that name it say so again
		}
		if i > 0 && len(legs[0].place) == 1 && legs[0].place[0].Target.Sort == Ring {
			return nil, false
		}
		if pl.Below != 0 || pl.Pick != Next && pl.Pick != Same && pl.Pick != First || pl.N.For(0) > 1 || pl.Target.Sort == Gap {
			return nil, false
		}
		if i > 0 && pl.Pick == Next && !pl.Bare {
			together++
		}
	}
	k := stitch.Kind{Shape: stitch.Cluster, Legs: len(legs)}
	if together > 0 && s.Places != nil {
		return nil, false
	}
	if together > 0 {
		if k.Shape = stitch.Together; together != len(legs)-1 {
			return nil, false
		}
	}
	switch {
	case one.draws == 0 && legs[1].yos == 1 && together == 0:
		k.Base, k.Shape = stitch.Half, stitch.Puff
	case one.draws == 0 && one.yos == 1:
		k.Base = stitch.Half
	case one.draws != one.yos || one.yos > 4:
		return nil, false
	default:
		k.Base = []stitch.Base{stitch.Single, stitch.Double, stitch.Treble, stitch.DoubleTreble, stitch.TripleTreble}[one.yos]
	}
	s.What.Kind = k
	return s, true
}
