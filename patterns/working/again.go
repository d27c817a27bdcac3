package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// ofOtherKinds reports whether words that are worked again name stitches which are other
// ones now: "rep Rnd 2", whose "next 2 dc" come to FPtr after a cable, or "hdc in each sc" told
// again. There have to be as many of them as the words were first worked on.
func (p *partWork) ofOtherKinds(text *notation.Round) bool {
	n := len(p.part.Rounds)
	for i := 1; i < n; i++ {
		if r := p.part.Rounds[i]; r.Line == text.Line && r.Number > 0 {
			before, now := p.part.Rounds[i-1], p.part.Rounds[n-1]

			return before.Count() == now.Count() && oneHeight(before) != stitch.None && oneHeight(before) != oneHeight(now)
		}
	}
	return false
}

// oneHeight is the height that all stitches of a round are of, 0 where they are of several.
func oneHeight(r *fabric.Round) stitch.Base {
	base := stitch.None
	for i := range r.Stitches {
		if st := &r.Stitches[i]; st.Counts {
			if b := st.Counted().Base; base != stitch.None && b != base {
				return stitch.None
			} else {
				base = b
			}
		}
	}
	return base
}

// withoutJoin is what a round told again works where the words say that this time it is not
// joined: "As Rnd 3, but do not join".
func withoutJoin(items, label []notation.Item) []notation.Item {
	if !slices.ContainsFunc(label, func(it notation.Item) bool { _, no := it.(*notation.NoJoin); return no }) {
		return items
	}
	for i := len(items) - 1; i > 0; i-- {
		if j, ok := items[i].(*notation.Join); ok && j.Yarn == "" {
			return append(items[:i:i], items[i+1:]...)
		}
	}
	return items
}
