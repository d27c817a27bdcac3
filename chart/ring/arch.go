package ring

import "math"

// Spot is a place on an arch, from its left end, in the unit of its chord.
type Spot struct{ X, Y float64 }

// Arch is n places in the middles of equal parts of an arch of a length over a chord that
// reaches so far to the right and rises so far to its other end: an arc of a circle up to
// half of one, half an ellipse beyond that, no higher than most, and where the chord is as
// long as it nearly straight, but least high; and the length that it comes to. All lengths
// are in one unit; wide is more than 0.
func Arch(wide, rise, length, most, least float64, n int) ([]Spot, float64) {
	chord := math.Hypot(wide, rise)
	half := chord / 2
	least = math.Min(math.Min(least, most), 0.15*chord)
	x, y := func(t float64) float64 { return half * (1 - math.Cos(t)) }, func(t float64) float64 { return 0 }
	switch {
	case length <= math.Pi*half || most <= half:
		// Half its angle, whose sine is the half chord over the radius.
		low, high := 2*math.Atan(least/half), 2*math.Atan(math.Min(most, half)/half)
		for range 40 {
			if mid := (low + high) / 2; math.Sin(mid)/mid > chord/length {
				low = mid
			} else {
				high = mid
			}
		}
		r := half / math.Sin(low)
		x = func(t float64) float64 { return half - r*math.Sin(low*(1-2*t/math.Pi)) }
		y = func(t float64) float64 { return r*math.Cos(low*(1-2*t/math.Pi)) - r*math.Cos(low) }
	default:
		low, high := half, most
		for range 40 {
			if mid := (low + high) / 2; halfEllipse(half, mid) < length {
				low = mid
			} else {
				high = mid
			}
		}
		y = func(t float64) float64 { return low * math.Sin(t) }
	}
	// It leans to its higher end.
	level, over := x, y
	x = func(t float64) float64 { return level(t) * wide / chord }
	y = func(t float64) float64 { return over(t) + level(t)*rise/chord }
	const steps = 200
	long := make([]float64, steps+1)
	for k := 1; k <= steps; k++ {
		a, b := math.Pi*float64(k-1)/steps, math.Pi*float64(k)/steps
		long[k] = long[k-1] + math.Hypot(x(b)-x(a), y(b)-y(a))
	}
	spots := make([]Spot, n)
	k := 0
	for j := range spots {
		goal := long[steps] * (float64(j) + 0.5) / float64(n)
		for k < steps-1 && long[k+1] < goal {
			k++
		}
		t := math.Pi * (float64(k) + (goal-long[k])/math.Max(long[k+1]-long[k], 1e-9)) / steps
		spots[j] = Spot{x(t), y(t)}
	}
	return spots, long[steps]
}

// halfEllipse is half the circumference of an ellipse by its half axes (Ramanujan's first
// approximation, 1914).
func halfEllipse(a, b float64) float64 {
	return math.Pi / 2 * (3*(a+b) - math.Sqrt((3*a+b)*(a+3*b)))
}
