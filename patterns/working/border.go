package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
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
	// Round the piece the chain is met the other way than the row on it was
	// worked, or the same way when the border goes the other way round.
	order := chain.Stitches[low : high+1]
	for k := range order {
		st := order[k]
		if (last.Reversed != p.turned) != row.Reversed {
			st = order[len(order)-1-k]
		}
		st.On, st.Group = nil, 0
		last.Stitches = append(last.Stitches, st)
	}
	p.under = len(order)
}

// goesUnder reports whether the first round of the part goes along the other
// side of a chain.
func (p *partWork) goesUnder() bool {
	rounds := p.texts[p.index].Rounds
	if len(rounds) == 0 {
		return false
	}
	for _, it := range rounds[0].Items {
		if _, ok := it.(*notation.OtherSide); ok {
			return true
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
	if w.sides++; w.sides%2 == 1 {
		for i, j := 0, len(rows)-1; i < j; i, j = i+1, j-1 {
			rows[i], rows[j] = rows[j], rows[i]
		}
	}
	return rows
}
