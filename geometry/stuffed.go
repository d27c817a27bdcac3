package geometry

import "math"

// Stuffed is how wide and how tall a closed piece comes out when it is stuffed:
// that of a spheroid which is around long about its middle and depth long from
// pole to pole along its surface, all in millimetres. False when it has too
// little depth to close over anything: less than across its middle. Half the
// length of an ellipse is by Ramanujan's second formula (1914, value from
// memory), exact to 0.02 % for what is no flatter than 1 : 5.
func Stuffed(around, depth float64) (across, tall float64, ok bool) {
	a := around / (2 * math.Pi)
	if !(a > 0) || !(depth > 2*a) || math.IsInf(depth, 1) {
		return 0, 0, false
	}
	low, high := 0.0, depth/2 // of half the height: a meridian is longer than the axis
	for range 60 {
		b := (low + high) / 2
		if halfEllipse(a, b) < depth {
			low = b
		} else {
			high = b
		}
	}
	return 2 * a, low + high, true
}

// halfEllipse is half the length of an ellipse with half axes a and b.
func halfEllipse(a, b float64) float64 {
	h := (a - b) * (a - b) / ((a + b) * (a + b))
	return math.Pi / 2 * (a + b) * (1 + 3*h/(10+math.Sqrt(4-3*h)))
}
