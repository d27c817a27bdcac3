package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// No stroke of these charts touches another, in any layout that suits their parts.
func TestUncrossedCharts(t *testing.T) {
	for name, text := range map[string]string{
		"points of a star, worked along both sides of a chain": `
title: Rimefrost Star
parts:
  - name: Star
    worked: rounds
    text: |
      Rnd 1: 10 sc in magic ring, join. (10 sc)
      Rnd 2: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join. (15 sc)
      Rnd 3: *Ch 6, sc in 2nd ch from hook, hdc in next ch, dc in next ch, tr in each of next 2 ch, sk next 2 sc, sl st in next sc; rep from * 4 more times. (5 points)
      Rnd 4: *Sc in each of the 5 ch along the other side of the point, ch 2, sc in each of the next 5 sts down the point, sl st in the sl st; rep from * 4 more times. (50 sc, 5 ch-2 sps)
`,
		"points with stitches and chains in the tip": `
title: Coldharbour Star
parts:
  - name: Star
    worked: rounds
    text: |
      Rnd 1: 10 sc in magic ring, join. (10 sc)
      Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join. (20 dc)
      Rnd 3: *Ch 6, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next ch, tr in next ch, sk 3 dc, sl st in next dc; rep from * 4 more times. (5 points)
      Rnd 4: *Working up the chain side, sc in next 5 ch, (sc, ch 3, sc) in the ch at the tip, sc in next 5 sts down the other side, sl st in the sl st between points; rep from * 4 more times. (60 sc, 5 ch-3 sps)
`,
		"points with three stitches in the tip": `
title: Wintergate Star
parts:
  - name: Star
    worked: rounds
    text: |
      Rnd 1: 10 sc in magic ring, join. (10 sc)
      Rnd 2: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join. (15 sc)
      Rnd 3: *Ch 6, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next ch, tr in next ch, sk 2 sc, sl st in next sc; rep from * around. (5 points)
      Rnd 4: *Sc in each of next 5 ch up the point, 3 sc in the ch at the tip, sc in next 5 sts down the other side, sl st in next sl st; rep from * around. (65 sc)
`,
		"a join of slip stitches round stems behind petals": `
title: Hollyhock Square
terms: UK
gauge: 16 tr and 9 rounds = 10 cm
parts:
  - name: Square
    worked: rounds
    text: |
      Round 1: Make a magic ring, 1 ch, 8 dc into ring, ss to first dc. Fasten off. (8 dc)
      Round 2: Join B with a ss in any dc, (2 ch, 2 tr, 2 ch, ss) in same st, (ss, 2 ch, 2 tr, 2 ch, ss) in each of next 7 dc. Fasten off. (8 petals)
      Round 3: Working behind the petals, join C with a ss round the stem of any dc of Round 1, 3 ch, *ss round the stem of the next dc of Round 1, 3 ch; rep from * 6 more times, ss to first ss. (8 3-ch sps)
      Round 4: Ss into first 3-ch sp, (3 ch, 2 tr, 2 ch, 3 tr) in same sp, 3 tr in next sp, *(3 tr, 2 ch, 3 tr) in next sp, 3 tr in next sp; rep from * twice more, ss to top of 3 ch. (36 tr)
      Round 5: Ss in next 2 tr and into corner 2-ch sp, (3 ch, 2 tr, 2 ch, 3 tr) in same sp, 3 tr in each of next 2 sps between groups, *(3 tr, 2 ch, 3 tr) in next corner sp, 3 tr in each of next 2 sps between groups; rep from * twice more, ss to top of 3 ch. (48 tr)
`,
		"shells on a wide ring": `
title: Sandpiper Cap
gauge: 13 dc and 7 rounds = 10 cm
parts:
  - name: Crown
    worked: rounds
    text: |
      Rnd 1: Ch 3 (counts as dc), 10 dc in magic ring, join. (11 dc)
      Rnd 2: Ch 3, dc in same st, 2 dc in each st around, join. (22 dc)
      Rnd 3: Ch 3, 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around, join. (33 dc)
      Rnd 4: Ch 3, dc in next st, 2 dc in next st, *dc in next 2 sts, 2 dc in next st; rep from * around, join. (44 dc)
      Rnd 5: Ch 3, dc in next 2 sts, 2 dc in next st, *dc in next 3 sts, 2 dc in next st; rep from * around, join. (55 dc)
      Rnd 6: Ch 3, dc in next 3 sts, 2 dc in next st, *dc in next 4 sts, 2 dc in next st; rep from * around, join. (66 dc)
      Rnd 7: Ch 3, dc in each st around, join. (66 dc)
  - name: Shells
    worked: rounds
    text: |
      Rnd 8: Ch 1, sc in same place as join, *sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * around, omitting the last sc, join. (11 shells)
      Rnd 9: Ch 3 (counts as dc), 2 dc in same place as join, sk 2 dc, sc in next dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * to last 2 dc, sk 2 dc, 2 dc in same place as first ch-3, join. (11 shells)
      Rnd 10: Ch 1, sc in same place as join, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * around, omitting the last sc, join. (11 shells)
      Rnds 11-14: Rep Rnds 9 and 10 2 times more.
`,
	} {
		t.Run(name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), "chart.yaml")
			if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
			if got := corpusFaults(t, file); strings.Contains(got, "overlaps") || strings.Contains(got, "run through") || strings.Contains(got, "astray") {
				t.Error(got)
			}
		})
	}
}
