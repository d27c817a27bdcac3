package main

import (
	"math"
	"path/filepath"
	"strings"
	"testing"
)

// The stitches of a border stand square to the four edges of the cloth, which are as
// long as the stitches along them; in a corner they turn.
func TestBordersHaveEdges(t *testing.T) {
	for _, c := range []struct {
		file, picture string
		round         string
		wide, high    int // stitches along the edges
	}{
		{"cloth-mossrow.yaml", "border", "1", 27, 28},
		{"blanket-saltern.yaml", "border", "1", 22, 24},
		{"blanket-saltern.yaml", "border", "2", 22, 24},
		{"cloth-quarry.yaml", "edging", "2", 19, 15},
	} {
		file := filepath.Join("..", "..", "testdata", "patterns", "published", c.file)
		status, out, errs := whorl(t, "", "draw", file, "-o", t.TempDir(), "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		var name string
		for _, n := range strings.Fields(out) {
			if strings.Contains(n, c.picture) {
				name = n
			}
		}
		stitches, _ := readSVG(t, name)
		facing := map[float64]int{}
		for _, s := range stitches {
			if !strings.HasPrefix(s.id, "r"+c.round+"s") || !s.counted {
				continue
			}
			up := math.Atan2(s.base[0][1]-s.top[0][1], s.top[0][0]-s.base[0][0]) * 180 / math.Pi
			if side := 90 * math.Round(up/90); math.Abs(up-side) < 40 {
				facing[math.Mod(side+360, 360)]++
			}
		}
		for side, least := range map[float64]int{0: c.high, 90: c.wide, 180: c.high, 270: c.wide} {
			if n := facing[side]; n < least || n > least+4 {
				t.Errorf("%s: %d stitches of round %s face %g°, want %d to %d", c.file, n, c.round, side, least, least+4)
			}
		}
	}
}
