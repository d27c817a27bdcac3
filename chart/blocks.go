package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// What is worked from corner to corner grows in blocks: a loop of chains and the stitches
// beside it, worked into the loop of a block of the row below or back along a few chains.
// Every block is a square that stands on its corner and touches those of the rows below and
// above with its sides. Rows run along the diagonal of the piece, and turn its blocks by a
// right angle: those of a row stand on their right, those of the next on their left side.

// block is one square: x counts to one side, y to the other from the first block.
type block struct {
	x, y     int
	loop     []int // its chains
	base     []int // the chains of its own row that it stands on
	stitches []int
}

// blocks is a piece of them, by row; and where the slip stitches between them are.
type blocks struct {
	rows  [][]block
	slips []map[int]canvas.Point // in sides of a block
}

const (
	leastLoop  = 2    // chains of the smallest loop, and stitches beside it
	leastRows  = 3    // of blocks
	blockSide  = 2.5  // units
	blockTop   = 0.9  // of its side, up to the tops of its stitches
	blockInset = 0.18 // of its side, from its corner to the first chain
	loopAt     = 0.93 // of its side, from the other side to its loop
	blockBar   = 0.5  // units, of the room of a stitch
	slipAt     = 0.07 // of its side, from a stitch to the slip stitch in it
)

// findBlocks finds the blocks of a piece worked in nothing else; nil for any other.
func (w *work) findBlocks() *blocks {
	if len(w.courses) <= leastRows || !isFoundation(w.courses[0].round) {
		return nil
	}
	b := &blocks{rows: make([][]block, len(w.courses)), slips: make([]map[int]canvas.Point, len(w.courses))}
	at := map[fabric.Ref]block{} // by the first chain of the loop
	for _, c := range w.courses[1:] {
		if c.index > 1 && c.reversed == w.courses[c.index-1].reversed || !b.find(c, at) {
			return nil
		}
		for _, k := range b.rows[c.index] {
			at[fabric.Ref{Round: c.index, Stitch: k.loop[0]}] = k
		}
	}
	return b
}

// find finds the blocks of a row.
func (b *blocks) find(c *course, at map[fabric.Ref]block) bool {
	s := c.round.Stitches
	b.slips[c.index] = map[int]canvas.Point{}
	var row []block
	free := -1 // a block that stands on no other
	for i := 0; i < len(s); {
		if on := s[i].On; s[i].Kind.Base == stitch.Slip && len(on) == 1 {
			if !b.slip(c, i, on[0], at) {
				return false
			}
			i++
			continue
		}
		k := block{}
		for ; i < len(s) && c.isLoop(i); i++ {
			k.loop = append(k.loop, i)
		}
		from := i
		for ; i < len(s) && s[i].Kind.Base > stitch.Single && len(s[i].On) == 1 && (i == from || s[i].On[0].Into == s[from].On[0].Into); i++ {
			k.stitches = append(k.stitches, i)
		}
		n := len(k.stitches)
		if n < leastLoop {
			return false
		}
		on := s[from].On[0]
		if below, ok := at[on.At]; ok && on.Into == stitch.Space {
			k.x, k.y = below.x, below.y
			b.step(c, &k.x, &k.y)
		} else {
			if on.Into == stitch.Space || free >= 0 || on.At.Round != c.index && c.index > 1 {
				return false
			}
			free = len(row)
			if on.At.Round == c.index && len(k.loop) > n {
				k.base, k.loop = k.loop[:n], k.loop[n:]
			}
		}
		if len(k.loop) < leastLoop {
			return false
		}
		row = append(row, k)
	}
	if free >= 0 && c.index > 1 { // it is beside the next one
		if free+1 >= len(row) {
			return false
		}
		k, next := &row[free], row[free+1]
		k.x, k.y = next.x+1, next.y-1
		if c.reversed {
			k.x, k.y = next.x-1, next.y+1
		}
	}
	b.rows[c.index] = row
	return len(row) > 0 && (c.index > 1 || len(row) == 1)
}

// step moves from a block to what stands on its loop.
func (b *blocks) step(c *course, x, y *int) {
	if c.reversed {
		*x++
	} else {
		*y++
	}
}

// slip finds where a slip stitch is: at the corner of the block whose loop it is in, or
// over the stitch that it is worked into.
func (b *blocks) slip(c *course, i int, on fabric.Place, at map[fabric.Ref]block) bool {
	if below, ok := at[on.At]; ok && on.Into == stitch.Space {
		b.step(c, &below.x, &below.y)
		b.slips[c.index][i] = b.within(c.reversed, below, 1, 0)
		return true
	}
	if on.At.Round != c.index-1 {
		return false
	}
	for _, k := range b.rows[on.At.Round] {
		for j, st := range k.stitches {
			if st == on.At.Stitch {
				q := b.within(!c.reversed, k, column(j, len(k.stitches)), blockTop+slipAt)
				b.slips[c.index][i] = q
				return true
			}
		}
	}
	return false
}

// column is how far from the side of a block opposite its loop stitch j of n stands.
func column(j, n int) float64 { return 1 - (float64(j)+1.4)/(float64(n)+0.9) }

// within is a place in a block: so far towards the side with its loop, and so far up along
// its stitches, in sides of a block from the corner of the first.
func (b *blocks) within(turned bool, k block, across, up float64) canvas.Point {
	if turned {
		across, up = up, across
	}
	return canvas.Point{X: float64(k.x) + across, Y: float64(k.y) + up}
}

// reachBlocks sets the blocks down on the page.
func (w *work) reachBlocks(p *page) {
	b := w.blocks
	w.lo, w.ground = w.first, w.first > 0
	low, high, foot, up := math.Inf(1), math.Inf(-1), math.Inf(1), 0.0
	for _, row := range b.rows[w.first : w.last+1] {
		for _, k := range row {
			low, high = math.Min(low, float64(k.y-k.x-1)), math.Max(high, float64(k.y-k.x+1))
			foot, up = math.Min(foot, float64(k.x+k.y)), math.Max(up, float64(k.x+k.y+2))
		}
	}
	half := math.Min((p.width-2*margin-2*besideRows)/(high-low), (p.bottom-p.top-2*underRows)/(up-foot)) // of a diagonal
	half = math.Min(half, w.o.enlarged(largest)*blockSide/math.Sqrt2)
	w.unit = half * math.Sqrt2 / blockSide
	w.radii = ring.Stack(w.layers(), ring.Fit{Hole: half, Outer: half * (up + 1), MaxScale: math.Inf(1)})
	w.shape = ring.Line{Scale: 1, Left: w.leftwards(false)}
	for i, row := range b.rows[:w.last+1] {
		w.setBlocks(w.courses[i], row, half)
	}
	w.outer = half * (up + 1)
	mid := w.shape.At((low+high)/2*half, 0)
	w.place(canvas.Point{X: hundredth(p.width/2 - mid.X), Y: hundredth(p.top + underRows + w.outer)})
	p.centre = w.centre
	p.bottom = hundredth(w.centre.Y - half*(1+foot) + underRows + w.unit)
}

// setBlocks sets the stitches of one row, and those of the foundation with the first.
func (w *work) setBlocks(c *course, row []block, half float64) {
	n := len(c.round.Stitches)
	c.radius, c.tilt, c.strung, c.pitch = make([]float64, n), map[int]float64{}, map[int]onLoop{}, map[int]float64{}
	put := func(q canvas.Point) onRing { return onRing{(q.Y - q.X) * half, (q.X + q.Y + 1) * half} }
	set := func(c *course, i int, q canvas.Point, tilt float64) {
		at := put(q)
		c.theta[i], c.radius[i], c.tilt[i] = at.angle, at.radius, tilt
	}
	eighth := ring.Turn / 8
	for _, k := range row {
		m := len(k.stitches)
		for j, i := range k.loop {
			set(c, i, w.blocks.within(c.reversed, k, loopAt, blockInset+(1-2*blockInset)*float64(j)/float64(len(k.loop)-1)), -eighth)
			c.pitch[i] = (1 - 2*blockInset) / float64(len(k.loop)-1) * half * math.Sqrt2
		}
		for j, i := range k.stitches {
			set(c, i, w.blocks.within(c.reversed, k, column(j, m), blockTop), eighth)
			switch on := c.round.Stitches[i].On[0]; {
			case on.Into == stitch.Space:
				c.strung[i] = onLoop{onRing: put(w.blocks.within(c.reversed, k, column(j, m), loopAt-1))}
			case w.at(on.At) != nil:
				d, tilt := w.at(on.At), eighth
				if d.reversed != c.reversed {
					tilt = -eighth
				}
				set(d, on.At.Stitch, w.blocks.within(c.reversed, k, column(j, m), 0), tilt)
				d.pitch[on.At.Stitch] = half * math.Sqrt2 / float64(m+1)
				if d != c && j == 0 { // the line of its chains goes on
					for i := on.At.Stitch + 1; i < len(d.theta); i++ {
						set(d, i, w.blocks.within(c.reversed, k, column(on.At.Stitch-i, m), 0), tilt)
					}
				}
			}
		}
	}
	for i, q := range w.blocks.slips[c.index] {
		set(c, i, q, eighth)
		if c.round.Stitches[i].On[0].Into == stitch.Space {
			c.strung[i] = onLoop{onRing: put(q)}
		}
	}
}

// inBlocks makes the rows lie in blocks; false where they are none. The chains of the
// foundation that are the loop of the first block are drawn as that.
func (w *work) inBlocks() bool {
	if w.blocks = w.findBlocks(); w.blocks == nil {
		return false
	}
	for _, i := range w.blocks.rows[1][0].stitches {
		w.courses[0].hidden = max(w.courses[0].hidden, w.courses[1].round.Stitches[i].On[0].At.Stitch+1)
	}
	return true
}

// unlikeRows sets rows on a page that are not one above another; nil where they are.
func (w *work) unlikeRows() func(*page) {
	switch {
	case w.hairpin():
		return w.reachHairpin
	case w.inBlocks():
		return w.reachBlocks
	}
	return nil
}
