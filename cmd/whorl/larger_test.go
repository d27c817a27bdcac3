package main

import (
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"whorl/chart/output/outputtest"
)

// A chart that prints too small says so, and is drawn larger: a tube as a panel, another
// round chart as a crown and a wedge, or on several pages where a wedge does not show all of
// it large enough; one that does not is drawn as it is.
func TestSmallChartsAreDrawnLarger(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ file, want string }{
		{"slouch-hat", "slouch-hat-chart.svg slouch-hat-chart-crown.svg slouch-hat-chart-wedge.svg slouch-hat-schematic.svg slouch-hat-shaping.svg"},
		{"../published/tideline-cowl", "tideline-cowl-cowl.svg tideline-cowl-cowl-panel.svg tideline-cowl-schematic.svg"},
		{"tern-lace-cap", "tern-lace-cap-cap.svg tern-lace-cap-schematic.svg"},
		{"../published/mittens-brent", "mittens-brent-hand-make-2.svg mittens-brent-hand-make-2-crown.svg mittens-brent-hand-make-2-page-1.svg mittens-brent-hand-make-2-page-2.svg mittens-brent-thumb.svg mittens-brent-schematic.svg"},
		{"../published/lych-gate-shawl", "lych-gate-shawl-shawl.svg lych-gate-shawl-shawl-page-1.svg lych-gate-shawl-shawl-page-2.svg lych-gate-shawl-shawl-page-3.svg lych-gate-shawl-schematic.svg"},
		{"shawl-halfmoon", "shawl-halfmoon-shawl.svg shawl-halfmoon-schematic.svg"},
		{"shawl-gable", "shawl-gable-shawl.svg shawl-gable-shawl-page-1.svg shawl-gable-shawl-page-2.svg shawl-gable-shawl-page-3.svg shawl-gable-schematic.svg"},
	} {
		status, out, errs := whorl(t, "", "draw", "../../testdata/patterns/more/"+c.file+".yaml", "-o", t.TempDir(), "--format", "svg")
		var names []string
		for _, name := range strings.Fields(out) {
			names = append(names, filepath.Base(name))
		}
		if got := strings.Join(names, " "); status != statusDone || got != c.want {
			t.Errorf("%s: status %d, drawn %s, want %s", c.file, status, got, c.want)
		}
		if small := strings.Contains(out, "-page-1.") || strings.Contains(out, "-wedge.") || strings.Contains(out, "-panel."); small != strings.Contains(errs, "it is drawn larger") {
			t.Errorf("%s: %s", c.file, errs)
		}
	}
}

func TestFileName(t *testing.T) {
	for name, want := range map[string]string{"Adult Large": "adult-large", "Legs (make 2)": "legs-make-2", "3–6 mo.": "3-6-mo", "": "", "Größe/1": "größe-1"} {
		if got := fileName(name); got != want {
			t.Errorf("%q is %q in a file's name, not %q", name, got, want)
		}
	}
}

// A picture for a post has as many pixels as its page.
func TestPostPixels(t *testing.T) {
	words, err := os.ReadFile("../../patterns/examples/lantern-hill-cap.yaml")
	if err != nil {
		t.Fatal(err)
	}
	before, _, _ := strings.Cut(string(words), "pictures:")
	for page, want := range map[string]image.Point{
		"square": {X: 1080, Y: 1080}, "tall": {X: 1080, Y: 1350}, "tall, width: 720": {X: 720, Y: 900}, "900 x 1600 px": {X: 900, Y: 1600},
	} {
		status, out, errs := whorl(t, before+"pictures:\n  - {name: crown, draw: round, rounds: 1-6, page: "+page+"}\n", "draw", "-", "-o", t.TempDir(), "--format", "png")
		if status != statusDone {
			t.Fatal(page, errs)
		}
		f, err := os.Open(strings.TrimSpace(out))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		c, err := png.DecodeConfig(f)
		if got := (image.Point{X: c.Width, Y: c.Height}); err != nil || got != want {
			t.Errorf("page: %s: %v pixels, want %v (%v)", page, got, want, err)
		}
	}
}

// The pages of one chart are one PDF.
func TestPagesAreOnePDF(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	status, out, errs := whorl(t, "", "draw", "../../testdata/patterns/published/lych-gate-shawl.yaml", "-o", dir, "--format", "pdf")
	var names []string
	for _, name := range strings.Fields(out) {
		names = append(names, filepath.Base(name))
	}
	if want := "lych-gate-shawl-shawl.pdf lych-gate-shawl-shawl-pages.pdf lych-gate-shawl-schematic.pdf"; status != statusDone || strings.Join(names, " ") != want {
		t.Fatalf("status %d, drawn %v, want %s: %s", status, names, want, errs)
	}
	if n := strings.TrimSpace(outputtest.Run(t, "qpdf", "--show-npages", filepath.Join(dir, "lych-gate-shawl-shawl-pages.pdf"))); n != "3" {
		t.Errorf("%s pages, not 3", n)
	}
}
