package output

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"whorl/chart/output/outputtest"
	"whorl/chart/scene"
)

func pdfOf(t testing.TB, pages ...*scene.Scene) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := PDFPages(&b, pages); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func pdfOnDisk(t *testing.T, pages ...*scene.Scene) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "s.pdf")
	if err := os.WriteFile(path, pdfOf(t, pages...), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestPDFIsSound(t *testing.T) {
	outputtest.Run(t, "qpdf", "--check", pdfOnDisk(t, outputtest.Everything(), outputtest.Chart(100)))
}

// Every font is embedded, and only the letters used; the text can be found.
func TestPDFFonts(t *testing.T) {
	file := pdfOnDisk(t, outputtest.Everything(), outputtest.Chart(100))
	fonts := strings.Split(strings.TrimSpace(outputtest.Run(t, "pdffonts", file)), "\n")[2:]
	if len(fonts) != 4 {
		t.Errorf("%d fonts, not 4", len(fonts))
	}
	for _, f := range fonts {
		if !regexp.MustCompile(`LiberationSans.* yes yes yes `).MatchString(f) {
			t.Errorf("not embedded, cut down and readable: %s", f)
		}
	}
	text := outputtest.Run(t, "pdftotext", file, "-")
	for _, want := range []string{"46 (51, 56) cm × 18½″ – 20¼″", "AV To Wave. Rounds 1–9: 72 hdc", "café", "bold italic", "upwards 12.5"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in the document's text:\n%s", want, text)
		}
	}
}

// Every font's checksums are right, and no two fonts have one name.
func TestPDFFontsAreWhole(t *testing.T) {
	f, err := takeApart(pdfOf(t, outputtest.Everything()))
	if err != nil {
		t.Fatal(err)
	}
	names := map[string]bool{}
	for _, object := range f.objects {
		m := fontFile.FindSubmatch(object)
		if m == nil {
			continue
		}
		names[string(regexp.MustCompile(`/FontName/([A-Z]{6}\+\w+)`).FindSubmatch(object)[1])] = true
		var n int
		fmt.Sscan(string(m[1]), &n)
		font, err := inflate(f.body(n))
		if err != nil {
			t.Fatal(err)
		}
		// OpenType specification, "head": with its adjustment in it, the sum
		// of the whole font is 0xB1B0AFBA.
		if sum := checksum(font); sum != 0xB1B0AFBA {
			t.Errorf("a font's words add up to %08X", sum)
		}
	}
	if len(names) != 4 || names["SUBSET+LiberationSans"] {
		t.Errorf("fonts are named %v", names)
	}
}

// A page is as large as its scene, to a ten-thousandth of a point.
func TestPDFPageSizes(t *testing.T) {
	b := pdfOf(t, &scene.Scene{Width: 210, Height: 297}, &scene.Scene{Width: 215.9, Height: 279.4})
	var got []string
	for _, m := range regexp.MustCompile(`/MediaBox\[0 0 ([\d.]+) ([\d.]+)\]`).FindAllSubmatch(b, -1) {
		var w, h float64
		fmt.Sscan(string(m[1]), &w)
		fmt.Sscan(string(m[2]), &h)
		got = append(got, fmt.Sprintf("%.4f × %.4f", w/72*25.4, h/72*25.4))
	}
	if want := "[210.0000 × 297.0000 215.9000 × 279.4000]"; fmt.Sprint(got) != want {
		t.Errorf("pages are %v mm, not %s", got, want)
	}
}

func TestPDFProperties(t *testing.T) {
	s := outputtest.Everything()
	s.Author = `A. Nyström (č) \ Co.` // č has a byte that in a plain string is a line end
	info := outputtest.Run(t, "pdfinfo", pdfOnDisk(t, s))
	for _, want := range []string{
		`Title: +Test "card" <1> & more – ½ size\n`,
		`Subject: +Strokes, fills, dashes, shapes and text in every way they can be drawn.\n`,
		`Author: +A. Nyström \(č\) \\ Co.\n`,
		`Pages: +1\n`,
	} {
		if !regexp.MustCompile(want).MatchString(info) {
			t.Errorf("%s is not in the properties:\n%s", want, info)
		}
	}
	if regexp.MustCompile(`Date|D:\d{8}`).Match(pdfOf(t, s)) {
		t.Error("the document has a date in it")
	}
}

func TestPDFNeedsAPage(t *testing.T) {
	if err := PDFPages(&bytes.Buffer{}, nil); err == nil {
		t.Error("a document of no pages was written")
	}
}

// An end that is not the renderer's is refused, not guessed at.
func TestFinishPDFRefuses(t *testing.T) {
	for _, b := range []string{"", "%PDF-1.7\n", "xref\n0 1\nstartxref\n0\n%%EOF\n", "startxref\n99\n%%EOF\n", "xref\n0 4\n\n\n\n\nstartxref\n0\n%%EOF\n"} {
		if _, err := finishPDF([]byte(b), []*scene.Scene{{}}, nil); err == nil {
			t.Errorf("%q was taken for a rendered document", b)
		}
	}
}

// A chart's PDF is small: its streams are compressed.
func TestPDFSize(t *testing.T) {
	const stitches = 1500
	if n := len(pdfOf(t, outputtest.Chart(stitches))); n > 60*stitches {
		t.Errorf("%d bytes for %d stitches", n, stitches)
	}
}
