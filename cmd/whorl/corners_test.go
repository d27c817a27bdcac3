package main

import (
	"math"
	"path/filepath"
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
