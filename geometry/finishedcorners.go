package geometry

import (
	"math"

	"whorl/patterns/fabric"
)

// Corners is the number of corners that a motif is finished with, from 3 to 8; 0
// for a part without any. What corners are [Slacks] tells.
func Corners(part *fabric.Part) int {
	corners := 0
	for _, r := range part.Rounds {
		if k, full := cornersOf(r); k > 0 {
			corners = 0
			if full {
				corners = k
			}
		}
	}
	return corners
}

// PolygonSide is the side in millimetres of a motif with k corners, the regular polygon whose
// sides are as far from its centre as it is deep: 2d tan(π/k).
func PolygonSide(depth float64, k int) float64 { return 2 * depth * math.Tan(math.Pi/float64(k)) }
