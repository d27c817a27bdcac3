package geometry

import (
	"math"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Area is the area in mm² of the fabric of a part, as it is worked: every
// round is a band as tall as the round and as long as the mean of its two
// edges, which for a flat circle of radius r comes to πr². What is carried on
// from another part is that part's.
func Area(part *fabric.Part, form *PartForm) (sum float64) {
	for _, a := range Areas(part, form) {
		sum += a
	}
	return sum
}

// Areas are the shares of the rounds in [Area], in their order.
func Areas(part *fabric.Part, form *PartForm) []float64 {
	area := make([]float64, len(part.Rounds))
	for i, r := range part.Rounds {
		f := &form.Rounds[i]
		if r.Carried || i == 0 && isFoundation(r) {
			continue
		}
		below := f.Circumference
		switch {
		case i > 1 || i == 1 && !isFoundation(part.Rounds[0]):
			below = form.Rounds[i-1].Circumference
		case footing(r) == onCentre && i == 0:
			below = 0
		case footing(r) == onCentre:
			below = form.Rounds[0].Circumference
		case footing(r) == onBothSides && i == 1:
			below = 2 * form.Rounds[0].Circumference
		}
		area[i] = (below + f.Circumference) / 2 * math.Max(0, f.Height)
	}
	return area
}

// StitchArea is the area in mm² that the stitches of a part would have if each
// lay by itself at the gauge, which is what their yarn goes by: every leg of a
// stitch is as wide and as tall as a plain stitch, and every chain, in the
// foundation, at a turn or in a space, as a chain.
func (g *Gauge) StitchArea(part *fabric.Part) (sum float64) {
	for _, a := range g.StitchAreas(part) {
		sum += a
	}
	return sum
}

// StitchAreas are the shares of the rounds in [Gauge.StitchArea], in their order.
func (g *Gauge) StitchAreas(part *fabric.Part) []float64 {
	all := make([]float64, len(part.Rounds))
	sizes := map[stitch.Kind]float64{}
	of := func(k stitch.Kind) float64 {
		a, ok := sizes[k]
		if !ok {
			a = g.Width(k, stitch.Top) * g.Height(k, stitch.Top)
			sizes[k] = a
		}
		return a
	}
	for n, r := range part.Rounds {
		if r.Carried {
			continue
		}
		sum := 0.0
		for i := range r.Stitches {
			s := &r.Stitches[i]
			k := s.Kind
			switch {
			case s.Role == fabric.Start:
				sum += float64(s.Chains) * of(stitch.Of(stitch.Chain))
			case k.Shape == stitch.Picot:
				sum += float64(k.Legs)*of(stitch.Of(stitch.Chain)) + of(stitch.Of(stitch.Slip))
			default:
				sum += float64(max(1, k.Legs)) * of(stitch.Kind{Base: k.Base, Manner: k.Manner & stitch.Extended})
				if k.Manner&stitch.Foundation != 0 {
					sum += of(stitch.Of(stitch.Chain))
				}
			}
		}
		all[n] = sum
	}
	return all
}

// Whole is how many whole balls, each of so much, are needed; both in one
// unit, above 0. A ball more is not asked for what is only a rounding away.
func Whole(needed, ball float64) int { return int(math.Ceil(needed/ball - 1e-9)) }
