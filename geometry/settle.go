package geometry

import (
	"errors"
	"fmt"
	"math"

	"whorl/patterns/fabric"
)

// Free is the inner radius of a profile that starts at an edge, not in a point
// or around a hole.
const Free = -1

const (
	// Stiffness is how much harder the fabric resists being drawn out along its
	// height than around its edge (b/a of the settled profile).
	stiffness = 20
	// lowest is the slant height, in millimetres, of a round that adds none.
	lowest = 0.1
	// exact is how near to the settled strains the solution must come.
	exact = 1e-9
)

// Settle is how rounds of the given lengths (circumferences) and slant heights
// come to rest as a surface of revolution: the radius of each and its distance
// along the axis, all in millimetres. inner is the radius that the first round
// grows from, or [Free], when the first round stands up as a tube.
//
// The radii r minimise
//
//	Σ (2πr/L − 1)² + 20 Σ max(0, |Δr|/s − 1)²
//
// over the rounds of length L and slant height s, and the rise of each is
// √(s² − Δr²) where that is real, else 0; where the slopes of neighbouring
// rounds zigzag, Δr is that of the meridian through them (see even). It is
// exact for shapes whose rounds fit: discs, tubes, cones, spheres. The problem
// is convex and banded; it is solved by Newton's method, in time linear in the
// rounds for each of its few steps, until every strain 2πr/L − 1 is right to
// 1e-9.
//
// Lengths and slant heights must be above zero and finite (the slant height of
// the first round may be 0 when it is free).
func Settle(lengths, slants []float64, inner float64) (r, z []float64, err error) {
	m, err := settle(lengths, slants, inner)
	return m.r, m.z, err
}

// meridian is a settled profile.
type meridian struct {
	r, z []float64
	// growths are what the radius gains over each round, evened out.
	growths []float64
}

func settle(lengths, slants []float64, inner float64) (meridian, error) {
	if err := settles(lengths, slants, inner); err != nil {
		return meridian{}, err
	}
	p := profile{inner: inner, slants: slants}
	if err := p.solve(lengths); err != nil {
		return meridian{}, err
	}
	m := meridian{r: p.r, growths: p.trial, z: p.step} // both are done with
	for i := range m.growths {
		m.growths[i] = p.growth(p.r, i)
	}
	even(m.growths, slants, p.grad)
	height := 0.0
	for i, d := range m.growths {
		s := slants[i]
		height += math.Sqrt(math.Max(0, (s-d)*(s+d)))
		m.z[i] = height
	}
	return m, nil
}

// settles says what keeps rounds from having a settled profile.
func settles(lengths, slants []float64, inner float64) error {
	n := len(lengths)
	if n == 0 {
		return errors.New("there are no rounds to settle")
	}
	if len(slants) != n {
		return fmt.Errorf("there are %d rounds but %d heights", n, len(slants))
	}
	if !(inner >= 0 || inner == Free) || math.IsInf(inner, 1) {
		return fmt.Errorf("the rounds cannot grow from a radius of %v mm", inner)
	}
	for i := range lengths {
		if !(lengths[i] > 0) || math.IsInf(lengths[i], 1) {
			return fmt.Errorf("round %d is %v mm long: a round needs a length", i+1, lengths[i])
		}
		least := slants[i] > 0 || i == 0 && inner == Free && slants[i] == 0
		if !least || math.IsInf(slants[i], 1) {
			return fmt.Errorf("round %d is %v mm tall: a round needs a height", i+1, slants[i])
		}
	}
	return nil
}

// profile is a settled profile being looked for.
type profile struct {
	inner  float64
	slants []float64
	pull   []float64 // 2π/L
	r      []float64 // the radii so far
	step   []float64 // and where to from there
	trial  []float64
	grad   []float64
	diag   []float64 // the second derivatives: banded
	off    []float64
	taut   []int8 // which rounds are drawn out: 1 growing, −1 closing in
	full   bool   // the last step was taken in full
}

// growth is the growth of the radius over round i, 0 at a free edge.
func (p *profile) growth(r []float64, i int) float64 {
	switch {
	case i > 0:
		return r[i] - r[i-1]
	case p.inner == Free:
		return 0
	}
	return r[0] - p.inner
}

func (p *profile) solve(lengths []float64) error {
	n := len(lengths)
	store := make([]float64, 7*n)
	cut := func() (s []float64) { s, store = store[:n:n], store[n:]; return s }
	p.pull, p.r, p.step, p.trial, p.grad, p.diag, p.off = cut(), cut(), cut(), cut(), cut(), cut(), cut()
	p.taut = make([]int8, n)
	for i, l := range lengths {
		p.pull[i] = 2 * math.Pi / l
		p.r[i] = l / (2 * math.Pi)
	}
	for round := range 1000 {
		changed := p.derive(p.r)
		if p.slope() <= exact || round > 0 && p.full && !changed {
			return nil
		}
		p.newton()
		p.search()
	}
	return errors.New("the rounds do not come to rest: check the gauge and the stitch counts")
}

// search goes along the step. The energy is a patchwork of quadratics: a full
// step ends at the bottom of the present one; where that lies well beyond it,
// the step is cut short near the lowest point along it.
func (p *profile) search() {
	steep := p.fall(0)
	t, end := 1.0, p.fall(1)
	if p.full = end <= -steep/2 || steep >= 0; !p.full {
		lo, atLo, hi, atHi := 0.0, steep, 1.0, end
		for range 60 {
			t = lo - atLo*(hi-lo)/(atHi-atLo)
			v := p.fall(t)
			if math.Abs(v) <= -steep/10 {
				break
			}
			// Halving the value at the end that stays keeps both ends moving.
			if v < 0 {
				lo, atLo, atHi = t, v, atHi/2
			} else {
				hi, atHi, atLo = t, v, atLo/2
			}
		}
	}
	p.move(t)
	p.r, p.trial = p.trial, p.r
}

// move puts the radii at t along the step into trial.
func (p *profile) move(t float64) {
	for i := range p.trial {
		p.trial[i] = p.r[i] + t*p.step[i]
	}
}

// fall is how fast the energy changes with t at t along the step.
func (p *profile) fall(t float64) float64 {
	p.move(t)
	sum := 0.0
	for i, c := range p.pull {
		sum += 2 * c * (c*p.trial[i] - 1) * p.step[i]
		d, s := p.growth(p.trial, i), p.slants[i]
		if v := math.Abs(d) - s; v > 0 {
			e := p.step[i]
			if i > 0 {
				e -= p.step[i-1]
			}
			sum += 2 * stiffness * v / s * e / s * math.Copysign(1, d)
		}
	}
	return sum
}

// derive finds the first and second derivatives of the energy, and tells
// whether other rounds are taut than the last time.
func (p *profile) derive(r []float64) (changed bool) {
	for i := range r {
		c := p.pull[i]
		p.grad[i] = 2 * c * (c*r[i] - 1)
		p.diag[i] = 2 * c * c
		p.off[i] = 0
		d, s := p.growth(r, i), p.slants[i]
		sign := int8(0)
		// A round that has just become taut stays so within rounding, or a
		// disc, all of whose rounds are on the brink, would never settle.
		v := math.Abs(d) - s
		if v > 0 || p.taut[i] != 0 && v > -1e-13*(r[i]+s) {
			sign = 1
			if d < 0 {
				sign = -1
			}
			g := 2 * stiffness / s * v / s * float64(sign)
			h := 2 * stiffness / (s * s)
			p.grad[i] += g
			p.diag[i] += h
			if i > 0 {
				p.grad[i-1] -= g
				p.diag[i-1] += h
				p.off[i] = -h
			}
		}
		changed = changed || sign != p.taut[i]
		p.taut[i] = sign
	}
	return changed
}

// slope bounds how far any strain is from its settled value: in the strains the
// second derivative of the energy is at least 2.
func (p *profile) slope() float64 {
	sum := 0.0
	for i, g := range p.grad {
		u := g / p.pull[i]
		sum += u * u
	}
	return math.Sqrt(sum) / 2
}

// newton solves for the step to where the derivative would be 0, by elimination
// along the band.
func (p *profile) newton() {
	n := len(p.r)
	for i := range p.step {
		p.step[i] = -p.grad[i]
		if i > 0 && p.off[i] != 0 {
			f := p.off[i] / p.diag[i-1]
			p.diag[i] -= f * p.off[i]
			p.step[i] -= f * p.step[i-1]
		}
	}
	p.step[n-1] /= p.diag[n-1]
	for i := n - 2; i >= 0; i-- {
		p.step[i] = (p.step[i] - p.off[i+1]*p.step[i+1]) / p.diag[i]
	}
}

// settle sets the settled figures of every run of rounds in the part.
func (m *measurer) settle() error {
	for from := 0; from < len(m.rounds); from++ {
		if m.flat(from) {
			continue
		}
		to := from
		for to < len(m.rounds) && !m.flat(to) {
			to++
		}
		if err := m.settleRun(from, to); err != nil {
			return err
		}
		from = to
	}
	return nil
}

// flat reports whether a round is worked to and fro.
func (m *measurer) flat(i int) bool {
	r := m.part.Rounds[i]
	if i == 0 && isFoundation(r) {
		return m.part.Worked == fabric.InRows
	}
	return r.Row
}

// settleRun settles the rounds from one index up to another.
func (m *measurer) settleRun(from, to int) error {
	inner, first := float64(Free), from
	if from == 0 && isFoundation(m.part.Rounds[0]) {
		if len(m.rounds) > 1 {
			if r, ok := m.inner(1); ok {
				m.rounds[0].R = r
				inner, first = r, 1
			}
		}
	} else if r, ok := m.inner(from); ok {
		inner = r
	}
	store := make([]float64, 0, 2*(to-first))
	for i := first; i < to; i++ {
		if m.rounds[i].Circumference > 0 {
			store = append(store, m.rounds[i].Circumference)
		}
	}
	n := len(store)
	if n == 0 {
		return nil
	}
	for i := first; i < to; i++ {
		f := &m.rounds[i]
		if f.Circumference == 0 {
			continue
		}
		s := math.Max(f.Height, lowest)
		if inner == Free && len(store) == n {
			s = math.Max(f.Height, 0)
		}
		store = append(store, s)
	}
	s, err := settle(store[:n], store[n:], inner)
	if err != nil {
		return fmt.Errorf("%s: %w", m.part.Name, err)
	}
	k, below, up := 0, math.Max(inner, 0), 0.0
	for i := first; i < to; i++ {
		f := &m.rounds[i]
		if f.Circumference == 0 {
			f.R, f.Z = below, up
			continue
		}
		f.R, f.Z = s.r[k], s.z[k]
		f.Strain = f.R/f.Radius - 1
		f.Angle = math.Atan2(s.growths[k], f.Z-up)
		below, up = f.R, f.Z
		k++
	}
	return nil
}
