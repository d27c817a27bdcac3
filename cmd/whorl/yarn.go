package main

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"text/tabwriter"

	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/fabric"
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
// sample was weighed. A size that could not be measured is left out. Of several
// yarns each is reckoned by what is worked with it, where the words say that.
func (j *job) yarnNeeds() (l []yarnNeed) {
	if j.unworkable() {
		return nil
	}
	several := len(j.pattern.Yarns) > 1
	parted := shares{}
	if several {
		parted = j.shares()
	}
	for k := range j.pattern.Yarns {
		y := &j.pattern.Yarns[k]
		if y.Swatch == nil && y.Sample == nil {
			continue
		}
		in := func(*fabric.Round) bool { return true }
		if parted.known {
			in = func(r *fabric.Round) bool { return parted.with(k, r) }
		}
		n := yarnNeed{name: yarnName(y)}
		var used patterns.Amount
		var share func(i int) float64 // of the used amount, for size i
		if s := y.Sample; s != nil {
			used = s.Used
			whole := j.stitchArea(s.Size, in)
			share = func(i int) float64 { return j.stitchArea(i, in) / whole }
			n.basis = j.sampleBasis(s, parted.known)
		} else {
			s := y.Swatch
			used = s.Used
			share = func(i int) float64 { return j.area(i, in) / (s.Width * s.Height) }
			n.basis = fmt.Sprintf("By a swatch of %s that took %s: as much for the same area of %s, and nothing for ends.%s",
				s.Of, s.Used, map[bool]string{true: "what is worked with this yarn", false: "fabric"}[parted.known], j.piecesMade())
		}
		switch {
		case parted.known:
			n.basis += parted.how
		case several && y.Sample != nil && len(j.fabrics) < 2: // it is what it took
		case several && y.Sample != nil:
			n.basis += fmt.Sprintf(" As %s, its share of the fabric is taken to be alike in all sizes.", parted.why)
		case several:
			n.basis += fmt.Sprintf(" As %s, this is for all of the fabric, as if it were all worked with this yarn.", parted.why)
		}
		n.reckon(j, used, share, *y)
		l = append(l, n)
	}
	return l
}

// yarnName is what a yarn is called in a list: its name and colour, or its words.
func yarnName(y *patterns.Yarn) string {
	l := slices.DeleteFunc([]string{y.Name, y.Colour}, func(s string) bool { return s == "" })
	return cmp.Or(strings.Join(l, ", "), y.Words)
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
func (j *job) sampleBasis(s *patterns.WeighedSize, parted bool) string {
	took := s.Used.String()
	if j.apart() {
		took += " for all pieces together"
	}
	if len(j.fabrics) < 2 {
		return fmt.Sprintf("By a sample that took %s.", took)
	}
	return fmt.Sprintf("By a sample of size %s that took %s; the other sizes go by their stitches and chains%s, each counted by its area at the gauge.",
		j.pattern.Sizes[s.Size], took, map[bool]string{true: " in this yarn"}[parted])
}

// apart reports whether several pieces are made that are not worked on one another.
func (j *job) apart() bool {
	n := 0
	for k := range j.pattern.Parts {
		if j.pattern.Parts[k].From == "" {
			n++
		}
	}
	return n > 1
}

// area is the area of the fabric of a size, mm², in those of its rounds that are
// asked for: a part that is made twice counts twice.
func (j *job) area(i int, in func(*fabric.Round) bool) (sum float64) {
	for k, part := range j.fabrics[i].Parts {
		sum += float64(j.pieces(part.Name)) * sumIn(part, geometry.Areas(part, j.forms[i].Parts[k]), in)
	}
	return sum
}

// stitchArea is the area of the stitches of a size (see
// [geometry.Gauge.StitchArea]), in those of its rounds that are asked for.
func (j *job) stitchArea(i int, in func(*fabric.Round) bool) (sum float64) {
	for _, part := range j.fabrics[i].Parts {
		sum += float64(j.pieces(part.Name)) * sumIn(part, j.gauge.StitchAreas(part), in)
	}
	return sum
}

// sumIn sums the areas of those rounds of a part that are asked for.
func sumIn(part *fabric.Part, areas []float64, in func(*fabric.Round) bool) (sum float64) {
	for i, a := range areas {
		if in(part.Rounds[i]) {
			sum += a
		}
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
