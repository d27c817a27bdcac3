package working

import (
	"fmt"
	"regexp"

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
	maxSteps  = 2e6    // instructions worked in one part
)

// roundWork works one round over the round below.
type roundWork struct {
	*partWork
	r     *fabric.Round
	c     *course
	items []notation.Item
	hand
	// foundation is the starting chain while it is being made.
	foundation *fabric.Round
	castItem   *notation.Chain // that made it
	// leads is what a beginning chain and the stitch after it count as
	// together: a beginning cluster.
	leads     *notation.Counts
	sideFault *halt // what is wrong with the words that begin the second side of a divided piece
	leadsLeg  bool  // the chain is one of the legs, in a place of its own
	// unfit is what is wrong when a repeat leaves less than it takes.
	unfit    *halt
	slipping bool   // the stitch being worked is a slip stitch
	colour   string // the yarn that the words before this round change to
	recolour bool   // the round repeats another in that yarn
	// within is the use of a designer's own stitch that is being worked.
	within *notation.Stitches
	// undo is the history of the spots' use.
	undo []undoUse
	// labelled is set when the words that call for the round are labelled with its
	// number; stated are the counts behind its own words.
	labelled bool
	saidHere bool // the round itself says what the chain counts as that it begins with
	// beganHere is set when the words have said where the round begins without a stitch
	// there.
	beganHere bool
	onLeft    bool // the course is what rounds before have left free
	toSide    bool // the words go along the side of the piece
	// later is how many rows the round comes behind the one that its words were written for.
	later  int
	stated []*notation.Stated
	// nest, nestGroup and depth are how deep the work is in repeats, in
	// groups and in instructions altogether.
	nest, nestGroup, depth int
	split                  *split
	goesIntoRing           bool            // some of the stitches go into the ring
	turnedBefore           bool            // the round before ended with a turn
	sides                  int             // of a flat piece that a border has gone along
	settled                bool            // the course has been turned to where the round begins
	moves                  bool            // slip stitches at the beginning only move it
	slipsIn                bool            // slip stitches bring a row to where it begins
	namesStart             bool            // the words name the chain that begins the round below
	after                  []notation.Item // what follows the instruction being worked
	next                   []notation.Item // the same, within a repeat or a group as well
	roundFaults            fault.List
}

// hand is where the work stands: all that has to be as it was when a repeat is
// taken back.
type hand struct {
	// pos is the spot from which "next" looks on.
	pos int
	// used is how many stitches of the round below have been used.
	used int
	// same is the place worked into last; lastSkip the spots skipped last.
	same     []fabric.Place
	lastSkip []int
	older    *olderRound // that was looked at last for stitches left free
	// given replaces the place in the words of a stitch that was defined by
	// the designer; inGroup is the place of the group that is being worked.
	given, inGroup []fabric.Place
	// ground is where stitches go that do not say: "working in ring".
	ground *notation.Place
	// loop is the loop set for the round.
	loop stitch.Into
	// started is set when the chain at the beginning has been made, begun when
	// any other stitch has.
	started, begun bool
	// group is 1 + the group that stitches belong to.
	group int
	// intoSpace, intoStitch and usedRing say what sorts of places the round
	// goes into, spaces as a set of bits, one for each number of chains (0:
	// any); lastSpace that the last place gone on to is a space.
	intoSpace                       uint64
	intoStitch, usedRing, lastSpace bool
	whole                           int // 1 + the run that was named by all of a beginning chain
	// figures are the lengths of spaces that only figures have been gone into of.
	figures uint64
	// mostSkipped is the most stitches skipped by name at a time.
	mostSkipped int
	// deepAt is 1 + the spot passed by a stitch worked further down, until
	// something else is done: "sk st behind" means that one. It is -1 - the spot once
	// that has been said.
	deepAt int
	// behind is set while the words work behind what has just been made.
	behind bool
	// yarn is the name of the colour that is worked with.
	yarn string
	// markers are where the round has stitch markers.
	markers []markerAt
	// depthOf is how far down stitches of a kind "2 rnds below" are, 0 until one has
	// been worked into.
	depthOf int
	// joinedOn is how often the round has been joined to another motif on the way.
	joinedOn int
	// lastGroup is 1 + the group worked into last.
	lastGroup int
	// edgeTurn is how many edges of a flat piece the round has gone along, from corner
	// to corner.
	edgeTurn int
	// gap is the most stitches passed over in one step on the way to a place
	// that was named; passed are spots passed over on the way to a kind.
	gap    int
	passed []int
	// stepped is the step just taken, unset when something else was done since.
	stepped step
	odd     odd
	// repeats is what the outermost repeats used, for messages.
	repeats   []repeated
	lastChain chainMade
	// point is the chain that is worked back along.
	point point
	roundEnd
}

// roundEnd is how a round ends.
type roundEnd struct {
	joined, turned, fasten bool
	// carry is what stands after the join or the turn, for the next round.
	carry []notation.Item
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
	head  int // of these what comes before **
	made  int // stitches one repeat makes
}

// mark is a point that the work can be taken back to.
type mark struct {
	hand
	stitches, spaces, groups, repeatSpans, undo int
}

func (w *roundWork) mark() mark {
	return mark{w.hand, len(w.r.Stitches), len(w.r.Spaces), len(w.r.Groups), len(w.r.Repeats), len(w.undo)}
}

// back takes the work back to a mark. Marks made later than that one are of no
// more use.
func (w *roundWork) back(m mark) {
	w.hand = m.hand
	w.dropFrom(m.stitches)
	w.r.Spaces = w.r.Spaces[:min(m.spaces, len(w.r.Spaces))]
	w.r.Groups = w.r.Groups[:m.groups]
	w.r.Repeats = w.r.Repeats[:m.repeatSpans]
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
	if s.use == unused && s.counts {
		w.used++
	}
	s.use = u
}

// remaining is the number of stitches from pos on that have not been used,
// counted no further than limit.
func (w *roundWork) remaining(limit int) int {
	n := 0
	for i := w.pos; i < len(w.c.spots) && n < limit; i++ {
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
	if !st.IsChain() {
		w.stepped = step{}
	}
	st.Line, st.Column = at.Line, at.Column
	st.Group, st.Own, st.Colour = w.group, w.own, w.yarn
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
	if k == stitch.Of(stitch.Single) && w.deepAt > 0 && w.deepAt == w.pos && len(on) == 1 && on[0].Into == stitch.Top && on[0].At.Round < w.c.index {
		k.Manner |= stitch.Spike // "sc in next st 1 rnd below"
	}
	return w.add(fabric.Stitch{Kind: k, On: on, Counts: k.Base != stitch.Chain, Behind: w.behind}, at)
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
			if w.nest == 0 && w.nestGroup == 0 {
				w.after = items[i+1:]
			}
			return w.repeatOn(r, items[i+1:])
		}
		if w.nest == 0 && w.nestGroup == 0 {
			w.after = items[i+1:]
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

// behindMade is advice that says how stitches lie that are made across others:
// "working behind sts just made".
var behindMade = regexp.MustCompile(`(?i)\bbehind\b.*\b(made|them|those)\b`)

// do works one instruction; rest is what follows it.
func (w *roundWork) do(it notation.Item, rest []notation.Item) *halt {
	if s, ok := it.(*notation.Stitches); !ok || s.What.Kind.Base != stitch.Slip {
		w.settle(it, rest)
	}
	if w.steps++; w.steps > maxSteps {
		return stopAt(it.Where(), "too-large", "the part takes more work than any piece can need", "Check the numbers of repeats.")
	}
	if h := w.ontoNext(it); h != nil {
		return h
	}
	switch it.(type) {
	case *notation.Chain, *notation.Group, *notation.Join:
		if h := w.endPoint(it.Where()); h != nil {
			return h
		}
	}
	switch it := it.(type) {
	case *notation.Stitches:
		if w.slipsToLeft(it, rest) || w.closesLoop(it, rest) {
			return w.join(&notation.Join{Span: it.Span, With: it.What, Place: &it.Places[0]}, rest)
		}
		w.next = rest
		h := w.stitches(it)
		w.behind = false
		return h
	case *notation.Note:
		w.behind = behindMade.MatchString(it.Text)
		if it.Joins {
			w.joinedOn++
		}
		w.toSide = w.toSide || alongSide.MatchString(it.Text)
		if it.Doubt != nil {
			w.doubt(it)
		}
	case *notation.Chain:
		w.next = rest
		return w.chain(it)
	case *notation.Group:
		return w.placedGroup(it)
	case *notation.Repeat:
		return w.repeatTimes(it, rest)
	case *notation.Skip:
		return w.skip(it)
	case *notation.Join:
		return w.join(it, rest)
	case *notation.Begin:
		return w.beginsIn(it)
	case *notation.Turn:
		return w.turn(it, rest)
	case *notation.MagicRing:
		return w.magicRing(it)
	case *notation.FormRing:
		return w.formRing(it)
	case *notation.InLoops:
		w.loop = it.Into
		return w.inLoops(it)
	case *notation.In:
		if it.Place.Pick == notation.Skipped {
			return w.onLeftHere(it)
		}
		if it.Place.Target.MakesRing() && !w.c.ring {
			if h := w.magicHere(it.Span); h != nil {
				return h
			}
		}
		p := it.Place
		w.ground = &p
		if w.nest == 0 && !needsPlaces(rest) && len(w.r.Stitches) == 0 {
			w.carry = append(w.carry, it) // "Work into the ring as follows:" of the round to come
		}
	case *notation.Counts:
		w.counts(it)
	case *notation.OtherSide:
		return w.otherSide(it)
	case *notation.Ref:
		return stopAt(it.Span, "vague", "the words do not say what of the repeated round is left to work here", "Write the round out.")
	case *notation.FastenOff:
		w.fasten = true
		if w.startsSide(rest) {
			w.carry = append(w.carry, rest...) // "Fasten off. With RS facing, miss next 12 sts, rejoin yarn to next st."
			return stopHere
		}
		if cord, _ := w.cord(rest); cord && w.begun && w.nest == 0 && needsPlaces(rest) {
			w.carryOn(rest) // "Fasten off. Ties: Ch 36, sl st in 2nd ch from hook …": none of this round
			return stopHere
		}
	case *notation.Marker:
		w.marker(it)
	case *notation.Colour:
		switch {
		case !w.begun && w.recolour:
			w.recolour = false
		case !w.begun:
			w.r.Colour, w.yarn = it.Name, it.Name
		case w.nest == 0 && !needsPlaces(rest):
			// "…, change to B in last st" is for the round to come.
			w.carry = append(w.carry, it)
		default:
			w.r.Colours = true
			w.yarn = it.Name
		}
	}
	return nil
}

// carryOn keeps instructions that stand after the join or the turn for the
// beginning of the next round.
func (w *roundWork) carryOn(items []notation.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Turn:
			w.hand.turned = true
		case *notation.FastenOff:
			w.fasten = true
		case *notation.Skip:
			if it.Unworked {
				w.leaves(it)
				w.skip(it)
			} else {
				w.carry = append(w.carry, it)
			}
		case *notation.Marker:
			w.marker(it)
		case *notation.Note:
			if it.Doubt != nil || alongSide.MatchString(it.Text) {
				w.carry = append(w.carry, it)
			}
		case *notation.NoJoin, *notation.Until, *notation.Counts:
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
	if l := w.lastChain; w.r.Row && l.item != nil && l.from == 0 && l.to == len(w.r.Stitches) && needsPlaces(rest) {
		return nil // "Row 2: Ch 4, turn, sc in next ch-2 sp, …": the chain is the loop at the edge
	}
	w.hand.turned = true
	// "ch 1, turn": the chains belong to the next row.
	if l := w.lastChain; l.item != nil && l.to == len(w.r.Stitches) && w.r.Row {
		w.dropFrom(l.from)
		w.trimSpans()
		w.carry = append(w.carry, l.item)
	}
	w.carryOn(rest)
	return stopHere
}

// trimSpans ends groups and repeats where the stitches end.
func (w *roundWork) trimSpans() {
	n := len(w.r.Stitches)
	for i := range w.r.Groups {
		g := &w.r.Groups[i]
		g.From, g.To = min(g.From, n), min(g.To, n)
	}
	for i := range w.r.Repeats {
		s := &w.r.Repeats[i]
		s.From, s.To = min(s.From, n), min(s.To, n)
	}
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
	if !c.Half && c.Throughout && (!c.Space || c.Of > 0) {
		w.throughout[c.Of] = c
		if message, help := w.cannotBe(c); message != "" {
			w.warn(c.Span, "chain", message, help)
		}
	}
}
