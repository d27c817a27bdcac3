package working

import (
	"fmt"

	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// Groups are the designer's own groups of stitches in a round, shells and V-stitches,
// by the names that the file gives them. One that begins the round counts as one of
// those that it stands for.
func Groups(r *fabric.Round, p *patterns.Pattern) map[string]int {
	m := map[string]int{}
	if len(r.Groups) == 0 {
		return m
	}
	written := map[string]string{}
	for _, name := range p.StitchNames() {
		written[notation.Plain(name)] = name
	}
	for _, g := range r.Groups {
		name := g.Name
		if name != "" && g.Like != "" {
			name = g.Like
		}
		if as, own := written[name]; own {
			name = as
		}
		if name != "" {
			m[name]++
		}
	}
	return m
}

// Spaces are the chain spaces of a round by their chains: 12 of "ch-2". A chain that
// the part starts with has none.
func Spaces(r *fabric.Round) map[string]int {
	m := map[string]int{}
	for k := range r.Spaces {
		if r.Count() > 0 {
			m[fmt.Sprintf("ch-%d", r.SpaceChains(k))]++
		}
	}
	return m
}
