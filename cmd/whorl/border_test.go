package main

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// The stitches of a border stand square to the four edges of the cloth, which are as
// long as the stitches along them; in a corner they turn.
func TestBordersHaveEdges(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		file, picture string
		round         string
		wide, high    int // stitches along the edges
	}{
		{"cloth-mossrow.yaml", "border", "1", 27, 28},
		{"blanket-saltern.yaml", "border", "1", 22, 24},
		{"blanket-saltern.yaml", "border", "2", 22, 24},
		{"cloth-quarry.yaml", "edging", "2", 19, 15},
		{"dishcloth.yaml", "border", "1", 27, 27},
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

// The number of a border's round and the mark at its beginning are by its first stitch.
func TestBordersBeginAtTheirSigns(t *testing.T) {
	t.Parallel()
	begin := regexp.MustCompile(`(?s)id="r1s1"[^>]*data-top="(\d+) (\d+)`)
	number := regexp.MustCompile(`<text x="(\d+)" y="(\d+)"[^>]*>1</text>`)
	start := regexp.MustCompile(`(?s)id="start"[^>]*>.*?d="M(\d+) (\d+)`)
	for _, c := range [][2]string{{"cloth-mossrow", "border"}, {"blanket-saltern", "border"}, {"cloth-quarry", "edging"}, {"dishcloth", "border"}} {
		dir := t.TempDir()
		file := filepath.Join("..", "..", "testdata", "patterns", "published", c[0]+".yaml")
		if status, _, errs := whorl(t, "", "draw", file, "-o", dir, "--format", "svg"); status != statusDone {
			t.Fatal(errs)
		}
		svg, err := os.ReadFile(filepath.Join(dir, c[0]+"-"+c[1]+".svg"))
		if err != nil {
			t.Fatal(err)
		}
		at := func(r *regexp.Regexp) (x, y float64) {
			m := r.FindSubmatch(svg)
			if m == nil {
				t.Fatalf("%s: no %v", c[0], r)
			}
			x, _ = strconv.ParseFloat(string(m[1]), 64)
			y, _ = strconv.ParseFloat(string(m[2]), 64)
			return x / 100, y / 100
		}
		x, y := at(begin)
		for what, r := range map[string]*regexp.Regexp{"number": number, "mark": start} {
			if u, v := at(r); math.Hypot(u-x, v-y) > 12 {
				t.Errorf("%s: the %s is %.1f mm from the first stitch", c[0], what, math.Hypot(u-x, v-y))
			}
		}
	}
}

// The stitches of a motif's border stand square to its sides, as many to each.
func TestMotifBordersHaveSides(t *testing.T) {
	t.Parallel()
	const motif = `title: Hexagon
terms: US
gauge: 14 dc and 7 rounds = 10 cm
parts:
  - name: Hexagon
    worked: rounds
    text: |
      Ch 4, join with sl st to form a ring.
      Rnd 1: Ch 3 (counts as dc), dc in ring, ch 2, (2 dc in ring, ch 2) 5 times, join. (12 dc)
      Rnd 2: Sl st to ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, dc in next 2 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 2 dc; rep from * around, join. (36 dc)
      Rnd 3: Sl st in next dc and in next ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, dc in next 6 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 6 dc; rep from * around, join. (60 dc)
`
	hexagon := func(name, border string) string {
		file := filepath.Join(t.TempDir(), name+".yaml")
		if err := os.WriteFile(file, []byte(motif+border), 0o644); err != nil {
			t.Fatal(err)
		}
		return file
	}
	const border = `  - name: Border
    worked: rounds
    from: Hexagon
    text: |
      Rnd 1: Join with sl st in any ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, dc in next 10 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 10 dc; rep from * around, join. (84 dc)
`
	// Nothing in the first round tells its corners from the rest, but for where they are.
	const plain = `  - name: Border
    worked: rounds
    from: Hexagon
    text: |
      Rnd 1: Join with sl st in any ch-2 sp, ch 1, *sc in ch-2 sp, sc in next 10 dc; rep from * around, join. (66 sc)
      Rnd 2: Ch 1, *3 sc in next st, sc in next 10 sts; rep from * around, join. (78 sc)
`
	const edging = `  - name: Edging
    worked: rounds
    from: Border
    text: |
      Rnd 1: Join in first sc, ch 1, sc in same st, *3 sc in next st, sc in next 12 sts; rep from * to last 12 sts, 3 sc in next st, sc in next 11 sts, join. (90 sc)
`
	square := filepath.Join("..", "..", "testdata", "patterns", "published", "orchard-square.yaml")
	for _, c := range []struct {
		file        string
		picture     int
		sides, each int // stitches along each side
	}{
		{square, 1, 4, 15},
		{hexagon("corners", border), 1, 6, 10},
		{hexagon("plain", plain), 1, 6, 10},
		{hexagon("edging", plain+edging), 2, 6, 12},
	} {
		status, out, errs := whorl(t, "", "draw", c.file, "-o", t.TempDir(), "--format", "svg")
		if status != statusDone {
			t.Fatal(errs)
		}
		stitches, _ := readSVG(t, strings.Fields(out)[c.picture])
		square := map[float64]int{}
		for _, s := range stitches {
			if !strings.HasPrefix(s.id, "r1s") || !s.counted {
				continue
			}
			up := math.Atan2(s.base[0][1]-s.top[0][1], s.top[0][0]-s.base[0][0])*180/math.Pi - 90
			turn := 360 / float64(c.sides)
			if side := turn * math.Round(up/turn); math.Abs(up-side) < 5 {
				square[math.Mod(side+360, 360)]++
			}
		}
		for side, n := range square {
			if n != c.each {
				t.Errorf("%s: %d stitches stand square to the side at %g°, want %d", c.file, n, side, c.each)
			}
		}
		if len(square) != c.sides {
			t.Errorf("%s: stitches stand square to %d sides, want %d", c.file, len(square), c.sides)
		}
	}
}

// The border of a triangle that is worked from the middle of its long edge turns a corner
// at the spine: as many stitches face to each side of it, and none but its own up.
func TestBorderTurnsAtSpine(t *testing.T) {
	file := filepath.Join(t.TempDir(), "triangle.yaml")
	if err := os.WriteFile(file, []byte(`title: Triangle
terms: US
gauge: 14 dc and 7 rows = 10 cm
parts:
  - name: Shawl
    worked: rows
    text: |
      Ch 4, join with sl st to form a ring.
      Row 1: Ch 3 (counts as dc here and throughout), (2 dc, ch 2, 3 dc) in ring, turn. (6 dc, 1 ch-2 sp)
      Row 2: Ch 3, dc in first st, dc in each st to ch-2 sp, (2 dc, ch 2, 2 dc) in ch-2 sp, dc in each st to last st, 2 dc in last st, turn. (12 dc)
      Rows 3-6: Rep Row 2. (36 dc)
  - name: Border
    worked: rounds
    from: Shawl
    text: |
      Rnd 1: Ch 1, 3 sc in first st, sc in each st to ch-2 sp, (sc, ch 2, sc) in ch-2 sp, sc in each st to last st, 3 sc in last st, 10 sc evenly down the side, 10 sc evenly up the other side; join with sl st in first sc.
`), 0o644); err != nil {
		t.Fatal(err)
	}
	status, out, errs := whorl(t, "", "draw", file, "-o", t.TempDir(), "--format", "svg")
	if status != statusDone {
		t.Fatal(errs)
	}
	stitches, _ := readSVG(t, strings.Fields(out)[1])
	left, right, up, down := 0, 0, 0, 0
	for _, s := range stitches {
		if !strings.HasPrefix(s.id, "r1s") || !s.counted {
			continue
		}
		switch a := math.Atan2(s.base[0][1]-s.top[0][1], s.top[0][0]-s.base[0][0]) * 180 / math.Pi; {
		case a < -30:
			down++
		case a >= 15 && a < 50:
			right++
		case a > 130 && a <= 165:
			left++
		case a >= 50 && a <= 130:
			up++
		}
	}
	if left != right || left < 16 || up != 2 || down < 20 {
		t.Errorf("%d stitches face left, %d right, %d up and %d down", left, right, up, down)
	}
}
