package patterns

import (
	"regexp"
	"strings"
)

// intoEnds are words that go along the ends of the rows.
var intoEnds = regexp.MustCompile(`(?i)\b(?:(?:in|into|along|over|for|down|up) (?:the |each |every |all )*(?:row[ -]ends?|ends? of (?:the |each |every |all )*rows?)|(?:along|down|up|across) the (?:long |side )?(?:straight|long|side) edge)\b`)

// alongEnds are a part in rows and, where a row of it turns the corner and goes along the
// ends of those before it, the part that this begins: "Heading / Row 81: working along the
// straight edge, 2 dc in each row end". Most parts are one.
func (p Part) alongEnds() []Part {
	rows := 0
	for i, line := range p.Text.Lines {
		row, round := rowLine.MatchString(line), roundLine.MatchString(line)
		if !row && !round {
			continue
		}
		if rows < 2 || !intoEnds.MatchString(line) {
			rows++
			continue
		}
		at, name := i, "Along the edge"
		for at > 0 && heading(p.Text.Lines[at-1]) && !rowLine.MatchString(p.Text.Lines[at-1]) {
			if at--; strings.TrimSpace(p.Text.Lines[at]) != "" {
				name = strings.TrimSuffix(strings.TrimSpace(p.Text.Lines[at]), ":")
			}
		}
		first := p.cut(0, at, p.Name)
		if first.Name == "" {
			first.Name = "Piece"
		}
		edge := p.cut(at, len(p.Text.Lines), name)
		edge.Rows = row
		edge.From, edge.FromPos = first.Called()+" row ends", edge.Pos
		return []Part{first, edge}
	}
	return []Part{p}
}
