package typeface

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Clean is the text as one line of it is set: line breaks, tabs and runs of
// spaces become one space, as in SVG, and there is none at either end; bytes
// that are no character become U+FFFD; characters that stand for nothing
// visible in any document (controls, noncharacters) go. The result holds only
// characters that XML 1.0 allows, and Clean leaves it as it is.
func Clean(s string) string {
	if isClean(s) {
		return s
	}
	var b strings.Builder
	space := false
	for _, r := range s {
		switch {
		case r == ' ', r == '\t', r == '\n', r == '\v', r == '\f', r == '\r', r == 0x85, r == 0x2028, r == 0x2029:
			space = true
			continue
		case unicode.IsControl(r), noncharacter(r):
			continue
		}
		if space && b.Len() > 0 {
			b.WriteByte(' ')
		}
		space = false
		if r == utf8.RuneError {
			r = '?'
		}
		b.WriteRune(r)
	}
	return b.String()
}

// noncharacter tells the code points that Unicode keeps for no character.
func noncharacter(r rune) bool {
	return r&0xFFFE == 0xFFFE || 0xFDD0 <= r && r <= 0xFDEF
}

// isClean tells the usual text, which needs nothing done.
func isClean(s string) bool {
	last := ' '
	for _, r := range s {
		if r < ' ' || r == ' ' && last == ' ' || r > '~' && (r == utf8.RuneError || unicode.IsControl(r) || r == 0x2028 || r == 0x2029 || noncharacter(r)) || r == 0x7F {
			return false
		}
		last = r
	}
	return last != ' ' || s == ""
}
