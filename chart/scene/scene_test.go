package scene

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/tdewolff/canvas"
)

func TestInk(t *testing.T) {
	red, none := RGB(0xff0000), Colour{}
	k := Plain.With(Style{Stroke: &red})
	if !k.Strokes() || k.Fill.Opaque || k.Line != Plain.Line {
		t.Errorf("a red stroke is %+v", k)
	}
	k = k.With(Style{Line: new(0.5), Dash: []float64{1, 2, 3}})
	if d := cmp.Diff(Ink{Stroke: red, Line: 0.5, Dash: []float64{1, 2, 3, 1, 2, 3}}, k); d != "" {
		t.Error(d)
	}
	if got := k.With(Style{}); cmp.Diff(k, got) != "" {
		t.Errorf("a style that says nothing changes the ink to %+v", got)
	}
	if got := k.With(Style{Dash: []float64{}}); len(got.Dash) != 0 {
		t.Errorf("an unbroken line has the dashes %v", got.Dash)
	}
	if k.With(Style{Stroke: &none}).Strokes() || k.With(Style{Line: new(0.0)}).Strokes() {
		t.Error("a stroke that leaves nothing is said to")
	}
}

func TestCheck(t *testing.T) {
	circle := canvas.Circle(1)
	shape := &Shape{ID: "ch", D: circle}
	with := func(n ...Node) *Scene {
		return &Scene{Width: 10, Height: 10, Root: Group{ID: "root", Nodes: n}}
	}
	for _, c := range []struct {
		name  string
		scene *Scene
		fault string // part of what is said, or "" where nothing is wrong
	}{
		{"whole", with(&Group{ID: "a", Data: []Attr{{Name: "kind", Value: "sc"}}}, &Use{Shape: shape}, &Use{Shape: shape}, &Text{Size: 3}, &Path{}), ""},
		{"shape alike", with(&Use{Shape: shape}, &Use{Shape: &Shape{ID: "ch", D: canvas.Circle(1)}}), ""},
		{"no size", &Scene{Width: 10}, "10 × 0 mm"},
		{"size unknown", &Scene{Width: math.NaN(), Height: 1}, "NaN"},
		{"groups alike", with(&Group{ID: "a"}, &Group{Nodes: []Node{&Group{ID: "a"}}}), `ID "a"`},
		{"shapes unlike", with(&Use{Shape: shape}, &Use{Shape: &Shape{ID: "ch", D: canvas.Circle(2)}}), `ID "ch"`},
		{"group as shape", with(&Use{Shape: shape}, &Group{ID: "ch"}), `ID "ch"`},
		{"shape as group", with(&Group{ID: "ch"}, &Use{Shape: shape}), `ID "ch"`},
		{"ID", with(&Group{ID: "a b"}), `"a b"`},
		{"shape's ID", with(&Use{Shape: &Shape{D: circle}}), `""`},
		{"no shape", with(&Use{}), "missing"},
		{"data", with(&Group{Data: []Attr{{Name: "Top point"}}}), `"Top point"`},
		{"data off the paper", with(&Group{Data: []Attr{{Name: "top", Points: []canvas.Point{{X: math.Inf(1)}}}}}), "datum top"},
		{"data twice", with(&Group{Data: []Attr{{Name: "top"}, {Name: "top"}}}), "twice"},
		{"nothing", with(nil), "nothing"},
		{"path", with(&Path{D: canvas.NewPathFromData([]float64{1, math.NaN(), 0, 1})}), "path"},
		{"use", with(&Use{Shape: shape, Angle: math.Inf(1)}), "coordinate"},
		{"text", with(&Text{X: math.NaN(), String: "72"}), "72"},
		{"text's size", with(&Text{Size: -1, String: "72"}), "-1 mm"},
		{"line", with(&Group{Style: Style{Line: new(-1.0)}}), "-1 mm"},
		{"dash", with(&Path{Style: Style{Dash: []float64{1, -1}}}), "dash"},
		{"dashes of nothing", with(&Path{Style: Style{Dash: []float64{0, 0}}}), "no length"},
	} {
		err := c.scene.Check()
		switch {
		case c.fault == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.fault != "" && (err == nil || !strings.Contains(err.Error(), c.fault)):
			t.Errorf("%s: %v, without %q", c.name, err, c.fault)
		}
	}
}
