package working

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/patterns"
)

// What is printed in words and read again is printed in the same words.
func TestWordsPrintTheSameAgain(t *testing.T) {
	eachPrinted(t, func(t *testing.T, p *patterns.Pattern) {
		once := New(p, rule{}).Script(p.Terms, -1, false)
		if once == nil {
			t.Fatal("nothing is printed")
		}
		twice := New(reread(p, once, p.Terms, -1), rule{}).Script(p.Terms, -1, false)
		if twice == nil {
			t.Fatal("what is printed is not read")
		}
		for i := range once.Parts {
			if d := cmp.Diff(once.Parts[i].Lines, twice.Parts[i].Lines); d != "" {
				t.Error(d)
			}
		}
		if d := cmp.Diff(once.Stitches, twice.Stitches); d != "" {
			t.Error(d)
		}
	})
}

// So is a decrease that the designer tells of by the name the trade has for it.
func TestCountsOfOwnDecreases(t *testing.T) {
	p, err := patterns.Read("t", []byte("terms: UK\nstitches:\n  dc2tog: invisible decrease over the front loops of the next 2 stitches\nparts:\n  - worked: rounds\n    text: |\n"+
		"      Rnd 1: 12 dc in magic ring.\n      Rnd 2: [Dc in next 2 sts, dc2tog] 3 times. (9)\n"))
	if err != nil {
		t.Fatal(err)
	}
	once := New(p, rule{}).Script(p.Terms, -1, false)
	twice := New(reread(p, once, p.Terms, -1), rule{}).Script(p.Terms, -1, false)
	if d := cmp.Diff(once.Parts[0].Lines, twice.Parts[0].Lines); d != "" {
		t.Error(d)
	}
}
