package main

import (
	"slices"

	"whorl/chart/scene"
	"whorl/chart/schematic"
	"whorl/patterns"
)

// schematic is the schematic of the pieces: with the figures of the sizes that
// the picture names, or else of all of them, and the outlines of the middle one.
func (j *job) schematic(p patterns.Picture, names []string) (*scene.Scene, error) {
	return schematic.Sheet(j.measured(p, names))
}

// measured are the sizes that a schematic is of, and how it is drawn.
func (j *job) measured(p patterns.Picture, names []string) ([]schematic.Size, schematic.Options) {
	if len(names) == 0 {
		names = j.pattern.Sizes
	}
	o := schematic.Options{Title: j.pattern.Title, Credit: credit(j.pattern), Paper: paperOf(p), Sheet: p.Paper != "",
		Part: p.Part, Hat: len(j.pattern.Head) > 0, LeftHanded: p.LeftHanded, Nested: p.Nested}
	var sizes []schematic.Size
	for i, name := range j.pattern.Sizes {
		if !slices.Contains(names, name) || i >= len(j.fabrics) || i >= len(j.forms) {
			continue
		}
		if name == middleSize(names) || p.Nested {
			o.Drawn = len(sizes) // nested, the last and largest
		}
		sizes = append(sizes, schematic.Size{Fabric: j.fabrics[i], Form: j.forms[i]})
	}
	return sizes, o
}
