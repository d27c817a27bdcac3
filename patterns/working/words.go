package working

import (
	"cmp"
	"regexp"
	"slices"
	"sort"
	"strings"
	"unicode"

	"whorl/patterns"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// Words is a pattern printed back in words.
type Words struct {
	// Abbreviations are the stitches and words used, with their names in full.
	Abbreviations []notation.Abbreviation
	Stitches      []SpecialStitch
	Parts         []PartWords
	// Notes are the pattern's notes, a paragraph a line.
	Notes string
	// Gauge are the stitches of the pattern's gauge, in its order.
	Gauge []string
}

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
	return strings.Join(append(append(l, w.Notes), w.Gauge...), "\n")
}

// Script prints the pattern in the given terms, for one of its sizes (counted
// from 0) or, with -1, for all. The counts at the ends of rounds are those that
// were worked. With errors among the faults there are no words: it gives nil.
func (w *Working) Script(terms stitch.Terms, size int, long bool) *Words {
	for _, f := range w.Faults {
		if f.Severity == fault.Error {
			return nil
		}
	}
	p := w.work.p
	s := script{work: w.work, read: map[string]*notation.Stated{}, style: notation.Style{Terms: terms, From: p.Terms, Size: size, Sizes: len(p.Sizes), Long: long,
		Names: map[string]string{}, Posts: map[string]bool{}}, counted: notation.NewVocabulary(terms, p.StitchNames()), told: map[string]bool{}}
	trade := notation.NewVocabulary(p.Terms, nil)
	// told are the names of the trade that the designer tells of: they are another
	// in the other terms.
	told := map[string]string{}
	for i := range p.Stitches {
		d := &p.Stitches[i]
		name := d.Name
		plain := notation.Plain(d.Name)
		if k, into, ok := trade.Stitch(d.Name); ok {
			_, hook := hookItems(d, p.Stitches, trade)
			usual := strings.EqualFold(d.Name, k.NameInto(into, p.Terms))
			s.told[plain] = usual && (hook || s.definitions[plain].is(k, into))
			if s.told[plain] && terms != p.Terms {
				name = k.NameInto(into, terms)
			}
		}
		if m := ofStitch.FindStringSubmatch(name); m != nil && terms != p.Terms {
			if k, _, ok := trade.Stitch(m[2]); ok {
				name = m[1] + k.Name(terms) + m[3] // "3trcl"
			}
		}
		if name != d.Name {
			told[d.Name] = name
		}
		s.style.Names[plain] = running(notation.ShortName(name))
		s.style.Posts[plain] = s.definitions[plain].aroundPost()
	}
	out := &Words{}
	for i := range p.Stitches {
		d := &p.Stitches[i]
		words := s.style.Advice(strings.Join(d.Words.Lines, " "))
		if _, hook := hookItems(d, p.Stitches, trade); !hook && !s.told[notation.Plain(d.Name)] {
			if def := s.definitions[notation.Plain(d.Name)]; def != nil {
				words = s.style.Items(def.items)
			}
		}
		name := d.Name
		if told[name] != "" {
			name = told[name]
		}
		out.Stitches = append(out.Stitches, SpecialStitch{name, s.style.Spell(words)})
	}
	for i := range p.Parts {
		out.Parts = append(out.Parts, s.part(i))
	}
	out.Notes = paragraphs(s.style.Spell(s.style.Notes(p.Notes)))
	for _, g := range p.Gauge {
		out.Gauge = append(out.Gauge, s.style.Spell(s.style.Advice(g.Of)))
	}
	out.Abbreviations = s.style.Abbreviations(out.text())
	sort.Slice(out.Abbreviations, func(i, j int) bool {
		a, b := out.Abbreviations[i].Short, out.Abbreviations[j].Short
		if x, y := strings.ToLower(a), strings.ToLower(b); x != y {
			return x < y
		}
		return a < b
	})
	return out
}

// ofStitch is a name that is put together of a number, a stitch and its shape.
var ofStitch = regexp.MustCompile(`^([0-9]+-?)([a-z]+?)((?:-| )?(?:cl|clust|cluster|puff|bob|bobble|pop|popcorn|pc|gp|group|shell|fan))$`)

// running is a name as it is written among other words: Shell is shell there,
// but V-st and CL keep their capitals.
func running(name string) string {
	r := []rune(name)
	if len(r) > 2 && unicode.IsUpper(r[0]) && unicode.IsLower(r[1]) && unicode.IsLower(r[2]) {
		r[0] = unicode.ToLower(r[0])
	}
	return string(r)
}

// paragraphs are the lines of running words with those of one paragraph made
// one.
func paragraphs(text string) string {
	l := strings.Split(strings.TrimSpace(text), "\n\n")
	for i := range l {
		l[i] = strings.Join(strings.Fields(l[i]), " ")
	}
	return strings.Join(l, "\n\n")
}

type script struct {
	*work
	style notation.Style
	// counted are the names that a printed count is read with.
	counted *notation.Vocabulary
	read    map[string]*notation.Stated // the counts read with them
	// told are the names of the trade whose movements of the hook, or names in
	// full, the designer tells. They are kinds of stitch like any other.
	told map[string]bool
}

func (s *script) part(i int) PartWords {
	src := &s.p.Parts[i]
	out := PartWords{Name: src.Name, From: src.From, Rows: src.Rows}
	s.style.InTurn = s.clean[i].inTurn
	if src.Piece != "" && !strings.HasSuffix(src.Name, src.Piece) {
		out.Name = src.Called() + ", " + src.Piece
	}
	if l := s.texts[i].Rounds; i > 0 && len(l) > 0 && l[0].Opening && !patterns.Slit(src.From) {
		if out.From == "" {
			out.From = s.p.Parts[i-1].Name
		}
		out.From += " opening"
	}
	before := []*notation.Round(nil)
	if src.From != "" && i > 0 {
		before = s.texts[i-1].Rounds // whose numbers it may go on from
	}
	for k, r := range s.texts[i].Rounds {
		if line := s.line(r, src.Rows); line != "" {
			own := s.texts[i].Rounds[:k]
			if to := cmp.Or(s.jump(own, r), s.jump(slices.Concat(before, own), r)); to != "" {
				out.Lines = append(out.Lines, to)
			}
			out.Lines = append(out.Lines, strings.Split(s.style.Spell(line), "\n")...)
		}
	}
	return out
}

// jump is "Skip to Rnd 9." where one size is printed and the rounds between are
// for other sizes only; else "".
func (s *script) jump(before []*notation.Round, r *notation.Round) string {
	at, l := s.style.Size, &r.Label
	if at < 0 || len(l.Numbers) == 0 || len(before) == 0 || l.SkipTo.Set() {
		return ""
	}
	last, others := 0, false
	for _, b := range before {
		switch {
		case len(b.Label.Only) > 0 && !slices.Contains(b.Label.Only, s.p.Sizes[at]):
			others = others || len(b.Label.Numbers) > 0
		case s.lasts[b] != nil && s.lasts[b][at] != nil:
			last, others = s.lasts[b][at].Number, false
		}
	}
	from := notation.Num{Values: []int{l.Numbers[0].From.For(at)}}
	if !others || from.Values[0] <= last+1 {
		return ""
	}
	style := s.style
	style.Row = l.Row
	return "Skip to " + style.Numbers([]notation.Range{{From: from, To: from}}) + "."
}

// worked are the sizes that a labelled line is worked in; nil for all.
func (s *script) worked(r *notation.Round) []bool {
	l := &r.Label
	in := make([]bool, len(s.p.Sizes))
	all := true
	for i, size := range s.p.Sizes {
		in[i] = (len(l.Only) == 0 || slices.Contains(l.Only, size)) &&
			(len(l.Numbers) == 0 || s.lasts[r] != nil && s.lasts[r][i] != nil) &&
			!(l.Next.Set() && l.Next.For(i) == 0)
		all = all && in[i]
	}
	if all {
		return nil
	}
	return in
}

// line prints one labelled line with the lines of advice under it; "" when
// there is none for the size.
func (s *script) line(r *notation.Round, rows bool) string {
	style := s.style
	l := &r.Label
	style.Row = rows
	if len(l.Numbers) > 0 && !l.Bare {
		style.Row = l.Row
	}
	if l.SkipTo.Set() {
		skip := "Skip to " + style.Numbers([]notation.Range{{From: l.SkipTo, To: l.SkipTo}}) + "."
		switch {
		case style.Size < 0 && len(l.Only) > 0:
			return "Size " + listed(l.Only, "and") + ": " + strings.ToLower(skip[:1]) + skip[1:]
		case style.Size >= 0 && len(l.Only) > 0 && !slices.Contains(l.Only, s.p.Sizes[style.Size]):
			return ""
		}
		return skip
	}
	if l.SkipToPart != "" {
		if style.Size >= 0 {
			return "" // the rounds between are for other sizes
		}
		return "Size " + listed(l.Only, "and") + ": skip to " + l.SkipToPart + "."
	}
	label := s.label(r, style)
	style.Worked = s.worked(r)
	items := r.Items
	if style.Size >= 0 && unnumbered(r, len(s.p.Sizes)) {
		items = withoutNumbers(items)
	}
	if l.Loop.Set {
		items = append([]notation.Item{&notation.InLoops{Into: l.Loop.Into}}, items...)
	}
	work := items
	seam := ownRow(l) && closesPiece(items) // which is the work of its row
	for n := len(work); n > 0 && !(seam && closesPiece(work[n-1:])) && (isNote(work[n-1]) || notation.Leads(work[n-1]) || goesOn(work)); n-- {
		work = work[:n-1]
	}
	lines := ownLines(r, items[len(work):]) // after the count
	if style.Size >= 0 && style.Worked != nil && !style.Worked[style.Size] {
		// What stands under the round in a line of its own is for all sizes.
		if len(l.Only) > 0 || len(lines) < 2 {
			return ""
		}
		var under []string
		for _, l := range lines[1:] {
			under = append(under, closed(style.Sentence(l)))
		}
		return strings.Join(under, "\n")
	}
	above := ""
	for label == "" && len(work) > 1 && heads(work[:1]) {
		above += style.Sentence(work[:1]) + "\n"
		work = work[1:]
	}
	text := above + closed(style.Sentence(work))
	if count := s.count(r, style); count != "" {
		for i, it := range lines[0] {
			if n, ok := it.(*notation.Note); ok && strings.HasPrefix(n.Text, ",") {
				count += style.Items([]notation.Item{n}) // ", which is 22 to a side"
				lines[0] = slices.Delete(slices.Clone(lines[0]), i, i+1)
				break
			}
		}
		text = strings.TrimSpace(text + " (" + count + ")")
	}
	for i, advice := range lines {
		if len(advice) == 0 {
			continue
		}
		mark := " "
		if i > 0 {
			mark = "\n"
		}
		if text == "" {
			mark = ""
		}
		if advice := style.Sentence(advice); heads(lines[i]) && (i > 0 || text == "" && label == "") {
			text += mark + advice
		} else {
			text += mark + closed(advice)
		}
	}
	if label == "" {
		return text
	}
	return label + ": " + text
}

// heads reports whether a line of advice is a heading, which is no sentence.
func heads(advice []notation.Item) bool {
	n, ok := advice[0].(*notation.Note)
	return ok && n.Heading && len(advice) == 1
}

// closed ends a sentence.
func closed(text string) string {
	if text == "" || strings.HasSuffix(text, ".") || strings.HasSuffix(text, "!") || strings.HasSuffix(text, ":") || text[0] == '(' && strings.HasSuffix(text, ")") {
		return text
	}
	return text + "."
}

// ownLines divides the advice behind a round into what follows it and what
// stands in lines of its own.
func ownLines(r *notation.Round, advice []notation.Item) [][]notation.Item {
	lines := [][]notation.Item{nil}
	last := r.Line
	for _, it := range advice {
		if at := it.Where(); at.Line > last && at.Column == r.Column {
			lines = append(lines, nil)
			last = at.Line
		}
		n := len(lines) - 1
		lines[n] = append(lines[n], it)
	}
	return lines
}

// goesOn reports whether instructions end with advice that goes on in a clause:
// "Work in a spiral, marking the first st".
func goesOn(items []notation.Item) bool {
	n := len(items)
	if n < 2 || !isNote(items[n-2]) {
		return false
	}
	_, clause := items[n-1].(*notation.Note)
	return clause
}

// isNote reports whether an instruction is read after the count.
func isNote(it notation.Item) bool {
	switch it := it.(type) {
	case *notation.Note:
		return !it.Clause()
	case *notation.FastenOff:
		return true
	}
	return false
}

// label prints what stands before the colon.
func (s *script) label(r *notation.Round, style notation.Style) string {
	l := &r.Label
	text := ""
	switch {
	case l.Sizes && style.Size < 0:
		return listed(l.Only, "and") + " only"
	case l.Sizes && !s.begun(r):
		return ""
	case len(l.Only) > 0 && style.Size < 0 && len(l.Numbers) == 1 && len(l.Numbers[0].From.Values) > 1 && slices.Contains(l.Numbers[0].From.Values, 0):
		// "Rnds 9-12 (M), 9-14 (L)" says the sizes as well
		var parts []string
		for _, size := range l.Only {
			style.Size = slices.Index(s.p.Sizes, size)
			parts = append(parts, strings.TrimSpace(running(l.Series)+" "+style.Numbers(l.Numbers))+" ("+size+")")
		}
		return capital(strings.Join(parts, ", "))
	case len(l.Numbers) > 0:
		text = strings.TrimSpace(running(l.Series) + " " + style.Numbers(l.Numbers))
		text = capital(text)
	case l.Called != "":
		text = l.Called
	case l.Next.Set(), l.Sizes:
		word := "rnd"
		if style.Row {
			word = "row"
		}
		text = "Next " + word
		if n := style.Num(l.Next); l.Next.Set() && n != "1" {
			text = "Next " + n + " " + word + "s"
		}
	default:
		// "Foundation rnd", "Last rnd", "Inc row": the designer's own name for it.
		text, _, _ = strings.Cut(l.Text, " (")
		text = lastLabel.ReplaceAllStringFunc(text, func(round string) string { // "Last Rnd"
			return capital(strings.ToLower(round))
		})
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
	if l.Rounds.Set() {
		text += " (" + style.Num(l.Rounds) + " " + strings.ToLower(style.Word()) + "s)"
	}
	for _, remark := range remarks(l, s.p.Sizes) {
		text += " (" + style.Advice(remark) + ")"
	}
	if len(l.Only) > 0 && style.Size < 0 {
		text += " (" + listed(l.Only, "and") + " only)"
	}
	return text
}

// begun reports whether rounds with numbers come before one in its part.
func (s *script) begun(r *notation.Round) bool {
	for _, t := range s.texts {
		if at := slices.Index(t.Rounds, r); at >= 0 {
			return slices.ContainsFunc(t.Rounds[:at], func(b *notation.Round) bool { return len(b.Label.Numbers) > 0 })
		}
	}
	return false
}

var (
	inBrackets = regexp.MustCompile(`[(\[]([^()\[\]]*)[)\]]`)
	behindDash = regexp.MustCompile(`[0-9] ?[-–—] ([A-Za-z][A-Za-z -]*)$`)
	lastLabel  = regexp.MustCompile(`(?i)^(last|final|next) (rnd|row)$`)
	namedApart = regexp.MustCompile(`(?i)\b(except|but|bar|excluding|other than|apart from|save|not|omit|skip|largest|smallest|biggest)\b|\b(and|&) (all )?(up|upwards?|over|above|larger|bigger|down|under|below|smaller)\b|\w(-|–| to | through )\w`)
	noRemark   = regexp.MustCompile(`(?i)^(rs|ws|right side|wrong side|blo|flo|(in )?(back|front) loops?( only)?)$|\d|\bonly$|^sizes?\b|\bsizes?$|^(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[a-z]+teen|twenty|thirty|forty|fifty)\b`)
)

// namesSizes reports whether words are nothing but the names of the sizes, or what they are in short, M for Medium.
func namesSizes(words string, sizes []string) bool {
	for _, name := range strings.FieldsFunc(strings.ReplaceAll(words, " and ", ","), func(r rune) bool { return strings.ContainsRune(",&+/", r) }) {
		name = strings.ToLower(strings.TrimSpace(name))
		if !slices.ContainsFunc(sizes, func(size string) bool {
			return strings.EqualFold(size, name) || len(name) < 4 && strings.HasPrefix(strings.ToLower(size), name)
		}) {
			return false
		}
	}
	return true
}

// remarks are what a label says of its round besides: "(cable rnd)", "- Increase
// Rnd". Sides, sizes, loops and numbers are printed elsewhere.
func remarks(l *notation.Label, sizes []string) []string {
	if len(l.Numbers) == 0 {
		return nil
	}
	if len(l.Only) > 0 {
		sizes = l.Only
	}
	var list []string
	for _, m := range inBrackets.FindAllStringSubmatch(l.Text, -1) {
		if words := strings.TrimSpace(m[1]); words != "" && words != "-" && !noRemark.MatchString(words) && !namesSizes(words, sizes) && !(len(l.Only) > 0 && namedApart.MatchString(words)) {
			list = append(list, words)
		}
	}
	if m := behindDash.FindStringSubmatch(l.Text); m != nil {
		if words := strings.TrimSpace(m[1]); !strings.EqualFold(words, "end") && !noRemark.MatchString(words) && !namesSizes(words, sizes) && len(l.Only) == 0 {
			list = append(list, strings.ToLower(words))
		}
	}
	return list
}
