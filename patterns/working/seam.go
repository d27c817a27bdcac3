package working

import (
	"fmt"
	"regexp"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// closesPiece reports whether instructions only close the piece: "fold flat, ch 1, 6
// sc through both layers".
func closesPiece(items []notation.Item) bool {
	closes := false
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Note:
			closes = closes || it.Closes
		case *notation.Chain, *notation.FastenOff, *notation.Marker, *notation.Turn:
		default:
			return false
		}
	}
	return closes
}

// foldsFlat are words that fold an opening in two.
var foldsFlat = regexp.MustCompile(`(?i)\b(fold|folding|folded|flat|flatten|pinch|squash|press|halves)\b`)

// closedFlat sees that a seam which closes an opening folded flat takes all of it: each of
// its stitches goes through two of the round's, and where these are odd in number one may
// be left. It reports whether it does.
func (p *partWork) closedFlat(label, text *notation.Round) bool {
	folds, n, at := false, notation.Num{}, label.Span
	for _, it := range text.Items {
		if note, ok := it.(*notation.Note); ok {
			folds = folds || foldsFlat.MatchString(note.Text)
			if note.Closes && note.Seam.Set() {
				n, at = note.Seam, note.Span
			}
		}
	}
	k := len(p.part.Rounds)
	if !folds || !n.Set() || k == 0 || p.part.Rounds[k-1].Row || p.cascade {
		return true
	}
	below := p.part.Rounds[k-1]
	have, seam := below.Count(), n.For(p.size)
	if have == 2*seam || have == 2*seam+1 {
		return true
	}
	f := p.fault(at, "left-over", fmt.Sprintf("%s through both layers take %d, and %s has %s", plural(seam, "stitch"), 2*seam, below.Label, plural(have, "stitch")),
		fmt.Sprintf("Folded flat, they take %s through both layers.", plural(have/2, "stitch")))
	if f.Round = below.Label; closesPiece(text.Items) {
		f.Round = plainLabel(label.Label.Text)
	}
	p.add(f, false)
	return false
}

// ownRow reports whether a label numbers a row, or says that it is the next.
func ownRow(l *notation.Label) bool { return len(l.Numbers) > 0 || l.Next.Set() }

// seamRow works a seam through both layers that has a number as a row of its own. Folded
// flat, the opening is worked off from the hook on, through the stitch that comes next and
// the one that lies behind it.
func (p *partWork) seamRow(label, text *notation.Round, number int) {
	seam, folds := (*notation.Note)(nil), false
	for _, it := range text.Items {
		if note, ok := it.(*notation.Note); ok {
			folds = folds || foldsFlat.MatchString(note.Text)
			if note.Closes && note.Of.Is() {
				seam = note
			}
		}
	}
	if !ownRow(&label.Label) || seam == nil || len(p.part.Rounds) == 0 || p.cascade {
		return
	}
	w := p.begin(label, text, number)
	var tops []fabric.Place
	for _, s := range w.c.spots {
		if s.counts {
			tops = append(tops, fabric.Place{At: s.ref, Last: s.ref})
		}
	}
	stated := p.bySize(label)
	n := 0
	switch {
	case seam.Seam.Set():
		n = seam.Seam.For(p.size)
	case folds && !w.c.below.Row:
		n = len(tops) / 2
	case len(stated) > 0 && len(stated[0].Counts) > 0:
		n = stated[0].Counts[0].N.For(p.size)
	}
	flat := !w.c.below.Row && (len(tops) == 2*n || len(tops) == 2*n+1)
	if n == 0 || !flat && n > len(tops) {
		return
	}
	w.r.Row = true
	for i := range n {
		st := fabric.Stitch{Kind: seam.Of, Counts: true, On: tops[i : i+1 : i+1], Colour: w.yarn, Line: seam.Line, Column: seam.Column}
		if flat {
			st.On = append(st.On, tops[len(tops)-1-i])
		}
		w.r.Stitches = append(w.r.Stitches, st)
	}
	p.compare(w, stated, false)
	p.part.Seam, p.lasts[label] = w.r, w.r
}
