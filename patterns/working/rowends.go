package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// evenly spreads stitches over row ends.
func (w *roundWork) evenly(s *notation.Stitches, n int, hasN bool, p *notation.Place) *halt {
	if p.Target.Sort != notation.RowEnds && w.c.edge == 0 {
		if m := w.statedInAll(); !hasN && m > 0 && w.opening && w.c.index == 0 && w.pos == 0 && w.nest == 0 && !needsPlaces(w.after) {
			n, hasN = m, true // "sc evenly around armhole; join. (40 sc)"
		}
		if hasN && s.What.Shaping == 0 && n == w.c.count() {
			// As many as there are places: one in each.
			return w.each(s, 1, 1, &notation.Place{Span: p.Span, Pick: notation.Each, Into: p.Into})
		}
		if have := len(w.c.spots); hasN && s.What.Shaping == 0 && w.opening && w.c.index == 0 && w.pos == 0 && n >= have/2 && n <= 2*have {
			return w.roundOpening(s, n, p)
		}
		return w.spread(s, n)
	}
	rows, part := w.edgeRows, w.c.edgePart
	side := 0
	if w.c.edge == 0 && len(w.sideRows) > 0 && w.c.index == 0 {
		if h := w.atFlap(p); h != nil {
			return h
		}
		rows = w.nextSide()
		part, side = w.sidePart, w.sides%2
		if w.loop == stitch.Underside {
			w.loop = stitch.Top // the chain has been left
		}
	}
	if told := toldByKind(s); len(told) > 1 {
		ends, h := w.endsAsTheyCome(told, rows, part)
		if h != nil {
			return h
		}
		return w.alongRows(ends, part, side, p)
	}
	rows = w.rowsOf(rows, part, p.Target.Kind)
	edge := len(rows)
	if edge == 0 {
		return stopAt(p.Span, "no-row-ends", "there are no row ends to work along",
			"Say which piece the part is picked up from, for example: from: Brim row ends.")
	}
	if said := p.Rows.For(w.size); p.Rows.Set() && said != edge {
		return stopAt(p.Span, "row-ends", fmt.Sprintf("there are %s to work along, not %d", plural(edge, "row end"), said), "")
	}
	n, h := w.ends(n, hasN, p, edge)
	if h != nil {
		return h
	}
	for _, it := range s.But {
		// "work 64 sc evenly along row ends, working 1 sc in each row end"
		of, ok := it.(*notation.Stitches)
		if !ok || of.Places[0].Target.Sort != notation.RowEnds {
			continue
		}
		each, hasEach := 1, of.N.Set()
		if hasEach {
			each = of.N.For(w.size)
		}
		if rate, h := w.ends(each, hasEach, &of.Places[0], edge); h != nil {
			return h
		} else if rate != n {
			return stopAt(of.Span, "row-ends", fmt.Sprintf("this makes %s along %s, not %d", plural(rate, "stitch"), plural(edge, "row end"), n),
				"Let the number and the words agree.")
		}
	}
	if n > maxRound {
		return stopAt(s.Span, "too-large", "too many stitches", "")
	}
	ends := make([]rowEnd, n)
	for i := range ends {
		ends[i] = rowEnd{s, rows[(2*i+1)*edge/(2*n)]}
	}
	return w.alongRows(ends, part, side, p)
}

// rowEnd is a stitch to make into the end of a row.
type rowEnd struct {
	s   *notation.Stitches
	row int // the index of the row in its part
}

// alongRows works along row ends.
func (w *roundWork) alongRows(ends []rowEnd, part, side int, p *notation.Place) *halt {
	if w.c.edge > 0 {
		if w.begun && w.pos > 1 {
			return stopAt(p.Span, "row-ends", "some of the row ends have been worked into one by one already", "Say of each of the others what goes into it.")
		}
		for i := range w.c.spots {
			w.use(i, skipped)
		}
		w.pos = len(w.c.spots)
	}
	for _, e := range ends {
		at := fabric.Ref{Round: e.row, Stitch: side}
		on := []fabric.Place{{Into: stitch.RowEnd, Part: part, At: at, Last: at}}
		w.same = on
		if h := w.into(e.s, 1, on); h != nil {
			return h
		}
	}
	return nil
}

// toldByKind are stitches into the ends of rows that are told by what they are worked in, with
// those that are told beside them: "1 dc in each dc row end and 2 dc in each tr row end".
func toldByKind(s *notation.Stitches) []*notation.Stitches {
	l := []*notation.Stitches{s}
	for _, it := range s.But {
		if of, ok := it.(*notation.Stitches); ok && len(of.Places) == 1 && of.Places[0].Target.Sort == notation.RowEnds && of.Places[0].Target.Kind.Is() {
			l = append(l, of)
		}
	}
	return l
}

// endsAsTheyCome shares out stitches told by the kind of row, row by row.
func (w *roundWork) endsAsTheyCome(told []*notation.Stitches, rows []int, part int) (l []rowEnd, h *halt) {
	took := make([]bool, len(told))
	for _, row := range rows {
		k := slices.IndexFunc(told, func(s *notation.Stitches) bool {
			return len(w.rowsOf([]int{row}, part, s.Places[0].Target.Kind)) > 0
		})
		if k < 0 {
			return nil, stopAt(told[0].Span, "row-ends", fmt.Sprintf("the words do not say what goes into the end of %s, which is worked in other stitches", w.f.Parts[part].Rounds[row].Label),
				"Say what goes into each kind of row, or how many stitches there are in all: work 60 sc evenly along row ends.")
		}
		took[k] = true
		n := 1
		if told[k].N.Set() {
			n = told[k].N.For(w.size)
		}
		if len(l)+n > maxRound {
			return nil, stopAt(told[k].Span, "too-large", "too many stitches", "")
		}
		for range n {
			l = append(l, rowEnd{told[k], row})
		}
	}
	if k := slices.Index(took, false); k >= 0 {
		return nil, stopAt(told[k].Places[0].Span, "no-row-ends", "there are no such row ends to work along", "Name the stitch that the rows are worked in.")
	}
	return l, nil
}

// rowsOf are those of the rows of a part that are worked in one kind of stitch, alone or at both
// ends, where the others go about a cable, or all of them where none is named.
func (w *roundWork) rowsOf(rows []int, part int, k stitch.Kind) (l []int) {
	if !k.Is() {
		return rows
	}
	for _, i := range rows {
		sts := slices.DeleteFunc(slices.Clone(w.f.Parts[part].Rounds[i].Stitches), func(st fabric.Stitch) bool { return !st.Counts })
		if n := len(sts); n == 0 || sts[0].Counted() == k && sts[n-1].Counted() == k {
			l = append(l, i)
		}
	}
	return l
}

// roundOpening spreads stitches over a slit, "10 sc evenly around thumb opening": over its
// stitches and its chains, some of which take two or none.
func (w *roundWork) roundOpening(s *notation.Stitches, n int, p *notation.Place) *halt {
	have := len(w.c.spots)
	for j := range have {
		w.use(j, skipped)
	}
	for i := range n {
		on := w.take((2*i+1)*have/(2*n), 0, &notation.Place{Span: p.Span, Into: p.Into})
		w.same = on
		if h := w.into(s, 1, on); h != nil {
			return h
		}
	}
	return nil
}

// ends is how many stitches go along so many row ends.
func (w *roundWork) ends(n int, hasN bool, p *notation.Place, edge int) (int, *halt) {
	if each := p.N.For(w.size); p.N.Set() && p.Target.Sort == notation.RowEnds && each > 0 {
		// "3 sc for every 2 rows"
		if edge*n%each != 0 {
			return 0, stopAt(p.Span, "left-over", fmt.Sprintf("%s of %s do not come out with %d rows", plural(edge, "row end"), w.c.below.Label, each),
				"Give a number of rows that goes into them, or the number of stitches: work 60 sc evenly along row ends.")
		}
		return edge * n / each, nil
	}
	if !hasN {
		return edge, nil
	}
	if !p.Evenly && (p.Every || p.Pick == notation.Each && n <= 3) {
		n *= edge // so many in each row end
	}
	return n, nil
}

// statedInAll is the one number of stitches that is stated for the round, 0 where none is.
func (w *roundWork) statedInAll() int {
	if len(w.stated) != 1 || len(w.stated[0].Counts) != 1 || w.stated[0].Counts[0].At.Set() {
		return 0
	}
	return w.stated[0].Counts[0].N.For(w.size)
}

// spread is the fault of stitches, increases or decreases spread evenly over
// stitches: the words leave it to the reader where. It offers the wording.
func (w *roundWork) spread(s *notation.Stitches, n int) *halt {
	have := w.c.count()
	what, change := plural(n, "stitch"), n-have
	if !s.N.Set() && s.What.Shaping == 0 && w.opening {
		return stopAt(s.Span, "vague", fmt.Sprintf("the words do not say how many go evenly round the %s of the opening", plural(have, "stitch")), fmt.Sprintf("Give the number: work %d %s evenly around.", have, w.nameOf(s)))
	}
	switch {
	case s.What.Shaping > 0:
		what, change = plural(n, "increase"), n
	case s.What.Shaping < 0:
		what, change = plural(n, "decrease"), -n
	}
	h := stopAt(s.Span, "vague", fmt.Sprintf("%s spread evenly over %s: the words do not say into which", what, plural(have, "stitch")),
		"Write where each goes.")
	if words := spacing(change, have, w.plainBase(), w.terms); words != "" {
		h.help = "Write where each goes, for example: " + words + "."
	}
	return h
}
