package notation

import (
	"regexp"
	"sort"
	"strings"

	"whorl/patterns/stitch"
)

// inTerms finds the names of stitches in advice, and says what they are in the
// other terms.
type inTerms struct {
	find *regexp.Regexp
	say  map[string]string
}

var advice = map[stitch.Terms]inTerms{stitch.US: adviceFrom(stitch.US, stitch.UK), stitch.UK: adviceFrom(stitch.UK, stitch.US)}

func adviceFrom(from, to stitch.Terms) inTerms {
	say := map[string]string{}
	for b := stitch.Slip; b <= stitch.TripleTreble; b++ {
		say[b.Name(from)] = b.Name(to)
		say[b.LongName(from)] = b.LongName(to)
	}
	names := make([]string, 0, len(say))
	for name := range say {
		names = append(names, regexp.QuoteMeta(name))
	}
	// The longest first, so that half double crochet is not read as double
	// crochet.
	sort.Slice(names, func(i, j int) bool {
		if len(names[i]) != len(names[j]) {
			return len(names[i]) > len(names[j])
		}
		return names[i] < names[j]
	})
	return inTerms{regexp.MustCompile(`(?i)\b(fp|bp)?(` + strings.Join(names, "|") + `)(s|[0-9]+tog)?\b`), say}
}

// Advice is advice as it was written, with the names of stitches in the terms
// that are printed.
func (s Style) Advice(text string) string {
	if s.Terms == s.From {
		return text
	}
	a := advice[s.From]
	return a.find.ReplaceAllStringFunc(text, func(name string) string {
		m := a.find.FindStringSubmatch(name)
		said := a.say[strings.ToLower(m[2])]
		if said != "ss" || m[3] != "s" {
			said += m[3] // ss is its own plural
		}
		said = m[1] + said
		if m[1] == "" && capital(name) {
			return capitalise(said)
		}
		return said
	})
}
