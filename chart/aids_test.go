package chart

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

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
	usual := draw(t, sample{"", f, Options{}})
	plain := colours(usual.Scene)
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
		"changes": {Options{Changes: true}, func(c *Chart) bool {
			// 8 in each of rounds 2 to 5, none in the sides.
			return drawnIn(find(&c.Scene.Root, "changes")) == 4*8 && slices.Contains(keyOf(&c.Scene.Root), "inc") && !slices.Contains(keyOf(&c.Scene.Root), "dec")
		}},
		"counts": {Options{Counts: true}, func(c *Chart) bool {
			return cmp.Equal(textsIn(find(&c.Scene.Root, "counts")), []string{"(8)", "(16)", "(24)", "(32)", "(40)", "(40)", "(40)", "(40)", "(40)"})
		}},
		"fives": {Options{Fives: true, From: 2, To: 3}, func(c *Chart) bool {
			return cmp.Equal(textsIn(find(&c.Scene.Root, "fives")), []string{"5", "10", "15", "5", "10", "15", "20"})
		}},
		"fives and counts": {Options{Fives: true, Counts: true, From: 5}, func(c *Chart) bool { // the count says the last one
			return cmp.Equal(textsIn(find(&c.Scene.Root, "fives"))[:8], []string{"5", "10", "15", "20", "25", "30", "35", "5"})
		}},
		"large": {Options{Large: true}, func(c *Chart) bool {
			return sizeOf(c, "8") > 1.3*sizeOf(usual, "8") && lineOf(c) > 1.1*lineOf(usual)
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

// textsIn are the texts of a group and all in it.
func textsIn(g *scene.Group) (l []string) {
	if g == nil {
		return nil
	}
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *scene.Group:
			l = append(l, textsIn(n)...)
		case *scene.Text:
			l = append(l, n.String)
		}
	}
	return l
}

// drawnIn is how many paths are in a group and all in it.
func drawnIn(g *scene.Group) (n int) {
	if g == nil {
		return 0
	}
	for _, child := range g.Nodes {
		switch child := child.(type) {
		case *scene.Group:
			n += drawnIn(child)
		case *scene.Path:
			n++
		}
	}
	return n
}

// sizeOf is the size of a round's number.
func sizeOf(c *Chart, number string) float64 {
	for _, n := range find(&c.Scene.Root, "signs").Nodes {
		if t, ok := n.(*scene.Text); ok && t.String == number {
			return t.Size
		}
	}
	return 0
}

// lineOf is the width of the lines of round 2.
func lineOf(c *Chart) float64 { return *find(&c.Scene.Root, "rnd2").Style.Line }

// Increases and decreases are marked in rows, in wedges and where rounds are laid
// flat as well, and rows have their counts at the far end.
func TestAidsInOtherLayouts(t *testing.T) {
	all := Options{Changes: true, Counts: true, Fives: true, Repeats: 1}
	rows := rowsChart(t, ripple(dc, 4), all)
	all.To = 8
	panel := panelOf(t, all)
	for name, c := range map[string]*Chart{"rows": rows, "panel": panel} {
		if drawnIn(find(&c.Scene.Root, "changes")) == 0 || len(textsIn(find(&c.Scene.Root, "counts"))) == 0 {
			t.Errorf("%s: no marks or no counts: %v", name, c.Findings)
		}
		if r := Audit(c.Scene); !r.Clean() {
			t.Errorf("%s: overlaps %v, texts %v, legs %v", name, r.Overlaps, r.Texts, r.Astray)
		}
	}
	number, count := find(&rows.Scene.Root, "number2"), find(&rows.Scene.Root, "counts")
	var x float64
	for _, n := range number.Nodes {
		if t, ok := n.(*scene.Text); ok {
			x = t.X
		}
	}
	middle := rows.Scene.Width / 2
	if end := count.Nodes[1].(*scene.Text).X; (x < middle) == (end < middle) {
		t.Errorf("row 2 has its number at %.1f and its count at %.1f", x, end)
	}
}

// A round whose aids find no room in the white has none of them, and the chart says
// so.
func TestAidsWithoutRoom(t *testing.T) {
	c := draw(t, sample{"", flat(sc, 6, 17, true), Options{Fives: true, Changes: true}})
	found := false
	for _, f := range c.Findings {
		found = found || strings.Contains(f, "no room for the stitch number")
	}
	g := find(&c.Scene.Root, "fives")
	for _, n := range g.Nodes {
		if r := n.(*scene.Group); len(textsIn(r)) < 1 {
			t.Errorf("%s: empty", r.Title)
		}
	}
	if !found || len(g.Nodes) == 17 {
		t.Errorf("%d rounds have stitch numbers; findings %v", len(g.Nodes), c.Findings)
	}
}

// luminance is the relative luminance of a colour (WCAG 2.2).
func luminance(c scene.Colour) float64 {
	part := func(v uint8) float64 {
		if x := float64(v) / 255; x > 0.04045 {
			return math.Pow((x+0.055)/1.055, 2.4)
		} else {
			return x / 12.92
		}
	}
	return 0.2126*part(c.R) + 0.7152*part(c.G) + 0.0722*part(c.B)
}

// Colours keep the contrast that WCAG 2.2 asks for: 4.5:1 for what is read (1.4.3),
// 3:1 for lines that lead the eye (1.4.11).
func TestContrast(t *testing.T) {
	white := scene.RGB(0xffffff)
	for _, c := range []struct {
		name       string
		on, ground scene.Colour
		least      float64
	}{
		{"ink", ink, white, 4.5}, {"second", second, white, 4.5}, {"words", words, white, 4.5}, {"second on the tint", second, tinge, 4.5},
		{"grey", grey, white, 3}, {"grey on the tint", grey, tinge, 3}, {"pale", pale, white, 3},
	} {
		if got := (luminance(c.ground) + 0.05) / (luminance(c.on) + 0.05); got < c.least {
			t.Errorf("%s: a contrast of %.2f:1, under %.1f:1", c.name, got, c.least)
		}
	}
}
