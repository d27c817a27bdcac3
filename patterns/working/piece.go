package working

import (
	"fmt"
	"slices"
	"strings"

	"whorl/patterns/notation"
)

// pieceRef is the reference to the rounds of another piece among the instructions, nil
// for none: "join yarn in next st and work as for first flap".
func pieceRef(items []notation.Item) *notation.Ref {
	for _, it := range items {
		if r, ok := it.(*notation.Ref); ok && r.Piece != "" {
			return r
		}
	}
	return nil
}

// asPiece works the rounds of another piece, all of them or those named.
func (p *partWork) asPiece(r *notation.Round, ref *notation.Ref) {
	k := p.pieceNamed(ref.Piece)
	if k < 0 {
		p.add(p.fault(ref.Span, "vague", fmt.Sprintf("there is no piece before this that is called %q", ref.Piece),
			"Name it as its part is named, or name the rounds: Rep Rows 2-10."), true)
		return
	}
	for i, it := range r.Items {
		if it == notation.Item(ref) {
			if h := worksMore(r.Items[i+1:]); h != nil {
				p.add(p.fault(h.Where(), "vague", fmt.Sprintf("cannot tell which of the rounds of %s this is worked in", p.p.Parts[k].Called()),
					"Write that round out, with its number."), true)
				return
			}
			break
		}
		p.carry = append(p.carry, it) // where the first round begins
	}
	placed := joinsYarn(p.carry) || skips(p.carry)
	ringed := len(p.part.Rounds) > 0 || makes(p.carry) // this piece has told the ring for itself
	named, moved := ref.Rounds, 0
	if own := r.Label.Numbers; len(named) == 0 {
		named = own
	} else if len(own) > 0 {
		// "Rnds 5-7: Work as for Rnds 2-4 of Coaster"
		from, to := own[0].From.For(p.size), own[len(own)-1].To.For(p.size)
		if moved = from - named[0].From.For(p.size); !named[len(named)-1].ToEnd && to-named[len(named)-1].To.For(p.size) != moved {
			p.add(p.fault(ref.Span, "vague", fmt.Sprintf("these are not as many rounds as those of %s", p.p.Parts[k].Called()),
				"Name as many rounds of it as these are: Rnds 5-7: Work as for Rnds 2-4 of it."), true)
			return
		}
	}
	p.calling = r.Line
	defer func() { p.calling = 0 }()
	var begun []*notation.Round // without a label, before the first that has one
	worked, toEnd := false, len(named) > 0 && named[len(named)-1].ToEnd
	for _, round := range p.texts[k].Rounds {
		if p.broken {
			return
		}
		if !makes(round.Items) || len(round.Label.Numbers) == 0 && onlyPlaces(round.Items) {
			continue
		}
		if len(round.Label.Numbers) == 0 && !worked && len(named) > 0 {
			begun = append(begun, round)
			continue
		}
		if !among(round, named, p.size) && !(worked && toEnd && len(round.Label.Numbers) == 0) {
			continue
		}
		for _, b := range begun {
			if !worked && !placed && !ringed && among(round, []notation.Range{{From: notation.One(ref.Span), To: notation.One(ref.Span)}}, p.size) {
				p.rangeOf(b) // the ring that its first round goes into
			}
		}
		again := *round
		if placed && !worked {
			again.Items = withoutPlaces(round.Items)
		}
		worked = true
		if moved != 0 {
			again.Label.Numbers = movedOn(round.Label.Numbers, moved)
		}
		p.rangeOf(&again)
		p.lasts[r] = p.lasts[&again]
	}
	if !worked {
		p.add(p.fault(ref.Span, "no-round", fmt.Sprintf("%s has no such rows", p.p.Parts[k].Called()), "Name rows that it has."), true)
	}
}

// among reports whether a round is one of those named, by its numbers; any is where none
// are named.
func among(r *notation.Round, named []notation.Range, size int) bool {
	if len(named) == 0 {
		return true
	}
	for _, l := range r.Label.Numbers {
		for _, n := range named {
			if l.From.For(size) >= n.From.For(size) && (n.ToEnd || l.From.For(size) <= n.To.For(size)) {
				return true
			}
		}
	}
	return false
}

// worksMore is the first of the instructions that makes stitches or says how, nil where none does.
func worksMore(items []notation.Item) notation.Item {
	for _, it := range items {
		switch it.(type) {
		case *notation.Stitches, *notation.Group, *notation.Repeat, *notation.Chain, *notation.Skip, *notation.InLoops:
			return it
		}
	}
	return nil
}

// movedOn are the numbers of rounds that are worked again so many rounds later in another piece.
func movedOn(l []notation.Range, by int) []notation.Range {
	later := func(n notation.Num) notation.Num {
		n.Values = slices.Clone(n.Values)
		for i := range n.Values {
			n.Values[i] += by
		}
		return n
	}
	moved := slices.Clone(l)
	for i := range moved {
		moved[i].From, moved[i].To = later(moved[i].From), later(moved[i].To)
	}
	return moved
}

// skips reports whether instructions pass over stitches.
func skips(items []notation.Item) bool {
	return slices.ContainsFunc(items, func(it notation.Item) bool { _, ok := it.(*notation.Skip); return ok })
}

// withoutPlaces leaves out where a piece of its own begins.
func withoutPlaces(items []notation.Item) []notation.Item {
	for i, it := range items {
		switch it := it.(type) {
		case *notation.Skip, *notation.Note:
		case *notation.Join:
			if it.Yarn == "" {
				return items
			}
			return items[i+1:]
		default:
			return items
		}
	}
	return items
}

// pieceNamed is the part before this one that words such as "first ear flap" name, -1
// for none.
func (p *partWork) pieceNamed(words string) int {
	for k := p.index - 1; k >= 0; k-- {
		called := p.p.Parts[k].Called()
		_, behind, _ := strings.Cut(called, ", ")
		for _, name := range []string{called, behind, p.p.Parts[k].Piece} {
			if name != "" && samePiece(name, words) {
				return k
			}
		}
	}
	if lead, _, _ := strings.Cut(words, " "); lead == "previous" || lead == "other" {
		return p.index - 1
	}
	return -1
}

// samePiece reports whether two names are of one piece: "First Ear Flap", "first flap",
// "1st earflap".
func samePiece(a, b string) bool {
	plain := func(s string) (lead, noun string) {
		l := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == '-' })
		if len(l) > 0 && l[0] == "the" {
			l = l[1:]
		}
		if len(l) == 0 {
			return "", ""
		}
		if lead = l[0]; len(l) == 1 {
			return "", lead
		}
		switch lead {
		case "1st":
			lead = "first"
		case "2nd":
			lead = "second"
		}
		return lead, strings.TrimSuffix(strings.Join(l[1:], ""), "s")
	}
	la, na := plain(a)
	lb, nb := plain(b)
	return la == lb && na != "" && nb != "" && (strings.HasSuffix(na, nb) || strings.HasSuffix(nb, na))
}
