package patterns

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// specialHeading is a line of its own above what a part says of its stitches: "SPECIAL STITCH".
var specialHeading = regexp.MustCompile(`(?i)^(((special|unusual|pattern|new) )+(stitch(es)?|sts?|abbreviations?)( used| explained)?|stitch (guide|glossary|key)) ?[:.]?$`)

// numbered is the beginning of a line that is worked, whatever heading it stands under.
var numbered = regexp.MustCompile(`(?i)^(rows?|rnds?|rounds?|foundation|set-?up|next|base)\b`)

// headed takes the definitions under such a heading out of the words of a part, up to the first line
// that is none: "Puff stitch (puff): [yo, insert hook in st, …". A name that is none of the trade is
// taken only where more of the words can be read with it.
func (r *reader) headed(p *Pattern, t *Text, trade *notation.Vocabulary) {
	for j := 0; j < len(t.Lines); j++ {
		if !specialHeading.MatchString(t.Lines[j]) {
			continue
		}
		whole := slices.Clone(t.Lines)
		var sure, maybe []Definition
		i := j + 1
		for i < len(t.Lines) {
			if t.Lines[i] == "" {
				i++
				continue
			}
			end := t.sentenceFrom(i)
			one := Text{Lines: t.Lines[i:end], First: t.First + i, Columns: t.Columns[i:end]}
			list := r.defined(one, slices.Concat(p.Stitches, sure, maybe), true)
			if numbered.MatchString(t.Lines[i]) || !allDefined(one.Lines, list) {
				break
			}
			for _, d := range list {
				if k, _, ok := trade.Stitch(d.Name); ok && k.Shape != stitch.Plain {
					sure = append(sure, d)
				} else {
					maybe = append(maybe, d)
				}
			}
			for ; i < end; i++ {
				whole[i] = ""
			}
		}
		if len(sure)+len(maybe) == 0 {
			continue
		}
		whole[j] = ""
		before := t.Lines
		t.Lines = whole
		list := append(sure, r.helpful(sure, maybe)...)
		if len(list) == 0 {
			t.Lines = before
		}
		p.Stitches = append(p.Stitches, list...)
	}
}

// sentenceFrom is behind the last of the lines that the sentence of line i is broken over. A line
// that goes on begins with a small letter or a bracket.
func (t *Text) sentenceFrom(i int) int {
	for i++; i < len(t.Lines) && t.Lines[i] != "" && !strings.HasSuffix(t.Lines[i-1], "."); i++ {
		if c := []rune(t.Lines[i])[0]; !unicode.IsLower(c) && c != '(' && c != '[' {
			break
		}
	}
	return i
}

// allDefined reports whether lines say nothing but the definitions.
func allDefined(lines []string, list []Definition) bool {
	rest := strings.Join(lines, "\n")
	for _, d := range list {
		rest = strings.Replace(rest, d.Name, "", 1)
		for _, words := range d.Words.Lines {
			rest = strings.Replace(rest, words, "", 1)
		}
	}
	return len(list) > 0 && !strings.ContainsFunc(rest, func(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) })
}
