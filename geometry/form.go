// Package geometry is the numbers of crochet: how wide and tall stitches are at
// a gauge, how deep and how wide the rounds of a fabric come out, and how flat
// they lie. Lengths are in millimetres, angles in radians.
package geometry

// Form is the size and shape of one fabric.
type Form struct {
	Parts []*PartForm // in the order of the fabric's parts
}

// PartForm is the size and shape of one piece.
type PartForm struct {
	Rounds []RoundForm // in the order of the part's rounds
}

// RoundForm is the figures of one round.
type RoundForm struct {
	// Circumference is the sum of the widths along the round's top edge.
	// For a row it is the row's length, for a ring that is worked into the
	// circumference of the hole in it.
	Circumference float64
	// Radius is that of the flat circle with this circumference; 0 for rows.
	Radius float64
	// Height is the round's own mean stitch height, its slant height:
	// Level less the Level of the round below.
	Height float64
	// Level is the mean height of the tops above the part's beginning.
	Level float64
	// Flatness is the growth of the radius over the slant height: 1 flat,
	// 0 a tube, between them a dome or cone, above 1 it ruffles, below 0 it
	// closes in, below -1 it gathers. 0 for rows and foundations.
	Flatness float64
	// Tops is the level of every stitch's top, and Widths the width it takes
	// along the round's edge (0 for joins and for a Start that does not
	// count), in the order of the round's stitches.
	Tops, Widths []float64

	// Aside is how far the middle of a row lies to the right of that of the part's first
	// row, as the right side is seen with the work growing upwards: a row that is turned
	// before the end of the one below leaves that end free. 0 for rounds.
	Aside float64

	// R and Z are the settled profile (see [Settle]): the radius of the
	// round's top edge as the fabric comes to rest, and its distance along
	// the axis from the part's beginning. Both are 0 for rows.
	R, Z float64
	// Strain is how far the round's edge is stretched (above 0) or slack
	// (below 0) where it comes to rest: 2πR / Circumference − 1.
	Strain float64
	// Angle is how far the settled fabric leans away from the axis: π/2 where
	// it lies flat and grows, 0 in a tube, −π/2 where it closes in flat. In a
	// cone it is the half-angle at the tip.
	Angle float64
}

// width is the width of the stitches along the round's edge, the widest of them.
func (f *RoundForm) width() float64 {
	w := 0.0
	for _, v := range f.Widths {
		w = max(w, v)
	}
	return w
}
