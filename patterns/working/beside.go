package working

import (
	"fmt"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// besideOthers is the part that this one goes on from when it is a piece of rows beside
// the one before, on the same round: a second ear flap. It is -1 for any other.
func (p *partWork) besideOthers() int {
	if !p.source.Rows || p.index == 0 {
		return -1
	}
	before := p.f.Parts[p.index-1]
	if !onSome(before) {
		return -1
	}
	var first []notation.Item
	for _, r := range p.texts[p.index].Rounds {
		if first = append(first, r.Items...); makes(r.Items) {
			break
		}
	}
	for _, it := range first {
		switch it := it.(type) {
		case *notation.Skip:
			return before.From
		case *notation.Join:
			if it.Yarn != "" {
				return before.From
			}
		case *notation.Note, *notation.Colour, *notation.FastenOff, *notation.Turn:
		default:
			return -1
		}
	}
	return -1
}

// onSome reports whether a part is rows on some of the stitches of a round.
func onSome(part *fabric.Part) bool {
	return part.From >= 0 && len(part.Rounds) > 1 && part.Rounds[0].Carried && !part.Rounds[0].Row && part.Rounds[1].Row &&
		len(takenBy(part)) < part.Rounds[0].Count()
}

// takenBy are the stitches of the round that a part goes on from which its first row
// goes into.
func takenBy(part *fabric.Part) map[int]bool {
	taken := map[int]bool{}
	for i := range part.Rounds[1].Stitches {
		for _, pl := range part.Rounds[1].Stitches[i].On {
			if pl.At.Round == 0 && pl.At.Stitch >= 0 && part.Rounds[1].Stitches[i].Role != fabric.Travel {
				taken[pl.At.Stitch] = true
			}
		}
	}
	return taken
}

// besidePieces lets the first row of a piece on some of the stitches of a round begin
// behind the piece that its words name, or behind the one before where it would begin in
// what others stand on; what others stand on is no place to go into.
func (w *roundWork) besidePieces() *halt {
	if !w.r.Row || len(w.part.Rounds) != 1 || !w.part.Rounds[0].Carried || w.part.Rounds[0].Row || w.part.From < 0 || len(w.c.spots) == 0 {
		return nil
	}
	skip, joins := placing(w.items)
	if !joins {
		return nil
	}
	behind := -1
	if skip != nil && skip.After != "" {
		if behind = w.pieceNamed(skip.After); behind < 0 || !w.beside(behind) {
			return stopAt(skip.Span, "no-piece", fmt.Sprintf("there is no %s on this round to count from", skip.After),
				"Name the piece as its part is named, or count from the join.")
		}
	}
	taken, last := map[int]bool{}, -1
	for k := 0; k < w.index; k++ {
		if w.beside(k) {
			for st := range takenBy(w.f.Parts[k]) {
				taken[st] = true
			}
			last = k
		}
	}
	if last < 0 {
		return nil
	}
	is := func(i int) bool { return w.c.spots[i].counts && taken[w.c.spots[i].ref.Stitch] }
	first := 0
	if skip != nil {
		first = w.c.nthFrom(max(skip.N.For(w.size), 1))
	}
	if behind < 0 && first >= 0 && (is(first) || onFromBefore(skip)) {
		behind = last
	}
	if behind >= 0 {
		own := takenBy(w.f.Parts[behind])
		for i := range w.c.spots {
			if next := w.c.after(i); own[w.c.spots[i].ref.Stitch] && !own[w.c.spots[next].ref.Stitch] {
				w.c.begin(next)
				break
			}
		}
		first = 0
	}
	for i := max(first, 0); i < len(w.c.spots); i++ {
		if is(i) {
			w.c.cut(i)
			break
		}
	}
	return nil
}

// beside reports whether part k is rows on some of the stitches of the round that this
// part goes on from as well.
func (p *partWork) beside(k int) bool {
	return k < len(p.f.Parts) && p.f.Parts[k].From == p.part.From && onSome(p.f.Parts[k])
}

// placing is what the instructions pass over before a yarn is joined, nil for nothing,
// and whether one is.
func placing(items []notation.Item) (skip *notation.Skip, joins bool) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Skip:
			if skip == nil && !joins {
				skip = it
			}
		case *notation.Join:
			joins = joins || it.Yarn != ""
		case *notation.Stitches, *notation.Group, *notation.Repeat:
			return skip, joins
		}
	}
	return skip, joins
}

// onFromBefore reports whether stitches are passed over that are "next" of what was worked
// before: counted from the piece before, not from the join or the first of the round.
func onFromBefore(s *notation.Skip) bool {
	return s != nil && !s.FromJoin && s.Place != nil && s.Place.Pick == notation.Next && s.Place.Nth == 0 && !s.Place.Bare
}

// nthFrom is the spot behind the first n that count, -1 where there are no more.
func (c *course) nthFrom(n int) int {
	for i := range c.spots {
		if !c.spots[i].counts {
			continue
		}
		if n == 0 {
			return i
		}
		n--
	}
	return -1
}
