package working

import (
	"fmt"
	"regexp"
	"sort"
	"strconv"
	"strings"

	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// Words is a pattern printed back in words.
type Words struct {
	// Abbreviations are the stitches and words used, with their names in full.
	Abbreviations []Abbreviation
	Stitches      []SpecialStitch
	Parts         []PartWords
}

// Abbreviation is one line of the list of abbreviations.
type Abbreviation struct{ Short, Long string }

// SpecialStitch is one of the designer's own stitches.
type SpecialStitch struct{ Name, Words string }

// PartWords is the words of one part, a line for each label.
type PartWords struct {
	Name, From string
	Rows       bool
	Lines      []string
}

// text is everything that is printed, line by line.
func (w *Words) text() string {
	var l []string
	for _, st := range w.Stitches {
		l = append(l, st.Words)
	}
	for _, p := range w.Parts {
		l = append(l, p.Lines...)
	}
	return strings.Join(l, "\n")
}

// Script prints a pattern in the given terms, for one of its sizes (counted
// from 0) or, with -1, for all. The counts at the ends of rounds are those that
// were worked. The faults are those of the working; with errors among them
// there are no words.
func Script(p *patterns.Pattern, ruler Ruler, terms stitch.Terms, size int, long bool) (*Words, fault.List) {
	w := newWork(p, ruler)
	for _, f := range w.faults {
		if f.Severity == fault.Error {
			return nil, w.faults
		}
	}
	s := script{work: w, style: notation.Style{Terms: terms, From: p.Terms, Size: size, Long: long, Names: map[string]string{}}, used: map[string]string{}}
	for _, d := range p.Stitches {
		s.style.Names[notation.Plain(d.Name)] = d.Name
	}
	out := &Words{}
	trade := notation.NewVocabulary(p.Terms, nil)
	for i := range p.Stitches {
		d := &p.Stitches[i]
		words := s.style.Advice(strings.Join(d.Words.Lines, " "))
		if _, told := hookStitch(d, trade); !told {
			if def := w.definitions[notation.Plain(d.Name)]; def != nil {
				words = s.style.Items(def.items)
				s.note(def.items)
			}
		}
		out.Stitches = append(out.Stitches, SpecialStitch{d.Name, words})
	}
	for i := range p.Parts {
		out.Parts = append(out.Parts, s.part(i))
	}
	out.Abbreviations = s.abbreviations(out.text())
	return out, w.faults
}

type script struct {
	*work
	style notation.Style
	used  map[string]string // abbreviations used, with their long names
}

func (s *script) part(i int) PartWords {
	src := &s.p.Parts[i]
	out := PartWords{Name: src.Name, From: src.From, Rows: src.Rows}
	for _, r := range s.texts[i].Rounds {
		if line := s.line(r, src.Rows); line != "" {
			out.Lines = append(out.Lines, line)
		}
	}
	return out
}

// line prints one labelled line; "" when it is not worked for the size.
func (s *script) line(r *notation.Round, rows bool) string {
	style := s.style
	l := &r.Label
	style.Row = rows
	if len(l.Numbers) > 0 && !l.Bare {
		style.Row = l.Row
	}
	if style.Size >= 0 && len(l.Only) > 0 && !contains(l.Only, s.p.Sizes[style.Size]) {
		return ""
	}
	if style.Size >= 0 && len(l.Numbers) > 0 && s.lasts[r] != nil && s.lasts[r][style.Size] == nil || len(l.Numbers) > 0 && style.Size >= 0 && s.lasts[r] == nil {
		return ""
	}
	s.note(r.Items)
	if l.Loop.Set {
		r.Items = append([]notation.Item{&notation.InLoops{Into: l.Loop.Into}}, r.Items...)
		l.Loop = notation.Loop{}
	}
	items := r.Items
	for len(items) > 0 && isNote(items[len(items)-1]) {
		items = items[:len(items)-1]
	}
	advice := r.Items[len(items):] // after the count
	text := style.Sentence(items)
	if count := s.count(r); count != "" {
		if text != "" && !strings.HasSuffix(text, ".") {
			text += "."
		}
		if strings.Contains(count, "(") {
			text += " [" + count + "]"
		} else {
			text += " (" + count + ")"
		}
	} else if text != "" && !strings.HasSuffix(text, ".") {
		text += "."
	}
	if len(advice) > 0 {
		text = strings.TrimSpace(text + " " + style.Sentence(advice))
		if !strings.HasSuffix(text, ".") && !strings.HasSuffix(text, ")") {
			text += "."
		}
	}
	label := s.label(r, style)
	if label == "" {
		return text
	}
	return label + ": " + text
}

// isNote reports whether an instruction is read after the count.
func isNote(it notation.Item) bool {
	switch it.(type) {
	case *notation.Note, *notation.FastenOff:
		return true
	}
	return false
}

func contains(l []string, s string) bool {
	for _, x := range l {
		if x == s {
			return true
		}
	}
	return false
}

// label prints what stands before the colon.
func (s *script) label(r *notation.Round, style notation.Style) string {
	l := &r.Label
	text := ""
	switch {
	case len(l.Numbers) > 0:
		text = style.Numbers(l.Numbers)
	case l.Next.Set():
		word := "rnd"
		if style.Row {
			word = "row"
		}
		text = "Next " + word
		if n := style.Num(l.Next); n != "1" {
			text = "Next " + n + " " + word + "s"
		}
	default:
		// "Foundation rnd", "Last rnd", "Inc row": the designer's own name for it.
		text, _, _ = strings.Cut(l.Text, " (")
		if text == "" {
			return ""
		}
	}
	switch l.Side {
	case 1:
		text += " (RS)"
	case 2:
		text += " (WS)"
	}
	if len(l.Only) > 0 && style.Size < 0 {
		text += " (" + listed(l.Only, "and") + " only)"
	}
	return text
}

// count is the count of the last round of a line, size by size: "60 (72) hdc".
func (s *script) count(r *notation.Round) string {
	lasts := s.lasts[r]
	if lasts == nil {
		return ""
	}
	type entry struct {
		name string
		n    []int
	}
	var list []*entry
	at := map[string]*entry{}
	add := func(name string, size, n int) {
		e := at[name]
		if e == nil {
			e = &entry{name, make([]int, len(lasts))}
			at[name] = e
			list = append(list, e)
		}
		e.n[size] += n
	}
	for size, round := range lasts {
		if round == nil || s.style.Size >= 0 && size != s.style.Size {
			continue
		}
		for _, name := range kindsInOrder(round, s.style.Terms) {
			add(name, size, Kinds(round, s.style.Terms)[name])
		}
		for k := range round.Spaces {
			c := round.SpaceChains(k)
			name := fmt.Sprintf("ch-%d sps", c)
			if s.style.Terms == stitch.UK {
				name = fmt.Sprintf("%d-ch sps", c)
			}
			add(name, size, 1)
		}
	}
	var words []string
	for _, e := range list {
		if s.style.Size >= 0 {
			words = append(words, strconv.Itoa(e.n[s.style.Size])+" "+e.name)
			continue
		}
		num := notation.Num{Values: e.n}
		if n, ok := alike(e.n, lasts); ok {
			num.Values = []int{n}
		}
		words = append(words, s.style.Num(num)+" "+e.name)
	}
	return strings.Join(words, ", ")
}

// alike gives the number that is the same in every size that is worked.
func alike(n []int, rounds []*fabric.Round) (int, bool) {
	first := -1
	for size, r := range rounds {
		switch {
		case r == nil:
		case first < 0:
			first = n[size]
		case n[size] != first:
			return 0, false
		}
	}
	return first, true
}

// kindsInOrder are the names of a round's stitches in the order they come.
func kindsInOrder(r *fabric.Round, t stitch.Terms) []string {
	var l []string
	seen := map[string]bool{}
	for i := range r.Stitches {
		if name := kindName(&r.Stitches[i], t); r.Stitches[i].Counts && !seen[name] {
			seen[name] = true
			l = append(l, name)
		}
	}
	return l
}

// note keeps the abbreviations that instructions use.
func (s *script) note(items []notation.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			s.noteWhat(&it.What)
			for _, b := range it.But {
				s.note([]notation.Item{b})
			}
		case *notation.Chain:
			s.used["ch"] = "chain"
		case *notation.Group:
			s.note(it.Items)
		case *notation.Repeat:
			s.note(it.Items)
			s.note(it.Ending)
			s.used["rep"] = "repeat"
		case *notation.Skip:
			if s.style.Terms == stitch.US {
				s.used["sk"] = "skip"
			}
		case *notation.Join:
			k := stitch.Of(stitch.Slip)
			s.used[k.Name(s.style.Terms)] = k.LongName(s.style.Terms)
		}
	}
}

func (s *script) noteWhat(w *notation.What) {
	t := s.style.Terms
	switch {
	case w.Name != "":
	case w.Shaping > 0:
		s.used["inc"] = "increase: 2 stitches in one"
	case w.Shaping < 0:
		s.used["dec"] = "decrease: 2 stitches together"
	case w.Kind.Base > stitch.Chain && w.Kind.Shape != stitch.Picot:
		base := stitch.Of(w.Kind.Base)
		if w.Kind.Shape == stitch.Plain {
			base.Manner = w.Kind.Manner &^ (stitch.Crossed | stitch.Invisible)
		}
		s.used[base.Name(t)] = base.LongName(t)
		if w.Kind.Shape == stitch.Together {
			s.used[w.Kind.Name(t)] = w.Kind.LongName(t)
		}
		if w.Loop.Set && w.Loop.Into != stitch.Top {
			s.used[base.NameInto(w.Loop.Into, t)] = base.LongNameInto(w.Loop.Into, t)
		}
	}
}

// small are the abbreviations that are no stitches.
var small = []Abbreviation{
	{"beg", "beginning"}, {"rem", "remaining"}, {"rnd(s)", "round(s)"}, {"RS", "right side"}, {"sp(s)", "space(s)"},
	{"st(s)", "stitch(es)"}, {"WS", "wrong side"}, {"yo", "yarn over hook"},
}

// abbreviations are those of the stitches that are used, and of the other words
// that the text shortens.
func (s *script) abbreviations(text string) []Abbreviation {
	for _, a := range small {
		word := strings.NewReplacer("(s)", "s?", "(es)", "(es)?").Replace(a.Short)
		if regexp.MustCompile(`(?i)(^|[^a-z])` + word + `([^a-z]|$)`).MatchString(text) {
			s.used[a.Short] = a.Long
		}
	}
	l := make([]Abbreviation, 0, len(s.used))
	for short, long := range s.used {
		l = append(l, Abbreviation{short, long})
	}
	sort.Slice(l, func(i, j int) bool { return strings.ToLower(l[i].Short) < strings.ToLower(l[j].Short) })
	return l
}
