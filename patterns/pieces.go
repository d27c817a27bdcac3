package patterns

import (
	"regexp"
	"strings"

	"whorl/patterns/fault"
)

// pieceHead is a line that begins the words of one of several like pieces: "Second flap:",
// "Left strap".
var pieceHead = regexp.MustCompile(`(?i)^(first|second|third|1st|2nd|3rd|left|right|other)[ -]((?:ear[ -]?)?[a-z]+)(?: *[:.] *|$)`)

// pieces are the parts that a part of rows tells of one behind the other under headings
// of their own, as designers tell of two ear flaps; most are one.
func (p Part) pieces() []Part {
	if !p.Rows {
		return []Part{p}
	}
	var heads []int
	noun := ""
	for i, line := range p.Text.Lines {
		m := pieceHead.FindStringSubmatch(line)
		if m == nil || trackWord(m[2]) {
			continue
		}
		n := strings.ToLower(strings.NewReplacer(" ", "", "-", "").Replace(m[2]))
		if noun == "" {
			noun = n
		}
		if n == noun {
			heads = append(heads, i)
		}
	}
	if len(heads) < 2 {
		return []Part{p}
	}
	var list []Part
	for k, from := range heads {
		to := len(p.Text.Lines)
		if k+1 < len(heads) {
			to = heads[k+1]
		}
		m := pieceHead.FindStringSubmatch(p.Text.Lines[from])
		one := p
		if one.Piece = m[1] + " " + m[2]; k == 0 {
			from = 0
		} else {
			one.Name = one.Piece
			one.Pos = fault.Pos{Line: p.Text.First + from, Column: p.Text.Columns[from]}
		}
		one.Text = Text{Lines: p.Text.Lines[from:to], First: p.Text.First + from, Columns: p.Text.Columns[from:to]}.trimmed()
		list = append(list, one)
	}
	return list
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
