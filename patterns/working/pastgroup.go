package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// pastGroup leaves the rest of a group whose space a group has been worked into, where what comes
// next are just the stitches up to the next group or to the end: "shell in sp of shell, ch 2, tr in
// each of next 2 tr, tr in top of turning ch" are the two behind the shell and not its own.
func (w *roundWork) pastGroup(p *notation.Place) {
	if p.Pick != notation.Next || p.Of != nil || p.Nth > 1 || p.Target.Sort != notation.OfKind && p.Target.Sort != notation.AnyStitch ||
		len(w.same) != 1 || w.same[0].Into != stitch.Space || w.lastGroup == 0 || !w.groupInSpace() {
		return
	}
	g := w.c.groups[w.lastGroup-1]
	if w.pos <= g.From || w.pos >= g.To {
		return
	}
	n, beyond := max(1, p.N.For(w.size)), 0
	for i := g.To; i < len(w.c.spots) && !w.beginsNamed(i); i++ {
		if !w.c.spots[i].counts {
			continue
		}
		if !w.c.matches(i, &p.Target) {
			return
		}
		if last := i == len(w.c.spots)-1; last && w.r.Row && beyond == n && w.namesLast() {
			break
		}
		beyond++
	}
	if beyond != n {
		return
	}
	for i := w.pos; i < g.To; i++ {
		w.use(i, passed)
	}
	w.pos = g.To
}

// groupInSpace reports whether two stitches or more were made last in one space.
func (w *roundWork) groupInSpace() bool {
	n := 0
	for i := len(w.r.Stitches) - 1; i >= 0 && n < 2; i-- {
		st := &w.r.Stitches[i]
		switch {
		case st.IsChain() && len(st.On) == 0:
		case len(st.On) == 1 && st.On[0] == w.same[0]:
			n++
		default:
			return false
		}
	}
	return n > 1
}

// beginsNamed reports whether a group begins at spot i.
func (w *roundWork) beginsNamed(i int) bool {
	for _, g := range w.c.groups {
		if g.From == i && g.To > i+1 {
			return true
		}
	}
	return false
}

// namesLast reports whether the instruction after this one goes into the last stitch of the row, or
// into the chain that stands there.
func (w *roundWork) namesLast() bool {
	if len(w.after) == 0 {
		return false
	}
	p := firstPlace(w.after[0])
	return p != nil && (p.Pick == notation.Last || ofStart(p))
}

// spanned passes over the stitches before the last one where chains as long go across them:
// "to last 3 sts, ch 2, dc in last st".
func (w *roundWork) spanned(p *notation.Place, last int) {
	n := last - w.pos
	if !w.begun || n <= 0 || p.Target.Sort == notation.Gap || w.unusedBefore(last) != n {
		return
	}
	chains := 0
	for i := len(w.r.Stitches) - 1; i >= 0 && w.r.Stitches[i].IsChain() && w.r.Stitches[i].Role != fabric.Start; i-- {
		chains++
	}
	if chains < n {
		return
	}
	for j := w.pos; j < last; j++ {
		w.use(j, skipped)
	}
}

// eitherWay is the fault of single crochet told without brackets, "3 sc, ch 2, 3 sc in next ch-2 sp",
// where as many stitches as stand before its chain lie before the space: an edging may have them go there
// as well. Taller stitches make a fan in the space.
func (w *roundWork) eitherWay(g *notation.Group) *halt {
	first, ok := g.Items[0].(*notation.Stitches)
	if p := &g.Place[0]; !g.Loose || !ok || first.What.Kind.Base != stitch.Single || p.Target.Sort != notation.ChainSpace || p.Of != nil {
		return nil
	}
	at, _ := w.nearest([]notation.Target{g.Place[0].Target})
	n := 0
	for j := w.pos; j < at; j++ {
		if w.c.spots[j].counts && w.c.spots[j].use == unused {
			n++
		}
	}
	if n == 0 || n != max(first.N.For(w.size), 1) {
		return nil
	}
	w.eitherList = true
	return stopAt(g.Span, "either-way", "the words do not say whether all of this goes into the space, or what comes first into the stitches before it",
		"Put brackets about what goes into the space, or say of what comes first: in next st, in next 3 sts.")
}
