package output

import (
	"bytes"
	"image"
	"image/color"
	"slices"
)

// pixel is a pixel of an image.RGBA.
type pixel [4]uint8

// A drawing in a few inks has few colours: each ink, and its blends with
// what is under it along the edges. With a palette it is written in a quarter
// of the size and time. nearest is how far, of 255 in any channel, a rare blend
// may be from the palette's: less than the eye sees.
const (
	paletteSize = 256
	nearest     = 6
)

// withPalette is the image in at most 256 colours, the commonest of them
// exact; or the image as it is when that would show.
func withPalette(im *image.RGBA) image.Image {
	counts := map[pixel]int{}
	for start := 0; start < len(im.Pix); {
		p, n := run(im.Pix[start:])
		counts[p] += n
		start += 4 * n
	}
	entries, places := choose(counts)
	if entries == nil {
		return im
	}
	out := image.NewPaletted(im.Bounds(), entries)
	for start := 0; start < len(im.Pix); {
		p, n := run(im.Pix[start:])
		if i := places[p]; i != 0 {
			for j := range n {
				out.Pix[start/4+j] = i
			}
		}
		start += 4 * n
	}
	return out
}

// run is the first pixel and how many that follow are the same.
func run(pix []uint8) (pixel, int) {
	p := pixel(pix)
	n := 1
	for 4*n < len(pix) && pixel(pix[4*n:]) == p {
		n++
	}
	return p, n
}

// choose makes a palette of the commonest colours and gives each colour its
// place in it, or nil when a palette cannot come near enough to all.
func choose(counts map[pixel]int) (color.Palette, map[pixel]uint8) {
	if len(counts) > 1<<14 {
		return nil, nil
	}
	colours := make([]pixel, 0, len(counts))
	for p := range counts {
		colours = append(colours, p)
	}
	slices.SortFunc(colours, func(a, b pixel) int {
		if d := counts[b] - counts[a]; d != 0 {
			return d
		}
		return bytes.Compare(a[:], b[:])
	})
	for within := 0; within <= nearest; within++ {
		if entries, places := cover(colours, within); entries != nil {
			return entries, places
		}
	}
	return nil, nil
}

// cover takes colours into a palette, commonest first, leaving out those
// within the given distance of one that is in it.
func cover(colours []pixel, within int) (color.Palette, map[pixel]uint8) {
	var chosen []pixel
	places := make(map[pixel]uint8, len(colours))
	for _, p := range colours {
		i := slices.IndexFunc(chosen, func(q pixel) bool { return distance(p, q) <= within })
		if i < 0 {
			i = len(chosen)
			if i == paletteSize {
				return nil, nil
			}
			chosen = append(chosen, p)
		}
		places[p] = uint8(i)
	}
	palette := make(color.Palette, len(chosen))
	for i, p := range chosen {
		palette[i] = color.RGBA{p[0], p[1], p[2], p[3]}
	}
	return palette, places
}

// distance is how far two colours are apart in the channel that differs most.
func distance(p, q pixel) int {
	d := 0
	for i := range p {
		d = max(d, int(p[i])-int(q[i]), int(q[i])-int(p[i]))
	}
	return d
}
