package patterns

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"whorl/patterns/fault"
)

// The limits of a pattern file. They are far above what any pattern needs and
// keep the work bounded for files that are not patterns.
const (
	MaxBytes = 4 << 20 // of the whole file
	MaxLine  = 10_000  // characters in one line
	MaxSizes = 40

	maxParts    = 200
	maxStitches = 500
	maxPictures = 500
	maxGauges   = 100
	maxFaults   = 50
)

// Codes of the faults of this package.
const (
	codeEncoding  = "encoding"      // bytes that are not text
	codeLimit     = "limit"         // too much of something
	codeYAML      = "yaml"          // the layout of the file
	codeEmpty     = "empty"         // nothing where something is needed
	codeUnknown   = "unknown-key"   // a key that does not exist
	codeDuplicate = "duplicate"     // a key or a name given twice
	codeType      = "type"          // a list where text is wanted, and so on
	codeValue     = "unknown-value" // a value that is none of the known ones
	codeSize      = "size"          // sizes, and numbers of sizes
	codeLength    = "length"        // a length that cannot be read or be right
	codeGauge     = "gauge"
	codePart      = "part"
	codePicture   = "picture"
	codeYarn      = "yarn"   // what was weighed
	codeSymbol    = "symbol" // a symbol of the designer's own
)

// Read reads a pattern file. The file's name is used in faults only.
//
// The error is a [fault.List] sorted by place, with every fault that can be
// found in one go. The Pattern is never nil: beside an error it holds what
// could be read, enough to show its lines but not to be worked.
func Read(file string, data []byte) (*Pattern, error) {
	r := &reader{p: &Pattern{File: file, Sizes: []string{""}}}
	if root := r.parse(data); root != nil {
		r.pattern(root)
	}
	r.faults.Sort()
	if r.more {
		f := r.p.Fault(fault.Pos{}, 0, codeLimit,
			fmt.Sprintf("there are more faults than the %d above", maxFaults),
			"Put those right first and try again.")
		r.faults = append(r.faults, f)
	}
	return r.p, r.faults.Err()
}

// reader fills a Pattern from the nodes of its file and gathers the faults.
type reader struct {
	p      *Pattern
	faults fault.List
	more   bool // faults were left out

	runesOf int // line number of runes, kept because nodes come in order
	runes   []rune
}

// add reports a fault at a place.
func (r *reader) add(pos fault.Pos, length int, code, message, help string) {
	if last := len(r.p.Lines); pos.Line > last {
		// YAML puts what is missing at the end behind the last line.
		pos = fault.Pos{Line: last, Column: utf8.RuneCountInString(r.p.Lines[last-1]) + 1}
	}
	for _, f := range r.faults {
		if f.Pos == pos && f.Message == message {
			return // seen on another way to the same value
		}
	}
	if r.full() {
		return
	}
	r.faults = append(r.faults, r.p.Fault(pos, length, code, message, help))
}

// full reports whether further faults would not be kept, so that nothing need
// be worked out for their messages.
func (r *reader) full() bool {
	if len(r.faults) < maxFaults {
		return false
	}
	r.more = true
	return true
}

// at reports a fault at a node.
func (r *reader) at(n *yaml.Node, code, message, help string) {
	length := 1
	if n.Kind == yaml.ScalarNode && n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) == 0 {
		length = utf8.RuneCountInString(n.Value)
		if n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0 {
			length += 2
		}
	}
	r.add(pos(n), length, code, message, help)
}

func pos(n *yaml.Node) fault.Pos { return fault.Pos{Line: n.Line, Column: n.Column} }

// line is a line of the file as characters, without its line end.
func (r *reader) line(number int) []rune {
	if number < 1 || number > len(r.p.Lines) {
		return nil
	}
	if r.runesOf != number {
		r.runesOf, r.runes = number, []rune(r.p.Lines[number-1])
	}
	return r.runes
}

// keys are the keys that a mapping may have. Each is written as its name and
// its other accepted spellings: "colour|color".
type keys []string

// find gives the name of a key by any of its spellings. Capitals do not
// matter.
func (ks keys) find(written string) (name string, ok bool) {
	for _, k := range ks {
		all := strings.Split(k, "|")
		for _, s := range all {
			if strings.EqualFold(s, strings.TrimSpace(written)) {
				return all[0], true
			}
		}
	}
	return "", false
}

// spellings are all the spellings of all the keys.
func (ks keys) spellings() []string {
	return strings.Split(strings.Join(ks, "|"), "|")
}

// names are the names of the keys, for messages.
func (ks keys) names() []string {
	names := make([]string, len(ks))
	for i, k := range ks {
		names[i], _, _ = strings.Cut(k, "|")
	}
	return names
}

// entry is one key of a mapping with its value.
type entry struct{ key, value *yaml.Node }

// given reports whether the key is there and has a value.
func (e entry) given() bool { return e.value != nil && !isNull(e.value) }

// name is the key as it was written.
func (e entry) name() string { return strings.TrimSpace(e.key.Value) }

// isNull reports whether a node is a value left empty.
func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// entries are the keys of a mapping in their order; keys that are not text,
// empty or given twice are faults and left out.
func (r *reader) entries(n *yaml.Node, name func(string) string) []entry {
	var list []entry
	seen := map[string]*yaml.Node{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		e := entry{n.Content[i], n.Content[i+1]}
		if e.key.Kind != yaml.ScalarNode || strings.TrimSpace(e.key.Value) == "" {
			r.at(e.key, codeType, "a key must be a word or two of text", "")
			continue
		}
		id := name(e.key.Value)
		if first := seen[id]; first != nil {
			r.at(e.key, codeDuplicate,
				fmt.Sprintf("%s is given twice, first in line %d", quote(e.name()), first.Line),
				"Keep one of them.")
			continue
		}
		seen[id] = e.key
		list = append(list, e)
	}
	return list
}

// mapping sorts the entries of a mapping by the names of the known keys. What
// names the mapping for messages: "a picture".
func (r *reader) mapping(n *yaml.Node, what string, known keys) map[string]entry {
	found := map[string]entry{}
	canonical := func(written string) string {
		if name, ok := known.find(written); ok {
			return name
		}
		return written
	}
	for _, e := range r.entries(n, canonical) {
		if name, ok := known.find(e.key.Value); ok {
			found[name] = e
		} else {
			r.unknownKey(e.key, what, known)
		}
	}
	return found
}

func (r *reader) unknownKey(key *yaml.Node, what string, known keys) {
	if r.full() {
		return
	}
	if labelOf(key.Value+":") != noLabel && strings.ContainsAny(key.Value, " 0123456789") {
		r.at(key, codeUnknown, fmt.Sprintf("%s is a line of the words, but stands outside them", quote(key.Value)),
			"Put the words below \"text: |\" and indent every line of them alike, deeper than \"text\".")
		return
	}
	message := fmt.Sprintf("unknown key %s", quote(key.Value))
	if near := nearest(key.Value, known.spellings()); near != "" {
		message += fmt.Sprintf(" – did you mean %q?", near)
	}
	r.at(key, codeUnknown, message, fmt.Sprintf("The keys of %s are: %s.", what, listed(known.names())))
}

// wrongType reports a node that is not of the kind that is wanted.
func (r *reader) wrongType(e entry, wanted, help string) {
	is := "text"
	switch e.value.Kind {
	case yaml.SequenceNode:
		is = "a list"
	case yaml.MappingNode:
		is = "a set of keys"
	}
	r.at(e.value, codeType, fmt.Sprintf("%s must be %s, but this is %s", quote(e.name()), wanted, is), help)
}

// given reports whether a value is given and of a kind; one of another kind is a fault.
func (r *reader) given(e entry, kind yaml.Kind, wanted, help string) bool {
	if e.given() && e.value.Kind != kind {
		r.wrongType(e, wanted, help)
		return false
	}
	return e.given()
}

// beyond reports whether a list has all that it may have, so that what stands at a node is
// too much: a fault. One entry may have added several.
func (r *reader) beyond(n *yaml.Node, has, limit int, of string) bool {
	if has < limit {
		return false
	}
	r.at(n, codeLimit, fmt.Sprintf("there are more than %d %s", limit, of), "")
	return true
}

// str is a value that is one line of text, "" where it is not given.
func (r *reader) str(e entry) string {
	return strings.Join(strings.Fields(r.paragraphs(e)), " ")
}

// paragraphs is a value that is text of any length.
func (r *reader) paragraphs(e entry) string {
	if !e.given() {
		return ""
	}
	if e.value.Kind != yaml.ScalarNode {
		help := "Write it as plain words."
		if e.value.Style&yaml.FlowStyle != 0 {
			help = "Put quotes around words that begin with [ or {."
		} else if e.value.Kind == yaml.MappingNode {
			help = fmt.Sprintf("Put | behind the colon (%s: |) when words with colons follow on the next lines.", e.name())
		}
		r.wrongType(e, "text", help)
		return ""
	}
	r.hash(e.value)
	return strings.TrimSpace(e.value.Value)
}

// numberSign is a # with a figure behind it, which YAML takes for a note.
var numberSign = regexp.MustCompile(`^\s+#[0-9]`)

// hash reports words that were lost behind a number sign: "Cap #2".
func (r *reader) hash(n *yaml.Node) {
	if n.Style != 0 || n.Value == "" {
		return
	}
	t := r.plainText(n)
	if len(t.Lines) == 0 {
		return
	}
	last := len(t.Lines) - 1
	end := t.Pos(last, utf8.RuneCountInString(t.Lines[last]))
	line := r.line(end.Line)
	behind := string(line[min(end.Column-1, len(line)):])
	if lost := numberSign.FindString(behind); lost != "" {
		end.Column += utf8.RuneCountInString(lost) - 2
		r.add(end, 1, codeYAML, "what stands behind # is left out: YAML takes it for a note",
			"Put quotes around the whole, or a space behind # if it is a note.")
	}
}

// quote is written text in quotes, cut short when it is long.
func quote(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if u := []rune(s); len(u) > 60 {
		s = string(u[:58]) + "…"
	}
	return `"` + s + `"`
}

// listed is a list in words: "a, b and c".
func listed(s []string) string {
	if len(s) < 2 {
		return strings.Join(s, "")
	}
	return strings.Join(s[:len(s)-1], ", ") + " and " + s[len(s)-1]
}
