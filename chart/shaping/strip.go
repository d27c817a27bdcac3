package shaping

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// stripRadius is how far from the axis the strip is, so far below the edge that
// the part is picked up along: there it is drawn out, or in, to the part, and
// within a few times the difference it is as it is by itself (common practice,
// no source).
func (p *piece) stripRadius(below float64) float64 {
	own := p.strip / (2 * math.Pi)
	more := p.start.r - own
	reach := math.Min(p.stripWidth, 4*math.Abs(more))
	if below >= reach {
		return own
	}
	t := 1 - below/reach
	return own + more*t*t
}

// stripOutline is the strip seen from the side, down from y.
func (p *piece) stripOutline(cx, y, scale float64) *canvas.Path {
	const steps = 16
	var left, right []point
	for k := range steps + 1 {
		t := float64(k) / steps
		below := p.stripWidth * t * t // closer together at the top
		r := p.stripRadius(below) / scale
		right = append(right, point{X: cx + r, Y: y + below/scale})
		left = append(left, point{X: cx - r, Y: y + below/scale})
	}
	slices.Reverse(left)
	return polygon(append(right, left...)...)
}

// stripLabel names the strip, at its top or else at its foot, off the line at
// rule; nil where there is no room.
func stripLabel(name string, cx, y, r, height, rule float64) *scene.Text {
	if name == "" || typeface.Width(name, smallSize, false, false) > 2*r-2 {
		return nil
	}
	for _, base := range []float64{y + smallSize + 0.8, y + height - 1.2} {
		if base > y+smallSize && base < y+height-1 && (base < rule-smallSize-1.5 || base > rule+smallSize+0.5) {
			return &scene.Text{X: cx, Y: hundredth(base), Size: smallSize, Align: scene.Centre, Colour: words, String: name}
		}
	}
	return nil
}
