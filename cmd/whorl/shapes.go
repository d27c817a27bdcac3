package main

import (
	"strings"

	"whorl/chart"
	"whorl/chart/scene"
	"whorl/chart/shaping"
	"whorl/patterns"
)

// shape is the shaping sheet, or the form view, of one size.
func (j *job) shape(p patterns.Picture, i int, paper chart.Paper) (*scene.Scene, error) {
	o := shaping.Options{Title: j.pattern.Title, Credit: credit(j.pattern), Part: partIndex(j.fabrics[i], p.Part), Paper: paper}
	if line := j.fitLine(i); line != "" {
		o.Facts = strings.Split(strings.ReplaceAll(line, "\n  ", "\n"), "\n")
	}
	if i < len(j.pattern.Head) {
		o.Head = j.pattern.Head[i].MM
	}
	if p.Draw == "form" {
		return shaping.Form(j.fabrics[i], j.forms[i], o)
	}
	return shaping.Sheet(j.fabrics[i], j.forms[i], o)
}
