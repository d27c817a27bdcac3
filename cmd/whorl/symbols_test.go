package main

import (
	"strings"
	"testing"
)

func TestSymbols(t *testing.T) {
	dir := t.TempDir()
	status, out, errs := whorl(t, "", "symbols", "--terms", "uk", "--paper", "letter", "-o", dir)
	if status != statusDone || len(strings.Fields(out)) != 3 || !strings.Contains(out, "symbols-uk.pdf") {
		t.Errorf("status %d, %s%s", status, out, errs)
	}
	for _, wrong := range [][]string{{"--terms", "FR"}, {"--paper", "A0"}, {"--format", "gif"}, {"sc"}} {
		if status, _, errs := whorl(t, "", append([]string{"symbols", "-o", dir}, wrong...)...); status != statusMisuse || errs == "" {
			t.Errorf("%v: status %d, %s", wrong, status, errs)
		}
	}
}
