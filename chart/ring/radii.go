package ring

import "math"

// Layer is one round seen from the centre: how far it lies from the layer
// inside it and what room it needs.
type Layer struct {
	// Level is the mean level of the round's tops in the fabric, mm. Levels
	// either rise from layer to layer or fall.
	Level float64
	// Length is the round's length along its tops in the fabric, mm.
	Length float64
	// Least is the smallest radius on paper, mm, at which its symbols can be
	// told apart.
	Least float64
	// Rise is the least distance on paper, mm, from the layer inside it.
	Rise float64
	// Legs is the distance from the layer inside it, mm on paper, at which no leg lies down;
	// nearer to it the layers are not crowded.
	Legs float64
}

// Fit is the room that the layers are fitted into.
type Fit struct {
	Hole     float64 // smallest radius of the innermost layer, mm on paper
	Outer    float64 // radius of the outermost layer, mm on paper
	MaxScale float64 // largest scale, paper mm to a fabric mm
	// Loose is set when the innermost layer is no drawn round, and may lie farther
	// out than it must.
	Loose bool
}

// mostRise is how much farther than its rise a layer lies from the one inside it, as a
// factor, before that one is drawn out after it.
const mostRise = 1.2

// squeeze is how far a round may be drawn narrower than it is before its
// neighbours are pushed outwards to make room.
const squeeze = 0.6

// mostSqueeze is how far a round may be drawn narrower than it is where the rounds within
// would have to be drawn out by more than mostStretch, as a factor, to make room for it.
const mostSqueeze, mostStretch = 0.35, 1.5

// smallCentre is the share of the way out up to which an innermost layer has the room that
// it asks for, whatever the others have.
const smallCentre = 0.1

// Radii is how far out on paper layers lie.
type Radii struct {
	// Scale is millimetres on paper to a millimetre of fabric, where no
	// round is pushed.
	Scale float64
	// Crowded is set when the symbols do not have the least room they ask for.
	Crowded bool

	layers []Layer
	depth  []float64 // of every layer from the innermost, mm of fabric, never falling
	radii  []float64 // of every layer, mm on paper
	sign   float64   // -1 where levels fall outwards
	level  float64   // of the innermost layer
}

// Stack lays the layers (from the centre outwards, at least one) so that the
// outermost one lies at fit.Outer, or nearer where fit.MaxScale forbids more.
// Each layer lies its rise outside the one before, farther where its symbols
// need the room.
func Stack(layers []Layer, fit Fit) *Radii {
	n := len(layers)
	m := &Radii{depth: make([]float64, n), layers: layers, radii: make([]float64, n), sign: 1, level: layers[0].Level}
	if layers[n-1].Level < layers[0].Level {
		m.sign = -1
	}
	for i := 1; i < n; i++ {
		m.depth[i] = math.Max(m.depth[i-1], m.depthOf(layers[i].Level))
	}
	least, narrow := 1.0, squeeze
	rises := make([]float64, n)
	lay := func(scale float64) float64 {
		for i, l := range layers {
			r := math.Max(least*l.Least, narrow*scale*l.Length/Turn)
			if i == 0 {
				if l.Least < smallCentre*fit.Outer {
					r = math.Max(r, l.Least) // which costs the rounds little
				}
				m.radii[i] = math.Max(r, fit.Hole)
				continue
			}
			rises[i] = math.Max(scale*(m.depth[i]-m.depth[i-1]), least*math.Max(l.Rise, l.Legs))
			m.radii[i] = math.Max(r, m.radii[i-1]+rises[i])
		}
		return m.radii[n-1]
	}
	if lay(fit.MaxScale) > fit.Outer {
		// On a page that cannot give every symbol its least room all give way
		// alike, until a third of the way out is left for heights.
		for i := 0; i < 60 && lay(0) > fit.Outer*0.7; i++ {
			least *= 0.95
		}
		m.Scale = bisect(0, fit.MaxScale, fit.Outer, lay)
		for m.sign > 0 && narrow > mostSqueeze && m.stretched(rises) > mostStretch {
			narrow -= 0.05
			m.Scale = bisect(0, fit.MaxScale, fit.Outer, lay)
		}
	} else {
		// Room to spare: let the innermost round out towards its true width.
		m.Scale = fit.MaxScale
		narrow = bisect(squeeze, 1, fit.Outer, func(x float64) float64 {
			narrow = x
			return lay(m.Scale)
		})
	}
	lay(m.Scale)
	if m.sign > 0 {
		m.drawOut(rises, fit.Loose)
	}
	m.crowd()
	return m
}

// drawOut shares what a layer was pushed outwards by among the layers inside it, so that
// no round is stretched far more than its neighbours. Where the innermost layer is loose,
// it goes along.
func (m *Radii) drawOut(rises []float64, loose bool) {
	most := mostRise
	if !loose {
		most = math.Max(most, m.stretched(rises))
	}
	for i := len(rises) - 1; i > 0; i-- {
		m.radii[i-1] = math.Max(m.radii[i-1], m.radii[i]-most*rises[i])
	}
}

// stretched is how much farther out the layers lie than their rises come to, as a factor,
// where that is most.
func (m *Radii) stretched(rises []float64) float64 {
	most, sum := 1.0, 0.0
	for i := 1; i < len(rises); i++ {
		if sum += rises[i]; sum > 0 {
			most = math.Max(most, (m.radii[i]-m.radii[0])/sum)
		}
	}
	return most
}

// crowdedShare is the share of the room that symbols ask for with which they can still be
// told apart.
const crowdedShare = 0.98

// crowd finds whether the layers have the room that they ask for.
func (m *Radii) crowd() {
	m.Crowded = false
	for i, l := range m.layers {
		m.Crowded = m.Crowded || m.radii[i] < crowdedShare*l.Least || i > 0 && m.radii[i]-m.radii[i-1] < crowdedShare*l.Rise
	}
}

// bisect is the largest x in [lo, hi] (nearly) for which the rising function f
// is at most goal.
func bisect(lo, hi, goal float64, f func(float64) float64) float64 {
	if f(hi) <= goal {
		return hi
	}
	for i := 0; i < 50; i++ {
		mid := (lo + hi) / 2
		if f(mid) <= goal {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// depthOf is how far a level lies outside the innermost layer.
func (m *Radii) depthOf(level float64) float64 { return m.sign * (level - m.level) }

// Shrink draws everything smaller by a factor, whatever room it asks for.
func (m *Radii) Shrink(by float64) {
	m.Scale *= by
	for i := range m.radii {
		m.radii[i] *= by
	}
	m.crowd()
}

// Of is the radius on paper of a layer.
func (m *Radii) Of(layer int) float64 { return m.radii[layer] }

// At is the radius on paper of a stitch of a layer that ends at a level of its own: off
// the layer's by what it is in the fabric, at the scale. So a layer that is pushed far out
// stays as even as it is, and only the legs up to it grow. It is never nearer the centre
// than a third of the innermost radius.
func (m *Radii) At(layer int, level float64) float64 {
	return math.Max(m.radii[layer]+m.Scale*(m.depthOf(level)-m.depth[layer]), m.radii[0]/3)
}
