package notation

import (
	"regexp"
	"sort"
	"strings"

	"whorl/patterns/stitch"
)

// inFull are the abbreviations of the trade that are no stitches (Craft Yarn
// Council, Standards & Guidelines for Crochet and Knitting).
var inFull = map[string]string{
	"st": "stitch", "sts": "stitches", "ch": "chain", "chs": "chains", "sp": "space", "sps": "spaces",
	"rnd": "round", "rnds": "rounds", "rep": "repeat", "sk": "skip", "beg": "beginning", "rem": "remaining",
	"cl": "cluster", "cls": "clusters", "inc": "increase", "dec": "decrease", "inv": "invisible", "rev": "reverse",
	"rs": "right side", "ws": "wrong side", "blo": "back loop only", "flo": "front loop only", "yo": "yarn over",
	"yoh": "yarn over hook", "prev": "previous", "approx": "approximately",
}

// spelt are words, with what is joined to them by hyphens.
var spelt = regexp.MustCompile(`[0-9]*[A-Za-z]+(-[0-9A-Za-z]+)*`)

// Spell writes the abbreviations in words out when the style is long. The
// designer's own names are left as she writes them.
func (s Style) Spell(text string) string {
	if !s.Long {
		return text
	}
	var names []string
	for _, own := range s.Names {
		names = append(names, regexp.QuoteMeta(own), regexp.QuoteMeta(Plural(own)))
	}
	if len(names) == 0 {
		return s.spell(text)
	}
	// The longest first, so that beg cl is not read as cl.
	sort.Slice(names, func(i, j int) bool {
		if len(names[i]) != len(names[j]) {
			return len(names[i]) > len(names[j])
		}
		return names[i] < names[j]
	})
	var b strings.Builder
	end := 0
	for _, at := range regexp.MustCompile(`(?i)\b(`+strings.Join(names, "|")+`)\b`).FindAllStringIndex(text, -1) {
		b.WriteString(s.spell(text[end:at[0]]) + text[at[0]:at[1]])
		end = at[1]
	}
	return b.String() + s.spell(text[end:])
}

func (s Style) spell(text string) string {
	return spelt.ReplaceAllStringFunc(text, func(word string) string {
		head, tail, hyphen := strings.Cut(word, "-")
		full, ok := inFull[strings.ToLower(head)]
		if !ok {
			return word
		}
		if strings.ToUpper(head) != head {
			full = asCapital(head, full)
		}
		if hyphen {
			full += "-" + tail
		}
		return full
	})
}

// Abbreviation is an abbreviation and what it stands for.
type Abbreviation struct{ Short, Long string }

// Abbreviations are the abbreviations that stand in words of the style's
// terms, each once, in the order they come.
func (s Style) Abbreviations(text string) []Abbreviation {
	var l []Abbreviation
	seen := map[string]bool{}
	add := func(short, long string) {
		if !seen[short] {
			seen[short] = true
			l = append(l, Abbreviation{short, long})
		}
	}
	own := map[string]bool{}
	for name := range s.Names {
		own[name] = true
	}
	trade := NewVocabulary(s.Terms, nil)
	slip := stitch.Slip.Name(s.Terms)
	for _, line := range strings.Split(text, "\n") {
		toks, _ := scan([]Line{{Text: line, Line: 1, Column: 1}})
		for i := range toks {
			t := &toks[i]
			if t.kind != tWord || own[t.text] {
				continue
			}
			if slip == "sl st" && t.is("sl") && i+1 < len(toks) && toks[i+1].is("st") || t.is(slip) {
				add(slip, stitch.Slip.LongName(s.Terms))
				continue
			}
			switch full := inFull[t.text]; {
			case full == "":
				if k, in, ok := trade.Stitch(t.raw); ok && k.Base > stitch.Slip && strings.EqualFold(k.NameInto(in, s.Terms), t.raw) {
					add(k.NameInto(in, s.Terms), k.LongNameInto(in, s.Terms))
				}
			case t.is("st", "sts", "ch", "chs", "sp", "sps", "rnd", "rnds", "cl", "cls"):
				one := strings.TrimSuffix(t.text, "s")
				add(one+"(s)", plurals[one])
			case t.is("rs", "ws", "blo", "flo"):
				if t.raw == strings.ToUpper(t.raw) {
					add(t.raw, full)
				}
			default:
				add(t.text, full)
			}
		}
	}
	return l
}

var plurals = map[string]string{"st": "stitch(es)", "ch": "chain(s)", "sp": "space(s)", "rnd": "round(s)", "cl": "cluster(s)"}
