package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"text/tabwriter"

	"whorl/geometry"
	"whorl/patterns"
)

// yarnNeed is how much of one yarn every size takes.
type yarnNeed struct {
	name  string // as the file names it, "" for the only one without a name
	basis string // what the figures go by, in sentences
	sizes []sizeNeed
	// ounces and yards are set where the file weighs or measures in them.
	ounces, yards bool
	ball          string // "100 g", "" where no ball can be reckoned with
}

// sizeNeed is how much one size takes; what is not known is 0.
type sizeNeed struct {
	size          string
	grams, metres float64
	balls         int
}

// yarnNeeds is how much the sizes take of every yarn of which a swatch or a
// sample was weighed. A size that could not be measured is left out.
func (j *job) yarnNeeds() (l []yarnNeed) {
	for _, y := range j.pattern.Yarns {
		if y.Swatch == nil && y.Sample == nil || j.unworkable() {
			continue
		}
		n := yarnNeed{name: strings.Join(slices.DeleteFunc([]string{y.Name, y.Colour}, func(s string) bool { return s == "" }), ", ")}
		var used patterns.Amount
		var share func(i int) float64 // of the used amount, for size i
		if s := y.Sample; s != nil {
			used = s.Used
			whole := j.stitchArea(s.Size)
			share = func(i int) float64 { return j.stitchArea(i) / whole }
			n.basis = j.sampleBasis(s)
		} else {
			s := y.Swatch
			used = s.Used
			share = func(i int) float64 { return j.area(i) / (s.Width * s.Height) }
			n.basis = fmt.Sprintf("By a swatch of %s that took %s: as much for the same area of fabric, and nothing for ends.%s",
				s.Of, s.Used, j.piecesMade())
		}
		n.reckon(j, used, share, y)
		l = append(l, n)
	}
	return l
}

// reckon works out what every size takes, and the balls.
func (n *yarnNeed) reckon(j *job, used patterns.Amount, share func(i int) float64, y patterns.Yarn) {
	n.ounces = used.Unit == "oz" || y.BallWeight.Unit == "oz"
	n.yards = used.Unit == "yd" || y.BallLength.Unit == "yd"
	ball, length := y.BallWeight.Grams(), y.BallLength.Metres()
	for i, f := range j.fabrics {
		if j.forms[i] == nil || !(share(i) > 0) {
			continue
		}
		s := sizeNeed{size: f.Size, grams: used.Grams() * share(i), metres: used.Metres() * share(i)}
		if ball > 0 && length > 0 {
			if s.grams > 0 {
				s.metres = s.grams * length / ball
			} else {
				s.grams = s.metres * ball / length
			}
		}
		switch {
		case s.grams > 0 && ball > 0:
			s.balls, n.ball = geometry.Whole(s.grams, ball), y.BallWeight.String()
		case s.metres > 0 && length > 0:
			s.balls, n.ball = geometry.Whole(s.metres, length), y.BallLength.String()
		}
		n.sizes = append(n.sizes, s)
	}
	if n.ball != "" {
		n.basis += fmt.Sprintf(" Rounded up to whole balls of %s.", n.ball)
	}
}

// sampleBasis says what the figures go by where a sample was weighed.
func (j *job) sampleBasis(s *patterns.WeighedSize) string {
	if len(j.fabrics) < 2 {
		return fmt.Sprintf("By a sample that took %s.", s.Used)
	}
	return fmt.Sprintf("By a sample of size %s that took %s; the other sizes go by their stitches and chains, each counted by its area at the gauge.",
		j.pattern.Sizes[s.Size], s.Used)
}

// area is the area of all the fabric of a size, mm²: a part that is made twice
// counts twice.
func (j *job) area(i int) (sum float64) {
	for k, part := range j.fabrics[i].Parts {
		sum += float64(j.pieces(part.Name)) * geometry.Area(part, j.forms[i].Parts[k])
	}
	return sum
}

// stitchArea is the area of all stitches of a size (see
// [geometry.Gauge.StitchArea]).
func (j *job) stitchArea(i int) (sum float64) {
	for _, part := range j.fabrics[i].Parts {
		sum += float64(j.pieces(part.Name)) * j.gauge.StitchArea(part)
	}
	return sum
}

// pieces is how many are made of the part of a name.
func (j *job) pieces(name string) int {
	for k := range j.pattern.Parts {
		if j.pattern.Parts[k].Name == name {
			return j.pattern.Pieces(k)
		}
	}
	return 1
}

// piecesMade names the parts that are made several times.
func (j *job) piecesMade() string {
	var l []string
	for k := range j.pattern.Parts {
		if n := j.pattern.Pieces(k); n > 1 {
			name := j.pattern.Parts[k].Called()
			if name == "" {
				name = "the piece"
			}
			l = append(l, fmt.Sprintf("%d of %s", n, name))
		}
	}
	if len(l) == 0 {
		return ""
	}
	return " Made: " + strings.Join(l, ", ") + "."
}

// weight and length are what a size takes, in the units of the file and
// rounded up; "" for what is not known.
func (n *yarnNeed) weight(s sizeNeed) string {
	switch {
	case !(s.grams > 0):
		return ""
	case n.ounces:
		return decimal(up(s.grams/patterns.Amount{Value: 1, Unit: "oz"}.Grams(), 10), 1) + " oz"
	}
	return decimal(up(s.grams, 1), 0) + " g"
}

func (n *yarnNeed) length(s sizeNeed) string {
	switch {
	case !(s.metres > 0):
		return ""
	case n.yards:
		return decimal(up(s.metres/patterns.Amount{Value: 1, Unit: "yd"}.Metres(), 1), 0) + " yd"
	}
	return decimal(up(s.metres, 1), 0) + " m"
}

// up rounds up to so many parts of one, but for what is only a rounding away.
func up(v, parts float64) float64 { return math.Ceil(v*parts-1e-9) / parts }

// inBalls is the number of balls in words, "" where there is none.
func (n *yarnNeed) inBalls(s sizeNeed) string {
	if s.balls == 0 {
		return ""
	}
	return many(s.balls, "ball")
}

// yarn prints how much yarn the sizes take.
func (j *job) yarn(out io.Writer) {
	for _, n := range j.yarnNeeds() {
		fmt.Fprintln(out, strings.TrimSuffix("Yarn: "+n.name, ": "))
		t := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
		for _, s := range n.sizes {
			fmt.Fprintf(t, "  %s\n", strings.Join(slices.DeleteFunc([]string{s.size, n.weight(s), n.length(s), n.inBalls(s)},
				func(s string) bool { return s == "" }), "\t"))
		}
		t.Flush()
		fmt.Fprintf(out, "  %s\n\n", n.basis)
	}
}
