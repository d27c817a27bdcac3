package working

import (
	"fmt"
	"strings"
	"testing"

	"whorl/patterns"
)

// Markers, changes of colour and where the yarn is cut are kept stitch by stitch: m
// behind a stitch is a marker in it, a name between two that the yarn changes, | the
// end of a round and || that the yarn is cut there.
func TestYarnAndMarkers(t *testing.T) {
	for name, c := range map[string]struct{ words, want string }{
		"nth":       {"Rnd 1: Magic ring, 6 sc in ring, place marker in 3rd st. (6 sc)", "sc sc scm sc sc sc |"},
		"ordinal":   {"Rnd 1: 6 sc in magic ring. Place a marker in the second stitch. (6)", "sc scm sc sc sc sc |"},
		"last made": {"Rnd 1: 3 sc in magic ring, pm in last st made, 3 sc in ring. (6 sc)", "sc sc scm sc sc sc |"},
		"bare":      {"Rnd 1: 2 sc in magic ring, pm, 2 sc in ring, place marker. (4 sc)", "sc scm sc scm |"},
		"moved up": {"Rnd 1: 4 sc in magic ring. Place marker in first st and move it up each rnd.\nRnd 2: 2 sc in each st around. (8 sc)",
			"scm sc sc sc | scm sc sc sc sc sc sc sc |"},
		"nowhere":                 {"Rnd 1: 4 sc in magic ring, place marker in next ch-2 sp. (4 sc)", "sc sc sc sc |"},
		"removed":                 {"Rnd 1: 4 sc in magic ring, remove marker. (4 sc)", "sc sc sc sc |"},
		"within":                  {"Rnd 1: With A, 2 sc in magic ring, with B, 2 sc in ring.\nRnd 2: Sc in each st around. (4 sc)", "A sc sc B sc sc | sc sc sc sc |"},
		"in a repeat":             {"Rnd 1: With A, 6 sc in magic ring.\nRnd 2: *With A, sc in next st, with B, sc in next 2 sts; rep from * around. (6 sc)", "A sc sc sc sc sc sc | sc B sc sc A sc B sc sc |"},
		"to come":                 {"Rnd 1: With A, 3 sc in magic ring, change to B in last st.\nRnd 2: Sc in each st around.\n", "A sc sc sc | B sc sc sc |"},
		"again":                   {"Rnd 1: With A, 2 sc in magic ring.\nRnd 2: With A, sc in each st around.\nRnd 3: With B, rep Rnd 2.", "A sc sc | sc sc | B sc sc |"},
		"all that are told again": {"Rnd 1: With A, 2 sc in magic ring.\nRnd 2: Sc in each st around.\nRep Rnd 2 in B for 2 rnds.\nRep Rnd 2 with A for 1 rnd.", "A sc sc | sc sc | B sc sc | sc sc | A sc sc |"},
		"by number, behind them":  {"Rnd 1: With A, 2 sc in magic ring.\nRnd 2: Sc in each st around.\nRnds 3 and 4: Rep Rnd 2. Change to B in the last stitch of Rnd 4.\nRnd 5: Sc in each st around.", "A sc sc | sc sc | sc sc | sc sc | B sc sc |"},
		"in the join":             {"Rnd 1: With A, 2 sc in magic ring; join with B.\nRnd 2: Ch 1, sc in each st around; join.", "A sc sc | B sc sc |"},
		"cut":                     {"Rnd 1: With A, 3 sc in magic ring. Fasten off.\nRnd 2: Join B in any st, sc in each st around. Fasten off.", "A sc sc sc || B sc sc sc ||"},
		"cut behind several":      {"Rnd 1: 2 sc in magic ring.\nRnds 2-4: Sc in each st around. (2 sc)\nFasten off and leave a tail.", "sc sc | sc sc | sc sc | sc sc ||"},
		"cut each time":           {"Rnd 1: 2 sc in magic ring. Fasten off.\nRnds 2-3: Join B in first st, sc in each st around. Fasten off. (2 sc)", "sc sc || B sc sc || sc sc ||"},
		"cut by itself":           {"Rnd 1: 3 sc in magic ring.\nFasten off.", "sc sc sc ||"},
	} {
		text := "title: T\nparts:\n  - worked: rounds\n    text: |\n      " + strings.ReplaceAll(c.words, "\n", "\n      ") + "\n"
		p, err := patterns.Read("t.yaml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		fabrics, faults := Work(p, rule{})
		if len(fabrics) == 0 {
			t.Errorf("%s: %v", name, faults)
			continue
		}
		var got []string
		yarn := ""
		for _, r := range fabrics[0].Parts[0].Rounds {
			if r.Number == 0 {
				continue
			}
			for i := range r.Stitches {
				s := &r.Stitches[i]
				if !s.Counts {
					continue
				}
				if s.Colour != yarn {
					yarn = s.Colour
					got = append(got, yarn)
				}
				mark := ""
				if s.Marked {
					mark = "m"
				}
				got = append(got, fmt.Sprint(s.Kind.Name(p.Terms), mark))
			}
			if r.Cut {
				got = append(got, "||")
			} else {
				got = append(got, "|")
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: %s, want %s (%v)", name, s, c.want, faults)
		}
	}
}
