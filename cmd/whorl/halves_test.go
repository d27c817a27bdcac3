package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Round charts and wedges of what closes in again are drawn in halves; those of several
// balls on one another are numbered.
func TestHalvesAreNamed(t *testing.T) {
	for _, c := range []struct{ file, part, draw, want string }{
		{"ball-a.yaml", "Ball", "round", "x-beginning.svg x-closing.svg"},
		{"ball-a.yaml", "Ball", "wedge", "x-beginning.svg x-closing.svg"},
		{"published/toy-eider.yaml", "Head and body", "wedge", "x-beginning-1.svg x-closing-1.svg x-beginning-2.svg x-closing-2.svg"},
		{"published/toy-eider.yaml", "Beak", "wedge", "x.svg"},
	} {
		text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "patterns", c.file))
		if err != nil {
			t.Fatal(err)
		}
		words, _, _ := strings.Cut(string(text), "\npictures:")
		file := filepath.Join(t.TempDir(), "p.yaml")
		words += "\npictures:\n  - {name: x, draw: " + c.draw + ", part: " + c.part + "}\n"
		if err := os.WriteFile(file, []byte(words), 0o644); err != nil {
			t.Fatal(err)
		}
		status, out, errs := whorl(t, "", "draw", file, "-o", t.TempDir(), "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		var names []string
		for _, n := range strings.Fields(out) {
			names = append(names, strings.TrimPrefix(filepath.Base(n), "p-"))
		}
		if got := strings.Join(names, " "); got != c.want {
			t.Errorf("%s, %s: %s, not %s", c.file, c.draw, got, c.want)
		}
		if many := len(names) > 1; many != strings.Contains(errs, "in halves") {
			t.Errorf("%s, %s: %s", c.file, c.draw, errs)
		}
	}
}
