package chart

import (
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/patterns/fabric"
	"whorl/symbols"
)

// aidSet is one sort of reading aid that stands by the stitches.
type aidSet struct {
	id, title string
	name      string    // of what a round has, as "stitch number"
	sizes     []float64 // heights to try, mm, largest first
	// of are the aids that a round has at a height.
	of func(c *course, height float64) []drawnAid
}

// drawnAid is an aid, and how it is drawn where it has found a place.
type drawnAid struct {
	aid
	draw func(g *scene.Group, at canvas.Point, colour *scene.Colour)
}

// aidSets are those that the options ask for, in the order in which they choose
// their places.
func (a *artist) aidSets() (l []aidSet) {
	if a.o.Changes {
		l = append(l, aidSet{"changes", "Increases and decreases", "increase and decrease mark", []float64{changeSize, 1.35, 1.1}, a.changeMarks})
	}
	if a.o.Fives {
		l = append(l, aidSet{"fives", "Stitch numbers", "stitch number", []float64{1.7, 1.5, 1.3}, a.fives})
	}
	return l
}

// aids draws the reading aids that stand by the stitches, and says which rounds
// have no room for theirs.
func (a *artist) aids(f *finder) (groups []scene.Node, findings []string) {
	for _, set := range a.aidSets() {
		var best *scene.Group
		var missing []*course
		before := len(f.taken)
		for _, height := range set.sizes {
			f.taken = f.taken[:before]
			best, missing = a.aidSet(f, set, a.o.enlarged(height))
			if len(missing) == 0 {
				break
			}
		}
		if len(best.Nodes) > 0 {
			groups = append(groups, best)
		}
		if len(missing) > 0 {
			findings = append(findings, "there is no room for "+ofRounds(set.name, missing))
		}
	}
	return groups, findings
}

// aidSet draws one sort of aids at one height.
func (a *artist) aidSet(f *finder, set aidSet, height float64) (whole *scene.Group, missing []*course) {
	whole = &scene.Group{ID: set.id, Title: set.title, Style: scene.Style{Line: new(a.fine().Line)}}
	for k, c := range a.courses[a.lo : a.last+1] {
		if c.hub {
			continue
		}
		list := set.of(c, height)
		if len(list) == 0 {
			continue
		}
		aids := make([]aid, len(list))
		for i := range list {
			aids[i] = list[i].aid
		}
		places := f.settle(aids)
		if places == nil {
			missing = append(missing, c)
			continue
		}
		colour := a.colourOf(k)
		g := &scene.Group{Title: set.title + " of " + c.label(), Style: scene.Style{Stroke: colour}}
		for i, at := range places {
			list[i].draw(g, at, colour)
		}
		whole.Add(g)
	}
	return whole, missing
}

// colourOf is the colour of the k-th round that is drawn.
func (a *artist) colourOf(k int) *scene.Colour {
	if c := a.courses[a.lo+k]; a.yarns != nil && len(c.round.Stitches) > 0 {
		return a.inkOf(c, 0)
	}
	if k%2 == 1 {
		return a.second()
	}
	return &ink
}

// fives are the numbers of every fifth stitch of a round, each by its top.
func (a *artist) fives(c *course, height float64) (l []drawnAid) {
	size := hundredth(height / typeface.CapHeight(1))
	n, count := 0, c.round.Count()
	for i := range c.round.Stitches {
		if !c.round.Stitches[i].Counts {
			continue
		}
		n++
		if n%5 != 0 || c.cutOf(i) != whole || a.o.Counts && n == count {
			continue // the count says the last one
		}
		text := strconv.Itoa(n)
		d := a.besides(c, i, typeface.Width(text, size, false, false), height)
		l = append(l, drawnAid{d, func(g *scene.Group, at canvas.Point, colour *scene.Colour) {
			g.Add(&scene.Text{X: at.X, Y: hundredth(at.Y + height/2), Size: size, Align: scene.Centre, Colour: *colour, String: text})
		}})
	}
	return l
}

// besides is an aid by the top of stitch i.
func (a *artist) besides(c *course, i int, wide, tall float64) aid {
	d := aid{at: a.top(c, i), wide: wide, tall: tall}
	d.along, d.up = a.frame(c, c.theta[i], c.radius[i])
	height := math.Abs(c.radius[i] - a.meanFoot(c, i))
	d.reach = math.Min(0.5*a.width(c, i)+wide/2, 0.75*a.width(c, i))
	d.rise, d.fall = tall/2+1, 0.6*height
	return d
}

// changeMarks are the signs of the increases and decreases of a round: an increase
// has it between the tops of its stitches, a decrease between its feet.
func (a *artist) changeMarks(c *course, height float64) (l []drawnAid) {
	for _, ch := range c.shown() {
		first, last := ch.Stitches[0], ch.Stitches[len(ch.Stitches)-1]
		top, foot := a.top(c, first).Interpolate(a.top(c, last), 0.5), canvas.Point{}
		feet, _ := a.feet(c, first)
		for _, q := range feet {
			foot = foot.Add(q.Mul(1 / float64(len(feet))))
		}
		wide := a.top(c, first).Sub(a.top(c, last)).Length()
		share, sign := 0.7, symbols.Increase
		if ch.By < 0 {
			share, sign = 0.3, symbols.Decrease
			wide = feet[0].Sub(feet[len(feet)-1]).Length()
		}
		tall := top.Sub(foot).Length()
		d := aid{at: foot.Interpolate(top, share), wide: 1.25 * height, tall: 1.25 * height} // whichever way it is turned
		d.along, d.up = a.frame(c, (c.theta[first]+c.theta[last])/2, c.radius[first])
		d.reach = math.Max(wide, a.width(c, first))/2 + height/2
		d.rise, d.fall = (1-share)*tall+height, share*tall
		l = append(l, drawnAid{d, func(g *scene.Group, at canvas.Point, colour *scene.Colour) {
			a.paint(g, sign(symbols.Anchors{Top: at, Along: d.along, Up: d.up, Unit: height, Width: height}, a.fine()), colour)
		}})
	}
	return l
}

// changeSize is the usual height of a mark, mm.
const changeSize = 1.6

// fine is the pen of marks that stand by the stitches.
func (a *artist) fine() symbols.Pen { return symbols.Pen{Line: min(a.pen.Line, 0.2)} }

// shown are the increases and decreases of a course that are drawn in full.
func (c *course) shown() (l []fabric.Change) {
	if c.hub {
		return nil
	}
	for _, ch := range c.round.Changes() {
		if c.cutOf(ch.Stitches[0]) == whole && c.cutOf(ch.Stitches[len(ch.Stitches)-1]) == whole {
			l = append(l, ch)
		}
	}
	return l
}
