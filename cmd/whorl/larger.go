package main

import (
	"strings"

	"whorl/chart"
	"whorl/patterns"
)

// larger draws what a round chart shows that prints too small: its crown, and a
// wedge of it, as far as those print large enough.
func (j *job) larger(p patterns.Picture, i int, name string) (l []sheet) {
	f, form := j.fabrics[i], j.forms[i]
	o := chartOptions(j, p, i)
	add := func(kind string, c *chart.Chart, err error) {
		if err == nil && !c.Small() {
			l = append(l, sheet{name: name + "-" + kind, scene: c.Scene, width: p.Width, findings: c.Findings})
		}
	}
	if crown, ok := chart.Crown(f, form, o); ok {
		crown.Special = special(j.pattern, f, crown)
		c, err := chart.Round(f, form, crown)
		add("crown", c, err)
	}
	c, err := chart.Wedge(f, form, o)
	add("wedge", c, err)
	return l
}

// named lists the names of pictures in words.
func named(l []sheet) string {
	var names []string
	for _, s := range l {
		names = append(names, s.name)
	}
	return strings.Join(names, " and ")
}
