package output

import (
	"bytes"
	"fmt"
	"image"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"whorl/chart/output/outputtest"
	"whorl/chart/scene"
)

// written is a scene in all three formats, in files of a temporary folder.
func written(t *testing.T, s *scene.Scene, pixelWidth int) (svg, pdf, png string) {
	t.Helper()
	dir := t.TempDir()
	file := func(name string, write func(io.Writer) error) string {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	svg = file("s.svg", func(w io.Writer) error { return SVG(w, s) })
	pdf = file("s.pdf", func(w io.Writer) error { return PDF(w, s) })
	png = file("s.png", func(w io.Writer) error { return PNG(w, s, pixelWidth) })
	return svg, pdf, png
}

// The three outputs are one picture: what two independent programs make of the
// SVG and the PDF is the PNG, but for the way each smooths edges.
func TestOutputsAgree(t *testing.T) {
	for _, s := range []*scene.Scene{outputtest.Everything(), outputtest.Chart(300)} {
		pixelWidth := int(12 * s.Width) // about 300 dots an inch, as printers ask for
		svg, pdf, png := written(t, s, pixelWidth)
		ours := outputtest.Decode(t, png)
		size := ours.Bounds().Size()
		compare := func(t *testing.T, theirs image.Image) {
			t.Helper()
			if d := outputtest.Differing(ours, theirs, 32); d >= 0.01 {
				t.Errorf("%q: %.2f %% of pixels differ from the PNG", s.Title, 100*d)
			} else {
				t.Logf("%q: %.3f %% of pixels differ from the PNG", s.Title, 100*d)
			}
		}
		t.Run("svg", func(t *testing.T) {
			outputtest.Run(t, "rsvg-convert", "-w", fmt.Sprint(size.X), "-h", fmt.Sprint(size.Y), "-o", svg+".png", svg)
			compare(t, outputtest.Decode(t, svg+".png"))
		})
		t.Run("pdf", func(t *testing.T) {
			compare(t, outputtest.PDF(t, pdf, size.X, size.Y))
		})
	}
}

// The comparison above can fail: a change that a reader would see is seen.
func TestOutputsAgreeIsSharp(t *testing.T) {
	s := outputtest.Everything()
	_, _, before := written(t, s, 1280)
	for _, n := range s.Root.Nodes {
		if g, ok := n.(*scene.Group); ok && g.ID == "fills" {
			g.Style.Fill = new(scene.RGB(0xd0c8a8))
		}
	}
	_, _, after := written(t, s, 1280)
	if d := outputtest.Differing(outputtest.Decode(t, before), outputtest.Decode(t, after), 32); d < 0.01 {
		t.Errorf("a changed fill changes only %.3f %% of pixels", 100*d)
	}
}

// The same scene gives the same bytes, whatever the clock says: a year passes
// between the two runs, and the second is in another zone.
func TestSameBytesEveryTime(t *testing.T) {
	zone := time.Local
	defer func() { time.Local = zone }()
	synctest.Test(t, func(t *testing.T) {
		for name, write := range map[string]func(io.Writer, *scene.Scene) error{
			"SVG": SVG, "PDF": PDF,
			"PNG": func(w io.Writer, s *scene.Scene) error { return PNG(w, s, 640) },
		} {
			var a, b bytes.Buffer
			time.Local = time.UTC
			if err := write(&a, outputtest.Everything()); err != nil {
				t.Fatal(err)
			}
			time.Sleep(365 * 24 * time.Hour)
			time.Local = time.FixedZone("", 5*60*60+30*60)
			if err := write(&b, outputtest.Everything()); err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(a.Bytes(), b.Bytes()) {
				t.Errorf("%s: two runs differ", name)
			}
		}
	})
}

// Pictures may be written at the same time.
func TestTogether(t *testing.T) {
	var want bytes.Buffer
	if err := PDF(&want, outputtest.Everything()); err != nil {
		t.Fatal(err)
	}
	var group sync.WaitGroup
	for range 4 {
		group.Go(func() {
			var got bytes.Buffer
			if err := PDF(&got, outputtest.Everything()); err != nil || !bytes.Equal(got.Bytes(), want.Bytes()) {
				t.Errorf("written beside others, the PDF is different (%v)", err)
			}
		})
	}
	group.Wait()
}

// What cannot be drawn is refused by every output alike, and nothing written.
func TestRefused(t *testing.T) {
	s := outputtest.Everything()
	s.Root.Add(&scene.Group{ID: "card"})
	for name, write := range map[string]func(io.Writer, *scene.Scene) error{
		"SVG": SVG, "PDF": PDF,
		"PNG": func(w io.Writer, s *scene.Scene) error { return PNG(w, s, 640) },
	} {
		var b bytes.Buffer
		err := write(&b, s)
		if err == nil || !strings.Contains(err.Error(), `"card"`) || b.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes written", name, err, b.Len())
		}
	}
}

// A scene with nothing in it is still a page.
func TestEmpty(t *testing.T) {
	svg, pdf, png := written(t, &scene.Scene{Width: 10, Height: 5}, 100)
	for _, file := range []string{svg, pdf, png} {
		if b, err := os.ReadFile(file); err != nil || len(b) == 0 {
			t.Errorf("%s: %d bytes, %v", filepath.Base(file), len(b), err)
		}
	}
	if d := outputtest.Decode(t, png); d.Bounds().Dy() != 50 {
		t.Errorf("the bitmap is %v", d.Bounds())
	}
}
