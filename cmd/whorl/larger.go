package main

import (
	"cmp"
	"fmt"
	"strings"

	"whorl/chart"
	"whorl/patterns"
)

// larger draws again what prints too small or too close in a chart of some options: a round
// chart as a panel, where its rounds are all about as long as one another, or else as its
// crown and a wedge of it, as far as can be read; what has no wedge that shows all of it, on
// several pages. It says what it has drawn.
func (j *job) larger(p patterns.Picture, i int, name string, small *chart.Chart, o chart.Options) (l []sheet, says string) {
	if p.Draw == "round" {
		if c, err := chart.Panel(j.fabrics[i], j.forms[i], o); err == nil && c.Legible() {
			l = append(l, sheet{name: name + "-panel", scene: c.Scene, width: pngWidth(p), findings: c.Findings})
			return l, "it is drawn larger as " + named(l)
		}
		l = j.crownAndWedge(p, i, name, o)
	}
	if n := len(l); n > 0 {
		says = "it is drawn larger as " + named(l)
		if strings.HasSuffix(l[n-1].name, "-wedge") {
			return l, says
		}
	}
	pages := j.pages(p, i, name, small, o)
	if n := len(pages); n > 0 {
		says = cmp.Or(says, "it is drawn larger")
		if len(l) > 0 {
			says += ", and"
		}
		says += fmt.Sprintf(" on %d pages, %s to %s", n, pages[0].name, pages[n-1].name)
	}
	return append(l, pages...), says
}

// crownAndWedge draws the crown of what a round chart shows, and a wedge of it, as
// far as those can be read.
func (j *job) crownAndWedge(p patterns.Picture, i int, name string, o chart.Options) (l []sheet) {
	f, form := j.fabrics[i], j.forms[i]
	add := func(kind string, c *chart.Chart, err error) {
		if err == nil && c.Legible() {
			l = append(l, sheet{name: name + "-" + kind, scene: c.Scene, width: pngWidth(p), findings: c.Findings})
		}
	}
	if crown, ok := chart.Crown(f, form, o); ok {
		crown.Special = j.special(i, crown)
		c, err := chart.Round(f, form, crown)
		add("crown", c, err)
	}
	c, err := chart.Wedge(f, form, o)
	add("wedge", c, err)
	return l
}

// pages draws a chart that cannot be read on one on several pages.
func (j *job) pages(p patterns.Picture, i int, name string, small *chart.Chart, o chart.Options) (l []sheet) {
	draw := func(o chart.Options) (*chart.Chart, error) { return charts[p.Draw](j.fabrics[i], j.forms[i], o) }
	d := &document{name: name + "-pages"}
	for k, c := range chart.Tiled(small, o, draw) {
		d.pages = append(d.pages, c.Scene)
		l = append(l, sheet{name: fmt.Sprintf("%s-page-%d", name, k+1), scene: c.Scene, width: pngWidth(p), of: d})
	}
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
