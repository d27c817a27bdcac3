package main

import (
	"path/filepath"
	"strconv"
	"testing"

	"whorl/chart"
	"whorl/chart/scene"
	"whorl/geometry"
	"whorl/patterns/fabric"
)

// Rounds whose numbers find no room by their beginnings have them farther off, and
// nothing runs through them.
func TestNumbersFartherOff(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		file       string
		size, part int
		draw       func(*fabric.Fabric, *geometry.Form, chart.Options) (*chart.Chart, error)
	}{
		{"published/granite-moss-hat", 0, 0, chart.Round},
		{"published/ferryman-mitts", 1, 1, chart.Round},
		{"more/mandala-millwheel", 0, 0, chart.Wedge},
		{"published/pebbledash-hat", 2, 1, chart.Wedge},
	} {
		j, err := load(filepath.Join("..", "..", "testdata", "patterns", c.file+".yaml"), nil)
		if err != nil {
			t.Fatal(err)
		}
		drawn, err := c.draw(j.fabrics[c.size], j.forms[c.size], chart.Options{Part: c.part})
		if err != nil {
			t.Fatal(err)
		}
		texts := map[string]bool{}
		var look func(g *scene.Group)
		look = func(g *scene.Group) {
			for _, n := range g.Nodes {
				switch n := n.(type) {
				case *scene.Group:
					look(n)
				case *scene.Text:
					texts[n.String] = true
				}
			}
		}
		look(&drawn.Scene.Root)
		for _, r := range j.fabrics[c.size].Parts[c.part].Rounds {
			if r.Number > 0 && !texts[strconv.Itoa(r.Number)] {
				t.Errorf("%s: no number of %s", c.file, r.Label)
			}
		}
		if r := chart.Audit(drawn.Scene); !r.Clean() || len(drawn.Findings) > 0 {
			t.Errorf("%s: %q, %v %v", c.file, drawn.Findings, r.Overlaps, r.Texts)
		}
	}
}
