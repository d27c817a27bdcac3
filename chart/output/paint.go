// Package output writes a scene as SVG, PDF and PNG. The three are one
// picture: the same scene, the same strokes with round caps and joins, the
// same letters. The same scene always gives the same bytes.
package output

import (
	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
)

// brush is what a page is painted with once every style is settled. Paths are
// in the scene's millimetres and belong to the scene: a brush copies what it
// changes.
type brush interface {
	fill(d *canvas.Path, c scene.Colour)
	stroke(d *canvas.Path, k scene.Ink)
	text(t *scene.Text)
}

// paint goes through a scene in painting order, paper first.
func paint(b brush, s *scene.Scene) {
	if s.Paper.Opaque {
		b.fill(canvas.Rectangle(s.Width, s.Height), s.Paper)
	}
	paintGroup(b, &s.Root, scene.Plain)
}

func paintGroup(b brush, g *scene.Group, k scene.Ink) {
	k = k.With(g.Style)
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *scene.Group:
			paintGroup(b, n, k)
		case *scene.Path:
			paintPath(b, n.D, k.With(n.Style))
		case *scene.Use:
			at := canvas.Identity.Translate(n.X, n.Y).Rotate(n.Angle)
			if d := n.Shape.D; d != nil {
				paintPath(b, d.Copy().Transform(at), shapeInk(n.Shape, k))
			}
		case *scene.Text:
			if n.Colour.Opaque && n.Size > 0 {
				b.text(n)
			}
		}
	}
}

func paintPath(b brush, d *canvas.Path, k scene.Ink) {
	if d == nil || d.Empty() {
		return
	}
	if k.Fill.Opaque {
		b.fill(d, k.Fill)
	}
	if k.Strokes() {
		b.stroke(d, k)
	}
}

// shapeInk is the ink of a repeated shape where k is inherited.
func shapeInk(s *scene.Shape, k scene.Ink) scene.Ink {
	if s.Solid {
		return scene.Ink{Fill: k.Stroke}
	}
	return k
}

// share is the part of a text's width that lies left of the point it is
// placed by.
func share(a scene.Align) float64 {
	switch a {
	case scene.Centre:
		return 0.5
	case scene.Right:
		return 1
	}
	return 0
}
