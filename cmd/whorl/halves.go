package main

import (
	"strconv"

	"whorl/chart"
	"whorl/patterns"
)

// halves draws a round chart or a wedge of a piece that closes in again as a chart of
// each half, and what cannot be read in it larger as well; none for any other.
func (j *job) halves(p patterns.Picture, i int, name string) (l []sheet, err error) {
	f, form := j.fabrics[i], j.forms[i]
	halves := chart.Halves(f, form, chartOptions(j, p, i))
	var all []sheet
	for k, o := range halves {
		o.Special = special(j.pattern, f, o)
		c, err := charts[p.Draw](f, form, o)
		if err != nil {
			return nil, err
		}
		s := sheet{name: name + halfName(k, len(halves)), scene: c.Scene, width: pngWidth(p), findings: c.Findings}
		var larger []sheet
		if !c.Legible() {
			var says string
			if larger, says = j.larger(p, i, s.name, c, o); says != "" {
				s.findings = append(s.findings, says)
			}
		}
		l = append(l, s)
		all = append(append(all, s), larger...)
	}
	if len(l) > 0 {
		all[0].findings = append(all[0].findings, "the piece closes in again, so it is drawn in halves: "+named(l))
	}
	return all, nil
}

// halfName tells half k of n by its name: those of one ball from one another, and the
// balls by their numbers where there are several.
func halfName(k, n int) string {
	name := [...]string{"-beginning", "-closing"}[k%2]
	if n > 2 {
		name += "-" + strconv.Itoa(k/2+1)
	}
	return name
}
