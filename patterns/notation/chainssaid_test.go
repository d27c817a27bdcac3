package notation

import (
	"fmt"
	"strings"
	"testing"

	"whorl/patterns/stitch"
)

// TestParseNotes reads what notes say of the chains that rounds begin with: n is the number
// of chains, 0 for all of them, and behind it stands what they are.
func TestParseNotes(t *testing.T) {
	for _, c := range []struct{ words, want string }{
		{"Three chain at the start of a round do not count as a stitch.", "3 not"},
		{"The two chains at the start of each round do not count as a stitch.", "2 not"},
		{"Beginning chains never count as stitches.", "0 not"},
		{"Do not count the ch 3 as a stitch.", "3 not"},
		{"We don't count the beginning chain as a stitch.", "0 not"},
		{"The turning chain is not included in the stitch count.", "0 not"},
		{"The beginning ch-3 is not a stitch.", "3 not"},
		{"Stitch counts do not include the beginning chain.", "0 not"},
		{"The stitch count at the end of each round does not include the beginning ch 3.", "3 not"},
		{"The ch 1 or ch 2 at the start of a round never counts as a stitch.", "1 not, 2 not"},
		{"Neither the ch 1 nor the ch 3 at the start of a row counts as a st.", "1 not, 3 not"},
		{"Please note: ch 2 at the start of rounds does not count as a st.", "2 not"},
		{"Unless otherwise stated, beg ch 3 does not count as a st.", "3 not"},
		{"Each round begins with a ch 3, which does not count as a stitch.", "3 not"},
		{"Start each row with a ch 2 that does not count as a st.", "2 not"},
		{"Ch 1 does not count as a st, but ch 3 counts as a dc.", "1 not, 3 dc"},
		{"The ch 2 is always your first dc.", "2 dc"},
		{"Beginning ch 2 = first dc.", "2 dc"},
		{"The ch 3 at the beginning of each round replaces the first dc.", "3 dc"},
		{"The beginning ch 3 takes the place of the first dc.", "3 dc"},
		{"Ch 3 stands for the first dc and ch 2 for the first hdc.", "3 dc"},
		{"The starting ch 3 counts as a dc and the starting ch 4 as a tr.", "3 dc, 4 tr"},
		// What is said of other chains, of some rounds or on a condition is not of these.
		{"The ch-1 spaces count as stitches.", ""},
		{"Chains count as stitches in the mesh.", ""},
		{"Count the chains with care.", ""},
		{"Stitch counts do not include chains.", ""},
		{"If the ch 3 does not count as a stitch, the edge leans.", ""},
		{"The corner ch 2 does not count as a stitch.", ""},
	} {
		var l []string
		for _, k := range ParseNotes([]Line{{c.words, 1, 1}}, NewVocabulary(stitch.US, nil), nil) {
			is := "not"
			if !k.Not {
				is = k.As.Name(stitch.US)
			}
			l = append(l, fmt.Sprint(k.Of, " ", is))
		}
		if got := strings.Join(l, ", "); got != c.want {
			t.Errorf("%q: %q, want %q", c.words, got, c.want)
		}
	}
}
