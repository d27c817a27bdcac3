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

// leaderUp is how far up between the feet of a round and its tops leaders begin: in the
// middle or, where none leads out from there, nearer either.
var leaderUp = [...]float64{0.5, 0.35, 0.65, 0.2, 0.8}

// leader is a line to where something has room.
type leader struct {
	from, to canvas.Point
	at       canvas.Point // the middle of the room
	cost     float64
}

// beyond sets a round's number past the stitches that lie beside a wedge, on the side
// where the round begins or else where it ends; or, of the first round, past the edge that
// it stands on, and of the last, past its tops. nil where there is no room.
func (a *artist) beyond(f *finder, c *course, colour scene.Colour, h float64) *scene.Text {
	t := scene.Text{Size: h / typeface.CapHeight(1), Bold: true, Colour: colour, String: strconv.Itoa(c.round.Number)}
	wide := typeface.Width(t.String, t.Size, true, false)
	if at, ok := a.pastWedge(f, c, wide, h); ok {
		t.X, t.Y, t.Size, t.Align = hundredth(at.X), hundredth(at.Y+h/2), hundredth(t.Size), scene.Centre
		return &t
	}
	if c.index == a.lo && a.window == 0 && a.work.ground && !a.courses[max(a.lo-1, 0)].hub {
		feet, _ := a.seamBand(c)
		if set := a.within(f, c, c.seam, math.Max(feet-4*a.up(), 0.5), feet, 6, t); set != nil {
			return set
		}
	}
	if c.index == a.last {
		_, outer := a.seamBand(c)
		return a.within(f, c, c.seam, outer, math.Max(outer+4*a.up(), 0.5), 6, t)
	}
	return nil
}

// pastWedge is room for something so wide and tall past the stitches that lie beside a
// wedge, on the side where the round begins or else where it ends.
func (a *artist) pastWedge(f *finder, c *course, wide, tall float64) (canvas.Point, bool) {
	if a.window == 0 || a.flat {
		return canvas.Point{}, false
	}
	n := len(c.order)
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
		angle := c.theta[end] + way*(wide+a.width(c, end))/2/math.Max((inner+outer)/2, 1)
		if at, _, ok := a.white(f, angle, inner, outer, wide+2, wide, tall, 0); ok {
			return at, true
		}
	}
	return canvas.Point{}, false
}

// led sets a round's number in white that is farther off, with a line from the round
// to it; nil where there is none. room is where on the page it may stand.
func (a *artist) led(f *finder, c *course, colour scene.Colour, h float64, room box) *scene.Group {
	t := scene.Text{Size: hundredth(h / typeface.CapHeight(1)), Bold: true, Align: scene.Centre, Colour: colour, String: strconv.Itoa(c.round.Number)}
	best := leader{cost: leaderLong}
	wide := typeface.Width(t.String, t.Size, true, false)
	n := len(c.order)
	for _, up := range leaderUp {
		for j := range min(2*leaderGaps+1, n) {
			k := (j + 1) / 2 // in turn ahead of the seam and behind it
			if j%2 == 0 {
				k = (n - k) % n
			}
			from, out, ok := a.gapBefore(c, k, up)
			if !ok || !f.free(box{from.X, from.Y, from.X, from.Y}.grown(leaderDot+leaderAir)) {
				continue
			}
			f.rays(from, out, from.Sub(a.seamPoint(c)).Length(), wide, h, room, &best)
		}
		if best.cost < leaderLong {
			break
		}
	}
	if best.cost == leaderLong {
		return nil
	}
	number := strconv.Itoa(c.round.Number)
	g := &scene.Group{ID: a.unique("lead" + number), Title: "Number of " + c.label(), Style: scene.Style{Stroke: &colour, Line: new(leaderLine)}}
	t.X, t.Y = hundredth(best.at.X), hundredth(best.at.Y+h/2)
	g.Add(f.lead(best, &colour)...)
	g.Add(&t)
	f.taken = append(f.taken, textBox(&t))
	return g
}

// lead draws a leader, with a dot where it begins.
func (f *finder) lead(l leader, colour *scene.Colour) []scene.Node {
	d, dot := &canvas.Path{}, canvas.Circle(leaderDot).Translate(l.from.X, l.from.Y)
	d.MoveTo(l.from.X, l.from.Y)
	d.LineTo(l.to.X, l.to.Y)
	f.grid.add(segment{a: l.from, b: l.to, half: leaderDot})
	return []scene.Node{&scene.Path{D: d, Style: scene.Style{Line: new(leaderLine)}}, &scene.Path{D: dot, Style: scene.Style{Fill: colour, Stroke: &none}}}
}

// rays looks all around a point for the room of something so wide and tall, from the
// direction out.
func (f *finder) rays(from, out canvas.Point, away, wide, tall float64, room box, best *leader) {
	for turn := range leaderTurns {
		way := out.Rot(float64(turn)*2*math.Pi/leaderTurns, canvas.Origin)
		f.ray(from, way, away, wide, tall, room, best)
	}
}

// gapBefore is a point in the gap before the k-th stitch of a round, a share of the way up
// it, and the way out of the round there; false where the chart does not show it.
func (a *artist) gapBefore(c *course, k int, up float64) (at, out canvas.Point, ok bool) {
	n := len(c.order)
	next, last := c.order[k], c.order[(k+n-1)%n]
	angle := c.seam
	if k > 0 {
		angle = (c.theta[last] + c.theta[next]) / 2
	}
	if c.cutOf(next) != whole && c.cutOf(last) != whole {
		return at, out, false
	}
	radius := ((a.meanFoot(c, next)+a.meanFoot(c, last))*(1-up) + (c.radius[next]+c.radius[last])*up) / 2
	at = a.point(angle, radius)
	fr := a.shape.At(angle, radius)
	return at, canvas.Point{X: fr.OutX, Y: fr.OutY}, true
}

// seamPoint is where a round begins.
func (a *artist) seamPoint(c *course) canvas.Point {
	inner, outer := a.seamBand(c)
	return a.point(c.seam, (inner+outer)/2)
}

// ray goes out from a point as far as there is white, to the first place on the way
// that has room for something so wide and tall, where that costs less than the best so
// far: its length, and how far the point is from where it should be.
func (f *finder) ray(from, way canvas.Point, away, wide, h float64, room box, best *leader) {
	// The box begins where the line meets it.
	half := math.Min(wide/2/math.Max(math.Abs(way.X), 1e-9), h/2/math.Max(math.Abs(way.Y), 1e-9)) + numberAir
	for s := leaderDot + leaderStep; ; s += leaderStep {
		cost := s + away
		if cost >= best.cost {
			return
		}
		p, before := from.Add(way.Mul(s)), from.Add(way.Mul(s-leaderStep/2)) // less than the room kept apart
		if !f.clearAbout(p) || !f.clearAbout(before) {
			return
		}
		at := from.Add(way.Mul(s + half))
		b := box{at.X - wide/2, at.Y - h/2, at.X + wide/2, at.Y + h/2}
		if b.x0 < room.x0 || b.x1 > room.x1 || b.y0 < room.y0 || b.y1 > room.y1 || !f.free(b.grown(numberAir)) {
			continue
		}
		*best = leader{from: from, to: canvas.Point{X: hundredth(p.X), Y: hundredth(p.Y)}, at: at, cost: cost}
		return
	}
}

// clearAbout reports whether a leader may pass through a point.
func (f *finder) clearAbout(p canvas.Point) bool {
	return f.free(box{p.X, p.Y, p.X, p.Y}.grown(leaderLine/2 + leaderAir))
}
