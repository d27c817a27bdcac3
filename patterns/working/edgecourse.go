package working

import (
	"regexp"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// layEdge lays out the ends of the rows of another part for working, one spot for each. The loop of
// chains that a row begins with is a space where it lies on the edge that the work has come to: the
// one where the last row ended.
func (p *partWork) layEdge() *course {
	c := &course{edge: p.edge, edgePart: p.edgePart, below: &fabric.Round{Label: "the row ends", Edge: p.edge}}
	rows := p.f.Parts[p.edgePart].Rounds
	last := rows[p.edgeRows[len(p.edgeRows)-1]]
	for i, at := range p.edgeRows {
		c.spots = append(c.spots, spot{ref: fabric.Ref{Round: at}, st: &fabric.Stitch{Kind: stitch.Of(stitch.Single), Counts: true}, counts: true})
		if n := p.edgeChains(rows[at], at); n > 1 && rows[at].Reversed != last.Reversed {
			c.runs, c.chains = append(c.runs, fabric.Span{From: i, To: i + 1}), append(c.chains, n)
			c.longest = max(c.longest, n)
			c.spots[i].run = len(c.runs)
		}
	}
	c.findGroups()
	return c
}

// edgeChains is how many chains the row at an index of the part begins with, or passes over at the
// end of the starting chain.
func (p *partWork) edgeChains(r *fabric.Round, at int) (n int) {
	rows := p.f.Parts[p.edgePart].Rounds
	for i := range r.Stitches {
		switch st := &r.Stitches[i]; {
		case st.Role == fabric.Start:
			n += st.Chains
		case st.IsChain():
			n++
		case at > 0 && rows[at-1].Number == 0 && !rows[at-1].Carried && rows[at-1].Count() == 0 && len(st.On) > 0:
			return max(n, len(rows[at-1].Stitches)-1-st.On[0].At.Stitch)
		default:
			return n
		}
	}
	return n
}

// alongSide is what is told of going on along the side of a piece.
var alongSide = regexp.MustCompile(`(?i)\b(along|down|up) (the )?((left|right|long|short|straight|first|second|other)[ -](hand )?)?side( edge)?$`)

// onSide is the fault of stitches that the words have go along the side of a flat piece and into no
// row ends: "Working along side edge, sc in each ch-5 loop". It is nil for any others.
func (w *roundWork) onSide(p *notation.Place) *halt {
	if !w.toSide || !w.r.Row || w.c.edge > 0 || len(w.sideRows) > 0 || p.Target.Sort == notation.RowEnds || p.Evenly || w.c.below == nil || !w.c.below.Row {
		return nil
	}
	return stopAt(p.Span, "row-ends", "the words go along the side of the piece, and these stitches into the top of "+w.c.below.Label,
		"Put what goes along the side in a part of its own, from: Piece row ends.")
}

// rowEnd is the place at the end of the row that spot i stands for.
func (c *course) rowEnd(i int) fabric.Place {
	return fabric.Place{Into: stitch.RowEnd, Part: c.edgePart, At: c.spots[i].ref, Last: c.spots[i].ref}
}

// oneByOne reports whether a place is one of the row ends that the round goes along, or a loop there.
func oneByOne(p *notation.Place, loops bool) bool {
	return p.Target.Sort == notation.RowEnds && p.Target.Name == notation.OneEnd || loops && p.Target.Sort == notation.ChainSpace && p.Target.Name != notation.Corner
}
