package patterns

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"whorl/patterns/fault"
)

var (
	// numberedTrack is the label of a line with its number: "Row 3", "Rnds 4-9", "2nd round".
	numberedTrack = regexp.MustCompile(`(?i)^(?:(rows?|rnds?|rounds?|rds?)\.? *#?(\d+)\b|(\d+)(?:st|nd|rd|th) (row|rnd|round|rd)\b)`)
	// titleLine is a line that can be a title: a few words, no full stop.
	titleLine = regexp.MustCompile(`^[A-Z][\pL'’&/ -]*[\pL](?: *[(\[][^)\]]*[)\]])? *:?$`)
	// anew begins a line that work begins with, or goes on along an edge.
	anew = regexp.MustCompile(`(?i)^(ch|chain|make|magic|with|using|begin|start|rejoin|attach|join (new |the )?(yarn|[A-Z]\b|MC|CC)|work|working|now|rotate|turn|pick|\d)`)
	// ends are row ends, along which a body is worked as well as a border.
	ends         = regexp.MustCompile(`(?i)row[ -]ends?|ends? of (?:the |each )?rows?|side edge`)
	makesSeveral = regexp.MustCompile(`(?i)\(make [a-z0-9]+\)$`)
	// noTitle begins a line of work that looks like a title.
	noTitle = regexp.MustCompile(`(?i)^(fasten|finish off|turn|rotate|join|sew|seam|sl |slip|ss |repeat|rep |cut|weave|fold|continue|do not|don't|change|work|with|using|as |leave|break|note|ch |chain|make)`)
)

// tracks are the parts that a part tells of one behind the other when its words are numbered
// anew under a title, or go over from rows to rounds or back: a brim in rows and the body on
// it. Most are one. Titles that name one of the sizes are none.
func (p Part) tracks(sizes []string) []Part {
	type start struct {
		line, words, first int // where it begins, its words behind the title, and the first label
		rows               bool
		name               string
	}
	starts := []start{{}}
	last, numbered := -1, false
	for i, line := range p.Text.Lines {
		m := numberedTrack.FindStringSubmatch(line)
		if m == nil {
			if labelOf(line) != noLabel {
				last = i
			}
			continue
		}
		rows := strings.HasPrefix(strings.ToLower(m[1]+m[4]), "row")
		if now := &starts[len(starts)-1]; !numbered {
			now.rows, numbered = rows, true
			if at, name := p.beginning(0, i, sizes); at == 0 && p.Name == "" {
				now.words, now.name = p.behindTitle(at, name), name
			}
		} else if at, name := p.beginning(last+1, i, sizes); m[2]+m[3] == "1" && (rows != now.rows || name != "" && !pieceHead.MatchString(name)) {
			starts = append(starts, start{at, p.behindTitle(at, name), i, rows, name})
		} else if rows != now.rows {
			now.rows = rows // one piece that goes on
		}
		last = i
	}
	if len(starts) == 1 {
		return []Part{p}
	}
	var list []Part
	for k, s := range starts {
		to := len(p.Text.Lines)
		if k+1 < len(starts) {
			to = starts[k+1].line
		}
		one := p
		one.Rows = s.rows
		one.Text = Text{Lines: p.Text.Lines[s.words:to], First: p.Text.First + s.words, Columns: p.Text.Columns[s.words:to]}.trimmed()
		if k > 0 {
			one.From, one.Name = "", ""
			one.Pos = fault.Pos{Line: p.Text.First + s.line, Column: p.Text.Columns[s.line]}
		}
		if one.Name == "" {
			one.Name = s.name
		}
		if first := ends.ReplaceAllString(p.Text.Lines[s.first], ""); k > 0 && !s.rows && starts[k-1].rows &&
			(borderHead.MatchString(s.name) || s.name == "" && roundIt.MatchString(first)) {
			one.From, one.FromPos = list[k-1].Called()+" edge", one.Pos
			one.Name = cmp.Or(one.Name, "Border")
		}
		if how := map[bool]string{true: "rows", false: "rounds"}[s.rows]; one.Name == "" && p.Name == "" {
			one.Name = "Part in " + how
		} else if one.Name == "" {
			one.Name = p.Called() + ", " + how
		}
		list = append(list, one)
	}
	return list
}

// beginning is the line that a piece begins with whose first label stands in line to, and what
// it is called, "" where the words do not say: its title, or else where work begins anew. The lines from number from
// on have no labels; what stands before the beginning belongs to the piece before.
func (p Part) beginning(from, to int, sizes []string) (line int, name string) {
	for i := from; i < to; i++ {
		if l := p.Text.Lines[i]; titleLine.MatchString(l) && len(strings.Fields(l)) <= 6 && !noTitle.MatchString(l) && !namesSize(l, sizes) {
			name = strings.TrimSpace(strings.NewReplacer("[", "(", "]", ")", ":", "").Replace(l))
			if words, _, _ := strings.Cut(name, "("); strings.ToUpper(words) == words {
				name = words[:1] + strings.ToLower(words[1:]) + strings.TrimPrefix(name, words) // MAIN PART
			}
			return i, name
		}
	}
	for i := from; i < to; i++ {
		if anew.MatchString(p.Text.Lines[i]) {
			return i, ""
		}
	}
	return to, ""
}

// behindTitle is the line behind a title that is the name and no more than that.
func (p Part) behindTitle(line int, name string) int {
	if name == "" || strings.Contains(name, "(") && !makesSeveral.MatchString(name) {
		return line
	}
	return line + 1
}

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
