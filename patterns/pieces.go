package patterns

import (
	"regexp"
	"strings"

	"whorl/patterns/fault"
)

// pieceHead is a line that begins the words of one of several like pieces: "Second flap:",
// "Left strap".
var pieceHead = regexp.MustCompile(`(?i)^(first|second|third|1st|2nd|3rd|left|right|other)[ -]((?:ear[ -]?)?[a-z]+)(?: *[:.] *|$)`)

// pieces are the parts that a part tells of one behind the other, as designers tell of
// a brim and the body on it, of two ear flaps or of a square and its border; most are one.
func (p Part) pieces(sizes []string) (list []Part) {
	for _, t := range p.tracks(sizes) {
		for _, piece := range t.alike() {
			list = append(list, piece.bordered()...)
		}
	}
	return list
}

// roundOne and rowLine are lines that begin with the label of a first round, and of a row;
// borderHead is the heading of what goes round a piece, borderLine one with the work
// behind it, and roundIt are words that tell of its edge.
var (
	roundOne   = regexp.MustCompile(`(?i)^(?:(?:edging|border) )?(?:round|rnd|rd)\.? *1\b|^(?:1st|first) (?:round|rnd|rd)\b`)
	rowLine    = regexp.MustCompile(`(?i)^\s*(?:(?:rows?|r) ?\.? ?\d|\d+(?:st|nd|rd|th) rows?\b|(?:first|next|foundation|set-up) row\b)`)
	borderHead = regexp.MustCompile(`(?i)^((?:[a-z]+ )?(?:border|edging|edge|trim|surround))\b[^.]*[:.]?$`)
	borderLine = regexp.MustCompile(`(?i)^(border|edging|surround): .*\b(?:corner|evenly (?:all )?a?round)`)
	roundIt    = regexp.MustCompile(`(?i)corner|last st|last dc|last sc|foundation|starting ch|four (?:sides|edges)|all (?:sides|edges|the way)|side edge|row[ -]ends|left edge|right edge`)
)

// bordered sets apart the rounds that go on from the last of the rows along the edge of a
// piece, numbered from 1 again: a border told in the words of the piece.
func (p Part) bordered() []Part {
	if !p.Rows || p.From != "" {
		return []Part{p}
	}
	rows, head := false, -1
	for i, line := range p.Text.Lines {
		switch {
		case rowLine.MatchString(line):
			rows, head = true, -1
			continue
		case borderHead.MatchString(line):
			head = i
			continue
		case !rows || !roundOne.MatchString(line) && !borderLine.MatchString(line):
			continue
		}
		name, from := "Border", i
		if head >= 0 {
			name, from = borderHead.FindStringSubmatch(p.Text.Lines[head])[1], head
		} else if m := borderLine.FindStringSubmatch(line); m != nil {
			name = m[1]
		} else if !roundIt.MatchString(line) {
			return []Part{p}
		}
		piece, border := p, p
		if piece.Name == "" {
			piece.Name = "Main piece"
		}
		piece.Text = Text{Lines: p.Text.Lines[:from], First: p.Text.First, Columns: p.Text.Columns[:from]}.trimmed()
		border.Name, border.Rows, border.Piece = name, false, ""
		border.Pos = fault.Pos{Line: p.Text.First + from, Column: p.Text.Columns[from]}
		border.From, border.FromPos = piece.Called()+" edge", border.Pos
		border.Text = Text{Lines: p.Text.Lines[from:], First: p.Text.First + from, Columns: p.Text.Columns[from:]}.trimmed()
		return []Part{piece, border}
	}
	return []Part{p}
}

// alike are the pieces that headings such as "First flap" and "Second flap" tell apart.
func (p Part) alike() []Part {
	if !p.Rows {
		return p.limbs()
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
		return p.alongEnds()
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
