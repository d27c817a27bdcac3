package patterns

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Layout is how motifs that are alike are joined to one another, as the words say it.
type Layout struct {
	// Rows is how many motifs there are in each row; a strip is one row.
	Rows []int
	// Around is set for a ring of motifs about the one in their middle: "six hexagons around the
	// seventh". Rows is then empty.
	Around bool
	// Aside is set when it is told in the notes alone, which do not say of what part they speak.
	Aside bool
}

const (
	motifNoun = `(?:granny |joined |finished )?(?:squares?|hexagons?|hexies?|hexes|motifs?|blocks?|grann(?:y|ies)|tiles?|patch(?:es)?|medallions?)`
	some      = `(\d+) ?(?:` + motifNoun + ` ?)?(?:each )?`
)

var (
	layoutVerb  = regexp.MustCompile(`\b(join\w*|sew\w*|sewn|lay|laid|arrang\w*|assembl\w*|whip ?stitch\w*|seam\w*|layout|crochet\w* together|attach\w*|placed?|put|grid)\b`)
	layoutNoun  = regexp.MustCompile(`\b` + motifNoun + `\b`)
	rowsOfEach  = regexp.MustCompile(`\b(\d+) (?:equal |long |straight )?(?:rows|strips|lines|columns)(?: of| with| each with| each containing| containing| having| each having| each of|, each of|, each with| made of) (\d+)\b`)
	rowsListed  = regexp.MustCompile(`\b(?:rows|strips) of ((?:\d+(?:, (?:and )?| and )){1,20}\d+)\b`)
	inRowsOf    = regexp.MustCompile(`\b(?:rows|strips|lines) of (\d+)\b`)
	wideAndLong = regexp.MustCompile(`\b` + some + `(?:wide|across|in width|in each row|per row|columns)(?: by| x| and|,|;)*(?: and)? ` + some + `(?:long|high|deep|tall|down|in length|in height|rows)\b`)
	longAndWide = regexp.MustCompile(`\b` + some + `(?:long|high|deep|tall|down|rows)(?: by| x| and|,|;)*(?: and)? ` + some + `(?:wide|across|columns)\b`)
	numberBy    = regexp.MustCompile(`\b(\d+) ?(?:` + motifNoun + ` ?)?(?:x|×|by) ?(\d+)\b`)
	aLength     = regexp.MustCompile(`^(?:[.½¼¾⅓⅔/\d]|[ -]?(?:["″”'’%]|(?:cm|mm|m|in|inch|inches|ins|ft|sts?|stitches|rows|rnds|rounds)\b))`)
	labelled    = regexp.MustCompile(`(?i)^\s*(?:rnds?|rounds?|rows?|r) ?\d`)
	ofEachMotif = regexp.MustCompile(`(?i)\b(?:for|on|around|round|of|to) (?:each|every|one|a single|individual) ` + motifNoun + `\b|\b(?:each|every) ` + motifNoun + `$`)
	oneStrip    = regexp.MustCompile(`\b(?:(?:strip|row|line|string|chain|band) of (\d+)|(\d+) ` + motifNoun + `[^.;]*?\b(?:in|into|as|to form|to make) (?:a|1)(?: long| single| straight)? (?:strip|row|line|band)|(\d+) ` + motifNoun + `[^.;]*?\bend to end)\b`)
	allInStrip  = regexp.MustCompile(`\b(?:in|into|as|to form|to make) (?:a|1)(?: long| single| straight)? (?:strip|row|line|band)\b|\bend to end\b`)
	aroundOne   = regexp.MustCompile(`\b` + some + `[^.;]{0,30}?\b(?:around|round|about) (?:the |a )?(?:7th|1st|cent(?:re|er|ral)|middle|1|last|remaining|other)\b`)
	intoFlower  = regexp.MustCompile(`\b(?:into|in|as|like|to form|to make) a (?:flower|rosette|honeycomb|ring around)`)
	oneSquare   = regexp.MustCompile(`\b(?:into|to form|to make|as|in) (?:a|1)(?: single| large| larger| big| bigger)* (?:square|block)\b`)
	motifsMade  = regexp.MustCompile(`\b(?:make|work|you need|uses|need|made|all|the) (\d+)\b(?: ` + motifNoun + `)?|\b(\d+) ` + motifNoun + `\b|\((?:make )?(\d+)\)`)
	numberWord  = regexp.MustCompile(`\b(two|three|four|five|six|seven|seventh|eight|nine|ten|eleven|twelve|first|one|sixteen|twenty)\b`)
	betweenTwo  = regexp.MustCompile(`\. +|[\n;!?]+`)
)

var numbersSaid = map[string]string{"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "seventh": "7th", "eight": "8", "nine": "9",
	"ten": "10", "eleven": "11", "twelve": "12", "first": "1st", "sixteen": "16", "twenty": "20"}

// maxMotifs is the most motifs that are joined in one piece.
const maxMotifs = 2000

// Joined is how the motifs of part number on are joined before part number k is worked about
// them: as what k is worked from says it, its own words, those of the parts between, or the
// notes. It is false where none do.
func (p *Pattern) Joined(on, k int) (Layout, bool) {
	made := 0
	if ofEachMotif.MatchString(p.Parts[k].Name) || ofEachMotif.MatchString(p.Parts[k].From) {
		return Layout{}, false // it is worked round each of them
	}
	texts := []string{p.Parts[k].From}
	for i := on; i <= k; i++ {
		var lines []string
		for _, l := range p.Parts[i].Text.Lines {
			if !labelled.MatchString(l) {
				lines = append(lines, l)
			}
		}
		texts = append(texts, strings.Join(lines, " \n"))
	}
	for i, t := range append(texts, p.Notes) {
		aside := i == len(texts)
		sentences := sentencesOf(t)
		for _, s := range sentences {
			if n := madeOf(s); n > 0 && (made == 0 || n > made) {
				made = n
			}
		}
		for _, s := range sentences {
			if l, ok := layoutOf(s, made, i == 0); ok {
				l.Aside = aside
				return l, true
			}
		}
	}
	return Layout{}, false
}

// sentencesOf are the sentences of a text in small letters, with numbers in figures.
func sentencesOf(t string) []string {
	t = numberWord.ReplaceAllStringFunc(strings.ToLower(t), func(w string) string { return numbersSaid[w] })
	if !strings.Contains(t, " \n") {
		t = strings.Join(strings.Fields(t), " ") // the notes, whose lines are broken anywhere
	}
	l := betweenTwo.Split(t, -1)
	for i := range l {
		l[i] = strings.Join(strings.Fields(strings.Trim(l[i], ". ")), " ")
	}
	return l
}

// madeOf is how many motifs a sentence says are made, 0 for none.
func madeOf(s string) (n int) {
	if strings.Contains(s, ":") && !strings.Contains(s, "join") {
		return 0 // the words of a round
	}
	for _, m := range motifsMade.FindAllStringSubmatch(s, -1) {
		if !layoutNoun.MatchString(s) && !strings.Contains(s, "make") {
			continue
		}
		n = max(n, firstNumber(m[1:]))
	}
	return n
}

func firstNumber(l []string) int {
	for _, s := range l {
		if n, err := strconv.Atoi(s); err == nil {
			return n
		}
	}
	return 0
}

// layoutOf is the layout that a sentence tells; made is how many motifs there are, 0 where that
// has not been said. From is set for what a part is worked from, which need not say that they
// are joined.
func layoutOf(s string, made int, from bool) (Layout, bool) {
	shape := wideAndLong.MatchString(s) || longAndWide.MatchString(s)
	if noun := layoutNoun.MatchString(s); !from && !(noun && shape) && (!layoutVerb.MatchString(s) || !noun && !shape && !strings.Contains(s, "rows of") && !allInStrip.MatchString(s)) {
		return Layout{}, false
	}
	grid := func(rows, each int) (Layout, bool) {
		if rows < 1 || each < 1 || rows*each < 2 || rows*each > maxMotifs {
			return Layout{}, false
		}
		l := Layout{}
		for range rows {
			l.Rows = append(l.Rows, each)
		}
		return l, true
	}
	two := func(re *regexp.Regexp) (a, b int) {
		for _, m := range re.FindAllStringSubmatchIndex(s, -1) {
			if aLength.MatchString(s[m[1]:]) || m[0] > 0 && s[m[0]-1] == '.' {
				continue // "13 x 13 cm"
			}
			a, _ = strconv.Atoi(s[m[2]:m[3]])
			b, _ = strconv.Atoi(s[m[4]:m[5]])
			return a, b
		}
		return 0, 0
	}
	if m := rowsListed.FindStringSubmatch(s); m != nil {
		l, all := Layout{}, 0
		for _, w := range regexp.MustCompile(`\d+`).FindAllString(m[1], -1) {
			n, _ := strconv.Atoi(w)
			l.Rows, all = append(l.Rows, n), all+n
		}
		return l, all <= maxMotifs
	}
	if a, b := two(rowsOfEach); a > 0 {
		return grid(a, b)
	}
	if a, b := two(wideAndLong); a > 0 {
		return grid(b, a)
	}
	if a, b := two(longAndWide); a > 0 {
		return grid(a, b)
	}
	if m := aroundOne.FindStringSubmatch(s); m != nil && m[1] == "6" || made == 7 && intoFlower.MatchString(s) {
		return Layout{Around: true}, true
	}
	if a, b := two(numberBy); a > 0 {
		return grid(b, a)
	}
	if m := oneStrip.FindStringSubmatch(s); m != nil && !strings.Contains(s, "strips") {
		return grid(1, firstNumber(m[1:]))
	}
	if m := inRowsOf.FindStringSubmatch(s); m != nil {
		if n, _ := strconv.Atoi(m[1]); made > 0 && n > 0 && made%n == 0 {
			return grid(made/n, n)
		}
	}
	if allInStrip.MatchString(s) && made > 0 && !strings.Contains(s, "strips") {
		return grid(1, made)
	}
	if r := int(math.Sqrt(float64(made))); oneSquare.MatchString(s) && r > 1 && r*r == made {
		return grid(r, r)
	}
	return Layout{}, false
}
