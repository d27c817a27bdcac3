package main

import (
	"whorl/chart"
	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/fabric"
)

// charts are the stitch charts that a picture can be, by what its file says
// after draw:.
var charts = map[string]func(*fabric.Fabric, *geometry.Form, chart.Options) (*chart.Chart, error){
	"round": chart.Round,
	"rows":  chart.Rows,
	"wedge": chart.Wedge,
}

// chartOptions are what the file asks of a picture in size i.
func chartOptions(j *job, p patterns.Picture, i int) chart.Options {
	o := chart.Options{Title: j.pattern.Title, Credit: credit(j.pattern), Part: partIndex(j.fabrics[i], p.Part),
		From: p.From, To: p.To, Terms: j.pattern.Terms, Repeats: p.Repeats,
		LeftHanded: p.LeftHanded, Cross: p.Cross, Black: p.Black, Clear: p.Clear, Tint: p.Tint}
	o.Paper = paperOf(p)
	o.Sheet = p.Paper != ""
	return o
}

// paperOf is the paper that a picture is set on.
func paperOf(p patterns.Picture) chart.Paper {
	if p.Paper == "Letter" {
		return chart.Letter
	}
	return chart.A4
}
