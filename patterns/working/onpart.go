package working

import (
	"regexp"

	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// overOnly is advice that a piece is worked on some of the stitches: "working back and forth
// over the next 14 sts only".
var overOnly = regexp.MustCompile(`(?i)\b(only (work(ing)? )?)?(over|on|across|along|in|into) (only )?(the |these |those |just )?(next |first |last |following )?[^.,;]*\b(sts?|stitches)\b( only| alone)?`)

// saysOnly reports whether words speak of some of the stitches only.
func saysOnly(words string) bool {
	m := overOnly.FindString(words)
	return m != "" && regexp.MustCompile(`(?i)\b(only|just|alone)\b`).MatchString(m)
}

// onPart reports whether the round is a row on some of the stitches of a round, which
// leaves the others: an ear flap, begun by joining a yarn, or said to be on these only.
func (p *partWork) onPart(w *roundWork) bool {
	if !w.rowOnRound() {
		return false
	}
	for _, it := range w.items {
		if j, ok := it.(*notation.Join); ok && j.Yarn != "" {
			return true
		}
	}
	for _, r := range p.texts[p.index].Rounds {
		for _, it := range r.Items {
			if n, ok := it.(*notation.Note); ok && saysOnly(n.Text) {
				return true
			}
		}
		if makes(r.Items) {
			break
		}
	}
	return false
}

// rowOnRound reports whether the round is a row on a round.
func (w *roundWork) rowOnRound() bool {
	return w.r.Row && w.c.below != nil && !w.c.below.Row && w.c.below.Number != 0
}

// turnsBack reports whether a row on a round is turned behind as many stitches as its words
// say, with n of the round still to come: "sc in next 14 sts, turn".
func (w *roundWork) turnsBack(n int) bool {
	if !w.rowOnRound() || !w.c.below.Carried || w.remaining(n+1) != n {
		return false
	}
	turned := false
	for i := len(w.items) - 1; i >= 0; i-- {
		switch it := w.items[i].(type) {
		case *notation.Turn:
			turned = true
		case *notation.Note:
		case *notation.Stitches:
			if len(it.Places) == 0 {
				return turned && it.N.Set() && it.What.Kind != stitch.Of(stitch.Slip)
			}
			pl := &it.Places[len(it.Places)-1]
			return turned && pl.Pick == notation.Next && pl.N.Set()
		default:
			return false
		}
	}
	return false
}
