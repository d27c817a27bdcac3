package chart

import (
	"math"
	"strconv"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// countHeights are the heights of the figures of stitch counts, mm, largest first.
var countHeights = []float64{2.2, 1.9, 1.6, 1.4}

// countReach is how far along its round a count may stand from the last stitch, mm.
const countReach = 12

// counts sets how many stitches each round has at its end, in brackets as the words
// have it; all of one size. missing are the rounds whose count finds no room.
func (a *artist) counts(f *finder, p *page) (nodes []scene.Node, missing []*course) {
	if !a.o.Counts {
		return nil, nil
	}
	g := &scene.Group{ID: "counts", Title: "Stitch counts"}
	start := len(f.taken)
	for _, height := range countHeights {
		g.Nodes, missing = nil, nil
		f.taken = f.taken[:start]
		for k, c := range a.courses[a.lo : a.last+1] {
			if len(c.order) == 0 || c.round.Number == 0 || c.round.Count() == 0 {
				continue
			}
			t := scene.Text{Size: a.o.enlarged(height) / typeface.CapHeight(1), Colour: *a.colourOf(k), String: "(" + strconv.Itoa(c.round.Count()) + ")"}
			set := a.count(f, p, c, t)
			if set == nil {
				missing = append(missing, c)
				continue
			}
			b := textBox(set)
			b.y1 += drop(set.String) * set.Size
			f.taken = append(f.taken, b)
			g.Add(set)
		}
		if len(missing) == 0 {
			break
		}
	}
	if len(g.Nodes) == 0 {
		return nil, missing
	}
	return []scene.Node{g}, missing
}

// count sets a round's count in the white at its end; nil where there is none.
func (a *artist) count(f *finder, p *page, c *course, t scene.Text) *scene.Text {
	if a.flat {
		return a.countBeside(f, p, c, t)
	}
	end, way := c.order[len(c.order)-1], 1.0
	if c.reversed {
		end, way = c.order[0], -1
	}
	if a.window > 0 {
		end, way = c.order[a.lastShown(c)], 1
	}
	inner, outer := a.meanFoot(c, end), c.radius[end]
	if len(c.round.Stitches[end].On) == 0 {
		inner = a.floor(c)
	}
	angle := c.theta[end]
	if a.window > 0 {
		angle += way * typeface.Width(t.String, t.Size, false, false) / math.Max(outer, 1)
	}
	return a.within(f, c, angle, inner, outer, countReach, t)
}

// lastShown is the place in the order of the last stitch that a wedge or a panel
// shows or has beside it.
func (a *artist) lastShown(c *course) int {
	k := 0
	for k+1 < len(c.order) && c.cutOf(c.order[k+1]) != left {
		k++
	}
	return k
}

// countBeside sets the count of a row, or of a round laid flat, beside its end.
func (a *artist) countBeside(f *finder, p *page, c *course, t scene.Text) *scene.Text {
	end, way := c.order[len(c.order)-1], 1.0
	if c.reversed {
		end, way = c.order[0], -1
	}
	if a.window > 0 {
		end = c.order[a.lastShown(c)]
	}
	at := a.point(c.theta[end], (a.meanFoot(c, end)+a.topRadius(c, end))/2)
	along := math.Copysign(1, a.shape.At(0, 0).AlongX*way)
	h, wide := typeface.CapHeight(t.Size), typeface.Width(t.String, t.Size, false, false)
	for out := 0.4 * a.unit; ; out += 0.3 {
		x := at.X + along*(out+rowAir+wide/2)
		b := box{x - wide/2, at.Y - h/2, x + wide/2, at.Y + h/2 + drop(t.String)*t.Size}
		if b.x0 < edgeLeast+1 || b.x1 > p.width-edgeLeast-1 {
			return nil
		}
		if f.free(b.grown(0.5)) {
			t.X, t.Y, t.Size, t.Align = hundredth(x), hundredth(at.Y+h/2), hundredth(t.Size), scene.Centre
			return &t
		}
	}
}
