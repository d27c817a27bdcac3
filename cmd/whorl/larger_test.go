package main

import (
	"path/filepath"
	"strings"
	"testing"
)

// A chart that prints too small says so, and is drawn larger as a crown and a
// wedge; one that does not is drawn as it is.
func TestSmallChartsAreDrawnLarger(t *testing.T) {
	for _, c := range []struct{ file, want string }{
		{"slouch-hat", "slouch-hat-chart.svg slouch-hat-chart-crown.svg slouch-hat-chart-wedge.svg"},
		{"tern-lace-cap", "tern-lace-cap-cap.svg"},
	} {
		status, out, errs := whorl(t, "", "draw", "../../testdata/patterns/more/"+c.file+".yaml", "-o", t.TempDir(), "--format", "svg")
		var names []string
		for _, name := range strings.Fields(out) {
			names = append(names, filepath.Base(name))
		}
		if got := strings.Join(names, " "); status != statusDone || got != c.want {
			t.Errorf("%s: status %d, drawn %s, want %s", c.file, status, got, c.want)
		}
		if small := len(names) > 1; small != strings.Contains(errs, "it is drawn larger as") {
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
