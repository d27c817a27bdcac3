package main

import (
	"fmt"
	"strings"
	"testing"
)

// What is said is worked: the words of every spacing, set in a pattern, leave
// the stitches that were asked for.
func TestSpacedWordsWork(t *testing.T) {
	tried := 0
	for from := 3; from <= 40; from++ {
		for to := (from + 1) / 2; to <= 2*from; to++ {
			if (from*7+to)%5 > 0 { // a fifth of them
				continue
			}
			for _, way := range []string{"--stacked", "--staggered", "--centred"} {
				s := spacing{from: fmt.Sprint(from), to: fmt.Sprint(to), rounds: 1, number: 2, stitch: "hdc",
					staggered: way == "--staggered", centred: way == "--centred"}
				if 2*to-from >= to/2 && 2*to-from <= 2*to && 2*to-from > 0 {
					s.rounds = 2
				}
				if err := s.work(); err != nil {
					s.rounds = 1 // the second round has no room for as many
					s.lines = nil
					if err := s.work(); err != nil {
						t.Fatal(from, to, err)
					}
				}
				words := fmt.Sprintf("title: T\nparts:\n  - name: P\n    worked: rounds\n    text: |\n      Rnd 1: %d hdc in magic ring. (%d hdc)\n", from, from)
				for _, l := range s.lines {
					words += "      " + l.Round + ": " + l.Words + "\n"
				}
				if status, _, errs := whorl(t, words, "check", "-"); status != statusDone {
					t.Errorf("%d to %d %s:\n%s%s", from, to, way, words, errs)
				}
				tried++
			}
		}
	}
	if tried < 400 {
		t.Errorf("only %d tried", tried)
	}
}

func TestSpace(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"--from", "60 (72, 78)", "--to", "70 (84, 91)", "--stitch", "hdc"},
			"Rnd 1: *Hdc in next 5 sts, 2 hdc in next st; rep from * around. (70 (84, 91) hdc)\n"},
		{[]string{"--from", "72", "--to", "60", "--stitch", "tr", "--terms", "UK", "--number", "9"},
			"Rnd 9: *Tr in next 4 sts, tr2tog; rep from * around. (60 tr)\n"},
		{[]string{"--from", "8", "--to", "16"}, "Rnd 1: *2 sc in next st; rep from * around. (16 sc)\n"},
		{[]string{"--from", "48 (50)", "--to", "48 (55)"},
			"Rnd 1, size 1: Sc in each st around. (48 sc)\nRnd 1, size 2: *Sc in next 9 sts, 2 sc in next st; rep from * around. (55 sc)\n"},
		{[]string{"--from", "48", "--to", "54", "--rounds", "2", "--staggered"},
			"Rnd 2: Sc in next 3 sts, 2 sc in next st, [sc in next 8 sts, 2 sc in next st] 5 times, sc in next 5 sts. (60 sc)\n"},
		{[]string{"--from", "48", "--to", "54", "--rounds", "2"}, "Rnd 2: *Sc in next 8 sts, 2 sc in next st; rep from * around. (60 sc)\n"},
		{[]string{"--rows", "40", "--pick-up", "50"}, "5 in every 4 row ends"},
		{[]string{"--rows", "62", "--pick-up", "60"}, "halfway marker after row end 31, with 30 sts before it"},
		{[]string{"--rows", "62", "--pick-up", "60"}, "quarter marker in the middle of row end 16, with 15 sts before it"},
		{[]string{"--rows", "100", "--pick-up", "77"}, "77 in every 100 row ends (about 3 in every 4)"},
		{[]string{"--rows", "67", "--pick-up", "66"}, "(about 1 in each)"},
		{[]string{"--from", "7", "--to", "12"}, "2 sc in next st, sc in next st, 2 sc in next st, 2 sc in each of next 2 sts, sc in next st, 2 sc in next st. (12 sc)"},
		{[]string{"--rows", "60", "--pick-up", "60", "--json"}, `"stitches": [`},
	} {
		status, out, errs := whorl(t, "", append([]string{"space"}, c.args...)...)
		if status != statusDone || !strings.Contains(out, c.says) {
			t.Errorf("%v: status %d %s\n%s\nwant %s", c.args, status, errs, out, c.says)
		}
	}
	for _, c := range []struct {
		args []string
		says string
	}{
		{nil, "--from and --to"},
		{[]string{"--from", "10", "--to", "21"}, "no more than 10 fit"},
		{[]string{"--from", "10", "--to", "4"}, "no more than 5 fit"},
		{[]string{"--from", "10", "--to", "8", "--rounds", "9"}, "no stitches are left"},
		{[]string{"--from", "ten", "--to", "8"}, `"ten"`},
		{[]string{"--from", "10", "--to", "-8"}, `"-8"`},
		{[]string{"--from", "10 (12)", "--to", "8 (9, 10)"}, "one for each size"},
		{[]string{"--from", "10", "--to", "12", "--stacked", "--staggered"}, "not both"},
		{[]string{"--from", "10", "--to", "12", "--stitch", "ch"}, "--stitch"},
		{[]string{"--from", "10", "--to", "12", "--rounds", "0"}, "--rounds"},
		{[]string{"--rows", "10"}, "--pick-up"},
		{[]string{"--rows", "10", "--pick-up", "9", "--from", "3"}, "not both"},
	} {
		status, _, errs := whorl(t, "", append([]string{"space"}, c.args...)...)
		if status != statusMisuse || !strings.Contains(errs, c.says) {
			t.Errorf("%v: status %d %q, want %q", c.args, status, errs, c.says)
		}
	}
}
