package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// The limits of what is worked. A hat has a few thousand stitches; nobody
// charts a round of ten thousand.
const (
	maxRound  = 20000  // stitches in one round
	maxFabric = 400000 // stitches in one size
	maxRounds = 2000   // rounds in one part
	maxNested = 8      // stitches defined by stitches defined by …
)

// roundWork works one round over the round below.
type roundWork struct {
	*partWork
	r *fabric.Round
	c *course
	// pos is the spot from which "next" looks on.
	pos int
	// same is the place worked into last; lastSkip the spots skipped last.
	same     []fabric.Place
	lastSkip []int
	// ground is where stitches go that do not say, when there is nothing to
	// go along: the ring.
	ground *notation.Place
	// loop is the loop set for the round.
	loop stitch.Into
	// given replaces the place in the words of a stitch that was defined by
	// the designer.
	given []fabric.Place
	// begun is set when a stitch other than the beginning has been made.
	begun bool
	depth int
	// group is 1 + the group that stitches belong to.
	group int
	// undo is the history of the spots' use.
	undo []undoUse
	// spaces and stitches say what sorts of places the round goes into.
	intoSpace  map[int]bool
	intoStitch bool
	lastSpace  bool // the last place gone on to is a space
	// gap is the most stitches passed over in one step on the way to a place
	// that was named.
	gap int
	// repeats is what the outermost repeats used, for messages.
	repeats                              []repeated
	nest                                 int
	split                                *split
	turned                               bool // the round ends with a turn
	carry                                []notation.Item
	joined                               bool
	open                                 bool // "do not join"
	fasten                               bool
	notes                                []string
	passedWrong                          []int // spots passed over on the way to a kind
	lastChain                            chainMade
	items                                []notation.Item
	started                              bool           // the chain at the beginning has been made
	foundation                           *fabric.Round  // starting chain being made
	inGroup                              []fabric.Place // place of the group being worked
	nestGroup                            int
	goesIntoRing, turnedBefore, usedRing bool
	tailUse                              int
	roundFaults                          fault.List
}

type undoUse struct {
	spot int
	was  use
}

// chainMade is the stitches that a chain in the words made.
type chainMade struct {
	item     *notation.Chain
	from, to int
}

// repeated is what one outermost repeat came to.
type repeated struct {
	rep   *notation.Repeat
	times int
	used  int // places one repeat takes
	made  int // stitches one repeat makes
}

// mark is a point that the work can be taken back to.
type mark struct {
	pos, stitches, spaces, groups, repeats, undo, wrong int
	same, given                                         []fabric.Place
	lastSkip                                            []int
	begun, started, intoStitch, lastSpace               bool
	gap                                                 int
	group                                               int
}

func (w *roundWork) mark() mark {
	return mark{w.pos, len(w.r.Stitches), len(w.r.Spaces), len(w.r.Groups), len(w.r.Repeats), len(w.undo),
		len(w.passedWrong), w.same, w.given, w.lastSkip, w.begun, w.started, w.intoStitch, w.lastSpace, w.gap, w.group}
}

func (w *roundWork) back(m mark) {
	w.pos, w.same, w.given, w.lastSkip, w.begun, w.started = m.pos, m.same, m.given, m.lastSkip, m.begun, m.started
	w.intoStitch, w.lastSpace, w.gap, w.group = m.intoStitch, m.lastSpace, m.gap, m.group
	w.r.Stitches = w.r.Stitches[:m.stitches]
	w.r.Spaces = w.r.Spaces[:m.spaces]
	if n := len(w.r.Spaces); n > 0 && w.r.Spaces[n-1].To > m.stitches {
		w.r.Spaces[n-1].To = m.stitches
	}
	w.r.Groups = w.r.Groups[:m.groups]
	w.r.Repeats = w.r.Repeats[:m.repeats]
	w.passedWrong = w.passedWrong[:m.wrong]
	for len(w.undo) > m.undo {
		u := w.undo[len(w.undo)-1]
		w.c.spots[u.spot].use = u.was
		w.undo = w.undo[:len(w.undo)-1]
	}
}

// use marks a spot.
func (w *roundWork) use(i int, u use) {
	s := &w.c.spots[i]
	if s.use == u || s.use == worked {
		return
	}
	w.undo = append(w.undo, undoUse{i, s.use})
	s.use = u
}

// remaining is the number of stitches from pos on that have not been used.
func (w *roundWork) remaining() int {
	n := 0
	for i := w.pos; i < len(w.c.spots); i++ {
		if s := &w.c.spots[i]; s.counts && s.use == unused {
			n++
		}
	}
	return n
}

// add makes a stitch.
func (w *roundWork) add(st fabric.Stitch, at notation.Span) *halt {
	if len(w.r.Stitches) >= maxRound {
		return stopAt(at, "too-large", fmt.Sprintf("%s would have more than %d stitches", w.r.Label, maxRound),
			"Check the numbers of repeats.")
	}
	st.Line, st.Column = at.Line, at.Column
	st.Group = w.group
	if st.IsChain() {
		n := len(w.r.Stitches)
		if m := len(w.r.Spaces); m > 0 && w.r.Spaces[m-1].To == n {
			w.r.Spaces[m-1].To = n + 1
		} else {
			w.r.Spaces = append(w.r.Spaces, fabric.Span{From: n, To: n + 1})
		}
	}
	w.r.Stitches = append(w.r.Stitches, st)
	return nil
}

// make makes one counted stitch in the places.
func (w *roundWork) make(k stitch.Kind, on []fabric.Place, at notation.Span) *halt {
	w.begun = true
	return w.add(fabric.Stitch{Kind: k, On: on, Counts: k.Base != stitch.Chain}, at)
}

// exec works a run of instructions.
func (w *roundWork) exec(items []notation.Item) *halt {
	if w.depth++; w.depth > 40 {
		w.depth--
		return stopAt(items[0].Where(), "nesting", "the stitches are defined by one another without end", "Define each special stitch by plain ones.")
	}
	defer func() { w.depth-- }()
	for i, it := range items {
		if r, ok := it.(*notation.Repeat); ok && r.Extent.Sort != notation.NoExtent {
			return w.repeatOn(r, items[i+1:])
		}
		if h := w.do(it, items[i+1:]); h != nil {
			if h == stopHere {
				return nil
			}
			return h
		}
	}
	return nil
}

// stopHere ends a run of instructions early without a fault.
var stopHere = &halt{}

// do works one instruction; rest is what follows it.
func (w *roundWork) do(it notation.Item, rest []notation.Item) *halt {
	switch it := it.(type) {
	case *notation.Stitches:
		return w.stitches(it)
	case *notation.Chain:
		return w.chain(it)
	case *notation.Group:
		return w.placedGroup(it)
	case *notation.Repeat:
		return w.repeatTimes(it)
	case *notation.Skip:
		return w.skip(it)
	case *notation.Join:
		return w.join(it, rest)
	case *notation.Turn:
		return w.turn(it, rest)
	case *notation.NoJoin:
		w.open = true
	case *notation.MagicRing:
		return w.magicRing(it)
	case *notation.FormRing:
		return w.formRing(it)
	case *notation.InLoops:
		w.loop = it.Into
	case *notation.In:
		p := it.Place
		w.ground = &p
	case *notation.Counts:
		w.counts(it)
	case *notation.OtherSide:
		return w.otherSide(it)
	case *notation.FastenOff:
		w.fasten = true
	case *notation.Colour:
		w.r.Colour = it.Name
	case *notation.Note:
		w.notes = append(w.notes, it.Text)
	case *notation.Marker:
		w.notes = append(w.notes, it.Text)
	}
	return nil
}

// carryOn keeps instructions that stand after the join or the turn for the
// beginning of the next round.
func (w *roundWork) carryOn(items []notation.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Turn:
			w.turned = true
		case *notation.FastenOff:
			w.fasten = true
		case *notation.Note:
			w.notes = append(w.notes, it.Text)
		case *notation.NoJoin, *notation.Marker, *notation.Until, *notation.Counts:
		default:
			w.carry = append(w.carry, it)
		}
	}
}

// turn turns the work: at the end of a round for the next, at its beginning
// for this one.
func (w *roundWork) turn(t *notation.Turn, rest []notation.Item) *halt {
	if !w.begun && w.c != nil && !w.joined {
		return w.turnNow(t)
	}
	w.turned = true
	// "ch 1, turn": the chains belong to the next row.
	if l := w.lastChain; l.item != nil && l.to == len(w.r.Stitches) && w.r.Row {
		w.dropFrom(l.from)
		w.carry = append(w.carry, l.item)
	}
	w.carryOn(rest)
	return stopHere
}

// dropFrom takes the stitches from number from on out of the round again.
func (w *roundWork) dropFrom(from int) {
	w.r.Stitches = w.r.Stitches[:from]
	for n := len(w.r.Spaces); n > 0 && w.r.Spaces[n-1].To > from; n-- {
		if w.r.Spaces[n-1].To = from; w.r.Spaces[n-1].From >= from {
			w.r.Spaces = w.r.Spaces[:n-1]
		}
	}
}

// counts takes in a remark on what something counts as.
func (w *roundWork) counts(c *notation.Counts) {
	if !c.Half && c.Throughout {
		w.throughout[0] = c
	}
}

// repeatTimes works a repeat with a number of times.
func (w *roundWork) repeatTimes(r *notation.Repeat) *halt {
	n := r.Times.For(w.size)
	if r.More {
		n++
	}
	m := w.mark()
	used, made, pos := 0, 0, len(w.r.Stitches)
	w.nest++
	for i := 0; i < n; i++ {
		from := len(w.r.Stitches)
		u := w.usedCount()
		items := r.Items
		if i == n-1 {
			items = w.lastOf(r)
		}
		if h := w.exec(items); h != nil {
			w.nest--
			if w.nest == 0 {
				h.help = w.fitTimes(h, r, i, n, used)
			}
			return h
		}
		if w.nest == 1 {
			w.r.Repeats = append(w.r.Repeats, fabric.Span{From: from, To: len(w.r.Stitches)})
		}
		if i == 0 {
			used = w.usedCount() - u
			made = countIn(w.r.Stitches[from:])
		}
		if len(w.r.Stitches) == from && w.pos == m.pos && n > 1000 {
			break
		}
	}
	w.nest--
	_ = pos
	if w.nest == 0 {
		w.repeats = append(w.repeats, repeated{r, n, used, made})
	}
	return nil
}

// lastOf is what the last repeat works.
func (w *roundWork) lastOf(r *notation.Repeat) []notation.Item {
	if r.AtStop {
		for i, it := range r.Items {
			if _, ok := it.(*notation.Stop); ok {
				return r.Items[:i]
			}
		}
	}
	if r.Omit > 0 && r.Omit < len(r.Items) {
		return r.Items[:len(r.Items)-r.Omit]
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

// usedCount is the number of stitches of the round below used so far.
func (w *roundWork) usedCount() int {
	n := 0
	for i := range w.c.spots {
		if s := &w.c.spots[i]; s.use != unused && s.counts {
			n++
		}
	}
	return n
}

// repeatOn works a repeat that goes as far as the round does, and then what
// follows it. How many repeats there are is found by working: as many as go,
// then fewer, until what follows comes out.
func (w *roundWork) repeatOn(r *notation.Repeat, rest []notation.Item) *halt {
	var ends []mark
	var fail *halt
	times, used, made := 0, 0, 0
	first := w.mark()
	stop := -1
	if r.AtStop || r.Omit > 0 {
		stop = len(w.lastOf(r))
	}
	short := r.Extent.Sort == notation.ToLast
	leave := 0
	if short {
		leave = r.Extent.N.For(w.size)
	}
	w.nest++
	complete := func() {
		if w.nest == 1 {
			from := first.stitches
			if times > 0 {
				from = ends[len(ends)-1].stitches
			}
			w.r.Repeats = append(w.r.Repeats, fabric.Span{From: from, To: len(w.r.Stitches)})
		}
		times++
	}
	begin := w.mark()
	var starts []mark
	done := false
	for !done {
		begin = w.mark()
		starts = append(starts, begin)
		if short && w.left(&r.Extent) <= leave {
			break
		}
		if r.Extent.Sort == notation.ToPlace && w.atPlace(&r.Extent) {
			break
		}
		if !short && times > 0 && w.remaining() == 0 && len(w.intoSpace) == 0 && stop < 0 {
			break
		}
		u := w.usedCount()
		var h *halt
		if stop >= 0 {
			if h = w.exec(r.Items[:stop]); h == nil {
				if w.remaining() == 0 && !w.spacesLeft() {
					complete()
					ends = append(ends, w.mark())
					break
				}
				ends = append(ends, w.mark())
				if h = w.exec(r.Items[stop:]); h != nil {
					fail = h
					w.back(ends[len(ends)-1])
					complete()
					break
				}
				ends = ends[:len(ends)-1]
			}
		} else {
			h = w.exec(r.Items)
		}
		if h != nil {
			fail = h
			w.back(begin)
			break
		}
		if times == 0 {
			used = w.usedCount() - u
			made = countIn(w.r.Stitches[begin.stitches:])
		}
		complete()
		ends = append(ends, w.mark())
		if w.usedCount() == u && w.pos == begin.pos {
			w.nest--
			return stopAt(r.Span, "endless", "this repeat takes up no stitches of the round below, so it never comes to the end",
				"Say how many times: rep from * 5 more times.")
		}
		if len(w.r.Stitches) > maxRound {
			w.nest--
			return stopAt(r.Span, "too-large", fmt.Sprintf("%s would have more than %d stitches", w.r.Label, maxRound), "")
		}
	}
	w.nest--
	rep := repeated{r, times, used, made}
	if w.nest > 0 {
		// Inside another repeat: what follows decides.
		if fail != nil && !fail.out {
			return fail
		}
		if times == 0 && fail != nil {
			return fail
		}
		return w.exec(rest)
	}
	if fail != nil && (!fail.out || times == 0) {
		return fail
	}
	w.repeats = append(w.repeats, rep)
	if short && w.left(&r.Extent) != leave {
		return w.misfit(r, fail, rep)
	}
	if r.Ending != nil {
		rest = append(append([]notation.Item(nil), r.Ending...), rest...)
	}
	// Try what follows after all the repeats, then after fewer.
	var tries []mark
	tries = append(tries, w.mark())
	if !short {
		for i := len(ends) - 1; i >= 0 && len(tries) < 6; i-- {
			tries = append(tries, ends[i])
		}
		if r.Ending != nil || r.AtStop || r.Omit > 0 {
			for i := len(starts) - 1; i >= 0 && len(tries) < 10; i-- {
				tries = append(tries, starts[i])
			}
		}
		tries = append(tries, first)
	}
	keep := *w
	keepJoin := w.r.Closing
	var firstFault *halt
	for i, m := range tries {
		if i > 0 {
			carry, split := w.carry, w.split
			w.back(m)
			w.turned, w.carry, w.joined, w.fasten, w.split = keep.turned, keep.carry, keep.joined, keep.fasten, keep.split
			w.notes, w.open, w.repeats = keep.notes, keep.open, keep.repeats
			w.r.Closing = keepJoin
			_, _ = carry, split
		}
		h := w.exec(rest)
		if h == nil && w.leftover() == 0 {
			if n := len(w.r.Repeats); n < times {
				w.repeats[len(w.repeats)-1].times = n
			}
			return nil
		}
		if i == 0 {
			firstFault = h
			if h == nil && !needsPlaces(rest) {
				break
			}
		}
	}
	w.back(tries[0])
	w.turned, w.carry, w.joined, w.fasten, w.split = keep.turned, keep.carry, keep.joined, keep.fasten, keep.split
	w.notes, w.open, w.repeats = keep.notes, keep.open, keep.repeats
	if firstFault != nil && !firstFault.out {
		return firstFault
	}
	if fail != nil {
		return w.misfit(r, fail, rep)
	}
	if firstFault != nil {
		return w.misfit(r, firstFault, rep)
	}
	return w.exec(rest)
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

// left is how many of an extent's targets there are from pos on.
func (w *roundWork) left(e *notation.Extent) int {
	switch e.Target.Sort {
	case notation.ChainSpace:
		n := 0
		for _, r := range w.c.runs {
			if r.From >= w.pos && (e.Target.Chains == 0 || r.To-r.From == e.Target.Chains) {
				n++
			}
		}
		return n
	case notation.OfKind, notation.ChainStitch:
		n := 0
		for i := w.pos; i < len(w.c.spots); i++ {
			if w.c.matches(i, &e.Target) {
				n++
			}
		}
		return n
	case notation.OfName:
		n := 0
		for _, g := range w.c.groups {
			if g.From >= w.pos && g.name == e.Target.Name {
				n++
			}
		}
		return n
	}
	return w.remaining()
}

// atPlace reports whether the next place is the one an extent goes up to.
func (w *roundWork) atPlace(e *notation.Extent) bool {
	if e.Target.Sort == notation.ChainSpace {
		for _, r := range w.c.runs {
			if r.From >= w.pos {
				if e.Target.Chains == 0 || r.To-r.From == e.Target.Chains {
					for i := w.pos; i < r.From; i++ {
						if w.c.spots[i].counts {
							return false
						}
					}
					return true
				}
				return false
			}
		}
		return true
	}
	return w.pos >= len(w.c.spots) || w.c.matches(w.pos, &e.Target)
}

// spacesLeft reports whether there are chain spaces further on of a length
// that the round has been going into.
func (w *roundWork) spacesLeft() bool {
	for _, r := range w.c.runs {
		if r.From >= w.pos && w.wants(r) {
			return true
		}
	}
	return false
}

func (w *roundWork) wants(r fabric.Span) bool {
	return w.intoSpace[0] || w.intoSpace[r.To-r.From]
}

// leftover is the number of places that have been neither used, skipped by
// name, nor passed on the way to a place that was named.
func (w *roundWork) leftover() int {
	if w.usedRing && !w.intoStitch {
		return 0 // the chains of the ring are under the stitches
	}
	n := 0
	for i := range w.c.spots {
		if s := &w.c.spots[i]; s.counts && s.use == unused {
			n++
		}
	}
	// A round that goes from space to space passes the stitches between its
	// last place and the join as it passes the others.
	if w.lastSpace && n <= w.gap {
		n = 0
	}
	if n > 0 {
		return n
	}
	for _, r := range w.c.runs {
		if w.wants(r) && r.From >= w.pos && w.c.spots[r.From].use == unused && w.c.spots[r.To-1].use == unused {
			n++
		}
	}
	return n
}
