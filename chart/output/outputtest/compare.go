package outputtest

import (
	"image"
	"image/draw"
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
	out := image.NewRGBA(image.Rectangle{Max: im.Bounds().Size()})
	draw.Draw(out, out.Bounds(), im, im.Bounds().Min, draw.Src)
	return out
}
