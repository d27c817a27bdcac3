package main

import (
	"encoding/json"
	"testing"
)

// A seam through both layers that has a number is among the rounds of its part.
func TestSeamInReport(t *testing.T) {
	const bag = "title: Ear\ngauge: 16 sc and 18 rounds = 10 cm\nparts:\n  - name: Ear\n    worked: rounds\n    text: |\n      Rnd 1: 6 sc in magic ring. (6)\n      Rnd 2: Fold flat, sc 3 through both layers (3)\n"
	status, out, errs := whorl(t, bag, "check", "--json", "-")
	var r report
	if err := json.Unmarshal([]byte(out), &r); err != nil || status != statusDone {
		t.Fatal(status, err, errs)
	}
	rounds := r.Sizes[0].Parts[0].Rounds
	last := rounds[len(rounds)-1]
	if last.Label != "Rnd 2" || last.Number != 2 || last.Stitches != 3 || last.Kinds["sc"] != 3 {
		t.Errorf("%+v", last)
	}
}
