package writeup

import (
	"fmt"
	"regexp"
	"strings"
)

// Markdown is the document as CommonMark with tables. A picture is a link to its
// file: its Name with the extension .svg.
func Markdown(d *Document) string {
	var b strings.Builder
	put := func(format string, a ...any) { fmt.Fprintf(&b, format+"\n\n", a...) }
	put("# %s", marked(d.Title))
	for _, l := range d.Lines {
		put("%s", marked(l))
	}
	for _, block := range d.Blocks {
		switch block := block.(type) {
		case Heading:
			put("%s %s", strings.Repeat("#", 1+max(1, block.Level)), marked(block.Text))
		case Paragraph:
			put("%s", ledIn(block.Lead, block.Text))
		case Terms:
			for _, t := range block {
				fmt.Fprintf(&b, "- %s\n", ledIn(t.Name+":", t.Meaning))
			}
			b.WriteString("\n")
		case Table:
			row(&b, block.Head)
			b.WriteString("| --- |" + strings.Repeat(" ---: |", max(0, len(block.Head)-1)) + "\n")
			for _, r := range block.Rows {
				row(&b, r)
			}
			b.WriteString("\n")
		case Picture:
			if block.Caption != "" {
				put("%s", strings.TrimSpace(ledIn(block.Caption, "")+"  \n"+marked(block.Note)))
			}
			put("![%s](%s.svg)", marked(block.Alt), strings.ReplaceAll(block.Name, " ", "%20"))
		}
	}
	if d.Foot != "" {
		put("%s", marked(d.Foot))
	}
	return strings.TrimRight(b.String(), "\n") + "\n"
}

// ledIn is a text behind a lead in bold.
func ledIn(leads, text string) string {
	if leads == "" {
		return marked(text)
	}
	return strings.TrimSpace("**" + marked(leads) + "** " + marked(text))
}

func row(b *strings.Builder, cells []string) {
	for _, c := range cells {
		b.WriteString("| " + strings.ReplaceAll(marked(strings.ReplaceAll(c, "\n", " / ")), "|", `\|`) + " ")
	}
	b.WriteString("|\n")
}

var (
	special   = regexp.MustCompile("[\\\\`*_{}\\[\\]<>&]")
	beginning = regexp.MustCompile(`^(\d+)([.)])(\s|$)|^([-+#=~])`)
)

// marked is a text in which nothing is taken for a mark of the format.
func marked(s string) string {
	s = special.ReplaceAllString(strings.Join(strings.Fields(s), " "), `\$0`)
	return beginning.ReplaceAllString(s, `$1\$2$4$3`)
}
