package chart

import (
	"math"
	"strings"
	"testing"

	"whorl/chart/scene"
	"whorl/geometry"
	"whorl/patterns/stitch"
)

// A chart among text has no title and no credit, is no higher than its room and ends
// where it ends; what it shows is told beside it.
func TestFigure(t *testing.T) {
	f := flat(stitch.Of(stitch.Half), 8, 9, true)
	gauge, err := geometry.NewGauge(nil)
	if err != nil {
		t.Fatal(err)
	}
	form, err := geometry.Measure(f, gauge)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := Round(f, form, Options{Title: "The Title", Credit: "The Credit"})
	if err != nil {
		t.Fatal(err)
	}
	last := math.Inf(1)
	for _, height := range []float64{230, 150, 118} {
		c, err := Round(f, form, Options{Title: "The Title", Credit: "The Credit", Figure: height})
		if err != nil {
			t.Fatal(err)
		}
		if len(c.Findings) > 0 || c.Scene.Height > height || c.Scene.Height < height-45 || c.Scene.Width != whole.Scene.Width {
			t.Errorf("in %.0f mm it is %.0f × %.0f mm: %v", height, c.Scene.Width, c.Scene.Height, c.Findings)
		}
		if c.Smallest >= last || c.Smallest > whole.Smallest+1.5 {
			t.Errorf("in %.0f mm its symbols are %.1f mm tall, those of more room %.1f mm", height, c.Smallest, last)
		}
		last = c.Smallest
		for _, text := range written(&c.Scene.Root) {
			if strings.HasPrefix(text, "The ") || strings.Contains(text, "counterclockwise") {
				t.Errorf("in %.0f mm %q is on it", height, text)
			}
		}
		if !strings.HasSuffix(c.Caption, "ounds 1–9") || c.Reading != "Right side shown, read counterclockwise" {
			t.Errorf("it is told as %q, %q", c.Caption, c.Reading)
		}
		if r := Audit(c.Scene); len(r.Overlaps)+len(r.Texts)+len(r.Astray) > 0 {
			t.Errorf("in %.0f mm: %v", height, r)
		}
	}
	if c, err := Round(f, form, Options{Figure: 40}); err != nil || c.Scene.Height <= 40 || len(c.Findings) == 0 {
		t.Errorf("a chart with no room for its key says nothing of it: %v", err)
	}
}

func written(g *scene.Group) (l []string) {
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *scene.Group:
			l = append(l, written(n)...)
		case *scene.Text:
			l = append(l, n.String)
		}
	}
	return l
}
