package main

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/chart/writeup"
	"whorl/patterns"
)

// A chart that would print too small in a write-up is shown as its crown and a wedge,
// as two halves or on several pages, and none is left out.
func TestWriteupChartsAreLegible(t *testing.T) {
	t.Parallel()
	for file, want := range map[string][]string{
		"doily":          {"Chart 1: Rounds 1–8"},
		"slouch-hat":     {"Chart 1: Size M, rounds 1–17", "Chart 2: Size M, rounds 1–23, 1 of 12 repeats"},
		"ball-gannet":    {"Chart 1: Ball, rounds 1–20", "Chart 2: Ball, rounds 21–40"},
		"triangle-shawl": {"Chart 1: Rows 1–9"},
		"shawl-gable": {"Chart 1: Shawl, rows 1–21", "Chart 1: Shawl, rows 1–21, page 1 of 3, the left",
			"Chart 1: Shawl, rows 1–21, page 2 of 3, the middle", "Chart 1: Shawl, rows 1–21, page 3 of 3, the right"},
		"mug-cosy": {"Chart 1: Rows 1–33"},
	} {
		j, err := load(filepath.Join("..", "..", "testdata", "patterns", "more", file+".yaml"), nil)
		if err != nil {
			t.Fatal(err)
		}
		e, b := bookOf(t, file, j, patterns.Picture{Draw: writeupDraw}, -1)
		var got []string
		names := map[string]bool{}
		for _, block := range e.doc.Blocks {
			pic, ok := block.(writeup.Picture)
			if !ok || !strings.HasPrefix(pic.Caption, "Chart") {
				continue
			}
			got = append(got, strings.ReplaceAll(pic.Caption, "\u00a0", " "))
			if names[pic.Name] {
				t.Errorf("%s: two pictures are called %s", file, pic.Name)
			}
			names[pic.Name] = true
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: %s", file, diff)
		}
		for _, f := range e.findings {
			if !strings.Contains(f, "it is drawn larger on") {
				t.Errorf("%s: %s", file, f)
			}
		}
		for _, block := range e.doc.Blocks {
			if p, ok := block.(writeup.Paragraph); ok && strings.Contains(p.Text, "See") && strings.Count(p.Text, "Chart") != len(namesOf(want)) {
				t.Errorf("%s: %q", file, p.Text)
			}
		}
		bookSetWell(t, file, b)
	}
}

// namesOf are the different names of charts.
func namesOf(captions []string) map[string]bool {
	l := map[string]bool{}
	for _, c := range captions {
		name, _, _ := strings.Cut(c, ":")
		l[name] = true
	}
	return l
}
