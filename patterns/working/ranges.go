package working

import (
	"fmt"
	"strings"

	"whorl/patterns/notation"
)

// rangeOf works a labelled line: once, or for each number of its range.
func (p *partWork) rangeOf(r *notation.Round) {
	if p.called = r.Line; p.calling > 0 {
		p.called = p.calling
	}
	l := &r.Label
	if len(l.Only) > 0 {
		mine := false
		for _, s := range l.Only {
			mine = mine || s == p.p.Sizes[p.size]
		}
		if !mine {
			for _, rg := range l.Numbers {
				if l.Series != "" {
					p.seriesOthers[l.Series] = max(p.seriesOthers[l.Series], rg.To.For(p.size))
				} else {
					p.others = max(p.others, rg.To.For(p.size))
				}
			}
			return
		}
	}
	if r.Broken {
		p.broken = true
		return
	}
	if l.SkipTo.Set() {
		p.skipTo = l.SkipTo.For(p.size)
		return
	}
	if p.skipToPart != "" {
		return // not for this size
	}
	if p.byLength(r) {
		return
	}
	defer p.worksForOther(r)
	if l.SkipToPart != "" {
		p.skipToPart, p.skippedAt = l.SkipToPart, r.Span
		return
	}
	if p.skipTo > 0 && len(l.Numbers) > 0 {
		if l.Numbers[0].From.For(p.size) < p.skipTo {
			return // not for this size
		}
		p.number, p.skipTo = p.skipTo-1, 0
	}
	if ref := pieceRef(r.Items); ref != nil {
		p.asPiece(r, ref)
		return
	}
	if len(l.Numbers) == 0 {
		n := 1
		if l.Next.Set() {
			n = l.Next.For(p.size)
		}
		if ref := onlyRef(r); ref != nil {
			if l.Next.Set() && untilIn(r) == nil && !ref.Times.Set() && (n > 1 || ref.Even) {
				p.repeatRounds(r, ref, n) // "Next 6 rows: Rep Row 2."
				return
			}
			p.repeatRounds(r, ref, p.timesOf(r, ref))
			return
		}
		if p.part.From >= 0 && len(p.latest) == 0 && !l.Next.Set() && onlyPlaces(r.Items) {
			p.carry = append(p.carry, r.Items...) // where the first round begins
			return
		}
		if untilIn(r) != nil && len(p.latest) > 0 {
			p.goOnUntil(r)
			return
		}
		if p.coversLoop(r) {
			p.carry = append(p.carry, r.Items...)
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
		shift := p.seriesFrom(l)
		first, last := l.Numbers[0].From, l.Numbers[len(l.Numbers)-1].To
		if p.numberFits(r, first.Span, first.For(p.size)+shift, false) {
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
	shift := p.seriesFrom(l)
	for k, rg := range l.Numbers {
		from, to := rg.From.For(p.size)+shift, rg.To.For(p.size)+shift
		if from == shift && len(l.Numbers) == 1 && len(rg.From.Values) > 1 {
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
		if from == to && len(l.Numbers) == 1 && untilIn(r) != nil {
			if ref != nil {
				p.repeatRounds(r, ref, p.timesOf(r, ref)) // "Row 3: Rep Row 2 until …"
			} else {
				p.goOnUntil(r)
			}
			return
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

// worksForOther holds the rounds that are worked for another piece against those that there
// are: "Work Rnds 1-5 of the next square".
func (p *partWork) worksForOther(r *notation.Round) {
	for _, it := range r.Items {
		if n, ok := it.(*notation.Note); ok && n.Names != nil && !p.broken {
			p.referred(n.Names)
		}
	}
}

// goOnUntil works a round as often as its own words say: "Rnd 3: Sc in each st around
// until piece measures 5 cm".
func (p *partWork) goOnUntil(r *notation.Round) {
	if u := untilIn(r); u.Kept && p.taken(r) {
		p.add(p.fault(u.Span, "vague", "the words do not say which rounds are gone on with", "Name them: Rep Rows 3 and 4 until there are 24 rows."), true)
		return
	}
	n, ok := p.untilRows(r, nil)
	if !ok {
		return
	}
	n = max(n, 1)
	for i := 0; i < n && !p.broken; i++ {
		p.oneRound(r, r, p.number+1, i == n-1)
	}
}

// onlyPlaces reports whether instructions only say where the work begins: "With RS
// facing, skip next 5 sts and join yarn in next st", "Join yarn at underarm, ch 1."
func onlyPlaces(items []notation.Item) bool {
	joins := false
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Join:
			joins = true
		case *notation.Chain:
			if !joins || it.N.For(0) > 4 {
				return false
			}
		case *notation.Skip, *notation.Note, *notation.Colour, *notation.Turn, *notation.Marker, *notation.FastenOff:
		default:
			return false
		}
	}
	return joins
}

// headed reports whether a heading stands behind the words of a round.
func headed(r *notation.Round, heading string) bool {
	for _, it := range r.Items {
		if n, ok := it.(*notation.Note); ok {
			// The sides; SIDES (all sizes)
			name := strings.ToLower(strings.Trim(plainLabel(n.Text), " :."))
			if strings.TrimPrefix(name, "the ") == strings.ToLower(heading) || strings.EqualFold(heading, "next") && n.Heading {
				return true
			}
		}
	}
	return false
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
		case *notation.Until:
		default:
			if !leadsIn(it) {
				return nil
			}
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
	if ref.Onward && ref.Times.Set() {
		n := len(p.referred(ref))
		if n == 0 && !p.broken {
			p.openPattern(r, ref)
		}
		return n * ref.Times.For(p.size)
	}
	if ref.Even && r.Label.Next.Set() {
		return r.Label.Next.For(p.size)
	}
	if ref.Onward {
		p.add(p.fault(ref.Span, "no-end", "the words do not say until when to go on", "Say it, for example: until there are 72 sts, or name the rounds: Rnds 5-8."), true)
		return 0
	}
	n := len(p.referred(ref))
	if ref.Kept && !ref.Times.Set() && !p.broken {
		p.add(p.fault(ref.Span, "no-end", "the words do not say until when to go on", "Say it, for example: until there are 24 rows, or name the rows: Rows 5-24."), true)
		return 0
	}
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

// referred are the rounds that a reference names, in the order of working.
func (p *partWork) referred(ref *notation.Ref) []*notation.Round {
	var l []*notation.Round
	if ref.Onward {
		l, _ = p.onwardOf(ref)
		return l
	}
	if ref.Last.Set() {
		n := min(ref.Last.For(p.size), len(p.latest))
		return append(l, p.latest[len(p.latest)-n:]...)
	}
	if ref.Called != "" {
		for k := len(p.latest) - 1; k >= 0; k-- {
			if strings.EqualFold(plainLabel(p.latest[k].Label.Text), ref.Called) {
				return append(l, p.latest[k])
			}
		}
		p.add(p.fault(ref.Span, "no-round", fmt.Sprintf("there is no %q before this to repeat", ref.Called), "Name a round that has been worked already."), true)
		return nil
	}
	for _, rg := range ref.Rounds {
		shift := 0
		if ref.Series != "" && strings.EqualFold(ref.Series, p.series) {
			shift = p.seriesBase
		}
		if to := rg.To.For(p.size) + p.seriesBase; ref.Series == "" && p.series != "" && to <= p.number && p.rounds[to] != nil {
			shift = p.seriesBase // "Ribbing Rnd 2: Rep Rnd 1": where the numbers begin anew they are its own
		}
		for n := rg.From.For(p.size); n <= rg.To.For(p.size) && n-rg.From.For(p.size) < maxRounds; n++ {
			r := p.rounds[n+shift]
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
	if ref.Onward {
		p.goOnward(r, ref, min(n, maxRounds))
		return
	}
	if p.broken {
		return
	}
	if p.extraFrom == 0 && unnumbered(r, len(p.p.Sizes)) {
		p.extraFrom = p.number + 1
	}
	of := p.referred(ref)
	if len(of) == 0 {
		if !p.broken {
			p.add(p.fault(ref.Span, "no-round", "there is no round before this to repeat", "Write the round out."), true)
		}
		return
	}
	if ref.Times.Set() && len(r.Label.Numbers) > 0 {
		if want := len(of) * ref.Times.For(p.size); want != n && n != len(of)*(ref.Times.For(p.size)) {
			word, one := "Rnd", "round"
			if r.Label.Row {
				word, one = "Row", "row"
			}
			p.add(p.fault(ref.Span, "round-number", fmt.Sprintf("%s is %s, but the words say %d", r.Label.Text, plural(n, one), want),
				fmt.Sprintf("%s worked %s would end with %s %d. Let the numbers and the words agree.", plural(len(of), one), times(want/len(of)), word, p.number+want)), false)
			p.cascade = true
		}
	}
	if n > maxRounds {
		p.add(p.fault(ref.Span, "too-large", fmt.Sprintf("more than %d rounds", maxRounds), "Check the numbers."), true)
		return
	}
	n, ok := p.ended(r, ref, of, n)
	if !ok || p.besides(r, ref) {
		return
	}
	if of, ok = p.changed(r, inLoopOf(r, ref), led(r, of)); !ok {
		return
	}
	runs := p.stepping(ref.Change, of)
	defer func(before int) { p.borneOut(r, ref.Change, len(p.part.Rounds)-before) }(len(p.part.Rounds))
	for i := 0; i < n && !p.broken; i++ {
		text := of[i%len(of)]
		if runs != nil {
			if text = p.grown(text, runs[i%len(of)], i/len(of)+1); text == nil {
				p.add(p.unchanged(r, ref.Change, fmt.Sprintf("there are not so many stitches between them that %s could be worked", plural(n, "round"))), true)
				return
			}
		}
		if ref.Along == nil {
			p.oneRound(r, text, p.number+1, i == n-1)
		} else if !p.alongRound(r, text, ref.Along, (i/len(of)+1)*len(of), i == n-1) {
			return
		}
	}
}

// ended is how many rounds a repeat of rounds takes that ends "with Row 3" or
// "with a WS row": n or, when a length says how many, the few more that it
// takes to come to that round.
func (p *partWork) ended(r *notation.Round, ref *notation.Ref, of []*notation.Round, n int) (int, bool) {
	until, end := untilIn(r), ref.End
	if until != nil && until.End.Set {
		end = until.End
	}
	if !end.Set {
		return n, true
	}
	ends := func(n int) bool {
		if n < 1 {
			return false
		}
		if end.Round.Set() {
			return of[(n-1)%len(of)] == p.rounds[end.Round.For(p.size)]
		}
		// Every row is turned, so the sides take turns.
		below := p.part.Rounds[len(p.part.Rounds)-1]
		return (below.Wrong != (n%2 == 1)) == (end.Side == 2)
	}
	if end.Within && until == nil {
		for m := n; m > n-len(of); m-- {
			if ends(m) {
				return m, true
			}
		}
	}
	most := n
	if until != nil && (len(until.Length) > 0 || until.Open || until.Stitches.Set() && p.keepsCount(of, n)) {
		most = n + 2*len(of)
	}
	for m := n; m <= most; m++ {
		if ends(m) {
			return m, true
		}
	}
	if most == n && !end.Round.Set() && len(p.part.Rounds) > 0 && !p.part.Rounds[len(p.part.Rounds)-1].Row {
		return n, true // rounds have no sides that take turns
	}
	p.add(p.fault(end.Span, "round-number", fmt.Sprintf("a repeat of %s does not end with the round named", plural(n, "round")),
		"Let the number of rounds and the words agree."), false)
	return n, true
}
