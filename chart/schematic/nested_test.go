package schematic

import (
	"math"
	"testing"

	"whorl/chart/scene"
)

// Every leader ends on the outline that it names and clear of the others, and
// labels stand apart, within their room, in the order of the ends.
func TestLeadersEndOnTheirOutlines(t *testing.T) {
	v := &view{width: 100, height: 100, rests: atCentre, outline: ellipse(100, 100)}
	for _, d := range []float64{40, 55, 70, 85} {
		w := &view{width: d, height: d, rests: atCentre, outline: ellipse(d, d)}
		v.inner = append(v.inner, nested{"", w.laidOn(v)})
	}
	v.inner = append(v.inner, nested{"last", v.outline})
	v.growAround()
	v.name()
	const scale = 2
	labels := v.lead(scale)
	if len(labels) != 5 {
		t.Fatalf("%d labels for 5 outlines", len(labels))
	}
	for i, l := range labels {
		for k := range labels {
			on := dense(labels[k].outline, 1)
			d := near(point{X: l.tip.X * scale, Y: l.tip.Y * scale}, on) / scale
			if k == i && d > 0.01 || k != i && d < apart {
				t.Errorf("leader %d ends %.2f mm from outline %d", i, d, k)
			}
		}
		if l.tip.X*scale < 50 {
			t.Errorf("leader %d crosses to the left", i)
		}
	}
	at := stacked(labels, 50)
	for i := range at {
		if at[i] < 0 || at[i]+labels[i].height() > 50.001 {
			t.Errorf("label %d stands at %.1f, out of its room", i, at[i])
		}
		if i > 0 && at[i] < at[i-1]+labels[i-1].height() {
			t.Errorf("label %d lies on the one before", i)
		}
	}
}

// A view makes room for outlines that reach out of it, and its own stays where
// it is among them.
func TestNestedOutlinesOutOfTheBox(t *testing.T) {
	box := func(w, h float64) *view {
		return &view{width: w, height: h, outline: []point{{X: w}, {X: w, Y: h}, {Y: h}, {}}}
	}
	v := box(100, 40) // wide and low
	v.dims = []dim{newDim(above, 0, 100, []float64{100}), newDim(left, 0, 40, []float64{40})}
	v.inner = []nested{{"tall", box(60, 70).laidOn(v)}, {"wide", v.outline}}
	v.growAround()
	if v.width != 100 || v.height != 70 {
		t.Errorf("the box is %v × %v", v.width, v.height)
	}
	if v.outline[0].Y != 30 || v.inner[0].outline[0].Y != 0 || v.inner[0].outline[0].X != 80 {
		t.Errorf("the outlines are %v and %v", v.outline, v.inner[0].outline)
	}
	if a, b := v.dims[0], v.dims[1]; a.from != 0 || a.to != 100 || a.off[0] != 30 || b.from != 30 || b.to != 70 {
		t.Errorf("the dimensions are %+v", v.dims)
	}
}

func TestArrowheadsPointAtTheEnd(t *testing.T) {
	g := &scene.Group{}
	pointAt(g, point{X: 20, Y: 5}, point{X: 3, Y: 5})
	b := g.Nodes[0].(*scene.Path).D.Bounds()
	if math.Abs(b.X0-3) > 0.01 || math.Abs(b.W()-headLong) > 0.02 || math.Abs(b.H()-2*headHalf) > 0.02 {
		t.Errorf("the arrowhead is %v", b)
	}
}
