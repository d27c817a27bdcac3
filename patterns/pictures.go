package patterns

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

var (
	pictureKeys = keys{"name", "draw", "part", "rounds|rows|round|row|rnds", "sizes|size", "repeats", "page|paper", "width",
		"hand", "sc", "colours|colors", "ground", "tint", "changes", "counts", "numbers", "print"}
	drawings = []string{"round", "wedge", "rows", "panel", "schematic", "shaping", "form", "writeup"}
	papers   = []string{"A4", "Letter", "square", "tall"}
)

const (
	maxRound   = 100_000 // the highest number of a round
	maxRepeats = 1000
	minWidth   = 16 // pixels
	maxWidth   = 20_000
)

const pictureHelp = "Write the pictures as a list:\npictures:\n  - {name: crown, draw: round, rounds: 1-8}"

// pictures reads the list of pictures asked for.
func (r *reader) pictures(e entry) []Picture {
	if !r.given(e, yaml.SequenceNode, "a list", pictureHelp) {
		return nil
	}
	var list []Picture
	seen := map[string]int{}
	for _, n := range e.value.Content {
		if r.beyond(n, len(list), maxPictures, "pictures") {
			break
		}
		if n.Kind != yaml.MappingNode {
			r.at(n, codeType, "a picture must be a set of keys", pictureHelp)
			continue
		}
		p, ok := r.picture(n)
		if !ok {
			continue
		}
		id := strings.ToLower(p.Name)
		if first := seen[id]; first > 0 {
			r.at(n, codeDuplicate, fmt.Sprintf("there are two pictures named %s, the first in line %d", quote(p.Name), first),
				"Give each picture a name of its own: its file is named after it.")
			continue
		}
		seen[id] = p.Line
		list = append(list, p)
	}
	return list
}

// picture reads one picture. It is not one if it does not say what to draw.
func (r *reader) picture(n *yaml.Node) (Picture, bool) {
	m := r.mapping(n, "a picture", pictureKeys)
	p := Picture{Pos: pos(n)}
	var ok bool
	if !m["draw"].given() {
		r.at(n, codePicture, "this picture does not say what to draw", fmt.Sprintf("Add draw: with one of %s.", listed(drawings)))
	} else if s := r.str(m["draw"]); s != "" {
		p.Draw, ok = r.oneWord(m["draw"], s, drawings)
	}
	p.Name = r.pictureName(m["name"], p.Draw)
	p.Part = r.pictureOf(m["part"])
	p.From, p.To = r.rounds(m["rounds"])
	p.Sizes, p.Nested = r.pictureSizes(m["sizes"])
	if p.Nested && p.Draw != "schematic" {
		r.at(m["sizes"].value, codePicture, "only a schematic has its sizes nested", "Name the sizes, or write sizes: all.")
	}
	p.Repeats = r.integer(m["repeats"], 1, maxRepeats, "")
	p.Width = r.integer(m["width"], minWidth, maxWidth, "px")
	r.page(m["page"], &p)
	p.LeftHanded = r.choice(m["hand"], "right", "left")
	p.Cross = r.choice(m["sc"], "plus", "cross")
	p.Black = r.choice(m["colours"], "two", "one")
	p.Clear = r.choice(m["ground"], "white", "none")
	p.Tint = r.choice(m["tint"], "none", "repeat")
	p.Changes = r.choice(m["changes"], "none", "marked")
	p.Counts = r.choice(m["counts"], "none", "ends")
	p.Fives = r.choice(m["numbers"], "rounds", "fives")
	p.Large = r.choice(m["print"], "usual", "large")
	return p, ok
}

// A picture for a post is as many pixels wide as postWidth unless the file says
// otherwise; a tall one is five high for four wide (common practice, no source).
const (
	postWidth          = 1080
	tallHigh, tallWide = 5, 4
	leastPost          = 400 // pixels
	longestPost        = 3   // times as long as it is wide
)

const pageHelp = "It is one of A4, Letter, square and tall, or a size in pixels as in 1080 x 1350 px."

// page reads what a picture is set on: paper, or a post of a size in pixels.
func (r *reader) page(e entry, p *Picture) {
	s := r.str(e)
	if s == "" {
		return
	}
	if wide, tall, ok := pixels(s); ok {
		if min(wide, tall) < leastPost || max(wide, tall) > maxWidth || max(wide, tall) > longestPost*min(wide, tall) {
			r.at(e.value, codeValue, fmt.Sprintf("a page cannot be %d × %d pixels", wide, tall),
				fmt.Sprintf("A side has %d to %d pixels, the longer at most %d times as many as the shorter.", leastPost, maxWidth, longestPost))
			return
		}
		p.Pixels = [2]int{wide, tall}
	} else {
		word, known := r.oneWord(e, s, papers, pageHelp)
		wide := max(p.Width, leastPost)
		if p.Width == 0 {
			wide = postWidth
		}
		switch {
		case !known:
			return
		case word == "square":
			p.Pixels = [2]int{wide, wide}
		case word == "tall":
			p.Pixels = [2]int{wide, wide * tallHigh / tallWide}
		default:
			p.Paper = word
			return
		}
	}
	switch p.Draw {
	case "schematic", "shaping", "form", "writeup":
		r.at(e.value, codeValue, fmt.Sprintf("draw: %s is set on paper, and cannot have %s for a page", p.Draw, quote(s)),
			"Write page: A4 or page: Letter; width: gives the pixels of its PNG.")
	}
}

// pixels reads "1080 x 1350 px".
func pixels(s string) (wide, tall int, ok bool) {
	s = strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(strings.ToLower(s), "pixels"), "px"))
	a, b, ok := strings.Cut(strings.NewReplacer("×", "x", "*", "x").Replace(s), "x")
	if !ok {
		return 0, 0, false
	}
	wide, err := strconv.Atoi(strings.TrimSpace(a))
	if err == nil {
		tall, err = strconv.Atoi(strings.TrimSpace(b))
	}
	return wide, tall, err == nil
}

// choice reads one of two words, the usual one or the other, and tells whether
// it is the other.
func (r *reader) choice(e entry, usual, other string) bool {
	s := r.str(e)
	if s == "" {
		return false
	}
	word, _ := r.oneWord(e, s, []string{usual, other})
	return word == other
}

// oneWord is a value that must be one of a few words.
func (r *reader) oneWord(e entry, written string, known []string, help ...string) (string, bool) {
	for _, k := range known {
		if strings.EqualFold(k, written) {
			return k, true
		}
	}
	message := fmt.Sprintf("unknown value %s for %s", quote(written), quote(e.name()))
	if near := nearest(written, known); near != "" {
		message += fmt.Sprintf(" – did you mean %q?", near)
	}
	r.at(e.value, codeValue, message, cmp.Or(strings.Join(help, " "), fmt.Sprintf("It is one of %s.", listed(known))))
	return known[0], false
}

// pictureName reads the name, which becomes the name of a file. A picture
// without one is named after what it draws.
func (r *reader) pictureName(e entry, draw string) string {
	name := r.str(e)
	if name == "" {
		return draw
	}
	if strings.ContainsAny(name, `/\:*?"<>|`) || strings.HasPrefix(name, ".") || strings.HasSuffix(name, ".") || len(name) > 100 {
		r.at(e.value, codePicture, fmt.Sprintf("%s cannot be the name of a file", quote(name)),
			"Use letters, figures, spaces and hyphens, at most 100.")
	}
	return name
}

// pictureOf reads the part a picture shows, by the part's own spelling.
func (r *reader) pictureOf(e entry) string {
	name := r.str(e)
	if name == "" {
		return ""
	}
	var names []string
	for _, p := range r.p.Parts {
		if strings.EqualFold(p.Name, name) {
			return p.Name
		}
		if p.Name != "" {
			names = append(names, p.Name)
		}
	}
	message := fmt.Sprintf("there is no part %s", quote(name))
	if near := nearest(name, names); near != "" {
		message += fmt.Sprintf(" – did you mean %q?", near)
	}
	help := "The only part has no name: leave this key out."
	if len(names) > 0 {
		help = fmt.Sprintf("The parts are %s.", listed(names))
	}
	r.at(e.value, codePart, message, help)
	return ""
}

// rounds reads "9-14" or "9"; 0, 0 are all rounds.
func (r *reader) rounds(e entry) (from, to int) {
	s := strings.ToLower(r.str(e))
	if s == "" || s == "all" {
		return 0, 0
	}
	first, last, isRange := strings.Cut(strings.NewReplacer("–", "-", "—", "-", " to ", "-").Replace(s), "-")
	from, err := strconv.Atoi(strings.TrimSpace(first))
	to = from
	if isRange && err == nil {
		to, err = strconv.Atoi(strings.TrimSpace(last))
	}
	if err != nil || from < 1 || to > maxRound {
		r.at(e.value, codeValue, fmt.Sprintf("%s does not name rounds", quote(s)), "Write the first and the last as in rounds: 9-14, or one number.")
		return 0, 0
	}
	if from > to {
		r.at(e.value, codeValue, fmt.Sprintf("round %d comes after round %d", from, to), "Write the lower number first.")
		return to, from
	}
	return from, to
}

// pictureSizes reads the sizes of a picture: a name, several, "all", or "nested"
// for all of them in one another.
func (r *reader) pictureSizes(e entry) (names []string, nested bool) {
	if !e.given() {
		return nil, false
	}
	if e.value.Kind == yaml.ScalarNode {
		whole := r.str(e)
		for _, s := range r.p.Sizes {
			if s != "" && strings.EqualFold(s, whole) {
				return []string{s}, false
			}
		}
		if nested = strings.EqualFold(whole, "nested"); nested || strings.EqualFold(whole, "all") {
			return append([]string(nil), r.p.Sizes...), nested
		}
	}
	seen := map[int]bool{}
	for _, s := range r.list(e) {
		if i, ok := r.size(s.text, s.pos); ok && !seen[i] {
			seen[i] = true
			names = append(names, r.p.Sizes[i])
		}
	}
	return names, false
}

// integer reads a whole number within bounds, 0 where it is not given; unit
// may stand behind it.
func (r *reader) integer(e entry, low, high int, unit string) int {
	s := r.str(e)
	if s == "" {
		return 0
	}
	figures := s
	if unit != "" {
		figures = strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(s, "pixels"), unit))
	}
	n, err := strconv.Atoi(figures)
	if err != nil || n < low || n > high {
		r.at(e.value, codeValue, fmt.Sprintf("%s cannot be %s", quote(e.name()), quote(s)), fmt.Sprintf("It is a whole number from %d to %d.", low, high))
		return 0
	}
	return n
}
