package main

import (
	"fmt"
	"strings"
	"testing"

	"whorl/chart"
	"whorl/chart/output"
	"whorl/patterns/stitch"
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

// A name that the trade has for a stitch beside the one of the key stands in the key as the
// pattern writes it, so that its definition is found; in other terms it is theirs.
func TestSpecialNamed(t *testing.T) {
	j, err := load("-", strings.NewReader(`title: Welt
terms: UK
stitches:
  rtrf: 1 treble worked round the stem of the stitch, inserting hook from the front
parts:
  - worked: rounds
    text: |
      Rnd 1: Magic ring, 1 ch, 12 tr in ring, ss in first tr. (12 tr)
      Rnd 2: 2 ch (does not count as a st), *1 rtrf round next st, 1 tr in next st; rep from * to end, ss in first st. (12 sts)
`))
	if err != nil || j.wrong() {
		t.Fatal(err, j.faults)
	}
	for terms, want := range map[stitch.Terms]bool{stitch.UK: false, stitch.US: true} {
		o := chart.Options{Terms: terms}
		o.Special = special(j.pattern, j.fabrics[0], o)
		c, err := chart.Round(j.fabrics[0], j.forms[0], o)
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		if err := output.SVG(&b, c.Scene); err != nil {
			t.Fatal(err)
		}
		key := b.String()
		if strings.Contains(key, ">FPtr<") || strings.Contains(key, ">FPdc<") != want || !strings.Contains(key, ">rtrf<") {
			t.Errorf("%v: the key does not name it as it should", terms)
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
