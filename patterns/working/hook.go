package working

import (
	"strings"

	"whorl/patterns"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// hookWords are words that tell how the hook is moved.
var hookWords = []string{"insert hook", "insert in ", " yo", "yoh", "yarn over", "remove hook", "drop loop", "draw through", "pull through"}

// hookStitch is the stitch that a definition in the movements of the hook makes:
// one with a name of the trade is what its name says; any other is told by what
// it is made of. The legs are as many as the words have times or stitches. It
// It goes round a post when its name or its words say so. It is false for a
// definition in stitches, and for one that cannot be told.
func hookStitch(d *patterns.Definition, trade *notation.Vocabulary) (notation.What, bool) {
	words := " " + strings.ToLower(strings.Join(d.Words.Lines, " "))
	moved := false
	for _, h := range hookWords {
		moved = moved || strings.Contains(words, h)
	}
	if !moved {
		return notation.What{}, false
	}
	n := notation.Times(words)
	made := func(k stitch.Kind) (notation.What, bool) {
		return notation.What{Kind: k, Loop: postIn(words)}, true
	}
	if k, into, ok := trade.Stitch(d.Name); ok {
		if n > 1 && k.Shape != stitch.Plain && k.Shape != stitch.Together {
			k.Legs = n
		}
		if into != stitch.Top {
			return notation.What{Kind: k, Loop: notation.Loop{Set: true, Into: into}}, true
		}
		return made(k)
	}
	if what, ok := decreaseNamed(d.Name, words, trade); ok {
		return what, true
	}
	if k, legs := trade.Leading(words); k.Base >= stitch.Half && legs > 1 &&
		(strings.Contains(words, "remove hook") || strings.Contains(words, "drop loop")) {
		return made(stitch.Kind{Base: k.Base, Shape: stitch.Popcorn, Legs: legs})
	}
	switch {
	case n < 2:
		return notation.What{}, false
	case strings.Contains(words, "through 2 l") || strings.Contains(words, "through first 2 l"):
		return made(stitch.Kind{Base: stitch.Double, Shape: stitch.Cluster, Legs: n})
	}
	return made(stitch.Kind{Base: stitch.Half, Shape: stitch.Puff, Legs: n})
}

// decreaseNamed is what the name of a decrease means in the trade, whatever the hook does
// for it: "dec", "inv dec". A decrease in the front loops is an invisible one.
func decreaseNamed(name, words string, trade *notation.Vocabulary) (notation.What, bool) {
	said := notation.Plain(name)
	switch said {
	case "dec", "decrease", "inv dec", "invdec", "invisible dec", "invisible decrease":
	default:
		return notation.What{}, false
	}
	if said = "decrease"; strings.Contains(words, "invisible") || strings.Contains(words, "front loop") {
		said = "invisible decrease"
	}
	items, faults := notation.ParseWords([]notation.Line{{Text: said, Line: 1, Column: 1}}, trade, nil)
	if len(items) != 1 || len(faults) > 0 {
		return notation.What{}, false
	}
	s, ok := items[0].(*notation.Stitches)
	if !ok {
		return notation.What{}, false
	}
	return s.What, true
}

// postIn is the post that the movements of the hook go round: the front post
// when it is put in from the front, the back post when from the back.
func postIn(words string) notation.Loop {
	before, _, post := strings.Cut(words, "post")
	front, back := strings.Index(before, "front"), strings.Index(before, "back")
	switch {
	case !post || front < 0 && back < 0:
		return notation.Loop{}
	case back < 0 || front >= 0 && front < back:
		return notation.Loop{Set: true, Into: stitch.FrontPost}
	}
	return notation.Loop{Set: true, Into: stitch.BackPost}
}
