package output

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"whorl/chart/output/outputtest"
	"whorl/chart/scene"
)

// The outline has its entries at their levels, in order, and each leads to its
// page.
func TestPDFOutline(t *testing.T) {
	page := func() *scene.Scene { return &scene.Scene{Width: 210, Height: 297, Title: "A book"} }
	pages := []*scene.Scene{page(), page(), page()}
	marks := []scene.Bookmark{
		{Title: "Materials", Level: 1, Page: 0, Y: 40},
		{Title: "Instructions (all)", Level: 1, Page: 0, Y: 200},
		{Title: "Brim – Ä", Level: 2, Page: 1, Y: 20},
		{Title: "Body", Level: 2, Page: 1, Y: 100},
		{Title: "Chart 1", Level: 3, Page: 2, Y: 20},
		{Title: "Schematic", Level: 1, Page: 2, Y: 150},
	}
	var b bytes.Buffer
	if err := PDFPages(&b, pages, marks...); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "book.pdf")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	outputtest.Run(t, "qpdf", "--check", file)
	html := outputtest.Run(t, "pdftohtml", "-xml", "-stdout", file)
	_, outline, _ := strings.Cut(html, "<outline>")
	got := regexp.MustCompile(`\s*\n\s*`).ReplaceAllString("<outline>"+outline, "")
	const want = `<outline><item page="1">Materials</item><item page="1">Instructions (all)</item>` +
		`<outline><item page="2">Brim – Ä</item><item page="2">Body</item><outline><item page="3">Chart 1</item></outline></outline>` +
		`<item page="3">Schematic</item></outline></pdf2xml>`
	if got != want {
		t.Errorf("the outline is\n%s\nnot\n%s", got, want)
	}
}

// A bookmark to a page that there is not is refused; one too deep lies under the
// one before it.
func TestPDFOutlineEdges(t *testing.T) {
	pages := []*scene.Scene{{Width: 100, Height: 100}}
	if err := PDFPages(&bytes.Buffer{}, pages, scene.Bookmark{Title: "x", Level: 1, Page: 1}); err == nil {
		t.Error("a bookmark to page 2 of 1 was written")
	}
	items := linked([]scene.Bookmark{{Level: 3}, {Level: 3}, {Level: 0}}, 10)
	if items[1].parent != 10 || items[2].parent != 11 || items[3].parent != 10 || items[0].descendants != 3 || items[1].after != 13 {
		t.Errorf("%+v", items)
	}
}
