package main

import (
	"math"
	"strings"
	"testing"

	"whorl/chart"
	"whorl/chart/scene"
	"whorl/patterns"
)

// strainsOf is what the profile of a sheet says of the strain of every round, by
// its number: "slack by 40 %", or nothing where it fits.
func strainsOf(s *scene.Scene) map[string]string {
	shown := map[string]string{}
	var walk func(g *scene.Group)
	walk = func(g *scene.Group) {
		if len(g.Data) == 2 && g.Data[1].Name == "strain" {
			_, shown[g.Data[0].Value], _ = strings.Cut(g.Title, ", ")
		}
		for _, n := range g.Nodes {
			if g, ok := n.(*scene.Group); ok {
				walk(g)
			}
		}
	}
	walk(&s.Root)
	return shown
}

// A cap with 8 more increases a round than lie flat, one with 4 fewer and one
// that closes from 72 to 9 stitches in four rounds: the picture shows the slack
// and the pull in the rounds where they are, and the form its folds.
func TestThreeCapsInThePicture(t *testing.T) {
	for name, c := range map[string]struct {
		words            string
		slack, stretched []string
		fits             []string
		folds            bool
	}{
		"ruffle": {hdcCap("", 16, 7, 8), []string{"1", "2", "3", "4", "5", "6", "7"}, nil, []string{"15"}, true},
		"dome":   {hdcCap("", 4, 16, 8), nil, nil, []string{"1", "2", "8", "16", "17", "24"}, false},
		"gather": {gatherWords, []string{"7", "8", "9", "10"}, []string{"12"}, []string{"1", "2", "3"}, true},
	} {
		j, err := load("-", strings.NewReader(c.words))
		if err != nil || j.wrong() {
			t.Fatal(name, err, j.faults)
		}
		s, err := j.shape(patterns.Picture{Draw: "shaping"}, 0, chart.A4)
		if err != nil {
			t.Fatal(err)
		}
		shown := strainsOf(s)
		if n := len(j.fabrics[0].Parts[0].Rounds) - 1; len(shown) != n {
			t.Errorf("%s: %d rounds in the profile, want %d", name, len(shown), n)
		}
		for _, n := range c.slack {
			if !strings.HasPrefix(shown[n], "slack by") {
				t.Errorf("%s: round %s is shown %q", name, n, shown[n])
			}
		}
		for _, n := range c.stretched {
			if !strings.HasPrefix(shown[n], "stretched by") {
				t.Errorf("%s: round %s is shown %q", name, n, shown[n])
			}
		}
		for _, n := range c.fits {
			if shown[n] != "" {
				t.Errorf("%s: round %s is shown %q", name, n, shown[n])
			}
		}
		form, err := j.shape(patterns.Picture{Draw: "form"}, 0, chart.A4)
		if err != nil {
			t.Fatal(err)
		}
		folds := false
		for _, text := range texts(&form.Root) {
			folds = folds || strings.Contains(text.String, "the folds have the length")
		}
		if folds != c.folds {
			t.Errorf("%s: folds %v, want %v", name, folds, c.folds)
		}
	}
	// A dome of 4 increases where 8 lie flat leans by asin ½ from the axis.
	j, err := load("-", strings.NewReader(hdcCap("", 4, 16, 8)))
	if err != nil {
		t.Fatal(err)
	}
	if a := j.forms[0].Parts[0].Rounds[8].Angle; math.Abs(a-math.Pi/6) > 0.01 {
		t.Errorf("the dome leans by %.3f, want π/6", a)
	}
}
