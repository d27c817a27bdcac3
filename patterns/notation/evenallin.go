package notation

import "whorl/patterns/stitch"

// evenAllIn takes a list without brackets, "3 dc, ch 2, 3 dc in next ch-2 sp", "1 tr, 2 ch, 1 tr in next
// dc", for a group: what is the same on both sides of the chain goes into the place at its end, and so
// does "2 dc, ch 2, 3 dc in same sp" behind the chain that the round begins with. Whether it can be so,
// or the first of them go into the stitches before that place, is found by working it.
func (b *block) evenAllIn(s *Stitches) bool {
	if len(s.Places) != 1 || s.Times.Set() || s.What.Shaping != 0 || s.What.Name != "" || s.What.Kind.Base < stitch.Single || len(s.But) > 0 || len(s.N.Values) > 1 {
		return false
	}
	pl := &s.Places[0]
	same := pl.Pick == Same
	if !same && pl.Pick != Next && pl.Pick != First && pl.Pick != Last || pl.N.Set() || pl.Over || pl.Into != stitch.Top {
		return false
	}
	switch pl.Target.Sort {
	case ChainSpace, Gap:
	case Ring, FromHook, RowEnds:
		return false
	default:
		if !same && (pl.Of != nil || pl.Target.Sort == JoinPlace) {
			return false
		}
	}
	from, begun := len(b.items), false
	for from >= 2 && !begun {
		chain, ok := b.items[from-1].(*Chain)
		before, is := b.items[from-2].(*Stitches)
		if !ok || chain.Counts != nil || !is || len(before.Places) > 0 || before.Times.Set() || before.What != s.What || len(before.N.Values) > 1 {
			break
		}
		switch n, last := max(before.N.For(0), 1), max(s.N.For(0), 1); {
		case n == last:
		case n+1 == last && same && b.behindBeginning(from-2):
			begun = true // with the chain at the beginning they are as many
		default:
			return false
		}
		from -= 2
	}
	if from == len(b.items) || same && !begun && !b.behindBeginning(from) {
		return false
	}
	if !b.gathered(from, s) {
		return false
	}
	g := b.items[len(b.items)-1].(*Group)
	g.Loose = !same && !b.likeBefore(g)
	return true
}

// InTurn are instructions in which no list without brackets is a group: "1 tr, 2 ch, 1 tr in next dc"
// goes into the next stitch and the one behind it. It reports whether there was any.
func InTurn(items []Item) (out []Item, loose bool) {
	for _, it := range items {
		switch it := it.(type) {
		case *Group:
			if it.Loose {
				out, loose = append(out, it.inTurn()...), true
				continue
			}
		case *Repeat:
			r := *it
			var body, ending bool
			r.Items, body = InTurn(it.Items)
			r.Ending, ending = InTurn(it.Ending)
			if body || ending {
				if r.Omit > 0 {
					r.Omit += len(r.Items) - len(it.Items)
				}
				out, loose = append(out, &r), true
				continue
			}
		}
		out = append(out, it)
	}
	return out, loose
}

// inTurn are the instructions of a list without brackets, of which only the last have a place.
func (g *Group) inTurn() []Item {
	n := len(g.Items) - 1
	last := *g.Items[n].(*Stitches)
	last.Places = g.Place
	return append(g.Items[:n:n], &last)
}

// likeBefore reports whether a group was told before that ends as this one does: "ch 3, 2 dc, ch 2,
// 3 dc in same sp", of which "3 dc, ch 2, 3 dc in next ch-2 sp" is the next.
func (b *block) likeBefore(g *Group) bool {
	ends := func(g *Group) (chains, n int, what What) {
		if k := len(g.Items); k >= 2 {
			chain, ok := g.Items[k-2].(*Chain)
			s, is := g.Items[k-1].(*Stitches)
			if ok && is && len(chain.N.Values) == 1 {
				return chain.N.For(0), max(s.N.For(0), 1), s.What
			}
		}
		return 0, 0, What{}
	}
	chains, n, what := ends(g)
	for i, it := range b.items[:len(b.items)-1] {
		before, ok := it.(*Group)
		if s, is := it.(*Stitches); is && i > 0 && len(s.Places) == 1 && s.Places[0].Pick == Same {
			before, ok = &Group{Items: b.items[i-1 : i+1]}, true // "2 dc in sp, ch 2, 3 dc in same sp"
		}
		if ok && !before.Loose && chains > 0 {
			if c, m, w := ends(before); c == chains && m == n && w == what {
				return true
			}
		}
	}
	return false
}

// behindBeginning reports whether nothing but the chain that the round begins with, and what is said
// of it, stands before item i.
func (b *block) behindBeginning(i int) bool {
	chain := false
	for i--; i >= 0; i-- {
		switch it := b.items[i].(type) {
		case *Counts, *Note:
		case *Chain:
			chain = true
		case *Stitches:
			return chain && it.What.Kind.Base == stitch.Slip
		default:
			return chain
		}
	}
	return chain
}
