package main

import (
	"slices"
	"strings"

	"whorl/chart/scene"
	"whorl/chart/schematic"
	"whorl/patterns"
	"whorl/patterns/fabric"
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
		Part: p.Part, Hat: len(j.pattern.Head) > 0, LeftHanded: p.LeftHanded, Nested: p.Nested, Joints: j.joints()}
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

// edgesOf are the edges of a schematic, as the words name them.
var edgesOf = map[patterns.Edge]schematic.Edge{
	patterns.EdgeEnds: schematic.ShortEnds, patterns.EdgeSides: schematic.RowEnds, patterns.EdgeFirst: schematic.FirstEdge,
	patterns.EdgeLast: schematic.LastEdge, patterns.EdgeEach: schematic.EachSide,
}

// joints are the places where edges meet: what a part is worked on, and the seams that
// the words name.
func (j *job) joints() (l []schematic.Joint) {
	if len(j.fabrics) == 0 {
		return nil
	}
	for k, part := range j.fabrics[0].Parts {
		if part.From < 0 || part.From >= len(j.fabrics[0].Parts) || k >= len(j.pattern.Parts) {
			continue
		}
		on := schematic.Joint{Part: k, To: part.From, Edge: schematic.FirstEdge}
		_, where, _ := strings.Cut(strings.ToLower(j.pattern.Parts[k].From), strings.ToLower(j.pattern.Parts[part.From].Called()))
		switch first := part.Rounds[0]; {
		case strings.HasPrefix(first.Label, "the opening"):
			on.How, on.ToEdge, on.From, on.Last = schematic.PickedUp, schematic.Opening, first.Number, first.Number
		case strings.HasPrefix(first.Label, "the edge of the joined"):
			continue // round several of them
		case j.fabrics[0].Parts[part.From].Worked == fabric.InRows && onRowEnds(part) > 0:
			on.How, on.ToEdge = schematic.PickedUp, schematic.RowEnds
		case strings.TrimSpace(where) == "" && first.Carried:
			on.How, on.ToEdge = schematic.GoesOn, schematic.LastEdge
		default:
			continue // on what else there is, the words do not say which edge
		}
		l = append(l, on)
	}
	for _, s := range j.pattern.Seams() {
		l = append(l, schematic.Joint{Part: s.Part, To: s.To, Edge: edgesOf[s.Edge], ToEdge: edgesOf[s.ToEdge], From: s.From, Last: s.Last})
	}
	return l
}
