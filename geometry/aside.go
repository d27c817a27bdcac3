package geometry

import (
	"math"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// asides finds [RoundForm.Aside] for the rows of a part: each is laid along what its
// stitches stand on, so that a row that is turned before the end of the one below leaves
// that end free, and one that grows at one end stands out there.
func (m *measurer) asides() {
	p := m.part
	if p.Worked != fabric.InRows || len(p.Rounds) == 0 {
		return
	}
	at := make([][]float64, len(p.Rounds)) // of the middle of every stitch
	way, right := 1.0, 0.0                 // of a row, in the direction of the first; of right-side rows
	for i, r := range p.Rounds {
		at[i] = make([]float64, len(r.Stitches))
		along, end := make([]float64, len(r.Stitches)), 0.0
		for j, w := range m.rounds[i].Widths {
			along[j] = end + w/2
			end += w
		}
		if i == 0 {
			copy(at[i], along)
			m.rounds[i].Aside = end / 2
		} else {
			way = -way
			start, ok := fitted(along, m.bases(i, at), &way)
			if !ok {
				start = m.rounds[i-1].Aside - way*end/2
			}
			for j := range along {
				at[i][j] = start + way*along[j]
			}
			m.rounds[i].Aside = start + way*end/2
		}
		if r.Number > 0 && right == 0 {
			right = way
			if r.Wrong {
				right = -way
			}
		}
	}
	// Right-side rows are worked to the left.
	first := m.rounds[0].Aside
	if isFoundation(p.Rounds[0]) && len(p.Rounds) > 1 {
		first = m.rounds[1].Aside
	}
	for i := range m.rounds {
		m.rounds[i].Aside = -right * (m.rounds[i].Aside - first)
	}
}

// bases are where what each stitch of row i stands on is, NaN where that is unknown.
func (m *measurer) bases(i int, at [][]float64) []float64 {
	r := m.part.Rounds[i]
	out := make([]float64, len(r.Stitches))
	for j := range r.Stitches {
		sum, n := 0.0, 0.0
		for _, p := range r.Stitches[j].On {
			if p.Into == stitch.Ring || p.Into == stitch.RowEnd || p.At.Round < 0 || p.At.Round >= i || p.At.Stitch < 0 || p.At.Stitch >= len(at[p.At.Round]) {
				continue
			}
			x := at[p.At.Round][p.At.Stitch]
			if p.Into == stitch.Space && p.Last.Round == p.At.Round && p.Last.Stitch >= 0 && p.Last.Stitch < len(at[p.At.Round]) {
				x = (x + at[p.At.Round][p.Last.Stitch]) / 2
			}
			sum += x
			n++
		}
		out[j] = math.NaN()
		if n > 0 {
			out[j] = sum / n
		}
	}
	return out
}

// fitted is where a row begins for its stitches, which are so far along it, to lie over their
// bases: as the middle half of them does, so that what is increased or decreased near one
// end leaves the rest where it is. It turns the row's way round where they rise against it
// and is false where none has a base.
func fitted(along, bases []float64, way *float64) (start float64, ok bool) {
	n, x, y, xy := 0.0, 0.0, 0.0, 0.0
	for j, b := range bases {
		if !math.IsNaN(b) {
			n, x, y, xy = n+1, x+along[j], y+b, xy+along[j]*b
		}
	}
	if n == 0 {
		return 0, false
	}
	if rise := xy - x*y/n; rise**way < -1e-6 {
		*way = -*way
	}
	var off []float64
	for j, b := range bases {
		if !math.IsNaN(b) {
			off = append(off, b-*way*along[j])
		}
	}
	slices.Sort(off)
	off = off[len(off)/4 : len(off)-len(off)/4]
	sum := 0.0
	for _, o := range off {
		sum += o
	}
	return sum / float64(len(off)), true
}
