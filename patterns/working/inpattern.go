package working

import (
	"fmt"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// inPattern is the rounds that "continue in pattern" works on in turn where none of those
// before shapes the piece: the latest ones where they have come twice already, the second row
// where only the first on the starting chain came before it. It is nil where the rounds before
// do not show which they are.
func (p *partWork) inPattern(ref *notation.Ref) []*notation.Round {
	n := len(p.latest)
	if ref.Step.Set() || ref.Every || p.shaping() {
		return nil
	}
	for k := 1; 2*k <= n; k++ {
		twice := true
		for i := n - k; i < n; i++ {
			twice = twice && sameWords(p.latest[i], p.latest[i-k])
		}
		if twice && (k > 1 || !p.striped()) {
			return p.latest[n-k:]
		}
	}
	if base := len(p.part.Rounds) - n; n == 2 && base == 1 && p.part.Rounds[0].Number == 0 && !p.part.Rounds[0].Ring && p.part.Rounds[2].Row {
		return p.latest[1:]
	}
	return nil
}

// patternRows are the rows that the words say form the pattern, in the order in which they come
// next; nil where nothing is said of them, or the last row is none of them.
func (p *partWork) patternRows(ref *notation.Ref) []*notation.Round {
	if ref.Step.Set() || ref.Every || len(ref.Shown) > 0 || p.broken {
		return nil
	}
	n := len(p.latest)
	for i := n - 1; i >= 0; i-- {
		forms := formsIn(p.latest[i].Items)
		if forms == nil {
			continue
		}
		var l []*notation.Round
		if k := forms.Last.For(p.size); forms.Last.Set() && k <= i+1 {
			l = p.latest[i+1-k : i+1]
		} else if !forms.Last.Set() {
			l = p.referred(forms)
		}
		for k, r := range l {
			if r == p.latest[n-1] {
				return append(append([]*notation.Round{}, l[k+1:]...), l[:k+1]...)
			}
		}
		return nil
	}
	return nil
}

// formsIn is what the words of a round say forms the pattern, nil for nothing.
func formsIn(items []notation.Item) *notation.Ref {
	for _, it := range items {
		if n, ok := it.(*notation.Note); ok && n.Forms != nil {
			return n.Forms
		}
	}
	return nil
}

// sameWords reports whether two rounds are worked from the same words, but for their yarns.
func sameWords(a, b *notation.Round) bool {
	return a == b || workedWords(a) == workedWords(b)
}

// workedWords are the words of a round without what is said of its yarn and the sides.
func workedWords(r *notation.Round) string {
	var l []notation.Item
	for _, it := range r.Items {
		switch it := it.(type) {
		case *notation.Colour, *notation.Note, *notation.Until, *notation.Marker, *notation.FastenOff, *notation.Turn:
		case *notation.Join:
			if it.Yarn == "" {
				l = append(l, it)
			}
		default:
			l = append(l, it)
		}
	}
	return notation.Style{Size: -1}.Items(l)
}

// striped reports whether the latest rounds, which are alike, are no more than those before
// them that were otherwise, on as many stitches: 2 rows of one stitch and 2 of another.
func (p *partWork) striped() bool {
	last, before := 0, 0
	for i := len(p.part.Rounds) - 1; i >= 0 && p.part.Rounds[i].Number > 0 && p.part.Rounds[i].Count() == p.part.Rounds[len(p.part.Rounds)-1].Count(); i-- {
		same := madeOf(p.part.Rounds[i]) == madeOf(p.part.Rounds[len(p.part.Rounds)-1])
		switch {
		case same && before == 0:
			last++
		case same:
			return before >= last
		case before > 0 && madeOf(p.part.Rounds[i]) != madeOf(p.part.Rounds[i+1]):
			return before >= last
		default:
			before++
		}
	}
	return before >= last
}

// madeOf is the stitches of a round, of which kind and how they go in, in their order.
func madeOf(r *fabric.Round) string {
	var s strings.Builder
	was := ""
	for i := range r.Stitches {
		if st := &r.Stitches[i]; st.Counts {
			if one := fmt.Sprint(st.Counted(), into(st)); one != was {
				s.WriteString(one)
				was = one
			}
		}
	}
	return s.String()
}

// taken reports whether a round that is gone on with takes turns with another: the last but
// one was worked from its words, and the last from others.
func (p *partWork) taken(r *notation.Round) bool {
	n := len(p.latest)
	if n < 2 || sameWords(p.latest[n-1], r) {
		return false
	}
	for _, of := range p.latest[:n-1] {
		if sameWords(of, r) {
			return true
		}
	}
	return false
}

// shaping reports whether the two latest rounds have other numbers of stitches, so that
// rounds that are left out would be missed by what follows.
func (p *partWork) shaping() bool {
	n := len(p.part.Rounds)
	return n < 2 || p.part.Rounds[n-1].Number > 1 && p.part.Rounds[n-1].Count() != p.part.Rounds[n-2].Count()
}

// openPattern refuses rounds that go on in a pattern that is not shown. What follows them is
// worked, where the piece is not being shaped and its words do not hang on their number.
func (p *partWork) openPattern(r *notation.Round, ref *notation.Ref) {
	if ref.Even {
		p.add(p.notStraight(ref), true)
		return
	}
	u := untilIn(r)
	shaping := p.shaping()
	if u != nil && u.Open && !shaping {
		p.openEnded = true // refused where the length is left open
		return
	}
	p.openEnded = p.openEnded || !shaping
	p.add(p.vagueOnward(ref), shaping)
}
