package main

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"github.com/spf13/cobra"

	"whorl/chart"
	"whorl/chart/output"
	"whorl/chart/scene"
	"whorl/patterns"
	"whorl/patterns/fabric"
)

// pngDensity is how many pixels an inch a PNG has when the file asks for no
// width: what printers ask for.
const pngDensity = 300

// drawings are the kinds of picture that are drawn.
var drawings = []string{"round", "rows", "wedge", "panel", "shaping", "form", "schematic", writeupDraw}

// formats are the kinds of file that a picture is written as.
var formats = []string{"svg", "pdf", "png"}

// bookFormats are those of a write-up.
var bookFormats = []string{"pdf", "md"}

// writeupDraw is the picture that is a document of pages.
const writeupDraw = "writeup"

func drawCommand() *cobra.Command {
	var d drawing
	c := &cobra.Command{
		Use:   "draw FILE",
		Short: "Draw the pictures of a pattern as SVG, PDF and PNG",
		Long: "Draw the pictures that the pattern file asks for, or a chart of every part when it\n" +
			"asks for none, and print the name of every file written. Where the file says post:,\n" +
			"PNGs in those widths and a manifest with alternative texts are written too.\n" +
			"FILE may be - for standard input.",
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			if err := d.known(); err != nil {
				return err
			}
			j, err := load(args[0], c.InOrStdin())
			if err != nil {
				return err
			}
			if j.terms, err = termsNamed(d.terms, j.terms); err != nil {
				return err
			}
			for _, text := range j.faults.Texts() {
				fmt.Fprintln(c.ErrOrStderr(), text)
			}
			if j.unworkable() {
				fmt.Fprintln(c.ErrOrStderr(), "Nothing has been drawn: mend the faults first.")
				return errFaults
			}
			d.stem = strings.TrimSuffix(filepath.Base(args[0]), filepath.Ext(args[0]))
			if args[0] == "-" {
				d.stem = "pattern"
			}
			if err := d.draw(j, c.OutOrStdout(), c.ErrOrStderr()); err != nil {
				return err
			}
			if j.wrong() {
				return errFaults
			}
			return nil
		},
	}
	d.flags(c)
	c.Flags().StringVar(&d.size, "size", "", "draw this size instead of the one in the file")
	c.Flags().StringVar(&d.picture, "picture", "", "draw only the picture of this name; writeup is the whole pattern\nas pages (pdf) or for a post (md)")
	c.Flags().StringVar(&d.terms, "terms", "", "US or UK; those of the file when left out")
	return c
}

// drawing is what the command line asks for.
type drawing struct {
	dir, size, picture, stem, terms string
	formats                         []string
}

// flags are those of every command that writes pictures.
func (d *drawing) flags(c *cobra.Command) {
	c.Flags().StringVarP(&d.dir, "output", "o", ".", "folder to write into; it is made if need be")
	c.Flags().StringSliceVar(&d.formats, "format", formats, "formats to write")
}

// known refuses formats that there are not.
func (d *drawing) known() error {
	for _, f := range d.formats {
		if !slices.Contains(formats, f) && !slices.Contains(bookFormats, f) {
			return fmt.Errorf("%q is not a format; there are svg, pdf, png and, for a write-up, md", f)
		}
	}
	return nil
}

// asks tells whether any of some formats is asked for.
func (d *drawing) asks(some []string) bool {
	return slices.ContainsFunc(d.formats, func(f string) bool { return slices.Contains(some, f) })
}

// draw draws the pictures. Nothing is written until all of them have been
// drawn.
func (d *drawing) draw(j *job, out, errs io.Writer) error {
	pictures, err := d.choose(j)
	if err != nil {
		return err
	}
	var sheets []sheet
	var books []*book
	for _, p := range pictures {
		if p.Draw == writeupDraw {
			made, err := d.books(j, p)
			if err != nil {
				return fmt.Errorf("picture %s: %w", p.Name, err)
			}
			books = append(books, made...)
			continue
		}
		if !slices.Contains(drawings, p.Draw) {
			fmt.Fprintf(errs, "picture %s: this version does not draw %s, so it is left out\n", p.Name, p.Draw)
			continue
		}
		made, err := d.sheets(j, p)
		if err != nil {
			return fmt.Errorf("picture %s: %w", p.Name, err)
		}
		sheets = append(sheets, made...)
	}
	if !(len(sheets) > 0 && d.asks(formats) || len(books) > 0 && d.asks(bookFormats)) {
		return fmt.Errorf("there is nothing to write as %s: pictures are written as svg, pdf and png, a write-up as pdf and md", strings.Join(d.formats, ", "))
	}
	for _, s := range sheets {
		for _, f := range s.findings {
			fmt.Fprintf(errs, "%s: %s\n", s.name, f)
		}
	}
	for _, b := range books {
		for _, f := range b.findings {
			fmt.Fprintf(errs, "%s: %s\n", b.name, f)
		}
	}
	if err := d.write(sheets, out); err != nil {
		return err
	}
	if err := d.post(j.pattern, sheets, out); err != nil {
		return err
	}
	return d.writeBooks(books, out)
}

// write writes pictures in the formats asked for and names every file.
func (d *drawing) write(sheets []sheet, out io.Writer) error {
	if err := os.MkdirAll(d.dir, 0o755); err != nil {
		return plainError(err)
	}
	for _, s := range sheets {
		for _, format := range formats {
			if !slices.Contains(d.formats, format) {
				continue
			}
			name := s.name
			if s.of != nil && format == "pdf" {
				if s.scene != s.of.pages[0] {
					continue // it is written with the first page
				}
				name = s.of.name
			}
			name = filepath.Join(d.dir, name+"."+format)
			if err := writeFile(name, func(w io.Writer) error { return s.write(w, format) }); err != nil {
				return err
			}
			fmt.Fprintln(out, name)
		}
	}
	return nil
}

// choose is the pictures to draw: those of the file, or the usual ones.
func (d *drawing) choose(j *job) ([]patterns.Picture, error) {
	p := j.pattern
	if d.size != "" {
		i, err := sizeNamed(d.size, p.Sizes)
		if err != nil {
			return nil, err
		}
		d.size = p.Sizes[i]
	}
	l := p.Pictures
	if len(l) == 0 {
		l = usualPictures(j)
	}
	if d.picture == "" {
		return l, nil
	}
	var names []string
	for _, pic := range l {
		if pic.Name == d.picture {
			return []patterns.Picture{pic}, nil
		}
		names = append(names, pic.Name)
	}
	if d.picture == writeupDraw {
		return []patterns.Picture{{Name: writeupDraw, Draw: writeupDraw}}, nil
	}
	return nil, fmt.Errorf("there is no picture %q; there are %s", d.picture, strings.Join(names, ", "))
}

// usualPictures are those of a file that asks for none: a stitch chart of every part,
// the measurements of all sizes where a gauge gives any, and of a hat its shaping.
func usualPictures(j *job) []patterns.Picture {
	p, l := j.pattern, chartOfEach(j)
	if slices.ContainsFunc(p.Gauge, func(g patterns.Gauge) bool { return g.Over > 0 }) {
		l = append(l, patterns.Picture{Name: "schematic", Draw: "schematic"})
	}
	if round := slices.IndexFunc(p.Parts, func(part patterns.Part) bool { return !part.Rows }); round >= 0 && len(p.Head) > 0 {
		l = append(l, patterns.Picture{Name: "shaping", Draw: "shaping", Part: p.Parts[round].Name})
	}
	return l
}

// chartOfEach is a stitch chart of every part that has rounds.
func chartOfEach(j *job) (l []patterns.Picture) {
	for k, part := range j.pattern.Parts {
		if j.roundless(k) {
			continue
		}
		draw := "round"
		if part.Rows {
			draw = "rows"
		}
		name := cmp.Or(fileName(part.Name), "chart")
		l = append(l, patterns.Picture{Name: name, Draw: draw, Part: part.Name})
	}
	return l
}

// sheet is one finished picture.
type sheet struct {
	name     string
	scene    *scene.Scene
	width    int // of the PNG, pixels; 0 for what printers ask for
	findings []string
	of       *document // the one that it is a page of; nil: it is one by itself
}

// document is a picture of several pages, which is one PDF.
type document struct {
	name  string
	pages []*scene.Scene
}

// sheets draws one picture of the file: one sheet for each size it is of.
func (d *drawing) sheets(j *job, p patterns.Picture) ([]sheet, error) {
	sizes := p.Sizes
	if p.Draw == "schematic" {
		if d.size != "" {
			sizes = []string{d.size}
		}
		made, err := j.schematic(p, sizes)
		if err != nil {
			return nil, err
		}
		return []sheet{{name: d.stem + "-" + p.Name, scene: made, width: p.Width}}, nil
	}
	switch {
	case d.size != "":
		sizes = []string{d.size}
	case len(sizes) == 0:
		sizes = []string{middleSize(j.pattern.Sizes)}
	}
	var l []sheet
	for _, size := range sizes {
		i := slices.Index(j.pattern.Sizes, size)
		name := d.stem + "-" + p.Name
		if len(sizes) > 1 {
			name += "-" + fileName(size)
		}
		if p.Draw == "round" || p.Draw == "wedge" {
			halves, err := j.halves(p, i, name)
			if err != nil {
				return nil, err
			}
			if len(halves) > 0 {
				l = append(l, halves...)
				continue
			}
		}
		c, o := &chart.Chart{}, chart.Options{}
		var err error
		if draw := charts[p.Draw]; draw != nil {
			o = chartOptions(j, p, i)
			c, err = draw(j.fabrics[i], j.forms[i], o)
		} else {
			c.Scene, err = j.shape(p, i, paperOf(p))
		}
		if err != nil {
			return nil, err
		}
		s := sheet{name: name, scene: c.Scene, width: pngWidth(p), findings: c.Findings}
		var larger []sheet
		if charts[p.Draw] != nil && !c.Legible() {
			var says string
			if larger, says = j.larger(p, i, s.name, c, o); says != "" {
				s.findings = append(s.findings, says)
			}
		}
		l = append(append(l, s), larger...)
	}
	return l, nil
}

// pngWidth is how many pixels wide the PNG of a picture is; 0: what printers ask for.
func pngWidth(p patterns.Picture) int { return cmp.Or(p.Width, p.Pixels[0]) }

func (s *sheet) write(w io.Writer, format string) error {
	switch format {
	case "svg":
		return output.SVG(w, s.scene)
	case "pdf":
		if s.of != nil {
			return output.PDFPages(w, s.of.pages)
		}
		return output.PDF(w, s.scene)
	}
	width := s.width
	if width == 0 {
		width = int(math.Round(s.scene.Width / 25.4 * pngDensity))
	}
	return output.PNG(w, s.scene, width)
}

// fileName is a name as a part of a file's: small letters and figures, with
// hyphens for what lies between them.
func fileName(s string) string {
	apart := func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), apart), "-")
}

// middleSize is the size that is drawn when none is named.
func middleSize(sizes []string) string { return sizes[(len(sizes)-1)/2] }

// partIndex is the part a picture is of: the one it names, or the last one
// worked in the round.
func partIndex(f *fabric.Fabric, name string) int {
	last := 0
	for i, p := range f.Parts {
		if name != "" && p.Name == name {
			return i
		}
		if p.Worked == fabric.InRounds {
			last = i
		}
	}
	return last
}

// credit is the line at the foot of a picture.
func credit(p *patterns.Pattern) string {
	switch {
	case p.Copyright != "":
		return p.Copyright
	case p.Designer != "":
		return "Design: " + p.Designer
	}
	return ""
}
