package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// opening is a slit that an earlier part was left with: stitches passed over,
// most often with chains across them.
type opening struct {
	round  *fabric.Round // the one with the chains
	chains fabric.Span   // none where the round goes on behind the gap at once
	missed []int         // stitches of the round below, in the direction of the round
	below  *fabric.Round
}

// openings are the slits of a part, lace not among them: at least two stitches
// passed over under four chains or more, four under fewer, seven under a single one.
func openings(part *fabric.Part) []opening {
	var l []opening
	for n := 1; n < len(part.Rounds); n++ {
		r, below := part.Rounds[n], part.Rounds[n-1]
		for _, s := range r.Spaces {
			if s.To >= len(r.Stitches) {
				continue
			}
			next := &r.Stitches[s.To]
			wraps := next.Role == fabric.Join && len(next.On) > 0 && next.On[0].At.Round == n && next.On[0].At.Stitch >= 0 && next.On[0].At.Stitch < s.From
			if wraps {
				next = &r.Stitches[next.On[0].At.Stitch] // across the join
			}
			b := next.On
			if len(b) == 0 || b[0].At.Round != n-1 || b[0].At.Stitch < 0 || b[0].At.Stitch >= len(below.Stitches) {
				continue // a ring is no stitch
			}
			before := -1 // where the round begins, in a spiral
			if s.From > 0 {
				a := r.Stitches[s.From-1].On
				if len(a) == 0 || a[len(a)-1].At.Round != n-1 || a[len(a)-1].At.Stitch < 0 {
					continue
				}
				before = a[len(a)-1].At.Stitch
			} else if r.Reversed != below.Reversed {
				continue
			}
			o := opening{round: r, chains: s, below: below}
			step := 1
			if r.Reversed != below.Reversed {
				step = -1
			}
			if before == b[0].At.Stitch || !wraps && (b[0].At.Stitch-before)*step < 0 {
				continue // both in one place, or back to one before
			}
			for k, m, seen := before+step, len(below.Stitches), 0; k != b[0].At.Stitch && seen < m; k, seen = k+step, seen+1 {
				if wraps {
					k = (k + m) % m
				}
				if k < 0 || k >= m || k == b[0].At.Stitch {
					break
				}
				if below.Stitches[k].Counts {
					o.missed = append(o.missed, k)
				}
			}
			if n := s.To - s.From; len(o.missed) > 1 && (n >= 4 || n > 1 && len(o.missed) >= 4 || len(o.missed) >= 7) {
				l = append(l, o)
			}
		}
	}
	if len(l) == 0 {
		return gussets(part)
	}
	return l
}

// oneOpening reports whether there is one slit, or several that are alike, as the two for sleeves
// are: what is told of one is told of each.
func oneOpening(l []opening) bool {
	for i := range l {
		if len(l[i].missed) != len(l[0].missed) || l[i].chains.To-l[i].chains.From != l[0].chains.To-l[0].chains.From {
			return false
		}
	}
	return len(l) > 0
}

// gussets are the stitches of a thumb gusset that were passed over with nothing across
// them, at least four.
func gussets(part *fabric.Part) []opening {
	var l []opening
	for n := 1; n < len(part.Rounds); n++ {
		r, below := part.Rounds[n], part.Rounds[n-1]
		if r.Row || r.Reversed != below.Reversed {
			continue
		}
		before := -1
		for i := range r.Stitches {
			on := r.Stitches[i].On
			if r.Stitches[i].Role != fabric.Worked || len(on) == 0 || on[0].At.Round != n-1 {
				before = -1 // chains, or what is no stitch on the round below
				continue
			}
			o := opening{round: r, below: below}
			for k := before + 1; before >= 0 && k < on[0].At.Stitch && k < len(below.Stitches); k++ {
				if below.Stitches[k].Counts {
					o.missed = append(o.missed, k)
				}
			}
			if len(o.missed) >= 4 {
				l = append(l, o)
			}
			before = on[len(on)-1].Last.Stitch
		}
	}
	return l
}

// slitLabel is what the round is called that lies about a slit, before the round with its chains.
const slitLabel = "the opening of "

// continueFromOpening begins the part along both edges of a slit of another: the
// stitches that were passed over, and the chains across them on the way back.
func (p *partWork) continueFromOpening(on int, at notation.Span) {
	base := p.f.Parts[on]
	l := openings(base)
	if !oneOpening(l) {
		what := "no opening"
		if len(l) > 1 {
			what = plural(len(l), "unlike opening")
		}
		p.add(p.fault(at, "opening", fmt.Sprintf("%s has %s to work round, stitches passed over with chains across them", base.Name, what),
			"Work the part from a starting chain or from row ends instead."), true)
		return
	}
	o := l[0]
	r := &fabric.Round{Label: slitLabel + o.round.Label, Number: o.round.Number, Wrong: o.round.Wrong, Reversed: o.round.Reversed,
		Closing: fabric.Joined, Colour: o.round.Colour, Carried: true, Line: o.round.Line}
	for _, k := range o.missed {
		r.Stitches = append(r.Stitches, o.below.Stitches[k])
	}
	if o.chains.To > o.chains.From {
		r.Spaces = []fabric.Span{{From: len(r.Stitches), To: len(r.Stitches) + o.chains.To - o.chains.From}}
	}
	for k := o.chains.To - 1; k >= o.chains.From; k-- {
		r.Stitches = append(r.Stitches, o.round.Stitches[k])
	}
	for i := range r.Stitches {
		r.Stitches[i].On, r.Stitches[i].Group = nil, 0
	}
	p.part.From, p.opening = on, true
	p.part.Rounds = append(p.part.Rounds, r)
	p.number = r.Number
}

// withSlits is the latest part before this one that was left with a slit, where it is told that
// one is worked round; else the part before.
func (p *partWork) withSlits() int {
	for on := p.index - 1; on >= 0; on-- {
		if len(openings(p.f.Parts[on])) > 0 {
			return on
		}
	}
	return p.index - 1
}

// goneOnFrom is the one part that goes on from a piece and passed over its stitches for a slit, where this
// part goes round that: a sleeve "from: Yoke", missed by the first round of the body, which is from it as
// well. It is -1 where the piece has a slit itself, or not one such part alone.
func (p *partWork) goneOnFrom(on int) int {
	if p.source.Rows || len(openings(p.f.Parts[on])) > 0 {
		return -1
	}
	from := -1
	for k := on + 1; k < p.index; k++ {
		part := p.f.Parts[k]
		if part.From != on || !oneOpening(openings(part)) || !p.namesUnworked() && !p.slitByChain(part) {
			continue
		}
		if from >= 0 {
			return -1
		}
		from = k
	}
	return from
}

// slitByChain reports whether the part is begun in the chains across the one slit of a piece: "join
// yarn in first ch of ch-6", where its last round has no such chains, or at an underarm.
func (p *partWork) slitByChain(base *fabric.Part) bool {
	for _, r := range p.texts[p.index].Rounds {
		for _, it := range r.Items {
			j, ok := it.(*notation.Join)
			if ok && j.Underarm {
				return oneOpening(openings(base))
			}
			if !ok || j.Place == nil || j.Place.Of == nil || j.Place.Target.Sort != notation.ChainStitch || len(base.Rounds) == 0 {
				continue
			}
			n := j.Place.Of.Target.Chains
			if of := &j.Place.Of.Target; n == 0 || of.Sort != notation.ChainSpace && !of.ByNumber() {
				continue
			}
			last, l := base.Rounds[len(base.Rounds)-1], openings(base)
			return oneOpening(l) && l[0].round != last && l[0].chains.To-l[0].chains.From == n
		}
		if makes(r.Items) && !onlyPlaces(r.Items) {
			break
		}
	}
	return false
}

// cutSlit makes the chains across a slit stitches like the others, where the round is begun in one
// in their middle: they are gone into one by one.
func (w *roundWork) cutSlit(at int) {
	run := w.c.spots[at].run
	if !w.missedBelow() || run == 0 || w.c.runs[run-1].From == at {
		return
	}
	w.c.runs, w.c.chains = nil, nil
	for i := range w.c.spots {
		w.c.spots[i].run = 0
	}
}
