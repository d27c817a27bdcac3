package main

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
)

// yarnReports are the yarns that "check --json" tells of.
func yarnReports(t *testing.T, words string) []yarnReport {
	t.Helper()
	status, out, errs := whorl(t, words, "check", "--json", "-")
	if status != statusDone {
		t.Fatal(errs)
	}
	var r report
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatal(err)
	}
	return r.Yarn
}

// cloth is a piece in rows with as many stitches and rows as each size has.
const clothWords = `sizes: [S, L]
gauge: 20 sc and 20 rows = 10 cm
%s
parts:
  - name: %s
    worked: rows
    text: |
      Foundation: Ch 21 (41).
      Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (40) sc)
      Rows 2-20 (40): Ch 1, sc in each st across, turn. (20 (40) sc)
`

// A square of 10 cm and one of 20 cm: by a swatch of a quarter the size of the
// smaller, and by a sample of the larger.
func TestYarnOfASquare(t *testing.T) {
	for _, c := range []struct {
		yarn, part string
		grams      [2]float64
		metres     [2]float64
		balls      [2]int
		near       float64 // share by which the grams may be off
	}{
		{"yarn: {swatch: 5 × 5 cm = 2 g}", "Square", [2]float64{8, 32}, [2]float64{}, [2]int{}, 1e-6},
		{"yarn: {ball: 10 g, length: 25 m, swatch: 5 × 5 cm = 2 g}", "Square", [2]float64{8, 32}, [2]float64{20, 80}, [2]int{1, 4}, 1e-6},
		{"yarn: {ball: 10 g, length: 25 m, swatch: 5 × 5 cm = 5 m}", "Square", [2]float64{8, 32}, [2]float64{20, 80}, [2]int{1, 4}, 1e-6},
		{"yarn: {ball: 1 oz, swatch: 2 × 2 in = 2 g}", "Square (make 2)", [2]float64{16 / 1.032256, 64 / 1.032256}, [2]float64{}, [2]int{1, 3}, 1e-6},
		{"yarn: {ball: 8 g, sample: L = 32 g}", "Square", [2]float64{8, 32}, [2]float64{}, [2]int{2, 4}, 0.04}, // its chain and turns besides
		{"yarn: {length: 10 yd, sample: L = 40 yd}", "Square", [2]float64{}, [2]float64{9.144, 36.576}, [2]int{2, 4}, 0.04},
	} {
		l := yarnReports(t, fmt.Sprintf(clothWords, c.yarn, c.part))
		if len(l) != 1 || len(l[0].Sizes) != 2 || l[0].Basis == "" {
			t.Fatalf("%s: %+v", c.yarn, l)
		}
		for i, s := range l[0].Sizes {
			if math.Abs(s.Grams-c.grams[i]) > c.near*c.grams[i]+1e-4 || math.Abs(s.Metres-c.metres[i]) > c.near*c.metres[i]+1e-4 {
				t.Errorf("%s, size %s: %v g, %v m, want %v, %v", c.yarn, s.Size, s.Grams, s.Metres, c.grams[i], c.metres[i])
			}
			if s.Balls != c.balls[i] {
				t.Errorf("%s, size %s: %d balls, want %d", c.yarn, s.Size, s.Balls, c.balls[i])
			}
		}
	}
}

// What was weighed comes out again for the size that it was weighed in, and the
// words round up.
func TestYarnInWords(t *testing.T) {
	_, out, _ := whorl(t, fmt.Sprintf(clothWords, "yarn: {colour: Flint, ball: 50 g, length: 120 m, sample: L = 100.4 g}", "Square"), "check", "-")
	for _, s := range []string{"\nYarn: Flint\n", "  L  101 g  241 m  3 balls\n", "By a sample of size L that took 100.4 g; the other sizes go by their stitches and chains",
		"Rounded up to whole balls of 50 g."} {
		if !strings.Contains(out, s) {
			t.Errorf("no %q in\n%s", s, out)
		}
	}
	_, out, _ = whorl(t, fmt.Sprintf(clothWords, "yarn: {ball: 3.5 oz, length: 220 yd, swatch: 6 × 6 in = 0.5 oz}", "Wing (make 2)"), "check", "-")
	// 20 × 20 cm twice is 124 in²; (6 in)² took 0.5 oz: 1.722 oz, 108.3 yd.
	for _, s := range []string{"\nYarn\n", "  L  1.8 oz  109 yd  1 ball\n", "By a swatch of 6 × 6 in that took 0.5 oz", "Made: 2 of Wing."} {
		if !strings.Contains(out, s) {
			t.Errorf("no %q in\n%s", s, out)
		}
	}
	if _, out, _ = whorl(t, fmt.Sprintf(clothWords, "yarn: {ball: 50 g}", "Square"), "check", "-"); strings.Contains(out, "Yarn") {
		t.Error(out)
	}
	status, _, errs := whorl(t, "yarn: {swatch: 5 × 5 cm = 2 g}\n"+circle("hdc", 8, 3), "check", "-")
	if status != statusFaults || !strings.Contains(errs, ":1:16: a swatch was weighed, but there is no gauge") {
		t.Errorf("%d %s", status, errs)
	}
}

// A sample is of all pieces that are made, where they are not one.
func TestYarnOfAllPieces(t *testing.T) {
	for file, want := range map[string]bool{"heron-reach-set": true, "bulrush-hat": false, "lantern-hill-cap": false} {
		if _, out, _ := whorl(t, "", "check", "../../patterns/examples/"+file+".yaml"); strings.Contains(out, " g for all pieces together; ") != want {
			t.Errorf("%s: it is of all pieces: %v", file, !want)
		}
	}
}

// stripes is a cloth of 20 rows of 20 stitches in size S and 40 of 40 in L, whose first
// ten are in A.
const stripesWords = `sizes: [S, L]
gauge: 20 sc and 20 rows = 10 cm
yarn:
  - {%s, ball: 50 g, %s}
  - {%s, ball: 50 g, swatch: 5 × 5 cm = 2 g}
parts:
  - name: Cloth
    worked: rows
    text: |
      With A, ch 21 (41).
      Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (40) sc)
      Rows 2-10: Ch 1, sc in each st across%s, turn. (20 (40) sc)
      Change to %s.
      Rows 11-20 (40): Ch 1, sc in each st across, turn. (20 (40) sc)
`

// Of several yarns each is reckoned by what is worked with it; where the words leave
// that open, it is said what the figures go by.
func TestYarnOfColours(t *testing.T) {
	// B is 10 rows of 20 stitches, 5 × 10 cm, in S and 30 of 40, 15 × 20 cm, in L.
	halves, whole := [2]float64{4, 24}, [2]float64{8, 32}
	for name, c := range map[string]struct {
		first, weighed, second, within, to string
		a, b                               [2]float64 // grams
		says                               string
	}{
		"by letters":   {"colour: A Chalk", "sample: S = 30 g", "colour: Kelp (B)", "", "B", [2]float64{30, 60}, halves, "go by their stitches and chains in this yarn"},
		"by order":     {"colour: Chalk", "swatch: 5 × 5 cm = 2 g", "colour: Kelp", "", "B", [2]float64{4, 8}, halves, "In the order of the list, A is Chalk, B is Kelp."},
		"by name":      {"colour: Chalk (A)", "swatch: 5 × 5 cm = 2 g", "name: wool, colour: Kelp", "", "Kelp", [2]float64{4, 8}, halves, "as much for the same area of what is worked with this yarn"},
		"within a row": {"colour: A", "sample: S = 30 g", "colour: B", " to last 2 sts, change to B, sc in last 2 sts", "B", [2]float64{30, 120}, whole, "As the colour changes within Row 2, its share of the fabric is taken to be alike in all sizes."},
		"another":      {"colour: A", "sample: S = 30 g", "colour: B", "", "C", [2]float64{30, 120}, whole, "As none of the yarns is called C, its share of the fabric is taken to be alike in all sizes."},
	} {
		l := yarnReports(t, fmt.Sprintf(stripesWords, c.first, c.weighed, c.second, c.within, c.to))
		if len(l) != 2 || len(l[0].Sizes) != 2 || len(l[1].Sizes) != 2 {
			t.Fatalf("%s: %+v", name, l)
		}
		if !strings.Contains(l[0].Basis, c.says) {
			t.Errorf("%s: %q", name, l[0].Basis)
		}
		for i := range 2 {
			for k, want := range [][2]float64{c.a, c.b} {
				if got := l[k].Sizes[i].Grams; math.Abs(got-want[i]) > 0.05*want[i] {
					t.Errorf("%s: yarn %d of size %s takes %.2f g, want %.2f", name, k+1, l[k].Sizes[i].Size, got, want[i])
				}
			}
		}
	}
	l := yarnReports(t, fmt.Sprintf(strings.ReplaceAll(strings.ReplaceAll(stripesWords, "With A, c", "C"), "Change to %s.\n      ", "%s"), "colour: Chalk", "sample: S = 30 g", "colour: Kelp", "", ""))
	if want := "As the words do not say what is worked with which yarn, this is for all of the fabric, as if it were all worked with this yarn."; !strings.Contains(l[1].Basis, want) {
		t.Errorf("%q", l[1].Basis)
	}
}
