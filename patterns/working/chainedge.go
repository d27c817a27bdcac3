package working

import (
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// alongChain reports whether the part is worked along the other side of the starting chain
// of the piece that it is on, and nowhere else: "join yarn in first ch of foundation
// chain, ch 1, sc in each ch across".
func (p *partWork) alongChain(rest string) bool {
	named := strings.Contains(rest, "chain") || strings.Contains(rest, "foundation")
	for _, r := range p.texts[p.index].Rounds {
		for _, it := range r.Items {
			switch it := it.(type) {
			case *notation.OtherSide:
				named = true
			case *notation.Join:
				named = named || it.Place != nil && it.Place.Target.Sort == notation.ChainStitch && it.Place.Target.Name == notation.ChainEdge
			case *notation.Stitches:
				if !named {
					return false
				}
				for i := range it.Places {
					if pl := &it.Places[i]; pl.Target.Sort == notation.RowEnds || pl.Extent.Target.Sort == notation.RowEnds || pl.OnTop || pl.Target.Name == notation.Corner {
						return false // round more than one edge
					}
				}
			case *notation.MagicRing, *notation.FormRing:
				return false
			}
		}
		if makes(r.Items) && !onlyPlaces(r.Items) {
			break
		}
	}
	return named
}

// continueFromChain begins the part on the starting chain of another, from the other side
// and from its first chain on. It reports whether there is one.
func (p *partWork) continueFromChain(on int) bool {
	base := p.f.Parts[on]
	if len(base.Rounds) < 2 || base.Rounds[0].Number != 0 || base.Rounds[0].Carried || base.Rounds[0].Count() > 0 {
		return false
	}
	used := map[int]bool{}
	low, high := len(base.Rounds[0].Stitches), -1
	for i := range base.Rounds[1].Stitches {
		st := &base.Rounds[1].Stitches[i]
		for _, pl := range st.On {
			if k := pl.At.Stitch; st.Counts && pl.At.Round == 0 && k >= 0 {
				used[k] = true
				low, high = min(low, k), max(high, k)
			}
		}
	}
	if high < 0 || len(used) == 0 {
		return false
	}
	r := &fabric.Round{Label: "the starting chain", Carried: true, Colour: base.Rounds[0].Colour, Line: base.Rounds[0].Line}
	if base.Worked == fabric.InRounds {
		r.Closing = fabric.Joined
	}
	for _, st := range base.Rounds[0].Stitches[low : high+1] {
		st.On, st.Group, st.Counts = nil, 0, true
		r.Stitches = append(r.Stitches, st)
	}
	p.part.From = on
	p.part.Rounds = append(p.part.Rounds, r)
	return true
}
