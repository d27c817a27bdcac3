package geometry

import (
	"fmt"
	"math"
	"slices"

	"whorl/patterns/stitch"
)

// Reading is one line of gauge, as it was measured on a swatch.
type Reading struct {
	Count float64     // stitches (or repeats) in Over; 0 when only Rows were counted
	Kind  stitch.Kind // what was counted; zero when it is a stitch pattern
	// Pattern is the stitch pattern that was counted when Kind is zero. With both,
	// the stitches were counted in rounds that are made mostly of Kind.
	Pattern string
	// Stitches is set when the stitches of Pattern were counted rather than its
	// repeats, and Chains when chains were counted among them.
	Stitches, Chains bool
	Rows             float64 // rounds or rows in Over, 0 when not said
	Over             float64 // millimetres
	// In is set when the swatch was worked in one loop or around the post.
	In stitch.Into
	// Lines are the lines of the pattern's file with the rounds that were counted, where these are
	// of unlike heights: each is as tall on the mean as was counted.
	Lines map[int]bool
}

// ReadingError says what is wrong with one line of gauge.
type ReadingError struct {
	Index   int // of the reading, from 0
	Message string
	Help    string // what to do next
}

func (e *ReadingError) Error() string { return e.Message + "; " + e.Help }

// The narrowest and widest stitch, and the lowest and tallest round, that a
// gauge may come to in millimetres: thread with a steel hook, and arm crochet.
const (
	minWidth, maxWidth   = 0.5, 100
	minHeight, maxHeight = 0.25, 500
)

// Gauge is how wide and tall the stitches are.
type Gauge struct {
	readings       []measured
	patterns       []Reading
	value          [defaultCount]float64
	scaleW, scaleH float64 // from the gauge of a stitch pattern
	scales         []patternScale
	measured       bool // across, over a stitch pattern or a piece
}

// measured is a reading of a kind of stitch.
type measured struct {
	kind          stitch.Kind
	in            stitch.Into
	width, height float64 // 0 when not said
}

// NewGauge makes a gauge of what was measured, which may be nothing (see
// [Gauge.Assumed]). It refuses readings that are not numbers above zero, that
// come to stitches narrower than 0.5 mm or wider than 100 mm (or rounds lower
// than 0.25 mm or taller than 500 mm), and two different readings of one kind;
// the error is a *[ReadingError].
func NewGauge(readings []Reading) (*Gauge, error) {
	g := &Gauge{scaleW: 1, scaleH: 1}
	for i := range defaults {
		g.value[i] = defaults[i].Value
	}
	for i, r := range readings {
		if message, help := r.fault(); message != "" {
			return nil, &ReadingError{i, message, help}
		}
		if !r.Kind.Is() || r.Pattern != "" {
			g.patterns = append(g.patterns, r)
			continue
		}
		m := measured{kind: plainer(r.Kind), in: plainerInto(r.In)}
		if r.Count > 0 {
			m.width = r.Over / r.Count
		}
		if r.Rows > 0 {
			m.height = r.Over / r.Rows
		}
		old := g.reading(m.kind, m.in)
		switch {
		case old == nil:
			g.readings = append(g.readings, m)
		case (old.width == 0) != (m.width == 0) && (old.height == 0) != (m.height == 0):
			old.width, old.height = old.width+m.width, old.height+m.height
		case *old != m:
			return nil, &ReadingError{i, "two lines of gauge for the same stitch do not agree",
				"keep the one that was measured on the swatch as it is worn"}
		}
	}
	return g, nil
}

// fault is what is wrong with a reading and what to do about it.
func (r *Reading) fault() (message, help string) {
	const say = `say what was counted on the swatch, such as "16 hdc and 11 rounds = 10 cm"`
	switch {
	case !(r.Count > 0) && !(r.Count == 0 && r.Rows > 0) || math.IsInf(r.Count, 1):
		return "the gauge counts no stitches", say
	case !(r.Over > 0) || math.IsInf(r.Over, 1):
		return "the gauge is measured over no length", say
	case !(r.Rows >= 0) || math.IsInf(r.Rows, 1):
		return "the gauge has an impossible number of rows", say
	case r.Kind.Base > stitch.TripleTreble:
		return "the gauge counts a stitch that is not known", say
	}
	// A repeat of a stitch pattern is many stitches wide.
	widest := float64(maxWidth)
	if !r.Kind.Is() {
		widest *= 100
	}
	if w := r.Over / r.Count; r.Count > 0 && (w < minWidth || w > widest) {
		return fmt.Sprintf("this gauge makes one stitch %v mm wide", round3(w)),
			"check the number of stitches and the unit"
	}
	if h := r.Over / r.Rows; r.Rows > 0 && (h < minHeight || h > maxHeight) {
		return fmt.Sprintf("this gauge makes one round %v mm tall", round3(h)),
			"check the number of rounds and the unit"
	}
	return "", ""
}

// plainer leaves out what does not change a stitch's size: how many legs meet
// at its top, and the manners other than Extended.
func plainer(k stitch.Kind) stitch.Kind {
	k.Manner &= stitch.Extended
	switch k.Shape {
	case stitch.Together:
		k.Shape, k.Legs = stitch.Plain, 0
	case stitch.Picot:
	default:
		k.Legs = 0
	}
	return k
}

// plainerInto is the one of the places of like effect that stands for all.
func plainerInto(in stitch.Into) stitch.Into {
	switch in {
	case stitch.FrontLoop, stitch.BackLoop:
		return stitch.BackLoop
	case stitch.FrontPost, stitch.BackPost:
		return stitch.FrontPost
	case stitch.Between:
		return stitch.Between
	}
	return stitch.Top
}

// Assumed reports whether nothing was measured across, so that every width
// follows from the default stitch width, or from the height of rounds.
func (g *Gauge) Assumed() bool {
	return !g.across() && !g.measured
}

// across reports whether a stitch was measured across.
func (g *Gauge) across() bool {
	return slices.ContainsFunc(g.readings, func(m measured) bool { return m.width > 0 })
}

// Width is the width in millimetres that a stitch of kind k worked into in
// takes along the edge of its round. The width of a plain stitch is that of
// the nearest kind that was measured; other shapes are so many times as wide
// (see [Defaults]), a Ntog as wide as one stitch. Where only rounds were
// measured, it follows from their height by the flat-circle rule (see
// [Gauge.Height]). It is 0 for no stitch.
func (g *Gauge) Width(k stitch.Kind, in stitch.Into) float64 {
	if !known(k) {
		return 0
	}
	k, in = plainer(k), plainerInto(in)
	if m := g.reading(k, in); m != nil && m.width > 0 {
		return m.width * g.scaleW
	}
	w := g.value[stitchWidth]
	if m := g.nearest(k, func(m *measured) bool { return m.width > 0 }); m != nil {
		w = m.width / g.wider(m.kind)
	} else if m := g.nearest(k, func(*measured) bool { return true }); m != nil {
		w = m.height / g.lower(m.in) * 2 * math.Pi / g.flat(m.kind)
	}
	return w * g.wider(k) * g.scaleW
}

// Height is how much a round of stitches of kind k worked into in adds to the
// fabric, in millimetres. A kind that was not measured takes its height from
// the nearest one that was, in the ratio of the flat-circle rule h/w = k/2π for
// k increases a round (sc 6, hdc 8, dc 12, tr 16: agreed by six published
// teaching sources); without any rows in the gauge it takes it from the width.
// It is 0 for no stitch.
func (g *Gauge) Height(k stitch.Kind, in stitch.Into) float64 {
	if !known(k) {
		return 0
	}
	k, in = plainer(k), plainerInto(in)
	if m := g.reading(k, in); m != nil && m.height > 0 {
		return m.height * g.scaleH
	}
	if k.Shape == stitch.Picot {
		// A loop of so many chains, laid double.
		n := math.Max(0, float64(k.Legs))
		return n / 2 * g.Width(stitch.Of(stitch.Chain), stitch.Top) / g.scaleW * g.scaleH
	}
	if m := g.nearest(k, func(m *measured) bool { return m.height > 0 }); m != nil {
		return m.height / g.lower(m.in) * g.flat(k) / g.flat(m.kind) * g.lower(in) * g.scaleH
	}
	return g.Width(k, stitch.Top) / g.wider(k) / g.scaleW * g.scaleH *
		g.flat(k) / (2 * math.Pi) * g.lower(in)
}

// Patterns is the lines of gauge that were counted in repeats of a stitch
// pattern.
func (g *Gauge) Patterns() []Reading { return g.patterns }

// Scaled is the gauge made to agree with a reading over a stitch pattern:
// width and height are what one repeat and one round of that pattern come to
// at g, in millimetres, and every width and height is scaled so that they come
// to what was measured. A height of 0, or a reading without rows, leaves the
// heights to follow the widths, and one of rows alone the widths to follow the
// heights, unless a stitch was measured besides.
func (g *Gauge) Scaled(r Reading, width, height float64) (*Gauge, error) {
	if message, help := r.fault(); message != "" {
		return nil, &ReadingError{0, message, help}
	}
	if !(width > 0) || !(height >= 0) || math.IsInf(width, 1) || math.IsInf(height, 1) {
		return nil, fmt.Errorf("the stitch pattern %q has no size to compare with the gauge", r.Pattern)
	}
	s := *g
	w, h := 0.0, 0.0
	if r.Count > 0 {
		w = r.Over / r.Count / width
	}
	if r.Rows > 0 && height > 0 {
		h = r.Over / r.Rows / height
	}
	switch {
	case w > 0 && h == 0:
		h = w
	case w == 0 && h > 0 && len(g.readings) > 0:
		w = 1
	case w == 0:
		w = h
	}
	s.scaleW *= w
	s.scaleH *= h
	s.measured = s.measured || r.Count > 0
	if u := s.Width(stitch.Of(stitch.Single), stitch.Top); !(u >= minWidth && u <= maxWidth) {
		return nil, &ReadingError{0, fmt.Sprintf("the gauge over %q makes one stitch %v mm wide", r.Pattern, round3(u)),
			"check the number of repeats and the unit"}
	}
	return &s, nil
}

// Times is the gauge with every width and height times by, which is above 0: what
// agrees with a piece that measures so many times what it comes to at g (see
// [Sample.Size]). The error says how large a stitch would be that cannot be.
func (g *Gauge) Times(by float64) (*Gauge, error) {
	s := *g
	s.scaleW *= by
	s.scaleH *= by
	s.measured = true
	if u := s.Width(stitch.Of(stitch.Single), stitch.Top); !(u >= minWidth && u <= maxWidth) {
		return nil, fmt.Errorf("this gauge makes one stitch %v mm wide", round3(u))
	}
	return &s, nil
}

// known reports whether k is a stitch with a height of its own.
func known(k stitch.Kind) bool { return k.Is() && k.Base <= stitch.TripleTreble }

// reading is what was measured of exactly this kind, nil for nothing.
func (g *Gauge) reading(k stitch.Kind, in stitch.Into) *measured {
	for i := range g.readings {
		if m := &g.readings[i]; m.kind == k && m.in == in {
			return m
		}
	}
	return nil
}

// nearest is the reading that is nearest in height to k, of those that ok
// takes: plain stitches before others, and the first of equals.
func (g *Gauge) nearest(k stitch.Kind, ok func(*measured) bool) *measured {
	var best *measured
	least := math.Inf(1)
	for i := range g.readings {
		m := &g.readings[i]
		if !ok(m) {
			continue
		}
		d := math.Abs(g.flat(m.kind) - g.flat(k))
		if m.kind.Shape != stitch.Plain || m.in != stitch.Top {
			d += 100 // beyond any difference of heights
		}
		if d < least {
			best, least = m, d
		}
	}
	return best
}

// flat is the number of increases a round that keep a circle of k flat, which
// is 2π times its height in stitch widths.
func (g *Gauge) flat(k stitch.Kind) float64 {
	i := flatChain + int(k.Base-stitch.Chain)
	f := g.value[i]
	if k.Manner&stitch.Extended != 0 {
		next := f + 4
		if i < flatTripleTreble {
			next = g.value[i+1]
		}
		f += g.value[extendedShare] * (next - f)
	}
	return f
}

// wider is the width of a shape in widths of the plain stitch.
func (g *Gauge) wider(k stitch.Kind) float64 {
	switch k.Shape {
	case stitch.Cluster:
		return g.value[clusterWidth]
	case stitch.Puff:
		return g.value[puffWidth]
	case stitch.Bobble:
		return g.value[bobbleWidth]
	case stitch.Popcorn:
		return g.value[popcornWidth]
	case stitch.Picot:
		return g.value[picotWidth]
	}
	if k.Base == stitch.Chain {
		return g.value[chainWidth]
	}
	return 1
}

// lower is the rise of a stitch worked into in over that of one in the tops.
func (g *Gauge) lower(in stitch.Into) float64 {
	switch plainerInto(in) {
	case stitch.BackLoop:
		return g.value[ribHeight]
	case stitch.FrontPost:
		return g.value[postHeight]
	case stitch.Between:
		return g.value[betweenHeight]
	}
	return 1
}

// round3 is x to three significant decimals, for messages.
func round3(x float64) float64 { return math.Round(x*1000) / 1000 }
