package main

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The stitches of a motif's rounds lie on straight sides, as many as it has
// corners; what has none stays round.
func TestMotifsHaveCorners(t *testing.T) {
	for _, c := range []struct {
		file, round string
		sides       int
	}{
		{"granny-square-a.yaml", "4", 4}, {"granny-square-b.yaml", "4", 4}, {"granny-square-c.yaml", "4", 4},
		{"hexagon-a.yaml", "4", 6}, {"hexagon-b.yaml", "4", 6}, {"hexagon-c.yaml", "4", 6},
		{"more/hedge-hexagon.yaml", "3", 6}, {"more/motif-octagon.yaml", "4", 8},
	} {
		status, out, errs := whorl(t, "", "draw", filepath.Join("..", "..", "testdata", "patterns", c.file), "-o", t.TempDir(), "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		tops := topsOf(t, strings.Fields(out)[0], c.round)
		low, high := tops[0], tops[0]
		for _, p := range tops {
			for i := range p {
				low[i], high[i] = math.Min(low[i], p[i]), math.Max(high[i], p[i])
			}
		}
		cx, cy := (low[0]+high[0])/2, (low[1]+high[1])/2
		least, most := math.Inf(1), 0.0
		for _, p := range tops {
			far := 0.0 // out from the centre, square to the nearest side
			for k := range c.sides {
				s, co := math.Sincos(math.Pi/2 + 2*math.Pi*float64(k)/float64(c.sides))
				far = math.Max(far, (p[0]-cx)*co+(p[1]-cy)*s)
			}
			least, most = math.Min(least, far), math.Max(most, far)
		}
		if len(tops) < 20 || most-least > 60 {
			t.Errorf("%s: the sides of round %s are from %.1f to %.1f mm out", c.file, c.round, least/100, most/100)
		}
	}
}

// topsOf are the tops of the counted stitches of a round.
func topsOf(t *testing.T, name, round string) (tops [][2]float64) {
	stitches, _ := readSVG(t, strings.TrimSpace(name))
	for _, s := range stitches {
		if s.counted && len(s.id) > len(round)+2 && s.id[:len(round)+2] == "r"+round+"s" {
			tops = append(tops, s.top[0])
		}
	}
	return tops
}

// The groups of a granny square's sides stand as far apart by the corners as in the
// middle, however many rounds there are, and a wedge of it is one side, lying level.
func TestMotifsAreEven(t *testing.T) {
	const square = `title: Square
terms: US
parts:
  - name: Square
    worked: rounds
    text: |
      Ch 4, join with sl st to form a ring.
      Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of ch-3. (12 dc)
      Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times; join. (24 dc)
      Rnd 3: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *3 dc in sp between next two 3-dc groups, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, 3 dc in sp between next two 3-dc groups; join. (36 dc)
      Rnd 4: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *3 dc in each sp between 3-dc groups to next corner, (3 dc, ch 2, 3 dc) in corner ch-2 sp; rep from * 2 more times, 3 dc in each sp between 3-dc groups to end; join. (48 dc)
      Rnds 5-14: Rep Rnd 4. (168 dc at the end of Rnd 14)
pictures:
  - {name: whole, draw: round}
  - {name: side, draw: wedge}
`
	dir := t.TempDir()
	file := filepath.Join(dir, "square.yaml")
	if err := os.WriteFile(file, []byte(square), 0o644); err != nil {
		t.Fatal(err)
	}
	status, out, errs := whorl(t, "", "draw", file, "-o", dir, "--format", "svg")
	if status != statusDone {
		t.Fatal(errs)
	}
	for _, name := range strings.Fields(out) {
		if !strings.HasSuffix(name, "-whole.svg") && !strings.HasSuffix(name, "-side.svg") {
			continue
		}
		// The highest stitches are those of the side that lies level above.
		high := math.Inf(1)
		tops := topsOf(t, name, "14")
		for _, p := range tops {
			high = math.Min(high, p[1])
		}
		var x []float64
		for _, p := range tops {
			if p[1] < high+20 {
				x = append(x, p[0])
			}
		}
		slices.Sort(x)
		if len(x) < 36 {
			t.Fatalf("%s: %d stitches lie level above", name, len(x))
		}
		x = x[(len(x)-36)/2:][:36] // between the corners
		least, most := math.Inf(1), 0.0
		for i := 3; i < len(x); i += 3 {
			least, most = math.Min(least, x[i]-x[i-3]), math.Max(most, x[i]-x[i-3])
		}
		if most > 1.25*least {
			t.Errorf("%s: groups are from %.1f to %.1f mm apart", name, least/100, most/100)
		}
	}
}
