package working_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/patterns"
	"whorl/patterns/working"
)

// The colour that each round is worked in, as the words change it: what changes it
// behind several rounds does so after the last of them.
func TestColoursOfRounds(t *testing.T) {
	for name, c := range map[string]struct{ words, want string }{
		"before a round":     {"With A, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nChange to B.\nRow 2: Ch 1, sc in each st across, turn. (10 sc)", "A A B"},
		"behind several":     {"With A, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRows 2-4: Ch 1, sc in each st across, turn. (10 sc)\nChange to B.\nRows 5-6: Ch 1, sc in each st across, turn. (10 sc)", "A A A A A B B"},
		"in its last stitch": {"With A, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, change to B in last st, turn. (10 sc)\nRow 2: Ch 1, sc in each st across, changing to A in last st, turn. (10 sc)\nRow 3: Ch 1, sc in each st across, turn. (10 sc)", "A A B A"},
		"within a round":     {"With A, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in next 5 sts, change to B, sc in next 5 sts, turn. (10 sc)", "A A A+"},
	} {
		text := "gauge: 20 sc and 20 rows = 10 cm\nparts:\n  - worked: rows\n    text: |\n      " + strings.ReplaceAll(c.words, "\n", "\n      ") + "\n"
		p, err := patterns.Read("x.yaml", []byte(text))
		if err != nil {
			t.Fatal(name, err)
		}
		fabrics, faults := working.Work(p, nil)
		if len(faults) > 0 {
			t.Fatal(name, faults)
		}
		var got []string
		for _, r := range fabrics[0].Parts[0].Rounds {
			colour := r.Colour
			if r.Colours {
				colour += "+"
			}
			got = append(got, colour)
		}
		if diff := cmp.Diff(c.want, strings.Join(got, " ")); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}
