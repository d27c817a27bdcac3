package chart

import (
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// A number that finds no room by the beginning of its round stands in the nearest
// white, and a thin line leads from it into the round.
const (
	leaderLine  = 0.12 // width, mm
	leaderDot   = 0.22 // radius of the dot that it ends in, mm
	leaderAir   = 0.1  // white that it keeps about it, mm
	leaderStep  = 0.4  // mm
	leaderLong  = 70.0 // the longest, mm
	leaderGaps  = 18   // how many gaps to each side of the beginning are tried
	leaderTurns = 24   // directions tried from each
)

// leader is a line from a gap of a round to where a number has room.
type leader struct {
	from, to canvas.Point
	text     *scene.Text
	cost     float64
}

// beyond sets a round's number past the stitches that lie beside a wedge, on the side
// where the round begins or else where it ends; or, of the last round, past its tops.
// nil where there is no room.
func (a *artist) beyond(f *finder, c *course, colour scene.Colour, h float64) *scene.Text {
	t := scene.Text{Size: h / typeface.CapHeight(1), Bold: true, Colour: colour, String: strconv.Itoa(c.round.Number)}
	n := len(c.order)
	if a.window > 0 {
		for _, step := range [...]int{n - 1, 1} {
			k := 0
			for tries := 0; tries < n && c.cutOf(c.order[(k+step)%n]) != left; tries++ {
				k = (k + step) % n
			}
			end, way := c.order[k], 1.0
			if step != 1 {
				way = -1
			}
			inner, outer := a.meanFoot(c, end), c.radius[end]
			wide := typeface.Width(t.String, t.Size, true, false)
			angle := c.theta[end] + way*(wide+a.width(c, end))/2/math.Max((inner+outer)/2, 1)
			if set := a.within(f, c, angle, inner, outer, wide+2, t); set != nil {
				return set
			}
		}
	}
	if c.index == a.last {
		_, outer := a.seamBand(c)
		return a.within(f, c, c.seam, outer, math.Max(outer+4*a.up(), 0.5), 6, t)
	}
	return nil
}

// led sets a round's number in white that is farther off, with a line from the round
// to it; nil where there is none. room is where on the page it may stand.
func (a *artist) led(f *finder, c *course, colour scene.Colour, h float64, room box) *scene.Group {
	t := scene.Text{Size: hundredth(h / typeface.CapHeight(1)), Bold: true, Align: scene.Centre, Colour: colour, String: strconv.Itoa(c.round.Number)}
	best := leader{cost: leaderLong}
	wide := typeface.Width(t.String, t.Size, true, false)
	n := len(c.order)
	for j := range min(2*leaderGaps+1, n) {
		k := (j + 1) / 2 // in turn ahead of the seam and behind it
		if j%2 == 0 {
			k = (n - k) % n
		}
		from, out, ok := a.gapBefore(c, k)
		if !ok || !f.free(box{from.X, from.Y, from.X, from.Y}.grown(leaderDot+leaderAir)) {
			continue
		}
		away := from.Sub(a.seamPoint(c)).Length()
		for turn := range leaderTurns {
			way := out.Rot(float64(turn)*2*math.Pi/leaderTurns, canvas.Origin)
			f.ray(from, way, away, t, wide, room, &best)
		}
	}
	if best.text == nil {
		return nil
	}
	number := strconv.Itoa(c.round.Number)
	g := &scene.Group{ID: a.unique("lead" + number), Title: "Number of " + c.label(), Style: scene.Style{Stroke: &colour, Line: new(leaderLine)}}
	d, dot := &canvas.Path{}, canvas.Circle(leaderDot).Translate(best.from.X, best.from.Y)
	d.MoveTo(best.from.X, best.from.Y)
	d.LineTo(best.to.X, best.to.Y)
	g.Add(&scene.Path{D: d}, &scene.Path{D: dot, Style: scene.Style{Fill: &colour, Stroke: &none}}, best.text)
	f.taken = append(f.taken, textBox(best.text))
	f.grid.add(segment{a: best.from, b: best.to, half: leaderDot})
	return g
}

// gapBefore is the middle of the gap before the k-th stitch of a round, and the way
// out of the round there; false where the chart does not show it.
func (a *artist) gapBefore(c *course, k int) (at, out canvas.Point, ok bool) {
	n := len(c.order)
	next, last := c.order[k], c.order[(k+n-1)%n]
	angle := c.seam
	if k > 0 {
		angle = (c.theta[last] + c.theta[next]) / 2
	}
	if c.cutOf(next) != whole && c.cutOf(last) != whole {
		return at, out, false
	}
	radius := (a.meanFoot(c, next) + c.radius[next] + a.meanFoot(c, last) + c.radius[last]) / 4
	at = a.point(angle, radius)
	fr := a.shape.At(angle, radius)
	return at, canvas.Point{X: fr.OutX, Y: fr.OutY}, true
}

// seamPoint is where a round begins.
func (a *artist) seamPoint(c *course) canvas.Point {
	inner, outer := a.seamBand(c)
	return a.point(c.seam, (inner+outer)/2)
}

// ray goes out from a point as far as there is white, and puts a text at the first
// place on the way that has room for it, so wide, where that costs less than the best so far:
// its length, and how far the point is from where the round begins.
func (f *finder) ray(from, way canvas.Point, away float64, t scene.Text, wide float64, room box, best *leader) {
	h := typeface.CapHeight(t.Size)
	// The box of the text begins where the line meets it.
	half := math.Min(wide/2/math.Max(math.Abs(way.X), 1e-9), h/2/math.Max(math.Abs(way.Y), 1e-9)) + numberAir
	for s := leaderDot + leaderStep; ; s += leaderStep {
		cost := s + away
		if cost >= best.cost {
			return
		}
		p := from.Add(way.Mul(s))
		if !f.free(box{p.X, p.Y, p.X, p.Y}.grown(leaderLine/2 + leaderAir)) {
			return
		}
		at := from.Add(way.Mul(s + half))
		b := box{at.X - wide/2, at.Y - h/2, at.X + wide/2, at.Y + h/2}
		if b.x0 < room.x0 || b.x1 > room.x1 || b.y0 < room.y0 || b.y1 > room.y1 || !f.free(b.grown(numberAir)) {
			continue
		}
		set := t
		set.X, set.Y = hundredth(at.X), hundredth(at.Y+h/2)
		*best = leader{from: from, to: canvas.Point{X: hundredth(p.X), Y: hundredth(p.Y)}, text: &set, cost: cost}
		return
	}
}
