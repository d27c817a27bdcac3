package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/chart"
	"whorl/patterns/fabric"
)

// corpus is every pattern file of the examples and of testdata/patterns that is
// meant to work.
func corpus(t *testing.T) []string {
	t.Helper()
	files := examples(t)
	for _, dir := range []string{"patterns", "patterns/more", "patterns/published"} {
		more, err := filepath.Glob(filepath.Join("..", "..", "testdata", dir, "*.yaml"))
		if err != nil || len(more) == 0 {
			t.Fatal(dir, err)
		}
		files = append(files, more...)
	}
	return files
}

// Every chart of the corpus, in every size and in every layout that suits its part,
// is looked over. Those in which
// something is wrong are in testdata/gallery/faults.txt, with how much: the list
// may grow shorter and its figures smaller, and nothing else. One that says that it
// should not be printed as it is, is in it as well: it is drawn larger on several pages.
func TestCorpusFaults(t *testing.T) {
	files := corpus(t)
	found := make([]string, len(files))
	t.Run("files", func(t *testing.T) {
		for i, file := range files {
			t.Run(filepath.Base(file), func(t *testing.T) {
				t.Parallel()
				found[i] = corpusFaults(t, file)
			})
		}
	})
	got := strings.Join(found, "")
	recorded := filepath.Join("..", "..", "testdata", "gallery", "faults.txt")
	if *update {
		if err := os.WriteFile(recorded, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(recorded)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); d != "" {
		t.Errorf("the faults in charts changed (-recorded +found); look at them, then go test ./cmd/whorl -run Corpus -update:\n%s", d)
	}
}

// corpusFaults are the faults in the charts of one file, a line a chart.
func corpusFaults(t *testing.T, file string) string {
	j, err := load(file, nil)
	if err != nil || j.unworkable() {
		t.Errorf("%s: %v %v", file, err, j.faults)
		return ""
	}
	var got strings.Builder
	for i, f := range j.fabrics {
		for k, part := range f.Parts {
			layouts := []string{"rows"}
			if part.Worked == fabric.InRounds {
				layouts = []string{"round", "wedge", "panel"}
			}
			o := chart.Options{Title: j.pattern.Title, Part: k}
			type drawing struct {
				layout string
				o      chart.Options
			}
			var all []drawing
			// What closes in again is drawn in halves.
			halves := chart.Halves(f, j.forms[i], o)
			for _, layout := range layouts {
				if layout == "panel" || len(halves) == 0 {
					all = append(all, drawing{layout, o})
					continue
				}
				for _, half := range halves {
					all = append(all, drawing{layout, half})
				}
			}
			var found []string
			whole := map[int]*chart.Chart{} // drawn in place of wedges, by their first round
			for _, d := range slices.Backward(all) {
				layout := d.layout
				c, err := whole[d.o.From], error(nil)
				if c == nil || layout != "round" {
					c, err = charts[layout](f, j.forms[i], d.o)
				}
				if layout == "panel" && err != nil && strings.Contains(err.Error(), "flat") {
					continue
				}
				if err != nil {
					t.Errorf("%s, %s, %s: %v", file, part.Name, layout, err)
					continue
				}
				for _, finding := range c.Findings {
					if strings.Contains(finding, "room for the number") && layout != "panel" && !c.Small() && len(c.Findings) == 1 {
						t.Errorf("%s, %s, %s, %s: %s", file, f.Size, part.Name, layout, finding)
					}
				}
				if slices.ContainsFunc(c.Findings, ofWhole) {
					whole[d.o.From] = c // which is its round chart
					c.Findings = slices.DeleteFunc(c.Findings, ofWhole)
					continue
				}
				if faults := faultsOf(chart.Audit(c.Scene)); faults != "" {
					name := strings.TrimSuffix(filepath.Base(file), ".yaml")
					found = append(found, fmt.Sprintf("%s, %s, %s, %s: %s\n", name, f.Size, part.Name, layout, faults))
				}
			}
			slices.Reverse(found)
			got.WriteString(strings.Join(found, ""))
		}
	}
	return got.String()
}

// ofWhole reports whether a finding says that the whole is drawn, for want of a repeat.
func ofWhole(finding string) bool { return strings.Contains(finding, "the whole is drawn") }

// faultsOf counts what is wrong in a picture; "" when nothing is.
func faultsOf(r *chart.Report) string {
	var s []string
	add := func(n int, what string) {
		if n > 0 {
			s = append(s, fmt.Sprintf("%d %s", n, what))
		}
	}
	add(len(r.Overlaps), "overlaps")
	add(len(r.Texts), "texts run through")
	add(len(r.Astray), "legs astray")
	add(len(r.Leaning), "legs leaning")
	add(len(r.Flat), "legs flat")
	add(len(r.Fans), "uneven fans")
	if r.Turn > 0.1 {
		s = append(s, fmt.Sprintf("repeats differ by %.2f°", r.Turn))
	}
	return strings.Join(s, ", ")
}
