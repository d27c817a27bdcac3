package main

import (
	"math"
	"path/filepath"
	"strings"
	"testing"
)

// Rows that grow from a centre lie on half circles, or where they have a spine on the
// two sides of a right angle; each is half as high as it is wide, and its stitches are
// spread along all of it.
func TestShawlsFanOut(t *testing.T) {
	for _, c := range []struct {
		file, row string
		mean      float64 // height of its stitches, as a share of the greatest
	}{
		{"more/shawl-halfmoon.yaml", "7", 2 / math.Pi}, {"more/triangle-shawl.yaml", "8", 0.5}, {"published/lych-gate-shawl.yaml", "20", 0.5},
	} {
		status, out, errs := whorl(t, "", "draw", filepath.Join("..", "..", "testdata", "patterns", c.file), "-o", t.TempDir(), "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		tops := topsOf(t, strings.Fields(out)[0], c.row)
		low, high := tops[0], tops[0]
		sum := 0.0
		for _, p := range tops {
			for i := range p {
				low[i], high[i] = math.Min(low[i], p[i]), math.Max(high[i], p[i])
			}
			sum += p[1]
		}
		wide, tall := high[0]-low[0], high[1]-low[1]
		mean := (high[1] - sum/float64(len(tops))) / tall
		if math.Abs(tall/wide-0.5) > 0.03 || math.Abs(mean-c.mean) > 0.03 {
			t.Errorf("%s: row %s is %.2f as high as wide, and on the whole %.2f up", c.file, c.row, tall/wide, mean)
		}
	}
}

// Rows whose increases stand over increases lie in waves, however low their stitches
// are.
func TestRipplesLieInWaves(t *testing.T) {
	for file, row := range map[string]string{"published/furrow-scarf.yaml": "4", "ripple-c.yaml": "12"} {
		name, err := filepath.Glob(filepath.Join("..", "..", "testdata", "patterns", file))
		if err != nil || len(name) != 1 {
			t.Fatal(file, err)
		}
		status, out, errs := whorl(t, "", "draw", name[0], "-o", t.TempDir(), "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		low, high := math.Inf(1), math.Inf(-1)
		for _, p := range topsOf(t, strings.Fields(out)[0], row) {
			low, high = math.Min(low, p[1]), math.Max(high, p[1])
		}
		if high-low < 1000 {
			t.Errorf("%s: row %s rises %.1f mm", file, row, (high-low)/100)
		}
	}
}
