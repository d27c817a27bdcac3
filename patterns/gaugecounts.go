package patterns

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// word is a word of a line with its place.
type word struct {
	text       string // as written
	at, length int    // in characters
}

// lower is the word for comparing.
func (w word) lower() string { return strings.ToLower(w.text) }

func wordsOf(text string) []word {
	var list []word
	start := -1
	line := []rune(text)
	for i := 0; i <= len(line); i++ {
		space := i == len(line) || unicode.IsSpace(line[i])
		if !space && start < 0 {
			start = i
		} else if space && start >= 0 {
			list = append(list, word{string(line[start:i]), start, i - start})
			start = -1
		}
	}
	return list
}

func phrase(ws []word) string {
	s := make([]string, len(ws))
	for i, w := range ws {
		s[i] = w.text
	}
	return strings.Join(s, " ")
}

// readLeft reads what was counted or measured; nil for words that are neither.
func readLeft(text string) (*Gauge, *misread) {
	text = strings.TrimRight(spareVerb.ReplaceAllString(text, ""), " :,")
	if s := readRounds(text); s != nil {
		return &Gauge{Sample: s}, nil
	}
	text = digits(text)
	if g := stitchesOf(text); g != nil {
		return g, nil
	}
	text, beside := withoutPlain(text)
	rows := 0.0
	if m := rowsInside.FindStringSubmatchIndex(text); m != nil {
		rows, _ = strconv.ParseFloat(text[m[2]:m[3]], 64)
		text = text[:m[0]] + strings.Repeat(" ", m[1]-m[0]) + text[m[1]:]
	}
	ws := wordsOf(text)
	switch {
	case leadingNumber(text) != "":
		if n := len(ws); ws[0].text == "1" && n > 1 && rows == 0 && pieces[strings.Trim(ws[n-1].lower(), ".,")] {
			return &Gauge{Sample: &Sample{Name: phrase(ws[1:])}}, nil
		}
	case len(ws) == 0 || stitchWord(ws[len(ws)-1].text):
		_, _, bad := readCount(word{text, 0, max(1, utf8.RuneCountInString(strings.TrimRight(text, " ")))})
		return nil, bad
	case strings.ContainsAny(text, "0123456789"):
		return nil, nil
	default:
		return &Gauge{Sample: &Sample{Name: phrase(ws)}}, nil
	}
	g, bad := readCounts(text)
	if bad != nil {
		return nil, bad
	}
	if rows > 0 {
		g.Rows = rows
	}
	g.remark(beside)
	return &g, nil
}

var (
	spareVerb  = regexp.MustCompile(`(?i)( should| will| must| ought to| comes?| about| approx\.?| approximately)+ *$`)
	rowsInside = regexp.MustCompile(`(?i)[(\[](?:[^()\[\]]* )?([0-9]{1,4}) (?:rows?|rnds?|rounds?)[)\]]`)
	oneWord    = regexp.MustCompile(`(?i)^ *(each|every|one|an?|two|three|four|five|six|seven|eight|nine|ten)\b`)
	numbers    = map[string]string{"two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10"}
)

// digits is a text with the number that it begins with in figures, as long as
// it was.
func digits(text string) string {
	m := oneWord.FindStringSubmatchIndex(text)
	if m == nil {
		return text
	}
	n := numbers[strings.ToLower(text[m[2]:m[3]])]
	if n == "" {
		n = "1"
	}
	return text[:m[2]] + n + strings.Repeat(" ", m[3]-m[2]-len(n)) + text[m[3]:]
}

// pieces are the words for what is measured whole, rather than counted.
var pieces = map[string]bool{"square": true, "motif": true, "hexagon": true, "hex": true, "pentagon": true, "octagon": true,
	"triangle": true, "circle": true, "medallion": true, "block": true, "tile": true, "coaster": true, "granny": true,
	"piece": true, "mandala": true, "flower": true, "doily": true, "potholder": true, "rosette": true, "disc": true,
	"disk": true, "crown": true, "patch": true, "mat": true}

// readCounts reads the stitches and the rounds.
func readCounts(text string) (Gauge, *misread) {
	var g Gauge
	if m := rowsTold.FindStringSubmatch(text); m != nil {
		text = m[1]
		g.remark(m[2])
	}
	parts := splitCounts(text)
	for i, part := range parts {
		if i == 2 {
			return Gauge{}, &misread{part.at, part.length, "one stitch and one kind of rounds to a line of gauge", "Begin a new line for each stitch."}
		}
		n, what, bad := readCount(part)
		if bad != nil {
			return Gauge{}, bad
		}
		what, remark := cutRemark(what)
		of, name := cutIn(what)
		rest, rounds := rowWord(of)
		switch {
		case len(what) == 0 && i == 0:
			return Gauge{}, &misread{part.at, part.length, "the gauge does not say which stitch was counted", gaugeHelp}
		case !rounds && g.Count > 0:
			return Gauge{}, &misread{part.at, part.length, fmt.Sprintf("%s is not said to be rounds or rows", quote(part.text)), gaugeHelp}
		case rounds && g.Rows > 0:
			return Gauge{}, &misread{part.at, part.length, "the gauge gives the rounds twice", gaugeHelp}
		case rounds:
			g.Rows, g.Row = n, rowsWord.MatchString(phrase(of))
			if i > 0 && len(name) == 0 && len(rest) > 0 && !strings.EqualFold(phrase(rest), g.Of) {
				return Gauge{}, &misread{rest[0].at, rest[0].length, fmt.Sprintf("%s does not belong here", quote(phrase(rest))), gaugeHelp}
			}
			if i == 0 && len(name) == 0 {
				name = rest
			}
		default:
			g.Count, g.Of, g.Counted = n, phrase(of), phrase(of)
		}
		if len(name) > 0 {
			in, more := nameIn("in " + phrase(name))
			if in != "" {
				g.name(in)
			}
			g.remark(more)
		}
		g.remark(phrase(remark))
	}
	return g, nil
}

// rowsTold are rows that a bracket tells more of: "10 rows (1 row dc, 1 row sc)".
var rowsTold = regexp.MustCompile(`(?i)^(.*[0-9] +(?:rows?|rnds?|rounds?)) *(\([^()]*[^()0-9 ][^()]*\)) *$`)

var rowsWord = regexp.MustCompile(`(?i)\brows?\b`)

// splitCounts divides "16 hdc and 11 rounds" at the "and" before a number.
func splitCounts(text string) []word {
	line := []rune(text)
	var parts []word
	start := 0
	cut := func(to, next int) {
		for start < to && unicode.IsSpace(line[start]) {
			start++
		}
		s := strings.TrimSpace(string(line[start:to]))
		parts = append(parts, word{s, start, max(1, utf8.RuneCountInString(s))})
		start = next
	}
	ws := wordsOf(text)
	for i := 1; i+1 < len(ws); i++ {
		if c := []rune(ws[i+1].text)[0]; !digit(c) && vulgar[c] == 0 && !minus(c) {
			continue
		}
		switch w := ws[i]; {
		case w.lower() == "and" || w.lower() == "x" || w.lower() == "by" || strings.Contains("×&,/+;", w.text):
			cut(w.at, ws[i+1].at)
		case strings.HasSuffix(w.text, ",") || strings.HasSuffix(w.text, ";"):
			cut(w.at+w.length-1, ws[i+1].at)
		}
	}
	cut(len(line), len(line))
	return parts
}

// readCount reads the number at the beginning of a part and gives the words
// behind it.
func readCount(part word) (float64, []word, *misread) {
	s := &lengthScanner{src: []rune(part.text)}
	s.skipSpace()
	c := s.peek(0)
	if !digit(c) && vulgar[c] == 0 && c != '.' && !minus(c) {
		return 0, nil, &misread{part.at, part.length, "the gauge does not begin with a number of stitches", gaugeHelp}
	}
	n, bad := s.token()
	if bad != nil {
		bad.at += part.at
		return 0, nil, bad
	}
	if n.value <= 0 || n.value > 10_000 {
		return 0, nil, &misread{part.at, max(1, s.at), fmt.Sprintf("%s cannot be a number of stitches or rounds", quote(string(s.src[:s.at]))), gaugeHelp}
	}
	what := wordsOf(string(s.src[s.at:]))
	if len(what) > 0 && what[0].at == 0 && strings.ContainsAny(what[0].text, "0123456789.") && unicode.IsLetter(s.src[s.at]) {
		return 0, nil, &misread{part.at, s.at + what[0].length, fmt.Sprintf("%s is not a number", quote(string(s.src[:s.at])+what[0].text)), gaugeHelp}
	}
	for i := range what {
		what[i].at += part.at + s.at
	}
	return n.value, what, nil
}

// remarkBegins are the words that begin a remark behind what was counted.
var remarkBegins = map[string]bool{"with": true, "using": true, "on": true, "blocked": true, "unblocked": true,
	"after": true, "before": true, "when": true, "worked": true, "(blocked)": true, "(unblocked)": true}

// cutRemark divides "rows with a 5 mm hook" before the remark.
func cutRemark(ws []word) (what, remark []word) {
	for i, w := range ws {
		if i > 0 && remarkBegins[strings.Trim(w.lower(), ",")] && !(i+1 < len(ws) && (w.lower() == "worked" && ws[i+1].lower() == "in")) {
			return ws[:i], ws[i:]
		}
	}
	return ws, nil
}

// cutIn divides "sts in hdc" at the in, of or over.
func cutIn(ws []word) (of, name []word) {
	for i, w := range ws {
		if w.lower() == "worked" && i+1 < len(ws) && ws[i+1].lower() == "in" {
			continue
		}
		if l := w.lower(); (l == "in" || l == "of" || l == "over") && i+1 < len(ws) {
			if i > 0 && ws[i-1].lower() == "worked" {
				return ws[:i-1], ws[i+1:]
			}
			return ws[:i], ws[i+1:]
		}
	}
	return ws, nil
}

// stitchOf is what was counted, where the stitch is named besides: "sts" in
// "hdc" are hdc, "repeats" in "fan pattern" are repeats in fan pattern.
func stitchOf(of, in string) string {
	switch strings.ToLower(of) {
	case "st", "sts", "stitch", "stitches", "", strings.ToLower(in):
		if in != "" {
			return in
		}
		return of
	}
	if in == "" {
		return of
	}
	return of + " in " + in
}

// rowWord takes the word for rounds or rows out of words.
func rowWord(ws []word) (rest []word, ok bool) {
	for i, w := range ws {
		switch strings.Trim(w.lower(), ".,") {
		case "rnd", "rnds", "round", "rounds", "row", "rows", "r":
			return append(ws[:i:i], ws[i+1:]...), true
		}
	}
	return ws, false
}
