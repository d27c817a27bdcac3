package working

import (
	"fmt"
	"regexp"

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
// be left.
func (p *partWork) closedFlat(label, text *notation.Round) {
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
		return
	}
	below := p.part.Rounds[k-1]
	have, seam := below.Count(), n.For(p.size)
	if have == 2*seam || have == 2*seam+1 {
		return
	}
	f := p.fault(at, "left-over", fmt.Sprintf("%s through both layers take %d, and %s has %s", plural(seam, "stitch"), 2*seam, below.Label, plural(have, "stitch")),
		fmt.Sprintf("Folded flat, they take %s through both layers.", plural(have/2, "stitch")))
	f.Round = plainLabel(label.Label.Text)
	p.add(f, false)
}
