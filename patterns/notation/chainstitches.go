package notation

import (
	"regexp"
	"strconv"
	"strings"
)

// chainNoted is a chain along a row or a round, by its number or none, and what it lies in.
const chainNoted = `(?:(\d|one|two) ?(?:chs?|chains?)|(?:ch|chain) ?(\d|one|two)|(?:chs?|chains?))(?: (sps?|spaces?|loops?|lps?|sts?|stitch(?:es)?))?`

// chainsAreStitches are the ways that notes say that the chains along a row are among its stitches.
var chainsAreStitches = []*regexp.Regexp{
	regexp.MustCompile(`\b(each |every |all (?:the |other )?)?` + chainNoted + `( (?:made |worked )?(?:within|in|along|between|inside|across|of|on)\b[a-z, ]*?)?` +
		` (?:does |do |will |is |are |also |to be |should be |always )*(?:counts?|counted|treated|considered|regarded) as (?:a |one |1 |being )*(?:sts?|stitch(?:es)?)\b`),
	regexp.MustCompile(`\bcount(?:ing)? (each |every |all (?:the )?|the )` + chainNoted + `( (?:made |worked )?(?:within|in|along|between)\b[a-z, ]*?)? as (?:a |one |1 )*(?:sts?|stitch(?:es)?)\b`),
	regexp.MustCompile(`\b(?:stitch|st) counts? (?:given |stated |always |also )*(?:includes?|including|takes? in) (each |every |all (?:the )?|the |)` + chainNoted + `()`),
}

// otherChains are words for chains that are not those along a row, or for what does not hold.
var otherChains = regexp.MustCompile(`\b(not|never|don't|doesn't|neither|nor|beg|beginning|begins?|turning|start|starting|starts|first|foundation|initial|base|skipped|missed|unless|except)\b`)

// ChainsAreStitches reports whether running notes say that chains along a row or round are counted among
// its stitches, as in moss stitch: "Each 1ch within a row counts as a stitch", "Stitch counts include
// ch-1 sps". Chains is how many lie in such a space, each of which is one stitch; 0 for each chain by
// itself. A chain that begins a round is told of by ParseNotes.
func ChainsAreStitches(notes []string) (chains int, said bool) {
	words := Plain(strings.Join(notes, " "))
	for _, apart := range []string{" but ", " while ", " whereas "} {
		words = strings.ReplaceAll(words, apart, ". ")
	}
	for _, sentence := range strings.FieldsFunc(words, func(c rune) bool { return c == '.' || c == ';' || c == '!' || c == '(' || c == ')' }) {
		if otherChains.MatchString(sentence) {
			continue
		}
		for i, way := range chainsAreStitches {
			m := way.FindStringSubmatch(sentence)
			if m == nil {
				continue
			}
			each, number, space, where := m[1], m[2]+m[3], m[4], m[5]
			n, err := strconv.Atoi(number)
			if err != nil {
				n = numberWords[number]
			}
			inSpace := strings.HasPrefix(space, "sp") || strings.HasPrefix(space, "l")
			if n > 1 && !inSpace || i == 0 && each == "" && !inSpace && where == "" && number != "" {
				continue // that may be a chain that begins a round
			}
			if inSpace && n == 0 {
				n = 1
			}
			return n, true
		}
	}
	return 0, false
}
