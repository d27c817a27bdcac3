package patterns

import (
	"regexp"
	"strings"

	"whorl/patterns/fault"
)

// limbNouns are what pieces are called that are made alike and joined into one.
const limbNouns = `leg|arm|foot|paw|fluke|ear|horn|wing|toe|hump|tube|tentacle|antler|fin|claw|lobe`

var (
	// limbNamed is one of several such pieces: "first leg", "2nd fluke", "leg 1".
	limbNamed = regexp.MustCompile(`(?i)\b(?:(first|second|1st|2nd|other|left|right|this|same) (` + limbNouns + `)s?|(` + limbNouns + `) (1|2|one|two|a|b))\b`)
	// roundLine is a line with the label of a round.
	roundLine = regexp.MustCompile(`(?i)^\s*(?:(?:rnds?|rounds?|rds?|r) ?\.? ?\d|\d+(?:st|nd|rd|th) (?:rnds?|rounds?)\b|next (?:rnd|round)\b)`)
	// goesAcross is what is done from one piece to the next before a round goes over both.
	goesAcross = regexp.MustCompile(`(?i)\b(ch|chain) ?\d|\d ?ch\b|\bjoin`)
)

// limbs are the pieces that a part in rounds begins with and the rest that goes on from
// them all: two legs, told once, and the body that joins them. Most parts are one.
func (p Part) limbs() []Part {
	at, noun := -1, ""
	for i, line := range p.Text.Lines {
		if roundLine.MatchString(line) {
			if noun = joinsLimbs(line); noun != "" {
				at = i
				break
			}
		}
	}
	told := 0 // rounds of the pieces
	for i := 0; i < at; i++ {
		if roundLine.MatchString(p.Text.Lines[i]) {
			told++
		}
	}
	if told == 0 {
		return []Part{p}
	}
	for at > 0 && !roundLine.MatchString(p.Text.Lines[at-1]) && (heading(p.Text.Lines[at-1]) || goesAcross.MatchString(p.Text.Lines[at-1])) {
		at--
	}
	// Each piece that has a heading is one of its own.
	var heads []int
	for i, line := range p.Text.Lines[:at] {
		if m := pieceHead.FindStringSubmatch(line); m != nil && strings.EqualFold(strings.TrimSuffix(m[2], "s"), noun) {
			heads = append(heads, i)
		}
	}
	var list []Part
	if len(heads) < 2 {
		list = append(list, p.cut(0, at, capital(noun)+" (make 2)"))
	} else {
		for k, from := range heads {
			to := at
			if k+1 < len(heads) {
				to = heads[k+1]
			}
			m := pieceHead.FindStringSubmatch(p.Text.Lines[from])
			if k == 0 {
				from = 0
			}
			one := p.cut(from, to, capital(m[1]+" "+m[2]))
			one.Piece = m[1] + " " + m[2]
			list = append(list, one)
		}
	}
	body := p.cut(at, len(p.Text.Lines), p.Name)
	if body.Name == "" {
		body.Name = "Body"
	}
	body.From = ""
	return append(list, body)
}

// cut is a part of some of the lines of another.
func (p Part) cut(from, to int, name string) Part {
	one := p
	one.Name = name
	if from > 0 {
		one.From = ""
		one.Pos = fault.Pos{Line: p.Text.First + from, Column: p.Text.Columns[from]}
	}
	one.Text = Text{Lines: p.Text.Lines[from:to], First: p.Text.First + from, Columns: p.Text.Columns[from:to]}.trimmed()
	return one
}

// joinsLimbs is what the pieces are called that a round goes over one after the other, ""
// for none.
func joinsLimbs(line string) string {
	noun, leads := "", map[string]bool{}
	for _, m := range limbNamed.FindAllStringSubmatch(line, -1) {
		lead, n := strings.ToLower(m[1]+m[4]), strings.ToLower(m[2]+m[3])
		switch lead {
		case "1st", "1", "one", "a":
			lead = "first"
		case "2nd", "2", "two", "b":
			lead = "second"
		}
		if noun == "" {
			noun = n
		}
		leads[lead] = leads[lead] || n == noun
	}
	if len(leads) < 2 {
		return ""
	}
	return noun
}

// heading reports whether a line is a few words without an instruction: "Body".
func heading(line string) bool {
	words := strings.Fields(line)
	return len(words) <= 4 && !strings.ContainsAny(strings.TrimSuffix(strings.TrimSpace(line), ":"), ".,;:0123456789")
}

func capital(s string) string { return strings.ToUpper(s[:1]) + strings.ToLower(s[1:]) }
