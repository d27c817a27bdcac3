package chart

import (
	"testing"

	"whorl/chart/scene"
)

// colours counts what is drawn in each colour.
func colours(s *scene.Scene) map[scene.Colour]int {
	count := map[scene.Colour]int{}
	var walk func(g *scene.Group, k scene.Ink)
	walk = func(g *scene.Group, k scene.Ink) {
		k = k.With(g.Style)
		for _, n := range g.Nodes {
			switch n := n.(type) {
			case *scene.Group:
				walk(n, k)
			case *scene.Path:
				p := k.With(n.Style)
				count[p.Stroke]++
				count[p.Fill]++
			case *scene.Text:
				count[n.Colour]++
			}
		}
	}
	walk(&s.Root, scene.Plain)
	return count
}

// Each reading aid changes what it is for, and leaves the chart clean.
func TestReadingAids(t *testing.T) {
	f := capped(hdc, 8, 5, 4)
	plain := colours(draw(t, sample{"", f, Options{}}).Scene)
	if plain[second] == 0 || plain[tinge] != 0 {
		t.Fatalf("a plain chart is in %v", plain)
	}
	for name, c := range map[string]struct {
		o  Options
		ok func(*Chart) bool
	}{
		"one colour": {Options{Black: true}, func(c *Chart) bool { return colours(c.Scene)[second] == 0 }},
		"no ground":  {Options{Clear: true}, func(c *Chart) bool { return !c.Scene.Paper.Opaque }},
		"tint": {Options{Tint: true}, func(c *Chart) bool {
			g := find(&c.Scene.Root, "repeat")
			return g != nil && c.Scene.Root.Nodes[1] == scene.Node(g) // under the stitches
		}},
	} {
		chart := draw(t, sample{"", f, c.o})
		if !c.ok(chart) {
			t.Errorf("%s: not seen in the chart", name)
		}
		if r := Audit(chart.Scene); len(r.Overlaps)+len(r.Texts)+len(r.Astray) > 0 {
			t.Errorf("%s: overlaps %v, texts %v, legs %v", name, r.Overlaps, r.Texts, r.Astray)
		}
	}
}
