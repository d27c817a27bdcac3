package chart

import (
	"bytes"
	"image/color"
	"testing"

	"github.com/tdewolff/canvas"
	stocksvg "github.com/tdewolff/canvas/renderers/svg"

	"whorl/chart/output"
	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// stock draws a scene by the graphics library's own SVG renderer: the same strokes and
// letters, without names, titles and data.
type stock struct {
	*stocksvg.SVG
	height float64
}

func rgba(c scene.Colour) color.RGBA { return color.RGBA{c.R, c.G, c.B, 255} }

func (s stock) path(d *canvas.Path, k scene.Ink) {
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{}
	if k.Fill.Opaque {
		style.Fill = canvas.Paint{Color: rgba(k.Fill)}
	}
	if k.Strokes() {
		style.Stroke = canvas.Paint{Color: rgba(k.Stroke)}
		style.StrokeWidth, style.StrokeCapper, style.StrokeJoiner = k.Line, canvas.RoundCap, canvas.RoundJoin
	}
	s.RenderPath(d, style, canvas.Identity.ReflectYAbout(s.height/2))
}

func (s stock) group(g *scene.Group, k scene.Ink) {
	k = k.With(g.Style)
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *scene.Group:
			s.group(n, k)
		case *scene.Path:
			s.path(n.D, k.With(n.Style))
		case *scene.Use:
			at := canvas.Identity.Translate(n.X, n.Y).Rotate(n.Angle)
			ink := k
			if n.Shape.Solid {
				ink = scene.Ink{Fill: k.Stroke}
			}
			s.path(n.Shape.D.Copy().Transform(at), ink)
		case *scene.Text:
			s.RenderText(typeface.Line(n.String, n.Size, n.Bold, n.Italic, rgba(n.Colour)), canvas.Identity.Translate(n.X, s.height-n.Y))
		}
	}
}

// An SVG of a chart, with its groups, titles and data, takes less than three tenths of
// the bytes that the graphics library's own renderer takes for the same strokes and
// letters, and no more than 250 for a stitch of a textured hat.
func TestChartBytes(t *testing.T) {
	for name, s := range map[string]sample{
		"textured hat": {"", shells(), Options{Title: "Hat", Credit: "Design: nobody"}},
		"1,500 dc":     {"", flat(dc, 12, 15, true), Options{Title: "Circle", Credit: "Design: nobody"}},
		"lace":         {"", lace(), Options{Title: "Lace", Credit: "Design: nobody"}},
	} {
		c := draw(t, s)
		var ours, theirs bytes.Buffer
		if err := output.SVG(&ours, c.Scene); err != nil {
			t.Fatal(err)
		}
		r := stocksvg.New(&theirs, c.Scene.Width, c.Scene.Height, nil)
		stock{r, c.Scene.Height}.group(&c.Scene.Root, scene.Plain)
		if err := r.Close(); err != nil {
			t.Fatal(err)
		}
		ratio := float64(ours.Len()) / float64(theirs.Len())
		stitches := Audit(c.Scene).Stitches
		each := float64(ours.Len()) / float64(stitches)
		t.Logf("%s: %d bytes to %d: %.2f; %.0f for each of %d symbols", name, ours.Len(), theirs.Len(), ratio, each, stitches)
		if ratio > 0.3 {
			t.Errorf("%s: %d bytes to %d: %.2f", name, ours.Len(), theirs.Len(), ratio)
		}
		if stitches > 500 && each > 250 { // a small chart's key is most of it
			t.Errorf("%s: %.0f bytes a symbol", name, each)
		}
	}
}
