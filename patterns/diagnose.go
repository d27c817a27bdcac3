package patterns

import (
	"regexp"
	"strconv"
	"strings"

	"whorl/patterns/fault"
)

var (
	yamlLine = regexp.MustCompile(`line (\d+): `)
	// lead is what stands before the value on a line: indentation, the hyphens
	// of list items, a key with its colon.
	lead = regexp.MustCompile(`^[ \t]*(?:-[ \t]+)*(?:[^\s:'"\[{][^:]*:[ \t]+)?`)
	// keyOnly is a key whose colon has no space behind it.
	keyOnly = regexp.MustCompile(`^[ \t]*(?:- +)*([A-Za-z]+):[^\s]`)
	// opening is the end of a line that what belongs to it follows below.
	opening = regexp.MustCompile(`(?::|[|>][-+0-9]*)\s*(?:#.*)?$`)
)

// explain turns an error of the YAML package into a fault in plain words. Its
// errors tell little and often name the beginning of what was being read
// instead of the place, so the cause is looked for in the lines themselves;
// seen is how many lines had been read.
func (r *reader) explain(err error, seen int) {
	d := diagnosis{r: r, message: err.Error(), seen: r.lastLine(seen)}
	d.before = r.lastLine(d.seen - 1)
	if m := yamlLine.FindStringSubmatch(d.message); m != nil {
		d.named, _ = strconv.Atoi(m[1])
	}
	if !d.tab() {
		d.cause()
	}
}

// lastLine is the last line up to a number that is neither blank nor a
// comment, 1 where there is none.
func (r *reader) lastLine(number int) int {
	for n := min(number, len(r.p.Lines)); n > 1; n-- {
		if l := strings.TrimSpace(string(r.line(n))); l != "" && l[0] != '#' {
			return n
		}
	}
	return 1
}

// diagnosis looks for the cause of an error of the YAML package.
type diagnosis struct {
	r            *reader
	message      string
	named        int // the line the error names, 0 for none
	seen, before int // the last line that was read, and the one before it
}

func (d *diagnosis) is(part string) bool { return strings.Contains(d.message, part) }

func (d *diagnosis) fault(line, column, length int, message, help string) {
	d.r.add(fault.Pos{Line: line, Column: column}, length, codeYAML, message, help)
}

// tab finds a tab in the indentation.
func (d *diagnosis) tab() bool {
	for _, n := range []int{d.named, d.before, d.seen} {
		line := string(d.r.line(n))
		indent := line[:len(line)-len(strings.TrimLeft(line, " \t"))]
		if at := strings.IndexByte(indent, '\t'); at >= 0 {
			d.fault(n, at+1, 1, "a tab stands where the line is indented",
				"Indent with spaces: YAML does not take tabs there.")
			return true
		}
	}
	return false
}

const blockHelp = "Put quotes around the words, or put them on the lines below, after |."

func (d *diagnosis) cause() {
	n := max(d.named, 1)
	switch {
	case d.is("mapping values are not allowed"):
		d.colon(n)
	case d.is("could not find expected ':'"):
		d.noColon(n)
	case d.is("unexpected end of stream"), d.is("unexpected document indicator"):
		d.fault(n, d.value(n), 1, "this quote is not closed",
			"Close it, or leave out both quotes. For inches inside quotes write \\\" or ″.")
	case d.is("expected ',' or"), d.is("expected node content"):
		d.bracket(min(n+1, len(d.r.p.Lines)))
	case d.is("cannot start any token"), d.is("expected alphabetic"), d.is("directive"), d.is("tag"):
		c := d.value(n)
		d.fault(n, c, 1, "words may not begin with "+quote(d.char(n, c))+" in YAML", blockHelp)
	case d.is("unknown anchor"):
		d.alias()
	case d.is("escape"):
		d.escape()
	case d.is("block sequence entries"):
		d.fault(n, d.value(n), 1, "a list begins here on the line of its key",
			"Put each \"- \" on a line of its own below the key. "+blockHelp)
	case d.is("comment or line break"):
		d.fault(n, d.value(n), 1, "words stand on the line of | or >",
			"End the line there and begin the words on the next one, indented.")
	case d.is("max depth"):
		d.fault(0, 0, 0, "the file is nested too deeply", "whorl new writes a file to begin from.")
	default:
		d.layout()
	}
}

// value is the column where the value of a line begins.
func (d *diagnosis) value(n int) int {
	line := string(d.r.line(n))
	return len([]rune(lead.FindString(line))) + 1
}

func (d *diagnosis) char(n, column int) string {
	if l := d.r.line(n); column <= len(l) {
		return string(l[column-1])
	}
	return ""
}

// colon explains a colon where none can be.
func (d *diagnosis) colon(n int) {
	line := string(d.r.line(n))
	start := d.value(n) - 1
	if at := strings.Index(string([]rune(line)[start:]), ":"); at >= 0 && start > 0 && strings.TrimSpace(lead.FindString(line)) != "" {
		column := start + len([]rune(string([]rune(line)[start:])[:at])) + 1
		d.fault(n, column, 1, "a second colon in one line", blockHelp)
		return
	}
	if before := d.r.lastLine(n - 1); before < n {
		if m := keyOnly.FindStringSubmatchIndex(string(d.r.line(before))); m != nil {
			d.spaceless(before, m[3])
			return
		}
	}
	d.misaligned(n)
}

func (d *diagnosis) spaceless(n, at int) {
	d.fault(n, at+1, 1, "there is no space behind this colon", "Write a space between the colon and what follows it.")
}

// noColon explains a line that is not a key, where only keys can be.
func (d *diagnosis) noColon(n int) {
	line := string(d.r.line(n))
	if m := keyOnly.FindStringSubmatchIndex(line); m != nil {
		d.spaceless(n, m[3])
		return
	}
	column := len(line) - len(strings.TrimLeft(line, " ")) + 1
	d.fault(n, column, len(strings.TrimSpace(line)), "this line is not a key with a colon",
		"If it belongs to the words above it, indent it as far as they are.")
}

// bracket explains a [ or { whose list does not end as it should.
func (d *diagnosis) bracket(n int) {
	for ; n >= 1; n-- {
		if at := strings.IndexAny(string(d.r.line(n)), "[{"); at >= 0 {
			column := len([]rune(string(d.r.line(n))[:at])) + 1
			d.fault(n, column, 1, "the list that begins here is not closed, or lacks a comma",
				"Put a comma between its entries and close it with ] or }. Words that begin with a bracket need quotes around them.")
			return
		}
	}
	d.layout()
}

// alias explains words that begin with a *.
func (d *diagnosis) alias() {
	_, name, _ := strings.Cut(d.message, "'")
	name, _, _ = strings.Cut(name, "'")
	for n := d.seen; n >= 1; n-- {
		if at := strings.Index(string(d.r.line(n)), "*"+name); at >= 0 {
			column := len([]rune(string(d.r.line(n))[:at])) + 1
			d.fault(n, column, 1, `words may not begin with "*" in YAML`, blockHelp)
			return
		}
	}
	d.layout()
}

// escape explains a backslash between double quotes.
func (d *diagnosis) escape() {
	for n := d.seen; n >= 1; n-- {
		if at := strings.IndexByte(string(d.r.line(n)), '\\'); at >= 0 {
			d.fault(n, len([]rune(string(d.r.line(n))[:at]))+1, 2, "a backslash between double quotes stands for something else",
				"Use single quotes, or put the words on the lines below, after |.")
			return
		}
	}
	d.layout()
}

// layout explains a line that does not fit under those above it.
func (d *diagnosis) layout() {
	for _, n := range []int{d.before, d.seen} {
		line, column := d.r.line(n), d.value(n)
		if c := strings.TrimSpace(string(line)); c != "" && strings.ContainsRune("]},", rune(c[0])) {
			d.fault(n, leadingSpaces(line)+1, 1, quote(c[:1])+" stands alone here", "Delete it, or open the list it closes with [ or {.")
			return
		}
		value := line[min(column-1, len(line)):]
		if closing, after := behindClosed(value); after > 0 {
			d.fault(n, column+after, 1, "words follow behind the closing "+string(value[closing]),
				"Put quotes around the whole, or put the words on the lines below, after |. A quote inside single quotes is written twice.")
			return
		}
	}
	for _, n := range []int{d.before, d.seen} {
		if !d.aligned(n) {
			d.misaligned(n)
			return
		}
	}
	d.misaligned(d.seen)
}

func (d *diagnosis) misaligned(n int) {
	line := d.r.line(n)
	column := leadingSpaces(line) + 1
	d.fault(n, column, max(1, len(line)-column+1), "this line does not line up with those above it",
		"Keys that belong together begin in one column; \"- \" begins each entry of a list; words after | are all indented as far as the first of them.")
}

// aligned reports whether a line begins in a column in which an earlier line
// that it can belong to begins.
func (d *diagnosis) aligned(n int) bool {
	column := leadingSpaces(d.r.line(n))
	for m := n - 1; m >= 1; m-- {
		line := d.r.line(m)
		if blank(line) {
			continue
		}
		at := leadingSpaces(line)
		if at == column {
			return line[at] == '-' == (d.r.line(n)[at] == '-')
		}
		for at < column && at+1 < len(line) && line[at] == '-' && line[at+1] == ' ' {
			for at++; at < len(line) && line[at] == ' '; at++ {
			}
			if at == column {
				return true
			}
		}
		if leadingSpaces(line) < column {
			return opening.MatchString(string(line)) // the first below its key
		}
	}
	return column == 0
}

// behindClosed finds words on the line of a value in brackets or quotes, behind
// it: where it is closed and where they begin, 0 for none.
func behindClosed(value []rune) (closing, after int) {
	if len(value) == 0 {
		return 0, 0
	}
	closes := map[rune]rune{'[': ']', '{': '}', '"': '"', '\'': '\''}[value[0]]
	if closes == 0 {
		return 0, 0
	}
	depth := 0
	for i, c := range value {
		switch {
		case i > 0 && c == closes && depth <= 1:
			for after = i + 1; after < len(value) && value[after] == ' '; after++ {
			}
			if after == len(value) || value[after] == '#' {
				return 0, 0
			}
			return i, after
		case c == closes:
			depth--
		case c == value[0]:
			depth++
		}
	}
	return 0, 0
}
