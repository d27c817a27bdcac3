package working

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// backTo is how the second side of a divided piece begins: "With RS facing, miss next 12 sts, rejoin yarn to
// next st", "rejoin yarn to next unworked st of Row 20". What is said of places there is of the row that was
// divided, and not of the side that has been worked and cut.
type backTo struct {
	skips  int               // before the yarn is joined
	row    int               // the number of the row divided, where it is said; 0 where not
	place  notation.Span     // of the words
	wrong  int               // 1 with the right side facing, 2 with the wrong side, 0 where not said
	said   bool              // the stitches are called unworked
	joined *notation.Join    // the yarn
	passed []*notation.Skip  // what is passed over
	places []*notation.Place // that are to be read as those of the row divided
}

// facing are the words for the side that faces the maker.
var facing = regexp.MustCompile(`(?i)\b(rs|right side|ws|wrong side)\b.*\bfacing\b|\bfacing\b`)

// goesBack reads how the second side of a divided piece begins, nil where instructions begin otherwise.
func (p *partWork) goesBack(items []notation.Item) *backTo {
	b := &backTo{}
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Note:
			if m := facing.FindStringSubmatch(it.Text); m != nil && m[1] != "" {
				b.wrong = 1
				if strings.HasPrefix(strings.ToLower(m[1]), "w") {
					b.wrong = 2
				}
			}
			continue
		case *notation.FastenOff, *notation.Colour:
			continue
		case *notation.Skip:
			if it.And != nil || it.Behind || it.Target.Sort != notation.AnyStitch && it.Target.Sort != notation.OfKind {
				return nil
			}
			if pl := it.Place; pl != nil {
				if pl.Pick != notation.Next && pl.Pick != notation.Skipped || pl.Of != nil || !b.of(pl) {
					return nil
				}
			}
			if len(b.passed) == 0 {
				b.place = it.Span
			}
			n := 1
			if it.N.Set() {
				n = it.N.For(p.size)
			}
			b.skips += n
			b.passed = append(b.passed, it)
			continue
		case *notation.Join:
			pl := it.Place
			if it.Yarn == "" || pl == nil || pl.Of != nil || pl.Target.Sort != notation.AnyStitch && pl.Target.Sort != notation.OfKind ||
				pl.Pick != notation.Skipped && pl.Pick != notation.Next || pl.N.Set() && pl.N.For(p.size) != 1 || !b.of(pl) {
				return nil
			}
			if b.joined = it; len(b.passed) == 0 {
				b.place = pl.Span
			}
			if pl.Nth > 1 {
				b.skips += pl.Nth - 1
			}
			return b
		}
		return nil
	}
	return nil
}

// of takes in which row a place is of. It reports whether that agrees with what was said before.
func (b *backTo) of(pl *notation.Place) bool {
	if b.said = b.said || pl.Pick == notation.Skipped; pl.Below > 0 || pl.Below < 0 && b.row > 0 && b.row != -pl.Below {
		return false
	}
	if pl.Below < 0 {
		b.row = -pl.Below
	}
	b.places = append(b.places, pl)
	return true
}

// sideOf is the row that was divided, and what of it the first side has left, for the second.
type sideOf struct {
	row   int // its index
	first *fabric.Round
	c     *course
}

// divided finds the row that the second side goes back to: its end has been left unworked by the first. Nil
// where there is none, so that the words are of the row below.
func (p *partWork) divided(b *backTo) (*sideOf, *halt) {
	rows := p.part.Rounds
	n := len(rows)
	if b == nil || n < 3 || !rows[n-1].Row || !rows[n-1].Cut {
		return nil, nil
	}
	used := usedBy(rows)
	var found []*sideOf
	for at := n - 2; at > 0 && rows[at].Row; at-- {
		if rows[at].Number == 0 || rows[at].Count() == 0 || b.row > 0 && rows[at].Number != b.row {
			continue
		}
		first := firstOn(rows, at)
		if first == nil {
			continue
		}
		c := layCourse(p.above(rows[at]), at, first.Reversed != rows[at].Reversed)
		from := len(c.spots)
		for from > 0 && !used[c.spots[from-1].ref] {
			from--
		}
		left := 0
		for _, s := range c.spots[from:] {
			if s.counts {
				left++
			}
		}
		if from == 0 || left <= b.skips {
			continue
		}
		end := len(c.spots)
		c.begin(from)
		c.cut(end - from)
		found = append(found, &sideOf{row: at, first: first, c: c})
	}
	switch {
	case len(found) > 1:
		return nil, stopAt(b.place, "ambiguous", fmt.Sprintf("%s and %s both have stitches that were left unworked", rows[found[1].row].Label, rows[found[0].row].Label),
			fmt.Sprintf("Say whose are meant: next st of %s.", rows[found[1].row].Label))
	case len(found) == 0 && (b.said || b.row > 0):
		of := "the rows before"
		if b.row > 0 {
			of = fmt.Sprintf("Row %d", b.row)
		}
		return nil, stopAt(b.place, "runs-out", fmt.Sprintf("%s left fewer than %s unworked at the end", of, plural(b.skips+1, "stitch")), "Check the numbers before it, and what the first side has left.")
	case len(found) == 0:
		return nil, nil
	}
	side := found[0]
	if b.wrong > 0 && side.first.Wrong != (b.wrong == 2) {
		return nil, stopAt(b.place, "side", fmt.Sprintf("%s began with the other side facing, so this is not the next stitch that it left", side.first.Label),
			"Say with which side facing the yarn is joined, and where.")
	}
	return side, nil
}

// sideAfter are the words that begin the second side behind a reference to other rows: "Rep last row 3 times.
// Fasten off. Miss next 8 sts, rejoin yarn to next st." Nil for none.
func (p *partWork) sideAfter(r *notation.Round) []notation.Item {
	after := false
	for i, it := range r.Items {
		switch it.(type) {
		case *notation.Ref:
			after = true
		case *notation.FastenOff:
			if after && p.part.Worked == fabric.InRows && p.goesBack(r.Items[i+1:]) != nil {
				return r.Items[i+1:]
			}
		}
	}
	return nil
}

// sideNumber reports whether a row whose number is the one behind the row that was divided begins the second
// side, whose numbers are then those of the first over again.
func (p *partWork) sideNumber(r *notation.Round, n int) bool {
	items := append(append([]notation.Item(nil), p.carry...), r.Items...)
	side, _ := p.divided(p.goesBack(items))
	return side != nil && n == p.part.Rounds[side.row].Number+1
}

// usedBy are the stitches of the part that others stand on.
func usedBy(rows []*fabric.Round) map[fabric.Ref]bool {
	used := map[fabric.Ref]bool{}
	for _, r := range rows {
		for i := range r.Stitches {
			for _, on := range r.Stitches[i].On {
				if on.Part == 0 && on.At.Stitch >= 0 {
					for at := on.At; at.Stitch <= on.Last.Stitch; at.Stitch++ {
						used[at] = true
					}
				}
			}
		}
	}
	return used
}

// firstOn is the first row that stands on row at, nil for none.
func firstOn(rows []*fabric.Round, at int) *fabric.Round {
	for _, r := range rows[at+1:] {
		for i := range r.Stitches {
			for _, on := range r.Stitches[i].On {
				if on.Part == 0 && on.At.Round == at && r.Stitches[i].Counts {
					return r
				}
			}
		}
	}
	return nil
}

// startsSide reports whether instructions behind the end of a row are how the second side begins.
func (w *roundWork) startsSide(rest []notation.Item) bool {
	return w.r.Row && w.begun && w.nest == 0 && w.depth <= 1 && len(w.part.Rounds) > 1 && w.goesBack(rest) != nil
}

// laySide lays the row that was divided out for the second side of a piece, if the row begins with going back
// to it: what is said of its places are those that the first side has left.
func (w *roundWork) laySide() {
	b := w.goesBack(w.items)
	side, h := w.divided(b)
	if w.sideFault = h; side == nil {
		return
	}
	w.c = side.c
	w.r.Reversed, w.r.Wrong, w.r.Row = side.first.Reversed, side.first.Wrong, true
	w.r.Colour = w.part.Rounds[side.row].LastColour()
	items := append([]notation.Item(nil), w.items...)
	for i, it := range items {
		switch it := it.(type) {
		case *notation.Skip:
			skip := *it
			skip.Place, skip.Unworked = nil, false
			items[i] = &skip
			continue
		case *notation.Join:
			join, at := *it, *it.Place
			if at.Nth > 1 { // "in 5th unworked st"
				n := notation.Num{Span: at.Span, Values: []int{at.Nth - 1}}
				items = slices.Insert(items, i, notation.Item(&notation.Skip{Span: at.Span, N: n, Target: at.Target}))
				i++
			}
			at.Pick, at.Below, at.Nth, at.Bare = notation.Next, 0, 0, false
			join.Place = &at
			items[i] = &join
		default:
			continue
		}
		break
	}
	w.items = items
}
