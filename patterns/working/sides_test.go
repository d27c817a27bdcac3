package working

import (
	"testing"

	"whorl/patterns"
)

// A side that is said first of a later row tells those of the rows before.
func TestSidesSaidLate(t *testing.T) {
	p, err := patterns.Read("sides", []byte(`parts:
  - name: Edging
    worked: rows
    text: |
      Ch 5.
      Row 1: Sc in 2nd ch from hook and in each ch across, turn.
      Row 2 (RS): Ch 1, sc in each st across, turn.
      Row 3: Ch 1, sc in each st across, turn.
`))
	if err != nil {
		t.Fatal(err)
	}
	fabrics, faults := Work(p, rule{})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, r := range fabrics[0].Parts[0].Rounds {
		if wrong := r.Number != 2; r.Number > 0 && r.Wrong != wrong {
			t.Errorf("%s: wrong side is %v, want %v", r.Label, r.Wrong, wrong)
		}
	}
}
