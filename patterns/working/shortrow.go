package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// beyond is the next of the stitches that lie beyond the end of the row below, where short rows
// have left them unworked: "hdc in each of 22 sts, hdc in each of the 3 unworked sts of Row 1". It
// reports false for words that mean something else.
func (w *roundWork) beyond(p *notation.Place) ([]fabric.Place, *halt, bool) {
	if !w.goesBeyond(p) {
		return nil, nil, false
	}
	if n := w.remaining(maxRound); n > 0 && !w.onLonger() {
		if p.Pick == notation.Skipped {
			if on := w.skippedUnder(p); on != nil {
				return on, nil, true
			}
		}
		return nil, stopAt(p.Span, "left-over", fmt.Sprintf("%s comes to the stitches left unworked with %s of %s still to come", w.r.Label, plural(n, "stitch"), w.c.belowName()),
			"Check the number before it."), true
	}
	at := w.nextBeyond(p)
	if at < 0 {
		if w.c.lengthened == 0 && p.Below == 0 {
			return nil, nil, false
		}
		of := "beyond the end of " + w.c.belowName()
		if p.Below < 0 {
			of = fmt.Sprintf("of Row %d %s", w.later-p.Below, of)
		}
		return nil, stopAt(p.Span, "runs-out", fmt.Sprintf("no stitch %s is left unworked", of), "Check how many the short rows have left, and the number of the row."), true
	}
	if near := w.c.spots[at].ref.Round; p.Every && !p.N.Set() && p.Below == 0 && w.lengthen() {
		far := w.c.spots[len(w.c.spots)-1].ref.Round
		return nil, stopAt(p.Span, "ambiguous", fmt.Sprintf("%s and %s both have stitches that were left unworked", w.part.Rounds[near].Label, w.part.Rounds[far].Label),
			fmt.Sprintf("Say whose are meant: in each unworked st of %s.", w.part.Rounds[near].Label)), true
	}
	plain := *p
	plain.Pick, plain.Below, plain.Bare = notation.Next, 0, false
	return w.looped(w.take(at, 0, &plain), &plain), nil, true
}

// goesBeyond reports whether a place may be one that a short row left: it is called unworked, and
// nothing has been skipped in this row, or it is of an older row and the one below has come to its end.
func (w *roundWork) goesBeyond(p *notation.Place) bool {
	if !w.r.Row || w.c.below == nil || !w.c.below.Row || w.c.index < 2 || p.Nth > 1 || p.Target.Sort != notation.AnyStitch && p.Target.Sort != notation.OfKind {
		return false
	}
	switch p.Pick {
	case notation.Skipped:
		return len(w.lastSkip) == 0
	case notation.Next, notation.Each:
		return p.Below != 0 && w.begun && (w.onLonger() || w.remaining(1) == 0)
	}
	return false
}

// onLonger reports whether the work has come to the stitches beyond the row below already.
func (w *roundWork) onLonger() bool {
	return w.c.lengthened > 0 && w.pos >= w.c.lengthened
}

// nextBeyond is the next spot beyond the row below that a place means; -1 for none. Those of the
// row that left unworked stitches last lie nearest.
func (w *roundWork) nextBeyond(p *notation.Place) int {
	for {
		for i := max(w.pos, w.c.lengthened); w.c.lengthened > 0 && i < len(w.c.spots); i++ {
			if s := &w.c.spots[i]; s.counts && s.use == unused && w.c.matches(i, &p.Target) && (p.Below >= 0 || w.leftOf(s.ref.Round, -p.Below)) {
				return i
			}
		}
		if p.Pick != notation.Skipped && p.Below < 0 && w.c.lengthened > 0 && w.leftOf(w.c.spots[len(w.c.spots)-1].ref.Round, -p.Below) || !w.lengthen() {
			return -1
		}
	}
}

// leftOf reports whether stitches of the row at an index are those that the words call unworked "of
// Row n": its own, or those it was worked on that it left.
func (w *roundWork) leftOf(at, n int) bool {
	rows := w.part.Rounds
	n += w.later // repeated, the words mean the row as far before
	return rows[at].Number == n || at+1 < len(rows) && rows[at+1].Number == n
}

// lengthen adds the stitches to the course that lie farther out than it goes, of the latest row that has
// any. It reports whether there are some.
func (w *roundWork) lengthen() bool {
	rows := w.part.Rounds
	used := usedBy(rows)
	from := w.c.index
	if w.c.lengthened > 0 {
		from = w.c.spots[len(w.c.spots)-1].ref.Round
	}
	for at := from - 1; at > 0 && rows[at].Row && rows[at].Count() > 0; at-- {
		older := layCourse(rows[at], at, w.r.Reversed != rows[at].Reversed)
		first := len(older.spots)
		for first > 0 && !used[older.spots[first-1].ref] {
			first--
		}
		if first == 0 || first == len(older.spots) {
			continue
		}
		if w.c.lengthened == 0 {
			w.c.lengthened = len(w.c.spots)
		}
		for _, s := range older.spots[first:] {
			s.run, s.optional = 0, true
			w.c.spots = append(w.c.spots, s)
		}
		w.c.cornerAt = nil
		return true
	}
	return false
}

// countBeyond is how many stitches "each unworked st" is: all that are beyond, or those of the row
// that the words name.
func (w *roundWork) countBeyond(p *notation.Place) (n int) {
	if !w.goesBeyond(p) || w.remaining(1) > 0 && !w.onLonger() {
		return 0
	}
	if w.nextBeyond(p) < 0 {
		return 0
	}
	for i := max(w.pos, w.c.lengthened); i < len(w.c.spots); i++ {
		if s := &w.c.spots[i]; s.counts && s.use == unused && w.c.matches(i, &p.Target) && (p.Below >= 0 || w.leftOf(s.ref.Round, -p.Below)) {
			n++
		}
	}
	return n
}

// shortRow reports whether a row that leaves n stitches is meant to: its words go no further, and the
// count behind them, or behind the row that it repeats, says so.
func (w *roundWork) shortRow(label, text *notation.Round, n int, last bool) bool {
	if !w.stopsBefore(n) && !w.turnsBack(n) && !w.goneOnto(n) {
		return false
	}
	for _, r := range []*notation.Round{label, text} {
		if (r != label || last) && w.bearsOut(w, r) && w.compare(w, w.bySize(r), true) {
			return true
		}
	}
	return false
}

// goneOnto reports whether a row written behind the one being worked goes onto stitches that were left
// unworked: then it is a short one, "sc in next 5 sts, turn", though nothing is said of them.
func (w *roundWork) goneOnto(n int) bool {
	if !w.r.Row || !w.hand.turned || w.remaining(n+1) != n {
		return false
	}
	onto, behind := false, false
	for _, r := range w.texts[w.index].Rounds {
		if behind {
			walkPlaces(r.Items, func(pl *notation.Place) {
				plain := pl.Target.Sort == notation.AnyStitch || pl.Target.Sort == notation.OfKind
				older := pl.Below < 0 && (pl.Pick == notation.Next || pl.Pick == notation.Each) && (pl.Into < stitch.FrontPost || pl.Into > stitch.BackPost)
				onto = onto || plain && (pl.Pick == notation.Skipped && pl.Nth < 2 && !passes(r.Items) || older)
			})
		}
		behind = behind || r.Line == w.r.Line
	}
	return onto
}

// passes reports whether instructions pass over stitches by name.
func passes(items []notation.Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Skip:
			if !it.Unworked {
				return true
			}
		case *notation.Repeat:
			if passes(it.Items) {
				return true
			}
		}
	}
	return false
}
