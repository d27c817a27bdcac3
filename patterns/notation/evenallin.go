package notation

import "whorl/patterns/stitch"

// evenAllIn takes "3 dc, ch 2, 3 dc in next ch-2 sp", told without brackets, for a group: what is the
// same on both sides of the chain goes into the space, and so does "2 dc, ch 2, 3 dc in same sp" behind
// the chain that the round begins with. Working refuses it where the first of them would fit the
// stitches before the space as well.
func (b *block) evenAllIn(s *Stitches) bool {
	if len(s.Places) != 1 || s.Times.Set() || s.What.Shaping != 0 || s.What.Name != "" || s.What.Kind.Base < stitch.Single || len(s.But) > 0 || len(s.N.Values) > 1 {
		return false
	}
	pl := &s.Places[0]
	if pl.Pick != Same && (pl.Pick != Next || pl.Target.Sort != ChainSpace) || pl.N.Set() || pl.Of != nil || pl.Over || pl.Into != stitch.Top || pl.Target.Sort == JoinPlace {
		return false
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
		case n+1 == last && pl.Pick == Same && b.behindBeginning(from-2):
			begun = true // with the chain at the beginning they are as many
		default:
			return false
		}
		from -= 2
	}
	if from == len(b.items) || pl.Pick == Same && !begun && !b.behindBeginning(from) {
		return false
	}
	if !b.gathered(from, s) {
		return false
	}
	g := b.items[len(b.items)-1].(*Group)
	g.Loose = pl.Pick == Next && !b.likeBefore(g)
	return true
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
