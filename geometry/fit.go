package geometry

import (
	"math"

	"whorl/patterns/fabric"
)

// How far a finished circumference may be from what was asked before it is said
// to stray: 2 cm, or 4 % (common practice, no source).
// It misfits, whatever the style, by more than 15 % (common practice, no source).
const (
	strays       = 20.0 // mm
	straysShare  = 0.04
	misfitsShare = 0.15
	// A brim flares that is wider than the waist above it by a tenth (common
	// practice, no source).
	flares = 0.9
)

// Fitting is a finished piece held against the head that it is made for.
// Lengths are in millimetres.
type Fitting struct {
	Head, Asked float64 // the head, and the ease that was asked for
	// Round is the circumference at the head: the widest, or the waist above a brim
	// that flares to that. Ease is what it is more than the head. Brim is the circumference of the brim, unstretched.
	Round, Ease, Brim float64
	// Depth is from crown to brim, and Rule what suits the head (see [HatDepth]).
	Depth, Rule float64
	// Off is how far what was asked is from the piece: above 0 where the piece
	// is too large, 0 where what was asked lies between the brim and the widest
	// round, since a slouch is wider than its fit and a ribbed brim narrower, or
	// between a waist above a brim that flares and that.
	Off float64
}

// Against holds the piece against a head and the ease asked for, in
// millimetres. There is nothing to hold, and ok is false, without a head or a
// piece worked in the round.
func (f *Finished) Against(head, ease float64) (fit Fitting, ok bool) {
	if !(head > 0) || !(head+ease > 0) || math.IsInf(head+ease, 1) || f.Widest <= 0 {
		return Fitting{}, false
	}
	fit = Fitting{Head: head, Asked: ease, Round: f.Widest, Ease: f.Widest - head, Brim: f.Brim, Depth: f.Depth, Rule: HatDepth(head)}
	if f.Waist > 0 && f.Waist < flares*f.Brim && f.Brim > flares*f.Widest {
		fit.Round, fit.Ease = f.Waist, f.Waist-head
	}
	least, most := math.Min(f.Brim, f.Widest), f.Widest
	if f.Brim <= 0 {
		least = f.Widest
	}
	if f.Waist > 0 {
		least = math.Min(least, f.Waist)
	}
	most = math.Max(most, f.Brim)
	switch want := head + ease; {
	case want < least:
		fit.Off = least - want
	case want > most:
		fit.Off = most - want
	}
	return fit, true
}

// Strays reports whether the piece is further from what was asked than a
// stitch or two would be.
func (f Fitting) Strays() bool {
	off := math.Abs(f.Off)
	return off > strays || off > straysShare*(f.Head+f.Asked)
}

// Misfits reports whether the piece is so far from what was asked that no style
// explains it.
func (f Fitting) Misfits() bool { return math.Abs(f.Off) > misfitsShare*(f.Head+f.Asked) }

// Body is the round that a part is as wide as, the first of equals: its number
// of stitches, the width of one, and the multiple that the repeats of the
// rounds on it need; 1 when none shows. ok is false for a part without one.
func Body(part *fabric.Part, rounds []RoundForm) (stitches int, width float64, multiple int, ok bool) {
	widest := -1
	for i := range rounds {
		if shaped(part, rounds, i) && part.Rounds[i].Count() > 0 &&
			(widest < 0 || rounds[i].R > rounds[widest].R*(1+1e-9)) {
			widest = i
		}
	}
	if widest < 0 {
		return 0, 0, 1, false
	}
	stitches = part.Rounds[widest].Count()
	width = rounds[widest].Circumference / float64(stitches)
	multiple = 1
	for i := 1; i < len(rounds); i++ {
		n := len(part.Rounds[i].Repeats)
		if part.Rounds[i-1].Count() != stitches || n < 2 || stitches%n != 0 {
			continue
		}
		each := stitches / n
		if all := multiple / gcd(multiple, each) * each; all <= stitches/2 {
			multiple = all
		}
	}
	return stitches, width, multiple, true
}
