package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// A border that goes from corner to corner, "*3 sc in corner, work 27 sc evenly across to
// next corner; rep from * 3 more times", takes the edges of a flat piece in turn: its last
// row, down one side, its starting chain, up the other side.

// toCorner reports whether a place is all there is up to the next corner.
func toCorner(p *notation.Place) bool {
	return p.Evenly && p.Extent.Sort == notation.ToPlace && p.Extent.Target.Sort == notation.ChainSpace && p.Extent.Target.Name == notation.Corner
}

// cornerToCorner is how often instructions go evenly to the next corner.
func cornerToCorner(items []notation.Item) int {
	n := 0
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if len(it.Places) == 1 && toCorner(&it.Places[0]) {
				n++
			}
		case *notation.Repeat:
			times := it.Times.For(0)
			if it.More {
				times++
			}
			if it.Extent.Sort != notation.NoExtent {
				times = 4
			}
			n += times * cornerToCorner(it.Items)
		}
	}
	return n
}

// edgeToCorner works stitches along the next edge of a flat piece, up to its corner. It
// is false where the round has no such edges.
func (w *roundWork) edgeToCorner(s *notation.Stitches, n int, hasN bool, p *notation.Place) (*halt, bool) {
	if !toCorner(p) || w.c.index != 0 || len(w.sideRows) == 0 || w.c.edge > 0 || w.edgeTurn > 3 {
		return nil, false
	}
	if cornerToCorner(w.items) < 3 {
		return w.toEdgeEnd(s, n, hasN, p)
	}
	at := notation.Place{Span: p.Span, Pick: notation.Each, Evenly: true, Target: notation.Target{Sort: notation.RowEnds}}
	w.edgeTurn++
	if !hasN {
		n, hasN = w.sideStitches(), true
	}
	if w.edgeTurn%2 == 0 {
		if h := w.evenly(s, n, hasN, &at); h != nil || w.edgeTurn > 2 || w.c.side > 0 || !w.underneath() {
			return h, true
		}
		w.use(w.c.side, worked)
		w.same = []fabric.Place{w.c.place(w.c.side, p.Into)} // the corner: the first of the chain
		return nil, true
	}
	if at.Target.Name = notation.TopEdge; w.edgeTurn == 3 {
		at.Target.Name = notation.ChainEdge
		if w.c.side == 0 && !w.underneath() {
			return nil, false
		}
	}
	// The first and the last stitch of the edge are the corners.
	from, to := w.pos, len(w.c.spots)
	if w.edgeTurn == 1 && w.c.side > 0 {
		to = w.c.side
	}
	if to-from < 2 {
		return nil, false
	}
	if s.N.Values == nil {
		n = to - from - 2
	}
	var last []fabric.Place
	if hasN && n <= to-from-2 {
		w.use(from, worked)
		w.use(to-1, worked)
		last = []fabric.Place{w.c.place(to-1, p.Into)}
	}
	h, ok := w.alongEdge(s, n, hasN, &at)
	if last != nil {
		w.same = last
	}
	return h, ok
}

// sideStitches is how many stitches go along the row ends of one side where the words do
// not say: what the stated count leaves for the two, or one for each row.
func (w *roundWork) sideStitches() int {
	across := len(w.c.spots)
	if w.c.side > 0 {
		across = w.c.side
	}
	for _, s := range w.stated {
		n := 0
		for _, c := range s.Counts {
			if c.Target.Sort != notation.ChainSpace {
				n += c.N.For(w.size)
			}
		}
		left := n - 4*cornerStitches(w.items) - 2*(across-2)
		if left > 0 && left%2 == 0 && left/2 <= maxRound {
			return left / 2
		}
	}
	return len(w.sideRows)
}

// cornerStitches is how many stitches go into each corner of a border.
func cornerStitches(items []notation.Item) (n int) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Repeat:
			n += cornerStitches(it.Items)
		case *notation.Group:
			n += cornerStitches(it.Items)
		case *notation.Stitches:
			if (len(it.Places) == 0 || !toCorner(&it.Places[0])) && it.What.Kind.Base > stitch.Slip {
				n += max(1, it.N.For(0))
			}
		}
	}
	return n
}

// twiceRound reports whether instructions go along a row of stitches and the ends of rows
// twice over: "*3 sc in corner st, sc in next 12 sts, 3 sc in corner st, 2 sc in the side of
// each of the 6 rows; rep from * once more".
func twiceRound(items []notation.Item) bool {
	for _, it := range items {
		r, ok := it.(*notation.Repeat)
		if !ok || r.Times.For(0) != 2 && !(r.More && r.Times.For(0) == 1) {
			continue
		}
		ends, along := false, false
		for _, in := range r.Items {
			if s, ok := in.(*notation.Stitches); ok && len(s.Places) == 1 {
				pl := &s.Places[0]
				ends = ends || pl.Target.Sort == notation.RowEnds && pl.Target.Name == ""
				along = along || pl.Target.Sort == notation.AnyStitch || pl.Target.Sort == notation.OfKind || toCorner(pl) || edgeOf(pl) == notation.TopEdge
			}
		}
		if ends && along {
			return true
		}
	}
	return false
}

// edgeNow is the last row or the starting chain of a flat piece, whichever the work is at:
// the spots from and to, and its name.
func (w *roundWork) edgeNow() (from, to int, name string) {
	switch {
	case w.c.side > 0 && w.pos >= w.c.side:
		return w.c.side, len(w.c.spots), notation.ChainEdge
	case w.c.side > 0:
		return 0, w.c.side, notation.TopEdge
	}
	return 0, len(w.c.spots), notation.TopEdge
}

// toEdgeEnd works stitches evenly along what is left of the edge that the work is at: "working
// along bottom edge, 3 sc in corner, 100 sc evenly across to next corner". Its corners are left
// to what goes into them.
func (w *roundWork) toEdgeEnd(s *notation.Stitches, n int, hasN bool, p *notation.Place) (*halt, bool) {
	from, to, name := w.edgeNow()
	at := notation.Place{Span: p.Span, Pick: notation.Each, Evenly: true, Target: notation.Target{Sort: notation.RowEnds}}
	if w.pos >= to {
		return w.evenly(s, n, hasN, &at), true // one side, from the end of an edge to the next
	}
	if w.pos == from {
		w.use(w.pos, worked)
	}
	w.use(to-1, worked)
	last := []fabric.Place{w.c.place(to-1, p.Into)}
	at.Target.Name = name
	if name == notation.ChainEdge {
		last[0].Into = stitch.Underside
	}
	h, ok := w.alongEdge(s, n, hasN, &at)
	w.same = last
	return h, ok
}

// onCorner takes a corner of a flat piece as the stitch that it is: the first or the last of
// an edge. It is nil where the work is at none.
func (w *roundWork) onCorner(p *notation.Place) []fabric.Place {
	if p.Target.Sort != notation.CornerStitch || w.c.index != 0 || w.opening || len(w.sideRows) == 0 || w.c.edge > 0 || len(w.c.spots) == 0 {
		return nil
	}
	if from, to, _ := w.edgeNow(); w.pos == from || w.pos == to-1 {
		return w.takeSpot(w.pos, 0, p, false)
	}
	if w.pos == len(w.c.spots) && w.sides == 1 && w.c.side == 0 && w.underneath() {
		w.loop = stitch.Underside
		return w.takeSpot(w.pos, 0, p, false)
	}
	return nil
}

// roundCalledRow reports whether a row of a part that is worked in rounds is one of these, as
// old leaflets call them: it goes around a ring, or the round before, and is joined.
func (p *partWork) roundCalledRow(text *notation.Round) bool {
	n := len(p.part.Rounds)
	if p.part.Worked == fabric.InRows || n == 0 || !text.Label.Row || p.turned {
		return false
	}
	if below := p.part.Rounds[n-1]; !below.Ring && (below.Row || below.Number == 0) {
		return false
	}
	for i := len(text.Items) - 1; i >= 0; i-- {
		switch it := text.Items[i].(type) {
		case *notation.Join:
			return it.Place != nil && it.Yarn == "" && makes(text.Items[:i])
		case *notation.Note, *notation.Colour, *notation.FastenOff, *notation.Marker:
		default:
			return false
		}
	}
	return false
}
