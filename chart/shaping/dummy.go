package shaping

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/geometry"
)

// dummy is the outline of a head of that circumference: half a ball on a
// cylinder. A hat to the rule of thumb ends at its rule.
type dummy struct{ radius, rule, foot float64 }

func newDummy(head float64) dummy {
	r := head / (2 * math.Pi)
	// The fabric lies along a quarter of the ball and then down.
	straight := geometry.HatDepth(head) - math.Pi/2*r
	return dummy{radius: r, rule: r + straight, foot: r + 1.2*straight}
}

// outline is the outline of the head on the page, from its top down.
func (d dummy) outline(cx, top, scale float64) *canvas.Path {
	r, foot := d.radius/scale, top+d.foot/scale
	path := line(point{X: cx - r, Y: foot}, point{X: cx - r, Y: top + r})
	path.ArcTo(r, r, 0, false, true, hundredth(cx+r), hundredth(top+r))
	path.LineTo(hundredth(cx+r), hundredth(foot))
	return path
}

// right are points along the right side of the outline, a millimetre apart.
func (d dummy) right(cx, top, scale float64) []point {
	r, foot := d.radius/scale, top+d.foot/scale
	var l []point
	for a := 0.0; a < math.Pi/2; a += 1 / math.Max(r, 1) {
		l = append(l, point{X: cx + r*math.Sin(a), Y: top + r*(1-math.Cos(a))})
	}
	for y := top + r; y < foot; y++ {
		l = append(l, point{X: cx + r, Y: y})
	}
	return l
}

// drawDummy draws the head behind the profile.
func drawDummy(d dummy, cx, top, scale float64) *scene.Group {
	g := &scene.Group{ID: "dummy", Title: "A head of that size, as half a ball on a cylinder"}
	r, rule := d.radius/scale, top+d.rule/scale
	outline := d.outline(cx, top, scale)
	paint := scene.RGB(0xf4f1ec)
	edge, width := grey, 0.25
	g.Add(&scene.Path{Style: scene.Style{Stroke: &edge, Fill: &paint, Line: &width}, D: outline})
	g.Add(&scene.Path{Style: scene.Stroked(grey, 0.25, 1.5, 1.2), D: line(point{X: cx - r, Y: rule}, point{X: cx + r, Y: rule})})
	const label = "0.4 × head: depth by the rule of thumb"
	size := smallSize * 0.9
	if typeface.Width(label, size, false, false) < 2*r-3 {
		g.Add(&scene.Text{X: cx, Y: rule - 1, Size: size, Align: scene.Centre, Colour: words, String: label})
	}
	return g
}
