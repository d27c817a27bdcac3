package patterns

import (
	"regexp"
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// equation is "Shell = (2 dc, ch 2, 2 dc) in next sp." in running notes, and
// "Shell (sh): 5 dc in same st." at the beginning of a line of them.
var equation = regexp.MustCompile(`(^|[.;] +|\)\s+|[Ss]titch(?:es)?: *|[Aa]bbreviations?: *)([A-Za-z][A-Za-z0-9-]*(?: [A-Za-z0-9-]+)?(?: \([A-Za-z0-9 -]+\))?) *(=|:) *([^=]+?)([.;] |[.;]?$)`)

// anotherName is the beginning of a definition behind a semicolon: "inc = 2 sc in same
// st; dec = sc2tog".
var anotherName = regexp.MustCompile(`^ *[A-Za-z][A-Za-z0-9-]*(?: [A-Za-z0-9-]+)?(?: \([A-Za-z0-9 -]+\))? *[=:]`)

// defined are the special stitches that notes define on the way, as designers do
// who have no list of them. What is no definition in stitches is left alone: notes
// are prose. The stitches of the list go before.
func (r *reader) defined(t Text, listed []Definition) []Definition {
	known := map[string]bool{}
	for _, d := range listed {
		known[notation.Plain(d.Name)] = true
	}
	trade := notation.NewVocabulary(r.p.Terms, nil)
	var list []Definition
	for i, line := range t.Lines {
		for from := 0; from < len(line); {
			m := equation.FindStringSubmatchIndex(line[from:])
			if m == nil {
				break
			}
			for end := from + m[9]; end < len(line) && line[end] == ';' && !anotherName.MatchString(line[end+1:]); end = from + m[9] {
				// "skip 3 sts, …; going back, …" goes on
				next := strings.IndexAny(line[end+1:], ";.")
				if next < 0 {
					next = len(line) - end - 1
				}
				m[9] += 1 + next
			}
			name, sign, words := line[from+m[4]:from+m[5]], line[from+m[6]:from+m[7]], line[from+m[8]:from+m[9]]
			column := func(at int) int { return t.Columns[i] + len([]rune(line[:from+at])) }
			d := Definition{Pos: fault.Pos{Line: t.First + i, Column: column(m[4])}, Name: name,
				Words: Text{Lines: []string{words}, First: t.First + i, Columns: []int{column(m[8])}}}
			if sign == ":" && from+m[4] > 0 && !strings.HasSuffix(strings.TrimSpace(line[:from+m[4]]), ":") {
				from += m[7] // a colon in the middle of a line is no definition
				continue
			}
			from += m[9]
			if n := notation.Plain(name); !known[n] && len(list) < maxStitches && r.makes(d, trade) {
				known[n] = true
				list = append(list, d)
			}
		}
	}
	return list
}

// makes reports whether words that notes equate with a name say how it is made:
// in stitches, with a place, a group or several legs. A glossary ("hdc = half
// double crochet") does not.
func (r *reader) makes(d Definition, trade *notation.Vocabulary) bool {
	if k, _, ok := trade.Stitch(d.Name); ok && k.Shape == stitch.Plain {
		return false
	}
	items, faults := notation.ParseWords([]notation.Line{{Text: d.Words.Lines[0], Line: d.Words.First, Column: d.Words.Columns[0]}}, trade, r.p.Sizes)
	if len(faults) > 0 || len(items) == 0 {
		return false
	}
	made := false
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if it.What.Shaping != 0 || it.What.Name != "" {
				return false
			}
			made = made || len(it.Places) > 0 || it.What.Kind.Shape != stitch.Plain || len(items) > 1
		case *notation.Group:
			made = true
		case *notation.Chain, *notation.Skip, *notation.Note, *notation.Repeat:
		default:
			return false
		}
	}
	return made
}
