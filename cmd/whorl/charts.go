package main

import (
	"regexp"
	"strings"

	"whorl/chart"
	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// charts are the stitch charts that a picture can be, by what its file says
// after draw:.
var charts = map[string]func(*fabric.Fabric, *geometry.Form, chart.Options) (*chart.Chart, error){
	"round": chart.Round,
	"rows":  chart.Rows,
	"wedge": chart.Wedge,
	"panel": chart.Panel,
}

// chartOptions are what the file asks of a picture in size i.
func chartOptions(j *job, p patterns.Picture, i int) chart.Options {
	o := chart.Options{Title: j.pattern.Title, Credit: credit(j.pattern), Part: partIndex(j.fabrics[i], p.Part),
		Terms: j.terms, Repeats: p.Repeats,
		LeftHanded: p.LeftHanded, Cross: p.Cross, Black: p.Black, Clear: p.Clear, Tint: p.Tint,
		Changes: p.Changes, Counts: p.Counts, Fives: p.Fives, Large: p.Large}
	o.From, o.To = j.roundsIn(p, i)
	o.Special = j.special(i, o)
	o.Own = j.own
	o.Paper = paperOf(p)
	o.Sheet = p.Paper != "" || p.Pixels[0] > 0
	return o
}

// paperOf is the paper that a picture is set on.
func paperOf(p patterns.Picture) chart.Paper {
	switch {
	case p.Pixels[0] > 0:
		return chart.Post(p.Pixels[0], p.Pixels[1])
	case p.Paper == "Letter":
		return chart.Letter
	}
	return chart.A4
}

// special are the designer's own stitches of a chart in size i, told in the terms
// of the job.
func (j *job) special(i int, o chart.Options) []chart.Definition {
	l := special(j.pattern, j.fabrics[i], o)
	if j.terms == j.pattern.Terms || len(l) == 0 {
		return l
	}
	words := j.worked.Script(j.terms, i, false)
	for k := range l {
		for n, s := range words.Stitches {
			if j.pattern.Stitches[n].Name == l[k].Name {
				l[k].Name, l[k].Words = s.Name, s.Words
				break
			}
		}
	}
	return l
}

// inPlace is where words say that a stitch goes.
var inPlace = regexp.MustCompile(`(?i) (in|over|around) .*$`)

// special are the designer's own stitches that are named by the words which the
// drawn rounds were worked from.
func special(p *patterns.Pattern, f *fabric.Fabric, o chart.Options) (l []chart.Definition) {
	part := f.Parts[o.Part]
	lines := map[int]bool{}
	for _, r := range part.Rounds {
		if r.Number < o.From || o.To > 0 && r.Number > o.To {
			continue
		}
		for i := range r.Stitches {
			lines[r.Stitches[i].Line] = true
		}
	}
	var words strings.Builder
	for _, q := range p.Parts {
		if q.Name != part.Name {
			continue
		}
		for i, line := range q.Text.Lines {
			if lines[q.Text.First+i] {
				words.WriteString(line + " ")
			}
		}
	}
	trade := notation.NewVocabulary(p.Terms, nil)
	for _, d := range p.Stitches {
		named := regexp.MustCompile(`(?i)(^|[^a-z])` + regexp.QuoteMeta(d.Name) + `(s|es)?([^a-z]|$)`)
		if named.MatchString(words.String()) {
			own := chart.Definition{Name: d.Name, Words: strings.Join(d.Words.Lines, " "), Own: notation.Plain(d.Name)}
			_, _, own.Told = trade.Stitch(inPlace.ReplaceAllString(own.Words, ""))
			if k, in, known := trade.Stitch(d.Name); known && d.Symbol == nil && (k.Shape == stitch.Plain || k.Shape == stitch.Together) {
				own.Own = "" // a name of the trade, which is another in other terms
				if o.Terms == p.Terms && !strings.EqualFold(d.Name, k.NameInto(in, p.Terms)) {
					own.Kind, own.Into = k, in
				}
			}
			l = append(l, own)
		}
	}
	return l
}
