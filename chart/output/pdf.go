package output

import (
	"bytes"
	"errors"
	"image/color"
	"io"
	"math"
	"slices"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/pdf"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// PDF writes a scene as a document of one page of the scene's size. Strokes
// are strokes, text is text, and the letters used are embedded.
func PDF(w io.Writer, s *scene.Scene) error {
	return PDFPages(w, []*scene.Scene{s})
}

// PDFPages writes scenes as a document of a page each, in their order, each
// page of its scene's size. The document has the first scene's properties, and
// the bookmarks, in their order, as its outline.
func PDFPages(w io.Writer, pages []*scene.Scene, marks ...scene.Bookmark) error {
	if len(pages) == 0 {
		return errors.New("a PDF needs a page: there is no picture to write")
	}
	var b bytes.Buffer
	var doc *pdf.PDF
	fonts := fonts{}
	for i, s := range pages {
		if err := s.Check(); err != nil {
			return err
		}
		if i == 0 {
			doc = pdf.New(&b, s.Width, s.Height, nil)
		} else {
			doc.NewPage(s.Width, s.Height)
		}
		paint(page{doc, fonts, s.Height}, s)
	}
	if err := doc.Close(); err != nil {
		return err
	}
	whole, err := finishPDF(b.Bytes(), pages, marks)
	if err != nil {
		return err
	}
	_, err = w.Write(whole)
	return err
}

// page is a brush for one page of a PDF, whose y is up.
type page struct {
	doc    *pdf.PDF
	fonts  fonts
	height float64
}

// fonts is a document's own copies of the fonts it uses: the renderer, cutting
// a font down to the letters used, changes these tables of the original.
type fonts map[*canvas.Font]*canvas.Font

func (f fonts) own(shared *canvas.Font) *canvas.Font {
	if f[shared] == nil {
		font, sfnt := *shared, *shared.SFNT
		head, hhea, maxp, os2 := *sfnt.Head, *sfnt.Hhea, *sfnt.Maxp, *sfnt.OS2
		sfnt.Head, sfnt.Hhea, sfnt.Maxp, sfnt.OS2 = &head, &hhea, &maxp, &os2
		font.SFNT = &sfnt
		f[shared] = &font
	}
	return f[shared]
}

func (p page) fill(d *canvas.Path, c scene.Colour) {
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{Color: rgba(c)}
	p.doc.RenderPath(p.flip(d), style, canvas.Identity)
}

func (p page) stroke(d *canvas.Path, k scene.Ink) {
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{}
	style.Stroke = canvas.Paint{Color: rgba(k.Stroke)}
	style.StrokeWidth = k.Line
	style.StrokeCapper = canvas.RoundCap
	style.StrokeJoiner = canvas.RoundJoin
	for _, length := range k.Dash {
		// The renderer takes dashes as multiples of the line's width.
		style.Dashes = append(style.Dashes, length/k.Line)
	}
	p.doc.RenderPath(p.flip(d), style, canvas.Identity)
}

func (p page) text(t *scene.Text) {
	line := typeface.Line(t.String, t.Size, t.Bold, t.Italic, rgba(t.Colour))
	left := share(t.Align) * typeface.Width(t.String, t.Size, t.Bold, t.Italic)
	var face *canvas.FontFace // the spans of a line have one face
	line.WalkSpans(func(_, _ float64, span canvas.TextSpan) { face = span.Face })
	if face == nil {
		return
	}
	face.Font = p.fonts.own(face.Font)
	p.doc.RenderText(line, canvas.Identity.Translate(t.X, p.height-t.Y).Rotate(-t.Angle).Translate(-left, 0))
}

// flip is a copy of the path with y up and its points rounded to the
// thousandth of a millimetre, for the renderer writes every figure it is given.
func (p page) flip(d *canvas.Path) *canvas.Path {
	data := slices.Clone(withoutArcs(d).Data())
	for i := 0; i < len(data); i += commandLength(data[i]) {
		for j := i + 1; j < i+commandLength(data[i])-1; j += 2 {
			data[j] = math.Round(data[j]*1e3) / 1e3
			data[j+1] = math.Round((p.height-data[j+1])*1e3) / 1e3
		}
	}
	return canvas.NewPathFromData(data)
}

func rgba(c scene.Colour) color.RGBA {
	if !c.Opaque {
		return color.RGBA{}
	}
	return color.RGBA{c.R, c.G, c.B, 255}
}
