package working

import (
	"fmt"
	"slices"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// oneRound works one round from the words of text, labelled by label; the
// counts stated there are compared when last is set. It reports whether the
// part can go on.
func (p *partWork) oneRound(label, text *notation.Round, number int, last bool) bool {
	if len(p.part.Rounds) >= maxRounds {
		p.add(p.fault(label.Span, "too-large", fmt.Sprintf("the part has more than %d rounds", maxRounds), "Check the numbers."), true)
		return false
	}
	if closesPiece(text.Items) {
		if p.closedFlat(label, text) && last {
			p.seamRow(label, text, number)
		}
		p.number = number
		return true // a seam that closes the piece is no round of it
	}
	if p.part.Seam != nil && needsPlaces(text.Items) {
		p.part.Rounds, p.part.Seam = append(p.part.Rounds, p.part.Seam), nil // the work goes on from it
	}
	// What is wrong with words has been said, however often they are worked.
	p.cascade = p.cascade || p.faulty[text]
	before := len(p.faults)
	w := p.begin(label, text, number)
	h := w.besidePieces()
	if h == nil {
		h = w.noBlocks(text.Items)
	}
	if h == nil {
		h = w.noSeams(w.items)
	}
	if h == nil {
		h = w.sideFault
	}
	if h == nil {
		if h = w.exec(w.items); h == nil {
			h = w.endPoint(lastSpan(w.items))
		}
	}
	goesOn := false // the round is whole, but for what it leaves
	foundationOnly := h == nil && w.foundation != nil && !w.begun
	if foundationOnly {
		// The starting chain by itself.
		w.foundation.Label = "the starting chain"
		p.part.Rounds = append(p.part.Rounds, w.foundation)
		p.carry, p.turned = w.carry, false
		return true
	}
	if h == nil && w.started && !w.begun && len(text.Label.Numbers) > 0 && w.r.Count() == 0 {
		p.add(p.fault(label.Span, "empty", plainLabel(label.Label.Text)+" has no stitches but the chain that it begins with", "Say what is worked."), true)
		return false
	}
	if h == nil && len(w.r.Stitches) == 0 {
		p.carry = append(p.carry, w.carry...)
		if n := len(p.part.Rounds); w.fasten && n > 0 {
			p.part.Rounds[n-1].Cut = true
		}
		if n := len(p.part.Rounds); n == 1 && p.part.Rounds[0].Ring && p.part.Rounds[0].Number == 0 && p.number == 0 && makesRing(text.Items) {
			p.number = number // "Rnd 1: Ch 60, join to form a ring."
			return true
		}
		if len(text.Label.Numbers) > 0 && !fastens(text.Items) {
			p.add(p.fault(label.Span, "empty", plainLabel(label.Label.Text)+" has no stitches", "Say what is worked."), true)
			return false
		}
		return true
	}
	if h == nil {
		w.halves()
		w.firstGroup()
		w.writtenOut()
		if n := w.leftover(); n > 0 && !p.onPart(w) && (w.c.edge == 0 || w.pos > 1) && w.c.below != nil && w.begun && !w.hangs() && !w.shortRow(label, text, n, last) {
			if h = w.unfit; h == nil {
				h = w.leftUnused(n, lastSpan(w.items))
			}
			goesOn = true
		}
	}
	w.noticePassed()
	ok, warned := true, len(w.roundFaults) > 0
	for _, f := range w.roundFaults {
		ok = ok && f.Severity == fault.Warning
	}
	if h != nil {
		ok = false
		if goesOn && last {
			if l := p.statedRepeats(w, p.bySize(label)); len(l) > 0 {
				// The repeat that falls short is known; what else might fit is not.
				first, _, _ := strings.Cut(h.help, "\n")
				h.help = first + "\n" + strings.Join(l, "\n")
			}
		}
		f := p.fault(h.at, h.code, h.message, h.help)
		f.Round = w.r.Label
		if !p.cascade && !h.known {
			p.faults = append(p.faults, f)
		}
		if !goesOn {
			p.broken = true
			if !p.cascade {
				p.faults = append(p.faults, w.roundFaults...)
			}
			p.gather(before)
			p.settleDoubts(before, false)
			return false
		}
	}
	if !p.cascade {
		p.faults = append(p.faults, w.roundFaults...)
	}
	// A count after a range of rounds is that of the last, or there is one
	// for each.
	if each := p.countFor(label, number, w.r); each != nil {
		if !p.compare(w, []*notation.Stated{each}, h != nil || p.cascade) {
			ok = false
		}
	} else if last && !p.compare(w, p.bySize(label), h != nil || p.cascade) {
		ok = false
	}
	p.gather(before)
	borneOut := last && ok && h == nil && p.bearsOut(w, label)
	p.settleDoubts(before, borneOut)
	if !borneOut {
		p.over[len(p.part.Rounds)] = w.passedAmong()
	}
	again := p.faulty[text] && label != text
	p.faulty[text] = p.faulty[text] || len(p.faults) > before
	// After a fault, what follows is off as well, until a count agrees again.
	if stated := last && len(label.Stated) > 0; !ok || warned && !stated {
		p.cascade = true
	} else if stated && !again {
		p.cascade = false
	}
	p.finish(w, text, number)
	if label == text && !last {
		// What changes the colour behind several rounds does so after the last.
		p.carry = slices.DeleteFunc(p.carry, func(it notation.Item) bool { _, ok := it.(*notation.Colour); return ok })
		// The yarn is cut then as well, where it is not joined for each.
		w.r.Cut = w.r.Cut && joinsYarn(text.Items)
	}
	if label != text && last {
		if side := p.sideAfter(label); side != nil {
			p.carry, w.r.Cut = append(p.carry, side...), true
		} else {
			p.carry = append(p.carry, coloursAfter(label)...)
		}
	}
	p.lasts[label] = w.r
	if last && label == text && ok && h == nil {
		p.closedFlat(label, text) // "Fold flat, sc 4 through both layers" in a line behind it
	}
	return true
}

// makesRing reports whether instructions close a ring.
func makesRing(items []notation.Item) bool {
	for _, it := range items {
		switch it.(type) {
		case *notation.FormRing, *notation.MagicRing, *notation.Join:
			return true
		}
	}
	return false
}

// joinsYarn reports whether a round begins by joining a yarn.
func joinsYarn(items []notation.Item) bool {
	for _, it := range items {
		switch it.(type) {
		case *notation.Note, *notation.FastenOff:
			continue
		case *notation.Join, *notation.Colour:
			return true
		}
		return false
	}
	return false
}

// gather makes one fault of a round of what comes of one: what it passed over
// without a word goes with what is wrong with it.
func (p *partWork) gather(from int) {
	var wrong *fault.Fault
	for _, f := range p.faults[from:] {
		if f.Severity == fault.Error && wrong == nil {
			wrong = f
		}
	}
	if wrong == nil {
		return
	}
	if p.firstWrong < 0 {
		p.firstWrong = len(p.part.Rounds)
	}
	kept := p.faults[:from]
	for _, f := range p.faults[from:] {
		if f.Code != "passed-over" && f.Code != "twice" || f.Severity != fault.Warning {
			kept = append(kept, f)
			continue
		}
		message := strings.TrimSuffix(f.Message, " in size "+f.Size) + "."
		if wrong.Help != "" {
			message = "\n" + message
		}
		wrong.Help += message
	}
	p.faults = kept
}

// coloursAfter are the changes of colour that stand behind a reference to other
// rounds: "Rep Row 2, changing to B in last st."
func coloursAfter(r *notation.Round) (l []notation.Item) {
	after := false
	for _, it := range r.Items {
		switch it.(type) {
		case *notation.Ref:
			after = true
		case *notation.Colour:
			if after {
				l = append(l, it)
			}
		}
	}
	return l
}

// onlyChain reports whether instructions are one chain, but for a colour.
func onlyChain(items []notation.Item) bool {
	n := 0
	for _, it := range items {
		switch it.(type) {
		case *notation.Colour:
			n++
		case *notation.Chain:
		default:
			return false
		}
	}
	return len(items)-n == 1
}

// begin lays out the round below and makes ready.
func (p *partWork) begin(label, text *notation.Round, number int) *roundWork {
	row := p.part.Worked == fabric.InRows
	if len(text.Label.Numbers) > 0 && !text.Label.Bare || text.Label.Row {
		row = text.Label.Row
	}
	word := "Rnd"
	if row {
		word = "Row"
	}
	row = row && !p.roundCalledRow(text)
	r := &fabric.Round{Label: fmt.Sprintf("%s %d", word, number), Number: number, Row: row, Line: text.Line}
	if number == 0 {
		r.Label = "the beginning"
		if text.Label.Text != "" {
			r.Label = plainLabel(text.Label.Text)
		}
	}
	w := &roundWork{partWork: p, r: r, items: text.Items, turnedBefore: p.turned,
		labelled: len(label.Label.Numbers) > 0, stated: text.Stated}
	if l := text.Label.Numbers; text != label && len(l) == 1 && l[0].From.For(p.size) == l[0].To.For(p.size) {
		w.later = number - l[0].From.For(p.size)
	}
	if len(p.carry) > 0 {
		w.items = append(append([]notation.Item(nil), p.carry...), text.Items...)
		// A round that begins with a chain of its own needs none carried
		// over from the end of the one before.
		if begins(text.Items) && onlyChain(p.carry) {
			w.items = text.Items
		} else if last := len(p.carry) - 1; begins(text.Items) && last > 0 && onlyChain(p.carry[last:]) && onlyPlaces(p.carry) {
			w.items = append(p.carry[:last:last], text.Items...)
		}
		for _, it := range p.carry {
			if c, ok := it.(*notation.Colour); ok {
				w.colour = c.Name
			}
		}
		p.carry = nil
	}
	if label != text {
		// "With B, rep Row 2."
		for _, it := range label.Items {
			if c, ok := it.(*notation.Colour); ok {
				w.colour = c.Name
			} else if _, ok := it.(*notation.Ref); ok {
				break
			}
		}
	}
	if label != text {
		w.items = withoutJoin(w.items, label.Items)
	}
	n := len(p.part.Rounds)
	if p.joining != nil && n == 1 {
		w.items = p.joining.instead(w.items)
	}
	if items, loose := notation.InTurn(w.items); loose {
		if p.mayTurn = true; p.reading.inTurn {
			w.items = items
		}
	}
	if n == 0 {
		w.c = &course{}
		if p.edge > 0 {
			w.c, r.Edge = p.layEdge(), p.edge
		}
	} else {
		below := p.part.Rounds[n-1]
		turned := p.turned
		if row {
			// A foundation row of stitches is turned like any other.
			turned = below.Row && (below.Number > 0 || below.Count() > 0) || p.turned
		}
		r.Reversed = below.Reversed != turned
		r.Wrong = below.Wrong != turned
		if r.Colour = below.LastColour(); w.colour != "" {
			r.Colour = w.colour
		}
		back := turned
		if below.Number == 0 && !below.Ring && !below.Carried && !joined(below) && !(row && below.Count() > 0) {
			back = true // the hook is at the end of the starting chain
			r.Reversed, r.Wrong = false, false
		}
		w.c = layCourse(p.above(below), n-1, back)
		if from := p.part.From; below.Carried && from >= 0 && from < len(p.f.Parts) {
			rounds := p.f.Parts[from].Rounds
			w.c.carried = rounds[len(rounds)-1].Stitches
		}
		if p.assembly != nil && n == 1 {
			w.c.carried = p.assembly.stitches
			w.c.laySeams(p.assembly, namesSeams(w.items) && !p.reading.ownCorners)
			w.c.allCorners = p.reading.allCorners
		}
		w.laySide()
		for i := range w.c.spots {
			// The chains across a slit are stitches to go into like the others.
			w.c.spots[i].counts = w.c.spots[i].counts || w.missedBelow()
		}
		if below.Completed > 0 && len(w.c.runs) > 0 && !back {
			// The hook stands on the middle of the last space.
			w.c.begin(w.c.runs[len(w.c.runs)-1].From)
		}
		w.c.ring = below.Ring
	}
	if side := text.Label.Side; side != 0 {
		if wrong := side == 2; r.Wrong != wrong {
			if r.Wrong = wrong; !p.sided && row {
				// The rows before, whose sides were not said, take turns.
				for _, b := range p.part.Rounds {
					if b.Row && !b.Carried {
						b.Wrong = !b.Wrong
					}
				}
			}
		}
		p.sided = true
	}
	if label != text && p.ofOtherKinds(text) {
		p.outOfKind, w.c.anyKind = true, p.reading.anyKind
	}
	w.yarn, w.recolour = r.Colour, label != text && w.colour != ""
	w.goesIntoRing = intoRing(text.Items)
	w.namesStart = namesStart(w.items)
	w.leads, w.leadsLeg = w.leading(w.items)
	w.onNamedRound()
	w.onLeftFree()
	w.moves = w.slipsMove(w.items)
	w.slipsIn = slipsIn(w.items)
	if text.Label.Loop.Set {
		w.loop = text.Label.Loop.Into
	}
	w.c.flat = r.Row
	if !p.reading.noSplit {
		w.split = findSplit(w.items)
		p.mayNotSplit = p.mayNotSplit || w.split != nil
	}
	return w
}

// joined reports whether a round was joined at its end, so that the next goes on
// in the same direction.
func joined(r *fabric.Round) bool {
	n := len(r.Stitches)
	return n > 0 && r.Stitches[n-1].Role == fabric.Join
}

// finish adds the round to the part.
func (p *partWork) finish(w *roundWork, text *notation.Round, number int) {
	r := w.r
	switch {
	case r.Row:
		r.Closing = fabric.Open
	case !w.joined:
		r.Closing = fabric.Spiral
	}
	r.Cut = w.fasten
	w.putMarkers()
	p.part.Rounds = append(p.part.Rounds, r)
	if p.stitches += len(r.Stitches); p.stitches > maxFabric {
		p.add(p.fault(text.Span, "too-large", fmt.Sprintf("the piece has more than %d stitches", maxFabric), "Check the numbers."), true)
	}
	p.number = number
	p.turned = w.hand.turned
	p.carry = w.carry
	p.latest = append(p.latest, text)
	p.rounds[number] = text
}

// halves marks the two halves of a group that is split at the join.
func (w *roundWork) halves() {
	if w.split == nil {
		return
	}
	first, last := -1, -1
	for i := range w.r.Stitches {
		st := &w.r.Stitches[i]
		if st.Kind.Shape != stitch.Together || st.Role != fabric.Worked {
			continue
		}
		if first < 0 {
			first = i
		}
		last = i
	}
	if first < 0 || first == last {
		return
	}
	a, b := &w.r.Stitches[first], &w.r.Stitches[last]
	a.Role, a.As = fabric.FirstHalf, w.split.as
	b.Role, b.Counts = fabric.LastHalf, false
	if w.split.chainLeg {
		for i := range w.r.Stitches[:first] {
			if w.r.Stitches[i].Role == fabric.Start {
				w.r.Stitches[i].Counts = false
			}
		}
	}
}

// mostPassed is the most stitches that lace passes over at once on its way to a
// place that is named (common practice, no source).
const mostPassed = 12

// noticePassed reports places that were passed over on the way to a kind of
// stitch.
func (w *roundWork) noticePassed() {
	w.oddStart()
	if w.noticeOdd() {
		return
	}
	if lace := w.intoSpace != 0 || w.lastGroup > 0; lace && w.gap > mostPassed {
		w.warn(lastSpan(w.items), "passed-over", fmt.Sprintf("%s passes over %s of %s at once without a word", w.r.Label, plural(w.gap, "stitch"), w.c.below.Label),
			"Check which place is meant, or say that they are skipped.")
		return
	} else if lace || len(w.passed) == 0 || w.betweenPetals() {
		return // lace goes from place to place by name
	}
	at := w.c.spots[w.passed[0]].st
	n := len(w.passed)
	w.warn(lastSpan(w.items), "passed-over",
		fmt.Sprintf("%s passes over %s of %s without a word, the first of them a %s", w.r.Label, plural(n, "stitch"), w.c.below.Label, at.Counted().Name(w.terms)),
		"Skip them by name (sk next st), or name the stitch that is worked into.")
}

// lastSpan is where the last instruction that makes stitches stands.
func lastSpan(items []notation.Item) notation.Span {
	for i := len(items) - 1; i >= 0; i-- {
		switch items[i].(type) {
		case *notation.Stitches, *notation.Group, *notation.Repeat, *notation.Skip:
			return items[i].Where()
		}
	}
	if len(items) > 0 {
		return items[0].Where()
	}
	return notation.Span{}
}
