package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"whorl/chart"
	"whorl/chart/schematic"
	"whorl/chart/writeup"
	"whorl/patterns"
)

// A chart among text is drawn in part of the room of a page where its symbols stay
// clearly larger than the least that prints well, mm.
const clearSymbols = 4.0

var partsOfPage = []float64{0.55, 0.6, 0.65, 0.75}

// chartsOfParts are the charts of every part: those that the file asks for, or one
// of each part where it asks for none.
func (e *edition) chartsOfParts() [][]writeup.Picture {
	all := make([][]writeup.Picture, len(e.j.pattern.Parts))
	var asked []patterns.Picture
	for _, p := range e.j.pattern.Pictures {
		if charts[p.Draw] != nil {
			asked = append(asked, p)
		}
	}
	if len(asked) == 0 {
		asked = chartOfEach(e.j)
	}
	slices.SortStableFunc(asked, func(a, b patterns.Picture) int { return e.partOf(a) - e.partOf(b) })
	for _, p := range asked {
		for _, i := range e.sizesOf(p) {
			all[e.partOf(p)] = append(all[e.partOf(p)], e.chart(p, i)...)
		}
	}
	return all
}

func (e *edition) partOf(p patterns.Picture) int { return partIndex(e.j.fabrics[0], p.Part) }

// sizesOf are the sizes that a picture is drawn in.
func (e *edition) sizesOf(p patterns.Picture) (l []int) {
	if e.size >= 0 {
		return []int{e.size}
	}
	names := p.Sizes
	if len(names) == 0 {
		names = []string{middleSize(e.j.pattern.Sizes)}
	}
	for i, name := range e.j.pattern.Sizes {
		if slices.Contains(names, name) {
			l = append(l, i)
		}
	}
	return l
}

// figure is a chart as it is set among text and, where it is larger with a page to
// itself, as it is set then, or smaller to fill one.
type figure struct{ among, alone, smaller *chart.Chart }

// smallerPart is how much of the room of a page a picture has that is drawn smaller.
const smallerPart = 0.8

// chart is a chart of a size, or those that show it larger where it could not be
// read.
func (e *edition) chart(p patterns.Picture, i int) (l []writeup.Picture) {
	shown, err := e.figures(p, i)
	if err != nil {
		e.findings = append(e.findings, fmt.Sprintf("the picture %s is left out: %v", p.Name, err))
		return nil
	}
	if len(shown) == 1 && !shown[0].among.Legible() {
		if pages := e.pages(p, i, shown[0].among); len(pages) > 0 {
			return pages
		}
	}
	for _, f := range shown {
		e.charts++
		name := e.chartName()
		for _, text := range f.among.Findings {
			e.findings = append(e.findings, fmt.Sprintf("%s: %s", name, text))
		}
		l = append(l, e.set(name, f))
	}
	return l
}

// figures are the figures that show a chart: the halves of a ball, or itself, or what
// shows it larger.
func (e *edition) figures(p patterns.Picture, i int) (l []figure, err error) {
	o := chartOptions(e.j, p, i)
	if p.Draw == "round" || p.Draw == "wedge" {
		for _, half := range chart.Halves(e.j.fabrics[i], e.j.forms[i], e.figureOptions(o)) {
			f, err := e.figure(p.Draw, half, i)
			if err != nil {
				return nil, err
			}
			l = append(l, f)
		}
		if len(l) > 0 {
			return l, nil
		}
	}
	made, err := e.figure(p.Draw, o, i)
	if err != nil {
		return nil, err
	}
	if p.Draw == "round" && !made.among.Legible() {
		if l := e.larger(o, i); len(l) > 0 {
			return l, nil
		}
	}
	return []figure{made}, nil
}

// chartName is what the newest chart is called.
func (e *edition) chartName() string { return fmt.Sprintf("Chart %d", e.charts) }

// set is a figure as a picture of the write-up.
func (e *edition) set(name string, f figure) writeup.Picture {
	c := f.among
	pic := writeup.Picture{Scene: c.Scene, Caption: bound(name + ": " + c.Caption), Note: c.Reading + ".", Alt: c.Scene.Alt,
		Name: e.stem + "-" + fileName(name)}
	if f.alone != nil {
		pic.Alone = f.alone.Scene
	}
	if f.smaller != nil {
		pic.Smaller = f.smaller.Scene
	}
	return pic
}

// pages shows a chart that would print too small, and has no wedge, as a whole with
// its key and then larger on several pages; none where there would be too many.
func (e *edition) pages(p patterns.Picture, i int, small *chart.Chart) (l []writeup.Picture) {
	o := e.figureOptions(chartOptions(e.j, p, i))
	draw := func(o chart.Options) (*chart.Chart, error) { return charts[p.Draw](e.j.fabrics[i], e.j.forms[i], o) }
	pages := chart.Tiled(small, o, draw)
	if len(pages) == 0 {
		return nil
	}
	whole := small
	room := o.Figure
	for _, part := range partsOfPage {
		o.Figure = part * room
		if c, err := draw(o); err == nil && c.Scene.Height <= o.Figure+0.01 {
			whole = c
			break
		}
	}
	e.charts++
	name := e.chartName()
	overview := e.set(name, figure{among: whole})
	overview.Note = fmt.Sprintf("%s The whole; its symbols are larger on the %d pages that follow.", overview.Note, len(pages))
	l = append(l, overview)
	for k, c := range pages {
		page := e.set(name, figure{among: c})
		page.Name += fmt.Sprintf("-page-%d", k+1)
		l = append(l, page)
	}
	e.findings = append(e.findings, fmt.Sprintf("%s: its symbols would print too small, so it is drawn larger on %d pages", name, len(pages)))
	return l
}

// figureOptions are those of a chart over all of a page of the write-up.
func (e *edition) figureOptions(o chart.Options) chart.Options {
	o.Special = append([]chart.Definition(nil), o.Special...)
	for k := range o.Special {
		o.Special[k].Told = true // in the words of the write-up
	}
	o.Paper = paperOf(e.picture)
	_, height := o.Paper.Size()
	o.Figure = writeup.Room(height)
	return o
}

// figure draws a chart over all of a page and, if that does, in a part of it.
func (e *edition) figure(draw string, o chart.Options, i int) (f figure, err error) {
	o = e.figureOptions(o)
	room := o.Figure
	at := func(height float64) (*chart.Chart, error) {
		o.Figure = height
		return charts[draw](e.j.fabrics[i], e.j.forms[i], o)
	}
	if f.among, err = at(room); err != nil {
		return f, err
	}
	if c := f.among; c.Scene.Height > room+0.01 {
		return f, fmt.Errorf("with its key it is %.0f mm high, and a page has %.0f mm; draw fewer rounds", c.Scene.Height, room)
	}
	for _, part := range partsOfPage {
		if c, err := at(part * room); err == nil && c.Smallest >= clearSymbols && len(c.Findings) == 0 {
			return figure{among: c, alone: f.among}, nil
		}
	}
	room = smallerPart * math.Min(room, f.among.Scene.Height)
	if c, err := at(room); err == nil && c.Scene.Height <= room+0.01 && c.Legible() && len(c.Findings) <= len(f.among.Findings) {
		f.smaller = c
	}
	return f, nil
}

// larger shows what a round chart shows larger: rounds that are all about as long
// as a panel, others as their crown and a wedge, if those print large enough. There
// is nothing of a chart that would not be shown whole.
func (e *edition) larger(o chart.Options, i int) (l []figure) {
	o = e.figureOptions(o)
	if f, err := e.figure("panel", o, i); err == nil && f.among.Legible() {
		return []figure{f}
	}
	wedge, err := e.figure("wedge", o, i)
	if err != nil || !wedge.among.Legible() {
		return nil
	}
	if crown, ok := chart.Crown(e.j.fabrics[i], e.j.forms[i], o); ok {
		if f, err := e.figure("round", crown, i); err == nil && f.among.Legible() {
			l = append(l, f)
		}
	}
	return append(l, wedge)
}

// chartsNamed is a sentence that leads to the charts of a part, "" for none.
func chartsNamed(l []writeup.Picture) string {
	var names []string
	for _, c := range l {
		name, _, _ := strings.Cut(c.Caption, ":")
		names = append(names, bound(name))
	}
	names = slices.Compact(names) // one may go over several pages
	switch len(names) {
	case 0:
		return ""
	case 1:
		return " See " + names[0] + "."
	}
	return " See " + strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1] + "."
}

// schematic is the schematics that the file asks for, or else one of all pieces; of
// each piece that has an outline, where there is one without.
func (e *edition) schematic() {
	var asked []patterns.Picture
	for _, p := range e.j.pattern.Pictures {
		if p.Draw == "schematic" {
			asked = append(asked, p)
		}
	}
	if e.size >= 0 { // one size is nested in nothing
		asked = slices.CompactFunc(asked, func(a, b patterns.Picture) bool { return a.Part == b.Part && a.Nested != b.Nested })
	}
	if len(asked) == 0 {
		asked = []patterns.Picture{{Draw: "schematic"}}
	}
	var l []writeup.Picture
	for _, p := range asked {
		made, err := e.outlines(p, len(asked))
		if err == nil {
			l = append(l, made)
			continue
		}
		e.findings = append(e.findings, "a schematic is left out: "+err.Error())
		for _, part := range e.j.pattern.Parts {
			if p.Part != "" || part.Name == "" {
				continue
			}
			q := p
			q.Part = part.Name
			if made, err := e.outlines(q, len(e.j.pattern.Parts)); err == nil {
				l = append(l, made)
			}
		}
	}
	if len(l) == 0 {
		return
	}
	e.heading(map[bool]string{true: "Schematic", false: "Schematics"}[len(l) == 1])
	for i, p := range l {
		p.Name = e.stem + "-schematic"
		if len(l) > 1 {
			p.Name += fmt.Sprintf("-%d", i+1)
		} else {
			p.Caption = "" // the heading says it
		}
		e.add(p)
	}
}

// outlines is one of so many schematics.
func (e *edition) outlines(p patterns.Picture, among int) (writeup.Picture, error) {
	p.Paper = e.picture.Paper
	names := p.Sizes
	if e.size >= 0 {
		names = []string{e.j.pattern.Sizes[e.size]}
	}
	_, height := paperOf(p).Size()
	sizes, o := e.j.measured(p, names)
	// Several share a page where they can.
	made, note, err := schematic.Figure(sizes, o, writeup.Room(height)/float64(min(among, 2)))
	if err != nil && among > 1 {
		made, note, err = schematic.Figure(sizes, o, writeup.Room(height))
	}
	if err != nil {
		return writeup.Picture{}, err
	}
	pic := writeup.Picture{Scene: made, Caption: p.Part, Note: note, Alt: made.Alt}
	if smaller, _, err := schematic.Figure(sizes, o, smallerPart*made.Height); err == nil {
		pic.Smaller = smaller
	}
	return pic, nil
}
