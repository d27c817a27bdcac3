package chart

import (
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// hideTurningChain marks the last chains of a foundation that stand up as the
// first row's turning chain, and those that go on from it to its next stitch.
func (w *work) hideTurningChain(c *course) {
	first := w.courses[1].round.Stitches
	for i := range first {
		s, up := &first[i], first[i].Chains
		for k := i + 1; k < len(first) && first[k].IsChain(); k++ {
			up++
		}
		n := len(c.round.Stitches)
		if s.Role != fabric.Start || len(s.On) != 1 || s.On[0].At.Round != 0 || s.On[0].Into != stitch.Top {
			continue
		}
		for _, up := range [...]int{s.Chains, up} {
			if at := s.On[0].At.Stitch; up < n && (at == n-up || at == n-up-1) {
				c.hidden = n - up
			}
		}
	}
}

// hides reports whether stitch i is a chain that is drawn as a turning chain.
func (c *course) hides(i int) bool { return c.hidden > 0 && i >= c.hidden }

// startsOn reports whether a course begins with a chain that counts as a stitch on a chain
// of the foundation.
func (c *course) startsOn(chain int) bool {
	for i := range c.round.Stitches {
		if s := &c.round.Stitches[i]; s.Role == fabric.Start {
			return s.Counts && len(s.On) == 1 && s.On[0].At.Stitch == chain
		}
	}
	return false
}
