package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// roundFlat makes ready for a border round a flat piece: its rows' ends, and,
// where the words go along the starting chain, the underside of that, which is
// laid at the end of the round that the part goes on from.
func (p *partWork) roundFlat(base *fabric.Part, on int, last *fabric.Round) {
	for i, r := range base.Rounds {
		if r.Row && r.Number > 0 && !r.Carried {
			p.sideRows = append(p.sideRows, i)
		}
	}
	p.sidePart = on
	if len(p.sideRows) == 0 || !p.goesUnder() {
		return
	}
	chain, row := base.Rounds[0], base.Rounds[p.sideRows[0]]
	low, high := len(chain.Stitches), -1
	for i := range row.Stitches {
		st := &row.Stitches[i]
		for _, on := range st.On {
			if st.Counts && on.At.Round == 0 && on.At.Stitch >= 0 {
				low, high = min(low, on.At.Stitch), max(high, on.At.Stitch)
			}
		}
	}
	if chain.Number != 0 || chain.Ring || high < 0 {
		return
	}
	if foot := row.Stitches[0]; foot.Role == fabric.Start && len(foot.On) > 0 && foot.On[0].At.Stitch == high && p.chainsTaken() == high-low {
		high-- // the chains that were missed are no place of their own here
	}
	// Round the piece the chain is met the other way than the row on it was
	// worked, or the same way when the border goes the other way round.
	order := chain.Stitches[low : high+1]
	for k := range order {
		st := order[k]
		if (last.Reversed != (p.turned || p.turnsFirst())) != row.Reversed {
			st = order[len(order)-1-k]
		}
		st.On, st.Group = nil, 0
		last.Stitches = append(last.Stitches, st)
	}
	p.under = len(order)
}

// turnsFirst reports whether the first round of the part turns the work before it makes a
// stitch along the last row: "Ch 1, turn, 3 sc in first sc".
func (p *partWork) turnsFirst() bool {
	for _, r := range p.texts[p.index].Rounds {
		for i, it := range r.Items {
			switch it.(type) {
			case *notation.Turn:
				return !endsFirst(r.Items[i+1:])
			case *notation.Chain, *notation.Note, *notation.Colour, *notation.Marker:
			default:
				return false
			}
		}
	}
	return false
}

// endsFirst reports whether the first stitches go along row ends: "turn the piece and work 12 sc
// down the row ends" goes on at the corner where the row has ended.
func endsFirst(items []notation.Item) bool {
	for _, it := range items {
		if s, ok := it.(*notation.Stitches); ok {
			return len(s.Places) == 1 && (s.Places[0].Target.Sort == notation.RowEnds || s.Places[0].Extent.Target.Sort == notation.RowEnds)
		}
	}
	return false
}

// chainsTaken is how many chains of the starting chain the words of the first round go
// into, from the one they name until they go on along row ends; 0 where they do not number them.
func (p *partWork) chainsTaken() (n int) {
	along := false
	for _, r := range p.texts[p.index].Rounds {
		for _, it := range r.Items {
			s, ok := it.(*notation.Stitches)
			if !ok || len(s.Places) != 1 {
				if _, join := it.(*notation.Join); along && join {
					return n
				}
				if _, note := it.(*notation.Note); along && !note {
					return 0
				}
				continue
			}
			pl := &s.Places[0]
			along = along || pl.Target.Sort == notation.ChainStitch && pl.Target.Name == notation.ChainEdge
			switch {
			case !along:
			case pl.Target.Sort != notation.ChainStitch || pl.Of != nil:
				return n
			case pl.Pick == notation.Each && !pl.N.Set() || pl.Extent.Sort != notation.NoExtent:
				return 0
			case pl.N.Set():
				n += pl.N.For(p.size)
			default:
				n++
			}
		}
		if along {
			return n
		}
	}
	return 0
}

// goesUnder reports whether the first round of the part goes along the other
// side of a chain.
func (p *partWork) goesUnder() bool { return p.namesEdge(notation.ChainEdge) }

// goesRound reports whether the first round of the part goes along the last row or
// the starting chain of the piece it is on as well as along its row ends.
func (p *partWork) goesRound() bool {
	return p.namesEdge(notation.ChainEdge) || p.namesEdge(notation.TopEdge)
}

// threeEdges reports whether the first row of a part in rows goes up one side of a flat
// piece, across its top and down the other: "16 sc up right edge, 10 sc across top, 16 sc
// down left edge".
func (p *partWork) threeEdges() bool {
	if !p.source.Rows || !p.namesEdge(notation.TopEdge) {
		return false
	}
	var order []string
	for _, r := range p.texts[p.index].Rounds {
		for _, it := range r.Items {
			if s, ok := it.(*notation.Stitches); ok && len(s.Places) == 1 {
				order = append(order, edgeNames[s.Places[0].Target.Sort == notation.RowEnds || s.Places[0].Extent.Target.Sort == notation.RowEnds]+edgeOf(&s.Places[0]))
			}
		}
		if len(order) > 0 {
			break
		}
	}
	return slices.Equal(order, []string{"edge", "edge" + notation.TopEdge, "edge"})
}

// edgeNames tell an edge from any other place.
var edgeNames = map[bool]string{true: "edge", false: "place"}

// namesEdge reports whether the words of the first round name an edge that is no row
// ends.
func (p *partWork) namesEdge(edge string) bool {
	rounds := p.texts[p.index].Rounds
	for len(rounds) > 0 && len(rounds[0].Label.Numbers) == 0 && (!makes(rounds[0].Items) || onlyPlaces(rounds[0].Items)) {
		rounds = rounds[1:] // a heading, or where the yarn is joined
	}
	if len(rounds) == 0 {
		return false
	}
	if cornerToCorner(rounds[0].Items) >= 3 || twiceRound(rounds[0].Items) {
		return true
	}
	for _, it := range rounds[0].Items {
		switch it := it.(type) {
		case *notation.OtherSide:
			if edge == notation.ChainEdge {
				return true
			}
		case *notation.Stitches:
			for i := range it.Places {
				if edgeOf(&it.Places[i]) == edge || it.Places[i].Target.Sort == notation.ChainStitch && it.Places[i].Target.Name == edge {
					return true
				}
			}
		}
	}
	return false
}

// above is the round below without the underside of the starting chain.
func (p *partWork) above(below *fabric.Round) *fabric.Round {
	if p.under == 0 || below != p.part.Rounds[0] {
		return below
	}
	r := *below
	r.Stitches = r.Stitches[:len(r.Stitches)-p.under]
	return &r
}

// underneath goes on along the starting chain of a flat piece. It reports whether
// there is one.
func (w *roundWork) underneath() bool {
	if w.under == 0 || w.c.index != 0 {
		return false
	}
	if w.c.side > 0 && w.pos >= w.c.side {
		return true // said again
	}
	all := w.part.Rounds[0].Stitches
	w.c.side = len(w.c.spots)
	for i := len(all) - w.under; i < len(all); i++ {
		w.c.spots = append(w.c.spots, spot{ref: fabric.Ref{Stitch: i}, st: &all[i], counts: true})
	}
	w.pos = w.c.side
	return true
}

// nextSide is the rows along whose ends the border goes next: down one side, and
// then up the other.
func (w *roundWork) nextSide() []int {
	rows := append([]int(nil), w.sideRows...)
	down := 1
	if w.threeEdges() {
		down = 0 // up the first side, across the top, down the second
	}
	if w.sides++; w.sides%2 == down {
		for i, j := 0, len(rows)-1; i < j; i, j = i+1, j-1 {
			rows[i], rows[j] = rows[j], rows[i]
		}
	}
	return rows
}

// edgeOf is the edge that a place names, other than row ends; "" for none.
func edgeOf(p *notation.Place) string {
	switch notation.RowEnds {
	case p.Target.Sort:
		return p.Target.Name
	case p.Extent.Target.Sort:
		return p.Extent.Target.Name
	}
	return ""
}

// alongEdge works stitches along the last row or the starting chain of a flat piece,
// or along the chains of a slit: as many as the words say, spread over the places
// there are, or one in each. It is false where the round has no such edge.
func (w *roundWork) alongEdge(s *notation.Stitches, n int, hasN bool, p *notation.Place) (*halt, bool) {
	edge := edgeOf(p)
	if edge == "" || w.c.edge > 0 || w.c.index != 0 || edge == notation.TopEdge && len(p.Also) > 0 {
		return nil, false // "each tr and each 1-ch sp across the top" are those of the row below
	}
	if edge == notation.TopEdge && w.topDone() {
		edge = notation.ChainEdge // "*… along the top edge, …; rep from * once more"
	}
	into, from, to := p.Into, 0, len(w.c.spots)
	switch {
	case edge == notation.ChainEdge && w.opening && len(w.c.runs) == 1:
		into, from, to = stitch.Underside, w.c.runs[0].From, w.c.runs[0].To
	case edge == notation.ChainEdge && (w.c.side > 0 || w.underneath()):
		into, from, to = stitch.Underside, w.c.side, len(w.c.spots)
	case edge == notation.TopEdge && len(w.sideRows) > 0:
		if w.c.side > 0 {
			to = w.c.side
		}
	default:
		return nil, false
	}
	var free []int
	for i := from; i < to; i++ {
		if sp := &w.c.spots[i]; sp.use == unused && (sp.counts || edge == notation.ChainEdge) {
			free = append(free, i)
		}
	}
	if len(free) == 0 {
		return w.outOf(p, 1), true
	}
	if leave := w.lastNext(); len(free) > leave {
		free = free[:len(free)-leave]
	}
	each := 1
	switch {
	case !hasN || p.Every:
		each, n = max(n, 1), len(free)
	case n > maxRound:
		return stopAt(s.Span, "too-large", "too many stitches", ""), true
	}
	for _, i := range free {
		w.use(i, skipped)
	}
	for k := 0; k < n; k++ {
		i := free[(2*k+1)*len(free)/(2*n)]
		w.use(i, worked)
		w.same = []fabric.Place{w.c.place(i, into)}
		if h := w.into(s, each, w.same); h != nil {
			return h, true
		}
	}
	w.pos = to
	return nil, true
}

// topDone reports whether a repeat that goes round a flat piece in two halves has gone along its
// last row and comes to its starting chain.
func (w *roundWork) topDone() bool {
	return w.sides == 1 && w.nest > 0 && w.c.index == 0 && len(w.sideRows) > 0 && w.c.side == 0 && w.pos >= len(w.c.spots) && twiceRound(w.items)
}

// lastNext is how many places at the end of an edge the instruction after this one takes
// by name: "…, 3 sc in last ch".
func (w *roundWork) lastNext() int {
	if len(w.after) == 0 {
		return 0
	}
	s, ok := w.after[0].(*notation.Stitches)
	if !ok || len(s.Places) != 1 || s.Places[0].Pick != notation.Last || s.Places[0].Of != nil {
		return 0
	}
	switch p := &s.Places[0]; p.Target.Sort {
	case notation.ChainStitch, notation.AnyStitch, notation.OfKind:
		if p.N.Set() {
			return p.N.For(w.size)
		}
		return 1
	}
	return 0
}

// toChain goes on to the starting chain where the words name it for the first time
// on the way round a flat piece, "3 sc in first foundation ch", or round an oval, whose loops
// there are chains.
func (w *roundWork) toChain(s *notation.Stitches, p *notation.Place) *notation.Place {
	p = w.chainLoops(p)
	w.ontoOtherSide(s, p)
	if p.Target.Sort == notation.ChainStitch && p.Target.Name == notation.ChainEdge && w.c.side == 0 && w.underneath() {
		w.loop = stitch.Underside
	}
	return p
}

// toTop goes on to the last row where the words name it on the way round a flat piece
// after its starting chain: "3 sc in first st of last row".
func (w *roundWork) toTop(p *notation.Place) {
	named := p.Below < 0 && w.c.below != nil && w.c.below.Number == -p.Below // "of Row 21"
	// With the chain used up and both sides gone along, only the last row is left.
	left := p.Pick == notation.Next && (p.Target.Sort == notation.AnyStitch || p.Target.Sort == notation.OfKind) && w.sides == 2 && w.pos == len(w.c.spots) && w.c.side > 0 && w.c.spots[0].use == unused
	if !p.OnTop && !named && !left || w.c.side == 0 || w.c.index != 0 || len(w.sideRows) == 0 {
		return
	}
	under := append([]spot(nil), w.c.spots[w.c.side:]...)
	w.c.spots = append(under, w.c.spots[:w.c.side]...)
	w.c.side, w.pos = len(under), len(under)
	w.loop = stitch.Top
}

// atCorner is the corner of a flat piece or of a slit, where it has no space of its
// own: the place worked into last, or the first one.
func (w *roundWork) atCorner(p *notation.Place) []fabric.Place {
	if w.onChain && w.c.index == 0 && p.Target.Sort == notation.ChainSpace && p.Target.Name == notation.Corner && p.Target.Chains == 0 {
		at := 0 // the ends of a starting chain
		if w.begun {
			at = len(w.c.spots) - 1
		}
		return w.takeSpot(at, 0, p, false)
	}
	gap := w.opening && p.Target.Sort == notation.Gap && p.Target.Name == notation.Groups // "sc in gap" of a thumb
	if !gap && (p.Target.Sort != notation.ChainSpace || p.Target.Name != notation.Corner) || p.Target.Chains > 0 || w.c.index != 0 ||
		!w.opening && len(w.sideRows) == 0 {
		return nil
	}
	if at := w.cornerOfEdge(); at >= 0 {
		return w.takeSpot(at, 0, p, false)
	}
	if w.same == nil && w.threeEdges() {
		at := fabric.Ref{Round: w.sideRows[0], Stitch: 1} // where the first edge begins
		return []fabric.Place{{Into: stitch.RowEnd, Part: w.sidePart, At: at, Last: at}}
	}
	if w.same == nil {
		if len(w.c.spots) == 0 {
			return nil
		}
		w.same = []fabric.Place{w.c.place(0, p.Into)}
	}
	return w.same
}

// cornerOfEdge is the spot at the end of an edge of a flat piece that its corner takes up, where the
// words go over all the others by number: "3 sc in corner, sc in next 28 ch along foundation edge, 3
// sc in corner" of 30 chains. It is -1 where they leave none for it.
func (w *roundWork) cornerOfEdge() int {
	if w.opening || len(w.sideRows) == 0 || w.c.edge > 0 {
		return -1
	}
	from, to := 0, len(w.c.spots)
	if w.c.side > 0 && w.pos < w.c.side {
		to = w.c.side
	} else if w.c.side > 0 {
		from = w.c.side
	}
	if w.pos == to-1 && w.pos > from && w.c.spots[w.pos].use == unused {
		return w.pos // the last of them
	}
	if len(w.after) == 0 {
		return -1
	}
	s, ok := w.after[0].(*notation.Stitches)
	if !ok || len(s.Places) != 1 || s.Places[0].Pick != notation.Next || s.Places[0].Of != nil {
		return -1
	}
	next := &s.Places[0]
	switch goesOn := next.N.Set() && next.N.For(w.size) > 1; {
	case !goesOn:
	case w.c.side == 0 && next.N.For(w.size) == w.under-2 && (next.Target.Sort == notation.ChainStitch || edgeOf(next) == notation.ChainEdge) && w.underneath():
		w.loop = stitch.Underside
		return w.pos
	case w.c.side > 0 && w.pos == to && next.N.For(w.size) == w.c.side-2 && next.Target.Sort != notation.ChainStitch && w.c.spots[0].use == unused:
		top := *next
		top.OnTop = true
		w.toTop(&top)
		return w.pos
	case next.Target.Sort != notation.ChainStitch && w.pos == 0 && w.c.side == 0 && next.N.For(w.size) == to-2:
		return w.pos
	}
	return -1
}
