package scene

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/tdewolff/canvas"
)

func picture() *Scene {
	dot := &Shape{ID: "dot", D: canvas.Circle(1)}
	line := &canvas.Path{}
	line.MoveTo(1, 2)
	line.LineTo(3, 4)
	return &Scene{Width: 50, Height: 40, Root: Group{Nodes: []Node{
		&Group{ID: "round", Title: "Rnd 1", Data: []Attr{{Name: "round", Value: "1"}, {Name: "top", Points: []canvas.Point{{X: 5, Y: 6}}}},
			Nodes: []Node{&Path{D: line}, &Use{Shape: dot, X: 7, Y: 8, Angle: 30}, &Use{Shape: dot, X: 9, Y: 9}}},
		&Text{X: 1, Y: 1, Size: 3, String: "x"},
	}}}
}

// Everything is moved by as much, the picture it is taken from stays as it was,
// and two copies of it can stand on one page.
func TestMoved(t *testing.T) {
	s := picture()
	page := &Scene{Width: 200, Height: 200}
	page.Root.Add(s.Root.Moved(10, 20, "a-"), s.Root.Moved(10, 60, "b-"))
	if err := page.Check(); err != nil {
		t.Fatal(err)
	}
	copied := page.Root.Nodes[1].(*Group)
	round := copied.Nodes[0].(*Group)
	path, first, second := round.Nodes[0].(*Path), round.Nodes[1].(*Use), round.Nodes[2].(*Use)
	text := copied.Nodes[1].(*Text)
	got := []float64{round.Data[1].Points[0].X, round.Data[1].Points[0].Y, path.D.Coords()[0].X, path.D.Coords()[1].Y,
		first.X, first.Y, first.Angle, text.X, text.Y}
	if diff := cmp.Diff([]float64{15, 66, 11, 64, 17, 68, 30, 11, 61}, got); diff != "" {
		t.Error(diff)
	}
	if round.ID != "b-round" || first.Shape.ID != "b-dot" || first.Shape != second.Shape {
		t.Errorf("IDs are %s, %s; one shape: %v", round.ID, first.Shape.ID, first.Shape == second.Shape)
	}
	fresh := picture()
	was, is := s.Root.Nodes[0].(*Group), fresh.Root.Nodes[0].(*Group)
	if was.ID != is.ID || !was.Nodes[0].(*Path).D.Equals(is.Nodes[0].(*Path).D) || was.Nodes[1].(*Use).Shape.ID != "dot" {
		t.Error("the picture that was copied has changed")
	}
}
