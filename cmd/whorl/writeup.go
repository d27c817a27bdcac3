package main

import (
	"cmp"
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"whorl/chart/shaping"
	"whorl/chart/writeup"
	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/working"
)

// edition is a write-up being put together: of all sizes or, with size not below
// 0, of one.
type edition struct {
	j       *job
	picture patterns.Picture
	size    int
	stem    string // of the names of its files
	words   *working.Words
	doc     *writeup.Document
	charts  int // how many it has
	// findings are what the designer should know.
	findings []string
}

// writeup puts the write-up of a pattern together.
func (j *job) writeup(p patterns.Picture, size int, stem string) (*edition, error) {
	e := &edition{j: j, picture: p, size: size, stem: stem}
	e.words = j.worked.Script(j.terms, size, false)
	if e.words == nil {
		return nil, fmt.Errorf("the words cannot be printed before the faults are mended")
	}
	e.doc = &writeup.Document{Title: title(j.pattern), Lines: e.lines(), Author: j.pattern.Designer, Foot: credit(j.pattern)}
	e.finished()
	e.materials()
	e.gauge()
	e.names()
	e.notes()
	e.cautions()
	e.instructions()
	e.shaping()
	e.schematic()
	return e, nil
}

// title is what a pattern is called: its title, or else the name of its file.
func title(p *patterns.Pattern) string {
	return cmp.Or(p.Title, strings.TrimSuffix(filepath.Base(p.File), filepath.Ext(p.File)))
}

func (e *edition) add(b ...writeup.Block) { e.doc.Blocks = append(e.doc.Blocks, b...) }

func (e *edition) heading(text string) { e.add(writeup.Heading{Level: 1, Text: text}) }

// fact adds a line of facts, if there are any.
func (e *edition) fact(name, text string) {
	if text != "" {
		e.add(writeup.Paragraph{Lead: name + ":", Text: bound(text)})
	}
}

// paragraphs adds running text, whose paragraphs an empty line parts.
func (e *edition) paragraphs(text string) {
	for _, t := range strings.Split(text, "\n\n") {
		if t = strings.Join(strings.Fields(t), " "); t != "" {
			e.add(writeup.Paragraph{Text: bound(t)})
		}
	}
}

// lines are what stands under the title.
func (e *edition) lines() (l []string) {
	p := e.j.pattern
	if p.Designer != "" {
		l = append(l, "by "+p.Designer)
	}
	in := "in " + e.j.terms.String() + " terms"
	switch {
	case e.size >= 0 && p.Sizes[e.size] != "":
		in = "Size " + p.Sizes[e.size] + ", " + in
	case len(p.Sizes) > 1:
		in = "Sizes " + p.Sizes[0] + " (" + strings.Join(p.Sizes[1:], ", ") + "), " + in
	default:
		in = "Written " + in
	}
	return append(l, in)
}

// sizes are the indices of the sizes of the edition.
func (e *edition) sizes() (l []int) {
	for i := range e.j.pattern.Sizes {
		if e.size < 0 || i == e.size {
			l = append(l, i)
		}
	}
	return l
}

// sizeNames are their names.
func (e *edition) sizeNames() (l []string) {
	for _, i := range e.sizes() {
		l = append(l, e.j.pattern.Sizes[i])
	}
	return l
}

// together are parts of the words that are not parted at the end of a line: the
// numbers of all sizes, a number and its unit or the word that it counts.
var together = regexp.MustCompile(`\d[\d½¼¾.,-]* \([^()]{1,26}\)( (cm|in|mm|sts?|times)\b)?|\d (cm|mm|in|m|g|oz|yd|sts?|times)\b|\bfrom \*+|\b(ch|sk|[Rr]nds?|[Rr]ows?|size|Size) [\d(]`)

// stated is a count that ends a round.
var stated = regexp.MustCompile(`\([^()]*(\([^()]*\)[^()]*)*\)\.?$`)

// longCount is how many letters a count has at most that is not parted.
const longCount = 36

// bound is a text with no-break spaces in what holds together.
func bound(text string) string {
	join := func(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") }
	text = together.ReplaceAllStringFunc(text, join)
	return stated.ReplaceAllStringFunc(text, func(s string) string {
		if len(s) > longCount {
			return s
		}
		return join(s)
	})
}

// instructions are the words of every part, with its charts.
func (e *edition) instructions() {
	e.heading("Instructions")
	charts := e.chartsOfParts()
	for k, part := range e.words.Parts {
		if part.Name != "" {
			e.add(writeup.Heading{Level: 2, Text: part.Name})
		}
		e.add(writeup.Paragraph{Text: strings.TrimSpace(beginning(&part)) + chartsNamed(charts[k]), Keep: true})
		for n, line := range part.Lines {
			label, text := labelled(line)
			text = bothLengths(text)
			if strings.HasSuffix(label, "-end:") {
				text += " " + e.inRows(k)
			}
			e.add(writeup.Paragraph{Lead: bound(label), Text: bound(text)})
			if n == 0 {
				e.add(e.pickUp(k)...)
			}
		}
		for _, c := range charts[k] {
			e.add(c)
		}
	}
}

// labelled parts a line of the words into its label and the rest.
func labelled(line string) (label, text string) {
	label, text, ok := strings.Cut(line, ": ")
	if !ok || len(label) > 80 || strings.ContainsAny(label, ".;*[") {
		return "", line
	}
	return label + ":", text
}

// shaping says what shape the rounds make, and what there is to know of them.
func (e *edition) shaping() {
	type note struct {
		sizes []string
		lines []string
	}
	began := false
	for k := range e.j.pattern.Parts {
		var l []note
		for _, i := range e.sizes() {
			lines := e.shapeOf(i, k)
			same := slices.IndexFunc(l, func(n note) bool { return slices.Equal(n.lines, lines) })
			if same < 0 {
				same = len(l)
				l = append(l, note{lines: lines})
			}
			l[same].sizes = append(l[same].sizes, e.j.pattern.Sizes[i])
		}
		if !slices.ContainsFunc(l, func(n note) bool { return len(n.lines) > 0 }) {
			continue
		}
		if !began {
			e.heading("Shaping")
			began = true
		}
		if name := e.j.pattern.Parts[k].Name; name != "" && len(e.j.pattern.Parts) > 1 {
			e.add(writeup.Heading{Level: 2, Text: name})
		}
		for _, n := range l {
			b := writeup.Paragraph{Text: bound(strings.Join(n.lines, " "))}
			if len(l) > 1 {
				b.Lead = bound(strings.Join(n.sizes, ", ") + ":")
			}
			if b.Text != "" {
				e.add(b)
			}
		}
	}
}

// shapeOf is the shape of a part in a size and its findings, in sentences.
func (e *edition) shapeOf(size, part int) (l []string) {
	form := e.j.forms[size]
	if form == nil || e.j.fabrics[size].Parts[part].Worked != fabric.InRounds {
		return nil
	}
	worked := e.j.fabrics[size].Parts[part]
	found := shaping.Findings(worked, form.Parts[part])
	if l := geometry.Phases(worked, form.Parts[part].Rounds); len(l) == 1 && l[0].Trait == geometry.Tube && len(found) == 0 {
		return nil // there is no shaping
	}
	if s := shaping.Shape(worked, form.Parts[part]); s != "" {
		l = append(l, s)
	}
	return append(l, found...)
}
