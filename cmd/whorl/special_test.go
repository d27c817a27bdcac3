package main

import (
	"strings"
	"testing"

	"whorl/chart"
)

// Only the special stitches that the words of the drawn rounds name belong to their
// key.
func TestSpecial(t *testing.T) {
	j, err := load("-", strings.NewReader(`title: Waves
stitches:
  V-st: (dc, ch 1, dc) in same st
  fan: 3 dc in same st
  inc: 2 sc in same st
parts:
  - worked: rounds
    text: |
      Rnd 1: Magic ring, 6 sc in ring; join. (6 sc)
      Rnd 2: Ch 1, inc in each st around; join. (12 sc)
      Rnd 3: Ch 1, *fan in next st, sk next st, sc in next st, sk next st; rep from * around; join.
      Rnd 4: Ch 1, sc in each st around; join.
`))
	if err != nil || j.wrong() {
		t.Fatal(err, j.faults)
	}
	for _, c := range []struct {
		from, to int
		want     string
	}{{0, 0, "fan inc"}, {3, 0, "fan"}, {1, 2, "inc"}, {4, 4, ""}} {
		var names []string
		for _, d := range special(j.pattern, j.fabrics[0], chart.Options{From: c.from, To: c.to}) {
			names = append(names, d.Name)
		}
		if got := strings.Join(names, " "); got != c.want {
			t.Errorf("rounds %d to %d: %s, want %s", c.from, c.to, got, c.want)
		}
	}
}
