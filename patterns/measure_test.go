package patterns

import (
	"math"
	"strings"
	"testing"
)

// The inch is 25.4 mm exactly; the rest is arithmetic.
func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		in   string
		mm   float64
		unit string
	}{
		{"41 cm", 410, "cm"},
		{"10cm", 100, "cm"},
		{"41.5 CM", 415, "cm"},
		{".5 cm", 5, "cm"},
		{"-2.5 cm", -25, "cm"},
		{"−2½ cm", -25, "cm"},
		{"–2.5cm", -25, "cm"},
		{"+ 2.5 cm", 25, "cm"},
		{"7 mm", 7, "mm"},
		{"7 millimetres", 7, "mm"},
		{"4 centimeters", 40, "cm"},
		{"1 inch", 25.4, "in"},
		{"2 Inches", 50.8, "in"},
		{"2 in.", 50.8, "in"},
		{"5½ in", 139.7, "in"},
		{"5 ½ in", 139.7, "in"},
		{"5\u00a0½\u00a0in", 139.7, "in"},
		{`5 1/2"`, 139.7, "in"},
		{"5 1/2″", 139.7, "in"},
		{"5 1/2”", 139.7, "in"},
		{"5 1/2''", 139.7, "in"},
		{"5-1/2 in", 139.7, "in"},
		{"5-½ in", 139.7, "in"},
		{"5 1⁄2 in", 139.7, "in"},
		{"5 11/12 in", 71 * 25.4 / 12, "in"},
		{"1/2 in", 12.7, "in"},
		{"-1/2 in", -12.7, "in"},
		{"3/8 in", 9.525, "in"},
		{"½ in", 12.7, "in"},
		{"¼ in", 6.35, "in"},
		{"¾ in", 19.05, "in"},
		{"⅓ in", 25.4 / 3, "in"},
		{"1⅔ in", 25.4 * 5 / 3, "in"},
		{"⅛ in", 3.175, "in"},
		{"2⅜in", 2.375 * 25.4, "in"},
		{"⅝\"", 15.875, "in"},
		{"⅞ in", 22.225, "in"},
		{"10 cm / 4 in", 100, "cm"},
		{"4 in (10 cm)", 101.6, "in"},
		{"4\"/10 cm", 101.6, "in"},
		{"16 in or 41 cm", 406.4, "in"},
		{"16 in = 41 cm", 406.4, "in"},
	} {
		l, err := ParseLength(c.in)
		if err != nil || math.Abs(l.MM-c.mm) > 1e-9 || l.Unit != c.unit {
			t.Errorf("ParseLength(%q) = %v mm in %s, %v; want %v mm in %s", c.in, l.MM, l.Unit, err, c.mm, c.unit)
		}
	}
}

func TestParseLengths(t *testing.T) {
	for _, c := range []struct {
		in   string
		want []float64 // in the unit written
	}{
		{"41 (50, 56, 60) cm", []float64{41, 50, 56, 60}},
		{"41 [50, 56, 60] cm", []float64{41, 50, 56, 60}},
		{"41(50,56,60)cm", []float64{41, 50, 56, 60}},
		{"16 (19½, 22, 23 1/2) in", []float64{16, 19.5, 22, 23.5}},
		{"41/50/56/60 cm", []float64{41, 50, 56, 60}},
		{"41 / 50 cm", []float64{41, 50}},
		{"41/50 cm", []float64{41, 50}},
		{"20/23 1/2/25 in", []float64{20, 23.5, 25}},
		{"1/2/3 in", []float64{1, 2, 3}},
		{"20/½ in", []float64{20, .5}},
		{"41 cm (50 cm, 56 cm)", []float64{41, 50, 56}},
		{"41[50:56] cm", []float64{41, 50, 56}},
		{"41 (50: 56) cm", []float64{41, 50, 56}},
		{"41 cm (50, 56)", []float64{41, 50, 56}},
		{"41, 50, 56 cm", []float64{41, 50, 56}},
		{"(41, 50) cm", []float64{41, 50}},
		{"41 (50, 56) cm / 16 (19½, 22) in", []float64{41, 50, 56}},
		{"41 cm (50 cm, 56 cm) or 16 in (19½ in, 22 in)", []float64{41, 50, 56}},
		{"41 (50, 56) cm [16 (19½, 22) in]", []float64{41, 50, 56}},
		{"41/50 cm / 16/19½ in", []float64{41, 50}},
		{"-1 (-2, −3) cm", []float64{-1, -2, -3}},
	} {
		l, err := ParseLengths(c.in)
		if err != nil || len(l) != len(c.want) {
			t.Errorf("ParseLengths(%q) = %v, %v; want %v", c.in, l, err, c.want)
			continue
		}
		for i := range l {
			if got := l[i].MM / millimetres[l[i].Unit]; math.Abs(got-c.want[i]) > 1e-9 {
				t.Errorf("ParseLengths(%q)[%d] = %v, want %v", c.in, i, got, c.want[i])
			}
		}
	}
	l, err := ParseLengths("41 cm, 20 in")
	if err != nil || len(l) != 2 || l[0].Unit != "cm" || l[1].Unit != "in" {
		t.Errorf("each with its own unit: %v, %v", l, err)
	}
}

func TestMisreadLengths(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"", "missing"},
		{"   ", "missing"},
		{"cm", "number is missing"},
		{"41", "unit is missing"},
		{"41 (50, 56)", "unit is missing"},
		{"41 ft", "not a unit"},
		{"41'", "does not belong"},
		{"41 cm cm", "does not fit"},
		{"41 50 cm", "does not fit"},
		{"41, 50 (56) cm", "does not fit"},
		{"41 (50, 56 cm", "not closed"},
		{"41) cm", "does not fit"},
		{"41 (50,) cm", "number is missing"},
		{"41 (-, 56) cm", "missing"},
		{"41-50 cm", "range"},
		{"41 cm, 50, 20 in", "mixed"},
		{"NaN cm", "not a unit"},
		{"1e9 cm", "not a unit"},
		{"501 cm", "longer than 5 m"},
		{"198 in", "longer than 5 m"},
		{"99999999999 cm", "too large"},
		{strings.Repeat("9", 400) + " cm", "too large"},
		{strings.Repeat("9, ", 400) + " cm", "too long"},
		{"41 (50) cm / 16 in", "2 lengths in cm but 1 in in"},
		{"41 cm / 18 in", "not the same length"},
		{"10 cm / in", "number is missing"},
		{"٤ cm", "does not belong"},
	} {
		l, err := ParseLengths(c.in)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("ParseLengths(%.40q) = %v, %v; want %q", c.in, l, err, c.want)
		}
	}
	if _, err := ParseLength("2,5 cm"); err == nil || !strings.Contains(err.Error(), "point") {
		t.Errorf("decimal comma: %v", err)
	}
}

func TestNearest(t *testing.T) {
	for _, c := range []struct{ written, want string }{
		{"guage", "gauge"}, {"Titel", "title"}, {"size", "sizes"}, {"yran", "yarn"}, {"hoook", "hook"},
		{"designr", "designer"}, {"author", "designer"}, {"picture", "pictures"}, {"zebra", ""}, {"", ""},
		{strings.Repeat("a", 1000), ""},
	} {
		if got := nearest(c.written, fileKeys.spellings()); got != c.want {
			t.Errorf("nearest(%.20q) = %q, want %q", c.written, got, c.want)
		}
	}
}
