package patterns

import (
	"regexp"
	"strconv"
	"strings"
)

// The ways of naming the first rounds of a piece that were measured.
var (
	roundsNamed = regexp.MustCompile(`(?i)^(?:(.*?)[,:]? +)?(?:after |at end of |at the end of )?(?:the )?(rnds?|rounds?|rows?)\.? *([0-9]{1,4})(?: *(?:-|–|—|to|through|thru|and|&) *([0-9]{1,4}))?(?:,? +(?:of +)?(.*))?$`)
	roundsFirst = regexp.MustCompile(`(?i)^(?:(.*?)[,:]? +)?(?:after )?(?:the )?first ([0-9]{1,4}|two|three|four|five|six|seven|eight|nine|ten) (rnds?|rounds?|rows?)(?:,? +(?:of +)?(.*))?$`)
	roundsAfter = regexp.MustCompile(`(?i)^(?:(.*?)[,:]? +)?after ([0-9]{1,4}) (rnds?|rounds?|rows?)(?:,? +(.*))?$`)
)

// readRounds reads "rounds 1-6", "first 3 rows of motif", "after Rnd 4"; nil for
// anything else.
func readRounds(text string) *Sample {
	text = strings.TrimSpace(text)
	if m := roundsNamed.FindStringSubmatch(text); m != nil && !strings.ContainsAny(m[1], "0123456789") {
		after := strings.Contains(" "+strings.ToLower(text), " after ")
		s := &Sample{Name: sampleName(m[1], m[5]), Rows: rowsWord.MatchString(m[2])}
		s.From, _ = strconv.Atoi(m[3])
		s.To = s.From
		if m[4] != "" {
			s.To, _ = strconv.Atoi(m[4])
		} else if after {
			s.From = min(1, s.To)
		}
		return s
	}
	m := roundsFirst.FindStringSubmatch(text)
	if m == nil {
		m = roundsAfter.FindStringSubmatch(text)
	}
	if m == nil || strings.ContainsAny(m[1], "0123456789") {
		return nil
	}
	n := m[2]
	if f := numbers[strings.ToLower(n)]; f != "" {
		n = f
	}
	s := &Sample{Name: sampleName(m[1], m[4]), From: 1, Rows: rowsWord.MatchString(m[3])}
	s.To, _ = strconv.Atoi(n) // 0 is told by From
	return s
}

func sampleName(before, behind string) string {
	if strings.EqualFold(before, "after") {
		before = ""
	}
	return strings.TrimSpace(strings.Trim(before, " ,:") + " " + strings.Trim(behind, " ,:"))
}

var (
	nameBegin = regexp.MustCompile(`(?i)^(?:when |as |if )?(?:worked |measured |taken |made )?(?:in|over|of|on)(?: (?:the|a|an))? +`)
	nameEnd   = regexp.MustCompile(`(?i),| (?:in (?:the round|rounds|rows|a spiral)|with|using|after|before|when|worked|measured|blocked|unblocked|\(|held)\b.*| \(.*`)
	noStitch  = regexp.MustCompile(`(?i)^(rounds?|rows?|joined|continuous|spirals?|flat|each|one|size|[0-9]|.*\bhooks?\b|.*\byarn\b|.*\bcolou?rs?\b|.*\bdirections?\b|diameter|width|height|length|circumference|total|all\b)`)
)

// nameIn divides "over basketweave using 5 mm hook" into the stitch that is named
// and the remark; the name is "" where the words name none.
func nameIn(words string) (name, remark string) {
	m := nameBegin.FindStringIndex(words)
	if m == nil {
		return "", words
	}
	name = words[m[1]:]
	if end := nameEnd.FindStringIndex(name); end != nil {
		name, remark = name[:end[0]], strings.Trim(name[end[0]:], " ,")
	}
	name = strings.Trim(name, " .;")
	if name == "" || noStitch.MatchString(name) {
		return "", words
	}
	return name, remark
}
