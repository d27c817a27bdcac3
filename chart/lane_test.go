package chart

import (
	"math"
	"strings"
	"testing"

	"whorl/chart/scene"
)

// Where each round is worked in yarn that is joined and cut again, the signs stand behind
// the beginnings of their rounds, one line of them, and the rounds are parted for them.
func TestYarnLane(t *testing.T) {
	f := flat(dc, 12, 8, true)
	for k, r := range f.Parts[0].Rounds {
		for i := range r.Stitches {
			r.Stitches[i].Colour = string(rune('A' + k%4))
		}
		r.Colour, r.Cut = string(rune('A'+k%4)), true
	}
	c := draw(t, sample{"", f, Options{}})
	if c.untidy() > 0 || len(c.Findings) > 0 {
		t.Errorf("%d crossings, %d rounds cramped, %q", c.crossings, len(c.cramped), c.Findings)
	}
	if r := Audit(c.Scene); !r.Clean() {
		t.Errorf("overlaps %v, texts %v", r.Overlaps, r.Texts)
	}
	size := 0.0
	for _, n := range find(&c.Scene.Root, "yarn").Nodes {
		g := n.(*scene.Group)
		if !strings.Contains(g.Title, "join") {
			continue
		}
		for _, n := range g.Nodes {
			if s, ok := n.(*scene.Text); ok {
				if size > 0 && math.Abs(s.Size-size) > 1e-9 {
					t.Errorf("%s: its letter is %.2f mm, others %.2f", g.Title, s.Size, size)
				}
				size = s.Size
			}
		}
	}
	if size == 0 {
		t.Error("no yarn is joined")
	}
}
