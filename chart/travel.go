package chart

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// travel draws a slip stitch that moves the beginning of a round: its dot lies on
// what it is worked into, or as near to it as the strokes there leave it room.
func (d *roundArtist) travel(i int) *scene.Group {
	s := &d.c.round.Stitches[i]
	g := d.group(i, d.name(s))
	an := d.anchors(i)
	in := stitch.Top
	if len(s.On) > 0 {
		in = shown(s.On[0].Into, d.c.round)
	}
	mark := in
	if d.joinsOthers(i) {
		mark = stitch.Top // the place has its mark
	}
	art := symbols.Draw(s.Kind, mark, an, d.pen)
	if m := art.Mark; m != nil && art.Strokes == nil {
		size := m.Path.Bounds()
		m.At = d.clearNear(m.At, size.W()/2+d.pen.Line/2+0.08)
	}
	d.paint(g, art)
	g.Data = append(g.Data, scene.Attr{Name: "kind", Value: s.Kind.NameInto(in, d.o.Terms)}, scene.Attr{Name: "top", Points: []canvas.Point{an.Top}})
	if len(s.On) > 0 {
		g.Data = append(g.Data, scene.Attr{Name: "base", Points: an.Base})
	}
	g.Title = d.c.label() + ", " + d.title(i)
	return g
}

// moveDot moves the dot of a slip stitch to the nearest white about it.
func (d *roundArtist) moveDot(g *scene.Group) {
	for k, n := range g.Nodes {
		if u, ok := n.(*scene.Use); ok {
			g.Nodes = slices.Delete(g.Nodes, k, k+1)
			at := d.clearNear(canvas.Point{X: u.X, Y: u.Y}, u.Shape.D.Bounds().W()/2+d.pen.Line/2+leastWhite)
			u.X, u.Y = at.X, at.Y
			g.Nodes = append(g.Nodes, u)
			return
		}
	}
}

// joinsOthers reports whether another stitch of the round stands in the place of a slip
// stitch that moves its beginning.
func (d *roundArtist) joinsOthers(i int) bool {
	stitches := d.c.round.Stitches
	for j := range stitches {
		if j == i || stitches[j].Role == fabric.Travel || len(stitches[i].On) == 0 {
			continue
		}
		for _, p := range stitches[j].On {
			if d.key(p) == d.key(stitches[i].On[0]) {
				return true
			}
		}
	}
	return false
}

// clearNear is the point nearest to at that is at least room away from every
// stroke of this round and of its neighbours by their seams; at itself when there is none
// within a stitch.
func (d *roundArtist) clearNear(at canvas.Point, room float64) canvas.Point {
	k := scene.Plain
	k.Stroke, k.Line = ink, d.pen.Line
	var near []segment
	keep := func(all []segment) {
		for _, s := range all {
			if nearest(at, s).Sub(at).Length() < 1.5*d.unit+room {
				near = append(near, s)
			}
		}
	}
	rounds := d.neighbours()
	if d.below != nil {
		rounds = append(rounds, d.below.below)
	}
	for _, r := range rounds {
		if r == nil {
			continue
		}
		for _, g := range r.groups {
			if g == nil {
				continue
			}
			if tops := pointsOf(g, "top"); len(tops) == 0 || tops[0].Sub(at).Length() < 8*d.unit {
				keep(segments(g, k, 0, nil))
			}
		}
	}
	if d.below == nil {
		keep(d.foundation)
	}
	free := func(p canvas.Point) bool {
		for _, s := range near {
			if nearest(p, s).Sub(p).Length() < room {
				return false
			}
		}
		return true
	}
	for out := 0.0; out < 1.2*d.unit; out += 0.06 * d.unit {
		for turn := 0.0; turn < 2*math.Pi-1e-9; turn += math.Pi / 8 {
			p := at.Add(canvas.Point{X: out}.Rot(turn, canvas.Origin))
			if p = (canvas.Point{X: hundredth(p.X), Y: hundredth(p.Y)}); free(p) {
				return p
			}
			if out == 0 {
				break
			}
		}
	}
	return at
}
