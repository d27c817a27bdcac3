package working

import (
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
		if n := edgeChains(rows[at]); n > 1 && rows[at].Reversed != last.Reversed {
			c.runs, c.chains = append(c.runs, fabric.Span{From: i, To: i + 1}), append(c.chains, n)
			c.longest = max(c.longest, n)
			c.spots[i].run = len(c.runs)
		}
	}
	c.findGroups()
	return c
}

// edgeChains is how many chains a row begins with.
func edgeChains(r *fabric.Round) (n int) {
	for i := range r.Stitches {
		switch st := &r.Stitches[i]; {
		case st.Role == fabric.Start:
			n += st.Chains
		case st.IsChain():
			n++
		default:
			return n
		}
	}
	return n
}

// rowEnd is the place at the end of the row that spot i stands for.
func (c *course) rowEnd(i int) fabric.Place {
	return fabric.Place{Into: stitch.RowEnd, Part: c.edgePart, At: c.spots[i].ref, Last: c.spots[i].ref}
}

// oneByOne reports whether a place is one of the row ends that the round goes along, or a loop there.
func oneByOne(p *notation.Place, loops bool) bool {
	return p.Target.Sort == notation.RowEnds && p.Target.Name == notation.OneEnd || loops && p.Target.Sort == notation.ChainSpace
}
