package working

import (
	"fmt"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// rangeOf works a labelled line: once, or for each number of its range.
func (p *partWork) rangeOf(r *notation.Round) {
	p.called = r.Line
	l := &r.Label
	if len(l.Only) > 0 {
		mine := false
		for _, s := range l.Only {
			mine = mine || s == p.p.Sizes[p.size]
		}
		if !mine {
			return
		}
	}
	if r.Broken {
		p.broken = true
		return
	}
	if len(l.Numbers) == 0 {
		n := 1
		if l.Next.Set() {
			n = l.Next.For(p.size)
		}
		if ref := onlyRef(r); ref != nil {
			p.repeatRounds(r, ref, p.timesOf(r, ref))
			return
		}
		for i := 0; i < n && !p.broken; i++ {
			number := p.number + 1
			if !l.Next.Set() && p.number == 0 && len(p.latest) == 0 && (l.Text == "" || l.Foundation) {
				number = 0
			}
			if !p.oneRound(r, r, number, i == n-1) {
				return
			}
		}
		return
	}
	if ref := onlyRef(r); ref != nil && len(l.Numbers) > 1 && p.consecutive(l) {
		// "Rnds 4 and 5: Rep Rnds 2 and 3" is one run of rounds.
		first, last := l.Numbers[0].From, l.Numbers[len(l.Numbers)-1].To
		if p.numberFits(r, first.Span, first.For(p.size), false) {
			p.repeatRounds(r, ref, last.For(p.size)-first.For(p.size)+1)
		}
		return
	}
	if l.Rounds.Set() && len(l.Numbers) == 1 && !l.Numbers[0].ToEnd {
		n := l.Numbers[0].To.For(p.size) - l.Numbers[0].From.For(p.size) + 1
		if n != l.Rounds.For(p.size) {
			p.add(p.fault(l.Rounds.Span, "round-number", fmt.Sprintf("%s is %s, not %d", plainLabel(l.Text), plural(n, "round"), l.Rounds.For(p.size)),
				"Let the numbers of the label agree."), false)
		}
	}
	for k, rg := range l.Numbers {
		from, to := rg.From.For(p.size), rg.To.For(p.size)
		if from == 0 && len(l.Numbers) == 1 && len(rg.From.Values) > 1 {
			return // not worked for this size
		}
		if !rg.ToEnd && to < from {
			if len(rg.To.Values) > 1 || len(rg.From.Values) > 1 {
				continue // none for this size
			}
			p.add(p.fault(rg.From.Span, "round-number", fmt.Sprintf("%s counts backwards", l.Text), "Write the smaller number first."), true)
			return
		}
		if k > 0 && from != p.number+1 && !rg.ToEnd {
			// "Rows 4 and 6": the others come when the rows between have been
			// worked.
			p.later = append(p.later, laterRound{from, to, r})
			continue
		}
		if !p.numberFits(r, rg.From.Span, from, k > 0) {
			return
		}
		last := k == len(l.Numbers)-1
		ref := onlyRef(r)
		if rg.ToEnd {
			n, ok := p.untilRows(r, ref)
			if !ok {
				return
			}
			if ref != nil {
				p.repeatRounds(r, ref, n)
				continue
			}
			for i := 0; i < n && !p.broken; i++ {
				p.oneRound(r, r, p.number+1, i == n-1)
			}
			continue
		}
		if to-from+1 > maxRounds {
			p.add(p.fault(rg.To.Span, "too-large", fmt.Sprintf("%s is more than %d rounds", l.Text, maxRounds), "Check the numbers."), true)
			return
		}
		if ref != nil {
			p.repeatRounds(r, ref, to-from+1)
			continue
		}
		for n := from; n <= to && !p.broken; n++ {
			p.oneRound(r, r, n, last && n == to)
		}
	}
}

// numberFits reports a round whose number is not the next.
func (p *partWork) numberFits(r *notation.Round, at notation.Span, n int, list bool) bool {
	p.workLater()
	first := len(p.latest) == 0
	want := p.number + 1
	if n == want || first && (n == 1 || p.part.From < 0 || p.edge > 0) || list {
		p.number = n - 1
		return true
	}
	word := "Rnd"
	if r.Label.Row {
		word = "Row"
	}
	var f *fault.Fault
	if n <= p.number {
		f = p.fault(at, "round-number", fmt.Sprintf("%s %d comes twice", word, n),
			fmt.Sprintf("The next would be %s %d.", word, want))
	} else {
		missing := fmt.Sprintf("%s %d is missing", word, want)
		if n-1 > want {
			missing = fmt.Sprintf("%ss %d-%d are missing", word, want, n-1)
		}
		f = p.fault(at, "round-number", fmt.Sprintf("%s before %s", missing, plainLabel(r.Label.Text)),
			fmt.Sprintf("The next would be %s %d.", word, want))
	}
	f.Round = fmt.Sprintf("%s %d", word, n)
	p.add(f, false)
	p.number = n - 1
	return true
}

// laterRound is a round of a list that has to wait for others.
type laterRound struct {
	from, to int
	text     *notation.Round
}

// workLater works the rounds that waited and whose turn it is.
func (p *partWork) workLater() {
	for i := 0; i < len(p.later) && !p.broken; i++ {
		l := p.later[i]
		if l.from != p.number+1 {
			continue
		}
		p.later = append(p.later[:i:i], p.later[i+1:]...)
		if ref := onlyRef(l.text); ref != nil {
			p.repeatRounds(l.text, ref, l.to-l.from+1)
		} else {
			for n := l.from; n <= l.to && !p.broken; n++ {
				p.oneRound(l.text, l.text, n, n == l.to)
			}
		}
		i = -1
	}
}

// consecutive reports whether the numbers of a label follow one another.
func (p *partWork) consecutive(l *notation.Label) bool {
	for k := 1; k < len(l.Numbers); k++ {
		if l.Numbers[k].ToEnd || l.Numbers[k].From.For(p.size) != l.Numbers[k-1].To.For(p.size)+1 {
			return false
		}
	}
	return !l.Numbers[0].ToEnd
}

// plainLabel is a label without what stands in brackets.
func plainLabel(s string) string {
	if i := strings.IndexByte(s, '('); i > 0 {
		return strings.TrimSpace(s[:i])
	}
	return s
}

// onlyRef is the reference that a round consists of, nil when it is worked
// from its own words.
func onlyRef(r *notation.Round) *notation.Ref {
	for _, it := range r.Items {
		switch it := it.(type) {
		case *notation.Ref:
			return it
		case *notation.Note, *notation.Until, *notation.Marker, *notation.Counts:
		default:
			return nil
		}
	}
	return nil
}

// timesOf is how many rounds a reference without a range of its own makes.
func (p *partWork) timesOf(r *notation.Round, ref *notation.Ref) int {
	if until := untilIn(r); until != nil {
		if n, ok := p.untilRows(r, ref); ok {
			return n
		}
		return 0
	}
	n := len(p.referred(ref))
	if ref.Times.Set() {
		return n * ref.Times.For(p.size)
	}
	return n
}

func untilIn(r *notation.Round) *notation.Until {
	for _, it := range r.Items {
		if u, ok := it.(*notation.Until); ok {
			return u
		}
	}
	return nil
}

// untilRows is how many more rows it takes until a piece measures what the
// words say.
func (p *partWork) untilRows(r *notation.Round, ref *notation.Ref) (int, bool) {
	u := untilIn(r)
	done := 0
	for _, round := range p.part.Rounds {
		if round.Number > 0 && !round.Carried {
			done++
		}
	}
	switch {
	case u != nil && u.Rows.Set():
		return max(u.Rows.For(p.size)-done, 0), true
	case u == nil:
		p.add(p.fault(r.Span, "no-end", fmt.Sprintf("%s does not say when to stop", r.Label.Text),
			"Write, for example: until piece measures 38 cm, or give the last row's number."), true)
		return 0, false
	}
	length := u.Length[min(p.size, len(u.Length)-1)]
	k, into := stitch.Of(stitch.Single), stitch.Top
	if n := len(p.part.Rounds); n > 0 {
		k, into = mostOf(p.part.Rounds[n-1])
	}
	n := p.ruler.RowsIn(k, into, length) - done
	if n > maxRounds {
		p.add(p.fault(u.Span, "too-large", fmt.Sprintf("%s would take more than %d rows", r.Label.Text, maxRounds), "Check the length and the gauge."), true)
		return 0, false
	}
	return max(n, 0), true
}

// mostOf is the kind of stitch that most of a round is, and where it goes in.
func mostOf(r *fabric.Round) (stitch.Kind, stitch.Into) {
	n := map[stitch.Kind]int{}
	into := map[stitch.Kind]stitch.Into{}
	best := stitch.Of(stitch.Single)
	for i := range r.Stitches {
		st := &r.Stitches[i]
		if !st.Counts {
			continue
		}
		k := st.Counted()
		if n[k]++; n[k] == 1 && len(st.On) > 0 {
			into[k] = st.On[0].Into
		}
		if n[k] > n[best] {
			best = k
		}
	}
	return best, into[best]
}

// referred are the rounds that a reference names, in the order of working.
func (p *partWork) referred(ref *notation.Ref) []*notation.Round {
	var l []*notation.Round
	if ref.Last.Set() {
		n := min(ref.Last.For(p.size), len(p.latest))
		return append(l, p.latest[len(p.latest)-n:]...)
	}
	for _, rg := range ref.Rounds {
		for n := rg.From.For(p.size); n <= rg.To.For(p.size) && n-rg.From.For(p.size) < maxRounds; n++ {
			r := p.rounds[n]
			if r == nil {
				f := p.fault(rg.From.Span, "no-round", fmt.Sprintf("there is no round %d before this to repeat", n),
					"Name a round that has been worked already.")
				p.add(f, true)
				return nil
			}
			l = append(l, r)
		}
	}
	return l
}

// repeatRounds works n rounds from the words of others.
func (p *partWork) repeatRounds(r *notation.Round, ref *notation.Ref, n int) {
	of := p.referred(ref)
	if len(of) == 0 {
		if !p.broken {
			p.add(p.fault(ref.Span, "no-round", "there is no round before this to repeat", "Write the round out."), true)
		}
		return
	}
	if ref.Times.Set() && len(r.Label.Numbers) > 0 {
		if want := len(of) * ref.Times.For(p.size); want != n && n != len(of)*(ref.Times.For(p.size)) {
			p.add(p.fault(ref.Span, "round-number", fmt.Sprintf("%s is %s, but the words say %d", r.Label.Text, plural(n, "round"), want),
				"Let the numbers and the words agree."), false)
		}
	}
	if n > maxRounds {
		p.add(p.fault(ref.Span, "too-large", fmt.Sprintf("more than %d rounds", maxRounds), "Check the numbers."), true)
		return
	}
	for i := 0; i < n && !p.broken; i++ {
		p.oneRound(r, of[i%len(of)], p.number+1, i == n-1)
	}
}

// oneRound works one round from the words of text, labelled by label; the
// counts stated there are compared when last is set. It reports whether the
// part can go on.
func (p *partWork) oneRound(label, text *notation.Round, number int, last bool) bool {
	if len(p.part.Rounds) >= maxRounds {
		p.add(p.fault(label.Span, "too-large", fmt.Sprintf("the part has more than %d rounds", maxRounds), "Check the numbers."), true)
		return false
	}
	w := p.begin(label, text, number)
	h := w.exec(w.items)
	goesOn := false // the round is whole, but for what it leaves
	foundationOnly := h == nil && w.foundation != nil && !w.begun
	if foundationOnly {
		// The starting chain by itself.
		w.foundation.Label = "the starting chain"
		p.part.Rounds = append(p.part.Rounds, w.foundation)
		p.carry, p.turned = w.carry, false
		return true
	}
	if h == nil && len(w.r.Stitches) == 0 {
		p.carry = append(p.carry, w.carry...)
		if len(text.Label.Numbers) > 0 && !fastens(text.Items) {
			p.add(p.fault(label.Span, "empty", plainLabel(label.Label.Text)+" has no stitches", "Say what is worked."), true)
			return false
		}
		return true
	}
	if h == nil {
		w.halves()
		if n := w.leftover(); n > 0 && w.c.edge == 0 && w.c.below != nil && w.begun {
			if h = w.unfit; h == nil {
				h = w.leftUnused(n, lastSpan(w.items))
			}
			goesOn = true
		}
	}
	w.noticePassed()
	ok := len(w.roundFaults) == 0
	if h != nil {
		ok = false
		f := p.fault(h.at, h.code, h.message, h.help)
		f.Round = w.r.Label
		if !p.cascade && !h.known {
			p.faults = append(p.faults, f)
		}
		if !goesOn {
			p.broken = true
			p.faults = append(p.faults, w.roundFaults...)
			return false
		}
	}
	if !p.cascade {
		p.faults = append(p.faults, w.roundFaults...)
	}
	// A count after a range of rounds is that of the last, or there is one
	// for each.
	if each := p.countFor(label, number); each != nil {
		if !p.compare(w, []*notation.Stated{each}, h != nil || p.cascade) {
			ok = false
		}
	} else if last && !p.compare(w, label.Stated, h != nil || p.cascade) {
		ok = false
	}
	// After a fault, what follows is off as well, until a count agrees again.
	if !ok {
		p.cascade = true
	} else if last && len(label.Stated) > 0 {
		p.cascade = false
	}
	p.finish(w, text, number)
	return true
}

// hasMore reports whether the instructions make anything but slip stitches, so
// that slip stitches at the beginning only move it.
func hasMore(items []notation.Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if it.What.Kind.Base != stitch.Slip {
				return true
			}
		case *notation.Chain:
			return true
		case *notation.Group:
			if hasMore(it.Items) {
				return true
			}
		case *notation.Repeat:
			if hasMore(it.Items) {
				return true
			}
		}
	}
	return false
}

// countFor is the count of one round out of "(7, 8)" after Rnds 2-3; nil when
// the label's count is not of that sort.
func (p *partWork) countFor(label *notation.Round, number int) *notation.Stated {
	if len(label.Stated) != 1 || len(label.Label.Numbers) != 1 {
		return nil
	}
	s, r := label.Stated[0], label.Label.Numbers[0]
	from, to := r.From.For(p.size), r.To.For(p.size)
	if n := to - from + 1; n < 2 || len(s.Counts) != n || number < from || number > to {
		return nil
	}
	for i := range s.Counts {
		if s.Counts[i].Target.Text != "" {
			return nil
		}
	}
	return &notation.Stated{Span: s.Span, Counts: s.Counts[number-from : number-from+1]}
}

// fastens reports whether the instructions only end the yarn.
func fastens(items []notation.Item) bool {
	for _, it := range items {
		switch it.(type) {
		case *notation.FastenOff, *notation.MagicRing:
			return true
		}
	}
	return false
}

// namesStart reports whether a place in the words is the chain that begins the
// round below. "Each st" leaves it out then.
func namesStart(items []notation.Item) bool {
	for _, it := range items {
		var places []notation.Place
		switch it := it.(type) {
		case *notation.Stitches:
			places = it.Places
		case *notation.Group:
			places = it.Place
			if namesStart(it.Items) {
				return true
			}
		case *notation.Repeat:
			if namesStart(it.Items) || namesStart(it.Ending) {
				return true
			}
		}
		for i := range places {
			pl := &places[i]
			if pl.Pick != notation.Same && (pl.Target.Sort == notation.StartChain || pl.Of != nil && pl.Of.Target.Sort == notation.StartChain) {
				return true
			}
		}
	}
	return false
}

// leading is what a chain and the stitch after it at the beginning of a round
// are said to count as together, nil when nothing is said.
func leading(items []notation.Item) (c *notation.Counts, leg bool) {
	for i, it := range items {
		switch it.(type) {
		case *notation.Note, *notation.MagicRing, *notation.In, *notation.InLoops:
		case *notation.Chain:
			if i+2 >= len(items) {
				return nil, false
			}
			s, ok := items[i+1].(*notation.Stitches)
			c, said := items[i+2].(*notation.Counts)
			if !ok || !said || c.As.Shape == stitch.Plain || s.What.Kind.Base != c.As.Base || c.Not {
				return nil, false
			}
			over := s.What.Kind.Shape == stitch.Together && (len(s.Places) == 0 || s.Places[0].Over || s.Places[0].N.Set())
			return c, over && c.As.Legs == s.What.Kind.Legs+1
		default:
			return nil, false
		}
	}
	return nil, false
}

// onNamedRound lays out another round than the one below when everything goes
// into that: "working behind petals, BPsc around next dc of Rnd 1".
func (w *roundWork) onNamedRound() {
	n, ok := namedRound(w.items, 0)
	if !ok || n == 0 || w.c.below == nil || w.c.below.Number == n {
		return
	}
	for i, r := range w.part.Rounds {
		if r.Number == n && !r.Carried {
			w.c = layCourse(r, i, w.r.Reversed != r.Reversed)
		}
	}
}

// namedRound is the number of the one round that all places in the
// instructions name; ok is false when some name none or another.
func namedRound(items []notation.Item, n int) (int, bool) {
	for _, it := range items {
		var places []notation.Place
		switch it := it.(type) {
		case *notation.Stitches:
			if places = it.Places; len(places) == 0 {
				return 0, false
			}
		case *notation.Group:
			places = it.Place
		case *notation.Repeat:
			m, ok := namedRound(it.Items, n)
			if !ok {
				return 0, false
			}
			n = m
		case *notation.Skip:
			return 0, false
		}
		for i := range places {
			if m := -places[i].Below; m <= 0 || n != 0 && m != n {
				return 0, false
			} else {
				n = m
			}
		}
	}
	return n, true
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
	r := &fabric.Round{Label: fmt.Sprintf("%s %d", word, number), Number: number, Row: row, Line: text.Line}
	if number == 0 {
		r.Label = "the beginning"
		if text.Label.Text != "" {
			r.Label = plainLabel(text.Label.Text)
		}
	}
	w := &roundWork{partWork: p, r: r, items: text.Items, turnedBefore: p.turned}
	if len(p.carry) > 0 {
		w.items = append(append([]notation.Item(nil), p.carry...), text.Items...)
		// A round that begins with a chain of its own needs none carried
		// over from the end of the one before.
		if begins(text.Items) && len(p.carry) == 1 {
			if _, ok := p.carry[0].(*notation.Chain); ok {
				w.items = text.Items
			}
		}
		p.carry = nil
	}
	n := len(p.part.Rounds)
	if n == 0 {
		w.c = &course{}
		if p.edge > 0 {
			w.c.edge, w.c.edgePart = p.edge, p.edgePart
			r.Edge = p.edge
			w.c.below = &fabric.Round{Label: "the row ends", Edge: p.edge}
		}
	} else {
		below := p.part.Rounds[n-1]
		turned := p.turned
		if row {
			turned = below.Row && below.Number > 0 || p.turned
		}
		r.Reversed = below.Reversed != turned
		r.Wrong = below.Wrong != turned
		r.Colour = below.Colour
		back := turned
		if below.Number == 0 && !below.Ring && !below.Carried {
			back = true // the hook is at the end of the starting chain
			r.Reversed, r.Wrong = false, false
		}
		w.c = layCourse(below, n-1, back)
		w.c.ring = below.Ring
	}
	switch text.Label.Side {
	case 1:
		r.Wrong = false
	case 2:
		r.Wrong = true
	}
	w.goesIntoRing = intoRing(text.Items)
	w.namesStart = namesStart(w.items)
	w.leads, w.leadsLeg = leading(w.items)
	w.onNamedRound()
	w.moves = hasMore(w.items)
	if text.Label.Loop.Set {
		w.loop = text.Label.Loop.Into
	}
	if !p.reading.noSplit {
		w.split = findSplit(w.items)
		p.mayNotSplit = p.mayNotSplit || w.split != nil
	}
	return w
}

// begins reports whether the instructions begin with a chain.
func begins(items []notation.Item) bool {
	for _, it := range items {
		switch it.(type) {
		case *notation.Chain:
			return true
		case *notation.Note, *notation.Turn, *notation.InLoops:
		default:
			return false
		}
	}
	return false
}

// intoRing reports whether the instructions go into the ring.
func intoRing(items []notation.Item) bool {
	for _, it := range items {
		var places []notation.Place
		switch it := it.(type) {
		case *notation.Stitches:
			places = it.Places
		case *notation.Group:
			if intoRing(it.Items) {
				return true
			}
			places = it.Place
		case *notation.Repeat:
			if intoRing(it.Items) {
				return true
			}
		case *notation.In:
			return true
		}
		for _, pl := range places {
			if pl.Target.Sort == notation.Ring {
				return true
			}
		}
	}
	return false
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
	p.part.Rounds = append(p.part.Rounds, r)
	if p.stitches += len(r.Stitches); p.stitches > maxFabric {
		p.add(p.fault(text.Span, "too-large", fmt.Sprintf("the piece has more than %d stitches", maxFabric), "Check the numbers."), true)
	}
	p.number = number
	p.turned = w.turned
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

// noticePassed reports places that were passed over on the way to a kind of
// stitch.
func (w *roundWork) noticePassed() {
	if len(w.passed) == 0 {
		return
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
