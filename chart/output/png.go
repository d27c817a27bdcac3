package output

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/png"
	"io"
	"math"

	"github.com/fogleman/gg"
	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// maxPixels bounds a bitmap, whose four bytes a pixel are held in memory.
const maxPixels = 400e6

// PNG writes a scene as a bitmap of exactly pixelWidth pixels across, its
// height rounded to the nearest pixel. It carries its resolution, so that it
// prints at the scene's size.
func PNG(w io.Writer, s *scene.Scene, pixelWidth int) error {
	if err := s.Check(); err != nil {
		return err
	}
	scale := float64(pixelWidth) / s.Width
	height := PixelHeight(s, pixelWidth)
	if pixelWidth < 1 || float64(pixelWidth)*float64(height) > maxPixels {
		return fmt.Errorf("a bitmap of %d × %d pixels cannot be made: give a width from 1 to %d pixels",
			pixelWidth, height, int(math.Sqrt(maxPixels*s.Width/s.Height)))
	}
	b := bitmap{gg.NewContext(pixelWidth, height), scale, float64(height) / s.Height}
	b.SetLineCapRound()
	b.SetLineJoinRound()
	if s.Paper.Opaque {
		b.SetColor(rgba(s.Paper))
		b.Clear()
	}
	paintGroup(b, &s.Root, scene.Plain)

	var out bytes.Buffer
	if err := png.Encode(&out, withPalette(b.Image().(*image.RGBA))); err != nil {
		return err
	}
	_, err := w.Write(withResolution(out.Bytes(), scale))
	return err
}

// PixelHeight is how many pixels high a scene is that is so many across: at
// least one.
func PixelHeight(s *scene.Scene, pixelWidth int) int {
	return max(1, int(math.Round(s.Height*float64(pixelWidth)/s.Width)))
}

// withResolution adds the chunk that says how many pixels make a metre (PNG
// specification, 3rd edition, 11.3.4.3), after the header as it must be.
func withResolution(b []byte, perMM float64) []byte {
	const header = 8 + 25 // the signature and the IHDR chunk
	chunk := binary.BigEndian.AppendUint32(nil, 9)
	chunk = append(chunk, "pHYs"...)
	perMetre := uint32(math.Round(perMM * 1000))
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = append(chunk, 1) // the unit is the metre
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
	return append(append(b[:header:header], chunk...), b[header:]...)
}

// bitmap is a brush for a bitmap: scale pixels to the millimetre across and, as
// its height is a whole number of pixels, down by a hair more or less, so that
// the edges of the page are its edges.
type bitmap struct {
	*gg.Context
	scale, down float64
}

func (b bitmap) fill(d *canvas.Path, c scene.Colour) {
	b.SetColor(rgba(c))
	b.trace(d)
	b.Fill()
}

func (b bitmap) stroke(d *canvas.Path, k scene.Ink) {
	b.SetColor(rgba(k.Stroke))
	b.SetLineWidth(k.Line * b.scale)
	b.SetDash(dashes(k.Dash, b.scale)...)
	b.trace(d)
	b.Stroke()
}

// dashes is dashes and gaps in pixels. The context draws nothing for a dash
// too short to have a direction, where round caps make a dot of it: such a dash
// gets just enough of the gap after it.
func dashes(mm []float64, scale float64) []float64 {
	const shortest = 0.2 // pixels
	px := make([]float64, len(mm))
	for i, length := range mm {
		px[i] += length * scale
		if i%2 == 0 && px[i] < shortest {
			px[i+1] = px[i] - shortest
			px[i] = shortest
		}
		px[i] = max(px[i], 0)
	}
	return px
}

func (b bitmap) text(t *scene.Text) {
	d := typeface.Outline(t.String, t.Size, t.Bold, t.Italic)
	left := share(t.Align) * typeface.Width(t.String, t.Size, t.Bold, t.Italic)
	b.fill(d.Transform(canvas.Identity.Translate(t.X, t.Y).Rotate(t.Angle).Translate(-left, 0)), t.Colour)
}

// flat is how far, in pixels, the straight lines of a curve may leave it.
const flat = 0.05

// trace makes the path the context's, its curves in straight lines.
func (b bitmap) trace(d *canvas.Path) {
	data := withoutArcs(d).Data()
	at := func(i int) canvas.Point { return canvas.Point{X: data[i] * b.scale, Y: data[i+1] * b.down} }
	var from canvas.Point
	for i := 0; i < len(data); i += commandLength(data[i]) {
		end := at(i + commandLength(data[i]) - 3)
		switch data[i] {
		case canvas.MoveToCmd:
			b.MoveTo(end.X, end.Y)
		case canvas.LineToCmd:
			b.LineTo(end.X, end.Y)
		case canvas.QuadToCmd:
			c := at(i + 1)
			b.curve(from, from.Interpolate(c, 2./3), end.Interpolate(c, 2./3), end)
		case canvas.CubeToCmd:
			b.curve(from, at(i+1), at(i+3), end)
		case canvas.CloseCmd:
			b.ClosePath()
		}
		from = end
	}
}

// curve draws a cubic in as many even pieces as keep the lines near it: the middle
// of a piece is off by an eighth of its second derivative at the most, which is six
// times the larger second difference of the points.
func (b bitmap) curve(p, q, r, s canvas.Point) {
	bend := math.Max(p.Sub(q.Mul(2)).Add(r).Length(), q.Sub(r.Mul(2)).Add(s).Length())
	n := math.Max(math.Ceil(math.Sqrt(0.75*bend/flat)), 1)
	for k := 1.0; k < n; k++ {
		t := k / n
		u := 1 - t
		x := p.Mul(u * u * u).Add(q.Mul(3 * u * u * t)).Add(r.Mul(3 * u * t * t)).Add(s.Mul(t * t * t))
		b.LineTo(x.X, x.Y)
	}
	b.LineTo(s.X, s.Y)
}
