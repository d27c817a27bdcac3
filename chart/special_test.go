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
			{Name: "V-st", Words: "(dc, ch 1, dc) in next st"}, {Name: "p", Words: "ch-3 picot", Told: true}, {Name: "long wave", Words: long},
		}}})
		g := find(&c.Scene.Root, "special")
		if g == nil {
			t.Fatal("no special stitches")
		}
		var words []string
		for _, n := range g.Nodes {
			if t, ok := n.(*scene.Text); ok {
				words = append(words, t.String)
			}
		}
		if len(words) < 6 || words[0] != "Special stitches" || words[1] != "V-st" || words[3] != "long wave" {
			t.Errorf("written: %q", words)
		}
		if r := Audit(c.Scene); len(r.Texts)+len(r.Overlaps) > 0 {
			t.Errorf("%v %v", r.Texts, r.Overlaps)
		}
	}
}
