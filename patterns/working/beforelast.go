package working

import "whorl/patterns/notation"

// beforeLast works a repeat once more on the way to the last stitches of a kind that it does not go
// into itself, "*7 tr into next CL7, 1 dc into each of next 3 dc; rep from * to last CL4": there are no
// more of these than are to be left from the beginning on. It reports whether that goes. Where it does
// no longer, the words behind the repeat pass nothing over to get there.
func (w *roundWork) beforeLast(run *run) bool {
	r, begin, passed := run.rep, w.mark(), len(w.passed)
	n := r.Extent.N.For(w.size)
	if r.Extent.Target.Sort == notation.AnyStitch || w.left(&r.Extent, n+1) != n {
		return false
	}
	h := w.onceMore(&run.repeated, run.times, r.Items)
	if h != nil || w.pos <= begin.pos || len(w.passed) > passed && run.times > 0 || w.left(&r.Extent, n+1) != n {
		w.back(begin)
		return false
	}
	run.times++
	run.before = true
	return true
}
