package shaping

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"whorl/chart"
	"whorl/chart/scene"
	"whorl/geometry"
)

// groupOf is the group of a name in a scene.
func groupOf(g *scene.Group, id string) *scene.Group {
	if g.ID == id {
		return g
	}
	for _, n := range g.Nodes {
		if sub, ok := n.(*scene.Group); ok {
			if found := groupOf(sub, id); found != nil {
				return found
			}
		}
	}
	return nil
}

// The profile is to scale: from tick to tick it is as long as the round is
// tall, and as far from the axis as the round rests, at the scale that stands
// beside it; and so are the bars under it.
func TestProfileIsToScale(t *testing.T) {
	for name, counts := range map[string][]int{
		"dome":       {4, 8, 12, 16, 20, 24, 28, 28, 28, 28},
		"flat crown": {8, 16, 24, 32, 40, 40, 40, 40},
		"brim up":    {72, 72, 72, 72, 63, 54, 45, 36, 27, 18, 9},
	} {
		f := crown(counts...)
		form, err := geometry.Measure(f, nil)
		if err != nil {
			t.Fatal(err)
		}
		s, err := Sheet(f, form, Options{Head: 250})
		if err != nil {
			t.Fatal(err)
		}
		scale := 0.0
		for _, n := range groupOf(&s.Root, "scale").Nodes {
			if text, ok := n.(*scene.Text); ok && strings.HasPrefix(text.String, "scale 1 : ") {
				scale, _ = strconv.ParseFloat(strings.TrimPrefix(text.String, "scale 1 : "), 64)
			}
		}
		if scale <= 0 {
			t.Fatal(name, "no scale")
		}
		bar := groupOf(&s.Root, "scale").Nodes[0].(*scene.Path).D
		if got := bar.Bounds().W() * scale / 10; math.Abs(got-math.Round(got)) > 0.01*got && math.Abs(2*got-math.Round(2*got)) > 0.02*got {
			t.Errorf("%s: the first bar is %.3f cm long", name, got)
		}
		// The inner edge of every round's part of the ribbon.
		edge := func(side string, i int) (a, b point) {
			l := groupOf(&s.Root, side).Nodes[i].(*scene.Group).Nodes[0].(*scene.Path).D.Coords()
			return l[0], l[1]
		}
		p := pieceOf(t, f)
		left, _ := edge("profile-left", 0)
		right, _ := edge("profile-right", 0)
		axis := (left.X + right.X) / 2
		for i, c := range p.rounds {
			a, b := edge("profile-right", i)
			if math.Abs(c.form.Strain) > 0.02 {
				continue // drawn in or out
			}
			if got, want := math.Hypot(b.X-a.X, b.Y-a.Y)*scale, c.form.Height; math.Abs(got-want) > 0.03*want {
				t.Errorf("%s, %s: %.2f mm along the profile, its stitches are %.2f mm tall", name, c.round.Label, got, want)
			}
			if got := (b.X - axis) * scale; math.Abs(got-c.form.R) > 0.03*c.form.R+0.3 {
				t.Errorf("%s, %s: %.2f mm from the axis, want %.2f", name, c.round.Label, got, c.form.R)
			}
		}
	}
}

// Both papers are filled, and every page passes the scene's own check.
func TestSheetsOnBothPapers(t *testing.T) {
	f := crown(8, 16, 24, 48, 48, 24, 12)
	form, err := geometry.Measure(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, paper := range []chart.Paper{chart.A4, chart.Letter} {
		w, h := paper.Size()
		for _, draw := range []func() (*scene.Scene, error){
			func() (*scene.Scene, error) { return Sheet(f, form, Options{Paper: paper}) },
			func() (*scene.Scene, error) { return Form(f, form, Options{Paper: paper}) },
		} {
			s, err := draw()
			if err != nil {
				t.Fatal(err)
			}
			if err := s.Check(); err != nil || s.Width != w || s.Height != h {
				t.Errorf("%v by %v: %v", s.Width, s.Height, err)
			}
		}
	}
	if _, err := Sheet(f, form, Options{Part: 3}); err == nil {
		t.Error("a part that is not there is drawn")
	}
	if _, err := Form(nil, form, Options{}); err == nil {
		t.Error("no fabric is drawn")
	}
	if _, err := Sheet(f, nil, Options{}); err == nil {
		t.Error("no form is drawn")
	}
}
