package chart

import (
	"slices"
	"strings"
	"testing"

	"whorl/chart/scene"
	"whorl/geometry"
	"whorl/patterns/fabric"
)

// inYarns is a fabric with changes of colour within rounds, markers, and yarn that is cut
// and joined again.
func inYarns(f *fabric.Fabric) *fabric.Fabric {
	rounds := f.Parts[0].Rounds
	for k, r := range rounds {
		if r.Number == 0 {
			continue
		}
		for i := range r.Stitches {
			s := &r.Stitches[i]
			s.Colour = "A"
			if k == 3 && i%8 > 3 || k > 3 {
				s.Colour = "B"
			}
			s.Marked = (k == 2 || k == 3) && i == 3 // moved up
		}
		r.Colour = r.Stitches[0].Colour
	}
	rounds[len(rounds)-2].Cut = true
	rounds[len(rounds)-1].Cut = true
	return f
}

// Markers, changes of colour and the ends of the yarn are drawn by their stitches in
// every layout, touch nothing, and are in the key.
func TestYarnSigns(t *testing.T) {
	type draws = func(*fabric.Fabric, *geometry.Form, Options) (*Chart, error)
	for name, c := range map[string]struct {
		f    *fabric.Fabric
		draw draws
		o    Options
	}{
		"round":  {flat(dc, 12, 5, true), Round, Options{}},
		"wedge":  {flat(dc, 12, 5, true), Wedge, Options{}},
		"closed": {shells(), Round, Options{}},
		"panel":  {shells(), Panel, Options{From: 1, To: 6}},
		"rows":   {ribbing(6), Rows, Options{}},
	} {
		f := inYarns(c.f)
		chart, err := c.draw(f, measure(t, f), c.o)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		signs := find(&chart.Scene.Root, "yarn")
		if signs == nil {
			t.Errorf("%s: no signs", name)
			continue
		}
		drawn := map[string]int{}
		for _, n := range signs.Nodes {
			_, what, _ := strings.Cut(n.(*scene.Group).Title, ": ")
			drawn[what]++
		}
		key := keyOf(&chart.Scene.Root)
		for what, short := range map[string]string{"marker": "marker", "change to B": "color", "change to A": "color", "fasten off": "end", "join yarn": "start"} {
			if name == "wedge" && what == "marker" {
				continue // may lie outside
			}
			if drawn[what] == 0 && !(name == "wedge" || name == "panel") {
				t.Errorf("%s: no %q among %v", name, what, drawn)
			}
			if drawn[what] > 0 && !slices.Contains(key, short) {
				t.Errorf("%s: %s is not in the key %v", name, short, key)
			}
		}
		if drawn["marker"] > 1 && name == "round" {
			t.Errorf("%s: a marker that is moved up is drawn %d times", name, drawn["marker"])
		}
		if len(chart.Findings) > 0 {
			t.Errorf("%s: %q", name, chart.Findings)
		}
		if r := Audit(chart.Scene); !r.Clean() {
			t.Errorf("%s: %v %v", name, r.Overlaps, r.Texts)
		}
	}
}

// Yarn that is joined and not named is no other colour: the sign that it is joined stands
// alone, and where the chart begins there is its sign already.
func TestYarnNotNamed(t *testing.T) {
	for from, want := range map[int][]string{1: nil, 4: {"join yarn"}} {
		f := flat(dc, 12, 5, true)
		for i := from; i < len(f.Parts[0].Rounds); i++ {
			r := f.Parts[0].Rounds[i]
			for k := range r.Stitches {
				r.Stitches[k].Colour = anyYarn
			}
		}
		f.Parts[0].Rounds[3].Cut = from > 1
		c := draw(t, sample{"", f, Options{}})
		var got []string
		if signs := find(&c.Scene.Root, "yarn"); signs != nil {
			for _, n := range signs.Nodes {
				if _, what, _ := strings.Cut(n.(*scene.Group).Title, ": "); what != "fasten off" {
					got = append(got, what)
				}
			}
		}
		if !slices.Equal(got, want) || slices.Contains(keyOf(&c.Scene.Root), "color") {
			t.Errorf("yarn joined in round %d: %q, want %q, the key %q", from, got, want, keyOf(&c.Scene.Root))
		}
	}
}

// A chart without any of that has no signs of it, and nothing of it in the key.
func TestNoYarnSigns(t *testing.T) {
	c := draw(t, sample{"", flat(dc, 12, 4, true), Options{}})
	if find(&c.Scene.Root, "yarn") != nil {
		t.Error("signs of nothing")
	}
	for _, short := range []string{"marker", "color", "end"} {
		if slices.Contains(keyOf(&c.Scene.Root), short) {
			t.Errorf("%s in the key", short)
		}
	}
}

// Where the yarn changes within a round, every stitch has the ink of its yarn, which
// the key tells; otherwise, and in black, rounds are drawn as ever.
func TestYarnInks(t *testing.T) {
	inks := func(f *fabric.Fabric, o Options) (n map[string]int, key []string) {
		c := draw(t, sample{"", f, o})
		n = map[string]int{}
		for i, name := range []string{"black", "red", "blue"} {
			n[name] = colours(c.Scene)[*yarnInks[i]]
		}
		return n, keyOf(&c.Scene.Root)
	}
	f := inYarns(flat(dc, 12, 5, true))
	n, key := inks(f, Options{})
	if n["black"] == 0 || n["red"] == 0 || n["blue"] != 0 || !slices.Contains(key, "A") || !slices.Contains(key, "B") {
		t.Errorf("two yarns: %v, key %v", n, key)
	}
	last := f.Parts[0].Rounds[5]
	for i := range last.Stitches {
		last.Stitches[i].Colour = "C"
	}
	if n, key := inks(f, Options{}); n["blue"] == 0 || !slices.Contains(key, "C") {
		t.Errorf("three yarns: %v, key %v", n, key)
	}
	if n, key := inks(f, Options{Black: true}); n["red"]+n["blue"] != 0 || slices.Contains(key, "A") {
		t.Errorf("in black: %v, key %v", n, key)
	}
	striped := flat(dc, 12, 3, true)
	for k, r := range striped.Parts[0].Rounds {
		for i := range r.Stitches {
			r.Stitches[i].Colour = string(rune('A' + k))
		}
	}
	if n, key := inks(striped, Options{}); n["red"] == 0 || n["blue"] != 0 || slices.Contains(key, "A") {
		t.Errorf("in stripes: %v, key %v", n, key)
	}
}
