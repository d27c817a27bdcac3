package output

import (
	"bytes"
	"io"
	"testing"

	"whorl/chart/output/outputtest"
	"whorl/chart/scene"
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
