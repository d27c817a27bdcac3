package main

import (
	"whorl/chart"
	"whorl/patterns"
)

// halves draws a round chart of a piece that closes in again as two; none for any other.
func (j *job) halves(p patterns.Picture, i int, name string) (l []sheet, err error) {
	f, form := j.fabrics[i], j.forms[i]
	beginning, closing, ok := chart.Halves(f, form, chartOptions(j, p, i))
	if !ok {
		return nil, nil
	}
	for k, o := range []chart.Options{beginning, closing} {
		o.Special = special(j.pattern, f, o)
		c, err := chart.Round(f, form, o)
		if err != nil {
			return nil, err
		}
		s := sheet{name: name + [...]string{"-beginning", "-closing"}[k], scene: c.Scene, width: p.Width, findings: c.Findings}
		l = append(l, s)
	}
	l[0].findings = append(l[0].findings, "the piece closes in again, so it is drawn as two halves: "+named(l))
	return l, nil
}
