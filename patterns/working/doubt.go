package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fault"
	"whorl/patterns/notation"
)

// Words that could not be read are passed over where nothing in them says how much is
// worked. The counts are the proof: when the next that is stated comes out, they are a
// remark; when something is wrong instead, the fault names them; and when no count is
// stated any more, they are refused.

// doubtful is words that were passed over, and how many rounds there were before the one
// that they stand in.
type doubtful struct {
	*notation.Note
	before int
}

// doubt keeps words that were passed over.
func (p *partWork) doubt(n *notation.Note) {
	if !slices.ContainsFunc(p.doubts, func(d doubtful) bool { return d.Note == n }) {
		p.doubts = append(p.doubts, doubtful{n, len(p.part.Rounds)})
	}
}

// bearsOut reports whether the round states a count that could be compared.
func (p *partWork) bearsOut(w *roundWork, label *notation.Round) bool {
	for _, s := range p.bySize(label) {
		for i := range s.Counts {
			if c := &s.Counts[i]; !c.At.Set() {
				if n, _, known := tally(w.r, &c.Target, s, p.terms); known && n > 0 {
					return true
				}
			}
		}
	}
	return false
}

// settleDoubts ends what is in doubt after a round: with a count that bears it out, or
// with the errors from number before on, which may come of it.
func (p *partWork) settleDoubts(before int, borneOut bool) {
	if borneOut {
		// A sentence behind the work of a round is none that its own count speaks of.
		p.doubts = slices.DeleteFunc(p.doubts, func(d doubtful) bool { return !d.Loose || d.before < len(p.part.Rounds) })
		return
	}
	for _, f := range p.faults[before:] {
		if f.Severity != fault.Error || len(p.doubts) == 0 {
			continue
		}
		for _, n := range p.doubts {
			if f.Help != "" {
				f.Help += "\n"
			}
			f.Help += fmt.Sprintf("The words %q on line %d could not be read and were passed over.", n.Text, n.Line)
		}
		p.doubts = nil
	}
}

// refuseDoubts refuses what no count has borne out. Sentences behind all rounds are
// told, and left at that: nothing hangs on them but themselves.
func (p *partWork) refuseDoubts() {
	for _, it := range p.carry {
		// behind the join of the last round
		if n, ok := it.(*notation.Note); ok && n.Doubt != nil {
			p.doubt(n)
		}
	}
	for _, n := range p.doubts {
		f := p.p.Fault(n.Doubt.Pos, n.Doubt.Length, n.Doubt.Code, n.Doubt.Message, n.Doubt.Help)
		f.Size = p.p.Sizes[p.size]
		last := n.Loose && n.before+1 >= len(p.part.Rounds)
		if last {
			f.Code, f.Severity = "not-worked", fault.Warning
			f.Help = "These words are kept as they stand and not worked. " + f.Help
		}
		p.add(f, !last)
	}
	p.doubts = nil
}
