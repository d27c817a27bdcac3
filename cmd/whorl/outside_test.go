package main

import (
	"fmt"
	"image"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"whorl/chart/output/outputtest"
)

// seen are pictures of the gallery that programs from outside look at, one of each
// sort.
var seen = []string{"bulrush-hat-hat", "ripple-a-scarf", "hexagon-a-chart", "bulrush-panel", "bulrush-hat-schematic", "lantern-hill-cap-shaping", "symbols-us"}

const (
	seenWidth = 1200 // pixels
	// Two renderers set the edges of strokes and letters differently: as many of
	// the pixels may differ by more than a quarter of the range. Where a line is
	// missing or out of place, more do.
	mostDiffering, quarter = 0.006, 64
)

// gallery is a picture's file.
func gallery(name string) string {
	return filepath.Join("..", "..", "testdata", "gallery", name+".svg")
}

// reference draws a picture with librsvg, so many pixels tall, or 0 for as tall as it
// comes out.
func reference(t *testing.T, name string, tall int) image.Image {
	file := filepath.Join(t.TempDir(), name+"-rsvg.png")
	args := []string{"-w", fmt.Sprint(seenWidth), "-o", file, gallery(name)}
	if tall > 0 {
		args = append(args, "-h", fmt.Sprint(tall))
	}
	outputtest.Run(t, "rsvg-convert", args...)
	return outputtest.Decode(t, file)
}

// alike holds a picture that a program has drawn against librsvg's. One that stretches
// pictures to whole pixels is held against one that is as tall.
func alike(t *testing.T, by, name, file string, stretches bool) {
	t.Helper()
	drawn, tall := outputtest.Decode(t, file), 0
	if stretches {
		tall = drawn.Bounds().Dy()
	}
	want := reference(t, name, tall)
	// A part of a pixel at the foot is a whole one for some.
	a, b := drawn.Bounds(), want.Bounds()
	if a.Dx() != b.Dx() || a.Dy() < b.Dy()-1 || a.Dy() > b.Dy()+1 {
		t.Fatalf("%s: %s draws %v pixels, not %v", name, by, a.Size(), b.Size())
	}
	common := a.Intersect(b)
	cut := func(im image.Image) image.Image {
		return im.(interface {
			SubImage(image.Rectangle) image.Image
		}).SubImage(common)
	}
	d := outputtest.Differing(cut(drawn), cut(want), quarter)
	if d > mostDiffering {
		t.Errorf("%s: %s draws more than %.1f %% of the pixels otherwise", name, by, 100*mostDiffering)
	}
	t.Logf("%s: %s draws %.2f %% of the pixels otherwise", name, by, 100*d)
}

var (
	groupIDs = regexp.MustCompile(`<g id="([^"]+)"`)
	box      = regexp.MustCompile(`viewBox="0 0 ([0-9]+) ([0-9]+)"`)
	titles   = regexp.MustCompile(`<title[ >]`)
)

// resvg draws every picture as librsvg does, and finds every named group in it.
func TestResvg(t *testing.T) {
	dir := outputtest.Outside(t)
	t.Setenv("WHORL_OUTSIDE", dir)
	out := t.TempDir()
	args := []string{filepath.Join("..", "..", ".ci", "outside", "resvg.cjs"), fmt.Sprint(seenWidth)}
	for _, name := range seen {
		args = append(args, gallery(name), filepath.Join(out, name+".png"))
	}
	outputtest.Run(t, "node", args...)
	for _, name := range seen {
		alike(t, "resvg", name, filepath.Join(out, name+".png"), true)
		understood, err := os.ReadFile(filepath.Join(out, name+".png.svg"))
		if err != nil {
			t.Fatal(err)
		}
		keeps(t, "resvg", name, string(understood))
	}
}

// keeps reports the named groups of a picture that a program has lost.
func keeps(t *testing.T, by, name, understood string) {
	t.Helper()
	svg, err := os.ReadFile(gallery(name))
	if err != nil {
		t.Fatal(err)
	}
	groups := groupIDs.FindAllStringSubmatch(string(svg), -1)
	for _, g := range groups {
		if !strings.Contains(understood, `id="`+g[1]+`"`) {
			t.Errorf("%s: %s has lost group %s, one of %d", name, by, g[1], len(groups))
			return
		}
	}
}

// Chromium draws the pictures as librsvg does.
func TestChromiumDraws(t *testing.T) {
	outputtest.Outside(t) // as slow as the others, and asked for with them
	for _, name := range seen[:3] {
		svg, err := os.ReadFile(gallery(name))
		if err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		page := filepath.Join(dir, "page.html")
		words := fmt.Sprintf("<!DOCTYPE html><style>body{margin:0}svg{display:block;width:%dpx;height:auto}</style>%s", seenWidth, svg)
		if err := os.WriteFile(page, []byte(words), 0o644); err != nil {
			t.Fatal(err)
		}
		size := box.FindSubmatch(svg)
		wide, _ := strconv.Atoi(string(size[1]))
		tall, _ := strconv.Atoi(string(size[2]))
		shot := filepath.Join(dir, "shot.png")
		chromium(t, "--hide-scrollbars", fmt.Sprintf("--window-size=%d,%d", seenWidth, seenWidth*tall/wide), "--screenshot="+shot, "file://"+page)
		alike(t, "Chromium", name, shot, false)
	}
}

func chromium(t *testing.T, args ...string) string {
	t.Helper()
	return outputtest.Run(t, "chromium", append([]string{"--headless", "--no-sandbox", "--disable-gpu", "--user-data-dir=" + t.TempDir()}, args...)...)
}

// found ends what axe says of a page.
var found = regexp.MustCompile(`violations: (\[.*\]), passes: ([0-9]+)</pre>`)

// A web page that has a picture in it keeps its groups and titles, and axe finds
// nothing on it that keeps anyone from using it.
func TestWebPage(t *testing.T) {
	dir := outputtest.Outside(t)
	axe, err := os.ReadFile(filepath.Join(dir, "node_modules", "axe-core", "axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range seen[:5] {
		svg, err := os.ReadFile(gallery(name))
		if err != nil {
			t.Fatal(err)
		}
		page := filepath.Join(t.TempDir(), "page.html")
		words := "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>A pattern</title></head><body><main><h1>A pattern</h1>\n" +
			string(svg) + "</main>\n<script>" + string(axe) + "</script>\n<script>axe.run().then(r => {\n" +
			"const p = document.createElement('pre');\n" +
			"p.textContent = 'violations: ' + JSON.stringify(r.violations.map(v => v.id + ': ' + v.help + ' ' + v.nodes[0].html.slice(0, 200))) + ', passes: ' + r.passes.length;\n" +
			"document.body.replaceChildren(document.querySelector('main'), p) })</script></body></html>\n"
		if err := os.WriteFile(page, []byte(words), 0o644); err != nil {
			t.Fatal(err)
		}
		dom := chromium(t, "--virtual-time-budget=60000", "--dump-dom", "file://"+page)
		said := found.FindStringSubmatch(dom)
		switch {
		case said == nil:
			t.Errorf("%s: axe has not come to an end", name)
		case said[1] != "[]" || said[2] == "0":
			t.Errorf("%s: axe finds %s", name, said[0])
		}
		keeps(t, "Chromium", name, dom)
		if got, want := len(titles.FindAllString(dom, -1)), len(titles.FindAllString(string(svg), -1))+1; got != want {
			t.Errorf("%s: %d titles, not %d", name, got, want)
		}
	}
}
