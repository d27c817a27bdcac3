// Package fault is the error value of the whole project: a fault in a pattern,
// with its place in the file, what is wrong in the trade's words and what to
// do next.
package fault

import (
	"fmt"
	"sort"
	"strings"
)

// Pos is a place in a pattern file. Line and Column count from 1; a column
// counts characters, not bytes. The zero Pos is "somewhere in the file".
type Pos struct {
	Line, Column int
}

// Severity is how much a fault matters.
type Severity string

const (
	// Error: the pattern cannot be right as it stands.
	Error Severity = "error"
	// Warning: it can be worked, but something should be looked at.
	Warning Severity = "warning"
)

// Fault is one thing wrong with a pattern. It is an error.
type Fault struct {
	Code     string // stable short name, such as "count" or "unknown-key"
	Severity Severity
	File     string
	Pos
	// Length is how many characters the caret line underlines, at least 1.
	Length int
	Size   string // name of the size it occurs in, "" for all
	Round  string // label of the round, "" outside the rounds
	// Called is the line that calls for the words the fault is in, when that is
	// another: of "Rep Rnd 3". Faults are sorted by it.
	Called int
	// Message is one line: what is wrong.
	Message string
	// Help is what to do next, in one or more lines; it may be empty.
	Help string
	// Source is the whole line of the file that the fault stands in.
	Source string
}

// Error is the fault in full: place and message, the line with a caret under
// the place, and the help.
func (f *Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.Head())
	if f.Source != "" && f.Column > 0 {
		src := []rune(strings.TrimRight(f.Source, "\r\n"))
		indent := 0
		for indent < len(src) && (src[indent] == ' ' || src[indent] == '\t') {
			indent++
		}
		col := f.Column - 1
		if col < indent {
			col = indent
		}
		if col > len(src) {
			col = len(src)
		}
		n := f.Length
		if n < 1 {
			n = 1
		}
		if col+n > len(src) {
			n = max(1, len(src)-col)
		}
		fmt.Fprintf(&b, "\n    %s\n    %s%s", string(src[indent:]),
			strings.Repeat(" ", col-indent), strings.Repeat("^", n))
	}
	if f.Help != "" {
		for _, l := range strings.Split(f.Help, "\n") {
			b.WriteString("\n  " + l)
		}
	}
	return b.String()
}

// Head is the first line of the fault: place, message.
func (f *Fault) Head() string {
	s := f.File
	if f.Line > 0 {
		s += fmt.Sprintf(":%d", f.Line)
		if f.Column > 0 {
			s += fmt.Sprintf(":%d", f.Column)
		}
	}
	if s != "" {
		s += ": "
	}
	if f.Severity == Warning {
		s += "warning: "
	}
	return s + f.Message
}

// List is a list of faults. It is an error when it is not empty.
type List []*Fault

func (l List) Error() string { return strings.Join(l.Texts(), "\n") }

// Texts are the faults in full, as people read them. One that occurs alike in
// several sizes is said once. What is wrong in other sizes at the same place is
// summed up in a line each. The line of the file is not shown again for another
// fault at the same place.
func (l List) Texts() []string {
	var texts []string
	for i := 0; i < len(l); i++ {
		f := *l[i]
		sizes := map[string]bool{f.Size: true}
		if j := f.acrossSizes(l, &i, sizes) - 1; j >= 0 && l[j].Pos == f.Pos && l[j].Length == f.Length && l[j].File == f.File && l[j].Code == f.Code {
			f.Source = ""
		}
		text := f.Error()
		for i+1 < len(l) && f.atSamePlace(l[i+1]) && !sizes[l[i+1].Size] {
			i++
			other := *l[i]
			sizes[other.Size] = true
			other.acrossSizes(l, &i, sizes)
			text += "\n  Likewise: " + other.Message + "." + other.remedy()
		}
		texts = append(texts, text)
	}
	return texts
}

// acrossSizes takes the sizes that follow fault i of the list and have the same fault
// into the message, and moves i to the last of them. It gives the first.
func (f *Fault) acrossSizes(l List, i *int, sizes map[string]bool) (first int) {
	first = *i
	names := []string{f.Size}
	for *i+1 < len(l) && l[first].sameBut(l[*i+1]) {
		*i++
		names = append(names, l[*i].Size)
		sizes[l[*i].Size] = true
	}
	if n := len(names); n > 1 {
		f.Message = strings.Replace(f.Message, " in size "+f.Size, " in sizes "+strings.Join(names[:n-1], ", ")+" and "+names[n-1], 1)
	}
	return first
}

// atSamePlace reports whether another fault is of the same sort and at the same
// place, in another size.
func (f *Fault) atSamePlace(g *Fault) bool {
	return f.Size != "" && g.Size != "" && f.Size != g.Size && f.Pos == g.Pos && f.Length == g.Length && f.Code == g.Code &&
		f.Severity == g.Severity && f.File == g.File && f.Called == g.Called
}

// remedy is the last line of the help, which says what would fit, with a space
// before it; that before it where the last says who calls for the words.
func (f *Fault) remedy() string {
	lines := strings.Split(f.Help, "\n")
	if f.Called > 0 && f.Called != f.Line && len(lines) > 1 {
		lines = lines[:len(lines)-1]
	}
	if last := lines[len(lines)-1]; last != "" {
		return " " + last
	}
	return ""
}

// sameBut reports whether another fault says the same of another size.
func (f *Fault) sameBut(g *Fault) bool {
	plain := func(f *Fault) string { return strings.Replace(f.Message, " in size "+f.Size, "", 1) }
	return f.Size != "" && g.Size != "" && f.Size != g.Size && f.Pos == g.Pos && f.Code == g.Code && f.Severity == g.Severity &&
		f.File == g.File && f.Help == g.Help && plain(f) == plain(g) && plain(f) != f.Message
}

// Sort orders the list by the line that calls for the words, then by place, keeping the order of faults at one place.
func (l List) Sort() {
	sort.SliceStable(l, func(i, j int) bool {
		a, b := l[i], l[j]
		if a.File != b.File {
			return a.File < b.File
		}
		if a.called() != b.called() {
			return a.called() < b.called()
		}
		if a.Line != b.Line {
			return a.Line < b.Line
		}
		// On one line, sizes stay in their order.
		return a.Size == "" && b.Size == "" && a.Column < b.Column
	})
}

func (f *Fault) called() int {
	if f.Called > 0 {
		return f.Called
	}
	return f.Line
}

// Err is the list as an error, nil when it is empty.
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	return l
}
