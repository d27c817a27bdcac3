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

// Rounds whose increases stand over increases lie in zigzags, and a motif whose sides
// are drawn in at their middles is a star: its outer round comes nearer the centre
// between the points than a polygon's.
func TestRoundsLieInZigzags(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		file, round string
		least       float64 // the farthest out of a round, over the nearest
	}{
		{"published/tideline-cowl.yaml", "12", 1.15}, {"published/star-skua.yaml", "6", 1.35},
	} {
		status, out, errs := whorl(t, "", "draw", filepath.Join("..", "..", "testdata", "patterns", c.file), "-o", t.TempDir(), "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		var mid [2]float64
		tops := topsOf(t, strings.Fields(out)[0], c.round)
		for _, p := range tops {
			mid[0], mid[1] = mid[0]+p[0]/float64(len(tops)), mid[1]+p[1]/float64(len(tops))
		}
		near, far := math.Inf(1), 0.0
		for _, p := range tops {
			r := math.Hypot(p[0]-mid[0], p[1]-mid[1])
			near, far = math.Min(near, r), math.Max(far, r)
		}
		if far < c.least*near {
			t.Errorf("%s: round %s is from %.1f to %.1f out", c.file, c.round, near, far)
		}
	}
}

// Rows with a space in their middle that grow at their ends only lie straight.
func TestRowsThatGrowAtTheirEnds(t *testing.T) {
	status, out, errs := whorl(t, "", "draw", filepath.Join("..", "..", "testdata", "patterns", "published", "shawl-curlew.yaml"), "-o", t.TempDir(), "--format", "svg")
	if status != statusDone {
		t.Fatal(errs)
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range topsOf(t, strings.Fields(out)[0], "19") {
		low, high = math.Min(low, p[1]), math.Max(high, p[1])
	}
	if high-low > 400 {
		t.Errorf("row 19 rises %.1f mm", (high-low)/100)
	}
}
