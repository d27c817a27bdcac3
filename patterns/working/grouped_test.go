package working

import (
	"maps"
	"testing"

	"whorl/patterns"
)

func TestGroupsAndSpaces(t *testing.T) {
	p, err := patterns.Read("edging", []byte(`title: Edging
stitches:
  V-st: (dc, ch 1, dc) in next st or sp
  beg V-st: ch 4, dc in same st
parts:
  - name: Edging
    worked: rounds
    text: |
      Ch 6; join with sl st to form ring.
      Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc.
      Rnd 2: Beg V-st, ch 2, sk next st, *V-st in next st, ch 2, sk next st; rep from * around; join with sl st in 3rd ch of beg ch-4.
`))
	if err != nil {
		t.Fatal(err)
	}
	fabrics, faults := Work(p, rule{})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for n, want := range []struct{ groups, spaces map[string]int }{
		{}, {}, {map[string]int{"V-st": 6}, map[string]int{"ch-1": 6, "ch-2": 6}},
	} {
		r := fabrics[0].Parts[0].Rounds[n]
		if g := Groups(r, p); !maps.Equal(g, want.groups) {
			t.Errorf("%s: groups %v, want %v", r.Label, g, want.groups)
		}
		if s := Spaces(r); !maps.Equal(s, want.spaces) {
			t.Errorf("%s: spaces %v, want %v", r.Label, s, want.spaces)
		}
	}
}
