package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
)

// A shell multiple of 6 at four heads, in inches and in centimetres, against
// arithmetic by hand: 14 sts = 10 cm, so a stitch is 7.142857 mm and a repeat
// 42.857 mm; made 1 in smaller than the head (thecountrywillows; common
// practice).
func TestSizeOfAShellMultiple(t *testing.T) {
	inches := []int{42, 48, 48, 60, 66, 60, 66, 72, 66, 72, 78, 78}
	for _, c := range []struct {
		head, ease, unit string
		want             []int // below, above, nearest for each head
	}{
		// 13 in = 330.2 mm = 46.23 sts; 17 in = 431.8 mm = 60.45 sts;
		// 19 in = 482.6 mm = 67.56 sts; 21½ in = 546.1 mm = 76.45 sts.
		{"14 (18, 20, 22½) in", "-1 in", "lengths in in", inches},
		// The same heads to the millimetre.
		{"35.56 (45.72, 50.8, 57.15) cm", "-2.54 cm", "lengths in cm", inches},
		// 38.5 cm = 53.9 sts; 47.5 cm = 66.5; 53.5 cm = 74.9; 57.5 cm = 80.5.
		{"41 (50, 56, 60) cm", "-2.5 cm", "lengths in cm", []int{48, 54, 54, 66, 72, 66, 72, 78, 72, 78, 84, 78}},
	} {
		args := []string{"size", "--head", c.head, "--ease", c.ease, "--gauge", "14 sc and 8 rounds = 10 cm", "--multiple", "6"}
		status, out, errs := whorl(t, "", append(args, "--json")...)
		if status != statusDone {
			t.Fatal(errs)
		}
		var r sizingReport
		if err := json.Unmarshal([]byte(out), &r); err != nil {
			t.Fatal(err)
		}
		for i, h := range r.Sizes {
			w := c.want[3*i:]
			if h.Below.Count != w[0] || h.Above.Count != w[1] || h.Nearest != w[2] {
				t.Errorf("%s, head %d: %d, %d, nearest %d, want %v", c.head, i+1, h.Below.Count, h.Above.Count, h.Nearest, w[:3])
			}
			if got := float64(h.Above.Count) * 1000 / 140; math.Abs(h.Above.Circumference-got) > 1e-3 || math.Abs(h.Above.Ease-(got-h.Head)) > 1e-3 {
				t.Errorf("%s: %+v", c.head, *h.Above)
			}
		}
		if _, table, _ := whorl(t, "", args...); !strings.Contains(table, c.unit) || strings.Count(table, "\n") < 7 {
			t.Errorf("%s", table)
		}
	}
}

// A whole row by hand: 16 hdc and 11 rounds = 10 cm is 6.25 mm by 9.0909 mm; 56
// less 2.5 cm is 85.6 stitches, so 84 (52.5 cm, 3.5 below the head) or 90 (56.25);
// 84 is nearer. 52.5 / π = 16.7 cm across, 8.36 / 0.909 = 9.2 rounds; 0.4 × 56 =
// 22.4 cm deep, (22.4 − 8.36) / 0.909 = 15.4 rounds.
func TestSizeTable(t *testing.T) {
	status, out, errs := whorl(t, "", "size", "--head", "56 cm", "--ease", "-2.5 cm", "--gauge", "16 hdc and 11 rounds = 10 cm", "--multiple", "6")
	const want = "56.0 −2.5 84 52.5 −3.5 90 56.2 0.2 84 16.7 22.4 9 15"
	if status != statusDone || !strings.Contains(strings.Join(strings.Fields(out), " "), want) {
		t.Errorf("status %d %s\n%s\nwant %s", status, errs, out, want)
	}
	// 2π × 9.0909 / 6.25.
	if !strings.Contains(out, "grows by 9.1 hdc a round") {
		t.Error(out)
	}
}

// Heads by name: baby 14 in, woman 20 in (Craft Yarn Council, value from
// memory); adult large 23 in (published hat guides). Depth 0.4 of the head: 23
// in → 9.2 in (hookthatyarn 2016).
func TestSizeByName(t *testing.T) {
	status, out, errs := whorl(t, "", "size", "--head", "baby, Woman, adult large", "--gauge", "14 dc and 8 rounds = 4 in", "--brim-up")
	if status != statusDone {
		t.Fatal(errs)
	}
	for _, s := range []string{"Baby  14.00", "Woman  20.00", "Adult Large  23.00", "9.20", "Brim up", "lengths in in"} {
		if !strings.Contains(out, s) {
			t.Errorf("no %q in\n%s", s, out)
		}
	}
	_, uk, _ := whorl(t, "", "size", "--head", "Baby", "--gauge", "14 dc = 4 in", "--terms", "UK", "--json")
	_, us, _ := whorl(t, "", "size", "--head", "Baby", "--gauge", "14 sc = 4 in", "--json")
	if strings.Replace(uk, `"dc"`, `"sc"`, 1) != us {
		t.Errorf("a UK dc is not a US sc:\n%s\n%s", uk, us)
	}
}

func TestSizeRefuses(t *testing.T) {
	const gauge = "16 hdc and 11 rounds = 10 cm"
	for _, c := range []struct{ head, ease, gauge, multiple, says string }{
		{"", "0 cm", gauge, "6", "--head"},
		{"41 cm", "0 cm", "", "6", "--gauge"},
		{"41", "0 cm", gauge, "6", "unit"},
		{"Giant", "0 cm", gauge, "6", `no head size "Giant"`},
		{"41 cm", "-50 cm", gauge, "6", "nothing is left"},
		{"41 (50) cm", "1 (2, 3) cm", gauge, "6", "3 lengths for 2 heads"},
		{"41 cm", "0 cm", "0 hdc = 10 cm", "6", "--gauge"},
		{"41 cm", "0 cm", "-16 hdc = 10 cm", "6", "--gauge"},
		{"41 cm", "0 cm", "16 hdc = 10 parsecs", "6", "--gauge"},
		{"41 cm", "0 cm", "6 shell repeats = 10 cm", "1", "needs the rounds too"},
		{"41 cm", "0 cm", gauge, "0", "multiple"},
		{"41 cm", "0 cm", gauge, "six", "--multiple"},
		{"NaN cm", "0 cm", gauge, "6", `no head size "NaN cm"`},
	} {
		status, _, errs := whorl(t, "", "size", "--head", c.head, "--ease", c.ease, "--gauge", c.gauge, "--multiple", c.multiple)
		if status != statusMisuse || !strings.Contains(errs, c.says) {
			t.Errorf("%+v: status %d, %q", c, status, errs)
		}
	}
	if status, _, errs := whorl(t, "", "size", "--head", "41 cm", "--gauge", gauge, "--brim-up", "--crown-down"); status != statusMisuse || errs == "" {
		t.Errorf("both ways at once: %d %q", status, errs)
	}
}

func TestMultiples(t *testing.T) {
	for written, want := range map[string][2]int{
		"6": {6, 0}, "6+1": {6, 1}, "6 + 1": {6, 1}, "multiple of 6 plus 1": {6, 1}, "mult. of 12": {12, 0}, "8-3": {8, -3}, "8 − 3": {8, -3},
	} {
		s := sizing{multiple: written}
		err := s.readMultiple()
		if err != nil || s.times != want[0] || s.plus != want[1] {
			t.Errorf("%q: %d, %d, %v", written, s.times, s.plus, err)
		}
	}
}
