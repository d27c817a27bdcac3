package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"whorl/geometry"
)

// hdcCap is a crown-down cap of hdc: so many increases in each growing round, then
// even ones.
func hdcCap(facts string, increases, growing, even int) string {
	words := circle("hdc", increases, growing)
	words += fmt.Sprintf("      Rnds %d-%d: Ch 1, hdc in each st around; join. (%d)\n", growing+1, growing+even, increases*growing)
	return facts + words
}

const gatherWords = `title: Gather
parts:
  - name: Body
    worked: rounds
    text: |
      Foundation: Ch 72, join with sl st to form ring. (72)
      Rnd 1: Hdc in each ch around. (72)
      Rnds 2-8: Hdc in each st around. (72)
      Rnd 9: *Hdc in next 2 sts, hdc2tog; rep from * around. (54)
      Rnd 10: *Hdc in next st, hdc2tog; rep from * around. (36)
      Rnd 11: Hdc2tog around. (18)
      Rnd 12: Hdc2tog around. (9)
`

// A cap with 8 more increases a round than flat, one with 4 fewer, one that
// closes from 72 to 9 stitches in four rounds: the right rounds are named.
func TestFindingsInWords(t *testing.T) {
	for _, c := range []struct {
		name, words string
		says        []string
		code        string
		from, to    string
	}{
		{"flat", hdcCap("", 8, 9, 8), []string{"Shape: Flat to Rnd 9, then a tube to Rnd 17."}, "", "", ""},
		{"ruffle", hdcCap("", 16, 7, 8), []string{"Shape: Ruffled to Rnd 7", "Rnds 1–7 ruffle: 16 increases a round where 8 lie flat (slack 49 %)"}, "ruffle", "Rnd 1", "Rnd 7"},
		{"dome", hdcCap("", 4, 16, 8), []string{"Shape: Domed to Rnd 16, then a tube to Rnd 24.", "Rnds 1–16 dome: 4 increases a round where 8 lie flat."}, "dome", "Rnd 1", "Rnd 16"},
		{"gather", gatherWords, []string{"Rnds 9–12 close faster than their stitches are tall: the fabric gathers there (slack 40 %).",
			"9 to 18 decreases a round where 8 close flat", "fewer than 8 decreases a round", "Rnd 12 is stretched by 21 %"}, "gather", "Rnd 9", "Rnd 12"},
	} {
		status, out, errs := whorl(t, c.words, "check", "-")
		if status != statusDone {
			t.Fatal(c.name, errs)
		}
		for _, s := range c.says {
			if !strings.Contains(out, s) {
				t.Errorf("%s: no %q in\n%s", c.name, s, out)
			}
		}
		_, out, _ = whorl(t, c.words, "check", "--json", "-")
		var r report
		if err := json.Unmarshal([]byte(out), &r); err != nil {
			t.Fatal(err)
		}
		f := r.Sizes[0].Findings
		switch {
		case c.code == "":
			if len(f) != 0 {
				t.Errorf("%s: %+v", c.name, f)
			}
		case len(f) == 0 || f[0].Code != c.code || f[0].From != c.from || f[0].To != c.to || f[0].Message == "":
			t.Errorf("%s: %+v", c.name, f)
		}
	}
}

// A size that comes out otherwise than was asked is a fault with the counts that
// would do. It can be drawn all the same.
func TestFitAgainstTheHead(t *testing.T) {
	t.Parallel()
	const facts = "sizes: [Adult]\nhead: %s\nease: %s\ngauge: 16 hdc and 11 rounds = 10 cm\n"
	for _, c := range []struct {
		head, ease string
		says       []string
	}{
		{"47.5 cm", "-2.5 cm", nil}, // 72 sts = 45 cm
		{"56 cm", "-2.5 cm", []string{"size Adult comes to 45.0 cm round, 8.5 cm less than a head of 56.0 cm with an ease of −2.5 cm",
			"The widest round has 72 stitches. Nearest counts that would do: 85 or 86"}}, // 53.5 cm = 85.6 sts
		{"15 in", "-1 in", []string{"3.72 in more than a head of 15.00 in", "56 or 57"}}, // 14 in = 355.6 mm = 56.9 sts
	} {
		words := hdcCap(fmt.Sprintf(facts, c.head, c.ease), 8, 9, 14)
		status, _, errs := whorl(t, words, "check", "-")
		if want := map[bool]int{true: statusDone, false: statusFaults}[c.says == nil]; status != want {
			t.Errorf("%s: status %d, want %d: %s", c.head, status, want, errs)
		}
		if _, out, _ := whorl(t, words, "draw", "-", "-o", t.TempDir(), "--format", "svg"); !strings.HasSuffix(out, ".svg\n") {
			t.Errorf("%s: nothing is drawn", c.head)
		}
		if (errs == "") != (c.says == nil) {
			t.Errorf("%s: %q", c.head, errs)
		}
		for _, s := range c.says {
			if !strings.Contains(errs, s) {
				t.Errorf("no %q in\n%s", s, errs)
			}
		}
	}
	_, out, _ := whorl(t, hdcCap(fmt.Sprintf(facts, "47.5 cm", "-2.5 cm"), 8, 9, 14), "check", "-")
	// 23 rounds of 9.09 mm; 0.4 × 47.5 = 19.0 (hookthatyarn 2016).
	const want = "Finished: 45.0 cm round.\n  Depth 20.9 cm; by the rule of thumb 19.0 cm.\n" +
		"  Head 47.5 cm: ease −2.5 cm (−2.5 cm asked).\n"
	if !strings.Contains(out, want) {
		t.Errorf("%s", out)
	}
	// The brim is told of where it is another than the widest round.
	_, out, _ = whorl(t, "", "check", "../../patterns/examples/bulrush-hat.yaml")
	if !strings.Contains(out, "round, brim 38.9 cm relaxed, ") || !strings.Contains(out, "ease −4.1 cm (−3.5 cm asked); the brim is 8.1 cm smaller than the head.") {
		t.Errorf("%s", out)
	}
}

func TestMeasuresOfTheFile(t *testing.T) {
	height := func(facts string) float64 {
		status, out, errs := whorl(t, facts+circle("hdc", 8, 3), "check", "--json", "-")
		if status != statusDone {
			t.Fatal(errs)
		}
		var r report
		if err := json.Unmarshal([]byte(out), &r); err != nil {
			t.Fatal(err)
		}
		return r.Sizes[0].Parts[0].Rounds[2].Height
	}
	const gauge = "gauge: 20 hdc = 10 cm\n"
	if a, b := height(gauge), height(gauge+"measures: {flat hdc: 10}\n"); b/a < 1.2499 || b/a > 1.2501 {
		t.Errorf("heights %v and %v", a, b)
	}
	for facts, says := range map[string]string{
		"measures: {flat hdcc: 10}\n":     `there is no default called "flat hdcc"`,
		"measures: {flat hdc: -3}\n":      "flat hdc cannot be -3",
		"measures: {flat hdc: 1e300}\n":   "flat hdc cannot be",
		"measures: {flat hdc: many}\n":    `"many" is not a number`,
		"measures: [flat hdc, 3]\n":       "a set of names",
		"measures: {flat hdc: 1e99999}\n": "not a number",
	} {
		status, _, errs := whorl(t, facts+circle("hdc", 8, 3), "check", "-")
		if status != statusFaults || !strings.Contains(errs, says) {
			t.Errorf("%s: %d %s", facts, status, errs)
		}
	}
	status, out, _ := whorl(t, "", "check", "--defaults")
	for _, d := range geometry.Defaults() {
		if status != statusDone || !strings.Contains(out, d.Name) || !strings.Contains(out, d.Source) {
			t.Errorf("%s is not listed", d.Name)
		}
	}
	_, out, _ = whorl(t, "measures: {flat hdc: 10}\n"+circle("hdc", 8, 3), "check", "--defaults", "-")
	if !strings.Contains(out, "flat hdc: 10 ") || !strings.Contains(out, "measures, line 1 (default 8)") {
		t.Error(out)
	}
}

// What can hurt the wearer is said with the check, and to other programs.
func TestCheckShowsCautions(t *testing.T) {
	words := "sizes: [Baby, Adult]\nhead: 41 (56) cm\n" + circle("hdc", 8, 3) + "      Sew two buttons on.\n"
	_, out, _ := whorl(t, words, "check", "-")
	for _, s := range []string{"\nCautions\n  A hat can slip over the face of a sleeping baby", "(size Baby)", "\n  Cords and ties", "\n  The buttons can come off"} {
		if !strings.Contains(out, s) {
			t.Errorf("no %q in\n%s", s, out)
		}
	}
	_, out, _ = whorl(t, words, "check", "--json", "-")
	var r report
	if err := json.Unmarshal([]byte(out), &r); err != nil || len(r.Cautions) != 3 || r.Cautions[0].Code != "sleep" || r.Cautions[2].Source == "" {
		t.Errorf("%v %+v", err, r.Cautions)
	}
	if _, out, _ = whorl(t, circle("hdc", 8, 3), "check", "-"); strings.Contains(out, "Cautions") {
		t.Error(out)
	}
	_, out, _ = whorl(t, circle("hdc", 8, 3), "check", "--json", "-")
	if !strings.Contains(out, `"cautions": []`) {
		t.Error("no empty list of cautions")
	}
}
