package chart

import (
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/symbols"
)

const (
	rowFigure = 2.5 // height of the rows' numbers, mm
	rowArrow  = 4.2 // length of the arrow beside a number, mm
	rowAir    = 1.2 // between the row, its number and the arrow, mm
)

// rowSigns draws the number of every row where the row begins, with an arrow the
// way it runs.
func (a *artist) rowSigns(f *finder, p *page) (g *scene.Group, missing []*course) {
	g = &scene.Group{ID: "signs", Title: "Row numbers and directions", Style: scene.Style{Line: &a.pen.Line}}
	for k, c := range a.courses[a.lo : a.last+1] {
		if len(c.order) == 0 || c.round.Number == 0 {
			continue
		}
		draw := a.rowSign
		if a.fan != nil {
			draw = a.fanSign
		}
		if sign := draw(f, p, c, a.colourOf(k)); sign != nil {
			g.Add(sign)
		} else {
			missing = append(missing, c)
		}
	}
	return g, missing
}

// rowSign is the number and the arrow of one row, beside its beginning, as near
// as there is white; nil when there is none.
func (a *artist) rowSign(f *finder, p *page, c *course, colour *scene.Colour) *scene.Group {
	begin := c.order[0]
	way := 1.0 // along the row
	if c.reversed {
		begin, way = c.order[len(c.order)-1], -1
	}
	inner, outer := a.meanFoot(c, begin), a.topRadius(c, begin)
	at := a.point(c.theta[begin], (inner+outer)/2)
	along := math.Copysign(1, a.shape.At(c.theta[begin], 1).AlongX) * way // 1: the row runs to the right
	if a.panel {
		// Past what lies beside the repeat.
		for _, i := range c.order {
			if x := a.top(c, i).X; c.cutOf(i) != left && (x-at.X)*along < 0 {
				at.X = x
				if a.zigzag != nil { // where the wave has come to there
					at.Y = a.point(c.theta[i], (a.meanFoot(c, i)+a.topRadius(c, i))/2).Y
				}
			}
		}
	}
	text := strconv.Itoa(c.round.Number)
	figure := a.o.enlarged(rowFigure)
	size := figure / typeface.CapHeight(1)
	wide := typeface.Width(text, size, true, false)
	whole := wide + rowAir + rowArrow
	beside := &finder{grid: f.grid} // only signs at this height can be in its way
	for _, t := range f.taken {
		if t.y0 < at.Y+figure/2+0.5 && t.y1 > at.Y-figure/2-0.5 {
			beside.taken = append(beside.taken, t)
		}
	}
	for out := 0.4 * a.unit; ; out += 0.3 {
		x := at.X - along*(out+rowAir) // the near end of the sign
		b := box{math.Min(x, x-along*whole), at.Y - figure/2, math.Max(x, x-along*whole), at.Y + figure/2}
		if b.x0 < edgeLeast+1 || b.x1 > p.width-edgeLeast-1 {
			return nil
		}
		if !beside.free(b.grown(0.5)) {
			continue
		}
		f.taken = append(f.taken, b)
		g := &scene.Group{ID: "number" + text, Title: c.label() + a.reads(c), Style: scene.Style{Stroke: colour}}
		an := symbols.Anchors{Top: canvas.Point{X: hundredth(x - along*rowArrow/2), Y: at.Y}, Unit: rowArrow, Width: rowArrow,
			Along: canvas.Point{X: along}, Up: canvas.Point{Y: -1}}
		a.found[ofDirection] = true
		a.paint(g, symbols.Arrow(an, a.pen), colour)
		g.Add(&scene.Text{X: hundredth(x - along*(rowArrow+rowAir+wide/2)), Y: hundredth(at.Y + figure/2), Size: hundredth(size),
			Align: scene.Centre, Bold: true, Colour: *colour, String: text})
		return g
	}
}
