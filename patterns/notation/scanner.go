package notation

import (
	"strconv"
	"strings"
	"unicode"

	"whorl/patterns/fault"
)

// largest is the largest number that may stand in a pattern. A larger one is a
// slip of the finger, and would only make work without end.
const largest = 99999

// fractions are the single characters for fractions.
var fractions = map[rune]float64{
	'½': 1. / 2, '¼': 1. / 4, '¾': 3. / 4, '⅓': 1. / 3, '⅔': 2. / 3,
	'⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8,
}

// scan makes tokens of the lines. The last token is always a tEnd.
func scan(lines []Line) ([]token, fault.List) {
	s := &scanner{}
	for _, l := range lines {
		s.line(l)
	}
	end := fault.Pos{}
	if n := len(lines); n > 0 {
		l := lines[n-1]
		end = fault.Pos{Line: l.Line, Column: l.Column + len([]rune(l.Text))}
	}
	s.tokens = append(s.tokens, token{kind: tEnd, pos: end, length: 1, spaced: true, first: true})
	return s.tokens, s.faults
}

type scanner struct {
	tokens []token
	faults fault.List
	text   []rune
	at     Line
	i      int
}

func (s *scanner) line(l Line) {
	s.text, s.at, s.i = []rune(l.Text), l, 0
	first := true
	for {
		spaced := first
		for s.i < len(s.text) && unicode.IsSpace(s.text[s.i]) {
			s.i, spaced = s.i+1, true
		}
		if s.i >= len(s.text) {
			return
		}
		start := s.i
		t := s.next(spaced)
		t.spaced, t.first = spaced, first
		t.pos = fault.Pos{Line: l.Line, Column: l.Column + start}
		t.length = s.i - start
		t.raw = string(s.text[start:s.i])
		if t.text == "" {
			t.text = strings.ToLower(t.raw)
		}
		if !first && (t.kind == tWord && unicode.IsLower(s.text[start]) || t.kind == tComma || t.kind == tSemi || t.kind == tClose || t.kind == tNumber || t.kind == tOrdinal) {
			s.dropStop(t.kind)
		}
		s.tokens = append(s.tokens, t)
		first = false
	}
}

// dropStop takes the full stop of an abbreviation away when the sentence goes on after
// it, with the token of kind k that has just been read: "a 12 in. tail", "1 tr. into next
// ch., turn".
func (s *scanner) dropStop(k tokenKind) {
	n := len(s.tokens)
	if n >= 2 && s.tokens[n-1].kind == tStop && !s.tokens[n-1].spaced && s.tokens[n-2].kind == tWord && dotted[s.tokens[n-2].text] &&
		(k != tNumber && k != tOrdinal || numbered[s.tokens[n-2].text]) {
		s.tokens = s.tokens[:n-1]
		return
	}
	if k == tNumber && n >= 2 && s.tokens[n-1].kind == tStop && s.tokens[n-2].text == "no" && s.tokens[n-2].kind == tWord {
		s.tokens = s.tokens[:n-1] // "with No. 4 hook"
		return
	}
	if k == tWord && n >= 3 && s.tokens[n-1].kind == tStop && s.tokens[n-2].kind == tWord && units[s.tokens[n-2].text] > 0 && s.tokens[n-3].kind == tNumber {
		s.tokens = s.tokens[:n-1]
	}
}

// dotted are abbreviations that old leaflets write with a full stop.
var dotted = map[string]bool{"tr": true, "dc": true, "sc": true, "ch": true, "htr": true, "hdc": true, "dtr": true, "ss": true, "st": true, "sts": true,
	"rep": true, "sp": true, "sps": true, "lp": true, "lps": true, "beg": true, "rem": true, "tog": true, "inc": true, "dec": true, "foll": true, "alt": true,
	"patt": true, "cont": true, "sl": true, "chs": true, "trs": true, "dcs": true, "rnd": true, "rnds": true, "cl": true, "pc": true, "col": true, "approx": true,
	"mo": true, "mos": true, "mth": true, "mths": true, "yr": true, "yrs": true, "wk": true, "wks": true}

// numbered are those that a number may follow in the same sentence: "rep. 3 times", "with
// col. 1".
var numbered = map[string]bool{"rep": true, "col": true, "approx": true}

// initials reads an abbreviation with stops inside, "d.c.", "sl.st", at s.i, without the
// stop at its end. It gives the letters, or "" for none.
func (s *scanner) initials() string {
	i, text := s.i, ""
	for parts := 0; parts < 3; parts++ {
		from := i
		for i < len(s.text) && letter(s.text[i]) {
			i++
		}
		if i == from {
			return ""
		}
		text += strings.ToLower(string(s.text[from:i]))
		if parts > 0 && dotted[text] && (i >= len(s.text) || !letter(s.text[i])) {
			s.i = i
			return text
		}
		if i >= len(s.text) || s.text[i] != '.' {
			return ""
		}
		i++
	}
	return ""
}

// peek is the rune n places on, 0 at the end of the line.
func (s *scanner) peek(n int) rune {
	if s.i+n < len(s.text) && s.i+n >= 0 {
		return s.text[s.i+n]
	}
	return 0
}

func letter(r rune) bool { return unicode.IsLetter(r) && r != '×' }
func digit(r rune) bool  { return r >= '0' && r <= '9' }

// next reads one token from s.i on.
func (s *scanner) next(spaced bool) token {
	r := s.text[s.i]
	switch {
	case digit(r):
		return s.number()
	case fractions[r] != 0:
		s.i++
		return token{kind: tNumber, frac: fractions[r]}
	case letter(r):
		return s.word(spaced)
	}
	s.i++
	switch r {
	case '(', '[', '{':
		return token{kind: tOpen}
	case ')', ']', '}':
		return token{kind: tClose}
	case '*', '†', '‡', '◊', '♦':
		for s.peek(0) == r {
			s.i++
		}
		return token{kind: tStar}
	case ',':
		return token{kind: tComma}
	case ';':
		return token{kind: tSemi}
	case '.', '!', '?', '…':
		return token{kind: tStop, text: "."}
	case ':':
		return token{kind: tColon}
	case '–', '—', '−':
		return token{kind: tDash, text: "-"}
	case '-', '‐', '‑':
		if n := s.peek(0); n == '-' {
			s.i++
			return token{kind: tDash, text: "-"}
		}
		if spaced || unicode.IsSpace(s.peek(0)) || s.peek(0) == 0 {
			return token{kind: tDash, text: "-"}
		}
		return token{kind: tHyphen, text: "-"}
	case '/', '⁄':
		return token{kind: tSlash, text: "/"}
	case '×', '✕':
		return token{kind: tTimes, text: "x"}
	case '=':
		return token{kind: tEqual}
	case '+':
		return token{kind: tPlus}
	case '&':
		return token{kind: tWord, text: "and"}
	case '"', '″', '“', '”', '\'', '’', '‘', '′':
		return token{kind: tQuote, text: "\""}
	case '<', '>':
		if r == '<' {
			return token{kind: tOpen}
		}
		return token{kind: tClose}
	}
	return token{kind: tOther}
}

// number reads 12, 2nd or 1/2.
func (s *scanner) number() token {
	start := s.i
	v, big := 0, false
	for digit(s.peek(0)) {
		if v = v*10 + int(s.peek(0)-'0'); v > largest {
			v, big = largest, true
		}
		s.i++
	}
	if big {
		s.faults = append(s.faults, &fault.Fault{
			Code: "too-large", Severity: fault.Error,
			Pos:     fault.Pos{Line: s.at.Line, Column: s.at.Column + start},
			Length:  s.i - start,
			Message: string(s.text[start:s.i]) + " is too large a number for a pattern",
			Help:    "No number in a pattern may be above 99999.",
		})
	}
	if digit(s.peek(1)) && s.peek(0) == '.' {
		f, scale := 0.0, 0.1
		for s.i++; digit(s.peek(0)); s.i++ {
			f, scale = f+scale*float64(s.peek(0)-'0'), scale/10
		}
		return token{kind: tNumber, value: v, frac: f}
	}
	if fr := fractions[s.peek(0)]; fr != 0 {
		s.i++
		return token{kind: tNumber, value: v, frac: fr}
	}
	if t, ok := s.numberFirst(v); ok {
		return t
	}
	suffix := strings.ToLower(string([]rune{s.peek(0), s.peek(1)}))
	if (suffix == "st" || suffix == "nd" || suffix == "rd" || suffix == "th") &&
		!letter(s.peek(2)) && !digit(s.peek(2)) && ordinalFits(v, suffix) {
		s.i += 2
		return token{kind: tOrdinal, value: v}
	}
	return token{kind: tNumber, value: v}
}

// ordinalFits tells 1st from "1st" run together out of "1 st": only the former
// has the suffix that its number takes, and 1 st is never written tight.
func ordinalFits(v int, suffix string) bool {
	switch {
	case v%100 >= 11 && v%100 <= 13:
		return suffix == "th"
	case v%10 == 1:
		return suffix == "st"
	case v%10 == 2:
		return suffix == "nd"
	case v%10 == 3:
		return suffix == "rd"
	}
	return suffix == "th"
}

// numberFirst reads "trtog" behind the number of "5trtog", which is another spelling of tr5tog.
func (s *scanner) numberFirst(n int) (token, bool) {
	end := s.i
	for end < len(s.text) && letter(s.text[end]) {
		end++
	}
	base, tog := strings.CutSuffix(strings.TrimSuffix(strings.ToLower(string(s.text[s.i:end])), "s"), "tog")
	if !tog || base == "" || n < 2 || end < len(s.text) && digit(s.text[end]) {
		return token{}, false
	}
	s.i = end
	return token{kind: tWord, text: base + strconv.Itoa(n) + "tog"}, true
}

// word reads letters with digits inside. Digits at the end are left for a
// number of their own (ch3), and so is everything after an x that means times.
func (s *scanner) word(spaced bool) token {
	start := s.i
	if r := s.peek(0); (r == 'x' || r == 'X') && !letter(s.peek(1)) && s.peek(1) != '-' {
		s.i++
		return token{kind: tTimes, text: "x"}
	}
	if text := s.initials(); text != "" {
		return token{kind: tWord, text: text}
	}
	for letter(s.peek(0)) || isApostrophe(s.peek(0)) && letter(s.peek(1)) {
		s.i++
	}
	letters := s.i
	for digit(s.peek(0)) {
		s.i++
	}
	if s.i > letters {
		rest := 0
		for letter(s.peek(rest)) {
			rest++
		}
		tail := strings.ToLower(string(s.text[s.i : s.i+rest]))
		if tail == "tog" || tail == "togs" || tail == "together" || tail == "inc" && string(s.text[letters:s.i]) == "2" {
			s.i += rest
		} else {
			s.i = letters
		}
	}
	text := strings.ToLower(strings.ReplaceAll(string(s.text[start:s.i]), "’", "'"))
	if whole := shortened[text]; whole != "" {
		text = whole
	}
	return token{kind: tWord, text: text}
}

// shortened are words that designers shorten in ways of their own.
var shortened = map[string]string{
	"ea": "each", "nxt": "next", "fol": "following", "foll": "following", "btw": "between", "bet": "between",
	"sk'd": "skipped", "opp": "opposite", "beg'g": "beginning", "patt": "pattern", "your": "the", "our": "the", "hk": "hook",
	"sc's": "sc", "dc's": "dc", "hdc's": "hdc", "tr's": "tr", "htr's": "htr", "ch's": "chs", "st's": "sts",
}

func isApostrophe(r rune) bool { return r == '\'' || r == '’' }

// numberWords are the numbers that are written out.
var numberWords = map[string]int{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6,
	"seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
	"thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
	"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90,
}

// ordinalWords are the ordinals that are written out.
var ordinalWords = map[string]int{
	"second": 2, "third": 3, "fourth": 4, "fifth": 5,
	"sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9, "tenth": 10,
}
