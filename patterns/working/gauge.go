package working

import (
	"strings"

	"whorl/patterns"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// Swatch is one line of the pattern's gauge, with the stitch that was counted.
type Swatch struct {
	patterns.Gauge
	Kind stitch.Kind // zero when repeats of a stitch pattern were counted
	Into stitch.Into
}

// Swatches are the lines of the pattern's gauge. A line that counts only "sts"
// is read as the stitch that most of the pattern's rounds are made of.
func Swatches(p *patterns.Pattern) []Swatch {
	var names []string
	for _, d := range p.Stitches {
		names = append(names, d.Name)
	}
	v := notation.NewVocabulary(p.Terms, names)
	var l []Swatch
	for _, g := range p.Gauge {
		s := Swatch{Gauge: g}
		switch strings.ToLower(g.Of) {
		case "st", "sts", "stitch", "stitches":
			s.Kind = mainOf(p, v)
		default:
			s.Kind, s.Into, _ = v.Stitch(g.Of)
		}
		l = append(l, s)
	}
	return l
}

// mainOf is the kind that the words name most often.
func mainOf(p *patterns.Pattern, v *notation.Vocabulary) stitch.Kind {
	n := map[stitch.Kind]int{}
	best := stitch.Of(stitch.Single)
	for i := range p.Parts {
		text, _ := notation.Parse(lines(p.Parts[i].Text), v, p.Sizes)
		for _, r := range text.Rounds {
			count(r.Items, n)
		}
	}
	for _, b := range []stitch.Base{stitch.Single, stitch.Half, stitch.Double, stitch.Treble} {
		if k := stitch.Of(b); n[k] > n[best] {
			best = k
		}
	}
	return best
}

func count(items []notation.Item, n map[stitch.Kind]int) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			n[stitch.Of(it.What.Kind.Base)]++
		case *notation.Group:
			count(it.Items, n)
		case *notation.Repeat:
			count(it.Items, n)
		}
	}
}
