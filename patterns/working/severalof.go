package working

import (
	"fmt"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// severalOf reports whether a place is several of one group: "each dc of next shell",
// "next 5 dc of shell", "last 2 dc of each fan".
func (w *roundWork) severalOf(p *notation.Place) bool {
	if p.Of == nil || p.Of.Target.Sort != notation.OfName || p.Target.Sort == notation.Gap {
		return false
	}
	return p.Pick == notation.Each || (p.Pick == notation.Next || p.Pick == notation.Last) && p.N.Set() && p.N.For(w.size) > 1
}

// groupOn is the group that the words name, by its number; -1 when there is none.
func (w *roundWork) groupOn(of *notation.Place) int {
	for k, g := range w.c.groups {
		if of.Target.Name != "" && !g.is(of.Target.Name) || of.Target.Name == "" && of.Target.Chains > 0 && !w.c.groupOf(g, of.Target.Kind, of.Target.Chains) {
			continue
		}
		if of.Pick == notation.Last && w.c.anotherAfter(k, of.Target.Name) {
			continue
		}
		within := of.Bare && g.From < w.pos && w.pos < g.To
		if of.Pick != notation.First && of.Pick != notation.Same && g.From < w.pos && !within || of.Pick == notation.Same && k+1 != w.lastGroup {
			continue
		}
		return k
	}
	return -1
}

// inGroupOf works into the stitches or spaces of one group that the words name.
func (w *roundWork) inGroupOf(p *notation.Place, work func([]fabric.Place) *halt) *halt {
	k := w.groupOn(p.Of)
	if k < 0 {
		return w.outOf(&notation.Place{Span: p.Span, Target: p.Of.Target}, 1)
	}
	g, targets := w.c.groups[k], append([]notation.Target{p.Target}, p.Also...)
	var inside []int
	for j := g.From; j < g.To; j++ {
		for t := range targets {
			if r := w.c.spots[j].run; targets[t].Sort == notation.ChainSpace && r > 0 && w.c.runs[r-1].From == j && w.c.runIs(r-1, &targets[t]) ||
				targets[t].Sort != notation.ChainSpace && w.c.matches(j, &targets[t]) {
				inside = append(inside, j)
				break
			}
		}
	}
	n := len(inside)
	if p.N.Set() {
		n = p.N.For(w.size)
	}
	switch {
	case n > len(inside) || n == 0:
		return stopAt(p.Span, "centre", fmt.Sprintf("this %s has only %d of them", of(p), len(inside)), "")
	case p.Pick == notation.Last:
		inside = inside[len(inside)-n:]
	default:
		inside = inside[:n]
	}
	w.passOver(w.pos, inside[0])
	for i, j := range inside {
		if i > 0 {
			w.passOver(inside[i-1]+1, j)
		}
		run := 0
		if r := w.c.spots[j].run; r > 0 && w.c.runs[r-1].From == j && !w.c.spots[j].counts {
			run = r
		}
		on := w.looped(w.take(j, run, p), p)
		w.lastGroup, w.lastSpace = k+1, true
		if h := work(on); h != nil {
			return h
		}
	}
	w.passOver(w.pos, g.To)
	return nil
}

// ofRun reports whether a place is one of so many stitches in a row: "first of the 9 dc", "centre dc of
// next 5 dc".
func (w *roundWork) ofRun(p *notation.Place) bool {
	of := p.Of
	return of.Pick == notation.Next && of.N.Set() && (of.Target.Sort == notation.OfKind || of.Target.Sort == notation.AnyStitch) &&
		(p.Pick == notation.First || p.Pick == notation.Last || p.Pick == notation.Nth || p.Pick == notation.Centre) &&
		(p.Target.Sort == notation.OfKind || p.Target.Sort == notation.AnyStitch)
}

// inRun is one of so many stitches in a row: of the next group of just so many where there is one, else of
// the next so many there are.
func (w *roundWork) inRun(p *notation.Place) ([]fabric.Place, *halt) {
	of, n := p.Of, p.Of.N.For(w.size)
	var run []int
	end, rest := len(w.c.spots), 0
	for k, g := range w.c.groups {
		if of.Target.Sort == notation.OfKind && g.From >= w.pos && w.c.groupOf(g, of.Target.Kind, n) {
			w.lastGroup, end = k+1, g.To
			for j := g.From; j < g.To; j++ {
				if w.c.matches(j, &of.Target) {
					run = append(run, j)
				}
			}
			break
		}
	}
	for j := w.pos; end == len(w.c.spots) && j < end && len(run) < n; j++ {
		if w.c.matches(j, &of.Target) {
			run = append(run, j)
		}
	}
	if together := w.sideBySide(of, n); n > 1 && len(run) == n && together != nil && run[n-1]-run[0] >= n {
		run = together // "2nd of next 3 tr" of petals that have others beside them
		for k, g := range w.c.groups {
			if g.From <= run[0] && run[n-1] < g.To {
				w.lastGroup, rest = k+1, g.To
			}
		}
	}
	if len(run) < n || n < 1 {
		return nil, w.outOf(of, n-len(run))
	}
	at := run[0]
	switch p.Pick {
	case notation.Last:
		at = run[n-1]
	case notation.Nth:
		if p.Nth > n {
			return nil, stopAt(p.Span, "centre", fmt.Sprintf("there are only %d of them", n), "")
		}
		at = run[p.Nth-1]
	case notation.Centre:
		if n%2 == 0 {
			return nil, stopAt(p.Span, "centre", fmt.Sprintf("of %d there is none in the centre", n), "Name the one that is meant: 2nd of next 4 dc.")
		}
		at = run[n/2]
	}
	w.passOver(w.pos, at)
	on := w.looped(w.take(at, 0, p), p)
	w.passOver(w.pos, max(rest, run[n-1]+1))
	return on, nil
}

// sideBySide are the next n stitches that lie side by side, with none of their kind beside them; nil where
// there are none.
func (w *roundWork) sideBySide(of *notation.Place, n int) (run []int) {
	is := func(j int) bool { return j >= 0 && j < len(w.c.spots) && w.c.matches(j, &of.Target) }
	for j := w.pos; j < len(w.c.spots); j++ {
		if is(j) && !is(j-1) {
			for run = nil; is(j); j++ {
				run = append(run, j)
			}
			if len(run) == n {
				return run
			}
		}
	}
	return nil
}

// of is what the words call the group that a place is part of.
func of(p *notation.Place) string {
	if text := strings.TrimSpace(p.Of.Target.Text); text != "" {
		return text
	}
	return "group"
}
