package main

import (
	"strings"

	"whorl/chart/schematic"
	"whorl/chart/writeup"
	"whorl/patterns"
)

// tableColumns is how many measurements a table of the finished sizes has at most.
const tableColumns = 7

// finished is the table of the finished sizes.
func (e *edition) finished() {
	p := e.j.pattern
	facts := e.facts()
	if len(p.Head) > 0 {
		head := schematic.Fact{Name: "To fit head"}
		for _, i := range e.sizes() {
			head.Values = append(head.Values, p.Head[min(i, len(p.Head)-1)].MM)
		}
		facts = append([]schematic.Fact{head}, facts...)
	}
	if len(facts) == 0 {
		return
	}
	if len(e.sizes()) == 1 {
		e.heading("Finished size")
		e.add(oneSize(facts, p.Sizes[e.sizes()[0]]))
	} else {
		e.heading("Finished sizes")
		for len(facts) > 0 {
			part := facts[:min(tableColumns, len(facts))]
			facts = facts[len(part):]
			e.add(allSizes(part, e.sizeNames()))
		}
	}
	text := "Measured flat, relaxed."
	if s := e.ease(); s != "" {
		text += " " + s
	}
	e.paragraphs(text)
}

// allSizes is a table of measurements with a row for each size.
func allSizes(facts []schematic.Fact, sizes []string) writeup.Table {
	t := writeup.Table{Head: []string{"Size"}}
	for _, f := range facts {
		t.Head = append(t.Head, f.Name)
	}
	for n, size := range sizes {
		row := []string{size}
		for _, f := range facts {
			cm, in := inBoth(f.Values[n])
			row = append(row, strings.TrimSpace(cm+"\n"+in))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// oneSize is a table of the measurements of one size, a row for each.
func oneSize(facts []schematic.Fact, size string) writeup.Table {
	t := writeup.Table{Head: []string{"Measurement", "cm", "in"}}
	if size != "" {
		t.Head[0] = "Size " + size
	}
	for _, f := range facts {
		cm, in := inBoth(f.Values[0])
		t.Rows = append(t.Rows, []string{f.Name, cm, in})
	}
	return t
}

// facts are the finished measurements of the pieces: of all of them together or,
// where there is one that has no outline, of each of the others.
func (e *edition) facts() []schematic.Fact {
	sizes, o := e.j.measured(patterns.Picture{}, e.sizeNames())
	all, err := schematic.Measurements(sizes, o)
	if err == nil {
		return all
	}
	e.findings = append(e.findings, "the table of finished sizes is not whole: "+err.Error())
	for _, part := range e.j.pattern.Parts {
		if o.Part = part.Name; part.Name == "" {
			continue
		}
		l, err := schematic.Measurements(sizes, o)
		if err != nil {
			continue
		}
		for _, f := range l {
			if !strings.HasPrefix(f.Name, part.Name) {
				f.Name = part.Name + ", " + strings.ToLower(f.Name)
			}
			all = append(all, f)
		}
	}
	return all
}

// inBoth is a length of a table in centimetres and in inches, a dash for none.
func inBoth(mm float64) (cm, in string) {
	if !(mm > 0) {
		return "–", ""
	}
	return schematic.Centimetres(mm) + " cm", schematic.Inches(mm) + " in"
}

// ease says how much larger or smaller than the head the piece is made.
func (e *edition) ease() string {
	l := e.j.pattern.Ease
	if len(l) == 0 || len(e.j.pattern.Head) == 0 {
		return ""
	}
	smaller, larger := false, false
	for _, i := range e.sizes() {
		v := l[min(i, len(l)-1)].MM
		smaller, larger = smaller || v < 0, larger || v > 0
	}
	text := strings.ReplaceAll(lengths(l, e.size), "-", "")
	switch {
	case smaller && !larger:
		return "Made " + text + " smaller around than the head."
	case larger && !smaller:
		return "Made " + text + " larger around than the head."
	}
	return ""
}
