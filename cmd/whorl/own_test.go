package main

import (
	"os"
	"strings"
	"testing"
)

// withOwn is a pattern with a stitch of the designer's own in its second round.
func withOwn(symbol string) string {
	return "title: Thistle Round\nstitches:\n  Thistle: {words: 3-dc cluster, symbol: {" + symbol + "}}\n" + `parts:
  - name: Round
    text: |
      Rnd 1: Make a magic ring, ch 3 (counts as dc here and throughout), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)
      Rnd 2: Ch 3, *thistle in next st, ch 1, dc in same st; rep from * around; join.
pictures:
  - {name: chart, draw: round}
`
}

// A symbol of the designer's own is drawn in the chart and in the key, under her name.
func TestOwnSymbolIsDrawn(t *testing.T) {
	good := withOwn("box: 12 x 24, path: M6 24 V10 C2 10 1 5 3 1 L6 5 L9 1 C11 5 10 10 6 10, foot: 6 24, top: 6 1")
	status, out, errs := whorl(t, good, "draw", "-", "-o", t.TempDir(), "--format", "svg")
	if status != statusDone {
		t.Fatal(errs)
	}
	svg, err := os.ReadFile(strings.TrimSpace(out))
	if err != nil {
		t.Fatal(err)
	}
	for want, n := range map[string]int{": Thistle</title>": 11, `data-key="Thistle"`: 1, `data-key="3-dc cl"`: 0} {
		if got := strings.Count(string(svg), want); got != n {
			t.Errorf("%d of %s, want %d", got, want, n)
		}
	}
	file := t.TempDir() + "/thistle.yaml"
	if err := os.WriteFile(file, []byte(good), 0o644); err != nil {
		t.Fatal(err)
	}
	if status, _, errs := whorl(t, "", "check", "--audit", file); status != statusDone || !strings.Contains(errs, "nothing touches") {
		t.Errorf("status %d: %s", status, errs)
	}
}

// What is wrong in a symbol is told at its place.
func TestOwnSymbolFaults(t *testing.T) {
	for symbol, want := range map[string]string{
		"box: 12 x 24, path: M6 24 V1 K6, foot: 6 24, top: 6 1": `standard input:3:72: Thistle: "K" has no meaning in a path`,
		"box: 12 x 24, path: M6 20 V1, foot: 6 24, top: 6 1":    "standard input:3:63: Thistle: no line of the path comes to its foot at 6 24",
		"box: 12 x 24, path: M6 24 H40, foot: 6 24, top: 6 1":   "standard input:3:63: Thistle: the path leaves its box at 40 24",
	} {
		if status, _, errs := whorl(t, withOwn(symbol), "check", "-"); status != statusFaults || !strings.Contains(errs, want) {
			t.Errorf("status %d, not %s: %s", status, want, errs)
		}
	}
	for words, want := range map[string]string{"(dc, ch 1, dc) in same st": "makes several stitches", "dc3tog": "is worked over several places"} {
		pattern := strings.Replace(withOwn("box: 12 x 24, path: M6 24 V1, foot: 6 24, top: 6 1"), "words: 3-dc cluster", `words: "`+words+`"`, 1)
		if status, _, errs := whorl(t, pattern, "check", "-"); status != statusFaults || !strings.Contains(errs, want) {
			t.Errorf("%s: status %d: %s", words, status, errs)
		}
	}
}
