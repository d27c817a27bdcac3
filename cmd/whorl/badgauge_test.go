package main

import (
	"fmt"
	"strings"
	"testing"
)

// Whatever is wrong with the gauge or the rounds is said in words, with its
// place, and nothing is drawn.
func TestBadFiguresInWords(t *testing.T) {
	const rounds = "Rnd 1: 6 sc in magic ring. (6)"
	for _, c := range []struct{ gauge, rounds, says string }{
		{"0 hdc = 10 cm", rounds, `"0" cannot be a number of stitches`},
		{"-3 hdc = 10 cm", rounds, `"-3" cannot be a number of stitches`},
		{"16 hdc and 0 rounds = 10 cm", rounds, `"0" cannot be a number of stitches or rounds`},
		{"16 hdc and -2 rounds = 10 cm", rounds, `"-2" cannot be a number of stitches or rounds`},
		{"16 hdc = 0 cm", rounds, "the length of a gauge must be above 0"},
		{"16 hdc = -10 cm", rounds, "the length of a gauge must be above 0"},
		{"16 hdc = 10 furlongs", rounds, `"furlongs" is not a unit of length`},
		{"16 hdc and 11 rounds = 10 km", rounds, `"km" is not a unit of length`},
		{"NaN hdc = 10 cm", rounds, "does not begin with a number"},
		{"inf hdc = 10 cm", rounds, "does not begin with a number"},
		{"16 hdc = NaN cm", rounds, `"NaN" is not a unit of length`},
		{"1e9 hdc = 10 cm", rounds, `"1e9" is not a number`},
		{"9999 hdc = 1 mm", rounds, "this gauge makes a stitch 0.0001 mm wide"},
		{"1 hdc = 450 cm", rounds, "this gauge makes a stitch 4.5e+03 mm wide"},
		{"1 hdc = 50 cm", rounds, "this gauge makes one stitch 500 mm wide"},
		{"16 hdc and 9999 rounds = 10 cm", rounds, "this gauge makes a round 0.01 mm high"},
		{"16 hdc = 10 cm", "Foundation: Ch 20, join with sl st to form ring.", "A has no rounds"},
		{"16 hdc = 10 cm", "Rnd 1: Make a magic ring.", "A has no rounds"},
		{"16 hdc = 10 cm", "", `the part "A" has no words`},
	} {
		words := fmt.Sprintf("gauge: %s\nparts:\n  - name: A\n    worked: rounds\n    text: |\n      %s\n", c.gauge, c.rounds)
		for _, args := range [][]string{{"check", "-"}, {"draw", "-", "-o", t.TempDir()}} {
			status, _, errs := whorl(t, words, args...)
			if status != statusFaults || !strings.Contains(errs, c.says) || !strings.HasPrefix(errs, "standard input:") {
				t.Errorf("%s, %s: status %d %q, want %q", args[0], c.gauge+"; "+c.rounds, status, errs, c.says)
			}
		}
	}
	// One round, and rounds of one stitch, are odd but can be worked.
	for _, words := range []string{rounds, "Rnd 1: 1 sc in magic ring. (1)",
		"Rnd 1: 6 sc in magic ring. (6)\n      Rnd 2: Sc6tog. (1)"} {
		words := "gauge: 16 hdc = 10 cm\nparts:\n  - name: A\n    worked: rounds\n    text: |\n      " + words + "\n"
		status, out, errs := whorl(t, words, "check", "-")
		if status != statusDone || strings.Contains(out, "NaN") || strings.Contains(out, "Inf") {
			t.Errorf("%s: status %d %s%s", words, status, out, errs)
		}
	}
}

// TestEdgingOnly draws a pattern with a part that is only an edging without a number of stitches: it is
// warned of, and has no chart.
func TestEdgingOnly(t *testing.T) {
	words := "gauge: 16 hdc = 10 cm\nparts:\n  - name: Hat\n    worked: rounds\n    text: |\n      Rnd 1: 12 hdc in magic ring; join.\n" +
		"  - name: Edging\n    worked: rounds\n    from: Hat\n    text: |\n      Join yarn at centre back and work 1 round of sc evenly around the edge. Fasten off.\n"
	for _, args := range [][]string{{"check", "-"}, {"draw", "-", "-o", t.TempDir()}} {
		status, out, errs := whorl(t, words, args...)
		if status != 0 || !strings.Contains(errs, "how many stitches this edging has") || strings.Contains(out, "edging") {
			t.Errorf("%s: status %d, %s%s", args[0], status, out, errs)
		}
	}
}
