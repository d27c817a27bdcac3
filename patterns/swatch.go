package patterns

import (
	"regexp"
	"strings"
)

// swatch is the right side of a gauge: how wide and how high what was measured
// is in millimetres, which way when that is said, and the words that follow.
type swatch struct {
	wide, high float64
	way        Way
	rest       string
}

// ways are the words for the way that something is measured; the first that fits
// is meant.
var ways = []struct {
	words *regexp.Regexp
	way   Way
}{
	{regexp.MustCompile(`(?i)\b(in|in the|in joined|in continuous) rounds?\b|\bin (a )?spirals?\b`), Unsaid},
	{regexp.MustCompile(`(?i)\b(corner|point|tip) to (opposite )?(corner|point|tip)\b|\bdiagonal`), Corner},
	{regexp.MustCompile(`(?i)\bflat( side| edge)? to (opposite )?flat\b|\bside to (opposite )?side\b|\bedge to edge\b|\b(across|between) (the )?(flats|flat sides|parallel sides)\b`), Across},
	{regexp.MustCompile(`(?i)\b(along|on|per|for) (each|one|every|the|a) (straight )?(side|edge)\b|\b(each|per) (side|edge)\b|^(a|to a) side\b|\bsides\b|\bside length\b`), Side},
	{regexp.MustCompile(`(?i)\bacross\b|\bdiameter\b|\bwide\b|\bwidth\b`), Across},
	{regexp.MustCompile(`(?i)\bcircumference\b|\baround$|\bround$|\baround (the )?(edge|outside)\b`), Around},
	{regexp.MustCompile(`(?i)\b(long|tall|high|deep|length|height)\b`), High},
}

// wayOf is the way that words speak of.
func wayOf(words string) Way {
	for _, w := range ways {
		if w.words.MatchString(words) {
			return w.way
		}
	}
	return Unsaid
}

var otherWay = regexp.MustCompile(`(?i)^(?:wide|across|in width),? *(?:x|×|by|and|,)? *([0-9½¼¾.][^a-z]*(?:mm|cm|in|inch|inches|")) *(?:high|tall|long|deep|in height|in length)\b *`)

// readSwatch reads the right side of a gauge.
func readSwatch(text string) (swatch, *misread) {
	skip := 0
	if trimmed := strings.TrimLeft(text, " "); aboutWord.MatchString(trimmed) {
		skip = len([]rune(text)) - len([]rune(trimmed)) + len([]rune(aboutWord.FindString(trimmed)))
	}
	line := []rune(text)[skip:]
	upto, after := measureEnd(string(line))
	s := swatch{rest: strings.Trim(string(line[after:]), " ,;.")}
	bad := s.measure(line[:upto])
	if bad != nil {
		bad.at += skip
		return s, bad
	}
	if m := otherWay.FindStringSubmatchIndex(s.rest); m != nil {
		if l, err := ParseLength(s.rest[m[2]:m[3]]); err == nil && l.MM > 0 {
			s.high, s.rest = l.MM, s.rest[m[1]:]
			return s, nil
		}
	}
	s.way = wayOf(s.rest)
	return s, nil
}

// measureEnd finds where the lengths of the right side of a gauge end, and where
// the words behind them begin: "10 cm", "10 x 10 cm square" and "4 in (10 cm)"
// are lengths, with the in of "4 in" but not that of "10 cm in hdc".
func measureEnd(text string) (upto, after int) {
	ws := wordsOf(text)
	unitSeen := false
	for i, w := range ws {
		plain := strings.Trim(w.lower(), "()[],;.")
		next := i+1 < len(ws) && numeric(strings.TrimLeft(ws[i+1].text, "([")+" ")
		switch {
		case plain == "square" || plain == "sq" || plain == "squared":
			if i > 0 {
				return w.at, w.at + w.length
			}
		case unitSeen && hookSize(ws[i:]):
			return w.at, w.at
		case strings.ContainsAny(w.text, "0123456789½¼¾⅓⅔") || plain == "" && w.text != ".":
			unitSeen = unitSeen || strings.ContainsAny(w.lower(), "m\"″”") || strings.HasSuffix(plain, "in") || strings.HasSuffix(plain, "inch")
			continue
		case plain == "in" && i > 0:
			before := []rune(strings.TrimRight(ws[i-1].text, "."))
			if c := before[len(before)-1]; !digit(c) && vulgar[c] == 0 {
				return w.at, w.at
			}
			unitSeen = true
			continue
		case units[plain] != "" || units[w.text] != "":
			unitSeen = true
			continue
		case (plain == "x" || plain == "×" || plain == "by" || plain == "or" || plain == "/") && next:
			continue
		case !unitSeen:
			continue // a unit that is none
		}
		return w.at, w.at
	}
	return len([]rune(text)), len([]rune(text))
}

// hookSize reports whether words are the size of a hook: "5 mm hook".
func hookSize(ws []word) bool {
	for i := 1; i < min(3, len(ws)); i++ {
		if strings.HasPrefix(ws[i].lower(), "hook") {
			return numeric(strings.TrimLeft(ws[0].text, "([") + " ")
		}
	}
	return false
}

// measure reads the lengths.
func (s *swatch) measure(line []rune) (bad *misread) {
	text := string(line)
	if trimmed := strings.TrimRight(text, " ,;"); trimmed != "" {
		line = line[:len([]rune(trimmed))]
	}
	if n := len(line); n > 2 && line[n-1] == '.' {
		line = line[:n-1]
	}
	by, width := -1, 1
	for i, c := range line {
		if c == 'x' || c == 'X' || c == '×' {
			by = i
			break
		}
		if c == 'b' && i+2 < len(line) && line[i+1] == 'y' && line[i+2] == ' ' {
			by, width = i, 2
			break
		}
	}
	if by < 0 {
		s.wide, bad = swatchSide(line, 0, "")
		s.high = s.wide
		return bad
	}
	s.high, bad = swatchSide(line[by+width:], by+width, "")
	if bad != nil {
		return bad
	}
	last, _ := ParseLength(string(line[by+width:]))
	s.wide, bad = swatchSide(line[:by], 0, last.Unit)
	return bad
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
