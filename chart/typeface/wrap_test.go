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
