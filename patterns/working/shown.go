package working

import (
	"fmt"

	"whorl/patterns/fault"
	"whorl/patterns/notation"
)

// notShown is the fault of rounds that go on as the one before did where the words say besides
// what goes into each space, and the round before does not do so; nil where it does.
func (p *partWork) notShown(ref *notation.Ref, r *notation.Round) *fault.Fault {
	for _, it := range ref.Shown {
		if !p.showsItem(r.Items, it) {
			return p.fault(it.Where(), "vague", fmt.Sprintf("%s, which these go on from, has nothing like this", plainLabel(r.Label.Text)),
				"Write the next round out, so that those behind it can go on from it.")
		}
	}
	return nil
}

// showsItem reports whether instructions make what another makes, in a place of the same sort.
func (p *partWork) showsItem(items []notation.Item, like notation.Item) bool {
	num := func(n notation.Num) int { return max(1, n.For(p.size)) }
	into := func(pl, like *notation.Place) bool {
		if like.Target.Sort == notation.Gap || pl.Target.Sort == notation.Gap {
			return like.Target.Sort == pl.Target.Sort
		}
		return pl.Target.Sort == notation.ChainSpace && (like.Target.Chains == 0 || pl.Target.Chains == 0 || like.Target.Chains == pl.Target.Chains)
	}
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Repeat:
			if p.showsItem(it.Items, like) {
				return true
			}
		case *notation.Chain:
			if o, ok := like.(*notation.Chain); ok && it.Counts == nil && num(o.N) == num(it.N) {
				return true
			}
		case *notation.Stitches:
			if o, ok := like.(*notation.Stitches); ok && o.What == it.What && num(o.N) == num(it.N) && len(it.Places) == 1 && into(&it.Places[0], &o.Places[0]) {
				return true
			}
		case *notation.Group:
			if o, ok := like.(*notation.Group); ok && len(it.Place) == 1 && into(&it.Place[0], &o.Place[0]) && p.sameGroup(it.Items, o.Items) {
				return true
			}
		}
	}
	return false
}

// sameGroup reports whether two groups are made of the same stitches and chains.
func (p *partWork) sameGroup(a, b []notation.Item) bool {
	if len(a) != len(b) {
		return false
	}
	num := func(n notation.Num) int { return max(1, n.For(p.size)) }
	for i := range a {
		switch it := a[i].(type) {
		case *notation.Stitches:
			if o, ok := b[i].(*notation.Stitches); !ok || o.What != it.What || num(o.N) != num(it.N) {
				return false
			}
		case *notation.Chain:
			if o, ok := b[i].(*notation.Chain); !ok || num(o.N) != num(it.N) {
				return false
			}
		default:
			return false
		}
	}
	return true
}
