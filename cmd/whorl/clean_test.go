package main

import (
	"os"
	"path/filepath"
	"testing"
)

// Charts that are laid out in a way of their own, in every layout that suits their
// parts, are without a fault.
func TestCleanCharts(t *testing.T) {
	for name, text := range map[string]string{
		"opening": `
title: Quayside Slipper
parts:
  - name: Toe
    worked: rounds
    text: |
      Rnd 1: 6 sc in magic ring. (6 sc)
      Rnd 2: 2 sc in each st around. (12 sc)
      Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)
      Rnds 4-6: Sc in each st around. (18 sc)
  - name: Foot
    worked: rows
    from: Toe
    text: |
      Row 1: Ch 1, sc in next 12 sts, leave the last 6 sts unworked, turn. (12 sc)
      Rows 2-12: Ch 1, sc in each st across, turn. (12 sc)
  - name: Cuff
    worked: rounds
    from: Foot row ends
    text: |
      Rnd 1: Ch 1, sc in end of each of 12 rows along first side, sc in each of 6 unworked sts of toe, sc in end of each of 12 rows along second side, join with sl st in first sc. (30 sc)
      Rnd 2: Ch 1, sc in next 11 sts, sc2tog, sc in next 4 sts, sc2tog, sc in last 11 sts, join. (28 sc)
      Rnd 3: Ch 2 (does not count as a st), dc in each st around, join. (28 dc)
`,
		"level edge": `
title: Fallow Crown
parts:
  - name: Body
    worked: rounds
    text: |
      Ch 60, join with sl st to form a ring.
      Rnd 1: Ch 1, sc in each ch around; join. (60 sc)
      Rnd 2: Ch 1, *sc in next st, dc in next st; rep from * around; join. (60 sts)
  - name: Crown
    worked: rounds
    from: Body
    text: |
      Rnd 1: Ch 1, *sc in next 8 sts, sc2tog; rep from * around; join. (54 sc)
      Rnd 2: Ch 1, *sc in next 7 sts, sc2tog; rep from * around; join. (48 sc)
      Rnd 3: Ch 1, *sc in next 6 sts, sc2tog; rep from * around; join. (42 sc)
      Rnd 4: Ch 1, *sc in next 5 sts, sc2tog; rep from * around; join. (36 sc)
`,
		"post stitches around those two rounds below": `
title: Furrow
parts:
  - name: Hat
    worked: rounds
    text: |
      Rnd 1: 12 dc in magic ring, join. (12 dc)
      Rnd 2: Ch 2, 2 dc in each st around, join. (24 dc)
      Rnd 3: Ch 2, *FPdc around next st, dc in next 2 sts; rep from * around, join. (24 sts)
      Rnd 4: Ch 1, sc in each st around, join. (24 sc)
      Rnd 5: Ch 2, *FPdc around next FPdc 2 rnds below, sk the sc behind it, dc in next 2 sc; rep from * around, join. (24 sts)
      Rnds 6-9: Rep Rnds 4 and 5. (24 sts)
      Rnd 10: Ch 1, sc in each st around, join. (24 sc)
`,
		"two rounds in the loops of one": `
title: Campion
parts:
  - name: Flower
    worked: rounds
    text: |
      With A, make a magic ring.
      Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
      Rnd 2: Join B with sl st in FLO of any sc. Working in FLO, *(hdc, dc, hdc) in next sc, sl st in next sc; rep from * around. (6 petals)
      Fasten off B.
      Rnd 3: Join C with sl st in BLO of any sc of Rnd 1; working behind the petals and in the BLO of Rnd 1, ch 3 (counts as dc), dc in same st, 2 dc in each of next 11 sts; join with sl st in top of beg ch-3. (24 dc)
`,
	} {
		t.Run(name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), name+".yaml")
			if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
			if got := corpusFaults(t, file); got != "" {
				t.Error(got)
			}
		})
	}
}
