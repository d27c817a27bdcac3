package patterns

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// MaxLength is the longest length that is taken, in millimetres: 5 m.
const MaxLength = 5000.0

// ParseLength reads one length: "5½ in", `5 1/2"`, "-2.5 cm", "10cm". Fractions
// may be written as one character or as 1/2, units as cm, mm, in, inches or ″.
// The same length in the other unit may follow: "10 cm / 4 in". The error says
// what is wrong in words.
func ParseLength(s string) (Length, error) {
	l, err := ParseLengths(s)
	if err != nil {
		return Length{}, err
	}
	if len(l) != 1 {
		return Length{}, oneLength(len(l), s)
	}
	return l[0], nil
}

// ParseLengths reads a list of lengths in the trade's style, smallest first:
// "41 (50, 56, 60) cm", "41/50/56 cm", "16 in, 19½ in". The unit stands once,
// behind the list, or behind each number. The list is as long as it is written.
func ParseLengths(s string) (Lengths, error) {
	m, bad := readMeasures(s)
	if bad != nil {
		return nil, bad
	}
	l := make(Lengths, len(m))
	for i := range m {
		l[i] = m[i].Length
	}
	return l, nil
}

// misread is what is wrong in a length or in a gauge, with its place: the
// characters at (from 0) up to at+length.
type misread struct {
	at, length    int
	message, help string
}

func (m *misread) Error() string {
	if m.help == "" {
		return m.message
	}
	return m.message + "\n" + m.help
}

const unitsKnown = "Lengths are written with cm, mm or in: 41 cm, 16½ in, 5 1/2\"."

func oneLength(n int, s string) *misread {
	help := "Give a single length."
	if decimalComma(s) {
		help = "Write decimals with a point: 5.5 cm."
	}
	return &misread{0, len([]rune(s)), fmt.Sprintf("%d lengths where one is wanted: %s", n, quote(s)), help}
}

// decimalComma reports whether a comma stands between two figures, as in 5,5.
func decimalComma(s string) bool {
	for i := 1; i+1 < len(s); i++ {
		if s[i] == ',' && s[i-1] >= '0' && s[i-1] <= '9' && s[i+1] >= '0' && s[i+1] <= '9' {
			return true
		}
	}
	return false
}

// measure is a length with its place in what was read.
type measure struct {
	Length
	at, length int
}

// millimetres in a unit. The inch is 25.4 mm exactly (international yard and
// pound agreement, 1959, value from memory).
var millimetres = map[string]float64{"mm": 1, "cm": 10, "in": 25.4}

// units gives the unit for each of its spellings.
var units = map[string]string{
	"mm": "mm", "mms": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
	"cm": "cm", "cms": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
	"in": "in", "ins": "in", "inch": "in", "inches": "in",
	`"`: "in", "″": "in", "”": "in", "“": "in", "''": "in", "’’": "in", "′′": "in",
}

// vulgar are the fractions that are single characters, as Unicode names them.
var vulgar = map[rune]float64{
	'½': 1. / 2, '⅓': 1. / 3, '⅔': 2. / 3, '¼': 1. / 4, '¾': 3. / 4,
	'⅕': 1. / 5, '⅖': 2. / 5, '⅗': 3. / 5, '⅘': 4. / 5, '⅙': 1. / 6, '⅚': 5. / 6,
	'⅐': 1. / 7, '⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8, '⅑': 1. / 9, '⅒': 1. / 10,
}

// symbol is a kind of token in a length: number, unit or a mark.
type symbol uint8

const (
	end symbol = iota
	number
	unit
	comma // or semicolon
	slash // also "or" and "="
	open
	shut
)

// token is a number, a unit or a mark in a length.
type token struct {
	symbol
	value      float64
	unit       string
	at, length int
}

// lengthScanner cuts a length into tokens.
type lengthScanner struct {
	src    []rune
	at     int
	tokens []token
}

const maxMeasure = 500 // characters of a list of lengths

func (s *lengthScanner) peek(n int) rune {
	if s.at+n < len(s.src) {
		return s.src[s.at+n]
	}
	return 0
}

func digit(c rune) bool { return c >= '0' && c <= '9' }

func minus(c rune) bool { return c == '-' || c == '−' || c == '–' || c == '—' }

func slashed(c rune) bool { return c == '/' || c == '⁄' }

func (s *lengthScanner) skipSpace() {
	for s.at < len(s.src) && unicode.IsSpace(s.src[s.at]) {
		s.at++
	}
}

// last is the token before, end at the beginning.
func (s *lengthScanner) last() symbol {
	if len(s.tokens) == 0 {
		return end
	}
	return s.tokens[len(s.tokens)-1].symbol
}

func scanLengths(text string) ([]token, *misread) {
	s := &lengthScanner{src: []rune(text)}
	if len(s.src) > maxMeasure {
		return nil, &misread{0, 1, "this is too long for a list of lengths", unitsKnown}
	}
	for s.skipSpace(); s.at < len(s.src); s.skipSpace() {
		start := s.at
		t, bad := s.token()
		if bad != nil {
			return nil, bad
		}
		t.at, t.length = start, s.at-start
		s.tokens = append(s.tokens, t)
	}
	return s.tokens, nil
}

func (s *lengthScanner) token() (token, *misread) {
	start := s.at
	c := s.peek(0)
	switch {
	case digit(c) || vulgar[c] != 0 || c == '.' && digit(s.peek(1)):
		return s.signed(1)
	case minus(c) || c == '+':
		if s.last() == number || s.last() == unit {
			return token{}, &misread{start, 1, "a range of lengths cannot be worked", "Give one length for each size."}
		}
		s.at++
		s.skipSpace()
		if c := s.peek(0); !digit(c) && vulgar[c] == 0 && c != '.' {
			return token{}, &misread{start, 1, "a length is missing here", "Every size needs a length. " + unitsKnown}
		}
		if c == '+' {
			return s.signed(1)
		}
		return s.signed(-1)
	case c == ',' || c == ';' || c == ':': // a colon between sizes, as in some British magazines
		s.at++
		return token{symbol: comma}, nil
	case c == '/' || c == '=':
		s.at++
		return token{symbol: slash}, nil
	case c == '(' || c == '[':
		s.at++
		return token{symbol: open}, nil
	case c == ')' || c == ']':
		s.at++
		return token{symbol: shut}, nil
	}
	return s.word()
}

// word reads a unit, or the "or" between two lengths.
func (s *lengthScanner) word() (token, *misread) {
	start := s.at
	c := s.peek(0)
	s.at++
	switch {
	case unicode.IsLetter(c):
		for unicode.IsLetter(s.peek(0)) {
			s.at++
		}
	case (c == '\'' || c == '’' || c == '′') && s.peek(0) == c:
		s.at++
	}
	written := string(s.src[start:s.at])
	lower := strings.ToLower(written)
	if lower == "or" {
		return token{symbol: slash}, nil
	}
	u, ok := units[lower]
	if !ok {
		message := fmt.Sprintf("%s is not a unit of length", quote(written))
		if !unicode.IsLetter(c) {
			message = fmt.Sprintf("%s does not belong in a length", quote(written))
		}
		return token{}, &misread{start, s.at - start, message, unitsKnown}
	}
	if s.peek(0) == '.' && !digit(s.peek(1)) {
		s.at++ // "in."
	}
	return token{symbol: unit, unit: u}, nil
}

// signed reads a number with its fraction: 41, 41.5, 19½, 19 1/2, 19-1/2, ½,
// 1/2.
func (s *lengthScanner) signed(sign float64) (token, *misread) {
	start := s.at
	for digit(s.peek(0)) {
		s.at++
	}
	if s.peek(0) == '.' && digit(s.peek(1)) {
		for s.at++; digit(s.peek(0)); s.at++ {
		}
		return s.number(start, s.at, sign, 0)
	}
	if f, length, ok := s.fraction(start); ok && s.tapeFraction(start, length) {
		s.at = start + length
		return s.number(start, start, sign, f)
	}
	// A fraction behind the whole number, at once or after a space or hyphen.
	gap := 0
	for c := s.peek(gap); c == ' ' || c == '\u00a0' || c == '\u2009'; c = s.peek(gap) {
		gap++
	}
	if gap == 0 && minus(s.peek(0)) {
		gap = 1
	}
	wholeEnd := s.at
	if f := vulgar[s.peek(gap)]; f != 0 {
		s.at += gap + 1
		return s.number(start, wholeEnd, sign, f)
	}
	if f, length, ok := s.fraction(s.at + gap); gap > 0 && ok {
		s.at += gap + length
		return s.number(start, wholeEnd, sign, f)
	}
	return s.number(start, s.at, sign, 0)
}

// fraction looks for a proper fraction such as 3/8 at a place.
func (s *lengthScanner) fraction(at int) (value float64, length int, ok bool) {
	n, bar := s.integer(at)
	if bar == at || bar >= len(s.src) || !slashed(s.src[bar]) {
		return 0, 0, false
	}
	d, last := s.integer(bar + 1)
	if n < 1 || n >= d || d > 99 {
		return 0, 0, false
	}
	return float64(n) / float64(d), last - at, true
}

// tapeFraction reports whether a fraction that stands alone is one. 41/50 is
// two sizes: a fraction is in its lowest terms, with a denominator found on
// tape measures, and does not go on a list of slashes.
func (s *lengthScanner) tapeFraction(at, length int) bool {
	n, bar := s.integer(at)
	if s.src[bar] == '⁄' {
		return true
	}
	d, last := s.integer(bar + 1)
	if at > 0 && slashed(s.src[at-1]) || last < len(s.src) && (slashed(s.src[last]) || s.src[last] == '.') {
		return false // within 41/50/56
	}
	return gcd(n, d) == 1 && (64%d == 0 || d == 3 || d == 5 || d == 6 || d == 10)
}

// integer reads a whole number of at most three figures.
func (s *lengthScanner) integer(at int) (value, after int) {
	for after = at; after < len(s.src) && after < at+3 && digit(s.src[after]); after++ {
		value = 10*value + int(s.src[after]-'0')
	}
	return value, after
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// number is the token of a number whose figures stand between two places, with
// a fraction added.
func (s *lengthScanner) number(from, to int, sign, fraction float64) (token, *misread) {
	value := 0.0
	if to > from {
		v, err := strconv.ParseFloat(string(s.src[from:to]), 64)
		if err != nil || v > 1e6 {
			return token{}, &misread{from, to - from, "this number is too large", ""}
		}
		value = v
	}
	return token{symbol: number, value: sign * (value + fraction)}, nil
}
