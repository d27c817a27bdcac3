package main

import (
	"strings"

	"whorl/chart/schematic"
	"whorl/chart/writeup"
	"whorl/patterns"
)

// tableColumns is how many measurements a table of the finished sizes has at most.
const tableColumns = 7

// finished is the table of the finished sizes, a row for each.
func (e *edition) finished() {
	p := e.j.pattern
	sizes, o := e.j.measured(patterns.Picture{Paper: e.picture.Paper}, e.sizeNames())
	facts, err := schematic.Measurements(sizes, o)
	if err != nil {
		e.findings = append(e.findings, "there is no table of finished sizes: "+err.Error())
	}
	type column struct {
		head  string
		cells []string
	}
	var columns []column
	if len(p.Head) > 0 {
		c := column{head: "To fit head"}
		for _, i := range e.sizes() {
			c.cells = append(c.cells, inBoth(p.Head[min(i, len(p.Head)-1)].MM))
		}
		columns = append(columns, c)
	}
	for _, f := range facts {
		c := column{head: f.Name}
		for _, v := range f.Values {
			c.cells = append(c.cells, inBoth(v))
		}
		columns = append(columns, c)
	}
	if len(columns) == 0 {
		return
	}
	e.heading("Finished sizes")
	for len(columns) > 0 {
		part := columns[:min(tableColumns, len(columns))]
		columns = columns[len(part):]
		t := writeup.Table{Head: []string{"Size"}}
		for n, i := range e.sizes() {
			row := []string{p.Sizes[i]}
			if row[0] == "" {
				row[0] = "One size"
			}
			for _, c := range part {
				row = append(row, c.cells[n])
			}
			t.Rows = append(t.Rows, row)
		}
		for _, c := range part {
			t.Head = append(t.Head, c.head)
		}
		e.add(t)
	}
	text := "Measured flat, relaxed."
	if s := e.ease(); s != "" {
		text += " " + s
	}
	e.paragraphs(text)
}

// inBoth is a length of a table in centimetres over inches.
func inBoth(mm float64) string {
	if !(mm > 0) {
		return "–"
	}
	return schematic.Centimetres(mm) + " cm\n" + schematic.Inches(mm) + " in"
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
