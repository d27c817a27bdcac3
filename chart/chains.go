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
	for j, i := range chains {
		if c.cutOf(i) != left && d.sought[fabric.Place{At: fabric.Ref{Round: c.index, Stitch: i}}] {
			tops = append(tops, d.top(c, i))
		}
		if c.round.Stitches[i].Counts {
			d.counted++
		}
		if !c.hides(i) && c.cutOf(i) != left {
			d.paint(g, symbols.Draw(stitch.Of(stitch.Chain), stitch.Top, d.chain(chains, j), d.pen))
		}
	}
	tops = append(tops, d.strung[d.key(mid)]...)
	g.Data = []scene.Attr{{Name: "kind", Value: kind}, {Name: "top", Points: tops}}
	return g
}

// chain is the anchors of chain j of a run: it lies along the arc of the run.
func (d *roundArtist) chain(run []int, j int) symbols.Anchors {
	c, i := d.c, run[j]
	an := symbols.Anchors{Top: d.top(c, i), Unit: d.unit, Width: d.runRoom(run)}
	an.Along, an.Up = d.frame(c, c.theta[i], c.radius[i])
	if len(run) > 1 {
		way := d.top(c, run[min(j+1, len(run)-1)]).Sub(d.top(c, run[max(j-1, 0)]))
		if way.Length() > 0.1 && way.Dot(an.Along) > 0 {
			turn := way.Angle() - an.Along.Angle()
			an.Along, an.Up = an.Along.Rot(turn, canvas.Origin), an.Up.Rot(turn, canvas.Origin)
		}
	}
	return an
}

// Chains of a run are alike. They come in few sizes, chainStep times one another.
const chainStep = 0.8

// runRoom is the width of every chain of a run: the room of its narrowest, in steps.
func (d *roundArtist) runRoom(run []int) float64 {
	room := d.unit
	for _, i := range run {
		if d.c.rank[i] >= 0 {
			room = math.Min(room, d.chainRoom(d.c, i))
		}
	}
	step := math.Ceil(math.Log(room/d.unit)/math.Log(chainStep) - 1e-9)
	room = math.Max(d.unit*math.Pow(chainStep, step), d.chainW)
	d.chainMost = math.Max(d.chainMost, room)
	return room
}

// overBar is how far over or under the top of a stitch a chain keeps clear of its bar,
// in units.
const overBar = 0.4

// chainRoom is the room of a chain: the distance to the nearer of its neighbours, which
// in an arch are above and below it as well; to a bar beside it, along the round.
func (w *work) chainRoom(c *course, i int) float64 {
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
