package main

import (
	"fmt"
	"math"
	"slices"
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
		t.Rows = append(t.Rows, []string{f.Name, strings.TrimSuffix(cm, " cm"), strings.TrimSuffix(in, " in")})
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

// ease says how much larger or smaller than the head the piece comes out, where the
// file asks for an ease: by the figures of the table.
func (e *edition) ease() string {
	p := e.j.pattern
	if len(p.Ease) == 0 || len(p.Head) == 0 {
		return ""
	}
	unit, parts := p.Head[0].Unit, 10.0 // of a centimetre
	mm := 10.0
	if edgeUnit(unit) == "in" {
		unit, parts, mm = "in", 4, 25.4
	}
	var l []string
	sign := 0.0
	for _, i := range e.sizes() {
		fit, ok := e.j.fitting(i)
		if !ok {
			return ""
		}
		shown := func(v float64) float64 { return math.Round(math.Round(1e4*parts*v/mm) / 1e4) }
		more := shown(fit.Round) - shown(fit.Head)
		if more == 0 || sign*more < 0 {
			return "" // as wide as the head, or now wider and now narrower
		}
		sign = more
		v := math.Abs(more) / parts * mm
		if unit == "in" {
			l = append(l, schematic.Inches(v))
		} else {
			l = append(l, schematic.Centimetres(v))
		}
	}
	text := l[0]
	if len(slices.Compact(slices.Clone(l))) > 1 {
		text += " (" + strings.Join(l[1:], ", ") + ")"
	}
	than := "smaller"
	if sign > 0 {
		than = "larger"
	}
	return fmt.Sprintf("It comes out %s %s %s around than the head.", text, unit, than)
}
