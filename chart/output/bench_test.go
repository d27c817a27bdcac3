package output

import (
	"bytes"
	"io"
	"testing"

	"github.com/tdewolff/canvas"
	stocksvg "github.com/tdewolff/canvas/renderers/svg"

	"whorl/chart/output/outputtest"
	"whorl/chart/scene"
	"whorl/chart/typeface"
)

const benchStitches = 1500

func benchmark(b *testing.B, write func(io.Writer, *scene.Scene) error) {
	s := outputtest.Chart(benchStitches)
	var out bytes.Buffer
	for b.Loop() {
		out.Reset()
		if err := write(&out, s); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(out.Len())/benchStitches, "B/stitch")
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/benchStitches, "ns/stitch")
}

func BenchmarkSVG(b *testing.B) { benchmark(b, SVG) }
func BenchmarkPDF(b *testing.B) { benchmark(b, PDF) }

func BenchmarkPNG(b *testing.B) {
	benchmark(b, func(w io.Writer, s *scene.Scene) error { return PNG(w, s, 2000) })
}

// stock is a brush for the graphics library's own SVG renderer.
type stock struct {
	*stocksvg.SVG
	height float64
}

func (s stock) up() canvas.Matrix { return canvas.Identity.ReflectYAbout(s.height / 2) }

func (s stock) fill(d *canvas.Path, c scene.Colour) {
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{Color: rgba(c)}
	s.RenderPath(d, style, s.up())
}

func (s stock) stroke(d *canvas.Path, k scene.Ink) {
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{}
	style.Stroke = canvas.Paint{Color: rgba(k.Stroke)}
	style.StrokeWidth, style.StrokeCapper, style.StrokeJoiner = k.Line, canvas.RoundCap, canvas.RoundJoin
	s.RenderPath(d, style, s.up())
}

func (s stock) text(t *scene.Text) {
	s.RenderText(typeface.Line(t.String, t.Size, t.Bold, t.Italic, rgba(t.Colour)), canvas.Identity.Translate(t.X, s.height-t.Y))
}

func stockSVG(w io.Writer, s *scene.Scene) error {
	r := stocksvg.New(w, s.Width, s.Height, nil)
	paint(stock{r, s.Height}, s)
	return r.Close()
}

// The same drawing by the library's renderer, for comparison with BenchmarkSVG.
func BenchmarkStockSVG(b *testing.B) { benchmark(b, stockSVG) }

// An SVG with groups, titles and data takes less than three tenths of the bytes of
// the library's without them, which embeds its fonts whole: those of the title and of
// what is said under it.
func TestSVGIsSmallerThanStock(t *testing.T) {
	var ours, theirs bytes.Buffer
	s := outputtest.Chart(benchStitches)
	if err := SVG(&ours, s); err != nil {
		t.Fatal(err)
	}
	if err := stockSVG(&theirs, s); err != nil {
		t.Fatal(err)
	}
	if ratio := float64(ours.Len()) / float64(theirs.Len()); ratio > 0.3 {
		t.Errorf("%d bytes to %d: %.2f", ours.Len(), theirs.Len(), ratio)
	} else {
		t.Logf("%d bytes to %d: %.2f", ours.Len(), theirs.Len(), ratio)
	}
}

// bare is a group without the names, titles and data that only our writer writes, and
// the groups that have nothing else: its strokes and shapes, and its texts where they
// are wanted.
func bare(g *scene.Group, texts bool) *scene.Group {
	out := &scene.Group{Style: g.Style}
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *scene.Group:
			child := bare(n, texts)
			if s := child.Style; s.Stroke == nil && s.Fill == nil && s.Line == nil && s.Dash == nil {
				out.Add(child.Nodes...) // a group of nothing but names
			} else {
				out.Add(child)
			}
		case *scene.Text:
			if texts {
				out.Add(n)
			}
		default:
			out.Add(n)
		}
	}
	return out
}

// The same strokes take under a third of the library's bytes also where there are no
// letters, whose font the library embeds: without the names, titles and data, which
// it has none of.
func TestSVGStrokesAreSmallerThanStock(t *testing.T) {
	for _, texts := range []bool{true, false} {
		s := *outputtest.Chart(benchStitches)
		s.Root = *bare(&s.Root, texts)
		var ours, theirs bytes.Buffer
		if err := SVG(&ours, &s); err != nil {
			t.Fatal(err)
		}
		if err := stockSVG(&theirs, &s); err != nil {
			t.Fatal(err)
		}
		ratio := float64(ours.Len()) / float64(theirs.Len())
		t.Logf("texts %v: %d bytes to %d: %.2f", texts, ours.Len(), theirs.Len(), ratio)
		if ratio > 0.3 {
			t.Errorf("texts %v: %d bytes to %d: %.2f", texts, ours.Len(), theirs.Len(), ratio)
		}
	}
}
