package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"whorl/chart"
	"whorl/chart/output/outputtest"
	"whorl/patterns/fabric"
)

// Every part worked in the round, in every size of every example, is drawn
// without overlaps, with every leg on its place.
func TestExamplesAreDrawnCleanly(t *testing.T) {
	t.Parallel()
	for _, file := range examples(t) {
		j, err := load(file, nil)
		if err != nil || j.wrong() {
			t.Fatal(file, err, j.faults)
		}
		for i, f := range j.fabrics {
			for k, part := range f.Parts {
				if part.Worked != fabric.InRounds {
					continue
				}
				c, err := chart.Round(f, j.forms[i], chart.Options{Title: j.pattern.Title, Part: k})
				if err != nil {
					t.Fatal(err)
				}
				r := chart.Audit(c.Scene)
				where := fmt.Sprintf("%s, %s, %s", filepath.Base(file), f.Size, part.Name)
				if len(r.Overlaps) > 0 || len(r.Texts) > 0 || len(r.Astray) > 0 {
					t.Errorf("%s: overlaps %v, texts %v, legs %v", where, r.Overlaps, r.Texts, r.Astray)
				}
				if r.Turn > 0.1 {
					t.Errorf("%s: repeats differ by %.2f°", where, r.Turn)
				}
			}
		}
	}
}

// drawn is what the SVG says of one stitch, read from the file by itself, in its
// units of a hundredth of a millimetre.
type drawn struct {
	id        string
	counted   bool
	top, base [][2]float64
}

func readSVG(t *testing.T, file string) (l []drawn, bytes int) {
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	d := xml.NewDecoder(strings.NewReader(string(data)))
	for {
		tok, err := d.Token()
		if err != nil {
			return l, len(data)
		}
		e, ok := tok.(xml.StartElement)
		if !ok || e.Name.Local != "g" {
			continue
		}
		var s drawn
		for _, a := range e.Attr {
			switch a.Name.Local {
			case "id":
				s.id = a.Value
			case "data-stitch":
				s.counted = true
			case "data-top":
				s.top = points(t, a.Value)
			case "data-base":
				s.base = points(t, a.Value)
			}
		}
		if s.top != nil || s.base != nil {
			l = append(l, s)
		}
	}
}

func points(t *testing.T, s string) [][2]float64 {
	var l [][2]float64
	for _, p := range strings.Split(s, ";") {
		x, y, _ := strings.Cut(p, " ")
		a, err1 := strconv.ParseFloat(x, 64)
		b, err2 := strconv.ParseFloat(y, 64)
		if err1 != nil || err2 != nil {
			t.Fatalf("%q is no point", p)
		}
		l = append(l, [2]float64{a, b})
	}
	return l
}

// drawnFile is one example with the files that draw has written of it.
type drawnFile struct {
	pattern, folder string
	names           []string
}

// drawExample draws an example into a folder in every format.
func drawExample(file, folder string) (drawnFile, error) {
	var out, errs bytes.Buffer
	if status := run([]string{"draw", file, "-o", folder}, strings.NewReader(""), &out, &errs); status != statusDone {
		return drawnFile{}, errors.New(errs.String())
	}
	return drawnFile{file, folder, strings.Fields(out.String())}, nil
}

// drawnOnce are all examples, drawn the first time that a test asks for them, each in
// its own folder in kept.
var drawnOnce = sync.OnceValues(func() (all []drawnFile, err error) {
	files, err := filepath.Glob(examplesGlob)
	for _, file := range files {
		d, err := drawExample(file, filepath.Join(kept, filepath.Base(file)))
		if err != nil {
			return nil, err
		}
		all = append(all, d)
	}
	return all, err
})

// drawnExamples are the examples as they have been drawn for all tests: none writes
// into their folders.
func drawnExamples(t *testing.T) []drawnFile {
	t.Helper()
	all, err := drawnOnce()
	if err != nil || len(all) == 0 {
		t.Fatal("the examples are not drawn:", err)
	}
	return all
}

// drawnPictures are the files of the examples' pictures. What is drawn again for a post
// is left out.
func drawnPictures(t *testing.T) (names []string) {
	for _, d := range drawnExamples(t) {
		for _, name := range d.names {
			if _, err := os.Stat(strings.TrimSuffix(name, filepath.Ext(name)) + ".svg"); err == nil {
				names = append(names, name)
			}
		}
	}
	return names
}

// isChart tells the examples' charts from their shaping sheets, forms and schematics.
func isChart(name string) bool {
	stem := strings.TrimSuffix(name, filepath.Ext(name))
	return !strings.HasSuffix(stem, "-shaping") && !strings.HasSuffix(stem, "-form") && !strings.HasSuffix(stem, "-schematic")
}

// From the SVG's own data, with nothing of the program's: every leg ends on the
// top of something, to 0.05 mm.
func TestLegsEndOnTheirPlaces(t *testing.T) {
	for _, name := range drawnPictures(t) {
		if filepath.Ext(name) != ".svg" || !isChart(name) {
			continue
		}
		stitches, _ := readSVG(t, name)
		legs := 0
		for _, s := range stitches {
			for _, b := range s.base {
				legs++
				near := math.Inf(1)
				for _, o := range stitches {
					for _, p := range o.top {
						near = math.Min(near, math.Hypot(p[0]-b[0], p[1]-b[1]))
					}
				}
				if near > 5 {
					t.Errorf("%s: a leg of %s is %.2f mm from the nearest place", filepath.Base(name), s.id, near/100)
				}
			}
		}
		if legs < 100 {
			t.Errorf("%s: only %d legs", name, legs)
		}
	}
}

// Every chart takes less than 250 bytes for each stitch that the designer
// counts, everything else in it included.
func TestSVGSize(t *testing.T) {
	for _, name := range drawnPictures(t) {
		if filepath.Ext(name) != ".svg" || !isChart(name) {
			continue
		}
		stitches, bytes := readSVG(t, name)
		n := 0
		for _, s := range stitches {
			if s.counted {
				n++
			}
		}
		if each := float64(bytes) / float64(n); n == 0 || each >= 250 {
			t.Errorf("%s: %d bytes for %d stitches, %.0f each", filepath.Base(name), bytes, n, each)
		} else {
			t.Logf("%s: %.0f bytes a stitch", filepath.Base(name), each)
		}
	}
}

// Programs from outside accept what is written, and see the same picture in
// all three formats.
func TestOutsidePrograms(t *testing.T) {
	for _, tool := range []string{"xmllint", "rsvg-convert", "qpdf", "pdffonts", "pdftoppm"} {
		outputtest.Tool(t, tool)
	}
	for _, name := range drawnPictures(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			t.Parallel()
			acceptedOutside(t, name)
		})
	}
}

// acceptedOutside holds a file, and a PNG with what other programs make of its
// companions, against the programs from outside.
func acceptedOutside(t *testing.T, name string) {
	stem := strings.TrimSuffix(name, filepath.Ext(name))
	switch filepath.Ext(name) {
	case ".svg":
		outputtest.Run(t, "xmllint", "--noout", name)
	case ".pdf":
		outputtest.Run(t, "qpdf", "--check", name)
		for i, line := range strings.Split(strings.TrimSpace(outputtest.Run(t, "pdffonts", name)), "\n") {
			if i >= 2 && !strings.Contains(line, "yes yes yes") {
				t.Error(line)
			}
		}
	case ".png":
		ours := outputtest.Decode(t, name)
		size := ours.Bounds().Size()
		most := 0.01
		if !isChart(name) {
			most = 0.015 // text and thin lines all over, whose edges differ
		}
		fromSVG := filepath.Join(t.TempDir(), "svg.png")
		outputtest.Run(t, "rsvg-convert", "-w", fmt.Sprint(size.X), "-h", fmt.Sprint(size.Y), "-o", fromSVG, stem+".svg")
		if d := outputtest.Differing(ours, outputtest.Decode(t, fromSVG), 32); d >= most {
			t.Errorf("%.2f %% of the SVG's pixels differ", 100*d)
		}
		if d := outputtest.Differing(ours, outputtest.PDF(t, stem+".pdf", size.X, size.Y), 32); d >= most {
			t.Errorf("%.2f %% of the PDF's pixels differ", 100*d)
		}
	}
}
