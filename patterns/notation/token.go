// Package notation reads the trade's written language: the rounds and rows of
// a crochet pattern as designers publish them. A scanner makes tokens of the
// words, a parser makes a tree of the tokens, and everything keeps its place
// in the file. What the words mean on a given fabric is for package working.
package notation

import "whorl/patterns/fault"

// Line is one line of a part's words and where it stands in the file.
type Line struct {
	Text         string
	Line, Column int // of the first character, from 1
}

// tokenKind is the sort of a token.
type tokenKind uint8

const (
	tEnd     tokenKind = iota // end of the text
	tWord                     // letters, possibly with digits inside: dc2tog
	tNumber                   // 12
	tOrdinal                  // 2nd
	tOpen                     // ( [ {
	tClose                    // ) ] }
	tStar                     // * ** † ‡ in any number
	tComma                    // ,
	tSemi                     // ;
	tStop                     // .
	tColon                    // :
	tHyphen                   // - directly between two tokens
	tDash                     // – or — or - with a space beside it
	tSlash                    // /
	tTimes                    // × and x standing for it
	tEqual                    // =
	tPlus                     // +
	tQuote                    // " ″ '
	tOther                    // a character with no meaning here
)

// token is one word or sign.
type token struct {
	kind   tokenKind
	text   string // lower case, quotes and dashes made plain
	raw    string // as written
	value  int    // of a number or an ordinal
	frac   float64
	pos    fault.Pos
	length int  // characters
	spaced bool // white space or a line end comes before it
	first  bool // first of its line
}

// is reports whether the token is one of the given words.
func (t *token) is(words ...string) bool {
	if t.kind != tWord {
		return false
	}
	for _, w := range words {
		if t.text == w {
			return true
		}
	}
	return false
}

// tight reports whether the token is of the kind and follows the one before it
// without a space.
func (t *token) tight(k tokenKind) bool { return t.kind == k && !t.spaced }
