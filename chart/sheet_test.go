package chart

import (
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
				if names := keyOf(&s.Root); len(names) < 80 {
					t.Errorf("%s: %d symbols", terms, len(names))
				}
			}
		}
	}
}
