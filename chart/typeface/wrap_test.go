package typeface

import (
	"strings"
	"testing"
)

// Lines keep the words in order and none is longer than the room, but for a word
// of one letter.
func TestWrap(t *testing.T) {
	for _, s := range []string{"", "one", "a hat and a scarf that share a stitch", "Supercalifragilistic words", "i i i"} {
		lines := Wrap(s, 4, false, 20)
		if got := strings.ReplaceAll(strings.Join(lines, ""), " ", ""); got != strings.ReplaceAll(s, " ", "") {
			t.Errorf("%q came back as %q", s, lines)
		}
		for _, l := range lines {
			if Width(l, 4, false, false) > 20 && len([]rune(l)) > 1 {
				t.Errorf("%q is longer than the room", l)
			}
		}
	}
}

// A text behind another has less room in its first line, which stays empty where
// no word fits; words with no-break spaces are not parted.
func TestWrapBehind(t *testing.T) {
	const s = "hdc in next 4\u00a0(5,\u00a06) sts; rep from * around"
	if got := WrapBehind(s, 4, false, 0, 60); strings.Join(got, "|") != strings.Join(Wrap(s, 4, false, 60), "|") {
		t.Errorf("behind nothing the lines are %q", got)
	}
	for _, taken := range []float64{10, 40, 55, 60} {
		lines := WrapBehind(s, 4, false, taken, 60)
		if got := strings.TrimSpace(strings.Join(lines, " ")); got != s {
			t.Errorf("%q came back as %q", s, lines)
		}
		for i, l := range lines {
			free := 60.0
			if i == 0 {
				free -= taken
			}
			if Width(l, 4, false, false) > free {
				t.Errorf("behind %g mm line %q is too long", taken, l)
			}
		}
	}
	if lines := WrapBehind("Wonderful", 4, false, 58, 60); len(lines) != 2 || lines[0] != "" {
		t.Errorf("a word that does not fit behind the text: %q", lines)
	}
}
