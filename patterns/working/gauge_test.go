package working

import (
	"fmt"
	"testing"

	"whorl/patterns"
	"whorl/patterns/stitch"
)

// The stitch that each line of gauge is of.
func TestSwatches(t *testing.T) {
	const file = "terms: US\ngauge: |\n  %s\nstitches:\n  fan: (2 dc, ch 1, 2 dc) in same st\nparts:\n" +
		"  - name: Ribbed brim\n    worked: rows\n    text: |\n      Foundation: Ch 9.\n      Row 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n" +
		"      Row 2: Ch 1, hdc in each st across, turn. (8 hdc)\n      Rows 3-9: Ch 1, hdc in each st across, turn. (8 hdc)\n" +
		"  - name: Body\n    worked: rounds\n    text: |\n      Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring; join. (12 dc)\n" +
		"      Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around; join. (24 dc)\n" +
		"      Rnds 3-9 (lattice rnds): Ch 4 (counts as tr), tr in each st around; join. (24 tr)\n"
	half, double, treble := stitch.Of(stitch.Half), stitch.Of(stitch.Double), stitch.Of(stitch.Treble)
	none := stitch.Kind{}
	for _, c := range []struct {
		line        string
		kind        stitch.Kind
		into        stitch.Into
		loose, tied bool
	}{
		{"16 dc and 8 rows = 10 cm", double, stitch.Top, false, false},
		{"16 sts and 8 rows = 10 cm in dc", double, stitch.Top, false, false},
		{"16 BLO hdc and 8 rows = 10 cm", half, stitch.BackLoop, false, false},
		{"14 rows of hdc rib = 10 cm", half, stitch.BackLoop, false, false},
		{"14 rows of dc ribbing = 10 cm", double, stitch.FrontPost, false, false},
		{"14 rows of dc = 10 cm", double, stitch.Top, false, false},
		{"8 rounds = 10 cm", double, stitch.Top, false, false},
		{"16 sts and 8 rows = 10 cm", double, stitch.Top, false, false},
		{"Brim: 16 sts and 8 rows = 10 cm", half, stitch.Top, true, true},
		{"dc: 16 sts and 8 rows = 10 cm", double, stitch.Top, false, false},
		{"Waffle: 16 sts and 8 rows = 10 cm", treble, stitch.Top, true, false},
		{"Brim: 16 sts and 8 rows in moss stitch = 10 cm", half, stitch.Top, true, true},
		{"16 sts and 8 rows in moss stitch = 10 cm", treble, stitch.Top, true, false},
		{"16 sts and 8 rows in moss rib = 10 cm", half, stitch.Top, true, true},
		{"16 sts and 8 rounds = 10 cm over the body", treble, stitch.Top, true, true},
		{"16 sts and 8 rounds in lattice pattern = 10 cm", treble, stitch.Top, true, true},
		{"16 dc and 8 rows = 10 cm over ripple pattern", double, stitch.Top, true, false},
		{"one scallop (4 rows) = 4 cm long", treble, stitch.Top, true, false},
		{"6 fan repeats and 8 rounds = 10 cm", none, stitch.Top, false, false},
		{"2 fans in lace pattern = 10 cm", none, stitch.Top, false, false},
		{"rounds 1-6 measure 11 cm across", none, stitch.Top, false, false},
		{"gauge is not critical", none, stitch.Top, false, false},
	} {
		p, err := patterns.Read("f", []byte(fmt.Sprintf(file, c.line)))
		if err != nil {
			t.Fatal(c.line, err)
		}
		l := Swatches(p)
		if len(l) != 1 {
			t.Fatal(c.line, l)
		}
		fabrics, faults := Work(p, rule{})
		if wrong(faults) {
			t.Fatal(faults)
		}
		l[0].Settle(fabrics)
		if s := &l[0]; s.Kind != c.kind || s.Into != c.into || s.Loose != c.loose || s.Tied != c.tied {
			t.Errorf("%s: %v %v, loose %v, tied %v", c.line, s.Kind, s.Into, s.Loose, s.Tied)
		}
	}
}

// The gauge of a cloth is not of the border that is worked round it, whatever stitch the
// words for that name most often.
func TestGaugeWithoutBorder(t *testing.T) {
	p, err := patterns.Read("f", []byte("terms: US\ngauge: 14 sts and 9 rows = 10 cm\nparts:\n"+
		"  - name: Mat\n    worked: rows\n    text: |\n      Ch 12.\n      Row 1: Dc in 3rd ch from hook and in each ch across. (10 dc)\n"+
		"  - name: Border\n    worked: rounds\n    text: |\n      Rnd 1: Ch 1, 3 sc in first st, sc in next 8 sts, 3 sc in last st; join.\n"))
	if err != nil {
		t.Fatal(err)
	}
	if l := Swatches(p); l[0].Kind != stitch.Of(stitch.Double) {
		t.Errorf("%v", l[0].Kind)
	}
}
