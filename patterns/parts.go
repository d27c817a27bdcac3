package patterns

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

var partKeys = keys{"name", "worked", "from", "text", "rounds", "rows"}

const partHelp = "Write the parts as a list:\nparts:\n  - name: Body\n    worked: rounds\n    text: |\n      Rnd 1: …"

// parts reads the list of parts, or the one part whose words stand in the file
// itself.
func (r *reader) parts(root *yaml.Node, m map[string]entry) []Part {
	e, ok := m["parts"]
	loose := entry{}
	for _, k := range []string{"text", "rounds", "rows"} {
		if m[k].key != nil {
			loose = m[k]
		}
	}
	switch {
	case !ok && loose.key == nil:
		r.at(root, codePart, "the pattern has no parts", partHelp)
		return nil
	case !ok:
		list := r.part(loose.key, m, false).pieces(r.p.Sizes)
		for i := range list {
			for j := range list[:i] {
				if strings.EqualFold(list[j].Name, list[i].Name) {
					list[i].Name += fmt.Sprintf(" %d", i+1)
				}
			}
		}
		return list
	case loose.key != nil:
		r.at(loose.key, codePart, fmt.Sprintf("%s stands beside \"parts\"", quote(loose.name())), "Move these words into one of the parts.")
	case m["worked"].key != nil:
		r.at(m["worked"].key, codePart, "\"worked\" stands beside \"parts\"", "Move it into the part it is about.")
	}
	if e.value.Kind != yaml.SequenceNode {
		r.wrongType(e, "a list", partHelp)
		return nil
	}
	if len(e.value.Content) == 0 {
		r.at(e.value, codePart, "the pattern has no parts", partHelp)
	}
	return r.partList(e.value.Content)
}

func (r *reader) partList(nodes []*yaml.Node) []Part {
	var list []Part
	seen := map[string]int{}
	for _, n := range nodes {
		if r.beyond(n, len(list), maxParts, "parts") {
			break
		}
		if n.Kind != yaml.MappingNode {
			r.at(n, codeType, "a part must be a set of keys", partHelp)
			continue
		}
		before := len(r.faults)
		m := r.mapping(n, "a part", partKeys)
		p := r.part(n, m, len(r.faults) > before)
		id := strings.ToLower(p.Name)
		switch {
		case p.Name == "" && len(nodes) > 1:
			r.add(p.Pos, 1, codePart, "this part has no name", "Where there are several parts, each needs a name: name: Brim.")
		case seen[id] > 0:
			r.add(p.Pos, 1, codeDuplicate, fmt.Sprintf("there are two parts named %s, the first in line %d", quote(p.Name), seen[id]), "Give each part a name of its own.")
		default:
			seen[id] = p.Line
		}
		if p.From != "" && !r.full() {
			r.from(p, list)
		}
		for _, piece := range p.pieces(r.p.Sizes) {
			id := strings.ToLower(piece.Name)
			if piece.Name != p.Name && seen[id] > 0 {
				piece.Name = p.Called() + ", " + piece.Name
			}
			seen[strings.ToLower(piece.Name)] = p.Line
			list = append(list, piece)
		}
	}
	return list
}

// from checks that the part another is worked from has been made before.
func (r *reader) from(p Part, before []Part) {
	if on, _ := base(before, p.From); on >= 0 || len(before) > 0 && (Slit(p.From) || ownWords(p.From)) {
		return
	}
	var names []string
	for _, b := range before {
		if b.Name != "" {
			names = append(names, b.Name)
		}
	}
	message := fmt.Sprintf("%s names no part that comes before this one", quote(p.From))
	if near := nearestIn(p.From, names); near != "" {
		message += fmt.Sprintf(" – did you mean %q?", near)
	}
	help := "Write it as: from: Brim row ends, and put the part it begins from first."
	if len(names) > 0 {
		help = fmt.Sprintf("The parts before this one are: %s. %s", listed(names), help)
	}
	r.add(p.FromPos, len([]rune(p.From)), codePart, message, help)
}

// whichEdge are the words that say which edge or side of a piece is meant.
var whichEdge = []string{"the", "lower", "upper", "top", "bottom", "neck", "front", "back", "left", "right", "long", "short", "outer", "inner", "cast-on",
	"foundation", "row"}

// ownWords reports whether the part before is meant, of which only an edge is named:
// "row ends", "last round".
func ownWords(from string) bool {
	if words := strings.Fields(strings.ToLower(from)); len(words) > 0 && len(words) <= 4 && slices.Contains([]string{"edge", "edges", "side", "sides"}, words[len(words)-1]) {
		// "lower edge", "the long side"
		return !slices.ContainsFunc(words[:len(words)-1], func(w string) bool { return !slices.Contains(whichEdge, w) })
	}
	switch strings.ToLower(strings.TrimPrefix(strings.TrimPrefix(from, "the "), "ends of ")) {
	case "row ends", "rows", "last round", "last rnd", "last row", "previous part", "top edge", "side edges", "sides":
		return true
	}
	return false
}

// nearestIn is the name that the first words of a phrase probably mean.
func nearestIn(phrase string, names []string) string {
	words := strings.Fields(phrase)
	for n := min(len(words), 5); n > 0; n-- {
		if near := nearest(strings.Join(words[:n], " "), names); near != "" {
			return near
		}
	}
	return ""
}

// part reads one part from its keys; n is where it begins. Faulty keys may be
// why the words are missing, which is then not said again.
func (r *reader) part(n *yaml.Node, m map[string]entry, faulty bool) Part {
	p := Part{Pos: pos(n), Name: r.str(m["name"])}
	if p.From = r.str(m["from"]); p.From != "" {
		p.FromPos = r.text(m["from"].value).joined().pos(0)
	}
	words := entry{}
	for _, k := range []string{"text", "rounds", "rows"} {
		switch e := m[k]; {
		case e.key == nil:
		case words.key != nil:
			r.at(e.key, codePart, fmt.Sprintf("the words are given twice: as %s and as %s", quote(words.name()), quote(e.name())),
				"Put them together under \"text\", in the order they are worked.")
		default:
			words = e
		}
	}
	if words.key == nil {
		if faulty {
			return p
		}
		r.at(n, codePart, fmt.Sprintf("%s has no words", p.title()), partHelp)
		return p
	}
	if r.paragraphs(words) != "" {
		p.Text = r.text(words.value)
	} else if !words.given() || words.value.Kind == yaml.ScalarNode {
		r.at(words.key, codePart, fmt.Sprintf("%s has no words", p.title()), "Write them on the lines below, indented, and put | behind the colon.")
	}
	p.Rows = r.worked(m["worked"], words, p)
	return p
}

// title names the part in messages.
func (p Part) title() string {
	if p.Name == "" {
		return "the part"
	}
	return "the part " + quote(p.Name)
}

// workedWords are the ways of saying how a part is worked, true for in rows.
var workedWords = map[string]bool{
	"rounds": false, "round": false, "rnds": false, "rnd": false, "circular": false,
	"spiral": false, "spirals": false, "spiral rounds": false, "tube": false,
	"rows": true, "row": true, "flat": true, "straight": true, "turned": true,
	"turned rows": true, "back and forth": true, "to and fro": true,
}

// worked reads whether a part is in rows. Where the file does not say, the key
// of the words or the labels of their lines do.
func (r *reader) worked(e, words entry, p Part) (rows bool) {
	if s := r.str(e); s != "" {
		name := strings.ToLower(s)
		for _, prefix := range []string{"worked ", "in ", "a ", "the ", "joined ", "continuous "} {
			name = strings.TrimPrefix(name, prefix)
		}
		rows, ok := workedWords[name]
		if !ok {
			message := fmt.Sprintf("unknown way to work: %s", quote(s))
			if near := nearest(name, []string{"rounds", "rows", "flat"}); near != "" {
				message += fmt.Sprintf(" – did you mean %q?", near)
			}
			r.at(e.value, codeValue, message, "A part is worked in rounds or in rows.")
		}
		return rows
	}
	switch strings.ToLower(words.name()) {
	case "rounds":
		return false
	case "rows":
		return true
	}
	if len(p.Text.Lines) == 0 {
		return false
	}
	found := map[label]int{}
	for _, l := range p.Text.Lines {
		found[labelOf(l)]++
	}
	if l := p.starts(r.p.Sizes); len(l) > 1 {
		return l[0].rows // each by its own labels
	}
	if (found[roundLabel] > 0) == (found[rowLabel] > 0) {
		why := "its lines have no labels such as Rnd 1 or Row 1"
		if found[rowLabel] > 0 {
			why = "some of its lines are labelled as rounds and some as rows"
		}
		r.at(words.key, codePart, fmt.Sprintf("it is not said whether %s is worked in rounds or in rows", p.title()),
			fmt.Sprintf("Say it with worked: rounds or worked: rows; %s.", why))
	}
	return found[rowLabel] > 0
}
