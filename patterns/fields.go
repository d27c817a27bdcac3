package patterns

import (
	"fmt"
	"regexp"
	"strings"

	"gopkg.in/yaml.v3"

	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

var fileKeys = keys{"title", "designer", "copyright", "terms", "sizes", "head", "ease", "gauge|tension", "measures",
	"hook", "yarn", "notes", "stitches", "parts", "pictures", "post", "worked", "text", "rounds", "rows"}

// pattern reads the whole file. The sizes come first, since every list of
// numbers is measured against them, and the parts before their pictures.
func (r *reader) pattern(root *yaml.Node) {
	m := r.mapping(root, "a pattern file", fileKeys)
	p := r.p
	p.Title = r.str(m["title"])
	p.Designer = r.str(m["designer"])
	p.Copyright = r.str(m["copyright"])
	p.Hook = r.str(m["hook"])
	p.Notes = r.paragraphs(m["notes"])
	p.Terms = r.terms(m["terms"])
	p.Sizes = r.sizes(m["sizes"])
	p.Yarns = r.yarns(m["yarn"])
	r.fit(m["head"], m["ease"])
	if m["head"].given() {
		p.HeadPos = pos(m["head"].key)
	}
	p.Gauge = r.gauges(m["gauge"])
	p.Measures = r.figures(m["measures"])
	p.Stitches = r.definitions(m["stitches"])
	if e := m["notes"]; p.Notes != "" {
		p.NoteWords = r.text(e.value)
		p.Stitches = append(p.Stitches, r.defined(p.NoteWords, p.Stitches, false)...)
	}
	p.Parts = r.parts(root, m)
	r.specialStitches(p)
	p.Stitches = append(p.Stitches, r.told()...)
	p.Stitches = append(p.Stitches, r.inside()...)
	p.Pictures = r.pictures(m["pictures"])
	p.PostWidths = r.post(m["post"])
}

var termsNames = map[string]stitch.Terms{
	"us": stitch.US, "usa": stitch.US, "american": stitch.US, "u.s.": stitch.US,
	"uk": stitch.UK, "gb": stitch.UK, "british": stitch.UK, "u.k.": stitch.UK,
}

// terms reads "US" or "UK"; a file that does not say is in US terms.
func (r *reader) terms(e entry) stitch.Terms {
	s := r.str(e)
	if s == "" {
		return stitch.US
	}
	name := strings.TrimSuffix(strings.ToLower(s), " terms")
	t, ok := termsNames[name]
	if !ok {
		r.at(e.value, codeValue, fmt.Sprintf("unknown terms %s", quote(s)), "Terms are US or UK.")
	}
	return t
}

// gauges reads one line of gauge, a list of them, or a block with one on each
// line.
func (r *reader) gauges(e entry) []Gauge {
	if !e.given() {
		return nil
	}
	nodes := []*yaml.Node{e.value}
	if e.value.Kind == yaml.SequenceNode {
		nodes = e.value.Content
	}
	var list []Gauge
	seen := map[string]int{}
	for _, n := range nodes {
		lines := labelledGauges(n)
		if lines == nil {
			if n.Kind != yaml.ScalarNode || isNull(n) {
				r.at(n, codeType, "a gauge must be a line of words", gaugeHelp)
				continue
			}
			r.hash(n)
			lines = r.gaugeLines(n)
		}
		var parts []passage
		for _, line := range lines {
			parts = append(parts, line.clauses()...)
		}
		for _, line := range parts {
			if r.beyond(n, len(list), maxGauges, "lines of gauge") {
				return list
			}
			g, bad := readGauge(line.text)
			if bad != nil {
				r.misread(line, bad, codeGauge)
				continue
			}
			g.Pos = line.pos(0)
			list = r.another(list, g, seen)
		}
	}
	return list
}

// labelledGauges are the lines of gauge in a node that YAML takes for a mapping
// because of their colons, as "In hdc: 14 sts = 10 cm"; nil for any other.
func labelledGauges(n *yaml.Node) []passage {
	if n.Kind != yaml.MappingNode || n.Style&yaml.FlowStyle != 0 {
		return nil
	}
	var lines []passage
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		text := key.Value + ": " + value.Value
		if g, bad := readGauge(text); value.Kind != yaml.ScalarNode || bad == nil && g.Over == 0 {
			return nil
		}
		lines = append(lines, Text{Lines: []string{text}, First: key.Line, Columns: []int{key.Column}}.joined())
	}
	return lines
}

var (
	unblocked = regexp.MustCompile(`(?i)\b(un-?blocked|un-?washed|before (blocking|washing))\b`)
	blocked   = regexp.MustCompile(`(?i)\b(block|wash)`)
)

// another adds a line of gauge to the others. Of two lines for the same stitch
// that were measured differently ("unblocked", "after blocking") the one that is
// as worn is used, or else the first; of two that do not say so one is a fault.
// Seen holds the place in the list, from 1, of what was measured.
func (r *reader) another(list []Gauge, g Gauge, seen map[string]int) []Gauge {
	if g.Over == 0 || g.Sample != nil {
		return append(list, g)
	}
	id := strings.ToLower(g.Of)
	if g.Count == 0 {
		id += " rounds"
	}
	if id == "sts" || id == "stitches" {
		id += " " + strings.ToLower(g.For) // "Brim: 16 sts", "Body: 15 sts"
	}
	at := seen[id]
	if at == 0 {
		list = append(list, g)
		seen[id] = len(list)
		return list
	}
	first := &list[at-1]
	if strings.EqualFold(first.Remark, g.Remark) && strings.EqualFold(first.For, g.For) {
		of := g.Of
		if of == "" {
			of = "rounds"
		}
		r.add(g.Pos, g.Length, codeGauge, fmt.Sprintf("the gauge of %s is given twice, first in line %d", of, first.Line), "Keep one of them.")
		return list
	}
	worn := func(g *Gauge) bool { return blocked.MatchString(g.Remark) && !unblocked.MatchString(g.Remark) }
	if worn(&g) && !worn(first) {
		first.Instead = g.Line
		list = append(list, g)
		seen[id] = len(list)
		return list
	}
	g.Instead = first.Line
	return append(list, g)
}

// gaugeLines are the lines of gauge in a node: each line of a block, or the
// whole of anything else.
func (r *reader) gaugeLines(n *yaml.Node) []passage {
	t := r.text(n)
	if n.Style&yaml.LiteralStyle == 0 {
		return []passage{t.joined()}
	}
	var lines []passage
	for i, l := range t.Lines {
		if l != "" {
			one := Text{Lines: t.Lines[i : i+1], First: t.First + i, Columns: t.Columns[i : i+1]}
			lines = append(lines, one.joined())
		}
	}
	return lines
}

// definitions reads the designer's special stitches.
func (r *reader) definitions(e entry) []Definition {
	const help = "Write each on a line of its own, as: fan: (2 dc, ch 1, 2 dc) in same st"
	if !r.given(e, yaml.MappingNode, "a set of names with their words", help) {
		return nil
	}
	var list []Definition
	for _, f := range r.entries(e.value, strings.ToLower) {
		if r.beyond(f.key, len(list), maxStitches, "special stitches") {
			break
		}
		d := Definition{Pos: pos(f.key), Name: f.name()}
		if describes(f.value) {
			key := f.key
			f = r.withSymbol(f, &d)
			if !f.given() {
				r.at(key, codeEmpty, fmt.Sprintf("the stitch %s has no words", quote(d.Name)), "Say how it is made under words:, as in words: 3-dc cluster.")
				continue
			}
		}
		if r.paragraphs(f) != "" {
			d.Words = r.text(f.value)
		} else if !f.given() || f.value.Kind == yaml.ScalarNode {
			r.at(f.key, codeEmpty, fmt.Sprintf("the stitch %s has no words", quote(f.name())), help)
			continue
		}
		if d.Symbol == nil && notation.Abbreviates(d.Name, strings.Join(d.Words.Lines, " ")) {
			continue // no stitch
		}
		list = append(list, d)
	}
	return list
}
