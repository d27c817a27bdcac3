package main

import (
	"fmt"
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

// What the words of a definition only name is told by the key's line, under the
// designer's name or the trade's.
func TestSpecialTold(t *testing.T) {
	j, err := load("-", strings.NewReader(`title: Bosses
stitches:
  cl: 3-dc cluster
  puff: "[yo, insert hook in st, yo and pull up a loop] 3 times in same st, yo and pull through all 7 loops"
  FPdc: front post double crochet
  half cl: dc3tog over next 3 sts
parts:
  - worked: rounds
    text: |
      Rnd 1: Magic ring, ch 1, 12 dc in ring; join. (12 dc)
      Rnd 2: Ch 1, *cl in next st, puff in next st, FPdc around next st, half cl; rep from * around; join.
`))
	if err != nil || j.wrong() {
		t.Fatal(err, j.faults)
	}
	var got []string
	for _, d := range special(j.pattern, j.fabrics[0], chart.Options{}) {
		got = append(got, fmt.Sprint(d.Name, "/", d.Own, "/", d.Told))
	}
	if s := strings.Join(got, ", "); s != "cl/cl/true, puff/puff/false, FPdc//true, half cl/half cl/true" {
		t.Error(s)
	}
}
