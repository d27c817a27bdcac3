package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// blockChains is how many chains the blocks have of a part that is worked from corner to corner: a
// row begins with chains that are worked back along but for so many at their tip, "ch 6, dc in 4th
// ch from hook and in next 2 ch", and goes on from space to space, "sl st in next ch-3 sp, ch 3, 3 dc
// in same sp". The chains are the loop of a block, and no stitch. It is 0 for any other part.
func (p *partWork) blockChains() int {
	if !p.blocksKnown {
		p.blocksKnown = true
		for _, r := range p.texts[p.index].Rounds {
			if n := blockLoop(p.written(r.Items, 0)); n > 0 && p.source.Rows {
				p.blocks = n
				break
			}
		}
	}
	return p.blocks
}

// written is instructions with the designer's own stitches as their definitions have them, and
// without what is said of turning.
func (p *partWork) written(items []notation.Item, depth int) (l []notation.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Turn:
			continue
		case *notation.Repeat:
			r := *it
			r.Items = p.written(it.Items, depth)
			l = append(l, &r)
			continue
		case *notation.Stitches:
			if d := p.definition(&it.What); d != nil && d.alias == nil && depth < maxNested {
				l = append(l, p.written(d.items, depth+1)...)
				continue
			}
		}
		l = append(l, it)
	}
	return l
}

// blocksIn is how many blocks a row has where a count is of such; -1 for any other count.
func (p *partWork) blocksIn(r *fabric.Round, t *notation.Target) (n int) {
	if p.blockChains() == 0 || !notation.NamesBlock(t) {
		return -1
	}
	for k := range r.Spaces {
		if r.SpaceChains(k) == p.blockChains() {
			n++
		}
	}
	return n
}

// blockLoop is how many chains the loop of a block has in instructions that begin with one; else 0.
func blockLoop(items []notation.Item) int {
	for i := 0; i+1 < len(items); i++ {
		chain, ok := items[i].(*notation.Chain)
		s, first := items[i+1].(*notation.Stitches)
		if !ok || !first || len(s.Places) == 0 || s.Places[0].Target.Sort != notation.FromHook {
			continue
		}
		n := s.Places[0].Nth - 1
		if n >= 2 && chain.N.For(0) > n+1 && slipsIntoLoop(items[i+2:], n) {
			return n
		}
		return 0
	}
	return 0
}

// slipsIntoLoop reports whether a slip stitch goes into a space of n chains and others into the
// same space behind as many chains.
func slipsIntoLoop(items []notation.Item, n int) bool {
	for i, it := range items {
		if r, ok := it.(*notation.Repeat); ok && slipsIntoLoop(r.Items, n) {
			return true
		}
		s, ok := it.(*notation.Stitches)
		if !ok || i+2 >= len(items) || s.What.Kind != stitch.Of(stitch.Slip) || len(s.Places) == 0 {
			continue
		}
		into := &s.Places[len(s.Places)-1].Target
		chain, chained := items[i+1].(*notation.Chain)
		same := firstPlace(items[i+2])
		if into.Sort == notation.ChainSpace && (into.Chains == n || into.Chains == 0) && chained && chain.N.For(0) == n && same != nil && same.Pick == notation.Same {
			return true
		}
	}
	return false
}

// isBlock reports whether a stitch of the designer's own is a block, which goes where the work has come to.
func (w *roundWork) isBlock(d *definition) bool {
	n := w.blockChains()
	return n > 0 && (d.inSame() || slipsIntoLoop(d.items, n))
}

// moreBlocks is a row with so many more blocks: a repeat that goes across has them by itself.
func (p *partWork) moreBlocks(r *notation.Round, n int) *notation.Round {
	longer := *r
	longer.Items = slices.Clone(r.Items)
	for i, it := range longer.Items {
		rep, ok := it.(*notation.Repeat)
		if !ok || rep.Extent.Sort != notation.NoExtent || !rep.Times.Set() {
			continue
		}
		more := *rep
		more.Times = notation.Num{Span: rep.Times.Span, Values: []int{rep.Times.For(p.size) + n}}
		longer.Items[i] = &more
		break
	}
	return &longer
}

// beginsBlock reports whether the chain that a row begins with, once slip stitches have moved it on,
// is the loop of its first block.
func (w *roundWork) beginsBlock(it *notation.Chain, n int) bool {
	return w.r.Row && it.Counts == nil && w.blockChains() == n && w.travelled() > 0 && w.same != nil
}

// tipLoop makes the chains at the tip of a point, the loop of a block, a space by themselves.
func (w *roundWork) tipLoop(chains int) {
	m := len(w.r.Spaces)
	if w.blockChains() == chains && m > 0 && w.r.Spaces[m-1].To == len(w.r.Stitches) {
		w.r.Spaces[m-1].From = len(w.r.Stitches) - chains
	}
}

// noBlocks is the fault of words that name blocks in a part that has none.
func (w *roundWork) noBlocks(items []notation.Item) *halt {
	if w.blockChains() > 0 {
		return nil
	}
	for _, it := range items {
		r, ok := it.(*notation.Repeat)
		if !ok {
			continue
		}
		if r.Extent.Target.Name == notation.Block {
			return stopAt(r.Span, "vague", "the words do not say which stitches a block is", "Name the place: rep from * to last ch-3 sp.")
		}
		if h := w.noBlocks(r.Items); h != nil {
			return h
		}
	}
	return nil
}
