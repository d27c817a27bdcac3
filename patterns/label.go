package patterns

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// label is the kind of word that a line of a pattern is labelled with.
type label uint8

const (
	noLabel label = iota
	roundLabel
	rowLabel
)

// labelOf is the label of a line: "Rnd 5", "Rnds 2-4 (5, 6):", "Next Row:",
// "Foundation Row:". Words further on, and words that only speak of rounds
// ("Work 5 rounds even."), are no labels.
func labelOf(line string) label {
	head, _, colon := strings.Cut(line, ":")
	words := strings.FieldsFunc(strings.ToLower(head), func(c rune) bool {
		return !unicode.IsLetter(c) && !unicode.IsDigit(c)
	})
	for i, w := range words {
		number := strings.TrimLeft(w, "rnduosw")
		word := strings.TrimSuffix(w, number)
		if number == "" && i+1 < len(words) {
			number = words[i+1]
		}
		numbered := number != "" && number[0] >= '0' && number[0] <= '9'
		if i == 0 && !colon && !numbered || i > 0 && !colon || i == 3 {
			return noLabel
		}
		switch word {
		case "rnd", "rnds", "round", "rounds", "rd", "rds":
			return roundLabel
		case "row", "rows":
			return rowLabel
		}
	}
	return noLabel
}

// track is the label of a line that rows or rounds are told behind; "R 3" may be of both.
type track struct {
	rows, rounds bool
	number       string // of the first, where it is told beside the whole word
}

var trackLabel = regexp.MustCompile(`(?i)^(?:(rows?|rnds?|rounds?|rds?|r)[ .]*#?(\d+)|(?:(\d+)(?:st|nd|rd|th)|first|next|foundation|set-up) (rows?|rnds?|rounds?|rds?)\b)`)

func trackOf(line string) (t track) {
	m := trackLabel.FindStringSubmatch(line)
	if m == nil {
		return t
	}
	word := strings.ToLower(m[1] + m[4])
	t.rows, t.rounds = word == "r" || strings.HasPrefix(word, "row"), !strings.HasPrefix(word, "row")
	if word != "r" {
		t.number = m[2] + m[3]
	}
	return t
}

// is reports whether the line has a label at all.
func (t track) is() bool { return t.rows || t.rounds }

// limbNouns are what pieces are called that are made alike and joined into one.
const limbNouns = `leg|arm|foot|paw|fluke|ear|horn|wing|toe|hump|tube|tentacle|antler|fin|claw|lobe`

var (
	// titleLine is a line that can be a title: a few words, no full stop.
	titleLine = regexp.MustCompile(`^[A-Z][\pL'’&/ -]*[\pL](?: *[(\[][^)\]]*[)\]])? *:?$`)
	// titledWork is a title with the work behind it: "Thumb: Join yarn in first skipped st."
	titledWork = regexp.MustCompile(`^([A-Z][\pL'’&/ -]*[\pL])(?: *[(\[][^)\]]*[)\]])?: +(?i:(?:with [^.:]*, )?(?:re-?)?(?:join|attach))\b`)
	// noTitle begins a line of work that looks like a title.
	noTitle = regexp.MustCompile(`(?i)^(fasten|finish off|turn|rotate|join|sew|seam|sl |slip|ss |repeat|rep |cut|weave|fold|continue|do not|don't|change|work|with|using|as |leave|break|note|ch |chain|make)`)
	// beginsWork begins a line that work begins with, or goes on along an edge.
	beginsWork   = regexp.MustCompile(`(?i)^(ch|chain|make|magic|with|using|begin|start|rejoin|attach|join (new |the )?(yarn|[A-Z]\b|MC|CC)|work|working|now|rotate|turn|pick|\d)`)
	makesSeveral = regexp.MustCompile(`(?i)\(make [a-z0-9]+\)$`)

	// pieceHead is the heading of one of several like pieces: "Second flap:", "Left strap".
	pieceHead = regexp.MustCompile(`(?i)^(first|second|third|1st|2nd|3rd|left|right|other)[ -]((?:ear[ -]?)?[a-z]+)(?: *[:.] *|$)`)
	// limbNamed is one of several pieces to be joined: "first leg", "2nd fluke", "leg 1".
	limbNamed = regexp.MustCompile(`(?i)\b(?:(first|second|1st|2nd|other|left|right|this|same) (` + limbNouns + `)s?|(` + limbNouns + `) (1|2|one|two|a|b))\b`)
	// goesAcross is what is done from one piece to the next before a round goes over both.
	goesAcross = regexp.MustCompile(`(?i)\b(ch|chain) ?\d|\d ?ch\b|\bjoin`)

	// roundOne is the label of a first round, borderHead the heading of what goes round a
	// piece, borderLine one with the work behind it, and roundIt are words that tell of its
	// edge.
	roundOne   = regexp.MustCompile(`(?i)^(?:(?:edging|border) )?(?:round|rnd|rd)\.? *1\b|^(?:1st|first) (?:round|rnd|rd)\b`)
	borderHead = regexp.MustCompile(`(?i)^((?:[a-z]+ )?(?:border|edging|edge|trim|surround))\b[^.]*[:.]?$`)
	borderLine = regexp.MustCompile(`(?i)^(?:(?:do not|don[’']t) (?:fasten|finish|fo|break|cut|turn)\b[^.:]*\. *)?(border|edging|surround|trim): .*(?:\bcorner|evenly (?:all )?a?round\b|(?:down|up|along|across) (?:the |each |this |one |first |second |other |left |right |long |short )*(?:sides?|side edges?|row[ -]ends)\b)`)
	roundIt    = regexp.MustCompile(`(?i)corner|last st|last dc|last sc|foundation|starting ch|four (?:sides|edges)|all (?:sides|edges|the way)|side edge|row[ -]ends|left edge|right edge`)
	// otherEdge is the starting chain of a piece in rows, which only a round that goes about the
	// piece meets again.
	otherEdge = regexp.MustCompile(`(?i)\b(?:along|(?:opposite|other|under|bottom|free) ?(?:side|edge|loops?) of|underside of|(?:into|in|across|on) (?:the |each |every |next |first |last |of |\d+ )*(?:bottom|other|opposite) (?:side|edge) of) (?:the |(?:opposite|other|under|bottom) ?(?:side|edge) of |each |your )*(?:(?:foundation|starting|beginning|beg|base|original|initial|fdn|row 1) )*(?:ch|chs|chain|chains)\b`)
	// ends are row ends, along which a body is worked as well as a border, and intoEnds
	// words that go along them.
	ends     = regexp.MustCompile(`(?i)row[ -]ends?|ends? of (?:the |each )?rows?|side edge`)
	intoEnds = regexp.MustCompile(`(?i)\b(?:(?:in|into|along|over|for|down|up) (?:the |each |every |all |next |first |last )*(?:row[ -]ends?|(?:ends?|sides?) of (?:the |each |every |all |of |next |following |remaining |first |last |\d[\d ,:;()\[\]-]* )*rows?)|(?:along|down|up|across) (?:the )?(?:long |side )?(?:straight|long|side) edge)\b`)
)

// namesSize reports whether a line says which sizes the lines behind it are for.
func namesSize(line string, sizes []string) bool {
	l := " " + strings.Map(func(c rune) rune {
		if unicode.IsLetter(c) || unicode.IsDigit(c) {
			return unicode.ToLower(c)
		}
		return ' '
	}, line) + " "
	if strings.Contains(l, " size ") || strings.Contains(l, " sizes ") || strings.Contains(l, " only ") {
		return true
	}
	return slices.ContainsFunc(sizes, func(s string) bool { return s != "" && strings.Contains(l, " "+strings.ToLower(s)+" ") })
}

// trackWord reports whether a word names rounds or sides rather than a piece: "First
// row:", "Right side:".
func trackWord(w string) bool {
	switch strings.ToLower(w) {
	case "row", "rows", "rnd", "rnds", "round", "rounds", "side", "half", "size", "time", "edge", "colour", "color", "stripe", "repeat", "section", "part", "step":
		return true
	}
	return false
}

// heading reports whether a line is a few words without an instruction: "Body".
func heading(line string) bool {
	words := strings.Fields(line)
	return len(words) <= 4 && !strings.ContainsAny(strings.TrimSuffix(strings.TrimSpace(line), ":"), ".,;:0123456789")
}

// limbDone are words of how the pieces end and that there are more of them, which go over none: "Fasten off
// first leg. Do not fasten off second leg."
var limbDone = regexp.MustCompile(`(?i)(?:\b(?:fasten(?:ing)?|finish|break|cut)|(?:^|[.;] *)(?:make|leave) (?:a |the |an )?(?:first|second|other|another|1st|2nd) ?)\b[^.;]*`)

// joinsLimbs is what the pieces are called that a round goes over one after the other, ""
// for none.
func joinsLimbs(line string) string {
	noun, leads := "", map[string]bool{}
	for _, m := range limbNamed.FindAllStringSubmatch(limbDone.ReplaceAllString(line, ""), -1) {
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

func capital(s string) string { return strings.ToUpper(s[:1]) + strings.ToLower(s[1:]) }
