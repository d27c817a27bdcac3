package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
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

// unmoved takes back that slip stitches have passed anything on their way to a space, where the chain
// behind them counts as no stitch and the first stitch goes into the next such space or group: that is
// the one that they have come to. "Sl st in first ch-1 sp, ch 1, *sc in next ch-1 sp, ch 1; rep from *
// around" goes into each, and "V-st in next V-st" into the first V-st as well.
func (w *roundWork) unmoved(it *notation.Chain, rest []notation.Item) bool {
	if it.Counts != nil && !it.Counts.Not || w.leads != nil {
		return false
	}
	if n := it.N.For(w.size); it.Counts == nil && n > 1 && !w.startCounts(it, n).Not {
		return false
	}
	p := placeAhead(rest)
	if p == nil || p.N.Set() || p.Of == nil && p.Bare || p.Of != nil && p.Of.Bare || againIn(rest) {
		return false
	}
	run := w.c.spots[w.spotOf(w.r.Stitches[len(w.r.Stitches)-1].On[0])].run
	if run == 0 {
		return false
	}
	switch of := p.Of; {
	case of == nil && p.Pick == notation.Next && p.Target.Sort == notation.ChainSpace:
		for k := 0; k < run; k++ {
			if w.c.runIs(k, &p.Target) != (k == run-1) {
				return false
			}
		}
	case of == nil && (p.Pick == notation.Next || p.Pick == notation.Each) && p.Target.Sort == notation.OfName, of != nil && (of.Pick == notation.Next || of.Pick == notation.Each) && of.Target.Sort == notation.OfName:
		if of == nil {
			of = p
		}
		g := slices.IndexFunc(w.c.groups, func(g spotGroup) bool { return g.is(of.Target.Name) })
		if from := w.c.runs[run-1].From; g < 0 || from < w.c.groups[g].From || from >= w.c.groups[g].To {
			return false
		}
	default:
		return false
	}
	for len(w.undo) > 0 {
		u := w.undo[len(w.undo)-1]
		if s := &w.c.spots[u.spot]; u.was == unused && s.counts && s.use != unused {
			w.used--
		}
		w.c.spots[u.spot].use, w.undo = u.was, w.undo[:len(w.undo)-1]
	}
	w.pos = 0
	return true
}

// placeAhead is where the first stitch of the instructions goes, the place of its group where it is in
// one; nil where it is not said.
func placeAhead(items []notation.Item) *notation.Place {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Note, *notation.Counts, *notation.InLoops, *notation.Marker:
		case *notation.Repeat:
			return placeAhead(it.Items)
		case *notation.Stitches, *notation.Group:
			if p := firstPlace(it); p != nil {
				return p
			}
			if g, ok := it.(*notation.Group); ok {
				return placeAhead(g.Items)
			}
			return nil
		default:
			return nil
		}
	}
	return nil
}

// againIn reports whether the instructions go into the first space or the one that the round begins in.
func againIn(items []notation.Item) bool {
	return slices.ContainsFunc(items, func(it notation.Item) bool {
		switch it := it.(type) {
		case *notation.Repeat:
			return againIn(it.Items) || againIn(it.Ending)
		case *notation.Stitches, *notation.Group:
			p := firstPlace(it)
			return p != nil && (p.Pick == notation.First || p.Pick == notation.Same) && (p.Target.Sort == notation.ChainSpace || p.Target.Sort == notation.JoinPlace)
		}
		return false
	})
}

// beganBeyond lets a round that goes into a space first and along "each st to end" last come to the
// stitches before that space at its end: "ch 1, 3 sc in first ch-2 sp, …, sc in each st to end".
func (w *roundWork) beganBeyond(rest []notation.Item) {
	p := placeAhead(rest)
	if w.r.Row || w.nest > 0 || w.settled || w.begun || w.pos > 0 || w.travelled() > 0 || p == nil || !eachAtEnd(rest) ||
		p.Pick != notation.Next && p.Pick != notation.First || p.Target.Sort != notation.ChainSpace || p.N.Set() || p.Of != nil {
		return
	}
	for k, r := range w.c.runs {
		if w.c.runIs(k, &p.Target) {
			if r.From > 0 {
				w.c.begin(r.From)
				w.settled, w.undo = true, nil
			}
			return
		}
	}
}

// eachAtEnd reports whether the last that instructions make goes into each stitch up to the end.
func eachAtEnd(items []notation.Item) bool {
	for i := len(items) - 1; i >= 0; i-- {
		switch it := items[i].(type) {
		case *notation.Stitches:
			if len(it.Places) != 1 || it.What.Kind.Base == stitch.Slip {
				return false
			}
			p := &it.Places[0]
			return p.Pick == notation.Each && !p.N.Set() && (p.Target.Sort == notation.AnyStitch || p.Target.Sort == notation.OfKind) && p.Extent.Sort == notation.ToEnd
		case *notation.Group, *notation.Repeat, *notation.Chain, *notation.Skip:
			return false
		}
	}
	return false
}
