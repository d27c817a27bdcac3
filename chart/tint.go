package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/chart/scene"
)

// tinge is the ground under one repeat. Both round colours keep a contrast of
// over 4.5:1 on it.
var tinge = scene.RGB(0xfcf3e7)

// tint is the ground under the first repeat of a chart in the round; nil when
// the drawn rounds have no repeat in common, or when a wedge shows it anyway.
func (a *artist) tint() *scene.Group {
	fold := 0
	for _, c := range a.courses[a.lo : a.last+1] {
		fold = gcd(fold, a.likeness(c))
	}
	if a.flat || a.window > 0 || fold < 2 {
		return nil
	}
	type border struct{ from, to, radius float64 }
	var rounds []border
	for _, c := range a.courses[a.lo : a.last+1] {
		n := len(c.order)
		between := func(k int) float64 { // the angle before stitch k of the order
			if k == 0 {
				return c.seam
			}
			return (c.theta[c.order[k-1]] + c.theta[c.order[k]]) / 2
		}
		rounds = append(rounds, border{between(0), between(n / fold), a.radii.Of(a.layer(c))})
	}
	first := rounds[0]
	first.radius = a.groundRadius()
	if a.work.ground {
		rounds = append([]border{first}, rounds...)
	}
	d := &canvas.Path{}
	begin := a.point(rounds[0].from, rounds[0].radius)
	d.MoveTo(begin.X, begin.Y)
	to := func(angle, radius float64) {
		p := a.point(angle, radius)
		d.LineTo(p.X, p.Y)
	}
	arc := func(from, until, radius float64) {
		steps := max(1, int(math.Ceil(math.Abs(until-from)/(3*ring.Turn/360))))
		for k := 0; k <= steps; k++ {
			to(from+(until-from)*float64(k)/float64(steps), radius)
		}
	}
	for _, b := range rounds {
		to(b.from, b.radius)
	}
	end := rounds[len(rounds)-1]
	arc(end.from, end.to, end.radius)
	for i := range rounds {
		b := rounds[len(rounds)-1-i]
		to(b.to, b.radius)
	}
	arc(rounds[0].to, rounds[0].from, rounds[0].radius)
	d.Close()
	g := &scene.Group{ID: "repeat", Title: "One repeat", Data: []scene.Attr{{Name: "ground", Value: "tint"}}}
	g.Add(&scene.Path{D: d, Style: scene.Style{Fill: &tinge}})
	return g
}
