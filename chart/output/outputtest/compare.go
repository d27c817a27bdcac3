package outputtest

import (
	"image"
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
	size, n := a.Bounds().Size(), 0
	for y := range size.Y {
		for x := range size.X {
			ar, ag, ab, aa := a.At(a.Bounds().Min.X+x, a.Bounds().Min.Y+y).RGBA()
			br, bg, bb, ba := b.At(b.Bounds().Min.X+x, b.Bounds().Min.Y+y).RGBA()
			if apart(ar, br) > threshold || apart(ag, bg) > threshold || apart(ab, bb) > threshold || apart(aa, ba) > threshold {
				n++
			}
		}
	}
	return float64(n) / float64(size.X*size.Y)
}

func apart(a, b uint32) int {
	d := int(a>>8) - int(b>>8)
	return max(d, -d)
}
