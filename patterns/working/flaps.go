package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// flap is a piece of rows on some of the stitches of a round, as an edging goes round it:
// down the ends of its rows, along its last row and up again.
type flap struct {
	part int
	rows []int // with ends to work along
	from int   // the first stitch of its last row in the round that the edging goes on from
	n    int   // how many it has
}

// roundFlaps begins a part in rounds that goes round pieces of rows on the last round of
// another, two ear flaps, as well as along what they left of it. It reports whether there are
// any and the words go along row ends.
func (p *partWork) roundFlaps(on int) bool {
	base := p.f.Parts[on]
	if p.source.Rows || base.Worked != fabric.InRounds || len(base.Rounds) == 0 || !p.alongRowEnds() {
		return false
	}
	last := base.Rounds[len(base.Rounds)-1]
	owner := map[int]int{} // 1 + the flap that stands on a stitch of the round
	var parts []int
	for k := on + 1; k < p.index; k++ {
		if q := p.f.Parts[k]; q.From == on && onSome(q) {
			parts = append(parts, k)
			for st := range takenBy(q) {
				owner[st] = len(parts)
			}
		}
	}
	if len(parts) == 0 {
		return false
	}
	r := *last
	r.Carried, r.Ring, r.Repeats, r.Groups, r.Spaces, r.Stitches = true, false, nil, nil, nil, nil
	r.Label += " and the edges of the flaps"
	done := map[int]bool{}
	for i, st := range last.Stitches {
		k := owner[i]
		if !st.Counts && k == 0 {
			continue
		}
		if k > 0 && done[k] {
			continue
		}
		if k > 0 {
			done[k] = true
			q := p.f.Parts[parts[k-1]]
			f := flap{part: parts[k-1], from: len(r.Stitches)}
			for n, row := range q.Rounds {
				if row.Row && row.Number > 0 && !row.Carried {
					f.rows = append(f.rows, n)
				}
			}
			for _, end := range q.Rounds[len(q.Rounds)-1].Stitches {
				if end.Counts {
					end.On, end.Group, end.Marked = nil, 0, false
					r.Stitches = append(r.Stitches, end)
				}
			}
			f.n = len(r.Stitches) - f.from
			p.flaps = append(p.flaps, f)
			continue
		}
		st.On, st.Group, st.Marked = nil, 0, false
		r.Stitches = append(r.Stitches, st)
	}
	p.sideRows, p.sidePart = p.flaps[0].rows, p.flaps[0].part
	p.part.From = on
	p.part.Rounds = append(p.part.Rounds, &r)
	p.number, p.turned = r.Number, false
	return true
}

// alongRowEnds reports whether the first round of the part goes along row ends.
func (p *partWork) alongRowEnds() bool {
	for _, r := range p.texts[p.index].Rounds {
		for _, it := range r.Items {
			if s, ok := it.(*notation.Stitches); ok && len(s.Places) == 1 && s.Places[0].Target.Sort == notation.RowEnds && s.Places[0].Target.Name == "" {
				return true
			}
		}
		if makes(r.Items) && !onlyPlaces(r.Items) {
			break
		}
	}
	return false
}

// atFlap goes on to the side of the next flap, the first and then the second of each. It is
// the fault of having come to it too early, or of no more flaps.
func (w *roundWork) atFlap(p *notation.Place) *halt {
	if len(w.flaps) == 0 {
		return nil
	}
	k := w.sides / 2
	if k >= len(w.flaps) {
		return stopAt(p.Span, "no-row-ends", fmt.Sprintf("both sides of %s have been worked along already", plural(len(w.flaps), "flap")), "")
	}
	f := &w.flaps[k]
	w.sideRows, w.sidePart = f.rows, f.part
	at, where := f.from, fmt.Sprintf("flap %d", k+1)
	if w.sides%2 == 1 {
		at, where = f.from+f.n, fmt.Sprintf("the second side of flap %d", k+1)
	}
	left := 0
	for i := range w.c.spots {
		// The chain that begins the round stands on none of them.
		if sp := &w.c.spots[i]; sp.counts && sp.ref.Stitch < at && sp.use == unused {
			left++
		} else if sp.counts && sp.ref.Stitch >= at && sp.use == worked && sp.ref.Stitch < at+1 {
			left--
		}
	}
	switch {
	case left > 0:
		return stopAt(p.Span, "flap", fmt.Sprintf("%s comes to %s with %s before it unused", w.r.Label, where, plural(left, "stitch")),
			"Say how many stitches are worked before it.")
	case left < 0:
		return stopAt(p.Span, "flap", fmt.Sprintf("%s works more stitches before %s than there are", w.r.Label, where), "Check the number.")
	}
	return nil
}
