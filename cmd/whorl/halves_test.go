package main

import (
	"fmt"
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

// A half that prints too small, or too close, is drawn larger, as any other round chart
// is; one that can be read is not.
func TestSmallHalvesAreDrawnLarger(t *testing.T) {
	t.Parallel()
	for widest, want := range map[int]string{
		25: "beginning.svg closing.svg",
		27: "beginning.svg beginning-crown.svg beginning-wedge.svg closing.svg closing-crown.svg closing-wedge.svg",
	} {
		drawnHalves(t, widest, want+" ball-schematic.svg")
	}
}

// drawnHalves draws a ball with so many rounds that are increased.
func drawnHalves(t *testing.T, widest int, want string) {
	t.Helper()
	words := "title: Great Ball\nterms: US\ngauge: 22 sc and 24 rounds = 10 cm\nparts:\n  - name: Ball\n    worked: rounds\n    text: |\n" +
		"      Rnd 1: 6 sc in magic ring (6)\n      Rnd 2: inc in each st around (12)\n"
	round := 3
	for ; round <= widest; round++ {
		words += fmt.Sprintf("      Rnd %d: (sc %d, inc) x 6 (%d)\n", round, round-2, 6*round)
	}
	words += fmt.Sprintf("      Rnds %d-%d: sc in each st around (%d)\n", round, round+19, 6*widest)
	round += 20
	for each := widest - 2; each > 0; each-- {
		words += fmt.Sprintf("      Rnd %d: (sc %d, dec) x 6 (%d)\n", round, each, 6*(each+1))
		round++
	}
	file := filepath.Join(t.TempDir(), "ball.yaml")
	if err := os.WriteFile(file, []byte(words), 0o644); err != nil {
		t.Fatal(err)
	}
	status, out, errs := whorl(t, "", "draw", file, "-o", t.TempDir(), "--format", "svg")
	var names []string
	for _, name := range strings.Fields(out) {
		names = append(names, strings.TrimPrefix(filepath.Base(name), "ball-ball-"))
	}
	if got := strings.Join(names, " "); status != statusDone || got != want {
		t.Errorf("status %d, drawn %s, want %s: %s", status, got, want, errs)
	}
}
