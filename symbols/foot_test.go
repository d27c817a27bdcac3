package symbols

import (
	"testing"

	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

// Stitches round one post lie on one hook, whichever way their legs go from there: they
// are a hair apart up to where those part.
func TestSharedHook(t *testing.T) {
	const unit = 4.0
	draw := func(x float64, again int) *canvas.Path {
		a := Anchors{Base: []canvas.Point{{}}, Top: canvas.Point{X: x, Y: -2 * unit}, Up: canvas.Point{Y: -1},
			Along: canvas.Point{X: 1}, Width: unit, Unit: unit, Shared: true, Again: again}
		return Draw(stitch.Of(stitch.Double), stitch.FrontPost, a, Pen{Line: 0.2}).Strokes.Flatten(0.001)
	}
	first := draw(-0.5*unit, 0).Coords()
	for _, second := range []*canvas.Path{draw(0.6*unit, 1), draw(-1.4*unit, -1)} {
		for _, p := range second.Coords() {
			if p.Y < -0.33*unit {
				continue
			}
			near := unit
			for k := 1; k < len(first); k++ {
				near = min(near, canvas.Point.Sub(p, closest(p, first[k-1], first[k])).Length())
			}
			if near > 0.05 {
				t.Errorf("%.2f mm off the hook at %.2f, %.2f", near, p.X, p.Y)
			}
		}
	}
}

// The hook of a leg that leans far, as in a cable, stays above its place: a bar may lie
// there.
func TestHookStaysUp(t *testing.T) {
	const unit = 4.0
	for _, hand := range []float64{1, -1} {
		in := stitch.FrontPost
		if hand < 0 {
			in = stitch.BackPost
		}
		a := Anchors{Base: []canvas.Point{{}}, Top: canvas.Point{X: hand * 3 * unit, Y: -unit}, Rise: []canvas.Point{{Y: -1}},
			Up: canvas.Point{Y: -1}, Along: canvas.Point{X: 1}, Width: unit, Unit: unit}
		if low := Draw(stitch.Of(stitch.Treble), in, a, Pen{Line: 0.2}).Strokes.Bounds().Y1; low > 1e-3 {
			t.Errorf("a hook to the side %v hangs %.2f mm below its place", hand, low)
		}
	}
}

// closest is the point between two that is nearest to p.
func closest(p, a, b canvas.Point) canvas.Point {
	d := b.Sub(a)
	if d.Dot(d) == 0 {
		return a
	}
	return a.Add(d.Mul(max(0, min(1, p.Sub(a).Dot(d)/d.Dot(d)))))
}
