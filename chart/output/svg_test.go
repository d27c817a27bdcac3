package output

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/tdewolff/canvas"

	"whorl/chart/output/outputtest"
	"whorl/chart/scene"
	"whorl/chart/typeface"
)

func svgOf(t testing.TB, s *scene.Scene) string {
	t.Helper()
	var b bytes.Buffer
	if err := SVG(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// A whole small document, as it stands in the file.
func TestSVGDocument(t *testing.T) {
	grey, blue := scene.RGB(0x222222), scene.RGB(0x1f5fa8)
	chain := &scene.Shape{ID: "ch", D: canvas.Circle(1)}
	unused := &scene.Shape{ID: "sl", Solid: true, D: canvas.Circle(0.5)}
	s := &scene.Scene{Width: 210, Height: 297, Title: "Crown, rounds 1–2", Desc: "Two stitches.", Paper: scene.RGB(0xffffff)}
	s.Root = scene.Group{ID: "chart", Style: scene.Style{Stroke: &grey, Line: new(0.3)}}
	s.Root.Add(
		&scene.Group{ID: "r1s1", Title: "Rnd 1, stitch 1: ch", Data: []scene.Attr{{Name: "kind", Value: "ch"}, {Name: "top", Points: []canvas.Point{{X: 10, Y: 20.125}, {X: 7.5}}}},
			Nodes: []scene.Node{&scene.Use{Shape: chain, X: 10, Y: 20.125, Angle: 30.5}}},
		&scene.Group{ID: "r1s2", Style: scene.Style{Stroke: &blue},
			Nodes: []scene.Node{
				&scene.Path{D: canvas.MustParseSVGPath("M10.5 20.25L10.5 23")},
				&scene.Use{Shape: unused, X: 1, Y: 2},
				&scene.Text{X: 5, Y: 6.7, Size: 3, Align: scene.Centre, Bold: true, Colour: grey, String: "R&1"},
			}},
	)
	want := `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" version="1.1" width="210mm" height="297mm" viewBox="0 0 21000 29700" xml:lang="en" role="img" aria-labelledby="crown-rounds-1-2-title crown-rounds-1-2-desc" fill="none" stroke-width="25" stroke-linecap="round" stroke-linejoin="round" font-family="Liberation Sans, Arial, Helvetica, sans-serif">
<title id="crown-rounds-1-2-title">Crown, rounds 1–2</title>
<desc id="crown-rounds-1-2-desc">Two stitches.</desc>
<defs>
<path id="ch" d="M100 0A100 100 0 0 1-100 0 100 100 0 0 1 100 0z"/>
<path id="sl" stroke="none" d="M50 0A50 50 0 0 1-50 0 50 50 0 0 1 50 0z"/>
</defs>
<rect width="21000" height="29700" fill="#fff"/>
<g id="chart" stroke="#222" stroke-width="30">
<g id="r1s1" data-kind="ch" data-top="1000 2013;750 0"><title>Rnd 1, stitch 1: ch</title><use xlink:href="#ch" transform="translate(1000 2013)rotate(30.5)"/></g>
<g id="r1s2" stroke="#1f5fa8"><path d="M1050 2025v275"/><use xlink:href="#sl" x="100" y="200" fill="#1f5fa8"/><text x="500" y="670" font-size="300" font-weight="bold" text-anchor="middle" fill="#222" stroke="none">R&amp;1</text></g>
</g>
</svg>
`
	if d := cmp.Diff(want, svgOf(t, s)); d != "" {
		t.Error(d)
	}
}

// A stitch of a chart, all told, stays small enough for charts of thousands.
func TestSVGStitchSize(t *testing.T) {
	groups := regexp.MustCompile(`<g id="r\d+s\d+".*\n`).FindAllString(svgOf(t, outputtest.Chart(1500)), -1)
	if len(groups) != 1500 {
		t.Fatalf("%d groups of stitches", len(groups))
	}
	for _, g := range groups {
		if len(g) >= 250 {
			t.Errorf("%d bytes: %s", len(g), g)
		}
		if strings.Contains(g, "stroke") {
			t.Errorf("style repeated: %s", g)
		}
	}
}

func TestSVGIsXML(t *testing.T) {
	svg, _, _ := written(t, outputtest.Everything(), 100)
	outputtest.Run(t, "xmllint", "--noout", svg)
}

// Nothing runs and nothing is fetched: the only addresses are the names of the
// two namespaces and of shapes in the document.
func TestSVGStandsAlone(t *testing.T) {
	s := svgOf(t, outputtest.Everything())
	for _, m := range regexp.MustCompile(`(?:href|src|url|xmlns[:a-z]*)\s*[=(]\s*"?([^")]*)`).FindAllStringSubmatch(s, -1) {
		if a := m[1]; a != "http://www.w3.org/2000/svg" && a != "http://www.w3.org/1999/xlink" && !strings.HasPrefix(a, "#") {
			t.Errorf("the document points to %q", a)
		}
	}
	if strings.Contains(s, "<script") || strings.Contains(s, "<style") || strings.Contains(s, " on") && regexp.MustCompile(` on[a-z]+=`).MatchString(s) {
		t.Error("the document has something that runs")
	}
}

// Any text whatever, anywhere in a scene, gives XML that reads back as the
// text that is set.
func FuzzSVGText(f *testing.F) {
	for _, s := range []string{"", "a", `<&>"'`, "]]>", "\x00\x1f\x7f\u0085", "\xff\xfe", "\ufffe\uffff\ufdd0", "\U0001ffff", "  two\n\tlines ", "½ ″ × é", "\u202eright to left", "日本 🧶", "<!-- -->", "&#0;"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s := &scene.Scene{Width: 100, Height: 100, Title: text, Desc: text, Author: text}
		s.Root.Add(
			&scene.Group{Title: text, Data: []scene.Attr{{Name: "kind", Value: text}}},
			&scene.Text{X: 10, Y: 10, Size: 3, Colour: scene.RGB(0), String: text},
		)
		d := xml.NewDecoder(strings.NewReader(svgOf(t, s)))
		var element string
		seen := 0
		for {
			token, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("text %q: %v", text, err)
			}
			switch token := token.(type) {
			case xml.StartElement:
				element = token.Name.Local
			case xml.EndElement:
				element = ""
			case xml.CharData:
				if element == "title" || element == "desc" || element == "text" {
					seen++
					if got, want := string(token), typeface.Clean(text); got != want {
						t.Errorf("%s reads back as %q, not %q", element, got, want)
					}
				}
			}
		}
		if want := 4; typeface.Clean(text) != "" && seen != want {
			t.Errorf("text %q was written %d times, not %d", text, seen, want)
		}
		for _, write := range []func(io.Writer, *scene.Scene) error{PDF, func(w io.Writer, s *scene.Scene) error { return PNG(w, s, 50) }} {
			if err := write(io.Discard, s); err != nil {
				t.Errorf("text %q: %v", text, err)
			}
		}
	})
}
