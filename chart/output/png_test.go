package output

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/png"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"whorl/chart/output/outputtest"
	"whorl/chart/scene"
)

func pngOf(t testing.TB, s *scene.Scene, width int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := PNG(&b, s, width); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func pixels(t testing.TB, s *scene.Scene, width int) image.Image {
	t.Helper()
	im, err := png.Decode(bytes.NewReader(pngOf(t, s, width)))
	if err != nil {
		t.Fatal(err)
	}
	return im
}

func TestPNGSizeAndResolution(t *testing.T) {
	b := pngOf(t, &scene.Scene{Width: 210, Height: 297}, 2480) // A4 at 300 dpi
	c, err := png.DecodeConfig(bytes.NewReader(b))
	if err != nil || c.Width != 2480 || c.Height != 3507 { // 2480 × 297/210 = 3507.43
		t.Errorf("%d × %d pixels, %v", c.Width, c.Height, err)
	}
	i := bytes.Index(b, []byte("pHYs"))
	if i < 0 || i > bytes.Index(b, []byte("IDAT")) {
		t.Fatal("no pHYs chunk before the data")
	}
	x, y, unit := binary.BigEndian.Uint32(b[i+4:]), binary.BigEndian.Uint32(b[i+8:]), b[i+12]
	if x != 11810 || y != 11810 || unit != 1 { // 2480 / 0.210 m = 11809.5
		t.Errorf("%d × %d pixels to the unit %d", x, y, unit)
	}
}

func TestPNGPaper(t *testing.T) {
	red := scene.RGB(0xff0000)
	s := &scene.Scene{Width: 10, Height: 10}
	s.Root.Style.Fill = &red
	s.Root.Add(&scene.Path{D: canvas.Rectangle(4, 4).Translate(5, 5)})
	is := func(im image.Image, x, y int, want color.Color) {
		t.Helper()
		r, g, b, a := im.At(x, y).RGBA()
		wr, wg, wb, wa := want.RGBA()
		if r != wr || g != wg || b != wb || a != wa {
			t.Errorf("pixel %d, %d is %v, not %v", x, y, im.At(x, y), want)
		}
	}
	is(pixels(t, s, 100), 20, 20, color.Transparent)
	is(pixels(t, s, 100), 70, 70, color.RGBA{255, 0, 0, 255})
	s.Paper = scene.RGB(0xffffff)
	is(pixels(t, s, 100), 20, 20, color.White)
	is(pixels(t, s, 100), 70, 70, color.RGBA{255, 0, 0, 255})
}

// The page fills the bitmap where its height is no whole number of pixels: what
// lies half way down the page lies half way down the bitmap.
func TestPNGFillsItsHeight(t *testing.T) {
	red := scene.RGB(0xff0000)
	s := &scene.Scene{Width: 10, Height: 10.44, Paper: scene.RGB(0xffffff)}
	s.Root.Style.Fill = &red
	s.Root.Add(&scene.Path{D: canvas.Rectangle(10, 5.22).Translate(0, 5.22)})
	im := pixels(t, s, 100) // 104 pixels high, not 104.4
	for _, y := range []int{51, 52} {
		_, g, _, _ := im.At(50, y).RGBA()
		if want := uint32(0xffff) * uint32(52-y); g != want {
			t.Errorf("row %d: green is %#x, not %#x", y, g, want)
		}
	}
}

// A stroke is as wide as its line and has round ends, dots included.
func TestPNGStroke(t *testing.T) {
	black := scene.RGB(0)
	s := &scene.Scene{Width: 20, Height: 20, Paper: scene.RGB(0xffffff)}
	s.Root.Style = scene.Style{Stroke: &black, Line: new(2.0)}
	s.Root.Add(&scene.Path{D: canvas.MustParseSVGPath("M5 5H15")})
	s.Root.Add(&scene.Path{D: canvas.MustParseSVGPath("M5 12H15"), Style: scene.Style{Dash: []float64{0, 5}}})
	im := pixels(t, s, 400) // 20 pixels to the millimetre
	dark := func(x, y float64) bool { r, _, _, _ := im.At(int(x*20), int(y*20)).RGBA(); return r < 0x8000 }
	for _, c := range []struct {
		x, y float64
		want bool
	}{
		{10, 4.1, true}, {10, 3.9, false}, {10, 5.9, true}, {10, 6.1, false}, // the width
		{4.1, 5, true}, {3.9, 5, false}, {4.2, 4.2, false}, {15.9, 5, true}, {15.8, 5.8, false}, // the ends
		{5, 12, true}, {10, 12, true}, {10, 11.1, true}, {10.9, 12, true}, {10.8, 11.2, false}, {7.5, 12, false}, // dots
	} {
		if dark(c.x, c.y) != c.want {
			t.Errorf("at %g, %g mm dark is %v", c.x, c.y, !c.want)
		}
	}
}

func TestPNGRefusesSizes(t *testing.T) {
	for _, width := range []int{-1, 0, 1e6} {
		err := PNG(&bytes.Buffer{}, &scene.Scene{Width: 210, Height: 297}, width)
		if err == nil || !strings.Contains(err.Error(), "give a width from 1 to") {
			t.Errorf("%d pixels: %v", width, err)
		}
	}
}

// The palette leaves inks exact and blends within what is said of it; a
// picture of too many colours goes without.
func TestPalette(t *testing.T) {
	im := image.NewRGBA(image.Rect(0, 0, 256, 16))
	for y := range 16 {
		for x := range 256 {
			switch {
			case y < 8:
				im.SetRGBA(x, y, color.RGBA{31, 95, 168, 255})
			default: // 1024 greys and near-greys
				im.SetRGBA(x, y, color.RGBA{uint8(x), uint8(x), uint8(min(255, x+y/4)), 255})
			}
		}
	}
	p, ok := withPalette(im).(*image.Paletted)
	if !ok {
		t.Fatal("no palette was found")
	}
	if r, g, b, _ := p.At(9, 3).RGBA(); r>>8 != 31 || g>>8 != 95 || b>>8 != 168 {
		t.Errorf("the ink became %v", p.At(9, 3))
	}
	if d := outputtest.Differing(im, p, nearest); d > 0 {
		t.Errorf("%.2f %% of pixels are further than %d from what they were", 100*d, nearest)
	}
	r := rand.New(rand.NewPCG(5, 6))
	for i := range im.Pix {
		im.Pix[i] = uint8(r.Uint32())
		if i%4 == 3 {
			im.Pix[i] = 255
		}
	}
	if _, ok := withPalette(im).(*image.RGBA); !ok {
		t.Error("a palette was forced on a picture of many colours")
	}
}
