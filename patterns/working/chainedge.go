package working

import (
	"regexp"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// chainUp is advice that turns a piece so that its starting chain is at the top.
var chainUp = regexp.MustCompile(`(?i)\b(foundation|starting|beginning) (ch|chain|edge)\b.*\b(uppermost|on top|at (the )?top|upward|upwards|up)\b`)

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
			case *notation.Note:
				named = named || chainUp.MatchString(it.Text)
			case *notation.Join:
				named = named || it.Place != nil && it.Place.Target.Sort == notation.ChainStitch && it.Place.Target.Name == notation.ChainEdge
			case *notation.Stitches:
				if !named {
					return false
				}
				for i := range it.Places {
					if pl := &it.Places[i]; pl.Target.Sort == notation.RowEnds || pl.Extent.Target.Sort == notation.RowEnds || pl.OnTop || !p.source.Rows && (pl.Target.Name == notation.Corner || pl.Below < 0) {
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
	if high < 0 {
		return false
	}
	if first := &base.Rounds[1].Stitches[0]; first.Role == fabric.Start && first.Counts && base.Rounds[1].Row {
		// The chains that count as the first stitch stand on the last of those.
		if at := len(base.Rounds[0].Stitches) - first.Chains; first.Chains > 0 && at > high {
			high, used[at] = at, true
		}
	}
	r := &fabric.Round{Label: "the starting chain", Carried: true, Colour: base.Rounds[0].Colour, Line: base.Rounds[0].Line}
	if base.Worked == fabric.InRounds {
		r.Closing = fabric.Joined
	}
	for k := low; k <= high; k++ {
		st := base.Rounds[0].Stitches[k]
		st.On, st.Group, st.Counts = nil, 0, used[k]
		if n := len(r.Stitches); !used[k] && (n == 0 || used[k-1]) {
			r.Spaces = append(r.Spaces, fabric.Span{From: n, To: n + 1})
		} else if !used[k] {
			r.Spaces[len(r.Spaces)-1].To = n + 1
		}
		r.Stitches = append(r.Stitches, st)
	}
	p.onChain = true
	p.part.From = on
	p.part.Rounds = append(p.part.Rounds, r)
	return true
}
