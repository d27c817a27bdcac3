package working

import (
	"os"
	"path/filepath"
	"testing"

	"whorl/patterns"
	"whorl/patterns/fabric"
)

// FuzzWords works any words at all: nothing panics or hangs, what is worked
// stays within its limits, and every place of every stitch is there.
func FuzzWords(f *testing.F) {
	files, _ := filepath.Glob("../../testdata/notation/*.txt")
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		for _, c := range splitCases(string(data)) {
			f.Add(c, false)
		}
	}
	f.Add("Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRows 2-end: Ch 1, BLO sc in each st across, turn, until piece measures 10 cm.", true)
	f.Fuzz(func(t *testing.T, words string, rows bool) {
		p := &patterns.Pattern{File: "fuzz", Sizes: []string{"A", "B", "C"},
			Stitches: []patterns.Definition{{Name: "fan", Words: text("(2 dc, ch 1, 2 dc) in same st")}, {Name: "loop", Words: text("loop in next st, fan in next st")}},
			Parts:    []patterns.Part{{Name: "P", Rows: rows, Text: text(words)}, {Name: "Q", From: "P", Text: text("Rnd 1: Ch 1, sc in each st around; join.")}}}
		fabrics, _ := Work(p, rule{})
		for _, fb := range fabrics {
			for _, part := range fb.Parts {
				checkPlaces(t, part)
			}
		}
	})
}

// checkPlaces checks that every stitch stands on places that were there when
// it was worked.
func checkPlaces(t *testing.T, part *fabric.Part) {
	total := 0
	for n, r := range part.Rounds {
		if total += len(r.Stitches); total > maxFabric+maxRound {
			t.Fatal("more stitches than the limit")
		}
		for i := range r.Stitches {
			for _, pl := range r.Stitches[i].On {
				if pl.At.Round < 0 || pl.At.Round > n || pl.At.Stitch < 0 {
					continue // row ends and rings have no stitch
				}
				if pl.At.Round >= len(part.Rounds) || pl.At.Stitch >= len(part.Rounds[pl.At.Round].Stitches) ||
					pl.At.Round == n && pl.At.Stitch >= i {
					t.Fatalf("%s, stitch %d stands on round %d, stitch %d, which is not there", r.Label, i, pl.At.Round, pl.At.Stitch)
				}
			}
		}
		for _, s := range r.Spaces {
			if s.From < 0 || s.To > len(r.Stitches) || s.From >= s.To {
				t.Fatalf("%s has a space from %d to %d of %d stitches", r.Label, s.From, s.To, len(r.Stitches))
			}
		}
		for _, g := range r.Groups {
			if g.From < 0 || g.To > len(r.Stitches) || g.From > g.To {
				t.Fatalf("%s has a group from %d to %d of %d stitches", r.Label, g.From, g.To, len(r.Stitches))
			}
		}
	}
}
