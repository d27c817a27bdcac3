package geometry

import (
	"errors"
	"fmt"
	"math"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Measure is the size and shape of a fabric at a gauge; a nil gauge stands for
// no gauge at all. It takes time in proportion to the number of stitches.
//
// The level of a stitch's top is the mean level of the places it stands on and
// the stitch's own height. A chain hangs between its neighbours, in a slight
// arch; what stands in a space stands on the mean level of its chains; what
// goes around a post stands half way up the stitch; a spike is drawn up to the
// height of its round. Rings, row ends and foundation chains have level 0. A
// foundation chain is as loose as the stitches worked into it, so its chains
// have their width.
//
// The error says in words which stitch stands on something that is not there.
func Measure(f *fabric.Fabric, g *Gauge) (*Form, error) {
	if f == nil {
		return nil, errors.New("there is no fabric to measure")
	}
	if g == nil {
		g, _ = NewGauge(nil)
	}
	form := &Form{Parts: make([]*PartForm, len(f.Parts))}
	for i, p := range f.Parts {
		if p == nil {
			return nil, fmt.Errorf("part %d is missing", i+1)
		}
		m := measurer{gauge: g, part: p, parts: len(f.Parts), sizes: map[look]size{}}
		m.scales = g.scaled(p)
		if err := m.measure(); err != nil {
			return nil, err
		}
		form.Parts[i] = &PartForm{Rounds: m.rounds}
	}
	return form, nil
}

// measurer measures one part.
type measurer struct {
	gauge  *Gauge
	part   *fabric.Part
	parts  int // of the fabric
	rounds []RoundForm
	// inherited[i] holds, for each stitch of round i, how far what it stands on
	// is above the round below.
	inherited [][]float64
	// sums[i] holds, for each stitch of round i, the sum of the tops, evened
	// out (see evens), up to and including it, so that the level of a space costs the same however many
	// chains it has.
	sums  [][]float64
	sizes map[look]size
	// scales are how much wider and taller than their own sizes the stitches of
	// each round are, nil for not at all; scale is that of the round being
	// measured.
	scales []size
	scale  size
}

func (m *measurer) measure() error {
	p := m.part
	n := 0
	for i, r := range p.Rounds {
		if r == nil {
			return fmt.Errorf("%s: round %d is missing", p.Name, i+1)
		}
		n += len(r.Stitches)
	}
	m.rounds = make([]RoundForm, len(p.Rounds))
	m.sums = make([][]float64, len(p.Rounds))
	m.inherited = make([][]float64, len(p.Rounds))
	store := make([]float64, 4*n)
	cut := func(k int) (s []float64) {
		s, store = store[:k:k], store[k:]
		return s
	}
	for i, r := range p.Rounds {
		k := len(r.Stitches)
		f := &m.rounds[i]
		f.Tops, f.Widths, m.sums[i], m.inherited[i] = cut(k), cut(k), cut(k), cut(k)
		if i == 0 && isFoundation(r) {
			m.foundation(f)
		} else if err := m.round(i); err != nil {
			return err
		}
		sum := 0.0
		for j, t := range f.Tops {
			sum += t - (1-evens)*m.inherited[i][j]
			m.sums[i][j] = sum
		}
	}
	m.asides()
	return m.settle()
}

// isFoundation reports whether a part's first round is a ring or a chain.
func isFoundation(r *fabric.Round) bool {
	for i := range r.Stitches {
		if s := &r.Stitches[i]; s.Role == fabric.Worked && s.Kind != stitch.Of(stitch.Chain) {
			return false
		}
	}
	return len(r.Stitches) > 0 || r.Ring
}

// foundation measures a starting ring or chain.
func (m *measurer) foundation(f *RoundForm) {
	r := m.part.Rounds[0]
	var next *fabric.Round
	if len(m.part.Rounds) > 1 {
		next = m.part.Rounds[1]
	}
	width := m.gauge.Width(stitch.Of(stitch.Chain), stitch.Top)
	centre := next != nil && footing(next) == onCentre
	if r.About != "" && next != nil {
		// An edge as long as the stitches of the first round on it.
		for i := range next.Stitches {
			if s := &next.Stitches[i]; s.Counts {
				f.Circumference += m.gauge.Width(s.Counted(), stitch.Top)
			}
		}
		if m.part.Worked == fabric.InRounds {
			f.Radius = f.Circumference / (2 * math.Pi)
		}
		return
	}
	if next != nil && !centre {
		for i := range next.Stitches {
			if k := next.Stitches[i].Counted(); k.Base > stitch.Slip {
				width = m.gauge.Width(stitch.Of(k.Base), stitch.Top)
				break
			}
		}
	}
	n := 0
	for i := range r.Stitches {
		if r.Stitches[i].Role == fabric.Worked {
			f.Widths[i] = width
			n++
		}
	}
	length := float64(n) * width
	if centre {
		length = 0
		if r.Ring {
			length = math.Max(0, float64(n)-m.gauge.value[ringChains]) * width
		}
	}
	f.Circumference = length
	if m.part.Worked == fabric.InRounds {
		f.Radius = length / (2 * math.Pi)
	}
}

// A round may stand on another round, on one point in the centre, on a chain
// or edge that goes once round, or on both sides of a chain.
const (
	onRound = iota
	onCentre
	onEdge
	onBothSides
)

// footing tells what the first round of a part stands on, as far as its own
// stitches show.
func footing(r *fabric.Round) int {
	var first fabric.Ref
	places, one := 0, true
	for i := range r.Stitches {
		s := &r.Stitches[i]
		if s.Role == fabric.Join || s.Role == fabric.Travel {
			continue
		}
		for _, p := range s.On {
			switch p.Into {
			case stitch.Ring:
				return onCentre
			case stitch.Underside:
				return onBothSides
			}
			if places == 0 {
				first = p.At
			}
			places++
			one = one && p.At == first
		}
	}
	// Six single crochets in the second chain from the hook are a centre too.
	if places > 2 && one && !r.Row {
		return onCentre
	}
	return onEdge
}

// round measures any round but a foundation.
func (m *measurer) round(i int) error {
	r, f := m.part.Rounds[i], &m.rounds[i]
	if m.scales != nil {
		m.scale = m.scales[i]
	}
	var below float64
	if i > 0 {
		below = m.rounds[m.under(i)].Level
	}
	last := lastHalf(r)
	for j := range r.Stitches {
		if err := m.stitch(i, j, last, below); err != nil {
			return err
		}
	}
	m.hang(i, below)

	sum, area := 0.0, 0.0
	for j, w := range f.Widths {
		sum += w
		area += w * f.Tops[j]
	}
	f.Circumference = sum
	f.Level = below
	if sum > 0 {
		f.Level = area / sum
	}
	f.Height = f.Level - below
	if r.Row {
		return nil
	}
	f.Radius = sum / (2 * math.Pi)
	if inner, ok := m.inner(i); ok && f.Height > 0 {
		f.Flatness = (f.Radius - inner) / f.Height
	}
	return nil
}

// under is the round that round i stands on: the one before it or, for the second side of a divided piece,
// an older row.
func (m *measurer) under(i int) int {
	r := m.part.Rounds[i]
	latest := -1
	for j := range r.Stitches {
		if s := &r.Stitches[j]; s.Counts {
			for _, p := range s.On {
				if p.Into != stitch.Top {
					return i - 1
				}
				latest = max(latest, p.At.Round)
			}
		}
	}
	if !r.Row || latest < 1 || latest >= i-1 {
		return i - 1
	}
	return latest
}

// chainsUnder is how many stitches of the foundation a round stands on.
func chainsUnder(r *fabric.Round) int {
	on := map[int]bool{}
	for i := range r.Stitches {
		for _, p := range r.Stitches[i].On {
			on[p.At.Stitch] = true
		}
	}
	return len(on)
}

// inner is the flat radius of what round i stands on; false when it starts at
// an edge of its own, from which no growth can be told.
func (m *measurer) inner(i int) (float64, bool) {
	if i > 1 || i == 1 && !isFoundation(m.part.Rounds[0]) {
		return m.rounds[i-1].Radius, !m.part.Rounds[i-1].Row
	}
	switch foot := footing(m.part.Rounds[i]); {
	case foot == onCentre && i == 0:
		return 0, true
	case foot == onCentre:
		return m.rounds[0].Radius, true
	case foot == onBothSides && i == 1:
		// To and fro between the middles of the chains at the ends.
		return float64(max(0, chainsUnder(m.part.Rounds[1])-1)) * m.rounds[0].width() / math.Pi, true
	}
	return 0, false
}
