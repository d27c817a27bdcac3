package patterns

import (
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"
)

// clauseEnd is where one measurement of a line of gauge may end and another begin.
var clauseEnd = regexp.MustCompile(`(?i)[;,.] +(?:and +)?| and +`)

// clauses are the measurements of a line of gauge, each by itself: "one ripple = 8 cm
// wide, 6 rounds = 10 cm" has two.
func (p passage) clauses() []passage {
	for _, m := range clauseEnd.FindAllStringIndex(p.text, -1) {
		left, right := p.text[:m[0]], p.text[m[1]:]
		if !strings.ContainsRune(left, '=') || !strings.ContainsRune(right, '=') || !countBegin.MatchString(right) || measured.MatchString(right) {
			continue
		}
		first, bad := readGauge(left)
		if bad != nil || first.Over == 0 {
			continue
		}
		at := utf8.RuneCountInString(p.text[:m[1]])
		rest := passage{text: right, of: p.of}
		for _, s := range p.starts {
			rest.starts = append(rest.starts, s-at)
		}
		return append([]passage{{left, p.of, p.starts}}, rest.clauses()...)
	}
	return []passage{p}
}

// stsInside is how many stitches a repeat takes: "one ripple (14 sts)", "one ripple of
// 14 sts"; a bracket may name the rows as well.
var stsInside = regexp.MustCompile(`(?i)^ *[0-9.]+ +([^()\[\]0-9,]+?),? *(?:[(\[] *(?:of |over )?|of )([0-9]{1,3})[ -]+(?:sts?|stitches)(?: (?:wide|each|across))?(?:(?:,| and| x| by) ([0-9]{1,3}) (?:rows?|rnds?|rounds?))? *[)\]]?$`)

// stitchesOf reads a repeat whose stitches are given besides, nil for any other words.
// It is a gauge of these stitches.
func stitchesOf(text string) *Gauge {
	m := stsInside.FindStringSubmatch(text)
	if m == nil || stitchWord(m[1]) {
		return nil
	}
	times, _ := strconv.ParseFloat(strings.Fields(text)[0], 64)
	each, _ := strconv.ParseFloat(m[2], 64)
	rows, _ := strconv.ParseFloat(m[3], 64)
	if times*each <= 0 {
		return nil
	}
	return &Gauge{Count: times * each, Of: "sts", Counted: "sts", Rows: rows, Remark: "in " + m[1]}
}

// plainBeside is a plain stitch that stands beside each group of a stitch pattern: "one
// shell and one sc".
var plainBeside = regexp.MustCompile(`(?i)^( *([0-9.]+) +[^0-9,;&+]+?) *((?:and|plus|with|,|&|\+) +([a-z]+|[0-9.]+) +(\S+)) *$`)

// withoutPlain is the words for what was counted without the plain stitches that stand
// beside the groups, as many as there are of these, and those words. The width of a
// group reaches to the next in any case.
func withoutPlain(text string) (groups, plain string) {
	m := plainBeside.FindStringSubmatch(text)
	if m == nil || !stitchWord(m[5]) {
		return text, ""
	}
	if n := strings.ToLower(m[4]); n != m[2] && numbers[n] != m[2] && !(n == "one" && m[2] == "1") {
		return text, ""
	}
	words := strings.Fields(m[1])
	if stitchWord(words[len(words)-1]) {
		return text, ""
	}
	return m[1], m[3]
}
