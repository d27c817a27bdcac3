package patterns

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"whorl/patterns/fault"
)

// parse reads the file as YAML and gives its outermost mapping, nil after a
// fault that leaves nothing to read.
func (r *reader) parse(data []byte) *yaml.Node {
	if len(data) > MaxBytes {
		r.add(fault.Pos{}, 0, codeLimit, fmt.Sprintf("the file is larger than %d MB", MaxBytes>>20),
			"A pattern file holds words only. Is this the right file?")
		return nil
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	r.p.Lines = splitLines(string(data))
	if !r.legible() {
		return nil
	}
	feed := &lineFeed{lines: strings.SplitAfter(strings.Join(r.p.Lines, "\n"), "\n")}
	doc, err := decode(yaml.NewDecoder(feed))
	switch {
	case errors.Is(err, io.EOF):
		r.add(fault.Pos{}, 0, codeEmpty, "the file is empty", "whorl new writes a file to begin from.")
		return nil
	case err != nil:
		r.explain(err, feed.next)
		return nil
	}
	root := doc.Content[0]
	if !r.plainOnly(root) {
		return nil
	}
	r.onlyOne(root)
	if root.Kind != yaml.MappingNode {
		if isNull(root) {
			r.add(fault.Pos{}, 0, codeEmpty, "the file is empty", "whorl new writes a file to begin from.")
			return nil
		}
		r.at(root, codeType, "this is not a pattern file: it does not begin with a key such as \"title:\"",
			"whorl new writes a file to begin from.")
		return nil
	}
	return root
}

// decoder is what is needed of a yaml.Decoder.
type decoder interface{ Decode(any) error }

// decode reads the next document. The YAML package promises errors but is not
// ours: should it panic on some input, that is an error as well.
func decode(d decoder) (doc *yaml.Node, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("yaml: %v", p)
		}
	}()
	doc = new(yaml.Node)
	if err := d.Decode(doc); err != nil {
		return nil, err
	}
	if doc.Kind != yaml.DocumentNode || len(doc.Content) == 0 {
		return nil, io.EOF
	}
	return doc, nil
}

// lineFeed hands out a file line by line, so that after an error next is about
// as many lines as the reader of YAML had to see to notice it.
type lineFeed struct {
	lines []string
	next  int
	rest  string
}

func (f *lineFeed) Read(b []byte) (int, error) {
	for f.rest == "" {
		if f.next == len(f.lines) {
			return 0, io.EOF
		}
		f.rest = f.lines[f.next]
		f.next++
	}
	n := copy(b, f.rest)
	f.rest = f.rest[n:]
	return n, nil
}

// splitLines are the lines of a file with any of the usual line ends.
func splitLines(s string) []string {
	s = strings.ReplaceAll(s, "\r\n", "\n")
	s = strings.ReplaceAll(s, "\r", "\n")
	return strings.Split(s, "\n")
}

// legible reports the first place where the file is not plain text.
func (r *reader) legible() bool {
	for i, line := range r.p.Lines {
		column := 0
		for at := 0; at < len(line); column++ {
			c, n := utf8.DecodeRuneInString(line[at:])
			what, help := unreadable(c, n)
			if what != "" {
				r.scrub()
				r.add(fault.Pos{Line: i + 1, Column: column + 1}, 1, codeEncoding, what, help)
				return false
			}
			at += n
		}
		if column > MaxLine {
			r.p.Lines[i] = ""
			r.add(fault.Pos{Line: i + 1}, 1, codeLimit, fmt.Sprintf("this line is longer than %d characters", MaxLine),
				"Divide it into several lines.")
			return false
		}
	}
	return true
}

// unreadable says what is wrong with a character of n bytes, "" for nothing.
func unreadable(c rune, n int) (what, help string) {
	switch {
	case c == utf8.RuneError && n == 1:
		return "this is not UTF-8 text", "Save the file as plain text in UTF-8."
	case c == 0:
		return "there is a NUL character here", "Save the file as plain text in UTF-8 (not UTF-16, not a word processor's own format)."
	case c == '\u0085' || c == '\u2028' || c == '\u2029' || c == '\v' || c == '\f':
		return fmt.Sprintf("there is an invisible line break here (U+%04X)", c), "Delete it and press Enter in its place."
	case c < 0x20 && c != '\t' || c >= 0x7f && c < 0xa0 || c == '\ufeff' || c == '\ufffe' || c == '\uffff':
		return fmt.Sprintf("there is an invisible character here (U+%04X)", c), "Delete it; it may have come along with copied text."
	}
	return "", ""
}

// scrub makes the lines fit to be shown in a message: one mark for every
// character that cannot be shown, and no line without end.
func (r *reader) scrub() {
	for i, line := range r.p.Lines {
		line = strings.Map(func(c rune) rune {
			if c != '\t' && c < 0x20 || c >= 0x7f && c < 0xa0 {
				return utf8.RuneError
			}
			return c
		}, line) // an invalid byte becomes a mark too
		if len(line) > MaxLine {
			line = ""
		}
		r.p.Lines[i] = line
	}
}

// plainOnly reports the first use of what lets one thing stand for another:
// anchors, aliases and tags. A pattern file has no use for them, words that
// begin with *, & or ! are taken for them by accident, and without them a
// short file cannot grow into an endless one.
func (r *reader) plainOnly(n *yaml.Node) bool {
	const help = "Put quotes around words that begin with *, & or !, or put them on the lines below, after |."
	first := '\x00'
	if line := r.line(n.Line); n.Column >= 1 && n.Column <= len(line) {
		first = line[n.Column-1]
	}
	switch {
	case n.Kind == yaml.AliasNode:
		r.add(pos(n), 1+utf8.RuneCountInString(n.Value), codeYAML, fmt.Sprintf("\"*%s\" stands for another place of the file in YAML; pattern files do without", n.Value), help)
		return false
	case n.Anchor != "":
		r.add(pos(n), 1+utf8.RuneCountInString(n.Anchor), codeYAML, fmt.Sprintf("\"&%s\" names a place of the file in YAML; pattern files do without", n.Anchor), help)
		return false
	case first == '!' && (n.Kind == yaml.ScalarNode || n.Style&yaml.TaggedStyle != 0):
		r.add(pos(n), 1, codeYAML, "words that begin with \"!\" mean something else in YAML", help)
		return false
	}
	for _, c := range n.Content {
		if !r.plainOnly(c) {
			return false
		}
	}
	return true
}

// onlyOne reports a second document in the file. YAML begins one with a line
// of three hyphens, or after a line of three points.
func (r *reader) onlyOne(root *yaml.Node) {
	for i := root.Line; i < len(r.p.Lines); i++ {
		l := strings.TrimRight(r.p.Lines[i], " \t")
		ended := l == "..." && strings.TrimSpace(strings.Join(r.p.Lines[i+1:], "")) != ""
		if ended || l == "---" || strings.HasPrefix(l, "--- ") || strings.HasPrefix(l, "---\t") {
			r.add(fault.Pos{Line: i + 1, Column: 1}, 3, codeYAML, "a second pattern begins here",
				"A file holds one pattern: put the second in a file of its own, or delete this line.")
			return
		}
	}
}
