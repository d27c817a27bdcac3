package patterns

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Bounds of what a stitch or a repeat can measure, in millimetres: thread
// under a lens at one end, a wide repeat in rope at the other.
const (
	minStitch = 0.2
	maxStitch = 1000
)

const gaugeHelp = "Write it as 16 hdc and 11 rounds = 10 cm."

// ParseGauge reads one line of gauge, as it stands in a pattern file: "16 hdc
// and 11 rounds = 10 cm". The error says what is wrong in words. It has no
// place.
func ParseGauge(s string) (Gauge, error) {
	g, bad := readGauge(s)
	if bad != nil {
		return Gauge{}, bad
	}
	return g, nil
}

// readGauge reads a line of gauge:
//
//	gauge  = count [ "and" rows ] [ "in" what ] "=" length [ "x" length ] [ "in" what ]
//	count  = number what
//	rows   = number "rounds" | number "rows"
//
// "and" may be &, x, a comma or a slash, "=" may be to, over or per. A length
// may be given again in the other unit. Of two lengths the first goes across
// the stitches, the second along the rounds.
func readGauge(text string) (Gauge, *misread) {
	left, right, at := cutGauge(text)
	if at < 0 {
		return Gauge{}, &misread{0, utf8.RuneCountInString(text), "the gauge has no \"=\" between the stitches and the length", gaugeHelp}
	}
	g, bad := readCounts(left)
	if bad != nil {
		return Gauge{}, bad
	}
	over, high, name, bad := readSwatch(right)
	if bad != nil {
		bad.at += at
		return Gauge{}, bad
	}
	g.Over = over
	if g.Rows > 0 {
		g.Rows *= over / high
	}
	if name != "" {
		g.Of = stitchOf(g.Of, name)
	}
	return g, checkGauge(g, text, high)
}

// checkGauge reports stitches or rounds that cannot be so large or so small.
func checkGauge(g Gauge, text string, high float64) *misread {
	all := utf8.RuneCountInString(text)
	if w := g.Over / g.Count; w < minStitch || w > maxStitch {
		return &misread{0, all, fmt.Sprintf("this gauge makes a stitch %.3g mm wide", w), "Check the numbers and the unit."}
	}
	if g.Rows == 0 {
		return nil
	}
	if h := g.Over / g.Rows; h < minStitch || h > maxStitch {
		return &misread{0, all, fmt.Sprintf("this gauge makes a round %.3g mm high", h), "Check the numbers and the unit."}
	}
	return nil
}

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

// equals are the words that stand for the = of a gauge.
var equals = map[string]bool{"=": true, "to": true, "over": true, "per": true,
	"equals": true, "equal": true, "measure": true, "measures": true}

// cutGauge divides a gauge at its =; at is where the right side begins, -1
// where there is none.
func cutGauge(text string) (left, right string, at int) {
	line := []rune(text)
	for i, c := range line {
		if c == '=' {
			return string(line[:i]), string(line[i+1:]), i + 1
		}
	}
	for _, w := range wordsOf(text) {
		if equals[w.lower()] {
			at = w.at + w.length
			return string(line[:w.at]), string(line[at:]), at
		}
	}
	return text, "", -1
}

// readCounts reads the stitches and the rounds.
func readCounts(text string) (Gauge, *misread) {
	parts := splitCounts(text)
	count, what, bad := readCount(parts[0])
	if bad != nil {
		return Gauge{}, bad
	}
	if len(what) == 0 {
		return Gauge{}, &misread{parts[0].at, parts[0].length, "the gauge does not say which stitch was counted", gaugeHelp}
	}
	of, name := cutIn(what)
	if _, rounds := rowWord(of); rounds {
		return Gauge{}, &misread{parts[0].at, parts[0].length, "a gauge of rounds needs the stitches too", gaugeHelp}
	}
	g := Gauge{Count: count, Of: stitchOf(phrase(of), phrase(name))}
	if len(parts) == 1 {
		return g, nil
	}
	if len(parts) > 2 {
		return Gauge{}, &misread{parts[2].at, parts[2].length, "one stitch and one kind of rounds to a line of gauge", "Begin a new line for each stitch."}
	}
	rows, what, bad := readCount(parts[1])
	if bad != nil {
		return Gauge{}, bad
	}
	rest, ok := rowWord(what)
	if !ok {
		return Gauge{}, &misread{parts[1].at, parts[1].length, fmt.Sprintf("%s is not said to be rounds or rows", quote(parts[1].text)), gaugeHelp}
	}
	if of, name = cutIn(rest); len(name) > 0 {
		g.Of = stitchOf(g.Of, phrase(name))
	} else if len(of) > 0 && !strings.EqualFold(phrase(of), g.Of) {
		return Gauge{}, &misread{of[0].at, of[0].length, fmt.Sprintf("%s does not belong here", quote(phrase(of))), gaugeHelp}
	}
	g.Rows = rows
	return g, nil
}

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

// cutIn divides "sts in hdc" at the in or of.
func cutIn(ws []word) (of, name []word) {
	for i, w := range ws {
		if l := w.lower(); (l == "in" || l == "of") && i+1 < len(ws) {
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
		switch strings.Trim(w.lower(), ".") {
		case "rnd", "rnds", "round", "rounds", "row", "rows", "r":
			return append(ws[:i:i], ws[i+1:]...), true
		}
	}
	return ws, false
}

// readSwatch reads the right side of a gauge: how wide and how high what was
// measured is, and the stitch where it is named behind.
func readSwatch(text string) (wide, high float64, name string, bad *misread) {
	line := []rune(text)
	ws := wordsOf(text)
	upto := len(line)
	for i := 1; i+1 < len(ws); i++ {
		// The "in" of "10 cm in hdc" and of "4 in in hdc", not that of "4 in".
		before := []rune(ws[i-1].text)
		if ws[i].lower() == "in" && !digit(before[len(before)-1]) && vulgar[before[len(before)-1]] == 0 && !digit([]rune(ws[i+1].text)[0]) {
			name, upto = phrase(ws[i+1:]), ws[i].at
			ws = ws[:i]
			break
		}
	}
	if n := len(ws); n > 1 && (ws[n-1].lower() == "square" || ws[n-1].lower() == "sq") {
		upto = ws[n-1].at
	}
	by := -1
	for i, c := range line[:upto] {
		if c == 'x' || c == 'X' || c == '×' {
			by = i
			break
		}
	}
	if by < 0 {
		wide, bad = swatchSide(line[:upto], 0, "")
		return wide, wide, name, bad
	}
	high, bad = swatchSide(line[by+1:upto], by+1, "")
	if bad != nil {
		return 0, 0, "", bad
	}
	last, _ := ParseLength(string(line[by+1 : upto]))
	wide, bad = swatchSide(line[:by], 0, last.Unit)
	return wide, high, name, bad
}

// swatchSide reads one measurement of a swatch in millimetres. Unit is that of
// the other side, for "10 x 10 cm".
func swatchSide(text []rune, at int, unit string) (float64, *misread) {
	s := string(text)
	m, bad := readMeasures(s)
	if bad != nil && unit != "" {
		if with, bad2 := readMeasures(s + unit); bad2 == nil {
			m, bad = with, nil
		}
	}
	switch {
	case bad != nil:
	case len(m) != 1:
		bad = oneLength(len(m), strings.TrimSpace(s))
	case m[0].MM <= 0:
		bad = &misread{m[0].at, m[0].length, "the length of a gauge must be above 0", gaugeHelp}
	}
	if bad != nil {
		bad.at += at
		return 0, bad
	}
	return m[0].MM, nil
}
