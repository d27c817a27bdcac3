package working

import (
	"fmt"
	"testing"

	"whorl/patterns"
)

func bordered(last, border string) string {
	return fmt.Sprintf(`title: Cloth
parts:
  - name: Cloth
    worked: rows
    text: |
      Ch 5.
      Row 1: Sc in 2nd ch from hook and in each ch across, turn. (4 sc)
      Row 2: Ch 1, sc in each sc across, turn. (4 sc)
      Row 3: Ch 1, sc in each sc across%s. (4 sc)
  - name: Border
    worked: rounds
    from: Cloth
    text: |
      %s
`, last, border)
}

// A border goes along the last row, down the ends of the rows, along the
// underside of the starting chain and up the other ends.
func TestBorderRoundAFlatPiece(t *testing.T) {
	const words = "Rnd 1: Ch 1, 3 sc in first sc, sc in next 2 sc, 3 sc in last sc; work 3 sc evenly along row ends; " +
		"working along opposite side of foundation ch, 3 sc in first ch, sc in next 2 chs, 3 sc in last ch; work 3 sc evenly along row ends; join. (22 sc)"
	for _, c := range []struct{ last, want string }{
		{", turn", "+1@4 3*sc@4 sc@3 sc@2 3*sc@1 sc@e3 sc@e2 sc@e1 3*sc@uc1 sc@uc2 sc@uc3 3*sc@uc4 sc@e1 sc@e2 sc@e3 J"},
		{"", "+1@1 3*sc@1 sc@2 sc@3 3*sc@4 sc@e3 sc@e2 sc@e1 3*sc@uc1 sc@uc2 sc@uc3 3*sc@uc4 sc@e1 sc@e2 sc@e3 J"},
	} {
		p, err := patterns.Read("cloth", []byte(bordered(c.last, words)))
		if err != nil {
			t.Fatal(err)
		}
		fabrics, faults := Work(p, rule{})
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		// The underside is called by the number of the chain in the round that the
		// part goes on from.
		if got := written(fabrics[0].Parts[1], 1); got != c.want {
			t.Errorf("last row ends %q:\n got %s\nwant %s", c.last, got, c.want)
		}
		if d := printed(p); d != "" {
			t.Error(d)
		}
	}
}

// What leaves the places to the reader is refused.
func TestBorderThatDoesNotSay(t *testing.T) {
	for _, words := range []string{
		"Rnd 1: Ch 1, work 40 sc evenly around; join.",
		"Rnd 1: Ch 1, sc in each sc across, work 3 sc evenly along row ends, working along other side of chain, sc in next 9 chs; join.",
	} {
		p, err := patterns.Read("cloth", []byte(bordered(", turn", words)))
		if err != nil {
			t.Fatal(err)
		}
		if _, faults := Work(p, rule{}); len(faults) == 0 || faults[0].Line != 14 {
			t.Errorf("%s: %v", words, faults)
		}
	}
}
