package patterns

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"unicode/utf8"

	"whorl/patterns/stitch"
)

// Bounds of what a stitch or a repeat can measure, in millimetres: thread
// under a lens at one end, a wide repeat in rope at the other.
const (
	minStitch = 0.2
	maxStitch = 1000
)

const gaugeHelp = "Write it as 16 hdc and 11 rounds = 10 cm."

// ParseGauge reads one line of gauge that counts stitches, as it stands in a
// pattern file: "16 hdc and 11 rounds = 10 cm". The error says what is wrong in
// words. It has no place.
func ParseGauge(s string) (Gauge, error) {
	g, bad := readGauge(s)
	switch {
	case bad != nil:
		return Gauge{}, bad
	case g.Count == 0 && g.Rows > 0:
		return Gauge{}, &misread{0, g.Length, "a gauge of rounds needs the stitches too", gaugeHelp}
	case g.Count == 0:
		return Gauge{}, &misread{0, g.Length, "the gauge counts no stitches", gaugeHelp}
	}
	return g, nil
}

// readGauge reads a line of gauge:
//
//	gauge   = [ lead ] ( counts | piece ) "=" [ "about" ] length [ "x" length ] [ "square" ] [ rest ]
//	counts  = number what [ "and" rows ] [ rest ] | rows [ "of" what ]
//	rows    = number ( "rounds" | "rows" )
//	piece   = rounds | [ "one" | "each" | "finished" ] name [ "(" rows ")" ]
//	rounds  = ( "rounds" | "rows" ) n [ "-" n ] | "first" n ( "rounds" | "rows" )
//	lead    = "In" what ( ":" | "," ) | "With" words ( ":" | "," ) | name ":" | "Gauge:" | "about"
//	rest    = ( "in" | "over" | "of" ) what | way | words
//	way     = "across" | "in diameter" | "along each side" | "corner to corner" | "around" | "high" | …
//
// "and" may be &, x, a comma or a slash, "=" may be to, over, per, is or
// measures. A length may be given again in the other unit. Of two lengths the
// first goes across the stitches, the second along the rounds. Other words are
// kept as a remark; a line of nothing but words gives no size.
func readGauge(text string) (Gauge, *misread) {
	all := utf8.RuneCountInString(text)
	line := Gauge{Words: text, Length: all}
	l := readPreface(text)
	left, right, at := cutGauge(l.body)
	if at < 0 {
		if begun := leadingNumber(l.body); begun != "" && !measured.MatchString(begun) {
			return Gauge{}, &misread{0, all, "the gauge has no \"=\" between the stitches and the length", gaugeHelp}
		}
		return line, nil
	}
	from := 0
	if measured.MatchString(left) && leadingNumber(right) != "" {
		left, right, from, at = right, left, at, 0 // "10 cm = 16 hdc"
	}
	g, bad := readLeft(left)
	if bad != nil {
		bad.at += l.at + from
		return Gauge{}, bad
	}
	if g == nil {
		return line, nil
	}
	g.Words, g.Length, g.Remark = text, all, strings.TrimSpace(l.remark+" "+g.Remark)
	s, bad := readSwatch(right)
	if bad != nil {
		bad.at += l.at + at
		if g.Sample != nil && !strings.ContainsAny(right, "0123456789") {
			return line, nil // "the size is up to you"
		}
		return Gauge{}, bad
	}
	g.Over = s.wide
	if s.rest != "" {
		g.rest(s)
	}
	if g.Count == 0 && g.Sample == nil && (s.way == Across || s.way == Around) && g.Rows == math.Trunc(g.Rows) {
		g.Sample = &Sample{Name: g.In, From: 1, To: int(g.Rows), Rows: g.Row}
		g.Of, g.In, g.Counted, g.Rows = "", "", "", 0
	}
	if g.Sample != nil {
		g.Sample.Way, g.For = s.way, l.label
		if n := g.Sample; n.From > n.To || n.From < 1 && (n.To > 0 || n.Name == "") {
			return *g, &misread{0, all, fmt.Sprintf("there are no rounds %d to %d", n.From, n.To), "Write it as Rnds 1-6 = 11 cm across."}
		}
		return *g, nil
	}
	if g.Rows > 0 {
		g.Rows *= s.wide / s.high
	}
	if g.Count == 1 && g.Rows > 0 && strings.Contains(left, "(") {
		// "one scallop (4 rows) = 4 cm long": only one way was measured.
		switch s.way {
		case High:
			g.Count = 0
		case Across:
			g.Rows = 0
		}
	}
	if l.name != "" && g.In == "" {
		g.name(l.name)
	}
	g.For = l.label
	return *g, checkGauge(*g, all)
}

// rest takes what follows the length of a gauge: the stitch that it was worked
// in, or the way it was measured, or else a remark.
func (g *Gauge) rest(s swatch) {
	name, remark := nameIn(s.rest)
	if g.Sample != nil && s.way != Unsaid || name == "" {
		g.remark(s.rest)
		return
	}
	if g.Sample == nil {
		g.name(name)
	}
	g.remark(remark)
}

func (g *Gauge) remark(words string) {
	if words != "" {
		g.Remark = strings.TrimSpace(g.Remark + " " + words)
	}
}

// name is told the stitch that what was counted was worked in.
func (g *Gauge) name(in string) {
	of := g.Counted
	if strings.EqualFold(g.In, in) {
		return
	}
	if g.In != "" {
		of = g.Of // "15 sts in ridge" is named twice
	}
	if g.Count == 0 && of == "" {
		of = "rounds"
	}
	g.Of, g.Counted = stitchOf(of, in), of
	if strings.EqualFold(of, in) {
		return
	}
	g.In = in
}

// checkGauge reports stitches or rounds that cannot be so large or so small.
func checkGauge(g Gauge, all int) *misread {
	if w := g.Over / g.Count; g.Count > 0 && (w < minStitch || w > maxStitch) {
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

// preface is what stands before the counts of a line of gauge.
type preface struct {
	name   string // the stitch, of "In hdc:"
	label  string // what it is for, of "Brim:"
	remark string // "With 5 mm hook"
	body   string
	at     int // where the body begins
}

var (
	gaugeWord  = regexp.MustCompile(`(?i)^(gauge|tension)( swatch)?( is|:| =| -| –)? *`)
	aboutWord  = regexp.MustCompile(`(?i)^(about|approximately|approx\.?|roughly|circa|ca\.|exactly|~|≈) *`)
	leadIn     = regexp.MustCompile(`(?i)^(?:worked |working |measured )?(?:in|over) ([^:,0-9]+?)(?: using [^:,]*| with [^:,]*)?[:,] *`)
	leadWith   = regexp.MustCompile(`(?i)^(?:with|using|on) [^:]*?(?:(?:hook|yarn|strands?|together)[:,]?|[:,]) +`)
	leadLabel  = regexp.MustCompile(`^([^:=0-9]{2,40}): +`)
	measured   = regexp.MustCompile(`(?i)^[0-9.,½¼¾/ x×]+ *(mm|cm|in|inch|inches|"|″)($|[^a-z])`)
	countBegin = regexp.MustCompile(`(?i)^(~|[0-9.½¼¾⅓⅔]|[-−–—] ?[0-9]|one\b|two\b|three\b|four\b|five\b|six\b|each\b|first\b|about\b|approx|rnds?\b|rounds?\b|rows?\b)`)
)

// readPreface takes what stands before the counts.
func readPreface(text string) preface {
	l := preface{body: text}
	take := func(n int) {
		l.at += utf8.RuneCountInString(l.body[:n])
		l.body = l.body[n:]
	}
	if m := gaugeWord.FindStringIndex(l.body); m != nil && m[1] > 0 && countBegin.MatchString(leadless(l.body[m[1]:])) {
		take(m[1])
	}
	if m := leadIn.FindStringSubmatchIndex(l.body); m != nil && countBegin.MatchString(l.body[m[1]:]) {
		l.name = l.body[m[2]:m[3]]
		take(m[1])
	} else if m := leadWith.FindStringIndex(l.body); m != nil && countBegin.MatchString(l.body[m[1]:]) {
		l.remark = strings.TrimRight(l.body[:m[1]], " :,")
		take(m[1])
	} else if m := leadLabel.FindStringSubmatchIndex(l.body); m != nil && countBegin.MatchString(l.body[m[1]:]) {
		l.label = l.body[m[2]:m[3]]
		take(m[1])
	}
	if m := aboutWord.FindStringIndex(l.body); m != nil {
		take(m[1])
	}
	return l
}

// leadless is a line behind its lead.
func leadless(text string) string {
	for _, r := range []*regexp.Regexp{leadIn, leadWith} {
		if m := r.FindStringIndex(text); m != nil {
			return text[m[1]:]
		}
	}
	return text
}

// leadingNumber is a text that begins with a number, "" for another.
func leadingNumber(text string) string {
	text = strings.TrimSpace(text)
	if c, _ := utf8.DecodeRuneInString(text); digit(c) || vulgar[c] != 0 || minus(c) {
		return text
	}
	return ""
}

// equals are the words that stand for the = of a gauge before a number, those
// that are surest first.
var equals = [][]string{
	{"measure", "measures", "measuring", "equals", "equal", "is", "are", "makes", "make"},
	{"over", "per"}, {"to"}, {"in"},
}

// cutGauge divides a gauge at its =; at is where the right side begins, -1
// where there is none. A line that begins with the length is turned round.
func cutGauge(text string) (left, right string, at int) {
	line := []rune(text)
	for i, c := range line {
		if c == '=' || c == '≈' {
			return string(line[:i]), string(line[i+1:]), i + 1
		}
	}
	ws := wordsOf(text)
	for _, l := range equals {
		for i, w := range ws {
			if i+1 < len(ws) && among(l, w.lower()) && (numeric(ws[i+1].text) || aboutWord.MatchString(ws[i+1].text+" ")) {
				if l[0] == "in" && !measured.MatchString(string(line[ws[i+1].at:])) {
					continue
				}
				at = w.at + w.length
				return string(line[:w.at]), string(line[at:]), at
			}
		}
	}
	return text, "", -1
}

func among(l []string, s string) bool {
	for _, x := range l {
		if x == s {
			return true
		}
	}
	return false
}

// numeric reports whether a word begins as a number does.
func numeric(s string) bool {
	c := []rune(s)[0]
	return digit(c) || vulgar[c] != 0 || minus(c) || c == '.' && len(s) > 1 || c == '~'
}

// stitchWord reports whether a word is the name of a plain stitch in either
// terms.
func stitchWord(w string) bool {
	w = strings.TrimRight(strings.ToLower(w), ".,")
	switch w {
	case "st", "sts", "stitch", "stitches":
		return true
	}
	for b := stitch.Chain; b <= stitch.TripleTreble; b++ {
		for _, t := range []stitch.Terms{stitch.US, stitch.UK} {
			if w == b.Name(t) || w == b.Name(t)+"s" {
				return true
			}
		}
	}
	return false
}
