package geometry

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// patternScale is how much wider and taller the rounds of a stitch pattern are
// than their stitches' own sizes say.
type patternScale struct {
	reading       Reading
	width, height float64
}

// Fitted is the gauge made to agree with what was measured over stitch patterns
// ("6 fan repeats and 8 rounds = 10 cm"), as they are worked in the fabrics.
// The first of them scales everything (see [Gauge.Scaled]), unless a stitch was
// measured besides; any other only the rounds of its own stitch pattern. The
// error is a *[PatternError] for a stitch pattern that is in none of the fabrics.
func (g *Gauge) Fitted(fabrics []*fabric.Fabric) (*Gauge, error) {
	fitted := g
	for i, r := range g.patterns {
		width, height, err := repeatSize(fabrics, fitted, &r)
		if err != nil {
			return nil, err
		}
		s, err := fitted.Scaled(r, width, height)
		if err != nil {
			return nil, &PatternError{r.Pattern, err.Error()}
		}
		if len(g.readings) > 0 || i > 0 {
			own := *fitted
			own.measured = s.measured
			scale := patternScale{r, s.scaleW / fitted.scaleW, s.scaleH / fitted.scaleH}
			if r.Count == 0 {
				scale.width = 1
			}
			own.scales = append(slices.Clone(fitted.scales), scale)
			s = &own
		}
		fitted = s
	}
	return fitted, nil
}

// PatternError says why a gauge over a stitch pattern cannot be used.
type PatternError struct{ Pattern, Message string }

func (e *PatternError) Error() string { return e.Message }

// Has reports whether what was measured is worked in the fabrics: the group or the
// repeat, or the rounds of the kind, that a gauge can be fitted to (see
// [Gauge.Fitted]).
func (r Reading) Has(fabrics []*fabric.Fabric) bool {
	for _, f := range fabrics {
		if f == nil {
			continue
		}
		for _, part := range f.Parts {
			if _, ok := r.stretch(part); ok {
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
	for _, f := range fabrics {
		if f == nil {
			continue
		}
		form, err := Measure(f, g)
		if err != nil {
			return 0, 0, err
		}
		for k, part := range f.Parts {
			s, ok := r.stretch(part)
			if !ok {
				continue
			}
			rounds := form.Parts[k].Rounds
			across, high := 0, 0
			for i := s.from; i <= s.to; i++ {
				if r.Kind.Is() && !s.has[i] {
					continue
				}
				height += math.Max(0, rounds[i].Height)
				high++
				if !s.has[i] {
					continue
				}
				width += rounds[i].Circumference
				switch {
				case !r.Stitches:
					across += s.repeats
				case r.Chains:
					across += part.Rounds[i].Count() + part.Rounds[i].Chains()
				default:
					across += part.Rounds[i].Count()
				}
			}
			return width / float64(across), height / float64(high), nil
		}
	}
	return 0, 0, &PatternError{r.Pattern, fmt.Sprintf("%q is neither a stitch that is known nor a repeat of this pattern", r.Pattern)}
}

// stretch finds the rounds of a part that the reading is of.
func (r *Reading) stretch(part *fabric.Part) (stretch, bool) {
	if r.Lines != nil {
		return linesStretch(part, r.Lines)
	}
	if r.Kind.Is() {
		return kindStretch(part, r.Kind)
	}
	return findStretch(part, r.Pattern)
}

// linesStretch finds the rounds of a part that are told on some lines of the file.
func linesStretch(part *fabric.Part, lines map[int]bool) (s stretch, ok bool) {
	s = stretch{from: -1, has: make([]bool, len(part.Rounds))}
	for i, r := range part.Rounds {
		if !lines[r.Line] || r.Carried || r.Number == 0 || r.Count() == 0 {
			continue
		}
		if s.from < 0 {
			s.from = i
		}
		s.to, s.has[i] = i, true
	}
	return s, s.from >= 0
}

// kindStretch finds the rounds of a part that a swatch of a kind was like: those
// of it (see ofKind) that are worked even, of which most are alike; where there
// are none, all of it.
func kindStretch(part *fabric.Part, k stitch.Kind) (s stretch, ok bool) {
	type like struct{ stitches, chains int }
	of := ofKind(part, k)
	n := map[like]int{}
	var last, best like
	alike := make([]like, len(part.Rounds))
	for i, r := range part.Rounds {
		l := like{r.Count(), r.Chains()}
		if of[i] && l.stitches+l.chains == last.stitches+last.chains {
			alike[i] = l
			if n[l]++; n[l] > n[best] {
				best = l
			}
		}
		last = l
	}
	s = stretch{from: -1, has: of}
	for i := range of {
		of[i] = of[i] && (n[best] == 0 || alike[i] == best)
		if of[i] {
			if s.from < 0 {
				s.from = i
			}
			s.to = i
		}
	}
	return s, s.from >= 0
}

// ofKind are the rounds of a part that are made mostly of stitches as tall as a
// kind.
func ofKind(part *fabric.Part, k stitch.Kind) []bool {
	of := make([]bool, len(part.Rounds))
	for i, r := range part.Rounds {
		n := 0
		for j := range r.Stitches {
			if t := &r.Stitches[j]; t.Counts && t.Counted().Base == k.Base {
				n++
			}
		}
		of[i] = 2*n > r.Count()
	}
	return of
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
				if called(g.Name, name) {
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

// called reports whether a group has the name of a stitch pattern: "V-stitch (V-st)" has
// two.
func called(group, pattern string) bool {
	long, short, _ := strings.Cut(group, "(")
	for _, name := range []string{long, strings.TrimSuffix(short, ")")} {
		if own, _ := patternName(name); own == pattern && own != "" {
			return true
		}
	}
	return false
}

func singular(word string) string { return strings.TrimSuffix(strings.ToLower(word), "s") }

// Taller is how many times as high as its stitches a round is that is told on a line of the file, of
// those that were counted together though they are of unlike heights (see [Reading.Lines]).
func (g *Gauge) Taller(line int) float64 {
	taller := 1.0
	for _, p := range g.scales {
		if p.reading.Lines[line] {
			taller *= p.height
		}
	}
	return taller
}

// scaled finds the rounds of a part whose stitches are wider or taller than
// their own sizes say; nil for none.
func (g *Gauge) scaled(part *fabric.Part) []size {
	var l []size
	for _, p := range g.scales {
		s, ok := p.reading.stretch(part)
		if !ok {
			continue
		}
		if p.reading.Kind.Is() {
			s = stretch{to: len(part.Rounds) - 1, has: ofKind(part, p.reading.Kind)}
		}
		if l == nil {
			l = slices.Repeat([]size{{1, 1}}, len(part.Rounds))
		}
		for i := s.from; i <= s.to; i++ {
			if s.has[i] || !p.reading.Kind.Is() {
				l[i] = size{l[i].width * p.width, l[i].height * p.height}
			}
		}
	}
	return l
}
