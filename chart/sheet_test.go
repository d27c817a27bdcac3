package chart

import (
	"slices"
	"testing"

	"whorl/patterns/stitch"
)

// Every symbol is on the sheet once, named in both terms, and nothing touches or
// runs over the edge of the page.
func TestSheet(t *testing.T) {
	for _, terms := range []stitch.Terms{stitch.US, stitch.UK} {
		for _, paper := range []Paper{A4, Letter} {
			for _, cross := range []bool{false, true} {
				s := Sheet(terms, paper, cross)
				if err := s.Check(); err != nil {
					t.Fatal(err)
				}
				if r := Audit(s); len(r.Texts)+len(r.Overlaps) > 0 {
					t.Errorf("%s: %v %v", terms, r.Texts, r.Overlaps)
				}
				names := keyOf(&s.Root)
				if len(names) < 100 {
					t.Errorf("%s: %d symbols", terms, len(names))
				}
				for i, n := range names {
					if slices.Contains(names[:i], n) {
						t.Errorf("%s: two symbols called %s", terms, n)
					}
				}
				double := stitch.Of(stitch.Double).Name(terms)
				for _, want := range []string{"shell", "V-st", "crossed " + double, "first half", "last half", "ring", "ch ring", "beg ch", "join",
					"start", "end", "arrow", "turn", terms.Colour(), "marker", "inc", "dec", "ch-3 picot", "FP" + double, "BP" + double, "BLO " + double, "e" + double, double + "5tog"} {
					if !slices.Contains(names, want) {
						t.Errorf("%s: no %s", terms, want)
					}
				}
			}
		}
	}
}
