package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// horned has a symbol of the designer's own with a bar above its top, which crosses the
// legs of the round above.
const horned = `
title: Horned Coaster
stitches:
  horn:
    words: 3-dc cluster
    symbol: {box: 12 x 24, path: M6 24 V10 M0 6 L12 6, foot: 6 24, top: 6 10}
parts:
  - name: Coaster
    worked: rounds
    text: |
      Rnd 1: 6 sc in magic ring; join. (6 sc)
      Rnd 2: Ch 1, 2 sc in each st around; join. (12 sc)
      Rnd 3: Ch 1, horn in each st around; join. (12 horns)
      Rnd 4: Ch 1, sc in each st around; join. (12 sc)
`

// check --audit looks over the charts that the file asks for, and its status tells
// whether they are clean.
func TestCheckAudits(t *testing.T) {
	clean := "../../patterns/examples/bulrush-hat.yaml"
	status, _, errs := whorl(t, "", "check", "--audit", clean)
	if status != statusDone || strings.Count(errs, "nothing touches") != 2 {
		t.Errorf("status %d: %s", status, errs)
	}
	if _, _, errs := whorl(t, "", "check", clean); strings.Contains(errs, "nothing touches") {
		t.Errorf("an audit that was not asked for: %s", errs)
	}
	horns := filepath.Join(t.TempDir(), "horns.yaml")
	if err := os.WriteFile(horns, []byte(horned), 0o644); err != nil {
		t.Fatal(err)
	}
	status, _, errs = whorl(t, "", "check", "--audit", horns)
	if status != statusFaults || !strings.Contains(errs, "strokes touch") || !strings.Contains(errs, "in all") || strings.Contains(errs, "nothing touches") {
		t.Errorf("status %d: %s", status, errs)
	}
	if status, _, errs := whorl(t, "", "check", "--audit", "-"); status != statusMisuse || !strings.Contains(errs, "--audit") {
		t.Errorf("status %d: %s", status, errs)
	}
}
