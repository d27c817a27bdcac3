package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// What a beginning chain is said to count as may contradict its length, the stitches of the
// round and the chain that is joined to.

// checkHeight notices a beginning chain that is longer or much shorter than what it is said
// to count as: ch 5 for a dc and ch 1. One chain less than a stitch is tall is usual as
// well (common practice, no source).
func (w *roundWork) checkHeight(it *notation.Chain, c *notation.Counts, n int) {
	if c.Of > 0 && c.Of != n {
		return
	}
	if c.Several > 1 && !c.Half {
		w.wonder(c.Span, "chain", fmt.Sprintf("begins with ch %d, which is said to count as %d %s: a chain counts as one stitch", n, c.Several, c.As.Name(w.terms)), "Check the number.")
		return
	}
	if tall, wrong := wrongHeight(c, n); wrong {
		w.wonder(it.Span, "chain", fmt.Sprintf("begins with ch %d, which is said to count as %s: that is ch %d", n, w.saidOf(c), tall), "Check the two numbers.")
	}
}

// saidOf is what a chain is said to count as.
func (w *work) saidOf(c *notation.Counts) string {
	as := c.As.Name(w.p.Terms)
	if c.Chains > 0 {
		as += fmt.Sprintf(" and ch %d", c.Chains)
	}
	return as
}

// wrongHeight reports whether n chains cannot be what they are said to count as, and how
// many that is.
func wrongHeight(c *notation.Counts, n int) (int, bool) {
	if !aStitch(c) || c.Base > 0 {
		return 0, false
	}
	tall := c.As.Chains()
	have := n - c.Chains
	return tall + c.Chains, have > max(tall, 2) || have < max(tall-1, 1)
}

// aStitch reports whether a chain is said to count as a plain stitch.
func aStitch(c *notation.Counts) bool {
	return !c.Not && !c.Space && !c.Half && c.As.Is() && c.As.Shape == stitch.Plain && c.As.Base >= stitch.Single
}

// oddStart notices a beginning chain that is said here to count as a taller stitch than
// any of the round, where it is as long as those of the round are tall: ch 3 as a treble
// before double crochet, in US terms.
func (w *roundWork) oddStart() {
	c := w.saids[w.r]
	if !w.saidHere || c.Throughout || !aStitch(c) {
		return
	}
	shorter := false
	for i := range w.r.Stitches {
		st := &w.r.Stitches[i]
		switch k := st.Counted(); {
		case st.Role == fabric.Start:
			if !st.Counts || st.As != c.As || st.Chains != c.As.Chains()-1 {
				return
			}
		case k.Base == c.As.Base:
			return
		case st.Counts:
			shorter = shorter || k.Base == c.As.Base-1
		}
	}
	if shorter {
		w.wonder(c.Span, "chain", fmt.Sprintf("begins with ch %d, which is said to count as %s, and has no other", c.As.Chains()-1+c.Chains, w.saidOf(c)),
			fmt.Sprintf("Its stitches are as tall as the chain: %s.", stitch.Of(c.As.Base-1).Name(w.terms)))
	}
}

// cannotBe is what is wrong with what is said of all beginning chains of a number, "" when
// nothing is, and what to do.
func (w *work) cannotBe(c *notation.Counts) (message, help string) {
	tall, wrong := wrongHeight(c, c.Of)
	switch {
	case c.Several > 1:
		return fmt.Sprintf("the chain is said to count as %d %s: it counts as one stitch", c.Several, c.As.Name(w.p.Terms)), "Check the number."
	case wrong && c.Of > 0 && !w.wholeChain(c.Of):
		return fmt.Sprintf("ch %d is said to count as %s: that is ch %d", c.Of, w.saidOf(c), tall), "Check the two numbers."
	}
	return "", ""
}

// checkNoted notices what the notes say of beginning chains that cannot be.
func (w *work) checkNoted() {
	for _, c := range w.noted {
		message, help := w.cannotBe(c)
		if message == "" && aStitch(c) && c.Of > 0 && c.Of-c.Chains == c.As.Chains()-1 && !w.wholeChain(c.Of) && w.hasNo(c.As.Base) {
			message = fmt.Sprintf("ch %d is said to count as %s, and the pattern has no other", c.Of, w.saidOf(c))
			help = fmt.Sprintf("Its stitches are as tall as the chain: %s.", stitch.Of(c.As.Base-1).Name(w.p.Terms))
		}
		if message == "" && w.otherLength(c) {
			message, help = fmt.Sprintf("ch %d is said to count as %s, and no round begins with ch %d", c.Of, w.saidOf(c), c.Of), "Check the number."
		}
		if message != "" {
			f := w.p.Fault(c.Pos, c.Length, "chain", message, help)
			f.Severity = fault.Warning
			w.faults = append(w.faults, f)
		}
	}
}

// checkSkipped notices what is said of n chains passed over at the beginning that cannot
// be: that they are several stitches, or one much taller than they are.
func (w *roundWork) checkSkipped(c *notation.Counts, n int) {
	if c == nil || !aStitch(c) || c.Of > 0 && c.Of != n {
		return
	}
	if c.Several > 1 && (c.Of > 0 || c.Passed > 0) {
		w.wonder(c.Span, "chain", fmt.Sprintf("begins with chains that are said to count as %d %s: they count as one stitch", c.Several, c.As.Name(w.terms)), "Check the number.")
	} else if n < c.As.Chains()-1 {
		w.wonder(c.Span, "chain", fmt.Sprintf("passes over %s, said to count as %s: that is ch %d", plural(n, "ch"), c.As.Name(w.terms), c.As.Chains()), "Check the two numbers.")
	}
}

// wholeChain reports whether a first round goes into chain number n from the hook, so that
// a chain of n is the one it begins with and the stitch is as tall as the rest of it.
func (w *work) wholeChain(n int) bool {
	whole := false
	for _, t := range w.texts {
		for _, r := range t.Rounds {
			walkPlaces(r.Items, func(p *notation.Place) {
				whole = whole || p.Target.Sort == notation.FromHook && p.Nth == n
			})
		}
	}
	return whole
}

// otherLength reports whether no round begins with a chain as long as is said of those that
// count as a stitch, while rounds begin with one that is one chain longer or shorter, counts as
// that, and has nothing else said of it.
func (w *work) otherLength(c *notation.Counts) bool {
	if !aStitch(c) || c.Of == 0 || c.Chains > 0 || w.wholeChain(c.Of) {
		return false
	}
	other := false
	for _, f := range w.fabrics {
		for _, p := range f.Parts {
			for _, r := range p.Rounds {
				for i := range r.Stitches {
					st := &r.Stitches[i]
					if st.Role != fabric.Start {
						continue
					}
					if st.Chains == c.Of {
						return false
					}
					other = other || r.Number > 1 && w.saids[r] == nil && st.Counts && st.As == c.As && (st.Chains == c.Of-1 || st.Chains == c.Of+1)
				}
			}
		}
	}
	return other
}

// hasNo reports whether all sizes came out and have no stitch of a height but the
// beginning chains, while they have some that are one lower.
func (w *work) hasNo(b stitch.Base) bool {
	lower := false
	for _, f := range w.faults {
		if f.Severity == fault.Error {
			return false
		}
	}
	for _, f := range w.fabrics {
		for _, p := range f.Parts {
			for _, r := range p.Rounds {
				for i := range r.Stitches {
					st := &r.Stitches[i]
					if st.Role != fabric.Start && st.Counted().Base == b {
						return false
					}
					lower = lower || st.Role != fabric.Start && st.Counts && st.Counted().Base == b-1
				}
			}
		}
	}
	return lower
}

// otherChain notices that the chain joined to, or worked into, is none of those that are
// said to be the stitch: the 4th of ch 4 that counts as dc and ch 1.
func (w *roundWork) otherChain(r *fabric.Round, start int, p *notation.Place) {
	c := w.saids[r]
	if c == nil || c.Chains == 0 || p.Of == nil || p.Nth == 0 || !aStitch(c) {
		return
	}
	if st := &r.Stitches[start]; st.Counts && p.Nth != st.Chains {
		w.wonder(p.Span, "chain", fmt.Sprintf("works into chain number %d of ch %d, which counts as %s: the stitch is chain number %d", p.Nth, st.Chains+c.Chains, w.saidOf(c), st.Chains),
			"Check which of the two is meant.")
	}
}
