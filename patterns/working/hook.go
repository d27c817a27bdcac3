package working

import (
	"strings"

	"whorl/patterns"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// hookWords are words that tell how the hook is moved.
var hookWords = []string{"insert hook", "insert in", " yo", "yoh", "yarn over", "remove hook", "drop loop", "draw through", "pull through"}

// hookStitch is the stitch that a definition in the movements of the hook makes:
// one with a name of the trade is what its name says; any other is told by what
// it is made of. The legs are as many as the words have times or stitches. It
// is false for a definition in stitches, and for one that cannot be told.
func hookStitch(d *patterns.Definition, trade *notation.Vocabulary) (stitch.Kind, bool) {
	words := " " + strings.ToLower(strings.Join(d.Words.Lines, " "))
	moved := false
	for _, h := range hookWords {
		moved = moved || strings.Contains(words, h)
	}
	if !moved {
		return stitch.Kind{}, false
	}
	n := notation.Times(words)
	if k, _, ok := trade.Stitch(d.Name); ok {
		if n > 1 && k.Shape != stitch.Plain && k.Shape != stitch.Together {
			k.Legs = n
		}
		return k, true
	}
	if k, legs := trade.Leading(words); k.Base >= stitch.Half && legs > 1 &&
		(strings.Contains(words, "remove hook") || strings.Contains(words, "drop loop")) {
		return stitch.Kind{Base: k.Base, Shape: stitch.Popcorn, Legs: legs}, true
	}
	switch {
	case n < 2:
		return stitch.Kind{}, false
	case strings.Contains(words, "through 2 l") || strings.Contains(words, "through first 2 l"):
		return stitch.Kind{Base: stitch.Double, Shape: stitch.Cluster, Legs: n}, true
	}
	return stitch.Kind{Base: stitch.Half, Shape: stitch.Puff, Legs: n}, true
}
