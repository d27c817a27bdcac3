package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"whorl/chart"
	"whorl/chart/output/outputtest"
	"whorl/chart/scene"
	"whorl/chart/shaping"
	"whorl/chart/typeface"
	"whorl/patterns"
	"whorl/patterns/fabric"
)

// texts are the texts of a scene with the rectangles they stand in.
func texts(g *scene.Group) (l []*scene.Text) {
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *scene.Group:
			l = append(l, texts(n)...)
		case *scene.Text:
			l = append(l, n)
		}
	}
	return l
}

func rectangle(t *scene.Text) (x0, y0, x1, y1 float64) {
	w := typeface.Width(t.String, t.Size, t.Bold, t.Italic)
	x0 = t.X
	switch t.Align {
	case scene.Centre:
		x0 -= w / 2
	case scene.Right:
		x0 -= w
	}
	return x0, t.Y - typeface.CapHeight(t.Size), x0 + w, t.Y + 0.2*typeface.Descent(t.Size)
}

// setWell reports texts that leave the page's margin, or lie on one another, and
// letters that the typeface has not.
func setWell(t *testing.T, where string, s *scene.Scene) {
	t.Helper()
	if err := s.Check(); err != nil {
		t.Errorf("%s: %v", where, err)
	}
	l := texts(&s.Root)
	if len(l) == 0 {
		t.Errorf("%s: nothing is written on it", where)
	}
	for i, a := range l {
		ax0, ay0, ax1, ay1 := rectangle(a)
		if ax0 < 5 || ay0 < 5 || ax1 > s.Width-5 || ay1 > s.Height-5 {
			t.Errorf("%s: %q leaves the page", where, a.String)
		}
		if m := typeface.Missing(a.String); len(m) > 0 {
			t.Errorf("%s: no letter for %q", where, m)
		}
		for _, b := range l[:i] {
			bx0, by0, bx1, by1 := rectangle(b)
			if ax0 < bx1-0.05 && bx0 < ax1-0.05 && ay0 < by1-0.05 && by0 < ay1-0.05 {
				t.Errorf("%s: %q lies on %q", where, a.String, b.String)
			}
		}
	}
}

// drawShapes draws the sheet and the form of every part worked in the round.
func drawShapes(t *testing.T, where string, j *job) (n int) {
	t.Helper()
	for i, f := range j.fabrics {
		for _, part := range f.Parts {
			if part.Worked != fabric.InRounds || f.Index > 0 && j.pattern.Sizes[f.Index] == "" {
				continue
			}
			for _, kind := range []string{"shaping", "form"} {
				for _, paper := range []chart.Paper{chart.A4, chart.Letter} {
					name := fmt.Sprintf("%s, %s, %s, %s, paper %v", where, f.Size, part.Name, kind, paper)
					s, err := j.shape(patterns.Picture{Draw: kind, Part: part.Name}, i, paper)
					if err != nil {
						t.Errorf("%s: %v", name, err)
						continue
					}
					setWell(t, name, s)
					n++
				}
			}
		}
	}
	return n
}

// wavyTube is a piece of which more is to be said than goes on a page.
func wavyTube() string {
	words := "title: A Very Long Title for a Piece That Nobody Would Ever Work but That Has to Fit on the Page All the Same\n" +
		"copyright: " + strings.Repeat("A line that goes on and on. ", 12) + "\nhead: 56 cm\n" +
		"parts:\n  - name: Body\n    worked: rounds\n    text: |\n      Rnd 1: 8 hdc in magic ring. (8)\n"
	for i := 2; i < 60; i++ {
		how := "Hdc in each st around."
		switch {
		case i%6 == 0:
			how = "2 hdc in each st around."
		case i%6 == 3 && i > 3:
			how = "Hdc2tog around."
		}
		words += fmt.Sprintf("      Rnd %d: %s\n", i, how)
	}
	return words
}

func TestShapesAreSetWell(t *testing.T) {
	t.Parallel()
	n := 0
	for _, file := range examples(t) {
		j, err := load(file, nil)
		if err != nil || j.wrong() {
			t.Fatal(file, err, j.faults)
		}
		n += drawShapes(t, filepath.Base(file), j)
	}
	for name, words := range map[string]string{
		"ruffle": hdcCap("head: 54 cm\n", 16, 7, 8), "dome": hdcCap("", 4, 16, 8), "gather": gatherWords, "long": hdcCap("", 8, 60, 80),
		"one round": circle("sc", 6, 1), "waves": wavyTube(),
	} {
		j, err := load("-", strings.NewReader(words))
		if err != nil || j.wrong() {
			t.Fatal(name, err, j.faults)
		}
		n += drawShapes(t, name, j)
	}
	if n < 40 {
		t.Errorf("only %d drawn", n)
	}
}

// Every pattern of the corpus that can be worked can be drawn.
func TestShapesOfTheCorpus(t *testing.T) {
	t.Parallel()
	files, _ := filepath.Glob("../../testdata/patterns/*.yaml")
	more, _ := filepath.Glob("../../testdata/patterns/more/*.yaml")
	n := 0
	for _, file := range append(files, more...) {
		j, err := load(file, nil)
		if err != nil || j.wrong() {
			continue // not what is tested here
		}
		for i, f := range j.fabrics {
			for _, part := range f.Parts {
				if part.Worked != fabric.InRounds {
					continue
				}
				for _, kind := range []string{"shaping", "form"} {
					s, err := j.shape(patterns.Picture{Draw: kind, Part: part.Name}, i, chart.A4)
					if err != nil {
						if !strings.Contains(err.Error(), "no rounds") {
							t.Errorf("%s, %s: %v", file, part.Name, err)
						}
						continue
					}
					setWell(t, filepath.Base(file)+", "+f.Size+", "+part.Name+", "+kind, s)
					n++
				}
			}
		}
	}
	if n < 30 {
		t.Errorf("only %d drawn", n)
	}
}

// The plan shows every increase and every decrease: as many as the round has.
func TestThePlanShowsEveryChange(t *testing.T) {
	for name, words := range map[string]string{"flat": hdcCap("", 8, 9, 8), "gather": gatherWords} {
		j, err := load("-", strings.NewReader(words))
		if err != nil || j.wrong() {
			t.Fatal(err, j.faults)
		}
		s, err := j.shape(patterns.Picture{Draw: "shaping"}, 0, chart.A4)
		if err != nil {
			t.Fatal(err)
		}
		shown := 0
		for _, n := range s.Root.Nodes {
			plan, ok := n.(*scene.Group)
			if !ok || plan.ID != "plan" {
				continue
			}
			signs := 0
			for _, n := range plan.Nodes {
				g, ok := n.(*scene.Group)
				if !ok {
					continue
				}
				if strings.HasSuffix(g.ID, "increases") || strings.HasSuffix(g.ID, "decreases") {
					signs += len(g.Nodes)
				}
				if len(g.Data) == 0 {
					continue
				}
				number, _ := strconv.Atoi(g.Data[0].Value)
				for _, r := range j.fabrics[0].Parts[0].Rounds {
					if r.Number != number {
						continue
					}
					shown += r.Increases() + r.Decreases()
					if g.Data[1].Value != strconv.Itoa(r.Increases()) || g.Data[2].Value != strconv.Itoa(r.Decreases()) {
						t.Errorf("%s, %s: the plan shows %v, there are %d and %d", name, r.Label, g.Data, r.Increases(), r.Decreases())
					}
				}
			}
			if signs != shown {
				t.Errorf("%s: %d signs for %d changes", name, signs, shown)
			}
		}
		if shown < 60 {
			t.Errorf("%s: only %d changes shown", name, shown)
		}
	}
}

// What the sheet says of the three caps, and that draw writes it, in all sizes
// when it is asked to.
func TestDrawShaping(t *testing.T) {
	dir := t.TempDir()
	const pictures = "pictures:\n  - {name: sheet, draw: shaping, sizes: all}\n  - {name: view, draw: form, paper: Letter}\n"
	words := "sizes: [Small, Large]\nhead: 50 (54) cm\n" + gatherWords + pictures
	status, out, errs := whorl(t, words, "draw", "-", "-o", dir, "--format", "svg")
	if status != statusDone {
		t.Fatal(errs)
	}
	if l := strings.Fields(out); len(l) != 3 || filepath.Base(l[1]) != "pattern-sheet-large.svg" {
		t.Fatal(out)
	}
	svg, err := os.ReadFile(filepath.Join(dir, "pattern-sheet-small.svg"))
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []string{"the fabric gathers there", "slack by 40", "What the fabric does", "Rnd 10", "dummy"} {
		if !strings.Contains(string(svg), s) {
			t.Errorf("the sheet does not say %q", s)
		}
	}
	if n := len(regexp.MustCompile(`data-strain="`).FindAllString(string(svg), -1)); n != 24 {
		t.Errorf("%d rounds on the two sides of the profile, want 24", n)
	}
	if status, _, errs := whorl(t, "parts:\n  - name: S\n    worked: rows\n    text: |\n      Row 1: Ch 5, sc in 2nd ch from hook and in each ch across. (4)\npictures:\n  - {draw: shaping}\n",
		"draw", "-", "-o", dir); status == statusDone || !strings.Contains(errs, "worked in rows") {
		t.Errorf("rows: %d %s", status, errs)
	}
}

// Small sheets that are golden.
func TestShapingGallery(t *testing.T) {
	hanging := golden{folder: filepath.Join("..", "..", "testdata", "gallery", "shapes")}
	defer hanging.contact(t)
	for name, words := range map[string]string{"ruffle": hdcCap("title: Ruffle\nhead: 30 cm\n", 16, 3, 3), "dome": hdcCap("title: Dome\n", 4, 5, 2), "gather": gatherWords} {
		words = strings.Replace(words, "title: Circle of hdc\n", "", 1)
		for _, kind := range []string{"shaping", "form"} {
			dir := t.TempDir()
			status, out, errs := whorl(t, words+"pictures:\n  - {draw: "+kind+"}\n", "draw", "-", "-o", dir, "--format", "svg")
			if status != statusDone {
				t.Fatal(errs)
			}
			got, err := os.ReadFile(strings.TrimSpace(out))
			if err != nil {
				t.Fatal(err)
			}
			hanging.check(t, name+"-"+kind+".svg", got)
		}
	}
}

// Programs from outside accept the pictures.
func TestOutsideProgramsOnShapes(t *testing.T) {
	for _, tool := range []string{"xmllint", "qpdf"} {
		outputtest.Tool(t, tool)
	}
	dir := t.TempDir()
	status, out, errs := whorl(t, gatherWords+"pictures:\n  - {name: a, draw: shaping}\n  - {name: b, draw: form}\n", "draw", "-", "-o", dir, "--format", "svg,pdf")
	if status != statusDone {
		t.Fatal(errs)
	}
	for _, name := range strings.Fields(out) {
		if filepath.Ext(name) == ".svg" {
			outputtest.Run(t, "xmllint", "--noout", name)
		} else {
			outputtest.Run(t, "qpdf", "--check", name)
		}
	}
}

func BenchmarkShapes(b *testing.B) {
	j, err := load("-", strings.NewReader(circle("hdc", 8, 49)))
	if err != nil || j.wrong() {
		b.Fatal(err)
	}
	for _, kind := range []string{"shaping", "form"} {
		b.Run(kind, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := j.shape(patterns.Picture{Draw: kind}, 0, chart.A4); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("words", func(b *testing.B) {
		for b.Loop() {
			shaping.Findings(j.fabrics[0].Parts[0], j.forms[0].Parts[0])
		}
	})
}
