package patterns

import (
	"slices"
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"whorl/patterns/fault"
)

// text is the words of a scalar with the place of every line. It works from
// the lines of the file, because YAML itself only tells where a scalar begins.
func (r *reader) text(n *yaml.Node) Text {
	switch {
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return r.blockText(n)
	case n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0:
		return r.quotedText(n)
	}
	return r.plainText(n)
}

// put adds the words of a line from character from up to to, without the white
// space around them.
func (t *Text) put(line []rune, from, to int) {
	for from < to && unicode.IsSpace(line[from]) {
		from++
	}
	for from < to && unicode.IsSpace(line[to-1]) {
		to--
	}
	t.Lines = append(t.Lines, string(line[from:to]))
	t.Columns = append(t.Columns, from+1)
}

// trimmed is the text without the blank lines at its beginning and end.
func (t Text) trimmed() Text {
	for len(t.Lines) > 0 && t.Lines[0] == "" {
		t.Lines, t.Columns, t.First = t.Lines[1:], t.Columns[1:], t.First+1
	}
	for len(t.Lines) > 0 && t.Lines[len(t.Lines)-1] == "" {
		t.Lines, t.Columns = t.Lines[:len(t.Lines)-1], t.Columns[:len(t.Columns)-1]
	}
	return t
}

// blockText is the words after | or >. The block's indentation follows from
// its first line of words: what stands before it in the file, less the spaces
// that belong to the value. The block ends before the first line of words
// indented less.
func (r *reader) blockText(n *yaml.Node) Text {
	t := Text{First: n.Line + 1}
	value := strings.TrimLeft(n.Value, "\n")
	if strings.TrimSpace(value) == "" {
		return t
	}
	own := leadingSpaces([]rune(value))
	indent := -1
	for number := t.First; number <= len(r.p.Lines); number++ {
		line := r.line(number)
		if blank(line) {
			t.put(line, 0, len(line))
			continue
		}
		if indent < 0 {
			indent = leadingSpaces(line) - own
		}
		if leadingSpaces(line) < indent {
			break
		}
		t.put(line, 0, len(line))
	}
	return t.trimmed()
}

func blank(line []rune) bool { return strings.TrimSpace(string(line)) == "" }

func leadingSpaces(line []rune) int {
	n := 0
	for n < len(line) && line[n] == ' ' {
		n++
	}
	return n
}

// quotedText is the words between quotes, on one line or several.
func (r *reader) quotedText(n *yaml.Node) Text {
	t := Text{First: n.Line}
	double := n.Style&yaml.DoubleQuotedStyle != 0
	column := n.Column // the character behind the opening quote, from 0
	for number := n.Line; number <= len(r.p.Lines); number++ {
		line := r.line(number)
		from := min(column, len(line))
		column = 0
		to, words, closed := r.quotedLine(line, from, number, double)
		t.put(line, from, to)
		t.Lines[len(t.Lines)-1] = strings.TrimSpace(words)
		if closed {
			break
		}
	}
	return t.trimmed()
}

// quotedLine reads quoted words from a place in a line up to the closing quote
// or the end of the line.
func (r *reader) quotedLine(line []rune, from, number int, double bool) (to int, words string, closed bool) {
	var b strings.Builder
	for i := from; i < len(line); i++ {
		c := line[i]
		var next rune
		if i+1 < len(line) {
			next = line[i+1]
		}
		switch {
		case !double && c == '\'' && next == '\'':
			i++
		case !double && c == '\'', double && c == '"':
			return i, b.String(), true
		case double && c == '\\':
			i++
			c = next
			if c != '"' && c != '\\' && c != '/' {
				r.add(fault.Pos{Line: number, Column: i}, 2, codeYAML,
					"a backslash in words between double quotes stands for something else",
					"Put the words on the lines below, after |, where everything stands for itself.")
			}
			if c == 0 {
				continue
			}
		}
		b.WriteRune(c)
	}
	return len(line), b.String(), false
}

// plainText is words without quotes. They cannot hold escapes, so the words of
// the value are found again one after the other in the file, and run on where
// the file does.
func (r *reader) plainText(n *yaml.Node) Text {
	t := Text{First: n.Line}
	number, at := n.Line, n.Column-1
	line := r.line(number)
	from, to := at, at // of the words on this line
	for _, word := range strings.Fields(n.Value) {
		for {
			for at < len(line) && unicode.IsSpace(line[at]) {
				at++
			}
			if at < len(line) || number >= len(r.p.Lines) {
				break
			}
			t.put(line, min(from, len(line)), min(to, len(line)))
			number++
			line, at, from, to = r.line(number), 0, 0, 0
		}
		w := []rune(word)
		if at+len(w) > len(line) || !slices.Equal(w, line[at:at+len(w)]) {
			// Not reached with YAML as it is; the words are kept all the same.
			return Text{Lines: []string{strings.Join(strings.Fields(n.Value), " ")}, First: n.Line, Columns: []int{n.Column}}
		}
		if from == to {
			from = at
		}
		at += len(w)
		to = at
	}
	t.put(line, min(from, len(line)), min(to, len(line)))
	return t.trimmed()
}

// passage is text as one line, for what is read across line ends, with the way
// back to places in the file.
type passage struct {
	text   string
	of     Text
	starts []int // the first character of each line of the text
}

// joined is the text as a passage: its lines with a space between them.
func (t Text) joined() passage {
	p := passage{text: strings.Join(t.Lines, " "), of: t}
	at := 0
	for _, l := range t.Lines {
		p.starts = append(p.starts, at)
		at += utf8.RuneCountInString(l) + 1
	}
	return p
}

// pos is the place in the file of a character of the passage, from 0.
func (p passage) pos(at int) fault.Pos {
	line := sort.SearchInts(p.starts, at+1) - 1
	if line < 0 {
		return fault.Pos{Line: p.of.First}
	}
	return p.of.Pos(line, at-p.starts[line])
}
