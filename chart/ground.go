package chart

import (
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/chart/scene"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// footing is a place under the drawn rounds.
type footing struct {
	angle, radius float64
	at            canvas.Point
}

// ground draws what the first rounds stand on and is no drawn round itself: the
// centre ring, an unjoined chain, or the edge of undrawn rounds and row ends as
// a thin grey line with a tick at each place.
func (a *artist) ground() *scene.Group {
	if !a.work.ground {
		return nil
	}
	places := a.footings()
	below := a.courses[max(a.lo-1, 0)]
	drawn := a.lo > a.first // the foundation itself is to be drawn
	switch {
	case below.hub && drawn:
		return a.hub(below, places)
	case below.hub && a.lo == 1 && a.first == 1:
		return a.hub(below, places)
	case below.loose && drawn && a.oval != nil:
		return a.chainLine(places)
	case below.loose && drawn:
		return a.chainBelow(places)
	}
	return a.ghost(places)
}

// footings are the places under the drawn rounds, by angle.
func (a *artist) footings() []footing {
	var fs []footing
	seen := map[canvas.Point]bool{}
	for _, c := range a.courses[a.lo : a.last+1] {
		for i := range c.round.Stitches {
			if c.cutOf(i) == left {
				continue
			}
			for _, p := range c.round.Stitches[i].On {
				d := a.at(p.At)
				if d != nil && d.index >= a.lo && p.Into != stitch.RowEnd && p.Into != stitch.Ring {
					continue
				}
				pt, angle := a.foot(c, i, p)
				if seen[pt] {
					continue
				}
				seen[pt] = true
				switch {
				case c.open:
				case a.window > 0: // about the middle of what is shown
					angle = above(angle, math.Pi/2-a.upright-math.Pi)
				default:
					angle = above(angle, 0)
				}
				fs = append(fs, footing{angle, a.footRadius(c, i, p), pt})
			}
		}
	}
	slices.SortStableFunc(fs, func(x, y footing) int {
		switch {
		case x.angle < y.angle:
			return -1
		case x.angle > y.angle:
			return 1
		}
		return 0
	})
	return fs
}

func points(fs []footing) []canvas.Point {
	ps := make([]canvas.Point, len(fs))
	for i, f := range fs {
		ps[i] = f.at
	}
	return ps
}

// hub draws the ring in the centre.
func (a *artist) hub(c *course, places []footing) *scene.Group {
	line := a.pen.Line
	n := len(c.round.Stitches)
	for i := range c.round.Stitches {
		if !c.round.Stitches[i].IsChain() {
			n--
		}
	}
	g := &scene.Group{ID: a.unique("ring"), Title: "Magic ring", Style: scene.Style{Stroke: &ink, Line: &line}}
	kind := "magic ring"
	if n > 0 {
		kind = "ch-" + strconv.Itoa(n) + " ring"
		g.Title = "Ring of " + strconv.Itoa(n) + " chains"
		if !c.round.Ring {
			kind, g.Title = "ch-"+strconv.Itoa(n), "Chains to begin"
		}
	}
	g.Data = []scene.Attr{{Name: "round", Value: "0"}, {Name: "kind", Value: kind}, {Name: "top", Points: points(places)}}
	centre, radius := a.centre, a.groundRadius()
	if a.flat { // the ring lies under the place that all stand on
		radius = 0.6 * a.unit
		centre = a.point(a.edge[0], a.groundRadius()-radius)
	}
	a.paint(g, symbols.Ring(centre, radius, n, a.unit, a.pen), &ink)
	return g
}

// chainBelow draws a foundation chain where it is worked into.
func (a *artist) chainBelow(places []footing) *scene.Group {
	line := a.pen.Line
	g := &scene.Group{ID: a.unique("rnd0"), Title: "Foundation chain", Style: scene.Style{Stroke: a.second(), Line: &line}}
	g.Data = []scene.Attr{{Name: "round", Value: "0"}, {Name: "kind", Value: "ch"}, {Name: "top", Points: points(places)}}
	width := a.unit
	for i := range places {
		if d := places[i].at.Sub(places[(i+1)%len(places)].at).Length(); len(places) > 1 {
			width = min(width, d)
		}
	}
	for _, f := range places {
		an := symbols.Anchors{Top: f.at, Unit: a.unit, Width: width}
		an.Along, an.Up = a.frame(a.courses[a.lo], f.angle, f.radius)
		a.paint(g, symbols.Draw(stitch.Of(stitch.Chain), stitch.Top, an, a.pen), a.second())
	}
	return g
}

// ghost draws an undrawn edge.
func (a *artist) ghost(places []footing) *scene.Group {
	if len(places) == 0 {
		return nil
	}
	line := 0.2
	g := &scene.Group{ID: a.unique("below"), Title: "Edge that the first round drawn is worked into",
		Style: scene.Style{Stroke: &grey, Line: &line}}
	g.Data = []scene.Attr{{Name: "kind", Value: "edge"}, {Name: "top", Points: points(places)}}
	const gap = 0.6 // of white between the line and the feet on it
	at := func(angle, radius float64) (float64, float64) {
		p := a.point(angle, radius-a.up()*gap)
		return p.X, p.Y
	}
	d := &canvas.Path{}
	d.MoveTo(at(places[0].angle, places[0].radius))
	switch {
	case a.flat:
		for _, f := range places[1:] {
			d.LineTo(at(f.angle, f.radius))
		}
	case isLevel(places) && a.window == 0 && !a.rows && a.corners.sides == 0 && a.oval == nil && a.border == nil:
		// In thirds: the centre of a half circle between rounded ends may be a millimetre
		// to one side.
		first, r := places[0], places[0].radius-a.up()*gap
		for k := range 3 {
			x, y := at(first.angle+ring.Turn/3*float64(k+1), first.radius)
			d.ArcTo(r, r, 0, false, a.o.LeftHanded, x, y)
		}
		d.Close()
	default:
		for i, f := range places {
			next := places[(i+1)%len(places)]
			to := next.angle
			if i == len(places)-1 {
				if a.window > 0 || a.rows {
					break
				}
				to += ring.Turn
			}
			// A chord is within 0.03 mm of its arc.
			steps := max(1, int(math.Ceil((to-f.angle)/math.Sqrt(0.24/max(f.radius, 1)))))
			for k := 1; k <= steps; k++ {
				t := float64(k) / float64(steps)
				d.LineTo(at(f.angle+(to-f.angle)*t, f.radius+(next.radius-f.radius)*t))
			}
		}
		if a.window == 0 && !a.rows {
			d.Close()
		}
	}
	for _, f := range places {
		d.MoveTo(at(f.angle, f.radius))
		d.LineTo(at(f.angle, f.radius-a.up()*1.1))
	}
	g.Add(&scene.Path{D: d})
	if b := a.border; b != nil {
		g.Title = "Edges of the piece that the border is worked round"
		g.Add(&scene.Text{X: a.centre.X, Y: a.centre.Y, Size: a.o.enlarged(lineSize), Align: scene.Centre, Colour: words, String: b.cloth})
	}
	return g
}

// isLevel reports whether all places are equally far out.
func isLevel(places []footing) bool {
	for _, f := range places {
		if math.Abs(f.radius-places[0].radius) > 0.005 {
			return false
		}
	}
	return true
}
