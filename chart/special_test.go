package chart

import (
	"strings"
	"testing"

	"whorl/chart/scene"
)

// The designer's own stitches are told in words under the key, in as many lines as
// they need, over nothing.
func TestSpecialStitches(t *testing.T) {
	long := strings.Repeat("dc in next st, ch 1, ", 12)
	for _, paper := range []Paper{A4, Letter} {
		c := draw(t, sample{"", capped(hdc, 8, 5, 4), Options{Paper: paper, Credit: "Design: nobody", Special: []Definition{
			{"V-st", "(dc, ch 1, dc) in next st"}, {"long wave", long},
		}}})
		g := find(&c.Scene.Root, "special")
		if g == nil {
			t.Fatal("no special stitches")
		}
		var words []string
		for _, n := range g.Nodes {
			words = append(words, n.(*scene.Text).String)
		}
		if len(words) < 5 || words[0] != "V-st" || words[2] != "long wave" {
			t.Errorf("written: %q", words)
		}
		if r := Audit(c.Scene); len(r.Texts)+len(r.Overlaps) > 0 {
			t.Errorf("%v %v", r.Texts, r.Overlaps)
		}
	}
}
