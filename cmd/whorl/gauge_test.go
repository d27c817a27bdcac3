package main

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
)

// The pieces that the lines of gauge below are for.
const (
	matWords = `parts:
  - name: Mat
    worked: rounds
    text: |
      Rnd 1: 6 sc in magic ring. (6)
      Rnd 2: 2 sc in each st around. (12)
      Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)
      Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (24)
`
	tileWords = `parts:
  - name: Tile
    worked: rounds
    text: |
      Rnd 1: Ch 4, join with sl st to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
      Rnd 2: Sl st in next 2 sts and in next ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * around; join with sl st in top of beg ch-3. (24 dc)
`
	panelWords = `parts:
  - name: Panel
    worked: rows
    text: |
      Foundation: Ch 22.
      Row 1: Dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn. (20 dc)
      Row 2: Ch 3 (counts as dc), dc in each st across, turn. (20 dc)
      Rows 3-6: Rep Row 2.
`
	capWords = `parts:
  - name: Band
    worked: rounds
    text: |
      Foundation: Ch 60, join with sl st to form ring.
      Rnd 1: Sc in each ch around; join. (60 sc)
      Rnd 2: *Sc in next st, ch 1, sk next st; rep from * around; join. (30 sc)
      Rnds 3-6: *Sc in next ch-1 sp, ch 1, sk next st; rep from * around; join. (30 sc)
  - name: Sides
    worked: rounds
    from: Band
    text: |
      Rnd 1: Dc in each st and ch around; join. (60 dc)
      Rnds 2-9: *FPdc around next st, BPdc around next st; rep from * around; join. (60 sts)
`
)

func gauged(lines, words string) string {
	return "gauge: |\n  " + strings.ReplaceAll(lines, "\n", "\n  ") + "\n" + words
}

// reported is the figures of a pattern, with the messages about it.
func reported(t *testing.T, words string) (r report, messages string) {
	t.Helper()
	_, out, errs := whorl(t, words, "check", "--json", "-")
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatal(err, errs)
	}
	for _, f := range r.Faults {
		messages += fmt.Sprintf("%s %d: %s\n", f.Severity, f.Line, f.Message)
	}
	return r, messages
}

// mixedWords is a cloth of unlike rows: sc and dc by turns in each, and rows of sc and of dc by turns.
const mixedWords = "title: Cloth\nterms: US\nparts:\n  - name: Cloth\n    worked: rows\n    text: |\n      Ch 15.\n" +
	"      Row 1: Sc in 2nd ch from hook, dc in next ch, *sc in next ch, dc in next ch; rep from * across. (14 sts)\n" +
	"      Rows 2-6: Ch 1, turn, *sc in next dc, dc in next sc; rep from * across. (14 sts)\n" +
	"  - name: Stripes\n    worked: rows\n    text: |\n      Ch 15.\n" +
	"      Row 1: Sc in 2nd ch from hook and in each ch across. (14 sc)\n" +
	"      Row 2: Ch 3 (counts as dc), turn, dc in each rem st across. (14 dc)\n" +
	"      Row 3: Ch 1, turn, sc in each st across. (14 sc)\n      Rows 4-8: Rep Rows 2 and 3, ending with Row 2.\n"

// Where no stitch is as tall as the rows that were counted, so many of them on the mean are as long
// as the line says: here those of the longer part.
func TestGaugeOfUnlikeRows(t *testing.T) {
	cloth, stripes, _ := strings.Cut(mixedWords, "  - name: Stripes")
	head, _, _ := strings.Cut(mixedWords, "  - name: Cloth")
	for _, words := range []string{cloth, head + "  - name: Stripes" + stripes, mixedWords} {
		r, messages := reported(t, gauged("14 sts and 16 rows = 10 cm", words))
		if len(r.Sizes) == 0 {
			t.Fatal(messages)
		}
		parts := r.Sizes[0].Parts
		n, sum := 0, 0.0
		for _, round := range parts[len(parts)-1].Rounds {
			if round.Stitches > 0 {
				n, sum = n+1, sum+round.Height
			}
		}
		if mean := sum / float64(n); math.Abs(mean-100./16) > 0.01 {
			t.Errorf("%d rows of unlike heights are %.2f mm tall on the mean, want %.2f", n, mean, 100./16)
		}
	}
	// Rows that are alike are as tall as they were counted, whatever is worked beside them.
	alike := strings.NewReplacer("dc in next ch", "sc in next ch", "sc in next dc, dc in next sc", "sc in next sc, sc in next sc").Replace(cloth)
	r, messages := reported(t, gauged("14 sts and 16 rows = 10 cm", alike))
	if len(r.Sizes) == 0 || len(r.Sizes[0].Parts[0].Rounds) < 6 {
		t.Fatal(messages)
	}
	for _, round := range r.Sizes[0].Parts[0].Rounds {
		if round.Stitches > 0 && math.Abs(round.Height-100./16) > 0.01 {
			t.Errorf("%s of sc is %.2f mm tall", round.Label, round.Height)
		}
	}
}

// Unlike rows that are worked to a length are as many as by the line, also where the words rely on it.
func TestLengthInUnlikeRows(t *testing.T) {
	head, _, _ := strings.Cut(mixedWords, "  - name: Cloth")
	_, stripes, _ := strings.Cut(mixedWords, "  - name: Stripes")
	for _, behind := range []string{"", " 48 rows.", "\n      Row 49: Ch 1, turn, sc in each st across. (14 sc)"} {
		words := strings.Replace(head+"  - name: Stripes"+stripes, "Rows 4-8: Rep Rows 2 and 3, ending with Row 2.", "Rep Rows 2 and 3 until piece measures 30 cm."+behind, 1)
		r, messages := reported(t, gauged("14 sts and 16 rows = 10 cm", words))
		rows := 48 // 30 cm of 16 rows in 10
		if strings.Contains(behind, "49") {
			rows++
		}
		if len(r.Faults) > 0 || len(r.Sizes) == 0 {
			t.Fatal(messages)
		}
		if l := r.Sizes[0].Parts[0].Rounds; l[len(l)-1].Number != rows {
			t.Errorf("%q: %d rows, want %d", behind, l[len(l)-1].Number, rows)
		}
	}
}

// Lines of gauge with the width and the height, in millimetres, that a round of
// the piece comes to by them. By hand: sc is 6/2π widths tall, dc 12/2π.
func TestGaugeLines(t *testing.T) {
	flat := func(k float64) float64 { return k / (2 * math.Pi) }
	for _, c := range []struct {
		words, gauge  string
		part          int
		round         string
		width, height float64 // of the round's edge, and of the round; 0 for any
	}{
		{matWords, "16 sts and 18 rnds = 10 cm over basketweave", 0, "Rnd 4", 24 * 6.25, 100. / 18},
		{matWords, "16 sc and 18 rounds = 10 cm, unblocked", 0, "Rnd 4", 24 * 6.25, 100. / 18},
		{matWords, "In sc: 16 sts and 18 rounds = 10 cm", 0, "Rnd 4", 24 * 6.25, 100. / 18},
		{matWords, "15 sts and 9 rounds in waffle stitch = 10 cm", 0, "Rnd 4", 24 * 100. / 15, 100. / 9},
		{matWords, "18 rounds = 10 cm", 0, "Rnd 4", 24 * 100. / 18 / flat(6), 100. / 18},
		{matWords, "16 sc = 10 cm\n18 rounds = 10 cm in sc", 0, "Rnd 4", 24 * 6.25, 100. / 18},
		// 24 sc around a circle 11 cm across; 18 around one of 3 in.
		{matWords, "rounds 1-4 measure 11 cm across", 0, "Rnd 4", math.Pi * 110, 55. / 4},
		{matWords, "Rnds 1-3 = 3 in (7.5 cm) in diameter", 0, "Rnd 3", math.Pi * 76.2, 38.1 / 3},
		{matWords, "mat = 10 cm diameter", 0, "Rnd 4", math.Pi * 100, 50. / 4},
		{panelWords, "8 rows = 10 cm in dc", 0, "Row 3", 20 * 12.5 / flat(12), 12.5},
		{panelWords, "first 5 rows = 2 in", 0, "Row 3", 20 * 50.8 / 5 / flat(12), 50.8 / 5},
		{panelWords, "panel = 30 cm wide", 0, "Row 3", 300, 15 * flat(12)},
		{panelWords, "one scallop (4 rows) = 4 cm long", 0, "Row 3", 20 * 10 / flat(12), 10},
		{panelWords, "14 dc and 7 rows = 10 cm, unblocked\n12.5 dc and 8 rows = 10 cm, blocked", 0, "Row 3", 160, 12.5},
		{panelWords, "16 dc and 8 rows = 10 cm over ripple pattern", 0, "Row 3", 125, 12.5},
		// The waffle is the 60 dc of the sides, the moss stitch 30 sc and 30 chains.
		{capWords, "15 sts and 9 rounds in waffle stitch = 10 cm", 1, "Rnd 5", 400, 0},
		{capWords, "16 sts and 15 rounds in the band = 10 cm", 0, "Rnd 4", 375, 0},
		{capWords, "16 sts and 15 rounds in the band = 10 cm\n15 sts and 9 rounds over the sides = 10 cm", 0, "Rnd 4", 375, 0},
		{capWords, "16 sts and 15 rounds in the band = 10 cm\n15 sts and 9 rounds over the sides = 10 cm", 1, "Rnd 5", 400, 0},
	} {
		r, messages := reported(t, gauged(c.gauge, c.words))
		if strings.Contains(messages, "error") || len(r.Sizes) == 0 {
			t.Errorf("%s: %s", c.gauge, messages)
			continue
		}
		var got roundReport
		for _, round := range r.Sizes[0].Parts[c.part].Rounds {
			if round.Label == c.round {
				got = round
			}
		}
		if math.Abs(got.Circumference-c.width) > 2e-3*c.width {
			t.Errorf("%s: %s is %.2f mm long, want %.2f", c.gauge, got.Label, got.Circumference, c.width)
		}
		if c.height > 0 && math.Abs(got.Height-c.height) > 2e-3*c.height {
			t.Errorf("%s: %s is %.2f mm tall, want %.2f", c.gauge, got.Label, got.Height, c.height)
		}
	}
	// Nine rounds of the waffle, half of them around posts, are 10 cm tall.
	r, _ := reported(t, gauged("15 sts and 9 rounds in waffle stitch = 10 cm", capWords))
	tall := 0.0
	for _, round := range r.Sizes[0].Parts[1].Rounds {
		if round.Number > 0 {
			tall += round.Height
		}
	}
	if math.Abs(tall-100) > 1 {
		t.Errorf("nine rounds of waffle stitch are %.1f mm tall", tall)
	}
	// The side of the tile: its rounds are as far from the centre as half a side.
	r, messages := reported(t, gauged("one square = 18 cm along each side", tileWords))
	deep := r.Sizes[0].Finished["depth_mm"]
	if math.Abs(deep-90) > 0.1 {
		t.Errorf("the tile is %.1f mm deep: %s", deep, messages)
	}
}

// What cannot be used is warned of with its place and never stops the work.
func TestGaugeWarnings(t *testing.T) {
	for _, c := range []struct{ words, gauge, says string }{
		{matWords, "gauge is not critical", "warning 2: this line of gauge gives no size"},
		{matWords, "exact gauge isn't important for this project", "warning 2: this line of gauge gives no size"},
		{matWords, "5 mm hook", "warning 2: this line of gauge gives no size"},
		{matWords, "16 sc and 18 rounds = 10 cm\nGauge is not critical.", ""},
		{matWords, "15 sts and 9 rounds in waffle stitch = 10 cm\n14 sts and 10 rnds in moss stitch = 10 cm",
			`warning 3: this line of gauge is not used: "moss stitch" is neither a stitch that is known nor a repeat of this pattern, and line 2 gives the size of sc`},
		{matWords, "Waffle: 15 sts and 9 rounds = 10 cm\nMoss: 14 sts and 10 rnds = 10 cm", `warning 3: this line of gauge is not used: "Moss" is neither`},
		{matWords, "14 sts and 10 rnds in moss stitch = 10 cm\n16 sc and 18 rounds = 10 cm", "warning 2: this line of gauge is not used: \"moss stitch\""},
		{capWords, "16 sts and 15 rounds in the band = 10 cm\n15 sts and 9 rounds over the sides = 10 cm", ""},
		{panelWords, "14 dc and 7 rows = 10 cm, unblocked\n13 dc and 8 rows = 10 cm, blocked", "warning 2: this line of gauge is not used: line 3 is for the same stitch"},
		{matWords, "rounds 1-9 measure 11 cm across", "warning 2: this line of gauge is not used: there is no Rnd 9"},
		{matWords, "mat = 10 cm along each side", `warning 2: this line of gauge is not used: "mat" has no corners`},
		{matWords, "16 sc and 18 rounds = 10 cm\nrounds 1-4 measure 11 cm across",
			"warning 3: by the other lines of gauge this comes to 4.5 cm, 59 % less than was measured"},
		{matWords, "16 sc and 18 rounds = 10 cm\nrounds 1-4 measure 4.6 cm across", ""},
		{matWords, "16 xyz = 10 cm", `warning 2: this line of gauge is not used: "xyz" is neither a stitch that is known nor a repeat`},
		{matWords, "7 mesh and 8 rounds = 10 cm", `warning 2: of this line of gauge only the rounds are used: "mesh" is neither`},
		{matWords, "16 sc and 18 rounds = 10 cm\n6 shells and 8 rounds = 10 cm", `warning 3: this line of gauge is not used: "shells" is neither`},
		{capWords, "17 post stitches and 9 rounds = 10 cm", ""},
		{matWords, "16 sc. and 18 rounds = 10 cm", ""},
		{matWords, "rounds 1-4 measure 11 cm across\nrounds 1-2 measure 6 cm across", ""},
		{matWords, "rounds 1-4 measure 11 cm across\nrounds 1-2 measure 8 cm across",
			"warning 3: by the other lines of gauge this comes to 5.5 cm, 31 % less than was measured"},
	} {
		_, messages := reported(t, gauged(c.gauge, c.words))
		if strings.TrimSuffix(messages, "\n") != c.says && (c.says == "" || !strings.HasPrefix(messages, c.says)) {
			t.Errorf("%s:\n\t%q, want\n\t%q", c.gauge, messages, c.says)
		}
		if status, _, errs := whorl(t, gauged(c.gauge, c.words), "check", "-"); status != statusDone {
			t.Errorf("%s: status %d %s", c.gauge, status, errs)
		}
	}
	// Nonsense stays a fault.
	for _, c := range []struct{ gauge, says string }{
		{"rounds 1-4 measure 0.5 mm across", "this gauge makes one stitch 0.065 mm wide"},
		{"0 rounds = 10 cm", `"0" cannot be a number of stitches or rounds`},
		{"300 rounds = 1 cm", "this gauge makes a round 0.0333 mm high"},
		{"Rnds 4-1 = 10 cm across", "there are no rounds 4 to 1"},
		{"16 sts and 0 rounds in waffle stitch = 10 cm", `"0" cannot be a number of stitches or rounds`},
		{"16 sc and 18 rounds = 10 cm\n17 rounds = 10 cm in sc", "two lines of gauge for the same stitch do not agree"},
	} {
		status, _, errs := whorl(t, gauged(c.gauge, matWords), "check", "-")
		if status != statusFaults || !strings.Contains(errs, c.says) {
			t.Errorf("%s: %d %q, want %q", c.gauge, status, errs, c.says)
		}
	}
}

// The lines of gauge that are printed back give the same sizes, in both terms.
func TestGaugePrintedBack(t *testing.T) {
	for _, c := range []struct{ words, gauge string }{
		{matWords, "16 sts and 18 rnds = 10 cm over basketweave"},
		{matWords, "18 rounds = 10 cm in sc"},
		{matWords, "16 sc = 10 cm\n18 rounds of sc = 10 cm"},
		{matWords, "rounds 1-4 measure 11 cm across"},
		{matWords, "Rnds 1-3 = 3 in (7.5 cm) in diameter"},
		{matWords, "With 5 mm hook, 14 sc x 16 rows = 10 cm"},
		{matWords, "In sc: 14 sts and 16 rows = 4\""},
		{matWords, "Mat: 14 sc and 16 rows = 4\" (10 cm) square, after blocking"},
		{matWords, "gauge is not critical"},
		{tileWords, "one square = 18 cm along each side"},
		{panelWords, "16 dc and 8 rows = 10 cm over ripple pattern"},
		{panelWords, "one scallop (4 rows) = 4 cm long"},
		{panelWords, "14 rows of sc rib = 10 cm"},
		{panelWords, "14 dc and 7 rows = 10 cm, unblocked\n13 dc and 8 rows = 10 cm, blocked"},
		{capWords, "15 sts and 9 rounds in waffle stitch = 10 cm\n15 sts and 15 rounds in moss stitch = 10 cm"},
	} {
		want, messages := reported(t, gauged(c.gauge, c.words))
		for _, way := range []string{"US", "UK", "US --long"} {
			terms, _, _ := strings.Cut(way, " ")
			status, out, errs := whorl(t, gauged(c.gauge, c.words), append([]string{"words", "-", "--terms"}, strings.Fields(way)...)...)
			if status != statusDone {
				t.Fatal(c.gauge, errs)
			}
			var lines []string
			for _, l := range strings.Split(out, "\n") {
				if _, line, ok := strings.Cut(l, map[string]string{"US": "Gauge: ", "UK": "Tension: "}[terms]); ok {
					lines = append(lines, line)
				}
			}
			_, parts, _ := strings.Cut(out, "INSTRUCTIONS")
			if len(lines) == 0 {
				t.Fatalf("%s: no gauge in %s", c.gauge, parts)
			}
			words := c.words
			if terms == "UK" {
				words = strings.NewReplacer("Sc", "Dc", "sc", "dc", "Dc", "Tr", "dc", "tr", "FPdc", "FPtr", "BPdc", "BPtr").Replace(words)
			}
			got, again := reported(t, "terms: "+terms+"\n"+gauged(strings.Join(lines, "\n"), words))
			if strings.Count(again, "\n") != strings.Count(messages, "\n") || len(got.Sizes) == 0 {
				t.Errorf("%s in %s terms: %q, then %q %q", c.gauge, terms, messages, lines, again)
				continue
			}
			for i, p := range want.Sizes[0].Parts {
				for k, r := range p.Rounds {
					if o := got.Sizes[0].Parts[i].Rounds[k]; o.Circumference != r.Circumference || o.Height != r.Height {
						t.Errorf("%s in %s terms, printed as %q: %s is %v by %v, was %v by %v", c.gauge, terms, lines,
							r.Label, o.Circumference, o.Height, r.Circumference, r.Height)
					}
				}
			}
		}
	}
}

// Sizes for heads need the stitches.
func TestSizeNeedsStitches(t *testing.T) {
	for _, c := range []struct{ gauge, says string }{
		{"11 rounds = 10 cm", "a gauge of rounds needs the stitches too"},
		{"rounds 1-6 measure 11 cm across", "the gauge counts no stitches"},
		{"gauge is not critical", "the gauge counts no stitches"},
		{"15 sts in waffle stitch = 10 cm", "needs the rounds too"},
	} {
		status, _, errs := whorl(t, "", "size", "--head", "56 cm", "--gauge", c.gauge)
		if status != statusMisuse || !strings.Contains(errs, c.says) {
			t.Errorf("%s: %d %q, want %q", c.gauge, status, errs, c.says)
		}
	}
	status, out, errs := whorl(t, "", "size", "--head", "56 cm", "--gauge", "15 sts and 9 rounds in waffle stitch = 10 cm")
	if status != statusDone || !strings.Contains(out, "84") {
		t.Errorf("%d %s%s", status, out, errs)
	}
}
