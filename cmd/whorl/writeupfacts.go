package main

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"whorl/chart/writeup"
	"whorl/patterns"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
	"whorl/patterns/working"
)

// What stands before the instructions.

// materials are the yarn, the hook and what else the words ask for.
func (e *edition) materials() {
	p := e.j.pattern
	before := len(e.doc.Blocks)
	e.heading("Materials")
	for i := range p.Yarns {
		e.fact("Yarn", yarn(&p.Yarns[i]))
	}
	e.yarnUsed()
	hook := patterns.HookSizes(p.Hook)
	if hook != "" && len(p.Gauge) > 0 {
		hook += ", or the size that gives the " + e.gaugeName()
	}
	e.fact("Hook", hook)
	e.fact("Also", strings.Join(e.notions(), "; "))
	if len(e.doc.Blocks) == before+1 {
		e.doc.Blocks = e.doc.Blocks[:before]
	}
}

// yarnUsed is how much yarn the sizes take, where the file tells what was weighed.
func (e *edition) yarnUsed() {
	for _, n := range e.j.yarnNeeds() {
		t := writeup.Table{Head: []string{"Yarn for", "Weight", "Length", "Balls"}}
		if n.name != "" && len(e.j.pattern.Yarns) > 1 {
			t.Head[0] = n.name
		}
		for _, s := range n.sizes {
			if e.size >= 0 && s.size != e.j.pattern.Sizes[e.size] {
				continue
			}
			row := []string{cmp.Or(s.size, "One size"), n.weight(s), n.length(s), ""}
			if s.balls > 0 {
				row[3] = fmt.Sprint(s.balls)
			}
			t.Rows = append(t.Rows, row)
		}
		if len(t.Rows) > 0 {
			e.add(t.WithoutEmpty())
			e.paragraphs(strings.ReplaceAll(n.basis, "gauge", e.gaugeName()))
		}
	}
}

// notions are the small things that the words ask for.
func (e *edition) notions() (l []string) {
	var words strings.Builder
	for _, part := range e.words.Parts {
		words.WriteString(strings.ToLower(strings.Join(part.Lines, "\n")))
	}
	for _, n := range []struct {
		asked *regexp.Regexp
		name  string
	}{
		{regexp.MustCompile(`\bmarkers?\b|\bpm\b`), "stitch markers"},
		{regexp.MustCompile(`\bweave\b|\bsew|\bwhip ?stitch|\bseam\b|\bstuff|\b(close|draw|gather)[^.]*\b(hole|tail|end)\b|\btail\b[^.]*\bthrough\b`), "a yarn needle"},
		{regexp.MustCompile(`\bstuff`), "stuffing"},
	} {
		if n.asked.MatchString(words.String()) {
			l = append(l, n.name)
		}
	}
	return l
}

// gaugeName is what the terms call a gauge.
func (e *edition) gaugeName() string {
	if e.j.terms == stitch.UK {
		return "tension"
	}
	return "gauge"
}

// gauge is the gauge with its stitches, and what to do about it.
func (e *edition) gauge() {
	p := e.j.pattern
	if len(p.Gauge) == 0 {
		return
	}
	name := e.gaugeName()
	e.heading(strings.ToUpper(name[:1]) + name[1:])
	style := notation.Style{From: p.Terms, Terms: e.j.terms, Size: e.size}
	for i := range p.Gauge {
		e.add(writeup.Paragraph{Text: bound(gaugeLine(p, e.words, style, i, bothUnits)), Keep: true})
	}
	e.add(writeup.Paragraph{Text: "Work a swatch first: if it has more stitches, take a larger hook; if fewer, a smaller one."})
}

// bothUnits is the length that a gauge was counted over, with what it is taken for
// in the other unit: 10 cm and 4 in are one in the trade.
func bothUnits(mm float64) string {
	switch text := length(mm); text {
	case "10 cm":
		return text + " (4 in)"
	case "4 in":
		return text + " (10 cm)"
	default:
		return text
	}
}

// names are the abbreviations and the designer's own stitches.
func (e *edition) names() {
	stitches := append(slices.Clone(e.words.Stitches), e.toldStitches()...)
	if len(e.words.Abbreviations) > 0 {
		e.heading("Abbreviations")
		var l writeup.Terms
		for _, a := range e.words.Abbreviations {
			l = append(l, writeup.Term{Name: a.Short, Meaning: a.Long})
		}
		e.add(withYarnOver(l, stitches))
	}
	if len(stitches) > 0 {
		e.heading("Special stitches")
		for _, s := range stitches {
			e.add(writeup.Paragraph{Lead: s.Name + ":", Text: bound(s.Words)})
		}
	}
}

// withYarnOver adds the abbreviation that the words of the stitches use for what
// no round of the pattern says: yo, in UK terms yoh.
func withYarnOver(l writeup.Terms, stitches []working.SpecialStitch) writeup.Terms {
	for _, t := range []writeup.Term{{Name: "yo", Meaning: "yarn over"}, {Name: "yoh", Meaning: "yarn over hook"}} {
		used := false
		for _, s := range stitches {
			used = used || slices.Contains(strings.FieldsFunc(s.Words, func(r rune) bool { return !unicode.IsLetter(r) }), t.Name)
		}
		at := 0
		for at < len(l) && strings.ToLower(l[at].Name) < t.Name {
			at++
		}
		if used && (at == len(l) || l[at].Name != t.Name) {
			l = slices.Insert(l, at, t)
		}
	}
	return l
}

// notes are the designer's, and how the numbers are read.
func (e *edition) notes() {
	var l []string
	if e.size < 0 && len(e.j.pattern.Sizes) > 1 {
		l = append(l, howToRead(e.words, e.j.terms))
	}
	if e.words.Notes != "" {
		l = append(l, e.words.Notes)
	}
	if len(l) == 0 {
		return
	}
	e.heading("Notes")
	e.paragraphs(strings.Join(l, "\n\n"))
}

// cautions are what the maker must know so that nobody is hurt.
func (e *edition) cautions() {
	p := *e.j.pattern
	if i := e.size; i >= 0 { // an adult's edition needs none that are for children
		p.Sizes = p.Sizes[i : i+1]
		if i < len(p.Head) {
			p.Head = p.Head[i : i+1]
		}
	}
	l := patterns.Cautions(&p)
	if len(l) == 0 {
		return
	}
	e.heading("Safety")
	for _, c := range l {
		e.paragraphs(c.Message)
	}
}
