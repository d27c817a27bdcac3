package geometry

import (
	"math"

	"whorl/patterns/fabric"
)

// What lies flat, and what is meant to (common practice, no source): a piece that
// stands up by less than standsUp of its depth; or one that goes on growing to its
// edge, as a mandala does and the crown of a hat does not: at two thirds of its depth
// it is no wider than stillGrows of its edge, where a half sphere is 0.87 of it and a
// flat circle 0.67, and its edge is no closer to its centre than leastSpread of its
// depth, as a cone's is.
const (
	standsUp    = 0.25
	mostHole    = 0.35 // of the edge, that a piece begun on a ring may leave open
	stillGrows  = 0.8
	leastSpread = 0.6
)

// lie finds whether a piece lies flat, and its diameter.
func (z *Piece) lie(p *fabric.Part, rounds []RoundForm, foot int) {
	if !z.CrownFirst || foot == onBothSides {
		return
	}
	z.Across = z.Widest / math.Pi
	if z.Hole >= mostHole*z.Brim {
		return
	}
	z.Flat = z.Standing < standsUp*z.Depth || Corners(p) > 0
	if z.Flat || z.Depth <= 0 {
		return
	}
	end := &rounds[len(rounds)-1]
	edge := 2 * math.Pi * end.R
	if edge < 0.95*z.Widest || end.R < leastSpread*z.Depth {
		return
	}
	for i := range rounds {
		if end.Level-rounds[i].Level >= z.Depth/3 && rounds[i].R > stillGrows*end.R {
			return
		}
	}
	z.Cups = true
}
