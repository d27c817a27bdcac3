package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// begunGroup is the place of p where the first stitch of the round is to go into the
// place inside a group that the round begins at: "join in centre dc of any shell, ch 1,
// *sc in centre dc of shell". The beginning cuts that group in two, so that it comes
// last and first. It is nil where p names another place.
func (w *roundWork) begunGroup(p *notation.Place) []fabric.Place {
	of := p.Of
	if w.begun || w.pos > 0 || w.r.Row || of.Target.Sort != notation.OfName || of.Pick != notation.Next && of.Pick != notation.Any || of.N.Set() ||
		p.Target.Sort == notation.Gap || p.Target.Sort == notation.ChainSpace {
		return nil
	}
	n := len(w.c.spots)
	for _, g := range w.c.cutGroups {
		if !g.is(of.Target.Name) || of.Target.Chains > 0 && !w.c.groupOf(g, of.Target.Kind, of.Target.Chains) {
			continue
		}
		var inside []int
		for j := g.From; j < g.To; j++ {
			if w.c.matches(j%n, &p.Target) {
				inside = append(inside, j)
			}
		}
		at := len(inside) / 2
		switch p.Pick {
		case notation.First:
			at = 0
		case notation.Last:
			at = len(inside) - 1
		case notation.Nth:
			at = p.Nth - 1
		}
		if at >= 0 && at < len(inside) && inside[at] == n {
			return w.looped(w.take(0, 0, p), p)
		}
	}
	return nil
}
