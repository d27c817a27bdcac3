package working

import (
	"fmt"
	"regexp"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// join closes the round with a slip stitch in its first stitch. Before any
// stitch it joins a yarn instead, which says where the round begins.
func (w *roundWork) join(j *notation.Join, rest []notation.Item) *halt {
	if w.slipBeginsRow(j, rest) {
		return w.stitches(&notation.Stitches{Span: j.Span, What: notation.What{Kind: stitch.Of(stitch.Slip)}, Places: []notation.Place{*j.Place}})
	}
	if !w.begun && !w.started {
		if w.foundation != nil {
			return w.formRing(&notation.FormRing{Span: j.Span})
		}
		if j.Yarn != "" {
			w.r.Colour, w.yarn = j.Yarn, j.Yarn
		}
		if j.Underarm && w.missedBelow() && len(w.c.runs) > 0 {
			w.c.begin(w.c.runs[0].From)
			return nil
		}
		if j.Yarn != "" && j.Place != nil && j.With.Kind.Base <= stitch.Slip && (w.c.edge > 0 && !oneByOne(j.Place, true) || w.restCorner(j.Place)) {
			return nil // at a corner, to go along the row ends from there
		}
		if w.beginsAsSlip(j, rest) {
			return w.stitches(&notation.Stitches{Span: j.Span, What: notation.What{Kind: stitch.Of(stitch.Slip)}, Places: []notation.Place{*j.Place}})
		}
		if j.Place != nil && j.Yarn == "" && j.With.Kind.Base <= stitch.Slip && j.Place.Target.Sort == notation.ChainSpace && j.Place.Pick != notation.Any {
			// "sl st to first ch-2 sp"
			to := *j.Place
			to.To = true
			return w.stitches(&notation.Stitches{Span: j.Span, What: notation.What{Kind: stitch.Of(stitch.Slip)}, Places: []notation.Place{to}})
		}
		if j.Place != nil && j.Place.Target.Sort == notation.SeamPlace && w.assembly == nil {
			return nil // of a band: where the round begins as a matter of course
		}
		if j.Place != nil && len(w.c.spots) > 0 && (w.c.edge == 0 || oneByOne(j.Place, true)) {
			m := w.mark()
			count := 1
			if j.Place.Pick == notation.Last && j.Place.N.Set() {
				count = j.Place.N.For(w.size) // the 4th from the end
			}
			on, h := w.one(j.Place, 0, count)
			if h != nil {
				return h
			}
			w.back(m)
			w.beginAt(on, j.Place)
			if standing := w.standsAsSlip(j, rest); j.With.Kind.Base > stitch.Slip || standing {
				// A standing stitch: the first of the round.
				if standing {
					j = &notation.Join{Span: j.Span, With: notation.What{Kind: stitch.Of(stitch.Slip)}}
				}
				if on[0].Into != stitch.Space {
					w.take(0, 0, &notation.Place{})
				}
				w.same = on
				return w.into(&notation.Stitches{Span: j.Span, What: j.With}, 1, on)
			}
			return w.add(fabric.Stitch{Kind: stitch.Of(stitch.Slip), Role: fabric.Travel, On: on}, j.Span)
		}
		if j.With.Kind.Base > stitch.Slip && j.Place != nil {
			return w.placed(&notation.Stitches{Span: j.Span, What: j.With}, 1, j.Place)
		}
		if j.Yarn != "" {
			return nil
		}
	}
	if j.Yarn != "" && j.Place == nil {
		if w.yarn = j.Yarn; !w.begun {
			w.r.Colour = j.Yarn
		}
		return nil
	}
	first, top := -1, -1
	for i := range w.r.Stitches {
		st := &w.r.Stitches[i]
		if st.Role == fabric.Start && top < 0 {
			top = i
		}
		if st.Counts && first < 0 {
			first = i
		}
	}
	target := first
	if p := j.Place; p != nil {
		begin := p.Target.Sort == notation.StartChain || p.Of != nil && p.Of.Target.Sort == notation.StartChain
		switch {
		case begin && top < 0:
			return stopAt(p.Span, "join", fmt.Sprintf("%s does not begin with a chain to join to", w.r.Label), "Join to the first stitch instead.")
		case begin:
			target = top
			w.checkChain(w.r, top, p)
		case p.Target.Sort == notation.OfKind, p.Target.Sort == notation.OfShape:
			target = -1
			for i := range w.r.Stitches {
				if w.r.Stitches[i].Counts && (sameKind(&p.Target, &w.r.Stitches[i]) || w.r.Stitches[i].Kind == p.Target.Kind ||
					p.Target.Sort == notation.OfShape && (w.r.Stitches[i].Counted().Shape == p.Target.Kind.Shape ||
						w.r.Stitches[i].Counted().Shape == stitch.Together)) {
					target = i
					break
				}
			}
			if target < 0 {
				return stopAt(p.Span, "join", fmt.Sprintf("%s has no %s to join to", w.r.Label, named(&p.Target, w.terms)),
					"It begins with "+w.firstName(first)+".")
			}
			if target != first {
				w.warn(p.Span, "join", fmt.Sprintf("%s begins with %s, not with the %s that it is joined to", w.r.Label,
					w.firstName(first), named(&p.Target, w.terms)), "Check which stitch the round begins with.")
			}
		case p.Target.Sort == notation.ChainSpace && len(w.r.Spaces) > 0:
			target = w.r.Spaces[0].From
		}
	}
	w.r.Closing = fabric.Joined
	w.joined = true
	with := stitch.Of(stitch.Slip)
	if j.With.Kind.Base > stitch.Slip {
		// The stitch that closes the round completes the last space.
		with = j.With.Kind
		n := len(w.r.Spaces)
		if n == 0 || w.r.Spaces[n-1].To != len(w.r.Stitches) {
			return stopAt(j.Span, "join", fmt.Sprintf("there are no chains before this %s for it to complete", with.Name(w.terms)),
				"Join with sl st, or write the chains before it: ch 2, dc in first sc to join.")
		}
		w.r.Completed = n
	}
	if target >= 0 {
		ref := fabric.Ref{Round: len(w.part.Rounds), Stitch: target}
		if h := w.add(fabric.Stitch{Kind: with, Role: fabric.Join,
			On: []fabric.Place{{At: ref, Last: ref}}}, j.Span); h != nil {
			return h
		}
	}
	w.carryOn(rest)
	return stopHere
}

// passedChain is what the chains are called that a first row begins with.
var passedChain = regexp.MustCompile(`(?i)\b(skip|miss)`)

// checkChain warns where the words call the chain that began a round by another
// number of chains than it has: "join with sl st in top of beg ch-3" after ch 2.
func (w *roundWork) checkChain(r *fabric.Round, start int, p *notation.Place) {
	t := &p.Target
	if p.Of != nil {
		t = &p.Of.Target
	}
	low := r.Stitches[start].Chains
	high := low
	for i := start + 1; i < len(r.Stitches) && r.Stitches[i].IsChain(); i++ {
		high++
	}
	if b := w.c.below; r == w.r && start == 0 && b != nil && b.Number == 0 && len(b.Stitches) == high+1 && !w.goesIntoRing {
		high++ // "Ch 4, 11 dc in 4th ch from hook; join in top of ch-4": the whole chain
	}
	if l := w.part.Rounds; passedChain.MatchString(t.Text) && len(l) > 1 && r == l[1] && l[0].Number == 0 && !l[0].Ring && len(l[0].Stitches) > 0 {
		high++ // "4th of 5 skipped chs": the one at its foot among them
	}
	if l := w.part.Rounds; t.Chains > high && len(l) > 1 && r == l[1] && l[0].Number == 0 && !l[0].Ring && high+w.passedBase(r, start) >= t.Chains {
		high = t.Chains // "5th of 7 ch", with those that the first space lies over
	}
	help := "Check which of the two is meant."
	switch {
	case t.Chains > 0 && (t.Chains < low || t.Chains > high):
		w.warn(p.Span, "chain", fmt.Sprintf("%s begins with ch %d, not with the ch %d that is worked into", r.Label, high, t.Chains), help)
	case p.Of != nil && p.Nth > high:
		w.warn(p.Span, "chain", fmt.Sprintf("%s begins with ch %d, so there is no chain number %d to work into", r.Label, high, p.Nth), help)
	default:
		w.otherChain(r, start, p)
	}
}

// passedBase is how many chains of the starting chain lie below the first space of a row that
// has been begun on it.
func (w *roundWork) passedBase(r *fabric.Round, start int) int {
	foot := r.Stitches[start].On
	for i := start + 1; i < len(r.Stitches); i++ {
		if on := r.Stitches[i].On; len(on) > 0 && len(foot) > 0 {
			return max(foot[0].At.Stitch-on[0].At.Stitch-1, 0)
		}
	}
	return 0
}

// anywhere lets a round begin at "any ch-1 sp" that its first stitch goes into
// without a join: a standing stitch.
func (w *roundWork) anywhere(p *notation.Place) *halt {
	if p.Pick != notation.Any || w.begun || w.started || w.r.Row || w.given != nil || len(w.c.spots) == 0 || w.c.edge > 0 || len(w.r.Stitches) > 0 {
		return nil
	}
	m := w.mark()
	on, h := w.one(p, 0, 1)
	if h != nil {
		return h
	}
	w.back(m)
	if w.beginAt(on, p); on[0].Into == stitch.Space {
		w.pos = 0 // the first stitch goes into it next
	}
	return nil
}

// beginAt lets the round begin where a yarn is joined. Round a circle what lies
// before comes last; along a row it is left.
func (w *roundWork) beginAt(on []fabric.Place, p *notation.Place) {
	n := len(w.c.spots)
	if p != nil && p.Target.Sort == notation.SeamPlace {
		w.beginAtSeam(on)
		return
	}
	first := w.spotOf(on[0])
	gap := on[0].Into == stitch.Between
	if gap && w.r.Reversed == w.c.below.Reversed {
		first = (first + n - 1) % n // the stitch before it
	}
	if on[0].Into != stitch.Space {
		w.cutSlit(first)
	}
	at := w.c.begin(first)
	w.pos = 0 // not behind what was skipped on the way here
	if w.r.Row && w.c.below.Closing == fabric.Open {
		w.c.cut(n - at)
	}
	if w.r.Row {
		for n = len(w.c.spots); n > 1 && w.c.spots[n-1].use == skipped; n-- {
		}
		w.c.cut(n) // what was passed over on the way here
	}
	if gap {
		w.use(0, passed)
		w.pos, w.same = 1, on
	}
	if on[0].Into == stitch.Space && len(w.c.runs) > 0 {
		w.take(0, w.c.spots[0].run, p)
	}
}

// beginsIn lets the round begin at a place without a stitch there.
func (w *roundWork) beginsIn(b *notation.Begin) *halt {
	if b.Place.Target.Sort == notation.FromHook {
		return w.beginsFromHook(&b.Place)
	}
	if w.begun || w.started || len(w.c.spots) == 0 || w.c.edge > 0 && !oneByOne(&b.Place, true) {
		return nil
	}
	m := w.mark()
	on, h := w.one(&b.Place, 0, 1)
	if h != nil {
		return h
	}
	w.back(m)
	w.beginAt(on, &b.Place)
	w.beganHere, w.settled = true, true
	if on[0].Into != stitch.Space {
		w.pos, w.same = 0, nil
	}
	return nil
}

// spotOf is the spot that a place begins at.
func (w *roundWork) spotOf(p fabric.Place) int {
	for i := range w.c.spots {
		if w.c.spots[i].ref == p.At || w.c.spots[i].ref == p.Last {
			return i
		}
	}
	return 0
}

func (w *roundWork) firstName(first int) string {
	if first < 0 {
		return "no stitch"
	}
	st := &w.r.Stitches[first]
	n := st.Counted().Name(w.terms)
	if st.Role == fabric.Start {
		return fmt.Sprintf("ch %d, which counts as %s", st.Chains, n)
	}
	return n
}

// warn reports something that should be looked at.
func (w *roundWork) warn(at notation.Span, code, message, help string) {
	f := w.fault(at, code, message, help)
	f.Severity = fault.Warning
	f.Round = w.r.Label
	w.roundFaults = append(w.roundFaults, f)
}

// aroundClosing reports whether a place is round the stitch that closed the round below and completed
// its last space: "sc around the dc just made". Without those words it is meant where no other stitch
// of its kind is left to go round.
func (w *roundWork) aroundClosing(p *notation.Place) bool {
	b := w.c.below
	if w.begun || !p.Over || p.Below != 0 || p.N.Set() || b == nil || b.Completed == 0 || len(w.c.runs) == 0 || p.Target.Sort != notation.OfKind {
		return false
	}
	if i := len(b.Stitches) - 1; b.Stitches[i].Role != fabric.Join || !sameKind(&p.Target, &b.Stitches[i]) {
		return false
	}
	switch {
	case p.Pick == notation.Made:
		return true
	case p.Pick == notation.Last, p.Pick == notation.Next && p.Bare:
		return !slices.ContainsFunc(w.c.spots, func(s spot) bool { return sameKind(&p.Target, s.st) })
	}
	return false
}
