package working

import (
	"fmt"
	"sort"
	"strings"

	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// outOf is the fault of running out of what a place names.
func (w *roundWork) outOf(p *notation.Place, need int) *halt {
	if w.onLeft {
		return w.noneLeft(p)
	}
	if w.c.edge > 0 && !oneByOne(p, true) {
		return w.nothingBelow(p.Span)
	}
	h := w.runsOut(p.Span, need)
	if what := named(&p.Target, w.terms); what != "stitches" {
		h.message = fmt.Sprintf("%s runs out of %s", w.r.Label, what)
	}
	if w.c.edge > 0 && p.Target.Sort == notation.RowEnds {
		h.message, h.help = w.r.Label+" runs out of row ends", fmt.Sprintf("There are %d of them.", w.c.edge)
	}
	if p.Target.Sort == notation.ChainSpace && w.c.below != nil {
		h.help = fmt.Sprintf("%s has %s.", capital(w.c.below.Label), w.spacesBelow())
	}
	return h
}

// spacesBelow is "6 ch-2 sps and 1 ch-5 sp", what the round below has of spaces.
func (w *roundWork) spacesBelow() string {
	n := map[int]int{}
	var sizes []int
	for _, chains := range w.c.chains {
		if n[chains]++; n[chains] == 1 {
			sizes = append(sizes, chains)
		}
	}
	if len(sizes) == 0 {
		return "no chain spaces"
	}
	sort.Ints(sizes)
	var l []string
	for _, chains := range sizes {
		l = append(l, plural(n[chains], fmt.Sprintf("ch-%d sp", chains)))
	}
	return listed(l, "and")
}

// runsOut is the fault of running out of stitches.
func (w *roundWork) runsOut(at notation.Span, need int) *halt {
	h := stopAt(at, "runs-out", fmt.Sprintf("%s runs out of stitches", w.r.Label), "")
	h.out = true
	if w.c.below != nil {
		h.help = fmt.Sprintf("%s. The instructions need %d more.", w.leftBy(), max(need, 1))
	}
	return h
}

// leftBy is "72 stitches were left by Rnd 8".
func (w *roundWork) leftBy() string {
	n := w.c.count()
	were, one := "were", "stitch"
	if n == 1 {
		were = "was"
	}
	if w.c.below.Label == "the starting chain" {
		one = "chain"
	}
	return fmt.Sprintf("%s %s left by %s", plural(n, one), were, w.c.below.Label)
}

// fitTimes is the help when a repeat with a fixed number of times runs out, of which
// so many have been done, with so many stitches used before.
func (w *roundWork) fitTimes(h *halt, besides, done, times, used int) string {
	if !h.out || used == 0 || w.c.below == nil {
		return h.help
	}
	help := fmt.Sprintf("%s and the repeat uses %d: there are enough for %s, not %d.\n%s need %d.",
		w.leftBy(), used, plural(done, "repeat"), times, plural(times, "repeat"), besides+times*used)
	if each := (w.c.count() - besides) / max(times, 1); each > 0 && each*times == w.c.count()-besides {
		help += fmt.Sprintf(" They come out if each uses %d.", each)
	}
	return help
}

// fits says which counts of the round below would work for a repeat that uses
// so many with so many used besides.
func (w *roundWork) fits(used, besides int) string {
	have := w.c.count()
	k := (have - besides) / used
	low, high := besides+k*used, besides+(k+1)*used
	if low == have {
		high = low
	}
	if k < 1 || low == high {
		return fmt.Sprintf("Nearest count that works: %d.", max(high, besides+used))
	}
	return fmt.Sprintf("Nearest counts that work: %d or %d.", low, high)
}

// misfit is the fault of a repeat around the round that does not come out.
func (w *roundWork) misfit(r *notation.Repeat, fail *halt, rep repeated) *halt {
	at := r.Span
	if fail != nil {
		at = fail.at
	}
	h := w.runsOut(at, 1)
	if fail != nil && fail.code == "runs-out" {
		h.message = fail.message
	}
	if rep.used == 0 || w.c.below == nil {
		if fail != nil {
			return fail
		}
		return h
	}
	have := w.c.count()
	leave := 0
	if r.Extent.Sort == notation.ToLast {
		leave = r.Extent.N.For(w.size)
		if r.AtStop {
			leave += rep.head
		}
	}
	before := max(w.used-rep.times*rep.used, 0)
	tail := leave
	besides := before + tail
	k := max((have-besides)/rep.used, 0)
	over := have - besides - k*rep.used
	if over == 0 && fail != nil {
		return fail
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s", w.leftBy())
	if besides > 0 {
		fmt.Fprintf(&b, ", %d go beside the repeat", besides)
	}
	is, use := "are", "use"
	if over == 1 {
		is = "is"
	}
	if k == 1 {
		use = "uses"
	}
	fmt.Fprintf(&b, " and the repeat uses %d: %s %s %d, %s %s left over.\n", rep.used, plural(k, "repeat"), use, k*rep.used, plural(over, "stitch"), is)
	b.WriteString(w.fits(rep.used, besides))
	h.help = b.String()
	return h
}

// leftUnused is the fault of places left at the end of a round.
func (w *roundWork) leftUnused(n int, at notation.Span) *halt {
	h := stopAt(at, "left-over", fmt.Sprintf("%s leaves %s of %s unused", w.r.Label, plural(n, "stitch"), w.c.below.Label), "")
	help := fmt.Sprintf("%s, and %s uses %d.", w.leftBy(), w.r.Label, w.used)
	if len(w.repeats) == 1 {
		rep := w.repeats[0]
		if rep.used > 0 {
			h.at = rep.rep.Span
			switch {
			case n%rep.used == 0:
				help += fmt.Sprintf("\nThe repeat uses %d and is worked %s; %d times would use them all.", rep.used, times(rep.times), rep.times+n/rep.used)
			default:
				help += fmt.Sprintf("\nThe repeat uses %d: no number of repeats uses them all. %s", rep.used, w.fits(rep.used, w.used-rep.times*rep.used))
			}
		}
	}
	if n == 1 && w.endsInWhole() {
		st := w.c.spots[len(w.c.spots)-1].st
		help += fmt.Sprintf("\nIt is the %s, in chains, that %s begins with: work into it, or state the count if the last stitches go round all of it.", st.Counted().Name(w.terms), w.c.below.Label)
	}
	h.help = help
	return h
}

func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

// spacing is the explicit wording of n increases (or, below 0, decreases)
// spread over m stitches, as evenly as can be.
func spacing(n, m int, b stitch.Base, t stitch.Terms) string {
	name := b.Name(t)
	takes, change := 1, "2 "+name+" in next st"
	if n < 0 {
		n, takes, change = -n, 2, stitch.Tog(b, 2).Name(t)
	}
	if n == 0 || n*takes > m {
		return ""
	}
	one := func(plain int) string {
		switch plain {
		case 0:
			return change
		case 1:
			return fmt.Sprintf("%s in next st, %s", name, change)
		}
		return fmt.Sprintf("%s in next %d sts, %s", name, plain, change)
	}
	plain, more := m/n-takes, m%n
	if more == 0 {
		return "*" + one(plain) + "; rep from * around"
	}
	return fmt.Sprintf("[%s] %s, [%s] %s", one(plain+1), times(more), one(plain), times(n-more))
}
