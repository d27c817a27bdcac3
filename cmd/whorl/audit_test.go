package main

import (
	"strings"
	"testing"
)

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
	// The rows of this bonnet that grow fastest lie too close.
	status, _, errs = whorl(t, "", "check", "--audit", "../../testdata/patterns/more/bonnet-thistle.yaml")
	if status != statusFaults || !strings.Contains(errs, "strokes touch") || !strings.Contains(errs, "in all") {
		t.Errorf("status %d: %s", status, errs)
	}
	if status, _, errs := whorl(t, "", "check", "--audit", "-"); status != statusMisuse || !strings.Contains(errs, "--audit") {
		t.Errorf("status %d: %s", status, errs)
	}
}
