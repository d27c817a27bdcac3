package outputtest

import (
	"image"
	"image/color"
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

// Shrink is a picture at one nth of its size, each pixel the mean of n × n.
func Shrink(im image.Image, n int) image.Image {
	size := im.Bounds().Size().Div(n)
	out := image.NewRGBA(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			var sum [4]uint32
			for i := range n * n {
				r, g, b, a := im.At(im.Bounds().Min.X+x*n+i%n, im.Bounds().Min.Y+y*n+i/n).RGBA()
				sum[0], sum[1], sum[2], sum[3] = sum[0]+r>>8, sum[1]+g>>8, sum[2]+b>>8, sum[3]+a>>8
			}
			area := uint32(n * n)
			out.SetRGBA(x, y, color.RGBA{uint8(sum[0] / area), uint8(sum[1] / area), uint8(sum[2] / area), uint8(sum[3] / area)})
		}
	}
	return out
}
