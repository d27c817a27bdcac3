package chart

import (
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// space draws a run of chains as one group of ovals. Its top is the middle of
// the run, where stitches in the space stand; chains that are worked into one
// by one add their own.
func (d *roundArtist) space(k int) *scene.Group {
	if d.drawn == nil {
		d.drawn = map[int]bool{}
	}
	if d.drawn[k] {
		return nil
	}
	d.drawn[k] = true
	d.spaces++
	c, n := d.c, len(d.c.round.Stitches)
	sp := c.round.Spaces[k-1]
	var chains []int
	for i := sp.From; i != sp.To && i < sp.From+n; i++ {
		chains = append(chains, i%n)
	}
	first, last := chains[0], chains[len(chains)-1]
	kind := "ch-" + strconv.Itoa(len(chains)) + " sp"
	if c.open && c.round.Number == 0 {
		kind = "ch"
	}
	mid := fabric.Place{Into: stitch.Space, At: fabric.Ref{Round: c.index, Stitch: first}, Last: fabric.Ref{Round: c.index, Stitch: last}}
	angle, _ := d.angle(mid)
	tops := []canvas.Point{d.point(angle, d.spaceRadius(c, mid))}
	g := &scene.Group{ID: d.prefix + "c" + strconv.Itoa(d.spaces),
		Title: c.label() + ", " + kind}
	for _, i := range chains {
		if c.cutOf(i) != left && d.sought[fabric.Place{At: fabric.Ref{Round: c.index, Stitch: i}}] {
			if sides := d.pointSides(c, i); sides != nil {
				for _, at := range sides {
					tops = append(tops, d.point(at.angle, at.radius))
				}
			} else {
				tops = append(tops, d.top(c, i))
			}
		}
		if c.round.Stitches[i].Counts {
			d.counted++
		}
	}
	d.runs = append(d.runs, chainRun{group: g, chains: chains, room: d.runRoom(chains)})
	tops = append(tops, d.strung[d.key(mid)]...)
	g.Data = []scene.Attr{{Name: "kind", Value: kind}, {Name: "top", Points: tops}}
	return g
}

// chainRun is a run of chains to be drawn in a group.
type chainRun struct {
	group  *scene.Group
	chains []int
	room   float64 // of each chain, mm
	drawn  float64 // how far they are drawn in to their middle, as a share
}

// paintRuns draws the chains of the round's runs, smaller and closer together than they
// have room for where they would touch what stands beside the run.
func (d *roundArtist) paintRuns() {
	k := scene.Plain
	k.Stroke, k.Line = ink, d.pen.Line
	for _, r := range d.runs {
		var near []segment
		for _, i := range r.chains {
			if rank, n := d.c.rank[i], len(d.c.order); rank >= 0 {
				for _, step := range [...]int{1, n - 1} {
					if d.pointSides(d.c, i) != nil {
						continue // what stands on it is square to it
					}
					if j := d.c.order[(rank+step)%n]; d.groups[j] != nil && !d.c.isLoop(j) {
						near = segments(d.groups[j], k, 0, near)
					}
				}
			}
		}
		for d.meets(r, near) && r.room > leastRoom*d.unit {
			r.room *= 1 - drawnStep
			r.drawn += drawnStep
		}
		d.chainMost = math.Max(d.chainMost, r.room)
		for j, i := range r.chains {
			if !d.c.hides(i) && d.c.cutOf(i) != left {
				d.paint(r.group, d.chain(r, j))
			}
		}
	}
}

// meets reports whether a chain of a run touches one of some strokes.
func (d *roundArtist) meets(r chainRun, near []segment) bool {
	for j := range r.chains {
		m := d.chain(r, j).Mark
		if m == nil || len(near) == 0 {
			continue
		}
		at := canvas.Identity.Translate(m.At.X, m.At.Y).Rotate(m.Angle)
		if d.whiteAbout(symbols.Drawing{Strokes: m.Path.Copy().Transform(at)}, near, leastWhite) <= leastWhite {
			return true
		}
	}
	return false
}

// chain is chain j of a run: it lies along the arc of the run.
func (d *roundArtist) chain(r chainRun, j int) symbols.Drawing {
	run := r.chains
	c, i := d.c, run[j]
	an := symbols.Anchors{Top: d.top(c, i).Interpolate(d.midRun(run), r.drawn), Unit: d.unit, Width: r.room}
	an.Along, an.Up = d.frame(c, c.theta[i], c.radius[i])
	an.Along, an.Up = d.tilted(c, i, an.Along, an.Up)
	if d.pointSides(c, i) != nil { // worked into from both sides
		an.Top = an.Top.Add(an.Up.Mul(pointMiddle * d.unit))
	}
	if len(run) > 1 {
		way := d.top(c, run[min(j+1, len(run)-1)]).Sub(d.top(c, run[max(j-1, 0)]))
		if way.Length() > 0.1 && way.Dot(an.Along) > 0 {
			turn := way.Angle() - an.Along.Angle()
			an.Along, an.Up = an.Along.Rot(turn, canvas.Origin), an.Up.Rot(turn, canvas.Origin)
		}
	}
	return symbols.Draw(stitch.Of(stitch.Chain), stitch.Top, an, d.pen)
}

// midRun is the mean of the places of a run's chains.
func (d *roundArtist) midRun(run []int) (p canvas.Point) {
	for _, i := range run {
		p = p.Add(d.top(d.c, i).Mul(1 / float64(len(run))))
	}
	return p
}

// Chains of a run are alike. They come in few sizes, chainStep times one another.
const (
	chainStep = 0.8
	drawnStep = 0.14
	leastRoom = 0.4 // units, over which chains are drawn smaller for what is beside them
)

// runRoom is the width of every chain of a run: the room of its narrowest, in steps.
func (d *roundArtist) runRoom(run []int) float64 {
	room := d.unit
	for _, i := range run {
		if d.c.rank[i] >= 0 {
			room = math.Min(room, d.chainRoom(d.c, i))
		}
	}
	step := math.Ceil(math.Log(room/d.unit)/math.Log(chainStep) - 1e-9)
	return math.Max(d.unit*math.Pow(chainStep, step), d.chainW)
}

// overBar is how far over or under the top of a stitch a chain keeps clear of its bar,
// in units.
const overBar = 0.4

// chainRoom is the room of a chain: the distance to the nearer of its neighbours, which
// in an arch are above and below it as well; to a bar beside it, along the round.
func (w *work) chainRoom(c *course, i int) float64 {
	if p, ok := c.pitch[i]; ok {
		return math.Min(p, w.unit)
	}
	n, k := len(c.order), c.rank[i]
	at := w.top(c, i)
	along, _ := w.frame(c, c.theta[i], c.radius[i])
	room := w.unit
	for _, step := range [...]int{1, n - 1} {
		if n < 2 || c.open && (k == 0 && step > 1 || k == n-1 && step == 1) {
			continue
		}
		j := c.order[(k+step)%n]
		way := w.top(c, j).Sub(at)
		d := way.Length()
		if !c.isLoop(j) && math.Abs(way.PerpDot(along)) < overBar*w.unit {
			d = math.Abs(way.Dot(along))
		}
		room = math.Min(room, d)
	}
	return room
}

// isLoop reports whether a stitch is a chain in a loop.
func (c *course) isLoop(i int) bool {
	s := &c.round.Stitches[i]
	return s.IsChain() && len(s.On) == 0
}
