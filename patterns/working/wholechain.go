package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// besideStart is how many chains there are to a run with those of the beginning chain that
// it goes on from: the "ch-4 sp" of a ch 4 that counts as dc and ch 1, the "ch-2 sp" of a ch 2 that counts as
// no stitch but a space; 0 for other runs.
func (c *course) besideStart(k int) int {
	first := c.spots[c.runs[k].From].ref
	for _, i := range []int{c.runs[k].From - 1, c.runs[k].To} {
		if i >= 0 && i < len(c.spots) && c.spots[i].st != nil && c.spots[i].st.Role == fabric.Start && c.spots[i].st.Counts {
			return c.spots[i].st.Chains + c.chains[k]
		}
	}
	if last := c.spots[min(c.runs[k].To, len(c.spots))-1].ref; last.Stitch < first.Stitch {
		first = last
	}
	if c.below == nil || first.Round != c.index || first.Stitch < 1 || first.Stitch > len(c.below.Stitches) {
		return 0
	}
	if st := &c.below.Stitches[first.Stitch-1]; st.Role == fabric.Start && !st.Counts {
		return st.Chains + c.chains[k]
	}
	return 0
}

// namesWhole notes that a run is named by all of the chain that the row below begins with, its stitch and all:
// "in ch-5 sp" of a ch 5 that counts as dc and ch 2.
func (w *roundWork) namesWhole(t *notation.Target, run int) {
	if run > 0 && t.Sort == notation.ChainSpace && t.Chains > w.c.chains[run-1] && t.Chains == w.c.besideStart(run-1) {
		w.whole = run
	}
}

// inWholeChain reports whether the row ends with several stitches in the space that all of the chain makes which
// the row below begins with: its stitch, which comes last, is under them. Without a count behind the row it may
// have been forgotten.
func (w *roundWork) inWholeChain() bool {
	if len(w.stated) == 0 || !w.endsInWhole() {
		return false
	}
	n := 0
	for i := len(w.r.Stitches) - 1; i >= 0; i-- {
		st := &w.r.Stitches[i]
		if !st.Counts {
			continue
		}
		if len(st.On) != 1 || st.On[0].Into != stitch.Space || st.On[0] != w.c.space(w.whole-1) {
			break
		}
		n++
	}
	return n > 1
}

// endsInWhole reports whether a row goes last into a space that it names by all of the chain which the row below
// begins with, and leaves the stitch of that.
func (w *roundWork) endsInWhole() bool {
	end := len(w.c.spots) - 1
	if !w.r.Row || w.whole == 0 || end < 1 || w.c.runs[w.whole-1].To != end {
		return false
	}
	chain := &w.c.spots[end]
	return chain.use == unused && chain.st.Role == fabric.Start
}
