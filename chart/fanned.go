package chart

import (
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// fan is how rows lie that grow from a centre, as those of a shawl worked from the
// neck: on arcs about it or, where groups with a chain space in them stand one over
// another as the spines of a triangle do, on sides of a polygon.
type fan struct {
	span   float64 // the angle of every row
	spines int     // corners between the ends of a row
	sides  int     // of the whole polygon; 0: arcs
}

// A fan is at least leastSpan wide and at most mostSpan; near half a turn it is that.
const (
	leastSpan, mostSpan = 0.6 * math.Pi, 1.85 * math.Pi
	nearHalf            = 0.2 // of half a turn
	leastLeaning        = 0.1 // of the stitches, for arcs
	mostLeaning         = 0.5 // of them, on the sides of a polygon
	// Rows that grow at a few places only, or in which stitches shift alike, are spread
	// all along.
	stiffFan, stiffWave = 60, 60
)

// findFan finds how rows that stand on a centre fan out; nil where few of their stitches
// lean in straight rows, of which the share is given.
func (w *work) findFan(straight float64) *fan {
	if !w.courses[0].hub || len(w.courses) < 3 {
		return nil
	}
	f := &fan{}
	f.spines = w.spines()
	var each []float64 // the rows' lengths for the way from the centre
	for _, c := range w.courses[1:] {
		each = append(each, w.own(c)/math.Max(c.form.Level, 1e-9))
	}
	slices.Sort(each)
	grows := each[len(each)/2]
	switch {
	case f.spines > 0:
		// Half a polygon, or of a square as many sides as there are.
		f.span, f.sides = math.Pi, 2*(f.spines+1)
		if n := float64(f.spines + 1); f.spines < 3 && math.Abs(2*n-grows) < math.Abs(2*n*math.Tan(math.Pi/(2*n))-grows) {
			f.span, f.sides = n*math.Pi/2, 4
		}
	case math.Abs(grows-math.Pi) < nearHalf*math.Pi:
		f.span = math.Pi
	default:
		f.span = math.Min(grows, mostSpan)
	}
	if f.span < leastSpan || f.spines == 0 && straight < leastLeaning {
		return nil
	}
	return f
}

// spines is how many spines the rows have; 0 where rows differ.
func (w *work) spines() int {
	n := 0
	for _, c := range w.courses[2:] {
		spaces := w.spinesOf(c)
		switch {
		case len(spaces) == 0 && n > 0:
			return n // an edging
		case len(spaces) == 0 || n > 0 && len(spaces) != n:
			return 0
		}
		n = len(spaces)
	}
	return n
}

// spinesOf are the spines of a row: of the chain spaces within groups that are worked
// into spaces, those in the groups of the most stitches and chains.
func (w *work) spinesOf(c *course) (l []fabric.Span) {
	spaces, below := w.cornerSpaces(c)
	most := 0
	for k, sp := range spaces {
		size := sp.To - sp.From
		for i := range c.round.Stitches {
			for _, p := range c.round.Stitches[i].On {
				if p.Into == stitch.Space && p.At == below[k] {
					size++
				}
			}
		}
		if size > most {
			l, most = nil, size
		}
		if size == most {
			l = append(l, sp)
		}
	}
	return l
}

// underSpines are the spaces of a row that the spines of the next one stand in.
func (w *work) underSpines(c *course) (l []fabric.Span) {
	next := w.courses[c.index+1]
	for _, spine := range w.spinesOf(next) {
		n := len(next.round.Stitches)
		on := next.round.Stitches[(spine.From+n-1)%n].On[0]
		for _, sp := range c.round.Spaces {
			if sp.From <= on.At.Stitch && on.At.Stitch < sp.To {
				l = append(l, sp)
			}
		}
	}
	if next.reversed != c.reversed {
		slices.Reverse(l)
	}
	return l
}

// pinSpines turns the stitches of a row so that its spines lie at even angles.
func (f *fan) pinSpines(w *work, c *course) {
	if f.spines == 0 {
		return
	}
	spaces := w.spinesOf(c)
	if c.index == 1 {
		spaces = w.underSpines(c)
	}
	now := make([]float64, f.spines)
	for k := range now {
		goal := f.span * float64(k+1) / float64(f.spines+1)
		at := goal
		switch {
		case len(spaces) == f.spines && c.reversed:
			k = f.spines - 1 - k
			fallthrough
		case len(spaces) == f.spines:
			at = c.middle(spaces[k].From, spaces[k].To-1)
		default:
			at = w.onSpine(c, goal)
		}
		now[int(math.Round(goal/f.span*float64(f.spines+1)))-1] = at
	}
	for i, a := range c.theta {
		low, high, from, to := 0.0, f.span, 0.0, f.span
		for k, at := range now {
			goal := f.span * float64(k+1) / float64(f.spines+1)
			if a >= at {
				low, from = at, goal
			} else {
				high, to = at, goal
				break
			}
		}
		c.theta[i] = from + (a-low)*(to-from)/math.Max(high-low, 1e-9)
	}
}

// onSpine is the middle of what a row has worked at an angle of the row below; that
// angle where it is nothing.
func (w *work) onSpine(c *course, goal float64) float64 {
	near := 0.3 * w.fan.span / float64(max(len(c.order), 1))
	sum, n := 0.0, 0.0
	for _, i := range c.order {
		if base, ok := w.stance(c, i, 0); ok && math.Abs(base-goal) < near {
			sum += c.theta[i]
			n++
		}
	}
	if n == 0 {
		return goal
	}
	return sum / n
}

// shape is what a fan's rows lie on, its middle upright.
func (f *fan) shape(mirrored bool) ring.Shape {
	circle := ring.Circle{Start: math.Pi/2 - f.span/2, Mirrored: mirrored}
	if f.sides == 0 {
		return circle
	}
	return ring.Polygon{Circle: circle, Sides: f.sides, Corner: 0}
}

// around is how long a row one from the centre is.
func (f *fan) around() float64 {
	if f.sides == 0 {
		return f.span
	}
	return 2 * float64(f.spines+1) * math.Tan(math.Pi/float64(f.sides))
}

// fitFan gives the layers of rounds their lengths and least radii as whole turns of
// them have.
func (w *work) fitFan(layers []ring.Layer, rounds []*course) {
	f := w.fan
	if f == nil {
		return
	}
	for i := range layers {
		layers[i].Length *= ring.Turn / f.around()
		layers[i].Least *= ring.Turn / f.around()
	}
	for i, c := range rounds {
		least := math.Inf(1)
		for k := 1; k < len(c.order); k++ {
			least = math.Min(least, c.theta[c.order[k]]-c.theta[c.order[k-1]])
		}
		l := &layers[len(layers)-len(rounds)+i]
		l.Least = math.Max(float64(len(c.order))*leastPitch/f.around(), leastSplit/math.Max(least*f.around()/f.span, 1e-9))
		if len(c.order) < 3 {
			l.Least = 0
		}
	}
}

// Room beside and under a fan for the numbers of its rows, mm.
const (
	besideFan = 5.0
	underFan  = 12.0
)

// reachFan finds how far out every stitch is and sets the fan on the page.
func (w *work) reachFan(p *page) {
	wide, tall := p.width-2*margin-2*besideFan, p.bottom-p.top-underFan
	half := w.fan.span / 2
	below := math.Max(0, -math.Cos(half))
	radius := math.Min(wide/2/math.Sin(math.Min(half, math.Pi/2)), tall/(1+below))
	w.reach(radius)
	w.place(canvas.Point{})
	low, high := w.extentOf()
	w.place(canvas.Point{X: hundredth(p.width/2 - (low.X+high.X)/2), Y: hundredth(p.top + 4 - low.Y)})
	p.centre = w.centre
	p.bottom = hundredth(math.Min(p.bottom, w.centre.Y+high.Y+underFan))
}

// extentOf is the box of all that is drawn of the rounds, with the ring that they
// stand on.
func (w *work) extentOf() (low, high canvas.Point) {
	low, high = canvas.Point{X: math.Inf(1), Y: math.Inf(1)}, canvas.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	grow := func(q canvas.Point) {
		low = canvas.Point{X: math.Min(low.X, q.X), Y: math.Min(low.Y, q.Y)}
		high = canvas.Point{X: math.Max(high.X, q.X), Y: math.Max(high.Y, q.Y)}
	}
	for _, c := range w.courses[w.lo : w.last+1] {
		for i := range c.round.Stitches {
			if c.cutOf(i) != left {
				grow(w.top(c, i))
				feet, _ := w.feet(c, i)
				for _, q := range feet {
					grow(q)
				}
			}
		}
	}
	if c := w.courses[max(w.lo-1, 0)]; c.hub {
		r := w.groundRadius()
		grow(canvas.Point{X: -r, Y: -r})
		grow(canvas.Point{X: r, Y: r})
	}
	return low, high
}

// fanSign is the number and the arrow of one row of a fan, in line with it before its
// beginning; nil where there is no white.
func (a *artist) fanSign(f *finder, p *page, c *course, colour *scene.Colour) *scene.Group {
	begin, way := c.order[0], 1.0
	if c.reversed {
		begin, way = c.order[len(c.order)-1], -1
	}
	r := (a.meanFoot(c, begin) + a.topRadius(c, begin)) / 2
	end := begin
	if i := 0; c.round.Stitches[i].Role == fabric.Start && !c.round.Stitches[i].Counts {
		end = i
	}
	at := a.point(c.theta[end], r)
	// Along the row where it begins, which a corner's symbols are not.
	q := a.point(c.theta[begin]+way*a.fan.span/8, r)
	if a.fan.sides == 0 {
		q = a.point(c.theta[begin]+way*1e-3, r*100)
		q = at.Add(q.Sub(a.point(c.theta[begin], r*100)))
	}
	along := q.Sub(at).Norm(1)
	text := strconv.Itoa(c.round.Number)
	figure := a.o.enlarged(rowFigure)
	size := figure / typeface.CapHeight(1)
	wide := typeface.Width(text, size, true, false)
	half := math.Min(wide/2/math.Max(math.Abs(along.X), 1e-9), figure/2/math.Max(math.Abs(along.Y), 1e-9))
	for out := 0.4 * a.unit; out < 4*a.unit+rowArrow; out += 0.3 {
		arrow := at.Sub(along.Mul(out + rowAir + rowArrow/2))
		mid := at.Sub(along.Mul(out + 2*rowAir + rowArrow + half))
		b := box{mid.X - wide/2, mid.Y - figure/2, mid.X + wide/2, mid.Y + figure/2}
		if b.x0 < edgeLeast+1 || b.x1 > p.width-edgeLeast-1 {
			return nil
		}
		taken := []box{b}
		for t := -0.5; t <= 0.5; t += 0.125 {
			s := arrow.Add(along.Mul(t * rowArrow))
			taken = append(taken, box{s.X, s.Y, s.X, s.Y}.grown(0.7))
		}
		free := f.free(b.grown(0.5))
		for _, b := range taken {
			free = free && f.free(b)
		}
		if !free {
			continue
		}
		f.taken = append(f.taken, taken...)
		g := &scene.Group{ID: "number" + text, Title: c.label() + a.reads(c), Style: scene.Style{Stroke: colour}}
		an := symbols.Anchors{Top: canvas.Point{X: hundredth(arrow.X), Y: hundredth(arrow.Y)}, Unit: rowArrow, Width: rowArrow,
			Along: along, Up: along.Rot90CCW()}
		a.paint(g, symbols.Arrow(an, a.pen), colour)
		g.Add(&scene.Text{X: hundredth(mid.X), Y: hundredth(mid.Y + figure/2), Size: hundredth(size),
			Align: scene.Centre, Bold: true, Colour: *colour, String: text})
		return g
	}
	return nil
}
