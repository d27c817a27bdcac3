package geometry

import (
	"errors"
	"fmt"
	"math"
)

// CrownDiameter is the diameter of the flat circle that a crown is worked to
// before it is worked even: circumference / π. (22 in → 7.0 in: ohewe 2009,
// crediting the Crochet Guild of America.)
func CrownDiameter(circumference float64) float64 { return circumference / math.Pi }

// HatDepth is the depth of a hat from crown to edge that suits a head of a
// circumference: 0.4 of it. (23 in → 9.2 in: hookthatyarn 2016.)
func HatDepth(head float64) float64 { return 0.4 * head }

// Ask is what a hat, or any tube, is to be made to. Lengths are in millimetres.
type Ask struct {
	Head float64 // the circumference that it is to fit
	Ease float64 // added to that, negative for a close fit
	// Width and Height are of one stitch (see [Gauge]).
	Width, Height float64
	// The stitch count must be a multiple of Multiple (at least 1), and Plus.
	Multiple, Plus int
	// Depth asked for, 0 for the rule of thumb (see [HatDepth]).
	Depth float64
}

// Fit is a stitch count and what it comes to. A Fit with Count 0 is none.
type Fit struct {
	Count         int
	Circumference float64
	Ease          float64 // Circumference less the head
}

// Sizing is the answer to an [Ask].
type Sizing struct {
	// Below and Above are the counts that come nearest to what was asked from
	// either side; they are the same when one comes to it exactly. There is
	// none below when the smallest possible count is too large.
	Below, Above Fit
	// Nearest is the one of the two that is nearer, Above when equal.
	Nearest Fit
	// CrownDiameter is of the flat crown for Nearest, and Depth the depth from
	// crown to edge.
	CrownDiameter, Depth float64
	// CrownRounds is the rounds of the flat crown, and EvenRounds those to be
	// worked even after it (or, brim-up, before it), to the nearest round.
	CrownRounds, EvenRounds int
}

// Lengths beyond this are no garment.
const longest = 100_000 // mm

// Size works out stitch counts for a head. It refuses lengths that are not
// numbers, that are not above zero (but for Ease), or absurd.
func Size(a Ask) (*Sizing, error) {
	target := a.Head + a.Ease
	switch {
	case !(a.Head > 0 && a.Head <= longest):
		return nil, fmt.Errorf("a head of %v cm cannot be fitted: give its circumference", round3(a.Head/10))
	case !(target > 0 && target <= longest):
		return nil, fmt.Errorf("with an ease of %v cm nothing is left of a head of %v cm: the ease is what is added to the head",
			round3(a.Ease/10), round3(a.Head/10))
	case !(a.Width >= minWidth && a.Width <= maxWidth):
		return nil, fmt.Errorf("a stitch %v mm wide is not possible: check the gauge", round3(a.Width))
	case !(a.Height >= minHeight && a.Height <= maxHeight):
		return nil, fmt.Errorf("a stitch %v mm tall is not possible: check the gauge", round3(a.Height))
	case !(a.Depth >= 0 && a.Depth <= longest):
		return nil, fmt.Errorf("a depth of %v cm is not possible", round3(a.Depth/10))
	case a.Multiple < 1 || a.Multiple > most:
		return nil, errors.New("the stitch pattern needs a multiple of at least 1")
	case a.Plus < -most || a.Plus > most:
		return nil, fmt.Errorf("a multiple of %d plus %d is not possible", a.Multiple, a.Plus)
	}
	// A whole number of repeats, at least one, with a stitch in it.
	least := 1
	for a.Multiple*least+a.Plus < 1 {
		least = max(least+1, (-a.Plus)/a.Multiple)
	}
	repeats := (target/a.Width - float64(a.Plus)) / float64(a.Multiple)
	lo := int(math.Floor(repeats + 1e-9))
	hi := int(math.Ceil(repeats - 1e-9))
	fit := func(repeats int) Fit {
		n := a.Multiple*repeats + a.Plus
		c := float64(n) * a.Width
		return Fit{n, c, c - a.Head}
	}
	s := &Sizing{Above: fit(max(hi, least))}
	s.Nearest = s.Above
	if lo >= least {
		s.Below = fit(lo)
		if target-s.Below.Circumference < s.Above.Circumference-target {
			s.Nearest = s.Below
		}
	}
	s.CrownDiameter = CrownDiameter(s.Nearest.Circumference)
	s.Depth = a.Depth
	if s.Depth == 0 {
		s.Depth = HatDepth(a.Head)
	}
	s.CrownRounds = max(1, int(math.Round(s.CrownDiameter/2/a.Height)))
	s.EvenRounds = max(0, int(math.Round((s.Depth-s.CrownDiameter/2)/a.Height)))
	return s, nil
}
