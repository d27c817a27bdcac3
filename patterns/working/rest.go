package working

import "whorl/patterns/notation"

// namesUnworked reports whether the first round of the part goes into stitches that a
// piece of rows left unworked, between its row ends: "sc in end of each row along
// first side, sc in each of 8 unworked sts of toe, …".
func (p *partWork) namesUnworked() bool {
	for _, r := range p.texts[p.index].Rounds {
		for _, it := range r.Items {
			if _, ok := it.(*notation.Skip); ok {
				return false // they are its own
			}
			if j, ok := it.(*notation.Join); ok && j.Place != nil && j.Place.Pick == notation.Skipped && j.Place.Target.Sort != notation.ChainSpace {
				return true // "join yarn in first skipped st, ch 1, sc around"
			}
			if s, ok := it.(*notation.Stitches); ok {
				for i := range s.Places {
					if s.Places[i].Pick == notation.Skipped && s.Places[i].Target.Sort != notation.ChainSpace {
						return true
					}
				}
			}
		}
		if makes(r.Items) && !onlyPlaces(r.Items) {
			return false
		}
	}
	return false
}

// restCorner reports whether a place is a corner of a piece of rows where the round goes along its
// sides and what it left unworked: it begins with the row ends there.
func (w *roundWork) restCorner(p *notation.Place) bool {
	return w.opening && len(w.sideRows) > 0 && w.c.index == 0 && p.Target.Sort == notation.ChainSpace && p.Target.Name == notation.Corner
}

// rowsOn is the piece of rows that stands on some stitches of a part in rounds, where there is
// just one: "from: Slipper" names the toe that its rows go on from. For any other part it is
// the part itself.
func (p *partWork) rowsOn(on int) int {
	rows := on
	for k := on + 1; k < p.index; k++ {
		if q := p.f.Parts[k]; q.From == on && onSome(q) {
			if rows != on {
				return on
			}
			rows = k
		}
	}
	return rows
}

// continueFromRest begins the part along both sides of a piece of rows and what the
// piece left unworked of the round that it is on. It reports whether there is any.
func (p *partWork) continueFromRest(on int) bool {
	base := p.f.Parts[on]
	if base.From < 0 || len(base.Rounds) < 2 || !base.Rounds[0].Carried {
		return false
	}
	used := map[int]bool{}
	for i := range base.Rounds[1].Stitches {
		for _, pl := range base.Rounds[1].Stitches[i].On {
			if pl.At.Round == 0 {
				for k := pl.At.Stitch; k <= pl.Last.Stitch; k++ {
					used[k] = true
				}
			}
		}
	}
	r := *base.Rounds[0]
	r.Label, r.Stitches, r.Spaces, r.Groups, r.Repeats = "what "+base.Rounds[1].Label+" left of "+r.Label, nil, nil, nil, nil
	for i, st := range base.Rounds[0].Stitches {
		if st.Counts && !used[i] {
			st.On, st.Group = nil, 0
			r.Stitches = append(r.Stitches, st)
		}
	}
	if len(r.Stitches) == 0 {
		return false
	}
	for i, row := range base.Rounds {
		if row.Row && row.Number > 0 && !row.Carried {
			p.sideRows = append(p.sideRows, i)
		}
	}
	p.part.From, p.sidePart, p.opening = on, on, true
	p.part.Rounds = append(p.part.Rounds, &r)
	p.number = 0
	return true
}
