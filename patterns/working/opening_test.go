package working

import (
	"fmt"
	"testing"

	"whorl/patterns"
)

// mitten has a hand with a slit, and a thumb begun in the words.
func mitten(chains, from, thumb string) string {
	if from != "" {
		from = "    from: " + from + "\n"
	}
	return fmt.Sprintf(`title: Mitten
sizes: [S, M]
parts:
  - name: Hand
    worked: rounds
    text: |
      Ch 20 (24), join with sl st in first ch to form ring.
      Rnd 1: Ch 1, sc in each ch around; join. (20 (24) sc)
      Rnd 2: Ch 1, sc in next 4 sts, ch %s, sk next 5 (6) sts, sc in each st around; join.
  - name: Thumb
    worked: rounds
%s    text: |
      %s
`, chains, from, thumb)
}

// A thumb is worked round the slit that the hand was left with: into the
// stitches passed over, then the chains across them, however it is said.
func TestThumbRoundAnOpening(t *testing.T) {
	for _, c := range []struct{ from, words string }{
		{"Hand", "Rnd 1: Join yarn at thumb opening, ch 1, sc in each of 5 (6) skipped sts, sc in each of 5 (6) chs; join. (10 (12) sc)"},
		{"", "Rnd 1: Rejoin yarn to first skipped st of thumb opening, ch 1, sc in each skipped st and in each ch around; join. (10 (12) sc)"},
		{"Hand thumb opening", "Rnd 1: Ch 1, sc in each skipped st, sc in each ch; join. (10 (12) sc)"},
		{"Hand", "Rnd 1: Join yarn with sc in first unworked sc of thumb hole, sc in next 4 (5) skipped sts, sc in next 5 (6) chs; join. (10 (12) sc)"},
		{"Hand", "Rnd 1: Attach yarn to any st of thumb opening, ch 1, sc in each st and ch around thumb opening; join. (10 (12) sc)"},
		{"Hand", "Rnd 1: Join yarn at thumb opening, ch 1, work 10 (12) sc evenly around thumb opening; join. (10 (12) sc)"},
	} {
		p, err := patterns.Read("mitten", []byte(mitten("5 (6)", c.from, c.words)))
		if err != nil {
			t.Fatal(err)
		}
		fabrics, faults := Work(p, rule{})
		if len(faults) > 0 {
			t.Errorf("%s: %v", c.words, faults)
			continue
		}
		for i, want := range []string{"sc@1-5 sc@c1 sc@c2 sc@c3 sc@c4 sc@c5", "sc@1-6 sc@c1 sc@c2 sc@c3 sc@c4 sc@c5 sc@c6"} {
			thumb := fabrics[i].Parts[1]
			got := written(thumb, 1)
			for _, begin := range []string{"~sl-st@1 ", "+1@1 "} {
				if len(got) > len(begin) && got[:len(begin)] == begin {
					got = got[len(begin):]
				}
			}
			if got != want+" J" {
				t.Errorf("%s, size %d:\n got %s\nwant %s J", c.words, i+1, got, want)
			}
		}
		if d := printed(p); d != "" {
			t.Errorf("%s: %s", c.words, d)
		}
	}
}

// A hand with no chains to speak of across what it passes over has no slit, and
// that is told.
func TestNoOpening(t *testing.T) {
	p, err := patterns.Read("mitten", []byte(mitten("1", "Hand", "Rnd 1: Join yarn in first skipped st of thumb opening, ch 1, sc in each st around thumb opening; join.")))
	if err != nil {
		t.Fatal(err)
	}
	_, faults := Work(p, rule{})
	if len(faults) != 2 || faults[0].Code != "opening" || faults[0].Line != 14 {
		t.Errorf("%v", faults)
	}
}
