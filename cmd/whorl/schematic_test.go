package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"whorl/chart/output/outputtest"
	"whorl/chart/scene"
	"whorl/patterns"
)

// inCentimetres and inInches write a length as the trade does, by other means than
// the schematic: from the tenth of a millimetre and from a table of quarters.
func inCentimetres(mm float64) string {
	return strings.TrimSuffix(fmt.Sprintf("%.1f", math.Floor(mm+0.5)/10), ".0")
}

func inInches(mm float64) string {
	quarters := int(math.Floor(mm/25.4*4 + 0.5))
	s := fmt.Sprintf("%d%s", quarters/4, []string{"", "¼", "½", "¾"}[quarters%4])
	return strings.TrimPrefix(s, "0")
}

// trade is the measurement of all sizes in the trade's order, in both units.
func trade(mm []float64, write func(float64) string, unit string) string {
	l := make([]string, len(mm))
	for i, v := range mm {
		l[i] = write(v)
	}
	if len(slices.Compact(slices.Clone(l))) == 1 {
		return l[0] + " " + unit // of all sizes
	}
	return l[0] + " (" + strings.Join(l[1:], ", ") + ") " + unit
}

// drawSchematic draws the schematic of a file and gives the names of what is written.
func drawSchematic(t *testing.T, file, format string, more ...string) string {
	t.Helper()
	args := append([]string{"draw", file, "--picture", "schematic", "--format", format, "-o", t.TempDir()}, more...)
	status, out, errs := whorl(t, "", args...)
	if status != statusDone {
		t.Fatalf("%s: %s", file, errs)
	}
	return strings.TrimSpace(out)
}

func checked(t *testing.T, file string) (r report) {
	t.Helper()
	_, out, errs := whorl(t, "", "check", "--json", file)
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatal(err, errs)
	}
	return r
}

// The figures in the PDF are the finished measurements of check --json, in every
// size and in both units.
func TestSchematicFiguresAreThoseOfCheck(t *testing.T) {
	outputtest.Tool(t, "pdftotext")
	for _, file := range examples(t) {
		text := strings.Join(strings.Fields(outputtest.Run(t, "pdftotext", "-layout", drawSchematic(t, file, "pdf"), "-")), " ")
		r := checked(t, file)
		for name := range r.Sizes[0].Finished {
			var mm []float64
			for _, s := range r.Sizes {
				mm = append(mm, s.Finished[name])
			}
			for _, want := range []string{trade(mm, inCentimetres, "cm"), trade(mm, inInches, "in")} {
				if !strings.Contains(text, want) {
					t.Errorf("%s: %s is %s, which is not on the schematic:\n%s", filepath.Base(file), name, want, text)
				}
			}
		}
	}
}

// outlineOf is the size of an outline in an SVG, in millimetres of the piece.
func outlineOf(t *testing.T, svg, id string) (width, height float64) {
	t.Helper()
	scale := regexp.MustCompile(`<g id="` + id + `"[^>]* data-scale="([0-9.]+)"`).FindStringSubmatch(svg)
	path := regexp.MustCompile(`<g id="` + id + `-outline"[^>]*><path [^>]*\bd="([^"]+)"`).FindStringSubmatch(svg)
	box := regexp.MustCompile(`<svg [^>]*width="([0-9.]+)mm"[^>]*viewBox="0 0 ([0-9.]+) `).FindStringSubmatch(svg)
	if scale == nil || path == nil || box == nil {
		t.Fatalf("there is no outline %s", id)
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	d, err := canvas.ParseSVGPath(path[1])
	if err != nil {
		t.Fatal(err)
	}
	unit := number(box[1]) / number(box[2]) * number(scale[1])
	b := d.Bounds()
	return b.W() * unit, b.H() * unit
}

// The outlines are to scale, in every size, to half a hundredth.
func TestSchematicIsToScale(t *testing.T) {
	near := func(where string, got, want float64) {
		if math.Abs(got-want) > 0.005*want {
			t.Errorf("%s: drawn %.1f mm, is %.1f mm", where, got, want)
		}
	}
	for _, file := range examples(t) {
		for _, size := range checked(t, file).Sizes {
			svg, err := os.ReadFile(drawSchematic(t, file, "svg", "--size", size.Name))
			if err != nil {
				t.Fatal(err)
			}
			where := filepath.Base(file) + ", " + size.Name
			if flat := size.Finished["flat_width_mm"]; flat > 0 {
				w, h := outlineOf(t, string(svg), "flat")
				near(where+", width", w, flat)
				near(where+", depth", h, size.Finished["depth_mm"])
				if size.Fit != nil { // made for a head
					w, h = outlineOf(t, string(svg), "crown")
					near(where+", crown", w, size.Finished["circumference_mm"]/math.Pi)
					near(where+", crown", h, w)
				}
			}
			if size.Parts[0].Worked == "rows" {
				w, h := outlineOf(t, string(svg), "part-1")
				rows := size.Parts[0].Rounds
				length, width := 0.0, 0.0
				for _, r := range rows {
					if r.Number > 0 {
						length, width = length+r.Height, math.Max(width, r.Circumference)
					}
				}
				near(where+", length in rows", w, length)
				near(where+", width in rows", h, width)
			}
		}
	}
}

const (
	scarfWords = `gauge: 14 hdc and 10 rows = 10 cm
parts:
  - name: Scarf
    worked: rows
    text: |
      Foundation: Ch 30.
      Row 1: Hdc in 3rd ch from hook and in each ch across, turn. (28 hdc)
      Rows 2-150: Ch 1, hdc in each st across, turn. (28 hdc)
`
	cowlWords = `sizes: [S, L]
gauge: 14 hdc and 10 rounds = 10 cm
parts:
  - name: Cowl
    worked: rounds
    text: |
      Foundation: Ch 80 (100); join with sl st to form a ring.
      Rnd 1: Ch 1, hdc in each ch around; join with sl st in first hdc. (80 (100) hdc)
      Rnds 2-20: Ch 1, hdc in each st around; join. (80 (100) hdc)
`
	squareWords = `gauge: 14 dc and 8 rounds = 10 cm
parts:
  - name: Square
    worked: rounds
    text: |
      Rnd 1: Ch 4, join with sl st to form a ring, ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beginning ch-3. (12 dc, 4 ch-2 sps)
      Rnd 2: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, [(3 dc, ch 2, 3 dc) in next ch-2 sp] 3 times; join with sl st in top of beginning ch-3. (24 dc, 4 ch-2 sps)
`
	eightSizes = `sizes: [Preemie, Newborn, Baby, Toddler, Child, Small Adult, Medium Adult, Large Adult]
head: 30 (34, 38, 44, 48, 52, 56, 60) cm
gauge: 20 sc and 22 rounds = 10 cm
parts:
  - name: Hat
    worked: rounds
    text: |
      Foundation: Ch 56 (64, 72, 80, 88, 96, 104, 112); join with sl st to form a ring.
      Rnds 1-20 (21, 22, 23, 24, 25, 26, 27): Sc in each st around. (56 (64, 72, 80, 88, 96, 104, 112) sc)
`
)

// turned is the rectangle of a text that may be read from the right.
func turned(l *scene.Text) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = rectangle(l)
	if l.Angle != -90 {
		return x0, y0, x1, y1
	}
	return l.X + y0 - l.Y, l.Y - (x1 - l.X), l.X + y1 - l.Y, l.Y - (x0 - l.X)
}

// lines are the straight pieces of what is stroked in a group.
func lines(g *scene.Group) (l [][2]canvas.Point) {
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *scene.Group:
			l = append(l, lines(n)...)
		case *scene.Path:
			if n.Style.Stroke == nil || !n.Style.Stroke.Opaque {
				continue
			}
			c := n.D.Coords()
			for i := 1; i < len(c); i++ {
				l = append(l, [2]canvas.Point{c[i-1], c[i]})
			}
		}
	}
	return l
}

// disc is a round white ground, and how many straight pieces are drawn before it,
// which it covers.
type disc struct {
	x, y, r float64
	over    int
}

// discs are the white grounds of letters in a group.
func discs(g *scene.Group) (l []disc) {
	n := 0
	var walk func(g *scene.Group)
	walk = func(g *scene.Group) {
		for _, node := range g.Nodes {
			switch node := node.(type) {
			case *scene.Group:
				walk(node)
			case *scene.Path:
				if fill := node.Style.Fill; fill != nil && *fill == scene.RGB(0xffffff) {
					b := node.D.Bounds()
					l = append(l, disc{(b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2, b.W() / 2, n})
				}
				n += len(lines(&scene.Group{Nodes: []scene.Node{node}}))
			}
		}
	}
	walk(g)
	return l
}

// uncovered are the pieces of lines that no disc covers, none longer than 0.2 mm.
func uncovered(l [][2]canvas.Point, over []disc) (out [][2]canvas.Point) {
	for i, p := range l {
		steps := int(p[1].Sub(p[0]).Length()/0.2) + 1
		for k := range steps {
			a, b := p[0].Interpolate(p[1], float64(k)/float64(steps)), p[0].Interpolate(p[1], float64(k+1)/float64(steps))
			hidden := false
			for _, d := range over {
				hidden = hidden || i < d.over && math.Hypot(a.X-d.x, a.Y-d.y) <= d.r && math.Hypot(b.X-d.x, b.Y-d.y) <= d.r
			}
			if !hidden {
				out = append(out, [2]canvas.Point{a, b})
			}
		}
	}
	return out
}

// schematicSetWell reports texts that leave the page, lie on one another or are
// crossed by a line.
func schematicSetWell(t *testing.T, where string, s *scene.Scene) {
	t.Helper()
	if err := s.Check(); err != nil {
		t.Errorf("%s: %v", where, err)
	}
	all := texts(&s.Root)
	strokes := uncovered(lines(&s.Root), discs(&s.Root))
	for i, a := range all {
		x0, y0, x1, y1 := turned(a)
		if x0 < 8 || y0 < 8 || x1 > s.Width-8 || y1 > s.Height-8 {
			t.Errorf("%s: %q leaves the page", where, a.String)
		}
		for _, b := range all[:i] {
			u0, v0, u1, v1 := turned(b)
			if x0 < u1-0.05 && u0 < x1-0.05 && y0 < v1-0.05 && v0 < y1-0.05 {
				t.Errorf("%s: %q lies on %q", where, a.String, b.String)
			}
		}
		for _, l := range strokes {
			steps := int(math.Hypot(l[1].X-l[0].X, l[1].Y-l[0].Y)/0.2) + 1
			for k := range steps + 1 {
				f := float64(k) / float64(steps)
				x, y := l[0].X+f*(l[1].X-l[0].X), l[0].Y+f*(l[1].Y-l[0].Y)
				if x > x0-0.3 && x < x1+0.3 && y > y0-0.3 && y < y1+0.3 {
					t.Errorf("%s: %q is crossed by a line at %.1f, %.1f", where, a.String, x, y)
					break
				}
			}
		}
	}
}

// Schematics of all kinds of pieces, with many sizes or none, long titles, and
// without what need not be given.
func TestSchematicsAreSetWell(t *testing.T) {
	long := "title: " + strings.Repeat("A Name Far Too Long ", 12) + "\ncopyright: " + strings.Repeat("all of this is to be at the foot ", 9) + "\n"
	cases := map[string]string{"scarf": scarfWords, "cowl": cowlWords, "square": squareWords, "eight sizes": eightSizes,
		"long title": long + eightSizes, "long sizes": strings.Replace(eightSizes, "Small Adult", "Adults with heads that are rather smaller than those of most other adults", 1), "no gauge": strings.SplitN(scarfWords, "\n", 2)[1], "cap": hdcCap("head: 30 cm\n", 8, 5, 4),
		"disc": circle("hdc", 8, 5), "gathered": gatherWords, "ball": ballWords, "oval": ovalWords, "ruffle": hdcCap("", 16, 3, 3),
		"tiny": strings.Replace(strings.Replace(scarfWords, "2-150", "2", 1), "150", "2", 1)}
	for _, file := range examples(t) {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		cases[filepath.Base(file)] = string(data)
	}
	for name, text := range cases {
		j, err := load("-", strings.NewReader(text))
		if err != nil || j.unworkable() {
			t.Fatal(name, err, j.faults)
		}
		for _, p := range []patterns.Picture{{Draw: "schematic"}, {Draw: "schematic", Paper: "Letter"}, {Draw: "schematic", Nested: true}} {
			s, err := j.schematic(p, nil)
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			schematicSetWell(t, name, s)
		}
	}
}

// Nested, every size has its outline and its leader: one size alone has neither,
// and sizes that are alike share one.
func TestNestedSizes(t *testing.T) {
	alike := strings.NewReplacer("Baby, Toddler", "Baby, Bigger", "34, 38, 44", "34, 38, 38", "64, 72, 80", "64, 72, 72", "21, 22, 23", "21, 22, 22")
	for _, c := range []struct {
		words    string
		outlines int // in all, for the hat laid flat
		names    []string
	}{
		{eightSizes, 8, []string{">Preemie<", ">Toddler<", ">Medium Adult<", ">Large Adult<"}},
		{alike.Replace(eightSizes), 8, []string{">Baby, Bigger<"}},
		{strings.Replace(cowlWords, "[S, L]", "[L]", 1), 0, nil},
	} {
		words := strings.NewReplacer("80 (100)", "80").Replace(c.words)
		if c.outlines > 0 {
			words = c.words
		}
		dir := t.TempDir()
		status, out, errs := whorl(t, words+"pictures: [{draw: schematic, sizes: nested}]\n", "draw", "-", "-o", dir, "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		svg, err := os.ReadFile(strings.TrimSpace(out))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range c.names {
			if !strings.Contains(string(svg), name) {
				t.Errorf("%s is not named", name)
			}
		}
		if nested := strings.Contains(string(svg), "one in another"); nested != (c.outlines > 0) {
			t.Errorf("%d outlines, but nested: %v", c.outlines, nested)
		}
		j, err := load("-", strings.NewReader(words))
		if err != nil {
			t.Fatal(err)
		}
		s, err := j.schematic(patterns.Picture{Draw: "schematic", Nested: true}, nil)
		if err != nil {
			t.Fatal(err)
		}
		closed := 0
		var walk func(g *scene.Group)
		walk = func(g *scene.Group) {
			for _, n := range g.Nodes {
				switch n := n.(type) {
				case *scene.Group:
					if n.ID != "crown" && n.ID != "crown-outline" && n.ID != "legend" && n.ID != "scale" {
						walk(n)
					}
				case *scene.Path:
					if n.Style.Line != nil && *n.Style.Line == 0.3 && n.D.Closed() {
						closed++
					}
				}
			}
		}
		walk(&s.Root)
		if c.outlines > 0 && closed != c.outlines-1 {
			t.Errorf("%d outlines within the largest, want %d", closed, c.outlines-1)
		}
	}
}

const (
	ballWords = `title: Ball
gauge: 20 sc and 22 rounds = 10 cm
parts:
  - name: Ball
    worked: rounds
    text: |
      Rnd 1: 6 sc in magic ring. (6 sc)
      Rnd 2: 2 sc in each st around. (12 sc)
      Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)
      Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (24 sc)
      Rnds 5-8: Sc in each st around. (24 sc)
      Rnd 9: *Sc in next 2 sts, sc2tog; rep from * around. (18 sc)
      Rnd 10: *Sc in next st, sc2tog; rep from * around. (12 sc)
      Rnd 11: Sc2tog around. (6 sc)
`
	ovalWords = `gauge: 12 sc and 13 rounds = 10 cm
parts:
  - name: Mat
    worked: rounds
    text: |
      Ch 9.
      Rnd 1: Sc in 2nd ch from hook, sc in next 6 chs, 3 sc in last ch; working along opposite side of foundation ch, sc in next 6 chs, 2 sc in last ch; join with sl st in first sc. (18 sc)
      Rnd 2: Ch 1, 2 sc in same st, sc in next 6 sts, 2 sc in each of next 3 sts, sc in next 6 sts, 2 sc in each of last 2 sts; join with sl st in first sc. (24 sc)
`
)

// A hat on a brim in rows shows which edge meets which; a piece of one part does
// not, and neither does a part alone.
func TestAssembly(t *testing.T) {
	words, err := os.ReadFile(filepath.Join("..", "..", "patterns", "examples", "bulrush-hat.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	hat, _, _ := strings.Cut(string(words), "pictures:")
	for _, c := range []struct {
		name, words, picture string
		meets                bool
	}{
		{"hat", hat, "{draw: schematic}", true},
		{"nested", hat, "{draw: schematic, sizes: nested}", true},
		{"brim", hat, "{draw: schematic, part: Brim}", false},
		{"scarf", scarfWords, "{draw: schematic}", false},
		{"cowl", cowlWords, "{draw: schematic}", false},
	} {
		status, out, errs := whorl(t, c.words+"pictures: ["+c.picture+"]\n", "draw", "-", "-o", t.TempDir(), "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		svg, err := os.ReadFile(strings.TrimSpace(out))
		if err != nil {
			t.Fatal(err)
		}
		count := func(s string) int { return strings.Count(string(svg), s) }
		want := 0
		if c.meets {
			want = 1
		}
		if c.name == "nested" {
			// Sentences are in the description too. There is no room for the pieces apart: letters at their edges, and
			// one in the legend.
			for s, n := range map[string]int{">A<": 3, ">B<": 2, "A: the first round of the Body is": 2, "B: the two short ends of the Brim are joined.": 2, ">edges with one letter meet<": 1} {
				if got := count(s); got != n {
					t.Errorf("%s: %d times %q, want %d", c.name, got, s, n)
				}
			}
			continue
		}
		for s, n := range map[string]int{">A<": 2 * want, ">B<": want, "A: the first round of the Body is": 2 * want, "B: the two short ends of the Brim": 2 * want, ">edges that meet<": want} {
			if got := count(s); got != n {
				t.Errorf("%s: %d times %q, want %d", c.name, got, s, n)
			}
		}
	}
}

// Which edges meet is shown where the words say it, and nothing where they do not.
func TestJoints(t *testing.T) {
	sewnTo := func(words string) string {
		return "gauge: 14 sc and 16 rounds = 10 cm\nparts:\n" +
			"  - name: Bag\n    worked: rounds\n    text: |\n      Foundation: Ch 60; join with sl st to form a ring.\n      Rnd 1: Ch 1, sc in each ch around; join with sl st in first sc. (60 sc)\n      Rnds 2-30: Ch 1, sc in each st around; join. (60 sc)\n" +
			"  - name: Strap\n    worked: rows\n    text: |\n      Foundation: Ch 7.\n      Row 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)\n      Rows 2-80: Ch 1, sc in each st across, turn. (6 sc)\n      " + words + "\n"
	}
	corpus := func(name string) string {
		text, _, _ := strings.Cut(fileText(t, filepath.Join("..", "..", "testdata", "patterns", name)), "\npictures:")
		return text + "\n"
	}
	for name, c := range map[string]struct {
		words string
		says  []string
		// letters is how many there are on the sheet, the one of the legend besides.
		letters map[string]int
	}{
		"strap to bag":     {sewnTo("Sew the ends of the strap to the last round of the bag."), []string{"A: the ends of the Strap are sewn to the last round of the Bag."}, map[string]int{"A": 3}},
		"strap to a round": {sewnTo("Sew the last row of the strap to the bag at Rnd 28."), []string{"A: the last row of the Strap is sewn to the Bag, at its round 28."}, map[string]int{"A": 2}},
		"not said where":   {sewnTo("Sew the strap to the bag."), []string{"A: the Strap is sewn to the Bag."}, map[string]int{}},
		"nothing said":     {sewnTo("Fasten off and weave in ends."), nil, nil},
		"thumb":            {corpus("published/mittens-brent.yaml"), []string{"A: the first round of the Thumb is worked around", "the opening of the Hand, at its round 15."}, map[string]int{"A": 2}},
		"hexagons":         {corpus("published/larkspur-hexagon.yaml"), []string{"A: a side of one Hexagon is joined to a side of the next."}, map[string]int{"A": 1}},
		"band and body":    {corpus("more/cable-beanie.yaml"), []string{"A: the first round of the Body is worked on the last round of the Band."}, map[string]int{"A": 2}},
		"toy":              {corpus("published/toy-vole.yaml"), []string{"7. C: the last round of the Arm is sewn to the Body, at its round 13."}, map[string]int{"A": 1, "B": 2, "C": 2, "D": 1, "E": 2}},
	} {
		status, out, errs := whorl(t, c.words+"pictures: [{draw: schematic}]\n", "draw", "-", "-o", t.TempDir(), "--format", "svg")
		if status != statusDone {
			t.Fatal(name, errs)
		}
		svg := fileText(t, strings.TrimSpace(out))
		for _, s := range c.says {
			if !strings.Contains(svg, ">"+s) {
				t.Errorf("%s: no %q on it", name, s)
			}
			if desc := regexp.MustCompile(`(?s)<desc[^>]*>(.*?)</desc>`).FindString(svg); !strings.Contains(desc, s) {
				t.Errorf("%s: no %q in its description", name, s)
			}
		}
		if c.says == nil && regexp.MustCompile(`>[A-Z]: |>edges with`).MatchString(svg) {
			t.Errorf("%s: it says which edges meet", name)
		}
		for letter, n := range c.letters {
			if letter == "A" {
				n++ // in the legend
			}
			if got := strings.Count(svg, ">"+letter+"<"); got != n {
				t.Errorf("%s: %d letters %s, want %d", name, got, letter, n)
			}
		}
	}
	// The thumb of a mitten adds nothing to its depth.
	_, out, _ := whorl(t, corpus("published/mittens-brent.yaml"), "check", "-")
	if !strings.Contains(out, "Depth 20.2 cm") {
		t.Error(out)
	}
}

// What is not a tube is drawn as what it is: a ball as wide as its middle is
// around, an oval around its chain, the crown of a hat rounded.
func TestSchematicShapes(t *testing.T) {
	oval := strings.Replace(ovalWords, "first sc. (24 sc)", "first sc. (24 sc)\n      Rnds 3-6: Ch 1, working in back loops only, sc in each st around; join. (24 sc)", 1)
	for _, c := range []struct {
		name, words, id string
		wide, tall      float64
	}{
		// 24 sc of 5 mm; 11 rounds of 4.5 mm and the last drawn closed, 54.8 mm,
		// which is nearly half of 120 mm: a little flatter than a sphere.
		{"ball", ballWords, "ball", 120 / math.Pi, 31},
		// 2 rounds of 7.7 mm to either side of the chain; 24 sc of 8.33 mm around.
		{"flat oval", ovalWords, "oval", 100 - math.Pi*15.4 + 2*15.4, 2 * 15.4},
		{"oval", oval, "oval", 100 - math.Pi*15.4 + 2*15.4, 2 * 15.4},
		{"its sides", oval, "sides", 100, 4 * 7.7},
	} {
		dir := t.TempDir()
		status, out, errs := whorl(t, c.words+"pictures: [{draw: schematic}]\n", "draw", "-", "-o", dir, "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		svg, err := os.ReadFile(strings.TrimSpace(out))
		if err != nil {
			t.Fatal(err)
		}
		w, h := outlineOf(t, string(svg), c.id)
		if math.Abs(w-c.wide) > 0.02*c.wide || math.Abs(h-c.tall) > 0.03*c.tall {
			t.Errorf("%s: %.1f × %.1f mm, want %.1f × %.1f", c.name, w, h, c.wide, c.tall)
		}
	}
}

// What grows to its edge is drawn from above, with the diameter that check tells and a
// note where it cups; what was measured across has that diameter.
func TestSchematicOfCircles(t *testing.T) {
	head := "head: 56 cm\n"
	measured := "gauge: rounds 1-8 measure 11 cm across\n" + circle("sc", 6, 8)
	for _, c := range []struct{ name, words, has, hasNot string }{
		{"flat", circle("sc", 6, 8), ", laid flat", "cups"},
		{"measured", measured, "11 cm", "cups"},
		{"cups", circle("sc", 5, 8), "A piece that cups by itself is drawn as it is seen from above, as wide as its edge.", "half as wide as it is around"},
		{"crown", head + circle("sc", 5, 8), "Crown from above", "cups"},
	} {
		dir := t.TempDir()
		status, out, errs := whorl(t, c.words+"pictures: [{draw: schematic}]\n", "draw", "-", "-o", dir, "--format", "svg")
		if status == statusMisuse {
			t.Fatal(errs)
		}
		svg := fileText(t, strings.TrimSpace(out))
		if !strings.Contains(svg, c.has) || strings.Contains(svg, c.hasNot) {
			t.Errorf("%s: %q is on it: %v; %q is: %v", c.name, c.has, strings.Contains(svg, c.has), c.hasNot, strings.Contains(svg, c.hasNot))
		}
	}
}

// A part can be drawn alone; one that is not there or has no outline is refused
// in words.
func TestSchematicOfParts(t *testing.T) {
	words, err := os.ReadFile(filepath.Join("..", "..", "patterns", "examples", "bulrush-hat.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	text, _, _ := strings.Cut(string(words), "pictures:")
	dir := t.TempDir()
	status, out, errs := whorl(t, text+"pictures:\n  - {draw: schematic, part: Brim, sizes: [Adult, Child]}\n", "draw", "-", "-o", dir, "--format", "svg")
	if status != statusDone {
		t.Fatal(errs)
	}
	svg, err := os.ReadFile(strings.TrimSpace(out))
	if err != nil {
		t.Fatal(err)
	}
	for want, has := range map[string]bool{"42 (45.8) cm": true, "sizes Child (Adult)": true, "Crown from above": false, "Toddler": false} {
		if strings.Contains(string(svg), want) != has {
			t.Errorf("%q on the schematic of the brim: %v", want, !has)
		}
	}
}

// Every pattern that is measured has a schematic, or is refused in words. The figures on
// it are the finished measurements of check --json, in every size and in both units.
func TestSchematicsOfTheCorpus(t *testing.T) {
	t.Parallel()
	var files []string
	for _, in := range []string{"", "more", "published"} {
		l, err := filepath.Glob(filepath.Join("..", "..", "testdata", "patterns", in, "*.yaml"))
		if err != nil || len(l) == 0 {
			t.Fatal(l, err)
		}
		files = append(files, l...)
	}
	drawn, compared := 0, 0
	for _, file := range files {
		name := filepath.Base(file)
		j, err := load(file, nil)
		if err != nil || j.unworkable() || len(j.forms) == 0 || j.forms[0] == nil {
			continue
		}
		s, err := j.schematic(patterns.Picture{Draw: "schematic"}, nil)
		if err != nil {
			t.Logf("%s: %v", name, err)
			continue
		}
		drawn++
		schematicSetWell(t, name, s)
		var b strings.Builder
		if err := writeReport(&b, j); err != nil {
			t.Fatal(name, err)
		}
		var r report
		if err := json.Unmarshal([]byte(b.String()), &r); err != nil {
			t.Fatal(name, err)
		}
		text := ""
		views := map[string]bool{}
		for _, n := range s.Root.Nodes {
			if g, ok := n.(*scene.Group); ok {
				views[g.ID] = true
			}
		}
		for _, l := range texts(&s.Root) {
			text += l.String + " "
		}
		for key := range r.Sizes[0].Finished {
			if !shownOn(views, r.Sizes[0].Finished, key, len(j.pattern.Head) > 0) {
				continue
			}
			var mm []float64
			for _, z := range r.Sizes {
				mm = append(mm, z.Finished[key])
			}
			for _, want := range []string{trade(mm, inCentimetres, "cm"), trade(mm, inInches, "in")} {
				if !strings.Contains(text, want) {
					t.Errorf("%s: %s is %s, which is not on the schematic:\n%s", name, key, want, text)
				}
			}
			compared++
		}
	}
	if drawn < 3*len(files)/4 || compared < 2*drawn {
		t.Errorf("%d of %d patterns are drawn, and %d measurements compared", drawn, len(files), compared)
	}
}

// shownOn tells whether a schematic with those views shows a measurement of check --json
// that is there: a motif with corners has its sides, a circle its diameter, a ball and
// an oval their circumference, and what is left open is told of hats.
func shownOn(views map[string]bool, all map[string]float64, key string, hat bool) bool {
	switch {
	case views["motif"] && all["side_mm"] > 0:
		return key == "side_mm"
	case views["motif"]:
		return key == "across_mm" || key == "circumference_mm"
	case key == "across_mm" || key == "side_mm":
		return false // of the crown of a hat
	case views["ball"], views["oval"]:
		return key == "circumference_mm"
	case key == "hole_mm":
		return hat && all[key] < all["circumference_mm"]/2
	}
	return true
}
