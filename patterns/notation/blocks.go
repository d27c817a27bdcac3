package notation

import (
	"slices"
	"strings"
)

// blockWords are what designers call the blocks that a piece is worked in from corner to corner.
var blockWords = []string{"block", "blocks", "tile", "tiles", "box", "boxes", "pixel", "pixels"}

// NamesBlock reports whether a target is called a block.
func NamesBlock(t *Target) bool {
	last := t.Text[strings.LastIndexByte(t.Text, ' ')+1:]
	return slices.Contains(blockWords, strings.ToLower(last))
}

// ofBlock reads "of next block", "of the block below" behind a space: it is the loop of that block.
func (p *parser) ofBlock(pl *Place) bool {
	start := p.i
	if pl.Of != nil || pl.Target.Sort != ChainSpace && !pl.Target.ByNumber() || !p.eat("of", "on", "in", "from") {
		return false
	}
	p.eat("the")
	pick := Next
	switch {
	case p.eat("last", "final"):
		pick = Last
	case p.eat("same", "this", "that"):
		pick = Same
	case p.eat("each", "every"):
		pick = Each
	default:
		p.eat("next", "first", "following", "previous", "prev", "adjacent")
	}
	if !p.eat(blockWords...) {
		p.i = start
		return false
	}
	if !p.eat("below") {
		at := p.i
		if !p.eat("of", "from", "in", "on") || !p.roundOf() {
			p.i = at
		}
	}
	if pl.Pick == Last || pl.Pick == Same {
		pick = pl.Pick
	}
	if pl.Target.Sort == StartChain {
		pl.Target = Target{Sort: ChainSpace, Chains: pl.Target.Chains, Text: pl.Target.Text}
	}
	pl.Pick, pl.Nth, pl.Bare = pick, 0, false
	return true
}

// roundOf reads "the previous row", "row below".
func (p *parser) roundOf() bool {
	p.eat("the")
	p.eat("previous", "prev", "last", "preceding")
	if _, ok := roundWord(p.tok()); !ok {
		return false
	}
	p.i++
	p.plainNumber()
	p.eat("below")
	return true
}
