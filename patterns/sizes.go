package patterns

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"whorl/patterns/fault"
)

// named is a piece of text with its place.
type named struct {
	text string
	pos  fault.Pos
}

// list reads a list of short texts: a YAML list, or words with commas.
func (r *reader) list(e entry) []named {
	var list []named
	switch e.value.Kind {
	case yaml.SequenceNode:
		for _, n := range e.value.Content {
			if n.Kind != yaml.ScalarNode || isNull(n) {
				r.at(n, codeType, fmt.Sprintf("an entry of %s must be text", quote(e.name())), "")
				continue
			}
			r.hash(n)
			list = append(list, named{strings.Join(strings.Fields(n.Value), " "), pos(n)})
		}
	case yaml.ScalarNode:
		r.hash(e.value)
		line := r.text(e.value).joined()
		at := 0
		for _, s := range strings.Split(line.text, ",") {
			u := []rune(s)
			lead := len(u) - len([]rune(strings.TrimLeft(s, " \t")))
			list = append(list, named{strings.TrimSpace(s), line.pos(at + lead)})
			at += len(u) + 1
		}
	default:
		r.wrongType(e, "a list", "Write it as [Small, Medium, Large].")
	}
	return list
}

// sizes reads the names of the sizes: a list, "S, M, L" or "S (M, L)".
func (r *reader) sizes(e entry) []string {
	if !e.given() {
		return []string{""}
	}
	list := r.list(e)
	if e.value.Kind == yaml.ScalarNode {
		list = tradeList(list)
	}
	if len(list) > MaxSizes {
		r.at(e.value, codeLimit, fmt.Sprintf("%d sizes are more than the %d that can be worked", len(list), MaxSizes), "")
		list = list[:MaxSizes]
	}
	var names []string
	seen := map[string]bool{}
	for _, s := range list {
		id := strings.ToLower(s.text)
		switch {
		case s.text == "":
			r.add(s.pos, 1, codeSize, "a size has no name", "Take out the comma or write the name.")
		case seen[id]:
			r.add(s.pos, len([]rune(s.text)), codeDuplicate, fmt.Sprintf("there are two sizes named %s", quote(s.text)), "Give each size a name of its own.")
		default:
			names = append(names, s.text)
			seen[id] = true
		}
	}
	if len(names) == 0 {
		if len(list) == 0 && e.value.Kind == yaml.SequenceNode {
			r.at(e.value, codeSize, "the list of sizes is empty", "Name the sizes, or leave the key out for one size.")
		}
		return []string{""}
	}
	return names
}

// tradeList takes the brackets out of "S (M, L)", already divided at its
// commas.
func tradeList(list []named) []named {
	head, first, ok := strings.Cut(list[0].text, "(")
	last := &list[len(list)-1]
	if !ok || strings.TrimSpace(head) == "" || !strings.HasSuffix(last.text, ")") {
		return list
	}
	last.text = strings.TrimSpace(strings.TrimSuffix(last.text, ")"))
	if len(list) == 1 {
		first = strings.TrimSuffix(first, ")")
	}
	p := list[0].pos
	p.Column += len([]rune(head)) + 1
	out := []named{{strings.TrimSpace(head), list[0].pos}, {strings.TrimSpace(first), p}}
	return append(out, list[1:]...)
}

// sizeHelp names the sizes, for faults of lists that do not match them.
func (r *reader) sizeHelp() string {
	if len(r.p.Sizes) == 1 {
		if r.p.Sizes[0] == "" {
			return "This file names no sizes (sizes: [Small, Large]), so it has one length."
		}
		return fmt.Sprintf("The only size is %s.", r.p.Sizes[0])
	}
	return fmt.Sprintf("The sizes are %s. Give one length for each, smallest first, or one for all.", listed(r.p.Sizes))
}

// fit reads the head sizes and the ease.
func (r *reader) fit(head, ease entry) {
	heads := r.lengths(head)
	for i, h := range heads {
		if h.MM <= 0 {
			r.add(h.pos, h.length, codeLength, fmt.Sprintf("a head cannot measure %s", h.Length), "Give the distance around the head.")
			heads[i].MM = 0
		}
	}
	eases := r.lengths(ease)
	if len(heads) == len(eases) {
		for i := range heads {
			h, e := heads[i], eases[i]
			if h.MM == 0 || -h.MM < e.MM && e.MM < h.MM {
				continue
			}
			message := fmt.Sprintf("an ease of %s leaves nothing of a head of %s", e.Length, h.Length)
			if e.MM > 0 {
				message = fmt.Sprintf("an ease of %s makes more than twice a head of %s", e.Length, h.Length)
			}
			r.add(e.pos, e.length, codeLength, message, "The ease is what is added to the head, below 0 for a hat that hugs. Check the number and its unit.")
			break
		}
	}
	r.p.Head, r.p.Ease = plainLengths(heads), plainLengths(eases)
}

// placed is a length with its place in the file.
type placed struct {
	Length
	pos    fault.Pos
	length int
}

func plainLengths(list []placed) Lengths {
	var l Lengths
	for _, p := range list {
		l = append(l, p.Length)
	}
	return l
}

// lengths reads one length for each size: a list in the trade's style, a YAML
// list, or a mapping from size to length. One length is for all sizes.
func (r *reader) lengths(e entry) []placed {
	if !e.given() {
		return nil
	}
	var list []placed
	var ok bool
	switch e.value.Kind {
	case yaml.MappingNode:
		return r.lengthsBySize(e)
	case yaml.SequenceNode:
		list, ok = r.lengthsInList(e)
	default:
		r.hash(e.value)
		list, ok = r.measures(r.text(e.value).joined())
	}
	if !ok {
		return nil
	}
	n := len(r.p.Sizes)
	if len(list) == 1 {
		for len(list) < n {
			list = append(list, list[0])
		}
	}
	if len(list) != n {
		help := r.sizeHelp()
		if decimalComma(e.value.Value) {
			help += " Write decimals with a point: 5.5 cm."
		}
		r.at(e.value, codeSize, fmt.Sprintf("%s has %s for %s", quote(e.name()), plural(len(list), "length"), plural(n, "size")), help)
		return nil
	}
	return list
}

func plural(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return fmt.Sprintf("%d %s", n, what)
}

// measures reads a list of lengths from words.
func (r *reader) measures(line passage) ([]placed, bool) {
	m, bad := readMeasures(line.text)
	if bad != nil {
		r.misread(line, bad, codeLength)
		return nil, false
	}
	list := make([]placed, len(m))
	for i := range m {
		list[i] = placed{m[i].Length, line.pos(m[i].at), m[i].length}
	}
	return list, true
}

// misread reports what is wrong in a passage at its place.
func (r *reader) misread(line passage, bad *misread, code string) {
	r.add(line.pos(bad.at), bad.length, code, bad.message, bad.help)
}

// lengthsInList reads [41, 50, 56 cm]: the unit behind each entry or behind
// the last.
func (r *reader) lengthsInList(e entry) (list []placed, ok bool) {
	if n := len(e.value.Content); n == 0 || n > MaxSizes {
		r.at(e.value, codeSize, fmt.Sprintf("%s has %s for %s", quote(e.name()), plural(n, "length"), plural(len(r.p.Sizes), "size")), r.sizeHelp())
		return nil, false
	}
	behind := ""
	if last := e.value.Content[len(e.value.Content)-1]; last.Kind == yaml.ScalarNode {
		if m, bad := readMeasures(last.Value); bad == nil {
			behind = " " + m[len(m)-1].Unit
		}
	}
	ok = true
	for _, n := range e.value.Content {
		l, good := r.oneOf(n, behind)
		list, ok = append(list, l), ok && good
	}
	return list, ok
}

// oneOf reads a node that is a single length, with a unit to use if it has
// none.
func (r *reader) oneOf(n *yaml.Node, unit string) (placed, bool) {
	if n.Kind != yaml.ScalarNode || isNull(n) {
		r.at(n, codeType, "a length is missing here", unitsKnown)
		return placed{}, false
	}
	r.hash(n)
	line := r.text(n).joined()
	if _, bad := readMeasures(line.text); bad != nil && unit != "" {
		if _, bad := readMeasures(line.text + unit); bad == nil {
			line.text += unit
		}
	}
	list, ok := r.measures(line)
	if ok && len(list) != 1 {
		r.misread(line, oneLength(len(list), line.text), codeLength)
		ok = false
	}
	if !ok {
		return placed{}, false
	}
	return list[0], true
}

// lengthsBySize reads {Baby: 41 cm, Child: 50 cm}.
func (r *reader) lengthsBySize(e entry) []placed {
	list := make([]placed, len(r.p.Sizes))
	found := make([]bool, len(r.p.Sizes))
	complete := true
	for _, f := range r.entries(e.value, strings.ToLower) {
		i, ok := r.size(f.name(), pos(f.key))
		if !ok {
			complete = false
			continue
		}
		l, ok := r.oneOf(f.value, "")
		list[i], found[i] = l, true
		complete = complete && ok
	}
	var missing []string
	for i, ok := range found {
		if !ok {
			missing = append(missing, r.p.Sizes[i])
		}
	}
	if complete && len(missing) > 0 {
		r.at(e.key, codeSize, fmt.Sprintf("%s has no length for %s", quote(e.name()), listed(missing)), r.sizeHelp())
	}
	if !complete || len(missing) > 0 {
		return nil
	}
	return list
}

// size is the index of the size with a name; an unknown one is a fault.
func (r *reader) size(name string, at fault.Pos) (int, bool) {
	for i, s := range r.p.Sizes {
		if strings.EqualFold(s, name) && s != "" {
			return i, true
		}
	}
	message := fmt.Sprintf("there is no size %s", quote(name))
	if near := nearest(name, r.p.Sizes); near != "" {
		message += fmt.Sprintf(" – did you mean %q?", near)
	}
	help := fmt.Sprintf("The sizes are %s.", listed(r.p.Sizes))
	if r.p.Sizes[0] == "" {
		help = "This file names no sizes: add them with sizes: [Small, Large]."
	}
	r.add(at, len([]rune(name)), codeSize, message, help)
	return 0, false
}
