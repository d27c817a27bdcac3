package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// repeatTimes works a repeat with a number of times; rest is what follows it.
func (w *roundWork) repeatTimes(r *notation.Repeat, rest []notation.Item) *halt {
	n := r.Times.For(w.size)
	if r.More {
		n++
	}
	rep := repeated{rep: r, times: n}
	before := w.used
	w.nest++
	defer func() { w.nest-- }()
	for i := 0; i < n; i++ {
		items := r.Items
		if i == n-1 {
			items = w.lastOf(r)
			if r.Omit == 0 {
				items = append(items[:len(items):len(items)], r.Ending...)
			}
		}
		stitches, pos := len(w.r.Stitches), w.pos
		begin, ends := w.mark(), i == n-1 && w.nest == 1 && r.Omit == 0 && needsPlaces(r.Ending)
		if h := w.onceMore(&rep, i, items); h != nil {
			if ends && h.out && w.endsInstead(r, &rep, i, begin, rest) {
				break
			}
			if w.nest == 1 {
				h.help = w.fitTimes(h, before, i, n, rep.used)
			}
			return h
		}
		if len(w.r.Stitches) == stitches && w.pos == pos {
			break // nothing is worked, however often
		}
	}
	if w.nest == 1 {
		w.repeats = append(w.repeats, rep)
	}
	return nil
}

// endsInstead works the last of a repeat with a number of times, which goes over into its ending
// before its own end: "rep from * once more, working only 2 sc in last sc" where 3 sc are made
// there. It reports whether the round comes out with it.
func (w *roundWork) endsInstead(r *notation.Repeat, rep *repeated, i int, begin mark, rest []notation.Item) bool {
	for n := len(r.Items) - 1; n > 0 && needsPlaces(r.Items[:n]); n-- {
		if n < len(r.Items)-1 && w.firstKind(r.Items[n:n+1], 0) != w.firstKind(r.Ending, 0) {
			continue // the ending stands for the like
		}
		items := append(r.Items[:n:n], r.Ending...)
		w.back(begin)
		nest, first, passed := w.nest, len(w.r.Stitches), len(w.passed)
		h := w.exec(r.Items[:n])
		from := len(w.r.Stitches)
		if h == nil {
			h = w.exec(r.Ending)
		}
		if h != nil || len(w.passed) > passed || w.twiceIn(first, from, r.Ending) {
			continue
		}
		w.nest = 0
		h = w.exec(rest)
		comes := h == nil && w.leftover() == 0
		w.back(begin)
		w.nest = nest
		if comes && w.onceMore(rep, i, items) == nil {
			return true
		}
	}
	return false
}

// onceMore works a repeat's instructions once, for the (i+1)th time.
func (w *roundWork) onceMore(rep *repeated, i int, items []notation.Item) *halt {
	from, used := len(w.r.Stitches), w.used
	if h := w.exec(items); h != nil {
		return h
	}
	if w.nest == 1 {
		w.r.Repeats = append(w.r.Repeats, fabric.Span{From: from, To: len(w.r.Stitches)})
	}
	if i == 0 {
		rep.used, rep.made = w.used-used, countIn(w.r.Stitches[from:])
	}
	return nil
}

// lastOf is what the last repeat works, an ending that comes on top of it not among it.
func (w *roundWork) lastOf(r *notation.Repeat) []notation.Item {
	if r.AtStop {
		for i, it := range r.Items {
			if _, ok := it.(*notation.Stop); ok {
				return r.Items[:i]
			}
		}
	}
	if r.Omit > 0 && r.Omit < len(r.Items) {
		head := r.Items[:len(r.Items)-r.Omit]
		return append(head[:len(head):len(head)], r.Ending...)
	}
	return r.Items
}

func countIn(l []fabric.Stitch) int {
	n := 0
	for i := range l {
		if l[i].Counts {
			n++
		}
	}
	return n
}

// run is a repeat worked as often as it goes.
type run struct {
	repeated
	// ends are the states in which the repeat can be left, latest last.
	ends []mark
	// why is what stopped it, nil when it came to its end.
	why *halt
	// before is set when it has gone on before the last stitches of a kind that it does not go into.
	before bool
}

// repeatOn works a repeat that goes as far as the round does, and then what
// follows it. How many repeats there are is found by working: as many as go,
// and if what follows does not come out then, fewer.
func (w *roundWork) repeatOn(r *notation.Repeat, rest []notation.Item) *halt {
	if r.FromJoin && !w.begun {
		w.pos = 0
	}
	if e := &r.Extent; e.Sort == notation.ToLast && e.N.For(w.size) <= 1 && len(r.Ending) == 0 && !w.r.Row && w.nest == 0 && !needsPlaces(rest) && joinIn(rest) != nil {
		// "repeat from * to the last loop, 5 ch, join": nothing else goes into that one.
		whole := *r
		whole.Extent.Sort = notation.ToEnd
		r = &whole
	}
	if n := spacesAmongLast(r, rest, w.size); n > 0 {
		whole := *r
		whole.Extent.N = notation.Num{Span: r.Extent.N.Span, Values: []int{r.Extent.N.For(w.size) - n}}
		r = &whole
	}
	before, repeats := w.mark(), len(w.repeats)
	w.nest++
	run, h := w.asOftenAsGoes(r)
	w.nest--
	if h != nil {
		return h
	}
	if run.why != nil && (!run.why.out || run.times == 0) {
		return run.why
	}
	if w.nest > 0 {
		return w.exec(rest)
	}
	w.repeats = append(w.repeats, run.repeated)
	if r.Extent.Sort == notation.ToLast && w.left(&r.Extent, maxRound) != r.Extent.N.For(w.size) {
		return w.misfit(r, run.why, run.repeated)
	}
	if r.Omit == 0 {
		rest = append(append([]notation.Item(nil), r.Ending...), rest...)
	}
	whole, passed, passes := w.mark(), len(w.passed), false
	if run.why != nil && (needsPlaces(r.Ending) || beginsWithChain(r.Ending)) && r.Omit == 0 {
		// What is left takes the beginning of a repeat: the ending stands for as
		// little of it as can be.
		if w.endsInside(r, run, whole, rest) {
			return nil
		}
		w.back(whole)
	}
	done := len(w.r.Stitches)
	if r.Omit == 0 && w.endingReplaces(r, run) {
		h = w.runsOut(r.Ending[0].Where(), 1)
	} else if h = w.exec(rest); h == nil && run.before && len(w.passed) > passed {
		w.back(whole)
		return w.misfit(r, nil, run.repeated)
	} else if h == nil && (r.Ending != nil && len(w.passed) > passed || w.turningTwice(done, rest)) {
		passes = true // only if nothing comes out better
	} else if h == nil && (w.leftover() == 0 || !needsPlaces(rest)) {
		if run.why != nil && run.why.out && w.leftover() > 0 {
			// What is left is less than a repeat; said at the end of the round.
			w.unfit = w.misfit(r, run.why, run.repeated)
		}
		return nil
	}
	if h != nil && !h.out {
		return h
	}
	if h == nil {
		h = w.leftUnused(w.leftover(), lastSpan(w.items))
	}
	tries := run.ends
	if r.Extent.Sort == notation.ToLast {
		tries = nil
	}
	for n := 1; n <= 6 && n <= len(tries); n++ {
		end := tries[len(tries)-n]
		w.back(end)
		passed, done, gap := len(w.passed), len(w.r.Stitches), w.gap
		if w.exec(rest) == nil && w.leftover() == 0 && (r.Ending == nil || len(w.passed) == passed && w.gap <= gap) && !w.turningTwice(done, rest) {
			run.times = len(w.r.Repeats)
			w.repeats = append(w.repeats, run.repeated)
			return nil
		}
		if r.Ending != nil && r.Omit == 0 && w.endsInside(r, run, end, rest) {
			return nil
		}
	}
	if passes {
		// The marks since are of no more use: all is worked again.
		w.back(before)
		w.nest++
		run, _ = w.asOftenAsGoes(r)
		w.nest--
		w.repeats = append(w.repeats[:repeats], run.repeated)
		return w.exec(rest)
	}
	if run.why != nil {
		h = run.why
	}
	return w.misfit(r, h, run.repeated)
}

// endingReplaces reports whether the repeats have used everything up, so that an
// ending which takes a place can only stand for the end of the last of them: "…,
// 3 dc in next st; rep from * across, ending last rep with 2 dc in last st".
func (w *roundWork) endingReplaces(r *notation.Repeat, run *run) bool {
	if len(r.Ending) == 0 || run.why != nil || run.times == 0 || w.remaining(1) > 0 || w.spacesLeft() {
		return false
	}
	s, ok := r.Ending[0].(*notation.Stitches)
	if !ok || len(s.Places) != 1 || w.closesLoop(s, nil) {
		return false
	}
	p := &s.Places[0]
	if p.Target.Sort == notation.Gap {
		return false // a gap is used up by nothing else
	}
	return p.Pick == notation.Last || p.Pick == notation.Next || ofStart(p)
}

// endsInside works a last repeat that goes over into its ending before its own
// end: "ending last rep with 3 dc in last sc" instead of the shell there. It
// reports whether that comes out.
func (w *roundWork) endsInside(r *notation.Repeat, run *run, begin mark, rest []notation.Item) bool {
	for n := len(r.Items) - 1; n > 0 && needsPlaces(r.Items[:n]); n-- {
		if n < len(r.Items)-1 && w.firstKind(r.Items[n:n+1], 0) != w.firstKind(r.Ending, 0) {
			continue // the ending stands for the like
		}
		if beginsWithChain(r.Ending) && !beginsWithChain(r.Items[n:]) {
			continue
		}
		w.back(begin)
		w.nest++
		first := len(w.r.Stitches)
		h := w.onceMore(&run.repeated, 1, r.Items[:n])
		w.nest--
		from := len(w.r.Stitches)
		passed, gap := len(w.passed), w.gap
		if h == nil && w.exec(rest) == nil && w.leftover() == 0 && len(w.passed)-passed <= gap && !w.twiceIn(first, from, r.Ending) {
			// It passes no more than the repeats do on their way to what they name.
			w.passed = w.passed[:passed]
			run.times = len(w.r.Repeats)
			w.repeats = append(w.repeats, run.repeated)
			return true
		}
	}
	return false
}

// beginsWithChain reports whether instructions begin with chains.
func beginsWithChain(items []notation.Item) bool {
	if len(items) == 0 {
		return false
	}
	_, ok := items[0].(*notation.Chain)
	return ok
}

// turningTwice reports whether words behind a repeat along a row, "dc in 3rd ch of turning
// ch", work into the chain that the last repeat has been worked in already, or, with chains
// between, "ch 1, sc in last ch-sp", into the last space.
func (w *roundWork) turningTwice(done int, rest []notation.Item) bool {
	n := len(w.r.Repeats)
	if n == 0 || len(rest) == 0 || !w.r.Row || done >= len(w.r.Stitches) || done <= w.r.Repeats[n-1].From {
		return false
	}
	_, chain := rest[0].(*notation.Chain)
	for _, it := range rest {
		if p := firstPlace(it); p != nil && (ofStart(p) ||
			chain && p.Pick == notation.Last && p.Target.Sort == notation.ChainSpace) {
			return w.shares(w.r.Repeats[n-1].From, done, 1)
		} else if needsPlaces([]notation.Item{it}) {
			return false
		}
	}
	return false
}

// twiceIn reports whether an ending that names the last place of the round goes
// into one that the stitches just before it, from first on, have been worked in.
func (w *roundWork) twiceIn(first, from int, ending []notation.Item) bool {
	named := false
	for _, it := range ending {
		if p := firstPlace(it); p != nil {
			if w.r.Row && ofStart(p) {
				return w.shares(first, from, len(w.r.Stitches))
			}
			if p.Of != nil && p.Of.Target.Sort != notation.StartChain {
				p = p.Of // "3rd dc of last shell"
			}
			named = p.Pick == notation.Last || p.Pick == notation.Next
			break
		}
	}
	return named && w.shares(first, from, 1)
}

// shares reports whether one of the next n stitches made from number from on that stand on anything
// stands on what one between first and from does.
func (w *roundWork) shares(first, from, n int) bool {
	for i := from; i < len(w.r.Stitches) && n > 0; i++ {
		if on := w.r.Stitches[i].On; len(on) > 0 {
			for k := first; k < from; k++ {
				if o := w.r.Stitches[k].On; len(o) > 0 && o[len(o)-1] == on[0] {
					return true
				}
			}
			n--
		}
	}
	return false
}

// firstPlace is the first place that an instruction names, nil for none.
func firstPlace(it notation.Item) *notation.Place {
	switch it := it.(type) {
	case *notation.Stitches:
		if len(it.Places) > 0 {
			return &it.Places[0]
		}
	case *notation.Group:
		if len(it.Place) > 0 {
			return &it.Place[0]
		}
	}
	return nil
}

// asOftenAsGoes works a repeat until the round below is used up, or until what
// is to be left of it is.
func (w *roundWork) asOftenAsGoes(r *notation.Repeat) (*run, *halt) {
	run := &run{repeated: repeated{rep: r}}
	e := &r.Extent
	head := w.lastOf(r) // all that the last repeat works
	for {
		switch {
		case e.Sort == notation.ToLast && w.left(e, e.N.For(w.size)+1) <= e.N.For(w.size):
			if r.AtStop && len(head) < len(r.Items) && needsPlaces(r.Items[len(head):]) {
				return nil, w.misfit(r, nil, run.repeated) // it is to come there with the head of a repeat
			}
			if len(head) < len(r.Items) || !w.beforeLast(run) {
				return run, nil
			}
			continue
		case e.Sort == notation.ToPlace && w.atPlace(e, w.lastSpace):
			return run, nil
		case e.Sort == notation.ToEnd && run.times > 0 && w.remaining(1) == 0 && w.intoSpace == 0:
			if len(head) < len(r.Items) && len(head) > 0 && !needsPlaces(head) {
				// "*ch 2, sc in next sc; rep from * around, omitting last sc": the
				// last ch 2 goes on to the join.
				run.times++
				return run, w.onceMore(&run.repeated, run.times-1, head)
			}
			if begin := w.mark(); len(head) < len(r.Items) && w.movedPast() {
				// "*shell in next sc, sc in next shell; rep from * around, omitting last
				// sc": the last shell stands where the slip stitches began.
				if w.onceMore(&run.repeated, run.times, head) == nil {
					run.times++
				} else {
					w.back(begin)
				}
			}
			return run, nil
		}
		begin := w.mark()
		if r.Ending != nil || run.times > 0 {
			run.ends = append(run.ends, begin)
		}
		if r.Omit > 0 && r.Ending != nil {
			// See whether the round ends with the last repeat.
			passed := len(w.passed)
			h := w.onceMore(&run.repeated, run.times, head)
			ends := h == nil && (w.remaining(1) == 0 || w.restOfCut()) && !w.spacesLeft() && w.leftover() == 0
			if ends && len(w.passed) == passed {
				run.times++
				return run, nil
			}
			w.back(begin)
			if h := w.onceMore(&run.repeated, run.times, r.Items); h != nil {
				w.back(begin)
				if ends && w.onceMore(&run.repeated, run.times, head) == nil {
					run.times++
					return run, nil // past the stitches before its last place, which no whole repeat takes
				}
				run.why = h
				w.back(begin)
				return run, nil
			}
		} else if len(head) < len(r.Items) {
			// See whether the round ends with a repeat that stops short.
			h := w.onceMore(&run.repeated, run.times, head)
			if h == nil && (w.remaining(1) == 0 && !w.spacesLeft() || r.AtStop && e.Sort == notation.ToLast && w.left(e, e.N.For(w.size)+1) == e.N.For(w.size)) {
				run.times++
				return run, nil // "to last st, ending last rep at **" comes there with it
			}
			if h == nil {
				run.ends = append(run.ends, w.mark())
				run.head = w.used - begin.used
				if h = w.exec(r.Items[len(head):]); h != nil {
					// What is left takes only the head of a repeat.
					w.back(run.ends[len(run.ends)-1])
					run.times++
					run.why = h
					return run, nil
				}
				run.ends = run.ends[:len(run.ends)-1]
				run.made = countIn(w.r.Stitches[begin.stitches:])
				run.used = w.used - begin.used
				if n := len(w.r.Repeats); n > 0 {
					w.r.Repeats[n-1].To = len(w.r.Stitches)
				}
			} else {
				run.why = h
				w.back(begin)
				return run, nil
			}
		} else if h := w.onceMore(&run.repeated, run.times, r.Items); h != nil {
			run.why = h
			w.back(begin)
			return run, nil
		}
		run.times++
		if len(w.undo) == begin.undo && w.pos == begin.pos && run.times > 1 {
			// The first may go into the space that the round begins in.
			return nil, stopAt(r.Span, "endless", "this repeat takes up no stitches of the round below, so it never comes to the end",
				"Say how many times: rep from * 5 more times.")
		}
		if len(w.r.Stitches) > maxRound {
			return nil, stopAt(r.Span, "too-large", fmt.Sprintf("%s would have more than %d stitches", w.r.Label, maxRound), "")
		}
	}
}

// needsPlaces reports whether the instructions take up places of the round
// below.
func needsPlaces(items []notation.Item) bool {
	for _, it := range items {
		switch it.(type) {
		case *notation.Stitches, *notation.Group, *notation.Skip, *notation.Repeat:
			return true
		}
	}
	return false
}
