package geometry

import "math"

// evenings is how often the slopes are evened out. Each time reaches one round
// further to either side.
const evenings = 3

// even evens out the slopes of a meridian that zigzags, in place. growths are
// what the radius gains over rounds of those slant heights; their sum stays as
// it is. bends is room for as many numbers.
//
// A piece that is increased in every second round only is no staircase of flat
// rounds and tubes: the fabric lies at the mean slope of the two. So where the
// meridian bends one way and at the next round back again, the two bends cancel
// as far as the smaller goes: growth passes over each of them from the steeper
// round to the other, a half of what would make the pair alike. By itself that
// is the binomial mean (1, 2, 1)/4 of three rounds, which leaves nothing of a
// zigzag from round to round. Where the bends are all to one side (disc, tube,
// cone, sphere, the edge of a flat crown) nothing is changed: the rise of every
// round is then √(s² − Δr²) of its own.
func even(growths, slants, bends []float64) {
	n := len(growths)
	if n < 3 {
		return
	}
	slope := func(i int) float64 {
		if slants[i] == 0 {
			return 0 // a free edge
		}
		return growths[i] / slants[i]
	}
	for range evenings {
		for i := 0; i+1 < n; i++ {
			bends[i] = slope(i+1) - slope(i)
		}
		before := 0.0
		for i := 0; i+1 < n; i++ {
			after := 0.0
			if i+2 < n {
				after = bends[i+1]
			}
			b := bends[i]
			back := math.Max(opposed(b, before), opposed(b, after))
			pass := math.Copysign(math.Min(math.Abs(b), back), b) / 2 *
				slants[i] * slants[i+1] / (slants[i] + slants[i+1])
			growths[i] += pass
			growths[i+1] -= pass
			before = b
		}
	}
}

// opposed is the size of bend c if it goes the other way than b, else 0.
func opposed(b, c float64) float64 {
	if b*c < 0 {
		return math.Abs(c)
	}
	return 0
}
