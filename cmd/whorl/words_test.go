package main

import (
	"strings"
	"testing"
)

func TestWordsInTheOtherTermsForOneSize(t *testing.T) {
	status, out, errs := whorl(t, "", "words", "../../patterns/examples/bulrush-hat.yaml", "--terms", "UK", "--size", "adult")
	if status != statusDone || errs != "" {
		t.Fatal(status, errs)
	}
	for _, want := range []string{
		"Size: Adult\n",
		"Tension: 14 htr and 10 rounds = 10 cm\n", "Tension: 14 BLO dc and 16 rows = 10 cm\n",
		"tr5tog: treble crochet 5 together\n",
		"shell: 5 tr in same st\n",
		"BLO: back loop only\n",
		"Worked in rounds, picked up along the Brim row ends.\n",
		"Hold the short ends together and ss through both",
		"Rnd 2: Ch 1, dc in same st, *miss next 2 sts, shell in next st, miss next 2 sts, dc in next st; rep from * around, " +
			"omitting last dc; join with ss in first dc. (12 shells, 12 dc)\n",
		"Rnd 17: Ch 1, htr2tog around; join. (12 htr2tog)\nFasten off, leaving a long tail.",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("not printed: %s", want)
		}
	}
	for _, never := range []string{"hdc", "sk ", "sl st", "sc ", "(66,"} {
		if strings.Contains(out, never) {
			t.Errorf("printed: %s", never)
		}
	}
}

func TestWordsRefusals(t *testing.T) {
	for _, c := range []struct {
		args   []string
		status int
		says   string
	}{
		{[]string{"--size", "Huge"}, statusMisuse, "the sizes are Toddler, Child, Adult, Adult Large"},
		{[]string{"--terms", "FR"}, statusMisuse, "--terms is US or UK"},
	} {
		status, out, errs := whorl(t, "", append([]string{"words", "../../patterns/examples/bulrush-hat.yaml"}, c.args...)...)
		if status != c.status || out != "" || !strings.Contains(errs, c.says) {
			t.Errorf("%v: %d %q %q", c.args, status, out, errs)
		}
	}
	wrong := "title: T\nterms: US\nparts:\n  - name: P\n    worked: rounds\n    text: |\n      Rnd 1: 6 sc in magic ring. (7)\n"
	if status, out, errs := whorl(t, wrong, "words", "-"); status != statusFaults || out != "" || !strings.Contains(errs, "not the 7") {
		t.Errorf("%d %q %q", status, out, errs)
	}
}
