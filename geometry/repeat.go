package geometry

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"whorl/patterns/fabric"
)

// patternScale is how much wider and taller the rounds of a stitch pattern are
// than their stitches' own sizes say.
type patternScale struct {
	pattern       string
	width, height float64
}

// Fitted is the gauge made to agree with what was measured over stitch patterns
// ("6 fan repeats and 8 rounds = 10 cm"), as they are worked in the fabrics.
// Where a stitch was measured besides, only the rounds of the stitch pattern
// are scaled; where none was, everything is (see [Gauge.Scaled]). The error is a
// *[PatternError] for a stitch pattern that is in none of the fabrics.
func (g *Gauge) Fitted(fabrics []*fabric.Fabric) (*Gauge, error) {
	fitted := g
	for _, r := range g.patterns {
		width, height, err := repeatSize(fabrics, g, &r)
		if err != nil {
			return nil, err
		}
		s, err := fitted.Scaled(r, width, height)
		if err != nil {
			return nil, &PatternError{r.Pattern, err.Error()}
		}
		if len(g.readings) > 0 {
			own := *fitted
			own.scales = append(slices.Clone(fitted.scales),
				patternScale{r.Pattern, s.scaleW / fitted.scaleW, s.scaleH / fitted.scaleH})
			s = &own
		}
		fitted = s
	}
	return fitted, nil
}

// PatternError says why a gauge over a stitch pattern cannot be used.
type PatternError struct{ Pattern, Message string }

func (e *PatternError) Error() string { return e.Message }

// Has reports whether a stitch pattern is worked in the fabrics: a group or the
// repeat that a gauge can be fitted to (see [Gauge.Fitted]).
func Has(fabrics []*fabric.Fabric, pattern string) bool {
	for _, f := range fabrics {
		if f == nil {
			continue
		}
		for _, part := range f.Parts {
			if _, ok := findStretch(part, pattern); ok {
				return true
			}
		}
	}
	return false
}

// repeatSize is what one repeat (or stitch, as was counted) and one round of a
// stitch pattern come to at a gauge, in millimetres: in the first part that has
// it.
func repeatSize(fabrics []*fabric.Fabric, g *Gauge, r *Reading) (width, height float64, err error) {
	pattern := r.Pattern
	for _, f := range fabrics {
		if f == nil {
			continue
		}
		form, err := Measure(f, g)
		if err != nil {
			return 0, 0, err
		}
		for k, part := range f.Parts {
			s, ok := findStretch(part, pattern)
			if !ok {
				continue
			}
			rounds := form.Parts[k].Rounds
			across := 0
			for i := s.from; i <= s.to; i++ {
				height += math.Max(0, rounds[i].Height)
				if s.has[i] {
					width += rounds[i].Circumference
					across += s.repeats
					if r.Stitches {
						across += part.Rounds[i].Count() + part.Rounds[i].Chains() - s.repeats
					}
				}
			}
			return width / float64(across), height / float64(s.to-s.from+1), nil
		}
	}
	return 0, 0, &PatternError{pattern, fmt.Sprintf("%q is neither a stitch that is known nor a repeat of this pattern", pattern)}
}

// stretch is the rounds of a part that are worked in a stitch pattern: from one
// index to another, both included, so many repeats in each that has it.
type stretch struct {
	from, to, repeats int
	has               []bool
}

// findStretch finds the rounds of a stitch pattern: those with the groups that
// it is named for, or else with repeats, where most rounds have as many and are
// as long. The rounds between them are of it, too.
func findStretch(part *fabric.Part, pattern string) (s stretch, ok bool) {
	type like struct{ repeats, places int }
	alike := func(i int, name string) (l like) {
		r := part.Rounds[i]
		if name == "" {
			l.repeats = len(r.Repeats)
		} else {
			for _, g := range r.Groups {
				if own, _ := patternName(g.Name); own == name {
					l.repeats++
				}
			}
		}
		l.places = r.Count() + r.Chains()
		return l
	}
	name, anyRepeat := patternName(pattern)
	names := []string{name}
	if anyRepeat && name != "" {
		names = append(names, "")
	}
	for _, name := range names {
		n := map[like]int{}
		var best like
		for i := range part.Rounds {
			l := alike(i, name)
			if l.repeats < 2 && (name == "" || l.repeats < 1) {
				continue
			}
			if n[l]++; n[l] > n[best] {
				best = l
			}
		}
		if n[best] == 0 {
			continue
		}
		s = stretch{from: -1, repeats: best.repeats, has: make([]bool, len(part.Rounds))}
		for i := range part.Rounds {
			if alike(i, name) == best {
				if s.from < 0 {
					s.from = i
				}
				s.to, s.has[i] = i, true
			}
		}
		return s, true
	}
	return s, false
}

// patternName is the name in words such as "fan repeats", "V-sts" or "repeats in
// shell pattern", and whether they speak of repeats at all.
func patternName(words string) (name string, repeats bool) {
	var l []string
	for _, w := range strings.Fields(strings.ToLower(strings.ReplaceAll(words, "-", " "))) {
		switch w = singular(w); w {
		case "repeat", "rep", "pattern", "patt", "pat":
			repeats = true
		case "in", "of", "stitch", "stitche", "st", "the":
		default:
			l = append(l, w)
		}
	}
	return strings.Join(l, " "), repeats
}

func singular(word string) string { return strings.TrimSuffix(strings.ToLower(word), "s") }

// scaled finds the rounds of a part whose stitches are wider or taller than
// their own sizes say; nil for none.
func (g *Gauge) scaled(part *fabric.Part) []size {
	var l []size
	for _, p := range g.scales {
		s, ok := findStretch(part, p.pattern)
		if !ok {
			continue
		}
		if l == nil {
			l = slices.Repeat([]size{{1, 1}}, len(part.Rounds))
		}
		for i := s.from; i <= s.to; i++ {
			l[i] = size{l[i].width * p.width, l[i].height * p.height}
		}
	}
	return l
}
