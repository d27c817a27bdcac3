package main

import (
	"os"
	"strings"
	"testing"

	"whorl/patterns"
)

// The rounds that a picture asks for are numbered as in the size that it draws:
// another size shows those worked from the same lines.
func TestRoundsOfAnotherSize(t *testing.T) {
	for _, c := range []struct {
		example, size string // the size the picture names, "" for none
		from, to      int
		want          map[string][2]int
	}{
		{"bulrush-hat", "Adult", 11, 17, map[string][2]int{"Toddler": {11, 17}, "Adult": {11, 17}, "Adult Large": {14, 20}}},
		{"bulrush-hat", "Adult Large", 14, 20, map[string][2]int{"Toddler": {11, 17}, "Adult Large": {14, 20}}},
		{"bulrush-hat", "", 1, 4, map[string][2]int{"Child": {1, 4}, "Adult Large": {1, 4}}},
		{"bulrush-hat", "", 1, 10, map[string][2]int{"Adult Large": {1, 13}}},
		{"bulrush-hat", "", 0, 0, map[string][2]int{"Adult Large": {0, 0}}},
		{"heron-reach-set", "Adult", 1, 12, map[string][2]int{"Child": {1, 11}, "Teen": {1, 12}}},
		// Rnd 9 is not worked in the smaller sizes; the last before it is, or the first after.
		{"lantern-hill-cap", "Adult", 1, 9, map[string][2]int{"Baby": {1, 7}, "Child": {1, 8}, "Adult Large": {1, 9}}},
		{"lantern-hill-cap", "Adult", 9, 20, map[string][2]int{"Baby": {8, 15}, "Child": {9, 18}, "Adult Large": {9, 22}}},
		// None of these is worked in Baby, so that the numbers stay.
		{"lantern-hill-cap", "Adult", 8, 9, map[string][2]int{"Baby": {8, 9}, "Child": {8, 8}}},
	} {
		j, err := load("../../patterns/examples/"+c.example+".yaml", nil)
		if err != nil {
			t.Fatal(err)
		}
		p := patterns.Picture{Draw: "round", From: c.from, To: c.to}
		if c.size != "" {
			p.Sizes = []string{c.size}
		}
		for i, size := range j.pattern.Sizes {
			want, ok := c.want[size]
			if from, to := j.roundsIn(p, i); ok && (from != want[0] || to != want[1]) {
				t.Errorf("%s, rounds %d to %d of %q: %d to %d in size %s, want %d to %d", c.example, c.from, c.to, c.size, from, to, size, want[0], want[1])
			}
		}
	}
}

// It is so in the pictures, in their descriptions and in the edition of one size.
func TestRoundsOfAnotherSizeAreDrawn(t *testing.T) {
	file := "../../patterns/examples/bulrush-hat.yaml"
	dir := t.TempDir()
	if status, _, errs := whorl(t, "", "draw", file, "--picture", "crown", "--size", "adult large", "--format", "svg", "-o", dir); status != statusDone {
		t.Fatal(errs)
	}
	svg := fileText(t, dir+"/bulrush-hat-crown.svg")
	if !strings.Contains(svg, "rounds 14 to 20") || strings.Contains(svg, `data-round="13"`) || !strings.Contains(svg, `data-round="20"`) {
		t.Error("the crown of size Adult Large is not its rounds 14 to 20")
	}
	names, _ := writeUp(t, file, "--size", "adult large", "--format", "md")
	if md := fileText(t, names[len(names)-1]); !strings.Contains(md, "Body, size Adult Large, rounds 14–20") {
		t.Error("the edition of size Adult Large does not have the crown of its own rounds")
	}
}

func fileText(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
