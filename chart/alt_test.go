package chart

import (
	"strings"
	"testing"

	"whorl/patterns/stitch"
)

func TestSpan(t *testing.T) {
	for _, c := range []struct {
		counts []int
		want   string
	}{
		{[]int{12, 24, 96}, "from 12 to 96 dc"},
		{[]int{96, 12}, "from 96 to 12 dc"},
		{[]int{7, 7}, "7 dc each"},
		{[]int{7}, "7 dc"},
		{[]int{60, 20, 60}, "between 20 and 60 dc"},
		{[]int{60, 20, 60, 10}, "beginning with 60 dc and ending with 10"},
	} {
		if got := span(c.counts, "dc"); got != c.want {
			t.Errorf("%v: %q, want %q", c.counts, got, c.want)
		}
	}
}

func TestOf(t *testing.T) {
	for _, c := range []struct{ part, title, size, want string }{
		{"Body", "Estuary Hat", "Adult", " of the Body, Estuary Hat, size Adult"},
		{"The hat", "", "", " of the hat"},
		{"Ear (make 2)", "Mouse", "", " of the Ear, Mouse"},
		{"", "Coaster", "", " of Coaster"},
		{"", "", "", ""},
	} {
		if got := Of(c.part, c.title, c.size); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// A chart is told in one sentence, and its description begins with that.
func TestAlt(t *testing.T) {
	for _, c := range []struct {
		s    sample
		want string
	}{
		{sample{"", flat(dc, 12, 8, true), Options{Title: "Coaster"}},
			"Round chart of the Circle, Coaster, size Adult: 8 rounds worked outwards, from 12 to 96 double crochet (US terms); right side shown, read counterclockwise."},
		{sample{"", flat(dc, 12, 8, true), Options{Title: "Coaster", From: 2, To: 3, LeftHanded: true, Terms: stitch.UK}},
			"Round chart of the Circle, Coaster, size Adult: rounds 2 to 3 of 8 worked outwards, from 24 to 36 treble crochet (UK terms); right side shown, read clockwise."},
	} {
		got := draw(t, c.s).Scene
		if got.Alt != c.want {
			t.Errorf("%q, want %q", got.Alt, c.want)
		}
		if !strings.HasPrefix(got.Desc, got.Alt+" ") {
			t.Errorf("%q does not begin with it", got.Desc)
		}
	}
}
