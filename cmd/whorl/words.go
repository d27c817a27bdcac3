package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"whorl/patterns"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
	"whorl/patterns/working"
)

func wordsCommand() *cobra.Command {
	var terms, size string
	var long bool
	c := &cobra.Command{
		Use:   "words FILE",
		Short: "Print the pattern in words, in US or UK terms, for all sizes or one",
		Long: "Print a pattern back in words: in its own terms or the other, for all sizes or one,\n" +
			"with the counts that were worked and the abbreviations that are used. FILE may be -\n" +
			"for standard input.",
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			j, err := load(args[0], c.InOrStdin())
			if err != nil {
				return err
			}
			for _, text := range j.faults.Texts() {
				fmt.Fprintln(c.ErrOrStderr(), text)
			}
			if j.wrong() {
				return errFaults
			}
			style := notation.Style{From: j.pattern.Terms, Size: -1, Long: long}
			if style.Terms, err = termsNamed(terms, j.pattern.Terms); err != nil {
				return err
			}
			if c.Flags().Changed("size") {
				if style.Size, err = sizeNamed(size, j.pattern.Sizes); err != nil {
					return err
				}
			}
			words := j.worked.Script(style.Terms, style.Size, long)
			_, err = io.WriteString(c.OutOrStdout(), page(j.pattern, words, style))
			return err
		},
	}
	c.Flags().StringVar(&terms, "terms", "", "US or UK; those of the file when left out")
	c.Flags().StringVar(&size, "size", "", "one size by its name; all sizes when left out")
	c.Flags().BoolVar(&long, "long", false, "write the names of stitches out in full")
	return c
}

func termsNamed(name string, own stitch.Terms) (stitch.Terms, error) {
	switch strings.ToUpper(name) {
	case "":
		return own, nil
	case "US":
		return stitch.US, nil
	case "UK":
		return stitch.UK, nil
	}
	return own, fmt.Errorf("there are no %s terms; --terms is US or UK", name)
}

func sizeNamed(name string, sizes []string) (int, error) {
	for i, s := range sizes {
		if strings.EqualFold(s, strings.TrimSpace(name)) {
			return i, nil
		}
	}
	if len(sizes) == 1 && sizes[0] == "" {
		return 0, fmt.Errorf("the pattern has one size, without a name; leave --size out")
	}
	return 0, fmt.Errorf("there is no size %q; the sizes are %s", name, strings.Join(sizes, ", "))
}

// page sets a pattern out in words.
func page(p *patterns.Pattern, w *working.Words, s notation.Style) string {
	var b strings.Builder
	heading := func(text string) { fmt.Fprintf(&b, "\n%s\n\n", strings.ToUpper(text)) }
	fact := func(name, text string) {
		if text != "" {
			fmt.Fprintf(&b, "%s: %s\n", name, text)
		}
	}
	title := p.Title
	if title == "" {
		title = p.File
	}
	fmt.Fprintln(&b, title)
	if p.Designer != "" {
		fmt.Fprintln(&b, "by "+p.Designer)
	}
	b.WriteString("\n")
	switch {
	case s.Size >= 0:
		fact("Size", p.Sizes[s.Size])
	case len(p.Sizes) > 1:
		fact("Sizes", p.Sizes[0]+" ("+strings.Join(p.Sizes[1:], ", ")+")")
	}
	fact("To fit head", lengths(p.Head, s.Size))
	fact("Ease", lengths(p.Ease, s.Size))
	for i := range p.Yarns {
		fact("Yarn", yarn(&p.Yarns[i]))
	}
	fact("Hook", p.Hook)
	gauge := "Gauge"
	if s.Terms == stitch.UK {
		gauge = "Tension"
	}
	for i := range p.Gauge {
		fact(gauge, gaugeLine(p, w, s, i, length))
	}
	fact("Terms", s.Terms.String())
	if s.Size < 0 && len(p.Sizes) > 1 {
		b.WriteString("\n" + howToRead(w, s.Terms) + "\n")
	}
	if w.Notes != "" {
		heading("Notes")
		b.WriteString(w.Notes + "\n")
	}
	if len(w.Abbreviations) > 0 {
		heading("Abbreviations")
	}
	for _, a := range w.Abbreviations {
		fmt.Fprintf(&b, "%s: %s\n", a.Short, a.Long)
	}
	if len(w.Stitches) > 0 {
		heading("Special stitches")
		for _, st := range w.Stitches {
			fmt.Fprintf(&b, "%s: %s\n", st.Name, st.Words)
		}
	}
	for _, part := range w.Parts {
		name := part.Name
		if name == "" {
			name = "Instructions"
		}
		heading(name)
		b.WriteString(beginning(&part))
		for _, line := range part.Lines {
			fmt.Fprintln(&b, line)
		}
	}
	if p.Copyright != "" {
		fmt.Fprintf(&b, "\n%s\n", p.Copyright)
	}
	return b.String()
}

// gaugeLine is a line of the gauge: as it was written where it says more than
// stitches, rounds and a length.
func gaugeLine(p *patterns.Pattern, w *working.Words, s notation.Style, i int, over func(mm float64) string) string {
	g := &p.Gauge[i]
	if g.Count == 0 || g.In != "" || g.For != "" || g.Remark != "" {
		return s.Spell(s.Advice(g.Words))
	}
	text := number(g.Count) + " " + w.Gauge[i]
	if g.Rows > 0 {
		text += " and " + number(g.Rows) + " " + rowsOf(p, g)
	}
	return text + " = " + over(g.Over)
}

// howToRead says which number is for which size.
func howToRead(w *working.Words, t stitch.Terms) string {
	brackets := "parentheses"
	if t == stitch.UK {
		brackets = "brackets"
	}
	text := "Numbers are for the smallest size, with those of the larger sizes in " + brackets +
		"; a number that stands alone is for all sizes."
	for _, part := range w.Parts {
		if l := strings.Join(part.Lines, "\n"); strings.Contains(l, " - (") || strings.Contains(l, ", -,") || strings.Contains(l, ", -)") {
			return text + " A dash means that there is nothing to work for the size."
		}
	}
	return text
}

// beginning says how a part is worked, and on what.
func beginning(part *working.PartWords) string {
	way := "rounds"
	if part.Rows {
		way = "rows"
	}
	switch from := part.From; {
	case from == "":
		return "Worked in " + way + ".\n\n"
	case strings.Contains(strings.ToLower(from), "row end"):
		return "Worked in " + way + ", picked up along the " + from + ".\n\n"
	default:
		return "Worked in " + way + ", going on from the " + from + ".\n\n"
	}
}

// rowsOf is whether the line of a gauge speaks of rows or of rounds.
func rowsOf(p *patterns.Pattern, g *patterns.Gauge) string {
	if g.Line >= 1 && g.Line <= len(p.Lines) {
		line := strings.ToLower(p.Lines[g.Line-1])
		switch {
		case strings.Contains(line, "rnd"), strings.Contains(line, "round"):
			return "rounds"
		case strings.Contains(line, "row"):
			return "rows"
		}
	}
	return "rows or rounds"
}

// lengths are the lengths of all sizes, or of the one that is printed.
func lengths(l patterns.Lengths, size int) string {
	if len(l) == 0 {
		return ""
	}
	if size >= 0 {
		return l[min(size, len(l)-1)].String()
	}
	same := true
	for i := range l {
		same = same && l[i] == l[0]
	}
	if same {
		return l[0].String()
	}
	rest := make([]string, len(l)-1)
	for i := range rest {
		rest[i] = strings.TrimSuffix(l[i+1].String(), " "+l[i+1].Unit)
	}
	return strings.TrimSuffix(l[0].String(), " "+l[0].Unit) + " (" + strings.Join(rest, ", ") + ") " + l[0].Unit
}

// length is the length that a gauge was counted over.
func length(mm float64) string {
	if in := mm / 25.4; math.Abs(in-math.Round(in)) < 1e-6 {
		return number(in) + " in"
	}
	return number(mm/10) + " cm"
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func yarn(y *patterns.Yarn) string {
	var l []string
	for _, s := range []string{y.Words, y.Name, y.Fibre, y.Colour} {
		if s != "" {
			l = append(l, s)
		}
	}
	if y.Weight != "" {
		l = append(l, "weight "+y.Weight)
	}
	ball := y.Ball
	if y.Length != "" {
		if ball != "" {
			ball += ", "
		}
		ball += y.Length
	}
	text := strings.Join(l, ", ")
	if text != "" {
		r, n := utf8.DecodeRuneInString(text)
		text = string(unicode.ToUpper(r)) + text[n:]
	}
	switch {
	case ball == "":
		return text
	case text == "":
		return ball
	}
	return text + " (" + ball + ")"
}
