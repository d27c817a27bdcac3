package outputtest

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"io"
	"os"
	"path/filepath"
	"testing"

	_ "image/png"
)

// Decode reads a picture file.
func Decode(t testing.TB, file string) image.Image {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	im, _, err := image.Decode(f)
	if err != nil {
		t.Fatalf("%s: %v", filepath.Base(file), err)
	}
	return im
}

// Differing is the part (0 to 1) of the pixels that differ between two
// pictures by more than threshold of 255 in any channel; 1 if their sizes do.
func Differing(a, b image.Image, threshold int) float64 {
	if a.Bounds().Size() != b.Bounds().Size() {
		return 1
	}
	p, q, n := plain(a), plain(b), 0
	for i := 0; i < len(p.Pix); i += 4 {
		for c := i; c < i+4; c++ {
			if d := int(p.Pix[c]) - int(q.Pix[c]); d > threshold || d < -threshold {
				n++
				break
			}
		}
	}
	return float64(n) / float64(len(p.Pix)/4)
}

// plain is a picture with four bytes a pixel.
func plain(im image.Image) *image.RGBA {
	if p, ok := im.(*image.RGBA); ok && p.Rect.Min == (image.Point{}) && p.Stride == 4*p.Rect.Dx() {
		return p
	}
	out := image.NewRGBA(image.Rectangle{Max: im.Bounds().Size()})
	if p, ok := im.(*image.Paletted); ok {
		colours := make([][4]byte, len(p.Palette))
		for i, c := range p.Palette {
			k := color.RGBAModel.Convert(c).(color.RGBA)
			colours[i] = [4]byte{k.R, k.G, k.B, k.A}
		}
		wide := out.Bounds().Dx()
		for i := range len(out.Pix) / 4 {
			copy(out.Pix[4*i:], colours[p.Pix[i/wide*p.Stride+i%wide]][:])
		}
		return out
	}
	draw.Draw(out, out.Bounds(), im, im.Bounds().Min, draw.Src)
	return out
}

// PDF draws a PDF of one page in pixels, with Poppler: as the plain pixels that it
// writes fastest.
func PDF(t testing.TB, file string, wide, high int) image.Image {
	t.Helper()
	stem := filepath.Join(t.TempDir(), "page")
	Run(t, "pdftoppm", "-singlefile", "-scale-to-x", fmt.Sprint(wide), "-scale-to-y", fmt.Sprint(high), file, stem)
	return Decode(t, stem+".ppm")
}

func init() { image.RegisterFormat("ppm", "P6", decodePPM, configPPM) }

// configPPM reads the head of a portable pixmap: "P6", width, height and the largest
// value, parted by white space, and one more character of it (Netpbm, ppm(5)).
func configPPM(r io.Reader) (c image.Config, err error) {
	var most int
	var end byte
	_, err = fmt.Fscanf(r, "P6\n%d %d\n%d%c", &c.Width, &c.Height, &most, &end)
	if err == nil && most != 255 {
		err = fmt.Errorf("a pixmap with values up to %d, not 255", most)
	}
	c.ColorModel = color.RGBAModel
	return c, err
}

func decodePPM(r io.Reader) (image.Image, error) {
	c, err := configPPM(r)
	if err != nil {
		return nil, err
	}
	im := image.NewRGBA(image.Rect(0, 0, c.Width, c.Height))
	row := make([]byte, 3*c.Width)
	for y := range c.Height {
		if _, err := io.ReadFull(r, row); err != nil {
			return nil, err
		}
		to := im.Pix[y*im.Stride:]
		for x := range c.Width {
			to[4*x], to[4*x+1], to[4*x+2], to[4*x+3] = row[3*x], row[3*x+1], row[3*x+2], 255
		}
	}
	return im, nil
}
