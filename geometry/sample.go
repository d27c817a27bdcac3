package geometry

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"whorl/patterns/fabric"
)

// Sample is a piece, or some rounds of one, that was measured: "rounds 1-6
// measure 11 cm across", "one square = 18 cm along each side".
type Sample struct {
	// Name is what the piece is called, "" when only rounds were named. A part
	// with a word of it in its name is meant; else the first part that will do.
	Name string
	// From and To are the numbers of the first and the last round measured, 0
	// and 0 for the whole piece.
	From, To int
	Rows     bool // rows were named, rather than rounds
	Way      SampleWay
}

// SampleWay is which way a piece was measured.
type SampleWay uint8

const (
	// Unsaid is across a piece that lies flat in the round, and along the
	// direction of work of any other.
	Unsaid SampleWay = iota
	// Across is the diameter of a circle, a motif with corners from flat side to
	// flat side, a piece in rows along its rows, and a tube laid flat.
	Across
	// Side is one side of a motif with corners.
	Side
	// Corner is from a corner to the one opposite, or to the side opposite where
	// there is none.
	Corner
	// Around is the edge of a piece in the round.
	Around
	// High is along the direction of work.
	High
)

// polygons are the corners of motifs that are called after them.
var polygons = map[string]int{"triangle": 3, "square": 4, "pentagon": 5, "hexagon": 6, "hex": 6, "heptagon": 7, "octagon": 8}

// sameSize is how far sizes of the same sample may differ between sizes of a
// pattern, as a share.
const sameSize = 0.005

// Size is how large the sample comes to be at a gauge, in millimetres. The rounds
// are measured as they lie when no further ones have been worked. The diameter of
// a circle is 2r for its settled radius r (see [Settle]); a motif with k corners
// is the regular polygon whose sides are as far from the centre as the motif is
// deep, d: from flat to flat 2d, its side 2d tan(π/k), from corner to corner
// 2d/cos(π/k), or for odd k d + d/cos(π/k). It grows in proportion with the
// widths and heights of the gauge.
//
// The error says in words why it has no size.
func (s Sample) Size(fabrics []*fabric.Fabric, g *Gauge) (float64, error) {
	least, most := math.Inf(1), 0.0
	var failed error
	for _, f := range fabrics {
		if f == nil {
			continue
		}
		size, err := s.sizeIn(f, g)
		if err != nil {
			failed = err
			continue
		}
		least, most = math.Min(least, size), math.Max(most, size)
	}
	switch {
	case most == 0 && failed != nil:
		return 0, failed
	case most == 0:
		return 0, fmt.Errorf("%s has no size", s.what())
	case most > least*(1+sameSize):
		return 0, fmt.Errorf("%s is not of one size in all sizes of the pattern", s.what())
	}
	return least, nil
}

// sizeIn is the size of the sample in one size of the pattern.
func (s Sample) sizeIn(f *fabric.Fabric, g *Gauge) (float64, error) {
	k, last, err := s.find(f)
	if err != nil {
		return 0, err
	}
	whole := f.Parts[k]
	part := *whole
	part.Rounds = whole.Rounds[:last+1]
	cut := *f
	cut.Parts = slices.Clone(f.Parts)
	cut.Parts[k] = &part
	form, err := Measure(&cut, g)
	if err != nil {
		return 0, err
	}
	rounds := form.Parts[k].Rounds
	size, end, measures := 0.0, &rounds[last], piece(&part, rounds)
	foot := footing(firstRound(&part))
	flat := !measures.Rows && foot == onCentre
	corners := Corners(&part)
	if n := polygons[lastWord(s.Name)]; corners == 0 && flat {
		corners = n
	}
	way := s.Way
	if way == Unsaid && (flat || s.To == 0 && measures.Rows) {
		way = Across
	}
	angle := math.Pi / float64(max(3, corners))
	switch {
	case foot == onBothSides && way != Around: // an oval: neither its length nor its width is that of a circle
	case way == Unsaid || way == High:
		size = end.Level
		if flat {
			size = measures.Depth
		}
		if s.From > 1 {
			below := roundNumbered(&part, s.From-1)
			if below < 0 {
				return 0, fmt.Errorf("there is no %s", s.rounds(s.From-1, s.From-1))
			}
			size = end.Level - rounds[below].Level
		}
	case (way == Side || way == Corner) && corners == 0:
		return 0, fmt.Errorf("%s has no corners that can be measured between", s.what())
	case way == Side:
		size = PolygonSide(measures.Depth, max(3, corners))
	case way == Corner:
		size = 2 * measures.Depth / math.Cos(angle)
		if corners%2 == 1 {
			size = measures.Depth * (1 + 1/math.Cos(angle))
		}
	case way == Around && !measures.Rows:
		size = end.Circumference
	case way == Across && measures.Rows:
		size = measures.Width
	case way == Across && corners > 0:
		size = 2 * measures.Depth
	case way == Across && flat:
		size = 2 * end.R
	case way == Across && !measures.Rows:
		size = end.Circumference / 2
	}
	if !(size > 0) {
		return 0, fmt.Errorf("%s cannot be measured that way", s.what())
	}
	return size, nil
}

// find finds the part that is meant and its last round that was measured.
func (s Sample) find(f *fabric.Fabric) (part, last int, err error) {
	best, score := -1, 0
	for k, p := range f.Parts {
		if s.last(p) < 0 {
			continue
		}
		n := 1
		switch {
		case s.To > 0 && s.Rows == (p.Worked == fabric.InRows):
			n = 3
		case s.To == 0 && polygons[lastWord(s.Name)] == Corners(p) && Corners(p) > 0:
			n = 4
		case s.To == 0 && p.Worked == fabric.InRounds && footing(firstRound(p)) == onCentre:
			n = 3
		}
		for _, w := range strings.Fields(strings.ToLower(s.Name)) {
			for _, v := range strings.Fields(strings.ToLower(p.Name)) {
				if singular(w) == singular(v) && len(w) > 2 {
					n += 10
				}
			}
		}
		if n > score {
			best, score = k, n
		}
	}
	switch {
	case best < 0 && s.To > 0:
		return 0, 0, fmt.Errorf("there is no %s", s.rounds(s.To, s.To))
	case best < 0:
		return 0, 0, fmt.Errorf("there is nothing to be measured as %s", s.what())
	}
	return best, s.last(f.Parts[best]), nil
}

// last is the index of the last round measured in a part, -1 for none.
func (s Sample) last(p *fabric.Part) int {
	if s.To > 0 {
		return roundNumbered(p, s.To)
	}
	for i := len(p.Rounds) - 1; i >= 0; i-- {
		if r := p.Rounds[i]; r.Number > 0 && !r.Carried {
			return i
		}
	}
	return -1
}

// roundNumbered is the index of the first round with a number, -1 for none.
func roundNumbered(p *fabric.Part, number int) int {
	for i, r := range p.Rounds {
		if r.Number == number && !r.Carried {
			return i
		}
	}
	return -1
}

// firstRound is the first round that is no foundation.
func firstRound(p *fabric.Part) *fabric.Round {
	if len(p.Rounds) > 1 && isFoundation(p.Rounds[0]) {
		return p.Rounds[1]
	}
	return p.Rounds[0]
}

// what is the sample in words.
func (s Sample) what() string {
	if s.To > 0 {
		return s.rounds(s.From, s.To)
	}
	return fmt.Sprintf("%q", s.Name)
}

func (s Sample) rounds(from, to int) string {
	name := "Rnd"
	if s.Rows {
		name = "Row"
	}
	if from == to {
		return fmt.Sprintf("%s %d", name, to)
	}
	return fmt.Sprintf("%ss %d-%d", name, from, to)
}

func lastWord(s string) string {
	l := strings.Fields(strings.ToLower(s))
	if len(l) == 0 {
		return ""
	}
	return singular(strings.Trim(l[len(l)-1], ".,"))
}
