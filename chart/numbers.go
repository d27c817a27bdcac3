package chart

import (
	"math"
	"slices"
	"sort"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// Round numbers: heights of their figures, mm, largest first, and the white
// that they keep about them.
var figureHeights = []float64{2.5, 2.2, 2.0, 1.8}

const numberAir = 0.3

// signs draws the reading aids: the number at the start of each round, the mark
// where the chart begins and the arrow of direction. missing are the rounds whose
// number finds no room.
func (a *artist) signs(f *finder, p *page) (g *scene.Group, missing []*course) {
	if a.rows || a.flat {
		return a.rowSigns(f, p)
	}
	g = &scene.Group{ID: "signs", Title: "Round numbers, start and direction"}
	for _, c := range a.courses[a.lo : a.last+1] {
		if len(c.order) > 0 {
			a.beginning(g, f, c)
			break
		}
	}
	texts, missing := a.numbers(f)
	g.Add(texts...)
	// Rounds of too small symbols are not parted: their numbers are led at once.
	if a.leads() {
		missing = slices.DeleteFunc(missing, func(c *course) bool {
			height := a.o.enlarged(figureHeights[len(figureHeights)-1])
			if t := a.beyond(f, c, *a.colourOf(c.index - a.lo), height); t != nil {
				f.taken = append(f.taken, textBox(t))
				g.Add(t)
				return true
			}
			led := a.led(f, c, *a.colourOf(c.index - a.lo), height, p.around())
			if led != nil {
				g.Add(led)
			}
			return led != nil
		})
	}
	return g, missing
}

// leads reports whether numbers without room by their rounds are led to them: once parting
// the rounds has not helped, or cannot.
func (a *artist) leads() bool {
	least := a.o.leastSymbol()
	return (a.leaders || a.smallest() < least) && a.smallest() > hopeless*least
}

// numbers sets the numbers of the rounds, each as near its beginning as there is white or,
// where they would not be followed so, in a line, of every so many rounds if need be.
func (a *artist) numbers(f *finder) (texts []scene.Node, missing []*course) {
	var numbered []*course
	for _, c := range a.courses[a.lo : a.last+1] {
		if len(c.order) > 0 && c.round.Number != 0 {
			numbered = append(numbered, c)
		}
	}
	start := len(f.taken)
	set := func(ts []*scene.Text) (l []scene.Node) {
		f.taken = f.taken[:start]
		for _, t := range ts {
			f.taken = append(f.taken, textBox(t).grown(numberAir)) // of what stands there later
			l = append(l, t)
		}
		return l
	}
	nearest, alongs, missing := a.nearest(f, numbered)
	f.taken = f.taken[:start]
	a.crossings, a.ahead = crossings(alongs), ahead(numbered, missing, alongs)
	settled := len(missing) == 0 && a.crossings == 0
	if settled || a.window > 0 || len(missing) > 0 && !a.leads() || len(numbered) == 0 {
		return set(nearest), missing
	}
	line, along, without := a.line(f, numbered)
	if line != nil && (len(without) < len(missing) || len(without) == len(missing) && crossings(along) < crossings(alongs)) {
		nearest, missing = line, without
		a.crossings, a.ahead = crossings(along), ahead(numbered, missing, along)
	}
	if len(missing) <= len(numbered)/mostLed || len(numbered) < thinFrom {
		return set(nearest), missing
	}
	for _, every := range thinnings {
		line, along, without := a.line(f, thinned(numbered, every))
		if line != nil && len(without) < len(missing) {
			nearest, missing = line, without
		}
		if line != nil && len(without) == 0 && isCalm(along) {
			break
		}
	}
	return set(nearest), missing
}

// nearest sets each number in the white nearest the beginning of its round, all of one size:
// the largest at which all find room. missing are those that find none at the smallest.
func (a *artist) nearest(f *finder, cs []*course) (texts []*scene.Text, alongs []float64, missing []*course) {
	start := len(f.taken)
	for k, height := range figureHeights {
		texts, alongs, missing = nil, nil, nil
		f.taken = f.taken[:start]
		for _, c := range cs {
			if t, along := a.number(f, c, a.o.enlarged(height)); t != nil {
				f.taken = append(f.taken, textBox(t))
				texts, alongs = append(texts, t), append(alongs, along)
			} else if missing = append(missing, c); k < len(figureHeights)-1 {
				break // they will be smaller
			}
		}
		if len(missing) == 0 {
			break
		}
	}
	return texts, alongs, missing
}

// finder looks for white on the page.
type finder struct {
	grid  *grid
	taken []box
}

func (f *finder) free(b box) bool {
	for _, t := range f.taken {
		if b.meets(t) {
			return false
		}
	}
	return f.grid.clear(b)
}

// spot is a place to try, in millimetres along the round from the seam (against
// the direction of work) and up from the middle of the round.
type spot struct{ along, up, cost float64 }

// spots are the places to try, nearest first.
var spots = func() (all []spot) {
	const step, far = 0.3, 42 // steps, to each side
	for i := -far; i <= far; i++ {
		for j := -far; j <= far; j++ {
			x, y := float64(i)*step, float64(j)*step
			all = append(all, spot{x, y, math.Hypot(x, 1.3*y)})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].cost < all[j].cost })
	return all
}()

// search is the first spot within reach along the round and rise up and down
// that ok takes.
func search(reach, rise float64, ok func(spot) bool) bool {
	most := math.Hypot(reach, 1.3*rise)
	for _, s := range spots {
		if s.cost > most {
			return false
		}
		if math.Abs(s.along) <= reach && math.Abs(s.up) <= rise && ok(s) {
			return true
		}
	}
	return false
}

// number finds a place for the number of a round: in the white near the round's
// beginning, within the round's own depth; nil when there is none. along is how far before
// the beginning, mm.
func (a *artist) number(f *finder, c *course, h float64) (t *scene.Text, along float64) {
	inner, outer := a.seamBand(c)
	wide, reach := a.numberRoom(c, h)
	at, along, ok := a.white(f, c.seam, inner, outer, reach, wide, h, 0)
	if !ok {
		return nil, 0
	}
	return a.numberAt(c, at, h), along
}

// within sets a text in the white near an angle of a round, between two radii and no
// farther off than reach; nil where there is none.
func (a *artist) within(f *finder, c *course, angle, inner, outer, reach float64, t scene.Text) *scene.Text {
	h := typeface.CapHeight(t.Size)
	at, _, ok := a.white(f, angle, inner, outer, reach, typeface.Width(t.String, t.Size, t.Bold, t.Italic), h, drop(t.String)*t.Size)
	if !ok {
		return nil
	}
	t.X, t.Y, t.Size, t.Align = hundredth(at.X), hundredth(at.Y+h/2), hundredth(t.Size), scene.Centre
	return &t
}

// white is the middle of room for something so wide, tall and, below that, deep near an
// angle of a round, between two radii and no farther off than reach.
func (a *artist) white(f *finder, angle, inner, outer, reach, wide, tall, deep float64) (at canvas.Point, along float64, ok bool) {
	mid := (inner + outer) / 2
	rise := math.Max(math.Abs(outer-inner)/2+0.1, 0.3)
	ok = search(reach, rise, func(s spot) bool {
		r := mid + s.up
		p := a.shape.At(angle-s.along/a.mmAt(r), r)
		at = canvas.Point{X: a.centre.X + p.X, Y: a.centre.Y + p.Y}
		b := box{at.X - wide/2, at.Y - tall/2, at.X + wide/2, at.Y + tall/2 + deep}
		along = s.along
		return f.free(b.grown(numberAir))
	})
	return at, along, ok
}

// mmAt is how many millimetres along a round at a radius one unit of angle is: on a border
// many times its distance from the edges, and on a panel the same at any height.
func (w *work) mmAt(radius float64) float64 {
	switch s := w.shape.(type) {
	case ring.Edges:
		return s.Stretch(radius)
	case strip:
		return s.Scale
	}
	return math.Max(radius, 1)
}

// drop is how far a text of figures reaches below its baseline, in ems: brackets
// do.
func drop(s string) float64 {
	if strings.HasPrefix(s, "(") {
		return 0.2
	}
	return 0
}

// seamBand is the radii of a round's feet and tops at its beginning.
func (a *artist) seamBand(c *course) (inner, outer float64) {
	i := c.order[0]
	foot := a.meanFoot(c, i)
	if len(c.round.Stitches[i].On) == 0 {
		foot = a.floor(c)
	}
	return foot, c.radius[i]
}

// startSize is how large the mark at the first stitch is, mm.
const startSize = 1.5

// beginning draws the mark at the first stitch of the chart, and outside the
// chart the arrow of direction.
func (a *artist) beginning(g *scene.Group, f *finder, c *course) {
	pen := a.pen
	way := 1.0
	if c.reversed {
		way = -1
	}
	a.direction(g, f, c, way)

	// The mark points at the first stitch from a free spot near the seam.
	inner, outer := a.seamBand(c)
	mid := (inner + outer) / 2
	const size = startSize
	mark := &scene.Group{ID: "start", Title: "Start here", Style: scene.Style{Stroke: &ink, Line: &pen.Line}}
	a.found[ofBeginning] = search(6, math.Abs(outer-inner)/2, func(s spot) bool {
		rr := mid + s.up
		fr := a.shape.At(c.seam-way*s.along/a.mmAt(rr), rr)
		x, y := a.centre.X+fr.X, a.centre.Y+fr.Y
		b := box{x - size/2, y - size/2, x + size/2, y + size/2}
		if !f.free(b.grown(0.25)) {
			return false
		}
		f.taken = append(f.taken, b)
		am := symbols.Anchors{Top: canvas.Point{X: x, Y: y}, Unit: 2 * size, Width: 2 * size,
			Along: canvas.Point{X: fr.AlongX, Y: fr.AlongY}.Mul(way), Up: canvas.Point{X: fr.OutX, Y: fr.OutY}}
		a.paint(mark, symbols.Attach(am, pen), &ink)
		g.Add(mark)
		return true
	})
}

// direction draws the arrow of direction outside the chart, ahead of where the
// outermost round begins, as near to it as there is white.
func (a *artist) direction(g *scene.Group, f *finder, c *course, way float64) {
	const long, nearest, farthest, air = 5.5, 3.2, 7.4, 1.3
	edge := a.courses[a.last]
	if a.inwards {
		edge = c
	}
	for out := nearest; out <= farthest; out += 0.4 {
		r := a.outer + out
		at := a.shape.At(edge.seam+way*(long/2+0.6)/a.mmAt(r), r)
		an := symbols.Anchors{Top: canvas.Point{X: hundredth(a.centre.X + at.X), Y: hundredth(a.centre.Y + at.Y)}, Unit: long, Width: long}
		an.Along = canvas.Point{X: at.AlongX, Y: at.AlongY}.Mul(way)
		an.Up = canvas.Point{X: at.OutX, Y: at.OutY}
		var taken []box
		clear := true
		for t := -0.5; t <= 0.5; t += 0.25 {
			p := an.Top.Add(an.Along.Mul(t * long))
			b := box{p.X, p.Y, p.X, p.Y}.grown(air)
			clear = clear && f.free(b)
			taken = append(taken, b)
		}
		if !clear {
			continue
		}
		f.taken = append(f.taken, taken...)
		a.found[ofDirection] = true
		sign := &scene.Group{ID: "direction", Title: "Direction of work", Style: scene.Style{Stroke: &ink, Line: &a.pen.Line}}
		a.paint(sign, symbols.Arrow(an, a.pen), &ink)
		g.Add(sign)
		return
	}
}

// smallest is the height on paper of the lowest stitch symbol, chains and slip
// stitches aside.
func (w *work) smallest() float64 {
	least := math.Inf(1)
	for _, c := range w.courses[w.lo : w.last+1] {
		for _, i := range c.order {
			s := &c.round.Stitches[i]
			if s.Kind.Base <= stitch.Slip && s.Role != fabric.Start || len(s.On) == 0 {
				continue
			}
			feet, _ := w.feet(c, i)
			tall := 0.0
			for _, p := range feet {
				tall = math.Max(tall, p.Sub(w.top(c, i)).Length())
			}
			least = math.Min(least, tall)
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}
